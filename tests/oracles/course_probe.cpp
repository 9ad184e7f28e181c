// SPDX-License-Identifier: MIT
// Prints what present() says, for check_course.py. Each line of input: the constant of making ("inf": at
// once), the time, the number of portions, and of each from, until, amount, constant of use.
#include "assess/flask/pulse_course.hpp"

#include <cstdio>
#include <iostream>
#include <sstream>
#include <string>

int main() {
    std::string line;
    while (std::getline(std::cin, line)) {
        std::istringstream fields(line);
        std::string made;
        double t = 0;
        int count = 0;
        fields >> made >> t >> count;
        std::vector<routeweigh::FedPortion> portions(static_cast<std::size_t>(count));
        for (routeweigh::FedPortion& portion : portions)
            fields >> portion.from >> portion.until >> portion.amount >> portion.used;
        if (!fields) {
            std::fprintf(stderr, "cannot read: %s\n", line.c_str());
            return 1;
        }
        std::printf("%.17g\n",
                    routeweigh::present(portions, made == "inf" ? routeweigh::at_once : std::stod(made), t));
    }
    return 0;
}
