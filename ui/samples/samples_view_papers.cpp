// The papers of a sample: labels, labels to take along, the custody record.

#include "ui/samples/samples_view.h"

#include "core/task/sample_numbers.h"
#include "ui/bridge/text.h"
#include "ui/samples/label_dialog.h"

namespace cupule::ui {

/// The sheet as it was used, but for the places used up: the next sheet is a new one.
void SamplesView::keepSheet(const SheetSetup& used)
{
    SheetSetup kept = used;
    kept.free = 1;
    m_bench.settings().set(Setting::labelSheet, sheetText(kept));
}

void SamplesView::printLabels()
{
    if (!m_desk.page() || !m_papers.labels)
        return;
    LabelDialog dialog(m_bench.settings().value(Setting::labelSheet).toString(), this);
    if (dialog.exec() != QDialog::Accepted)
        return;
    const QString path = m_prompts.fileToWrite(this, tr("Where the labels are to lie"),
                                               tr("labels %1.pdf").arg(text(m_desk.page()->sample.number)),
                                               tr("Papers (*.pdf)"));
    if (path.isEmpty())
        return;
    keepSheet(dialog.setup());
    tellWritten(m_papers.labels(*m_bench.session(), m_desk.page()->sample.id, sheetText(dialog.setup()), path), path);
}

/// Numbers are reserved before the file is written: a label that is printed twice is a nuisance, a number that is issued twice
/// cannot be mended.
void SamplesView::takeLabelsAlong()
{
    if (!m_papers.reservedLabels)
        return;
    const std::vector<std::string> waiting = m_desk.reserved();
    LabelDialog dialog(m_bench.settings().value(Setting::labelSheet).toString(), this);
    dialog.askHowMany(static_cast<int>(waiting.size()), mostReservedAtOnce);
    if (dialog.exec() != QDialog::Accepted)
        return;
    const QString path = m_prompts.fileToWrite(this, tr("Where the labels are to lie"), tr("labels to take along.pdf"),
                                               tr("Papers (*.pdf)"));
    if (path.isEmpty())
        return;
    const std::vector<std::string> numbers = dialog.count() == 0 ? waiting : m_desk.reserve(dialog.count());
    if (numbers.empty())
        return;
    keepSheet(dialog.setup());
    tellWritten(m_papers.reservedLabels(*m_bench.session(), numbers, sheetText(dialog.setup()), path), path);
}

void SamplesView::writeCustodyRecord()
{
    if (!m_desk.page() || !m_papers.custodyRecord)
        return;
    const QString path = m_prompts.fileToWrite(this, tr("Where the custody record is to lie"),
                                               tr("custody record %1.pdf").arg(text(m_desk.page()->sample.number)),
                                               tr("Papers (*.pdf)"));
    if (!path.isEmpty())
        tellWritten(m_papers.custodyRecord(*m_bench.session(), m_desk.page()->sample.id, path), path);
}

void SamplesView::tellWritten(const Status& status, const QString& path)
{
    if (status)
        m_bench.say(tr("Written: %1. Print it at 100 %.").arg(path));
    else
        m_bench.complain(status.error());
}

} // namespace cupule::ui
