#include "core/task/place_offers.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <tuple>
#include <utility>

#include "core/base/text.h"
#include "core/base/zone.h"
#include "core/exchange/gpx/reader.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/task/day.h"
#include "core/task/import_report.h"

namespace cupule {

namespace {

LocalTime clockOf(const Instant& at)
{
    constexpr std::int64_t day = 86'400'000;
    const std::int64_t local = at.utcMilliseconds + std::int64_t{at.offsetMinutes.value_or(0)} * 60'000;
    return {static_cast<std::int32_t>((local % day + day) % day / 1000)};
}

/// When a point was taken, where the store is.
std::pair<std::optional<CivilDate>, std::optional<LocalTime>> whenOf(Session& session, const GpxTime& time)
{
    switch (time.kind) {
    case GpxTime::Kind::instant:
        if (const auto here = inZone(session.info().zone, time.instant.utcMilliseconds))
            return {CivilDate::of(*here), clockOf(*here)};
        return {};
    case GpxTime::Kind::localOnly: return {time.date, time.time};
    case GpxTime::Kind::none:
    case GpxTime::Kind::unreadable: break;
    }
    return {};
}

/// The smaller, the sooner it is offered.
using Rank = std::tuple<int, int>;

Rank rankOf(const GpxPoint& point, std::optional<CivilDate> date, std::optional<LocalTime> time, const VisitPage& page)
{
    constexpr int unknown = 24 * 3600;
    const bool sameName = page.tree && !trim(point.name).empty() && lowerAscii(trim(point.name)) == lowerAscii(trim(page.tree->label));
    const int apart = time && page.visit.time ? std::abs(time->secondOfDay - page.visit.time->secondOfDay) : unknown;
    if (sameName)
        return {0, apart};
    return date == page.visit.date ? Rank{1, apart} : Rank{trim(point.name).empty() ? 3 : 2, unknown};
}

} // namespace

Result<std::vector<PlaceOffer>> placeOffers(Session& session, const Uid& visit)
{
    const auto page = visitPage(session, visit);
    if (!page)
        return fail(page.error());
    std::vector<PlaceOffer> offers;
    for (const PhotoNote& photo : page->photos)
        if (photo.position)
            offers.push_back({PlaceOffer::From::photo, photo.originalName, photo.takenTime, *photo.position});
    std::stable_sort(offers.begin(), offers.end(), [](const PlaceOffer& a, const PlaceOffer& b) {
        return a.time && b.time && *a.time < *b.time;
    });
    if (page->tree && page->tree->position) {
        offers.insert(offers.begin(), {PlaceOffer::From::tree, page->tree->label, {}, *page->tree->position});
        offers.front().position.obtained = "tree";
    }
    return offers;
}

Result<std::vector<PlaceOffer>> pointOffers(Session& session, const std::string& path, const Uid& visit)
{
    const auto page = visitPage(session, visit);
    if (!page)
        return fail(page.error());
    const auto gpx = readGpx(path);
    if (!gpx)
        return fail(gpx.error());
    std::vector<std::pair<Rank, PlaceOffer>> ranked;
    for (const GpxPoint& point : gpx->points) {
        const auto [date, time] = whenOf(session, point.time);
        ranked.push_back({rankOf(point, date, time, *page),
                          {PlaceOffer::From::point, std::string(trim(point.name)), date == page->visit.date ? time : std::nullopt,
                           devicePosition(point.latitude, point.longitude, "device", session.pack())}});
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    if (ranked.size() > mostPointOffers)
        ranked.resize(mostPointOffers);
    std::vector<PlaceOffer> offers;
    for (auto& [rank, offer] : ranked)
        offers.push_back(std::move(offer));
    return offers;
}

} // namespace cupule
