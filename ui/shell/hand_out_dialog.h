// What a signed file is to hold: the day's records, decisions, or what verifiers need; what is left out; the passphrase of a locked key.

#pragma once

#include <utility>
#include <vector>

#include <QDialog>

#include "core/task/hand_out.h"
#include "core/task/keys.h"

class QCheckBox;
class QFormLayout;
class QLineEdit;
class QRadioButton;

namespace cupule::ui {

class HandOutDialog : public QDialog {
    Q_OBJECT
public:
    /// `kinds` that whoever works here may write, at least one.
    HandOutDialog(const std::vector<GoingKind>& kinds, const OwnKey& key, QWidget* parent = nullptr);
    /// Without the file's name.
    [[nodiscard]] HandOut wanted() const;

private:
    void buildParts(QFormLayout& form);

    std::vector<std::pair<GoingKind, QRadioButton*>> m_kinds;
    QCheckBox* m_photos;
    QCheckBox* m_personal;
    QCheckBox* m_practice;
    QCheckBox* m_whole;
    QLineEdit* m_passphrase = nullptr;     ///< of a locked key alone
};

/// What the session's roles may write, the usual one first; empty for nobody's.
std::vector<GoingKind> goingKindsOf(const Session& session);

} // namespace cupule::ui
