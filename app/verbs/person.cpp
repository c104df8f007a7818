#include <algorithm>

#include "app/json.h"
#include "app/verbs/verbs.h"
#include "core/record/json.h"
#include "core/task/keep.h"
#include "core/task/nouns.h"

namespace cupule::app {

namespace {

int give(Run& run, const Person& person)
{
    run.say("{code}: {name}.", {{"code", person.code}, {"name", person.name}});
    run.give({{"id", person.id.text()}, {"person", contentJson(toJson(person))}});
    return done;
}

class PersonAdd final : public StoreVerb {
public:
    const char* name() const override { return "person add"; }
    const char* summary() const override { return "Make a person known to a store"; }
    const char* usage() const override { return "STORE --code CODE --name NAME"; }
    const char* prose() const override
    {
        return "Makes a person known, so that they can be named on visits. The code stands on papers; name "
               "and contact lie apart "
               "and can be erased. Whoever works with a store of their own accord is made known by their "
               "profile.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("--code", m_person.code, "short code, unique in the store")->required();
        options.add_option("--name", m_person.name, "full name");
        options.add_option("--contact", m_person.contact, "how to reach them");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto made = newPerson(**session, m_person);
        if (!made)
            return fail(made.error());
        return give(run, *made);
    }

private:
    Person m_person;
};

class PersonChange final : public StoreVerb {
public:
    const char* name() const override { return "person change"; }
    const char* summary() const override { return "Change a name, or who may not decide for whom"; }
    const char* usage() const override
    {
        return "STORE PERSON [--name NAME] [--same-as WHO] [--not-for WHO]";
    }
    const char* prose() const override
    {
        return "Changes a name or a contact, or adds a link. --same-as says that two entries are one person; "
               "--not-for says that "
               "two people may not decide for each other. No reason is asked for or kept. Links are for the "
               "office.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("PERSON", m_who, "code or name")->required();
        options.add_option("--name", m_name, "new name");
        options.add_option("--contact", m_contact, "new contact");
        options.add_option("--same-as", m_sameAs, "code of another entry that is the same person");
        options.add_option("--not-for", m_notFor, "code of a person; neither decides for the other");
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto id = findNoun(**session, Noun::person, m_who);
        if (!id)
            return fail(id.error());
        const auto people = allPeople(**session);
        if (!people)
            return fail(people.error());
        const auto found =
            std::find_if(people->begin(), people->end(), [&](const Person& p) { return p.id == *id; });
        if (found == people->end())
            return fail("name.unknown", FaultKind::usage, {{"noun", "person"}, {"name", m_who}});
        Person person = *found;
        if (!m_name.empty())
            person.name = m_name;
        if (!m_contact.empty())
            person.contact = m_contact;
        for (const auto& [typed, links] :
             {std::pair{&m_sameAs, &person.aliases}, std::pair{&m_notFor, &person.notFor}}) {
            if (typed->empty())
                continue;
            const auto other = findNoun(**session, Noun::person, *typed);
            if (!other)
                return fail(other.error());
            if (std::find(links->begin(), links->end(), *other) == links->end())
                links->push_back(*other);
        }
        if (auto changed = changePerson(**session, person); !changed)
            return fail(changed.error());
        return give(run, person);
    }

private:
    std::string m_who, m_name, m_contact, m_sameAs, m_notFor;
};

class PersonErase final : public StoreVerb {
public:
    const char* name() const override { return "person erase"; }
    const char* summary() const override { return "Erase a person's name and contact, on request"; }
    const char* usage() const override { return "STORE PERSON --order TEXT"; }
    const char* prose() const override
    {
        return "Erases name and contact everywhere they lie in the store and in its backups. What the person "
               "saw stays, under the "
               "code. The journal stays whole and says that something was erased, when, and on which order. "
               "It cannot be taken "
               "back. For the office.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("PERSON", m_who, "code or name")->required();
        options.add_option("--order", m_order, "the request or order that asks for it")->required();
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto id = findNoun(**session, Noun::person, m_who);
        if (!id)
            return fail(id.error());
        if (auto erased = erasePerson(**session, *id, m_order); !erased)
            return fail(erased.error());
        run.say("Erased.");
        run.give({{"id", id->text()}, {"erased", true}});
        return done;
    }

private:
    std::string m_who, m_order;
};

} // namespace

std::unique_ptr<Verb> makePersonAdd()
{
    return std::make_unique<PersonAdd>();
}
std::unique_ptr<Verb> makePersonChange()
{
    return std::make_unique<PersonChange>();
}
std::unique_ptr<Verb> makePersonErase()
{
    return std::make_unique<PersonErase>();
}

} // namespace cupule::app
