// Proportions of the blades. Lengths, veins, margins and stalks within the floras named in the protocol
// pack's host key; shape numbers without a published figure are drawing judgement.

#include <algorithm>
#include <iterator>

#include "ui/figures/blade.h"

namespace cupule::ui {

namespace {

// clang-format off
constexpr BladeKind kinds[] = {
    // id, length, half-width, widest at, base and tip exponents,
    //     side veins, their angles and curve, margin, depth, bristle, stalk, colour
    {"castanea-sativa", 150, 220, 0.158, 0.52, 0.60, 0.94,
     17, 21, 62, 42, 0.10, Margin::bristleTeeth, 0.28, 1.6, 2.6, 14, 22, {46, -24, 32}},
    {"castanea-crenata", 110, 170, 0.135, 0.50, 0.62, 0.95,
     17, 22, 65, 46, 0.10, Margin::bristleTeeth, 0.13, 2.2, 3.4, 10, 16, {48, -22, 31}},
    {"castanea-mollissima", 100, 150, 0.215, 0.50, 0.66, 0.95,
     12, 15, 60, 42, 0.12, Margin::bristleTeeth, 0.20, 1.2, 2.0, 8, 14, {48, -22, 30}},
    {"quercus-castaneifolia", 90, 140, 0.200, 0.48, 0.66, 0.95,
     9, 12, 56, 42, 0.05, Margin::plainTeeth, 0.35, 0.4, 0.7, 12, 18, {43, -22, 26}},
    {"quercus-robur", 85, 120, 0.300, 0.62, 0.92, 0.50,
     4, 5, 50, 40, 0.04, Margin::roundLobes, 0.44, 0, 0, 3, 6, {45, -22, 33}},
    {"quercus-petraea", 85, 120, 0.285, 0.53, 0.85, 0.62,
     6, 7, 52, 42, 0.03, Margin::shallowLobes, 0.24, 0, 0, 13, 22, {44, -22, 31}},
    {"quercus-cerris", 85, 125, 0.250, 0.52, 0.72, 0.72,
     6, 8, 58, 42, 0.02, Margin::pointedLobes, 0.42, 0, 0, 8, 15, {43, -19, 28}},
    {"carpinus-betulus", 65, 95, 0.275, 0.44, 0.55, 0.88,
     11, 13, 48, 40, 0.00, Margin::doubleTeeth, 0.016, 0, 0, 9, 13, {49, -25, 36}},
    {"fagus-sylvatica", 60, 85, 0.310, 0.47, 0.60, 0.80,
     6, 8, 52, 44, 0.03, Margin::wavy, 0.004, 0.9, 1.6, 8, 12, {47, -26, 35}},
    {"juglans-regia", 90, 130, 0.235, 0.48, 0.58, 0.85,
     10, 13, 62, 50, 0.20, Margin::entire, 0.003, 0, 0, 2, 2, {48, -24, 35}},
    {"aesculus", 150, 220, 0.175, 0.64, 1.12, 0.66,
     17, 20, 52, 44, 0.03, Margin::unevenSaw, 0.010, 0, 0, 0, 0, {45, -25, 32}, 0, 0, 0.06},
    {"castanea-hybrids", 110, 190, 0.150, 0.51, 0.61, 0.94,
     17, 21, 63, 44, 0.10, Margin::bristleTeeth, 0.21, 1.8, 3.0, 12, 20, {47, -23, 32}},
    {"sawtooth-oaks", 100, 170, 0.150, 0.46, 0.60, 0.98,
     12, 16, 60, 44, 0.05, Margin::bristleTeeth, 0.16, 2.6, 4.2, 15, 25, {44, -23, 31}},
    {"tilia", 65, 95, 0.490, 0.32, 0.42, 0.80,
     6, 8, 56, 42, 0.04, Margin::fineTeeth, 0.014, 0, 0, 32, 52, {47, -25, 36}, 0.105, 0.045, 0.10},
    {"corylus-avellana", 70, 110, 0.410, 0.54, 0.46, 0.50,
     6, 8, 54, 44, 0.02, Margin::doubleTeeth, 0.022, 0, 0, 8, 14, {50, -24, 38}, 0.045, 0, 0.09},
    {"ulmus", 65, 100, 0.300, 0.47, 0.46, 0.78,
     12, 16, 52, 42, 0.02, Margin::doubleTeeth, 0.020, 0, 0, 3, 6, {44, -23, 33}, 0.02, 0.075, 0.06},
    {"quercus-rubra", 130, 200, 0.300, 0.54, 0.80, 0.70,
     4, 5, 56, 42, 0.02, Margin::bristleLobes, 0.46, 2.0, 4.0, 25, 45, {44, -22, 32}},
};
// clang-format on

} // namespace

const BladeKind& bladeKind(std::string_view id)
{
    const auto found = std::find_if(std::begin(kinds), std::end(kinds),
                                    [id](const BladeKind& kind) { return id == kind.id; });
    return found == std::end(kinds) ? kinds[0] : *found;
}

} // namespace cupule::ui
