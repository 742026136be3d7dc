#include "app/reports/html.hpp"

#include <fmt/format.h>

namespace hardover::html {

namespace {

// Ink on paper with a brass rule, by night light ink on dark; one column on a phone and on paper.
constexpr const char* style = R"(
:root { --ink: #1d2733; --soft: #5a6675; --paper: #fbfaf7; --card: #ffffff; --rule: #b8862b; --line: #d9d5cb;
  --link: #0b5c7a; --warn: #8a2b12; color-scheme: light dark; }
@media (prefers-color-scheme: dark) { :root { --ink: #e4e2dc; --soft: #a3abb5; --paper: #14191f; --card: #1c232b;
  --rule: #c79a43; --line: #3a434d; --link: #7cc3e0; --warn: #ff9d7a; } }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 17px/1.5 Georgia, "Times New Roman", serif; }
a { color: var(--link); }
header { border-bottom: 3px solid var(--rule); background: var(--card); padding: .8em 1.2em; }
header p { margin: 0; font-weight: bold; }
nav ul { display: flex; flex-wrap: wrap; gap: .2em 1.1em; list-style: none; margin: .4em 0 0; padding: 0; }
nav .here { color: var(--ink); font-weight: bold; text-decoration: none; }
header .find { margin: .5em 0 0; }
header .find input { font: inherit; padding: .15em .4em; border: 1px solid var(--rule); background: var(--paper);
  color: inherit; max-width: 100%; }
main { max-width: 62em; margin: 0 auto; padding: 1em 1.2em 4em; }
h1 { font-size: 1.7em; margin: .6em 0 .2em; }
h2 { font-size: 1.2em; margin: 1.6em 0 .3em; }
article { scroll-margin-top: 1em; background: var(--card); border: 1px solid var(--line); border-left: 5px solid var(--rule);
  margin: 1em 0; padding: .2em 1.1em .8em; }
article:target { outline: 3px solid var(--rule); }
article h3 { margin: .6em 0 .1em; font-size: 1.15em; }
code { font: .82em ui-monospace, Menlo, Consolas, monospace; color: var(--soft); overflow-wrap: anywhere; }
dl { display: grid; grid-template-columns: 11em 1fr; gap: .35em 1em; margin: .6em 0 0; }
dt { color: var(--soft); }
dd { margin: 0; }
dd ul, dd ol { margin: 0; padding-left: 1.2em; }
.caution, .caution a { color: var(--warn); font-weight: bold; }
.part { font-size: 1em; margin: 1em 0 .2em; color: var(--soft); }
.contents { columns: 17em; padding-left: 1.1em; margin: 0; }
.contents li { break-inside: avoid; }
.search label { font-weight: bold; display: block; }
.search input { font: inherit; width: 100%; max-width: 34em; padding: .45em .6em; border: 2px solid var(--rule);
  border-radius: 0; background: var(--card); color: inherit; }
#found p { margin: .3em 0; padding-left: 7em; text-indent: -7em; }
#found span { color: var(--soft); display: inline-block; width: 7em; text-indent: 0; }
@media (max-width: 40em) { dl { display: block; } dt { margin-top: .5em; } main { padding: .6em .8em 3em; } }
@media print { body { font-size: 10.5pt; background: none; } nav, .search, .find, .contents, .part { display: none; }
  :root { --ink: #000; --soft: #444; --card: #fff; --line: #999; --warn: #000; }
  article { break-inside: avoid; border-width: 0 0 0 3px; } a { color: inherit; text-decoration: none; } }
)";

}  // namespace

std::string text(const std::string& plain) {
    std::string safe;
    for (const char c : plain) {
        switch (c) {
            case '&':
                safe += "&amp;";
                break;
            case '<':
                safe += "&lt;";
                break;
            case '>':
                safe += "&gt;";
                break;
            case '"':
                safe += "&quot;";
                break;
            default:
                safe += c;
        }
    }
    return safe;
}

std::string link(const std::string& to, const std::string& label) {
    return fmt::format("<a href=\"{}\">{}</a>", text(to), text(label));
}

std::string paragraph(const std::string& html) {
    return html.empty() ? "" : "<p>" + html + "</p>\n";
}

std::string list(const std::vector<std::string>& html_items, bool numbered) {
    if (html_items.empty()) return "";
    std::string items;
    for (const std::string& item : html_items) items += "<li>" + item + "</li>\n";
    return fmt::format("<{0}>\n{1}</{0}>\n", numbered ? "ol" : "ul", items);
}

std::string row(const std::string& label, const std::string& html) {
    return html.empty() ? "" : fmt::format("<dt>{}</dt>\n<dd>{}</dd>\n", text(label), html);
}

std::string rows(const std::string& html_rows) {
    return html_rows.empty() ? "" : "<dl>\n" + html_rows + "</dl>\n";
}

namespace {

std::string search_box(const std::string& page) {
    return fmt::format(
        "<form class=\"find\" action=\"{}\">\n<label>Search <input name=\"find\" type=\"search\" "
        "autocomplete=\"off\"></label>\n</form>\n",
        text(page));
}

}  // namespace

std::string page(const std::string& title, const std::vector<PageLink>& pages, const std::string& here,
                 const std::string& body_html, const std::string& script, const std::string& search_page) {
    std::string links;
    for (const PageLink& page : pages) {
        const std::string current = page.file == here ? " class=\"here\"" : "";
        links += fmt::format("<li><a href=\"{}\"{}>{}</a></li>\n", text(page.file), current, text(page.name));
    }
    return fmt::format(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
        "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
        "<title>{0}</title>\n<style>{1}</style>\n</head>\n<body>\n"
        "<header>\n<p>Hardover knowledge book</p>\n<nav>\n<ul>\n{2}</ul>\n</nav>\n{5}</header>\n"
        "<main>\n<h1>{0}</h1>\n{3}</main>\n{4}</body>\n</html>\n",
        text(title), style, links, body_html, script.empty() ? "" : "<script>\n" + script + "</script>\n",
        search_page.empty() ? "" : search_box(search_page));
}

}  // namespace hardover::html
