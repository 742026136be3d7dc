// Counts what was tried on the program and what became of it, for the table that `tests/run reliability`
// prints.
#pragma once

#include <ostream>
#include <string>

namespace hardover_tests {

// One line of the table: a kind of fault.
struct Tried {
    std::string fault;
    long tried = 0;
    long refused = 0;      // in words, with everything left as it was
    long carried_on = 0;   // the program did its work all the same, or went on where it had been
    long confirmed = 0;    // answers and files it had said were written
    long lost = 0;         // of those, not there afterwards
    std::string left_out;  // why it could not be tried here
};

// The line for a kind of fault; made when it is first asked for, in the order of asking.
Tried& tried(const std::string& fault);

void print_tally(std::ostream& out);

// Whether everything is to be tried, as `tests/run reliability` does, or only a share that is quick.
bool whole_run();

// `all` in a whole run, else `share`.
int so_many(int all, int share);

}  // namespace hardover_tests
