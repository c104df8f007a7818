#include "core/task/keep.h"

#include <map>

#include "app/verbs/verbs.h"
#include "app/words.h"
#include "ui/bridge/words.h"

namespace cupule::app {

namespace {

class Prove final : public StoreVerb {
public:
    const char* name() const override { return "prove"; }
    const char* summary() const override
    {
        return "Prove that the journal is whole, or name where it is not";
    }
    const char* usage() const override { return "STORE"; }
    const char* prose() const override
    {
        return "Walks through the journal. Every line carries the hash of the line before, so that nothing "
               "can be changed, left out "
               "or slipped in without breaking the chain. Where it does not hold, the first such line is "
               "named. Personal data that "
               "was erased on request leaves the chain whole.";
    }
    void declare(CLI::App& options) override { declareStore(options); }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store, true);
        if (!session)
            return fail(session.error());
        const auto proof = proveJournal(**session);
        if (!proof)
            return fail(proof.error());
        if (proof->whole)
            run.say("The journal holds. Lines: {lines}; chains: {chains}; personal data erased on request: "
                    "{erased}.",
                    {{"lines", std::to_string(proof->lines)},
                     {"chains", std::to_string(proof->chains)},
                     {"erased", std::to_string(proof->erased)}});
        else
            run.say("The journal does not hold. Line {line} of chain {chain}: {why}",
                    {{"line", std::to_string(proof->brokenNumber)},
                     {"chain", proof->brokenChain},
                     {"why", plain(ui::proofText(proof->brokenWhy))}});
        run.give({{"whole", proof->whole},
                  {"lines", proof->lines},
                  {"chains", proof->chains},
                  {"erased", proof->erased},
                  {"broken_chain", proof->brokenChain},
                  {"broken_line", proof->brokenNumber},
                  {"broken_why", proof->brokenWhy}});
        return proof->whole ? done : refused;
    }
};

class HealthVerb final : public StoreVerb {
public:
    const char* name() const override { return "health"; }
    const char* summary() const override
    {
        return "Examine a store, and say what to do where something is wrong";
    }
    const char* usage() const override { return "STORE [--rebuild]"; }
    const char* prose() const override
    {
        return "Reads the whole store and every picture, compares them with what they should be, and says "
               "what to do about each "
               "thing that is wrong. It changes no record. --rebuild first works out again what is computed from the "
               "records (search text, counts on trees); no record is touched.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_flag("--rebuild", m_rebuild, "work out again what is computed from the records");
    }
    Result<int> run(Run& run) override
    {
        // the check of the search text needs a store that may be written, though it writes nothing
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        if (m_rebuild)
            if (auto made = workOutAgain(**session); !made)
                return fail(made.error());
        const auto health = checkHealth(**session);
        if (!health)
            return fail(health.error());
        nlohmann::json items = nlohmann::json::array();
        std::map<std::string, std::size_t> met;
        for (const auto& item : health->items) {
            items.push_back({{"code", item.code},
                             {"what", item.what},
                             {"advice", item.advice},
                             {"serious", item.serious}});
            if (++met[item.code] <= mostShown)
                run.line(plain(ui::healthText(item.code)) + " (" + item.what + ") " +
                         plain(ui::healthAdviceText(item.advice)));
        }
        for (const auto& [code, count] : met)
            if (count > mostShown)
                run.say("{what} So {n} times in all; --json names every one.",
                        {{"what", plain(ui::healthText(code))}, {"n", std::to_string(count)}});
        if (health->items.empty())
            run.say("Sound. Rows examined: {rows}; pictures: {media}.",
                    {{"rows", std::to_string(health->checkedRows)},
                     {"media", std::to_string(health->checkedMedia)}});
        run.give({{"sound", health->items.empty()},
                  {"rows", health->checkedRows},
                  {"media", health->checkedMedia},
                  {"items", items}});
        return health->items.empty() ? done : refused;
    }

private:
    static constexpr std::size_t mostShown = 5; ///< of one kind
    bool m_rebuild = false;
};

class BackUpVerb final : public StoreVerb {
public:
    const char* name() const override { return "back-up"; }
    const char* summary() const override { return "Write a complete copy of a store into a folder"; }
    const char* usage() const override { return "STORE FOLDER"; }
    const char* prose() const override
    {
        return "Writes one complete file with everything that the store holds, and the pictures beside it. "
               "Copying the store's file "
               "by hand while it is open can lose the last day; this cannot. The window does it by itself "
               "once a day.";
    }
    void declare(CLI::App& options) override
    {
        declareStore(options);
        options.add_option("FOLDER", m_folder, "where to; made where it is missing")->required();
    }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const auto path = backUp(**session, m_folder);
        if (!path)
            return fail(path.error());
        run.say("Backed up to {file}.", {{"file", *path}});
        run.give({{"path", *path}});
        return done;
    }

private:
    std::string m_folder;
};

} // namespace

std::unique_ptr<Verb> makeProve()
{
    return std::make_unique<Prove>();
}
std::unique_ptr<Verb> makeHealth()
{
    return std::make_unique<HealthVerb>();
}
std::unique_ptr<Verb> makeBackUp()
{
    return std::make_unique<BackUpVerb>();
}

} // namespace cupule::app
