// A position in any notation, kept as typed, with what was understood and how uncertain it is shown at once
// below.

#pragma once

#include <functional>

#include <QWidget>

class QLabel;
class QLineEdit;

namespace cupule::ui {

/// What a text was understood as, in words; made by the owner through core/position and ui/bridge.
struct PositionWords {
    enum class How { nothing, understood, doubted, notUnderstood };
    How how = How::nothing;
    QString understood;  ///< "British grid, a 10 m square: 52.1234 N 0.5678 W"
    QString uncertainty; ///< "± 7 m, the square is 10 m wide"
    QString problem;     ///< why not, or what is doubted
    QString proposal;    ///< a text that would be understood; taken only by the user
};

class PositionEdit : public QWidget {
    Q_OBJECT
public:
    using Reader = std::function<PositionWords(const QString& typed)>;

    explicit PositionEdit(QWidget* parent = nullptr);
    void setReader(Reader reader);
    void setText(const QString& text);
    [[nodiscard]] QString text() const;
    [[nodiscard]] const PositionWords& words() const { return m_words; }
    [[nodiscard]] QLineEdit* field() const { return m_field; }
    void setReadOnly(bool readOnly);

Q_SIGNALS:
    void edited(const QString& text);   ///< while typing
    void finished(const QString& text); ///< left or Enter, where it changed

protected:
    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void read();
    void show(const PositionWords& words);

    Reader m_reader;
    PositionWords m_words;
    QString m_before;
    QLineEdit* m_field;
    QLabel* m_understood;
    QLabel* m_problem;
};

} // namespace cupule::ui
