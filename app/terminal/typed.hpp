// What is typed on the command line, checked before a command sees it. Knows no command.
#pragma once

#include <CLI/CLI.hpp>

namespace hardover {

// Makes every option and place of `app` and of its commands that takes a whole number refuse what is none, or
// does not fit 64 bits: the library alone takes "" for 0 and a longer number for the greatest one.
void check_whole_numbers(CLI::App& app);

// A name that is kept and shown: some letters, all of them UTF-8 and none a control character.
CLI::Validator a_name();

// From 1 on.
CLI::Validator a_job_number();

// A file or folder that was left empty, as by a variable that is not set.
CLI::Validator not_empty();

}  // namespace hardover
