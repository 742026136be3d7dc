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

// A drive's arm: steering axis upright, trim axis athwart through `trim_forward` of it; trimmed up, what lies
// aft goes up.
SteeringArm arm_to(const Eigen::Vector3d& pin, double trim_forward) {
    return {pin,
            Eigen::Vector3d::Zero(),
            Eigen::Vector3d::UnitZ(),
            {0, trim_forward, 0},
            -Eigen::Vector3d::UnitX()};
}

// The port ram (`side` -1) or the starboard ram (1) of a drive, with a moment arm straight ahead.
MountedRam ram_on(const Boat& boat, double side, double moment_arm) {
    MountedRam ram;
    ram.travel = {boat.stroke + boat.dead_length, boat.stroke};
    const double ahead = boat.stroke * 1.5 + boat.dead_length;  // pin to pin at half travel
    const double cosine = std::cos(boat.lead_in), sine = std::sin(boat.lead_in);
    SteeringArm& arm = ram.linkage;
    switch (boat.mount) {
        case Boat::Mount::sterndrive_external: {
            const double across = moment_arm / (cosine + boat.pin_set_back * sine);
            arm = arm_to({side * across, -boat.pin_set_back * across, 0}, 0);
            ram.linkage.anchor = arm.pin + ahead * Eigen::Vector3d(side * sine, cosine, 0);
            break;
        }
        case Boat::Mount::outboard_centre:
            // The tiller points forward: to steer to starboard its pin goes to port.
            arm = arm_to({0, moment_arm, 0}, moment_arm);
            ram.linkage.anchor = arm.pin;
            ram.slides_along = -Eigen::Vector3d::UnitX();
            break;
        case Boat::Mount::inboard_tiller:
            arm = arm_to({0, -moment_arm / cosine, 0}, 0);
            ram.linkage.anchor = arm.pin + ahead * Eigen::Vector3d(side * cosine, sine, 0);
            break;
    }
    return ram;
}

// Rod travel from half travel to the further of the drive's two stops.
double travel_to_stop(const Boat& boat, const MountedRam& ram) {
    const double ahead = rod_out(ram, 0, 0);
    return std::max(std::abs(rod_out(ram, boat.stop_angle, 0) - ahead),
                    std::abs(rod_out(ram, -boat.stop_angle, 0) - ahead));
}

TieBarInSpace tie_bar_of(const Boat& boat, const MountedRam& port) {
    TieBarInSpace tie;
    tie.one = port.linkage;
    tie.one.pin = {0, -boat.tie_arm, 0};
    tie.two = tie.one;
    for (Eigen::Vector3d* point : {&tie.two.pin, &tie.two.steer_point, &tie.two.trim_point})
        point->x() += boat.drive_spacing;
    tie.bar = bar_for_toe(tie, 0);
    return tie;
}

Result<void> check_sizes(const Boat& boat) {
    const auto refused = [](const char* cure) {
        return Error{Error::Kind::bad_input, "the rams cannot be mounted", "boat", cure};
    };
    const bool sizes = boat.stroke > 0 && boat.stroke / 2 > boat.ram_reserve && boat.stop_angle > 0.05 &&
                       boat.stop_angle < 1.2 && boat.dead_length > 0 && (boat.rams == 1 || boat.rams == 2);
    if (!sizes)
        return refused("1 or 2 rams, stroke longer than twice the reserve, a stop angle from 3 to 69 deg");
    if (boat.drives != 1 && boat.drives != 2) return refused("1 or 2 drives");
    if (boat.drives == 2 && !(boat.tie_arm > 0 && boat.drive_spacing > 2 * boat.tie_arm))
        return refused("drives further apart than their tie bar arms reach together");
    if (boat.mount == Boat::Mount::outboard_centre && !(boat.balanced && boat.rams <= boat.drives))
        return refused("one balanced cylinder for an outboard");
    if (!(boat.trim_down <= 0 && boat.trim_up >= 0))
        return refused("a trim range from down, 0 or below, to up, 0 or above");
    return {};
}

// What no yard would see on one boat is put right here, and nowhere else. All common practice.
void make_sensible(Boat& boat) {
    // An outboard has one cylinder at most, a balanced one, and its engine drives no oil pump.
    if (boat.mount == Boat::Mount::outboard_centre) {
        boat.balanced = true;
        boat.rams = std::min(boat.rams, boat.drives);
        if (boat.assist == Boat::Assist::engine_pump) boat.assist = Boat::Assist::electric_pump;
    }
    // A ram beside a stern drive has the transom at its back: no room for a rod out of both ends.
    if (boat.mount == Boat::Mount::sterndrive_external) boat.balanced = false;
    // The only ram is the first drive's: the second turns by the tie bar or not at all.
    if (boat.drives == 2 && boat.rams == 1) boat.tied = true;
}

// What kind of rig it is, by numbers of its own: those of its sizes stay as they are. A cable and valve are a
// stern drive's.
void sample_kind(Boat& boat, std::uint64_t seed) {
    Chance chance(seed ^ 0x6a09e667f3bcc909);
    const bool manual = boat.helm == Boat::Helm::manual_pump;
    const double kind = chance.between(0, 1);
    if (manual && kind < 0.25) boat.mount = Boat::Mount::outboard_centre;
    if (manual && kind > 0.85) boat.mount = Boat::Mount::inboard_tiller;
    boat.drives = chance.happens(0.25) ? 2 : 1;
    boat.tied = chance.happens(0.85);
    boat.drive_spacing = chance.between(0.65, 0.95);
    boat.tie_arm = chance.between(0.18, 0.25);
    boat.helms = manual && chance.happens(0.15) ? 2 : 1;
    boat.autopilot = manual && chance.happens(0.15);
    if (manual && chance.happens(0.15))
        boat.assist = chance.happens(0.5) ? Boat::Assist::engine_pump : Boat::Assist::electric_pump;
    make_sensible(boat);
}

}  // namespace

Result<SteeredDrives> steered_drives(const Boat& boat) {
    if (const Result<void> checked = check_sizes(boat); !checked) return checked.error();
    // The moment arm that uses the stroke but for the reserve: travel grows nearly in proportion to it.
    const double travel = boat.stroke / 2 - boat.ram_reserve;
    double moment_arm = travel / boat.stop_angle;
    for (int step = 0; step < 8; ++step)
        moment_arm *= travel / travel_to_stop(boat, ram_on(boat, -1, moment_arm));
    SteeredDrives drives;
    const bool two = boat.drives == 2;
    drives.rams.push_back(ram_on(boat, -1, moment_arm));
    if (boat.rams == 2) drives.rams.push_back(ram_on(boat, 1, moment_arm));
    drives.on_second = {false, two};
    drives.on_second.resize(drives.rams.size());
    if (two && boat.tied) drives.tie = tie_bar_of(boat, drives.rams.front());
    if (const Result<DriveLocks> locks = drive_locks(drives, 0); !locks) return locks.error();
    return drives;
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
    sample_kind(boat, seed);
    const bool outboard = boat.mount == Boat::Mount::outboard_centre;
    boat.bore = chance.between(1.25, 1.5) * inch * (boat.rams == 2 ? 1 : outboard ? 1.4 : 1.25);
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
