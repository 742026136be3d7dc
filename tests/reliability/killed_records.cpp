#include "killed_records.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <stdexcept>

#include "killed_commands.hpp"
#include "records_seen.hpp"
#include "scratch_folder.hpp"
#include "support.hpp"

namespace hardover_tests {

namespace fs = std::filesystem;

namespace {

constexpr int jobs_here = 30;
const std::string events_here = std::to_string(jobs_here * 12);
constexpr const char* count_events = "SELECT count(*) FROM events";

std::string must(const std::vector<std::string>& words, const std::string& input = "") {
    const Ran ran = run_program(words, input);
    if (ran.code != 0) throw std::runtime_error(words[2] + ": " + ran.err);
    return ran.out;
}

// Files made once, and copied for every kill.
class Made {
  public:
    std::string file(const std::string& name) const { return folder_.file(name); }
    void copy_to(const std::string& folder) const {
        fs::copy(folder_.file(""), folder,
                 fs::copy_options::recursive | fs::copy_options::overwrite_existing);
    }

  private:
    ScratchFolder folder_;
};

// A shop's records of today's layout, and those of its other computer with two jobs.
const Made& two_computers() {
    static const Made made;
    static const bool done = [] {
        make_version_1(made.file("records.db"), jobs_here);
        must({"--records", made.file("records.db"), "learner", "add", "A07"});
        for (const char* boat : {"Little Auk", "Sanderling"}) {
            must({"--records", made.file("other.db"), "interview", "--boat", boat},
                 "wander\nanswer wheel_feel springy\nnote of the other computer\nq\n");
        }
        fs::remove_all(made.file("backups"));
        return true;
    }();
    return done ? made : made;
}

std::string number_of_events(const std::string& path) {
    const RecordsSeen seen = see_records(path, count_events);
    return seen.trouble.empty() && !seen.rows.empty() ? seen.rows.front() : "damaged: " + seen.trouble;
}

// How many whole copies of the records stand in the folder's backups; a copy that is not whole is named.
std::string look_at_backups(const std::string& folder, int& whole) {
    whole = 0;
    if (!fs::exists(folder + "backups")) return "";
    for (const auto& entry : fs::recursive_directory_iterator(folder + "backups")) {
        if (entry.path().extension() != ".db") continue;
        const std::string found = number_of_events(entry.path().string());
        if (found != events_here) return "backup " + entry.path().filename().string() + " holds " + found;
        ++whole;
    }
    return "";
}

std::vector<std::string> on_records(const std::string& folder, std::vector<std::string> words) {
    words.insert(words.begin(), {"--records", folder + "records.db"});
    return words;
}

// A class with a set, taken at two seats and handed in.
const Made& a_class() {
    static const Made made;
    static const bool done = [] {
        write_file(made.file("passphrase"), "six words nobody would guess\n");
        write_file(made.file("roster.csv"), "seat,name,group\nA01,,Port\nA02,,Starboard\n");
        const auto on = [&](const std::string& records, std::vector<std::string> words,
                            const std::string& input) {
            words.insert(words.begin(), {"--records", made.file(records), "class", "--passphrase-file",
                                         made.file("passphrase")});
            must(words, input);
        };
        on("records.db", {"new", "Evening"}, "");
        on("records.db", {"roster", "import", made.file("roster.csv")}, "");
        on("records.db", {"set", "make", made.file(""), "quiz topic=signs count=3 seed=4"}, "");
        for (const std::string seat : {"A01", "A02"}) {
            on(seat + ".db", {"take", made.file("S1.hardover-set"), "--seat", seat}, "a @ 90\nb\n?\n");
            on(seat + ".db", {"hand-in", made.file(""), "--seat", seat}, "");
        }
        return true;
    }();
    return done ? made : made;
}

void change_everywhere(const std::string& path, const std::string& from, const std::string& to) {
    std::string bytes = file_text(path);
    int changed = 0;
    for (std::size_t at = 0; (at = bytes.find(from, at)) != std::string::npos; ++changed) {
        bytes.replace(at, from.size(), to);
    }
    if (changed == 0) throw std::runtime_error("nowhere in the file: " + from);
    write_file(path, bytes);
}

constexpr const char* all_bodies = "SELECT body FROM events ORDER BY job, sequence";

// The same with a backup beside them; then in one event a bit has turned, in another several.
const Made& damaged_records() {
    static const Made made;
    static const bool done = [] {
        two_computers().copy_to(made.file(""));
        must({"--records", made.file("records.db"), "records", "backup"});
        change_everywhere(made.file("records.db"), "\"job 5 event 2\"", "\"job 5 event 0\"");
        change_everywhere(made.file("records.db"), "\"job 7 event 4\"", "\"job 7 EVENT 4\"");
        return true;
    }();
    return done ? made : made;
}

bool kept_aside(const std::string& folder) {
    for (const auto& entry : fs::recursive_directory_iterator(folder + "backups")) {
        if (entry.is_regular_file() &&
            file_text(entry.path().string()).find("EVENT 4") != std::string::npos) {
            return true;
        }
    }
    return false;
}

std::vector<std::string> merged_attempts(const std::string& folder) {
    return see_records(
               folder + "records.db",
               "SELECT attempt || ': ' || count(*) FROM class_records GROUP BY attempt ORDER BY attempt")
        .rows;
}

}  // namespace

Command backing_up() {
    Command command;
    command.fault = "kill -9 during a backup";
    command.prepare = [](const std::string& folder) {
        two_computers().copy_to(folder);
        return on_records(folder, {"records", "backup"});
    };
    command.trouble = [](const std::string& folder, bool finished) -> std::string {
        const std::string here = number_of_events(folder + "records.db");
        if (here != events_here) return "the records hold " + here;
        int whole = 0;
        const std::string trouble = look_at_backups(folder, whole);
        return trouble.empty() && finished && whole == 0 ? "no backup is there" : trouble;
    };
    command.things = jobs_here * 12;
    return command;
}

Command restoring() {
    Command command;
    command.fault = "kill -9 while a backup is brought back";
    command.prepare = [](const std::string& folder) {
        two_computers().copy_to(folder);
        return on_records(folder, {"records", "restore", folder + "other.db"});
    };
    command.trouble = [](const std::string& folder, bool finished) -> std::string {
        static const std::string events_there = number_of_events(two_computers().file("other.db"));
        const std::string here = number_of_events(folder + "records.db");
        if (here == events_here && !finished) return "";
        if (here != events_there) return "the records hold " + here;
        // What was there before stands in a backup.
        if (!fs::exists(folder + "backups")) return "what was there before is nowhere";
        for (const auto& entry : fs::recursive_directory_iterator(folder + "backups")) {
            if (entry.is_regular_file() && number_of_events(entry.path().string()) == events_here) return "";
        }
        return "what was there before is in no backup";
    };
    command.things = jobs_here * 12;
    return command;
}

Command mending() {
    Command command;
    command.fault = "kill -9 while damaged rows are put right";
    command.prepare = [](const std::string& folder) {
        damaged_records().copy_to(folder);
        return on_records(folder, {"records", "mend"});
    };
    command.trouble = [](const std::string& folder, bool finished) -> std::string {
        static const auto written = see_records(two_computers().file("records.db"), all_bodies).rows;
        static const auto damaged = see_records(damaged_records().file("records.db"), all_bodies).rows;
        const RecordsSeen here = see_records(folder + "records.db", all_bodies);
        if (!here.trouble.empty()) return here.trouble;
        if (here.rows == damaged && !finished) return "";
        if (here.rows != written) return "the events are neither as they were written nor as they were found";
        return kept_aside(folder) ? "" : "the records as they were found are nowhere";
    };
    command.things = jobs_here * 12;
    return command;
}

Command merging_of_records() {
    Command command;
    command.fault = "kill -9 while another computer's records are merged";
    command.prepare = [](const std::string& folder) {
        two_computers().copy_to(folder);
        return on_records(folder, {"records", "merge", folder + "other.db"});
    };
    command.trouble = [](const std::string& folder, bool finished) -> std::string {
        static const int events_there = std::stoi(number_of_events(two_computers().file("other.db")));
        const std::string merged = std::to_string(jobs_here * 12 + events_there);
        const std::string here = number_of_events(folder + "records.db");
        if (number_of_events(folder + "other.db") != std::to_string(events_there))
            return "the other file is changed";
        return here == merged || (!finished && here == events_here) ? "" : "the records hold " + here;
    };
    command.things = jobs_here * 12;
    return command;
}

Command merging_of_hand_ins() {
    Command command;
    command.fault = "kill -9 while a class's hand-ins are merged";
    command.prepare = [](const std::string& folder) {
        a_class().copy_to(folder);
        return on_records(folder, {"class", "--passphrase-file", folder + "passphrase", "merge",
                                   folder + "S1_A01.hardover-hand-in", folder + "S1_A02.hardover-hand-in"});
    };
    command.trouble = [command](const std::string& folder, bool finished) -> std::string {
        static const std::vector<std::string> whole = [&] {
            const ScratchFolder unkilled;
            must(command.prepare(unkilled.file("")));
            return merged_attempts(unkilled.file(""));
        }();
        const RecordsSeen seen = see_records(folder + "records.db", "");
        if (!seen.trouble.empty()) return seen.trouble;
        const std::vector<std::string> found = merged_attempts(folder);
        if (finished) return found == whole && whole.size() == 2 ? "" : "not all hand-ins are there";
        // Each hand-in is there as a whole or not at all.
        const bool all_whole = std::includes(whole.begin(), whole.end(), found.begin(), found.end());
        return all_whole ? "" : "a hand-in is there in part";
    };
    command.things = 6;
    return command;
}

}  // namespace hardover_tests
