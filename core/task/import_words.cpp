#include "core/task/import_words.h"

#include "core/base/text.h"
#include "core/task/import_columns.h"

namespace cupule {

namespace {

constexpr std::size_t mostSpellings = 4096;
constexpr std::size_t longestSpelling = 64;

} // namespace

void WordTable::add(std::string_view words, int index)
{
    const std::string compared = comparedWords(words);
    if (!compared.empty())
        m_words.try_emplace(compared, WordMeaning{WordMeaning::Kind::known, index, 0});
}

void WordTable::addNotJudged()
{
    for (const char* words : {"not judged", "could not be judged", "cannot judge", "cannot tell", "not visible", "?"})
        m_words.try_emplace(comparedWords(words), WordMeaning{WordMeaning::Kind::notJudged, 0, 0});
}

WordTable WordTable::ofCharacter(const Character& character)
{
    WordTable table;
    for (std::size_t i = 0; i < character.states.size(); ++i) {
        const auto& state = character.states[i];
        table.add(state.id, static_cast<int>(i));
        table.add(state.words, static_cast<int>(i));
    }
    for (std::size_t i = 0; i < character.states.size(); ++i)
        for (const auto& words : character.states[i].alsoCalled)
            table.add(words, static_cast<int>(i));
    table.addNotJudged();
    table.m_numbers = !character.unit.empty();
    return table;
}

WordTable WordTable::ofSigns(const Pack& pack)
{
    WordTable table;
    for (std::size_t i = 0; i < pack.signs.size(); ++i) {
        const auto& sign = pack.signs[i];
        for (const auto& words : {sign.id, sign.name, sign.shortName})
            table.add(words, static_cast<int>(i));
    }
    for (std::size_t i = 0; i < pack.signs.size(); ++i)
        for (const auto& words : pack.signs[i].alsoCalled)
            table.add(words, static_cast<int>(i));
    return table;
}

WordTable WordTable::ofAnswers()
{
    WordTable table;
    for (const char* words : {"seen", "yes", "y", "x", "present", "true", "found"})
        table.add(words, 0);
    for (const char* words : {"not seen", "no", "n", "absent", "false", "not found"})
        table.add(words, 1);
    for (const char* words : {"none on the tree", "none on tree"})
        table.add(words, 2);
    table.addNotJudged();
    table.m_numbers = true;
    return table;
}

WordTable WordTable::ofYesNo()
{
    WordTable table;
    for (const char* words : {"no", "n", "0", "false", "not used"})
        table.add(words, 0);
    for (const char* words : {"yes", "y", "1", "true", "x", "used"})
        table.add(words, 1);
    return table;
}

WordTable WordTable::ofHygiene(bool mayBeUnused)
{
    WordTable table;
    for (const char* words : {"open", "no", "n", "0", "false", "not done"})
        table.add(words, 0);
    for (const char* words : {"done", "yes", "y", "1", "true", "x", "clean", "cleaned", "confirmed"})
        table.add(words, 1);
    if (mayBeUnused)
        for (const char* words : {"none used", "none", "not used"})
            table.add(words, 2);
    return table;
}

WordTable WordTable::ofLight()
{
    WordTable table;
    for (int i = 0; i < 3; ++i)
        table.add(lightNames[i], i);
    return table;
}

WordTable WordTable::ofLeaves()
{
    WordTable table;
    for (int i = 0; i < 4; ++i)
        table.add(leavesNames[i], i);
    return table;
}

WordMeaning WordTable::lookUp(std::string_view cell) const
{
    if (const auto known = m_words.find(comparedWords(cell)); known != m_words.end())
        return known->second;
    if (!m_numbers)
        return {};
    const auto number = parseNumber(trim(cell));
    return number ? WordMeaning{WordMeaning::Kind::number, 0, *number} : WordMeaning{};
}

WordMeaning WordTable::find(std::string_view cell)
{
    if (const auto met = m_met.find(cell); met != m_met.end())
        return met->second;
    const WordMeaning meaning = lookUp(cell);
    if (m_met.size() < mostSpellings && cell.size() <= longestSpelling)
        m_met.emplace(std::string(cell), meaning);
    return meaning;
}

} // namespace cupule
