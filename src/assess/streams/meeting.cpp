// SPDX-License-Identifier: MIT
// Two substances, both sources.
#include "assess/streams/compatibility.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::streams {
namespace {

constexpr int water_group = 106, polymerizable_group = 103;

class Meeter {
  public:
    Meeter(const Participant& one, const Participant& other, const CompatibilityRules& rules,
           const std::vector<Participant>& also_there)
        : rules_(rules), also_there_(also_there) {
        meeting_.one = one;
        meeting_.other = other;
        meeting_.trace = one.trace || other.trace;
    }

    Meeting run() {
        read_chart();
        read_fuel();
        for (const SpecialMeeting& meeting : rules_.special.meetings)
            if (applies(meeting)) add_special(meeting, MeetingBasis::Kind::special);
        for (const SpecialMeeting& rule : rules_.special.rules)
            if (applies(rule)) add_rule(rule);
        const bool ours = any_consequence();
        add_appendix(ours);
        std::vector<std::string> all;
        for (const MeetingBasis& basis : meeting_.bases)
            all.insert(all.end(), basis.codes.begin(), basis.codes.end());
        meeting_.codes = rules_.chart.sorted(std::move(all));
        meeting_.weight = weight();
        return std::move(meeting_);
    }

  private:
    /// What already stands in water meets no water anew.
    bool old_news(const Participant& wet, int group, int other_group) const {
        return other_group == water_group && wet.in_water && group != water_group;
    }

    std::string group_name(int number) const {
        const ReactivityGroup* group = rules_.groups.group(number);
        return group == nullptr ? fmt::format("group {}", number)
                                : fmt::format("{} ({})", group->name, number);
    }

    void add_cell(int a, int b, const ChartCell& cell, MeetingBasis::Kind kind, const std::string& why) {
        meeting_.bases.push_back({kind, cell.codes,
                                  fmt::format("{} with {}{}", group_name(a), group_name(b), why),
                                  cell.confidence, cell.from});
    }

    void read_chart() {
        for (const int a : meeting_.one.groups())
            for (const int b : meeting_.other.groups()) {
                if (old_news(meeting_.one, a, b) || old_news(meeting_.other, b, a)) continue;
                if (const ChartCell* cell = rules_.chart.find(a, b))
                    add_cell(a, b, *cell, MeetingBasis::Kind::chart, "");
            }
    }

    /// Every organic liquid is a fuel, also where the chart has no cell for its group.
    void read_fuel() {
        const FuelRule& fuel = rules_.special.fuel;
        const auto burn = [&](const Participant& organic, const Participant& other) {
            if (organic.substance == nullptr || organic.substance->phase != Substance::Phase::liquid ||
                !is_organic(*organic.substance))
                return;
            for (const int against : fuel.against) {
                if (!other.in_group(against)) continue;
                const std::vector<int> own = organic.groups();
                const bool has_pair = std::any_of(own.begin(), own.end(), [&](int group) {
                    return rules_.chart.find(group, against) != nullptr;
                });
                const ChartCell* cell = rules_.chart.find(fuel.as, against);
                if (!has_pair && cell != nullptr)
                    add_cell(fuel.as, against, *cell, MeetingBasis::Kind::fuel, "; " + fuel.detail);
            }
        };
        burn(meeting_.one, meeting_.other);
        burn(meeting_.other, meeting_.one);
    }

    bool applies(const SpecialMeeting& special) const {
        return (special.one->holds(meeting_.one) && special.with->holds(meeting_.other)) ||
               (special.one->holds(meeting_.other) && special.with->holds(meeting_.one));
    }

    void add_special(const SpecialMeeting& special, MeetingBasis::Kind kind) {
        std::string words =
            fmt::format("{} with {}: {}", special.one_name, special.with_name, special.detail);
        if (special.worse_with != nullptr) {
            const bool there =
                std::any_of(also_there_.begin(), also_there_.end(),
                            [&](const Participant& other) { return special.worse_with->holds(other); });
            words += fmt::format("; worse with {}, {}", special.worse_name,
                                 there ? "which are there" : "of which none was found");
        }
        meeting_.bases.push_back({kind, special.codes, std::move(words), "", special.from});
    }

    void add_rule(const SpecialMeeting& rule) {
        std::vector<std::string> taken;
        for (MeetingBasis& basis : meeting_.bases) {
            if (basis.kind != MeetingBasis::Kind::chart) continue;
            for (const std::string& code : rule.instead_of) {
                if (std::erase(basis.codes, code) > 0) taken.push_back(code);
            }
        }
        if (rule.codes.empty() && taken.empty()) return;
        add_special(rule, MeetingBasis::Kind::rule);
        if (!taken.empty())
            meeting_.bases.back().words +=
                fmt::format("; takes {} of the chart away", join(rules_.chart.sorted(taken), " "));
    }

    bool any_consequence() const {
        return std::any_of(meeting_.bases.begin(), meeting_.bases.end(),
                           [](const MeetingBasis& basis) { return !basis.codes.empty(); });
    }

    void add_appendix(bool ours) {
        std::vector<const IncompatibleWastes::Pair*> found;
        for (const IncompatibleWastes::Pair* pair : rules_.appendix.meetings(meeting_.one, meeting_.other)) {
            // The same for the appendix: a part of a watery mixture meets no water anew.
            const bool water =
                old_news(meeting_.one, 0, meeting_.other.in_group(water_group) ? water_group : 0) ||
                old_news(meeting_.other, 0, meeting_.one.in_group(water_group) ? water_group : 0);
            if (!water) found.push_back(pair);
        }
        for (const IncompatibleWastes::Pair* pair : found)
            meeting_.bases.push_back(
                {MeetingBasis::Kind::appendix, pair->codes,
                 fmt::format("groups {} and {}: {}", pair->a, pair->b, pair->consequence), "", pair->from});
        if (ours && found.empty())
            meeting_.disagreement =
                "the chart or a named meeting gives a consequence; Appendix V, which lists examples "
                "only, gives none";
        if (!ours && !found.empty())
            meeting_.disagreement = "Appendix V gives a consequence; the chart gives none for these groups";
    }

    /// Fire, explosion and gas stop also on the word of one source.
    bool is_severe(const std::string& code) const {
        if (code == "P")
            return meeting_.one.in_group(polymerizable_group) || meeting_.other.in_group(polymerizable_group);
        return code != "H" && code != "S" && code != "U";
    }

    Meeting::Weight weight() const {
        using Weight = Meeting::Weight;
        if (meeting_.trace) return Weight::noted;
        if (meeting_.named()) return Weight::stops;
        const bool severe = std::any_of(meeting_.codes.begin(), meeting_.codes.end(),
                                        [&](const auto& code) { return is_severe(code); });
        const bool only_dissolves = meeting_.codes == std::vector<std::string>{"S"};
        if (only_dissolves) return Weight::noted; // it goes where dissolved metals go
        if (meeting_.of_little()) return severe ? Weight::asks : Weight::noted;
        return severe || meeting_.disagreement.empty() ? Weight::stops : Weight::asks;
    }

    const CompatibilityRules& rules_;
    const std::vector<Participant>& also_there_;
    Meeting meeting_;
};

} // namespace

bool Meeting::named() const {
    return std::any_of(bases.begin(), bases.end(), [](const MeetingBasis& basis) {
        return !basis.codes.empty() &&
               (basis.kind == MeetingBasis::Kind::special || basis.kind == MeetingBasis::Kind::rule);
    });
}

bool Meeting::can_polymerise() const {
    constexpr int polymerise[] = {5, 18, 34, polymerizable_group};
    return std::any_of(std::begin(polymerise), std::end(polymerise),
                       [&](int group) { return one.in_group(group) || other.in_group(group); });
}

Meeting meet(const Participant& one, const Participant& other, const CompatibilityRules& rules,
             const std::vector<Participant>& also_there) {
    return Meeter(one, other, rules, also_there).run();
}

} // namespace routeweigh::streams
