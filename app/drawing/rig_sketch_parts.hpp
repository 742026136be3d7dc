// What the views of the rig are put together from. Inner part of app/drawing.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "app/drawing/rig_sketch.hpp"

namespace hardover::drawing::rig_parts {

// Sizes of symbols, m. They stand for things whose true size the rig does not tell; from memory of small
// craft.
inline constexpr double eye = 0.018;          // radius of a bracket's or pin's eye
inline constexpr double wall = 0.004;         // of a ram's tube
inline constexpr double end_fitting = 0.045;  // from an eye to the tube
inline constexpr double transom_thick = 0.05;
inline constexpr double bracket_deep = 0.035;  // from the transom to the bracket's eye
inline constexpr double beyond_rams = 0.36;    // transom outboard of the outermost ram
inline constexpr double letter_off = 0.26;     // of P and S outboard of a ram

// Collects the shapes of one part after the other.
class Pencil {
  public:
    explicit Pencil(std::string title) { drawing_.title = std::move(title); }
    void part(std::string id, std::string place, std::string words) {
        drawing_.parts.push_back({std::move(id), std::move(place), std::move(words)});
    }
    void tone(Tone tone) { tone_ = tone; }
    template <typename Form>
    void draw(Form form) {
        drawing_.shapes.push_back({drawing_.parts.back().id, std::move(form), tone_});
    }
    void line(std::vector<Point> points, Pen pen, double weight = 1) {
        draw(Outline{std::move(points), false, pen, Fill::none, weight});
    }
    void area(std::vector<Point> points, Pen pen, Fill fill) {
        draw(Outline{std::move(points), true, pen, fill});
    }
    // A letter in a ring.
    void mark(const Point& at, const std::string& letter) {
        draw(Text{at, letter, Align::middle, true, true});
    }
    Drawing drawing() && { return std::move(drawing_); }

  private:
    Drawing drawing_;
    Tone tone_ = Tone::plain;
};

// A ram where it stands at a steering angle and a trim; x of the boat.
struct StandingRam {
    const rig::MountedRam* ram = nullptr;
    std::size_t drive = 0;
    bool port = true;    // which side of the boat it is on
    bool alone = false;  // on neither side: the one cylinder of an outboard
    Eigen::Vector3d anchor;
    Eigen::Vector3d pin;
    double out = 0;                                             // rod travel, 0 when bottomed in
    double length() const { return ram->travel.closed + out; }  // pin to pin; not of a sliding one
    double side() const { return port ? -1 : 1; }
    std::string letter() const { return port ? "P" : "S"; }
    bool hatched() const { return port && !alone; }
    Tone tone() const { return alone ? Tone::plain : port ? Tone::port : Tone::starboard; }
    std::string name() const;    // "Port ram", "Cylinder"
    std::string id() const;      // "ram_port"
    std::string marked() const;  // ", marked P and hatched"
};

// One drive, outboard or rudder as it stands.
struct StandingDrive {
    rig::SteeringArm arm;
    double offset = 0;  // m, its steering axis to starboard of the boat's centre line
    double steer = 0;
    double trim = 0;
    // Where it takes a point given in its own axes, drive straight and level; x of the boat.
    Eigen::Vector3d at(double x, double y, double z) const;
};

struct StandingRig {
    const RigPlan* plan = nullptr;
    const Pose* pose = nullptr;
    UnitSystem units = UnitSystem::us;
    std::vector<StandingDrive> drives;
    std::vector<StandingRam> rams;

    const rig::Boat& boat() const { return plan->boat; }
    rig::Boat::Mount mount() const { return plan->boat.mount; }
    bool two_drives() const { return drives.size() == 2; }
    double transom() const;     // y of its aft face
    double front() const;       // y from which on there is room for hoses and helm
    double half_width() const;  // of what is drawn of the transom
    std::string length_text(double metres) const;
    std::string pressure_text(double pascal) const;
    std::string drive_name(std::size_t drive) const;  // "Port drive", "Rudder"
    std::string drive_id(std::size_t drive) const;    // "drive", "drive_port"
};

Drawing from_behind(const StandingRig& rig);
Drawing from_above(const StandingRig& rig);
Drawing from_side(const StandingRig& rig);

// rig_drive.cpp: drive, outboard or rudder with its propeller, each view.
enum class View { above, behind, side };
void draw_drive(Pencil& pencil, const StandingRig& rig, std::size_t drive, View view);
void draw_tie_bar(Pencil& pencil, const StandingRig& rig, View view);

// rig_rams.cpp: rams with their brackets from above.
void draw_rams_above(Pencil& pencil, const StandingRig& rig);

// rig_supply.cpp: helm, reservoir, what feeds the rams, and the two lines, from above.
void draw_supply(Pencil& pencil, const StandingRig& rig);

// The place on the page that a point of the boat has in a view.
Point seen(const Eigen::Vector3d& point, View view);

// The two sides of a line as an area, `half` to either side.
std::vector<Point> strip(const Point& from, const Point& to, double half);
// The point `distance` from `from` on the way to `to`.
Point along(const Point& from, const Point& to, double distance);

}  // namespace hardover::drawing::rig_parts
