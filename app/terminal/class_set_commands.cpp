// `hardover class set ...`: sets made, shown and written to a file to be carried to the students' PCs.
#include <fmt/format.h>

#include <charconv>
#include <map>
#include <nlohmann/json.hpp>
#include <ostream>
#include <sstream>

#include "app/jobs/job.hpp"
#include "app/records/whole_file.hpp"
#include "app/study/practice_boat.hpp"
#include "app/terminal/class_commands.hpp"

namespace hardover {

namespace {

using namespace classroom;
using nlohmann::ordered_json;

constexpr int most_questions = 200;  // in one quiz, as everywhere on the command line

Error bad_task(const std::string& text, const std::string& what) {
    return {Error::Kind::bad_input, what, "task '" + text + "'",
            "quiz topic=wander count=10, or: boat level=2 help=unaided; both may have seed=7 "
            "due=2026-12-04"};
}

template <typename Number>
Result<Number> read_number(const std::string& task, const std::string& key, const std::string& text) {
    Number number{};
    const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
    if (read.ec != std::errc() || read.ptr != text.data() + text.size()) {
        return bad_task(task, "'" + text + "' is no number for " + key);
    }
    return number;
}

Result<void> set_field(Task& task, const std::string& text, const std::string& key,
                       const std::string& value) {
    const bool quiz = task.kind == Task::Kind::quiz;
    if (key == "seed") {
        const auto seed = read_number<std::uint64_t>(text, key, value);
        if (!seed) return seed.error();
        task.seed = seed.value();
    } else if (key == "due") {
        const auto due = read_day(value);
        if (!due) return due.error();
        task.due = due.value();
    } else if (quiz && key == "topic") {
        task.topic = value;
    } else if ((quiz && key == "count") || (!quiz && key == "level")) {
        const auto number = read_number<int>(text, key, value);
        if (!number) return number.error();
        const auto [least, most] =
            quiz ? std::pair(1, most_questions) : std::pair(study::least_level, study::most_level);
        if (number.value() < least || number.value() > most) {
            return bad_task(
                text, fmt::format("{} has to be from {} to {}, not {}", key, least, most, number.value()));
        }
        (quiz ? task.count : task.level) = number.value();
    } else if (!quiz && key == "help") {
        const auto guidance = study::practice::read_guidance(value);
        if (!guidance) return guidance.error();
        task.guidance = guidance.value();
    } else {
        return bad_task(text, "'" + key + "' is nothing a " + (quiz ? "quiz" : "boat") + " has");
    }
    return {};
}

// "quiz topic=wander count=10 due=2026-12-04", "boat level=2 help=unaided seed=7".
Result<Task> read_task(const std::string& text) {
    std::istringstream words(text);
    std::string word;
    words >> word;
    if (word != "quiz" && word != "boat") return bad_task(text, "a task begins with quiz or boat");
    Task task;
    task.kind = word == "quiz" ? Task::Kind::quiz : Task::Kind::boat;
    task.seed = random_seed();
    while (words >> word) {
        const std::size_t sign = word.find('=');
        if (sign == std::string::npos) return bad_task(text, "'" + word + "' has no '='");
        const auto set = set_field(task, text, word.substr(0, sign), word.substr(sign + 1));
        if (!set) return set.error();
    }
    return task;
}

// Every quiz must be able to ask something: found out here, not in the classroom.
Result<void> try_tasks(const std::vector<Task>& tasks, const study::Portraits& portraits, UnitSystem units) {
    for (const Task& task : tasks) {
        if (task.kind == Task::Kind::quiz) {
            const auto items = items_of(task, portraits, 0, units);
            if (!items) return items.error();
        } else {
            const auto boat = study::make_practice_boat(portraits.prepared(), task.seed, task.level);
            if (!boat) return boat.error();
        }
    }
    return {};
}

ordered_json json_of(const ClassSet& set) {
    ordered_json tasks = ordered_json::array();
    for (const Task& task : set.tasks) {
        ordered_json one;
        if (task.kind == Task::Kind::quiz) {
            one = {{"kind", "quiz"}, {"topic", task.topic}, {"count", task.count}};
        } else {
            one = {{"kind", "boat"},
                   {"level", task.level},
                   {"guidance", study::practice::guidance_id(task.guidance)}};
        }
        if (set.open) one["seed"] = task.seed;
        if (task.due) one["due"] = day_text(*task.due);
        tasks.push_back(one);
    }
    return {{"id", set.id},
            {"title", set.title},
            {"class", set.class_name},
            {"sitting", set.sitting},
            {"mode", set.graded ? "graded" : "practice"},
            {"seats", set.seats},
            {"tasks", tasks}};
}

void print_set(std::ostream& out, const ClassSet& set) {
    out << fmt::format("{}  {}({}, {} seat{})\n", set.id, set.title.empty() ? "" : set.title + "  ",
                       set.graded ? "graded" : "practice", set.seats.size(),
                       set.seats.size() == 1 ? "" : "s");
    int number = 0;
    for (const Task& task : set.tasks)
        say_wrapped(out, fmt::format("  {}  {}", ++number, task_text(task)), 5);
}

}  // namespace

int run_set_make(Context& context, const ClassRequest& request) {
    // Before the set is made, so that a refusal leaves none behind.
    if (const auto there = folder_above(request.folder + "/set"); !there)
        return refuse(context, there.error());
    SetWish wish{request.set, request.title, request.graded, {}, request.seats, units_in_use(context)};
    for (const std::string& text : request.tasks) {
        const Result<Task> task = read_task(text);
        if (!task) return refuse(context, task.error());
        wish.tasks.push_back(task.value());
    }
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    if (const auto tried = try_tasks(wish.tasks, study::Portraits(knowledge.value()), wish.units); !tried) {
        return refuse(context, tried.error());
    }
    const Result<ClassKeys> keys = ask_for_keys(context, on_file.value().of, request);
    if (!keys) return refuse(context, keys.error());
    ClassStore store(on_file.value().store);
    const auto made =
        make_set(store, on_file.value().of, keys.value(), wish, knowledge.value().fingerprint, utc_now());
    if (!made) return refuse(context, made.error());
    const std::string path = request.folder + "/" + made.value().file_name;
    if (const auto written = write_whole_file(path, made.value().file); !written) {
        const auto gone = store.forget_set(made.value().set.sitting);
        return refuse(context, gone ? written.error() : gone.error());
    }
    std::ostream& out = context.streams.out;
    if (request.json) {
        ordered_json json = json_of(made.value().set);
        json["file"] = path;
        if (wish.graded) json["start_code"] = made.value().start_code;
        out << json.dump(2) << "\n";
        return 0;
    }
    print_set(out, made.value().set);
    out << "Written to " << path << "\n";
    if (wish.graded) {
        say_wrapped(
            out, "Start code, to be given out in the room when the set begins: " + made.value().start_code);
    }
    return 0;
}

int run_set_list(Context& context, const ClassRequest& request) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    const auto sets = sets_of(ClassStore(on_file.value().store), on_file.value().of);
    if (!sets) return refuse(context, sets.error());
    ordered_json list = ordered_json::array();
    for (const ClassSet& set : sets.value()) {
        if (request.json) {
            list.push_back(json_of(set));
        } else {
            print_set(context.streams.out, set);
        }
    }
    if (request.json) context.streams.out << list.dump(2) << "\n";
    if (sets.value().empty() && !request.json) {
        say_wrapped(context.streams.out,
                    "No set yet. Make one: hardover class set make FOLDER 'quiz topic=wander count=10'");
    }
    return 0;
}

int run_set_show(Context& context, const ClassRequest& request) {
    const Result<std::string> text = read_file(request.file);
    if (!text) return refuse(context, text.error());
    const auto set = read_set_file(text.value(), request.file);
    if (!set) return refuse(context, set.error());
    if (request.json) {
        context.streams.out << json_of(set.value()).dump(2) << "\n";
    } else {
        print_set(context.streams.out, set.value());
    }
    return 0;
}

int run_set_write(Context& context, const ClassRequest& request) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    const auto text = file_of_set(ClassStore(on_file.value().store), on_file.value().of, request.set);
    if (!text) return refuse(context, text.error());
    const std::string path = request.folder + "/" + request.set + ".hardover-set";
    if (const auto written = write_whole_file(path, text.value()); !written) {
        return refuse(context, written.error());
    }
    context.streams.out << "Written to " << path << "\n";
    return 0;
}

int run_set_start_code(Context& context, const ClassRequest& request) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    const auto set = find_set(ClassStore(on_file.value().store), on_file.value().of, request.set);
    if (!set) return refuse(context, set.error());
    if (!set.value().graded) {
        return refuse(context, {Error::Kind::bad_input, "set " + request.set + " is not graded", "",
                                "it opens without a start code"});
    }
    const Result<ClassKeys> keys = ask_for_keys(context, on_file.value().of, request);
    if (!keys) return refuse(context, keys.error());
    context.streams.out << start_code_of(set.value(), keys.value()) << "\n";
    return 0;
}

}  // namespace hardover
