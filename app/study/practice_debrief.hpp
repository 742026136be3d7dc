// The debrief of a practice boat, in words: what was skipped first, then minutes, luck, habits and sureness,
// the job step by step, and three things to practise. Both front ends show the same. Pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/study/practice_marks.hpp"

namespace hardover::study::practice {

struct RankLine {
    std::string name;
    std::string percent;
    double probability = 0;
    bool true_fault = false;
};

struct DebriefStep {
    int number = 0;
    std::string did;      // "Feel of the wheel"
    std::string found;    // "Springy"
    std::string minutes;  // "2 min"
    double work = 0;      // minutes
    double avoidable = 0;
    double luck = 0;
    bool good = true;  // as good as the best
    std::string
        verdict;       // "As good as the best step." "Cost about 9 min more than the best step, on average."
    std::string best;  // what the best step was; "" when this was it
    std::string best_label;  // "Better" where it saves minutes or tells more, else "The expert's step"
    std::string why;         // why; "" when this was it
    std::vector<std::string> notes;  // suspicion, help taken, proof missing, cautions left out
    std::vector<RankLine> ranking;   // after it
};

// Cautions that were left out before one piece of work, a line each; in full the first time.
struct SkippedCautions {
    std::string work;  // "Step 3, Sponge test at the wheel"
    std::vector<std::string> cautions;
};

struct Habit {
    std::string name;  // "Proved before fitting"
    bool kept = true;
    std::string text;
};

struct Debrief {
    std::vector<SkippedCautions> skipped_cautions;  // to be shown first, always
    std::string headline;                           // "The boat is right after 1 h 25 min. ..."
    std::string truth;                              // what was wrong
    std::vector<std::string> minutes;               // where they went, sentence by sentence
    std::vector<Habit> habits;
    std::string sureness;
    std::string help;  // taken, by level
    std::vector<RankLine> ranking_at_start;
    std::vector<DebriefStep> steps;
    std::vector<std::string> practise;  // three
    Ended ended;
};
// `units`: in which figures are shown.
Debrief debrief(const Session& session, const Marks& marks, UnitSystem units = UnitSystem::us);
// Marks and tells, piece of work by piece of work. Nothing when it was told to stop.
std::optional<Debrief> marked_debrief(const Session& session, UnitSystem units, const Watched& watched);
// What the boat came to, without the words.
Ended ended_of(const Session& session, const Marks& marks);

// The minutes as the parts of one bar, in their order. Good luck is a part that was expected and spared.
struct MinutesPart {
    enum class Kind { work, spared, avoidable, bad_luck };
    Kind kind = Kind::work;
    double minutes = 0;
    std::string words;  // "12 min that better steps save on average: your mark"
};
std::vector<MinutesPart> minutes_bar(const Ended& ended);

// The same as JSON text, indented.
std::string debrief_json(const Session& session, const Debrief& debrief);

}  // namespace hardover::study::practice
