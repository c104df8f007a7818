// Part 3 of the visit, "Before leaving": note, photos, samples, debris off, and when the place was left.

#pragma once

#include <QWidget>

class QComboBox;
class QLabel;
class QPlainTextEdit;

namespace cupule::ui {

class DayDesk;
class KeyButton;
class TimeEdit;

class LeavingPart : public QWidget {
    Q_OBJECT
public:
    explicit LeavingPart(DayDesk& desk, QWidget* parent = nullptr);
    void refresh();
    bool goTo(const QString& field);
    void focusFirst();
    /// What is being typed in the note is taken; called before the visit is left.
    void takeNote();
    [[nodiscard]] QString summary() const { return m_summary; }

Q_SIGNALS:
    void sampleAsked(const QString& id);
    void takeSampleAsked();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    DayDesk& m_desk;
    QString m_summary;
    QList<QComboBox*> m_items;
    TimeEdit* m_left;
    QPlainTextEdit* m_note;
    QLabel* m_photos;
    QLabel* m_samples;
    KeyButton* m_take;
    QString m_visit;
};

} // namespace cupule::ui
