#include "app/rig/clearance.hpp"

#include <algorithm>
#include <cmath>

#include "app/rig/geometry_error.hpp"

namespace hardover::rig {

namespace {

struct Segment {
    Eigen::Vector3d from, to;
};

Segment middle_line(const MountedRam& ram, double steer, double trim) {
    if (!slides(ram)) return {ram.linkage.anchor, pin_at(ram.linkage, steer, trim)};
    const double off_middle = rod_out(ram, steer, trim) - ram.travel.stroke / 2;
    const Eigen::Vector3d middle = ram.linkage.anchor + ram.slides_along * off_middle;
    const Eigen::Vector3d half = ram.slides_along * ram.travel.closed / 2;
    return {middle - half, middle + half};
}

Eigen::Vector3d carried(const KeepOutBar::End& end, const MountedRam& ram, double steer, double trim) {
    return end.on_drive ? carried_by_drive(ram.linkage, end.point, steer, trim) : end.point;
}

// Distance of a point from the segment a1-a2.
double point_distance(const Eigen::Vector3d& point, const Eigen::Vector3d& a1, const Eigen::Vector3d& a2) {
    const Eigen::Vector3d along = a2 - a1;
    const double length = along.squaredNorm();
    const double share = length > 0 ? std::clamp((point - a1).dot(along) / length, 0.0, 1.0) : 0;
    return (a1 + share * along - point).norm();
}

}  // namespace

double segment_distance(const Eigen::Vector3d& a1, const Eigen::Vector3d& a2, const Eigen::Vector3d& b1,
                        const Eigen::Vector3d& b2) {
    // Nearest where both lines are nearest, if that lies within both; else at an end of one of them.
    double least = std::min({point_distance(a1, b1, b2), point_distance(a2, b1, b2),
                             point_distance(b1, a1, a2), point_distance(b2, a1, a2)});
    const Eigen::Vector3d u = a2 - a1, v = b2 - b1, w = a1 - b1;
    const double uu = u.squaredNorm(), uv = u.dot(v), vv = v.squaredNorm();
    const double parallel = uu * vv - uv * uv;
    if (parallel > 1e-12 * uu * vv) {
        const double on_a = (uv * v.dot(w) - vv * u.dot(w)) / parallel;
        const double on_b = (uu * v.dot(w) - uv * u.dot(w)) / parallel;
        if (on_a >= 0 && on_a <= 1 && on_b >= 0 && on_b <= 1)
            least = std::min(least, (w + on_a * u - on_b * v).norm());
    }
    return least;
}

double box_distance(const Eigen::Vector3d& a1, const Eigen::Vector3d& a2, const KeepOutBox& box) {
    // The distance from a box is convex along a line: its slope changes sign once.
    const Eigen::Vector3d along = a2 - a1;
    const auto apart = [&](double share) -> Eigen::Vector3d {
        const Eigen::Vector3d point = a1 + share * along;
        return point - point.cwiseMax(box.low).cwiseMin(box.high);
    };
    double low = 0, high = 1;
    for (int halving = 0; halving < 30; ++halving) {
        const double middle = (low + high) / 2;
        (apart(middle).dot(along) > 0 ? high : low) = middle;
    }
    return std::min({apart(0).norm(), apart(1).norm(), apart((low + high) / 2).norm()});
}

double clearance(const MountedRam& ram, double ram_radius, const KeepOut& keep_out, double steer,
                 double trim) {
    const Segment line = middle_line(ram, steer, trim);
    if (const auto* box = std::get_if<KeepOutBox>(&keep_out))
        return box_distance(line.from, line.to, *box) - ram_radius;
    const auto& bar = std::get<KeepOutBar>(keep_out);
    return segment_distance(line.from, line.to, carried(bar.from, ram, steer, trim),
                            carried(bar.to, ram, steer, trim)) -
           ram_radius - bar.radius;
}

Result<Closest> least_clearance(const MountedRam& ram, double ram_radius, const KeepOut& keep_out,
                                const SteerAndTrim& range) {
    if (!(range.least_steer <= range.most_steer && range.least_trim <= range.most_trim))
        return bad_geometry("the range of steer and trim runs backwards", "least first");
    const auto* box = std::get_if<KeepOutBox>(&keep_out);
    const auto* bar = std::get_if<KeepOutBar>(&keep_out);
    const bool shaped = box != nullptr ? (box->high - box->low).minCoeff() >= 0 : bar->radius >= 0;
    if (!(ram_radius > 0 && shaped))
        return bad_geometry("ram or keep-out has no shape",
                            "a ram radius above zero, a box from its low to its high corner");
    const int steers = range.most_steer > range.least_steer ? 24 : 0;
    const int trims = range.most_trim > range.least_trim ? 8 : 0;
    double steer_step = (range.most_steer - range.least_steer) / std::max(1, steers);
    double trim_step = (range.most_trim - range.least_trim) / std::max(1, trims);
    const auto at = [&](double steer, double trim) {
        const double s = std::clamp(steer, range.least_steer, range.most_steer);
        const double t = std::clamp(trim, range.least_trim, range.most_trim);
        return Closest{clearance(ram, ram_radius, keep_out, s, t), s, t};
    };
    const auto nearer = [](const Closest& a, const Closest& b) { return a.room < b.room ? a : b; };
    Closest best = at(range.least_steer, range.least_trim);
    for (int i = 0; i <= steers; ++i)
        for (int j = 0; j <= trims; ++j)
            best = nearer(at(range.least_steer + i * steer_step, range.least_trim + j * trim_step), best);
    for (int closing = 0; closing < 16; ++closing) {
        const Closest middle = best;
        for (const double s : {-1.0, 0.0, 1.0})
            for (const double t : {-1.0, 0.0, 1.0})
                best = nearer(at(middle.steer + s * steer_step, middle.trim + t * trim_step), best);
        steer_step *= 0.6;
        trim_step *= 0.6;
    }
    return best;
}

}  // namespace hardover::rig
