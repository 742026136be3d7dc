// What all benchmarks share: the shipped knowledge, CPU time, medians, tables, work spread over threads.
// Knows nothing of what is measured.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "rules/model/knowledge.hpp"

namespace hardover_bench {

// The knowledge of the source tree, or of HARDOVER_KNOWLEDGE. Ends the program with the faults when it cannot
// be read.
hardover::Knowledge shipped_knowledge();

// CPU time of the calling thread, in milliseconds: not disturbed by other programs on the machine.
double thread_milliseconds();

// Wall time, in milliseconds from some fixed moment.
double wall_milliseconds();

// CPU time of sorting a million random numbers, the same ones everywhere: what this machine is worth at this
// moment. Times of two machines, or of two days, are compared by dividing each by it.
double yardstick_milliseconds();

double mean(const std::vector<double>& values);

// The value that `share` of the values do not pass (nearest rank); 0 of none.
double percentile(std::vector<double> values, double share);

std::string fixed(double value, int decimals);
std::string percent(double share, int decimals = 1);

// A table for people and for Markdown: the first row is the head.
void print_table(const std::vector<std::vector<std::string>>& rows);

// Calls work(0) ... work(count - 1), spread over `threads`. What is done must not depend on the thread.
void in_parallel(int count, int threads, const std::function<void(int)>& work);

// The n-th argument as a number, or `otherwise`.
int argument(int argc, char** argv, int n, int otherwise);

}  // namespace hardover_bench
