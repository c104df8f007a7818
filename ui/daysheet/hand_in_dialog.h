// One page before handing in: what goes, what stays open and why.

#pragma once

#include <QDialog>

#include "core/task/day.h"

namespace cupule::ui {

class HandInDialog : public QDialog {
    Q_OBJECT
public:
    HandInDialog(const HandInPage& page, const Pack& pack, QWidget* parent = nullptr);
};

} // namespace cupule::ui
