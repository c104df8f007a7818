// The chain as it is drawn: one link a step, each with who, what and when, and what hangs open or is broken
// at it.

#include "core/rules/custody_detail.h"

#include <algorithm>

#include "core/base/text.h"

namespace cupule::custody {

namespace {

/// A drawn link and what it stands for.
struct Drawn {
    ChainLink link;
    Link part = Link::tree;
    const CustodyLine* line = nullptr;
    bool begun = false; ///< something has been put down for it
};

Drawn drawn(std::string kind, Link part, const CustodyLine* line)
{
    Drawn result;
    result.link.kind = std::move(kind);
    result.part = part;
    result.line = line;
    result.begun = line != nullptr;
    if (line) {
        result.link.line = line->number;
        result.link.who = line->from;
        result.link.when = happenedAt(*line);
    }
    return result;
}

Drawn bagLink(std::string kind, Link part, const CustodyLine* line)
{
    Drawn result = drawn(std::move(kind), part, line);
    if (line)
        result.link.what = line->bag;
    return result;
}

Drawn transferLink(const CustodyLine* line, bool laboratory)
{
    Drawn result = drawn(laboratory ? "laboratory" : "hands", Link::transfer, line);
    if (line) {
        result.link.who = takerOf(*line);
        result.link.what = line->seal;
        result.link.when = arrivalOf(*line);
    }
    return result;
}

std::vector<Drawn> linksOf(const Chain& chain)
{
    std::vector<Drawn> links;
    Drawn tree = drawn("tree", Link::tree, nullptr);
    tree.begun = true;
    tree.link.what = chain.sample.number;
    links.push_back(std::move(tree));
    Drawn cut = drawn("cut", Link::cut, chain.cut);
    if (chain.piecesTaken())
        cut.link.what = std::to_string(*chain.piecesTaken());
    links.push_back(std::move(cut));
    links.push_back(bagLink("inner-bag", Link::innerBag, chain.inner));
    links.push_back(bagLink("outer-bag", Link::outerBag, chain.outer));
    if (chain.transfers.empty())
        links.push_back(drawn("hands", Link::transfer, nullptr));
    for (const CustodyLine* transfer : chain.transfers)
        links.push_back(transferLink(transfer, transfer == chain.receipt));
    if (!chain.receipt)
        links.push_back(transferLink(nullptr, true));
    Drawn result = drawn("result", Link::result, chain.result);
    if (chain.result) {
        result.link.who = chain.result->signedBy;
        result.link.what = chain.result->reportNumber;
    }
    links.push_back(std::move(result));
    Drawn disposal = drawn("disposal", Link::disposal, chain.disposal);
    if (chain.disposal) {
        disposal.link.who = chain.disposal->signedBy;
        disposal.link.what = chain.disposal->disposal;
    }
    links.push_back(std::move(disposal));
    return links;
}

bool hangsAt(const Noted& noted, const Drawn& link)
{
    if (noted.link != link.part)
        return false;
    // Without a line, what is lacking about a transfer is the laboratory's receipt.
    return link.part != Link::transfer ||
           (noted.line ? noted.line == link.line : !link.line && link.link.kind != "hands");
}

} // namespace

std::vector<ChainLink> drawChain(const Chain& chain, const Gathered& gathered)
{
    std::vector<Drawn> links = linksOf(chain);
    bool laterBegun = false;
    for (auto link = links.rbegin(); link != links.rend(); ++link) {
        for (const Noted& noted : gathered.missing)
            if (hangsAt(noted, *link))
                link->link.lacking.push_back(noted.finding.code);
        for (const Noted& noted : gathered.breaks)
            if (hangsAt(noted, *link))
                link->link.broken.push_back(noted.finding.code);
        if (!link->link.broken.empty())
            link->link.state = LinkState::broken;
        else if (link->begun && link->link.lacking.empty())
            link->link.state = LinkState::whole;
        else if (!chain.voided && (link->begun || laterBegun)) // what is void will never have what lies between
            link->link.state = LinkState::open;
        laterBegun |= link->begun;
    }
    const auto next = std::find_if(links.begin(), links.end(),
                                   [](const Drawn& link) { return link.link.state == LinkState::ahead; });
    const bool allBefore = std::none_of(links.begin(), next,
                                        [](const Drawn& link) { return link.link.state == LinkState::open; });
    if (next != links.end() && allBefore && !chain.voided)
        next->link.state = LinkState::open;
    std::vector<ChainLink> result;
    for (Drawn& link : links)
        result.push_back(std::move(link.link));
    return result;
}

} // namespace cupule::custody
