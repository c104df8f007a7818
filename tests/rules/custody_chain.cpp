#include "tests/rules/custody_chain.h"

#include <algorithm>

#include "core/rules/sample_number.h"

namespace cupule::test {

namespace {

Leave leave(int id, LeaveGiver giver, std::vector<LeaveScope> scopes)
{
    Leave result;
    result.id = uidOf(id);
    result.giver = giver;
    result.scopes = std::move(scopes);
    result.site = uidOf(1);
    result.from = day("2026-04-01");
    result.to = day("2026-09-30");
    return result;
}

Pack packOfCases()
{
    Pack pack;
    pack.kinds = {{"sweet", "Castanea sativa", "sweet chestnut", true},
                  {"japanese", "Castanea crenata", "Japanese chestnut", true},
                  {"oak", "Quercus robur", "common oak", false}};
    return pack;
}

} // namespace

Case::Case() : pack(packOfCases())
{
    sample.id = uidOf(200);
    sample.number = makeSampleNumber(26, "TV", 147)->text();
    sample.plantPart = "shoot";
    sample.pieces = 3;
    sample.hostAsBelieved = "sweet chestnut";
    sample.collector = uidOf(2);
    leaves = {leave(300, LeaveGiver::occupier, {LeaveScope::enter, LeaveScope::photograph, LeaveScope::sample}),
              leave(301, LeaveGiver::authority, {LeaveScope::sample, LeaveScope::move})};
    sample.leaveOwner = uidOf(300);
    sample.leaveAuthority = uidOf(301);

    append(CustodyKind::cut, "2026-06-11T10:00:00+01:00").from = "MH";
    append(CustodyKind::innerBag, "2026-06-11T10:05:00+01:00").bag = "B-1041";
    CustodyLine& outer = append(CustodyKind::outerBag, "2026-06-11T10:09:00+01:00");
    outer.bag = "B-1042";
    outer.seal = "S 77310";
    CustodyLine& onSite = append(CustodyKind::onSite, "2026-06-11T10:20:00+01:00");
    onSite.confirmed = true;
    onSite.hygiene = {Confirmed::done, Confirmed::done, Confirmed::noneUsed, Confirmed::done, clock("10:25")};
    CustodyLine& handOver = append(CustodyKind::handOver, "2026-06-11T14:00:00+01:00");
    handOver.from = "MH";
    handOver.to = "RB";
    handOver.in = at("2026-06-11T14:02:00+01:00");
    handOver.seal = "S-77310";
    handOver.sealWhole = true;
    CustodyLine& receipt = append(CustodyKind::receipt, "2026-06-12T09:00:00+01:00");
    receipt.from = "RB";
    receipt.to = "Vale Laboratory";
    receipt.in = at("2026-06-12T09:01:00+01:00");
    receipt.seal = "s77310";
    receipt.sealWhole = true;
    receipt.pieces = 3;
    CustodyLine& result = append(CustodyKind::result, "2026-06-15T16:00:00+01:00");
    result.reportNumber = "VL-0220";
    result.finding = "not found";
    result.signedBy = "Dr Fennimoor";
    CustodyLine& disposal = append(CustodyKind::disposal, "2026-06-16T09:30:00+01:00");
    disposal.disposal = "destroyed";
    disposal.order = "N-14";
    disposal.method = "autoclave";
    disposal.signedBy = "Dr Fennimoor";
}

CustodyContext Case::context() const
{
    CustodyContext context;
    context.pack = &pack;
    context.leaves = leaves;
    context.site = site;
    context.host = host;
    context.visitRejected = visitRejected;
    context.sealsElsewhere = seals;
    context.bagsElsewhere = bags;
    context.numberElsewhere = sameNumber;
    context.now = now;
    return context;
}

SampleStatus Case::status() const
{
    return sampleStatus(sample, lines, context());
}

CustodyLine& Case::line(CustodyKind kind)
{
    return *std::find_if(lines.begin(), lines.end(), [&](const CustodyLine& l) { return l.kind == kind; });
}

void Case::drop(CustodyKind kind)
{
    std::erase_if(lines, [&](const CustodyLine& l) { return l.kind == kind; });
}

CustodyLine& Case::append(CustodyKind kind, const char* out)
{
    CustodyLine line;
    line.sample = sample.id;
    line.number = lines.empty() ? 1 : lines.back().number + 1;
    line.id = uidOf(400 + line.number);
    line.kind = kind;
    line.out = at(out);
    line.written = *line.out;
    lines.push_back(line);
    return lines.back();
}

CustodyLine& Case::correct(CustodyKind kind)
{
    CustodyLine copy = line(kind);
    copy.corrects = copy.number;
    copy.number = lines.back().number + 1;
    copy.reason = "slip of the pen";
    lines.push_back(copy);
    return lines.back();
}

std::vector<std::string> codesOf(const std::vector<Finding>& findings)
{
    std::vector<std::string> codes;
    for (const Finding& finding : findings)
        codes.push_back(finding.code);
    std::sort(codes.begin(), codes.end());
    return codes;
}

} // namespace cupule::test
