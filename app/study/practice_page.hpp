// A practice boat as both front ends show it, already in words: what is known, what can be done, the help
// that stands there unasked, and what help was asked for. Pure: made from a session.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/jobs/page.hpp"
#include "app/study/practice_session.hpp"

namespace hardover::study::practice {

// The program's next step, in words.
struct Advice {
    std::string heading;    // "Sponge test at the wheel"
    std::string eyebrow;    // "Check · about 5 min · tape"
    std::string why;        // its reason
    std::string what_then;  // "If springy (62 %): Air left in the oil 81 %. ..."; may be empty
    PracticeEvent event;    // what to apply to do it
};
Advice next_step_advice(const PreparedKnowledge& prepared, const Facts& facts);

// Minutes that were spent, whole ones, as a clock on the wall tells them: "2 h 37 min". What is expected or
// might have been saved is only about so long (minutes_text).
std::string spent_text(double minutes);

// Help of level 1 (a nudge), 2 (what to compare) or 3 (the step with its reason).
std::vector<std::string> hint_text(const Session& session, int level);
std::string hint_name(int level);   // "a nudge", ...
std::string hint_title(int level);  // "A nudge", ...

struct FindingItem {
    std::string id;
    std::string name;
    std::string ask;
    std::string minutes;  // "2 min", "8 min with setting up"
    std::string answer;   // as answered since the last remedy, or ""
    std::string check;    // name of the check that gets it; "" where a look or a question will do
};
struct FindingGroup {
    std::string id;  // of the part
    std::string name;
    std::vector<FindingItem> items;
};
struct NamedItem {
    std::string id;
    std::string name;
    std::string about;  // a sentence; may be empty
    std::string part;
};

// One piece of work that was done.
struct WorkLine {
    std::string text;   // "Feel of the wheel"
    std::string found;  // "Springy, it gives and comes back"; "not cured: the boat is back"
    std::string minutes;
};

// What belongs to a piece of work that is about to be done.
struct WorkCard {
    std::string heading;
    std::string ask;  // the question itself, of a finding
    std::string minutes;
    std::vector<std::string> steps, tools, parts, figures, after;
    std::string source;
};
WorkCard work_card(const Session& session, const PracticeEvent& event);

// Which cautions belong before a piece of work. Where `pick` is set the apprentice has to say it, else they
// stand there to be acknowledged. Wrong ones among the options cost nothing: who is too careful is safe.
struct CautionQuestion {
    std::string work;  // for Precautions
    std::string ask;
    bool pick = false;
    std::vector<ChoiceText> options;    // by id; chosen = belongs
    std::vector<CautionText> cautions;  // those that belong, in full: always shown before the work
};
std::vector<CautionQuestion> caution_questions(const Session& session, const PracticeEvent& event);
// What was left out, in a sentence; "" when nothing was.
std::string caution_feedback(const CautionQuestion& question, const Precautions& said);

struct Page {
    std::string title;  // "Practice boat 7 · level 2, everyday fault, any rig"
    std::string about_level;
    std::string customer;  // “...”
    std::string complaint;
    std::string history;
    std::vector<SheetLine> rig;     // what the yard's sheet says of the boat
    std::string phase;              // "Finding the cause", "Checks after", "Handed over"
    std::string clock;              // "24 min so far"
    std::string guidance;           // how much help stands here
    std::vector<std::string> help;  // unasked
    std::optional<Advice> led;      // the step the expert takes now; empty: the apprentice's own
    std::vector<WorkLine> work;
    std::vector<std::string> statements;  // "Air left in the oil, 70 in 100"
    std::vector<FindingItem> near;        // worth a look with such a complaint, in knowledge order
    std::vector<FindingGroup> parts;      // everything that can be looked at on this rig
    std::vector<NamedItem> causes;        // possible on this rig, by part
    std::vector<NamedItem> remedies;      // of these causes
    std::vector<SheetText> sheets;        // worksheets that can be worked out now
    std::vector<std::string> after;       // checks before handing over; only when the boat is right
};
// `units`: in which figures are shown.
Page make_page(const Session& session, UnitSystem units = UnitSystem::us);

// What the last event did, in words: for a prove, what it showed and whether it is proved.
std::vector<std::string> what_happened(const Session& session, UnitSystem units = UnitSystem::us);

// What a piece of work gave, in words.
WorkLine work_line(const Session& session, const Work& work, UnitSystem units = UnitSystem::us);

}  // namespace hardover::study::practice
