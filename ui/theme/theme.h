// Colours, type and text size of the window, light and dark.
//
//  - Widgets never keep colours: they ask themeOf(*this) when they paint. Light or dark is read from the
//    palette's window lightness, so a part of the window may wear another palette than the rest.
//  - Lengths are pixels at 96 dpi and text 100 %; whatever holds text is measured with QFontMetrics instead.
//  - GUI thread only.
//
// Data colours: M. Okabe and K. Ito, "Color Universal Design" (2008). Contrast floors: WCAG 2.2, 1.4.3
// (text 4.5:1) and 1.4.11 (marks 3:1); tests/gui/contrast_test.cpp computes every pair.

#pragma once

#include <QColor>
#include <QFont>
#include <QObject>
#include <QPalette>

class QApplication;
class QWidget;

namespace cupule::ui {

struct Theme {
    bool dark = false;
    QColor ground;  ///< window, rail, menu, status
    QColor panel;   ///< side columns, decision bars
    QColor page;    ///< the page being worked on
    QColor well;    ///< fields, unpressed buttons
    QColor ink;     ///< text, marks, outlines
    QColor ink2;    ///< second text, captions
    QColor ink3;    ///< hints in fields, key caps; never the only carrier of a fact
    QColor hair;    ///< rules between rows (decorative)
    QColor line;    ///< edges of panes (decorative)
    QColor edge;    ///< borders of controls, axes (3:1)
    QColor nut;     ///< main button, present place, today's needle, current part
    QColor nutInk;  ///< text on nut
    QColor nutSoft; ///< current row, chosen card
    QColor leaf;    ///< skyline, usual range, leaf drawings
    QColor leafInk; ///< text on leaf where ink is too loud
    QColor focus;   ///< focus ring, second needle
    QColor link;
    QColor stopSoft; ///< ground of an open link and of an error
    QColor askSoft;  ///< ground of a question
    QColor noteSoft; ///< ground of a note
    QColor okSoft;   ///< ground of an addition
    [[nodiscard]] QPalette palette() const;
    [[nodiscard]] QString styleSheet() const;
};

const Theme& lightTheme();
const Theme& darkTheme();
/// The theme that a widget wears now.
const Theme& themeOf(const QWidget& widget);
const Theme& themeOf(const QPalette& palette);

/// Data only, the same in both themes, always drawn with an ink outline.
namespace data {
inline const QColor orange{0xE6, 0x9F, 0x00};
inline const QColor sky{0x56, 0xB4, 0xE9};
inline const QColor green{0x00, 0x9E, 0x73};
inline const QColor yellow{0xF0, 0xE4, 0x42};
inline const QColor blue{0x00, 0x72, 0xB2};
inline const QColor vermilion{0xD5, 0x5E, 0x00};
inline const QColor purple{0xCC, 0x79, 0xA7};
} // namespace data

/// WCAG 2.2: relative luminance contrast, 1 to 21.
double contrast(const QColor& one, const QColor& other);

/// What a text is for. Sizes are relative to the widget's own font, which carries the text size in force.
enum class TextRole {
    body,
    strong,  ///< body, semibold
    caption, ///< second line; never under 9 pt at 100 %
    small,   ///< key caps, months; never under 9 pt at 100 %
    heading, ///< parts of a page
    title,   ///< of a page
    emptyTitle,
    worth,   ///< letter in its tile
    figures, ///< numbers that stand under one another (Noto Sans: even digits)
    figuresStrong,
    ids, ///< sample, bag, seal and form numbers (Noto Sans Mono)
    idsStrong,
};
QFont roleFont(TextRole role, const QFont& base);
QFont roleFont(TextRole role, const QWidget& widget);

/// Rounds a length of the 100 % design to the text size in force.
int scaled(double pixels, const QFont& font);

/// Keeps palette, font and style sheet of the application. One object for each program.
class Look : public QObject {
    Q_OBJECT
public:
    enum class Mode { followSystem, light, dark };

    static constexpr int smallestText = 90;
    static constexpr int largestText = 175;

    explicit Look(QApplication& app);
    void setMode(Mode mode);
    [[nodiscard]] Mode mode() const { return m_mode; }
    /// Per cent of 10.5 pt, kept within [90, 175].
    void setTextPercent(int percent);
    [[nodiscard]] int textPercent() const { return m_percent; }
    /// The next larger or smaller of 90, 100, 110, 125, 150, 175.
    [[nodiscard]] int textStep(int direction) const;
    [[nodiscard]] const Theme& theme() const;
    /// Style, font, palette and style sheet as set. Called by the setters; call once before the first window.
    void apply();

    bool eventFilter(QObject* watched, QEvent* event) override;

Q_SIGNALS:
    void changed();

private:
    [[nodiscard]] static bool systemIsDark();

    QApplication& m_app;
    Mode m_mode = Mode::followSystem;
    int m_percent = 100;
    bool m_systemDark = false;
    bool m_applying = false;
    bool m_styled = false;
};

} // namespace cupule::ui
