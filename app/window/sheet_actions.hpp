// What a person can ask for at the place Worksheets.
#pragma once

#include <string>
#include <variant>

namespace hardover::window {

struct OpenSheet {
    std::string id;  // "": the list of all
};
struct ShowSheet {  // from another place
    std::string id;
};
struct FilterSheets {
    std::string words;
};
struct EnterInput {
    std::string input;
    std::string text;  // "": as the job has it again
};
struct ClearSheet {};
struct DrawResult {
    std::string result;
};
struct DrawAgainst {
    std::string input;
};
struct UseInJob {};

using SheetAction = std::variant<OpenSheet, ShowSheet, FilterSheets, EnterInput, ClearSheet, DrawResult,
                                 DrawAgainst, UseInJob>;

}  // namespace hardover::window
