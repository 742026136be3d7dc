// How near a ram comes to what it must not touch (trim cylinder, swim platform) while the drive is steered
// and trimmed through its whole range. Lengths in m, angles in rad, boat axes as in linkage.hpp. Knows shapes
// only.
#pragma once

#include <variant>

#include "app/rig/mounted_ram.hpp"

namespace hardover::rig {

// A box along the boat's axes, between two opposite corners.
struct KeepOutBox {
    Eigen::Vector3d low, high;
};
// A round bar between two points; a point on the drive goes along when it is steered and trimmed.
struct KeepOutBar {
    struct End {
        Eigen::Vector3d point;
        bool on_drive = false;
    };
    End from, to;
    double radius = 0;
};
using KeepOut = std::variant<KeepOutBox, KeepOutBar>;

// Distance of the segments a1-a2 and b1-b2, and of a segment and a box; 0 where they meet.
double segment_distance(const Eigen::Vector3d& a1, const Eigen::Vector3d& a2, const Eigen::Vector3d& b1,
                        const Eigen::Vector3d& b2);
double box_distance(const Eigen::Vector3d& a1, const Eigen::Vector3d& a2, const KeepOutBox& box);

// Room between the ram, taken as a round bar of `ram_radius` from end to end, and the keep-out. Below 0:
// they would stand in each other; of a ram whose middle line runs through a box no depth is told, then it is
// minus its radius.
double clearance(const MountedRam& ram, double ram_radius, const KeepOut& keep_out, double steer,
                 double trim);

struct SteerAndTrim {
    double least_steer = 0, most_steer = 0;
    double least_trim = 0, most_trim = 0;
};
struct Closest {
    double room = 0;  // m, below 0 it fouls
    double steer = 0, trim = 0;
};
// The least room in the whole range: on a grid, then closed in upon to within 0.1 mm where the room has its
// valley there. Error when the range runs backwards or a size is not above zero.
Result<Closest> least_clearance(const MountedRam& ram, double ram_radius, const KeepOut& keep_out,
                                const SteerAndTrim& range);

}  // namespace hardover::rig
