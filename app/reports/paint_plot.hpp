// Paints a plot on paper, black on white. Inner part of app/reports.
#pragma once

#include "app/jobs/plot.hpp"
#include "app/reports/typeset.hpp"

namespace hardover::reports_detail {

// Into a place with its name above, the axes' names at the ends of the axes and its notes below.
void paint_plot(cairo_t* cairo, const typeset::Typesetter& typesetter, const std::string& name,
                const Plot& plot, const drawing::Point& top_left, double width, double height);

}  // namespace hardover::reports_detail
