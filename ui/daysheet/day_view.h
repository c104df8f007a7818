// The place Day: the day's visits, the visit as a story in three parts, and what the checks say about it.

#pragma once

#include "ui/shell/place.h"
#include "ui/shell/prompts.h"
#include "ui/daysheet/day_desk.h"

class QComboBox;
class QLabel;
class QScrollArea;
class QStackedWidget;
class QToolButton;

namespace cupule::ui {

class EmptyState;
class FindingList;
class KeyButton;
class LeavingPart;
class MessageStrip;
class PaneRow;
class PartHead;
class PhotosPage;
class SeenPart;
class SignCard;
class TreePart;
class VisitList;

class DayView : public Place {
    Q_OBJECT
public:
    DayView(Workbench& bench, Prompts& prompts, QWidget* parent = nullptr);

    [[nodiscard]] QString id() const override { return QStringLiteral("day"); }
    [[nodiscard]] QString word() const override { return tr("Day"); }
    [[nodiscard]] QString mark() const override { return QStringLiteral("place-day"); }
    void enter() override;
    bool leave() override;
    void goTo(const Uid& noun) override;
    [[nodiscard]] bool shows(const Uid& noun) const override;
    void nextPane(int step) override;
    void nextFinding() override;
    bool takePhotos(const QStringList& paths) override;
    [[nodiscard]] QStringList help() const override;
    [[nodiscard]] DayDesk& desk() { return m_desk; }

public Q_SLOTS:
    void startVisit();
    void handIn();
    void showCameBack();
    void goToField(const QString& field);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    QWidget* buildLeft();
    QWidget* buildChooser();
    QWidget* buildPage();
    QWidget* buildChecks();
    void buildCommands();
    void refreshDay();
    void chooseLine(const Uid& visit);
    void refreshPage();
    void refreshNotice();
    void takeSample();
    void takePlace();
    void askPerson(const QString& code);
    void strikeOut();
    void takeTyped();
    void showPhotos(bool shown);
    [[nodiscard]] bool photosShown() const;

    Workbench& m_bench;
    Prompts& m_prompts;
    DayDesk m_desk;
    PaneRow* m_panes;
    PhotosPage* m_photos = nullptr;
    QStackedWidget* m_whole;
    QComboBox* m_chooser;
    QStackedWidget* m_middle;
    EmptyState* m_empty;
    QLabel* m_dayLabel;
    VisitList* m_list;
    KeyButton* m_handIn;
    KeyButton* m_cameBack;                  ///< hidden where nothing came back
    QLabel* m_title;
    QLabel* m_subtitle;
    QLabel* m_decided;                      ///< what was decided, and why
    MessageStrip* m_notice;
    QString m_noticeShown;
    QScrollArea* m_scroll;
    PartHead* m_heads[3];
    TreePart* m_tree;
    SeenPart* m_seen;
    LeavingPart* m_leaving;
    QLabel* m_checksHead;
    QWidget* m_checksPane;
    FindingList* m_findings;
    SignCard* m_card;
    QLabel* m_history;
};

} // namespace cupule::ui
