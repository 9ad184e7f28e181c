// SPDX-License-Identifier: MIT
#include "assess/bench/bench_rules.hpp"

#include "assess/streams/scheme_file.hpp"
#include "assess/utilities/utility_data.hpp"
#include "chemistry/catalogue.hpp"

namespace routeweigh::bench {

MixtureRegime regime_of(const streams::LocalRules& local) {
    return local.jurisdiction == "US" ? MixtureRegime::us : MixtureRegime::eu;
}

BenchRules::BenchRules(const Catalogue& catalogue, streams::LocalRules local)
    : mixture(read_mixture_rules(catalogue, regime_of(local))), streams(catalogue, std::move(local)),
      glassware(Glassware::read(streams::required_scheme(catalogue, "glassware"))),
      structures(Structures::read(streams::required_scheme(catalogue, "structures"))),
      condenser_within(utilities::read_utility_data(catalogue).reflux_within.value) {}

} // namespace routeweigh::bench
