#include "ui/bridge/label_sheet.h"

#include <utility>

#include <QRegularExpression>
#include <QStringList>

namespace cupule::ui {

namespace {

constexpr double slack = 0.01; // mm, for sizes that come out of a division

/// Lengths by the names under which they are written.
std::vector<std::pair<QString, double*>> lengths(SheetSetup& setup)
{
    return {{QStringLiteral("left"), &setup.left},     {QStringLiteral("top"), &setup.top},
            {QStringLiteral("right"), &setup.right},   {QStringLiteral("bottom"), &setup.bottom},
            {QStringLiteral("across"), &setup.across}, {QStringLiteral("down"), &setup.down}};
}

} // namespace

QSizeF SheetSetup::labelSize() const
{
    return {(sheetWidth - left - right - (columns - 1) * across) / columns,
            (sheetHeight - top - bottom - (rows - 1) * down) / rows};
}

QRectF SheetSetup::place(int at) const
{
    const QSizeF size = labelSize();
    const int row = at / columns, column = at % columns;
    return {left + column * (size.width() + across), top + row * (size.height() + down), size.width(), size.height()};
}

bool SheetSetup::fits() const
{
    if (rows < 1 || columns < 1 || left < 0 || top < 0 || right < 0 || bottom < 0 || across < 0 || down < 0)
        return false;
    const QSizeF size = labelSize();
    return size.width() >= smallestLabelWidth - slack && size.height() >= smallestLabelHeight - slack && free >= 1 &&
           free <= perSheet();
}

std::optional<SheetSetup> readSheet(const QString& text)
{
    static const QRegularExpression between(QStringLiteral("[\\s,;]+"));
    static const QRegularExpression counts(QStringLiteral("^(\\d{1,2})[xX×](\\d{1,2})$"));
    const QStringList words = text.split(between, Qt::SkipEmptyParts);
    const QRegularExpressionMatch match = counts.match(words.value(0));
    if (!match.hasMatch())
        return std::nullopt;
    SheetSetup setup;
    setup.rows = match.captured(1).toInt();
    setup.columns = match.captured(2).toInt();
    for (const QString& word : words.mid(1)) {
        const QString name = word.section(QLatin1Char('='), 0, 0);
        const QString value = word.section(QLatin1Char('='), 1);
        bool read = false;
        if (name == QStringLiteral("free"))
            setup.free = value.toInt(&read);
        for (const auto& [known, length] : lengths(setup))
            if (name == known)
                *length = value.toDouble(&read);
        if (!read)
            return std::nullopt;
    }
    return setup.fits() ? std::optional(setup) : std::nullopt;
}

QString sheetText(const SheetSetup& setup)
{
    SheetSetup copy = setup;
    QString out = QStringLiteral("%1x%2").arg(setup.rows).arg(setup.columns);
    for (const auto& [name, length] : lengths(copy))
        out += QStringLiteral(" %1=%2").arg(name).arg(*length);
    return out + QStringLiteral(" free=%1").arg(setup.free);
}

} // namespace cupule::ui
