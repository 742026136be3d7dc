#include "app/classroom/demo_learner.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>

namespace hardover::classroom {

namespace {

using study::Chance;
using study::Item;
using study::Way;

constexpr double easier = 0.4;           // items are easier than the middle of the class by this much
constexpr double spread_of_items = 0.9;  // logits
constexpr double usual_slope = 1.3;
constexpr std::size_t without_slope = 12;  // one item in so many
constexpr double favourite_wrong = 0.65;   // share of wrong answers that is the same for all
constexpr double says_sure = 0.85;         // share of answers with a sureness

double normal(Chance& chance) {  // G. E. P. Box and M. E. Muller 1958
    const double radius = std::sqrt(-2 * std::log(1 - chance.share()));
    return radius * std::cos(2 * std::numbers::pi * chance.share());
}

double logistic(double x) {
    return 1 / (1 + std::exp(-x));
}

std::string letter(std::size_t option) {
    return std::string(1, static_cast<char>('a' + option));
}

std::string wrong_single(const Item& item, Chance& of_item, Chance& chance) {
    std::vector<std::size_t> wrong;
    for (std::size_t i = 0; i < item.options.size(); ++i) {
        if (!item.options[i].right) wrong.push_back(i);
    }
    if (wrong.empty()) return "?";
    const std::size_t favourite = wrong[of_item.below(wrong.size())];
    return letter(chance.share() < favourite_wrong ? favourite : wrong[chance.below(wrong.size())]);
}

// One tick too many or too few.
std::string wrong_several(const Item& item, Chance& chance) {
    const std::size_t slip = chance.below(item.options.size());
    std::string ticked;
    for (std::size_t i = 0; i < item.options.size(); ++i) {
        if (item.options[i].right != (i == slip)) ticked += letter(i);
    }
    return ticked.empty() ? "?" : ticked;
}

std::string wrong_order(const std::string& right, Chance& chance) {
    std::string order;
    for (const char mark : right) {
        if (mark != ' ') order += mark;
    }
    if (order.size() < 2) return "?";
    const std::size_t swapped = chance.below(order.size() - 1);
    std::swap(order[swapped], order[swapped + 1]);
    return order;
}

// The diameter for the radius, or the like: half of what is right, with its unit.
std::string wrong_figure(const std::string& right) {
    char* rest = nullptr;
    const double value = std::strtod(right.c_str(), &rest);
    return rest == right.c_str() ? "?" : fmt::format("{:.4g}{}", value / 2, rest);
}

std::string wrong_answer(const Item& item, Chance& of_item, Chance& chance) {
    switch (way_of(item.stem.form)) {
        case Way::single:
            return wrong_single(item, of_item, chance);
        case Way::several:
            return wrong_several(item, chance);
        case Way::order:
            return wrong_order(right_answer(item), chance);
        case Way::figure:
            break;
    }
    return wrong_figure(right_answer(item));
}

}  // namespace

DemoLearner draw_learner(Chance& chance) {
    DemoLearner learner;
    learner.ability = normal(chance);
    learner.boast = 0.2 * chance.share() - 0.05;
    return learner;
}

DemoAnswer answer_of(const DemoLearner& learner, const Item& item, Chance& chance) {
    Chance of_item(0, item.stem.id);
    const double difficulty = spread_of_items * normal(of_item) - easier;
    const double slope = of_item.below(without_slope) == 0 ? 0 : usual_slope;
    const double guess = guess_chance(item);
    const double knows = logistic(slope * (learner.ability - difficulty));
    const double right = guess + (1 - guess) * knows;
    DemoAnswer answer;
    answer.typed = chance.share() < right ? right_answer(item) : wrong_answer(item, of_item, chance);
    const double sure = right + learner.boast + 0.1 * normal(chance);
    if (chance.share() < says_sure) answer.sure = std::round(20 * std::clamp(sure, 0.05, 0.95)) / 20;
    answer.seconds = std::round(40 * std::exp(0.5 * normal(chance) - 0.2 * learner.ability));
    return answer;
}

double care_of(const DemoLearner& learner) {
    return std::clamp(0.6 + 0.2 * learner.ability, 0.15, 0.95);
}

}  // namespace hardover::classroom
