// A label that keeps its size and tone when text size or theme change.

#pragma once

#include <QLabel>

#include "ui/theme/theme.h"

namespace cupule::ui {

/// first: ink. second: ink2. hint: ink3.
enum class Tone { first, second, hint };

class RoleLabel : public QLabel {
    Q_OBJECT
public:
    explicit RoleLabel(TextRole role, QWidget* parent = nullptr, Tone tone = Tone::first);
    RoleLabel(TextRole role, const QString& words, QWidget* parent = nullptr, Tone tone = Tone::first);
    void setRole(TextRole role, Tone tone);

protected:
    void changeEvent(QEvent* event) override;

private:
    void restyle();
    TextRole m_role;
    Tone m_tone;
    bool m_restyling = false;
};

/// True for the events after which a widget measures and colours itself anew.
bool isRestyle(const QEvent& event);

/// Fills a plain widget with one of the theme's grounds: "page", "panel" or "ground".
void setGround(QWidget& widget, const char* ground);

/// A list, view or field in which plain letters and digits are typed, so that single-letter keys must not
/// act.
bool takesText(const QWidget* widget);

} // namespace cupule::ui
