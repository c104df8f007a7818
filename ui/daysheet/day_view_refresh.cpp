// What the place Day shows, brought in line with its desk.

#include <algorithm>

#include <QComboBox>
#include <QEvent>
#include <QLabel>
#include <QScrollArea>
#include <QStackedWidget>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/daysheet/day_view.h"
#include "ui/daysheet/leaving_part.h"
#include "ui/daysheet/part_head.h"
#include "ui/daysheet/seen_part.h"
#include "ui/daysheet/sign_card.h"
#include "ui/daysheet/tree_part.h"
#include "ui/daysheet/visit_list.h"
#include "ui/theme/theme.h"
#include "ui/widgets/empty_state.h"
#include "ui/widgets/finding_list.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/message_strip.h"
#include "ui/widgets/pane_row.h"

namespace cupule::ui {

namespace {

/// What stands of a handed-in visit, and what a change would make of it: said before the first one, and after it.
QString standingWords(const VisitPage& page)
{
    QStringList parts{sentenceStart(stateWord(page.state)) +
                      (page.oneOfTwo ? DayView::tr(", one of two verifiers has decided") : QString())};
    const bool accepted = page.state == RecordState::accepted;
    if (page.correctionWaits)
        parts << (accepted ? DayView::tr("A correction waits, revision %1: the accepted record counts until it is decided")
                           : DayView::tr("A correction waits, revision %1"))
                     .arg(page.revisions);
    else if (page.revisions > 1)
        parts << DayView::tr("This is revision %1").arg(page.revisions);
    if (!page.mayEdit)
        parts << DayView::tr("For reading only");
    else if (!page.correctionWaits && accepted)
        parts << DayView::tr("A change makes a new revision, which waits for a verifier; the accepted one counts until then");
    else if (!page.correctionWaits && page.state == RecordState::submitted)
        parts << DayView::tr("A change makes a new revision; what was handed in stays on record");
    else if (!page.correctionWaits)
        parts << DayView::tr("A change makes a new revision, which is handed in at once");
    return parts.join(QStringLiteral(". "));
}

/// What was decided and why, and what is wanted of whoever may answer it.
QString decidedHtml(const VisitPage& page, const Pack& pack)
{
    if (!page.decided)
        return {};
    const Decision& decision = page.decided->decision;
    QString html = QStringLiteral("<b>%1</b>: ").arg(page.decided->answered ? DayView::tr("Decided on an earlier revision") : DayView::tr("Decided"))
                   + decisionText(decision, page.decided->by, pack).toHtmlEscaped();
    if (decision.outcome == Outcome::giveBack && !page.decided->answered && page.mayEdit)
        html += QStringLiteral("<br><b>%1</b>").arg(DayView::tr("Answer it by correcting what is asked for; the correction goes to a verifier."));
    return html;
}

} // namespace

void DayView::refreshDay()
{
    const auto& lines = m_desk.lines();
    m_dayLabel->setText(QStringLiteral("<b>%1</b>&nbsp;&nbsp;%2")
                            .arg(shortDate(m_desk.day()).toHtmlEscaped(),
                                 tr("%n visits", nullptr, static_cast<int>(lines.size())).toHtmlEscaped()));
    m_list->visits().setLines(lines);
    if (m_desk.page())
        chooseLine(m_desk.page()->visit.id);
    int drafts = 0;
    for (const VisitLine& line : lines)
        drafts += line.state == RecordState::draft ? 1 : 0;
    m_handIn->setEnabled(drafts > 0);
    m_cameBack->setText(tr("%n visits came back", nullptr, m_desk.cameBack()));
    m_cameBack->setVisible(m_desk.cameBack() > 0);
    Q_EMIT noteChanged(drafts > 0 ? QString::number(drafts) : QString());
    Q_EMIT dateLookedAt(toDate(m_desk.day()));
}

void DayView::chooseLine(const Uid& visit)
{
    m_list->setCurrentVisit(visit);
    m_chooser->setCurrentIndex(m_list->visits().indexOf(visit).row());
}

void DayView::refreshPage()
{
    if (m_bench.session() == nullptr)
        return;
    const bool filled = m_desk.page().has_value();
    m_middle->setCurrentIndex(filled ? 0 : 1);
    m_panes->setChecksShown(filled);
    if (!filled)
        return;
    const VisitPage& page = *m_desk.page();
    chooseLine(page.visit.id);
    const QString tree = page.tree ? text(page.tree->label) : tr("A new visit");
    m_title->setText(QStringLiteral("<b>%1</b> %2").arg(tree.toHtmlEscaped(),
                                                         page.site ? text(page.site->name).toHtmlEscaped() : QString()));
    QStringList under;
    if (page.state != RecordState::draft)
        under << standingWords(page);
    const auto before = std::find_if(page.history.begin(), page.history.end(),
                                     [&](const HistoryLine& h) { return h.line.date < page.visit.date; });
    if (before != page.history.end())
        under << tr("Last before this on %1: %2")
                     .arg(plainDate(before->line.date, page.visit.date.year()), visitSummary(before->line));
    else if (page.tree)
        under << tr("First visit to this tree");
    if (!m_desk.mayEdit() && page.state == RecordState::draft)
        under << tr("For reading only");
    m_subtitle->setText(under.join(QStringLiteral(". ")) + QLatin1Char('.'));
    m_decided->setText(decidedHtml(page, m_desk.pack()));
    m_decided->setVisible(page.decided.has_value());
    refreshNotice();
    m_tree->refresh();
    m_seen->refresh();
    m_seen->showCard(m_panes->isStacked());
    if (m_panes->isStacked())
        m_card->setSign({});
    m_card->refresh();
    m_leaving->refresh();
    m_heads[0]->setSummary(m_tree->summary());
    m_heads[1]->setSummary(m_seen->summary());
    m_heads[2]->setSummary(m_leaving->summary());
    m_findings->setFindings(page.findings, &m_desk.pack());
    m_checksHead->setText(QStringLiteral("<b>%1</b>&nbsp;&nbsp;%2")
                              .arg(tr("Checks"), m_findings->findings().counts().toHtmlEscaped()));
    QString history;
    for (std::size_t i = 0; i < page.history.size() && i < 4; ++i) {
        const HistoryLine& line = page.history[i];
        history += QStringLiteral("<br>%1: %2").arg(plainDate(line.line.date, 0).toHtmlEscaped(),
                                                     visitSummary(line.line).toHtmlEscaped());
        if (!line.remark.empty())
            history += QStringLiteral(" <i>%1</i>").arg(text(line.remark).toHtmlEscaped());
    }
    m_history->setText(history.isEmpty() ? QString()
                                         : QStringLiteral("<b>%1</b>%2").arg(tr("This tree before"), history));
    m_history->setVisible(!history.isEmpty() && !m_panes->isStacked());
}

/// After a find: what to do, and whom to tell. It comes back once put away only where it has something else to say.
void DayView::refreshNotice()
{
    const VisitPage& page = *m_desk.page();
    if (!page.positive.positive) {
        m_notice->clear();
        m_noticeShown.clear();
        return;
    }
    QStringList lines;
    for (const std::string& line : m_desk.pack().standingNotice)
        lines << text(line);
    const QString first = lines.isEmpty() ? tr("Leave it on the tree. Tell the plant-health authority.") : lines.takeFirst();
    if (page.state != RecordState::draft) // what to do at the tree was said then; whom to tell stands
        lines.clear();
    const QString tell = m_desk.whomToTell();
    lines.prepend(tell.isEmpty() ? tr("Nobody has set whom to tell in this store: ask your coordinator.") : tr("Tell: %1.").arg(tell));
    const QString shown = text(page.visit.id.text()) + first + lines.join(QLatin1Char(' '));
    if (m_noticeShown == shown)
        return;
    m_noticeShown = shown;
    m_notice->show(MessageStrip::Kind::question, first, lines.join(QLatin1Char(' ')),
                   tell.isEmpty() ? tr("Set whom to tell…") : QString());
}

void DayView::changeEvent(QEvent* event)
{
    Place::changeEvent(event);
    if (event->type() == QEvent::FontChange && m_bench.session() != nullptr && m_desk.page())
        refreshPage();
}

} // namespace cupule::ui
