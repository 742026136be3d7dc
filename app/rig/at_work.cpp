#include "app/rig/at_work.hpp"

#include <algorithm>
#include <cmath>

#include "app/rig/load.hpp"
#include "app/rig/survey_parts.hpp"

namespace hardover::rig {

struct BoatAtWork::Inside {
    circuit::Solver solver;
    Rigged rigged;
};

BoatAtWork::BoatAtWork(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
BoatAtWork::BoatAtWork(BoatAtWork&&) noexcept = default;
BoatAtWork& BoatAtWork::operator=(BoatAtWork&&) noexcept = default;
BoatAtWork::~BoatAtWork() = default;

Result<BoatAtWork> BoatAtWork::of(const Boat& boat, const Faults& faults) {
    auto inside = std::make_unique<Inside>();
    Result<Rigged> rigged = rig_up(boat, faults, inside->solver);
    if (!rigged) return rigged.error();
    inside->rigged = std::move(rigged.value());
    return BoatAtWork(std::move(inside));
}

const Boat& BoatAtWork::boat() const {
    return inside_->rigged.boat;
}

const Faults& BoatAtWork::faults() const {
    return inside_->rigged.faults;
}

const SteeredDrives& BoatAtWork::drives() const {
    return inside_->rigged.drives;
}

double BoatAtWork::port_lock() const {
    return inside_->rigged.port_lock;
}

double BoatAtWork::starboard_lock() const {
    return inside_->rigged.starboard_lock;
}

double BoatAtWork::wheel_at(double steer) const {
    const double travel = rod_out(drives(), 0, steer, 0) - rod_out(drives(), 0, 0, 0);
    return travel * rim_per_travel(inside_->rigged) / boat().wheel_radius;
}

double BoatAtWork::steer_at(double wheel) const {
    double low = port_lock(), high = starboard_lock();
    if (wheel <= wheel_at(low)) return low;
    if (wheel >= wheel_at(high)) return high;
    for (int halving = 0; halving < 40; ++halving) {
        const double middle = (low + high) / 2;
        (wheel_at(middle) < wheel ? low : high) = middle;
    }
    return (low + high) / 2;
}

double BoatAtWork::water_torque(double steer, double speed) const {
    const double cruising = boat().cruising_speed;
    const double against = at_speed(boat().hard_turn, cruising, speed) * steer / boat().stop_angle;
    return at_speed(pull_torque(inside_->rigged), cruising, speed) - against;
}

Result<Pull> BoatAtWork::pull(const Moment& moment) const {
    const Rigged& rigged = inside_->rigged;
    const double steer = std::clamp(moment.steer, rigged.port_lock, rigged.starboard_lock);
    const Conditions conditions{
        .steer = steer, .torque = water_torque(steer, moment.speed), .temperature = rigged.boat.temperature};
    if (moment.way == Way::held) {
        const Result<Sides> lines = lines_at_rest(rigged, conditions);
        if (!lines) return lines.error();
        return Pull{false, 0, lines.value()};
    }
    const Result<Turning> turning =
        turn_steadily(rigged, conditions, moment.way == Way::to_starboard ? 1 : -1);
    if (!turning) return turning.error();
    return Pull{turning.value().goes, turning.value().force, turning.value().lines};
}

}  // namespace hardover::rig
