#include "app/rig/survey.hpp"

#include "app/rig/survey_parts.hpp"

namespace hardover::rig {

const std::vector<Gauge>& gauges() {
    static const std::vector<Gauge> all{
        {"rim_force_port", "lbf", "pull at the rim, turning slowly to port through straight"},
        {"rim_force_starboard", "lbf", "pull at the rim, turning slowly to starboard through straight"},
        {"effort_inequality", "count",
         "pull the heavier way over the lighter, straight, near the locks, at cruising speed or in a hard "
         "turn"},
        {"effort_ratio", "count",
         "pull the lighter way over that of the boat when sound, tied up or in a hard turn"},
        {"stiff_before_stop", "deg", "swing before the drive's stop from which the wheel is stiff or solid"},
        {"bind_ratio", "count", "pull where it binds over the pull as far on the other side"},
        {"cold_ratio", "count", "pull on a cold morning over the pull after an hour's run"},
        {"engine_share", "count",
         "pull with the engine running over the pull with it stopped, mean of both ways"},
        {"fight_ratio", "count", "pull with both rams over the pull with one of them unpinned"},
        {"rim_sponge", "in", "spring-back at the rim of a firm push on the stop"},
        {"free_play", "in", "slack at the rim before the drive stirs"},
        {"lag", "in", "travel of the rim before the drive follows"},
        {"wheel_creep", "turns/min", "turning of the wheel held firmly on the stop"},
        {"isolated_creep", "turns/min", "the same with the lines closed off at the rams"},
        {"turns_port", "turns", "of the wheel, from starboard lock to port lock"},
        {"turns_starboard", "turns", "of the wheel, from port lock to starboard lock"},
        {"drift_rate", "in/min", "movement of the rams under a push on the drive, wheel held still"},
        {"wag", "deg", "how far the drive wags under way with the wheel held still"},
        {"pull_torque", "lbf*ft", "steady torque of the water on the drive at cruising speed"},
        {"joint_play", "in", "slack of all joints in the line of the rams, beyond that of a sound boat"},
        {"lock_angle_port", "deg", "swing from straight to port lock"},
        {"lock_angle_starboard", "deg", "swing from straight to starboard lock"},
        {"ram_reserve", "in", "rod travel left with the drive on its own stop; below 0 the ram ends first"},
        {"ram_mark_port", "in", "rod shown on the port ram, drive straight"},
        {"ram_mark_starboard", "in", "rod shown on the starboard ram, drive straight"},
        {"diagonal_port", "in", "from the port transom mark to the drive, at its mark for straight"},
        {"diagonal_starboard", "in",
         "from the starboard transom mark to the drive, at its mark for straight"},
        {"toe_error", "deg", "difference of both drives' angles with the first straight; two tied drives"},
        {"toe_at_lock", "deg", "greatest difference of both drives' angles at the locks; two tied drives"},
        {"second_drive_play", "deg", "how far the second drive moves with the first held; two tied drives"},
        {"tie_bar_play", "in", "slack at the tie bar's ends; two tied drives"},
        {"trim_steer", "deg", "how far the drive steers itself from full down to full up trim, wheel still"},
        {"tiller_slip", "deg", "rudder off straight with the tiller straight; inboard with a tiller"},
        {"tiller_play", "in", "slack of the tiller on its stock, at the ram pin; inboard with a tiller"},
        {"clearance_at_lock", "in", "of ram and hose at full lock; below 0 they touch"},
        {"hose_slack_at_lock", "in", "spare length of hose at full lock"},
        {"hose_bore_at_lock", "count", "bore left of the worse hose at full lock"},
        {"hose_swelling", "count", "give of the hoses over that of sound ones"},
        {"hoses_crossed", "count", "1: the hoses of one ram sit on each other's ports"},
        {"line_flow_ratio", "count", "flow through the slower line over that of the other"},
        {"bracket_play", "in", "movement of the ram bracket"},
        {"pin_play", "in", "play at ram pins and rod ends"},
        {"wing_plate_play", "in", "movement of the wing plate on the drive"},
        {"gimbal_play", "in", "play of the drive's swivel, at the ram pins"},
        {"cable_play", "in", "slack at the cable's ends"},
        {"helm_play", "in", "slack of wheel and helm on their mounting, at the rim"},
        {"bracket_tightness", "count", "torque left on the bracket bolts, share of their figure"},
        {"wing_plate_tightness", "count", "torque left on the wing plate bolts, share of their figure"},
        {"rod_bend", "in", "out of straight of the rod"},
        {"swivel_drag", "lbf*ft", "torque to swing the drive by hand"},
        {"swivel_bind", "lbf*ft", "more torque where the swivel binds"},
        {"open_port_flow", "mL/min", "oil past the piston, held on the stop"},
        {"pressure_at_stop", "psi", "at the pump, held on the stop, the lower of both ways"},
        {"pressure_ratio", "count", "the lower over the higher of both stops"},
        {"suction_pressure", "psi", "at the pump's inlet"},
        {"valve_travel_difference", "count", "valve travel reached one way less than the other"},
        {"valve_travel_better", "count", "share of the valve's travel reached, the better way"},
        {"valve_rest", "count", "how far off the middle the let-go valve stays"},
        {"belt_grip", "count", "torque the belt still carries, of a sound one"},
        {"cable_pull", "lbf", "pull to move the cable by itself"},
        {"trim_tab_angle", "deg", "how far the trim tab is off"},
        {"list", "deg", "list of the boat at rest"},
        {"reservoir_level", "count",
         "1 full mark, 0 low mark, -1 no oil to be seen; after some hours of losing oil"},
        {"oil_strangeness", "count", "0 the right family of oil, 1 clearly another"},
        {"air_drawn", "mL/min", "bubbles coming back to the reservoir without end"},
        {"air_flushed", "mL/min", "bubbles coming back in the first minute of turning"},
        {"air_share", "count", "bubbles in the oil"},
        {"drip_rate", "drop/min", "oil lost at all places while the wheel is worked"},
        {"drip_seat", "drop/min", "from under a hose nut"},
        {"drip_thread", "drop/min", "from a thread"},
        {"drip_crimp", "drop/min", "from a hose crimp"},
        {"drip_block_joint", "drop/min", "from between valve block and ram"},
        {"drip_cap", "drop/min", "from a ram's end cap"},
        {"drip_rod", "drop/min", "from a ram's gland"},
        {"drip_bulkhead", "drop/min", "from the transom fitting"},
    };
    return all;
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
