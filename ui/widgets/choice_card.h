// One drawn choice: a figure, what is to be seen, its key. It describes and never says what an answer proves.

#pragma once

#include <QAbstractButton>

namespace cupule::ui {

class ChoiceCard : public QAbstractButton {
    Q_OBJECT
public:
    /// Figure beside the words (low card), above them (tall card), or words alone.
    enum class Shape { beside, below, words };

    explicit ChoiceCard(QWidget* parent = nullptr);
    /// Id of ui/figures ("leaf_castanea"), or a mark with the prefix "mark:"; empty draws a dashed outline.
    void setFigure(const QString& figure);
    void setWords(const QString& title, const QString& detail);
    /// 1 to 9; 0 shows no key. The owner of the cards makes the keys work.
    void setDigit(int digit);
    [[nodiscard]] int digit() const { return m_digit; }
    void setShape(Shape shape);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    struct Places;
    [[nodiscard]] Places places(int width) const;
    void paintFigure(QPainter& painter, const QRect& where) const;

    QString m_figure, m_title, m_detail;
    int m_digit = 0;
    Shape m_shape = Shape::below;
};

/// Cards of one question side by side, wrapping; digits choose, Left/Right move, one tab stop, nothing
/// preselected.
class ChoiceRow : public QWidget {
    Q_OBJECT
public:
    explicit ChoiceRow(QWidget* parent = nullptr);
    struct Choice {
        QString id, figure, title, detail;
    };
    void setChoices(const std::vector<Choice>& choices, ChoiceCard::Shape shape);
    void setChosen(const QString& id); ///< empty = none
    [[nodiscard]] QString chosen() const { return m_chosen; }
    [[nodiscard]] const std::vector<ChoiceCard*>& cards() const { return m_cards; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void choice(const QString& id);      ///< by the user only
    void backAsked();                    ///< Backspace
    void largerAsked(const QString& id); ///< "?"

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    [[nodiscard]] int columns(int width) const;
    int lay(int across, int width, bool place) const;
    void choose(int index);

    std::vector<Choice> m_choices;
    std::vector<ChoiceCard*> m_cards;
    QString m_chosen;
};

} // namespace cupule::ui
