// Whether everything on a screen can be read and pressed, at many window and text sizes.
#pragma once

#include <string>

#include "harness.hpp"

namespace hardover_tests {

// A window's size in pixels and the size of its text (1: 100 %).
struct View {
    float w;
    float h;
    float text;
};
inline constexpr View views[] = {
    {1024, 640, 1},     {1024, 640, 1.5F}, {1280, 720, 1},      {1280, 800, 1},  {1280, 800, 1.5F},
    {1280, 800, 2},     {1366, 768, 1},    {1600, 1000, 1.25F}, {1920, 1080, 1}, {1920, 1080, 2.5F},
    {2560, 1440, 1.5F}, {3840, 2160, 1},   {3840, 2160, 2.5F},  {800, 1280, 1}};

// No text cut or on another, no control under 44 dp or on another, none named twice.
void check_marks(const hardover::window::Marks& marks, float scale);

// The same on a screen at many window and text sizes.
void sweep(const std::string& name, const Harness::Draw& draw);

}  // namespace hardover_tests
