// SPDX-License-Identifier: MIT
#include "assess/course/course_use.hpp"

#include <algorithm>
#include <cmath>

namespace routeweigh::course {

std::vector<ContainerTotal> CourseUse::containers() const {
    std::vector<ContainerTotal> totals;
    const auto of_name = [&totals](const std::string& name) -> ContainerTotal& {
        const auto found = std::find_if(totals.begin(), totals.end(),
                                        [&](const ContainerTotal& total) { return total.name == name; });
        return found == totals.end() ? totals.emplace_back(ContainerTotal{name, 0, 0, 0}) : *found;
    };
    for (const Experiment& experiment : experiments)
        for (const streams::ContainerFit& fit : experiment.use.waste.fits) {
            ContainerTotal& total = of_name(fit.container->name);
            total.volume += fit.volume;
            total.usable = fit.usable;
        }
    for (const Experiment& experiment : experiments)
        for (const streams::OwnBottle& bottle : experiment.use.waste.own_bottles)
            of_name("bottles of their own").volume += bottle.volume;
    for (ContainerTotal& total : totals)
        if (total.usable > 0.0)
            total.containers = static_cast<int>(std::ceil(total.volume / total.usable - 1e-9));
    return totals;
}

std::vector<std::pair<std::string, std::vector<int>>> CourseUse::techniques() const {
    std::vector<std::pair<std::string, std::vector<int>>> practised;
    for (const Experiment& experiment : experiments)
        for (const std::string& technique : experiment.techniques) {
            const auto found = std::find_if(practised.begin(), practised.end(),
                                            [&](const auto& entry) { return entry.first == technique; });
            if (found == practised.end())
                practised.push_back({technique, {experiment.week}});
            else
                found->second.push_back(experiment.week);
        }
    return practised;
}

double CourseUse::total(double (*of)(const ClassUse&)) const {
    double sum = 0.0;
    for (const Experiment& experiment : experiments)
        sum += of(experiment.use);
    return sum;
}

} // namespace routeweigh::course
