// Round ticks and axes.
#include "app/jobs/plot.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace hardover {

namespace {

// The smallest of 1, 2, 5 times a power of ten that leaves at most `most` steps.
double nice_step(double room, int most) {
    const double least = room / most;
    const double power = std::pow(10.0, std::floor(std::log10(least)));
    for (const double times : {1.0, 2.0, 5.0}) {
        if (times * power >= least * (1 - 1e-9)) return times * power;
    }
    return 10 * power;
}

std::string tick_text(double at, double step) {
    if (std::abs(at) < step * 1e-6) return "0";
    if (std::abs(at) >= 1e7 || step < 1e-5) return fmt::format("{:.3g}", at);
    const int places = std::max(0, -static_cast<int>(std::floor(std::log10(step) + 1e-9)));
    return fmt::format("{:.{}f}", at, places);
}

}  // namespace

std::vector<PlotTick> nice_ticks(double low, double high, int most) {
    std::vector<PlotTick> ticks;
    if (!(high > low) || most < 1) return ticks;
    const double step = nice_step(high - low, most);
    const double first = std::ceil(low / step - 1e-9);
    const double last = std::floor(high / step + 1e-9);
    for (double n = first; n <= last; ++n) ticks.push_back({n * step, tick_text(n * step, step)});
    return ticks;
}

PlotAxis nice_axis(const std::string& name, const std::string& unit, double low, double high, int most) {
    if (high < low) std::swap(low, high);
    const double size = std::max(std::abs(low), std::abs(high));
    if (high - low <= 1e-9 * size || high == low) {
        const double room = size > 0 ? size * 0.25 : 1;
        low -= room;
        high += room;
    }
    const double step = nice_step(high - low, most);
    PlotAxis axis{name, unit, std::floor(low / step + 1e-9) * step, std::ceil(high / step - 1e-9) * step, {}};
    axis.ticks = nice_ticks(axis.low, axis.high, most + 2);
    return axis;
}

}  // namespace hardover
