// Pieces of HTML: text made safe, lists, and the frame of a page that needs nothing but itself. Knows no
// knowledge.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace hardover::html {

// Text with &, <, > and quotes written so that HTML shows them.
std::string text(const std::string& plain);

// The parameters named html are HTML already; all others are plain text.
std::string link(const std::string& to, const std::string& label);
std::string paragraph(const std::string& html);
std::string list(const std::vector<std::string>& html_items, bool numbered = false);

// One row of a description list; nothing where `html` is empty.
std::string row(const std::string& label, const std::string& html);
std::string rows(const std::string& html_rows);

struct PageLink {
    std::string file;
    std::string name;
};

// A whole page with its style inside. `pages` are linked at the top, `here` among them is marked. `script`
// goes at the end; empty: none. `search_page` gets what is typed into the box at the top, as ?find=; empty:
// no box.
std::string page(const std::string& title, const std::vector<PageLink>& pages, const std::string& here,
                 const std::string& body_html, const std::string& script = "",
                 const std::string& search_page = "");

}  // namespace hardover::html
