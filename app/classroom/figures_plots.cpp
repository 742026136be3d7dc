// The plots of a class's figures.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "app/classroom/figures_page_parts.hpp"
#include "app/classroom/set.hpp"

namespace hardover::classroom {

namespace {

constexpr double z_95 = 1.959963984540054;
constexpr std::size_t most_ticks = 30;  // one a learner up to here

bool is_named(const ItemFigures& item) {
    return !item.discriminates() && item.verdict != ItemVerdict::too_few;
}

}  // namespace

FigurePlot item_map(const ClassFigures& figures) {
    FigurePlot map{"Items: how hard, and how well they tell strong from weak", "", {}};
    double least = -1;
    double most = 1;
    std::size_t ringed = 0;
    for (std::size_t i = 0; i < figures.by_item.size(); ++i) {
        const ItemFigures& item = figures.by_item[i];
        if (!item.difficulty) continue;
        least = std::min(least, item.difficulty->value);
        most = std::max(most, item.difficulty->value);
        map.plot.marks.push_back(
            {item.difficulty->value, *item.discrimination, 0, std::to_string(i + 1), is_named(item)});
        ringed += is_named(item) ? 1 : 0;
    }
    if (map.plot.marks.empty()) {
        map.empty = fmt::format("No item has been answered by {} learners yet.", fewest_learners);
        return map;
    }
    map.plot.x = nice_axis("Difficulty: easy on the left, hard on the right", "logits", least, most);
    map.plot.y =
        nice_axis("Discrimination: the higher, the better strong and weak are told apart", "", -1, 1);
    map.plot.notes = {
        "A ring with the item's number: it does not tell strong from weak; the table says why."};
    map.plot.in_words =
        fmt::format("{} items from {:.1f} to {:.1f} logits; {} of them do not tell strong from weak.",
                    map.plot.marks.size(), least, most, ringed);
    return map;
}

FigurePlot abilities_plot(const ClassFigures& figures) {
    FigurePlot plot{"Learners: ability with its error", "", {}};
    double least = -1;
    double most = 1;
    for (const LearnerFigures& learner : figures.by_learner) {
        if (learner.ability.error <= 0) continue;
        const double at = static_cast<double>(plot.plot.marks.size()) + 1;
        const double spread = z_95 * learner.ability.error;
        plot.plot.marks.push_back({at, learner.ability.value, spread, learner.seat, false});
        plot.plot.x.ticks.push_back({at, learner.seat});
        least = std::min(least, learner.ability.value - spread);
        most = std::max(most, learner.ability.value + spread);
    }
    if (plot.plot.marks.empty()) {
        plot.empty = "No item has been answered yet.";
        return plot;
    }
    plot.plot.x.name = "Seat";
    plot.plot.x.low = 0;
    plot.plot.x.high = static_cast<double>(plot.plot.marks.size()) + 1;
    if (plot.plot.x.ticks.size() > most_ticks) {
        std::vector<PlotTick> some;
        const std::size_t step = plot.plot.x.ticks.size() / most_ticks + 1;
        for (std::size_t i = 0; i < plot.plot.x.ticks.size(); i += step) some.push_back(plot.plot.x.ticks[i]);
        plot.plot.x.ticks = std::move(some);
    }
    plot.plot.y = nice_axis("Ability: the higher, the more able", "logits", least, most);
    plot.plot.notes = {
        "Each bar holds the ability with a chance of 95 in 100. Bars that reach over one another: no "
        "difference is shown."};
    plot.plot.in_words = fmt::format("{} learners, abilities with their errors from {:.1f} to {:.1f} logits.",
                                     plot.plot.marks.size(), least, most);
    return plot;
}

FigurePlot over_best_plot(const ClassFigures& figures) {
    FigurePlot plot{"Practice boats: minutes over the best", "", {}};
    double least = 0;
    double most = 1;
    const TermPeriod* first = nullptr;
    const TermPeriod* last = nullptr;
    for (const TermPeriod& period : figures.term) {
        if (!period.avoidable) continue;
        if (first == nullptr) first = &period;
        last = &period;
        const double length = period.last_day - period.first_day + 1.0;
        const double middle = period.first_day + length / 2;
        const double half = 0.38 * length;
        const double choices = *period.avoidable;
        const double luck = *period.luck;
        plot.plot.bars.push_back({middle - half, middle, 0, choices, false});
        plot.plot.bars.push_back({middle, middle + half, 0, luck, true});
        plot.plot.x.ticks.push_back({middle, day_text(period.first_day).substr(5)});
        least = std::min(least, luck);
        most = std::max({most, choices, luck});
    }
    if (first == nullptr) {
        plot.empty = figures.boats == 0 ? std::string("No practice boat has been finished yet.")
                                        : fmt::format("In no {} have {} learners finished a practice boat.",
                                                      figures.by_week ? "week" : "day", fewest_learners);
        return plot;
    }
    plot.plot.x.name = figures.by_week ? "Week from, month and day" : "Month and day";
    plot.plot.x.low = first->first_day - 0.5;
    plot.plot.x.high = last->last_day + 1.5;
    plot.plot.y = nice_axis("Minutes a boat", "min", least, most);
    plot.plot.notes = {"Solid: lost by choices. Hatched: lost by luck, or won where it hangs below 0."};
    plot.plot.in_words =
        fmt::format("From {:.0f} minutes a boat lost by choices in the {} of {} to {:.0f} in that of {}.",
                    *first->avoidable, figures.by_week ? "week" : "day", day_text(first->first_day),
                    *last->avoidable, day_text(last->first_day));
    return plot;
}

}  // namespace hardover::classroom
