// What a class's results come to, as plain numbers: learners, items, topics, the reliability of a set, which
// causes are taken for which, minutes on practice boats through the term. Pure; knows no words but the names
// of the knowledge, no files and no screens.
//
// A learner's first answer to an item counts; an answer is right from a mark of 0.8. Places that two
// different records claim (disputed) are left out and counted. Every figure says on how many answers it
// rests, and figures of the class are empty with fewer learners than `fewest_learners`.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/classroom/results.hpp"
#include "app/study/item_analysis.hpp"
#include "app/study/rasch.hpp"
#include "app/study/scoring.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover::classroom {

// What practice boats came to, added up. Minutes over the best are those beyond what the expert's way would
// be expected to take; they are the minutes lost by choices and those lost (or won, below 0) by luck.
struct BoatFigures {
    int boats = 0;
    int cured = 0;
    double minutes = 0;
    double avoidable = 0;  // minutes lost by choices
    double luck = 0;       // minutes
    int hints = 0;
    int unproved = 0;  // remedies without proof
    int cautions_skipped = 0;
    double over_best() const { return avoidable + luck; }
    void add(const study::practice::Ended& ended);
};

// One practice boat of a learner.
struct BoatPoint {
    int day = 0;
    double avoidable = 0;
    double luck = 0;
};

struct LearnerFigures {
    std::string seat;
    std::string name;  // may be empty
    std::string group;
    int answers = 0;  // all of them
    int items = 0;    // answered at least once
    int right = 0;    // of these, by the first answer
    std::optional<study::Interval> right_95;
    study::Estimate ability;      // Rasch, logits; error 0: no answer
    study::Calibration sureness;  // over all answers with a stated sureness; answers 0: none
    BoatFigures boats;
    std::vector<BoatPoint> through_term;  // the first boat first
};

enum class ItemVerdict {
    fine,
    key_suspect,  // the marking may be wrong
    everyone_right,
    everyone_wrong,
    too_hard,
    too_easy,
    weak,    // does not tell strong from weak
    too_few  // answers, to say anything
};
const char* verdict_id(ItemVerdict verdict);  // "key_suspect"

// One choice of an item and who took it: shares of the learners, of the best 27 % and of the worst 27 %.
struct ChoiceFigures {
    std::string text;
    bool right = false;
    int taken = 0;
    double strong = 0;
    double weak = 0;
};

struct ItemFigures {
    std::string item;  // id
    std::string name;  // "Cause from signs: Air left in the oil"
    std::string form;  // id
    int learners = 0;
    int right = 0;
    std::optional<double> share_right;  // this and what follows: empty with too few learners
    std::optional<study::Interval> share_95;
    std::optional<study::Estimate> difficulty;  // Rasch, logits
    std::optional<double> discrimination;       // share right of the best 27 % less that of the worst
    std::optional<double> with_rest;            // correlation with the rest of the answers
    std::optional<study::Interval> with_rest_95;
    std::optional<double> reliability_without;  // KR-20 of the whole without this item
    std::vector<ChoiceFigures> choices;  // single choice, all asked in the same version; the right ones first
    ItemVerdict verdict = ItemVerdict::too_few;
    std::string why;  // a sentence
    bool discriminates() const { return verdict == ItemVerdict::fine; }
};

enum class TopicKind { complaint, part, form };
struct TopicFigures {
    TopicKind kind = TopicKind::complaint;
    std::string id;  // "" of kind part: fitting out
    std::string name;
    int learners = 0;
    int answers = 0;  // first ones
    int right = 0;
    std::optional<double> share_right;
    std::optional<study::Interval> share_95;
};

// Of one set, or of all answers together. It rests on a table without gaps: learners and items are left out,
// the one with most gaps first, until none is left.
struct ReliabilityFigures {
    std::string set;  // "": everything together
    int learners = 0;
    int items = 0;
    int learners_left_out = 0;
    int items_left_out = 0;
    std::optional<double> mean;       // items right
    std::optional<double> deviation;  // of items right, divisor N - 1
    std::optional<study::Reliability> kr20;
};

// Answers and boats on which a cause was taken for another.
struct Confusion {
    std::string right;  // cause ids
    std::string chosen;
    std::string right_name;
    std::string chosen_name;
    int answers = 0;
    int boats = 0;
    int learners = 0;  // who did so
    int of = 0;        // answers and boats on which the cause was right
    int times() const { return answers + boats; }
};

// How often each cause was chosen where each was right: rows right, columns chosen. Of the causes in the
// worst confusions only.
struct CauseTable {
    std::vector<std::string> causes;  // ids
    std::vector<std::string> names;
    std::vector<std::vector<int>> times;
};

// Practice boats of a stretch of the term, means per boat. Days are counted from 1970-01-01.
struct TermPeriod {
    int first_day = 0;
    int last_day = 0;
    int boats = 0;
    int learners = 0;
    std::optional<double> avoidable;  // minutes; empty with too few learners
    std::optional<double> luck;
};

struct ClassFigures {
    std::string name;
    int seats = 0;
    int learners = 0;  // with results
    int answers = 0;
    int boats = 0;
    int disputed = 0;   // results left out
    bool rough = true;  // too few learners for difficulties and abilities to be more than a hint
    std::optional<double> share_right;  // of the first answers
    std::optional<study::Calibration> sureness;
    BoatFigures all_boats;
    std::vector<LearnerFigures> by_learner;  // by seat; those with results
    std::vector<ItemFigures> by_item;        // by id
    std::vector<TopicFigures> by_topic;  // complaints, parts, forms in the order of the knowledge; those that
                                         // a quiz names come first
    std::size_t topics_named = 0;        // how many these are
    bool all_topics = false;             // some quiz is about all there is
    ReliabilityFigures whole;
    std::vector<ReliabilityFigures> by_set;  // by id; empty when there is one set only
    std::vector<Confusion> confusions;       // the most frequent first
    CauseTable table;
    bool by_week = false;          // periods are weeks from Monday, else days
    std::vector<TermPeriod> term;  // those with boats
};

ClassFigures make_figures(const ClassResults& results, const Knowledge& knowledge);

// Items' ids in words. Keeps the knowledge by reference.
class ItemNames {
  public:
    explicit ItemNames(const Knowledge& knowledge) : knowledge_(knowledge) {}
    // "Cause from signs: Air left in the oil, Wanders"; of an item written by hand its question, shortened.
    // An id of no item stays as it is.
    std::string of(const std::string& item);

  private:
    const Knowledge& knowledge_;
    std::optional<std::map<std::string, std::string>> asked_;  // by id; read when the first is met
};

}  // namespace hardover::classroom
