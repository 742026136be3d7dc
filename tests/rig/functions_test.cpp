// The rig's formulas as the knowledge base calls them: names, dimensions, sources and the value "unknown".
#include "app/rig/functions.hpp"

#include <cmath>
#include <set>

#include "support.hpp"

using namespace hardover;

namespace {

double call(const Functions& functions, const std::string& name, const std::vector<double>& arguments) {
    INFO(name);
    const Function* function = functions.find(name);
    REQUIRE(function != nullptr);
    REQUIRE(function->arguments.size() == arguments.size());
    return function->compute(arguments);
}

}  // namespace

TEST_CASE("Every function for formulas has a name of its own and a source") {
    const Functions functions = rig::rig_functions();
    std::set<std::string> names;
    for (const Function& function : functions.all()) {
        INFO(function.name);
        CHECK(names.insert(function.name).second);
        CHECK_FALSE(function.source.empty());
        CHECK_FALSE(function.arguments.empty());
    }
    CHECK(names.size() > 100);
}

TEST_CASE("Functions that take a struct apart keep its members in order") {
    const Functions functions = rig::rig_functions();
    // The expected values are those of tests/reference, in SI: LNK-028 and LNK-029, BLK-022, LEK-031,
    // FLO-092, SQR-004, SQR-006.
    constexpr double degree = 0.017453292519943295;
    CHECK(call(functions, "planar_ram_length", {0.3, 0.18, 80 * degree, 0}) ==
          Approx(0.321941).epsilon(1e-6));
    CHECK(call(functions, "planar_moment_arm", {0.3, 0.18, 80 * degree, 0}) ==
          Approx(0.1651844).epsilon(1e-6));
    const double length = call(functions, "planar_ram_length", {0.3, 0.18, 80 * degree, 0.2});
    CHECK(call(functions, "planar_steer_at_length", {0.3, 0.18, 80 * degree, length}) == Approx(0.2));
    CHECK(call(functions, "bulk_modulus_with_air", {1.4e9, 0.01, 1, 2e6}) == Approx(1060104648));
    CHECK(call(functions, "annular_leak", {0.04, 10e-6, 0.02, 0.5, 5e6, 0.028}) ==
          Approx(7.713731962e-6 / 60));
    CHECK(call(functions, "line_loss", {7.9e-3, 6, 0, 870, 32e-6, 0.5e-3 / 60}) == Approx(14560.99213));
    CHECK(call(functions, "line_flow", {7.9e-3, 6, 0, 870, 32e-6, 14560.99213}) == Approx(0.5e-3 / 60));
    CHECK(call(functions, "skew", {0.503, 0.497, 0.3, 0.4}) == Approx(0.716215896 * degree));
    CHECK(call(functions, "skew_uncertainty", {0.503, 0.497, 0.3, 0.4, 0.5e-3}) ==
          Approx(0.084425957 * degree));
}

TEST_CASE("What cannot be is unknown to a formula") {
    const Functions functions = rig::rig_functions();
    CHECK(std::isnan(call(functions, "planar_steer_at_length", {0.3, 0.18, 1.4, 0.6})));
    CHECK(std::isnan(call(functions, "ram_force", {1e6, 0.02, 0.03})));
    CHECK(std::isnan(call(functions, "oil_viscosity", {32e-6, 5.4e-6, 233.15})));
    CHECK_FALSE(std::isfinite(call(functions, "bleed_cycles", {1e-4, 2e-4})));
}

TEST_CASE("Dimensions of a formula's arguments are those of the quantities it takes") {
    const Functions functions = rig::rig_functions();
    const Function* turning = functions.find("pump_turning");
    REQUIRE(turning != nullptr);
    // Volume over volume per angle is an angle.
    CHECK(turning->arguments[0] / turning->arguments[1] == turning->result);
    const Function* leak = functions.find("leak_of_creep");
    REQUIRE(leak != nullptr);
    CHECK(leak->arguments[0] * leak->arguments[1] == leak->result);
    const Function* resistance = functions.find("laminar_resistance");
    REQUIRE(resistance != nullptr);
    const Function* power = functions.find("hydraulic_power");
    REQUIRE(power != nullptr);
    CHECK(resistance->result == power->arguments[0] / power->arguments[1]);
    CHECK(power->arguments[0] * power->arguments[1] == power->result);
}
