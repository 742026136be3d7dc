// One result of a worksheet against one of its inputs: the sheet is worked out again along the range.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/sheet_page.hpp"
#include "app/jobs/wording.hpp"
#include "rules/reasoning/worksheets.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

constexpr int steps = 96;  // of the curve

// The spread changes slowly along a curve and takes most of the work: it is worked out at every so many steps
// and drawn straight between. With one for every step, the sheet of most inputs took seconds.
constexpr int steps_a_spread = 8;
constexpr double endless = std::numeric_limits<double>::infinity();

struct Range {
    double low = 0;
    double high = 0;
};

// A sheet with every input filled in, as far as there is anything to fill it in with.
struct Filled {
    const Knowledge& knowledge;
    Index index = none;
    const Worksheet& sheet;
    UnitSystem units = UnitSystem::us;
    std::vector<Value> values;
    std::vector<std::string> examples;  // names of the inputs that have their example

    // In which the axes count.
    Unit unit_in(std::size_t input) const { return shown_unit(sheet.inputs[input].unit, units); }
    Unit unit_out(std::size_t result) const { return shown_unit(sheet.results[result].unit, units); }
    WorkedSheet at(std::size_t input, double number) const {
        return work_out(knowledge, index, moved(input, number));
    }
    WorkedSheet without_spread_at(std::size_t input, double number) const {
        return work_out_as_given(knowledge, index, moved(input, number));
    }
    std::vector<Value> moved(std::size_t input, double number) const {
        std::vector<Value> inputs = values;
        Quantity& quantity = std::get<Quantity>(inputs[input]);
        quantity.value = quantity_in(number, unit_in(input)).value;
        return inputs;
    }
    std::optional<double> number_of(std::size_t input) const {
        const auto quantity = quantity_of(values[input]);
        if (!quantity) return std::nullopt;
        return in_unit(*quantity, unit_in(input));
    }
};

Filled filled_in(const Knowledge& knowledge, Index index, const std::vector<SheetInput>& inputs,
                 UnitSystem units) {
    const Worksheet& sheet = knowledge.worksheets[static_cast<std::size_t>(index)];
    Filled filled{knowledge, index, sheet, units, {}, {}};
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const WorksheetInput& input = sheet.inputs[i];
        Value value = inputs[i].value;
        if (std::holds_alternative<Unknown>(value) && (input.example || !input.example_choice.empty())) {
            if (input.example) {
                Quantity example = *input.example;
                if (example.spread == 0) example.spread = input.spread;
                value = example;
            } else {
                value = Choice{{input.example_choice}};
            }
            filled.examples.push_back(lower_first(input.name));
        }
        filled.values.push_back(value);
    }
    return filled;
}

// Half as much to half as much again, within what a rig can have. A thermometer moves by 40 of its degrees.
std::optional<Range> range_of(const Filled& filled, std::size_t i) {
    const WorksheetInput& input = filled.sheet.inputs[i];
    const auto now = filled.number_of(i);
    if (!now) return std::nullopt;
    const bool whole = input.unit.name == "count" && *now == std::round(*now);
    if (whole) return std::nullopt;  // rams and holes come whole
    Range range{*now / 2, *now * 1.5};
    if (filled.unit_in(i).offset != 0) range = {*now - 40, *now + 40};
    if (*now < 0) std::swap(range.low, range.high);
    if (*now == 0) range = {-1, 1};
    if (input.rig_field != none) {
        const RigField& field = filled.knowledge.rig_fields[static_cast<std::size_t>(input.rig_field)];
        if (field.least) range.low = std::max(range.low, in_unit(*field.least, filled.unit_in(i)));
        if (field.most) range.high = std::min(range.high, in_unit(*field.most, filled.unit_in(i)));
    }
    if (range.low < range.high) return range;
    return std::nullopt;
}

std::optional<PlotPoint> point_at(const Filled& filled, const WorkedSheet& worked, std::size_t result,
                                  double x) {
    const auto quantity = quantity_of(worked.results[result]);
    if (!quantity) return std::nullopt;
    const Unit unit = filled.unit_out(result);
    return PlotPoint{x, in_unit(*quantity, unit), quantity->spread / unit.factor};
}

bool changes(const Filled& filled, std::size_t input, std::size_t result) {
    const auto range = range_of(filled, input);
    if (!range) return false;
    std::optional<double> first;
    for (const double part : {0.5, 0.1, 0.3, 0.7, 0.9}) {
        const double x = range->low + part * (range->high - range->low);
        const auto point = point_at(filled, filled.without_spread_at(input, x), result, x);
        if (!point) continue;
        if (first && std::abs(point->y - *first) > 1e-9 * std::max(std::abs(*first), 1e-12)) return true;
        if (!first) first = point->y;
    }
    return false;
}

// The advice that looks at this result alone.
std::vector<const WorksheetAdvice*> advice_on(const Worksheet& sheet, const WorksheetOutput& result) {
    std::vector<const WorksheetAdvice*> advice;
    for (const WorksheetAdvice& each : sheet.advice) {
        if (each.when.names() == std::vector<std::string>{result.id}) advice.push_back(&each);
    }
    return advice;
}

const Finding* finding_of(const Filled& filled, std::size_t result) {
    for (const Finding& finding : filled.knowledge.findings) {
        if (finding.from && finding.from->worksheet == filled.index &&
            finding.from->result == static_cast<int>(result) && !finding.readings.empty())
            return &finding;
    }
    return nullptr;
}

// Results that advice or a finding looks at tell most.
std::size_t telling(const Filled& filled, std::size_t result) {
    return 2 * advice_on(filled.sheet, filled.sheet.results[result]).size() +
           (finding_of(filled, result) != nullptr ? 1 : 0);
}

std::string number_text(double number, const Unit& unit) {
    return show(quantity_in(number, unit), unit);
}

std::string range_text(const Range& range, const Unit& unit) {
    if (range.low == -endless && range.high == endless) return "everywhere";
    if (range.low == -endless) return "below " + number_text(range.high, unit);
    if (range.high == endless) return "above " + number_text(range.low, unit);
    return number_text(range.low, unit) + " to " + number_text(range.high, unit);
}

// "Far more turns than the volumes give: oil slips." -> what stands before the first stop.
std::string opening(const std::string& text) {
    const std::size_t stop = text.find_first_of(".:,");
    return stop == std::string::npos ? text : text.substr(0, stop);
}

// What readings of the finding that is fed from the result say.
std::vector<PlotBand> bands_of_finding(const Finding& finding, const Unit& unit) {
    std::vector<PlotBand> bands;
    double edge = finding.limits_are_lower_ends ? endless : -endless;
    for (const Reading& reading : finding.readings) {
        Range range{-endless, endless};
        const double limit = reading.limit ? in_unit(*reading.limit, unit) : (edge > 0 ? -endless : endless);
        if (finding.limits_are_lower_ends) {
            range = {reading.limit ? limit : -endless, edge};
        } else {
            range = {edge, reading.limit ? limit : endless};
        }
        edge = limit;
        bands.push_back({range.low, range.high, reading.text, range_text(range, unit), false});
    }
    return bands;
}

// Where a condition on the result holds, found by trying: every stretch of [low, high] on which it is yes.
std::vector<Range> where_yes(const Expression& when, const Unit& unit, const Range& over) {
    const auto yes = [&](double y) {
        const Value value = quantity_in(y, unit);
        return when.condition_with({&value}) == Truth::yes;
    };
    const auto edge = [&](double no, double good) {
        for (int i = 0; i < 60; ++i) {
            const double middle = (no + good) / 2;
            (yes(middle) ? good : no) = middle;
        }
        return good;
    };
    constexpr int tries = 400;
    std::vector<Range> stretches;
    double before = over.low;
    bool was = yes(before);
    Range open{was ? -endless : over.low, endless};
    for (int i = 1; i <= tries; ++i) {
        const double y = over.low + (over.high - over.low) * i / tries;
        const bool is = yes(y);
        if (is && !was) open = {edge(before, y), endless};
        if (!is && was) stretches.push_back({open.low, edge(y, before)});
        before = y;
        was = is;
    }
    if (was) stretches.push_back({open.low, endless});
    return stretches;
}

std::vector<PlotBand> bands_of_advice(const Filled& filled, std::size_t result, const Range& over) {
    const WorksheetOutput& output = filled.sheet.results[result];
    const Unit unit = filled.unit_out(result);
    // Far enough out that a limit beside the picture is found as well.
    const double room = over.high - over.low;
    const Range wide{over.low - 2 * room, over.high + 2 * room};
    std::vector<PlotBand> bands;
    for (const WorksheetAdvice* advice : advice_on(filled.sheet, output)) {
        for (Range range : where_yes(advice->when, unit, wide)) {
            bands.push_back({range.low, range.high, opening(advice->say), range_text(range, unit), false});
        }
    }
    return bands;
}

class Plotting {
  public:
    Plotting(const Filled& filled, std::size_t result, std::size_t input, const Range& range)
        : filled_(filled), result_(result), input_(input), range_(range) {}

    std::optional<Plot> plot(bool all_known) {
        draw_curve();
        if (plot_.curves.empty()) return std::nullopt;
        const WorksheetInput& input = filled_.sheet.inputs[input_];
        const WorksheetOutput& output = filled_.sheet.results[result_];
        const auto name_of = [](const Unit& unit) { return unit.name == "count" ? "" : unit.name; };
        const Range seen = seen_heights();
        add_bands(seen);
        const Range shown = with_near_limits(seen);
        plot_.x = nice_axis(input.name, name_of(filled_.unit_in(input_)), range_.low, range_.high, 6);
        plot_.x.low = range_.low;
        plot_.x.high = range_.high;
        plot_.x.ticks = nice_ticks(range_.low, range_.high, 6);
        plot_.y = nice_axis(output.name, name_of(filled_.unit_out(result_)), shown.low, shown.high, 6);
        const double now = *filled_.number_of(input_);
        plot_.here = point_at(filled_, filled_.at(input_, now), result_, now);
        if (plot_.here) tell_here(all_known);
        tell_notes(output, input);
        return plot_;
    }

  private:
    void draw_curve() {
        std::vector<PlotPoint> piece;
        const auto shut = [&] {
            if (piece.size() > 1) plot_.curves.push_back(piece);
            piece.clear();
        };
        for (int i = 0; i <= steps; ++i) {
            const double x = x_of(i);
            const WorkedSheet worked = filled_.without_spread_at(input_, x);
            if (auto point = point_at(filled_, worked, result_, x)) {
                point->spread = spread_at(i);
                piece.push_back(*point);
                continue;
            }
            shut();
            add_gap(x, worked.refused.empty() ? "There is no value here." : worked.refused);
        }
        shut();
    }

    double x_of(int step) const { return range_.low + (range_.high - range_.low) * step / steps; }

    std::optional<double> worked_spread(int step) {
        const auto [known, is_new] = spreads_.try_emplace(step);
        if (is_new) {
            const auto point = point_at(filled_, filled_.at(input_, x_of(step)), result_, x_of(step));
            if (point) known->second = point->spread;
        }
        return known->second;
    }

    // Beside a gap, where it cannot be drawn from one place to the next, it is worked out on the spot.
    double spread_at(int step) {
        const int before = step - step % steps_a_spread;
        const double part = static_cast<double>(step - before) / steps_a_spread;
        if (part == 0) return worked_spread(step).value_or(0);
        const auto left = worked_spread(before);
        const auto right = worked_spread(before + steps_a_spread);
        if (!left || !right) return worked_spread(step).value_or(0);
        return *left + part * (*right - *left);
    }

    void add_gap(double x, const std::string& why) {
        const double half = (range_.high - range_.low) / steps / 2;
        const double low = std::max(range_.low, x - half), high = std::min(range_.high, x + half);
        if (!plot_.gaps.empty() && plot_.gaps.back().why == why && plot_.gaps.back().high >= low - half / 4) {
            plot_.gaps.back().high = high;
        } else {
            plot_.gaps.push_back({low, high, why});
        }
    }

    // Without the rare points that shoot off, as beside a division by nothing.
    Range seen_heights() const {
        std::vector<double> lows, highs;
        for (const auto& piece : plot_.curves) {
            for (const PlotPoint& point : piece) {
                lows.push_back(point.y - point.spread);
                highs.push_back(point.y + point.spread);
            }
        }
        std::sort(lows.begin(), lows.end());
        std::sort(highs.begin(), highs.end());
        const std::size_t spare = lows.size() / 20;
        const double middle = lows[lows.size() / 2];
        Range range{lows.front(), highs.back()};
        const double body = highs[highs.size() - 1 - spare] - lows[spare];
        if (highs.back() - middle > 4 * body && body > 0) range.high = highs[highs.size() - 1 - spare];
        if (middle - lows.front() > 4 * body && body > 0) range.low = lows[spare];
        return range;
    }

    void add_bands(const Range& seen) {
        const Finding* finding = finding_of(filled_, result_);
        const Unit unit = filled_.unit_out(result_);
        plot_.bands =
            finding != nullptr ? bands_of_finding(*finding, unit) : bands_of_advice(filled_, result_, seen);
        std::sort(plot_.bands.begin(), plot_.bands.end(),
                  [](const PlotBand& a, const PlotBand& b) { return a.low > b.low; });
    }

    // A limit a little beside the curve is worth seeing; one far off is not.
    Range with_near_limits(Range seen) const {
        const double room = std::max(seen.high - seen.low, 1e-12);
        Range shown = seen;
        for (const PlotBand& band : plot_.bands) {
            for (const double limit : {band.low, band.high}) {
                if (!std::isfinite(limit)) continue;
                if (limit > seen.high && limit < seen.high + room)
                    shown.high = std::max(shown.high, limit + 0.15 * room);
                if (limit < seen.low && limit > seen.low - room)
                    shown.low = std::min(shown.low, limit - 0.15 * room);
            }
        }
        return shown;
    }

    void tell_here(bool all_known) {
        const PlotPoint& here = *plot_.here;
        const Unit unit = filled_.unit_out(result_);
        Quantity value = quantity_in(here.y, unit);
        value.spread = here.spread * unit.factor;
        plot_.here_text = (all_known ? "Now " : "By the examples ") + show(value, unit);
        for (PlotBand& band : plot_.bands) band.here = here.y >= band.low && here.y < band.high;
    }

    void tell_notes(const WorksheetOutput& output, const WorksheetInput& input) {
        if (!filled_.examples.empty()) {
            plot_.notes.push_back(
                "Drawn with the examples for what is not entered yet: " + listed(filled_.examples) + ".");
        }
        for (const PlotGap& gap : plot_.gaps) {
            const std::string note = "Hatched, no value: " + gap.why;
            if (std::find(plot_.notes.begin(), plot_.notes.end(), note) == plot_.notes.end())
                plot_.notes.push_back(note);
        }
        const Unit in = filled_.unit_in(input_), out = filled_.unit_out(result_);
        const PlotPoint& first = plot_.curves.front().front();
        const PlotPoint& last = plot_.curves.back().back();
        plot_.in_words =
            fmt::format("{} goes from {} to {} while {} goes from {} to {}.", output.name,
                        number_text(first.y, out), number_text(last.y, out), lower_first(input.name),
                        number_text(first.x, in), number_text(last.x, in));
        if (plot_.here) add_sentence(plot_.in_words, sentence(plot_.here_text));
    }

    const Filled& filled_;
    std::size_t result_;
    std::size_t input_;
    Range range_;
    std::map<int, std::optional<double>> spreads_;  // by step
    Plot plot_;
};

// The wanted one among those that can be chosen, else the first.
std::size_t chosen_of(std::vector<ChoiceText>& choices, const std::string& wanted) {
    std::size_t chosen = 0;
    for (std::size_t i = 0; i < choices.size(); ++i) {
        if (choices[i].id == wanted) chosen = i;
    }
    choices[chosen].chosen = true;
    return chosen;
}

}  // namespace

SheetPlot make_sheet_plot(const Knowledge& knowledge, Index worksheet, const SheetInputs& typed,
                          const Job* job, const std::string& result, const std::string& input,
                          UnitSystem units) {
    const std::vector<SheetInput> inputs = sheet_inputs(knowledge, worksheet, typed, job, units);
    const Filled filled = filled_in(knowledge, worksheet, inputs, units);
    const Worksheet& sheet = filled.sheet;
    SheetPlot made;
    // Which inputs change which results.
    std::vector<std::size_t> results;
    std::vector<std::vector<std::size_t>> moved_by(sheet.results.size());
    for (std::size_t r = 0; r < sheet.results.size(); ++r) {
        for (std::size_t i = 0; i < sheet.inputs.size(); ++i) {
            if (changes(filled, i, r)) moved_by[r].push_back(i);
        }
        if (!moved_by[r].empty()) results.push_back(r);
    }
    if (results.empty()) {
        made.why_not = "No number of this sheet changes a result by a little: there is nothing to draw.";
        return made;
    }
    std::stable_sort(results.begin(), results.end(),
                     [&](std::size_t a, std::size_t b) { return telling(filled, a) > telling(filled, b); });
    for (const std::size_t r : results)
        made.results.push_back({sheet.results[r].id, sheet.results[r].name, false});
    const std::size_t r = results[chosen_of(made.results, result)];
    // What is measured comes before what the boat has.
    std::vector<std::size_t>& against = moved_by[r];
    std::stable_partition(against.begin(), against.end(),
                          [&](std::size_t i) { return sheet.inputs[i].rig_field == none; });
    for (const std::size_t i : against)
        made.against.push_back({sheet.inputs[i].id, sheet.inputs[i].name, false});
    const std::size_t i = against[chosen_of(made.against, input)];
    made.plot = Plotting(filled, r, i, *range_of(filled, i)).plot(filled.examples.empty());
    if (!made.plot) made.why_not = "The sheet holds nowhere in the range that would be drawn.";
    return made;
}

}  // namespace hardover
