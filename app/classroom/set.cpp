#include "app/classroom/set.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <chrono>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <sstream>

#include "app/classroom/canonical.hpp"
#include "app/classroom/roster.hpp"
#include "app/jobs/json_fields.hpp"
#include "app/jobs/replay.hpp"
#include "app/study/practice_boat.hpp"

namespace hardover::classroom {

namespace {

using nlohmann::json;
using study::practice::guidance_id;

// A set in metric units is of the second form, so that a program that knows only the first asks for a newer
// one instead of other figures.
constexpr int us_form = 1;
constexpr int units_form = 2;
constexpr const char* metric_word = "metric";
constexpr std::size_t longest_title = 120;
constexpr std::size_t id_bytes = 16;
constexpr const char* seeds_purpose = "hardover.seeds.v1";

Error bad_set(const std::string& what, const std::string& where, const std::string& cure) {
    return {Error::Kind::bad_input, what, where, cure};
}

Error damaged(const std::string& what, const std::string& name) {
    return bad_set(what, name, "copy the set once more from the instructor");
}

json json_of(const Task& task, bool with_seed) {
    json value;
    if (task.kind == Task::Kind::quiz) {
        value = {{"kind", "quiz"}, {"topic", task.topic}, {"count", task.count}};
    } else {
        value = {{"kind", "boat"}, {"level", task.level}, {"guidance", guidance_id(task.guidance)}};
    }
    if (with_seed) value["seed"] = task.seed;
    if (task.due) value["due"] = day_text(*task.due);
    return value;
}

// May throw what the JSON library throws.
Result<Task> task_of(const json& value) {
    Task task;
    const std::string kind = value.at("kind").get<std::string>();
    if (kind == "quiz") {
        task.topic = value.at("topic").get<std::string>();
        task.count = whole_at(value, "count");
    } else if (kind == "boat") {
        task.kind = Task::Kind::boat;
        task.level = whole_at(value, "level");
        const auto guidance = study::practice::read_guidance(value.at("guidance").get<std::string>());
        if (!guidance) return guidance.error();
        task.guidance = guidance.value();
    } else {
        return bad_set("there is no task of kind '" + kind + "' in this version", "", "use a newer version");
    }
    if (value.contains("seed")) task.seed = seed_at(value, "seed");
    if (value.contains("due")) {
        const auto due = read_day(value.at("due").get<std::string>());
        if (!due) return due.error();
        task.due = due.value();
    }
    return task;
}

// May throw what the JSON library throws.
Result<ClassSet> set_of(const json& read) {
    ClassSet set;
    set.id = read.at("id").get<std::string>();
    set.title = read.at("title").get<std::string>();
    set.class_name = read.at("class").get<std::string>();
    set.sitting = read.at("sitting").get<std::string>();
    set.graded = read.at("mode").get<std::string>() == "graded";
    set.knowledge = read.at("knowledge").get<std::string>();
    set.seats = read.at("seats").get<std::vector<std::string>>();
    set.public_key = read.at("key").get<std::string>();
    set.open = !set.graded;
    if (set.graded) set.sealed = canonical(read.at("sealed"));
    if (read.at("hardover_set") == units_form) {
        if (read.at("units").get<std::string>() != metric_word)
            return bad_set("these units of a set are not known", "", "use a newer version");
        set.units = UnitSystem::metric;
    }
    for (const json& value : read.at("tasks")) {
        auto task = task_of(value);
        if (!task) return task.error();
        set.tasks.push_back(std::move(task).value());
    }
    return set;
}

// As it is read out: small letters, one blank between the words.
std::string tidy(const std::string& words) {
    std::string text;
    std::istringstream in(words);
    for (std::string word; in >> word;) text += (text.empty() ? "" : " ") + word;
    for (char& letter : text) letter = static_cast<char>(std::tolower(static_cast<unsigned char>(letter)));
    return text;
}

Result<void> look_over(const Task& task, std::size_t number) {
    const std::string where = "task " + std::to_string(number);
    if (task.kind == Task::Kind::quiz && (task.count < 1 || task.count > most_items)) {
        return bad_set("a quiz cannot have " + std::to_string(task.count) + " questions", where, "1 to 200");
    }
    const bool is_boat = task.kind == Task::Kind::boat;
    if (is_boat && (task.level < study::least_level || task.level > study::most_level)) {
        return bad_set("there is no level " + std::to_string(task.level), where, "1 (easiest) to 5");
    }
    return {};
}

std::string topic_text(const std::string& id, const std::vector<study::Topic>& topics) {
    if (id.empty()) return "everything";
    const auto known =
        std::find_if(topics.begin(), topics.end(), [&](const study::Topic& topic) { return topic.id == id; });
    return known == topics.end() ? jobs_detail::spoken_id(id) : known->name;
}

}  // namespace

Result<int> read_day(const std::string& text) {
    int year = 0, month = 0, day = 0, read = 0;
    const bool form =
        text.size() == 10 && std::sscanf(text.c_str(), "%4d-%2d-%2d%n", &year, &month, &day, &read) == 3;
    const std::chrono::year_month_day date{std::chrono::year(year),
                                           std::chrono::month(static_cast<unsigned>(std::max(0, month))),
                                           std::chrono::day(static_cast<unsigned>(std::max(0, day)))};
    const int days = date.ok() ? std::chrono::sys_days(date).time_since_epoch().count() : 0;
    if (!form || read != 10 || year < 1 || !date.ok() || day_text(days) != text) {
        return bad_set("'" + text + "' is no day", "", "year, month, day, such as 2026-12-04");
    }
    return days;
}

std::string day_text(int day) {
    const std::chrono::year_month_day date{std::chrono::sys_days(std::chrono::days(day))};
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

std::string task_text(const Task& task, const std::vector<study::Topic>& topics) {
    std::string text =
        task.kind == Task::Kind::quiz
            ? fmt::format("Quiz: {}, {} question{}", topic_text(task.topic, topics), task.count,
                          task.count == 1 ? "" : "s")
            : fmt::format("Practice boat of level {}, {}", task.level, guidance_id(task.guidance));
    if (task.due) text += ", due " + day_text(*task.due);
    return text;
}

Result<void> look_over(const ClassSet& set) {
    Roster ids;  // a set's id keeps to the same letters as a seat's code
    if (const auto id = ids.add({set.id, "", ""}); !id) {
        return bad_set("'" + set.id + "' is no id of a set", "", "up to 16 letters and figures, such as S1");
    }
    if (set.title.size() > longest_title) {
        return bad_set("the title of the set is too long", set.id, "120 letters at most");
    }
    if (set.tasks.empty() || set.tasks.size() > most_tasks) {
        return bad_set("a set has 1 to 50 tasks", set.id, "add or leave out some");
    }
    if (set.seats.empty()) return bad_set("the set is for no seat", set.id, "fill the roster first");
    if (!from_hex(set.sitting, id_bytes) || !from_hex(set.public_key, public_key_size)) {
        return bad_set("the sitting or the key of the set is no number", set.id, "");
    }
    Roster seats;
    for (const std::string& code : set.seats) {
        if (auto right = seats.add({code, "", ""}); !right) return right;
    }
    for (std::size_t i = 0; i < set.tasks.size(); ++i) {
        if (auto right = look_over(set.tasks[i], i + 1); !right) return right;
    }
    return {};
}

std::string set_file(const ClassSet& set, const Secret& secret_key) {
    const bool metric = set.units == UnitSystem::metric;
    json body = {{"hardover_set", metric ? units_form : us_form},
                 {"id", set.id},
                 {"title", set.title},
                 {"class", set.class_name},
                 {"sitting", set.sitting},
                 {"mode", set.graded ? "graded" : "practice"},
                 {"knowledge", set.knowledge},
                 {"seats", set.seats},
                 {"key", set.public_key},
                 {"tasks", json::array()}};
    for (const Task& task : set.tasks) body["tasks"].push_back(json_of(task, !set.graded));
    if (metric) body["units"] = metric_word;
    if (set.graded) body["sealed"] = json::parse(set.sealed, nullptr, false);
    const std::string line = canonical(body);
    const Bytes signature = sign(set_domain + line, secret_key);
    return line + "\n" + canonical({{"signature", to_hex(signature)}}) + "\n";
}

Result<ClassSet> read_set_file(const std::string& text, const std::string& name) {
    const std::size_t first = text.find('\n');
    const json read = shallow_json(text.substr(0, first));
    if (!read.is_object() || !read.contains("hardover_set")) {
        return bad_set("this is no set of a class", name, "name the file the instructor gave out");
    }
    if (read["hardover_set"] != us_form && read["hardover_set"] != units_form) {
        return Error{Error::Kind::unsupported, "this set was made by a newer version", name,
                     "use that version on this PC too"};
    }
    if (first == std::string::npos || text.size() < first + 2 || text.back() != '\n') {
        return damaged("the set is cut short", name);
    }
    const std::string line = text.substr(0, first);
    const json end = shallow_json(text.substr(first + 1));
    try {
        const auto signature = from_hex(end.at("signature").get<std::string>(), signature_size);
        const auto key = from_hex(read.at("key").get<std::string>(), public_key_size);
        const std::string right_end = canonical({{"signature", end.at("signature")}}) + "\n";
        if (!signature || !key || text.substr(first + 1) != right_end ||
            !verify(set_domain + line, *signature, *key)) {
            return damaged("the set was changed after the instructor signed it", name);
        }
        auto set = set_of(read);
        if (!set) return damaged(set.error().what, name);
        if (const auto right = look_over(set.value()); !right) return damaged(right.error().text(), name);
        return set;
    } catch (const json::exception& error) {
        return damaged(std::string("the set lacks something: ") + error.what(), name);
    }
}

Result<void> seal_seeds(ClassSet& set, const std::string& start_code, std::optional<Cost> cost) {
    json seeds = json::array();
    for (const Task& task : set.tasks) seeds.push_back(task.seed);
    auto box = seal(seeds_purpose + set.sitting, canonical(seeds), tidy(start_code), cost);
    if (!box) return box.error();
    set.sealed = std::move(box).value();
    return {};
}

Result<void> open_seeds(ClassSet& set, const std::string& start_code) {
    const auto plain = open_box(seeds_purpose + set.sitting, set.sealed, tidy(start_code));
    if (!plain) {
        Error error = plain.error();
        if (error.kind == Error::Kind::bad_input) error.what = "this is not the start code of set " + set.id;
        return error;
    }
    const json seeds = json::parse(plain.value().bytes(), nullptr, false);
    if (!seeds.is_array() || seeds.size() != set.tasks.size()) {
        return damaged("the sealed part of the set does not fit it", set.id);
    }
    for (std::size_t i = 0; i < seeds.size(); ++i) {
        if (!seeds[i].is_number_unsigned()) return damaged("a seed of the set is no number", set.id);
        set.tasks[i].seed = seeds[i].get<std::uint64_t>();
    }
    set.open = true;
    return {};
}

study::QuizWish wish_of(const Task& quiz, int day, UnitSystem units) {
    return {quiz.topic, static_cast<std::size_t>(quiz.count), quiz.seed, day, units};
}

Result<std::vector<study::Item>> items_of(const Task& quiz, const study::Portraits& portraits, int day,
                                          UnitSystem units) {
    return study::choose_items(portraits, study::LearnerState(), wish_of(quiz, day, units));
}

}  // namespace hardover::classroom
