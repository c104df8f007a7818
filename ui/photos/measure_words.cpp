#include "ui/photos/measure_words.h"

#include <cmath>

#include <QCoreApplication>
#include <QLocale>

#include "ui/bridge/text.h"

namespace cupule::ui {

namespace {

QString say(const char* words)
{
    return QCoreApplication::translate("photos", words);
}

/// Two standard uncertainties hold the true size about 19 times in 20 (normal distribution).
double wide(const PhotoLength& length)
{
    return 2 * length.uncertaintyMillimetres;
}

int decimals(const PhotoLength& length)
{
    return wide(length) < 0.095 ? 2 : 1;
}

QString fixed(double value, int places)
{
    return QLocale().toString(value, 'f', places);
}

} // namespace

QString lengthNumber(double millimetres, const PhotoLength& length)
{
    return fixed(millimetres, decimals(length));
}

QString lengthSure(const PhotoLength& length)
{
    return say("± %1 mm").arg(fixed(wide(length), decimals(length)));
}

QString lengthBetween(const PhotoLength& length)
{
    return say("19 times in 20, between %1 and %2 mm")
        .arg(lengthNumber(length.millimetres - wide(length), length), lengthNumber(length.millimetres + wide(length), length));
}

QString lengthFormula()
{
    return say("Size = known length × pixels across ÷ pixels along the scale. The three errors are independent, so their squares "
               "add up. This holds where the scale and the gall lie in one plane and the camera looked at it squarely: a ruler that "
               "is a tenth nearer than the gall makes the gall a tenth too small.");
}

QString colourText(const Lab& colour, const Pack& pack)
{
    const GallColour* named = gallColourOf(colour, pack);
    const QString name = named == nullptr ? say("No gall colour") : sentenceStart(text(named->words));
    return say("%1 (lightness %2, hue %3°). A hint only: the camera’s colour is not calibrated, and the light changes it.")
        .arg(name, fixed(colour.lightness, 0), fixed(colour.hueDegrees(), 0));
}

} // namespace cupule::ui
