// Cells of words as answers of a visit: characters, signs, symptoms, effort and hygiene. What the pack does not know stays
// as a remark and answers nothing.

#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/record/visit.h"
#include "core/task/import_columns.h"
#include "core/task/import_words.h"

namespace cupule {

class AnswerReader {
public:
    explicit AnswerReader(const Pack& pack) : m_pack(pack) {}
    /// True where the column holds words that are read here. The column must outlive the reader.
    bool add(const ImportColumn& column);
    void take(std::span<const std::string_view> cells, Visit& visit);

private:
    struct WordColumn {
        const ImportColumn* column = nullptr;
        WordTable words;
    };
    void takeSymptoms(WordColumn& words, std::string_view text, Visit& visit) const;
    static void takeWord(WordColumn& words, std::string_view text, Visit& visit);

    const Pack& m_pack;
    std::vector<WordColumn> m_columns;
};

/// The visit's answer about a character or a sign, begun where there is none.
CharacterSeen& answerAbout(Visit& visit, const Character& character);
Observation& answerAbout(Visit& visit, const Sign& sign);
void keepAsRemark(Visit& visit, const ImportColumn& column, std::string_view text);

} // namespace cupule
