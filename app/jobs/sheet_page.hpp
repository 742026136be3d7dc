// A worksheet to be filled in, already in words: what is asked for, what comes out, and what of it a job can
// take over. Pure: made from the knowledge, what was typed and the job in hand, if any.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/jobs/job.hpp"
#include "app/jobs/page.hpp"
#include "app/jobs/plot.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover {

// By input id: as typed, or the id of the choice pressed. What is not in it is taken from the job.
using SheetInputs = std::map<std::string, std::string>;

struct SheetField {
    std::string id;
    std::string name;
    std::string unit;                 // "" for a choice or a plain number
    std::string text;                 // as typed, else as taken from the job; "" while it is not known
    std::string hint;                 // "for example 9 in"
    std::string from;                 // where it comes from: "From job 12", "Entered here. Job 12 has 9 in."
    std::string error;                // what is wrong with it and what would be right
    std::vector<ChoiceText> choices;  // empty: a number
    bool typed = false;
    bool assumed = false;  // the job's value was not measured on this boat
};

struct SheetPage {
    std::string id;
    std::string name;
    std::string about;
    std::string topic;
    std::vector<SheetField> fields;
    std::vector<SheetLine> results;
    std::vector<std::string> advice;
    std::string refused;             // why it does not hold for these inputs
    std::string waits;               // "Still needs: rod and bore"
    std::vector<std::string> holds;  // what must be so for it to hold
    std::string source;
    std::vector<std::string> deferrals;  // what is always left to others
    bool any_typed = false;
    std::string take_over;            // "Use in job 12"; "" without a job
    std::vector<std::string> taken;   // what the job would take over: "Ram stroke: 9 in"
    std::vector<std::string> beside;  // what it would not, and why
};

// `units`: in which figures are shown; a bare number is taken in the unit that stands behind its field.
SheetPage make_sheet_page(const Knowledge& knowledge, Index worksheet, const SheetInputs& typed,
                          const Job* job, UnitSystem units = UnitSystem::us);

// What the job is told when it takes the sheet over: only what it does not have already.
std::vector<Event> sheet_events(const Knowledge& knowledge, Index worksheet, const SheetInputs& typed,
                                const Job& job, UnitSystem units = UnitSystem::us);

// Bare numbers that were typed while figures were shown in `units`, with the unit they were meant in: so that
// they stay what they are when figures are shown otherwise.
void write_units(const Knowledge& knowledge, Index worksheet, UnitSystem units, SheetInputs& typed);

// One row in the list of worksheets.
struct SheetRow {
    std::string id;
    std::string name;
    std::string about;
    std::string topic;
    std::string words;        // all that a search looks through
    bool called_for = false;  // by a rule in the job in hand
};

// Grouped by topic, in the order of the knowledge.
std::vector<SheetRow> make_sheet_list(const Knowledge& knowledge, const Job* job);

// A plot of one result against one input, with what else could be chosen.
struct SheetPlot {
    std::optional<Plot> plot;
    std::string why_not;              // why there is none
    std::vector<ChoiceText> results;  // of which one is chosen
    std::vector<ChoiceText> against;  // inputs that change it, of which one is chosen
};

// `result` and `input` by id; "" or one that cannot be drawn: the one that tells most. Where an input is not
// known yet its example is taken, and the notes say so.
SheetPlot make_sheet_plot(const Knowledge& knowledge, Index worksheet, const SheetInputs& typed,
                          const Job* job, const std::string& result, const std::string& input,
                          UnitSystem units = UnitSystem::us);

namespace jobs_detail {

// The inputs of a sheet as far as they are known, and where they come from.
struct SheetInput {
    Value value;
    Value of_job;  // what the job has
    bool job_assumed = false;
    bool typed = false;
    std::string text;  // as typed
    std::string error;
};
std::vector<SheetInput> sheet_inputs(const Knowledge& knowledge, Index worksheet, const SheetInputs& typed,
                                     const Job* job, UnitSystem units);

}  // namespace jobs_detail

}  // namespace hardover
