// A set: an ordered list of quizzes and practice boats for a class, as one small signed file. In practice
// mode the seeds stand in it, so the student's PC can mark, and no secrecy is claimed. In graded mode they
// are sealed under a start code that is given out in the room. Pure; knows no records.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "app/classroom/seal.hpp"
#include "app/study/practice_event.hpp"
#include "app/study/quiz.hpp"

namespace hardover::classroom {

inline constexpr const char* set_domain = "hardover.set.v1";
inline constexpr int most_tasks = 50;
inline constexpr int most_items = 200;  // of one quiz

struct Task {
    enum class Kind { quiz, boat };
    Kind kind = Kind::quiz;
    std::string topic;                                                        // quiz: id; "": all
    int count = 10;                                                           // quiz
    int level = 1;                                                            // boat
    study::practice::Guidance guidance = study::practice::Guidance::unaided;  // boat
    std::uint64_t seed = 0;
    std::optional<int> due;  // calendar day, counted from 1970-01-01
};

struct ClassSet {
    std::string id;  // "S1": of the class, short
    std::string title;
    std::string class_name;
    std::string sitting;  // 128 bits in hex
    bool graded = false;
    std::string knowledge;           // fingerprint: with other knowledge the questions would be others
    std::vector<std::string> seats;  // codes
    std::vector<Task> tasks;
    std::string public_key;  // the instructor's, in hex
    std::string sealed;      // graded: the box with the seeds
    // In which figures are asked: other units make other figures, so it is the same at every seat.
    UnitSystem units = UnitSystem::us;
    bool open = true;  // the seeds are there
};

// "2026-12-04" and back. Error bad_input: no day of the calendar.
Result<int> read_day(const std::string& text);
std::string day_text(int day);

// "Quiz: Wander at speed, 10 questions", "Practice boat of level 2, unaided". A topic that is not among
// `topics` is told by the words of its id.
std::string task_text(const Task& task, const std::vector<study::Topic>& topics = {});

// Error bad_input: an id, title, task or seat that cannot be, naming it.
Result<void> look_over(const ClassSet& set);

// The file: the set as a line of canonical JSON, and its signature. Of a graded set the seeds are left out.
std::string set_file(const ClassSet& set, const Secret& secret_key);
// `name` is the file's, for errors: not a set, changed or cut short since it was signed, of a newer version.
// That the key is this instructor's cannot be told from the file alone.
Result<ClassSet> read_set_file(const std::string& text, const std::string& name);

// Seals the seeds of a graded set. Errors: those of seal.
Result<void> seal_seeds(ClassSet& set, const std::string& start_code,
                        std::optional<Cost> cost = std::nullopt);
// Puts them back. Error bad_input: not the start code.
Result<void> open_seeds(ClassSet& set, const std::string& start_code);

// What a quiz of a set asks: the same for everyone, whatever they have answered before.
Result<std::vector<study::Item>> items_of(const Task& quiz, const study::Portraits& portraits, int day,
                                          UnitSystem units);
study::QuizWish wish_of(const Task& quiz, int day, UnitSystem units);

}  // namespace hardover::classroom
