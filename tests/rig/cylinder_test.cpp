// The cylinder formulas against published worked examples. Each check names its source.
#include "app/rig/cylinder.hpp"

#include <cmath>

#include "app/rig/functions.hpp"
#include "support.hpp"

using namespace hardover::rig;

namespace {
constexpr double inch = 0.0254;            // m, NIST SP 811 (exact)
constexpr double pound_force = 4.4482216;  // N, NIST SP 811
constexpr double psi = 6894.757;           // Pa, NIST SP 811
constexpr double us_gallon = 3.785412e-3;  // m^3, NIST SP 811
constexpr double foot = 0.3048;            // m, NIST SP 811 (exact)
}  // namespace

TEST_CASE("A 2 in bore pushes 1000 lbf at 318 psi and pulls it at 425 psi round a 1 in rod") {
    // A. Esposito, Fluid Power with Applications, example 6.1, p. 219 (prints 318 and 425 psi, 2.05 and 2.73
    // ft/s).
    CHECK(1000 * pound_force / ram_area(2 * inch, 0) / psi == Approx(318).margin(0.5));
    CHECK(1000 * pound_force / ram_area(2 * inch, 1 * inch) / psi == Approx(425).margin(1));
    const double flow = 20 * us_gallon / 60;
    CHECK(ram_speed(flow, 2 * inch, 0) / foot == Approx(2.05).epsilon(0.005));
    CHECK(ram_speed(flow, 2 * inch, 1 * inch) / foot == Approx(2.73).epsilon(0.005));
}

TEST_CASE("A 3 in ram at 2000 psi pushes 14,140 lbf") {
    // J. Sullivan, Fluid Power: Theory and Applications, 4th ed., example 8.3, p. 178.
    CHECK(ram_force(2000 * psi, 3 * inch, 0) / pound_force == Approx(14140).epsilon(0.001));
    // Same book, example 8.6, p. 186: 7500 lbf on the rod side of 3 in bore, 1.5 in rod; exact 1414.711 psi.
    CHECK(7500 * pound_force / ram_area(3 * inch, 1.5 * inch) / psi == Approx(1414.711).epsilon(1e-5));
}

TEST_CASE("A 6 in bore over 120 in holds 14.688 US gallons") {
    // J. Sullivan, Fluid Power, example 7.5, p. 162.
    CHECK(ram_volume(6 * inch, 0, 120 * inch) / us_gallon == Approx(14.688).margin(0.001));
}

TEST_CASE("A ram that cannot be gives no number") {
    CHECK(std::isnan(ram_area(1, 1)));
    CHECK(std::isnan(ram_area(0, 0)));
    CHECK(std::isnan(ram_area(1, -0.1)));
    CHECK(std::isnan(ram_volume(1, 2, 1)));
    CHECK(std::isnan(circle_area(-1)));
}

TEST_CASE("Formulas reach the same cylinder by name, with a source for each function") {
    const hardover::Functions functions = rig_functions();
    const auto call = [&](const char* name, const std::vector<double>& arguments) {
        const hardover::Function* function = functions.find(name);
        REQUIRE(function != nullptr);
        CHECK_FALSE(function->source.empty());
        REQUIRE(function->arguments.size() == arguments.size());
        return function->compute(arguments);
    };
    // The same published examples as above.
    CHECK(call("ram_force", {2000 * psi, 3 * inch, 0}) / pound_force == Approx(14140).epsilon(0.001));
    CHECK(call("ram_volume", {6 * inch, 0, 120 * inch}) / us_gallon == Approx(14.688).margin(0.001));
    CHECK(call("ram_speed", {20 * us_gallon / 60, 2 * inch, 1 * inch}) / foot == Approx(2.73).epsilon(0.005));
    CHECK(call("ram_area", {2 * inch, 0}) == call("circle_area", {2 * inch}));
}
