#include "kills.hpp"

#include <algorithm>

#include "records_seen.hpp"
#include "scratch_folder.hpp"
#include "tally.hpp"

namespace hardover_tests {

using std::chrono::microseconds;
using Clock = std::chrono::steady_clock;

namespace {

microseconds since(Clock::time_point start) {
    return std::chrono::duration_cast<microseconds>(Clock::now() - start);
}

microseconds up_to(microseconds most, std::mt19937& random) {
    return microseconds(std::uniform_int_distribution<long>(0, std::max(1L, long(most.count())))(random));
}

void count(const std::string& fault, const KillOutcome& outcome) {
    if (fault.empty()) return;
    Tried& line = tried(fault);
    line.tried += outcome.kills;
    line.carried_on += outcome.went_on;
    line.confirmed += outcome.confirmed;
    line.lost += outcome.lost;
}

// One dialogue over many kills.
class DialogueKiller {
  public:
    DialogueKiller(const Dialogue& dialogue, std::mt19937& random) : dialogue_(dialogue), random_(random) {}

    KillOutcome run(int kills) {
        find_pace();
        while (outcome_.kills < kills) round();
        one_more_time();
        return std::move(outcome_);
    }

  private:
    // How long a start and an answer take here, so that kills fall inside them.
    void find_pace() {
        const auto start = Clock::now();
        RunningProgram program(dialogue_.arguments(), dialogue_.around);
        if (!program.wait_for_prompt(1)) return trouble("it does not come to its prompt", program.seen());
        start_ = since(start);
        const auto asked = Clock::now();
        const std::size_t lines = 4;
        feed(program, lines);
        if (!program.wait_for_prompt(1 + static_cast<int>(lines))) {
            return trouble("it does not take the answers", program.seen());
        }
        answer_ = since(asked) / lines;
        program.kill_hard();
        look(lines, lines);
    }

    void round() {
        RunningProgram program(dialogue_.arguments(), dialogue_.around);
        const std::size_t lines = std::uniform_int_distribution<std::size_t>(1, 6)(random_);
        const auto work = answer_ * lines * 5 / 4;
        // One kill in four falls anywhere from the start on, the others after the program has come to its
        // prompt.
        const bool from_the_start = std::uniform_int_distribution<int>(0, 3)(random_) == 0;
        if (!from_the_start) {
            const bool came = program.wait_for_prompt(1);
            outcome_.went_on += came ? 1 : 0;
            if (!came) trouble("it does not go on after a kill", program.seen());
        }
        feed(program, lines);
        program.read_for(up_to(from_the_start ? start_ + work : work, random_));
        program.kill_hard();
        ++outcome_.kills;
        look(lines, std::min(lines, static_cast<std::size_t>(std::max(0, program.prompts() - 1))));
    }

    // After the last kill everything is done once without one.
    void one_more_time() {
        RunningProgram program(dialogue_.arguments(), dialogue_.around);
        feed(program, 1);
        if (!program.wait_for_prompt(2)) trouble("it does not go on after the last kill", program.seen());
        program.kill_hard();
        look(1, 1);
    }

    void feed(RunningProgram& program, std::size_t lines) {
        std::string text;
        for (std::size_t i = 0; i < lines; ++i) {
            text += (i == 0 ? "" : "\n") + dialogue_.line(next_ + static_cast<int>(i));
        }
        program.type(text);
    }

    void look(std::size_t lines, std::size_t confirmed) {
        std::vector<std::string> fed;
        for (std::size_t i = 0; i < lines; ++i) fed.push_back(dialogue_.trace(next_ + static_cast<int>(i)));
        next_ += static_cast<int>(lines);
        const RecordsSeen seen = see_records(dialogue_.records, dialogue_.on_record);
        if (!seen.trouble.empty()) trouble(seen.trouble, "");
        const long lost = count_lost(on_record_, fed, confirmed, seen.rows);
        if (lost > 0) trouble(std::to_string(lost) + " lost of those up to " + fed.front(), "");
        outcome_.lost += lost;
        outcome_.confirmed += static_cast<long>(confirmed);
        on_record_ = seen.rows;
    }

    void trouble(const std::string& what, const std::string& said) {
        const std::size_t end = said.size() < 400 ? 0 : said.size() - 400;
        outcome_.troubles.push_back("kill " + std::to_string(outcome_.kills) + ": " + what +
                                    (said.empty() ? "" : "; it said: ..." + said.substr(end)));
    }

    const Dialogue& dialogue_;
    std::mt19937& random_;
    KillOutcome outcome_;
    microseconds start_{200'000};
    microseconds answer_{20'000};
    int next_ = 0;  // answer
    std::vector<std::string> on_record_;
};

// What must hold after the kill, and after the command has been given again.
void look_after(const Command& command, const std::string& folder, const std::vector<std::string>& arguments,
                bool ended, KillOutcome& outcome) {
    outcome.confirmed += command.things;
    const auto note = [&](const std::string& trouble) {
        if (trouble.empty()) return;
        ++outcome.lost;
        outcome.troubles.push_back("kill " + std::to_string(outcome.kills) + ": " + trouble);
    };
    note(command.trouble(folder, ended));
    const Ran again = run_program(arguments);
    if (again.code == 0) {
        ++outcome.went_on;
    } else if (!ended) {
        note("given again it ends with " + std::to_string(again.code) + ": " + again.err);
    }
    note(command.trouble(folder, true));
}

}  // namespace

KillOutcome kill_dialogue(const Dialogue& dialogue, int kills, std::mt19937& random) {
    KillOutcome outcome = DialogueKiller(dialogue, random).run(kills);
    count(dialogue.fault, outcome);
    return outcome;
}

KillOutcome kill_command(const Command& command, int kills, std::mt19937& random) {
    KillOutcome outcome;
    microseconds whole{};
    for (int i = 0; i < 3; ++i) {
        const ScratchFolder folder;
        const auto arguments = command.prepare(folder.file(""));
        const auto start = Clock::now();
        const Ran ran = run_program(arguments);
        const auto took = since(start);
        whole = i == 0 ? took : std::min(whole, took);
        if (ran.code != 0) outcome.troubles.push_back("it does not work unkilled: " + ran.err);
    }
    while (outcome.kills < kills) {
        const ScratchFolder folder;
        const auto arguments = command.prepare(folder.file(""));
        RunningProgram program(arguments);
        const bool running = program.read_for(up_to(whole * 11 / 10, random));
        program.kill_hard();
        ++outcome.kills;
        look_after(command, folder.file(""), arguments, !running, outcome);
    }
    count(command.fault, outcome);
    return outcome;
}

std::string cannot_trace() {
    Surroundings around;
    around.through = {"strace", "-f", "-qq", "-o", "/dev/null", "-e", "trace=none"};
    const int code = run_program({"--version"}, "", around).code;
    if (code == 127) return "strace is not installed";
    return code == 0 ? "" : "processes may not be traced here";
}

KillOutcome kill_at_every_write(const Command& command) {
    KillOutcome outcome;
    const std::string calls = "pwrite64,write,fdatasync,fsync,ftruncate,rename,renameat2,unlink,unlinkat";
    bool killed = true;
    for (int n = 1; killed; ++n) {
        const ScratchFolder folder;
        const auto arguments = command.prepare(folder.file(""));
        Surroundings around;
        around.through = {"strace",
                          "-f",
                          "-qq",
                          "-o",
                          "/dev/null",
                          "-e",
                          "trace=" + calls,
                          "-e",
                          "inject=" + calls + ":signal=SIGKILL:when=" + std::to_string(n)};
        killed = run_program(arguments, "", around).code == 137;
        outcome.kills += killed ? 1 : 0;
        look_after(command, folder.file(""), arguments, !killed, outcome);
    }
    count(command.fault, outcome);
    return outcome;
}

}  // namespace hardover_tests
