// The dialogues of the program that are killed again and again: interview, practice boat, quiz.
#pragma once

#include <string>

#include "kills.hpp"

namespace hardover_tests {

// A new job every forty events, so that the work of one answer stays that of a real job.
Dialogue interview_dialogue(const std::string& records);

// One learner on practice boats; the learner is added by this call.
Dialogue practice_dialogue(const std::string& records);
Dialogue quiz_dialogue(const std::string& records);

}  // namespace hardover_tests
