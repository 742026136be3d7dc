#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/rig/cylinder.hpp"
#include "app/rig/flow.hpp"
#include "app/rig/load.hpp"
#include "app/rig/stiffness.hpp"
#include "app/rig/survey_parts.hpp"

namespace hardover::rig {

namespace {

constexpr double cold = 273.15;       // K: a cold morning
constexpr double warm = 313.15;       // K: after an hour's run
constexpr double near_lock = 0.95;    // of the way to the lock
constexpr double stiff_factor = 1.6;  // of the pull straight ahead: a hand calls it stiff (from memory)
constexpr double push_at_tail = 300;  // N, one person on a line (from memory)
constexpr double wake_torque = 60;    // N·m of a wake or of uneven water on the drive (from memory)
constexpr double wake_time = 2;       // s it pushes one way
constexpr double valve_stroke =
    3e-3;                         // m the drive moves before a held valve is fully against it (from memory)
constexpr double tab_lift = 3.0;  // 1/rad, lift gradient of so small a plate (from memory)
constexpr double water = 1000;    // kg/m^3
constexpr double no_pressure = 1e3;       // Pa: less than a gauge shows
constexpr double pouring_pressure = 1e5;  // Pa, oil pushed through a line into the can
constexpr double worth_a_pin = 1.2;       // effort_ratio from which one ram is unpinned to try
constexpr double flush = 60;              // s in which trapped air comes out while turning

bool manual(const Rigged& rigged) {
    return rigged.boat.helm == Boat::Helm::manual_pump;
}

struct BothWays {
    Turning port, starboard;
};

Result<BothWays> both_ways(const Rigged& rigged, const Conditions& to_port, const Conditions& to_starboard) {
    const Result<Turning> port = turn_steadily(rigged, to_port, -1);
    if (!port) return port.error();
    const Result<Turning> starboard = turn_steadily(rigged, to_starboard, 1);
    if (!starboard) return starboard.error();
    return BothWays{port.value(), starboard.value()};
}

Result<BothWays> both_ways(const Rigged& rigged, const Conditions& conditions) {
    return both_ways(rigged, conditions, conditions);
}

// A hard turn at cruising speed, the water against the drive.
Result<BothWays> hard_turn(const Rigged& rigged) {
    Conditions port = {.torque = rigged.boat.hard_turn, .temperature = rigged.boat.temperature};
    Conditions starboard = port;
    starboard.torque = -starboard.torque;
    return both_ways(rigged, port, starboard);
}

double least(const BothWays& pulls) {
    return std::min(pulls.port.force, pulls.starboard.force);
}

double inequality(const BothWays& pulls) {
    return std::max(pulls.port.force, pulls.starboard.force) / least(pulls);
}

Conditions straight(const Rigged& rigged) {
    return {.temperature = rigged.boat.temperature};
}

// Slack at the rim before the drive stirs, m.
double free_play(const Rigged& rigged) {
    const Faults& f = rigged.faults;
    const double cable = manual(rigged) ? 0 : f.cable_play;
    return f.helm_play + (joint_play(rigged) + cable) * rim_per_travel(rigged);
}

// How far the drive wags with the wheel held still while the water pushes to and fro, rad.
Result<double> wag(const Rigged& rigged) {
    const double arm = mean_moment_arm(rigged, 0);
    const double area = oil_area(rigged);
    const double rise = wake_torque / arm / area;
    const Faults& f = rigged.faults;
    const double air = f.trapped_air / 2 + f.air_share * oil_of_one_side(rigged);
    const double oil = -compression(oil_of_one_side(rigged), rise, rigged.boat.oil_bulk_modulus);
    const double hose = f.hose_swelling * hose_swelling(rigged.boat.hose_compliance / leak_test_pressure,
                                                        rigged.boat.hose_length, rise);
    double give = (air - trapped_air_volume(air, rise) + oil + hose) / area;
    double play = joint_play(rigged);
    if (!manual(rigged)) {
        give = std::min(give, valve_stroke);
        play += f.cable_play;
    }
    const Result<double> drift = give_way(rigged, wake_torque + rigged.boat.dock_friction);
    if (!drift) return drift.error();
    const double of_first = (play + give + drift.value() * wake_time) / arm;
    return std::min(of_first + second_drive_play(rigged), 2 * rigged.boat.stop_angle);
}

// The greater spring-back at the rim of a firm push on the stop, m. With a cable the push goes past the oil.
Result<double> sponge(const Rigged& rigged, const Held& port, const Held& starboard) {
    if (!manual(rigged)) return rigged.boat.sound_play * rim_per_travel(rigged);
    double greatest = 0;
    for (const Held& held : {port, starboard}) {
        const double oil = -compression(oil_of_one_side(rigged), held.pressure, rigged.boat.oil_bulk_modulus);
        const double hose = hose_swelling(rigged.boat.hose_compliance / leak_test_pressure,
                                          rigged.boat.hose_length, held.pressure);
        const double volume = held.lost_volume + oil + rigged.faults.hose_swelling * hose;
        greatest = std::max(greatest, volume / oil_area(rigged) * rim_per_travel(rigged));
    }
    return greatest;
}

// The pulls shortly before both locks, at the same angle each way; where the swing ends before that, all that
// a hand can give.
Result<BothWays> near_the_locks(const Rigged& rigged) {
    const double angle = near_lock * rigged.boat.stop_angle;
    const Conditions port{.steer = std::max(-angle, rigged.port_lock),
                          .temperature = rigged.boat.temperature};
    const Conditions starboard{.steer = std::min(angle, rigged.starboard_lock),
                               .temperature = rigged.boat.temperature};
    Result<BothWays> pulls = both_ways(rigged, port, starboard);
    if (!pulls) return pulls.error();
    if (-rigged.port_lock < angle) pulls.value().port.force = rigged.boat.hand_most;
    if (rigged.starboard_lock < angle) pulls.value().starboard.force = rigged.boat.hand_most;
    return pulls;
}

// Angle before the drive's stop from which the wheel is stiff or solid, rad, at the worse lock.
double stiff_before_stop(const Rigged& rigged, const BothWays& middle, const BothWays& near) {
    const auto one = [&](double pull, double in_middle, double lock) {
        const bool stiff = pull > stiff_factor * in_middle;
        return rigged.boat.stop_angle - std::abs(lock) * (stiff ? near_lock : 1);
    };
    return std::max(one(near.port.force, middle.port.force, rigged.port_lock),
                    one(near.starboard.force, middle.starboard.force, rigged.starboard_lock));
}

// Pull in the middle of the binding range over the pull as far on the other side, the worse way.
Result<double> bind_ratio(const Rigged& rigged) {
    const Faults& f = rigged.faults;
    if (!(f.bind_to > f.bind_from)) return 1.0;
    const double middle =
        std::clamp((f.bind_from + f.bind_to) / 2, 0.9 * rigged.port_lock, 0.9 * rigged.starboard_lock);
    const Result<BothWays> within =
        both_ways(rigged, {.steer = middle, .temperature = rigged.boat.temperature});
    if (!within) return within.error();
    const Result<BothWays> outside =
        both_ways(rigged, {.steer = -middle, .temperature = rigged.boat.temperature});
    if (!outside) return outside.error();
    return std::max(within.value().port.force / outside.value().port.force,
                    within.value().starboard.force / outside.value().starboard.force);
}

// How much lighter the wheel turns with one of the two rams unpinned, the pull with both over the pull with
// one.
Result<double> fight_ratio(const Rigged& rigged, const BothWays& middle) {
    Boat one = rigged.boat;
    one.rams = 1;
    Faults freed = rigged.faults;
    freed.rams_swapped = 0;
    freed.ram_bind_force = 0;
    freed.bracket_offset = freed.rod_end_offset = {};
    const Result<Rigged> single = rig_up(one, freed, *rigged.solver);
    if (!single) return single.error();
    const Result<BothWays> alone = both_ways(single.value(), straight(single.value()));
    if (!alone) return alone.error();
    return least(middle) / least(alone.value());
}

void read_pulls(const Rigged& rigged, const BothWays& middle, Readings& into) {
    into["rim_force_port"] = middle.port.force;
    into["rim_force_starboard"] = middle.starboard.force;
    if (!manual(rigged)) {
        into["suction_pressure"] = std::min(middle.port.suction, middle.starboard.suction);
        return;
    }
    const auto turns = [&](const Turning& turning) {
        const double per_travel = rigged.boat.turning / turning.speed;
        return 2 * std::numbers::pi *
               (working_travel(rigged) * per_travel + turning.lost_volume / rigged.boat.helm_displacement);
    };
    if (middle.port.goes) into["turns_port"] = turns(middle.port);
    if (middle.starboard.goes) into["turns_starboard"] = turns(middle.starboard);
}

// Rim travel before the drive follows: slack, what air takes at the working pressure, and what slips away or
// comes too late in the first quarter turn.
double lag(const Rigged& rigged, const BothWays& middle) {
    double greatest = 0;
    for (const Turning& turning : {middle.port, middle.starboard}) {
        const double behind = std::clamp(1 - turning.speed / turning.expected, 0.0, 1.0);
        const double quarter = rigged.boat.wheel_radius * std::numbers::pi / 2;
        const double air =
            turning.lost_volume / oil_area(rigged) * (manual(rigged) ? rim_per_travel(rigged) : 1);
        greatest = std::max(greatest, air + behind * quarter);
    }
    return free_play(rigged) + greatest;
}

void read_stop(const Rigged& rigged, const Held& port, const Held& starboard, Readings& into) {
    const Faults& f = rigged.faults;
    const double most = std::max(port.pressure, starboard.pressure);
    const double leak = std::max(f.ram_leak.port, f.ram_leak.starboard);
    into["open_port_flow"] = leak / leak_test_pressure * most;
    if (manual(rigged)) {
        into["wheel_creep"] = 2 * std::numbers::pi * std::max(port.wheel_speed, starboard.wheel_speed);
        const Sides back = leaks_at_helms(rigged);
        const double slip = f.helm_wear + rigged.boat.sound_slip + std::max(back.port, back.starboard);
        into["isolated_creep"] =
            2 * std::numbers::pi * slip / leak_test_pressure * most / rigged.boat.helm_displacement;
        return;
    }
    into["pressure_at_stop"] = std::min(port.pressure, starboard.pressure);
    into["pressure_ratio"] = most > no_pressure ? std::min(port.pressure, starboard.pressure) / most : 1;
    into["valve_travel_difference"] = std::abs(f.valve_travel.port - f.valve_travel.starboard);
    into["valve_travel_better"] = std::max(f.valve_travel.port, f.valve_travel.starboard);
    into["valve_rest"] = std::abs(f.valve_stuck);
    into["belt_grip"] = f.belt_grip;
    into["cable_pull"] = rigged.boat.cable_friction + f.cable_friction;
}

void read_oil(const Rigged& rigged, Readings& into) {
    const Boat& boat = rigged.boat;
    const Faults& f = rigged.faults;
    const FlowingOil oil{boat.oil_density, oil_viscosity_of(boat, boat.temperature) * f.oil_viscosity};
    const double port =
        line_flow({boat.hose_bore * f.hose_bore.port, boat.hose_length}, oil, pouring_pressure);
    const double starboard =
        line_flow({boat.hose_bore * f.hose_bore.starboard * f.feed_bore.starboard, boat.hose_length}, oil,
                  pouring_pressure);
    into["line_flow_ratio"] = std::min(port, starboard) / std::max(port, starboard);
    const double turned =
        manual(rigged) ? boat.helm_displacement * boat.turning : boat.pump_displacement * boat.pump_idle;
    into["air_drawn"] = f.air_share * turned;
    into["air_flushed"] = f.trapped_air / flush + f.air_share * turned;
    into["air_share"] = f.air_share;
    into["drip_seat"] = f.weep_seat;
    into["drip_thread"] = f.weep_thread;
    into["drip_crimp"] = f.weep_crimp;
    into["drip_block_joint"] = f.weep_block_joint;
    into["drip_cap"] = f.weep_cap;
    into["drip_rod"] = f.weep_rod;
    into["drip_bulkhead"] = f.weep_bulkhead;
}

}  // namespace

double pull_torque(const Rigged& rigged) {
    const Boat& boat = rigged.boat;
    const double tab =
        side_force(water, boat.tab_area, boat.cruising_speed, tab_lift * rigged.faults.tab_angle);
    return tab * boat.tab_lever + boat.list_torque * rigged.faults.list_angle;
}

Result<void> read_feel(const Rigged& rigged, Readings& into) {
    const Result<Rigged> as_new = rig_up(rigged.boat, {}, *rigged.solver);
    if (!as_new) return as_new.error();
    const Result<BothWays> sound = both_ways(as_new.value(), straight(as_new.value()));
    if (!sound) return sound.error();
    const Result<BothWays> middle = both_ways(rigged, straight(rigged));
    if (!middle) return middle.error();
    read_pulls(rigged, middle.value(), into);
    const Result<BothWays> turning = hard_turn(rigged);
    if (!turning) return turning.error();
    const Result<BothWays> sound_turning = hard_turn(as_new.value());
    if (!sound_turning) return sound_turning.error();
    into["effort_ratio"] = std::max(least(middle.value()) / least(sound.value()),
                                    least(turning.value()) / least(sound_turning.value()));
    into["lag"] = lag(rigged, middle.value());
    into["free_play"] = free_play(rigged);
    into["joint_play"] = joint_play(rigged) - rigged.boat.sound_play;
    into["pull_torque"] = std::abs(pull_torque(rigged));
    into["swivel_drag"] = rigged.boat.dock_friction + rigged.faults.drive_friction;
    into["swivel_bind"] = rigged.faults.bind_to > rigged.faults.bind_from ? rigged.faults.bind_torque : 0;

    Conditions under_way = straight(rigged);
    under_way.torque = pull_torque(rigged);
    const Result<BothWays> at_speed = under_way.torque == 0 ? middle : both_ways(rigged, under_way);
    if (!at_speed) return at_speed.error();
    const Result<BothWays> near = near_the_locks(rigged);
    if (!near) return near.error();
    into["stiff_before_stop"] = stiff_before_stop(rigged, middle.value(), near.value());
    into["effort_inequality"] = std::max({inequality(middle.value()), inequality(at_speed.value()),
                                          inequality(turning.value()), inequality(near.value())});
    const Result<double> binding = bind_ratio(rigged);
    if (!binding) return binding.error();
    into["bind_ratio"] = binding.value();

    const Result<Turning> in_the_cold = turn_steadily(rigged, {.temperature = cold}, 1);
    if (!in_the_cold) return in_the_cold.error();
    const Result<Turning> after_a_run = turn_steadily(rigged, {.temperature = warm}, 1);
    if (!after_a_run) return after_a_run.error();
    into["cold_ratio"] = in_the_cold.value().force / after_a_run.value().force;
    if (!manual(rigged) || rigged.boat.assist != Boat::Assist::none) {
        Conditions stopped = straight(rigged);
        stopped.engine = false;
        const Result<BothWays> without = both_ways(rigged, stopped);
        if (!without) return without.error();
        into["engine_share"] = (middle.value().port.force + middle.value().starboard.force) /
                               (without.value().port.force + without.value().starboard.force);
    }
    if (rigged.boat.rams == 2) {
        // Only where it is heavy is a pin pulled.
        const Result<double> fight =
            into["effort_ratio"] > worth_a_pin ? fight_ratio(rigged, middle.value()) : 1.0;
        if (!fight) return fight.error();
        into["fight_ratio"] = fight.value();
    }

    const Result<Held> port = hold_on_stop(rigged, -1);
    if (!port) return port.error();
    const Result<Held> starboard = hold_on_stop(rigged, 1);
    if (!starboard) return starboard.error();
    read_stop(rigged, port.value(), starboard.value(), into);
    const Result<double> give = sponge(rigged, port.value(), starboard.value());
    if (!give) return give.error();
    into["rim_sponge"] = give.value();

    const double push = push_at_tail * rigged.boat.push_lever;
    double fastest = 0;
    for (const double way : {-1.0, 1.0}) {
        const Result<double> drift = give_way(rigged, way * push);
        if (!drift) return drift.error();
        fastest = std::max(fastest, drift.value());
    }
    into["drift_rate"] = fastest;
    const Result<double> wagging = wag(rigged);
    if (!wagging) return wagging.error();
    into["wag"] = wagging.value();
    read_oil(rigged, into);
    return {};
}

}  // namespace hardover::rig
