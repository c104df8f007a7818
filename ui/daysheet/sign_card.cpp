#include "ui/daysheet/sign_card.h"

#include <algorithm>

#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QVBoxLayout>

#include "core/base/text.h"
#include "ui/bridge/text.h"
#include "ui/daysheet/day_desk.h"
#include "ui/figures/figure.h"
#include "ui/figures/figure_names.h"
#include "ui/theme/theme.h"
#include "ui/widgets/letter_choice.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

class SignCard::Drawing : public QWidget {
public:
    using QWidget::QWidget;
    void setFigure(const QString& figure)
    {
        m_spec = plate(figure);
        m_spec.view.scaleBar = true;
        setVisible(!figure.isEmpty());
        update();
    }
    QSize sizeHint() const override { return {scaled(104, font()), scaled(112, font())}; }

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        if (!m_spec.plate.empty())
            paintFigure(painter, rect(), m_spec);
    }

private:
    Depiction m_spec;
};

SignCard::SignCard(DayDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk)
{
    setObjectName(QStringLiteral("signCard"));
    m_drawing = new Drawing(this);
    m_drawing->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    m_name = new RoleLabel(TextRole::strong, this);
    m_name->setWordWrap(true);
    m_words = new RoleLabel(TextRole::caption, this);
    m_words->setWordWrap(true);
    m_counting = new QWidget(this);
    m_count = new QLineEdit(m_counting);
    m_count->setObjectName(QStringLiteral("signCount"));
    m_count->setAccessibleName(tr("How many were counted"));
    m_count->setMaximumWidth(fontMetrics().horizontalAdvance(QStringLiteral("0000000")));
    m_class = new LetterChoice(m_counting);
    m_class->setObjectName(QStringLiteral("signCountClass"));
    m_class->setAccessibleName(tr("About how many"));
    auto* rows = new QGridLayout(m_counting);
    rows->setContentsMargins(0, 0, 0, 0);
    auto* counted = new RoleLabel(TextRole::caption, tr("counted (C)"), m_counting);
    auto* about = new RoleLabel(TextRole::caption, tr("or about"), m_counting);
    counted->setBuddy(m_count);
    about->setBuddy(m_class);
    rows->addWidget(counted, 0, 0);
    rows->addWidget(m_count, 0, 1);
    rows->addWidget(about, 1, 0);
    rows->addWidget(m_class, 1, 1);
    rows->setColumnStretch(1, 1);
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(14, 10, 14, 10);
    grid->setHorizontalSpacing(10);
    grid->addWidget(m_name, 0, 0, 1, 2);
    grid->addWidget(m_drawing, 1, 0, Qt::AlignTop);
    grid->addWidget(m_words, 1, 1, Qt::AlignTop);
    grid->addWidget(m_counting, 2, 0, 1, 2);
    grid->setColumnStretch(1, 1);
    connect(m_count, &QLineEdit::editingFinished, this, [this] {
        if (m_setting || !m_count->isModified())
            return;
        m_count->setModified(false);
        take();
    });
    connect(m_class, &QComboBox::activated, this, [this] {
        m_count->clear();
        take();
    });
    hide();
}

void SignCard::take()
{
    const QString typed = m_count->text().trimmed();
    const auto counted = parseWhole(utf8(typed));
    if (!typed.isEmpty() && !counted) {
        refresh();
        return;
    }
    m_desk.count(m_sign, counted, m_class->currentData().toString());
}

void SignCard::setSign(const QString& sign)
{
    m_sign = sign;
    const Sign* known = m_desk.page() ? m_desk.pack().sign(utf8(sign)) : nullptr;
    setVisible(known != nullptr);
    if (known == nullptr)
        return;
    m_drawing->setFigure(figureForSign(known->id));
    m_name->setText(sentenceStart(text(known->name)));
    QStringList lines;
    if (!known->action.empty())
        lines << tr("Do: %1.").arg(text(known->action));
    if (!known->caution.empty() && known->caution != "none")
        lines << tr("Care: %1.").arg(text(known->caution));
    if (!known->mustNotConclude.empty())
        lines << tr("It does not show %1.").arg(text(known->mustNotConclude));
    m_words->setText(lines.join(QStringLiteral("\n")));
    refresh();
}

void SignCard::refresh()
{
    if (!m_desk.page() || isHidden())
        return;
    const Visit& visit = m_desk.page()->visit;
    const auto at = std::find_if(visit.observations.begin(), visit.observations.end(),
                                 [&](const Observation& o) { return o.sign == utf8(m_sign); });
    const Sign* known = m_desk.pack().sign(utf8(m_sign));
    const bool counts = known != nullptr && known->group == SignGroup::gall && at != visit.observations.end() &&
                        at->answer == Answer::seen;
    m_counting->setVisible(counts);
    if (!counts)
        return;
    m_setting = true;
    if (m_class->count() == 0) {
        m_class->addItem(QStringLiteral("–"), QString());
        for (const CountClass& countClass : m_desk.pack().countClasses)
            m_class->addItem(text(countClass.words), text(countClass.id));
    }
    if (!m_count->isModified())
        m_count->setText(at->count ? QString::number(*at->count) : QString());
    m_class->setCurrentIndex(std::max(0, m_class->findData(text(at->countClass))));
    m_count->setReadOnly(!m_desk.mayEdit());
    m_class->setEnabled(m_desk.mayEdit());
    m_setting = false;
}

void SignCard::focusCount()
{
    if (!m_counting->isHidden())
        m_count->setFocus(Qt::OtherFocusReason);
}

} // namespace cupule::ui
