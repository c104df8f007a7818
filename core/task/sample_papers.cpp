#include "core/task/sample_papers.h"

#include "core/store/people.h"
#include "core/store/places.h"
#include "core/task/facts.h"
#include "core/task/ground.h"
#include "core/task/keep.h"
#include "core/task/programme.h"
#include "core/task/samples.h"

namespace cupule {

namespace {

/// The place of the visit, where one is known.
Result<std::optional<Position>> placeOfVisit(Session& session, const Uid& visit)
{
    const auto stored = storedVisit(session, visit);
    if (!stored)
        return fail(stored.error());
    std::optional<Tree> tree;
    if (!stored->visit.tree.isNull()) {
        auto found = keptTree(session, stored->visit.tree);
        if (!found)
            return fail(found.error());
        tree = std::move(*found);
    }
    return placeOf(stored->visit, tree);
}

Result<report::SampleFacts> factsOfPage(Session& session, const SamplePage& page)
{
    auto gathered = gatherReservedLabels(session);
    if (!gathered)
        return gathered;
    report::SampleFacts& facts = *gathered;
    facts.sample = page.sample;
    facts.lines = page.lines;
    facts.tree = page.treeLabel;
    facts.visitDate = page.visitDate;
    facts.leaves = page.leaves;
    auto place = placeOfVisit(session, page.sample.visit);
    if (!place)
        return fail(place.error());
    facts.place = std::move(*place);
    if (facts.place)
        facts.square = coarseSquare(session, *facts.place);
    const auto person = session.store().people().find(page.sample.collector);
    if (!person)
        return fail(person.error());
    if (*person) {
        facts.collector = (*person)->code;
        facts.collectorName = (*person)->name;
    }
    return gathered;
}

} // namespace

Result<report::SampleFacts> gatherReservedLabels(Session& session)
{
    const auto set = programme(session);
    if (!set)
        return fail(set.error());
    report::SampleFacts facts;
    facts.storeName = session.info().name;
    facts.demonstration = session.info().demonstration;
    facts.answers = set->answers;
    return facts;
}

Result<report::SampleFacts> gatherLabels(Session& session, const Uid& sample)
{
    const auto page = samplePage(session, sample);
    if (!page)
        return fail(page.error());
    return factsOfPage(session, *page);
}

Result<report::CustodyRecordData> gatherCustodyRecord(Session& session, const Uid& sample, const Progress& progress)
{
    const auto page = samplePage(session, sample);
    if (!page)
        return fail(page.error());
    auto facts = factsOfPage(session, *page);
    if (!facts)
        return fail(facts.error());
    report::CustodyRecordData data;
    data.facts = std::move(*facts);
    data.status = page->status;
    data.visitState = page->visitState;
    data.regimes = page->regimes;
    data.made = session.today();
    const auto set = programme(session);
    if (!set)
        return fail(set.error());
    data.limits = page->limits;
    data.limitsProposed = page->limitsProposed;
    data.mayMove = set->mayMove;
    data.tell = set->tell;
    const auto proof = proveJournal(session, progress);
    if (!proof)
        return fail(proof.error());
    data.journalLines = proof->lines;
    data.journalWhole = proof->whole;
    return data;
}

} // namespace cupule
