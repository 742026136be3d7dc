// All faults of all files in one run; files and folders that cannot be read.
#include "reading/reading_support.hpp"

using namespace hardover;
using namespace hardover_tests;

TEST_CASE("Several faults in several files are all reported in one run, in order") {
    const KnowledgeRead read =
        read_changed({{"", "rules.yaml", "motor_sound is silent", "motor_sound is quiet"},
                      {"", "findings.yaml", "above: 9 psi", "above: 9 in"},
                      {"", "causes.yaml", "    prime: {runs_back: usually", "    prim: {runs_back: usually"},
                      {"", "checks.yaml", "tools: [Rope]", "tools: [Rope"},
                      {"", "causes.yaml", "remedy: clean_nozzle", "remedy: clean_nozle"},
                      {"", "checks.yaml", "formula: flow / expected", "formula: flow / expectd"}});
    CHECK_FALSE(read.knowledge);
    CHECK(as_text(read.faults) ==
          "causes.yaml:10:5: unknown finding 'prim' (did you mean 'prime'?)\n"
          "causes.yaml:81:11: unknown remedy 'clean_nozle' (did you mean 'clean_nozzle'?)\n"
          "checks.yaml:23:10: not readable as YAML: end of sequence flow not found (look at the indentation, "
          "quotes and brackets here and just above)\n"
          "checks.yaml:72:61: unknown name 'expectd' (did you mean 'expected'?)\n"
          "findings.yaml:58:42: '9 in' is a length, expected a pressure such as 4.5 psi (write it like 4.5 "
          "psi)\n"
          "rules.yaml:30:50: 'motor_sound' is never 'quiet' (it can be silent, hums, runs)\n");
}

TEST_CASE("An entry that is no YAML does not make what refers to it a fault") {
    const std::string faults = faults_after({"", "findings.yaml", "whole: Whole}", "whole: Whole"});
    CHECK(faults ==
          "findings.yaml:22:10: not readable as YAML: end of map flow not found (look at the indentation, "
          "quotes "
          "and brackets here and just above)\n");
}

TEST_CASE("Two entries of one file that are no YAML are both reported") {
    const KnowledgeRead read =
        read_changed({{"", "checks.yaml", "tools: [Rope]", "tools: [Rope"},
                      {"", "checks.yaml", "tools: [Vacuum gauge]", "tools: \"Vacuum gauge"}});
    CHECK(as_text(read.faults) ==
          "checks.yaml:23:10: not readable as YAML: end of sequence flow not found (look at the indentation, "
          "quotes "
          "and brackets here and just above)\n"
          "checks.yaml:31:10: not readable as YAML: the quote that opens here is not closed (look at the "
          "indentation, "
          "quotes and brackets here and just above)\n");
}

TEST_CASE("Rules that wait for each other are refused, naming them in a circle") {
    const KnowledgeRead read =
        read_changed({{"", "rules.yaml", "when: prime is one of (runs_back, sinks) or air_in_flow is spits",
                       "when: fact.delivery_throttled"},
                      {"", "rules.yaml", "when: hose_lie is kinked or nozzle_off is much_more",
                       "when: not fact.suction_side"}});
    CHECK_FALSE(read.knowledge);
    CHECK(as_text(read.faults) ==
          "rules.yaml:11:3: rules go round in a circle: 'r_water_runs_back' waits for 'r_hose_throttles' "
          "waits for "
          "'r_water_runs_back' (no fact may rest on itself)\n");
}

TEST_CASE("Columns are counted in letters, not bytes") {
    CHECK(faults_after({"", "causes.yaml", "{runs_back: usually, sinks: 0.2}",
                        "{runs_back: \"u\u00b1\u00bdy\", sinkz: 0.2}"}) ==
          "causes.yaml:10:24: 'u\u00b1\u00bdy' is neither a number nor a word of the scale 'how_often'\n"
          "causes.yaml:10:32: unknown reading 'sinkz' of finding 'prime' (did you mean 'sinks'?)\n");
}

TEST_CASE("Bytes that are no text are refused at their place") {
    CHECK(faults_after({"", "rules.yaml", "# What follows", "# What \xff follows"})
              .find("rules.yaml:1:8: a byte that is not text (save the file as UTF-8)\n") !=
          std::string::npos);
}

TEST_CASE("A byte order mark and Windows line ends do no harm") {
    std::vector<KnowledgeFile> files = garden_pump();
    for (KnowledgeFile& file : files) {
        std::string text = "\xEF\xBB\xBF";
        for (const char c : file.text) text += c == '\n' ? std::string("\r\n") : std::string(1, c);
        file.text = text;
    }
    const KnowledgeRead read = read_knowledge(files, Functions{});
    CHECK(as_text(read.faults) == "");
    CHECK(read.knowledge.has_value());
}

TEST_CASE("A base without causes, findings or histories is refused") {
    const KnowledgeRead read = read_knowledge({{"empty.yaml", "# nothing yet\n"}}, Functions{});
    CHECK_FALSE(read.knowledge);
    CHECK(as_text(read.faults) ==
          "empty.yaml:1:1: there is no history in any file\n"
          "empty.yaml:1:1: there is no finding in any file\n"
          "empty.yaml:1:1: there is no cause in any file\n");
}

TEST_CASE("No files and a folder that is not there are refused in words") {
    CHECK(as_text(read_knowledge({}, Functions{}).faults) == "there are no knowledge files\n");
    CHECK(as_text(read_knowledge_folder("no/such/folder", Functions{}).faults) ==
          "no/such/folder: the knowledge folder cannot be read: No such file or directory\n");
    const std::string tests = source_path("tests");
    CHECK(as_text(read_knowledge_folder(tests, Functions{}).faults) ==
          tests + ": the knowledge folder holds no *.yaml file (give the folder that holds them)\n");
}
