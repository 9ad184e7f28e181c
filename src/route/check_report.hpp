// SPDX-License-Identifier: MIT
// What the checks of a route found: where, and how bad.
#pragma once

#include "input/field.hpp"
#include "route/route.hpp"
#include "route/route_checks.hpp"

#include <fmt/core.h>

#include <string>
#include <utility>

namespace routeweigh {

class CheckReport {
  public:
    CheckReport(const Route& route, Problems& problems) : route_(route), problems_(problems) {}
    void error(const std::string& pointer, std::string message, std::string nearest = {}) {
        failed_ = true;
        if (has_room())
            problems_.add(
                {Severity::error, std::move(message), place_of(route_, pointer), {}, std::move(nearest)});
    }
    void contradiction(const std::string& pointer, const std::string& second, std::string message) {
        failed_ = true;
        if (has_room())
            problems_.add({Severity::error,
                           std::move(message),
                           place_of(route_, pointer),
                           place_of(route_, second),
                           {}});
    }
    void warning(const std::string& pointer, std::string message) {
        if (has_room())
            problems_.add({Severity::warning, std::move(message), place_of(route_, pointer), {}, {}});
    }
    bool failed() const { return failed_; }

  private:
    /// Each place is searched for in the file, so a file of nothing but faults must not list them all.
    bool has_room() {
        constexpr int most = 100;
        if (++count_ == most + 1)
            problems_.add({Severity::error,
                           fmt::format("more than {} problems; the others are not listed", most),
                           {route_.source ? route_.source->name : "", {}, 0, 0, {}, 0},
                           {},
                           {}});
        return count_ <= most;
    }

    const Route& route_;
    Problems& problems_;
    bool failed_ = false;
    int count_ = 0;
};

} // namespace routeweigh
