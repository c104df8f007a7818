#include "ui/daysheet/photo_words.h"

#include <cmath>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"

namespace cupule::ui {

namespace {

QString tr(const char* words)
{
    return PhotosDesk::tr(words);
}

/// "2 min after", "at the minute of".
QString apartText(double minutes)
{
    if (std::abs(minutes) < 1)
        return tr("less than a minute from the time of the visit");
    const QString length = durationText(std::abs(minutes));
    return minutes > 0 ? tr("%1 after the time of the visit").arg(length) : tr("%1 before the time of the visit").arg(length);
}

QString shortTime(double seconds)
{
    return seconds < 120 ? tr("%1 s").arg(numberText(seconds, 0)) : durationText(seconds / 60);
}

QString clockSureText(const PhotosDesk& desk)
{
    if (desk.isSetByHand())
        return tr("the clock as you set it");
    const auto& used = desk.fromGps() ? desk.fromGps() : desk.fromVisits();
    if (!desk.secondsAhead() || !used)
        return tr("the camera’s clock as it is");
    if (!used->spreadSeconds)
        return tr("the clock set right; how sure is not known");
    return tr("the clock set right, good to ± %1").arg(shortTime(2 * *used->spreadSeconds));
}

QString sizeText(const PhotoNote& photo)
{
    const double megabytes = static_cast<double>(photo.bytes) / 1e6;
    return tr("%1 × %2 pixels, %3 MB")
        .arg(QString::number(photo.widthPixels), QString::number(photo.heightPixels), numberText(megabytes, megabytes < 1 ? 2 : 1));
}

} // namespace

QString photoName(const PhotoNote& photo)
{
    return photo.originalName.empty() ? tr("a photo") : text(photo.originalName);
}

QString takenText(const PhotoNote& photo, CivilDate day)
{
    if (!photo.takenDate)
        return tr("no date of taking");
    const QString time = photo.takenTime ? timeText(*photo.takenTime) : QString();
    if (*photo.takenDate == day)
        return time;
    const QString date = plainDate(*photo.takenDate, day.year());
    return time.isEmpty() ? date : date + QStringLiteral(", ") + time;
}

QString visitText(const VisitLine& line)
{
    const QString label = line.treeLabel.empty() ? tr("a visit without a tree") : text(line.treeLabel);
    return line.time ? tr("%1, visited at %2").arg(label, timeText(*line.time)) : label;
}

QString matchText(const PhotoMatch& match, const PhotosDesk& desk)
{
    QStringList parts;
    if (match.minutes)
        parts << tr("taken %1 (%2)").arg(apartText(*match.minutes), clockSureText(desk));
    if (match.metres)
        parts << tr("%1 from its place (the place is good to ± %2, the photo’s position to ± %3)")
                     .arg(distanceText(*match.metres), distanceText(match.visitReachMetres), distanceText(match.photoReachMetres));
    return sentenceStart(parts.join(QStringLiteral("; "))) + QLatin1Char('.');
}

QString rowText(const PhotoRow& row, const PhotosDesk& desk)
{
    if (row.copy)
        return tr("looks like %1").arg(photoName(row.copy->other));
    if (row.kind == PhotoRow::Kind::proposed) {
        const PhotoMatch& best = row.matches.front();
        const VisitLine* line = desk.visit(best.visit);
        QStringList why;
        if (best.minutes)
            why << durationText(std::abs(*best.minutes));
        if (best.metres)
            why << distanceText(*best.metres);
        return tr("to %1? %2 apart").arg(line != nullptr ? text(line->treeLabel) : QString(), why.join(QStringLiteral(", ")));
    }
    if (row.kind == PhotoRow::Kind::placed) {
        const VisitLine* line = desk.visit(row.photo.visit);
        const QString shows = showsText(row.photo, desk.pack());
        const QString with = tr("with %1").arg(line != nullptr ? text(line->treeLabel) : QString());
        return shows.isEmpty() ? with : with + QStringLiteral(", ") + shows;
    }
    if (row.kind == PhotoRow::Kind::aside)
        return tr("a copy of %1").arg(row.original);
    if (row.kind == PhotoRow::Kind::otherDay)
        return row.photo.takenDate ? tr("of another day") : tr("undated");
    return tr("no visit fits");
}

QString rowDetails(const PhotoRow& row, const PhotosDesk& desk)
{
    switch (row.kind) {
    case PhotoRow::Kind::proposed: {
        const VisitLine* line = desk.visit(row.matches.front().visit);
        QString words = tr("Does it belong to %1?").arg(line != nullptr ? visitText(*line) : QString()) + QLatin1Char('\n')
                        + matchText(row.matches.front(), desk);
        for (std::size_t i = 1; i < row.matches.size() && i < 9; ++i)
            if (const VisitLine* other = desk.visit(row.matches[i].visit))
                words += QStringLiteral("\n") + tr("%1: or %2? %3").arg(QString::number(i + 1), visitText(*other), matchText(row.matches[i], desk));
        return words;
    }
    case PhotoRow::Kind::loose:
        return tr("No visit of this day fits.") + QLatin1Char('\n')
               + tr("A visit fits whose place lies within %1, or whose time within %2; the time counts only where the camera’s zone or "
                    "its clock is known.")
                     .arg(distanceText(desk.pack().settings.photoMetres), durationText(desk.pack().settings.photoMinutes));
    case PhotoRow::Kind::otherDay:
        return row.photo.takenDate ? tr("It was taken on %1.").arg(fullDate(*row.photo.takenDate))
                                   : tr("It carries no date of taking. Put it with a visit yourself, or leave it here.");
    case PhotoRow::Kind::aside:
        return tr("You said that it is %1 once more. The file is kept; it belongs to no visit.").arg(row.original);
    case PhotoRow::Kind::placed: break;
    }
    const VisitLine* line = desk.visit(row.photo.visit);
    const QString shows = showsText(row.photo, desk.pack());
    return tr("It lies with %1.").arg(line != nullptr ? visitText(*line) : QString()) + QLatin1Char('\n')
           + (shows.isEmpty() ? tr("What it shows is not said yet.") : tr("It shows: %1.").arg(shows));
}

QString clockText(const PhotosDesk& desk)
{
    if (desk.isSetByHand())
        return tr("as you set it, for photos without a satellite time of their own");
    const auto& used = desk.fromGps() ? desk.fromGps() : desk.fromVisits();
    if (!desk.secondsAhead() || !used)
        return tr("not known: no photo of this day carries a satellite time. Times count only where the camera wrote its zone.");
    QString words = desk.fromGps()
                        ? PhotosDesk::tr("from the satellite times in %n photos of this day", nullptr, used->photos)
                        : PhotosDesk::tr("from %n photos that lie with visits of this day, good to some minutes", nullptr, used->photos);
    if (used->spreadSeconds)
        words += tr(", which agree to ± %1").arg(shortTime(2 * *used->spreadSeconds));
    return words;
}

QString copyText(const LikelyCopy& copy, const PhotosDesk& desk)
{
    const QString where = copy.other.visit.isNull()          ? tr("in the tray")
                          : desk.visit(copy.other.visit) != nullptr ? tr("with %1").arg(visitText(*desk.visit(copy.other.visit)))
                                                                     : tr("with a visit of another day");
    return tr("Is this %1 once more? Of 64 comparisons of light and dark %2 come out otherwise; up to %3 count as likely.")
               .arg(photoName(copy.other), QString::number(copy.bits), QString::number(likelySameBits))
           + QLatin1Char('\n')
           + tr("Left: %1, %2. Right: %3, %4, %5.")
                 .arg(takenText(copy.photo, desk.day()), sizeText(copy.photo), takenText(copy.other, desk.day()),
                      sizeText(copy.other), where);
}

QString evidenceName(const std::string& id, const Pack& pack)
{
    if (const Sign* sign = pack.sign(id))
        return text(sign->name);
    if (const Character* character = pack.character(id))
        return text(character->name);
    return id == "crown" ? tr("the whole crown") : id == "shoot" ? tr("a shoot") : text(id);
}

QString showsText(const PhotoNote& photo, const Pack& pack)
{
    QStringList shown;
    for (const std::string& id : photo.evidenceFor)
        shown << evidenceName(id, pack);
    return listText(shown);
}

} // namespace cupule::ui
