#include "ui/training/photo_cases_dialog.h"

#include <algorithm>

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFileInfo>
#include <QFormLayout>
#include <QLabel>
#include <QListWidget>
#include <QLocale>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/bridge/words_practice.h"
#include "ui/training/case_stage.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"
#include "ui/widgets/word_fit.h"

namespace cupule::ui {

PhotoCasesDialog::PhotoCasesDialog(Workbench& bench, Prompts& prompts, QWidget* parent) : QDialog(parent), m_bench(bench), m_prompts(prompts)
{
    setObjectName(QStringLiteral("photoCasesDialog"));
    setWindowTitle(tr("Cases from your own photos"));
    auto* column = new QVBoxLayout(this);
    auto* sentence = new RoleLabel(TextRole::body, tr("Two people give their key, each without seeing the other's. Only what both say is asked in Cases."), this, Tone::second);
    sentence->setWordWrap(true);
    column->addWidget(sentence);
    auto* panes = new QSplitter(Qt::Horizontal, this);
    panes->setHandleWidth(1);
    panes->setChildrenCollapsible(false);
    m_list = new QListWidget(panes);
    m_list->setObjectName(QStringLiteral("photoCases"));
    m_list->setAccessibleName(tr("Photo cases"));
    m_list->setWordWrap(true);
    panes->addWidget(m_list);
    panes->addWidget(buildKey());
    panes->setSizes({260, 640});
    column->addWidget(panes, 1);
    m_makers = new RoleLabel(TextRole::caption, this, Tone::second);
    m_makers->setWordWrap(true);
    column->addWidget(m_makers);
    auto* box = new QDialogButtonBox(QDialogButtonBox::Close, this);
    auto* add = box->addButton(tr("New from photos…"), QDialogButtonBox::ActionRole);
    add->setObjectName(QStringLiteral("newPhotoCases"));
    box->button(QDialogButtonBox::Close)->setDefault(false);
    box->button(QDialogButtonBox::Close)->setAutoDefault(false);
    column->addWidget(box);
    resize(onAnyScreen({920, 620}));
    connect(add, &QPushButton::clicked, this,
            [this] { addPhotos(m_prompts.filesToOpen(this, tr("Photos for cases"), QString(), tr("Photos (*.jpg *.jpeg *.png *.heic *.heif *.tif *.tiff *.webp)"))); });
    connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_list, &QListWidget::currentRowChanged, this, &PhotoCasesDialog::refreshCase);
    refresh();
}

QWidget* PhotoCasesDialog::buildKey()
{
    auto* right = new QWidget(this);
    auto* column = new QVBoxLayout(right);
    column->setContentsMargins(8, 0, 0, 0);
    m_stage = new CaseStage(right);
    m_questions = new QScrollArea(right);
    m_questions->setFrameShape(QFrame::NoFrame);
    m_questions->setWidgetResizable(true);
    m_state = new RoleLabel(TextRole::caption, right, Tone::second);
    m_state->setWordWrap(true);
    m_keep = new KeyButton(tr("Keep my key"), right);
    m_keep->setObjectName(QStringLiteral("keepPhotoKey"));
    column->addWidget(m_stage, 3);
    column->addWidget(m_questions, 2);
    column->addWidget(m_state);
    column->addWidget(m_keep, 0, Qt::AlignLeft);
    connect(m_keep, &QPushButton::clicked, this, &PhotoCasesDialog::keepKey);
    return right;
}

/// The host, and what has a size on a photo: galls, what says more about them, galls of other trees.
std::vector<PhotoQuestion> PhotoCasesDialog::questions() const
{
    const Session& session = *m_bench.session();
    std::vector<PhotoQuestion> asked{{std::string(askedName(AskedKind::host)), {}, "castanea-sativa"}};
    for (const Sign& sign : session.pack().signs)
        if (sign.onChecklist && (sign.group == SignGroup::gall || sign.group == SignGroup::gallDetail || sign.group == SignGroup::wrongHost) && sign.unit == "mm")
            asked.push_back({std::string(askedName(AskedKind::sign)), {}, sign.id});
    return asked;
}

void PhotoCasesDialog::addPhotos(const QStringList& paths)
{
    for (const QString& path : paths) {
        PhotoCase made;
        made.pictures = {utf8(path)};
        made.note = utf8(QFileInfo(path).completeBaseName());
        made.region = m_bench.session()->info().region;
        made.questions = questions();
        if (const auto added = addPhotoCase(*m_bench.session(), made); !added)
            return m_bench.complain(added.error());
    }
    refresh();
    m_list->setCurrentRow(m_list->count() - 1);
}

QString PhotoCasesDialog::stateOf(const PhotoCaseLine& line) const
{
    if (!line.keyedByMe)
        return tr("your key is missing");
    if (line.keyed.agreed.empty() && line.keyed.apart.empty())
        return tr("waits for a second person");
    const QString agreed = tr("agreed on %1").arg(line.keyed.agreed.size());
    return line.keyed.apart.empty() ? agreed : tr("%1, apart on %2").arg(agreed).arg(line.keyed.apart.size());
}

void PhotoCasesDialog::refresh()
{
    auto lines = photoCaseLines(*m_bench.session());
    if (!lines)
        return m_bench.complain(lines.error());
    m_lines = std::move(*lines);
    const int row = m_list->currentRow();
    m_list->clear();
    for (const PhotoCaseLine& line : m_lines)
        m_list->addItem(QStringLiteral("%1\n%2").arg(text(line.keyed.photoCase.note), stateOf(line)));
    m_list->setCurrentRow(m_list->count() == 0 ? -1 : std::clamp(row, 0, m_list->count() - 1));
    QStringList makers;
    if (const auto agreements = keyMakers(*m_bench.session()))
        for (const KeyMakers& each : *agreements)
            if (each.agreement.agreement && each.agreement.agreement->kappa)
                makers << tr("%1 and %2, %3: kappa %4 (%5 to %6) over %7 questions")
                              .arg(text(each.one), text(each.other), askedKindText(each.agreement.kind).toLower(),
                                   QLocale().toString(*each.agreement.agreement->kappa, 'f', 2), QLocale().toString(each.agreement.agreement->interval.lower, 'f', 2),
                                   QLocale().toString(each.agreement.agreement->interval.upper, 'f', 2))
                              .arg(each.agreement.questions);
    m_makers->setText(makers.isEmpty() ? tr("How far the makers of keys agree stands here once two of them have answered the same questions.") : makers.join(QLatin1Char('\n')));
    refreshCase();
}

void PhotoCasesDialog::refreshCase()
{
    const int row = m_list->currentRow();
    m_fields.clear();
    auto* box = new QWidget(m_questions);
    auto* form = new QFormLayout(box);
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    const bool some = row >= 0 && row < static_cast<int>(m_lines.size());
    m_keep->setEnabled(some);
    m_state->setText(some ? stateOf(m_lines[static_cast<std::size_t>(row)]) : tr("No photo case yet: make some from your own photos."));
    if (some) {
        const PhotoCaseLine& line = m_lines[static_cast<std::size_t>(row)];
        const auto pictures = photoCasePictures(*m_bench.session(), line.keyed.photoCase);
        m_stage->setPhoto(pictures && !pictures->empty() ? text(pictures->front()) : QString());
        for (const PhotoQuestion& question : line.keyed.photoCase.questions) {
            const AskedKind kind = askedNamed(question.kind).value_or(AskedKind::sign);
            auto* field = new QComboBox(box);
            field->addItem(tr("not said"), QString());
            for (const std::string_view said : {saidYes, saidNo, saidNotJudged})
                field->addItem(saidText(kind, std::string(said), m_bench.session()->pack()), text(said));
            for (const PhotoKey& key : line.keyed.keys)
                if (key.by == m_bench.session()->me())
                    for (const PhotoTruth& truth : key.truths)
                        if (truth.kind == question.kind && truth.subject == question.subject)
                            field->setCurrentIndex(std::max(0, field->findData(text(truth.truth))));
            const QString words = kind == AskedKind::host ? askedKindText(kind) : subjectText(kind, question.subject, m_bench.session()->pack());
            auto* label = new QLabel(words, box);
            label->setWordWrap(true);
            label->setBuddy(field);
            form->addRow(label, field);
            m_fields.push_back(field);
        }
    }
    m_questions->setWidget(box);
}

void PhotoCasesDialog::keepKey()
{
    const int row = m_list->currentRow();
    if (row < 0)
        return;
    const PhotoCase& photoCase = m_lines[static_cast<std::size_t>(row)].keyed.photoCase;
    std::vector<PhotoTruth> truths;
    for (std::size_t i = 0; i < m_fields.size(); ++i)
        if (const QString said = m_fields[i]->currentData().toString(); !said.isEmpty())
            truths.push_back({photoCase.questions[i].kind, photoCase.questions[i].subject, utf8(said)});
    if (const Status kept = addPhotoKey(*m_bench.session(), photoCase.id, truths); !kept)
        return m_bench.complain(kept.error());
    refresh();
}

} // namespace cupule::ui
