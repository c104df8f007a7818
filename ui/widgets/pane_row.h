// Three panes side by side where they fit at the text size in force, measured in characters: a list, the page, its checks.
// Where they do not, the checks lie under the page, and narrower still the list goes away and a chooser takes its place.

#pragma once

#include <QSplitter>

namespace cupule::ui {

class PaneRow : public QSplitter {
    Q_OBJECT
public:
    /// `chooser` stands above the page while the list is away.
    PaneRow(QWidget* list, QWidget* chooser, QWidget* page, QWidget* checks, QWidget* parent = nullptr);
    void setChecksShown(bool shown);

    /// The checks lie under the page.
    [[nodiscard]] bool isStacked() const { return m_inner->orientation() == Qt::Vertical; }

Q_SIGNALS:
    void stackedChanged();

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void place();

    QWidget* m_list;
    QWidget* m_chooser;
    QWidget* m_checks;
    bool m_moved = false; ///< the handle was moved since the panes were last turned
    QSplitter* m_inner; ///< page and checks, side by side or one above the other
};

} // namespace cupule::ui
