// SPDX-License-Identifier: MIT
#include "assess/streams/stream_rules.hpp"

#include "assess/streams/scheme_file.hpp"
#include "chemistry/catalogue.hpp"

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

} // namespace routeweigh::streams
