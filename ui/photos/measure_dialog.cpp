#include "ui/photos/measure_dialog.h"

#include <utility>

#include <QKeyEvent>
#include <QLineEdit>
#include <QSplitter>
#include <QVBoxLayout>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/photos/figure_pane.h"
#include "ui/photos/measure_panel.h"
#include "ui/photos/measure_words.h"
#include "ui/photos/photo_canvas.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

QString headWords(const MeasureRequest& request, const Sign* sign)
{
    QStringList parts;
    if (!request.tree.isEmpty())
        parts << request.tree;
    if (sign != nullptr)
        parts << text(sign->name);
    if (sign != nullptr && !sign->measure.empty())
        parts << text(sign->measure);
    return parts.join(QStringLiteral(", "));
}

} // namespace

PhotoMeasure MeasureResult::note(const std::string& sign) const
{
    PhotoMeasure measure;
    measure.sign = sign;
    measure.scaleFromX = scale.line.from.x;
    measure.scaleFromY = scale.line.from.y;
    measure.scaleToX = scale.line.to.x;
    measure.scaleToY = scale.line.to.y;
    measure.scaleMillimetres = scale.millimetres;
    measure.fromX = line.from.x;
    measure.fromY = line.from.y;
    measure.toX = line.to.x;
    measure.toY = line.to.y;
    measure.millimetres = length.millimetres;
    measure.uncertaintyMillimetres = length.uncertaintyMillimetres;
    return measure;
}

MeasureDialog::MeasureDialog(std::vector<PhotoToMeasure> photos, const MeasureRequest& request, const Pack& pack, QWidget* parent)
    : QDialog(parent), m_photos(std::move(photos)), m_request(request), m_pack(pack), m_canvas(new PhotoCanvas(this)),
      m_panel(new MeasurePanel(headWords(request, pack.sign(request.sign)), pack, pack.sign(request.sign), this)),
      m_figure(new FigurePane(request.figure, this)), m_foot(new RoleLabel(TextRole::caption, this, Tone::second)),
      m_take(new KeyButton({}, this)), m_another(new KeyButton(tr("Measure another"), this))
{
    setObjectName(QStringLiteral("measureDialog"));
    setWindowTitle(measures() ? tr("Measure on a photo") : tr("Photos"));
    setWindowFlag(Qt::WindowMaximizeButtonHint);
    resize(1180, 720);
    m_foot->setWordWrap(true);
    auto* left = new QWidget(this);
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_canvas, 1);
    column->addWidget(m_foot);
    auto* row = new QSplitter(this);
    row->setChildrenCollapsible(false);
    row->addWidget(left);
    row->addWidget(m_figure);
    row->addWidget(makeSide());
    row->setStretchFactor(0, 1);
    auto* whole = new QVBoxLayout(this);
    whole->addWidget(row);
    m_figure->setVisible(!request.figure.isEmpty());
    m_panel->setKnown(request.knownMillimetres, request.knownUncertainty);
    connect(m_canvas, &PhotoCanvas::linesChanged, this, &MeasureDialog::refresh);
    connect(m_canvas, &PhotoCanvas::viewChanged, this, &MeasureDialog::refreshFoot);
    connect(m_canvas, &PhotoCanvas::patchPicked, this, [this](const Lab& colour, const QColor& seen) { m_panel->showColour(colour, seen); });
    connect(m_panel, &MeasurePanel::knownChanged, this, &MeasureDialog::refresh);
    connect(&m_reader, &PictureReader::done, this, &MeasureDialog::shown);
    m_canvas->setMode(measures() ? PhotoCanvas::Mode::lines : PhotoCanvas::Mode::look);
    turnTo(std::clamp(request.firstPhoto, 0, std::max(0, static_cast<int>(m_photos.size()) - 1)));
    m_canvas->setFocus(Qt::OtherFocusReason);
}

QWidget* MeasureDialog::makeSide()
{
    auto* side = new QWidget(this);
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_panel, 1);
    auto* leave = new KeyButton(measures() ? tr("Leave it") : tr("Close"), side);
    leave->setCap(tr("Esc"));
    m_take->setObjectName(QStringLiteral("measureTake"));
    m_take->setMain(true);
    m_take->setCap(tr("Enter"));
    m_another->setCap(QStringLiteral("N"));
    for (KeyButton* button : {m_take, m_another, leave}) {
        button->setAutoDefault(false);
        column->addWidget(button);
    }
    m_take->setVisible(measures());
    m_another->setVisible(measures());
    connect(m_take, &QPushButton::clicked, this, &MeasureDialog::take);
    connect(m_another, &QPushButton::clicked, this, [this] { letterKey(Qt::Key_N); });
    connect(leave, &QPushButton::clicked, this, &QDialog::reject);
    side->setMinimumWidth(scaled(330, font()));
    side->setMaximumWidth(scaled(420, font()));
    return side;
}

void MeasureDialog::turnTo(int photo)
{
    m_at = photo;
    m_canvas->setPicture({}, m_photos.empty() ? tr("This visit has no photo yet.") : tr("Opening the photo …"));
    if (!m_photos.empty()) {
        m_waiting = true;
        m_reader.read(photo, m_photos[std::size_t(photo)].path);
    }
    refreshFoot();
}

void MeasureDialog::shown(int photo, const Picture& picture)
{
    m_waiting = false;
    std::vector<EarlierLine> earlier;
    for (const PhotoMeasure& measure : m_photos[std::size_t(photo)].measures) {
        const Sign* sign = m_pack.sign(measure.sign);
        earlier.push_back({{measure.scaleFromX, measure.scaleFromY}, {measure.scaleToX, measure.scaleToY},
                           tr("scale, %1 mm").arg(numberText(measure.scaleMillimetres, 2))});
        earlier.push_back({{measure.fromX, measure.fromY}, {measure.toX, measure.toY},
                           tr("%1, %2 ± %3 mm").arg(sign != nullptr ? text(sign->name) : text(measure.sign),
                                                      numberText(measure.millimetres, 1),
                                                      numberText(2 * measure.uncertaintyMillimetres, 1))});
    }
    m_canvas->setEarlier(earlier);
    m_canvas->setPicture(picture,
                         tr("%1 cannot be shown here. The file is kept as it came.").arg(m_photos[std::size_t(photo)].name));
    refreshFoot();
}

std::optional<MeasureResult> MeasureDialog::measured(QString& fault) const
{
    const auto scaleLine = m_canvas->scaleLine();
    if (!scaleLine || !m_panel->known())
        return std::nullopt;
    MeasureResult result;
    result.photo = m_at;
    result.scale = {*scaleLine, *m_panel->known(), m_panel->knownUncertainty()};
    if (const auto good = checkScale(result.scale); !good) {
        fault = faultText(good.error());
        return std::nullopt;
    }
    const auto line = m_canvas->measuredLine();
    if (!line)
        return std::nullopt;
    const auto length = photoLength(result.scale, *line);
    if (!length) {
        fault = faultText(length.error());
        return std::nullopt;
    }
    result.line = *line;
    result.length = *length;
    return result;
}

void MeasureDialog::refresh()
{
    QString fault;
    const auto now = measured(fault);
    const auto scale = m_canvas->scaleLine();
    const auto line = m_canvas->measuredLine();
    m_panel->showLength(now ? std::optional(now->length) : std::nullopt, scale ? scale->pixels() : -1, line ? line->pixels() : -1, fault);
    const QString known = m_panel->known() ? numberText(*m_panel->known(), 1) : tr("?", "known length that is not typed yet");
    m_canvas->setLabels(tr("1  scale, %1 mm").arg(known),
                        now ? tr("2  %1 mm").arg(lengthNumber(now->length.millimetres, now->length)) : QStringLiteral("2"));
    m_take->setEnabled(now.has_value());
    m_take->setText(now ? tr("Put %1 mm into the visit").arg(lengthNumber(now->length.millimetres, now->length))
                        : tr("Put it into the visit"));
    m_another->setEnabled(line.has_value());
}

void MeasureDialog::refreshFoot()
{
    QStringList parts;
    if (!m_photos.empty())
        parts << tr("photo %1 of %2: %3").arg(m_at + 1).arg(m_photos.size()).arg(m_photos[std::size_t(m_at)].name);
    parts << tr("shown at %1 %").arg(numberText(m_canvas->zoom() * 100, 0));
    if (m_canvas->brightness() != 0)
        parts << tr("brightness %1").arg(m_canvas->brightness());
    QString keys = tr("+ − 0 zoom, Ctrl+arrows move, R turn, [ ] darker and brighter, comma and full stop other photo, C colour, D drawing, F full screen");
    if (!m_photos.empty() && !m_photos[std::size_t(m_at)].measures.empty())
        keys += tr(", E lines measured earlier");
    if (measures())
        keys = tr("Tab next end, arrows nudge it, L known length, K coin or card, ") + keys;
    m_foot->setText(parts.join(QStringLiteral(", ")) + QStringLiteral(". ") + keys);
}

void MeasureDialog::take()
{
    QString fault;
    m_taken = measured(fault);
    if (m_taken)
        accept();
}

void MeasureDialog::pickColour()
{
    const bool picking = m_canvas->mode() == PhotoCanvas::Mode::patch;
    const auto other = measures() ? PhotoCanvas::Mode::lines : PhotoCanvas::Mode::look;
    m_canvas->setMode(picking ? other : PhotoCanvas::Mode::patch);
    m_canvas->setFocus(Qt::OtherFocusReason);
}

bool MeasureDialog::letterKey(int key)
{
    if (!measures() && (key == Qt::Key_L || key == Qt::Key_N || key == Qt::Key_K))
        return false;
    const int last = static_cast<int>(m_photos.size()) - 1;
    switch (key) {
    case Qt::Key_Comma:
        if (m_at > 0)
            turnTo(m_at - 1);
        return true;
    case Qt::Key_Period:
        if (m_at < last)
            turnTo(m_at + 1);
        return true;
    case Qt::Key_L:
        m_panel->knownField()->setFocus(Qt::ShortcutFocusReason);
        m_panel->knownField()->selectAll();
        return true;
    case Qt::Key_N:
        m_canvas->forgetMeasured();
        m_canvas->setFocus(Qt::OtherFocusReason);
        return true;
    case Qt::Key_K: m_panel->askCoin(); return true;
    case Qt::Key_E: m_canvas->showEarlier(!m_canvas->earlierShown()); return true;
    case Qt::Key_C: pickColour(); return true;
    case Qt::Key_D: m_figure->setVisible(!m_figure->isVisible() && !m_request.figure.isEmpty()); return true;
    case Qt::Key_F:
    case Qt::Key_F11: setWindowState(windowState() ^ Qt::WindowFullScreen); return true;
    default: return false;
    }
}

/// Letters come here only where no field took them.
void MeasureDialog::keyPressEvent(QKeyEvent* event)
{
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (enter) {
        if (qobject_cast<QLineEdit*>(focusWidget()) != nullptr)
            m_canvas->setFocus(Qt::OtherFocusReason);
        else if (auto* button = qobject_cast<QPushButton*>(focusWidget()))
            button->click();
        else if (measures())
            take();
        return;
    }
    if (event->key() == Qt::Key_Escape && m_canvas->mode() == PhotoCanvas::Mode::patch) {
        pickColour();
        return;
    }
    if (event->modifiers() == Qt::NoModifier && letterKey(event->key()))
        return;
    QDialog::keyPressEvent(event);
}

} // namespace cupule::ui
