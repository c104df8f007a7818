#include "ui/bridge/text.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QLocale>

namespace cupule::ui {

QString text(std::string_view utf8)
{
    return QString::fromUtf8(utf8.data(), static_cast<qsizetype>(utf8.size()));
}

std::string utf8(const QString& text)
{
    return text.toStdString();
}

QString numberText(double value, int mostDecimals)
{
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    const QString fixed = locale.toString(value, 'f', mostDecimals);
    if (mostDecimals == 0 || !fixed.contains(locale.decimalPoint()))
        return fixed;
    qsizetype end = fixed.size();
    while (fixed.at(end - 1) == locale.zeroDigit())
        --end;
    if (fixed.sliced(0, end).endsWith(locale.decimalPoint()))
        end -= locale.decimalPoint().size();
    const QString shortened = fixed.first(end);
    return shortened == locale.negativeSign() + locale.zeroDigit() ? locale.zeroDigit() : shortened;
}

QString distanceText(double metres)
{
    if (metres > 0 && metres < 0.1)
        return QCoreApplication::translate("words", "%1 cm", "distance").arg(numberText(metres * 100, 1));
    if (metres < 10)
        return QCoreApplication::translate("words", "%1 m", "distance").arg(numberText(metres, 1));
    if (metres < 995)
        return QCoreApplication::translate("words", "%1 m", "distance").arg(numberText(metres, 0));
    return QCoreApplication::translate("words", "%1 km", "distance")
        .arg(numberText(metres / 1000, metres < 9950 ? 1 : 0));
}

QString durationText(double minutes)
{
    const auto whole = static_cast<long long>(std::llround(minutes));
    if (whole < 60)
        return QCoreApplication::translate("words", "%1 min", "duration").arg(whole);
    if (whole >= 72 * 60)
        return QCoreApplication::translate("words", "%1 days", "duration")
            .arg(numberText(double(whole) / 1440, 1));
    if (whole % 60 == 0)
        return QCoreApplication::translate("words", "%1 h", "duration").arg(whole / 60);
    return QCoreApplication::translate("words", "%1 h %2 min", "duration").arg(whole / 60).arg(whole % 60);
}

QString listText(const QStringList& items)
{
    if (items.size() < 2)
        return items.join(QString());
    const bool ofPhrases = std::any_of(items.begin(), items.end(), [](const QString& item) { return item.contains(u','); });
    if (ofPhrases)
        return items.join(QStringLiteral("; "));
    return QCoreApplication::translate("words", "%1 and %2", "the last two of a list")
        .arg(items.first(items.size() - 1).join(QStringLiteral(", ")), items.last());
}

QString sentenceStart(const QString& text)
{
    return text.isEmpty() ? text : text.at(0).toUpper() + text.sliced(1);
}

} // namespace cupule::ui
