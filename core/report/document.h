// What a report says, as a small tree: headings, paragraphs, lists, tables and figures by name. How it comes onto a
// page is the writer's matter (html.h). Plain data; any thread.

#pragma once

#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace cupule::report {

struct Heading {
    int level = 2; ///< 1 to 4; the title is the only 1
    std::string text;
};

enum class Tone { plain, note, caution };

struct Paragraph {
    std::string text;
    Tone tone = Tone::plain;
};

struct List {
    std::vector<std::string> items;
};

struct Column {
    std::string title;
    bool number = false; ///< set to the right
};

struct Table {
    std::string caption;
    std::vector<Column> columns;
    std::vector<std::vector<std::string>> rows; ///< short rows are filled with empty cells
    bool byHand = false;                        ///< rows to be filled in with a pencil: tall ones on paper
};

/// A drawn figure. Its data goes with it, so that a reader who cannot see it has the numbers in words.
struct Figure {
    std::string name; ///< stable: which drawing ("bars")
    std::string caption;
    std::string inWords; ///< for those who do not see it
    std::vector<std::pair<std::string, double>> values;
};

using Block = std::variant<Heading, Paragraph, List, Table, Figure>;

struct Document {
    std::string language = "en";
    std::string title;
    std::string subtitle;
    std::string demonstration; ///< words of the banner on every page; empty = a real store
    std::string foot;          ///< at the foot of every page
    std::string code;          ///< what the machine-readable code at the head of a paper says; empty = none
    std::vector<Block> blocks;
};

} // namespace cupule::report
