// Small readers of what a person typed, and how paragraphs are printed, shared by the terminal's commands.
// Knows no job.
#pragma once

#include <iosfwd>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/jobs/page.hpp"

namespace hardover {

std::string trimmed(const std::string& text);

// "rig helm manual_pump" -> "rig", "helm manual_pump".
std::pair<std::string, std::string> first_word(const std::string& text);

// The id of the choice named by its number (1 is the first), its id, or its text; nothing when it is none of
// these.
std::optional<std::string> chosen_id(const std::string& typed, const std::vector<ChoiceText>& choices);

// "?", "can't tell", "cannot tell", "cannot_tell", "c".
bool means_cannot_tell(const std::string& typed);

std::string joined(const std::vector<std::string>& texts, const std::string& between);

// One word of a command, so that it can be pasted into a shell: "A07", "'Zoë B.'".
std::string shell_word(const std::string& text);

// As wrapped(), but keeps the blanks the text starts with; further lines start with `hang` spaces.
std::string wrapped_keeping_indent(const std::string& text, int width, int hang);

// A paragraph broken at 80 columns.
void say_wrapped(std::ostream& out, const std::string& text, int hang = 0);

}  // namespace hardover
