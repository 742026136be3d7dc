// What a session on a practice boat was worth, in minutes, against the program's own way on the same boat.
//
// Of each piece of work: V is what the program expects it to take from there until the boat is right; Q is
// that if this piece comes first, over all it could have shown. avoidable = Q(done) - Q(best), not below 0;
// luck = minutes + V(after) - V(before) - avoidable. So, exactly, whatever V and Q are:
//   minutes + V(end) - V(start) = sum of avoidable + sum of luck.
// Pure: knows no words and no records.
#pragma once

#include <optional>
#include <vector>

#include "app/jobs/watched.hpp"
#include "app/study/practice_session.hpp"
#include "rules/reasoning/assessment.hpp"

namespace hardover::study::practice {

// A step within this many minutes, or this share of what is left, of the best is as good as the best.
inline constexpr double as_good_minutes = 1;
inline constexpr double as_good_share = 0.02;
// A remedy that costs more than this over the best step, while something is still worth finding out, came too
// early. So does any call for help while something is still worth doing, whatever it costs: the fault stays.
inline constexpr double premature_minutes = 2;
// Bits below which an answer tells nothing (redundant check).
inline constexpr double tells_nothing_bits = 0.01;

// The minutes of one piece of work over what was expected, split exactly. `over_best`: Q(done) - Q(best).
struct Split {
    double avoidable = 0;
    double luck = 0;  // above 0 is bad luck
};
Split split_minutes(double minutes, double left_before, double left_after, double over_best);

struct WorkMark {
    NextStep best;           // the program's next step before it
    bool is_best = false;    // this was it
    double left_before = 0;  // V
    double left_after = 0;
    double q = 0;  // Q; equal to q_best where this was the best step
    double q_best = 0;
    double avoidable = 0;  // minutes
    double luck = 0;       // minutes; above 0 is bad luck
    double bits = 0;       // told about the causes, on average over what it could have shown; -1: not asked
    // Idle: could not have told anything, or changed what was done next. Never the proof of a cause that was
    // said before.
    bool told_nothing = false;
    bool unproved = false;      // remedy: none of its causes was proved
    bool premature = false;     // remedy, or a call for help: too early
    bool best_is_idle = false;  // the best step could not have changed what is done next either
    // After it: the first causes with their probability, and that of something not listed.
    std::vector<std::pair<Index, double>> leading;
    double not_listed = 0;
};

struct Marks {
    std::vector<WorkMark> work;  // as Session::work()
    double minutes = 0;
    double expected = 0;       // V at the start
    double expected_left = 0;  // V at the end: 0 when the boat is right or help was called
    double avoidable = 0;
    double luck = 0;
    double over() const { return minutes + expected_left - expected; }  // = avoidable + luck
    double expert = 0;              // minutes the expert takes on the same boat; only from mark()
    bool expert_put_right = false;  // the expert did not call for help; only from mark()
    std::vector<std::pair<Index, double>> leading_at_start;
    int told_nothing = 0;
    int unproved = 0;          // remedies without proof where the program would not have done the same
    int wrong_remedies = 0;    // whose cause was not there
    int cautions_skipped = 0;  // cautions not named before the work
    int statements = 0;
    double brier = 0;  // mean over the statements; 0.25 is worth nothing
};

// Every piece of work that is not the best costs some ten assessments.
Marks mark(const Session& session);
// The same piece of work by piece of work. Nothing when it was told to stop.
std::optional<Marks> mark(const Session& session, const Watched& watched);
// The same without the expert's own work on the boat.
Marks marks_alone(const Session& session);

// How many of the leading causes are kept.
inline constexpr std::size_t most_leading = 4;

// The finding, remedy or call for help that a next step begins with, as an event.
PracticeEvent event_of_step(const Knowledge& knowledge, const NextStep& step);

}  // namespace hardover::study::practice
