// The window: opens it, feeds it keys and the pointer, and sleeps while nothing happens.
#pragma once

#include <functional>
#include <string>

#include "app/jobs/knowledge_in_use.hpp"
#include "app/records/store.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct WindowSettings {
    std::string assets_folder;     // holds fonts/Inter-Regular.otf and fonts/Inter-SemiBold.otf
    std::string preferences_file;  // theme and text size; "" = not kept
    JobNumber job = 0;             // to be opened at once; 0: the bench
};

// Whether a window can be opened here. The error says why not and names the command to use instead.
Result<void> display_available();

// Shows the window until it is closed (its button, or Ctrl Q). Knowledge files that have changed are read
// anew when the window comes to the front, or with F5. Gives the program's exit code: 0, or 1 with one
// sentence on standard error when there is no display or the letters are missing.
int run_window(const std::function<Result<Knowledge>()>& await_knowledge, Store& store,
               const WindowSettings& settings);

}  // namespace hardover
