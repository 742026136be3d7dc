// Every shipped worksheet against a published or independently computed value. The ids are those of
// tests/reference/check_values.yaml, where each value has its source and place.
#include <cmath>
#include <set>

#include "shipped_worksheets.hpp"

using namespace hardover_tests;

namespace {

struct WorkedExample {
    std::string sheet;
    std::map<std::string, std::string> typed;
    std::string result;
    std::string unit;
    double expected;
    double tolerance;  // in that unit
    std::string source;
};

const std::map<std::string, std::string> single_ram = {
    {"kind", "single_rod"}, {"rams", "1"},      {"bore", "2 in"},
    {"rod", "0.75 in"},     {"stroke", "9 in"}, {"displacement", "1.7 in^3/turn"}};
const std::map<std::string, std::string> balanced_ram = {
    {"kind", "balanced"}, {"rams", "1"},      {"bore", "1.75 in"},
    {"rod", "0.75 in"},   {"stroke", "8 in"}, {"displacement", "1.4 in^3/turn"}};
// Anchor 0.3 m, arm 0.18 m, 80 degrees apart with the drive straight, all at one height: LNK-020 to LNK-037.
const std::map<std::string, std::string> flat_linkage = {{"bracket_out", "300 mm"},
                                                         {"bracket_aft", "0 mm"},
                                                         {"bracket_up", "0 mm"},
                                                         {"pin_out", "31.25667199 mm"},
                                                         {"pin_aft", "177.2653955 mm"},
                                                         {"pin_up", "0 mm"},
                                                         {"closed", "200 mm"},
                                                         {"stroke", "250 mm"},
                                                         {"stop", "30 deg"},
                                                         {"trim", "0 deg"}};
const std::map<std::string, std::string> long_hose = {
    {"hose_bore", "7.9 mm"}, {"hose_length", "6 m"}, {"displacement", "28 mL/turn"}};
const std::map<std::string, std::string> squeezed_air = {{"sponge", "2.1357902 m"},
                                                         {"wheel", "2 m"},
                                                         {"pressure", "20 bar"},
                                                         {"relief", "20 bar"},
                                                         {"displacement", "28 mL/turn"}};
const std::map<std::string, std::string> iso_32 = {{"at_40", "32 cSt"},       {"at_100", "5.4 cSt"},
                                                   {"density", "870 kg/m^3"}, {"hose_bore", "7.9 mm"},
                                                   {"hose_length", "6 m"},    {"displacement", "28 mL/turn"},
                                                   {"wheel_speed", "60 rpm"}, {"temperature", "80 C"}};

const std::vector<WorkedExample> examples = {
    {"turns_lock_to_lock", single_ram, "expected_more", "turns", 16.631961107, 1e-6, "CYL-078, computed"},
    {"turns_lock_to_lock", single_ram, "expected_less", "turns", 14.293091577, 1e-6, "CYL-079, computed"},
    {"turns_lock_to_lock", balanced_ram, "expected_more", "turns", 11.219973763, 1e-6, "CYL-076, computed"},
    {"turns_lock_to_lock", balanced_ram, "expected_less", "turns", 11.219973763, 1e-6, "CYL-077, computed"},
    {"ram_centring",
     {{"mark_port", "4 1/2 in"}, {"mark_starboard", "5 1/2 in"}},
     "off",
     "in",
     1,
     1e-9,
     "half of 9 in is 4 1/2 in; arithmetic"},
    {"ram_centring",
     {{"mark_port", "4 7/8 in"}, {"mark_starboard", ""}},
     "off",
     "in",
     0.375,
     1e-9,
     "one ram; arithmetic"},
    // The drive mark stands square behind the starboard mark: 3 by 4, and 6 by 4 to the other (SQR-002).
    {"drive_square",
     {{"diagonal_port", "7.2111026 ft"},
      {"diagonal_starboard", "4 ft"},
      {"apart", "6 ft"},
      {"reach", "4 ft"}},
     "to_starboard",
     "ft",
     3,
     1e-6,
     "Pythagoras, as SQR-002"},
    {"drive_square",
     {{"diagonal_port", "5 ft"}, {"diagonal_starboard", "5 ft"}, {"apart", "6 ft"}, {"reach", "4 ft"}},
     "off",
     "deg",
     0,
     1e-9,
     "SQR-002, read"},
    {"drip_to_low", {{"drip_rate", "1 drop/min"}}, "loss_per_day", "mL", 72, 1e-6, "LEK-023, computed"},
    {"drip_to_low",
     {{"drip_rate", "2 drop/min"}, {"reserve", "250 mL"}},
     "hours_to_low",
     "d",
     1.736111111,
     1e-6,
     "LEK-024, computed"},
    {"rim_force",
     {{"port", "14 lbf"}, {"starboard", "6 lbf"}},
     "ratio",
     "count",
     14.0 / 6,
     1e-12,
     "arithmetic"},
    {"lock_angles",
     {{"port", "30 deg"}, {"starboard", "25 deg"}},
     "to_starboard",
     "deg",
     -2.5,
     1e-12,
     "arithmetic"},
    {"pressure_at_lock",
     {{"pressure", "780 psi"}, {"relief", "1000 psi"}},
     "share",
     "count",
     0.78,
     1e-12,
     "arithmetic"},
    {"ram_bracket_position",
     {{"closed", "1/2 in"}, {"stroke", "9 in"}, {"pin_out", "0 in"}, {"aft", "4 in"}, {"rise", "0 in"}},
     "bracket_out",
     "in",
     3,
     1e-9,
     "SQR-002, read"},
    {"ram_bracket_position",
     {{"roll", "0 deg"}, {"rake", "35 deg"}, {"height", "78.64 in"}},
     "up_transom",
     "in",
     96,
     0.01,
     "LNK-007, read: 96 in at 35 deg stand 78.64 in high"},
    {"ram_travel", flat_linkage, "ahead", "m", 0.321941, 1e-6, "LNK-028, computed"},
    {"ram_travel", flat_linkage, "arm_ahead", "m", 0.1651844, 1e-6, "LNK-029, computed"},
    {"ram_travel", flat_linkage, "reserve_in", "m", 0.2301715 - 0.2, 1e-6, "LNK-022, computed"},
    {"ram_travel", flat_linkage, "reserve_out", "m", 0.45 - 0.3991719, 1e-6, "LNK-034, computed"},
    {"ram_travel", flat_linkage, "arm_at_stop_in", "m", 0.1797199, 1e-6, "LNK-023, computed"},
    {"ram_travel", flat_linkage, "arm_at_stop_out", "m", 0.1271217, 1e-6, "LNK-035, computed"},
    {"room_from_platform",
     {{"bracket_up", "1 in"},
      {"pin_up", "1 in"},
      {"thickness", "2 in"},
      {"low_up", "8 in"},
      {"trim_down", "0 deg"},
      {"trim_up", "0 deg"}},
     "room",
     "in",
     6,
     1e-4,
     "arithmetic: a level ram 7 in under a level box, less half its thickness"},
    {"room_from_trim_cylinder",
     {{"bracket_up", "0 in"},
      {"pin_up", "0 in"},
      {"thickness", "2 in"},
      {"transom_up", "-6 in"},
      {"drive_up", "-6 in"},
      {"drive_out", "12 in"},
      {"cylinder", "2 in"},
      {"stop", "5 deg"},
      {"trim_down", "0 deg"},
      {"trim_up", "0 deg"}},
     "room",
     "in",
     4,
     1e-4,
     "arithmetic: level bars that cross 6 in apart, less half of each"},
    {"ram_area_and_force",
     {{"kind", "single_rod"}, {"bore", "3 in"}, {"pressure", "2000 psi"}},
     "force_out",
     "lbf",
     14140,
     14.14,
     "CYL-017, read"},
    {"ram_area_and_force",
     {{"kind", "single_rod"}, {"bore", "2 in"}, {"rod", "1 in"}},
     "ratio",
     "count",
     1.331707,
     0.0067,
     "CYL-007, read"},
    {"ram_area_and_force",
     {{"kind", "balanced"}},
     "ratio",
     "count",
     1,
     1e-12,
     "CYL-072 and CYL-073, computed"},
    // 5425.39 N at a coefficient of 0.8 (STR-034), taken to 2.747 sin 20 deg (STR-006), on a lever of 0.05 m
    // (STR-035).
    {"steering_torque",
     {{"aspect", "1.827"},
      {"angle", "20 deg"},
      {"side_area", "0.08 m^2"},
      {"speed", "25 kn"},
      {"lever", "0.05 m"}},
     "load",
     "N*m",
     318.58,
     0.1,
     "STR-006, read; STR-034, computed"},
    {"wheel_effort",
     {{"pressure", "100 psi"}, {"displacement", "1 in^3/turn"}, {"efficiency", "100 %"}, {"wheel", "10 in"}},
     "rim",
     "lbf",
     100 / (2 * M_PI) / 5,
     1e-9,
     "torque is pressure times displacement; worked by hand"},
    {"cold_oil", iso_32, "viscosity", "cSt", 8.5, 0.05, "VIS-003, read"},
    {"cold_oil", iso_32, "warm_loss", "Pa", 2 * 1747319055.0 * 28e-6, 1,
     "NET-017, computed: both hoses at 28 mL/s"},
    {"air_from_sponge", squeezed_air, "air", "mL", 10, 1e-5, "BLK-041, computed"},
    {"air_from_sponge", squeezed_air, "left", "mL", 0.482195757, 1e-6, "BLK-040, computed"},
    {"air_from_sponge", squeezed_air, "lost_at_lock", "deg", 122.3717688, 1e-4, "BLK-041, computed"},
    {"creep_to_leak",
     {{"rod_creep", "1 ft"}, {"rod_time", "1 min"}, {"bore", "2 in"}, {"rod", "1 in"}},
     "past_ram",
     "in^3/min",
     12 * 0.75 * M_PI,
     1e-9,
     "area times speed, as CYL-004; worked by hand"},
    {"oil_to_fill",
     {{"hose_bore", "3/8 in"}, {"hose_length", "20 ft"}},
     "in_hoses",
     "mL",
     434.375,
     0.001,
     "BLD-004, computed"},
    {"bleeding_cycles", long_hose, "line", "mL", 294.1002, 0.001, "BLD-001, computed"},
    {"bleeding_cycles", long_hose, "push_through", "turns", 10.50357, 0.0001, "BLD-008, computed"},
    {"hose_through_travel",
     {{"maker_radius", ""}, {"hose_bore", "1/4 in"}},
     "least_radius",
     "in",
     4,
     1e-9,
     "FIT-077, from memory"},
    {"hose_through_travel",
     {{"chord", "8 in"}, {"gap", "2 in"}},
     "radius",
     "in",
     5,
     1e-9,
     "3-4-5 triangle, SQR-002, read"},
    {"fastener_torque", {{"thread", "unc_3_8"}}, "area", "in^2", 0.0775, 5.1e-5, "BLT-003, read"},
    {"fastener_torque", {{"thread", "unf_1_2"}}, "area", "in^2", 0.16, 5.1e-5, "BLT-012, read"},
    {"fastener_torque",
     {{"thread", "unc_1_2"}, {"grade", "sae_5"}, {"condition", "dry"}, {"share", "85 %"}},
     "torque",
     "lbf*in",
     0.2 * 0.5 * 0.85 * 85000 * 0.1419,
     0.5,
     "rule of BLT-141 with the area of BLT-005, read"},
    {"end_cap_tightening",
     {{"torque", "1800 lbf*in"}, {"nut_factor", "0.2"}, {"diameter", "0.625 in"}},
     "clamp",
     "lbf",
     14400,
     1e-6,
     "BLT-144, computed"},
    {"end_cap_tightening",
     {{"pressure", "2000 psi"}, {"seal", "3 in"}},
     "push",
     "lbf",
     14140,
     14.14,
     "CYL-017, read"},
    {"drill_transom",
     {{"thickness", "38.1 mm"}, {"rake", "12 deg"}},
     "exit",
     "mm",
     8.098405,
     1e-5,
     "DRL-008, computed"},
    {"drill_transom",
     {{"thickness", "38.1 mm"}, {"rake", "12 deg"}},
     "path",
     "mm",
     38.95118,
     1e-4,
     "DRL-018, computed"},
    {"fitting_figures", {{"dash", "d4"}, {"nut", "hose"}}, "least", "lbf*in", 100, 1e-6, "FIT-045, read"},
    {"fitting_figures", {{"dash", "d4"}, {"nut", "aluminium"}}, "least", "lbf*in", 50, 1e-6, "FIT-056, read"},
    {"fitting_figures", {{"dash", "d4"}, {"nut", "steel"}}, "least", "lbf*in", 135, 1e-6, "FIT-065, read"},
    {"fitting_figures", {{"dash", "d4"}}, "flare_thread", "in", 0.4375, 1e-9, "FIT-030, from memory"},
    {"fitting_figures", {{"pipe", "p1_4"}}, "pitch_diameter", "in", 0.47739, 2e-5, "FIT-004, read"},
    {"toe_and_tie_bar",
     {{"ahead", "24 in"}, {"aft", "24 1/2 in"}, {"distance", "24 in"}},
     "toe",
     "deg",
     2 * std::atan(0.25 / 24) * 180 / M_PI,
     1e-9,
     "plane trigonometry, worked by hand"},
    {"drives_parallel",
     {{"ahead", "24 in"}, {"aft", "24 1/2 in"}, {"distance", "24 in"}},
     "toe",
     "deg",
     2 * std::atan(0.25 / 24) * 180 / M_PI,
     1e-9,
     "plane trigonometry, worked by hand"},
    {"toe_and_tie_bar",
     {{"first_arm", "80 deg"}, {"second_arm", "80 deg"}},
     "other_drive",
     "deg",
     25,
     1e-6,
     "a parallelogram keeps both drives parallel; geometry"},
    {"galvanic_pair",
     {{"bracket", "aluminium"}, {"fastener", "ss316_passive"}},
     "driving",
     "count",
     740,
     50,
     "GAL-021, computed from a read chart"},
    {"galvanic_pair",
     {{"bracket", "aluminium"}, {"fastener", "g_bronze"}},
     "driving",
     "count",
     480,
     50,
     "GAL-022, computed from a read chart"},
    {"hole_sealing",
     {{"holes", "4"}, {"plug", "2 in"}, {"core", "1 1/2 in"}},
     "epoxy",
     "in^3",
     6 * M_PI,
     1e-9,
     "cylinder of 2 in, worked by hand"},
    {"hole_sealing",
     {{"cartridge", "10 floz"}, {"waste", "0 %"}, {"bead", "1/4 in"}, {"outline", "40 in"}},
     "in_bead",
     "in^3",
     M_PI / 64 * 40,
     1e-9,
     "cylinder of 1/4 in, worked by hand"},
    {"units", {{"pressure", "12000 psi"}}, "pressure_bar", "bar", 827.371, 0.001, "UNI-036, computed"},
    {"units", {{"temperature", "-40 F"}}, "temperature_c", "C", -40, 1e-9, "UNI-034, read"},
    {"units", {{"torque", "1 lbf*ft"}}, "torque_nm", "N*m", 1.355818, 1e-6, "UNI-020, computed"},
};

}  // namespace

TEST_CASE("Worksheets give published and independently computed values") {
    for (const WorkedExample& example : examples) {
        INFO(example.sheet << "." << example.result << ": " << example.source);
        CHECK(result_of(example.sheet, example.typed, example.result, example.unit) ==
              Approx(example.expected).margin(example.tolerance).epsilon(0));
    }
}

TEST_CASE("Every worksheet with numbers has a check value") {
    std::set<std::string> checked = {"hoses_two_rams"};  // by its own test below
    for (const WorkedExample& example : examples) checked.insert(example.sheet);
    for (const Worksheet& sheet : shipped().worksheets) {
        INFO(sheet.id);
        CHECK(checked.count(sheet.id) == 1);
    }
    CHECK(shipped().worksheets.size() >= 23);
}

TEST_CASE("Every worksheet works out completely from the example of its own help, with advice") {
    for (const Worksheet& sheet : shipped().worksheets) {
        const WorkedSheet worked = work(sheet.id);
        INFO(sheet.id << " " << worked.refused);
        CHECK(worked.complete());
        CHECK_FALSE(worked.advice.empty());
        CHECK_FALSE(sheet.sources.empty());
        for (const WorksheetInput& input : sheet.inputs) {
            INFO(input.id);
            CHECK((input.example.has_value() || !input.example_choice.empty()));
        }
    }
}

TEST_CASE("Warm oil grows as the published volume correction says") {
    // VIS-072 and VIS-073, computed: 0.981865849 at 40 C, 0.967232885 at 60 C for 870 kg/m^3.
    const std::map<std::string, std::string> typed = {
        {"density", "870 kg/m^3"}, {"cold", "40 C"}, {"hot", "60 C"}};
    const double total = result_of("oil_to_fill", typed, "total", "floz");
    CHECK(result_of("oil_to_fill", typed, "expansion", "floz") ==
          Approx(total * (0.981865849 / 0.967232885 - 1)).epsilon(2e-3));
}

TEST_CASE("A single-rod ram swings the level by its rod, two opposed rams and a balanced one do not") {
    CHECK(result_of("oil_to_fill", {{"rams", "1"}, {"kind", "single_rod"}}, "swing", "in^3") ==
          Approx(M_PI / 4 * 0.75 * 0.75 * 9));
    CHECK(result_of("oil_to_fill", {{"rams", "2"}, {"kind", "single_rod"}}, "swing", "in^3") == 0);
    CHECK(result_of("oil_to_fill", {{"rams", "1"}, {"kind", "balanced"}}, "swing", "in^3") == 0);
}

TEST_CASE("One ram alone is told how far it stands off half travel") {
    const WorkedSheet worked = work("ram_centring", {{"mark_port", "5 1/2 in"}, {"mark_starboard", ""}});
    CHECK(worked.refused.empty());
    REQUIRE(worked.advice.size() == 1);
    CHECK(worked.advice.front().find("Off half travel") == 0);
}
