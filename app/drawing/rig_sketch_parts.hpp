// What both views of the rig are put together from. Inner part of app/drawing.
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
    template <typename Form>
    void draw(Form form) {
        drawing_.shapes.push_back({drawing_.parts.back().id, std::move(form)});
    }
    void line(std::vector<Point> points, Pen pen) {
        draw(Outline{std::move(points), false, pen, Fill::none});
    }
    void area(std::vector<Point> points, Pen pen, Fill fill) {
        draw(Outline{std::move(points), true, pen, fill});
    }
    // A letter in a ring.
    void mark(const Point& at, const std::string& letter) {
        draw(Circle{at, 0.045, Pen::normal, Fill::paper});
        draw(Text{at, letter, Align::middle, true});
    }
    Drawing drawing() && { return std::move(drawing_); }

  private:
    Drawing drawing_;
};

// A ram where it stands at a steering angle; x of the boat.
struct StandingRam {
    const PlannedRam* ram = nullptr;
    std::size_t number = 0;  // of its drive, from 0
    Eigen::Vector3d anchor;
    Eigen::Vector3d pin;
    double length = 0;  // pin to pin
    double side() const { return ram->port ? -1 : 1; }
    std::string letter() const { return ram->port ? "P" : "S"; }
};

struct StandingRig {
    const RigPlan* plan = nullptr;
    UnitSystem units = UnitSystem::us;
    std::vector<double> steer;  // of each drive
    std::vector<StandingRam> rams;

    double transom() const;     // y of its aft face
    double half_width() const;  // of what is drawn of it
    std::string length_text(double metres) const;
    std::string angle_text(double radians) const;  // "straight ahead", "20° to port"
};

Drawing from_behind(const StandingRig& rig);
Drawing from_above(const StandingRig& rig);

// "Port ram", of several drives "Port ram" too: there is one a side.
std::string ram_name(const StandingRam& ram);
std::string ram_id(const StandingRam& ram);
std::string drive_id(const StandingRig& rig, std::size_t drive);

// The two sides of a line as an area, `half` to either side.
std::vector<Point> strip(const Point& from, const Point& to, double half);

}  // namespace hardover::drawing::rig_parts
