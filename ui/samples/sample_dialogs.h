// Small forms of the place Samples: a leave, and closing with a break.

#pragma once

#include <vector>

#include <QDialog>

#include "core/record/leave.h"
#include "core/record/place.h"
#include "core/rules/finding.h"
#include "core/protocol/pack.h"

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace cupule::ui {

class DateEdit;

class CloseWithBreakDialog : public QDialog {
    Q_OBJECT
public:
    CloseWithBreakDialog(const std::vector<Finding>& breaks, const Pack& pack, QWidget* parent = nullptr);
    [[nodiscard]] QString reason() const;
    [[nodiscard]] QString secondPerson() const;

private:
    QLineEdit* m_reason;
    QLineEdit* m_second;
};

class LeaveDialog : public QDialog {
    Q_OBJECT
public:
    LeaveDialog(const std::vector<Site>& sites, CivilDate today, QWidget* parent = nullptr);
    [[nodiscard]] Leave leave() const;

private:
    QComboBox* m_giver;
    QLineEdit* m_name;
    QList<std::pair<LeaveScope, QCheckBox*>> m_scopes;
    QComboBox* m_site;
    DateEdit* m_from;
    DateEdit* m_to;
    QLineEdit* m_reference;
};

} // namespace cupule::ui
