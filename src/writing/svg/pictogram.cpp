// SPDX-License-Identifier: MIT
#include "writing/svg/pictogram.hpp"

#include "writing/escape.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

namespace routeweigh::writing {
namespace {

// What lies inside the frame keeps |x - 50| + |y - 50| below 42. White shapes cut into the black ones.
constexpr std::string_view bomb = R"svg(
<path d="M38.5 52a12.5 12.5 0 1 0 22.5 -2l-4.5 1.5l.5 -6l-5.5 3l-2.5 -5l-2.5 5.5l-5.5 -1.5z"/>
<path d="M50 22l2.4 15h-4.8zM33 32l8.6 11l-3.6 2.6zM68 31l-5 12.6l-3.8 -2.4zM24 47l10.5 4l-1.2 4zM77
46l-10.8 6l1.6 4zM28 66l8 -3.6l1.6 3.4zM72 66l-8 -3.6l-1.6 3.4z"/>
<path d="M40 26l3 1l-1 4l-3 -2zM59 25l3 2l-2 4l-2.4 -2zM27 39l4 1.4l-2 3l-3 -1.4zM73 37l2.4 2.4l-4 2.2zM42
76l3 -2.4l1 3.4zM56 74l4 .8l-3 2.6zM48.6 77h3v4h-3z"/>
)svg";

constexpr std::string_view flame = R"svg(
<path d="M51 17c1 13 16 20 16 36c0 9 -6 15.5 -12 17.5c3.4 -4 4 -9 1 -13.5c-1 3 -2.4 4 -4.4 4.6c1.4 -6 -1
-11.6 -5.4 -15.6c.6 7 -6.2 10.6 -6.2 17.6c0 3 1 5.2 2.6 7c-6 -2 -10.6 -8 -10.6 -15.6c0 -8 4.6 -12 6.6 -19c2
2 3.2 4.6 3.6 7.6c5 -7 8.8 -15.6 8.8 -26.6z"/>
<path d="M34 73h32v4h-32z"/>
)svg";

constexpr std::string_view ring = R"svg(
<path fill-rule="evenodd" d="M50 49a12.5 12.5 0 1 1 -.01 0zM50 55a6.5 6.5 0 1 0 .01 0z"/>
<path d="M51 14c.8 9.6 11.5 14.5 11.5 25.5c0 3.5 -1.2 6.5 -3 8.8c-1.4 -2 -3 -3.2 -4.8 -4c.4 -1.8 .2 -3.6
-.8 -5.4c-.8 1.8 -1.6 2.6 -2.9 3c.8 -4 -.7 -7.6 -3.6 -10.2c.3 4.6 -3 6.8 -4 11c-1.2 .6 -2.2 1.6 -3 2.8c-1.9
-2.2 -3 -5 -3 -8.2c0 -5.4 3.1 -8.2 4.5 -13c1.3 1.4 2.1 3.1 2.4 5.1c3.4 -4.6 6.3 -9.4 6.7 -15.4z"/>
<path d="M38 77h24v4h-24z"/>
)svg";

constexpr std::string_view cylinder = R"svg(
<g transform="rotate(-32 50 50)"><path d="M21 51a7.5 7.5 0 0 1 7.5 -7.5h32c4 0 6.5 2.5 9
4.5h3.5v-2.5h6v11h-6v-2.5h-3.5c-2.5 2 -5 4.5 -9 4.5h-32a7.5 7.5 0 0 1 -7.5 -7.5z"/>
<path fill="#fff" d="M29 46.5h30c2 0 3.5 .6 5 1.5h-36.5c-1.5 0 -2 -1.5 1.5 -1.5z"/></g>
)svg";

constexpr std::string_view corrosion = R"svg(
<g transform="matrix(1.1 0 0 1.1 -5 -5)"><path fill="none" stroke="#000" stroke-width="2"
stroke-linejoin="round" d="M22.5 44l20 -9.5l2.8 6l-20 9.5a3.3 3.3 0 0 1 -2.8 -6zM77.5 44l-20 -9.5l-2.8 6l20
9.5a3.3 3.3 0 0 0 2.8 -6z"/>
<path d="M24 46l19 -3.5l-18 7.5zM76 46l-19 -3.5l18 7.5zM44.6 44c1.4 2.4 1.8 3.4 1.8 4.6a1.8 1.8 0 0 1 -3.6
0c0 -1.2 .4 -2.2 1.8 -4.6zM42.6 52c1.4 2.4 1.8 3.4 1.8 4.6a1.8 1.8 0 0 1 -3.6 0c0 -1.2 .4 -2.2 1.8
-4.6zM55.4 44c1.4 2.4 1.8 3.4 1.8 4.6a1.8 1.8 0 0 1 -3.6 0c0 -1.2 .4 -2.2 1.8 -4.6zM58.5 51c1.4 2.4 1.8 3.4
1.8 4.6a1.8 1.8 0 0 1 -3.6 0c0 -1.2 .4 -2.2 1.8 -4.6z"/>
<path d="M28 63h10.5c.6 3 3.2 2 4 3.6c1 -1.6 3 -.8 3.5 -3.6h3v6.5h-14.5z"/>
<path fill="none" stroke="#000" stroke-width="1.3" stroke-linecap="round" d="M37.5 60.5c-2 -1.6 1.6 -2.6
-.4 -4.5M47.5 60.5c2 -1.6 -1.6 -2.6 .4 -4.5M64.5 60.5c2 -1.6 -1.6 -2.6 .4 -4.5"/>
<path d="M51.5 63.5c2.5 -1.5 4 -1.7 6 -1.5c.8 1.8 2.6 1.2 3 2.8c1.2 -1 2.6 -.4 3.2 -2c2 .2 3.3 .7 4.8
1.7l4.5 .5l-8 8.5c-3 .5 -6.5 .4 -9 -.5l-7.5 -1.5c-1.8 -.4 -1.5 -2.7 .4 -2.7l6 .5c1.5 0 2 -1.3 .5 -1.9c-2.5
-.8 -4.8 -.3 -5.4 -1.7c-.3 -.9 .4 -1.7 1.5 -2.2z"/></g>
)svg";

constexpr std::string_view skull = R"svg(
<g transform="matrix(0.85 0 0 0.85 7.5 7.5)"><path d="M26 57.5c-2.5 -.8 -4 2.6 -1.9 4c-1.8 1.6 0 4.6 2.4
3.6l23.5 9.4l23.5 -9.4c2.4 1 4.2 -2 2.4 -3.6c2.1 -1.4 .6 -4.8 -1.9 -4c-1.5 -1 -3.4 .2 -3 2l-21 8.4l-21
-8.4c.4 -1.8 -1.5 -3 -3 -2z"/>
<path d="M31.5 79.5c-1.2 -2 1 -3.6 2.7 -2.6l39.8 -19.4l3 4.2l-39.3 18.3c0 2.2 -2.7 2.8 -3.7 1c-1.5 .8 -3.1
.2 -2.5 -1.5zM68.5 79.5c1.2 -2 -1 -3.6 -2.7 -2.6l-39.8 -19.4l-3 4.2l39.3 18.3c0 2.2 2.7 2.8 3.7 1c1.5 .8
3.1 .2 2.5 -1.5z"/>
<path stroke="#fff" stroke-width="1.5" d="M50 18c-11 0 -18.5 7.5 -18.5 17.5c0 6.5 2.5 9.5 5.5 12.5c1.5 1.5
1.2 3.5 1 6c-.2 2.5 1.5 3.5 4 3.8c.8 3.7 1.5 6.7 8 6.7s7.2 -3 8 -6.7c2.5 -.3 4.2 -1.3 4 -3.8c-.2 -2.5 -.5
-4.5 1 -6c3 -3 5.5 -6 5.5 -12.5c0 -10 -7.5 -17.5 -18.5 -17.5z"/>
<path fill="#fff" d="M36.5 40.5c-.5 -4.5 9.5 -5.5 10.5 -1c.8 4 -1.5 6.3 -5 6.3s-5.2 -2 -5.5 -5.3zM63.5
40.5c.5 -4.5 -9.5 -5.5 -10.5 -1c-.8 4 1.5 6.3 5 6.3s5.2 -2 5.5 -5.3zM50 45.5l3 6.2l-3 -1.2l-3 1.2zM43.5
55h1.7v4.5h-1.7zM47.3 55.6h1.7v5h-1.7zM51 55.6h1.7v5h-1.7zM54.8 55h1.7v4.5h-1.7z"/></g>
)svg";

constexpr std::string_view exclamation = R"svg(
<path d="M50 18c5 0 8 3.2 7.6 8.4l-3.8 30.6h-7.6l-3.8 -30.6c-.4 -5.2 2.6 -8.4 7.6 -8.4z"/>
<circle cx="50" cy="70" r="7"/>
)svg";

constexpr std::string_view person = R"svg(
<path d="M50 16.5c5.2 0 8.8 3.8 8.8 9.6c0 4.6 -1.8 8.6 -4.3 10.7v4c4 3.2 14 4 16.5 8.2c.8 1.4 1.2 3 1.3
5l.3 9.5l-9.6 9.5l-1 -9l-1 14l-11 11l-11 -11l-1 -14l-1 9l-9.6 -9.5l.3 -9.5c.1 -2 .5 -3.6 1.3 -5c2.5 -4.2
12.5 -5 16.5 -8.2v-4c-2.5 -2.1 -4.3 -6.1 -4.3 -10.7c0 -5.8 3.6 -9.6 8.8 -9.6z"/>
<path fill="#fff" d="M50 44l2.6 9l8 -6.5l-4.8 9l10.2 .5l-9.5 4l6.5 8l-8.8 -4.8l-.6 10.3l-3.6 -9.7l-3.6
9.7l-.6 -10.3l-8.8 4.8l6.5 -8l-9.5 -4l10.2 -.5l-4.8 -9l8 6.5z"/>
)svg";

constexpr std::string_view shore = R"svg(
<g transform="matrix(0.85 0 0 0.85 7.5 7.5)"><path d="M37.5 66c1.8 -8 1.6 -14 .6 -20l-8 -6.5l1 -1.2l6.6
4.2l-1.3 -7.8l-4 -3.7l1 -1l3 2l-.2 -4.5l1.5 -.2l.8 5l1.6 8.2l3.6 -3.5l.4 -6.5l1.5 0l.2 5l5 -3.5l.9 1.2l-6.6
5.8l-4.4 6l.1 3l5.5 -3.5l6 -.5l.2 1.5l-5.6 1.2l-5.6 5c.3 5.5 .8 10.3 3.2 15.3z"/>
<path d="M19 66.5c8 -2.5 22 -2.5 30 0c3.5 1.2 5.5 3 9 3.5c6 .8 14 -.5 21 -1.2l-9.5 9.7c-8 1 -16 1 -23
-1.3c-8 -2.5 -15 -4.2 -22 -5.2z"/>
<path stroke="#fff" stroke-width="1.2" d="M46.5 64.5c2 -7.5 10 -12.3 18 -11c3.4 .6 5.6 2 7.6 3.6l6.4
-4.1l-1.5 7.2l2 6.3l-7 -3.3c-6 5 -15 6.3 -25.5 1.3z"/>
<path fill="none" stroke="#fff" stroke-width="1.3" stroke-linecap="round" d="M51.5 58.7l3 3M54.5 58.7l-3
3M59 56.5c1.8 2.5 1.8 5.5 0 8"/></g>
)svg";

constexpr Pictogram pictograms[] = {
    {"GHS01", "exploding bomb", "a round bomb that bursts, with splinters flying off", bomb},
    {"GHS02", "flame", "a flame above a bar", flame},
    {"GHS03", "flame over circle", "a flame on a ring, above a bar", ring},
    {"GHS04", "gas cylinder", "a gas cylinder that lies aslant", cylinder},
    {"GHS05", "corrosion", "liquid drips from two vessels and eats into a bar and a hand", corrosion},
    {"GHS06", "skull and crossbones", "a skull in front of two crossed bones", skull},
    {"GHS07", "exclamation mark", "a thick exclamation mark", exclamation},
    {"GHS08", "health hazard", "the upper body of a person with a star bursting on the chest", person},
    {"GHS09", "environment", "a bare tree and a dead fish on a shore", shore},
};

} // namespace

std::span<const Pictogram> pictogram_list() {
    return pictograms;
}

const Pictogram* find_pictogram(std::string_view code) {
    const auto* found = std::find_if(std::begin(pictograms), std::end(pictograms),
                                     [&](const Pictogram& pictogram) { return pictogram.code == code; });
    return found == std::end(pictograms) ? nullptr : found;
}

std::string pictogram_words(std::string_view code) {
    const Pictogram* pictogram = find_pictogram(code);
    return pictogram == nullptr ? std::string(code) : fmt::format("{} {}", code, pictogram->name);
}

std::string pictogram_svg(const Pictogram& pictogram, std::string_view id, double side) {
    const std::string own = html_escape(id);
    return fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100 100\" width=\"{0:g}\" "
                       "height=\"{0:g}\" "
                       "role=\"img\" aria-labelledby=\"{1}-title {1}-desc\">\n"
                       "<title id=\"{1}-title\">{2} {3}</title>\n<desc id=\"{1}-desc\">{4}</desc>\n"
                       "<path d=\"M50 3.5L96.5 50L50 96.5L3.5 50Z\" fill=\"#fff\" stroke=\"#d4141c\" "
                       "stroke-width=\"5\" stroke-linejoin=\"miter\"/>\n<g fill=\"#000\">{5}</g>\n</svg>\n",
                       side, own, pictogram.code, pictogram.name, pictogram.shows, pictogram.symbol);
}

} // namespace routeweigh::writing
