// SPDX-License-Identifier: MIT
// A solvent distilled out of the liquid stream that holds it, and used again in the same step; never one
// whose stream holds free halogen or an oxidiser that nobody has quenched before.
#include "compare/candidate.hpp"
#include "compare/charge_place.hpp"

#include "assess/hazard/statement.hpp"
#include "assess/input_class.hpp"

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

/// Free halogen over the solvent that is distilled from beside it, g/g, up to which it is a trace: bromine
/// boils at 59 degC and comes over with the solvent, whatever water dilutes both. Common practice, no source.
constexpr double trace_of_halogen = 1e-3;

/// Oxidisers, peroxides and what decomposes in heat (H270 to H272, H240 to H242): a stream that holds any is
/// never to be distilled.
bool forbids_distilling(const Substance& substance) {
    return std::any_of(substance.ghs.begin(), substance.ghs.end(), [](const GhsEntry& entry) {
        const int number = statement_number(entry.statement);
        return (number >= 270 && number <= 272) || (number >= 240 && number <= 242);
    });
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
    for (const FlatStream& stream : flat.streams()) {
        if (stream.kind != StreamKind::liquid) continue;
        const FlatStep& step = flat.steps()[static_cast<std::size_t>(stream.step)];
        const auto grams = [&](std::size_t s) {
            return evaluation.out[static_cast<std::size_t>(stream.first_outflow) + s];
        };
        double water = 0.0, halogen = 0.0;
        bool forbidden = false;
        for (std::size_t s = 0; s < step.substances.size(); ++s) {
            if (is_water(*step.substances[s])) water = grams(s);
            // Also where only the other reading of the yield leaves some of it unquenched.
            const std::size_t index = static_cast<std::size_t>(stream.first_outflow) + s;
            const double most = std::max(evaluation.out[index], evaluation.out_unreacted[index]);
            forbidden =
                forbidden || (most > 1e-9 * evaluation.product && forbids_distilling(*step.substances[s]));
            if (is_halogen_source(*step.substances[s])) halogen += most;
        }
        if (forbidden) continue;
        const auto solvents = solvents_of(flat, stream.step);
        for (std::size_t s = 0; s < step.substances.size(); ++s) {
            const Substance& solvent = *step.substances[s];
            if (!solvents.contains(&solvent) || !listed(source.solvents.families, &solvent) ||
                solvent.phase != Substance::Phase::liquid ||
                grams(s) < source.limits.worth_recovering * evaluation.product ||
                halogen > trace_of_halogen * grams(s) ||
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
            candidate.cautions = cautions_for_reuse(solvent, water);
            candidate.step = stream.step;
            candidates.push_back(std::move(candidate));
        }
    }
}

} // namespace routeweigh
