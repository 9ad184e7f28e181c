// SPDX-License-Identifier: MIT
#include "assess/stock/pack_choice.hpp"

#include "base/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>
#include <utility>

namespace routeweigh::stock {
namespace {

/// Sums of prices and masses that differ by less are the same but for rounding: share of the larger.
constexpr double pack_rounding = 1e-12;

bool dearer(double one, double other) {
    return one > other + pack_rounding * std::abs(other);
}

/// Packs of one size that cover the grams alone, at least one. A need that is a whole number of packs but for
/// rounding takes no further pack.
int packs_to_cover(double grams, const Pack& pack) {
    return static_cast<int>(std::clamp(std::ceil(grams / pack.grams - 1e-9), 1.0, 1e9));
}

double price_of_gram(const Pack& pack) {
    return pack.price / pack.grams;
}

/// Goes through the sizes from the cheapest gram to the dearest, each in every number that may still lead to
/// something better: a branch ends where even grams without a pack around them would cost more than the best.
class PackSearch {
  public:
    explicit PackSearch(std::vector<const Pack*> sizes) : sizes_(std::move(sizes)) {
        std::stable_sort(sizes_.begin(), sizes_.end(), [](const Pack* a, const Pack* b) {
            return std::pair(price_of_gram(*a), -a->grams) < std::pair(price_of_gram(*b), -b->grams);
        });
        taken_.resize(sizes_.size());
        largest_.resize(sizes_.size());
        double largest = 0;
        for (std::size_t i = sizes_.size(); i-- > 0;)
            largest_[i] = largest = std::max(largest, sizes_[i]->grams);
    }

    /// Numbers by size; the sizes in order of search.
    std::vector<PackCount> cover(double grams) {
        need_ = grams;
        go_on(0, 0, 0, 0);
        std::vector<PackCount> packs;
        for (std::size_t i = 0; i < best_taken_.size(); ++i)
            if (best_taken_[i] > 0) packs.push_back({sizes_[i], best_taken_[i]});
        return packs;
    }

  private:
    void go_on(std::size_t size, double grams, double cost, int count) {
        const double lacking = need_ - grams;
        if (lacking <= 1e-9 * need_) return keep({cost, count, -lacking});
        if (size == sizes_.size() || (++visited_ > most_visited && !best_taken_.empty())) return;
        const Pack& pack = *sizes_[size];
        const double least_cost = cost + lacking * price_of_gram(pack);
        const int least_count = count + static_cast<int>(std::ceil(lacking / largest_[size] - 1e-9));
        if (!may_win(least_cost, least_count) || was_here(size, lacking, cost, count)) return;
        // The last size has no choice left.
        const int most = packs_to_cover(lacking, pack), least = size + 1 == sizes_.size() ? most : 0;
        for (int n = most; n >= least; --n) {
            taken_[size] = n;
            const double rest = std::max(0.0, lacking - n * pack.grams);
            // With fewer of this size the rest is dearer still.
            if (n < most && !may_win(cost + n * pack.price + rest * price_of_gram(*sizes_[size + 1]), 0))
                break;
            go_on(size + 1, grams + n * pack.grams, cost + n * pack.price, count + n);
        }
        taken_[size] = 0;
    }

    struct Sum {
        double cost = 0;
        int count = 0;
        double left_over = 0;
    };

    bool may_win(double cost, int count) const {
        if (best_taken_.empty()) return true;
        return dearer(best_.cost, cost) || (!dearer(cost, best_.cost) && count <= best_.count);
    }

    void keep(const Sum& sum) {
        const bool equal =
            !best_taken_.empty() && !dearer(best_.cost, sum.cost) && !dearer(sum.cost, best_.cost);
        const bool better = best_taken_.empty() || (equal ? std::tie(sum.count, sum.left_over) <
                                                                std::tie(best_.count, best_.left_over)
                                                          : sum.cost < best_.cost);
        if (!better) return;
        best_ = sum;
        best_taken_ = taken_;
    }

    /// The same grams lacking were reached before, as cheaply and with as few packs; or these are noted.
    bool was_here(std::size_t size, double lacking, double cost, int count) {
        const auto [place, is_new] =
            seen_.try_emplace({size, std::llround(lacking / need_ * 1e9)}, std::pair(cost, count));
        if (is_new) return false;
        if (!dearer(place->second.first, cost) && place->second.second <= count) return true;
        if (!dearer(cost, place->second.first) && count <= place->second.second)
            place->second = {cost, count};
        return false;
    }

    static constexpr int most_visited = 200'000; ///< places of the search; a fraction of a second
    int visited_ = 0;
    std::vector<const Pack*> sizes_;
    std::vector<double> largest_; ///< of this size and those behind it, g
    std::vector<int> taken_, best_taken_;
    Sum best_;
    double need_ = 0;
    std::map<std::pair<std::size_t, long long>, std::pair<double, int>> seen_;
};

} // namespace

int PackChoice::count() const {
    int sum = 0;
    for (const PackCount& one : packs)
        sum += one.count;
    return sum;
}

std::string PackChoice::words() const {
    std::vector<std::string> parts;
    for (const PackCount& one : packs)
        parts.push_back(fmt::format("{} x {}", one.count, one.pack->size));
    return join(parts, " + ");
}

PackChoice choose_packs(const PriceList& prices, const Material& material, double grams) {
    PackChoice choice;
    auto sizes = prices.packs_of(material);
    if (!(grams > 0) || sizes.empty()) return choice;
    choice.packs = PackSearch(std::move(sizes)).cover(grams);
    std::stable_sort(choice.packs.begin(), choice.packs.end(),
                     [](const PackCount& a, const PackCount& b) { return a.pack->grams > b.pack->grams; });
    for (const PackCount& one : choice.packs) {
        choice.grams += one.count * one.pack->grams;
        choice.cost += one.count * one.pack->price;
    }
    const double left_over = choice.grams - grams;
    choice.left_over = left_over > 1e-9 * grams ? left_over : 0.0;
    return choice;
}

} // namespace routeweigh::stock
