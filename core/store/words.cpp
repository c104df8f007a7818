#include "core/store/words.h"

#include <array>

#include <sqlite3.h>

namespace cupule {

namespace {

// Must be what sql/0002_search_and_place.sql says; the tokenizer's arguments are these words one by one.
constexpr std::array tokenizerArguments{"remove_diacritics", "2"};

fts5_api* fullText(Connection& db)
{
    fts5_api* api = nullptr;
    sqlite3_stmt* raw = nullptr;
    if (sqlite3_prepare_v2(db.handle(), "SELECT fts5(?1)", -1, &raw, nullptr) != SQLITE_OK)
        db.failed(SQLITE_ERROR, "fts5");
    const std::unique_ptr<sqlite3_stmt, int (*)(sqlite3_stmt*)> statement(raw, &sqlite3_finalize);
    sqlite3_bind_pointer(raw, 1, &api, "fts5_api_ptr", nullptr);
    sqlite3_step(raw);
    if (api == nullptr)
        throwFault("store.io", FaultKind::io, {}, "no fts5");
    return api;
}

int takeToken(void* words, int, const char* token, int length, int, int)
{
    auto& list = *static_cast<std::vector<std::string>*>(words);
    if (list.size() >= mostWords)
        return SQLITE_DONE;
    list.emplace_back(token, static_cast<std::size_t>(length));
    return SQLITE_OK;
}

} // namespace

std::vector<std::string> wordsOf(Connection& db, std::string_view text)
{
    fts5_api* api = fullText(db);
    fts5_tokenizer tokenizer{};
    void* context = nullptr;
    Fts5Tokenizer* made = nullptr;
    auto arguments = tokenizerArguments;
    if (api->xFindTokenizer(api, "unicode61", &context, &tokenizer) != SQLITE_OK
        || tokenizer.xCreate(context, arguments.data(), static_cast<int>(arguments.size()), &made) != SQLITE_OK)
        throwFault("store.io", FaultKind::io, {}, "no tokenizer");
    const std::unique_ptr<Fts5Tokenizer, void (*)(Fts5Tokenizer*)> owned(made, tokenizer.xDelete);
    std::vector<std::string> words;
    tokenizer.xTokenize(made, &words, FTS5_TOKENIZE_QUERY, text.data(), static_cast<int>(text.size()), &takeToken);
    return words;
}

std::vector<std::string> wordQueries(Connection& db, std::string_view text)
{
    std::vector<std::string> queries;
    for (const std::string& word : wordsOf(db, text))
        queries.push_back('"' + word + '"');
    const bool unfinished = !text.empty() && text.back() != ' ';
    if (!queries.empty() && unfinished)
        queries.back() += " *";
    return queries;
}

std::string wordQuery(Connection& db, std::string_view text)
{
    std::string all;
    for (const std::string& query : wordQueries(db, text))
        all += (all.empty() ? "" : " AND ") + query;
    return all;
}

} // namespace cupule
