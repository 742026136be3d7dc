// Plots of worksheets: the curve is the sheet's own arithmetic, limits and the present point stand where they
// are.
#include <algorithm>
#include <cmath>
#include <set>

#include "app/jobs/sheet_page.hpp"
#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

Index sheet(const std::string& id) {
    return find(shipped().worksheets, id);
}

SheetPlot plot_of(const std::string& id, const SheetInputs& typed, const std::string& result = "",
                  const std::string& input = "") {
    return make_sheet_plot(shipped(), sheet(id), typed, nullptr, result, input);
}

}  // namespace

TEST_CASE("Ticks are round numbers within the axis, and not too many") {
    const auto ticks = nice_ticks(0.3, 9.7, 6);
    REQUIRE(ticks.size() == 4);
    CHECK(ticks.front().text == "2");
    CHECK(ticks.back().text == "8");
    const PlotAxis axis = nice_axis("Turns", "turns", 0.93, 1.31);
    CHECK(axis.low <= 0.93);
    CHECK(axis.high >= 1.31);
    CHECK(axis.ticks.front().text == "0.9");
    const PlotAxis flat = nice_axis("Flat", "", 5, 5);
    CHECK(flat.low < 5);
    CHECK(flat.high > 5);
    CHECK(nice_ticks(-2, 2, 4)[2].text == "0");
}

TEST_CASE("The difference of two rim forces is drawn as a V with its foot where both are equal") {
    const SheetPlot made =
        plot_of("rim_force", {{"port", "8 lbf"}, {"starboard", "6 lbf"}}, "difference", "port");
    REQUIRE(made.plot);
    const Plot& plot = *made.plot;
    CHECK(plot.x.name == "Rim force to port");
    CHECK(plot.x.unit == "lbf");
    REQUIRE(plot.here);
    CHECK(plot.here->x == Approx(8));
    CHECK(plot.here->y == Approx(2));
    // Two pulls of 1 lbf spread each: the root of the sum of squares (GUM, JCGM 100:2008, 5.1.2).
    CHECK(plot.here->spread == Approx(std::sqrt(2.0)).epsilon(0.01));
    for (const PlotPoint& point : plot.curves.front())
        CHECK(point.y == Approx(std::abs(point.x - 6)).margin(1e-9));
}

TEST_CASE("What a finding reads from the result stands as bands with their limits") {
    const SheetPlot made =
        plot_of("rim_force", {{"port", "14 lbf"}, {"starboard", "6 lbf"}}, "difference", "port");
    REQUIRE(made.plot);
    const auto& bands = made.plot->bands;
    REQUIRE(bands.size() >= 2);
    for (std::size_t i = 1; i < bands.size(); ++i) CHECK(bands[i].high == Approx(bands[i - 1].low));
    CHECK(std::isinf(bands.front().high));
    CHECK(std::isinf(bands.back().low));
    CHECK(std::count_if(bands.begin(), bands.end(), [](const PlotBand& band) { return band.here; }) == 1);
    CHECK(bands.front().here);  // 8 lbf apart is the worst reading
    CHECK_FALSE(bands.front().text.empty());
}

TEST_CASE("Advice on a result that no finding reads gives bands too") {
    // drip_to_low advises below 8 h, to 72 h, and above.
    const SheetPlot made =
        plot_of("drip_to_low", {{"drip_rate", "20 drop/min"}, {"reserve", "8 floz"}}, "hours_to_low");
    REQUIRE(made.plot);
    const auto& bands = made.plot->bands;
    const auto first_day = std::find_if(
        bands.begin(), bands.end(), [](const PlotBand& band) { return band.text == "A few days at most"; });
    REQUIRE(first_day != bands.end());
    CHECK(first_day->low == Approx(8));
}

TEST_CASE("Where the sheet does not hold the curve has a gap with the reason") {
    const SheetPlot made =
        plot_of("ram_centring", {{"stroke", "6 in"}, {"mark_port", "5 in"}}, "off", "mark_port");
    REQUIRE(made.plot);
    REQUIRE(made.plot->gaps.size() == 1);
    CHECK(made.plot->gaps.front().low == Approx(6).epsilon(0.02));
    CHECK(made.plot->gaps.front().why.find("between nothing and the stroke") != std::string::npos);
}

TEST_CASE("The band along a curve is the sheet's own spread there, to a twentieth") {
    const SheetPlot made = plot_of("drip_to_low", {{"drip_rate", "20 drop/min"}, {"reserve", "8 floz"}},
                                   "hours_to_low", "drip_rate");
    REQUIRE(made.plot);
    REQUIRE(made.plot->curves.size() == 1);
    const auto& curve = made.plot->curves.front();
    REQUIRE(curve.size() > 90);
    for (std::size_t i = 0; i < curve.size(); i += 5) {
        const std::string typed = std::to_string(curve[i].x) + " drop/min";
        INFO(typed);
        const SheetPlot there = plot_of("drip_to_low", {{"drip_rate", typed}, {"reserve", "8 floz"}},
                                        "hours_to_low", "drip_rate");
        REQUIRE(there.plot);
        REQUIRE(there.plot->here);
        CHECK(curve[i].y == Approx(there.plot->here->y));
        CHECK(curve[i].spread == Approx(there.plot->here->spread).epsilon(0.05));
        CHECK(curve[i].spread > 0);
    }
}

TEST_CASE("What is not entered yet is drawn by its example, and the plot says so") {
    const SheetPlot made = plot_of("rim_force", {{"port", "14 lbf"}});
    REQUIRE(made.plot);
    CHECK(made.plot->notes.front().find("rim force to starboard") != std::string::npos);
    CHECK(made.plot->here_text.rfind("By the examples", 0) == 0);
}

TEST_CASE("Every shipped worksheet with a number that varies has plots with sound axes") {
    std::set<std::string> without;
    for (std::size_t i = 0; i < shipped().worksheets.size(); ++i) {
        const std::string& id = shipped().worksheets[i].id;
        const auto index = static_cast<Index>(i);
        const SheetPlot first = make_sheet_plot(shipped(), index, {}, nullptr, "", "");
        INFO(id);
        if (!first.plot) {
            without.insert(id);
            CHECK_FALSE(first.why_not.empty());
            continue;
        }
        for (const ChoiceText& result : first.results) {
            const SheetPlot again = make_sheet_plot(shipped(), index, {}, nullptr, result.id, "");
            for (const ChoiceText& against : again.against) {
                INFO(result.id << " against " << against.id);
                const SheetPlot made = make_sheet_plot(shipped(), index, {}, nullptr, result.id, against.id);
                REQUIRE(made.plot);
                const Plot& plot = *made.plot;
                CHECK(plot.x.low < plot.x.high);
                CHECK(plot.y.low < plot.y.high);
                CHECK(plot.x.ticks.size() >= 2);
                CHECK(plot.y.ticks.size() >= 2);
                CHECK(plot.x.ticks.size() <= 9);
                CHECK(plot.y.ticks.size() <= 9);
                CHECK_FALSE(plot.curves.empty());
                CHECK_FALSE(plot.in_words.empty());
            }
        }
    }
    // These two have choices only.
    CHECK(without == std::set<std::string>{"fitting_figures", "hoses_two_rams"});
}
