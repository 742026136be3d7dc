#include "app/window/project_view.hpp"

#include <algorithm>
#include <cctype>

#include "app/classroom/show_of_hands.hpp"

namespace hardover::window {

namespace {

constexpr std::size_t most_digits = 3;

std::optional<int> count_of(const std::string& typed) {
    if (typed.empty()) return 0;
    const bool digits = std::all_of(typed.begin(), typed.end(),
                                    [](unsigned char letter) { return std::isdigit(letter) != 0; });
    if (!digits || typed.size() > most_digits) return std::nullopt;
    return std::stoi(typed);
}

}  // namespace

std::optional<std::vector<int>> ProjectView::counted(std::size_t& wrong) const {
    std::vector<int> counts;
    for (std::size_t i = 0; i < hands.size(); ++i) {
        const std::optional<int> count = count_of(hands[i]);
        if (!count) {
            wrong = i;
            return std::nullopt;
        }
        counts.push_back(*count);
    }
    return counts;
}

void ProjectView::follow(int number, std::size_t choices) {
    if (ballot != number) {
        hands.clear();
        current.reset();
        ideas = ranking = false;
        filter.clear();
    }
    ballot = number;
    hands.resize(choices);
}

void ProjectView::add_hands(std::size_t choice, int more) {
    const int now = count_of(hands[choice]).value_or(0);
    hands[choice] = std::to_string(std::clamp(now + more, 0, classroom::most_hands));
}

}  // namespace hardover::window
