// What the window shows while no store is open: three ways to begin.

#pragma once

#include <QWidget>

namespace cupule::ui {

class EmptyState;
class Workbench;

class StartPage : public QWidget {
    Q_OBJECT
public:
    explicit StartPage(Workbench& bench, QWidget* parent = nullptr);
    /// The store opened last is offered where it still lies there.
    void refresh();

Q_SIGNALS:
    void newAsked();
    void openAsked();
    void pathAsked(const QString& path);

private:
    Workbench& m_bench;
    EmptyState* m_state = nullptr;
};

} // namespace cupule::ui
