// What a painter needs that can only fill triangles and draw full lines: areas in triangles, dashed lines in
// pieces. Plain geometry.
#pragma once

#include <array>
#include <vector>

#include "app/drawing/drawing.hpp"

namespace hardover::drawing {

using Triangle = std::array<Point, 3>;

// An area without crossings in triangles, by cutting off ears. Empty for fewer than three points.
std::vector<Triangle> triangles(const std::vector<Point>& area);

// Pieces of a line, drawn and left out in turn by the lengths of the pattern, over corners as well. The whole
// line when the pattern has no length.
std::vector<std::vector<Point>> dashes(const std::vector<Point>& line, const std::vector<double>& pattern);

}  // namespace hardover::drawing
