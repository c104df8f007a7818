// When chestnut came into leaf this spring: the day that was seen, what it moves, and how far at most.

#pragma once

#include <optional>

#include <QDialog>

#include "core/base/civil.h"
#include "core/protocol/pack.h"

class QLabel;
class QPushButton;

namespace cupule::ui {

class DateEdit;

class LeafingDialog : public QDialog {
    Q_OBJECT
public:
    /// `observed` nothing: nobody has observed it yet. `today` ends the days that can be entered.
    LeafingDialog(const Pack& pack, const std::string& region, int year, CivilDate today, std::optional<CivilDate> observed,
                  QWidget* parent = nullptr);
    /// Nothing: the calendar stands.
    [[nodiscard]] std::optional<CivilDate> observed() const;

private:
    void refresh();

    const Pack& m_pack;
    std::string m_region;
    int m_year;
    CivilDate m_today;
    DateEdit* m_date;
    QLabel* m_says;
    QPushButton* m_keep;
};

} // namespace cupule::ui
