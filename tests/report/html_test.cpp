// HTML as the HTML Living Standard (WHATWG, section 13.1 "Writing HTML documents") asks for it.

#include "core/report/html.h"

#include <algorithm>
#include <cctype>
#include <vector>

#include "tests/support/catch.h"

using namespace cupule::report;

namespace {

/// The elements of a page in order of closing; empty where an end tag does not match. Void elements: section 13.1.2.
std::vector<std::string> closedElements(const std::string& html)
{
    static const std::vector<std::string> empties{"meta", "br", "rect", "line"};
    std::vector<std::string> open, closed;
    for (std::size_t at = html.find('<'); at != std::string::npos; at = html.find('<', at + 1)) {
        if (html[at + 1] == '!')
            continue;
        const bool end = html[at + 1] == '/';
        std::string name;
        for (std::size_t i = at + (end ? 2 : 1);
             i < html.size() && std::isalnum(static_cast<unsigned char>(html[i])); ++i)
            name += html[i];
        if (std::find(empties.begin(), empties.end(), name) != empties.end())
            continue;
        if (!end) {
            open.push_back(name);
        } else {
            if (open.empty() || open.back() != name)
                return {};
            closed.push_back(name);
            open.pop_back();
        }
    }
    return open.empty() ? closed : std::vector<std::string>{};
}

Document full()
{
    Document document;
    document.title = "A <b>title</b> & more";
    document.subtitle = "sub";
    document.foot = "foot";
    document.blocks = {Heading{2, "One"}, Paragraph{"5 < 6", Tone::caution}, List{{"a", "b\"c'"}},
                       Table{"caption", {{"T", false}, {"N", true}}, {{"x", "1"}, {"short"}}},
                       Figure{"bars", "Bars", "a: 2", {{"a", 2}, {"b", 0}}}};
    return document;
}

} // namespace

TEST_CASE("every element of a page is closed in order", "[report][html]")
{
    const auto closed = closedElements(toHtml(full()));
    CHECK(std::count(closed.begin(), closed.end(), "html") == 1);
    CHECK(std::count(closed.begin(), closed.end(), "tr") >= 5);
}

TEST_CASE("what people typed cannot become markup", "[report][html]")
{
    Document document = full();
    const std::string hostile = "<script>alert('x')</script>\"><img src=x>\x01";
    document.title = document.subtitle = document.foot = document.demonstration = hostile;
    document.blocks = {Heading{2, hostile}, Paragraph{hostile, Tone::plain}, List{{hostile}},
                       Table{hostile, {{hostile, false}}, {{hostile}}},
                       Figure{"bars", hostile, hostile, {{hostile, 1}}}};
    const std::string html = toHtml(document);
    CHECK(html.find("<script") == std::string::npos);
    CHECK(html.find("<img") == std::string::npos);
    CHECK(html.find('\x01') == std::string::npos);
    CHECK(html.find("&lt;script&gt;alert(&#39;x&#39;)") != std::string::npos);
    CHECK_FALSE(closedElements(html).empty());
}

TEST_CASE("a page fetches nothing from elsewhere", "[report][html]")
{
    const std::string html = toHtml(full());
    for (const char* reference : {"http:", "https:", "src=", "href=", "url(", "@import"}) {
        CAPTURE(reference);
        CHECK(html.find(reference) == std::string::npos);
    }
}

TEST_CASE("a demonstration says so in the head of every page", "[report][html]")
{
    Document document = full();
    CHECK(toHtml(document).find("class=\"banner\"") == std::string::npos);
    document.demonstration = "Demonstration: invented";
    const std::string html = toHtml(document);
    // browsers repeat the head of a table on every printed page (CSS 2.2, section 17.2, table-header-group)
    const auto head = html.find("<thead><tr><td><div class=\"banner\">Demonstration: invented");
    CHECK(head != std::string::npos);
    CHECK(head < html.find("<h1>"));
}

TEST_CASE("a short row is filled with empty cells", "[report][html]")
{
    CHECK(toHtml(full()).find("<tr><td>short</td><td class=\"number\"></td></tr>") != std::string::npos);
}

TEST_CASE("bars are as tall as their values", "[report][html]")
{
    const std::string svg = barsSvg({"bars", "", "words", {{"a", 4}, {"b", 2}, {"c", 0}}});
    CHECK(svg.find("height=\"102.0\"") != std::string::npos);
    CHECK(svg.find("height=\"51.0\"") != std::string::npos);
    CHECK(barsSvg({"bars", "", "", {}}).empty());
}
