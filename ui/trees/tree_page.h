// One tree's page: what it is and what became of it, its past as a time line, what says that it is a chestnut, photos, samples and
// where it was said to stand. A view over the desk.

#pragma once

#include <QScrollArea>

#include "ui/trees/trees_desk.h"

class QBoxLayout;
class QLabel;
class QLineEdit;
class QListWidget;
class QPlainTextEdit;
class QVBoxLayout;

namespace cupule::ui {

class KeyButton;
class RoleLabel;
class SmallMap;
class StoryList;
class Thumbnails;

class TreePageView : public QScrollArea {
    Q_OBJECT
public:
    explicit TreePageView(TreesDesk& desk, QWidget* parent = nullptr);
    void refresh();
    /// Takes the note that is being typed.
    void leave();
    /// The parts that F6 goes through.
    [[nodiscard]] QList<QWidget*> panes() const;

Q_SIGNALS:
    void fateAsked();
    void mergeAsked();
    void splitAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void layButtons();
    void buildHead(QVBoxLayout& column);
    void buildStories(QVBoxLayout& column);
    void buildThings(QVBoxLayout& column);
    void buildFields(QVBoxLayout& column);
    void refreshHead();
    void refreshStories();
    void refreshPhotos();
    void refreshFields();
    RoleLabel* heading(QVBoxLayout& column, const QString& words);

    TreesDesk& m_desk;
    QWidget* m_box;
    RoleLabel* m_title;
    QLabel* m_fate;
    QLabel* m_facts;
    QLabel* m_merged;
    QBoxLayout* m_buttons;
    KeyButton* m_fateButton;
    KeyButton* m_merge;
    KeyButton* m_split;
    StoryList* m_line;
    RoleLabel* m_evidenceHead;
    StoryList* m_evidence;
    RoleLabel* m_photoHead;
    QListWidget* m_photos;
    Thumbnails* m_thumbnails;
    QLabel* m_samples;
    SmallMap* m_map;
    QLabel* m_placeWords;
    QLineEdit* m_girth;
    QPlainTextEdit* m_note;
};

} // namespace cupule::ui
