// The cautions of the pack, by topic, each with where it comes from.

#pragma once

#include <QDialog>

#include "core/protocol/pack_reader.h"

namespace cupule::ui {

class CautionsDialog : public QDialog {
    Q_OBJECT
public:
    explicit CautionsDialog(const Pack& pack, QWidget* parent = nullptr);
};

} // namespace cupule::ui
