// A strip above a page: what happened, where, what was kept, what to do, one button. Esc or the cross puts it
// away.

#pragma once

#include <QFrame>

#include "core/base/result.h"
#include "core/rules/finding.h"

class QBoxLayout;
class QLabel;

namespace cupule::ui {

class KeyButton;

class MessageStrip : public QFrame {
    Q_OBJECT
public:
    enum class Kind { error, question, note, done };

    explicit MessageStrip(QWidget* parent = nullptr);
    /// Hidden until something is shown. `button` empty: none.
    void show(Kind kind, const QString& what, const QString& more, const QString& button = {});
    void showFault(const Fault& fault, const QString& button = {});
    void clear();
    /// Says what stands and cannot be put away by whoever reads it.
    void setStays(bool stays);
    [[nodiscard]] QString what() const;

Q_SIGNALS:
    void buttonPressed();
    void cleared();

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void restyle();
    Kind m_kind = Kind::note;
    QBoxLayout* m_row;
    QLabel* m_what;
    QLabel* m_more;
    KeyButton* m_button;
    KeyButton* m_away;
};

} // namespace cupule::ui
