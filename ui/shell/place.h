// One place of work, as the window sees it. A place is a view over a desk: the desk knows state and verbs and no
// widget, the view binds and decides nothing.

#pragma once

#include <functional>

#include <QAction>
#include <QDate>
#include <QList>
#include <QWidget>

#include "core/base/uid.h"

namespace cupule::ui {

class Place : public QWidget {
    Q_OBJECT
public:
    using QWidget::QWidget;

    /// Stable id: "day", "trees", "samples", "review".
    [[nodiscard]] virtual QString id() const = 0;
    /// The word in the rail, and its mark.
    [[nodiscard]] virtual QString word() const = 0;
    [[nodiscard]] virtual QString mark() const = 0;
    /// Shown now, or the store changed while shown: look again, keep what is being typed.
    virtual void enter() = 0;
    /// About to be hidden or closed: take what is being typed. False keeps the place shown.
    virtual bool leave() { return true; }
    /// Show this noun (a visit, a tree, a sample), whichever the place is about.
    virtual void goTo(const Uid& noun) = 0;
    /// Whether the noun is one that this place can show.
    [[nodiscard]] virtual bool shows(const Uid& noun) const = 0;
    /// F6 and Shift+F6: the panes of the place in order, `step` +1 or -1.
    virtual void nextPane(int step) = 0;
    /// F8: the list of checks, then its next finding.
    virtual void nextFinding() {}
    /// Commands of the place, listed in the menu under its word.
    [[nodiscard]] QList<QAction*> commands() const { return m_commands; }
    /// Photos, or folders of them, were brought; false where this place takes none.
    virtual bool takePhotos(const QStringList&) { return false; }
    /// What can be done here, for F1: one line a sentence.
    [[nodiscard]] virtual QStringList help() const = 0;

Q_SIGNALS:
    /// A number beside the word in the rail ("6 wait"); empty for none.
    void noteChanged(const QString& note);
    /// The day or visit that the ribbon should speak of.
    void dateLookedAt(const QDate& date);

protected:
    /// A command that works while the place has the focus; `name` is its object name.
    QAction* addCommand(const QString& words, const QKeySequence& key, const QString& name, const std::function<void()>& run);

private:
    QList<QAction*> m_commands;
};

/// Walks through widgets in order; helper for nextPane().
void focusNextOf(const QList<QWidget*>& panes, int step);

} // namespace cupule::ui
