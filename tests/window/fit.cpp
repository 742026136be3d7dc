#include "fit.hpp"

#include <catch2/catch.hpp>

#include "marks_check.hpp"

namespace hardover_tests {

using namespace hardover::window;

namespace {

struct View {
    float w;
    float h;
    float text;
};
constexpr View views[] = {{1024, 640, 1},     {1024, 640, 1.5F},  {1280, 720, 1},     {1280, 800, 1},
                          {1280, 800, 1.5F},  {1280, 800, 2},     {1366, 768, 1},     {1600, 1000, 1.25F},
                          {1920, 1080, 1},    {1920, 1080, 2.5F}, {2560, 1440, 1.5F}, {3840, 2160, 1},
                          {3840, 2160, 2.5F}, {800, 1280, 1}};

}  // namespace

void sweep(const std::string& name, const Harness::Draw& draw) {
    for (const View& view : views) {
        const float scale = scale_for(view.text, view.w, view.h);
        Harness harness(view.w, view.h, scale, Look::light, draw);
        INFO(name << " at " << view.w << " x " << view.h << ", text " << view.text);
        check_marks(harness.marks(), scale);
    }
}

}  // namespace hardover_tests
