// The place Practice: Walk, Cases and Results, a page each.

#pragma once

#include "ui/shell/place.h"
#include "ui/shell/prompts.h"
#include "ui/shell/workbench.h"

class QStackedWidget;
class QTabBar;

namespace cupule::ui {

class CasesPage;
class ResultsPage;
class WalkPage;

class TrainingView : public Place {
    Q_OBJECT
public:
    TrainingView(Workbench& bench, Prompts& prompts, QWidget* parent = nullptr);

    [[nodiscard]] QString id() const override { return QStringLiteral("practice"); }
    [[nodiscard]] QString word() const override { return tr("Practice"); }
    [[nodiscard]] QString mark() const override { return QStringLiteral("place-practice"); }
    void enter() override;
    bool leave() override;
    void goTo(const Uid& noun) override;
    [[nodiscard]] bool shows(const Uid& noun) const override;
    void nextPane(int step) override;
    bool takePhotos(const QStringList& paths) override;
    [[nodiscard]] QStringList help() const override;

    enum class Page { walk, cases, results };
    void showPage(Page page);
    [[nodiscard]] WalkPage& walk() { return *m_walk; }
    [[nodiscard]] CasesPage& cases() { return *m_cases; }
    [[nodiscard]] ResultsPage& results() { return *m_results; }

private:
    void buildCommands(Prompts& prompts);
    void entered(int page);

    Workbench& m_bench;
    QTabBar* m_tabs;
    QStackedWidget* m_stack;
    WalkPage* m_walk;
    CasesPage* m_cases;
    ResultsPage* m_results;
};

} // namespace cupule::ui
