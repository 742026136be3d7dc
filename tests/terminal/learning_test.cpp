// `hardover learning ...` with the built program and the shipped knowledge: jobs closed in the interview,
// odds shown, switched, handed on and put together.
#include <algorithm>
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

// A yard (invented) with a records file of its own.
class Yard {
  public:
    Ran run(std::vector<std::string> arguments, const std::string& input = "") const {
        arguments.insert(arguments.begin(), {"--records", folder_.file("records.db")});
        return run_program(arguments, input);
    }
    // Invented boat: two rams on a hand helm, a hose crossed at one of them.
    void close_job(bool confirmed = true) const {
        const std::string told =
            "hard_one_way\nrig helm manual_pump\nrig rams 2\nhistory just_fitted\n"
            "answer effort_both_ways heavy\nanswer rams_fight frees\n";
        const Ran ran = run({"interview", "--boat", "Second Wind"},
                            told + (confirmed ? "answer hose_ports crossed\ncured\nhoses_crossed seen\n"
                                              : "done hoses_crossed\n"));
        INFO(ran.out << ran.err);
        REQUIRE(holds(ran.out, "is handed back and filed."));
    }
    std::string file(const std::string& name) const { return folder_.file(name); }
    json shown() const {
        const Ran ran = run({"learning", "show", "--json"});
        INFO(ran.err);
        REQUIRE(ran.code == 0);
        return json::parse(ran.out);
    }
    json odds(const std::string& cause) const {
        const json table = shown();
        for (const json& history : table["histories"]) {
            if (history["history"] != "just_fitted") continue;
            for (const json& line : history["odds"]) {
                if (line["cause"] == cause) return line;
            }
        }
        return {};
    }

  private:
    TemporaryFolder folder_;
};

}  // namespace

TEST_CASE("A new yard has the shipped odds, learning on and strength 20") {
    const Yard yard;
    const json shown = yard.shown();
    CHECK(shown["on"] == true);
    CHECK(shown["how_often"] == false);
    CHECK(shown["strength"] == 20);
    CHECK(shown["own_jobs"] == 0);
    for (const json& history : shown["histories"]) {
        for (const json& line : history["odds"]) CHECK(line["learned"] == line["shipped"]);
    }
    CHECK(holds(yard.run({"learning", "calibration"}).out, "No job of this shop"));
}

TEST_CASE("A cause that the interview calls proved is handed back as proved, another as assumed") {
    const Yard yard;
    const std::string told =
        "hard_one_way\nrig helm manual_pump\nrig rams 2\nhistory just_fitted\nanswer rams_fight frees\n";
    const Ran open = yard.run({"interview", "--boat", "Tern"}, told + "done hoses_crossed\n");
    CHECK_FALSE(holds(open.out, "(proved)"));
    CHECK(holds(yard.run({"job", "show", "1"}).out, "assumed, not proved"));
    const Ran proved =
        yard.run({"interview", "--boat", "Tern"}, told + "answer hose_ports crossed\ndone hoses_crossed\n");
    CHECK(holds(proved.out, "(proved)"));
    CHECK(holds(yard.run({"job", "show", "2"}).out, "seen and proved"));
}

TEST_CASE("A closed job shows beside the shipped odds and moves the next job's, until learning is off") {
    const Yard yard;
    yard.close_job();
    yard.close_job(false);
    const json line = yard.odds("hoses_crossed");
    CHECK(line["jobs"] == 1);
    const double shipped = line["shipped"];
    CHECK(line["learned"].get<double>() == Approx(1000 * (20 * shipped / 1000 + 1) / 21));
    const Ran text = yard.run({"learning", "show"});
    CHECK(holds(text.out, "Learning is on."));
    CHECK(holds(text.out, "Counted: 1 job of this shop, 0 jobs of 0 other shops."));
    CHECK(holds(text.out, "the cause was only assumed: 1 job."));
    CHECK(holds(text.out, "Hoses crossed between the two rams"));

    CHECK(yard.run({"learning", "strength", "1"}).code == 0);
    yard.run({"interview", "--boat", "Tern"}, "hard_one_way\nhistory just_fitted\nq\n");
    const std::string learned = yard.run({"job", "show", "3"}).out;
    CHECK(yard.run({"learning", "off"}).code == 0);
    const std::string as_shipped = yard.run({"job", "show", "3"}).out;
    CHECK(learned != as_shipped);
    CHECK(yard.run({"learning", "on"}).code == 0);
    CHECK(yard.run({"job", "show", "3"}).out == learned);
    CHECK(yard.run({"learning", "reset"}).code == 0);
    CHECK(yard.run({"job", "show", "3"}).out == as_shipped);
    CHECK(yard.run({"learning", "reset", "--count-all"}).code == 0);
    CHECK(yard.run({"job", "show", "3"}).out == learned);
}

TEST_CASE("The case file answered without records has the shipped odds") {
    const Yard yard;
    const std::string given = source_path("tests/cases/one_way_hose_kinked.yaml");
    const std::string before = yard.run({"assess", given, "--json"}).out;
    yard.close_job();
    CHECK(yard.run({"assess", given, "--json"}).out == before);
}

TEST_CASE("Switches that make no sense are refused and change nothing") {
    const Yard yard;
    for (const char* strength : {"0", "201", "-5"}) {
        const Ran ran = yard.run({"learning", "strength", strength});
        CHECK(ran.code == 1);
        CHECK(holds(ran.err, "a whole number of jobs from 1 to 200"));
    }
    CHECK(yard.run({"learning", "strength", "strong"}).code == 2);
    CHECK(yard.run({"learning"}).code == 2);
    CHECK(yard.run({"learning", "forget"}).code == 2);
    CHECK(yard.run({"learning", "reset", "--before", "2026-11-25", "--count-all"}).code == 2);
    const Ran day = yard.run({"learning", "reset", "--before", "25 Nov"});
    CHECK(day.code == 1);
    CHECK(holds(day.err, "write it as 2026-11-25"));
    CHECK(yard.shown()["strength"] == 20);
}

TEST_CASE("Counts go from yard to yard as plain numbers, and the same file twice changes nothing") {
    const Yard north;
    const Yard south;
    south.close_job();
    const Ran exported = south.run({"learning", "export", south.file("south.json")});
    INFO(exported.err);
    REQUIRE(exported.code == 0);
    const std::string text = file_text(south.file("south.json"));
    CHECK_FALSE(holds(text, "Second Wind"));
    const json file = json::parse(text);
    CHECK(file["hardover_counts"] == 1);
    CHECK(file["shops"][0]["jobs"]["just_fitted"]["hoses_crossed"] == 1);
    CHECK(file["shops"][0]["shop"].get<std::string>().size() == 32);

    const Ran merged = north.run({"learning", "merge", south.file("south.json"), south.file("south.json")});
    CHECK(merged.code == 0);
    CHECK(holds(merged.out, "Shops: 1 new, 0 with newer counts, 0 known already."));
    CHECK(north.odds("hoses_crossed")["jobs"] == 1);
    CHECK(holds(north.run({"learning", "merge", south.file("south.json")}).out, "1 known already"));
    CHECK(north.shown()["other_jobs"] == 1);
    south.run({"learning", "export", south.file("south.json")});
    CHECK(file_text(south.file("south.json")) == text);
    CHECK(holds(south.run({"learning", "merge", south.file("south.json")}).out, "they count already"));
}

TEST_CASE("A file that is not of counts is refused in one located message and nothing is changed") {
    const Yard yard;
    write_file(yard.file("list.json"), "{\"shops\": [\n  1,\n");
    write_file(yard.file("cut.json"), "{\"hardover_counts\": 1, \"shops\": [{}]}");
    const Ran list = yard.run({"learning", "merge", yard.file("list.json")});
    CHECK(list.code == 1);
    CHECK(holds(list.err, "list.json:3:1: "));
    CHECK(std::count(list.err.begin(), list.err.end(), '\n') == 1);
    CHECK(holds(yard.run({"learning", "merge", yard.file("cut.json")}).err, "cut.json:1:34, at shops[0]: "));
    CHECK(yard.run({"learning", "merge", yard.file("none.json")}).code == 1);
    CHECK(yard.shown()["other_shops"] == 0);

    const Ran over = yard.run({"learning", "export", yard.file("list.json")});
    CHECK(over.code == 1);
    CHECK(holds(over.err, "this file holds something else"));
    CHECK(file_text(yard.file("list.json")) == "{\"shops\": [\n  1,\n");
    CHECK(yard.run({"learning", "export", yard.file("nowhere") + "/counts.json"}).code == 1);
}

TEST_CASE("Calibration prints scores of the closed jobs, in words and as JSON") {
    const Yard yard;
    yard.close_job();
    const Ran text = yard.run({"learning", "calibration"});
    INFO(text.out << text.err);
    CHECK(text.code == 0);
    CHECK(holds(text.out, "With fewer than 20 jobs these figures say little."));
    CHECK(holds(text.out, "Confirmed cause came first"));
    const json scores = json::parse(yard.run({"learning", "calibration", "--json"}).out);
    CHECK(scores["jobs"] == 1);
    CHECK(scores["shipped"]["first"] == 1);
    for (const char* field : {"brier", "reliability", "resolution", "uncertainty", "log_loss", "table"}) {
        CHECK(scores["learned"].contains(field));
    }
}
