// SPDX-License-Identifier: MIT
#include "app/session.hpp"
#include "assess/mixture/mixture_reader.hpp"
#include "assess/stream_mixture.hpp"
#include "base/quantity_text.hpp"
#include "cli/commands/commands.hpp"
#include "cli/jurisdiction.hpp"
#include "cli/wrong_call.hpp"
#include "documents/hazards_document.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <algorithm>

namespace routeweigh::cli {
namespace {

struct Options {
    std::vector<std::string> what;
    std::string name, phase, flash_point, boiling_point;
    std::optional<double> ph, viscosity;
    bool pair = false;
};

bool is_file(const std::vector<std::string>& what) {
    return what.size() == 1 && (what.front() == "-" || what.front().ends_with(".json"));
}

std::optional<double> celsius(const char* option, const std::string& text) {
    if (text.empty()) return std::nullopt;
    try {
        return as_temperature(parse_written(text)).celsius();
    } catch (const QuantityError& error) {
        throw CallError(fmt::format("{}: {}", option, error.what()));
    }
}

/// What the call says of the mixture goes before what the file says.
void apply(const Options& options, Mixture& mixture) {
    MixtureFacts& facts = mixture.facts;
    if (!options.name.empty()) mixture.name = options.name;
    if (options.ph) facts.ph = options.ph;
    if (options.viscosity) facts.viscosity = options.viscosity;
    if (const auto point = celsius("--flash-point", options.flash_point)) facts.flash_point = point;
    if (const auto point = celsius("--boiling-point", options.boiling_point)) facts.boiling_point = point;
    using Phase = Substance::Phase;
    if (!options.phase.empty())
        facts.phase = options.phase == "gas"      ? Phase::gas
                      : options.phase == "liquid" ? Phase::liquid
                                                  : Phase::solid;
}

void run(const Options& options, const Jurisdiction& jurisdiction, Context& context) {
    const Catalogue& catalogue = context.catalogue();
    Mixture mixture = is_file(options.what) ? read_mixture(context.sources(options.what).front(), catalogue)
                                            : read_mixture(options.what, catalogue);
    apply(options, mixture);
    if (std::vector<Problem> problems = problems_of(mixture); !problems.empty())
        throw InputError(std::move(problems));
    const ClassificationRules rules(catalogue, jurisdiction);
    streams::PairedComposition paired;
    if (options.pair) {
        paired = streams::pair_acids_and_bases(composition_of(mixture), rules.acid_base, catalogue);
        const double stated = composition_of(mixture).total() / 100;
        const MixtureFacts facts = mixture.facts;
        mixture = mixture_of(paired.composition, mixture.name, StreamKind::liquid);
        mixture.facts = facts;
        // What the shares leave open stays open; what leaves as gas was part of the stated.
        for (Ingredient& ingredient : mixture.ingredients)
            ingredient.mass_fraction *= stated;
    }
    screen_flash_point(mixture, rules.liquids);
    const MixtureClassification classification = classify(mixture, rules.mixture);
    context.write(mixture_document(classification, rules, options.pair ? &paired : nullptr));
}

} // namespace

std::function<void()> add_classify(CLI::App& program, Context& context) {
    const auto options = std::make_shared<Options>();
    CLI::App* command =
        program.add_subcommand("classify", "Class, label and reasons of any composition or bottle");
    command
        ->add_option(
            "WHAT", options->what,
            "Ingredients as \"NAME=SHARE\" by mass, one of them without share for the rest; a bottle "
            "of the catalogue; or a JSON file as hazard-data/mixture.schema.json describes it, or -")
        ->required();
    command->add_option("--name", options->name, "What the mixture is called")->type_name("TEXT");
    command->add_option("--ph", options->ph, "Measured pH")->type_name("PH");
    command->add_option("--flash-point", options->flash_point, "Measured, closed cup, such as \"36 degC\"")
        ->type_name("TEMPERATURE");
    command
        ->add_option("--boiling-point", options->boiling_point, "Where boiling starts, such as \"78 degC\"")
        ->type_name("TEMPERATURE");
    command->add_option("--viscosity", options->viscosity, "Kinematic, at 40 degC, in mm2/s")
        ->type_name("NUMBER");
    const auto known = [](const std::string& phase) {
        const std::vector<std::string> all{"solid", "liquid", "gas"};
        return std::find(all.begin(), all.end(), phase) == all.end() ? no_such("phase", phase, all) : "";
    };
    command->add_option("--phase", options->phase, "solid, liquid or gas; else from the ingredients")
        ->check(known)
        ->type_name("PHASE");
    command->add_flag(
        "--pair", options->pair,
        "Let acids and bases react first, as in a waste stream: acid beside acetate is acetic acid");
    const auto jurisdiction = add_jurisdiction_options(*command);
    context.add_output_options(*command);
    command->footer(
        "Examples:\n"
        "  routeweigh classify \"hydrobromic acid 48 %\"\n"
        "  routeweigh classify \"ethanol=37 %\" water --jurisdiction us\n"
        "  routeweigh classify \"hydrogen bromide=3 %\" \"sodium acetate=6 %\" water --pair --working");
    return [options, jurisdiction, &context] { run(*options, jurisdiction->chosen(), context); };
}

} // namespace routeweigh::cli
