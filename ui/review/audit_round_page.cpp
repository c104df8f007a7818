#include "ui/review/audit_round_page.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_trees.h"
#include "ui/review/audit_answer_bar.h"
#include "ui/review/audit_desk.h"
#include "ui/review/audit_photos.h"
#include "ui/widgets/page_area.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr std::size_t mostHistory = 4;

QString line(const QString& head, const QString& words)
{
    return QStringLiteral("<p><b>%1</b> %2</p>").arg(head.toHtmlEscaped(), words.toHtmlEscaped());
}

QString effortWords(const Effort& effort)
{
    QStringList parts;
    if (effort.minutes)
        parts << AuditRoundPage::tr("%1 min").arg(*effort.minutes);
    if (effort.crownPercent)
        parts << AuditRoundPage::tr("%1 % of the crown").arg(*effort.crownPercent);
    if (effort.heightMetres)
        parts << AuditRoundPage::tr("up to %1 m").arg(numberText(*effort.heightMetres));
    if (effort.binoculars && *effort.binoculars)
        parts << AuditRoundPage::tr("with binoculars");
    return parts.join(QStringLiteral(", "));
}

/// What was looked at and how; nothing that a decision leaves behind.
QString factsOf(const VisitPage& page, const Pack& pack)
{
    QString html = line(AuditRoundPage::tr("Host:"), hostText(page.host, pack));
    QStringList characters;
    for (const CharacterSeen& seen : page.visit.characters)
        characters << characterSeenText(seen, pack);
    if (!characters.isEmpty())
        html += line(AuditRoundPage::tr("Seen on the tree:"), characters.join(QStringLiteral("; ")));
    html += line(AuditRoundPage::tr("How it was looked at:"), effortWords(page.visit.effort));
    QStringList signs;
    for (const ChecklistLine& entry : page.checklist)
        if (entry.observation.answer == Answer::notSeen && entry.sign->group == SignGroup::gall)
            signs << text(entry.sign->shortName.empty() ? entry.sign->name : entry.sign->shortName);
    html += line(AuditRoundPage::tr("Not seen:"), signs.join(QStringLiteral(", ")));
    html += line(AuditRoundPage::tr("Worth %1:").arg(QLatin1Char(page.worth.letter)), worthText(page.worth, pack));
    if (page.visit.position)
        html += line(AuditRoundPage::tr("Position:"),
                     text(page.visit.position->typed) + QStringLiteral(", ") + positionSureText(*page.visit.position));
    if (!page.visit.note.empty())
        html += line(AuditRoundPage::tr("Note:"), text(page.visit.note));
    for (const Finding& finding : page.findings)
        html += line(AuditRoundPage::tr("Remark:"), findingText(finding, &pack));
    QStringList history;
    for (std::size_t i = 0; i < page.history.size() && i < mostHistory; ++i)
        history << plainDate(page.history[i].line.date, 0) + QStringLiteral(": ") + summaryWord(page.history[i].line.summary);
    if (!history.isEmpty())
        html += line(AuditRoundPage::tr("This tree at other times:"), history.join(QStringLiteral("; ")));
    return html;
}

} // namespace

AuditRoundPage::AuditRoundPage(AuditDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk)
{
    m_place = new RoleLabel(TextRole::body, this, Tone::second);
    m_place->setObjectName(QStringLiteral("auditPlace"));
    m_place->setWordWrap(true);
    m_title = new RoleLabel(TextRole::title, this);
    m_title->setObjectName(QStringLiteral("auditTitle"));
    m_title->setWordWrap(true);
    m_photos = new AuditPhotos(desk, this);
    QScrollArea* area = makeReadingArea("auditFacts", tr("What is recorded"), this);
    m_facts = new QLabel(area);
    m_facts->setWordWrap(true);
    m_facts->setTextFormat(Qt::RichText);
    m_facts->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_facts->setContentsMargins(8, 0, 8, 8);
    area->setWidget(m_facts);
    m_bar = new AuditAnswerBar(desk, this);
    auto* middle = new QHBoxLayout;
    middle->addWidget(m_photos, 3);
    middle->addWidget(area, 2);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(18, 10, 18, 10);
    column->addWidget(m_place);
    column->addWidget(m_title);
    column->addLayout(middle, 1);
    column->addWidget(m_bar);
    connect(m_bar, &AuditAnswerBar::answered, this, &AuditRoundPage::keep);
    connect(m_bar, &AuditAnswerBar::takeBackAsked, this, [this] {
        if (m_desk.takeBack(m_audit))
            next();
    });
}

void AuditRoundPage::begin(const Uid& audit)
{
    m_audit = audit;
    next();
}

void AuditRoundPage::advance()
{
    m_bar->advance();
}

bool AuditRoundPage::retreat()
{
    return m_bar->retreat();
}

void AuditRoundPage::next()
{
    m_bar->reset();
    if (const auto record = m_desk.next(m_audit))
        showRecord(*record);
    else
        Q_EMIT ended();
}

void AuditRoundPage::showRecord(const BlindRecord& record)
{
    const VisitPage& page = record.page;
    m_visit = page.visit.id;
    m_place->setText(tr("%1 of %2. Some are drawn, some were decided before; please look none of them up elsewhere.")
                         .arg(record.place)
                         .arg(record.of));
    m_title->setText(tr("%1: nothing seen, by %2 on %3")
                         .arg(page.tree ? text(page.tree->label) : tr("no tree"),
                              text(page.observer.name.empty() ? page.observer.code : page.observer.name),
                              plainDate(page.visit.date, 0)));
    m_photos->setPhotos(page.photos);
    m_facts->setText(factsOf(page, m_desk.pack()));
    m_photos->setFocus(Qt::OtherFocusReason);
}

void AuditRoundPage::keep(Outcome outcome, const std::vector<std::string>& reasons, const QString& remark)
{
    if (m_desk.answer(m_audit, {m_visit, outcome, reasons, utf8(remark)}))
        next();
}

} // namespace cupule::ui
