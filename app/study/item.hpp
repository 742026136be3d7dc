// One question of a quiz, made from the knowledge: what is asked, what is right, why, and by which source.
// Plain values in words; may not know learners or screens.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/drawing/drawing.hpp"
#include "app/study/scoring.hpp"
#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover::study {

// What an item is about. Its name in words and in ids: form_names.
enum class Form {
    signs,    // which cause fits these signs
    speaks,   // which cause one reading speaks for
    shows,    // which readings a cause usually shows (several right)
    apart,    // which finding tells two causes apart
    proof,    // which check proves a cause
    remedy,   // what puts a cause right
    order,    // in which order to work
    next,     // which step next, by expected minutes
    caution,  // which caution is missing
    figure,   // a worksheet's result, with its unit
    place,    // where on the drawing of the rig a cause sits (any of its places is right)
    // Written by hand:
    method,    // how to go about the work
    stopping,  // when to stop
    telling,   // what to say to the owner
    deciding   // which paper decides
};
inline constexpr int form_count = 15;
const char* form_id(Form form);    // "signs"
const char* form_name(Form form);  // "Cause from signs"

enum class Way { single, several, order, figure };  // how it is answered
Way way_of(Form form);

// A possible item: cheap to list, stable over runs. `first`, `second`, `third` index what the form needs.
struct Stem {
    std::string id;         // "signs/air_in_oil/wander"
    std::string statement;  // what is learned; several items may share one: "signs/air_in_oil"
    Form form = Form::signs;
    Index first = none;
    Index second = none;
    int third = -1;
    std::vector<Index> complaints;  // topics
    Index part = none;              // topic; none: fitting out
    int authored = -1;              // place among the items written by hand; -1: made
};

struct Option {
    std::string text;
    bool right = false;
    std::string why{};  // why it is wrong, where the knowledge tells; may be empty
    Index of = none;    // the cause, finding, check, remedy or caution it stands for
    int reading = -1;
    std::string drawn{};  // part of the drawing it stands for
};

// A figure one gets by a known mistake.
struct Slip {
    std::string name;      // "the diameter taken for the radius"
    double value = 0;      // SI
    bool of_unit = false;  // only the unit is wrong
};

struct Figure {
    Unit unit;
    double right = 0;      // SI
    double tolerance = 0;  // SI
    std::vector<Slip> slips;
    std::optional<Unit> given_in;  // a conversion: the unit it is told in, which is no answer
};

struct Item {
    Stem stem;
    std::vector<std::string> given;  // lines before the question
    UnitSystem units = UnitSystem::us;
    Facts facts;  // what `given` tells, as the reasoning takes it; signs, speaks, next
    std::string question;
    std::vector<Option> options;  // order: in the order shown; right order by `rules`
    std::vector<Before> rules;    // order: indices into `options`
    std::optional<Figure> figure;
    std::optional<drawing::Drawing> drawing;
    std::vector<std::string> cautions;  // names, of the work the item speaks of
    std::string reason;
    std::string source;
};

// "A" for the first option.
std::string option_letter(std::size_t option);

// Chance of a right answer by guessing.
double guess_chance(const Item& item);

// The right answer as a learner would type it: "b", "a c", "b a c", "12.5 in".
std::string right_answer(const Item& item);

}  // namespace hardover::study
