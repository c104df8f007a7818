// Where the open visit was: reading what is typed, taking it from what is known, and what lies around it.

#include "core/position/notation.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/daysheet/day_desk.h"

namespace cupule::ui {

PositionWords DayDesk::readPosition(const QString& typed)
{
    PositionWords words;
    if (typed.trimmed().isEmpty() || m_bench.session() == nullptr)
        return words;
    auto projector = m_bench.session()->projector();
    if (!projector) {
        words.how = PositionWords::How::notUnderstood;
        words.problem = faultText(projector.error());
        return words;
    }
    const auto position = (*projector)->read(utf8(typed), PositionOptions{});
    if (!position) {
        words.how = PositionWords::How::notUnderstood;
        words.problem = positionKindText(positionErrorKind(position.error()));
        words.proposal = text(position.error().argument("suggestion"));
        return words;
    }
    words.how = position->warning.empty() ? PositionWords::How::understood : PositionWords::How::doubted;
    words.understood = tr("%1, %2, in %3")
                           .arg(QString::number(position->latitude, 'f', 5), QString::number(position->longitude, 'f', 5),
                                text(position->system));
    words.uncertainty = positionSureText(*position);
    if (!position->warning.empty())
        words.problem = positionKindText(position->warning);
    return words;
}

namespace {

/// Heading of the remark that keeps a position which could not be read, letter for letter, until it can.
const char* const unreadPosition = "position";

void dropUnreadPosition(Visit& visit)
{
    std::erase_if(visit.remarks, [](const Remark& remark) { return remark.heading == unreadPosition; });
}

} // namespace

QString DayDesk::positionTyped() const
{
    if (!m_page)
        return {};
    for (const Remark& remark : m_page->visit.remarks)
        if (remark.heading == unreadPosition)
            return text(remark.text);
    return m_page->visit.position ? text(m_page->visit.position->typed) : QString();
}

void DayDesk::setPosition(const QString& typed)
{
    if (typed.trimmed().isEmpty()) {
        edit(tr("position"), [](Visit& visit) {
            visit.position.reset();
            dropUnreadPosition(visit);
        });
        return;
    }
    auto projector = m_bench.session()->projector();
    if (!projector)
        return m_bench.complain(projector.error());
    auto position = (*projector)->read(utf8(typed), PositionOptions{});
    if (!position) {
        edit(tr("position as typed"), [&](Visit& visit) {
            visit.position.reset();
            dropUnreadPosition(visit);
            visit.remarks.push_back({unreadPosition, utf8(typed.trimmed())});
        });
        return;
    }
    position->obtained = "typed";
    takePosition(*position);
}

void DayDesk::takePosition(const Position& position)
{
    edit(tr("position"), [&](Visit& visit) {
        visit.position = position;
        dropUnreadPosition(visit);
    });
    if (m_page && m_page->tree && !m_page->tree->position)
        editTree(tr("position of the tree"), [&](Tree& tree) { tree.position = position; });
}

MapScene DayDesk::mapScene()
{
    if (!m_page || m_bench.session() == nullptr)
        return {};
    const Visit& visit = m_page->visit;
    SurroundingsQuery query;
    query.tree = visit.tree;
    query.visit = visit.id;
    query.site = m_page->site ? m_page->site->id : Uid{};
    query.here = visit.position;
    const auto around = surroundingsOf(*m_bench.session(), query);
    if (!around) {
        m_bench.complain(around.error());
        return {};
    }
    return sceneOf(*around, *m_bench.session());
}

std::vector<PlaceOffer> DayDesk::placeOffers()
{
    if (!m_page)
        return {};
    auto offers = cupule::placeOffers(*m_bench.session(), m_page->visit.id);
    if (!offers)
        m_bench.complain(offers.error());
    return offers ? *offers : std::vector<PlaceOffer>{};
}

std::vector<PlaceOffer> DayDesk::pointOffers(const QString& path)
{
    if (!m_page)
        return {};
    auto offers = cupule::pointOffers(*m_bench.session(), utf8(path), m_page->visit.id);
    if (!offers)
        m_bench.complain(offers.error());
    else if (offers->empty())
        m_bench.say(tr("The file holds no point with a position."));
    return offers ? *offers : std::vector<PlaceOffer>{};
}

} // namespace cupule::ui
