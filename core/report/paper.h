// What the parts of every report write with: headings, sentences and tables of facts. Inside the report room only.

#pragma once

#include <initializer_list>
#include <string>
#include <vector>

#include "core/record/leave.h"
#include "core/report/document.h"
#include "core/report/words.h"

namespace cupule::report {

struct Pen {
    const Pack& pack;
    const Words& words;
    Document& out;

    void heading(const char* english) const;
    void say(const char* english, const Arguments& arguments = {}, Tone tone = Tone::plain) const;
    [[nodiscard]] Table table(std::initializer_list<const char*> titles) const;
    /// A fact by its name. What is empty is said to be: a reader must see what nobody wrote down.
    void row(Table& table, const char* name, const std::string& value) const;
    [[nodiscard]] std::string count(double value, int decimals = 0) const { return words.number(value, decimals); }
    /// What the authority has in force, a paragraph each.
    void regimes(const std::vector<Regime>& all) const;
};

/// A paper and what it tells of.
template <class Data>
struct PaperOf : Pen {
    const Data& data;
};

/// Adds a part that is not empty to a list in words.
void addPart(std::string& list, const std::string& part, const char* between = ", ");

} // namespace cupule::report
