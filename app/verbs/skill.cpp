#include "core/task/skill.h"

#include "app/verbs/verbs.h"
#include "core/report/practice_sheet.h"
#include "core/task/nouns.h"

namespace cupule::app {

namespace {

class SkillVerb final : public StoreVerb {
public:
    const char* name() const override { return "skill"; }
    const char* summary() const override { return "What is told of a person's measured detection, with their consent"; }
    const char* usage() const override { return "STORE [--person CODE] [--tell [--agreed-before CODE] | --withdraw]"; }
    const char* prose() const override
    {
        return "Practice measures how often somebody finds each sign that is there. With their consent that can be told: then it goes along in the files "
               "that are handed in, and a verifier sees it beside the record as information. It changes no record and no worth.\n--tell tells one's own; "
               "of somebody else a trainer tells it, and says with --agreed-before to whom they agreed. --withdraw takes back all of it: it goes "
               "along no more, and the next file says so to whoever had it. Without both, what is told is shown.";
    }
    const char* examples() const override { return "cupule skill vale.cupule --tell\ncupule skill vale.cupule --person MH --tell --agreed-before TT"; }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--person", m_person, "whose, by code or name; else one's own");
        auto* tell = options.add_flag("--tell", m_tell, "tell what practice has measured so far");
        options.add_option("--agreed-before", m_agreed, "the code of whom they agreed before")->needs(tell);
        options.add_flag("--withdraw", m_withdraw, "take back what is told")->excludes(tell);
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, !m_tell && !m_withdraw);
        if (!session)
            return fail(session.error());
        Uid person = (*session)->me();
        if (!m_person.empty()) {
            const auto found = findNoun(**session, Noun::person, m_person);
            if (!found)
                return fail(found.error());
            person = *found;
        }
        if (auto changed = change(**session, person); !changed)
            return fail(changed.error());
        const auto told = toldSkill(**session, person);
        if (!told)
            return fail(told.error());
        give(run, **session, *told);
        return done;
    }

private:
    Status change(Session& session, const Uid& person) const
    {
        if (m_tell)
            return tellSkill(session, person, m_agreed);
        if (!m_withdraw)
            return {};
        const auto taken = withdrawSkill(session, person);
        return taken ? Status() : Status(fail(taken.error()));
    }

    static std::string nameOf(const std::string& sign, const Pack& pack, const Words& words)
    {
        if (sign == gallLinesTogether)
            return words.text("All gall lines together");
        return sign == hostOrNot ? words.text("Host or not") : report::subjectWords(AskedKind::sign, sign, pack, words);
    }

    static void give(Run& run, Session& session, const std::optional<ToldSkill>& told)
    {
        if (!told) {
            run.say("Nothing is told.");
            run.give({{"told", nullptr}});
            return;
        }
        nlohmann::json signs = nlohmann::json::array();
        run.say("Told with consent of {day}, from answers of {from} to {to}.", {{"day", run.words().date(told->consented)}, {"from", run.words().date(told->from)}, {"to", run.words().date(told->to)}});
        for (const ToldSign& sign : told->signs) {
            run.say("{what}: {found} found, {passed} rightly passed.", {{"what", nameOf(sign.counted.sign, session.pack(), run.words())}, {"found", report::shareWords(sign.found, run.words())}, {"passed", report::shareWords(sign.passed, run.words())}});
            nlohmann::json one{{"sign", sign.counted.sign}, {"there", sign.counted.there}, {"found", sign.counted.found}, {"absent", sign.counted.absent}, {"passed", sign.counted.passed}, {"few", sign.few}};
            if (sign.found)
                one["found_share"] = {sign.found->value, sign.found->interval.lower, sign.found->interval.upper};
            signs.push_back(std::move(one));
        }
        run.give({{"told", {{"id", told->note.text()}, {"from", told->from.text()}, {"to", told->to.text()}, {"consented", told->consented.text()}, {"consent_to", told->consentTo}, {"protocol", told->protocol},
                            {"protocol_version", told->protocolVersion}, {"signs", signs}}}});
    }

    std::string m_person, m_agreed;
    bool m_tell = false, m_withdraw = false;
};

} // namespace

std::unique_ptr<Verb> makeSkill()
{
    return std::make_unique<SkillVerb>();
}

} // namespace cupule::app
