// A figure with its unit: fresh numbers for a worksheet, the right result, and the results of known mistakes,
// all worked out by the worksheet itself.
#include <cmath>
#include <functional>

#include "app/jobs/page.hpp"
#include "app/study/items_parts.hpp"
#include "rules/reasoning/worksheets.hpp"

namespace hardover::study {

namespace {

constexpr double close_enough = 0.02;  // share of the result that a right answer may be off
constexpr int draws = 20;

// Lengths in inches are read to the next 1/16 in: half of that is no mistake. SI.
double half_mark(const Unit& unit) {
    return unit.name == "in" || unit.name == "ft" ? 0.0254 / 32 : 0;
}

struct Sheet {
    const Knowledge& knowledge;
    Index worksheet;
    std::size_t result;

    const Worksheet& entry() const { return at(knowledge.worksheets, worksheet); }

    // The result in SI, without value when the worksheet does not hold for these inputs.
    std::optional<double> work(const std::vector<Value>& inputs) const {
        const WorkedSheet sheet = work_out_as_given(knowledge, worksheet, inputs);
        if (!sheet.refused.empty()) return std::nullopt;
        const auto* quantity = std::get_if<Quantity>(&sheet.results[result]);
        if (quantity == nullptr || !std::isfinite(quantity->value)) return std::nullopt;
        return quantity->value;
    }
};

bool names(const WorksheetInput& input, const std::string& word) {
    return input.id.find(word) != std::string::npos || input.name.find(word) != std::string::npos;
}

bool is_length(const WorksheetInput& input) {
    return input.choices.empty() && input.unit.dimension == Dimension{1, 0, 0, 0, 0};
}

// The example value moved by up to a quarter and rounded as it would be read off a tape or a gauge.
Value drawn(const WorksheetInput& input, UnitSystem units, Chance& chance) {
    if (!input.choices.empty()) return Choice{{input.example_choice}};
    const Unit unit = shown_unit(input.unit, units);
    const double example = in_unit(*input.example, unit);
    if (input.unit.name == "count" && example == std::floor(example) && example <= 4) return *input.example;
    const double moved = example * (0.75 + 0.5 * chance.share());
    double step = std::pow(10.0, std::floor(std::log10(std::max(std::abs(moved), 1e-9))) - 1);
    if (unit.name == "in") step = std::abs(moved) < 2 ? 1.0 / 16 : 1.0 / 8;
    Quantity value = quantity_in(std::round(moved / step) * step, unit);
    value.dimension = input.unit.dimension;
    return value;
}

// Names that lean on the result before, and figures that are rounded up by hand.
bool can_stand_alone(const WorksheetOutput& output) {
    return output.name.rfind("The same", 0) != 0 && output.name.find("whole number") == std::string::npos;
}

std::vector<Value> examples(const Worksheet& sheet) {
    std::vector<Value> values;
    for (const WorksheetInput& input : sheet.inputs) {
        if (!input.choices.empty()) {
            values.emplace_back(Choice{{input.example_choice}});
        } else {
            values.emplace_back(*input.example);
        }
    }
    return values;
}

bool all_have_examples(const Worksheet& sheet) {
    return std::all_of(sheet.inputs.begin(), sheet.inputs.end(), [](const WorksheetInput& input) {
        return input.choices.empty() ? input.example.has_value() : !input.example_choice.empty();
    });
}

// Inputs the result depends on: those that move it when they move.
std::vector<bool> that_matter(const Sheet& sheet, const std::vector<Value>& inputs, double right) {
    std::vector<bool> matter(inputs.size(), false);
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const auto* quantity = std::get_if<Quantity>(&inputs[i]);
        for (const Word& word : sheet.entry().inputs[i].choices) {
            std::vector<Value> moved = inputs;
            moved[i] = Choice{{word.id}};
            matter[i] = matter[i] || sheet.work(moved) != right;
        }
        if (quantity == nullptr) continue;
        for (const double factor : {1.01, 0.99}) {
            std::vector<Value> moved = inputs;
            Quantity other = *quantity;
            other.value *= factor;
            moved[i] = other;
            const std::optional<double> result = sheet.work(moved);
            if (!result || std::abs(*result - right) > 1e-9 * std::abs(right)) matter[i] = true;
        }
    }
    return matter;
}

// Results of mistakes about inputs: each changes the inputs it names and works the sheet again.
struct InputSlip {
    const char* name;
    std::function<bool(const WorksheetInput&)> applies;
    double factor;
};
const std::vector<InputSlip>& input_slips() {
    const auto diameter = [](const WorksheetInput& input) {
        return is_length(input) && (names(input, "bore") || names(input, "rod") || names(input, "diameter") ||
                                    names(input, "Diameter"));
    };
    const auto rod = [](const WorksheetInput& input) {
        return is_length(input) && input.id.rfind("rod", 0) == 0 && !names(input, "shown");
    };
    const auto rams = [](const WorksheetInput& input) { return input.id == "rams"; };
    const auto stroke = [](const WorksheetInput& input) {
        return is_length(input) && names(input, "stroke");
    };
    static const std::vector<InputSlip> slips = {
        {"the diameter taken for the radius", diameter, 2},
        {"the radius taken for the diameter", diameter, 0.5},
        {"the rod's area forgotten", rod, 1e-4},
        {"one ram reckoned for both", rams, 0.5},
        {"both rams reckoned for one", rams, 2},
        {"half the stroke taken", stroke, 0.5},
        {"the stroke taken both ways", stroke, 2},
    };
    return slips;
}

// The number of the right result, read in the unit it is often mixed up with.
struct UnitSlip {
    const char* name;
    const char* unit;
    const char* other;
};
constexpr UnitSlip unit_slips[] = {
    {"millimetres and inches mixed up", "in", "mm"},
    {"cubic centimetres and cubic inches mixed up", "in^3", "cm^3"},
    {"psi and bar mixed up", "psi", "bar"},
    {"newtons and pounds of force mixed up", "lbf", "N"},
    {"newton metres and foot pounds mixed up", "lbf·ft", "N·m"},
    {"foot pounds and inch pounds mixed up", "lbf·ft", "lbf·in"},
    {"degrees and radians mixed up", "deg", "rad"},
    {"litres and gallons mixed up", "gal/min", "L/min"},
    {"millilitres and fluid ounces mixed up", "floz", "mL"},
};

// Slips that come to the same figure share a line; one that comes to nothing tells nothing.
void add_slip(std::vector<Slip>& slips, Slip slip, double tolerance) {
    if (std::abs(slip.value) <= tolerance) return;
    for (Slip& there : slips) {
        if (std::abs(there.value - slip.value) > 2 * tolerance) continue;
        there.name += ", or " + slip.name;
        return;
    }
    slips.push_back(std::move(slip));
}

std::vector<Slip> slips_of(const Sheet& sheet, const std::vector<Value>& inputs, const Unit& unit,
                           double right, double tolerance) {
    std::vector<Slip> slips;
    for (const InputSlip& slip : input_slips()) {
        std::vector<Value> wrong = inputs;
        bool changed = false;
        for (std::size_t i = 0; i < inputs.size(); ++i) {
            auto* quantity = std::get_if<Quantity>(&wrong[i]);
            const bool is_count = quantity != nullptr && quantity->dimension.is_number();
            if (quantity == nullptr || !slip.applies(sheet.entry().inputs[i])) continue;
            if (is_count && quantity->value * slip.factor < 1) continue;
            quantity->value *= slip.factor;
            changed = true;
        }
        const std::optional<double> result = changed ? sheet.work(wrong) : std::nullopt;
        if (result && std::abs(*result - right) > 1e-9 * std::abs(right)) {
            add_slip(slips, {slip.name, *result, false}, tolerance);
        }
    }
    for (const UnitSlip& slip : unit_slips) {
        const Result<Unit> one = find_unit(slip.unit);
        const Result<Unit> other = find_unit(slip.other);
        if (!one || !other) continue;
        if (unit.name != one.value().name && unit.name != other.value().name) continue;
        const double factor = one.value().factor / other.value().factor;
        add_slip(slips, {slip.name, right * factor, true}, tolerance);
        add_slip(slips, {slip.name, right / factor, true}, tolerance);
    }
    const bool is_ratio = std::abs(right) > 0.1 && std::abs(right) < 10;
    if (unit.dimension.is_number() && is_ratio) {
        add_slip(slips, {"the ratio turned upside down", 1 / right, false}, tolerance);
    }
    return slips;
}

// A slip that lands where the right answer is would be marked right: such numbers are not asked.
bool clashes(const std::vector<Slip>& slips, double right, double tolerance) {
    return std::any_of(slips.begin(), slips.end(),
                       [&](const Slip& slip) { return std::abs(slip.value - right) <= 2 * tolerance; });
}

// A worksheet that only says an input in another unit: the input, else `none`.
Index said_again(const Worksheet& sheet, const WorksheetOutput& output) {
    for (std::size_t i = 0; i < sheet.inputs.size(); ++i) {
        const bool is_it = output.formula.text() == sheet.inputs[i].id;
        if (is_it && sheet.inputs[i].choices.empty()) return static_cast<Index>(i);
    }
    return none;
}

// A conversion is asked in the worksheet's unit, or in that of its input where the shop's is the asked one.
// Empty when all three are the same.
std::optional<Unit> asked_of_conversion(const Unit& input, const Unit& output, UnitSystem units) {
    const double told = shown_unit(input, units).factor;
    if (output.factor != told) return output;
    if (input.factor != told) return input;
    return std::nullopt;
}

// A figure that stands among those given asks nothing.
bool is_given(const std::vector<Value>& inputs, const Unit& unit, double right, double tolerance) {
    return std::any_of(inputs.begin(), inputs.end(), [&](const Value& input) {
        const auto* quantity = std::get_if<Quantity>(&input);
        return quantity != nullptr && quantity->dimension == unit.dimension &&
               std::abs(quantity->value - right) <= tolerance;
    });
}

std::string input_line(const WorksheetInput& input, const Value& value, UnitSystem units) {
    if (const auto* choice = std::get_if<Choice>(&value)) {
        for (const Word& word : input.choices) {
            if (word.id == choice->possible.front()) return input.name + ": " + word.text;
        }
        return "";
    }
    return input.name + ": " + show(std::get<Quantity>(value), input.unit, units, 4);
}

std::string question_of(const std::string& name, const Figure& figure) {
    if (figure.given_in) return name + " in " + figure.unit.name + "? Give the figure with its unit.";
    return name + "? Give the figure" + (figure.unit.dimension.is_number() ? "." : " with its unit.");
}

// False when no number matters: then it is a line of a table, which nobody needs to know by heart.
bool tell(const Sheet& sheet, const std::vector<Value>& inputs, double right, Item& item) {
    const std::vector<bool> matter = that_matter(sheet, inputs, right);
    bool any_number = false;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const WorksheetInput& input = sheet.entry().inputs[i];
        if (!matter[i]) continue;
        const std::string line = input_line(input, inputs[i], item.units);
        if (line.empty()) continue;
        any_number = any_number || std::holds_alternative<Quantity>(inputs[i]);
        item.given.push_back(line);
    }
    item.reason = sheet.entry().about + " Worked out by the worksheet “" + sheet.entry().name + "”.";
    return any_number;
}

}  // namespace

bool make_figure(const Portraits& portraits, Item& item, Chance& chance) {
    const Knowledge& all = portraits.knowledge();
    const Sheet sheet{all, item.stem.first, static_cast<std::size_t>(item.stem.third)};
    const WorksheetOutput& output = sheet.entry().results[sheet.result];
    const Index told = said_again(sheet.entry(), output);
    std::optional<Unit> asked = shown_unit(output.unit, item.units);
    std::optional<Unit> given_in;
    if (told != none) {
        const Unit& input = at(sheet.entry().inputs, told).unit;
        asked = asked_of_conversion(input, output.unit, item.units);
        given_in = shown_unit(input, item.units);
    }
    if (!asked) return false;
    const Unit& unit = *asked;
    if (!all_have_examples(sheet.entry()) || output.unit.offset != 0 || !can_stand_alone(output))
        return false;
    for (int draw = 0; draw < draws; ++draw) {
        std::vector<Value> inputs = examples(sheet.entry());
        for (std::size_t i = 0; i < inputs.size() && draw + 1 < draws; ++i) {
            inputs[i] = drawn(sheet.entry().inputs[i], item.units, chance);
        }
        const std::optional<double> right = sheet.work(inputs);
        if (!right || std::abs(*right) < 1e-12) continue;
        const double tolerance = std::max(close_enough * std::abs(*right), half_mark(unit));
        if (!given_in && is_given(inputs, unit, *right, tolerance)) continue;
        std::vector<Slip> slips = slips_of(sheet, inputs, unit, *right, tolerance);
        if (clashes(slips, *right, tolerance)) continue;
        if (!tell(sheet, inputs, *right, item)) return false;
        item.figure = Figure{unit, *right, tolerance, std::move(slips), given_in};
        item.given.insert(item.given.begin(), "Worksheet: " + sheet.entry().name);
        item.question = question_of(output.name, *item.figure);
        item.source = source_text(all, sheet.entry().sources);
        return true;
    }
    return false;
}

}  // namespace hardover::study
