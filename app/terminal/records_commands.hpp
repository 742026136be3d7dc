// `hardover records ...` and the commands of jobs that look at more than one: declared and run here.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>

#include "app/terminal/context.hpp"

namespace hardover {

// What the command line asked for; the commands put themselves there.
using RunCommand = std::function<int(Context&)>;

void add_records(CLI::App& app, RunCommand& run);

// Below `hardover job`: list with its filters, reopen, boat, attach, photos.
void add_job_records(CLI::App& job, RunCommand& run);

// The backup when a window or an interview closes. Says on err when it could not be made; what was written
// before is safe in any case.
void back_up_on_close(Context& context, const Store& store);

}  // namespace hardover
