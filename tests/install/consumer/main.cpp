// SPDX-License-Identifier: MIT
// A program outside the project that asks the installed library for a molar mass.
#include "chemistry/catalogue.hpp"

#include <cstdio>

int main() {
    // C8H9NO with the abridged standard atomic weights of IUPAC 2021 (remembered):
    // 8 x 12.011 + 9 x 1.0080 + 14.007 + 15.999 = 135.166
    const routeweigh::Substance* acetanilide =
        routeweigh::Catalogue::embedded().find_substance("acetanilide");
    std::printf("%s %.3f\n", acetanilide->name.c_str(), acetanilide->molar_mass);
    return 0;
}
