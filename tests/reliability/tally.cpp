#define CATCH_CONFIG_EXTERNAL_INTERFACES  // for the listener
#include "tally.hpp"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <cstdlib>
#include <deque>
#include <iostream>

namespace hardover_tests {

namespace {

std::deque<Tried>& lines() {
    static std::deque<Tried> all;  // a line stays where it is when others come
    return all;
}

// Prints the table when all tests have run.
class TallyAtTheEnd : public Catch::TestEventListenerBase {
  public:
    using TestEventListenerBase::TestEventListenerBase;
    void testRunEnded(const Catch::TestRunStats&) override {
        if (whole_run()) print_tally(std::cout);
    }
};
CATCH_REGISTER_LISTENER(TallyAtTheEnd)

}  // namespace

Tried& tried(const std::string& fault) {
    for (Tried& line : lines()) {
        if (line.fault == fault) return line;
    }
    lines().push_back({});
    lines().back().fault = fault;
    return lines().back();
}

void print_tally(std::ostream& out) {
    constexpr const char* form = "{:<62} {:>6} {:>8} {:>8} {:>10} {:>5}\n";
    Tried sum;
    out << fmt::format(form, "fault", "tried", "refused", "went on", "confirmed", "lost");
    for (const Tried& line : lines()) {
        if (!line.left_out.empty()) {
            out << fmt::format("{:<62} not tried: {}\n", line.fault, line.left_out);
            continue;
        }
        out << fmt::format(form, line.fault, line.tried, line.refused, line.carried_on, line.confirmed,
                           line.lost);
        sum.tried += line.tried;
        sum.refused += line.refused;
        sum.carried_on += line.carried_on;
        sum.confirmed += line.confirmed;
        sum.lost += line.lost;
    }
    out << fmt::format(form, "together", sum.tried, sum.refused, sum.carried_on, sum.confirmed, sum.lost);
}

bool whole_run() {
    const char* wish = std::getenv("HARDOVER_RELIABILITY");
    return wish != nullptr && std::string(wish) == "whole";
}

int so_many(int all, int share) {
    return whole_run() ? all : share;
}

}  // namespace hardover_tests
