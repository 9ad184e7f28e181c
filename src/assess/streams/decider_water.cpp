// SPDX-License-Identifier: MIT
// The order of decision for what is mostly water: layers, flash point and alcohol line, acid or base.
#include "assess/streams/amounts_in_words.hpp"
#include "assess/streams/decider.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace routeweigh::streams {
namespace {

/// Of volumes added up, where ethanol meets water: at least this share is left (density tables; remembered).
/// The share of alcohol by volume is greater by as much, which no exemption may overlook.
constexpr double volume_left_by_mixing = 0.96;

} // namespace

void Decider::decide_aqueous() {
    if (!stream_.layers.empty()) {
        const std::string list = join(stream_.layers, ", ");
        const std::string words = fmt::format("part the layers: more {} than water dissolves", list);
        decision_.first.push_back({Treatment::Kind::part_layers, words, words});
        because("layers", fmt::format("more {} than the water dissolves", list));
    }
    const bool halogenated = is_halogenated();
    if (flash_unknown()) return;
    if (!burns()) {
        decide_by_acid();
        if (halogenated)
            because("halogenated in water",
                    "at or above the threshold in a water stream: ask whether it stays aqueous");
        return;
    }
    const bool own_container = local_.container(ContainerKind::flammable_aqueous) != nullptr;
    put(halogenated     ? ContainerKind::halogenated
        : own_container ? ContainerKind::flammable_aqueous
                        : ContainerKind::flammable);
    if (!halogenated && !own_container)
        because("flammable water",
                fmt::format("ask {} whether a bottle for water that burns is kept", local_.contact));
    correct_acid(false);
}

bool Decider::flash_unknown() {
    if (stream_.flash.verdict != FlashPoint::Verdict::not_applicable) return false;
    because("flash point", fmt::format("screening not applicable: {}", stream_.flash.reason), {},
            local_.ignitable_below.value, "degC", describe(local_.ignitable_below.from));
    stop("own bottle, labelled; have the flash point measured",
         fmt::format("flash point not known: {}", stream_.flash.reason));
    return true;
}

std::string Decider::alcohol_words() const {
    return fmt::format("{:.0f} % {} by volume", 100 * stream_.alcohol_by_volume, names_of(stream_.alcohols));
}

std::string Decider::flash_words() const {
    std::vector<std::string> parts;
    if (!stream_.alcohols.empty()) parts.push_back(alcohol_words());
    for (const FlashPoint::Part& part : stream_.flash.parts) {
        const bool alcohol = std::find(stream_.alcohols.begin(), stream_.alcohols.end(), part.substance) !=
                             stream_.alcohols.end();
        const Composition& all = stream_.paired.composition;
        if (!alcohol && part.at_flash >= 0.1)
            parts.push_back(fmt::format("{} {} by mass", percent_words(all.share(all.grams(*part.substance))),
                                        part.substance->name));
    }
    parts.push_back(fmt::format("screened flash point about {:.0f} degC", stream_.flash.celsius));
    return join(parts, ", ");
}

bool Decider::burns() {
    const double line = local_.ignitable_below.value;
    const std::string source = describe(local_.ignitable_below.from);
    if (stream_.flash.verdict != FlashPoint::Verdict::estimated) {
        because("flash point", stream_.flash.reason, {}, line, "degC", source);
        return false;
    }
    decision_.summary = flash_words();
    because("flash point", decision_.summary, stream_.flash.celsius, line, "degC", source);
    if (!stream_.flash.below(line)) return false;
    if (!local_.alcohol_exempt_below) return true;
    const Sourced<double>& alcohol = *local_.alcohol_exempt_below;
    const bool few = stream_.alcohol_by_volume / volume_left_by_mixing < alcohol.value;
    const bool others_burn = stream_.flash_without_alcohols.below(line) ||
                             stream_.flash_without_alcohols.verdict == FlashPoint::Verdict::not_applicable;
    const bool watery = stream_.water_share >= local_.aqueous_from.value;
    const bool exempt = few && watery && !stream_.alcohols.empty() && !others_burn;
    const std::string words =
        exempt ? fmt::format(
                     "{}, below {:g} %, in at least {:g} % water by mass: exempt from the flash-point line",
                     alcohol_words(), 100 * alcohol.value, 100 * local_.aqueous_from.value)
        : !few    ? fmt::format("{} with volumes added up, and mixing shrinks them; not surely below {:g} %: "
                                   "not exempt",
                                alcohol_words(), 100 * alcohol.value)
        : !watery ? fmt::format("less than {:g} % water by mass: not exempt", 100 * local_.aqueous_from.value)
                  : std::string("what burns is not alcohol alone: not exempt");
    because("alcohol line", words, 100 * stream_.alcohol_by_volume, 100 * alcohol.value, "% by volume",
            describe(alcohol.from));
    if (exempt)
        decision_.summary +=
            fmt::format("; below {:g} % alcohol: exempt from the flash-point line", 100 * alcohol.value);
    return !exempt;
}

void Decider::decide_by_acid() {
    const AcidClass acid = stream_.acid_class;
    const bool corrosive_acid = stream_.strong_acid_per_litre >= local_.corrosive_acid_from.value;
    const bool corrosive_base = stream_.strong_base_per_litre >= local_.corrosive_base_from.value;
    const AcidBaseLeft& left = stream_.acid_base;
    std::vector<std::string> parts;
    for (const auto& [moles, name] :
         {std::pair{left.strong_acid, "strong acid"}, std::pair{left.weak_acid, "weak acid"},
          std::pair{left.strong_base, "strong base"}, std::pair{left.weak_base, "weak base"}})
        if (moles > 1e-7) parts.push_back(fmt::format("{} {}", millimole_words(moles), name));
    const std::string words = fmt::format("{}; no pH is predicted",
                                          parts.empty() ? std::string(words_of(acid)) : join(parts, ", "));
    if (corrosive_base)
        because("acid or base", words, stream_.strong_base_per_litre, local_.corrosive_base_from.value,
                "mol strong base per L", describe(local_.corrosive_base_from.from));
    else
        because("acid or base", words, stream_.strong_acid_per_litre, local_.corrosive_acid_from.value,
                "mol strong acid per L", describe(local_.corrosive_acid_from.from));
    if (corrosive_acid || corrosive_base)
        because("corrosive", "as much as puts pure water at the corrosive line: mark it corrosive");
    if (decision_.summary.empty()) decision_.summary = words;
    put(acid == AcidClass::strong_acid || acid == AcidClass::weak_acid   ? ContainerKind::aqueous_acidic
        : acid == AcidClass::strong_base || acid == AcidClass::weak_base ? ContainerKind::aqueous_basic
                                                                         : ContainerKind::aqueous_neutral);
    correct_acid(true);
    if (decision_.outcome == Decision::Outcome::own_bottle) return;
    if (decision_.needs(Treatment::Kind::add_base)) {
        put(ContainerKind::aqueous_neutral);
        count_weak_acid("the container is neutral"); // paper shows the weak acid too
    }
    if (local_.drain_permitted && decision_.kind == ContainerKind::aqueous_neutral && decision_.first.empty())
        because("drain",
                fmt::format("the house permits the drain for what is neutral, with {:g} volumes of water; "
                            "ask before the first time",
                            local_.flush_volumes));
}

} // namespace routeweigh::streams
