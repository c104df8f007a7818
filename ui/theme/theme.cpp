#include "ui/theme/theme.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include <QApplication>
#include <QEvent>
#include <QFile>
#include <QFontInfo>
#include <QWidget>

#include "ui/theme/style.h"

static void initResources()
{
    Q_INIT_RESOURCE(cupule);
}

namespace cupule::ui {

namespace {

constexpr double bodyPoints = 10.5;

Theme makeLight()
{
    Theme t;
    t.ground = 0xE6EAE2;
    t.panel = 0xF2F4EF;
    t.page = 0xFDFDFB;
    t.well = 0xFFFFFF;
    t.ink = 0x1B211D;
    t.ink2 = 0x444E47;
    t.ink3 = 0x57615A;
    t.hair = 0xD6DCD3;
    t.line = 0xB6BFB5;
    t.edge = 0x727D74;
    t.nut = 0x7A381B;
    t.nutInk = 0xFFFFFF;
    t.nutSoft = 0xF3E6DE;
    t.leaf = 0xDDE7D6;
    t.leafInk = 0x3C5A3A;
    t.focus = 0x0B5CAD;
    t.link = 0x0B5CAD;
    t.stopSoft = 0xFBE7DC;
    t.askSoft = 0xFBF1D8;
    t.noteSoft = 0xE7EFF5;
    t.okSoft = 0xDFF0E8;
    return t;
}

Theme makeDark()
{
    Theme t;
    t.dark = true;
    t.ground = 0x141816;
    t.panel = 0x1B201D;
    t.page = 0x222825;
    t.well = 0x191E1B;
    t.ink = 0xE8ECE6;
    t.ink2 = 0xBAC4BB;
    t.ink3 = 0x9FAAA1;
    t.hair = 0x333B36;
    t.line = 0x4A544D;
    t.edge = 0x84908A;
    t.nut = 0xE3A37E;
    t.nutInk = 0x1B120D;
    t.nutSoft = 0x3A2A21;
    t.leaf = 0x2B3A2C;
    t.leafInk = 0xA9C7A2;
    t.focus = 0x6CC1F2;
    t.link = 0x86CBF4;
    t.stopSoft = 0x402618;
    t.askSoft = 0x3B3217;
    t.noteSoft = 0x1F303B;
    t.okSoft = 0x16352A;
    return t;
}

double luminance(const QColor& colour)
{
    const auto part = [](double c) { return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); };
    return 0.2126 * part(colour.redF()) + 0.7152 * part(colour.greenF()) + 0.0722 * part(colour.blueF());
}

struct RoleLook {
    double points;
    int weight;
    const char16_t* family; // null: the text family
};

RoleLook roleLook(TextRole role)
{
    switch (role) {
    case TextRole::body:
        return {10.5, QFont::Normal, nullptr};
    case TextRole::strong:
        return {10.5, QFont::DemiBold, nullptr};
    case TextRole::caption:
        return {9.5, QFont::Normal, nullptr};
    case TextRole::small:
        return {9, QFont::Normal, nullptr};
    case TextRole::heading:
        return {11.5, QFont::DemiBold, nullptr};
    case TextRole::title:
        return {16, QFont::DemiBold, nullptr};
    case TextRole::emptyTitle:
        return {19, QFont::DemiBold, nullptr};
    case TextRole::worth:
        return {22, QFont::DemiBold, nullptr};
    case TextRole::figures:
        return {10.5, QFont::Normal, u"Noto Sans"};
    case TextRole::figuresStrong:
        return {10.5, QFont::DemiBold, u"Noto Sans"};
    case TextRole::ids:
        return {10.5, QFont::Normal, u"Noto Sans Mono"};
    case TextRole::idsStrong:
        return {10.5, QFont::Bold, u"Noto Sans Mono"};
    }
    return {10.5, QFont::Normal, nullptr};
}

double pointsOf(const QFont& font)
{
    return font.pointSizeF() > 0 ? font.pointSizeF() : QFontInfo(font).pointSizeF();
}

QFont bodyFont(int percent)
{
    QFont font;
    font.setFamilies({QStringLiteral("Inter"), QStringLiteral("Noto Sans"), QStringLiteral("DejaVu Sans")});
    font.setPointSizeF(bodyPoints * percent / 100.0);
    font.setStyleHint(QFont::SansSerif);
    return font;
}

} // namespace

const Theme& lightTheme()
{
    static const Theme theme = makeLight();
    return theme;
}

const Theme& darkTheme()
{
    static const Theme theme = makeDark();
    return theme;
}

const Theme& themeOf(const QPalette& palette)
{
    return palette.color(QPalette::Window).lightness() < 128 ? darkTheme() : lightTheme();
}

const Theme& themeOf(const QWidget& widget)
{
    return themeOf(widget.palette());
}

double contrast(const QColor& one, const QColor& other)
{
    const double a = luminance(one);
    const double b = luminance(other);
    return (std::max(a, b) + 0.05) / (std::min(a, b) + 0.05);
}

QPalette Theme::palette() const
{
    QPalette p;
    const auto set = [&p](QPalette::ColorRole role, const QColor& colour) { p.setColor(role, colour); };
    set(QPalette::Window, ground);
    set(QPalette::WindowText, ink);
    set(QPalette::Base, well);
    set(QPalette::AlternateBase, panel);
    set(QPalette::Text, ink);
    set(QPalette::Button, well);
    set(QPalette::ButtonText, ink);
    set(QPalette::BrightText, nutInk);
    set(QPalette::Highlight, nut);
    set(QPalette::HighlightedText, nutInk);
    set(QPalette::Link, link);
    set(QPalette::LinkVisited, link);
    set(QPalette::ToolTipBase, page);
    set(QPalette::ToolTipText, ink);
    set(QPalette::PlaceholderText, ink3);
    set(QPalette::Light, page);
    set(QPalette::Midlight, panel);
    set(QPalette::Mid, line);
    set(QPalette::Dark, edge);
    set(QPalette::Shadow, edge);
    for (const QPalette::ColorRole role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        p.setColor(QPalette::Disabled, role, ink3);
    return p;
}

QString Theme::styleSheet() const
{
    QFile file(QStringLiteral(":/cupule/theme/cupule.qss"));
    if (!file.open(QIODevice::ReadOnly))
        return {};
    QString sheet = QString::fromUtf8(file.readAll());
    const std::array<std::pair<const char16_t*, QColor>, 17> names{{{u"@ground@", ground},
                                                                    {u"@panel@", panel},
                                                                    {u"@page@", page},
                                                                    {u"@well@", well},
                                                                    {u"@ink@", ink},
                                                                    {u"@ink2@", ink2},
                                                                    {u"@ink3@", ink3},
                                                                    {u"@hair@", hair},
                                                                    {u"@line@", line},
                                                                    {u"@edge@", edge},
                                                                    {u"@nut@", nut},
                                                                    {u"@nutInk@", nutInk},
                                                                    {u"@nutSoft@", nutSoft},
                                                                    {u"@leaf@", leaf},
                                                                    {u"@focus@", focus},
                                                                    {u"@link@", link},
                                                                    {u"@askSoft@", askSoft}}};
    for (const auto& [name, colour] : names)
        sheet.replace(QString::fromUtf16(name), colour.name());
    return sheet.replace(QStringLiteral("@shade@"), dark ? QStringLiteral("dark") : QStringLiteral("light"));
}

QFont roleFont(TextRole role, const QFont& base)
{
    const RoleLook look = roleLook(role);
    QFont font = base;
    if (look.family) {
        QStringList families = base.families();
        families.prepend(QString::fromUtf16(look.family));
        families.removeDuplicates();
        font.setFamilies(families);
    }
    font.setPointSizeF(pointsOf(base) * look.points / bodyPoints);
    font.setWeight(static_cast<QFont::Weight>(look.weight));
    return font;
}

QFont roleFont(TextRole role, const QWidget& widget)
{
    return roleFont(role, widget.font());
}

int scaled(double pixels, const QFont& font)
{
    return static_cast<int>(std::lround(pixels * pointsOf(font) / bodyPoints));
}

Look::Look(QApplication& app) : m_app(app)
{
    initResources();
    // Without it a widget that some rule of the style sheet speaks of would not take its parent's font.
    QCoreApplication::setAttribute(Qt::AA_UseStyleSheetPropagationInWidgetStyles);
    m_systemDark = systemIsDark();
    m_app.installEventFilter(this);
}

void Look::setMode(Mode mode)
{
    m_mode = mode;
    apply();
}

void Look::setTextPercent(int percent)
{
    m_percent = std::clamp(percent, smallestText, largestText);
    apply();
}

int Look::textStep(int direction) const
{
    constexpr std::array steps{90, 100, 110, 125, 150, 175};
    if (direction > 0) {
        const auto next = std::upper_bound(steps.begin(), steps.end(), m_percent);
        return next == steps.end() ? largestText : *next;
    }
    const auto here = std::lower_bound(steps.begin(), steps.end(), m_percent);
    return here == steps.begin() ? smallestText : *(here - 1);
}

const Theme& Look::theme() const
{
    const bool dark = m_mode == Mode::dark || (m_mode == Mode::followSystem && m_systemDark);
    return dark ? darkTheme() : lightTheme();
}

void Look::apply()
{
    m_applying = true;
    if (!m_styled)
        QApplication::setStyle(new Style); // owned by the application
    m_styled = true;
    QApplication::setFont(bodyFont(m_percent));
    QApplication::setPalette(theme().palette());
    const QString sheet = theme().styleSheet();
    if (m_app.styleSheet() != sheet)
        m_app.setStyleSheet(sheet);
    m_applying = false;
    Q_EMIT changed();
}

bool Look::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::ThemeChange && !m_applying && m_mode == Mode::followSystem) {
        const bool dark = systemIsDark();
        const bool other = dark != m_systemDark;
        m_systemDark = dark;
        apply();
        return other && watched == &m_app;
    }
    return QObject::eventFilter(watched, event);
}

/// Our own palette hides the system's, so it is put aside for the moment of looking.
bool Look::systemIsDark()
{
    const QPalette ours = QApplication::palette();
    QApplication::setPalette(QPalette());
    const bool dark = QApplication::palette().color(QPalette::Window).lightness() < 128;
    QApplication::setPalette(ours);
    return dark;
}

} // namespace cupule::ui
