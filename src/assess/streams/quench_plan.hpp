// SPDX-License-Identifier: MIT
// The quench of one step, sized from what the run really leaves, and the planned quench held against it.
//
// What is left to destroy is read from the same route carried through without its quench charges, in both
// readings of the yield; a quench is enough only if it is enough at both. Per pot, that is per run of the
// step as written.
#pragma once

#include "assess/streams/neutralise.hpp"
#include "assess/streams/stream_description.hpp"

#include <string>
#include <vector>

namespace routeweigh {
class Catalogue;
}

namespace routeweigh::streams {

class StreamRules;
struct StreamAdvice;

/// The same route without its quench charges; what only they could start does not run.
Route without_quench(const Route& route);

/// One reading of the yield.
struct QuenchNeed {
    std::vector<LeftToDestroy> oxidisers, reducers;
    std::vector<StopHit> listed; ///< what the stop list says to destroy: ethoxide, anhydrides
    double electrons = 0;        ///< mol that the oxidisers take
    double hydrogensulfite = 0;  ///< g NaHSO3 that give them, without excess
    double metabisulfite = 0;    ///< g Na2S2O5
    double thiosulfate = 0;      ///< g Na2S2O3.5H2O, to tetrathionate
    double acid_made = 0;        ///< mol, by the quench
    double strong_acid = 0;      ///< mol in the liquids, before the quench; below 0: base left
    double weak_acid = 0;        ///< mol
    double acid_after = 0;       ///< mol strong acid after the quench, of the liquids that hold acid then
    double gas_litres = 0;       ///< if what is left decays by itself instead
    std::string gas;
    double heat = 0; ///< kJ of the quench, where known
    bool heat_known = true;

    bool anything() const { return !oxidisers.empty() || !reducers.empty() || !listed.empty(); }
};

struct PlannedQuench {
    const Substance* substance;
    const Reducer* reducer; ///< nullptr: gives no electrons here
    double grams = 0;       ///< of the substance itself
    double electrons = 0;   ///< mol
    std::string material;
    double grams_of_material = 0;
    double mass_fraction = 0; ///< of the substance in the material
    double density = 0;       ///< g/mL of the material, 0 where unknown
};

/// A stream that is made neutral before it goes where its decision says, by its own acid and volume.
struct StreamToNeutralise {
    std::string stream;                                     ///< its name
    double liquid = 0;                                      ///< mL
    double strong_acid = 0, weak_acid = 0, strong_base = 0; ///< mol after the quench, larger of both readings
    bool weak_acid_too = false;   ///< the base takes up the weak acid as well, for one of two reasons: the
                                  ///< container is neutral, or sulfite is left beside it
    bool weak_acid_stays = false; ///< more than paper misses, and it may stay
    std::string why;              ///< as its decision says
    Neutralisation base;          ///< of acid(), by every base of the table

    /// What lists and words take where any base would do; nullptr where no acid takes base.
    const BaseNeeded* usual_base() const { return acid() > 0 ? base.with("NaHCO3") : nullptr; }
    double acid() const { return strong_acid + (weak_acid_too ? weak_acid : 0); } ///< mol that take base
};

struct QuenchPlan {
    enum class Verdict {
        nothing_to_destroy,
        none_planned,         ///< and something is left
        wrong_kind,           ///< what is planned gives no electrons to what is left
        too_little,           ///< not even at full conversion
        full_conversion_only, ///< enough there, short in the other reading
        enough,
        too_much
    };
    int step = 0;
    std::string step_id;
    double liquid_grams = 0; ///< of what is quenched, about
    QuenchNeed nominal, unreacted;
    std::vector<PlannedQuench> planned;
    double planned_electrons = 0;
    Verdict verdict = Verdict::nothing_to_destroy;
    std::string words;         ///< of the verdict, with grams
    double extra = 0;          ///< g of the planned (or suggested) reducer to have ready, without excess
    double extra_material = 0; ///< g of the planned solution
    std::string extra_of;
    std::vector<std::string> still_left; ///< after the planned quench, what goes by no electrons
    std::vector<StreamToNeutralise> to_neutralise;
    std::vector<std::string> stopped; ///< streams that nothing is done to: what they are, and where they go
    std::vector<std::string> then;    ///< where the others go that something is done to
    /// Of the streams in which it is destroyed, in the pot or afterwards; those that are stopped stay as they
    /// are.
    QuenchNeed destroyed, destroyed_unreacted;
    double spill_acid = 0;     ///< mol strong acid in all liquids, larger of both readings
    double sulfur_dioxide = 0; ///< L that acid frees from what the planned quench leaves at full conversion
    /// Of the streams that base goes into: what is needed takes up the strong acid, and the weak acid of what
    /// goes to a neutral container.
    Neutralisation strong, needed, with_weak;
    double heat = 0;        ///< kJ of the quench that is warned of; 0 where none is known
    double warming = 0;     ///< K in the whole liquor by that, if all at once and nothing cools; 0: little
    bool heat_known = true; ///< of all of it
    bool gets_hot = false;  ///< worth a warning, or not known
    bool may_boil = false;  ///< so hot that nobody quenches it as it is without asking
    std::vector<std::string> how;   ///< to destroy what is left: lines of `order` that hold no amounts
    std::vector<std::string> order; ///< what to do, one after the other
    std::vector<std::string> warnings;

    bool destroys() const { return destroyed.anything() || destroyed_unreacted.anything(); }
    /// Something that colours starch-iodide paper is left at one of the readings.
    bool has_oxidiser() const { return !nominal.oxidisers.empty() || !unreacted.oxidisers.empty(); }
};

/// A gas that one pot may free, and a room of them.
struct FreedGas {
    std::string gas, when;
    double pot = 0, room = 0; ///< L at 25 degC and 1 atm
};

/// \param pots  in the room at one time
std::vector<FreedGas> freed_gases(const QuenchPlan& plan, double pots);

/// mL of saturated sodium hydrogencarbonate that take up spilled acid. \param acid  mol
double spill_bicarbonate(double acid, const QuenchTable& table, const Catalogue& catalogue);

/// One plan a step. What is done with a stream is what its decision says.
/// \param streams  of the route as it is written
std::vector<QuenchPlan> plan_quenches(const Route& route, const std::vector<StreamAdvice>& streams,
                                      const StreamRules& rules);

} // namespace routeweigh::streams
