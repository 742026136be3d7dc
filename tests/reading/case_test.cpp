// Case files, and answers and rig values as people type them.
#include "reading/reading_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

const Knowledge& pump() {
    static const Knowledge knowledge = pump_knowledge();
    return knowledge;
}

const Finding& finding(const std::string& id) {
    return pump().findings[find(pump().findings, id)];
}
const RigField& field(const std::string& id) {
    return pump().rig_fields[find(pump().rig_fields, id)];
}

const char* const whole_case = R"(# An invented pump.
story: The hose gives only a trickle since Sunday.
rig: {drive: electric, lift: 12 ft, outlets: "2"}
history: in_use
complaints: [weak_water]
answers:
  flow: weak
  hose_lie: Free
  bucket_time: 60 s ± 2 s
  suction_vacuum: 7 psi
  seal_drip: can't tell
tried: {tighten_clamps: not_cured}
not_available: [well_open]
shop_rate: 80
expect:
  first: strainer_blocked
  among_first_three: [impeller_worn]
)";

}  // namespace

TEST_CASE("A case file gives the facts it holds") {
    const CaseRead read = read_case({"trickle.yaml", whole_case}, pump());
    INFO(as_text(read.faults));
    REQUIRE(read.found);
    const Facts& facts = read.found->facts;
    CHECK(read.found->story == "The hose gives only a trickle since Sunday.");
    CHECK(std::get<std::string>(facts.rig.at(find(pump().rig_fields, "drive"))) == "electric");
    const Quantity lift = std::get<Quantity>(facts.rig.at(find(pump().rig_fields, "lift")));
    CHECK(lift.value == Approx(12 * 0.3048));  // m, NIST SP 811, appendix B.8
    CHECK(facts.history == find(pump().histories, "in_use"));
    CHECK(facts.complaints == std::set<Index>{find(pump().complaints, "weak_water")});
    REQUIRE(facts.answers.size() == 5);
    CHECK(std::get<int>(facts.answers.at(find(pump().findings, "flow")).given) == 1);
    CHECK(std::get<int>(facts.answers.at(find(pump().findings, "hose_lie")).given) == 1);
    const Quantity time = std::get<Quantity>(facts.answers.at(find(pump().findings, "bucket_time")).given);
    CHECK(time.value == 60);
    CHECK(time.spread == 2);
    CHECK(facts.answers.at(find(pump().findings, "seal_drip")) == Answer{CannotTell{}});
    CHECK(facts.tried.at(find(pump().remedies, "tighten_clamps")) == Outcome::not_cured);
    CHECK(facts.unavailable == std::set<Index>{find(pump().needs, "well_open")});
    CHECK(facts.shop_rate == 80);
    CHECK(read.found->expect.first == "strainer_blocked");
    CHECK(read.found->expect.among_first_three == std::vector<std::string>{"impeller_worn"});
}

TEST_CASE("All faults of a case are reported, and then there is no case") {
    const CaseRead read = read_case({"bad.yaml",
                                     "rig: {drive: steam, lift: 40 ft, colour: red}\n"
                                     "history: in_us\n"
                                     "complaints: [weak_watter]\n"
                                     "answers: {flow: wek, bucket_time: 3 ft, prim: holds}\n"
                                     "tried: {tighten_clamps: nearly}\n"
                                     "not_available: [well_opn]\n"
                                     "expect: {first: impeler_worn, frist: fuse_blown}\n"
                                     "storey: no\n"},
                                    pump());
    CHECK_FALSE(read.found);
    CHECK(as_text(read.faults) ==
          "bad.yaml:1:14: 'steam' is no choice of 'drive' (one of: electric, hand)\n"
          "bad.yaml:1:27: '40 ft' is too large for 'lift' (at most 30 ft)\n"
          "bad.yaml:1:34: unknown rig_field 'colour'\n"
          "bad.yaml:2:10: unknown history 'in_us' (did you mean 'in_use'?)\n"
          "bad.yaml:3:14: unknown complaint 'weak_watter' (did you mean 'weak_water'?)\n"
          "bad.yaml:4:17: 'wek' is no reading of 'flow' (did you mean 'weak'?)\n"
          "bad.yaml:4:35: '3 ft' is a length, expected a time such as 4.5 s (write it like 4.5 s)\n"
          "bad.yaml:4:41: unknown finding 'prim' (did you mean 'prime'?)\n"
          "bad.yaml:5:25: unknown outcome 'nearly' (cured, better or not_cured)\n"
          "bad.yaml:6:17: unknown need 'well_opn' (did you mean 'well_open'?)\n"
          "bad.yaml:7:17: unknown cause 'impeler_worn' (did you mean 'impeller_worn'?)\n"
          "bad.yaml:7:31: unknown key 'frist' in 'expect' (did you mean 'first'?)\n"
          "bad.yaml:8:1: unknown key 'storey' in the case (did you mean 'story'?)\n"
          "bad.yaml:8:9: 'no' without quotes may be read as true or false (write \"no\", or another word)\n");
}

TEST_CASE("A case that is empty, no YAML or no map is refused") {
    CHECK(as_text(read_case({"c.yaml", ""}, pump()).faults) == "c.yaml:1:1: the case file is empty\n");
    CHECK_FALSE(read_case({"c.yaml", "rig: {"}, pump()).found);
    CHECK(as_text(read_case({"c.yaml", "- a\n"}, pump()).faults) ==
          "c.yaml:1:1: the case must be made of 'key: value'\n");
}

TEST_CASE("An answer is a reading by id or by its words, a quantity, or can't tell") {
    CHECK(read_answer(finding("prime"), "runs_back").value() == Answer{0});
    CHECK(read_answer(finding("prime"), " It stays ").value() == Answer{2});
    CHECK(read_answer(finding("prime"), "?").value() == Answer{CannotTell{}});
    CHECK(read_answer(finding("prime"), "Cannot_Tell").value() == Answer{CannotTell{}});
    CHECK(read_answer(finding("suction_vacuum"), "high").value() == Answer{0});
    const Answer measured = read_answer(finding("suction_vacuum"), "7 psi").value();
    CHECK(std::get<Quantity>(measured.given).value == Approx(7 * 6894.757293168));  // NIST SP 811, B.8
}

TEST_CASE("An answer and a rig value may be typed with a decimal comma") {
    const Answer comma = read_answer(finding("suction_vacuum"), "7,5 psi").value();
    CHECK(comma == read_answer(finding("suction_vacuum"), "7.5 psi").value());
    CHECK(read_answer(finding("suction_vacuum"), "1,200 psi").error().text().find("not a comma") !=
          std::string::npos);
}

TEST_CASE("An answer that fits nothing says what would") {
    CHECK(read_answer(finding("prime"), "run_back").error().text() ==
          "'run_back' is no reading of 'prime' (did you mean 'runs_back'?)");
    CHECK(read_answer(finding("prime"), "blue").error().text() ==
          "'blue' is no reading of 'prime' (one of: runs_back, sinks, holds)");
    CHECK(read_answer(finding("suction_vacuum"), "a lot").error().text() ==
          "'a lot' is no reading of 'suction_vacuum' (one of: high, some, low, or a quantity in psi)");
    CHECK_FALSE(read_answer(finding("suction_vacuum"), "7 in").ok());
    CHECK_FALSE(read_answer(finding("prime"), "").ok());
    CHECK_FALSE(read_answer(finding("bucket_time"), "fast").ok());
}

TEST_CASE("A rig value at its very limit is within it, in any unit") {
    REQUIRE_OK(read_rig_value(field("lift"), "30 ft"));
    REQUIRE_OK(read_rig_value(field("lift"), "360 in"));
    CHECK(read_rig_value(field("lift"), "31 ft").error().text() ==
          "'31 ft' is too large for 'lift' (at most 30 ft)");
    CHECK(read_rig_value(field("lift"), "0.5 ft").error().text() ==
          "'0.5 ft' is too small for 'lift' (at least 1 ft)");
    CHECK(std::get<std::string>(read_rig_value(field("drive"), "A hand lever").value()) == "hand");
}
