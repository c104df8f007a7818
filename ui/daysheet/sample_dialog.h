// Taking a sample at the visited tree: what it is, how many pieces, why. What keeps it from being taken is said here, and
// nothing is opened then.

#pragma once

#include <functional>

#include <QDialog>

#include "core/protocol/pack.h"
#include "core/task/samples.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;

namespace cupule::ui {

class SampleDialog : public QDialog {
    Q_OBJECT
public:
    using Opener = std::function<Result<SampleOpening>(const Sample& wanted, bool alreadyTaken)>;

    SampleDialog(const Pack& pack, Opener opener, QWidget* parent = nullptr);
    /// `believed`: the tree as the visit has it; `waiting`: printed labels that have no sample yet.
    void propose(const QString& believed, int waiting);

    /// Null until one is open.
    [[nodiscard]] Uid opened() const { return m_opened; }

private:
    void take();
    [[nodiscard]] Sample typed() const;

    const Pack& m_pack;
    Opener m_opener;
    Uid m_opened;
    QComboBox* m_part;
    QLineEdit* m_pieces;
    QComboBox* m_condition;
    QLineEdit* m_reason;
    QLineEdit* m_believed;
    QLineEdit* m_number;
    QCheckBox* m_already;
    QLabel* m_why;
};

} // namespace cupule::ui
