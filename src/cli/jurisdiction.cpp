// SPDX-License-Identifier: MIT
#include "cli/jurisdiction.hpp"

#include "app/session.hpp"
#include "cli/wrong_call.hpp"

#include <fmt/core.h>

#include <CLI/CLI.hpp>

#include <algorithm>

namespace routeweigh::cli {
namespace {

constexpr MixtureRegime regimes[] = {MixtureRegime::eu, MixtureRegime::un, MixtureRegime::us};

std::vector<std::string> names() {
    std::vector<std::string> all;
    for (const MixtureRegime regime : regimes)
        all.emplace_back(words(regime));
    return all;
}

} // namespace

Jurisdiction JurisdictionOptions::chosen() const {
    Jurisdiction jurisdiction;
    for (const MixtureRegime regime : regimes)
        if (words(regime) == name) jurisdiction.regime = regime;
    if (jurisdiction.regime != MixtureRegime::un && !(with.empty() && without.empty()))
        throw CallError(
            "building blocks belong to the UN system: --with and --without need --jurisdiction un");
    for (const std::string& block : with)
        jurisdiction.blocks[block] = true;
    for (const std::string& block : without) {
        if (jurisdiction.blocks.count(block) > 0)
            throw CallError(fmt::format("the building block \"{}\" is switched on and off", block));
        jurisdiction.blocks[block] = false;
    }
    return jurisdiction;
}

std::shared_ptr<JurisdictionOptions> add_jurisdiction_options(CLI::App& command) {
    const auto options = std::make_shared<JurisdictionOptions>();
    const auto known = [](const std::string& name) {
        const std::vector<std::string> all = names();
        return std::find(all.begin(), all.end(), name) == all.end() ? no_such("jurisdiction", name, all)
                                                                    : std::string();
    };
    command
        .add_option(
            "--jurisdiction", options->name,
            "Whose limits classify: eu (CLP, the default), un (globally harmonised system), us (OSHA)")
        ->check(known)
        ->type_name("NAME");
    command.add_option("--with", options->with, "Building block of the UN system to switch on, by id")
        ->type_name("BLOCK");
    command.add_option("--without", options->without, "Building block of the UN system to switch off, by id")
        ->type_name("BLOCK");
    return options;
}

} // namespace routeweigh::cli
