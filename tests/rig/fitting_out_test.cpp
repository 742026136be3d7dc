// Squareness, drilling, fasteners, hoses, sealing, load and metals: round trips, edges and refusals.
#include <cmath>
#include <numbers>

#include "app/rig/cylinder.hpp"
#include "app/rig/drill.hpp"
#include "app/rig/fastener.hpp"
#include "app/rig/galvanic.hpp"
#include "app/rig/hose.hpp"
#include "app/rig/load.hpp"
#include "app/rig/seal_volume.hpp"
#include "app/rig/square.hpp"
#include "support.hpp"

using namespace hardover::rig;

namespace {
constexpr double degree = std::numbers::pi / 180;
}

TEST_CASE("A leaning parallelogram gives its lean back from its diagonals") {
    for (double lean = -20; lean <= 20; lean += 4) {
        const double a = 0.9;
        const double b = 0.6;
        const double cross = 2 * a * b * std::sin(lean * degree);
        const double first = std::sqrt(a * a + b * b + cross);
        const double second = std::sqrt(a * a + b * b - cross);
        INFO(lean << " deg");
        CHECK(skew({first, second, a, b}) == Approx(lean * degree).margin(1e-12));
    }
    CHECK(std::isnan(skew({2, 0.1, 0.5, 0.5})));
    CHECK(std::isnan(skew({1, 1, 0, 1})));
    // A tape read to 1 mm: 1/sqrt(12) mm (GUM 4.3.7).
    CHECK(standard_uncertainty_of_marks(1e-3) == Approx(1e-3 / std::sqrt(12.0)));
}

TEST_CASE("The skew's uncertainty is what small changes of each length do") {
    const Diagonals measured{0.503, 0.497, 0.3, 0.4};
    constexpr double u = 1e-6;
    std::vector<double> moved;
    for (double Diagonals::*side :
         {&Diagonals::first, &Diagonals::second, &Diagonals::side_a, &Diagonals::side_b}) {
        Diagonals other = measured;
        other.*side += u;
        moved.push_back(skew(other) - skew(measured));
    }
    CHECK(skew_uncertainty(measured, {u, u, u, u}) == Approx(root_sum_square(moved)).epsilon(1e-4));
}

TEST_CASE("A drill out of square comes out where the angle says and the angle comes back") {
    for (double error = 0; error < 80; error += 9) {
        const double offset = exit_offset(0.05, error * degree);
        CHECK(error_of_offset(offset, 0.05) == Approx(error * degree));
        const double path = drilled_path(0.05, error * degree);
        CHECK(exit_offset_along_path(path, error * degree) == Approx(offset));
        CHECK(std::hypot(0.05, offset) == Approx(path));
    }
    CHECK(compound_error(3 * degree, 0) == Approx(3 * degree));
    CHECK(compound_error(3 * degree, 4 * degree) == Approx(5 * degree).epsilon(0.01));
    CHECK(guide_wedge(0.1, 12 * degree) == Approx(0.1 * std::tan(12 * degree)));
    CHECK(entry_ellipse(0.01, 60 * degree) == Approx(0.02));
    CHECK(std::isnan(exit_offset(0.05, 85 * degree)));
    CHECK(std::isnan(error_of_offset(0.01, 0)));
}

TEST_CASE("Torque and clamp load give each other back, an unknown thread is met with its neighbour") {
    CHECK(clamp_of_torque(0.18, 0.01, torque_for_clamp(0.18, 0.01, 20e3)) == Approx(20e3));
    // ISO 898-1 table: M10 has 58.0 mm^2, M8 36.6 mm^2.
    const auto m10 = find_thread("M10x1.5");
    REQUIRE_OK(m10);
    CHECK(m10.value().stress_area() == Approx(58.0e-6).margin(0.05e-6));
    CHECK(find_thread("M8x1.25").value().stress_area() == Approx(36.6e-6).margin(0.05e-6));
    const auto unknown = find_thread("3/8-15");
    REQUIRE_FALSE(unknown.ok());
    CHECK(unknown.error().cure.find("3/8-16") != std::string::npos);
    CHECK_FALSE(find_bolt_grade("grade 99").ok());
    CHECK(std::isnan(stress_area(0.001, 0.002, ThreadForm::metric)));
    CHECK(std::isnan(clamp_load(1.5, 580e6, 58e-6)));
    CHECK(std::isnan(nut_factor({0, 0.009, 0.0015, 0.15, 0.15})));
}

TEST_CASE("Every bolt grade has a source and breaks above its proof stress") {
    for (const BoltGrade& grade : bolt_grades()) {
        INFO(grade.name);
        CHECK_FALSE(grade.source.empty());
        CHECK(grade.tensile > grade.proof);
    }
}

TEST_CASE(
    "A hose is long enough at its greatest span after shortening, and its bend is measured by a ruler") {
    const double length = hose_to_cut(0.9, 0.04, 0.05);
    CHECK(hose_slack(length, 0.04, 0.9) == Approx(0.05));
    CHECK(hose_slack(0.9, 0.04, 0.9) < 0);
    // A chord of a circle of radius 0.1 m: rise = r - sqrt(r^2 - (c/2)^2).
    const double rise = 0.1 - std::sqrt(0.1 * 0.1 - 0.03 * 0.03);
    CHECK(bend_radius(0.06, rise) == Approx(0.1));
    CHECK(bend_length(0.1, 0.02, std::numbers::pi) == Approx(0.11 * std::numbers::pi));
    CHECK(dash_of_size(size_of_dash(6)) == Approx(6));
    CHECK(std::isnan(least_bend_radius(0.02)));
    CHECK(std::isnan(hose_to_cut(0.9, 1, 0)));
    CHECK(flare_torque(7, FlareNut::hose) == nullptr);
    for (const FlareTorque& torque : flare_torques()) CHECK(torque.greatest > torque.least);
}

TEST_CASE("A bead squeezed to its gap keeps its volume") {
    const double bead = 0.008;
    const double width = squeezed_width(bead, 0.002);
    CHECK(width * 0.002 * 1.5 == Approx(bead_volume(bead, 1.5)));
    CHECK(bead_for_joint(width, 0.002) == Approx(bead));
    CHECK(annulus_volume(0.012, 0.010, 0.05) == Approx(std::numbers::pi / 4 * 44e-6 * 0.05));
    CHECK(cartridges(300e-6, 290e-6, 0.1) == 2);
    CHECK(std::isnan(squeezed_width(bead, 0.009)));
    CHECK(std::isnan(annulus_volume(0.010, 0.012, 0.05)));
    CHECK(std::isnan(cartridges(300e-6, 290e-6, 1)));
}

TEST_CASE("A helm's wheel force follows from the pressure, and its turns from the ram") {
    // Turning a pump against a pressure for a volume takes the hydraulic work: torque · angle = pressure ·
    // volume.
    const double displacement = 28e-6 / (2 * std::numbers::pi);
    const double angle = pump_turning(1e-4, displacement, 1);
    CHECK(pump_torque(2e6, displacement, 1) * angle == Approx(2e6 * 1e-4));
    CHECK(wheel_rim_force(2e6, displacement, 0.4, 0.9) ==
          Approx(pump_torque(2e6, displacement, 1) / 0.9 / 0.2));
    CHECK(pump_turning(1e-4, displacement, 0.8) == Approx(angle / 0.8));
    CHECK(std::isnan(pump_turning(1e-4, displacement, 1.2)));
    CHECK(std::isnan(pump_turning(1e-4, 0, 1)));
    CHECK(std::isnan(circle_diameter(-1)));
    CHECK(circle_diameter(circle_area(0.04)) == Approx(0.04));
    CHECK(unbalanced_ratio(0.04, 0.02) == Approx(4.0 / 3));
}

TEST_CASE("The water's load grows with speed squared and a ram answers it over its moment arm") {
    const double at_20 = side_force(sea_water_density, 0.1, 10, 0.6);
    CHECK(side_force(sea_water_density, 0.1, 20, 0.6) == Approx(at_speed(at_20, 10, 20)));
    CHECK(ram_pressure_for_torque(270, 0.15, 9e-4) == Approx(2e6));
    CHECK(std::isnan(ram_force_for_torque(270, 0)));
    CHECK(std::isnan(at_speed(1, 0, 10)));
    CHECK(steering_part_of_shaft_torque(100, 30 * degree) == Approx(50));
    CHECK(steering_part_of_shaft_torque(100, 0) == 0);
    CHECK(rudder_force_coefficient(1.5, 0) == 0);
}

TEST_CASE("Zinc is eaten by every other metal, and metals of two charts are never mixed") {
    for (const Electrode electrode : {Electrode::calomel, Electrode::silver_chloride}) {
        for (const Metal& metal : metals(electrode)) {
            const auto pair = couple(electrode, metal.name, "zinc");
            REQUIRE_OK(pair);
            CHECK(pair.value().eaten == "zinc");
            CHECK(pair.value().voltage >= 0);
            CHECK(metal.electrode == electrode);
        }
    }
    const auto bronze = couple(Electrode::calomel, "G bronze", "aluminium 3003-H");
    REQUIRE_OK(bronze);
    CHECK(bronze.value().eaten == "aluminium 3003-H");
    CHECK(bronze.value().spared == "G bronze");
    CHECK(bronze.value().of_concern);
    CHECK_FALSE(
        couple(Electrode::silver_chloride, "mild steel", "aluminium 5086/5083/6061").value().of_concern);
    const auto unknown = couple(Electrode::silver_chloride, "zink", "naval brass");
    REQUIRE_FALSE(unknown.ok());
    CHECK(unknown.error().cure.find("zinc") != std::string::npos);
}
