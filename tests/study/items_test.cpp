// Items made from the shipped knowledge: there are many, each is fair, and the reasoning agrees that what
// counts as wrong is wrong. Where the reasoning is asked, a sample is held against it: items_of(form, n)
// takes every k-th stem over the whole list, at most n; the forms that need no reasoning are held in full.
#include "app/study/items.hpp"
#include "app/jobs/boat_view.hpp"

#include <algorithm>
#include <cmath>
#include <set>

#include "app/study/item_text.hpp"
#include "app/study/marking.hpp"
#include "app/study/quiz.hpp"
#include "study/study_support.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover_tests;

namespace {

const Cause& cause_at(Index index) {
    return shipped().causes[static_cast<std::size_t>(index)];
}

double probability(const Assessment& assessment, Index cause) {
    for (const RankedCause& ranked : assessment.ranking) {
        if (ranked.cause == cause) return ranked.probability;
    }
    return 0;
}

const Option& right_of(const Item& item) {
    return *std::find_if(item.options.begin(), item.options.end(), [](const Option& o) { return o.right; });
}

// How often the cause gives the reading, straight from the knowledge; 0 where it does not show the finding.
double share_of(Index cause, Index finding, int reading) {
    for (const Shows& shows : cause_at(cause).shows) {
        if (shows.finding == finding) return shows.how_often[static_cast<std::size_t>(reading)];
    }
    return 0;
}

// The item's words in one line.
std::string words_of(const Item& item) {
    std::string words = item.question;
    for (const std::string& line : item.given) words += "|" + line;
    for (const Option& option : item.options) words += "|" + option.text;
    return words;
}

// The greatest probability of the cause over the readings of the findings that a check gets.
double most_after(const Facts& facts, Index cause, Index check) {
    double most = 0;
    for (const Index finding : shipped().checks[static_cast<std::size_t>(check)].gets) {
        const Finding& entry = shipped().findings[static_cast<std::size_t>(finding)];
        for (std::size_t r = 0; r < entry.readings.size(); ++r) {
            Facts after = facts;
            after.answers[finding] = Answer{static_cast<int>(r)};
            most = std::max(most,
                            believe(portraits().prepared(), after).causes[static_cast<std::size_t>(cause)]);
        }
    }
    return most;
}

}  // namespace

TEST_CASE("Every stem has an id of its own and the same list comes each time") {
    const auto stems = list_stems(portraits());
    const auto again = list_stems(Portraits(shipped()));
    REQUIRE(stems.size() == again.size());
    std::set<std::string> ids;
    for (std::size_t i = 0; i < stems.size(); ++i) {
        CHECK(stems[i].id == again[i].id);
        CHECK(ids.insert(stems[i].id).second);
    }
}

TEST_CASE("For every shipped cause there is a boat it can be on") {
    for (std::size_t c = 0; c < shipped().causes.size(); ++c) {
        const auto cause = static_cast<Index>(c);
        INFO(cause_at(cause).id);
        const std::optional<Facts> boat = portraits().boat_for(cause);
        REQUIRE(boat.has_value());
        CHECK(portraits().is_possible(*boat, cause));
    }
}

TEST_CASE("At least 600 distinct items can be reached, of every form") {
    const ItemCounts counts = count_items(portraits(), askable());
    CHECK(counts.made >= 600);
    for (const ItemFigure& form : counts.by_form) {
        INFO(form.name);
        CHECK(form.made > 0);
    }
    std::set<std::string> words;
    std::size_t items = 0;
    for (int form = 0; form < form_count; ++form) {
        for (const Item& item : items_of(static_cast<Form>(form), 100)) {
            ++items;
            INFO(item.stem.id);
            CHECK(words.insert(words_of(item)).second);
        }
    }
    CHECK(items >= 300);
}

TEST_CASE("Every item has one clear answer, a reason and a source, and its right answer is marked right") {
    for (int form = 0; form < form_count; ++form) {
        for (const Item& item : items_of(static_cast<Form>(form), 60)) {
            INFO(item.stem.id);
            CHECK_FALSE(item.question.empty());
            CHECK_FALSE(item.reason.empty());
            CHECK_FALSE(item.source.empty());
            std::set<std::string> texts;
            for (const Option& option : item.options) CHECK(texts.insert(option.text).second);
            const auto right = std::count_if(item.options.begin(), item.options.end(),
                                             [](const Option& option) { return option.right; });
            if (way_of(item.stem.form) == Way::single && !item.drawing) CHECK(right == 1);
            const auto marked = mark_answer(item, right_answer(item));
            REQUIRE_OK(marked);
            INFO(right_answer(item));
            CHECK(marked.value().mark == Approx(1));
        }
    }
}

TEST_CASE("The same seed makes the same item, and another seed other numbers") {
    std::size_t changed = 0;
    std::size_t figures = 0;
    for (const Item& item : items_of(Form::figure, 30)) {
        const auto same = make_item(portraits(), item.stem, 1);
        const auto other = make_item(portraits(), item.stem, 2);
        REQUIRE(same.has_value());
        CHECK(words_of(*same) == words_of(item));
        CHECK(same->figure->right == item.figure->right);
        ++figures;
        if (other && other->figure->right != item.figure->right) ++changed;
    }
    CHECK(changed * 10 >= figures * 8);
}

TEST_CASE("Given the signs shown, the wrong causes are clearly less probable than the right one") {
    for (const Form form : {Form::signs, Form::speaks}) {
        for (const Item& item : items_of(form, 200)) {
            INFO(item.stem.id);
            const Assessment assessment =
                assess(portraits().prepared(), item.facts, {.weights = false, .branches = false});
            const double right = probability(assessment, right_of(item).of);
            if (form == Form::signs) CHECK(right >= sure_enough);
            for (const Option& option : item.options) {
                if (option.right) continue;
                INFO(option.text);
                CHECK(probability(assessment, option.of) <= clearly_below * right);
                CHECK(probability(assessment, option.of) > 0);
            }
        }
    }
}

TEST_CASE("A wrong check never makes a cause as sure as its proof does") {
    for (const Item& item : items_of(Form::proof, 70)) {
        const Index cause = item.stem.first;
        Facts facts = portraits().boat_for(cause).value();
        const auto complaints = portraits().complaints_of(cause);
        if (!complaints.empty()) facts.complaints = {complaints.front()};
        const double proved = most_after(facts, cause, right_of(item).of);
        for (const Option& option : item.options) {
            if (option.right) continue;
            INFO(item.stem.id << ": " << option.text);
            CHECK(most_after(facts, cause, option.of) < proved);
        }
    }
}

TEST_CASE("Signs of a cause are what it shows at least every second time, wrong ones what it does not show") {
    for (const Item& item : items_of(Form::shows, 1000)) {
        for (const Option& option : item.options) {
            INFO(item.stem.id << ": " << option.text);
            const double share = share_of(item.stem.first, option.of, option.reading);
            if (option.right) {
                CHECK(share >= 0.499);
            } else {
                CHECK(share == 0);
            }
        }
    }
}

TEST_CASE("What tells two causes apart moves them against each other, the wrong findings hardly do") {
    for (const Item& item : items_of(Form::apart, 100)) {
        const Index one = item.stem.first;
        const Index other = item.stem.second;
        const auto ratio = [&](const Facts& facts) {
            const Belief belief = believe(portraits().prepared(), facts);
            return std::log((belief.causes[static_cast<std::size_t>(one)] + 1e-12) /
                            (belief.causes[static_cast<std::size_t>(other)] + 1e-12));
        };
        const double before = ratio(item.facts);
        const auto moves = [&](const Option& option) {
            double moved = 0;
            const auto readings = shipped().findings[static_cast<std::size_t>(option.of)].readings.size();
            for (std::size_t r = 0; r < readings; ++r) {
                Facts facts = item.facts;
                facts.answers[option.of] = Answer{static_cast<int>(r)};
                moved = std::max(moved, std::abs(ratio(facts) - before));
            }
            return moved;
        };
        for (const Option& option : item.options) {
            INFO(item.stem.id << ": " << option.text << " moves " << moves(option));
            if (option.right) {
                CHECK(moves(option) > std::log(2));
            } else {
                CHECK(moves(option) < std::log(1.6));
            }
        }
    }
}

TEST_CASE("A wrong remedy puts right nothing in the part that is at fault") {
    for (const Item& item : items_of(Form::remedy, 1000)) {
        const Cause& cause = cause_at(item.stem.first);
        for (const Option& option : item.options) {
            if (option.right) continue;
            for (const Cause& other : shipped().causes) {
                if (other.remedy == option.of) CHECK(other.part != cause.part);
            }
        }
    }
}

TEST_CASE("In an order, work before its caution is worth nothing and so is the reverse of all") {
    for (const Item& item : items_of(Form::order, 1000)) {
        INFO(item.stem.id);
        std::string answer = right_answer(item);
        std::string reversed(answer.rbegin(), answer.rend());
        CHECK(mark_answer(item, reversed).value().mark == 0);
        const auto caution = std::find_if(item.options.begin(), item.options.end(), [](const Option& option) {
            return option.text.rfind("Read the cautions", 0) == 0;
        });
        const char letter = static_cast<char>('a' + (caution - item.options.begin()));
        answer.erase(std::remove(answer.begin(), answer.end(), letter), answer.end());
        CHECK(mark_answer(item, answer + letter).value().mark == 0);
    }
}

TEST_CASE("The next step is the reasoning's own and a wrong one costs clearly more minutes") {
    for (const Item& item : items_of(Form::next, 100)) {
        INFO(item.stem.id);
        const auto steps = steps_by_minutes(portraits().prepared(), item.facts);
        CHECK(right_of(item).of == steps.front().index);
        const double least = steps.front().minutes + steps.front().minutes_after;
        for (const Option& option : item.options) {
            for (std::size_t s = 1; s < steps.size() && !option.right; ++s) {
                if (steps[s].index != option.of || option.why.rfind("It takes", 0) != 0) continue;
                CHECK(steps[s].minutes + steps[s].minutes_after >= least + clearly_dearer_minutes);
            }
        }
    }
}

TEST_CASE("A caution that the work itself carries is never a wrong choice") {
    for (const Item& item : items_of(Form::caution, 10000)) {
        const auto entry = static_cast<std::size_t>(item.stem.first);
        const auto& cautions =
            item.stem.third == 0 ? shipped().checks[entry].cautions : shipped().remedies[entry].cautions;
        for (const Option& option : item.options) {
            INFO(item.stem.id << ": " << option.text);
            const bool carried = std::find(cautions.begin(), cautions.end(), option.of) != cautions.end();
            CHECK(carried == option.right);
        }
    }
}

TEST_CASE("A known slip in a figure is called by its name and is never marked right") {
    std::set<std::string> named;
    for (const Item& item : items_of(Form::figure, 1000)) {
        for (const Slip& slip : item.figure->slips) {
            INFO(item.stem.id << ": " << slip.name);
            const double off = std::abs(slip.value - item.figure->right);
            CHECK(off > 2 * item.figure->tolerance);
            named.insert(slip.name);
        }
    }
    for (const char* slip : {"the diameter taken for the radius", "the rod's area forgotten",
                             "millimetres and inches mixed up", "one ram reckoned for both"}) {
        INFO(slip);
        CHECK(std::any_of(named.begin(), named.end(),
                          [&](const std::string& name) { return name.find(slip) != std::string::npos; }));
    }
}

// ISO 80000-1 allows both signs, from memory.
TEST_CASE("A figure typed with a decimal comma is marked as with a point, and a doubtful comma is refused") {
    int with_comma = 0;
    for (const Item& item : items_of(Form::figure, 1000)) {
        std::string answer = right_answer(item);
        const Marked point = mark_answer(item, answer).value();
        const std::size_t at = answer.find('.');
        if (at == std::string::npos) continue;
        INFO(item.stem.id << ": " << answer);
        answer[at] = ',';
        const auto comma = mark_answer(item, answer);
        if (!comma) {
            CHECK(comma.error().text().find("a point, not a comma") != std::string::npos);
            continue;
        }
        ++with_comma;
        CHECK(comma.value().mark == point.mark);
    }
    CHECK(with_comma > 10);
}

TEST_CASE("No figure is asked for that stands among those given, in any units") {
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
        for (const Stem& stem : list_stems(portraits())) {
            if (stem.form != Form::figure) continue;
            const auto item = make_item(portraits(), stem, 9, units);
            if (!item || item->figure->given_in) continue;  // a conversion is asked in another unit
            for (const std::string& line : item->given) {
                const auto given = read_quantity(line.substr(line.find(": ") + 2), "");
                if (!given || !(given.value().dimension == item->figure->unit.dimension)) continue;
                INFO(stem.id << ": " << line << "; " << item->question);
                CHECK(std::abs(given.value().value - item->figure->right) > 0.98 * item->figure->tolerance);
            }
        }
    }
}

TEST_CASE(
    "A place on the drawing is right where the cause sits, and no part of the same system is a wrong one") {
    const std::vector<Item> items = items_of(Form::place, 40);
    REQUIRE(items.size() >= 10);
    for (const Item& item : items) {
        INFO(item.stem.id);
        REQUIRE(item.drawing.has_value());
        const Cause& cause = shipped().causes[item.stem.first];
        const auto places = parts_of_cause(shipped(), *item.drawing, cause.id);
        for (const Option& option : item.options) {
            CHECK(option.drawn != "scale");  // the bar that is drawn beside the boat
            const drawing::Part* part = drawing::find_part(*item.drawing, option.drawn);
            REQUIRE(part != nullptr);
            const bool there = std::find(places.begin(), places.end(), part->id) != places.end();
            CHECK(option.right == there);
            if (!option.right) CHECK(part->place != shipped().parts[cause.part].id);
        }
    }
}

// Factors: NIST SP 811, appendix B.
TEST_CASE("A conversion asks for another unit than the one given, in either shop") {
    const std::vector<std::string> conversions = {
        "length_mm",  "pressure_bar", "pressure_kpa",    "torque_nm", "torque_inch", "force_n", "volume_ml",
        "volume_gal", "volume_in3",   "displacement_ml", "flow_l",    "speed_mph",   "speed_ms"};
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
        for (const std::string& result : conversions) {
            INFO(result << (units == UnitSystem::us ? ", US" : ", metric"));
            const auto stems = list_stems(portraits());
            const auto stem = std::find_if(stems.begin(), stems.end(),
                                           [&](const Stem& s) { return s.id == "figure/units/" + result; });
            REQUIRE(stem != stems.end());
            const auto item = make_item(portraits(), *stem, 3, units);
            REQUIRE(item.has_value());
            REQUIRE(item->given.size() == 2);
            CHECK(item->question.find(" in " + item->figure->unit.name + "?") != std::string::npos);
            const std::string given = item->given[1].substr(item->given[1].find(": ") + 2);
            REQUIRE(item->figure->given_in.has_value());
            CHECK(item->figure->unit.factor != item->figure->given_in->factor);
            CHECK(mark_answer(*item, right_answer(*item)).value().right);
            const Marked as_given = mark_answer(*item, given).value();
            CHECK(as_given.mark == 0);
            CHECK(as_given.why_not == "It was given in " + item->figure->given_in->name + " already.");
        }
    }
    const auto stems = list_stems(portraits());
    const auto length = std::find_if(stems.begin(), stems.end(),
                                     [](const Stem& s) { return s.id == "figure/units/length_mm"; });
    const auto item = make_item(portraits(), *length, 3);
    const double inches = read_quantity(item->given[1].substr(8)).value().value / 0.0254;
    CHECK(mark_answer(*item, std::to_string(inches * 25.4) + " mm").value().mark == 1);
    CHECK(mark_answer(*item, std::to_string(inches * 2.54) + " cm").value().mark == 1);
    CHECK(mark_answer(*item, std::to_string(inches) + " mm").value().why_not ==
          "That looks like millimetres and inches mixed up.");
}

TEST_CASE("A figure asked in a metric shop is drawn, shown and right in metric units") {
    int metric = 0;
    for (const Stem& stem : list_stems(portraits())) {
        if (stem.form != Form::figure) continue;
        const auto item = make_item(portraits(), stem, 1, UnitSystem::metric);
        if (!item || item->figure->given_in) continue;
        INFO(stem.id);
        CHECK(item->figure->unit.name == shown_unit(item->figure->unit, UnitSystem::metric).name);
        for (const std::string& line : item->given) CHECK(line.find(" in^") == std::string::npos);
        // The window shows it too: the worksheet's name, no command for a terminal.
        CHECK(item->reason.find("hardover ") == std::string::npos);
        CHECK(item->reason.find("Worked out by the worksheet “") != std::string::npos);
        const auto marked = mark_answer(*item, right_answer(*item));
        REQUIRE_OK(marked);
        CHECK(marked.value().mark == 1);
        metric += item->figure->unit.name == "mm" ? 1 : 0;
    }
    CHECK(metric >= 5);
}

TEST_CASE("How an item is to be answered is said once") {
    for (const Form form : {Form::figure, Form::shows, Form::signs, Form::order}) {
        for (const Item& item : items_of(form, 3)) {
            const ItemText text = item_text(shipped(), item);
            const std::string all = text.question + " " + text.how;
            INFO(all);
            CHECK(all.find("igure", all.find("igure") + 1) == std::string::npos);
            CHECK(all.find("that apply", all.find("that apply") + 1) == std::string::npos);
            CHECK((text.how.empty() == (form == Form::figure)));
        }
    }
}
