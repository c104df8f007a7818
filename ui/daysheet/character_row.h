// One character of the host key as a row of drawn choices. It describes and never leads; "can't be judged" is always
// one of the answers. Digits choose while the focus is in the row, Backspace takes the answer back.

#pragma once

#include <optional>

#include <QWidget>

#include "core/protocol/pack.h"
#include "core/record/visit.h"

class QCheckBox;
class QLineEdit;

namespace cupule::ui {

class ChoiceRow;

class CharacterRow : public QWidget {
    Q_OBJECT
public:
    /// `why`: why this character is asked now; empty for none.
    CharacterRow(const Character& character, const QString& why, QWidget* parent = nullptr);
    [[nodiscard]] QString character() const { return m_id; }
    void setSeen(const CharacterSeen* seen, bool mayEdit);
    /// What Tab reaches, in order.
    [[nodiscard]] QList<QWidget*> stops() const;
    void focusFirst();

Q_SIGNALS:
    void chosen(const QString& character, const QString& state);         ///< "" takes back, "?" can't be judged
    void valueTyped(const QString& character, std::optional<double> value);
    void groundSaid(const QString& character, bool onGround, std::optional<bool> otherTreeNear);

private:
    void addCards(const Character& character);
    void addValueField(const Character& character);
    void addGroundBoxes();
    void sayGround();

    QString m_id;
    ChoiceRow* m_choices = nullptr;
    QLineEdit* m_value = nullptr;
    QCheckBox* m_ground = nullptr;
    QCheckBox* m_alone = nullptr;
    bool m_setting = false;
};

} // namespace cupule::ui
