#include <algorithm>

#include "app/json.h"
#include "app/passphrase.h"
#include "app/text.h"
#include "app/verbs/verbs.h"
#include "core/base/text.h"
#include "core/task/hand_out.h"
#include "core/task/nouns.h"

namespace cupule::app {

namespace {

class HandIn final : public StoreVerb {
public:
    const char* name() const override { return "hand-in"; }
    const char* summary() const override { return "Hand in the visits of a day, and write them into a file"; }
    const char* usage() const override { return "STORE [--day DATE] [--observer WHO] [--dry-run] [--out FILE] [--kind KIND]"; }
    const char* prose() const override
    {
        return "Hands in every draft of a day that nothing stops; those that something stops stay, with what "
               "stops them. From "
               "then on a change is a new version and the verifier decides. Handing in twice does no harm. "
               "You hand in your own "
               "visits and those you were on; a trainer and the office also hand in what they took in for "
               "others.\nWith --out everything that is handed in and was not yet taken in elsewhere goes into one signed file, for "
               "a memory stick or a mail. A copy stays beside the store. Where nothing is new since, the same file is given "
               "again. The verifier writes decisions with --kind decision, the office what verifiers need with --kind "
               "reference.";
    }
    const char* examples() const override
    {
        return "cupule hand-in vale.cupule --day 2026-06-11 --out 2026-06-11-MH.zip\n"
               "cupule hand-in office.cupule --kind decision --out decisions.zip";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--day", m_day, "which day, as 2026-06-11; else all days with drafts");
        options.add_option("--observer", m_observer, "only this person's visits, by code");
        options.add_flag("--dry-run", m_dryRun, "show what goes and what stays; writes no file");
        options.add_option("--out", m_out.out, "the file to write");
        options.add_option("--kind", m_kind, "what goes into the file: day, decision or reference; day where nothing is said")
            ->check(CLI::IsMember({"day", "decision", "reference"}));
        options.add_option("--without", m_without, "leave out photos, personal (names, contacts, what is told of measured detection) or practice (what is told of "
                           "measured detection, so that an older program can read the file); several with commas");
        options.add_flag("--whole", m_out.whole, "what was taken in elsewhere, too: for a store that has nothing of this one yet");
        options.add_option("--passphrase", m_passphrase, "file with the passphrase of your key in its first line");
    }
    Result<int> run(Run& run) override
    {
        if (auto good = readOut(); !good)
            return fail(good.error());
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        Json result{{"handed_in", Json::array()}, {"stays", Json::array()}, {"dry_run", m_dryRun}};
        if (m_out.kind == GoingKind::day)
            if (auto handed = handDrafts(run, **session, result); !handed)
                return fail(handed.error());
        if (!m_out.out.empty() && !m_dryRun)
            if (auto written = writeFile(run, **session, result); !written)
                return fail(written.error());
        const bool some = !result["stays"].empty();
        run.give(std::move(result));
        return some ? refused : done;
    }

private:
    Status readOut()
    {
        m_out.kind = m_kind == "decision" ? GoingKind::decision : m_kind == "reference" ? GoingKind::reference : GoingKind::day;
        for (const auto& part : split(m_without, ',')) {
            if (part != "photos" && part != "personal" && part != "practice" && !part.empty())
                return fail("hand-in.without", FaultKind::usage, {{"part", part}});
            m_out.photos &= part != "photos";
            m_out.personal &= part != "personal";
            m_out.practice &= part != "practice";
        }
        if (m_out.out.empty() && m_out.kind != GoingKind::day)
            return fail("hand-in.out", FaultKind::usage);
        auto passphrase = passphraseFrom(m_passphrase);
        if (!passphrase)
            return fail(passphrase.error());
        m_out.passphrase = std::move(*passphrase);
        return {};
    }

    Status handDrafts(Run& run, Session& session, Json& result) const
    {
        Uid observer;
        if (!m_observer.empty()) {
            const auto person = findNoun(session, Noun::person, m_observer);
            if (!person)
                return fail(person.error());
            observer = *person;
        }
        auto days = daysWithVisits(session, observer);
        if (!days)
            return fail(days.error());
        if (!m_day.empty()) {
            const auto day = readDay(m_day, "--day");
            if (!day)
                return fail(day.error());
            *days = {*day};
        }
        Json& goes = result["handed_in"];
        Json& stays = result["stays"];
        for (auto day = days->rbegin(); day != days->rend(); ++day) {
            const auto page =
                m_dryRun ? handInPage(session, *day, observer) : handIn(session, *day, observer);
            if (!page)
                return fail(page.error());
            say(run, *page, session, goes, stays);
        }
        run.say(m_dryRun ? "Would go: {goes}. Would stay: {stays}." : "Handed in: {goes}. Staying: {stays}.",
                {{"goes", run.words().number(static_cast<double>(goes.size()))},
                 {"stays", run.words().number(static_cast<double>(stays.size()))}});
        return {};
    }

    Status writeFile(Run& run, Session& session, Json& result) const
    {
        const auto out = handOut(session, m_out);
        if (!out)
            return fail(out.error());
        const auto number = [&](std::int64_t value) { return run.words().number(static_cast<double>(value)); };
        run.say(out->madeAgain ? "Nothing is new since file {number}; the same file is in {file}."
                               : "Written: {file}, file {number} of your key, with visits: {visits}, records: {records}, photos: {photos}.",
                {{"file", m_out.out},
                 {"number", number(out->note.number)},
                 {"visits", number(out->counts.visits)},
                 {"records", number(out->counts.records)},
                 {"photos", number(out->counts.media)}});
        result["bundle"] = {{"id", out->note.id.text()},     {"path", m_out.out},          {"kind", out->note.kind},
                            {"number", out->note.number},    {"visits", out->counts.visits}, {"records", out->counts.records},
                            {"lines", out->counts.lines},    {"photos", out->counts.media}, {"bytes", out->bytes},
                            {"left_out", out->note.leftOut}, {"key", out->note.key},        {"made_again", out->madeAgain}};
        return {};
    }

    static void say(Run& run, const HandInPage& page, const Session& session, Json& goes, Json& stays)
    {
        for (const auto& line : page.goes) {
            goes.push_back(visitLineJson(line));
            run.line(visitSentence(line, run.words()));
        }
        for (const auto& [line, findings] : page.stays) {
            Json json = visitLineJson(line);
            json["findings"] = findingsJson(findings, session.pack(), run.words());
            stays.push_back(std::move(json));
            run.say("Stays: {visit}", {{"visit", visitSentence(line, run.words())}});
            sayFindings(run, findings, session.pack());
        }
    }

    HandOut m_out;
    std::string m_day, m_observer, m_kind = "day", m_without, m_passphrase;
    bool m_dryRun = false;
};

} // namespace

std::unique_ptr<Verb> makeHandIn()
{
    return std::make_unique<HandIn>();
}

} // namespace cupule::app
