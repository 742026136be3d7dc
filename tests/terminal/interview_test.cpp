// A comeback job taken from complaint to hand-back in the terminal, with the built program and the shipped
// knowledge.
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "support.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;

namespace {

std::vector<std::string> with_records(const TemporaryFolder& folder, std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), {"--records", folder.file("records.db")});
    return arguments;
}

// Invented boat: two rams on a hand helm, a hose crossed at one of them. Its remedy is next.
const std::string crossed_hoses =
    "hard_one_way\n"
    "rig helm manual_pump\n"
    "rig rams 2\n"
    "history just_fitted\n"
    "answer effort_both_ways heavy\n"
    "answer rams_fight frees\n"
    "answer hose_ports crossed\n";

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("Answers through a pipe finish a job, and the file has it") {
    const TemporaryFolder folder;
    const Ran interview = run_program(with_records(folder, {"interview", "--boat", "Second Wind"}),
                                      crossed_hoses + "cured\nhoses_crossed seen\n");
    INFO(interview.out << interview.err);
    REQUIRE(interview.code == 0);
    CHECK(holds(interview.out, "CAUTION"));
    CHECK(holds(interview.out, "Job 1 is handed back and filed."));

    const Ran shown = run_program(with_records(folder, {"job", "show", "1"}));
    INFO(shown.out);
    CHECK(shown.code == 0);
    CHECK(holds(shown.out, "Second Wind"));
    CHECK(holds(shown.out, "Hoses crossed between the two rams"));
    CHECK(holds(shown.out, "Handed back"));
    CHECK(holds(interview.out, "STOP: "));  // while the rams fight
    CHECK_FALSE(holds(shown.out, "STOP"));  // cured and handed back: it may run again
    CHECK(holds(run_program(with_records(folder, {"job", "list"})).out, "Second Wind  Handed back"));
}

TEST_CASE("The interview goes from the complaint to a proved cause by answering what it asks") {
    const TemporaryFolder folder;
    // Always the worst reading on offer: there is some step to take every time, never the same question twice
    // in a row, and the interview ends in a remedy, not in the air.
    std::string input = "wander\n";
    for (int i = 0; i < 40; ++i) input += "1\n";
    const Ran interview = run_program(with_records(folder, {"interview"}), input);
    INFO(interview.out << interview.err);
    CHECK(interview.code == 0);
    CHECK(holds(interview.out, "is handed back and filed."));
}

TEST_CASE("Kill -9 in mid-interview loses no confirmed answer") {
    const TemporaryFolder folder;
    {
        RunningProgram interview(with_records(folder, {"interview", "--boat", "Tern"}));
        REQUIRE(interview.wait_for_prompt(1));
        interview.type("wander");
        REQUIRE(interview.wait_for_prompt(2));
        interview.type("answer wheel_feel springy");
        REQUIRE(interview.wait_for_prompt(3));
        interview.type("answer wheel_sponge 2 3/4 in");
        REQUIRE(interview.wait_for_prompt(4));
        interview.kill_hard();
    }
    const Ran shown = run_program(with_records(folder, {"job", "show", "1"}));
    INFO(shown.out << shown.err);
    CHECK(holds(shown.out, "Feel of the wheel: Springy"));
    CHECK(holds(shown.out, "2 3/4 in"));
    const Ran again = run_program(with_records(folder, {"interview", "--job", "1"}), "u\nq\n");
    INFO(again.out << again.err);
    CHECK(again.code == 0);
    CHECK(holds(again.out, "Taken back."));
}

TEST_CASE("A wrong answer is refused in words and nothing is lost") {
    const TemporaryFolder folder;
    const Ran interview = run_program(with_records(folder, {"interview"}),
                                      "wander\nanswer wheel_sponge 3 psi\nanswer whell_feel springy\n"
                                      "answer wheel_feel sprngy\nanswer wheel_feel springy\n");
    INFO(interview.out);
    CHECK(interview.code == 0);
    CHECK(holds(interview.out, "length"));
    CHECK(holds(interview.out, "wheel_feel"));
    CHECK(holds(interview.out, "springy"));
    CHECK(holds(run_program(with_records(folder, {"job", "events", "1"})).out, "wheel_feel"));
}

TEST_CASE("Can't tell is an answer, and the question is not asked again") {
    const TemporaryFolder folder;
    std::string input = "noise_at_full_lock\n";
    for (int i = 0; i < 120; ++i) input += "?\n";
    const Ran interview = run_program(with_records(folder, {"interview"}), input);
    INFO(interview.out);
    CHECK(interview.code == 0);
    std::vector<std::string> asked;
    std::size_t repeats = 0;
    const Ran events = run_program(with_records(folder, {"job", "events", "1"}));
    std::istringstream lines(events.out);
    for (std::string line; std::getline(lines, line);) {
        if (!holds(line, "cannot_tell") && !holds(line, "can't tell")) continue;
        const std::string what = line.substr(line.find("Z") + 1);
        for (const std::string& earlier : asked) repeats += earlier == what ? 1 : 0;
        asked.push_back(what);
    }
    CHECK(asked.size() > 3);
    CHECK(repeats == 0);
}

TEST_CASE("An unknown job number is a clear message") {
    const TemporaryFolder folder;
    REQUIRE(run_program(with_records(folder, {"interview", "--boat", "Tern"}), "wander\n").code == 0);
    const Ran ran = run_program(with_records(folder, {"interview", "--job", "77"}));
    CHECK(ran.code == 1);
    CHECK(holds(ran.err, "77"));
    CHECK(ran.err.rfind("hardover: ", 0) == 0);
}

TEST_CASE("Changed knowledge is noticed in mid-interview and read anew without losing an answer") {
    const TemporaryFolder folder;
    const std::string copy = folder.file("knowledge");
    std::filesystem::copy(source_path("knowledge"), copy);
    RunningProgram interview({"--records", folder.file("records.db"), "--knowledge", copy, "interview"});
    REQUIRE(interview.wait_for_prompt(1));
    interview.type("wander");
    REQUIRE(interview.wait_for_prompt(2));
    interview.type("answer wheel_feel springy");
    REQUIRE(interview.wait_for_prompt(3));
    CHECK_FALSE(holds(interview.seen(), "the knowledge files have changed"));

    write_file(copy + "/zz_added.yaml", "- need: dry_day\n  nam: A dry day\n");
    interview.type("need");
    REQUIRE(interview.wait_for_prompt(4));
    CHECK(holds(interview.seen(), "the knowledge files have changed"));
    interview.type("reload");
    REQUIRE(interview.wait_for_prompt(5));
    CHECK(holds(interview.seen(), "The changed knowledge cannot be used"));
    CHECK(holds(interview.seen(), "zz_added.yaml:2:3:"));

    write_file(copy + "/zz_added.yaml", "- need: dry_day\n  name: A dry day\n");
    interview.type("reload");
    REQUIRE(interview.wait_for_prompt(6));
    CHECK(holds(interview.seen(), "The knowledge was read anew: "));
    CHECK_FALSE(holds(interview.seen(), "dry_day: A dry day"));
    interview.type("need");
    REQUIRE(interview.wait_for_prompt(7));
    CHECK(holds(interview.seen(), "dry_day: A dry day"));
    interview.type("all");
    REQUIRE(interview.wait_for_prompt(8));
    CHECK(holds(interview.seen(), "Springy, it gives and comes back"));
}

TEST_CASE("What decides on causes and was left open at the intake is named until it is told") {
    const TemporaryFolder folder;
    const Ran ran = run_program(with_records(folder, {"interview"}),
                                "hard_one_way\n"
                                "history just_fitted\n"
                                "rig helm manual_pump\n");
    INFO(ran.out << ran.err);
    const std::size_t told = ran.out.find("Not told yet, and it matters here: what was done lately");
    REQUIRE(told != std::string::npos);
    CHECK(holds(ran.out.substr(told), "(rig helm CHOICE)"));
    const std::size_t last = ran.out.rfind("Likely causes");
    CHECK_FALSE(holds(ran.out.substr(last), "(rig helm CHOICE)"));
    CHECK_FALSE(holds(ran.out.substr(last), "(history ID)"));
}

TEST_CASE("What the customer says later is added to the complaints told at the intake") {
    const TemporaryFolder folder;
    const Ran ran = run_program(with_records(folder, {"interview"}),
                                "hard_one_way\n"
                                "complaint weep_at_rod\n"
                                "complaint weep_at_rod\n"
                                "complaint no_such_complaint\n"
                                "complaint\n");
    INFO(ran.out << ran.err);
    CHECK(holds(ran.out, "Several go on one line: 1, 3. One more later: complaint ID"));
    CHECK(holds(ran.out, "'no_such_complaint' is not one of the complaints."));
    const std::string listed = ran.out.substr(ran.out.find("'no_such_complaint' is not"));
    CHECK(holds(listed, "[hard_one_way] (told)"));
    CHECK(holds(listed, "[weep_at_rod] (told)"));
    CHECK_FALSE(holds(listed, "[wander] (told)"));

    const Ran events = run_program(with_records(folder, {"job", "events", "1"}));
    CHECK(holds(events.out, "complaints: hard_one_way, weep_at_rod\n"));
}

TEST_CASE("A finding asked out of turn can be left again, and undo takes back no answer for it") {
    const TemporaryFolder folder;
    for (const char* leave : {"\n", "u\n"}) {
        INFO(leave);
        const Ran ran = run_program(with_records(folder, {"interview"}),
                                    std::string("wander\nask wheel_feel\n") + leave + "all\n");
        INFO(ran.out << ran.err);
        CHECK(holds(ran.out, "Enter alone: back to the next step"));
        CHECK_FALSE(holds(ran.out, "Taken back."));
        CHECK(holds(ran.out.substr(ran.out.rfind("Enter alone")), "Likely causes"));
    }
}

TEST_CASE("What a check shows besides is asked on Enter alone, without its cautions once more") {
    const TemporaryFolder folder;
    // The reservoir's cap is off: level, then what else is to be seen there.
    const std::string job = "springy_wheel\nhistory just_fitted\nrig helm manual_pump\nrig lies ashore_dry\n";
    const Ran level = run_program(with_records(folder, {"interview"}), job + "at_mark\n");
    INFO(level.out << level.err);
    const std::size_t offered = level.out.find("Still open in “Look in the reservoir”: ");
    REQUIRE(offered != std::string::npos);
    const Ran more = run_program(with_records(folder, {"interview"}), job + "at_mark\n\n");
    const std::size_t asked = more.out.rfind("Look in the reservoir\n");
    REQUIRE(asked != std::string::npos);
    CHECK(holds(more.out.substr(asked), "Can't tell"));
    CHECK_FALSE(holds(more.out.substr(asked), "CAUTION"));
}

TEST_CASE("A word that is no history and no yes or no is said to be none") {
    const TemporaryFolder folder;
    const Ran ran =
        run_program(with_records(folder, {"interview"}),
                    "wander\nhistory foo\nneed second_person maybe\nhistory in_service\nhistory\n");
    INFO(ran.out << ran.err);
    CHECK(holds(ran.out, "There is no history 'foo'."));
    CHECK(holds(ran.out, "'second_person maybe' does not say yes or no"));
    CHECK(holds(ran.out, "(this one)"));
}

namespace {

// Invented boat with two faults, each proved by its check: the first remedy helped, the second cured.
const std::string two_faults = "loose_or_clunking\nanswer rod_end_play loose\nanswer bracket_bolts loose\n";

std::string events_of(const TemporaryFolder& folder) {
    return run_program(with_records(folder, {"job", "events", "1"})).out;
}

}  // namespace

TEST_CASE("Several causes are handed back with commas between, each seen or not") {
    const TemporaryFolder folder;
    const Ran interview = run_program(with_records(folder, {"interview", "--boat", "Tern"}),
                                      two_faults + "done bracket_loose, rod_ends_worn, hose_chafed\n");
    INFO(interview.out << interview.err);
    CHECK(holds(interview.out, "Job 1 is handed back and filed."));
    // What its check has proved needs no word; what was neither proved nor seen is assumed.
    CHECK(holds(events_of(folder),
                "bracket_loose, confirmed; rod_ends_worn, confirmed; hose_chafed, not confirmed"));
    const Ran shown = run_program(with_records(folder, {"job", "show", "1"}));
    INFO(shown.out);
    CHECK(holds(shown.out, "Handed back. Causes: ram bracket bolts loose, seen and"));
}

TEST_CASE("A cause that was neither proved nor seen is kept as assumed until 'seen' is said") {
    for (const bool seen : {false, true}) {
        const TemporaryFolder folder;
        const Ran interview =
            run_program(with_records(folder, {"interview", "--boat", "Tern"}),
                        std::string("wander\ndone air_in_oil") + (seen ? " seen" : "") + ", not_listed\n");
        INFO(interview.out);
        CHECK(holds(events_of(folder), seen ? "air_in_oil, confirmed; not_listed, not confirmed"
                                            : "air_in_oil, not confirmed; not_listed, not confirmed"));
    }
}

TEST_CASE("Bad causes at the hand-back are refused in words and the job stays in hand") {
    const TemporaryFolder folder;
    const Ran interview =
        run_program(with_records(folder, {"interview", "--boat", "Tern"}),
                    "wander\ndone air_in_oil, air_in_oil seen\ndone air_in_oill\ndone air_in_oil maybe\n"
                    "done air_in_oil,\ndone 99\n");
    INFO(interview.out);
    CHECK(holds(interview.out, "the cause 'air_in_oil' is named twice (name it once)"));
    CHECK(holds(interview.out, "there is no cause 'air_in_oill'"));
    CHECK(holds(interview.out, "Give the number or id of the true cause"));
    CHECK_FALSE(holds(interview.out, "is handed back and filed"));
    CHECK_FALSE(holds(events_of(folder), "handed back"));
}

TEST_CASE("Handing back without a cause takes those that were proved and put right") {
    const TemporaryFolder folder;
    // The crossed hoses are put right and the boat is better, and goes as it is.
    const Ran rest =
        run_program(with_records(folder, {"interview", "--boat", "Tern"}), crossed_hoses + "better\ndone\n");
    INFO(rest.out);
    CHECK(holds(rest.out, "is handed back and filed"));
    CHECK(holds(events_of(folder), "handed back: hoses_crossed, confirmed"));
}

TEST_CASE("Done without a cause closes no job of which nothing is proved and put right") {
    const TemporaryFolder folder;
    const Ran ran = run_program(with_records(folder, {"interview", "--boat", "Tern"}),
                                "weep_at_fitting\nanswer jet_or_mist jet\ndone\n");
    INFO(ran.out);
    CHECK(holds(ran.out, "Say with which cause the boat goes"));
    CHECK_FALSE(holds(ran.out, "is handed back and filed"));
    CHECK_FALSE(holds(events_of(folder), "handed back"));
}
