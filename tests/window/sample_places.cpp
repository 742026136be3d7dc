#include "sample_places.hpp"

#include "app/window/condition_words.hpp"
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

window::KnowledgeState sample_knowledge(const std::string& kind, const std::string& id) {
    static const EntryLinks links(shipped());
    static const PreparedKnowledge prepared(shipped());
    window::KnowledgeState known;
    known.kinds = browsable_kinds(shipped());
    known.kind = kind;
    known.entries = entries_of(shipped(), kind);
    known.all_entries = known.entries.size();
    if (known.entries.size() > known.most) known.entries.resize(known.most);
    if (id.empty()) {
        known.fired = {EntryText(EntryPiece{"Springy after fitting is air until proved otherwise.",
                                            {"rule", shipped().rules.front().id}})};
        known.fired_in = "job 12";
        return known;
    }
    known.history = {{kind, id}, {"part", "oil"}};
    known.at = 1;
    known.page = make_entry_page(shipped(), links, {kind, id}, nullptr, prepared);
    window::say_conditions(shipped(), known.page);
    known.page.in_job = {{"In job 12", {EntryText("81 % probable.")}, false, false}};
    return known;
}

}  // namespace hardover_tests
