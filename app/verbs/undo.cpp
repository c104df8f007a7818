#include "app/verbs/verbs.h"
#include "core/task/day.h"

namespace cupule::app {

namespace {

/// Undo and redo differ in a word and a function.
class Step final : public StoreVerb {
public:
    explicit Step(bool back) : m_back(back) {}
    const char* name() const override { return m_back ? "undo" : "redo"; }
    const char* summary() const override
    {
        return m_back ? "Take back the last change" : "Do again what was taken back";
    }
    const char* usage() const override { return "STORE"; }
    const char* prose() const override
    {
        return m_back ? "Takes back the last change made on this device, also after the program was closed. "
                        "What had been handed in "
                        "gets a new version that says what the old one said; nothing disappears from the "
                        "journal. What somebody "
                        "else has changed since is left alone."
                      : "Does again what \"cupule undo\" took back, as long as nothing else was changed in "
                        "between.";
    }
    void declare(CLI::App& options) override { declareStore(options); }
    Result<int> run(Run& run) override
    {
        const auto session = run.open(m_store);
        if (!session)
            return fail(session.error());
        const UndoState before = undoState(**session);
        const auto id = m_back ? cupule::undo(**session) : cupule::redo(**session);
        if (!id)
            return fail(id.error());
        const std::string& what = m_back ? before.undo : before.redo;
        run.say(m_back ? "Taken back: {what}." : "Done again: {what}.", {{"what", what}});
        const UndoState after = undoState(**session);
        run.give({{"id", id->text()}, {"what", what}, {"next_undo", after.undo}, {"next_redo", after.redo}});
        return done;
    }

private:
    bool m_back;
};

} // namespace

std::unique_ptr<Verb> makeUndo()
{
    return std::make_unique<Step>(true);
}
std::unique_ptr<Verb> makeRedo()
{
    return std::make_unique<Step>(false);
}

} // namespace cupule::app
