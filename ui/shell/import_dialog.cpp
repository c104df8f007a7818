#include "ui/shell/import_dialog.h"

#include <algorithm>
#include <memory>

#include <QComboBox>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QProgressBar>
#include <QTableWidget>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/shell/workbench.h"
#include "ui/widgets/key_button.h"

namespace cupule::ui {

namespace {

constexpr int mostProblemsShown = 500;

} // namespace

ImportDialog::ImportDialog(Workbench& bench, const QStringList& paths, QWidget* parent)
    : QDialog(parent), m_bench(bench), m_paths(paths)
{
    setObjectName(QStringLiteral("importDialog"));
    setWindowTitle(tr("Taking in files"));
    resize(860, 560);
    m_summary = new QLabel(this);
    m_summary->setObjectName(QStringLiteral("importSummary"));
    m_summary->setWordWrap(true);
    m_questions = new QVBoxLayout;
    m_problems = new QTableWidget(0, 5, this);
    m_problems->setHorizontalHeaderLabels({tr("File"), tr("Row"), tr("Column"), tr("What stands there"), tr("Why")});
    m_problems->horizontalHeader()->setStretchLastSection(true);
    m_problems->horizontalHeader()->setResizeContentsPrecision(0); // by the rows in view
    m_problems->verticalHeader()->hide();
    m_problems->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_problems->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_problems->setTabKeyNavigation(false);
    m_problems->setAccessibleName(tr("Rows that are set aside"));
    m_bar = new QProgressBar(this);
    m_away = new KeyButton(tr("Take nothing"), this);
    m_keep = new KeyButton(tr("Keep the good rows"), this);
    m_keep->setObjectName(QStringLiteral("importKeep"));
    m_keep->setMain(true);
    auto* row = new QHBoxLayout;
    row->addStretch(1);
    row->addWidget(m_away);
    row->addWidget(m_keep);
    auto* column = new QVBoxLayout(this);
    column->addWidget(m_summary);
    column->addLayout(m_questions);
    column->addWidget(m_bar);
    column->addWidget(m_problems, 1);
    column->addLayout(row);
    connect(m_keep, &QPushButton::clicked, this, [this] {
        if (!m_answers.isEmpty()) {
            takeAnswers();
            run(true);
        } else if (m_kept) {
            accept();
        } else {
            run(false);
        }
    });
    connect(m_away, &QPushButton::clicked, this, &ImportDialog::reject);
    connect(&m_bench.jobs(), &Jobs::progressed, this, [this](qint64 done, qint64 whole) {
        m_bar->setRange(0, whole > 0 ? 1000 : 0);
        m_bar->setValue(whole > 0 ? static_cast<int>(done * 1000 / whole) : 0);
    });
    run(true);
}

void ImportDialog::reject()
{
    if (m_running)
        m_bench.jobs().cancel();
    else
        QDialog::reject();
}

void ImportDialog::run(bool dry)
{
    m_running = true;
    m_keep->setEnabled(false);
    m_bar->setRange(0, 0);
    m_bar->show();
    m_summary->setText(dry ? tr("Reading, nothing is kept yet…") : tr("Taking the good rows in…"));
    m_options.dryRun = dry;
    m_options.photosToTray = true;   // which visit a photo belongs to is shown before it is taken
    std::vector<std::string> paths;
    for (const QString& path : m_paths)
        paths.push_back(utf8(path));
    auto report = std::make_shared<ImportReport>();
    m_bench.jobs().start(tr("Taking in files"),
                         [report, paths, options = m_options](Session& session, const Progress& progress) -> Status {
                             auto made = importFiles(session, paths, options, progress);
                             if (!made)
                                 return tl::unexpected<Fault>(made.error());
                             *report = std::move(*made);
                             return {};
                         },
                         [this, report, dry](const Status& status) {
                             m_running = false;
                             m_bar->hide();
                             if (!status) {
                                 m_summary->setText(faultText(status.error()));
                                 m_away->setText(tr("Close"));
                                 return;
                             }
                             m_report = *report;
                             m_kept = !dry && report->questions.empty();
                             show(*report);
                         });
}

void ImportDialog::show(const ImportReport& report)
{
    QStringList lines;
    const int kept = static_cast<int>(report.kept);
    lines << (report.dryRun ? tr("%n rows can be kept", nullptr, kept) : tr("%n rows are kept", nullptr, kept))
                 + QStringLiteral(", ") + tr("%n known already", nullptr, static_cast<int>(report.knownAlready))
                 + QStringLiteral(", ") + tr("%n set aside", nullptr, static_cast<int>(report.setAside))
                 + QStringLiteral(".");
    for (const ImportFile& file : report.files)
        if (!file.asideFile.empty())
            lines << tr("The rows set aside lie in %1. Mend them there and take that file in again.").arg(text(file.asideFile));
    const auto photos = std::count_if(report.files.begin(), report.files.end(),
                                      [](const ImportFile& file) { return file.format == "photo" && file.kept > 0; });
    if (photos > 0 && !report.dryRun)
        lines << tr("%n photos lie in the tray: in Day, P shows which visits are proposed for them.", nullptr, static_cast<int>(photos));
    if (!report.findings.empty())
        lines << tr("Some rows make a question: they are drafts, and the day shows what is asked.");
    m_summary->setText(lines.join(QLatin1Char('\n')));
    showQuestions(report);
    showProblems(report);
    m_keep->setText(!report.questions.empty() ? tr("Read again") : m_kept ? tr("Done") : tr("Keep the good rows"));
    m_keep->setEnabled(m_kept || !report.questions.empty() || report.kept > 0);
    m_away->setVisible(!m_kept);
    m_keep->setFocus(Qt::OtherFocusReason);
}

void ImportDialog::showQuestions(const ImportReport& report)
{
    while (QLayoutItem* item = m_questions->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    m_answers.clear();
    for (const ImportQuestion& question : report.questions) {
        auto* box = new QWidget(this);
        auto* line = new QFormLayout(box);
        line->setContentsMargins(0, 0, 0, 0);
        auto* field = new QComboBox(box);
        field->addItem(tr("not answered yet"), QString());
        for (const std::string& reading : question.readings) {
            const QString words = text(reading);
            const qsizetype colon = words.indexOf(QLatin1Char(':'));   // "dmy: 4 May 2023"
            field->addItem(colon > 0 ? words.mid(colon + 1).trimmed() : words, colon > 0 ? words.left(colon) : words);
        }
        line->addRow(tr("%1, column %2: which is it?").arg(QFileInfo(text(question.file)).fileName(), text(question.column)),
                     field);
        m_questions->addWidget(box);
        m_answers.append({text(question.option), field});
    }
}

void ImportDialog::showProblems(const ImportReport& report)
{
    const int shown = static_cast<int>(std::min<std::size_t>(report.problems.size(), mostProblemsShown));
    m_problems->setRowCount(shown);
    m_problems->setVisible(shown > 0);
    for (int i = 0; i < shown; ++i) {
        const ImportProblem& problem = report.problems[static_cast<std::size_t>(i)];
        QString why = importKindText(problem.kind);
        if (!problem.cause.empty() && !positionKindText(problem.cause).isEmpty())
            why = positionKindText(problem.cause);
        if (!problem.suggestion.empty())
            why += QStringLiteral(" ") + tr("Perhaps %1?").arg(text(problem.suggestion));
        const QStringList cells{QFileInfo(text(problem.file)).fileName(),
                                problem.row > 0 ? QString::number(problem.row) : QString(), text(problem.column),
                                text(problem.value), why};
        for (int c = 0; c < cells.size(); ++c)
            m_problems->setItem(i, c, new QTableWidgetItem(cells[c]));
    }
    if (report.problems.size() > mostProblemsShown)
        m_summary->setText(m_summary->text() + QLatin1Char('\n')
                           + tr("The first %1 of %2 problems are shown; the file holds all.")
                                 .arg(mostProblemsShown)
                                 .arg(report.problems.size()));
    m_problems->resizeColumnsToContents();
}

void ImportDialog::takeAnswers()
{
    for (const auto& [option, field] : m_answers) {
        const std::string value = utf8(field->currentData().toString());
        if (value.empty())
            continue;
        if (option == QStringLiteral("--date-order"))
            m_options.dateOrder = value;
        else if (option == QStringLiteral("--encoding"))
            m_options.encoding = value;
        else if (option == QStringLiteral("--delimiter"))
            m_options.delimiter = value;
        else if (option == QStringLiteral("--decimal"))
            m_options.decimal = value;
        else if (option == QStringLiteral("--zone"))
            m_options.zone = value;
        else if (option == QStringLiteral("--system"))
            m_options.system = value;
    }
}

} // namespace cupule::ui
