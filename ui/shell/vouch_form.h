// Asks for the digits of a key as they were read out, and for what the key stands for. Vouching itself is the desk's.

#pragma once

#include <QWidget>

#include "core/task/keys.h"

class QCheckBox;
class QLabel;
class QLineEdit;

namespace cupule::ui {

class KeyButton;

class VouchForm : public QWidget {
    Q_OBJECT
public:
    explicit VouchForm(QWidget* parent = nullptr);
    /// `decides`: the file says what only some roles may say.
    void ask(const std::string& fingerprint, KeyStanding standing, bool decides);
    /// Without key and person.
    [[nodiscard]] Vouching vouching() const;

Q_SIGNALS:
    void vouchAsked();

private:
    void refresh();
    [[nodiscard]] QString comparison() const;
    [[nodiscard]] QString typed() const;
    /// What stands in the way of trusting one more key is answered.
    [[nodiscard]] bool answered() const;

    QString m_digits;
    KeyStanding m_standing = KeyStanding::unknown;
    QLineEdit* m_heard;
    QLabel* m_compared;
    QLabel* m_rolesNote;
    QList<std::pair<Role, QCheckBox*>> m_roles;
    QCheckBox *m_instead, *m_another;
    KeyButton* m_vouch;
};

} // namespace cupule::ui
