// Every word that somebody reads in the window goes through the translator: no sentence and no capitalised word of ui stands
// in a literal of its own. The sentences of ui/bridge lie in tables that its tests walk; here are the other rooms.

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "tests/support/catch.h"

namespace fs = std::filesystem;

namespace {

/// Names of families, of a style and of the program, and values as they are stored.
const std::set<std::string> names{"Cupule", "DejaVu Sans", "Fusion", "Inter", "Noto Sans", "Noto Sans Mono", "not examined", "not found"};
/// Functions that hand their text on to the translator.
const std::set<std::string> translators{"tr", "translate", "say", "QT_TR_NOOP", "QT_TRANSLATE_NOOP"};

std::string withoutComments(const std::string& source)
{
    static const std::regex part(R"rx("(\\.|[^"\\\n])*"|'(\\.|[^'\\\n])'|//[^\n]*|/\*[^*]*\*+([^/*][^*]*\*+)*/)rx");
    std::string kept;
    auto from = source.begin();
    for (std::sregex_iterator at(source.begin(), source.end(), part), end; at != end; ++at) {
        kept.append(from, source.begin() + at->position());
        if (at->str()[0] != '/')
            kept += at->str();
        from = source.begin() + at->position() + at->length();
    }
    return kept.append(from, source.end());
}

/// The name before the innermost parenthesis that is open at `at`; empty where there is none.
std::string calledAt(const std::string& source, std::size_t at)
{
    int closed = 0;
    while (at-- > 0) {
        const char c = source[at];
        if (closed == 0 && (c == ';' || c == '{' || c == '}'))
            return {};
        if (c == ')')
            ++closed;
        if (c != '(' || closed-- > 0)
            continue;
        std::size_t from = at;
        while (from > 0 && (std::isalnum(static_cast<unsigned char>(source[from - 1])) != 0 || source[from - 1] == '_'))
            --from;
        return source.substr(from, at - from);
    }
    return {};
}

/// Two words in a row, or one word that begins with a capital.
bool speaks(const std::string& literal)
{
    static const std::regex unspoken(R"(<[^>]*>|&[a-z]+;|%[0-9n]|\\.)");
    static const std::regex sentence("[A-Za-z]{2,}[,.:]? +[A-Za-z]{2,}");
    static const std::regex word("^ *[A-Z][a-z]{2,}[:.]?(…)? *$");
    const std::string plain = std::regex_replace(literal, unspoken, " ");
    return std::regex_search(plain, sentence) || std::regex_match(plain, word);
}

/// Literals that speak and reach no translator. A literal that follows another one belongs to the same call.
std::vector<std::string> untranslated(const std::string& source)
{
    static const std::regex literal(R"rx("((\\.|[^"\\\n])*)")rx");
    const std::string plain = withoutComments(source);
    std::string shape = plain; // what stands in a literal opens and closes nothing
    for (std::sregex_iterator at(plain.begin(), plain.end(), literal), end; at != end; ++at)
        std::fill_n(shape.begin() + at->position(), at->length(), ' ');
    std::vector<std::string> found;
    for (std::sregex_iterator at(plain.begin(), plain.end(), literal), end; at != end; ++at) {
        const auto position = static_cast<std::size_t>(at->position());
        const std::size_t lineStart = plain.rfind('\n', position) + 1;
        if (plain.compare(lineStart, 8, "#include") == 0)
            continue;
        const std::string text = (*at)[1];
        if (speaks(text) && names.count(text) == 0 && translators.count(calledAt(shape, position)) == 0)
            found.push_back(text);
    }
    return found;
}

} // namespace

TEST_CASE("a literal that speaks is told from a name and from one that is translated", "[structure][words]")
{
    CHECK(untranslated("label->setText(QStringLiteral(\"Two words\"));") == std::vector<std::string>{"Two words"});
    CHECK(untranslated("button->setText(\"Save\");") == std::vector<std::string>{"Save"});
    CHECK(untranslated("a(tr(\"%1 is open\").arg(QStringLiteral(\"<b>Not this</b>\")));") == std::vector<std::string>{"<b>Not this</b>"});
    CHECK(untranslated("a(tr(\"One part; \"\n   \"and another one\", \"a remark\"));").empty());
    CHECK(untranslated("// \"A remark in words\"\nsetObjectName(QStringLiteral(\"visitList\"));").empty());
    CHECK(untranslated("#include \"ui/some thing.h\"\nfont(QStringLiteral(\"Noto Sans\"));").empty());
}

TEST_CASE("no visible word of the window escapes the translator", "[structure][words]")
{
    std::vector<std::string> wrong;
    int files = 0;
    for (const auto& entry : fs::recursive_directory_iterator(fs::path(CUPULE_SOURCE_DIR) / "ui")) {
        const std::string path = fs::relative(entry.path(), CUPULE_SOURCE_DIR).string();
        if ((entry.path().extension() != ".cpp" && entry.path().extension() != ".h") || path.compare(0, 10, "ui/bridge/") == 0)
            continue;
        ++files;
        std::ostringstream source;
        source << std::ifstream(entry.path()).rdbuf();
        for (const std::string& text : untranslated(source.str()))
            wrong.push_back(path + ": " + text);
    }
    CAPTURE(wrong);
    CHECK(wrong.empty());
    CHECK(files > 100);
}
