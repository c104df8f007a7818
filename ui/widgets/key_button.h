// A button that shows its key at the right. Screen readers get the key from the shortcut.

#pragma once

#include <QKeySequence>
#include <QPushButton>

namespace cupule::ui {

/// For painters: the cap right-aligned in `where`; returns its rectangle. Nothing where `key` is empty.
QRect paintKeyCap(QPainter& painter, const QRect& where, const QString& key, const QFont& font,
                  const QColor& ink, const QColor& edge);
int keyCapWidth(const QString& key, const QFont& font);

class KeyButton : public QPushButton {
    Q_OBJECT
public:
    explicit KeyButton(const QString& words, QWidget* parent = nullptr);
    /// Sets the button's shortcut too. `shown` false: the key works without a cap.
    void setKey(const QKeySequence& key, bool shown = true);
    /// Only the cap, for keys that someone else handles ("1", "M").
    void setCap(const QString& cap);
    /// The one filled button of a page.
    void setMain(bool main);
    [[nodiscard]] bool isMain() const { return m_main; }
    /// Caps of all buttons, off in settings.
    static void showCaps(bool shown);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] QString cap() const;
    QString m_cap;
    bool m_main = false;
};

} // namespace cupule::ui
