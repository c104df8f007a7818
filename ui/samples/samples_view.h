// The place Samples: the chain of a sample as a picture, the form for its next line, what keeps it from closing.

#pragma once

#include <functional>
#include <string>
#include <vector>

#include "ui/samples/samples_desk.h"
#include "ui/shell/place.h"
#include "ui/shell/prompts.h"

class QLabel;
class QListView;
class QScrollArea;
class QSplitter;
class QStackedWidget;
class QTableWidget;

namespace cupule::ui {

class ChainView;
class ClockStrip;
class EmptyState;
class FindingList;
class KeyButton;
class LineForm;
class SampleListModel;
struct SheetSetup;

/// Writes the papers of a sample; both may fail as writing a file may. Without one, its command does nothing.
struct SamplePapers {
    /// `sheet` as Setting::labelSheet. Fault "labels.sheet".
    std::function<Status(Session&, const Uid& sample, const QString& sheet, const QString& path)> labels;
    /// Of numbers that have no sample yet.
    std::function<Status(Session&, const std::vector<std::string>& numbers, const QString& sheet, const QString& path)> reservedLabels;
    std::function<Status(Session&, const Uid& sample, const QString& path)> custodyRecord;
};

class SamplesView : public Place {
    Q_OBJECT
public:
    SamplesView(Workbench& bench, Prompts& prompts, QWidget* parent = nullptr);
    void setPapers(SamplePapers papers) { m_papers = std::move(papers); }

    [[nodiscard]] QString id() const override { return QStringLiteral("samples"); }
    [[nodiscard]] QString word() const override { return tr("Samples"); }
    [[nodiscard]] QString mark() const override { return QStringLiteral("place-samples"); }
    void enter() override;
    void goTo(const Uid& noun) override;
    [[nodiscard]] bool shows(const Uid& noun) const override;
    void nextPane(int step) override;
    void nextFinding() override;
    [[nodiscard]] QStringList help() const override;
    [[nodiscard]] SamplesDesk& desk() { return m_desk; }

protected:
    void changeEvent(QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void fitForm();
    void showLink();
    QWidget* buildList();
    QWidget* buildPage();
    void buildCommands();
    void refreshList();
    void refreshPage();
    void refreshGate(const SampleStatus& status);
    void refreshLines(const SamplePage& page);
    void goToLink(int link);
    void closeSample();
    void addLeave();
    void findByLabel();
    void printLabels();
    void takeLabelsAlong();
    void keepSheet(const SheetSetup& used);
    void writeCustodyRecord();
    void tellWritten(const Status& status, const QString& path);

    Workbench& m_bench;
    Prompts& m_prompts;
    SamplesDesk m_desk;
    SamplePapers m_papers;
    QStackedWidget* m_stack;
    EmptyState* m_empty;
    QListView* m_list;
    SampleListModel* m_model;
    QLabel* m_count;
    QLabel* m_waiting;
    ClockStrip* m_clock;
    QLabel* m_title;
    QLabel* m_facts;
    QSplitter* m_below;
    QScrollArea* m_formArea;
    QScrollArea* m_chainArea;
    ChainView* m_chain;
    LineForm* m_form;
    QLabel* m_gateHead;
    FindingList* m_gate;
    QTableWidget* m_lines;
    KeyButton* m_close;
    bool m_setting = false;
};

} // namespace cupule::ui
