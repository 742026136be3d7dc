// How long one answer takes: answer -> ranking -> next step, at every moment of many simulated jobs, on the
// shipped knowledge and on larger bases made from it. CPU time of one thread, so that other programs on the
// machine count little.
#include <cstdlib>
#include <iostream>
#include <map>

#include "bench/common.hpp"
#include "bench/enlarged.hpp"
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

using Times = std::map<std::string, std::vector<double>>;  // by what was known

// Every moment of the jobs, taken by itself; "all" holds all of them. The yardstick is laid on between jobs,
// as a machine may be slower for a while.
Times times_of(const PreparedKnowledge& prepared, int jobs, const Detail& detail,
               std::vector<double>* yardsticks = nullptr) {
    Times times;
    for (int n = 0; n < jobs; ++n) {
        if (yardsticks) yardsticks->push_back(yardstick_milliseconds());
        hardover_tests::Chance chance(first_seed + static_cast<unsigned>(n));
        const std::optional<Boat> boat = draw_boat(prepared, chance);
        if (!boat) continue;
        for (const Facts& facts : moments_of_job(prepared, *boat)) {
            const double before = thread_milliseconds();
            const Assessment now = assess(prepared, facts, detail);
            const double taken = thread_milliseconds() - before;
            if (now.ranking.empty()) std::exit(1);
            times["all"].push_back(taken);
            times[group_of(facts.answers.size())].push_back(taken);
        }
    }
    return times;
}

std::string size_of(const Knowledge& knowledge) {
    return std::to_string(knowledge.causes.size()) + " causes, " + std::to_string(knowledge.findings.size()) +
           " findings";
}

double milliseconds_to_prepare(const Knowledge& knowledge) {
    std::vector<double> taken;
    for (int n = 0; n < 21; ++n) {
        const double before = thread_milliseconds();
        const PreparedKnowledge prepared(knowledge);
        taken.push_back(thread_milliseconds() - before);
    }
    return percentile(taken, 0.5);
}

}  // namespace

// step_bench [JOBS]
int main(int argc, char** argv) {
    const int jobs = argument(argc, argv, 1, 200);
    const Knowledge knowledge = shipped_knowledge();
    const PreparedKnowledge prepared(knowledge);
    std::vector<double> yardsticks;
    const Times shipped = times_of(prepared, jobs, {false, false, false}, &yardsticks);
    std::cout << "Answer, ranking and next step: " << size_of(knowledge) << ", " << jobs
              << " simulated jobs, ms of one core\n\n";
    std::vector<std::vector<std::string>> rows{{"known", "steps", "median", "95 %", "99 %", "longest"}};
    for (const char* group : {"all", "the complaint alone", "1 to 5 answers", "6 to 10 answers",
                              "11 to 20 answers", "more than 20 answers"}) {
        if (shipped.contains(group)) rows.push_back(row_of(group, shipped.at(group)));
    }
    const Times whole = times_of(prepared, jobs, {});
    rows.push_back(row_of("all, with weights and branches", whole.at("all")));
    print_table(rows);
    const double yardstick = percentile(yardsticks, 0.5);
    std::cout << "A million random numbers are sorted in " << fixed(yardstick, 1)
              << " ms of it here (median; " << fixed(percentile(yardsticks, 0), 1) << " to "
              << fixed(percentile(yardsticks, 1), 1) << "); of that the first row is "
              << percent(percentile(shipped.at("all"), 0.5) / yardstick, 2) << " at the median, "
              << percent(percentile(shipped.at("all"), 0.99) / yardstick, 2) << " at 99 %.\n"
              << "Aim: median under 1 ms, 99 % under 5 ms.\n\n";

    std::cout << "The same with more knowledge, made up of renamed copies\n\n";
    std::vector<std::vector<std::string>> larger_rows{
        {"knowledge", "steps", "median", "95 %", "99 %", "longest", "median over shipped", "to prepare"}};
    const auto add_row = [&](const Knowledge& base, const Times& times) {
        std::vector<std::string> row = row_of(size_of(base), times.at("all"));
        const double median = percentile(times.at("all"), 0.5);
        row.push_back(fixed(median / percentile(shipped.at("all"), 0.5), 2));
        row.push_back(fixed(milliseconds_to_prepare(base), 2));
        larger_rows.push_back(row);
    };
    add_row(knowledge, shipped);
    for (int copies : {2, 3}) {
        const Knowledge larger = enlarged(knowledge, copies);
        add_row(larger, times_of(larger, std::max(1, jobs / 4), {false, false, false}));
    }
    print_table(larger_rows);
}
