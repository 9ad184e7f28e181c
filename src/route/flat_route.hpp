// SPDX-License-Identifier: MIT
// The compiled form of a checked route, and its one arithmetic.
//
// A step becomes a list of operations on the amounts (mol) of the substances in its pot. One evaluation
// carries them through the stages and fills three flat arrays: what went in, what left and by which stream,
// and the most of each substance that was in the flask at one time. Ledger, totals, figures and sampling all
// read these arrays, so the named and the fast result cannot part. Streams are summed from charges and
// extents, never as a difference: a wrong coefficient must break closure.
#pragma once

#include "route/extents.hpp"
#include "route/route.hpp"
#include "route/scale.hpp"

#include <span>
#include <string>
#include <vector>

namespace routeweigh {

/// One component of one charge.
struct Inflow {
    int step, stage, charge; ///< place in the route
    int slot;                ///< of the charge in Inputs::charged
    const Substance* substance;
    int local;       ///< index of the substance in the pot of its step
    double fraction; ///< g per g of charge, as the catalogue has it
    double moles_per_gram;
    const Role* role;
    bool reactant; ///< stands on the left of the step's overall equation and is charged as reactant
    bool carrier;  ///< the liquid of a solution, not what it was charged for
    bool neat;     ///< the bottle holds nothing else
    int fed_by;    ///< step that makes it, or -1: bought
    int feed;      ///< index in ScalePlan::feeds, or -1
    bool as_used;  ///< drawn from the air
};

enum class StreamKind { liquid, vapour, gas, residue };

/// A named stream of one step; its outflows are `first_outflow + local` for every substance of the pot.
struct FlatStream {
    int step;
    std::string name;
    StreamKind kind;
    int first_outflow;
};

struct FlatSeparation {
    int stream;                 ///< within the step
    std::vector<double> leaves; ///< by local substance: fraction that leaves, before liquor is held back
    double held;                ///< g liquor per g kept
    double loss;                ///< share of the step's product loss, 0 to 1

    /// Share of the liquor that really leaves; the rest is held by what stays. 0 to 1.
    template<Number N>
    N share_leaving(std::span<const N> amounts, std::span<const double> molar_mass) const;
    /// What leaves is taken from the amounts (mol).
    void take_out(std::vector<double>& amounts, std::span<const double> molar_mass) const;
};

/// A substance whose greatest amount in the flask needs a search: one reaction makes it, another uses it up.
struct FlaskCeiling {
    int local;
    Extents::Ceiling ceiling;
};

struct FlatStage {
    int first_inflow = 0, last_inflow = 0; ///< half-open range
    Extents extents;
    std::vector<Extents> full;      ///< none or one: the same reactions at full conversion
    std::vector<int> made;          ///< what a reaction that can start makes
    std::vector<int> forming_gases; ///< those that leave by the gas stream when the stage makes them
    std::vector<FlaskCeiling> ceilings;
    std::vector<Extents::Ceiling> bromine; ///< none or one: mol Br2 held free or as tribromide
    std::vector<FlatSeparation> separations;
};

struct FlatStep {
    std::vector<const Substance*> substances; ///< of the pot, by local index
    std::vector<double> molar_mass;           ///< g/mol
    std::vector<FlatStage> stages;
    int product = 0;                   ///< local index
    std::size_t stages_to_product = 0; ///< up to the last that charges, makes or uses the product
    int first_stream = 0, stream_count = 0, rest_stream = 0, gas_stream = 0; ///< the last two within the step
    int first_flask = 0; ///< of this step in Evaluation::flask
    bool isolated_is_mass = false;
    bool partial_conversion = false; ///< some conversion is below 100 %
    bool product_reacts = false;     ///< some of the product is used up again, or was charged as seeds
    bool forms_after_loss = false;   ///< product forms or reacts on after a separation that takes a loss
    bool made_in_one = false; ///< all of it is in the pot when the last stage that changes it has reacted
};

/// A recycled substance: outflow and the inflows it saves, in the order of the file.
struct FlatReuse {
    int outflow;
    std::vector<int> inflows;
};

/// Everything that may vary from one evaluation to the next.
template<Number N>
struct InputsOf {
    std::vector<N> charged;   ///< g, one a charge
    std::vector<N> fractions; ///< by inflow: g of the substance per g of charge
    std::vector<N> isolated;  ///< by step: g or fraction of theory, see FlatStep::isolated_is_mass
    std::vector<N> reused;    ///< by reuse: fraction
};
using Inputs = InputsOf<double>;

template<Number N>
struct StepResultOf {
    N theory = 0;   ///< mol product at full conversion, as the step is written
    N made = 0;     ///< mol product that forms
    N isolated = 0; ///< mol product isolated
    N scale = 1;    ///< runs of this step for one run of the route
    N bromine = 0;  ///< mol Br2 equivalents free at most
};
using StepResult = StepResultOf<double>;

/// Result of one evaluation. Masses in g for one run of the last step; reusable without allocation.
template<Number N>
struct EvaluationOf {
    std::vector<StepResultOf<N>> steps;
    std::vector<N> in;            ///< by inflow, gross
    std::vector<N> credit;        ///< by inflow: covered by reuse
    std::vector<N> out;           ///< by outflow, after reuse; loss read as lost product
    std::vector<N> out_unreacted; ///< by outflow, after reuse; loss read as never formed
    std::vector<N> flask;         ///< by step and local substance: most at one time
    std::vector<N> recovered;     ///< by reuse
    N product = 0;                ///< g isolated of the last step
    bool alike = true;            ///< see agree(); of one draw always true
};
using Evaluation = EvaluationOf<double>;

/// The route is kept by pointer and must outlive its compiled form.
class FlatRoute {
  public:
    /// \pre the route passed route_checks without error
    explicit FlatRoute(const Route& route);

    const Route& route() const { return *route_; }
    const Inputs& nominal() const { return nominal_; }
    std::span<const Inflow> inflows() const { return inflows_; }
    std::span<const FlatStream> streams() const { return streams_; }
    std::span<const FlatStep> steps() const { return steps_; }
    std::span<const Inflow> inflows_of(int step) const; ///< a part of inflows()
    int final_step() const { return scale_.final_step(); }
    const ScalePlan& scale_plan() const { return scale_; }
    int outflow_count() const { return outflow_count_; }

    Evaluation evaluate(const Inputs& inputs) const;
    /// Of one draw, or of several at once. The result means nothing where these are not alike.
    template<Number N>
    void evaluate(const InputsOf<N>& inputs, EvaluationOf<N>& result) const;

    /// Extents (mol) of every reaction of every stage of a step, as written, nominal reading; for reports.
    std::vector<std::vector<double>> extents(int index, const Inputs& inputs) const;

  private:
    enum class Reading { theory, formation, nominal, unreacted };
    template<Number N>
    struct Limits {
        N lost = 0.0;         ///< mol product that the separations lose together
        N product_cap = -1.0; ///< most product (mol) that may form; below 0: no cap
    };
    friend class RouteCompiler;

    /// Carries a second pot through a step with the product capped, to find the bases of that reading.
    void prepare_caps(int index);
    template<Number N>
    void run_step(int index, const InputsOf<N>& inputs, EvaluationOf<N>& result) const;
    template<Number N>
    N isolate(int index, const InputsOf<N>& inputs, const N& made, StepResultOf<N>& numbers) const;
    double search(int index, const Inputs& inputs, Limits<double> limits, double Limits<double>::*member,
                  double slope, double isolated) const;
    /// \param record  receives what enters and leaves; needed for the nominal and the unreacted reading only
    /// \return mol product in the pot at the end; for theory all that forms, before any of it reacts on
    template<Number N>
    N run_pot(int index, const InputsOf<N>& inputs, Reading reading, Limits<N> limits,
              EvaluationOf<N>* record, bool& alike, std::vector<std::vector<N>>* extents = nullptr) const;
    template<Number N>
    void scale_and_reuse(const InputsOf<N>& inputs, EvaluationOf<N>& result) const;

    const Route* route_;
    std::vector<Inflow> inflows_;
    std::vector<FlatStream> streams_;
    std::vector<FlatStep> steps_;
    std::vector<FlatReuse> reuse_;
    ScalePlan scale_;
    Inputs nominal_;
    int outflow_count_ = 0, flask_count_ = 0;
};

} // namespace routeweigh
