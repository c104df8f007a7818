#include "core/task/samples.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/rules/sample_number.h"
#include "core/store/leaves.h"
#include "core/store/places.h"
#include "core/store/samples.h"
#include "core/store/visits.h"
#include "core/task/edit.h"
#include "core/task/number_block.h"
#include "core/task/programme.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

/// What a sample is judged by. Lists live here because CustodyContext only points.
struct SampleFacts {
    StoredVisit visit;
    std::optional<TreeRow> tree;
    std::vector<Leave> leaves;
    std::vector<std::string> seals, bags, sameNumber;
    SampleLimits limits;
    bool limitsProposed = true;
    std::string mayMove;

    [[nodiscard]] CustodyContext context(const Session& session) const
    {
        CustodyContext context;
        context.pack = &session.pack();
        context.leaves = leaves;
        context.site = tree ? tree->tree.site : Uid{};
        context.host = tree ? tree->host : HostAnswer::cannotTell;
        context.visitRejected = visit.row.standing.state == RecordState::rejected;
        context.sealsElsewhere = seals;
        context.bagsElsewhere = bags;
        context.numberElsewhere = sameNumber;
        context.now = session.clock().now();
        context.limits = limits;
        return context;
    }
};

/// Labels of the trees from which other samples with this number come.
Result<std::vector<std::string>> treesOfSameNumber(Session& session, const Sample& sample)
{
    std::vector<std::string> trees;
    if (sample.number.empty())             // it has none yet
        return trees;
    const auto same = session.store().samples().sameNumber(sample);
    if (!same)
        return fail(same.error());
    for (const Sample& other : *same) {
        const auto visit = session.store().visits().row(other.visit);
        if (!visit)
            return fail(visit.error());
        trees.push_back(*visit ? (*visit)->treeLabel : std::string());
    }
    return trees;
}

Result<SampleFacts> factsFor(Session& session, const Sample& sample)
{
    auto stored = storedVisit(session, sample.visit);
    if (!stored)
        return fail(stored.error());
    SampleFacts facts{std::move(*stored), {}, {}, {}, {}, {}, {}, true, {}};
    const auto set = programme(session);
    if (!set)
        return fail(set.error());
    facts.limits = limitsOf(*set, session.pack());
    facts.limitsProposed = !set->limits;
    facts.mayMove = set->mayMove;
    if (!facts.visit.visit.tree.isNull()) {
        auto tree = session.store().trees().row(facts.visit.visit.tree);
        if (!tree)
            return fail(tree.error());
        facts.tree = std::move(*tree);
    }
    auto leaves = session.store().leaves().all();
    if (!leaves)
        return fail(leaves.error());
    facts.leaves = std::move(*leaves);
    auto seals = session.store().samples().sealsElsewhere(sample.id);
    if (!seals)
        return fail(seals.error());
    facts.seals = std::move(*seals);
    auto bags = session.store().samples().bagsElsewhere(sample.id);
    if (!bags)
        return fail(bags.error());
    facts.bags = std::move(*bags);
    auto same = treesOfSameNumber(session, sample);
    if (!same)
        return fail(same.error());
    facts.sameNumber = std::move(*same);
    return facts;
}

Result<Sample> storedSample(Session& session, const Uid& id)
{
    auto sample = session.store().samples().find(id);
    if (!sample)
        return fail(sample.error());
    if (!*sample)
        return fail("sample.unknown", FaultKind::usage, {{"id", id.text()}});
    return std::move(**sample);
}

Status mayHandle(const Session& session)
{
    return session.needOneOf({Role::sampleHandler, Role::volunteer});
}

/// The first leave in force of the owner's side, or of the authority, with all of these scopes.
Uid leaveFor(const std::vector<Leave>& leaves, bool authority, std::initializer_list<LeaveScope> scopes,
             CivilDate day, const Uid& site)
{
    for (const auto& leave : leaves) {
        const bool all = std::all_of(scopes.begin(), scopes.end(), [&](LeaveScope scope) {
            return std::find(leave.scopes.begin(), leave.scopes.end(), scope) != leave.scopes.end();
        });
        if (all && (leave.giver == LeaveGiver::authority) == authority && inForce(leave, day, site))
            return leave.id;
    }
    return {};
}

/// The number on a printed label, or the next of the block, which is opened for it.
Status giveNumber(Session& session, Change& change, int year, Sample& sample, std::optional<NumberBlock>& block)
{
    Result<std::string> number = std::string();
    if (trim(sample.number).empty()) {
        auto opened = NumberBlock::open(session, change, year);
        if (!opened)
            return fail(opened.error());
        block = std::move(*opened);
        number = block->next();
    } else {
        number = NumberBlock::reserved(session, sample.number);
    }
    if (!number)
        return fail(number.error());
    sample.number = std::move(*number);
    return {};
}

/// A laboratory that found it says something new about a decided visit.
Status reopenForResult(Session& session, Change& change, const Sample& sample, const CustodyLine& line)
{
    if (line.kind != CustodyKind::result || line.finding != "found")
        return {};
    const auto stored = storedVisit(session, sample.visit);
    if (!stored)
        return fail(stored.error());
    VisitStanding standing = stored->row.standing;
    if (standing.decided.isNull() || standing.struck || standing.state == RecordState::submitted)
        return {};
    const Decision event{
        session.ids().make(),  sample.visit,      standing.head, session.me(),      Outcome::reopen,
        {"laboratory-result"}, line.reportNumber, true,          line.reportNumber, change.at()};
    if (auto added = session.store().decisions().add(change, event); !added)
        return added;
    standing.state = RecordState::submitted;
    standing.correctionWaits = standing.oneOfTwo = standing.conflict = false;
    if (auto set = session.store().visits().setStanding(change, sample.visit, standing, "reopened",
                                                        "laboratory-result");
        !set)
        return set;
    if (auto gone = session.store().decisions().setFind(change, sample.visit, std::nullopt); !gone)
        return gone;
    return refreshVisit(session, change, sample.visit);
}

CustodyLine closingLine(Session& session, const Uid& sample, bool withBreak, const std::string& reason,
                        const std::string& secondPerson, int number)
{
    CustodyLine line;
    line.id = session.ids().make();
    line.sample = sample;
    line.number = number;
    line.kind = CustodyKind::close;
    line.out = line.written = session.clock().now();
    line.from = session.profile().person.code;
    line.withBreak = withBreak;
    line.reason = reason;
    line.secondPerson = secondPerson;
    return line;
}

bool isMe(const Session& session, const std::string& named)
{
    const auto plain = [](const std::string& text) { return lowerAscii(trim(text)); };
    const Person& me = session.profile().person;
    return plain(named) == plain(me.code) || (!me.name.empty() && plain(named) == plain(me.name));
}

} // namespace

Result<SamplePage> samplePage(Session& session, const Uid& id)
{
    auto sample = storedSample(session, id);
    if (!sample)
        return fail(sample.error());
    auto facts = factsFor(session, *sample);
    if (!facts)
        return fail(facts.error());
    auto lines = session.store().samples().lines(id);
    if (!lines)
        return fail(lines.error());
    const auto regimes = session.store().leaves().allRegimes();
    if (!regimes)
        return fail(regimes.error());

    SamplePage page;
    page.status = sampleStatus(*sample, *lines, facts->context(session));
    page.treeLabel = facts->visit.row.treeLabel;
    page.siteName = facts->visit.row.siteName;
    page.visitDate = facts->visit.visit.date;
    page.visitState = facts->visit.row.standing.state;
    page.limits = facts->limits;
    page.limitsProposed = facts->limitsProposed;
    page.mayMove = facts->mayMove;
    for (const auto& leave : facts->leaves)
        if (leave.id == sample->leaveOwner || leave.id == sample->leaveAuthority)
            page.leaves.push_back(leave);
    const Uid site = facts->tree ? facts->tree->tree.site : Uid{};
    const CivilDate today = session.today();
    for (const auto& regime : *regimes)
        if (inForce(regime, today, site))
            page.regimes.push_back(regime);
    page.lines = std::move(*lines);
    page.sample = std::move(*sample);
    hide(ownSight(session), page);
    return page;
}

Result<std::vector<SampleLine>> sampleLines(Session& session)
{
    const auto all = session.store().samples().all();
    if (!all)
        return fail(all.error());
    std::vector<SampleLine> lines;
    for (const auto& sample : *all) {
        const auto page = samplePage(session, sample.id);
        if (!page)
            return fail(page.error());
        lines.push_back({sample.id, sample.number, page->treeLabel, page->status.state,
                         static_cast<int>(page->status.missing.size()),
                         static_cast<int>(page->status.breaks.size())});
    }
    return lines;
}

Result<Uid> sampleByNumber(Session& session, const std::string& number, const Uid& shown)
{
    const auto samples = session.store().samples().allByNumber(number);
    if (!samples)
        return fail(samples.error());
    if (!samples->empty()) {
        const auto next = std::upper_bound(samples->begin(), samples->end(), shown);
        const bool isOneOfThem = std::find(samples->begin(), samples->end(), shown) != samples->end();
        return isOneOfThem && next != samples->end() ? *next : samples->front();
    }
    if (const auto read = readSampleNumber(number); !read)
        return fail(read.error());
    return fail("sample.unknown", FaultKind::usage, {{"number", number}});
}

Result<SampleOpening> openSample(Session& session, const Sample& wanted, bool alreadyTaken)
{
    if (auto may = mayHandle(session); !may)
        return fail(may.error());
    const auto facts = factsFor(session, wanted);
    if (!facts)
        return fail(facts.error());
    const CivilDate day = facts->visit.visit.date;
    Sample sample = wanted;
    sample.id = session.ids().make();
    if (sample.collector.isNull())
        sample.collector = session.me();
    const Uid site = facts->tree ? facts->tree->tree.site : Uid{};
    if (sample.leaveOwner.isNull())
        sample.leaveOwner =
            leaveFor(facts->leaves, false, {LeaveScope::enter, LeaveScope::sample}, day, site);
    if (sample.leaveAuthority.isNull())
        sample.leaveAuthority =
            leaveFor(facts->leaves, true, {LeaveScope::sample, LeaveScope::move}, day, site);
    SampleOpening opening;
    opening.why = mayOpenSample(sample, day, facts->context(session));
    const bool onlyLeaves = std::all_of(opening.why.begin(), opening.why.end(), [](const Finding& finding) {
        return finding.code.starts_with("custody.leave-");
    });
    if (!opening.why.empty() && !(alreadyTaken && onlyLeaves))
        return opening;
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    std::optional<NumberBlock> block;
    if (auto numbered = giveNumber(session, *change, day.year(), sample, block); !numbered)
        return fail(numbered.error());
    if (auto saved = session.store().samples().save(*change, sample); !saved)
        return fail(saved.error());
    if (auto shown = refreshVisit(session, *change, sample.visit); !shown)
        return fail(shown.error());
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    if (block)
        block->remember();
    opening.sample = std::move(sample);
    return opening;
}

Result<SamplePage> addCustodyLine(Session& session, const CustodyLine& wanted)
{
    const bool atLaboratory = wanted.kind == CustodyKind::receipt || wanted.kind == CustodyKind::result ||
                              wanted.kind == CustodyKind::disposal;
    const auto may = atLaboratory ? session.needOneOf({Role::sampleHandler, Role::volunteer, Role::office})
                                  : mayHandle(session);
    if (!may)
        return fail(may.error());
    const auto page = samplePage(session, wanted.sample);
    if (!page)
        return page;
    if (wanted.corrects) {
        const bool known = std::any_of(page->lines.begin(), page->lines.end(), [&](const CustodyLine& line) {
            return line.number == *wanted.corrects;
        });
        if (!known)
            return fail("custody.correction", FaultKind::refused,
                        {{"line", std::to_string(*wanted.corrects)}});
    } else if (page->status.state == SampleState::closed ||
               page->status.state == SampleState::closedWithBreak) {
        return fail("custody.closed", FaultKind::refused, {{"number", page->sample.number}});
    }
    if (wanted.kind == CustodyKind::close)
        return fail("custody.close-by-closing", FaultKind::usage, {{"number", page->sample.number}});
    CustodyLine line = wanted;
    line.id = session.ids().make();
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    line.written = change->at();
    if (auto added = session.store().samples().addLine(*change, line); !added)
        return fail(added.error());
    if (line.kind == CustodyKind::result)
        if (auto shown = refreshVisit(session, *change, page->sample.visit); !shown)
            return fail(shown.error());
    if (auto reopened = reopenForResult(session, *change, page->sample, line); !reopened)
        return fail(reopened.error());
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    return samplePage(session, wanted.sample);
}

Result<Closing> closeSample(Session& session, const Uid& id, bool withBreak, const std::string& reason,
                            const std::string& secondPerson)
{
    if (auto may = mayHandle(session); !may)
        return fail(may.error());
    auto page = samplePage(session, id);
    if (!page)
        return fail(page.error());
    Closing closing{false, std::move(*page)};
    const SampleState now = closing.page.status.state;
    if (now == SampleState::closed || now == SampleState::closedWithBreak || now == SampleState::voided) {
        closing.closed = now != SampleState::voided;
        return closing;
    }
    const auto facts = factsFor(session, closing.page.sample);
    if (!facts)
        return fail(facts.error());
    // judged as if the line stood there, so that closing and its refusal follow one rule
    const std::string second = isMe(session, secondPerson) ? std::string() : secondPerson;
    auto lines = closing.page.lines;
    const int number = lines.empty() ? 1 : lines.back().number + 1;
    lines.push_back(closingLine(session, id, withBreak, reason, second, number));
    SampleStatus after = sampleStatus(closing.page.sample, lines, facts->context(session));
    if (after.state != SampleState::closed && after.state != SampleState::closedWithBreak) {
        closing.page.status.missing = std::move(after.missing);
        return closing;
    }
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (auto added = session.store().samples().addLine(*change, lines.back()); !added)
        return fail(added.error());
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    auto closed = samplePage(session, id);
    if (!closed)
        return fail(closed.error());
    return Closing{true, std::move(*closed)};
}

} // namespace cupule
