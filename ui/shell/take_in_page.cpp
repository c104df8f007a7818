#include "ui/shell/take_in_page.h"

#include <QCoreApplication>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_arrival.h"
#include "ui/bridge/words_review.h"

namespace cupule::ui {

namespace {

constexpr int mostNamed = 60;         // of one kind

QString tr(const char* words, int n = -1)
{
    return QCoreApplication::translate("take-in", words, nullptr, n);
}

QString paragraph(const QString& words)
{
    return QStringLiteral("<p>%1</p>").arg(words.toHtmlEscaped());
}

QString row(const QString& what, const QString& field, const QString& happens)
{
    return QStringLiteral("<tr><td>%1</td><td>%2</td><td>%3</td></tr>").arg(what.toHtmlEscaped(), field.toHtmlEscaped(), happens);
}

class Rows {
public:
    explicit Rows(const Pack& pack) : m_pack(pack) {}

    void conflict(const ConflictPage& page)
    {
        const QString what = sentenceStart(namedNoun(page.line.noun, page.line.name, page.line.date));
        for (const ConflictField& field : page.fields) {
            QStringList sides;
            for (std::size_t i = 0; i < field.values.size() && i < page.versions.size(); ++i) {
                const QString who = page.versions[i].code.empty() ? tr("somebody not known here") : text(page.versions[i].code);
                sides << QStringLiteral("%1: %2").arg(who, value(field.path, field.values[i], page.names)).toHtmlEscaped();
            }
            m_html += row(what, fieldName(field.path), tr("<b>does not agree.</b> %1").arg(sides.join(QStringLiteral("<br>"))));
        }
    }

    void cameIn(const CameIn& line, const std::map<std::string, std::string>& names)
    {
        const QString what = sentenceStart(namedNoun(line.noun, line.name, line.date));
        for (const CameInField& field : line.fields)
            m_html += row(what, fieldName(field.path),
                          tr("%1, before that %2").arg(value(field.path, field.after, names), value(field.path, field.before, names)).toHtmlEscaped());
        if (line.decided)
            m_html += row(what, tr("decision"), stateWord(*line.decided).toHtmlEscaped());
        if (!line.made && line.fields.empty() && !line.decided)
            m_html += row(what, {}, tr("more of its history"));
    }

    [[nodiscard]] QString table() const
    {
        if (m_html.isEmpty())
            return {};
        return QStringLiteral("<table cellspacing=\"0\" cellpadding=\"4\" width=\"100%\"><tr><td width=\"30%\"><i>%1</i></td><td width=\"22%\"><i>%2</i></td>"
                              "<td><i>%3</i></td></tr>%4</table>")
            .arg(tr("What"), tr("Field"), tr("What happens"), m_html);
    }

private:
    QString fieldName(const std::string& path) const { return sentenceStart(conflictFieldWords(path, m_pack)); }
    QString value(const std::string& path, const std::string& json, const std::map<std::string, std::string>& names) const
    {
        return fieldValueText(path, json, m_pack, names);
    }

    const Pack& m_pack;
    QString m_html;
};

/// New ones need no row each: "4 visits: 11 June 2026: W03, W04; 12 June 2026: W03".
QString newOnes(const CameInPage& page)
{
    struct Listed {
        QStringList days, names;            // of each day, where the noun has one
        int named = 0;
    };
    std::map<std::string, Listed> nouns;
    for (const CameIn& line : page.lines) {
        if (!line.made || line.name.empty())
            continue;
        Listed& listed = nouns[line.noun];
        if (listed.named >= mostNamed)
            continue;
        ++listed.named;
        const QString day = line.date ? plainDate(*line.date, 0) : QString();
        if (listed.days.isEmpty() || listed.days.last() != day) {
            listed.days << day;
            listed.names << text(line.name);
        } else {
            listed.names.last() += tr(", %1").arg(text(line.name));
        }
    }
    QString html;
    for (auto& [noun, listed] : nouns) {
        const auto all = page.made.find(noun);
        const int count = all == page.made.end() ? listed.named : all->second;
        QStringList parts;
        for (qsizetype i = 0; i < listed.days.size(); ++i)
            parts << (listed.days[i].isEmpty() ? listed.names[i] : tr("%1: %2").arg(listed.days[i], listed.names[i]));
        if (count > listed.named)
            parts << tr("and %n more", count - listed.named);
        html += QStringLiteral("<p><b>%1</b><br>%2</p>").arg(countedNouns({{noun, count}}).toHtmlEscaped(), parts.join(QStringLiteral("; ")).toHtmlEscaped());
    }
    return html;
}

} // namespace

QString cameInHtml(const TakenIn& taken, const CameInPage& page, const Pack& pack, bool kept)
{
    QString html = QStringLiteral("<h3>%1</h3>").arg(kept ? tr("What came in") : tr("What taking it in would change"));
    html += paragraph(broughtText(taken, page));
    for (const QString& line : afterwardsTexts(taken))
        html += paragraph(line);
    if (page.conflicts > 0)
        html += paragraph(tr("Where two people changed one field differently, both versions are kept and shown until a verifier or the office "
                             "settles them: in Review, “Versions that do not agree”, Ctrl+Shift+K."));
    Rows rows(pack);
    for (const ConflictPage& open : page.open)
        rows.conflict(open);
    for (const CameIn& line : page.lines)
        rows.cameIn(line, page.names);
    html += rows.table() + newOnes(page);
    return html;
}

} // namespace cupule::ui
