#include "app/rig/survey.hpp"

#include <algorithm>

#include "app/rig/chance.hpp"
#include "app/rig/survey_parts.hpp"
#include "rules/quantity/quantity.hpp"

namespace hardover::rig {

const std::vector<Gauge>& gauges() {
    static const std::vector<Gauge> all{
        {"rim_force_port", "lbf", "pull at the rim, turning slowly to port through straight", 1},
        {"rim_force_starboard", "lbf", "pull at the rim, turning slowly to starboard through straight", 1},
        {"effort_inequality", "count",
         "pull the heavier way over the lighter, straight, near the locks, at cruising speed or in a hard "
         "turn",
         0.1},
        {"effort_ratio", "count",
         "pull the lighter way over that of the boat when sound, tied up or in a hard turn", 0.15},
        {"stiff_before_stop", "deg", "swing before the drive's stop from which the wheel is stiff or solid",
         1},
        {"bind_ratio", "count", "pull where it binds over the pull as far on the other side", 0.1},
        {"cold_ratio", "count", "pull on a cold morning over the pull after an hour's run", 0.15},
        {"engine_share", "count",
         "pull with the engine running over the pull with it stopped, mean of both ways", 0.08},
        {"fight_ratio", "count", "pull with both rams over the pull with one of them unpinned", 0.1},
        {"rim_sponge", "in", "spring-back at the rim of a firm push on the stop", 0.25},
        {"free_play", "in", "slack at the rim before the drive stirs", 0.25},
        {"lag", "in", "travel of the rim before the drive follows", 0.5},
        {"wheel_creep", "turns/min", "turning of the wheel held firmly on the stop", 0.1},
        {"isolated_creep", "turns/min", "the same with the lines closed off at the rams", 0.1},
        {"turns_port", "turns", "of the wheel, from starboard lock to port lock", 0.1},
        {"turns_starboard", "turns", "of the wheel, from port lock to starboard lock", 0.1},
        {"drift_rate", "in/min", "movement of the rams under a push on the drive, wheel held still",
         1.0 / 16},
        {"wag", "deg", "how far the drive wags under way with the wheel held still", 0.5},
        {"pull_torque", "lbf*ft", "steady torque of the water on the drive at cruising speed", 10},
        {"joint_play", "in", "slack of all joints in the line of the rams, beyond that of a sound boat",
         1.0 / 32},
        {"lock_angle_port", "deg", "swing from straight to port lock", 1},
        {"lock_angle_starboard", "deg", "swing from straight to starboard lock", 1},
        {"ram_reserve", "in", "rod travel left with the drive on its own stop; below 0 the ram ends first",
         1.0 / 16},
        {"ram_mark_port", "in", "rod shown on the port ram, drive straight", 1.0 / 16},
        {"ram_mark_starboard", "in", "rod shown on the starboard ram, drive straight", 1.0 / 16},
        {"diagonal_port", "in", "from the port transom mark to the drive, at its mark for straight",
         1.0 / 16},
        {"diagonal_starboard", "in", "from the starboard transom mark to the drive, at its mark for straight",
         1.0 / 16},
        {"toe_error", "deg", "difference of both drives' angles with the first straight; two tied drives",
         0.2},
        {"toe_at_lock", "deg", "greatest difference of both drives' angles at the locks; two tied drives",
         0.3},
        {"second_drive_play", "deg", "how far the second drive moves with the first held; two tied drives",
         0.2},
        {"tie_bar_play", "in", "slack at the tie bar's ends; two tied drives", 1.0 / 64},
        {"trim_steer", "deg", "how far the drive steers itself from full down to full up trim, wheel still",
         0.5},
        {"tiller_slip", "deg", "rudder off straight with the tiller straight; inboard with a tiller", 0.5},
        {"tiller_play", "in", "slack of the tiller on its stock, at the ram pin; inboard with a tiller",
         1.0 / 64},
        {"clearance_at_lock", "in", "of ram and hose at full lock; below 0 they touch", 1.0 / 16},
        {"hose_slack_at_lock", "in", "spare length of hose at full lock", 0.25},
        {"hose_bore_at_lock", "count", "bore left of the worse hose at full lock"},
        {"hose_swelling", "count", "give of the hoses over that of sound ones"},
        {"hoses_crossed", "count", "1: the hoses of one ram sit on each other's ports"},
        {"line_flow_ratio", "count", "flow through the slower line over that of the other"},
        {"bracket_play", "in", "movement of the ram bracket", 1.0 / 64},
        {"pin_play", "in", "play at ram pins and rod ends", 1.0 / 64},
        {"wing_plate_play", "in", "movement of the wing plate on the drive", 1.0 / 64},
        {"gimbal_play", "in", "play of the drive's swivel, at the ram pins", 1.0 / 64},
        {"cable_play", "in", "slack at the cable's ends", 1.0 / 32},
        {"helm_play", "in", "slack of wheel and helm on their mounting, at the rim", 1.0 / 8},
        {"bracket_tightness", "count", "torque left on the bracket bolts, share of their figure", 0.05},
        {"wing_plate_tightness", "count", "torque left on the wing plate bolts, share of their figure", 0.05},
        {"rod_bend", "in", "out of straight of the rod", 1.0 / 128},
        {"swivel_drag", "lbf*ft", "torque to swing the drive by hand", 10},
        {"swivel_bind", "lbf*ft", "more torque where the swivel binds", 10},
        {"open_port_flow", "mL/min", "oil past the piston, held on the stop", 5},
        {"pressure_at_stop", "psi", "at the pump, held on the stop, the lower of both ways", 25},
        {"pressure_ratio", "count", "the lower over the higher of both stops", 0.03},
        {"suction_pressure", "psi", "at the pump's inlet", 0.5},
        {"valve_travel_difference", "count", "valve travel reached one way less than the other", 0.05},
        {"valve_travel_better", "count", "share of the valve's travel reached, the better way", 0.05},
        {"valve_rest", "count", "how far off the middle the let-go valve stays", 0.05},
        {"belt_grip", "count", "torque the belt still carries, of a sound one"},
        {"cable_pull", "lbf", "pull to move the cable by itself", 1},
        {"trim_tab_angle", "deg", "how far the trim tab is off", 1},
        {"list", "deg", "list of the boat at rest", 0.5},
        {"reservoir_level", "count",
         "1 full mark, 0 low mark, -1 no oil to be seen; after some hours of losing oil", 0.05},
        {"oil_strangeness", "count", "0 the right family of oil, 1 clearly another"},
        {"air_drawn", "mL/min", "bubbles coming back to the reservoir without end"},
        {"air_flushed", "mL/min", "bubbles coming back in the first minute of turning"},
        {"air_share", "count", "bubbles in the oil"},
        {"drip_rate", "drop/min", "oil lost at all places while the wheel is worked", 0.2},
        {"drip_seat", "drop/min", "from under a hose nut", 0.2},
        {"drip_thread", "drop/min", "from a thread", 0.2},
        {"drip_crimp", "drop/min", "from a hose crimp", 0.2},
        {"drip_block_joint", "drop/min", "from between valve block and ram", 0.2},
        {"drip_cap", "drop/min", "from a ram's end cap", 0.2},
        {"drip_rod", "drop/min", "from a ram's gland", 0.2},
        {"drip_bulkhead", "drop/min", "from the transom fitting", 0.2},
    };
    return all;
}

Readings measured(const Readings& true_readings, std::uint64_t seed) {
    Readings read = true_readings;
    std::uint64_t of_gauge = seed;
    for (const Gauge& gauge : gauges()) {
        of_gauge += 0x9e3779b97f4a7c15;  // so that a gauge's error does not hang on which others there are
        const auto found = read.find(gauge.name);
        const Result<Unit> unit = find_unit(gauge.unit);
        if (found == read.end() || !unit) continue;
        const double error = Chance(of_gauge).normal() * gauge.spread / 2 * unit.value().factor;
        const bool can_be_negative = found->second < 0;
        found->second += error;
        if (!can_be_negative) found->second = std::max(0.0, found->second);
    }
    return read;
}

Result<Readings> survey(const Boat& boat, const Faults& faults) {
    circuit::Solver solver;
    const Result<Rigged> rigged = rig_up(boat, faults, solver);
    if (!rigged) return rigged.error();
    Readings readings;
    if (const Result<void> seen = read_geometry(rigged.value(), readings); !seen) return seen.error();
    if (const Result<void> felt = read_feel(rigged.value(), readings); !felt) return felt.error();
    return readings;
}

}  // namespace hardover::rig
