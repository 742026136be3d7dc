// The whole knowledge as linked HTML pages that need no network and no other program. Pure: writes no file.
#pragma once

#include <string>
#include <vector>

#include "app/study/authored.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover {

struct BookPage {
    std::string file;  // "causes.html"
    std::string name;  // "Causes"
    std::size_t entries = 0;
    std::string html;
};

// index.html with the search box first, then a page for each kind or group of kinds. An entry stands at
// "<kind>-<id>" of its page, such as causes.html#cause-air_in_oil.
// `items`: the quiz items written by hand, on a page of their own. `units`: in which figures are shown.
std::vector<BookPage> knowledge_book(const Knowledge& knowledge,
                                     const std::vector<study::AuthoredItem>& items = {},
                                     UnitSystem units = UnitSystem::us);

}  // namespace hardover
