#include "core/report/html.h"

#include <algorithm>

#include <fmt/format.h>

#include "core/base/text.h"

namespace cupule::report {

namespace {

constexpr std::string_view style = R"(
:root { color-scheme: light; }
body { font: 11pt/1.45 "Inter", "Noto Sans", "DejaVu Sans", sans-serif; color: #1d2320; background: #fff;
       margin: 0 auto; max-width: 48rem; padding: 1rem; }
h1 { font-size: 1.6rem; margin: 0.6rem 0 0.1rem; line-height: 1.2; }
h2 { font-size: 1.15rem; margin: 1.4rem 0 0.4rem; border-bottom: 1px solid #1d2320; padding-bottom: 0.15rem; }
h3, h4 { font-size: 1rem; margin: 1rem 0 0.3rem; }
p { margin: 0.4rem 0; }
.subtitle { color: #444b47; }
.note { border-left: 3px solid #444b47; padding-left: 0.7rem; }
.caution { border: 1.5px solid #1d2320; padding: 0.5rem 0.7rem; }
.banner { border: 2px solid #1d2320; padding: 0.35rem 0.7rem; font-weight: 600; text-align: center; }
.foot { color: #444b47; font-size: 0.85rem; border-top: 1px solid #9aa19d; padding-top: 0.3rem; }
table.page { width: 100%; border-collapse: collapse; }
table.page > thead > tr > td, table.page > tbody > tr > td, table.page > tfoot > tr > td { padding: 0; }
table.data { border-collapse: collapse; width: 100%; margin: 0.5rem 0 0.9rem; font-size: 0.93rem; }
table.data caption { text-align: left; font-weight: 600; padding-bottom: 0.25rem; }
table.data th, table.data td { border-bottom: 1px solid #c9cecb; padding: 0.2rem 0.6rem 0.2rem 0; text-align: left;
       vertical-align: top; }
table.data .number { text-align: right; font-variant-numeric: tabular-nums; }
figure { margin: 0.6rem 0; }
figcaption { font-size: 0.9rem; color: #444b47; }
svg { max-width: 100%; height: auto; }
@page { margin: 16mm 15mm; }
@media print { body { max-width: none; padding: 0; font-size: 10pt; } h2 { break-after: avoid; }
       tr, figure { break-inside: avoid; } }
)";

struct BlockWriter {
    std::string& out;

    void operator()(const Heading& heading) const
    {
        const int level = std::clamp(heading.level, 1, 4);
        out += fmt::format("<h{0}>{1}</h{0}>\n", level, escapeHtml(heading.text));
    }
    void operator()(const Paragraph& paragraph) const
    {
        const char* tone = paragraph.tone == Tone::caution ? " class=\"caution\""
                           : paragraph.tone == Tone::note  ? " class=\"note\""
                                                           : "";
        out += fmt::format("<p{}>{}</p>\n", tone, escapeHtml(paragraph.text));
    }
    void operator()(const List& list) const
    {
        out += "<ul>\n";
        for (const auto& item : list.items)
            out += fmt::format("<li>{}</li>\n", escapeHtml(item));
        out += "</ul>\n";
    }
    void operator()(const Table& table) const
    {
        out += "<table class=\"data\">\n";
        if (!table.caption.empty())
            out += fmt::format("<caption>{}</caption>\n", escapeHtml(table.caption));
        out += "<thead><tr>";
        for (const auto& column : table.columns)
            out += fmt::format("<th scope=\"col\"{}>{}</th>", column.number ? " class=\"number\"" : "",
                               escapeHtml(column.title));
        out += "</tr></thead>\n<tbody>\n";
        for (const auto& row : table.rows) {
            out += "<tr>";
            for (std::size_t i = 0; i < table.columns.size(); ++i)
                out += fmt::format("<td{}>{}</td>", table.columns[i].number ? " class=\"number\"" : "",
                                   i < row.size() ? escapeHtml(row[i]) : "");
            out += "</tr>\n";
        }
        out += "</tbody></table>\n";
    }
    void operator()(const Figure& figure) const
    {
        out += "<figure>\n" + barsSvg(figure);
        out += fmt::format("<figcaption>{}</figcaption>\n</figure>\n", escapeHtml(figure.caption));
    }
};

} // namespace

std::string escapeHtml(std::string_view text)
{
    std::string out;
    out.reserve(text.size() + text.size() / 8);
    for (const char c : text) {
        switch (c) {
        case '&': out += "&amp;"; break;
        case '<': out += "&lt;"; break;
        case '>': out += "&gt;"; break;
        case '"': out += "&quot;"; break;
        case '\'': out += "&#39;"; break;
        default:
            if (static_cast<unsigned char>(c) >= 0x20 || c == '\n' || c == '\t')
                out += c;
        }
    }
    return out;
}

std::string barsSvg(const Figure& figure, std::string_view fill, std::string_view ink)
{
    if (figure.values.empty())
        return {};
    constexpr int width = 720, height = 150, base = 118, top = 16;
    double most = 0;
    for (const auto& [label, value] : figure.values)
        most = std::max(most, value);
    const double step = static_cast<double>(width) / static_cast<double>(figure.values.size());
    std::string out = fmt::format("<svg viewBox=\"0 0 {} {}\" role=\"img\" aria-label=\"{}\" "
                                  "font-family=\"sans-serif\" font-size=\"11\" text-anchor=\"middle\">\n",
                                  width, height, escapeHtml(figure.inWords));
    double left = 0;
    for (const auto& [label, value] : figure.values) {
        const double tall = most > 0 ? (base - top) * value / most : 0;
        if (value > 0)
            out += fmt::format(
                "<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" fill=\"{}\" "
                "stroke=\"{}\"/><text x=\"{:.1f}\" y=\"{:.1f}\">{}</text>\n",
                left + step * 0.15, base - tall, step * 0.7, tall, fill, ink, left + step / 2, base - tall - 4,
                escapeHtml(numberText(value)));
        out += fmt::format("<text x=\"{:.1f}\" y=\"{}\">{}</text>\n", left + step / 2, base + 16,
                           escapeHtml(label));
        left += step;
    }
    out += fmt::format("<line x1=\"0\" y1=\"{0}\" x2=\"{1}\" y2=\"{0}\" stroke=\"{2}\"/>\n</svg>\n", base,
                       width, ink);
    return out;
}

std::string toHtml(const Document& document)
{
    std::string out =
        fmt::format("<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n"
                    "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
                    "<title>{}</title>\n<style>{}</style>\n</head>\n<body>\n<table class=\"page\" "
                    "role=\"presentation\">\n",
                    escapeHtml(document.language), escapeHtml(document.title), style);
    if (!document.demonstration.empty())
        out += fmt::format("<thead><tr><td><div class=\"banner\">{}</div></td></tr></thead>\n",
                           escapeHtml(document.demonstration));
    if (!document.foot.empty())
        out += fmt::format("<tfoot><tr><td><div class=\"foot\">{}</div></td></tr></tfoot>\n",
                           escapeHtml(document.foot));
    out += fmt::format("<tbody><tr><td>\n<h1>{}</h1>\n", escapeHtml(document.title));
    if (!document.subtitle.empty())
        out += fmt::format("<p class=\"subtitle\">{}</p>\n", escapeHtml(document.subtitle));
    for (const auto& block : document.blocks)
        std::visit(BlockWriter{out}, block);
    out += "</td></tr></tbody>\n</table>\n</body>\n</html>\n";
    return out;
}

} // namespace cupule::report
