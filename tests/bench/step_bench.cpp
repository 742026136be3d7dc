// How long one answer takes: answer -> ranking -> next step, on the shipped knowledge, at every moment of
// many simulated jobs. CPU time of one thread, so that other programs on the machine do not count.
#include <iostream>
#include <map>

#include "bench/common.hpp"
#include "bench/simulated_job.hpp"

using namespace hardover;
using namespace hardover_bench;

namespace {

constexpr unsigned first_seed = 70000;

std::vector<std::string> row_of(const std::string& name, const std::vector<double>& milliseconds) {
    return {name,
            std::to_string(milliseconds.size()),
            fixed(percentile(milliseconds, 0.5), 3),
            fixed(percentile(milliseconds, 0.95), 3),
            fixed(percentile(milliseconds, 0.99), 3),
            fixed(percentile(milliseconds, 1), 3)};
}

std::string group_of(std::size_t answers) {
    if (answers == 0) return "the complaint alone";
    if (answers <= 5) return "1 to 5 answers";
    if (answers <= 10) return "6 to 10 answers";
    if (answers <= 20) return "11 to 20 answers";
    return "more than 20 answers";
}

}  // namespace

// step_bench [JOBS]
int main(int argc, char** argv) {
    const int jobs = argument(argc, argv, 1, 200);
    const Knowledge knowledge = shipped_knowledge();
    const PreparedKnowledge prepared(knowledge);
    std::vector<double> all;
    std::map<std::string, std::vector<double>> by_answers;
    for (int n = 0; n < jobs; ++n) {
        hardover_tests::Chance chance(first_seed + static_cast<unsigned>(n));
        const std::optional<Boat> boat = draw_boat(prepared, chance);
        if (!boat) continue;
        for (const Facts& facts : moments_of_job(prepared, *boat)) {
            const double before = thread_milliseconds();
            const Assessment now = assess(prepared, facts, {false, false});
            const double taken = thread_milliseconds() - before;
            if (now.ranking.empty()) return 1;
            all.push_back(taken);
            by_answers[group_of(facts.answers.size())].push_back(taken);
        }
    }
    std::cout << "Answer, ranking and next step: " << knowledge.causes.size() << " causes, "
              << knowledge.findings.size() << " findings, " << jobs << " simulated jobs, ms of one core\n\n";
    std::vector<std::vector<std::string>> rows{{"known", "steps", "median", "95 %", "99 %", "longest"}};
    rows.push_back(row_of("all", all));
    for (const char* group : {"the complaint alone", "1 to 5 answers", "6 to 10 answers", "11 to 20 answers",
                              "more than 20 answers"}) {
        if (!by_answers[group].empty()) rows.push_back(row_of(group, by_answers[group]));
    }
    print_table(rows);
    std::cout << "Aim: median under 1 ms, 99 % under 5 ms.\n";
}
