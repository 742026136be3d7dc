// Faults by name: known names in their units, unknown ones met with the nearest, values held in bounds.
#include "app/rig/faults.hpp"

#include <set>

#include "app/rig/functions.hpp"
#include "app/rig/survey.hpp"
#include "support.hpp"

using namespace hardover::rig;
using hardover::find_unit;
using hardover::quantity_in;
using hardover::read_quantity;

TEST_CASE("Every parameter has a unit, a meaning, a name of its own, and a size of its own") {
    std::set<std::string> names;
    std::set<const double*> sizes;
    Faults faults;
    for (const Parameter& parameter : parameters()) {
        INFO(parameter.name);
        REQUIRE_OK(find_unit(parameter.unit));
        CHECK_FALSE(parameter.meaning.empty());
        CHECK(parameter.least < parameter.most);
        CHECK(names.insert(parameter.name).second);
        CHECK(sizes.insert(&parameter.of(faults)).second);
        const double sound = parameter.of(faults) / find_unit(parameter.unit).value().factor;
        CHECK(sound >= parameter.least);
        CHECK(sound <= parameter.most);
    }
    // Every member of Faults is a number that one parameter names.
    CHECK(sizes.size() * sizeof(double) == sizeof(Faults));
}

TEST_CASE("A fault is set by its name in any unit of its kind") {
    Faults faults;
    REQUIRE_OK(set_parameter(faults, "bracket.offset_port", read_quantity("3/4 in").value()));
    CHECK(faults.bracket_offset.port == Approx(0.01905));
    REQUIRE_OK(set_parameter(faults, "circuit.trapped_air", read_quantity("40 mL").value()));
    CHECK(faults.trapped_air == Approx(40e-6));
    REQUIRE_OK(set_parameter(faults, "cable.friction", read_quantity("100 N").value()));
    CHECK(faults.cable_friction == Approx(100));
}

TEST_CASE("An unknown fault is met with the nearest, a wrong unit with the right one") {
    Faults faults;
    const auto unknown = set_parameter(faults, "circuit.traped_air", read_quantity("40 mL").value());
    REQUIRE_FALSE(unknown.ok());
    CHECK(unknown.error().text() ==
          "unknown parameter 'circuit.traped_air' (did you mean 'circuit.trapped_air'?)");
    const auto wrong = set_parameter(faults, "circuit.trapped_air", read_quantity("40 mm").value());
    REQUIRE_FALSE(wrong.ok());
    CHECK(wrong.error().cure == "give it in mL");
}

TEST_CASE("A fault beyond what can be is held at the end of it") {
    Faults faults;
    REQUIRE_OK(set_parameter(faults, "belt.grip", read_quantity("1.7").value()));
    CHECK(faults.belt_grip == 1);
    REQUIRE_OK(set_parameter(faults, "circuit.trapped_air", quantity_in(-3, find_unit("mL").value())));
    CHECK(faults.trapped_air == 0);
}

TEST_CASE("What the knowledge may name is what the numeric boat has") {
    const hardover::Functions functions = rig_functions();
    CHECK(functions.parameters.size() == parameters().size());
    CHECK(functions.gauges.size() == gauges().size());
}
