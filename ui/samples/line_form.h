// The form for one custody line: the fields that its kind has, and no others. A seal number is never offered: it is read
// off the bag, typed, and compared by the rules. A line that was a slip of the pen is followed by one in its place, which begins
// with what it said, but for the seal.

#pragma once

#include <QFrame>

#include "ui/samples/samples_desk.h"

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;

namespace cupule::ui {

class DateEdit;
class KeyButton;
class TimeEdit;

class LineForm : public QFrame {
    Q_OBJECT
public:
    explicit LineForm(SamplesDesk& desk, QWidget* parent = nullptr);
    /// Shows the form of a kind, empty; keeps what is typed where the kind stays the same.
    void setKind(CustodyKind kind);
    [[nodiscard]] CustodyKind kind() const;
    void refresh();
    /// A line in place of line `number`, beginning with what that says.
    void correct(int number);
    /// As if nothing had been typed: the form that the first open link wants.
    void startAnew();
    void focusFirst();
    /// Keeps the line, if there is enough for one.
    void keep();

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Field {
        QString name;
        QWidget* widget;
        QLabel* label;
        unsigned kinds;
    };
    void addField(const QString& name, const QString& words, QWidget* widget, std::initializer_list<CustodyKind> kinds);
    QLineEdit* addLine(const QString& name, const QString& words, std::initializer_list<CustodyKind> kinds);
    QWidget* addMoment(const QString& name, const QString& words, std::initializer_list<CustodyKind> kinds);
    QComboBox* addChoice(const QString& name, const QString& words, const QList<std::pair<QString, QString>>& choices,
                         std::initializer_list<CustodyKind> kinds);
    void build();
    void buildEnds();
    void clearFields();
    void refreshCorrects();
    void refreshHead();
    [[nodiscard]] bool closed() const;
    [[nodiscard]] int correcting() const;
    void setValue(const QString& name, const std::string& value);
    void setMoment(const QString& name, const std::optional<Instant>& at);
    void fillFrom(const CustodyLine& line);
    [[nodiscard]] std::string value(const QString& name) const;
    std::optional<Instant> momentOf(const QString& name);
    [[nodiscard]] CustodyLine lineTyped();

    SamplesDesk& m_desk;
    QComboBox* m_kind;
    QLabel* m_head;
    QLabel* m_hint;
    QFormLayout* m_form;
    QList<Field> m_fields;
    QComboBox* m_corrects = nullptr;
    KeyButton* m_keep;
    KeyButton* m_new;
    QLabel* m_foot;
    QString m_sample;
    bool m_closesLink = false; ///< the line asked for closes or mends a link
};

} // namespace cupule::ui
