// What a photo shows: a list of what was seen at its visit, ticked by Space.

#pragma once

#include <string>
#include <vector>

#include <QDialog>

#include "core/protocol/pack.h"
#include "core/record/photo.h"

class QListWidget;

namespace cupule::ui {

class Workbench;

class EvidenceDialog : public QDialog {
    Q_OBJECT
public:
    EvidenceDialog(Workbench& bench, const PhotoNote& photo, const Pack& pack, QWidget* parent = nullptr);
    /// Ids of signs and characters, "crown", "shoot".
    [[nodiscard]] std::vector<std::string> evidence() const;

private:
    QListWidget* m_list;
};

} // namespace cupule::ui
