// A plot as plain numbers and words: axes with their ticks, curves, bars, marks, what stretches of the
// upright axis mean, and the point one is at. Knows no worksheet, no job and no screen.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace hardover {

struct PlotTick {
    double at = 0;
    std::string text;
};

struct PlotAxis {
    std::string name;
    std::string unit;  // "" for a plain number
    double low = 0;
    double high = 1;
    std::vector<PlotTick> ticks;
};

struct PlotPoint {
    double x = 0;
    double y = 0;
    double spread = 0;  // of y, half width
};

// One of many, such as a learner or an item; those that want looking at are ringed and carry their text.
struct PlotMark {
    double x = 0;
    double y = 0;
    double spread = 0;  // of y, half width; 0: none is drawn
    std::string text;   // short
    bool ringed = false;
};

// An upright bar from `low` to `high` over a stretch of the level axis.
struct PlotBar {
    double from = 0;
    double to = 0;
    double low = 0;
    double high = 0;
    bool hatched = false;
};

// A stretch of the upright axis with a meaning; open ends are infinite.
struct PlotBand {
    double low = 0;
    double high = 0;
    std::string text;
    std::string range;  // "above 1.3", "from 1.12 to 1.3"
    bool here = false;  // the point one is at lies in it
};

// A stretch of the level axis without a curve.
struct PlotGap {
    double low = 0;
    double high = 0;
    std::string why;
};

struct Plot {
    PlotAxis x;
    PlotAxis y;
    std::vector<std::vector<PlotPoint>> curves;  // pieces, each from left to right
    std::vector<PlotBar> bars;
    std::vector<PlotMark> marks;
    std::optional<PlotPoint> here;
    std::string here_text;
    std::vector<PlotBand> bands;  // the highest first
    std::vector<PlotGap> gaps;
    std::vector<std::string> notes;
    std::string in_words;  // the whole plot, one or two sentences
};

// Round numbers (1, 2 or 5 times a power of ten apart) from low to high, at most `most` + 1 of them.
std::vector<PlotTick> nice_ticks(double low, double high, int most);

// An axis whose ends are round numbers around low and high. Both must be finite; where they are equal the
// axis gets some room on both sides.
PlotAxis nice_axis(const std::string& name, const std::string& unit, double low, double high, int most = 6);

}  // namespace hardover
