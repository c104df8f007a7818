// Words in cells: answers, states and symptoms as people write them, looked up once for each spelling.
//
//  - One table a column. What was met once is found again by its bytes; the number of spellings that are remembered is
//    bounded. One thread at a time.
//  - A word that the pack does not know gives `unknown`: it stays as a remark and answers nothing.

#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "core/protocol/pack.h"

namespace cupule {

/// What a word stands for; `index` counts in whatever the table was made of.
struct WordMeaning {
    enum class Kind : std::uint8_t { unknown, known, notJudged, number };
    Kind kind = Kind::unknown;
    int index = 0;
    double value = 0;
};

class WordTable {
public:
    /// States of a character by id, words and what they are also called; `notJudged`; numbers where it has a unit.
    static WordTable ofCharacter(const Character& character);
    /// All signs of the pack by id, name, short name and what they are also called.
    static WordTable ofSigns(const Pack& pack);
    /// Answers about one sign: index 0 seen, 1 not seen, 2 none on the tree; notJudged; numbers are counts.
    static WordTable ofAnswers();
    static WordTable ofYesNo();            ///< index 0 no, 1 yes
    static WordTable ofHygiene(bool mayBeUnused);   ///< index 0 open, 1 done, 2 none used
    static WordTable ofLight();            ///< index in lightNames
    static WordTable ofLeaves();           ///< index in leavesNames

    static constexpr std::string_view lightNames[] = {"good", "fair", "poor"};
    static constexpr std::string_view leavesNames[] = {"none", "opening", "open", "falling"};

    WordMeaning find(std::string_view cell);

private:
    struct Hash {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const noexcept { return std::hash<std::string_view>{}(text); }
    };
    using Map = std::unordered_map<std::string, WordMeaning, Hash, std::equal_to<>>;

    void add(std::string_view words, int index);
    void addNotJudged();
    [[nodiscard]] WordMeaning lookUp(std::string_view cell) const;

    Map m_words;                           // by compared form
    Map m_met;                             // by the bytes of the cell
    bool m_numbers = false;
};

} // namespace cupule
