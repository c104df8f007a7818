// The form for one custody line: the fields that its kind has, and no others. A seal number is never offered: it is read
// off the bag, typed, and compared by the rules.

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
    void focusFirst();
    /// Keeps the line, if there is enough for one.
    void keep();

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
    void clearFields();
    void refreshCorrects();
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
    QString m_sample;
};

} // namespace cupule::ui
