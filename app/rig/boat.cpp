#include "app/rig/boat.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/rig/chance.hpp"
#include "app/rig/cylinder.hpp"
#include "app/rig/oil.hpp"

namespace hardover::rig {

namespace {

constexpr double inch = 0.0254;  // m
constexpr double mL = 1e-6;      // m^3

// The port ram with a moment arm straight ahead; `side` -1 port, 1 starboard.
MountedRam ram_on(const Boat& boat, double side, double moment_arm) {
    const double ahead = boat.stroke * 1.5 + boat.dead_length;  // pin to pin at half travel
    const double across = moment_arm / (std::cos(boat.lead_in) + boat.pin_set_back * std::sin(boat.lead_in));
    MountedRam ram;
    ram.travel = {boat.stroke + boat.dead_length, boat.stroke};
    Linkage& linkage = ram.linkage;
    linkage.pin = {side * across, -boat.pin_set_back * across, 0};
    linkage.anchor =
        linkage.pin + ahead * Eigen::Vector3d(side * std::sin(boat.lead_in), std::cos(boat.lead_in), 0);
    linkage.steer_point = Eigen::Vector3d::Zero();
    linkage.steer_direction = Eigen::Vector3d::UnitZ();
    linkage.trim_point = Eigen::Vector3d::Zero();
    linkage.trim_direction = Eigen::Vector3d::UnitX();
    return ram;
}

// Rod travel from half travel to the further of the drive's two stops.
double travel_to_stop(const Boat& boat, const MountedRam& ram) {
    const double ahead = ram_length(ram.linkage, 0, 0);
    return std::max(std::abs(ram_length(ram.linkage, boat.stop_angle, 0) - ahead),
                    std::abs(ram_length(ram.linkage, -boat.stop_angle, 0) - ahead));
}

}  // namespace

Result<std::vector<MountedRam>> mounted_rams(const Boat& boat) {
    const double travel = boat.stroke / 2 - boat.ram_reserve;
    const bool sizes = boat.stroke > 0 && travel > 0 && boat.stop_angle > 0.05 && boat.stop_angle < 1.2 &&
                       boat.dead_length > 0 && (boat.rams == 1 || boat.rams == 2);
    if (!sizes)
        return Error{Error::Kind::bad_input, "the rams cannot be mounted", "boat",
                     "1 or 2 rams, stroke longer than twice the reserve, a stop angle from 3 to 69 deg"};
    // The moment arm that uses the stroke but for the reserve: travel grows nearly in proportion to it.
    double moment_arm = travel / boat.stop_angle;
    for (int step = 0; step < 8; ++step)
        moment_arm *= travel / travel_to_stop(boat, ram_on(boat, -1, moment_arm));
    std::vector<MountedRam> rams{ram_on(boat, -1, moment_arm)};
    if (boat.rams == 2) rams.push_back(ram_on(boat, 1, moment_arm));
    const Result<DriveLocks> locks = drive_locks(rams, 0);
    if (!locks) return locks.error();
    return rams;
}

double oil_viscosity_of(const Boat& boat, double temperature) {
    return oil_viscosity(boat.oil_at_40, boat.oil_at_100, std::max(temperature, coldest_on_the_line));
}

Boat sample_boat(std::uint64_t seed) {
    Chance chance(seed);
    Boat boat;
    boat.helm = chance.happens(0.5) ? Boat::Helm::manual_pump : Boat::Helm::cable_valve;
    boat.rams = chance.happens(0.7) ? 2 : 1;
    boat.balanced = chance.happens(0.3);
    boat.bore = chance.between(1.25, 1.5) * inch * (boat.rams == 1 ? 1.25 : 1);
    boat.rod = boat.bore * chance.between(0.42, 0.52);
    boat.stroke = chance.between(8, 9.5) * inch;
    boat.ram_friction = chance.between(20, 45);
    boat.stop_angle = chance.between(28, 32) * std::numbers::pi / 180;
    boat.ram_reserve = chance.between(0.3, 0.5) * inch;
    boat.lead_in = chance.between(0.02, 0.15);
    boat.pin_set_back = chance.between(0.05, 0.3);
    boat.dead_length = chance.between(0.12, 0.18);
    boat.wheel_radius = chance.between(0.17, 0.2);
    boat.helm_friction = chance.between(0.7, 1.5);
    boat.sound_play = chance.between(0.05e-3, 0.2e-3);
    boat.sound_slip = chance.between(0.2, 1) * 2e-8;
    boat.hose_length = chance.between(4, 6);
    boat.hose_bore = chance.between(0.25, 0.3) * inch;
    boat.hose_compliance = chance.between(0.05, 0.12) * mL;
    boat.temperature = 273.15 + chance.between(12, 26);
    boat.relief_pressure = chance.between(900, 1100) * 6894.757;
    boat.cable_friction = chance.between(40, 80);
    boat.cable_turns = chance.between(3.2, 4.2);
    boat.dock_friction = chance.between(70, 120);
    boat.cruising_speed = chance.between(9, 14);
    const double area =
        (ram_area(boat.bore, boat.balanced ? boat.rod : 0) + ram_area(boat.bore, boat.rod)) / 2;
    boat.helm_displacement = boat.rams * area * boat.stroke / chance.between(3.8, 5);
    // Makers size rams so that a hard turn leaves power in hand; a manual helm's leaves the hand in hand.
    const bool manual = boat.helm == Boat::Helm::manual_pump;
    const double share = manual ? chance.between(0.15, 0.3) : chance.between(0.6, 0.8);
    const double moment_arm = (boat.stroke / 2 - boat.ram_reserve) / boat.stop_angle;
    boat.hard_turn = share * boat.relief_pressure * boat.rams * area * moment_arm - boat.dock_friction;
    boat.pump_displacement = boat.rams * area * boat.stroke / (boat.pump_idle * chance.between(1.4, 2));
    return boat;
}

}  // namespace hardover::rig
