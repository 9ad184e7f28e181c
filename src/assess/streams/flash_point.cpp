// SPDX-License-Identifier: MIT
#include "assess/streams/flash_point.hpp"

#include "assess/input_class.hpp"
#include "base/text.hpp"
#include "chemistry/crystal_water.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace routeweigh::streams {
namespace {

constexpr double gas_constant = 8.314462618e-3; // kJ/(mol K)
constexpr double kelvin = 273.15;
constexpr double never_flashes_above =
    93; // degC; what flashes later is not called flammable in any of the rules

/// tert-Butanol melts at room temperature and is liquid in water.
bool is_liquid(const Substance& substance, const MixedLiquids& liquids) {
    return substance.phase == Substance::Phase::liquid || liquids.find(substance.id) != nullptr;
}

/// x gamma of one liquid in water, at most that of the liquid itself.
double activity(const MixedLiquid& liquid, double molar_mass, double moles, double water,
                double mole_fraction) {
    if (liquid.soluble) {
        const double dissolved = *liquid.soluble / molar_mass;
        const double limit = dissolved / (dissolved + 100.0 / molar_mass_of_water);
        return std::min(1.0, mole_fraction / limit);
    }
    const auto [in_water, in_organic] = *liquid.van_laar;
    // The pair with water alone sets gamma; x is its share of the whole liquid.
    const double x = moles / (moles + water);
    if (in_water == 0.0 || in_organic == 0.0) return mole_fraction;
    const double term = 1.0 + in_water * x / (in_organic * (1.0 - x));
    return std::min(1.0, mole_fraction * std::exp(in_water / (term * term)));
}

/// P(T) over P at the pure liquid's flash point.
double growth(const MixedLiquid& liquid, double own, double celsius) {
    return std::exp(liquid.vaporisation / gas_constant * (1.0 / (own + kelvin) - 1.0 / (celsius + kelvin)));
}

struct Screening {
    const MixedLiquids& liquids;
    FlashPoint result;
    std::vector<const MixedLiquid*> data; // beside result.parts

    double sum(double celsius) const {
        double all = 0;
        for (std::size_t i = 0; i < data.size(); ++i)
            all += result.parts[i].activity * growth(*data[i], result.parts[i].own, celsius);
        return all;
    }

    FlashPoint refuse(std::string reason) {
        result.verdict = FlashPoint::Verdict::not_applicable;
        result.reason = std::move(reason);
        return std::move(result);
    }

    FlashPoint solve() {
        if (sum(liquids.highest) < 1.0) {
            result.verdict = FlashPoint::Verdict::above_range;
            result.reason = fmt::format("above {:g} degC, if it flashes at all", liquids.highest);
            return std::move(result);
        }
        if (sum(liquids.lowest) >= 1.0) return refuse(fmt::format("below {:g} degC", liquids.lowest));
        double low = liquids.lowest, high = liquids.highest;
        while (high - low > 1e-6) {
            const double middle = 0.5 * (low + high);
            (sum(middle) < 1.0 ? low : high) = middle;
        }
        result.verdict = FlashPoint::Verdict::estimated;
        result.celsius = 0.5 * (low + high);
        for (std::size_t i = 0; i < data.size(); ++i)
            result.parts[i].at_flash =
                result.parts[i].activity * growth(*data[i], result.parts[i].own, result.celsius);
        result.reason = fmt::format("screened, about {:.0f} degC", result.celsius);
        return std::move(result);
    }
};

} // namespace

FlashPoint screen_flash_point(const Composition& composition, const MixedLiquids& liquids,
                              bool without_alcohols) {
    Screening screening{liquids, {}, {}};
    double water = 0, all = 0, without_vapour = 0, water_grams = 0, salts = 0;
    for (const Portion& portion : composition.portions()) {
        const Substance& substance = *portion.substance;
        if (is_water(substance)) {
            water = portion.moles();
            water_grams = portion.grams;
        }
        const bool liquid = is_liquid(substance, liquids);
        if (liquid && substance.has_formula()) all += portion.moles();
        if (!liquid && substance.phase == Substance::Phase::solid) without_vapour += portion.grams;
        if (substance.phase == Substance::Phase::solid && !is_organic(substance)) salts += portion.grams;
    }
    std::vector<std::string> unknown;
    for (const Portion& portion : composition.portions()) {
        const Substance& substance = *portion.substance;
        if (!is_liquid(substance, liquids) || is_water(substance)) continue;
        const MixedLiquid* liquid = liquids.find(substance.id);
        const double own = substance.flash_point.value_or(1e9);
        const bool unknown_flash =
            !substance.flash_point && is_organic(substance) && !is_halogenated_organic(substance);
        if (!unknown_flash && own > never_flashes_above) continue;
        if (without_alcohols && liquid != nullptr && liquid->alcohol) continue;
        if (liquid == nullptr || unknown_flash) {
            if (composition.share(portion.grams) >= liquids.negligible.value && (unknown_flash || own < 60))
                unknown.push_back(substance.name);
            continue;
        }
        const double x = portion.moles() / all;
        screening.result.parts.push_back(
            {&substance, x, activity(*liquid, substance.molar_mass, portion.moles(), water, x), own, 0});
        screening.data.push_back(liquid);
    }
    if (!unknown.empty())
        return screening.refuse(fmt::format("nothing known of how {} mixes with water", join(unknown, ", ")));
    if (screening.data.empty()) {
        screening.result.reason = "no liquid part has a flash point up to 93 degC";
        return std::move(screening.result);
    }
    if (composition.share(water_grams) < liquids.least_water)
        return screening.refuse(fmt::format("{:.0f} % water by mass, the method starts at {:g} %",
                                            100 * composition.share(water_grams), 100 * liquids.least_water));
    if (composition.share(without_vapour) > liquids.most_without_vapour)
        return screening.refuse(fmt::format("{:.0f} % by mass dissolved solids, the method ends at {:g} %",
                                            100 * composition.share(without_vapour),
                                            100 * liquids.most_without_vapour));
    if (salts > 0.01 * composition.total())
        screening.result.assumptions.push_back(
            fmt::format("{:.1f} % dissolved salts are left out; they lower the flash point",
                        100 * composition.share(salts)));
    if (screening.data.size() > 1)
        screening.result.assumptions.push_back("organic liquids are taken to mix with water alone");
    return screening.solve();
}

std::string flash_point_method(const MixedLiquids& liquids) {
    return fmt::format(
        "screened from x gamma P(T) / P(own flash point) = 1 with van Laar or solubility data; used "
        "from {:g} % water by mass, up to {:g} % dissolved solids, between {:g} and {:g} degC: {}. "
        "Compared with published closed-cup points of aqueous {} ({}). A measured flash point goes "
        "before.",
        100 * liquids.least_water, 100 * liquids.most_without_vapour, liquids.lowest, liquids.highest,
        describe(liquids.range_from), liquids.published_substance, describe(liquids.published_from));
}

} // namespace routeweigh::streams
