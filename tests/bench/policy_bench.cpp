// Expected minutes of the next-step policy over those of the best policy there is, on random models small
// enough to solve exactly, beside plain orders on the same models.
#include <iostream>

#include "bench/common.hpp"
#include "reasoning/policy_models.hpp"

using namespace hardover_bench;
using namespace hardover_tests;

namespace {

struct Row {
    const char* name;
    Policy policy;
};

std::vector<Row> policies(const LookLimits& limits) {
    LookLimits plain = limits;
    plain.looked_deeper = 0;
    return {
        {"roll-out, the best few one step deeper (the program's)",
         [limits](Outlook& o, const Position& p) { return roll_out_policy(o, p, limits); }},
        {"roll-out alone", [plain](Outlook& o, const Position& p) { return roll_out_policy(o, p, plain); }},
        {"myopic: ask what saves most, else the plan", myopic},
        {"information for its minutes, then chance over cost", information_over_cost},
        {"chance over cost, no questions", chance_over_cost},
        {"chance alone, no questions", chance_alone}};
}

}  // namespace

// policy_bench [MODELS] [FIRST-SEED] [WORK]
int main(int argc, char** argv) {
    const int models = argument(argc, argv, 1, 200);
    const int first_seed = argument(argc, argv, 2, 1);
    std::cout << "Expected minutes over the best policy's (exact), " << models
              << " random models a class\n\n";
    LookLimits limits;
    limits.work = argument(argc, argv, 3, static_cast<int>(limits.work));
    const std::vector<Row> all = policies(limits);
    std::vector<std::vector<std::string>> table{{"models", "policy", "mean", "95 %", "worst", "exact"}};
    for (const auto& [kind, name] : {std::pair{ModelClass::questions, "questions"},
                                     std::pair{ModelClass::opening, "questions, three covers to open"},
                                     std::pair{ModelClass::several, "questions, several faults"}}) {
        std::vector<std::vector<double>> ratio(all.size(),
                                               std::vector<double>(static_cast<std::size_t>(models)));
        in_parallel(models, 1, [&, kind = kind](int n) {
            const Decision decision = random_decision(kind, static_cast<unsigned>(first_seed + n));
            const double best = BestPolicy(decision).minutes();
            for (std::size_t row = 0; row < all.size(); ++row) {
                Outlook outlook(decision);
                ratio[row][static_cast<std::size_t>(n)] = Followed(outlook, all[row].policy).minutes() / best;
            }
        });
        for (std::size_t row = 0; row < all.size(); ++row) {
            const auto exact =
                std::count_if(ratio[row].begin(), ratio[row].end(), [](double r) { return r < 1 + 1e-9; });
            table.push_back({name, all[row].name, fixed(mean(ratio[row]), 4),
                             fixed(percentile(ratio[row], 0.95), 4), fixed(percentile(ratio[row], 1), 4),
                             std::to_string(exact)});
        }
    }
    print_table(table);
    std::cout << "Aim of the first row of each class: mean at most 1.003, 95 % at most 1.01.\n";
}
