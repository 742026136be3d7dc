// The parts a job page is put together from. Inner part of app/jobs; decides nothing that the reasoning
// decides.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/jobs/page.hpp"
#include "rules/reasoning/contrast.hpp"
#include "rules/reasoning/situation.hpp"
#include "rules/reasoning/stages.hpp"

namespace hardover::jobs_detail {

// What every part looks at: the knowledge, the job, and what is known by name.
struct View {
    View(const PreparedKnowledge& prepared, const Job& the_job)
        : knowledge(prepared.knowledge()),
          job(the_job),
          situation(prepared, the_job.facts),
          stages(knowledge, the_job.facts, situation) {}
    const Knowledge& knowledge;
    const Job& job;
    Situation situation;
    Stages stages;
    UnitSystem units() const { return job.shop.units; }
};

// Names and values in words (page_text.cpp).
std::string cause_name(const Knowledge& knowledge, Index cause);  // none: "something not on this list"
double probability_of(const Job& job, Index cause);               // none: of "not on this list"
std::string spoken_condition(const Knowledge& knowledge, const Expression& condition);
std::string spoken_because(View& view, const std::vector<std::string>& names);
std::string rig_value_text(const RigField& field, const RigValue& value, UnitSystem units = UnitSystem::us);
// The same of a boat that was made up: a length to the step in which people would say it ("19 ft 6 in").
std::string said_rig_value(const RigField& field, const RigValue& value, UnitSystem units);
std::optional<Quantity> quantity_of(const Value& value);
std::string input_text(const WorksheetInput& input, const Value& value,
                       UnitSystem units = UnitSystem::us);  // "" when not known
// As shown, when that reads back as the same value; otherwise with every digit, so that confirming an
// unchanged field changes nothing (page_questions.cpp).
std::string editable_text(const Quantity& quantity, const Unit& unit, UnitSystem units);
// What a worksheet is about: its file's name without the kind, "Hoses and oil" (page_sheets.cpp).
std::string sheet_topic(const Worksheet& sheet);
std::vector<CautionText> caution_texts(const Knowledge& knowledge, const std::vector<Index>& cautions);
std::string deferral_text(const Deferral& deferral);

// What is known about a finding and where from (page_answers.cpp).
struct KnownAnswer {
    Answer answer;
    std::string origin;      // "answered", "measured", "worked out", "told by the customer"
    bool only_told = false;  // by the complaint: nobody has looked
};
std::optional<KnownAnswer> known_answer(View& view, Index finding);
std::vector<AnswerLine> answer_lines(View& view);
std::vector<RigLine> rig_lines(const View& view);
std::vector<std::string> assumption_lines(const View& view);

// Questions and their fields (page_questions.cpp).
MeasureField rig_measure(const Knowledge& knowledge, const Job& job, Index field);
QuestionText question_text(View& view, Index finding);
// `first` and then the other open findings of the check (none: no others). Plain measurements become fields
// of the finding their worksheet gives; a worksheet is asked for once.
std::vector<QuestionText> question_texts(View& view, const std::vector<Index>& first, Index check);

// Why a step now (page_why.cpp).
std::vector<std::string> branch_lines(const View& view, const NextStep& step);
std::string separation_text(const View& view, const NextStep& step);
std::string asking_rule_text(const Knowledge& knowledge, const NextStep& step);
// Why something is looked at again after a remedy; "" for others.
std::string again_text(const View& view, const NextStep& step);
// Why a step that saves no minutes is asked all the same; "" for others.
std::string narrowing_text(const View& view, const NextStep& step);
// Why what a cause comes from is dealt with before it; "" for others.
std::string origin_text(const Knowledge& knowledge, const NextStep& step);
std::string blocked_text(const View& view, const NextStep& step);

// What one row of a contrast is about (explain_text.cpp).
std::string contrast_row_text(const Knowledge& knowledge, const ContrastRow& row);

// What was answered in a stage: the latest answer, or one given again since (page_answers.cpp).
std::optional<KnownAnswer> answer_of_stage(View& view, Index finding, int stage);
// "before the first remedy", "after 2 remedies" (page_answers.cpp).
std::string stage_text(int stage);

// The id of the finding or rule; "" for what became of the remedies (page_causes.cpp).
std::string weight_id(const Knowledge& knowledge, const Weight& weight);

// The rest of the page.
StepCard next_card(View& view);                                           // page_card.cpp
StepCard asking_card(View& view, Index finding);                          // page_card.cpp
std::vector<CauseLine> cause_lines(View& view);                           // page_causes.cpp
std::vector<CauseLine> put_right_lines(View& view);                       // page_causes.cpp
std::vector<PlanLine> plan_lines(const View& view);                       // page_plan.cpp
std::string step_line(const Knowledge& knowledge, const NextStep& step);  // page_plan.cpp
std::vector<SheetText> sheet_texts(const View& view);                     // page_sheets.cpp
std::vector<EventLine> event_lines(const View& view);                     // page_events.cpp

}  // namespace hardover::jobs_detail
