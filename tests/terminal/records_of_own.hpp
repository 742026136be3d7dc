// The built program on a records file of its own, for one test.
#pragma once

#include <string>
#include <vector>

#include "terminal/program.hpp"

namespace hardover_tests {

class RecordsOfOwn {
  public:
    std::string file() const { return folder_.file("records.db"); }
    std::vector<std::string> arguments(std::vector<std::string> words) const {
        words.insert(words.begin(), {"--records", file()});
        return words;
    }
    Ran run(const std::vector<std::string>& words, const std::string& input = "") const {
        return run_program(arguments(words), input);
    }

  private:
    TemporaryFolder folder_;
};

}  // namespace hardover_tests
