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

double CourseUse::cost_of_packs(const stock::PriceList& prices, int week, const ClassUse* instead) const {
    std::vector<std::pair<const Material*, double>> needs; // in order of first use, so that sums repeat
    for (const Experiment& experiment : experiments) {
        const ClassUse& use = instead != nullptr && experiment.week == week ? *instead : experiment.use;
        for (const stock::StockLine& line : use.stock.lines) {
            auto need = std::find_if(needs.begin(), needs.end(),
                                     [&](const auto& entry) { return entry.first == line.material; });
            if (need == needs.end()) need = needs.insert(needs.end(), {line.material, 0.0});
            need->second += line.to_get;
        }
    }
    double cost = 0.0;
    for (const auto& [material, grams] : needs)
        cost += stock::choose_packs(prices, *material, grams).cost;
    return cost;
}

} // namespace routeweigh::course
