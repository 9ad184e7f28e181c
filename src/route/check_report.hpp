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
        add(Severity::error, pointer, nullptr, std::move(message), std::move(nearest));
    }
    void contradiction(const std::string& pointer, const std::string& second, std::string message) {
        add(Severity::error, pointer, &second, std::move(message), {});
    }
    void warning(const std::string& pointer, std::string message) {
        add(Severity::warning, pointer, nullptr, std::move(message), {});
    }
    bool failed() const { return errors_ > 0; }

  private:
    void add(Severity severity, const std::string& pointer, const std::string* second, std::string message,
             std::string nearest) {
        // Each place is searched for in the file, so a file of nothing but faults must not list them all.
        constexpr int most = 100;
        int& count = severity == Severity::error ? errors_ : warnings_;
        if (++count > most + 1) return;
        Problem problem;
        problem.severity = severity;
        if (count > most) {
            problem.message = fmt::format("more than {} problems; the others are not listed", most);
            if (route_.source) problem.place.source = route_.source->name;
        } else {
            problem.message = std::move(message);
            problem.place = place_of(route_, pointer);
            if (second != nullptr) problem.second = place_of(route_, *second);
            problem.nearest = std::move(nearest);
        }
        problems_.add(std::move(problem));
    }

    const Route& route_;
    Problems& problems_;
    int errors_ = 0, warnings_ = 0;
};

} // namespace routeweigh
