// SPDX-License-Identifier: MIT
#include "assess/mixture/label.hpp"

#include "base/list.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

namespace routeweigh {
namespace {

// A classified result with what the label prints for it.
struct Printed {
    const MixtureResult* result = nullptr;
    const LabelStatement* elements = nullptr;
};

int rank(const Printed& printed) {
    return printed.elements->signal == "Danger" ? 0 : printed.elements->signal == "Warning" ? 1 : 2;
}

// The statement of this label before which another gives way; "" where none does.
std::string_view gives_way_to(const std::vector<std::string>& beside, const std::vector<std::string>& there) {
    for (const std::string& other : beside)
        if (contains(there, other)) return other;
    return {};
}

// Irritation of the airways adds nothing where the label says that they are corroded, unless a specific limit
// gives it.
bool is_idle_irritation(const MixtureResult& result, const std::vector<std::string>& supplemental) {
    return result.endpoint == "airway_irritation" && !result.specific && contains(supplemental, "EUH071");
}

std::vector<Printed> thin(const std::vector<MixtureResult>& results, const MixtureRules& rules,
                          MixtureLabel& label) {
    std::vector<std::string> all;
    for (const MixtureResult& result : results)
        if (result.classified()) all.push_back(result.statement);
    std::vector<Printed> printed;
    for (const MixtureResult& result : results) {
        if (!result.classified()) continue;
        std::string_view beside, source;
        for (const Omission& omission : rules.labels.omitted_statements)
            if (omission.what == result.statement && beside.empty()) {
                beside = gives_way_to(omission.beside, all);
                source = omission.source;
            }
        if (beside.empty() && is_idle_irritation(result, label.supplemental)) {
            beside = "EUH071";
            source = "CLP Annex I, 3.8 (memory)";
        }
        if (!beside.empty()) {
            label.omitted.push_back({result.statement, std::string(beside), source});
            continue;
        }
        const LabelStatement* elements = rules.labels.statement(result.statement, result.category);
        if (elements != nullptr) printed.push_back({&result, elements});
    }
    return printed;
}

bool is_asked_for(const std::string& pictogram, const std::vector<Printed>& printed,
                  const std::vector<Omission>& omissions, MixtureLabel& label) {
    std::vector<std::string> there, groups;
    for (const Printed& other : printed) {
        there.push_back(other.elements->pictogram);
        groups.push_back(other.elements->group);
    }
    OmittedElement omitted;
    for (const Printed& asking : printed) {
        if (asking.elements->pictogram != pictogram) continue;
        bool wanted = true;
        for (const Omission& omission : omissions) {
            if (omission.what != pictogram) continue;
            if (!omission.groups.empty() && !contains(omission.groups, asking.elements->group)) continue;
            std::string_view beside = gives_way_to(omission.beside, there);
            if (beside.empty() && !omission.beside_group.empty() && contains(groups, omission.beside_group))
                beside = omission.beside_group;
            if (beside.empty()) continue;
            wanted = false;
            omitted = {pictogram, std::string(beside), omission.source};
        }
        if (wanted) return true;
    }
    label.omitted.push_back(std::move(omitted));
    return false;
}

struct WantedPrecaution {
    double turn = 0;
    std::string_view code;
};

// What says all that another says takes its turn too, and the other goes.
void give_way(std::vector<WantedPrecaution>& wanted, const LabelElements& elements) {
    const auto covered_by = [&](const WantedPrecaution& one, const WantedPrecaution& other) {
        return one.code != other.code && elements.covers(other.code, one.code);
    };
    for (WantedPrecaution& stronger : wanted)
        for (const WantedPrecaution& weaker : wanted)
            if (covered_by(weaker, stronger)) stronger.turn = std::min(stronger.turn, weaker.turn);
    const std::vector<WantedPrecaution> all = wanted;
    std::erase_if(wanted, [&](const WantedPrecaution& weaker) {
        return std::any_of(all.begin(), all.end(),
                           [&](const auto& other) { return covered_by(weaker, other); });
    });
}

// The most urgent precautions of the severe statements first, those of the milder ones behind by a turn and a
// half for each step of the signal word, up to the most a label takes. First aid could push out of all places
// what is said for the environment: a precaution that is to be kept takes the place of one that waits its
// turn, and is one more where none of them does.
std::vector<std::string> choose_precautions(const std::vector<Printed>& printed,
                                            const LabelElements& elements) {
    constexpr double behind = 1.5;
    std::vector<WantedPrecaution> wanted;
    for (const Printed& one : printed) {
        const std::vector<std::string>& codes = one.elements->precautions;
        for (std::size_t i = 0; i < codes.size(); ++i)
            wanted.push_back(
                {behind * rank(one) + (i < one.elements->together ? 0.0 : static_cast<double>(i)), codes[i]});
    }
    give_way(wanted, elements);
    std::stable_sort(wanted.begin(), wanted.end(),
                     [](const auto& a, const auto& b) { return a.turn < b.turn; });
    std::vector<std::string> kept, others, chosen;
    std::size_t urgent = 0; // of the others
    for (const WantedPrecaution& next : wanted) {
        std::vector<std::string>& list = contains(elements.kept_precautions, next.code) ? kept : others;
        add_once(list, next.code);
        if (next.turn <= 0.0) urgent = others.size();
    }
    const std::size_t most = elements.most_precautions;
    const std::size_t places = std::min(others.size(), std::max(most - kept.size(), std::min(most, urgent)));
    chosen.assign(others.begin(), others.begin() + static_cast<std::ptrdiff_t>(places));
    chosen.insert(chosen.end(), kept.begin(), kept.end());
    std::sort(chosen.begin(), chosen.end());
    return chosen;
}

// Health classes for which CLP Art. 18(3)(b) names the substances (memory).
bool names_substances(std::string_view hazard_class) {
    constexpr std::string_view classes[] = {"Acute Tox.", "Skin Corr.",  "Eye Dam.",  "Muta.",
                                            "Carc.",      "Repr.",       "STOT SE",   "STOT RE",
                                            "Asp. Tox.",  "Resp. Sens.", "Skin Sens."};
    return std::find(std::begin(classes), std::end(classes), hazard_class) != std::end(classes);
}

void name_substances(const MixtureResult& result, MixtureLabel& label) {
    if (result.endpoint == "elicitation")
        for (const MixtureTest& test : result.tests)
            for (const MixturePart& part : test.parts)
                add_once(label.sensitisers, part.substance);
    if (!result.classified() || !names_substances(result.hazard_class)) return;
    for (const MixtureTest& test : result.tests) {
        if (!test.met || test.category != result.category) continue;
        for (const MixturePart& part : test.parts)
            if (part.substance != nullptr && (test.kind != TestKind::each || reaches(part.term, 1)))
                add_once(label.named, part.substance);
    }
}

} // namespace

MixtureLabel make_label(const std::vector<MixtureResult>& results, const MixtureRules& rules) {
    MixtureLabel label;
    if (rules.limits.supplemental_statements)
        for (const MixtureResult& result : results)
            for (const std::string& statement : result.supplemental)
                add_once(label.supplemental, statement);
    const std::vector<Printed> printed = thin(results, rules, label);
    int worst = 2;
    for (const Printed& one : printed) {
        worst = std::min(worst, rank(one));
        add_once(one.result->statement.front() == 'H' ? label.statements : label.supplemental,
                 one.result->statement);
        const std::string& pictogram = one.elements->pictogram;
        if (pictogram.empty() || contains(label.pictograms, pictogram)) continue;
        const bool decided =
            std::any_of(label.omitted.begin(), label.omitted.end(),
                        [&](const OmittedElement& other) { return other.what == pictogram; });
        if (!decided && is_asked_for(pictogram, printed, rules.labels.omitted_pictograms, label))
            label.pictograms.push_back(pictogram);
    }
    label.signal = worst == 0 ? "Danger" : worst == 1 ? "Warning" : "";
    for (std::vector<std::string>* list : {&label.statements, &label.supplemental, &label.pictograms})
        std::sort(list->begin(), list->end());
    label.precautions = choose_precautions(printed, rules.labels);
    for (const MixtureResult& result : results)
        name_substances(result, label);
    return label;
}

std::string statement_text(std::string_view code, const MixtureLabel& label,
                           const std::vector<MixtureResult>& results, const LabelElements& elements) {
    std::string text(elements.text(code));
    if (code == "EUH208") {
        std::string names;
        for (const Substance* substance : label.sensitisers)
            names += (names.empty() ? "" : ", ") + substance->name;
        if (const std::size_t gap = text.find("{}"); gap != std::string::npos) text.replace(gap, 2, names);
    }
    for (const MixtureResult& result : results)
        if (result.classified() && result.statement == code && !result.target.empty())
            text += fmt::format(" ({})", result.target);
    return text;
}

} // namespace routeweigh
