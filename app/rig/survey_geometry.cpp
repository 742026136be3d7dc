#include <algorithm>
#include <cmath>

#include "app/rig/survey_parts.hpp"

namespace hardover::rig {

namespace {

// Share of bubbles that a pump sips in from a reservoir with no oil to be seen (from memory).
constexpr double low_oil_air = 0.01;

constexpr double running_time = 15 * 3600;  // s of running since the reservoir was last filled (from memory)
constexpr double reserve = 240e-6;          // m^3 from the full mark to the low mark (from memory)

// Rams that were set with the drive at a crooked mark stand at half travel there, not straight ahead.
void set_from_mark(MountedRam& ram, double mark) {
    shift_anchor(ram, rod_out(ram, 0, 0) - rod_out(ram, mark, 0));
}

double of_side(const Sides& sides, std::size_t ram) {
    return ram == 0 ? sides.port : sides.starboard;
}

// How far the drive swings one way: its stop, unless something meets earlier. A hose that is too short holds
// the ram pin back by what it lacks.
double swing_limit(const Rigged& rigged, double foul, double hose_short) {
    const double lacks = std::max(0.0, hose_short - rigged.boat.hose_slack);
    return rigged.boat.stop_angle - std::max(foul, lacks / arm_radius(rigged.drives.rams.front().linkage));
}

// Rod travel left when the drive is on its own stop, at the ram and lock that have the least; below zero the
// ram ends first.
double least_reserve(const Rigged& rigged) {
    double least = rigged.boat.stroke;
    for (const MountedRam& ram : rigged.drives.rams) {
        for (const double stop : {-rigged.boat.stop_angle, rigged.boat.stop_angle}) {
            const double shown = rod_out(ram, stop, 0);
            least = std::min({least, shown, ram.travel.stroke - shown});
        }
    }
    return least;
}

bool has_tiller(const Boat& boat) {
    return boat.mount == Boat::Mount::inboard_tiller;
}

// Puts one ram where its faults put it.
void misplace(Rigged& rigged, std::size_t index) {
    const Faults& f = rigged.faults;
    MountedRam& ram = rigged.drives.rams[index];
    if (!rigged.drives.on_second[index]) {
        set_from_mark(ram, f.mark_offset);
        if (has_tiller(rigged.boat)) ram.linkage.pin = pin_at(ram.linkage, -f.tiller_slip, 0);
    }
    shift_anchor(ram, of_side(f.bracket_offset, index));
    const double rod_end = of_side(f.rod_end_offset, index);
    // A sliding ram has no rod end at the pin: its link is what is set too long. Trimmed about its own rod,
    // it does not mind how high that stands.
    if (slides(ram)) {
        shift_anchor(ram, -rod_end);
    } else {
        ram.travel.closed += rod_end;
        ram.linkage.anchor.z() += of_side(f.bracket_height, index);
        ram.linkage.pin.z() += of_side(f.wing_plate_height, index);
    }
}

// The second drive may meet its own stop first.
Result<void> stop_second_drive(Rigged& rigged) {
    if (!rigged.drives.tie) return {};
    const double stop = rigged.boat.stop_angle;
    const Result<double> port = leading_steer(*rigged.drives.tie, -stop, {});
    if (!port) return port.error();
    const Result<double> starboard = leading_steer(*rigged.drives.tie, stop, {});
    if (!starboard) return starboard.error();
    rigged.port_lock = std::max(rigged.port_lock, port.value());
    rigged.starboard_lock = std::min(rigged.starboard_lock, starboard.value());
    return {};
}

void read_twin_drives(const Rigged& rigged, Readings& into) {
    if (!rigged.drives.tie) return;
    const auto apart = [&](double steer) { return std::abs(second_steer(rigged.drives, steer, 0) - steer); };
    into["toe_error"] = apart(0);
    into["toe_at_lock"] = std::max(apart(rigged.port_lock), apart(rigged.starboard_lock));
    into["tie_bar_play"] = rigged.faults.tie_bar_play;
    into["second_drive_play"] = second_drive_play(rigged);
}

// How far the drive steers itself from full down to full up trim, wheel held still.
Result<void> read_trim(const Rigged& rigged, Readings& into) {
    if (has_tiller(rigged.boat)) return {};
    const Result<double> down = steer_after_trim(rigged.drives, 0, 0, rigged.boat.trim_down);
    if (!down) return down.error();
    const Result<double> up = steer_after_trim(rigged.drives, 0, 0, rigged.boat.trim_up);
    if (!up) return up.error();
    into["trim_steer"] = std::abs(up.value() - down.value());
    return {};
}

// From a transom mark, on the line through the steering axis, to the drive's mark aft, drive at `steer`.
double diagonal(const Boat& boat, double side, double steer) {
    const double x = boat.mark_distance * std::sin(steer) - side * boat.marks_apart / 2;
    return std::hypot(x, boat.mark_distance * std::cos(steer));
}

}  // namespace

double second_drive_play(const Rigged& rigged) {
    return rigged.drives.tie ? rigged.faults.tie_bar_play / rigged.boat.tie_arm : 0;
}

double lost_oil(const Faults& f) {
    return f.weep_seat + f.weep_thread + f.weep_crimp + f.weep_block_joint + f.weep_cap + f.weep_rod +
           f.weep_bulkhead;
}

Result<Rigged> rig_up(const Boat& boat, const Faults& faults, circuit::Solver& solver) {
    Result<SteeredDrives> drives = steered_drives(boat);
    if (!drives) return drives.error();
    Rigged rigged{boat, faults, std::move(drives.value()), 0, 0, &solver};
    rigged.faults.air_share += low_oil_air * std::max(0.0, -faults.reservoir_level);
    for (std::size_t i = 0; i < rigged.drives.rams.size(); ++i) misplace(rigged, i);
    if (rigged.drives.tie) rigged.drives.tie->bar += faults.tie_bar_length;
    const Result<DriveLocks> locks = drive_locks(rigged.drives, 0);
    if (!locks) return locks.error();
    rigged.port_lock =
        std::max(locks.value().lowest, -swing_limit(rigged, faults.foul.port, faults.hose_short.port));
    rigged.starboard_lock = std::min(locks.value().highest,
                                     swing_limit(rigged, faults.foul.starboard, faults.hose_short.starboard));
    if (const Result<void> stops = stop_second_drive(rigged); !stops) return stops.error();
    return rigged;
}

double mean_moment_arm(const Rigged& rigged, double steer) {
    double sum = 0;
    for (std::size_t i = 0; i < rigged.drives.rams.size(); ++i)
        sum += std::abs(moment_arm(rigged.drives, i, steer, 0));
    return sum / static_cast<double>(rigged.drives.rams.size());
}

double joint_play(const Rigged& rigged) {
    const Faults& f = rigged.faults;
    const double at_a_ram = f.bracket_play + f.pin_play;
    const double tiller = has_tiller(rigged.boat) ? f.tiller_play : 0;
    return rigged.boat.sound_play + f.wing_plate_play + f.gimbal_play + tiller +
           at_a_ram / static_cast<double>(rigged.drives.rams.size());
}

double working_travel(const Rigged& rigged) {
    return rod_out(rigged.drives, 0, rigged.starboard_lock, 0) -
           rod_out(rigged.drives, 0, rigged.port_lock, 0);
}

double ram_position(const Rigged& rigged, double steer) {
    const double half = working_travel(rigged) / 2;
    const double from_port_lock =
        rod_out(rigged.drives, 0, steer, 0) - rod_out(rigged.drives, 0, rigged.port_lock, 0);
    return std::clamp(from_port_lock - half, -half, half);
}

Result<void> read_geometry(const Rigged& rigged, Readings& into) {
    const Boat& boat = rigged.boat;
    const Faults& f = rigged.faults;
    into["lock_angle_port"] = -rigged.port_lock;
    into["lock_angle_starboard"] = rigged.starboard_lock;
    into["ram_reserve"] = least_reserve(rigged);
    into["ram_mark_port"] = rod_out(rigged.drives, 0, 0, 0);
    if (rigged.drives.rams.size() > 1) into["ram_mark_starboard"] = rod_out(rigged.drives, 1, 0, 0);
    into["diagonal_port"] = diagonal(boat, -1, f.mark_offset);
    into["diagonal_starboard"] = diagonal(boat, 1, f.mark_offset);
    const double fouls = std::max(f.foul.port, f.foul.starboard);
    into["clearance_at_lock"] =
        fouls > 0 ? -fouls * arm_radius(rigged.drives.rams[0].linkage) : boat.foul_clearance;
    into["hose_slack_at_lock"] = boat.hose_slack - std::max(f.hose_short.port, f.hose_short.starboard);
    into["hose_bore_at_lock"] = std::min(f.hose_kink.port, f.hose_kink.starboard);
    into["drip_rate"] = lost_oil(f);
    into["hose_swelling"] = f.hose_swelling;
    into["bracket_play"] = f.bracket_play;
    into["pin_play"] = f.pin_play;
    into["wing_plate_play"] = f.wing_plate_play;
    into["gimbal_play"] = f.gimbal_play;
    into["cable_play"] = f.cable_play;
    into["helm_play"] = f.helm_play;
    into["bracket_tightness"] = f.bracket_tightness;
    into["wing_plate_tightness"] = f.wing_plate_tightness;
    into["rod_bend"] = f.rod_bend;
    into["hoses_crossed"] = f.rams_swapped;
    into["trim_tab_angle"] = std::abs(f.tab_angle);
    into["list"] = std::abs(f.list_angle);
    into["reservoir_level"] = f.reservoir_level - lost_oil(f) * running_time / reserve;
    into["oil_strangeness"] = f.oil_strangeness;
    if (has_tiller(boat)) {
        into["tiller_slip"] = std::abs(f.tiller_slip);
        into["tiller_play"] = f.tiller_play;
    }
    read_twin_drives(rigged, into);
    return read_trim(rigged, into);
}

}  // namespace hardover::rig
