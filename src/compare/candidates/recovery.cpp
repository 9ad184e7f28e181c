// SPDX-License-Identifier: MIT
// A solvent distilled out of the liquid stream that holds it, and used again in the same step. A stream that
// the rules of waste stop, or that holds what kills, frees a toxic gas, oxidises or comes over as halogen, is
// not to be distilled: the recovery is then told with what speaks against it.
#include "compare/candidate.hpp"
#include "compare/charge_place.hpp"
#include "compare/deadly.hpp"

#include "assess/hazard/statement.hpp"
#include "assess/input_class.hpp"
#include "assess/streams/route_waste.hpp"
#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

namespace routeweigh {
namespace {

/// Solvents other than water that a step is charged with and that are bought.
std::set<const Substance*> solvents_of(const FlatRoute& flat, int step) {
    std::set<const Substance*> found;
    for (const Inflow& inflow : flat.inflows())
        if (inflow.step == step && inflow.fed_by < 0 && input_class(inflow) == InputClass::solvent)
            found.insert(inflow.substance);
    return found;
}

/// Only what the list of solvents names is ever distilled; nitric acid may be a solvent and is no such.
bool listed(const SolventFamilies& solvents, const Substance* substance) {
    return std::any_of(solvents.families.begin(), solvents.families.end(), [&](const SolventFamily& family) {
        return std::find(family.members.begin(), family.members.end(), substance) != family.members.end();
    });
}

/// The halogens themselves, what holds or gives bromine (tribromides, N-bromosuccinimide), hypohalous acids
/// and hypochlorites: in a still they come over, corrode, and halogenate the solvent.
bool is_halogen_source(const Substance& substance) {
    constexpr int oxygen = 8;
    constexpr std::array halogens{17, 35, 53};  // Cl, Br, I
    constexpr std::array bearers{1, 3, 11, 19}; // H, Li, Na, K
    const auto one_of = [&](const auto& elements, int most) {
        return std::any_of(elements.begin(), elements.end(), [&](int element) {
            const int count = atoms_of(substance.formula, element);
            return count > 0 && count <= most;
        });
    };
    const std::size_t kinds = substance.formula.atoms.size();
    return substance.free_bromine > 0.0 || substance.carried_bromine > 0.0 ||
           (kinds == 1 && one_of(halogens, 2)) ||
           (kinds == 3 && atoms_of(substance.formula, oxygen) == 1 && one_of(halogens, 1) &&
            one_of(bearers, 1));
}

/// Free halogen, or what gives a gas with acid, over the solvent that is distilled from beside it, g/g, up to
/// which it is a trace: bromine boils at 59 degC and comes over with the solvent, whatever water dilutes
/// both. Common practice, no source.
constexpr double trace_beside_solvent = 1e-3;

/// The statement for which no stream that holds any of this is distilled; "" for none. Oxidisers and what
/// decomposes in heat (H270 to H272, H240 to H242), and what kills. Halogens have a line of their own.
std::string forbids_distilling(const Substance& substance) {
    for (const GhsEntry& entry : substance.ghs) {
        const int number = statement_number(entry.statement);
        if ((number >= 270 && number <= 272) || (number >= 240 && number <= 242)) return entry.statement;
    }
    return is_halogen_source(substance) ? "" : fatal_statement(substance);
}

/// What a liquid stream holds that matters to a still.
struct StillContent {
    double water = 0; ///< g
    /// Sums (g) of what is borne as a trace.
    double halogen = 0, gas_with_acid = 0;
    std::vector<std::string> forbidding, halogens, gas_givers; ///< "sodium cyanide (H330)"
    std::string stopped; ///< by the rules of waste: where it goes instead; "" where they do not

    /// "the stream holds ..."; "" where nothing speaks against distilling so much of a solvent (g) out of it.
    std::string against(double solvent) const {
        std::vector<std::string> held = forbidding, reasons;
        if (halogen > trace_beside_solvent * solvent)
            held.insert(held.end(), halogens.begin(), halogens.end());
        if (gas_with_acid > trace_beside_solvent * solvent)
            held.insert(held.end(), gas_givers.begin(), gas_givers.end());
        if (!held.empty()) reasons.push_back("the stream holds " + join(held, ", "));
        if (!stopped.empty()) reasons.push_back("the rules of waste stop the stream: " + stopped);
        return join(reasons, "; ");
    }
};

StillContent content_of(const FlatRoute& flat, const Evaluation& evaluation, const FlatStream& stream,
                        const streams::RouteWaste& waste) {
    StillContent content;
    const FlatStep& step = flat.steps()[static_cast<std::size_t>(stream.step)];
    for (std::size_t s = 0; s < step.substances.size(); ++s) {
        const Substance& substance = *step.substances[s];
        const std::size_t index = static_cast<std::size_t>(stream.first_outflow) + s;
        if (is_water(substance)) content.water = evaluation.out[index];
        // Also where only the other reading of the yield leaves some of it unquenched.
        const double most = std::max(evaluation.out[index], evaluation.out_unreacted[index]);
        if (most <= 1e-9 * evaluation.product) continue;
        const auto named = [&](std::string_view why) { return fmt::format("{} ({})", substance.name, why); };
        if (const std::string why = forbids_distilling(substance); !why.empty()) {
            content.forbidding.push_back(named(why));
        } else if (is_halogen_source(substance)) {
            content.halogen += most;
            content.halogens.push_back(named("a source of halogen"));
        } else if (const std::string gas = gas_with_acid_statement(substance); !gas.empty()) {
            content.gas_with_acid += most;
            content.gas_givers.push_back(named(gas));
        }
    }
    for (const streams::StreamAdvice& advice : waste.streams)
        if (advice.stream.step == stream.step && advice.stream.name == stream.name &&
            advice.decision.outcome == streams::Decision::Outcome::own_bottle)
            content.stopped = advice.decision.goes_to;
    return content;
}

bool reused_already(const Route& route, const Substance* substance, int step, const std::string& stream) {
    return std::any_of(route.reuse.begin(), route.reuse.end(), [&](const Reuse& reuse) {
        return reuse.substance == substance && reuse.from_step == step && reuse.from_stream == stream;
    });
}

std::vector<std::string> cautions_for_reuse(const Substance& solvent, double water) {
    std::vector<std::string> cautions;
    if (solvent.boiling_point)
        cautions.push_back(fmt::format("boiling point: {:.0f} degC; what boils near it comes over with it",
                                       *solvent.boiling_point));
    else
        cautions.emplace_back("boiling point: not in the catalogue; find it before planning a distillation");
    if (water > 0.0)
        cautions.push_back(
            fmt::format("water: the stream holds {} of it beside {}; many solvents distil with some "
                        "water, and the next run gets it",
                        grams_text(water), solvent.name));
    cautions.emplace_back(
        "purity: product, acid or halogen in the stream may come over or decompose in the still; "
        "never distil what may hold peroxide to dryness");
    cautions.emplace_back("the energy of the distillation and its time are not in the figure");
    return cautions;
}

} // namespace

void find_recovery(const CandidateSource& source, std::vector<Candidate>& candidates) {
    const FlatRoute& flat = source.assessment.flat();
    const Evaluation& evaluation = source.assessment.evaluation();
    const Route& route = source.route();
    const streams::RouteWaste waste = assess_waste(route, source.solvents.waste);
    for (const FlatStream& stream : flat.streams()) {
        if (stream.kind != StreamKind::liquid) continue;
        const FlatStep& step = flat.steps()[static_cast<std::size_t>(stream.step)];
        const auto grams = [&](std::size_t s) {
            return evaluation.out[static_cast<std::size_t>(stream.first_outflow) + s];
        };
        const StillContent content = content_of(flat, evaluation, stream, waste);
        const auto solvents = solvents_of(flat, stream.step);
        for (std::size_t s = 0; s < step.substances.size(); ++s) {
            const Substance& solvent = *step.substances[s];
            if (!solvents.contains(&solvent) || !listed(source.solvents.families, &solvent) ||
                solvent.phase != Substance::Phase::liquid ||
                grams(s) < source.limits.worth_recovering * evaluation.product ||
                reused_already(route, &solvent, stream.step, stream.name))
                continue;
            const std::string& id = route.steps[static_cast<std::size_t>(stream.step)].id;
            Candidate candidate;
            candidate.what = fmt::format("recover {:.0f} % of the {} in {} ({}) and use it again{}",
                                         100.0 * source.limits.recovery, solvent.name, stream.name,
                                         grams_text(grams(s)), route.steps.size() > 1 ? " in " + id : "");
            candidate.question = fmt::format("What if the {} in {} were distilled off and used again?",
                                             solvent.name, stream.name);
            const std::string entry = fmt::format(
                R"({{"substance": {}, "from": {{"step": {}, "stream": {}}}, "to": {}, "fraction": "{:.0f} %"}})",
                json_quoted(solvent.name), json_quoted(id), json_quoted(stream.name), json_quoted(id),
                100.0 * source.limits.recovery);
            if (route.reuse.empty())
                candidate.changes = {{"/reuse", '[' + entry + ']'}};
            else
                candidate.changes = {{"/reuse/-", entry}};
            candidate.cautions = cautions_for_reuse(solvent, content.water);
            candidate.against = content.against(grams(s));
            candidate.step = stream.step;
            candidates.push_back(std::move(candidate));
        }
    }
}

} // namespace routeweigh
