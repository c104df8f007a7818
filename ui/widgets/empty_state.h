// What a place says while it holds nothing: why, and up to three ways to begin, each with a drawn figure, a
// sentence and a button.

#pragma once

#include <QWidget>

class QGridLayout;
class QLabel;

namespace cupule::ui {

class KeyButton;

class EmptyState : public QWidget {
    Q_OBJECT
public:
    explicit EmptyState(QWidget* parent = nullptr);
    void setTitle(const QString& title, const QString& sentence);
    /// `figure` as for ChoiceCard. The first way is the filled button. Gives the button.
    KeyButton* addWay(const QString& figure, const QString& heading, const QString& sentence,
                      const QString& button, const QKeySequence& key);
    /// A last line below.
    void setFoot(const QString& words);

protected:
    void changeEvent(QEvent* event) override;

private:
    void restyle();
    QLabel* m_title;
    QLabel* m_sentence;
    QLabel* m_foot;
    QGridLayout* m_ways;
    int m_count = 0;
};

} // namespace cupule::ui
