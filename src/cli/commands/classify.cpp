// SPDX-License-Identifier: MIT
#include "base/text.hpp"
#include "cli/commands/commands.hpp"
#include "cli/local_rules.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>

namespace routeweigh::cli {

std::function<void()> add_classify(CLI::App& program, Context& context) {
    const auto options = std::make_shared<MixtureRequest>();
    CLI::App* command =
        program.add_subcommand("classify", "Class, label and reasons of any composition or bottle");
    command
        ->add_option(
            "WHAT", options->ingredients,
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
    const auto limits = add_limits_options(*command);
    context.add_output_options(*command);
    command->footer(
        "Examples:\n"
        "  routeweigh classify \"hydrobromic acid 48 %\"\n"
        "  routeweigh classify \"ethanol=37 %\" water --rules US\n"
        "  routeweigh classify \"hydrogen bromide=3 %\" \"sodium acetate=6 %\" water --pair --working");
    return [options, limits, &context] {
        const std::vector<std::string> what = options->ingredients;
        if (what.size() == 1 && (what.front() == "-" || what.front().ends_with(".json")))
            options->file = context.sources(what).front();
        context.write(classify_mixture(*options, context.catalogue(), jurisdiction_of(*limits, context)));
    };
}

} // namespace routeweigh::cli
