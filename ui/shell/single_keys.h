// Letters, digits and signs that act by themselves where no text is typed. They can be switched off, for people whom a stray
// key or a voice that types would hurt: WCAG 2.2, success criterion 2.1.4. Everything has another way too.

#pragma once

#include <QObject>

namespace cupule::ui {

class SingleKeys : public QObject {
    Q_OBJECT
public:
    /// Watches every widget of the program.
    explicit SingleKeys(QObject* parent);
    void setOn(bool on) { m_on = on; }
    [[nodiscard]] bool isOn() const { return m_on; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    bool m_on = true;
};

} // namespace cupule::ui
