// What a person can ask for at the place Class, beside what is done with a projected boat.
#pragma once

#include <cstddef>
#include <string>
#include <variant>

namespace hardover::window {

enum class ClassTab { together, roster, sets, collect, figures, take };

struct ShowClassTab {
    ClassTab tab = ClassTab::together;
};

// The class and its passphrase.
struct MakeClass {
    std::string name;
    std::string passphrase;
    std::string again;
};
struct OpenKeys {
    std::string passphrase;
};
struct ShutKeys {};
struct ChooseClass {
    std::string name;
};

// The roster.
struct AddSeat {
    std::string code;
    std::string name;
    std::string group;
};
struct ChangeSeat {
    std::string code;
    std::string name;
    std::string group;
};
struct RemoveSeat {
    std::string code;
};
struct ImportRoster {
    std::string path;
};

// The set that is being made, and those that were.
struct AddQuizTask {
    std::string topic;  // id; "": all
    int count = 10;
};
struct AddBoatTask {
    int level = 1;
};
struct DropTask {
    std::size_t at = 0;
};
struct MakeSet {
    std::string title;
    std::string due;  // a day as typed; "": none
    bool graded = false;
};
struct WriteSet {
    std::string id;
};

// Hand-ins and what they come to.
struct CollectHandIns {
    std::string path;  // a file or a folder
};
struct CheckCollected {};
struct WorkOutFigures {};
struct InventClass {};  // figures of a class that is made up
enum class ClassExport { sheet, tables };
struct ExportClass {
    ClassExport what = ClassExport::sheet;
    bool with_names = false;
};
// Questions that go out of the program: on paper with their key, or for other programs.
enum class QuizExport { paper, questions };
struct ExportQuiz {
    QuizExport what = QuizExport::paper;
    std::string topic;  // id; "": all
    int count = 10;
};
struct StopClassWork {};

// A set taken on this PC.
struct BeginSet {
    std::string path;
    std::string seat;
    std::string start_code;
};
struct GoOnWithSet {
    std::string attempt;
    std::string start_code;
};
struct HandInSet {
    std::string attempt;
};
struct PurgeSet {
    std::string attempt;
};

using ClassAction =
    std::variant<ShowClassTab, MakeClass, OpenKeys, ShutKeys, ChooseClass, AddSeat, ChangeSeat, RemoveSeat,
                 ImportRoster, AddQuizTask, AddBoatTask, DropTask, MakeSet, WriteSet, CollectHandIns,
                 CheckCollected, WorkOutFigures, InventClass, ExportClass, ExportQuiz, StopClassWork,
                 BeginSet, GoOnWithSet, HandInSet, PurgeSet>;

}  // namespace hardover::window
