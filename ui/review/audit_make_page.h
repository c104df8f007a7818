// Making a batch: who is to look, how sure it must be, and how many records that means.

#pragma once

#include <optional>

#include <QWidget>

#include "core/task/audit.h"

class QComboBox;
class QDoubleSpinBox;
class QLabel;

namespace cupule::ui {

class AuditDesk;
class KeyButton;

class AuditMakePage : public QWidget {
    Q_OBJECT
public:
    explicit AuditMakePage(AuditDesk& desk, QWidget* parent = nullptr);
    /// Asks anew who may look and what could go in.
    void begin();

Q_SIGNALS:
    void made(const cupule::Uid& audit);
    void left();

private:
    [[nodiscard]] AuditWanted wanted() const;
    void look();
    void refresh();

    AuditDesk& m_desk;
    std::vector<Person> m_people;
    std::optional<AuditOffer> m_offer;
    QComboBox* m_auditor;
    QDoubleSpinBox* m_confidence;
    QDoubleSpinBox* m_tolerable;
    QLabel* m_size;
    QLabel* m_leftOut;
    KeyButton* m_make;
};

} // namespace cupule::ui
