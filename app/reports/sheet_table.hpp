// A table of figures over the whole width of a sheet. Inner part of app/reports.
#pragma once

#include "app/classroom/figures_page.hpp"
#include "app/reports/sheet_composer.hpp"

namespace hardover::reports_detail {

// At most `most` rows (but those that stand on any sheet), those that want looking at before the others, then
// how many are left out. A row that wants looking at is bold; its note stands below it.
void add_table(Composer& page, const classroom::FigureTable& table, std::size_t most);

}  // namespace hardover::reports_detail
