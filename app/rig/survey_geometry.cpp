#include <algorithm>
#include <cmath>

#include "app/rig/survey_parts.hpp"

namespace hardover::rig {

namespace {

// Share of bubbles that a pump sips in from a reservoir with no oil to be seen (from memory).
constexpr double low_oil_air = 0.01;

constexpr double running_time = 15 * 3600;  // s of running since the reservoir was last filled (from memory)
constexpr double reserve = 240e-6;          // m^3 from the full mark to the low mark (from memory)

// Pulls the ram's anchor away from its pin.
void shift_anchor(MountedRam& ram, double by) {
    const Eigen::Vector3d away = (ram.linkage.anchor - ram.linkage.pin).normalized();
    ram.linkage.anchor += away * by;
}

// Rams that were set with the drive at a crooked mark stand at half travel there, not straight ahead.
void set_from_mark(MountedRam& ram, double mark) {
    shift_anchor(ram, ram_length(ram.linkage, 0, 0) - ram_length(ram.linkage, mark, 0));
}

double of_side(const Sides& sides, std::size_t ram) {
    return ram == 0 ? sides.port : sides.starboard;
}

// How far the drive swings one way: its stop, unless something meets earlier. A hose that is too short holds
// the ram pin back by what it lacks.
double swing_limit(const Rigged& rigged, double foul, double hose_short) {
    const double lacks = std::max(0.0, hose_short - rigged.boat.hose_slack);
    return rigged.boat.stop_angle - std::max(foul, lacks / arm_radius(rigged.rams.front().linkage));
}

double rod_shown(const MountedRam& ram, double steer) {
    return ram_length(ram.linkage, steer, 0) - ram.travel.closed;
}

// Rod travel left when the drive is on its own stop, at the ram and lock that have the least; below zero the
// ram ends first.
double least_reserve(const Rigged& rigged) {
    double least = rigged.boat.stroke;
    for (const MountedRam& ram : rigged.rams) {
        for (const double stop : {-rigged.boat.stop_angle, rigged.boat.stop_angle}) {
            const double shown = rod_shown(ram, stop);
            least = std::min({least, shown, ram.travel.stroke - shown});
        }
    }
    return least;
}

// From a transom mark, on the line through the steering axis, to the drive's mark aft, drive at `steer`.
double diagonal(const Boat& boat, double side, double steer) {
    const double x = boat.mark_distance * std::sin(steer) - side * boat.marks_apart / 2;
    return std::hypot(x, boat.mark_distance * std::cos(steer));
}

}  // namespace

double lost_oil(const Faults& f) {
    return f.weep_seat + f.weep_thread + f.weep_crimp + f.weep_block_joint + f.weep_cap + f.weep_rod +
           f.weep_bulkhead;
}

Result<Rigged> rig_up(const Boat& boat, const Faults& faults) {
    Result<std::vector<MountedRam>> rams = mounted_rams(boat);
    if (!rams) return rams.error();
    Rigged rigged{boat, faults, std::move(rams.value())};
    rigged.faults.air_share += low_oil_air * std::max(0.0, -faults.reservoir_level);
    for (std::size_t i = 0; i < rigged.rams.size(); ++i) {
        MountedRam& ram = rigged.rams[i];
        set_from_mark(ram, faults.mark_offset);
        shift_anchor(ram, of_side(faults.bracket_offset, i));
        ram.travel.closed += of_side(faults.rod_end_offset, i);
    }
    const Result<DriveLocks> locks = drive_locks(rigged.rams, 0);
    if (!locks) return locks.error();
    rigged.port_lock =
        std::max(locks.value().lowest, -swing_limit(rigged, faults.foul.port, faults.hose_short.port));
    rigged.starboard_lock = std::min(locks.value().highest,
                                     swing_limit(rigged, faults.foul.starboard, faults.hose_short.starboard));
    return rigged;
}

double mean_moment_arm(const Rigged& rigged, double steer) {
    double sum = 0;
    for (const MountedRam& ram : rigged.rams) sum += std::abs(moment_arm(ram.linkage, steer, 0));
    return sum / static_cast<double>(rigged.rams.size());
}

double joint_play(const Rigged& rigged) {
    const Faults& f = rigged.faults;
    const double at_a_ram = f.bracket_play + f.pin_play;
    return rigged.boat.sound_play + f.wing_plate_play + f.gimbal_play +
           at_a_ram / static_cast<double>(rigged.rams.size());
}

double working_travel(const Rigged& rigged) {
    const Linkage& port = rigged.rams.front().linkage;
    return ram_length(port, rigged.starboard_lock, 0) - ram_length(port, rigged.port_lock, 0);
}

double ram_position(const Rigged& rigged, double steer) {
    const Linkage& port = rigged.rams.front().linkage;
    const double half = working_travel(rigged) / 2;
    const double from_port_lock = ram_length(port, steer, 0) - ram_length(port, rigged.port_lock, 0);
    return std::clamp(from_port_lock - half, -half, half);
}

void read_geometry(const Rigged& rigged, Readings& into) {
    const Boat& boat = rigged.boat;
    const Faults& f = rigged.faults;
    into["lock_angle_port"] = -rigged.port_lock;
    into["lock_angle_starboard"] = rigged.starboard_lock;
    into["ram_reserve"] = least_reserve(rigged);
    into["ram_mark_port"] = rod_shown(rigged.rams[0], 0);
    if (rigged.rams.size() > 1) into["ram_mark_starboard"] = rod_shown(rigged.rams[1], 0);
    into["diagonal_port"] = diagonal(boat, -1, f.mark_offset);
    into["diagonal_starboard"] = diagonal(boat, 1, f.mark_offset);
    const double fouls = std::max(f.foul.port, f.foul.starboard);
    into["clearance_at_lock"] = fouls > 0 ? -fouls * arm_radius(rigged.rams[0].linkage) : boat.foul_clearance;
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
}

}  // namespace hardover::rig
