// The chain of a sample as a chain: links woven over and under. A link that lacks a fact hangs open, one
// whose facts contradict each other is cut, one still ahead is dashed. Left/Right move between links,
// Home/End, Enter asks for the link's form. Put it in a QScrollArea; ensureLinkVisible() tells the area where
// the open link is.

#pragma once

#include <vector>

#include <QWidget>

#include "core/rules/custody.h"

namespace cupule::ui {

/// A link with its words: two short lines below, one above where it is open or broken.
struct ChainWords {
    QString title, first, second, above;
};
/// The usual words for a link.
ChainWords chainWords(const ChainLink& link);

class ChainView : public QWidget {
    Q_OBJECT
public:
    explicit ChainView(QWidget* parent = nullptr);
    void setChain(std::vector<ChainLink> links);
    /// The same with words of the caller, one for each link.
    void setChain(std::vector<ChainLink> links, std::vector<ChainWords> words);
    [[nodiscard]] int current() const { return m_current; }
    void setCurrent(int link);
    /// First link that is open or broken, or -1.
    [[nodiscard]] int firstUnsettled() const;
    [[nodiscard]] QRect linkRect(int link) const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void currentLinkChanged(int link);
    void linkAsked(int link); ///< Enter or double click

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool event(QEvent* event) override;

private:
    struct Metrics;
    [[nodiscard]] Metrics metrics() const;
    void say();

    std::vector<ChainLink> m_links;
    std::vector<ChainWords> m_words;
    int m_current = -1;
};

} // namespace cupule::ui
