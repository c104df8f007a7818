// Makes a full-text query out of whatever somebody typed, with the tokenizer that made the index, so that no text can be
// anything but words. Inside the store room, and for its tests.

#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/store/connection.h"

namespace cupule {

inline constexpr std::size_t mostWords = 12;

/// The words of a text as the index has them, at most `mostWords`.
std::vector<std::string> wordsOf(Connection& db, std::string_view text);
/// One query for each word: the word, and for the last one also what begins with it unless a blank follows it.
std::vector<std::string> wordQueries(Connection& db, std::string_view text);
/// All words at once; empty where there are none.
std::string wordQuery(Connection& db, std::string_view text);

} // namespace cupule
