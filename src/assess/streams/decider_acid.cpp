// SPDX-License-Identifier: MIT
// The order of decision where acid, base or sulfite keeps a stream out of a container.
#include "assess/streams/amounts_in_words.hpp"
#include "assess/streams/decider.hpp"
#include "base/list.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

namespace routeweigh::streams {

/// Nothing is done to it at a bench, no quench either: base would have to follow.
void Decider::refuse_to_neutralise() {
    const std::string words = fmt::format("{} mol/L strong acid: too strong to be neutralised at the bench",
                                          significant(stream_.strong_acid_per_litre, 2));
    because("too strong", words, stream_.strong_acid_per_litre, stream_.acid_at_bench->value,
            "mol strong acid per L", describe(stream_.acid_at_bench->from));
    std::erase_if(decision_.first, [](const Treatment& one) { return one.kind == Treatment::Kind::quench; });
    stop("own bottle, labelled", words);
    decision_.too_strong = true;
}

void Decider::correct_acid(bool acid_is_welcome) {
    const double litres = stream_.volume.millilitres / 1000;
    double sulfite = 0;
    std::vector<std::string> names;
    for (const LeftToDestroy& left : stream_.sulfites) {
        sulfite += left.moles;
        names.push_back(left.substance->name);
    }
    for (const Portion& gas : stream_.paired.gas.portions())
        if (gas.substance->id == "sulfur-dioxide") {
            sulfite += gas.moles();
            names.push_back("hydrogensulfite");
        }
    const bool sulfite_there = sulfite > local_.weak_from.value * litres;
    const bool acid_there = stream_.strong_acid_per_litre >= local_.corrosive_acid_from.value;
    const bool any_acid = acid_there || stream_.acid_class == AcidClass::strong_acid ||
                          stream_.acid_class == AcidClass::weak_acid || !stream_.paired.gas.empty();
    const double acid = stream_.acid_base.strong_acid + acid_from_quench_;
    const bool quench_takes_base = !quench_leaves_.empty() && (acid_from_quench_ > 0 || any_acid);
    const bool takes_base =
        (sulfite_there && any_acid) || quench_takes_base || (acid_there && !acid_is_welcome);
    if (takes_base && stream_.too_strong_for_bench()) {
        refuse_to_neutralise();
    } else if (sulfite_there && any_acid) {
        first(
            Treatment::Kind::add_base, millimole_words(sulfite),
            [&](const std::string& amount) {
                return fmt::format("base before any acid: {}{} is left, and acid frees sulfur dioxide",
                                   amount, join(names, " and "));
            },
            sulfite, "sulfite");
        because("sulfite left", "sulfite beside acid: base first, never into an acid container",
                1000 * sulfite, 1000 * local_.weak_from.value * litres, "mmol",
                describe(local_.weak_from.from));
        decision_.vent.push_back("sulfite beside acid: sulfur dioxide");
    } else if (quench_takes_base) {
        first(
            Treatment::Kind::add_base, millimole_words(acid_from_quench_),
            [&](const std::string& amount) {
                const std::string words =
                    any_acid ? "base to neutral before the reducer goes in, and more as it goes in: the "
                               "quench makes "
                             : "base as the reducer goes in, before any acid: the quench makes ";
                return acid_from_quench_ > 0
                           ? fmt::format("{}{}acid and leaves {}", words, amount, quench_leaves_)
                           : fmt::format("{}no acid, but acid is there, and what is left of the {} gives "
                                         "sulfur dioxide with it",
                                         words, quench_leaves_);
            },
            acid);
        decision_.vent.push_back("just neutralised: wait until no more gas comes");
    } else if (acid_there && !acid_is_welcome) {
        first(
            Treatment::Kind::add_base, millimole_words(stream_.acid_base.strong_acid),
            [](const std::string& amount) {
                return fmt::format("neutralise first: {}strong acid keeps it out of this container", amount);
            },
            acid);
        decision_.vent.push_back("just neutralised: wait until no more gas comes");
    } else if (stream_.strong_base_per_litre >= local_.corrosive_base_from.value && !acid_is_welcome) {
        first(
            Treatment::Kind::add_acid, millimole_words(stream_.acid_base.strong_base),
            [](const std::string& amount) {
                return fmt::format("neutralise first: {}strong base keeps it out of this container", amount);
            },
            stream_.acid_base.strong_base);
    }
    // Base that is to keep acid from sulfite has to take up the acid that is there.
    if (!decision_.too_strong && ((sulfite_there && any_acid) || quench_takes_base))
        count_weak_acid("no acid is left beside the " +
                        (quench_leaves_.empty() ? join(names, " and ") : quench_leaves_));
}

void Decider::count_weak_acid(std::string_view why) {
    if (decision_.needs_base_for_weak_acid()) return;
    const double weak = stream_.acid_base.weak_acid;
    if (weak <= local_.weak_from.value * stream_.volume.millilitres / 1000) return;
    first(
        Treatment::Kind::add_base, millimole_words(weak),
        [&](const std::string& amount) {
            return fmt::format("base for {}weak acid too, until paper shows pH {:g} to {:g}: {}",
                               amount.empty() ? "the " : amount, local_.neutral_low, local_.neutral_high,
                               why);
        },
        weak, std::string(weak_acid_too));
    add_once(decision_.vent, "just neutralised: wait until no more gas comes");
}

} // namespace routeweigh::streams
