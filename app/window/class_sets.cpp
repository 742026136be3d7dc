// The place Class: sets being made, what was handed in, and sets taken on this PC.
#include <fmt/format.h>
#include <filesystem>

#include "app/records/whole_file.hpp"
#include "app/window/class_desk.hpp"

namespace hardover::window {

using namespace classroom;

namespace {

constexpr const char* hand_in_ending = ".hardover-hand-in";

Error locked() {
    return {Error::Kind::bad_input, "the class's keys are shut", "", "give the passphrase first"};
}

// A file, or every hand-in of a folder, by name. Errors: neither is there, or one cannot be read.
Result<std::vector<NamedText>> hand_ins_at(const std::string& path) {
    std::error_code failed;
    std::vector<std::filesystem::path> files;
    if (std::filesystem::is_directory(path, failed)) {
        for (const auto& entry : std::filesystem::directory_iterator(path, failed)) {
            if (entry.path().extension() == hand_in_ending) files.push_back(entry.path());
        }
        if (files.empty()) {
            return Error{Error::Kind::not_found, "there is no hand-in in this folder", path,
                         std::string("hand-ins end in ") + hand_in_ending};
        }
    } else if (std::filesystem::is_regular_file(path, failed)) {
        files.emplace_back(path);
    } else {
        return Error{Error::Kind::not_found, "there is no such file or folder", path,
                     "give the whole path, such as /media/stick"};
    }
    std::sort(files.begin(), files.end());
    std::vector<NamedText> texts;
    for (const auto& file : files) {
        Result<std::string> text = read_whole_file(file.string());
        if (!text) return text.error();
        texts.push_back({file.filename().string(), std::move(text).value()});
    }
    return texts;
}

}  // namespace

void ClassDesk::read_sets() {
    std::vector<SetLine> before = std::move(page_.sets);
    page_.sets.clear();
    const auto sets = sets_of(classes_, *class_);
    if (!sets) return refused("set", sets.error());
    for (const ClassSet& set : sets.value()) {
        SetLine line{set.id, set.title, {}, "", "", ""};
        for (const Task& task : set.tasks) {
            line.tasks.push_back(task_text(task, page_.topics));
        }
        line.about = fmt::format(
            "For {} seats, {}.", set.seats.size(),
            set.graded ? "graded: the boats are sealed until the start code is given" : "for practice");
        if (set.graded && keys_) line.start_code = start_code_of(set, *keys_);
        for (const SetLine& old : before) {
            if (old.id == set.id) line.file = old.file;
        }
        page_.sets.push_back(std::move(line));
    }
}

void ClassDesk::tell_tasks() {
    page_.tasks.clear();
    for (const Task& task : tasks_) page_.tasks.push_back(task_text(task, page_.topics));
}

void ClassDesk::apply(const AddQuizTask& add) {
    Task task;
    task.topic = add.topic;
    task.count = add.count;
    task.seed = random_seed();
    tasks_.push_back(task);
    tell_tasks();
}

void ClassDesk::apply(const AddBoatTask& add) {
    Task task;
    task.kind = Task::Kind::boat;
    task.level = add.level;
    task.seed = random_seed();
    tasks_.push_back(task);
    tell_tasks();
}

void ClassDesk::apply(const DropTask& drop) {
    if (drop.at < tasks_.size()) tasks_.erase(tasks_.begin() + static_cast<std::ptrdiff_t>(drop.at));
    tell_tasks();
}

void ClassDesk::apply(const MakeSet& make) {
    if (!class_) return;
    if (!keys_) return refused("set", locked());
    SetWish wish{"", make.title, make.graded, tasks_};
    if (!make.due.empty()) {
        const Result<int> due = read_day(make.due);
        if (!due) return refused("set", due.error());
        for (Task& task : wish.tasks) task.due = due.value();
    }
    wish.units = units_;
    work({"set", "Making the set", false},
         [this, of = *class_, keys = keys_, wish, knowledge = prepared_.knowledge().fingerprint, at = now_(),
          cost = cost_](const Beside& beside) -> Background::Outcome {
             const auto made = make_set(beside.classes, of, *keys, wish, knowledge, at, cost);
             if (!made) return refusal("set", made.error());
             return [this, id = made.value().set.id] {
                 tasks_.clear();
                 tell_tasks();
                 view.title.clear();
                 read_class();
                 apply(WriteSet{id});
             };
         });
}

void ClassDesk::apply(const WriteSet& what) {
    if (!class_) return;
    const auto file = file_of_set(classes_, *class_, what.id);
    if (!file) return refused("sets", file.error());
    const auto path = write("sets", what.id + ".hardover-set", file.value());
    if (!path) return;
    for (SetLine& line : page_.sets) {
        if (line.id == what.id) line.file = *path;
    }
    done("sets", "Set " + what.id + " is written. Take this file to the students' PCs: " + *path, folder());
}

void ClassDesk::apply(const CollectHandIns& collect) {
    if (!class_) return;
    if (!keys_) return refused("collect", locked());
    work({"collect", "Taking in hand-ins"},
         [this, of = *class_, keys = keys_, path = collect.path,
          at = now_()](const Beside& beside) -> Background::Outcome {
             const auto files = hand_ins_at(path);
             if (!files) return refusal("collect", files.error());
             const auto merged = merge_hand_ins(beside.classes, of, *keys, files.value(), at, beside.watched);
             if (!merged) return refusal("collect", merged.error());
             return [this, report = merged.value()] { take_merged(report); };
         });
}

void ClassDesk::take_merged(const MergeReport& report) {
    page_.collected.clear();
    int fresh = 0;
    std::size_t taken = 0;
    for (const MergedFile& file : report.files) {
        page_.collected.push_back({merge_text(file), file.refused.has_value()});
        fresh += file.fresh;
        taken += file.refused ? 0 : 1;
    }
    page_.missing = report.missing;
    page_.figures.reset();
    const std::string text = fmt::format("{} of {} files are taken in, {} new records.", taken,
                                         report.files.size() + report.left, fresh);
    if (report.left == 0) return done("collect", text);
    page_.told = {"collect", "Stopped. " + text + " What is in is whole: take in the rest the same way.",
                  Told::Kind::stopped, "", ""};
}

void ClassDesk::apply(const CheckCollected&) {
    if (!class_) return;
    page_.checked.clear();
    work({"check", "Looking over all that was collected"},
         [this, of = *class_](const Beside& beside) -> Background::Outcome {
             const auto checked = check_collected(beside.classes, of, beside.watched);
             if (beside.stop) return stopped("check", "Stopped before everything was looked over.");
             if (!checked) return refusal("check", checked.error());
             return [this, faults = checked.value()] {
                 page_.checked = faults;
                 if (faults.empty()) return done("check", "Everything collected is as it came in.");
                 page_.told = {"check", "Something is not as it was when it came in:", Told::Kind::trouble,
                               "", ""};
             };
         });
}

std::optional<Taking> ClassDesk::taken_up() {
    std::optional<Taking> taken = std::move(taking_);
    taking_.reset();
    return taken;
}

void ClassDesk::apply(const BeginSet& begin) {
    std::error_code failed;
    if (!std::filesystem::is_regular_file(begin.path, failed)) {
        return refused("take", {Error::Kind::not_found, "there is no such file", begin.path,
                                "give the whole path of the set, such as /media/stick/S1.hardover-set"});
    }
    const Result<std::string> text = read_whole_file(begin.path);
    if (!text) return refused("take", text.error());
    auto taking = Taking::begin(classes_, text.value(), std::filesystem::path(begin.path).filename().string(),
                                begin.seat, begin.start_code, prepared_.knowledge(), now_());
    if (!taking) return refused("take", taking.error());
    taking_ = std::move(taking.value());
}

void ClassDesk::apply(const GoOnWithSet& go_on) {
    auto taking = Taking::go_on(classes_, go_on.attempt, go_on.start_code, prepared_.knowledge());
    if (!taking) return refused("taken." + go_on.attempt, taking.error());
    taking_ = std::move(taking.value());
}

void ClassDesk::apply(const HandInSet& what) {
    const std::string at = "taken." + what.attempt;
    std::string path;
    const auto handed = hand_in(
        classes_, what.attempt,
        [&](const HandedIn& hand_in) { return write_file(hand_in.file_name, hand_in.text, path); }, now_());
    if (!handed) return refused(at, handed.error());
    read_class();
    done(at, "Handed in. Give this file to the instructor: " + path, folder());
}

void ClassDesk::apply(const PurgeSet& what) {
    const std::string at = "taken." + what.attempt;
    const auto purged = classes_.purge(what.attempt, now_());
    if (!purged) return refused(at, purged.error());
    read_class();
    done(at, "The answers are off this PC.");
}

}  // namespace hardover::window
