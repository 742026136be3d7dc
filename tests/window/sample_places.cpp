#include "sample_places.hpp"

#include "shipped.hpp"

namespace hardover_tests {

using namespace hardover;

window::SheetsState sample_sheets(const std::string& id) {
    window::SheetsState sheets;
    sheets.rows = make_sheet_list(shipped(), nullptr);
    sheets.all_rows = sheets.rows.size();
    sheets.open = id;
    const Index index = find(shipped().worksheets, id);
    if (index == none) return sheets;
    SheetInputs inputs;
    for (const WorksheetInput& input : shipped().worksheets[static_cast<std::size_t>(index)].inputs) {
        inputs[input.id] = input.example ? show(*input.example, input.unit) : input.example_choice;
    }
    sheets.page = make_sheet_page(shipped(), index, inputs, nullptr);
    sheets.page.take_over = "Use in job 12";
    sheets.page.taken = {"Ram stroke: 9 in", "Turns counted to port: 16.6 turns ± 0.1 turns"};
    sheets.page.beside = {"Stays on this sheet only, a job does not ask for it: distance between the marks."};
    sheets.plot = make_sheet_plot(shipped(), index, inputs, nullptr, "", "");
    sheets.view.choosing_plot = true;
    sheets.view.notice = "Job 12 has taken over: Ram stroke: 9 in. Undo in the job takes it back.";
    return sheets;
}

}  // namespace hardover_tests
