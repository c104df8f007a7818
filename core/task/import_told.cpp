#include "core/task/import_told.h"

#include "core/base/text.h"
#include "core/store/places.h"

namespace cupule {

namespace {

bool holdsLine(std::string_view note, std::string_view line)
{
    for (std::size_t at = note.find(line); at != std::string_view::npos; at = note.find(line, at + 1)) {
        const std::size_t end = at + line.size();
        if ((at == 0 || note[at - 1] == '\n') && (end == note.size() || note[end] == '\n'))
            return true;
    }
    return false;
}

} // namespace

bool addLines(std::string& note, std::string_view more)
{
    bool added = false;
    while (!more.empty()) {
        const std::size_t end = std::min(more.find('\n'), more.size());
        const std::string_view line = more.substr(0, end);
        more.remove_prefix(std::min(end + 1, more.size()));
        if (trim(line).empty() || holdsLine(note, line))
            continue;
        note.append(note.empty() ? "" : "\n").append(line);
        added = true;
    }
    return added;
}

void ToldOfTrees::made(std::int64_t handle, const Tree& tree)
{
    m_told[handle] = {tree.id, tree.note, tree.girthCentimetres, false};
}

Status ToldOfTrees::add(const KnownTree& tree, std::string_view note, const std::optional<double>& girthCentimetres)
{
    if (note.empty() && !girthCentimetres)
        return {};
    const auto [entry, first] = m_told.try_emplace(tree.handle);
    Told& told = entry->second;
    if (first) {
        const auto stored = m_session.store().trees().find(tree.id);
        if (!stored)
            return fail(stored.error());
        told.id = tree.id;
        if (*stored) {
            told.note = (*stored)->note;
            told.girthCentimetres = (*stored)->girthCentimetres;
        }
    }
    told.changed |= addLines(told.note, note);
    if (girthCentimetres && !told.girthCentimetres) {
        told.girthCentimetres = girthCentimetres;
        told.changed = true;
    } else if (girthCentimetres && *girthCentimetres != *told.girthCentimetres) {
        told.changed |= addLines(told.note, "girth: " + numberText(*girthCentimetres) + " cm");
    }
    return {};
}

std::map<std::int64_t, Uid> ToldOfTrees::changed() const
{
    std::map<std::int64_t, Uid> out;
    for (const auto& [handle, told] : m_told)
        if (told.changed)
            out.emplace(handle, told.id);
    return out;
}

void ToldOfTrees::apply(std::int64_t handle, Tree& tree) const
{
    const auto told = m_told.find(handle);
    if (told == m_told.end())
        return;
    tree.note = told->second.note;
    tree.girthCentimetres = told->second.girthCentimetres;
}

} // namespace cupule
