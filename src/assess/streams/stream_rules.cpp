// SPDX-License-Identifier: MIT
#include "assess/streams/stream_rules.hpp"

#include "assess/streams/scheme_file.hpp"
#include "base/text.hpp"
#include "chemistry/catalogue.hpp"

#include <fmt/core.h>

namespace routeweigh::streams {

StreamRules::StreamRules(const Catalogue& from, LocalRules local_rules)
    : catalogue(from), local(std::move(local_rules)),
      acid_base(read_acid_base_table(required_scheme(from, "acids_and_bases"))),
      liquids(read_mixed_liquids(required_scheme(from, "mixed_liquids"))),
      quench(read_quench_table(required_scheme(from, "quench"))),
      compatibility{read_reactivity_groups(required_scheme(from, "reactivity_groups")),
                    read_reactivity_chart(required_scheme(from, "reactivity_pairs")),
                    read_special_meetings(required_scheme(from, "special_meetings")),
                    read_incompatible_wastes(required_scheme(from, "appendix_v"))} {}

LocalRules shipped_local_rules(const Catalogue& catalogue, std::string_view jurisdiction) {
    return read_local_rules(required_scheme(catalogue, fmt::format("local_rules_{}", fold(jurisdiction))));
}

} // namespace routeweigh::streams
