// The command line: reads the arguments, runs the command, prints. Decides nothing about a job that the
// window would have to decide too.
#pragma once

#include <functional>
#include <iosfwd>
#include <string>
#include <vector>

#include "app/jobs/knowledge_in_use.hpp"
#include "app/records/store.hpp"

namespace hardover {

struct Streams {
    std::istream& in;
    std::ostream& out;
    std::ostream& err;
    bool colour = false;  // the output is a terminal that shows bold
};

// Waits for the knowledge, which is read while the window is being opened; until then the records belong to
// the reading. To be called once.
using AwaitKnowledge = std::function<Result<Knowledge>()>;

// What `hardover` without a command does: open the window. Gives the exit code.
struct WindowRequest {
    JobNumber job = 0;        // 0: the bench
    std::string data_folder;  // where settings are kept
};
using OpenWindow = std::function<int(const AwaitKnowledge&, Store&, const WindowRequest&)>;

// Runs the program with the arguments after its name. Exit codes: 0 done, 1 refused (one message on err),
// 2 wrong command line.
int run_terminal(const std::vector<std::string>& arguments, Streams streams, const std::string& version,
                 const OpenWindow& open_window);

}  // namespace hardover
