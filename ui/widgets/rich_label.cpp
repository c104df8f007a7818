#include "ui/widgets/rich_label.h"

#include <algorithm>

#include <QEvent>

namespace cupule::ui {

void RichLabel::forget() const
{
    m_heights.clear();
    m_size = m_least = QSize();
}

void RichLabel::forgetOtherText() const
{
    if (text() == m_measured)
        return;
    forget();
    m_measured = text();
}

int RichLabel::heightForWidth(int width) const
{
    forgetOtherText();
    const auto known = std::find_if(m_heights.begin(), m_heights.end(), [&](const auto& each) { return each.first == width; });
    if (known != m_heights.end())
        return known->second;
    return m_heights.emplace_back(width, QLabel::heightForWidth(width)).second;
}

QSize RichLabel::sizeHint() const
{
    forgetOtherText();
    if (!m_size.isValid())
        m_size = QLabel::sizeHint();
    return m_size;
}

QSize RichLabel::minimumSizeHint() const
{
    forgetOtherText();
    if (!m_least.isValid())
        m_least = QLabel::minimumSizeHint();
    return m_least;
}

void RichLabel::changeEvent(QEvent* event)
{
    forget();
    QLabel::changeEvent(event);
}

} // namespace cupule::ui
