#include "core/task/import_answers.h"

#include <cmath>
#include <optional>

#include "core/base/text.h"

namespace cupule {

namespace {

constexpr double mostCounted = 1'000'000;

/// False where the word cannot stand for this character.
bool takeCharacter(const Character& character, const WordMeaning& meaning, Visit& visit)
{
    const bool number = meaning.kind == WordMeaning::Kind::number;
    if (number && !(meaning.value >= character.hardMin && meaning.value <= character.hardMax))
        return false;
    CharacterSeen& seen = answerAbout(visit, character);
    seen.notJudged = meaning.kind == WordMeaning::Kind::notJudged;
    if (number)
        seen.value = meaning.value;
    else if (!seen.notJudged)
        seen.state = character.states[static_cast<std::size_t>(meaning.index)].id;
    return true;
}

bool takeSign(const Sign& sign, const WordMeaning& meaning, Visit& visit)
{
    const bool counted = meaning.kind == WordMeaning::Kind::number;
    const bool whole = meaning.value >= 0 && meaning.value <= mostCounted && meaning.value == std::floor(meaning.value);
    if (counted && !whole)
        return false;
    Observation& line = answerAbout(visit, sign);
    if (counted) {
        line.answer = meaning.value > 0 ? Answer::seen : Answer::notSeen;
        if (meaning.value > 1)                          // 1 is the yes of many forms
            line.count = static_cast<int>(meaning.value);
    } else if (meaning.kind == WordMeaning::Kind::notJudged) {
        line.answer = Answer::notJudged;
    } else {
        line.answer = meaning.index == 0 ? Answer::seen : Answer::notSeen;
        line.noneOnTree = meaning.index == 2;
    }
    return true;
}

void takeCircumstance(ImportField field, int index, Visit& visit)
{
    switch (field) {
    case ImportField::binoculars: visit.effort.binoculars = index == 1; break;
    case ImportField::innerCrown: visit.effort.innerCrown = index == 1; break;
    case ImportField::light: visit.effort.light = WordTable::lightNames[index]; break;
    case ImportField::leaves: visit.effort.leaves = WordTable::leavesNames[index]; break;
    case ImportField::clothes: visit.hygiene.clothes = static_cast<Confirmed>(index); break;
    case ImportField::boots: visit.hygiene.boots = static_cast<Confirmed>(index); break;
    case ImportField::vehicle: visit.hygiene.vehicle = static_cast<Confirmed>(index); break;
    case ImportField::tools: visit.hygiene.tools = static_cast<Confirmed>(index); break;
    default: break;
    }
}

std::optional<WordTable> tableFor(const ImportColumn& column, const Pack& pack)
{
    switch (column.field) {
    case ImportField::binoculars:
    case ImportField::innerCrown: return WordTable::ofYesNo();
    case ImportField::light: return WordTable::ofLight();
    case ImportField::leaves: return WordTable::ofLeaves();
    case ImportField::clothes:
    case ImportField::boots: return WordTable::ofHygiene(false);
    case ImportField::vehicle:
    case ImportField::tools: return WordTable::ofHygiene(true);
    case ImportField::character: return WordTable::ofCharacter(*column.character);
    case ImportField::sign: return WordTable::ofAnswers();
    case ImportField::symptoms: return WordTable::ofSigns(pack);
    default: return std::nullopt;
    }
}

} // namespace

CharacterSeen& answerAbout(Visit& visit, const Character& character)
{
    for (auto& seen : visit.characters)
        if (seen.character == character.id)
            return seen;
    visit.characters.emplace_back().character = character.id;
    return visit.characters.back();
}

Observation& answerAbout(Visit& visit, const Sign& sign)
{
    for (auto& line : visit.observations)
        if (line.sign == sign.id)
            return line;
    visit.observations.emplace_back().sign = sign.id;
    return visit.observations.back();
}

void keepAsRemark(Visit& visit, const ImportColumn& column, std::string_view text)
{
    visit.remarks.push_back({column.heading, std::string(text)});
}

bool AnswerReader::add(const ImportColumn& column)
{
    auto words = tableFor(column, m_pack);
    if (words)
        m_columns.push_back({&column, std::move(*words)});
    return words.has_value();
}

void AnswerReader::takeSymptoms(WordColumn& words, std::string_view text, Visit& visit) const
{
    while (!text.empty()) {
        const auto end = text.find_first_of(";|");
        const std::string_view item = trim(text.substr(0, end));
        text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
        if (item.empty())
            continue;
        const WordMeaning meaning = words.words.find(item);
        if (meaning.kind != WordMeaning::Kind::known) {
            keepAsRemark(visit, *words.column, item);
            continue;
        }
        Observation& line = answerAbout(visit, m_pack.signs[static_cast<std::size_t>(meaning.index)]);
        if (line.answer == Answer::open)
            line.answer = Answer::seen;
        else if (line.answer != Answer::seen)            // its own column says otherwise
            keepAsRemark(visit, *words.column, item);
    }
}

void AnswerReader::takeWord(WordColumn& words, std::string_view text, Visit& visit)
{
    const ImportColumn& column = *words.column;
    const WordMeaning meaning = words.words.find(text);
    bool taken = meaning.kind != WordMeaning::Kind::unknown;
    if (taken && column.field == ImportField::character)
        taken = takeCharacter(*column.character, meaning, visit);
    else if (taken && column.field == ImportField::sign)
        taken = takeSign(*column.sign, meaning, visit);
    else if (taken)
        takeCircumstance(column.field, meaning.index, visit);
    if (!taken)
        keepAsRemark(visit, column, text);
}

void AnswerReader::take(std::span<const std::string_view> cells, Visit& visit)
{
    // sign columns before lists of symptoms, so that an answer of its own comes first wherever the columns stand
    for (const bool symptoms : {false, true})
        for (auto& words : m_columns) {
            const std::string_view text = trim(cells[words.column->index]);
            if (text.empty() || (words.column->field == ImportField::symptoms) != symptoms)
                continue;
            if (symptoms)
                takeSymptoms(words, text, visit);
            else
                takeWord(words, text, visit);
        }
}

} // namespace cupule
