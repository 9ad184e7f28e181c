// SPDX-License-Identifier: MIT
// The options of every command that draws, progress on a terminal, and a clean end on an interrupt.
#pragma once

#include "app/found_yields.hpp"
#include "app/session.hpp"

#include <memory>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace routeweigh::cli {

/// Exit status of a run that an interrupt ended: 128 + SIGINT, as shells have it.
inline constexpr int interrupted_status = 130;

/// Whether an interrupt ended a run of draws; what had been drawn by then has been written.
bool draws_were_interrupted();

class SamplingOptions {
  public:
    /// Adds the options. \param default_digits  that must be stable where nothing is asked for; 0: one batch
    void add_to(CLI::App& command, int default_digits);

    /// Some option was given.
    bool asked() const;

    /// The routes of these sources. Where results are given, their means stand in the routes, and `sources`
    /// become those that say so. Prints warnings. \throws InputError, CallError
    std::vector<Route> read(std::vector<SourcePtr>& sources, const Catalogue& catalogue,
                            const AssessmentRules& rules);

    /// Draws, with progress on a terminal; an interrupt ends the run and keeps what has been drawn.
    /// \param sources  that the routes were read from, and the catalogue that they were read with
    /// \param figures  ids of those that must be stable; none: all
    /// \throws InputError, CallError
    std::unique_ptr<Certainty> run(const Comparison& comparison, const std::vector<SourcePtr>& sources,
                                   const Catalogue& catalogue,
                                   const std::vector<std::string>& figures = {}) const;

  private:
    CLI::App* command_ = nullptr;
    std::size_t draws_ = 0; ///< 0: as many as the digits need
    int digits_ = 0;
    std::uint64_t seed_ = 1;
    int threads_ = 0;
    double coverage_ = 95;
    double points_ = 0;
    bool atomic_weights_ = false;
    std::vector<std::string> results_;
    std::vector<FoundYields> found_;
};

} // namespace routeweigh::cli
