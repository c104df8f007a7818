// The place Review: the queue with why each record stands there, the evidence large, the facts, the decision.

#pragma once

#include <functional>

#include "ui/review/review_desk.h"
#include "ui/shell/place.h"
#include "ui/shell/prompts.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QListView;
class QStackedWidget;
class QTimer;

namespace cupule::ui {

class DecisionBar;
class EmptyState;
class EvidenceView;
class FindingList;
class KeyButton;
class QueueModel;
class SmallMap;

class ReviewView : public Place {
    Q_OBJECT
public:
    ReviewView(Workbench& bench, Prompts& prompts, QWidget* parent = nullptr);
    /// Writes the notice of a find; may fail as writing a file may, and with "notice.no-find". Without one, its command does nothing.
    void setNoticeWriter(std::function<Status(Session&, const Uid& visit, const QString& path)> writer)
    {
        m_noticeWriter = std::move(writer);
    }

    [[nodiscard]] QString id() const override { return QStringLiteral("review"); }
    [[nodiscard]] QString word() const override { return tr("Review"); }
    [[nodiscard]] QString mark() const override { return QStringLiteral("place-review"); }
    void enter() override;
    void goTo(const Uid& noun) override;
    [[nodiscard]] bool shows(const Uid& noun) const override;
    void nextPane(int step) override;
    void nextFinding() override;
    [[nodiscard]] QStringList help() const override;
    [[nodiscard]] ReviewDesk& desk() { return m_desk; }

private:
    QWidget* buildQueue();
    QWidget* buildChooser();
    QWidget* buildRecord();
    QWidget* buildReasons();
    void buildNarrowing();
    void buildCommands();
    void refreshPage();
    void refreshNarrowing();
    void askNarrow();
    void askVersions();
    void askConflicts();
    void askSettle(const Uid& entity);
    void showAgreement();
    void step(int by);
    void writeNotice();

    Workbench& m_bench;
    Prompts& m_prompts;
    std::function<Status(Session&, const Uid&, const QString&)> m_noticeWriter;
    ReviewDesk m_desk;
    QStackedWidget* m_stack;
    EmptyState* m_empty;
    QListView* m_queue;
    QueueModel* m_model;
    QLabel* m_count;
    QLineEdit* m_words;
    QComboBox* m_which;
    QTimer* m_typing;
    QLabel* m_where;
    QLabel* m_title;
    QLabel* m_claim;
    QLabel* m_versionWords;
    KeyButton* m_versions;
    EvidenceView* m_evidence;
    QLabel* m_facts;
    DecisionBar* m_decision;
    QLabel* m_standing;
    SmallMap* m_map;
    FindingList* m_findings;
    QLabel* m_history;
    bool m_setting = false;
};

} // namespace cupule::ui
