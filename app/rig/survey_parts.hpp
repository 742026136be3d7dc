// Inner header of the survey: a boat with its faults rigged up, its locks, and its circuit at work.
#pragma once

#include "app/rig/survey.hpp"

namespace hardover::rig {

// Leaks and wear are told as the flow at this pressure: 1000 psi, Pa.
inline constexpr double leak_test_pressure = 6894757.29;

struct Rigged {
    Boat boat;
    Faults faults;
    SteeredDrives drives;  // rams: port, then starboard
    double port_lock = 0;  // steer angle of drive one, below 0
    double starboard_lock = 0;
    circuit::Solver* solver = nullptr;  // of the whole survey
};

// survey_geometry.cpp
Result<Rigged> rig_up(const Boat& boat, const Faults& faults, circuit::Solver& solver);
Result<void> read_geometry(const Rigged& rigged, Readings& into);
// Oil lost to the outside at all places, m^3/s.
double lost_oil(const Faults& faults);
// Angle by which the second of two tied drives can be moved with the first held.
double second_drive_play(const Rigged& rigged);
double mean_moment_arm(const Rigged& rigged, double steer);
// Play of all joints in the ram's line, m; the other ram of two holds half of it.
double joint_play(const Rigged& rigged);
// Travel of the rams from lock to lock, m.
double working_travel(const Rigged& rigged);
// Ram position from the middle of the working travel.
double ram_position(const Rigged& rigged, double steer);

// m^3/s at 1000 psi from each line to the reservoir, inside all helms there are.
Sides leaks_at_helms(const Rigged& rigged);

// survey_circuit.cpp: the oil side at work. `way` is 1 to starboard, -1 to port.
struct Turning {
    bool goes = false;       // the drive goes over with a pull that a hand can give
    double force = 0;        // N at the rim
    double speed = 0;        // m/s of the rams, in the way asked
    double expected = 0;     // what it would be without slip or want of oil
    double lost_volume = 0;  // m^3 of air squeezed away
    double pressure = 0;     // Pa
    Sides lines;             // Pa in each line
    double suction = 0;      // Pa at the pump's inlet
};
struct Conditions {
    double steer = 0;
    double torque = 0;       // N·m of water on the drive, to starboard
    double temperature = 0;  // K of the oil
    bool engine = true;      // running, or an assist switched on; a manual helm without assist does not ask
};
Result<Turning> turn_steadily(const Rigged& rigged, const Conditions& conditions, double way);

// Pa in each line with the wheel held still, engine running.
Result<Sides> lines_at_rest(const Rigged& rigged, const Conditions& conditions);

struct Held {
    double pressure = 0;
    double lost_volume = 0;
    double wheel_speed = 0;  // turns/s it goes on turning; manual helm
};
// Pressed on the stop with a firm hand, engine running; an assist of a manual helm switched off.
Result<Held> hold_on_stop(const Rigged& rigged, double way);

// Speed, m/s, at which the rams give way to a torque on the drive with the wheel held still, engine stopped.
Result<double> give_way(const Rigged& rigged, double torque);

double oil_area(const Rigged& rigged);         // mean of both ways, all rams, m^2
double rim_per_travel(const Rigged& rigged);   // m at the rim for a metre of the rams
double oil_of_one_side(const Rigged& rigged);  // m^3

// survey_feel.cpp: what a hand, an ear or an eye makes of it.
// Torque about the steering axis of a tab or list at cruising speed, N·m to starboard.
double pull_torque(const Rigged& rigged);
Result<void> read_feel(const Rigged& rigged, Readings& into);

}  // namespace hardover::rig
