#include "ui/daysheet/leaving_part.h"

#include <QComboBox>
#include <QEvent>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QVBoxLayout>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/daysheet/day_desk.h"
#include "ui/theme/theme.h"
#include "ui/widgets/date_edit.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/letter_choice.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

/// The four items in the order of the form, as members of Hygiene.
constexpr Confirmed Hygiene::*members[] = {&Hygiene::clothes, &Hygiene::boots, &Hygiene::vehicle, &Hygiene::tools};
const char* const names[] = {"clothes", "boots", "vehicle", "tools"};

} // namespace

LeavingPart::LeavingPart(DayDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk)
{
    setObjectName(QStringLiteral("leavingPart"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(22, 4, 22, 16);
    column->setSpacing(8);
    auto* head = new QLabel(tr("Leaves, soil and galls brushed off before leaving the tree"), this);
    head->setWordWrap(true);
    column->addWidget(head);
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(14);
    grid->setVerticalSpacing(2);
    const QString words[] = {tr("clothes"), tr("boots"), tr("vehicle"), tr("tools")};
    for (int i = 0; i < 4; ++i) {
        auto* box = new LetterChoice(this);
        box->setObjectName(QString::fromLatin1(names[i]));
        box->addItem(tr("– not yet"), static_cast<int>(Confirmed::open));
        box->addItem(tr("clean"), static_cast<int>(Confirmed::done));
        if (i >= 2)
            box->addItem(tr("none used"), static_cast<int>(Confirmed::noneUsed));
        auto* label = new RoleLabel(TextRole::caption, words[i], this);
        label->setBuddy(box);
        grid->addWidget(label, 0, i);
        grid->addWidget(box, 1, i);
        m_items.append(box);
        connect(box, &QComboBox::activated, this, [this, i, what = words[i]] {
            m_desk.edit(what, [&](Visit& visit) {
                visit.hygiene.*members[i] = static_cast<Confirmed>(m_items[i]->currentData().toInt());
            });
        });
    }
    m_left = new TimeEdit(this);
    m_left->setObjectName(QStringLiteral("leftSite"));
    auto* leftLabel = new RoleLabel(TextRole::caption, tr("left at"), this);
    leftLabel->setBuddy(m_left);
    grid->addWidget(leftLabel, 0, 4);
    grid->addWidget(m_left, 1, 4);
    grid->setColumnStretch(5, 1);
    column->addLayout(grid);
    connect(m_left, &TimeEdit::timeChanged, this, [this](const QTime& time) {
        m_desk.edit(tr("left at"), [&](Visit& visit) {
            visit.hygiene.leftSite = time.isValid() ? std::optional<LocalTime>(fromTime(time)) : std::nullopt;
        });
    });
    m_photos = new QLabel(this);
    m_photos->setObjectName(QStringLiteral("photoLine"));
    m_photos->setWordWrap(true);
    m_samples = new QLabel(this);
    m_samples->setObjectName(QStringLiteral("sampleLine"));
    m_samples->setWordWrap(true);
    m_samples->setTextInteractionFlags(Qt::LinksAccessibleByKeyboard | Qt::LinksAccessibleByMouse);
    connect(m_samples, &QLabel::linkActivated, this, &LeavingPart::sampleAsked);
    m_note = new QPlainTextEdit(this);
    m_note->setObjectName(QStringLiteral("note"));
    m_note->setPlaceholderText(tr("Anything else, in your own words. No names of owners, please."));
    m_note->setTabChangesFocus(true);
    m_note->setFixedHeight(m_note->fontMetrics().lineSpacing() * 3 + 16);
    m_note->setAccessibleName(tr("Note"));
    m_note->installEventFilter(this);
    column->addWidget(m_photos);
    m_take = new KeyButton(tr("Take a sample…"), this);
    m_take->setObjectName(QStringLiteral("takeSample"));
    auto* samples = new QHBoxLayout;
    samples->addWidget(m_samples, 1);
    samples->addWidget(m_take);
    connect(m_take, &QPushButton::clicked, this, &LeavingPart::takeSampleAsked);
    column->addLayout(samples);
    column->addWidget(m_note);
    setTabOrder(m_take, m_note);
}

bool LeavingPart::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_note && event->type() == QEvent::FocusOut)
        takeNote();
    return QWidget::eventFilter(watched, event);
}

void LeavingPart::takeNote()
{
    if (!m_desk.page() || !m_note->document()->isModified() || m_visit != text(m_desk.page()->visit.id.text()))
        return;
    m_note->document()->setModified(false);
    m_desk.edit(tr("note"), [&](Visit& visit) { visit.note = utf8(m_note->toPlainText().trimmed()); });
}

void LeavingPart::refresh()
{
    if (!m_desk.page())
        return;
    const VisitPage& page = *m_desk.page();
    const bool edit = m_desk.mayEdit();
    int confirmed = 0;
    for (int i = 0; i < 4; ++i) {
        const Confirmed value = page.visit.hygiene.*members[i];
        confirmed += value != Confirmed::open ? 1 : 0;
        m_items[i]->setCurrentIndex(std::max(0, m_items[i]->findData(static_cast<int>(value))));
        m_items[i]->setEnabled(edit);
    }
    if (!m_left->hasFocus())
        m_left->setTime(page.visit.hygiene.leftSite ? toTime(*page.visit.hygiene.leftSite) : QTime());
    m_left->setReadOnly(!edit);
    const QString visit = text(page.visit.id.text());
    if (visit != m_visit || !m_note->document()->isModified()) {
        m_visit = visit;
        if (m_note->toPlainText() != text(page.visit.note))
            m_note->setPlainText(text(page.visit.note));
        m_note->document()->setModified(false);
    }
    m_note->setReadOnly(!edit);
    const int photos = static_cast<int>(page.photos.size());
    m_photos->setText(photos > 0 ? tr("%n photos belong to this visit.", nullptr, photos) + QLatin1Char(' ')
                                       + tr("P shows the photos of the day.")
                                 : tr("No photo yet. Drop photos, or a folder of them, on the window; P shows the photos of the day."));
    QStringList samples;
    for (const Sample& sample : page.samples)
        samples << QStringLiteral("<a href=\"%1\">%2</a>").arg(text(sample.id.text()), text(sample.number).toHtmlEscaped());
    m_samples->setText(samples.isEmpty() ? tr("No sample. Photograph and report is the usual way; a sample needs leave first.")
                                         : tr("Samples: %1").arg(samples.join(QStringLiteral(", "))));
    m_take->setEnabled(page.tree.has_value() && page.host.answer != HostAnswer::notHost);
    m_summary = tr("%n photos", nullptr, photos) + QStringLiteral(", ")
                + tr("%n samples", nullptr, static_cast<int>(page.samples.size())) + QStringLiteral(", ")
                + (confirmed == 4 ? tr("debris off") : tr("debris not confirmed"));
}

void LeavingPart::focusFirst()
{
    m_items.first()->setFocus(Qt::OtherFocusReason);
}

bool LeavingPart::goTo(const QString& field)
{
    const QStringList parts = field.split(QLatin1Char('/'));
    if (parts[0] == QStringLiteral("hygiene")) {
        for (int i = 0; i < 4; ++i)
            if (parts.value(1) == QLatin1String(names[i]))
                m_items[i]->setFocus(Qt::OtherFocusReason);
        if (parts.value(1) == QStringLiteral("leftSite"))
            m_left->setFocus(Qt::OtherFocusReason);
        if (parts.size() < 2)
            focusFirst();
        return true;
    }
    if (parts[0] == QStringLiteral("note") || parts[0] == QStringLiteral("photos") || parts[0] == QStringLiteral("samples")
        || parts[0] == QStringLiteral("remarks")) {
        m_note->setFocus(Qt::OtherFocusReason);
        return true;
    }
    return false;
}

} // namespace cupule::ui
