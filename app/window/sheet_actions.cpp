// What is done at the place Worksheets. Nothing is recorded before the job takes a sheet over.
#include <algorithm>

#include "app/jobs/word_match.hpp"
#include "app/window/app_state.hpp"

namespace hardover::window {

namespace {

const Job* job_of(const AppState& state) {
    return state.job ? &*state.job : nullptr;
}

struct Apply {
    AppState& state;
    SheetsState& sheets = state.sheets;

    void operator()(const OpenSheet& action) const {
        if (sheets.open != action.id) sheets.plot_result = sheets.plot_against = "";
        sheets.open = action.id;
        sheets.view.drafts.clear();
        sheets.view.notice = sheets.view.trouble = "";
    }
    void operator()(const ShowSheet& action) const {
        (*this)(OpenSheet{action.id});
        carry_out(state, GoTo{hardover::window::Place::worksheets});
    }
    void operator()(const FilterSheets& action) const { sheets.view.filter = action.words; }
    void operator()(const EnterInput& action) const {
        sheets.view.drafts.drop(action.input);
        sheets.view.notice = sheets.view.trouble = "";
        SheetInputs& typed = sheets.typed[sheets.open];
        if (action.text.find_first_not_of(" \t") == std::string::npos) {
            typed.erase(action.input);
        } else {
            typed[action.input] = action.text;
        }
    }
    void operator()(const ClearSheet&) const {
        sheets.typed.erase(sheets.open);
        sheets.view.drafts.clear();
        sheets.view.notice = sheets.view.trouble = "";
    }
    void operator()(const DrawResult& action) const {
        sheets.plot_result = action.result;
        sheets.plot_against = "";
    }
    void operator()(const DrawAgainst& action) const { sheets.plot_against = action.input; }

    // Event by event, as if it had been typed into the job: each can be undone there.
    void operator()(const UseInJob&) const {
        const Index sheet = find(state.knowledge.worksheets, sheets.open);
        if (!state.job || sheet == none) return;
        const SheetInputs typed = sheets.typed[sheets.open];
        const UnitSystem units = state.shop.ways.units;
        const std::vector<std::string> taken =
            make_sheet_page(state.knowledge, sheet, typed, job_of(state), units).taken;
        std::size_t done = 0;
        for (const Event& event : sheet_events(state.knowledge, sheet, typed, *state.job, units)) {
            const Result<void> kept = record(state.store, state.prepared, *state.job, event, state.now());
            if (!kept) {
                sheets.view.trouble = kept.error().text();
                break;
            }
            ++done;
        }
        if (done == 0) return;
        std::string told;
        for (std::size_t i = 0; i < done && i < taken.size(); ++i) told += (i > 0 ? "; " : "") + taken[i];
        sheets.view.notice = "Job " + std::to_string(state.job->number) + " has taken over: " + told +
                             ". Undo in the job takes it back, one at a time.";
        // What the job now has needs no typing here any more.
        if (sheets.view.trouble.empty()) {
            for (const WorksheetInput& input :
                 state.knowledge.worksheets[static_cast<std::size_t>(sheet)].inputs) {
                if (input.rig_field != none || input.finding != none)
                    sheets.typed[sheets.open].erase(input.id);
            }
        }
        show_job(state);
    }
};

}  // namespace

void show_sheets(AppState& state) {
    SheetsState& sheets = state.sheets;
    sheets.rows = make_sheet_list(state.knowledge, job_of(state));
    sheets.all_rows = sheets.rows.size();
    std::erase_if(sheets.rows,
                  [&](const SheetRow& row) { return !has_all_words(row.words, sheets.view.filter); });
    const Index sheet = find(state.knowledge.worksheets, sheets.open);
    if (sheet == none) {
        sheets.open.clear();
        return;
    }
    const SheetInputs& typed = sheets.typed[sheets.open];
    const UnitSystem units = state.shop.ways.units;
    sheets.page = make_sheet_page(state.knowledge, sheet, typed, job_of(state), units);
    sheets.plot = make_sheet_plot(state.knowledge, sheet, typed, job_of(state), sheets.plot_result,
                                  sheets.plot_against, units);
}

void carry_out_on_sheets(AppState& state, const SheetAction& action) {
    std::visit(Apply{state}, action);
    show_sheets(state);
}

}  // namespace hardover::window
