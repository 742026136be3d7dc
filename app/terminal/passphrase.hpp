// Asks for a passphrase: from the terminal without showing it, or from a file for scripts. Never from the
// command line, where other users of the PC could read it.
#pragma once

#include <string>

#include "app/terminal/context.hpp"

namespace hardover {

// The first line of a file, or of a pipe, which a script may give secrets by; no more than 4096 bytes of it.
// Error: it cannot be read.
Result<std::string> first_line_of(const std::string& path);

// The first line of `file` ("-": of the standard input), or typed after `prompt` where `file` is empty.
// Errors: the file cannot be read; there is nobody to ask.
Result<std::string> read_passphrase(Context& context, const std::string& file, const std::string& prompt);

}  // namespace hardover
