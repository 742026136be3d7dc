// What the place Worksheets shows and remembers.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/jobs/sheet_page.hpp"
#include "app/window/views.hpp"

namespace hardover::window {

struct SheetsView {
    std::string filter;
    Drafts drafts;               // of the sheet in hand, until they are entered
    bool choosing_plot = false;  // the choices of what is drawn are unfolded
    std::string notice;          // what the job took over
    std::string trouble;
};

struct SheetsState {
    SheetsView view;
    std::string open;                          // id of the sheet in hand, or ""
    std::map<std::string, SheetInputs> typed;  // by sheet: kept while the program runs
    std::string plot_result;
    std::string plot_against;

    // Made from the above, whenever it changes.
    std::vector<SheetRow> rows;  // those that the filter leaves
    std::size_t all_rows = 0;
    SheetPage page;
    SheetPlot plot;
};

}  // namespace hardover::window
