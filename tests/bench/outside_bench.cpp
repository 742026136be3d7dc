// All marginals of the same random noisy-OR networks: this engine as a whole process against toulbar2 as a
// whole process (once per cause, and once for the answers alone), and against the npm package bayesjs inside
// a process. The answers must be equal, else the benchmark fails.
#include <algorithm>
#include <cmath>
#include <iostream>
#include <memory>
#include <sstream>

#include "bench/common.hpp"
#include "outside/noisy_or.hpp"
#include "outside/process.hpp"

using namespace hardover;
using namespace hardover_bench;
using namespace hardover_tests;

namespace {

constexpr double printed = 0.0006;  // toulbar2 prints ln Z with three decimals, its tables hold seven digits
constexpr int not_there = 77;       // exit code of tests/outside/bayesjs

struct Size {
    int causes;
    int findings;
    int observed;
    int most_parents;
};

// Milliseconds for all marginals of one network, and the largest difference of any answer.
struct Times {
    std::vector<double> ours_cpu, ours_elapsed, theirs_cpu, theirs_elapsed, inside;
    double difference = 0;
};

Times& operator+=(Times& all, const Times& more) {
    const auto join = [](std::vector<double>& a, const std::vector<double>& b) {
        a.insert(a.end(), b.begin(), b.end());
    };
    join(all.ours_cpu, more.ours_cpu);
    join(all.ours_elapsed, more.ours_elapsed);
    join(all.theirs_cpu, more.theirs_cpu);
    join(all.theirs_elapsed, more.theirs_elapsed);
    join(all.inside, more.inside);
    all.difference = std::max(all.difference, more.difference);
    return all;
}

// The best of `runs`, as other programs disturb only upwards.
template <typename Run>
std::pair<double, double> best_of(int runs, Run run) {
    std::pair<double, double> best{INFINITY, INFINITY};
    for (int n = 0; n < runs; ++n) {
        const auto [cpu, elapsed] = run();
        best = {std::min(best.first, cpu), std::min(best.second, elapsed)};
    }
    return best;
}

double inside_ms(const NoisyOr& network) {
    const FaultNetwork inside = as_fault_network(network);
    const FaultCase given = as_fault_case(network);
    const auto [best, unused] = best_of(20, [&] {
        const double before = thread_milliseconds();
        const bool possible = posterior(inside, given).possible;
        return std::pair{thread_milliseconds() - before, possible ? 0.0 : 1.0};
    });
    return best;
}

// ln P(answers), then ln P(cause, answers) of every cause, by one run each. Empty when toulbar2 is missing.
std::vector<double> by_toulbar2(const NoisyOr& network, Times& times) {
    std::vector<double> logs;
    std::pair<double, double> sum{0, 0};
    for (int given = -1; given < static_cast<int>(network.prior.size()); ++given) {
        const ScratchFile file("network.uai", as_uai(network, given));
        std::optional<double> log_z;
        const auto [cpu, elapsed] = best_of(2, [&] {
            const Finished ran = run_process({"toulbar2", file.path(), "-logz"});
            log_z = toulbar2_log_z(ran.out);
            return std::pair{ran.cpu_ms, ran.elapsed_ms};
        });
        if (!log_z) return {};
        logs.push_back(*log_z);
        sum = {sum.first + cpu, sum.second + elapsed};
    }
    times.theirs_cpu.push_back(sum.first);
    times.theirs_elapsed.push_back(sum.second);
    return logs;
}

// The same by our program; ln P(cause, answers) from the marginals it prints.
std::vector<double> by_ours(const NoisyOr& network, Times& times) {
    const ScratchFile file("network.txt", as_text(network));
    std::string out;
    const auto best = best_of(5, [&] {
        const Finished ran = run_process({HARDOVER_NETWORK_MARGINALS, file.path()});
        out = ran.code == 0 ? ran.out : "";
        return std::pair{ran.cpu_ms, ran.elapsed_ms};
    });
    times.ours_cpu.push_back(best.first);
    times.ours_elapsed.push_back(best.second);
    std::istringstream numbers(out);
    std::vector<double> logs;
    for (double number; numbers >> number;)
        logs.push_back(logs.empty() ? number : logs[0] + std::log(number));
    return logs;
}

// Empty when the two do not answer alike.
std::optional<Times> compare(const NoisyOr& network) {
    Times times;
    times.inside.push_back(inside_ms(network));
    const std::vector<double> ours = by_ours(network, times);
    const std::vector<double> theirs = by_toulbar2(network, times);
    if (ours.empty() || ours.size() != theirs.size()) return std::nullopt;
    for (std::size_t n = 0; n < ours.size(); ++n) {
        times.difference = std::max(times.difference, std::abs(ours[n] - theirs[n]));
    }
    if (times.difference > printed) return std::nullopt;
    return times;
}

bool against_toulbar2(int networks) {
    std::vector<std::vector<std::string>> rows{{"causes x findings (answered)", "toulbar2, CPU ms",
                                                "ours, CPU ms", "times faster", "elapsed: times faster",
                                                "ours inside, us", "largest difference"}};
    for (const Size& size : {Size{10, 15, 10, 5}, Size{20, 30, 15, 6}, Size{47, 101, 20, 6}}) {
        Times all;
        for (int n = 0; n < networks; ++n) {
            const std::optional<Times> times = compare(random_noisy_or(
                static_cast<unsigned>(n + 1), size.causes, size.findings, size.most_parents, size.observed));
            if (!times) {
                std::cout << "Not equal, or toulbar2 is missing (apt-get install toulbar2).\n";
                return false;
            }
            all += *times;
        }
        const auto median = [](const std::vector<double>& values) { return percentile(values, 0.5); };
        rows.push_back({std::to_string(size.causes) + " x " + std::to_string(size.findings) + " (" +
                            std::to_string(size.observed) + ")",
                        fixed(median(all.theirs_cpu), 1), fixed(median(all.ours_cpu), 2),
                        fixed(median(all.theirs_cpu) / median(all.ours_cpu), 0),
                        fixed(median(all.theirs_elapsed) / median(all.ours_elapsed), 0),
                        fixed(1000 * median(all.inside), 1), fixed(all.difference, 5)});
    }
    std::cout << "All marginals, whole process against whole process (medians of " << networks
              << " networks)\n\n";
    print_table(rows);
    std::cout
        << "Aim: at least 100 times faster; equal to the three decimals of ln Z that toulbar2 prints.\n\n";
    return true;
}

// Small networks: a junction tree without noisy-OR tricks grows fast.
bool against_bayesjs(int networks) {
    std::vector<NoisyOr> all;
    std::vector<std::unique_ptr<ScratchFile>> files;
    std::vector<std::string> words{HARDOVER_SOURCE_DIR "/tests/outside/bayesjs", HARDOVER_OUTSIDE_FOLDER};
    for (int n = 0; n < networks; ++n) {
        all.push_back(random_noisy_or(static_cast<unsigned>(700 + n), 8, 12, 3, 9));
        files.push_back(std::make_unique<ScratchFile>("small" + std::to_string(n), as_text(all.back())));
        words.push_back(files.back()->path());
    }
    const Finished ran = run_process(words);
    if (ran.code == not_there) {
        std::cout << "bayesjs is not there and cannot be fetched from npm: not compared.\n";
        return true;
    }
    std::istringstream lines(ran.out);
    std::vector<double> theirs;
    std::vector<double> ours;
    double difference = 0;
    for (const NoisyOr& network : all) {
        std::string word;
        double milliseconds = 0;
        if (!(lines >> word >> milliseconds)) return false;
        theirs.push_back(milliseconds);
        ours.push_back(inside_ms(network));
        for (double marginal : posterior(as_fault_network(network), as_fault_case(network)).marginal) {
            double theirs_of_cause = -1;
            lines >> theirs_of_cause;
            difference = std::max(difference, std::abs(marginal - theirs_of_cause));
        }
    }
    std::cout << "All marginals inside a process, 8 causes x 12 findings (9 answered), medians of "
              << networks << " networks\n\n";
    char largest[32];
    std::snprintf(largest, sizeof largest, "%.1e", difference);
    print_table({{"bayesjs, ms", "ours, ms", "times faster", "largest difference"},
                 {fixed(percentile(theirs, 0.5), 2), fixed(percentile(ours, 0.5), 4),
                  fixed(percentile(theirs, 0.5) / percentile(ours, 0.5), 0), largest}});
    std::cout << "Aim: equal to 1e-9.\n";
    return difference <= 1e-9;
}

}  // namespace

// outside_bench [NETWORKS]
int main(int argc, char** argv) {
    const int networks = argument(argc, argv, 1, 15);
    const bool equal = against_toulbar2(networks);
    return against_bayesjs(networks) && equal ? 0 : 1;
}
