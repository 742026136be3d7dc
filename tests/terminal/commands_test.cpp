// The commands that answer at once: assess, worksheet, knowledge, and the command line itself.
#include <cstdlib>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "support.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;
using nlohmann::json;

namespace {
bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}
}  // namespace

TEST_CASE("The program names its version and its commands") {
    const Ran version = run_program({"--version"});
    CHECK(version.code == 0);
    CHECK(version.out == "hardover 0.1.0\n");
    const Ran help = run_program({"--help"});
    CHECK(help.code == 0);
    for (const char* command : {"interview", "assess", "worksheet", "knowledge", "job"})
        CHECK(holds(help.out, command));
}

TEST_CASE("A wrong flag or command is refused with exit code 2") {
    CHECK(run_program({"--whell"}).code == 2);
    CHECK(run_program({"diagnoze"}).code == 2);
    CHECK(run_program({"job", "show", "minus"}).code == 2);
    CHECK(run_program({"assess"}).code == 2);
    CHECK(run_program({"job", "list", "--most", "0"}).code == 2);
}

TEST_CASE("A command that is none of a group is named, with those there are") {
    const Ran wrong = run_program({"class", "figurs"});
    CHECK(wrong.code == 2);
    CHECK(holds(wrong.err, "hardover: 'figurs' is no command of 'hardover class' (did you mean 'figures'?"));
    CHECK(holds(wrong.err, "roster"));
    const Ran deeper = run_program({"class", "set", "bogus"});
    CHECK(deeper.code == 2);
    CHECK(holds(deeper.err, "'bogus' is no command of 'hardover class set' (they are make, list,"));
    const Ran none = run_program({"records"});
    CHECK(none.code == 2);
    CHECK(holds(none.err, "'hardover records' needs one of its commands (they are check, mend,"));
}

TEST_CASE("Assess as JSON has the documented fields") {
    const Ran ran = run_program({"assess", source_path("tests/cases/wander_air_in_oil.yaml"), "--json"});
    INFO(ran.err);
    REQUIRE(ran.code == 0);
    const json answer = json::parse(ran.out);
    for (const char* field :
         {"ranking", "not_listed", "next", "cautions", "deferrals", "worksheets", "stops", "bound"}) {
        INFO(field);
        CHECK(answer.contains(field));
    }
    REQUIRE(answer["ranking"].size() > 5);
    const json& first = answer["ranking"][0];
    CHECK(first["cause"] == "air_in_oil");
    CHECK(first["name"] == "Air left in the oil");
    CHECK(first["probability"].get<double>() > 0.5);
    CHECK_FALSE(first["for"].empty());
    CHECK(first.contains("against"));
    for (const char* field : {"kind", "id", "text", "minutes", "minutes_after"})
        CHECK(answer["next"].contains(field));
    double before = 1;
    for (const json& cause : answer["ranking"]) {
        // What is equal but for rounding stands in the order of the knowledge.
        CHECK(cause["probability"].get<double>() <= before * (1 + 1e-12));
        before = cause["probability"].get<double>();
    }
}

TEST_CASE("Assess gives the same bytes every time") {
    const std::vector<std::string> words = {"assess", source_path("tests/cases/weep_o_ring_cut.yaml"),
                                            "--json"};
    CHECK(run_program(words).out == run_program(words).out);
}

TEST_CASE("A case with faults lists each at its place and is not assessed") {
    const TemporaryFolder folder;
    write_file(folder.file("case.yaml"),
               "complaints: [wanderr]\n"
               "answers:\n"
               "  wheel_feel: springgy\n"
               "  wheel_sponge: 3 psi\n");
    const Ran ran = run_program({"assess", folder.file("case.yaml")});
    INFO(ran.err);
    CHECK(ran.code == 1);
    CHECK(holds(ran.err, "case.yaml:1:14"));
    CHECK(holds(ran.err, "did you mean 'wander'?"));
    CHECK(holds(ran.err, "case.yaml:3:15"));
    CHECK(holds(ran.err, "case.yaml:4:17"));
    CHECK(ran.out.empty());
    const Ran missing = run_program({"assess", folder.file("nothing.yaml")});
    CHECK(missing.code == 1);
    CHECK(holds(missing.err, "nothing.yaml"));
}

TEST_CASE("Every worksheet runs with the example of its own help") {
    const Ran listed = run_program({"worksheet", "list", "--json"});
    REQUIRE(listed.code == 0);
    const json list = json::parse(listed.out);
    CHECK(list.size() >= 23);
    for (const json& sheet : list) {
        // hardover worksheet ID key='value' key='value' ...
        std::istringstream words(sheet["example"].get<std::string>());
        std::vector<std::string> arguments;
        std::string word;
        for (int skipped = 0; skipped < 2; ++skipped) words >> word;
        arguments.push_back("worksheet");
        words >> word;
        arguments.push_back(word);
        for (std::string key; std::getline(words >> std::ws, key, '\'');) {
            std::string value;
            std::getline(words, value, '\'');
            arguments.push_back(key + value);
        }
        const Ran ran = run_program(arguments);
        INFO(sheet["example"] << "\n" << ran.out << ran.err);
        CHECK(ran.code == 0);
        CHECK(holds(ran.out, "Source"));
        CHECK_FALSE(holds(ran.out, "nan"));
    }
}

TEST_CASE("A 9 in ram is marked at 4 1/2 in and accepted within 1/4 in") {
    // Common practice, no source.
    const Ran ran = run_program({"worksheet", "ram_centring", "stroke=9 in", "mark_port=4 5/8 in",
                                 "mark_starboard=4 1/2 in", "--json"});
    INFO(ran.out << ran.err);
    REQUIRE(ran.code == 0);
    const json sheet = json::parse(ran.out);
    CHECK(sheet["results"]["half"]["text"] == "4 1/2 in");
    CHECK(sheet["results"]["off"]["value"].get<double>() == Approx(0.125).margin(1e-9));
}

TEST_CASE("A drive with both diagonals 36 in is square") {
    // Common practice, no source; equal diagonals make a parallelogram a rectangle (Euclid).
    const Ran ran = run_program(
        {"worksheet", "drive_square", "diagonal_port=36 in", "diagonal_starboard=36 in", "--json"});
    INFO(ran.out << ran.err);
    REQUIRE(ran.code == 0);
    CHECK(json::parse(ran.out)["results"]["difference"]["value"].get<double>() == Approx(0).margin(1e-9));
}

TEST_CASE("Worksheet inputs that cannot be are one clear message each") {
    const auto refused = [](std::vector<std::string> words) {
        words.insert(words.begin(), "worksheet");
        const Ran ran = run_program(words);
        INFO(ran.out << ran.err);
        CHECK(ran.code == 1);
        CHECK(ran.out.empty());
        CHECK(std::count(ran.err.begin(), ran.err.end(), '\n') == 1);
        return ran.err;
    };
    CHECK(holds(refused({"ram_centring", "stroke=0 in", "mark_port=4 in", "mark_starboard=4 in"}), "stroke"));
    CHECK(holds(refused({"ram_centring", "stroke=9 psi"}), "length"));
    CHECK(holds(refused({"ram_centring", "strok=9 in"}), "did you mean 'stroke'?"));
    CHECK(holds(refused({"ram_centring"}), "still needed"));
    CHECK(holds(refused({"ram_centring", "stroke"}), "key=value"));
    CHECK(holds(refused({"ram_centering"}), "did you mean 'ram_centring'?"));
    CHECK(holds(refused({"ram_centring", "stroke=nine in"}), "stroke"));
    CHECK(holds(refused({"hoses_two_rams", "port_cap=prt_line"}), "did you mean 'port_line'?"));
    CHECK(holds(refused({"ram_area_and_force", "kind=2 in"}), "single_rod"));
    CHECK(holds(refused({"drill_transom", "thickness=-2 in", "rake=12 deg"}), "some thickness"));
}

TEST_CASE("The knowledge counts itself, and lists and shows what it holds") {
    const Ran figures = run_program({"knowledge", "figures", "--json"});
    REQUIRE(figures.code == 0);
    const json counts = json::parse(figures.out);
    CHECK(counts["complaints"].get<int>() >= 4);
    CHECK(counts["causes"].get<int>() >= 30);
    CHECK(counts["findings"].get<int>() >= 70);
    CHECK(counts["checks"].get<int>() >= 30);
    CHECK(counts["remedies"].get<int>() >= 30);
    CHECK(counts["rules"].get<int>() >= 20);
    CHECK(counts["cautions"].get<int>() >= 15);
    CHECK(counts["deferrals"].get<int>() >= 8);
    CHECK(holds(run_program({"knowledge", "list", "causes"}).out, "air_in_oil  Air left in the oil"));
    CHECK(holds(run_program({"knowledge", "list", "cauzes"}).err, "did you mean 'causes'?"));
    const Ran shown = run_program({"knowledge", "show", "sponge_test"});
    CHECK(holds(shown.out, "Steps:"));
    CHECK(holds(shown.out, "Source"));
    const std::string assist = run_program({"knowledge", "show", "assist_running"}).out;
    CHECK(holds(assist, "Not without"));
    CHECK(holds(assist, "Engine can be run [engine_running]"));
    const std::string exhaust = run_program({"knowledge", "show", "carbon_monoxide"}).out;
    CHECK(holds(exhaust, "Comes with: Engine can be run [engine_running]"));
    CHECK(run_program({"knowledge", "show", "sponge_tset"}).code == 1);
}

TEST_CASE("Knowledge check names every fault at file, line and column, and fails") {
    const TemporaryFolder folder;
    for (const auto& entry : std::filesystem::directory_iterator(source_path("knowledge"))) {
        std::filesystem::copy(entry.path(), folder.path());
    }
    CHECK(run_program({"knowledge", "check", folder.path()}).code == 0);
    write_file(folder.file("zz_broken.yaml"),
               "- caution: sharp_edges\n"
               "  name: Sharp edges\n"
               "  hurts: Hands.\n"
               "  avoidd: Wear gloves.\n"
               "  source: common_practise\n");
    const Ran ran = run_program({"knowledge", "check", folder.path()});
    INFO(ran.out);
    CHECK(ran.code == 1);
    CHECK(holds(ran.out, "zz_broken.yaml:4:3"));
    CHECK(holds(ran.out, "did you mean 'avoid'?"));
    CHECK(holds(ran.out, "zz_broken.yaml:5:11"));
    CHECK(run_program({"--knowledge", folder.path(), "job", "list", "--x"}).code == 2);
    CHECK(run_program(
              {"--knowledge", folder.path(), "assess", source_path("tests/cases/wander_air_in_oil.yaml")})
              .code == 1);
}

TEST_CASE("A records file that is something else is refused and left as it was") {
    const TemporaryFolder folder;
    write_file(folder.file("records.db"), "This is a shopping list, not a database.\n");
    const Ran ran = run_program({"--records", folder.file("records.db"), "job", "list"});
    CHECK(ran.code == 1);
    CHECK(holds(ran.err, "records.db"));
    CHECK(file_text(folder.file("records.db")) == "This is a shopping list, not a database.\n");
}

TEST_CASE("Knowledge try prints the path a technician would take") {
    const Ran text = run_program({"knowledge", "try", "air_in_oil"});
    INFO(text.err);
    REQUIRE(text.code == 0);
    CHECK(holds(text.out, "The boat is right"));
    const Ran drawn = run_program({"knowledge", "try", "air_in_oil", "hose_kinked", "--seed", "3", "--rig",
                                   "helm=manual_pump", "--rig", "rams=2", "--json"});
    INFO(drawn.err);
    REQUIRE(drawn.code == 0);
    const json walk = json::parse(drawn.out);
    CHECK(walk["faults"] == json({"hose_kinked", "air_in_oil"}));
    CHECK(walk["rig"]["helm"] == "manual_pump");
    CHECK_FALSE(walk["steps"].empty());
    const Ran all = run_program({"knowledge", "try", "--all", "--json"});
    REQUIRE(all.code == 0);
    const json figures = json::parse(run_program({"knowledge", "figures", "--json"}).out);
    CHECK(json::parse(all.out).size() == figures["causes"]);
    CHECK(run_program({"knowledge", "try", "--all", "air_in_oil"}).code == 2);
    CHECK(run_program({"knowledge", "try", "nothing_such"}).code == 1);
    CHECK(run_program({"knowledge", "try"}).code == 2);
}

TEST_CASE("Knowledge book writes pages that an HTML checker has nothing to say about") {
    const TemporaryFolder folder;
    const std::string out = folder.file("book");
    const Ran ran = run_program({"knowledge", "book", out});
    INFO(ran.out << ran.err);
    REQUIRE(ran.code == 0);
    CHECK(holds(ran.out, "causes.html: "));
    CHECK(holds(ran.out, "index.html in a browser"));
    const std::string checker = "tidy -quiet -errors --show-info no ";
    for (const auto& page : std::filesystem::directory_iterator(out)) {
        INFO(page.path());
        CHECK(std::system((checker + page.path().string() + " >" + folder.file("said") + " 2>&1").c_str()) ==
              0);
        CHECK(file_text(folder.file("said")) == "");
    }
    CHECK(run_program({"knowledge", "book", out}).code == 0);  // written over
}

TEST_CASE("Knowledge book says why it cannot write") {
    const TemporaryFolder folder;
    write_file(folder.file("in_the_way"), "a file");
    const Ran ran = run_program({"knowledge", "book", folder.file("in_the_way")});
    CHECK(ran.code == 1);
    CHECK(holds(ran.err, "in_the_way: the folder cannot be made"));
    std::filesystem::create_directories(folder.file("book/causes.html"));
    const Ran blocked = run_program({"knowledge", "book", folder.file("book")});
    CHECK(blocked.code == 1);
    CHECK(holds(blocked.err, "causes.html: the page cannot be written: "));
    CHECK(run_program({"knowledge", "book"}).code == 2);
}

TEST_CASE("A folder is made by the name given, those above it are not") {
    const TemporaryFolder folder;
    for (const std::vector<std::string>& command :
         {std::vector<std::string>{"knowledge", "book"}, std::vector<std::string>{"class", "demo"}}) {
        std::vector<std::string> arguments = command;
        arguments.push_back(folder.file("stik/out"));
        const Ran ran = run_program(arguments);
        INFO(ran.err);
        CHECK(ran.code == 1);
        CHECK(holds(ran.err, "stik: this folder is not there"));
        CHECK_FALSE(std::filesystem::exists(folder.file("stik")));
    }
}
