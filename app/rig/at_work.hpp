// A boat at one moment: how its wheel, lines and rams are at a steering angle, a trim and a speed through the
// water, with any set of faults. SI throughout, axes and signs as in boat.hpp. Knows no drawing and no words;
// everything that is read off a whole boat at once is the survey's.
#pragma once

#include <memory>

#include "app/rig/boat.hpp"
#include "app/rig/faults.hpp"

namespace hardover::rig {

// Which way the wheel is being turned.
enum class Way { to_port, held, to_starboard };

struct Moment {
    double steer = 0;
    double speed = 0;  // m/s of the boat
    Way way = Way::held;
};

struct Pull {
    bool goes = false;  // a hand can turn the wheel on from here; false when it is held
    double force = 0;   // N at the rim; 0 when it is held
    Sides lines;        // Pa
};

class BoatAtWork {
  public:
    // Errors as survey().
    static Result<BoatAtWork> of(const Boat& boat, const Faults& faults);
    BoatAtWork(BoatAtWork&&) noexcept;
    BoatAtWork& operator=(BoatAtWork&&) noexcept;
    ~BoatAtWork();

    const Boat& boat() const;
    const Faults& faults() const;
    const SteeredDrives& drives() const;  // where the faults put them
    double port_lock() const;             // steer angle, below 0
    double starboard_lock() const;

    // Turning of the wheel from straight, rad, positive to starboard, as sound oil would have it: travel of
    // the port ram over travel per turn.
    double wheel_at(double steer) const;
    // And back, between the locks.
    double steer_at(double wheel) const;

    // The water's torque on the drive: against the steering angle, growing with the square of the speed, and
    // what tab and list add. A hard turn's torque is taken to grow in proportion to the angle (from memory).
    double water_torque(double steer, double speed) const;
    // The steady circuit, the drive level: trim is left out. Errors as survey().
    Result<Pull> pull(const Moment& moment) const;

  private:
    struct Inside;
    explicit BoatAtWork(std::unique_ptr<Inside> inside);
    std::unique_ptr<Inside> inside_;
};

}  // namespace hardover::rig
