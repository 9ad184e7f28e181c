// SPDX-License-Identifier: MIT
#include "documents/amount_text.hpp"

#include "assess/stock/stock_list.hpp"
#include "documents/number.hpp"

namespace routeweigh::documents {

std::string grams_text(double grams) {
    if (grams >= 999.5) return digits(grams / 1000) + " kg";
    if (grams > 0 && grams < 0.1) return digits(grams * 1000) + " mg";
    return digits(grams) + " g";
}

std::string millilitres_text(double millilitres) {
    return millilitres >= 999.5 ? digits(millilitres / 1000) + " L" : digits(millilitres) + " mL";
}

std::string amount_text(double grams, const Material& material) {
    return stock::is_poured(material) ? millilitres_text(grams / *material.density) : grams_text(grams);
}

} // namespace routeweigh::documents
