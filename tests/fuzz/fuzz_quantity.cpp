// SPDX-License-Identifier: MIT
// Written quantities: whatever is read is a finite number in whatever it is turned into.
#include "fuzz_driver.hpp"

#include "base/quantity_text.hpp"

#include <cmath>

namespace {

template<class Read>
void turn(const Read& read) {
    try {
        fuzz::require(std::isfinite(read()), "no finite number");
    } catch (const routeweigh::QuantityError& error) {
        fuzz::require(error.what()[0] != '\0', "refused without a word");
    }
}

} // namespace

bool fuzz::try_input(std::string_view input) {
    using namespace routeweigh;
    bool accepted = false;
    turn([&] {
        const WrittenQuantity written = parse_written(input);
        require(written.repeat >= 1 && written.significant >= 1, "no portions or no digits");
        require(!written.spread || (std::isfinite(*written.spread) && *written.spread >= 0),
                "a spread that is none");
        turn([&] { return as_mass(written).in(unit::g); });
        turn([&] { return as_volume(written).in(unit::mL); });
        turn([&] { return as_amount(written).in(unit::mol); });
        turn([&] { return as_duration(written).in(unit::s); });
        turn([&] { return as_energy(written).in(unit::J); });
        turn([&] { return as_power(written).in(unit::W); });
        turn([&] { return as_temperature(written).celsius(); });
        turn([&] { return as_fraction(written); });
        turn([&] { return as_mass_ratio(written); });
        accepted = true;
        return written.value;
    });
    return accepted;
}
