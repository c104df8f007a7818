// What the place Samples shows, brought in line with its desk.

#include "ui/samples/samples_view.h"

#include <algorithm>

#include <QLabel>
#include <QListView>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTableWidget>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/samples/line_form.h"
#include "ui/samples/sample_list.h"
#include "ui/widgets/chain_view.h"
#include "ui/widgets/clock_strip.h"
#include "ui/widgets/finding_list.h"
#include "ui/widgets/key_button.h"

namespace cupule::ui {

void SamplesView::refreshList()
{
    m_setting = true;
    m_model->setLines(m_desk.lines());
    m_stack->setCurrentIndex(m_desk.lines().empty() ? 1 : 0);
    int waiting = 0;
    for (const SampleLine& line : m_desk.lines())
        waiting += line.missing > 0 ? 1 : 0;
    const int printed = static_cast<int>(m_desk.reserved().size());
    m_waiting->setText(printed > 0 ? tr("%n printed labels wait for their samples", nullptr, printed) : QString());
    m_waiting->setVisible(printed > 0);
    m_count->setText(QStringLiteral("<b>%1</b>&nbsp;&nbsp;%2")
                         .arg(tr("Samples"), tr("%n open", nullptr, waiting).toHtmlEscaped()));
    if (m_desk.page())
        m_list->setCurrentIndex(m_model->indexOf(m_desk.page()->sample.id));
    m_setting = false;
    Q_EMIT noteChanged(waiting > 0 ? QString::number(waiting) : QString());
}

void SamplesView::refreshPage()
{
    if (!m_desk.page())
        return;
    const SamplePage& page = *m_desk.page();
    m_setting = true;
    m_list->setCurrentIndex(m_model->indexOf(page.sample.id));
    m_setting = false;
    m_title->setText(QStringLiteral("<b>%1</b> %2")
                         .arg(text(page.sample.number).toHtmlEscaped(),
                              tr("from %1, %2")
                                  .arg(text(page.treeLabel), page.siteName.empty() ? tr("no site") : text(page.siteName))
                                  .toHtmlEscaped()));
    QStringList facts{sentenceStart(sampleStateWord(page.status.state))};
    if (page.sample.pieces)
        facts << tr("%n pieces of %1", nullptr, *page.sample.pieces).arg(text(page.sample.plantPart));
    const bool received = std::any_of(page.lines.begin(), page.lines.end(),
                                      [](const CustodyLine& line) { return line.kind == CustodyKind::receipt; });
    if (page.status.hoursSinceSeal)
        facts << (received ? tr("%1 from the seal to the laboratory") : tr("%1 since the seal"))
                     .arg(durationText(*page.status.hoursSinceSeal * 60));
    m_clock->setHours(page.status.hoursSinceSeal, received, page.limits, page.limitsProposed);
    m_facts->setText(facts.join(QStringLiteral(". ")) + QStringLiteral(". ") + text(m_desk.pack().hazardLine));
    std::vector<ChainWords> words;
    for (const ChainLink& link : page.status.chain) {
        words.push_back(chainWords(link));
        if (link.kind == "tree") // the number is the title already
            words.back().first = text(page.treeLabel);
    }
    m_chain->setChain(page.status.chain, std::move(words));
    m_chainArea->setFixedHeight(m_chain->sizeHint().height() + 16);
    const int first = m_chain->firstUnsettled();
    if (first >= 0)
        m_chain->setCurrent(first);
    refreshGate(page.status);
    refreshLines(page);
    m_form->refresh();
    fitForm();
}

void SamplesView::refreshGate(const SampleStatus& status)
{
    std::vector<Finding> all = status.missing;
    all.insert(all.end(), status.breaks.begin(), status.breaks.end());
    all.insert(all.end(), status.remarks.begin(), status.remarks.end());
    m_gate->setFindings(std::move(all), &m_desk.pack());
    QString head;
    const bool closed = status.state == SampleState::closed || status.state == SampleState::closedWithBreak;
    if (closed)
        head = status.state == SampleState::closed ? tr("Closed whole. Nothing is missing.")
                                                   : tr("Closed with a break. Its result is never sole proof.");
    else if (status.state == SampleState::voided)
        head = status.missing.empty() ? tr("Void, and what became of it is written down.")
                                      : tr("Void. What became of it must still be written down.");
    else if (status.mustBeVoid)
        head = tr("This sample can never close: double-bagging at the tree was not confirmed. Dispose of it and put that down.");
    else if (status.canCloseWhole)
        head = tr("Nothing is missing: this sample can be closed.");
    else if (status.canCloseWithBreak)
        head = tr("It can close only with a break: %n breaks stand.", nullptr, static_cast<int>(status.breaks.size()));
    else
        head = tr("Before this sample can close, %n things are missing", nullptr, static_cast<int>(status.missing.size()));
    m_gateHead->setText(head);
    m_close->setVisible(!closed && !status.mustBeVoid && status.state != SampleState::voided);
}

void SamplesView::refreshLines(const SamplePage& page)
{
    m_lines->setRowCount(static_cast<int>(page.lines.size()));
    const auto when = [&](const Instant& at) {
        const auto [date, time] = m_desk.wallClock(at);
        return tr("%1, %2").arg(plainDate(fromDate(date), page.visitDate.year()), timeText(fromTime(time)));
    };
    int row = 0;
    for (const CustodyLine& line : page.lines) {
        QString what = custodyKindWord(line.kind);
        if (line.corrects)
            what += tr(", in place of line %1").arg(*line.corrects);
        QString time;
        if (line.out)
            time = when(*line.out);
        if (line.in)
            time += (time.isEmpty() ? QString() : QStringLiteral(" – ")) + when(*line.in);
        QStringList who;
        for (const std::string& name : {line.from, line.to})
            if (!name.empty())
                who << text(name);
        QStringList marks;
        for (const std::string& mark : {line.bag, line.seal, line.reportNumber, line.order})
            if (!mark.empty())
                marks << text(mark);
        if (line.sealWhole)
            marks << (*line.sealWhole ? tr("whole") : tr("broken"));
        const QStringList cells{QString::number(line.number), what, time, who.join(tr(" to ")), text(line.place),
                                marks.join(QStringLiteral(", "))};
        for (int c = 0; c < cells.size(); ++c)
            m_lines->setItem(row, c, new QTableWidgetItem(cells[c]));
        ++row;
    }
    m_lines->resizeColumnsToContents();
    m_lines->resizeRowsToContents();
}

} // namespace cupule::ui
