// What the rules share: making a finding, the place of a record, and words for its arguments.
// Only core/rules/checks/*.cpp include this.

#pragma once

#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/text.h"
#include "core/position/geodesic.h"
#include "core/rules/checks.h"

namespace cupule::checks {

inline constexpr std::string_view commonPractice = "common practice, no source";
inline constexpr std::string_view judgement = "author's judgement";
inline constexpr std::string_view reliability = "IPPC, 2021, ISPM 8 Determination of pest status in an area";
inline constexpr std::string_view pictures = "Austen, Bindemann, Griffiths & Roberts, 2018, Species "
                                             "identification by conservation practitioners using online "
                                             "images (PeerJ 6:e4157)";
inline constexpr std::string_view biosecurity =
    "Forestry Commission, 2017, Biosecurity guidance for foresters";
inline constexpr std::string_view positionTerms =
    "TDWG, Darwin Core quick reference guide, terms of the Location class";

inline void add(std::vector<Finding>& out, std::string_view code, Severity severity, std::string field,
                std::string_view source, Arguments arguments = {})
{
    out.push_back(
        Finding{std::string(code), severity, std::move(field), std::move(arguments), std::string(source)});
}

/// Where the record was made: its own position, or its tree's; null where neither is known.
inline const Position* placeOf(const CheckInput& input)
{
    if (input.visit.position)
        return &*input.visit.position;
    const Tree* tree = input.context.tree;
    return tree && tree->position ? &*tree->position : nullptr;
}

/// "position", or "tree/position" where the place is the tree's.
inline std::string placeField(const CheckInput& input)
{
    return input.visit.position ? "position" : "tree/position";
}

/// Coordinates that are numbers on the globe.
inline bool onGlobe(const Position& place)
{
    return std::abs(place.latitude) <= 90 && std::abs(place.longitude) <= 180;
}

inline std::string observationField(const Observation& observation, std::string_view part = {})
{
    std::string field = "observations/" + observation.sign;
    if (!part.empty())
        field.append("/").append(part);
    return field;
}

inline std::string characterField(const CharacterSeen& seen)
{
    return "characters/" + seen.character;
}

/// Metres between two places; 0 where a bound that is never too small already says that they are within
/// `limit`.
inline double metresBeyond(const Position& a, const Position& b, double limit)
{
    constexpr double mostMetresPerDegree =
        111'700; // of latitude at a pole, on the WGS84 ellipsoid: 111 694 m
    const double degrees = std::abs(a.latitude - b.latitude) + std::abs(a.longitude - b.longitude);
    return degrees * mostMetresPerDegree <= limit
               ? 0
               : distanceMetres(a.latitude, a.longitude, b.latitude, b.longitude);
}

inline std::string photoField(const Uid& photo)
{
    std::string field = "photos/";
    return field.append(photo.text());
}

/// Whole metres.
inline std::string metresText(double metres)
{
    return numberText(std::round(metres));
}

inline std::string joined(std::span<const std::string> words)
{
    std::string text;
    for (const std::string& word : words)
        text.append(text.empty() ? "" : " ").append(word);
    return text;
}

inline std::string_view sourceOf(const Sign& sign)
{
    return sign.sources.empty() ? commonPractice : std::string_view(sign.sources.front().text);
}

/// Of one of the pack's settings, by its name in the pack.
inline std::string_view sourceOf(const Pack& pack, const std::string& setting)
{
    const auto at = pack.settings.sources.find(setting);
    return at == pack.settings.sources.end() ? judgement : std::string_view(at->second.text);
}

/// A gall line of the field, or what a laboratory found.
inline bool isFindGroup(SignGroup group)
{
    return group == SignGroup::gall || group == SignGroup::laboratory;
}

/// A number of galls or of their traces above nothing: counted, measured or by class.
bool countsSomething(const Observation& observation, const Pack& pack);

} // namespace cupule::checks
