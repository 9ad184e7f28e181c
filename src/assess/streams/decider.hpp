// SPDX-License-Identifier: MIT
// The order of decision, one function a question. Only for the files of the container decision.
#pragma once

#include "assess/streams/container_decision.hpp"

#include <string>
#include <string_view>
#include <utility>

namespace routeweigh::streams {

class Decider {
  public:
    Decider(const StreamDescription& stream, const LocalRules& local) : stream_(stream), local_(local) {}

    Decision run();
    Decision run_on_product();

  private:
    // decider.cpp: questions for every stream
    void decide_gas();
    bool stop_at_list();
    bool stop_at_unknown();
    void let_gases_leave();
    void look_for_oxidants();
    bool decide_metal();
    void decide_by_form();
    void decide_solid();
    void decide_organic();
    bool is_halogenated();

    // decider_acid.cpp: what is done about acid, base and sulfite
    /// Acid or base keeps it out of organic containers; sulfite out of acid ones.
    void correct_acid(bool acid_is_welcome);
    void refuse_to_neutralise();
    /// \param why  the weak acid may not stay
    void count_weak_acid(std::string_view why);

    // decider_water.cpp: questions for what is mostly water
    void decide_aqueous();
    bool flash_unknown();
    bool burns();
    void decide_by_acid();
    std::string alcohol_words() const;
    std::string flash_words() const;

    void because(std::string what, std::string words, std::optional<double> value = {},
                 std::optional<double> line = {}, std::string unit = {}, std::string source = {}) {
        decision_.reasons.push_back(
            {std::move(what), std::move(words), value, line, std::move(unit), std::move(source)});
    }
    /// \param words  of an amount with a blank behind it, or of "" for the words without amounts
    template<typename Words>
    void first(Treatment::Kind kind, const std::string& amount, Words words, double moles,
               std::string of = {}) {
        decision_.first.push_back({kind, words(amount + " "), words(std::string()), moles, std::move(of)});
    }
    void stop(std::string where, std::string summary);
    void put(ContainerKind kind);

    const StreamDescription& stream_;
    const LocalRules& local_;
    Decision decision_;
    double acid_from_quench_ = 0; ///< mol
    std::string quench_leaves_;   ///< what acid would turn into sulfur dioxide; "" for nothing of that kind
};

} // namespace routeweigh::streams
