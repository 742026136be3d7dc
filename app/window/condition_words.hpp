// Conditions of the rule language as a person reads them: names instead of ids. Knows no screen.
#pragma once

#include "app/jobs/entry_page.hpp"

namespace hardover::window {

// In every condition of the page: entries by their names, readings and choices by their texts in quotes,
// other ids with spaces. What each piece leads to stays.
void say_conditions(const Knowledge& knowledge, EntryPage& page);

}  // namespace hardover::window
