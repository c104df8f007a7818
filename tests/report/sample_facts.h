// An invented sample that went from the tree to a courier, for the tests of its papers.

#pragma once

#include "core/report/label.h"

namespace cupule::test {

inline Instant at(int day, int hour, int minute)
{
    // June 2026, British summer time
    return {(static_cast<std::int64_t>(CivilDate::make(2026, 6, day)->days) * 24 + hour - 1) * 3'600'000 + minute * 60'000LL, 60};
}

inline CustodyLine line(int number, CustodyKind kind, Instant when)
{
    CustodyLine out;
    out.number = number;
    out.kind = kind;
    out.out = when;
    out.written = at(11, 20, 1);
    return out;
}

inline Pack samplePack()
{
    Pack pack;
    pack.name = "A pack";
    pack.version = "1";
    pack.language = "en";
    pack.hazardLine = "Suspect regulated pest. Do not open outside containment.";
    pack.exportNote = "Volunteer observation. Not an official finding.";
    pack.cautions = {{"C1", "samples", "Never leave a sample in a closed car in the sun.", {}},
                     {"C2", "going out", "No ladders.", {}}};
    return pack;
}

/// Nothing but the number and the visit is known.
inline report::SampleFacts bareSample()
{
    report::SampleFacts facts;
    facts.storeName = "Tharn Vale";
    facts.sample.number = "26-TV-0147-H";
    facts.sample.plantPart = "leaf with galls";
    facts.tree = "T-03";
    facts.square = "SO54";
    facts.collector = "IC";
    facts.visitDate = *CivilDate::make(2026, 6, 11);
    return facts;
}

inline report::SampleFacts wholeSample()
{
    report::SampleFacts facts = bareSample();
    facts.sample.pieces = 3;
    facts.sample.condition = "holes";
    facts.sample.hostAsBelieved = "sweet chestnut";
    facts.sample.reason = "asked for by the authority";
    facts.collectorName = "Ines Calloway";
    facts.place.emplace();
    facts.place->latitude = 52.09;
    facts.place->longitude = -2.66;
    facts.place->system = "OSGB";
    facts.place->uncertaintyMetres = 71;
    facts.place->operationAccuracyMetres = 2;
    Leave authority;
    authority.giver = LeaveGiver::authority;
    authority.giverName = "Augusta Quillfeather";
    authority.scopes = {LeaveScope::sample, LeaveScope::move};
    authority.from = *CivilDate::make(2026, 6, 1);
    authority.to = *CivilDate::make(2026, 9, 30);
    authority.reference = "TV-31";
    facts.leaves = {authority};
    CustodyLine inner = line(2, CustodyKind::innerBag, at(11, 11, 38));
    inner.bag = "1041-A";
    CustodyLine outer = line(3, CustodyKind::outerBag, at(11, 11, 41));
    outer.bag = "1041-B";
    outer.seal = "008813";
    CustodyLine courier = line(4, CustodyKind::handOver, at(11, 17, 0));
    courier.in = at(11, 17, 5);
    courier.from = "IC";
    courier.to = "courier";
    courier.travel = "consignment 77-104";
    courier.seal = "008813";
    courier.sealWhole = true;
    facts.lines = {line(1, CustodyKind::cut, at(11, 11, 35)), inner, outer, courier};
    return facts;
}

} // namespace cupule::test
