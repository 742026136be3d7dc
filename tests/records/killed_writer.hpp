// A program that appends events to a job and is killed at a random moment, again and again.
#pragma once

#include <string>

namespace hardover_tests {

// Kills a writer of job 1 so many times, and checks each time that every event it had confirmed is there, in
// order, and the file sound. `path`: from make_records(path, 1). Gives the events there at the end.
int kill_writers(const std::string& path, int kills, unsigned seed);

}  // namespace hardover_tests
