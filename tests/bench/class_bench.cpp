// A class's figures from its results: small and large classes, with and without missing answers.
#include <random>

#include "app/classroom/figures_page.hpp"
#include "bench/common.hpp"
#include "classroom/class_support.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_bench;

namespace {

// Answers as the Rasch model makes them, abilities and difficulties normal (0, 1).
ClassResults drawn_class(std::size_t learners, std::size_t items, double missing) {
    std::mt19937 chance(11);
    std::normal_distribution<double> normal;
    std::uniform_real_distribution<double> even;
    std::vector<double> difficulty(items);
    for (double& value : difficulty) value = normal(chance);
    std::vector<std::vector<int>> table(learners, std::vector<int>(items));
    for (auto& row : table) {
        const double ability = normal(chance);
        for (std::size_t i = 0; i < items; ++i) {
            const bool right = even(chance) < 1 / (1 + std::exp(difficulty[i] - ability));
            row[i] = even(chance) < missing ? -1 : right ? 1 : 0;
        }
    }
    return hardover_tests::class_of(table);
}

std::vector<std::string> row_of(std::size_t learners, std::size_t items, double missing) {
    const ClassResults results = drawn_class(learners, items, missing);
    const double before = thread_milliseconds();
    const ClassFigures figures = make_figures(results, Knowledge{});
    const double made = thread_milliseconds();
    const std::size_t letters = figures_text(make_figures_page(figures, false)).size();
    const double told = thread_milliseconds();
    return {std::to_string(learners),       std::to_string(items),   std::to_string(results.items.size()),
            fixed(100 * missing, 0) + " %", fixed(made - before, 0), fixed(told - made, 0),
            std::to_string(letters)};
}

}  // namespace

int main() {
    print_table({{"learners", "items", "answers", "missing", "figures ms", "page and text ms", "letters"},
                 row_of(24, 12, 0),
                 row_of(24, 40, 0.2),
                 row_of(60, 200, 0),
                 row_of(200, 500, 0),
                 row_of(200, 625, 0.2),
                 row_of(200, 500, 0.5)});
    return 0;
}
