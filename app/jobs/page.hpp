// What a job looks like to a person, already in words: both front ends print the same page and decide
// nothing. Pure: made from the knowledge and the job.
#pragma once

#include <string>
#include <vector>

#include "app/jobs/job.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover {

struct CautionText {
    std::string id;
    std::string name;
    std::string hurts;
    std::string avoid;
};

struct ChoiceText {
    std::string id;
    std::string text;
    bool chosen = false;
};

// A number to be typed: a measured finding, a worksheet's input or a rig quantity.
struct MeasureField {
    std::string id;  // finding or rig field
    std::string name;
    std::string unit;
    std::string text;     // as answered so far, or ""
    std::string hint;     // "for example 4 1/2 in ± 1/16 in"; or "taken as 9 in until you say otherwise"
    bool of_rig = false;  // recorded as RigSet, otherwise as Answered
};

// One finding to be answered.
struct QuestionText {
    std::string finding;
    std::string name;
    std::string ask;
    std::vector<ChoiceText> choices;   // worst first, as in the knowledge
    std::vector<MeasureField> fields;  // its own number, or the numbers its worksheet still needs and has
    std::string answer;                // as answered so far, or ""
};

struct SheetLine {
    std::string name;
    std::string value;  // with spread; "still needs: ..." where it cannot be worked out
    bool assumed = false;
    bool known = true;  // false: the value says what is missing
};

// A worksheet worked out (or waiting) inline.
struct SheetText {
    std::string id;
    std::string name;
    std::vector<SheetLine> inputs;
    std::vector<SheetLine> results;
    std::vector<std::string> advice;
    std::string refused;
    std::string source;
};

// What to do now. `kind` is for layout only; all words are here.
struct StepCard {
    enum class Kind { intake, question, check, prove, remedy, after, call_for_help, handed_back };
    Kind kind = Kind::intake;
    std::string eyebrow;  // "Check · about 5 min · tape, light"
    std::string heading;
    std::string why;                    // one or two sentences: why this now
    std::vector<CautionText> cautions;  // shown before the steps
    std::vector<std::string> steps;
    std::vector<std::string> tools;
    std::vector<std::string> parts;
    std::vector<std::string> figures;
    std::vector<std::string> after;       // checks afterwards
    std::vector<std::string> branches;    // "If springy (62 %): Air left in the oil 81 %"
    std::vector<QuestionText> questions;  // the first is the one asked; others can be answered on the way
    std::string id;                       // of the finding, check or remedy
    std::string cause;                    // prove and remedy: id
    std::string sources;                  // "Source: NAVEDTRA 14105; common practice"
    double minutes = 0;
    double minutes_after = 0;
};

struct WeightText {
    std::string text;  // "Feel of the wheel: springy"
    std::string id;    // of the finding or rule
    double decibans = 0;
    std::string strength;  // "strongly for", "a little against"
};

struct CauseLine {
    std::string id;
    std::string name;
    double probability = 0;
    std::string percent;  // "81 %", "under 1 %"
    std::string state;    // "", "proved", "ruled out by ...", "put right", "its remedy helped"
    bool proved = false;  // now, or when something was tried on the boat
    std::vector<WeightText> weights_for;  // heaviest first
    std::vector<WeightText> weights_against;
};

struct AnswerLine {
    std::string finding;
    std::string name;
    std::string answer;
    std::string origin;  // "told by the customer", "answered", "measured", "worked out"
    bool changeable = true;
    std::string before_work = {};  // told before a remedy that was tried since: "before the work"
};

struct RigLine {
    std::string id;
    std::string name;
    std::string ask;
    std::vector<ChoiceText> choices;
    MeasureField field;  // for quantities
    std::string value;   // as shown; "" unknown
    bool assumed = false;
    bool matters = false;  // decides on causes of what is complained of: asked for first
};

struct PlanLine {
    std::string text;  // "Prove: Sponge test at the wheel", "Then: Bleed lock to lock"
    double minutes = 0;
};

struct EventLine {
    enum class Kind { happened, took_back, brought_back };
    int sequence = 0;
    std::string at;
    std::string text;
    bool counts = true;  // false: taken back
    Kind kind = Kind::happened;
    std::string about = {};  // of what was taken or brought back: the text of that
};

struct JobPage {
    std::string title;  // "Job 12 · Grey Heron"
    std::string words;  // customer's words
    std::string phase;  // "Intake", "Finding the cause", "Proving it", "Putting it right", "Checks after",
                        // "Handed back"
    std::vector<RigLine> rig;
    std::vector<ChoiceText> histories;
    std::vector<ChoiceText> complaints;  // nearest to the customer's words first
    std::vector<ChoiceText> needs;       // chosen = available
    StepCard card;
    std::vector<std::string> also;  // other worthwhile steps, in words
    std::vector<AnswerLine> answers;
    std::vector<CauseLine> causes;     // the likely ones, at most 8, then those ruled out by rules
    std::vector<CauseLine> put_right;  // proved, and cured or helped: the boat is handed back with these
    std::string not_listed;            // "Something not on this list: 4 %"
    double not_listed_probability = 0;
    std::string several;  // "More than one fault: 12 %"; "" when under 5 %
    std::vector<PlanLine> plan;
    std::string minutes_left;  // "About 55 min until the boat is right"
    std::vector<SheetText> sheets;
    std::vector<std::string> stops;        // shown first, always
    std::vector<CautionText> cautions;     // raised by rules
    std::vector<std::string> deferrals;    // "Torque figures: the maker of the ram decides. ..."
    std::vector<std::string> assumptions;  // "Ram stroke taken as 9 in (not measured on this boat)"
    std::vector<std::string> trace;        // rules fired: "Because ...: ..."
    std::vector<EventLine> events;
    std::vector<std::string> notes;
    std::vector<std::string> photos;    // names with captions
    std::string apart;                  // not empty: this job went on differently on two computers
    std::vector<std::string> left_out;  // events today's knowledge does not understand, one sentence each
    std::string other_knowledge;        // not empty: the job was started with another knowledge than today's
    std::string conflict;
};

JobPage make_job_page(const PreparedKnowledge& prepared, const Job& job);

// The page's pieces that stand alone as well.
std::string source_text(const Knowledge& knowledge, const std::vector<Index>& sources);
std::string answer_text(const Knowledge& knowledge, Index finding, const Answer& answer,
                        UnitSystem units = UnitSystem::us);
std::string outcome_text(Outcome outcome);  // "cured", "better, not cured", "not cured"
SheetText sheet_text(const Knowledge& knowledge, const WorkedSheet& sheet, UnitSystem units = UnitSystem::us);
StepCard question_card(const PreparedKnowledge& prepared, const Job& job,
                       Index finding);  // any finding, at any time

}  // namespace hardover
