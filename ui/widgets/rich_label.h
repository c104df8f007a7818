// A label of formatted text, several paragraphs of it. Layouts ask more than once how high it is at the same width, and each answer sets
// the whole text: it remembers what it answered.

#pragma once

#include <utility>
#include <vector>

#include <QFont>
#include <QLabel>

namespace cupule::ui {

class RichLabel : public QLabel {
    Q_OBJECT
public:
    using QLabel::QLabel;
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void changeEvent(QEvent* event) override;

private:
    void forget() const;
    void forgetOtherText() const;

    mutable QString m_measured;                          ///< of this text is what is remembered
    mutable std::vector<std::pair<int, int>> m_heights;  ///< by width
    mutable QSize m_size, m_least;
};

} // namespace cupule::ui
