// The forms of the job screen over all window sizes and text sizes, in numbers only.
#include "app/window/layout.hpp"

#include <catch2/catch.hpp>

#include "app/window/theme.hpp"

using namespace hardover::window;

namespace {

struct Size {
    float w;
    float h;
};
constexpr Size sizes[] = {{1024, 640},  {1280, 720},  {1280, 800},  {1366, 768}, {1600, 1000},
                          {1920, 1080}, {2560, 1440}, {3840, 2160}, {800, 1280}, {1080, 1920}};
constexpr float scales[] = {1, 1.25F, 1.5F, 2, 2.5F};

bool overlap(const Box& a, const Box& b) {
    const Box both = a.meet(b);
    return both.w > 0.5F && both.h > 0.5F;
}

template <typename Check>
void over_all_sizes(Check check) {
    for (const Size size : sizes) {
        for (const float wanted : scales) {
            const float scale = scale_for(wanted, size.w, size.h);
            INFO(size.w << " x " << size.h << " at " << scale);
            check(size.w / scale, size.h / scale);
        }
    }
}

}  // namespace

TEST_CASE("Every part of the job screen stands inside the window and beside the others, at every size") {
    over_all_sizes([](float w, float h) {
        const ScreenBoxes boxes = job_boxes(w, h, 60, 150);
        std::vector<Box> parts{boxes.header, boxes.track, boxes.stops, boxes.tabs,
                               boxes.now,    boxes.dock,  boxes.ahead, boxes.keys};
        if (boxes.form == Form::wide) parts.push_back(boxes.known);
        if (boxes.form == Form::compact) parts.erase(parts.begin() + 6);  // shares its place with the step
        for (std::size_t i = 0; i < parts.size(); ++i) {
            if (parts[i].empty()) continue;
            CHECK(parts[i].x >= -0.5F);
            CHECK(parts[i].y >= -0.5F);
            CHECK(parts[i].right() <= w + 0.5F);
            CHECK(parts[i].bottom() <= h + 0.5F);
            for (std::size_t j = i + 1; j < parts.size(); ++j) {
                INFO("parts " << i << " and " << j);
                CHECK_FALSE(overlap(parts[i], parts[j]));
            }
        }
    });
}

TEST_CASE("The step keeps room to be read, however much the answers and the stops ask for") {
    over_all_sizes([](float w, float h) {
        const ScreenBoxes boxes = job_boxes(w, h, 400, 2000);
        CHECK(boxes.now.h >= 60);
        CHECK(boxes.now.w >= 400);
    });
}

TEST_CASE("In a small window with large letters the step is read before what is pressed under it") {
    const ScreenBoxes small = job_boxes(640, 400, 0, 108);
    CHECK(small.dock_inside);
    CHECK(small.dock.empty());
    CHECK(small.now.h > 190);
    CHECK_FALSE(job_boxes(640, 400, 0, 28).dock_inside);  // nothing to press
    CHECK_FALSE(job_boxes(1280, 800, 0, 108).dock_inside);
}

TEST_CASE("Stops have a band of their own across the whole window, and only when there are any") {
    CHECK(job_boxes(1280, 800, 0, 100).stops.empty());
    const ScreenBoxes boxes = job_boxes(1280, 800, 60, 100);
    CHECK(boxes.stops.w == 1280);
    CHECK(boxes.stops.bottom() <= boxes.now.y);
}

TEST_CASE("Text grows no further than the window has room for") {
    CHECK(scale_for(2, 1280, 800) == 2);
    CHECK(scale_for(2.5F, 1280, 800) == 2);
    CHECK(scale_for(2.5F, 3840, 2160) == 2.5F);
    CHECK(scale_for(1, 500, 300) == 1);
}
