// Colours by role, type sizes and lengths of the themes. Knows no screen and decides nothing.
#pragma once

#include <imgui.h>

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover::window {

enum class Look { light, dark, high_contrast };

struct LookRow {
    Look look = Look::light;
    std::string_view id;     // in the preferences file
    std::string_view label;  // for people
};
// In the order of Look.
const std::array<LookRow, 3>& looks();
std::string_view look_id(Look look);

// What a colour is for. The hexadecimal values stand in theme.cpp.
enum class Role {
    ground,       // behind everything
    panel,        // side columns, dock
    card,         // what is read
    raised,       // a button's face
    raised_over,  // ... with the pointer over it
    ink,
    ink2,  // second to ink, still for sentences
    hairline,
    outline,  // of controls
    accent,
    accent_over,
    on_accent,
    accent_tint,
    bridge,  // the dark bar along the top, in every theme
    bridge_raised,
    on_bridge,
    on_bridge2,
    weigh_for,
    weigh_for_tint,
    weigh_against,
    weigh_against_tint,
    safety,
    on_safety,
    safety_tint,
    stop,
    stop_hatch,
    on_stop,
    wrong,  // an input that cannot be read
    wrong_tint,
    right,  // proved, cured, done
    right_tint,
    bar_track,
    bar_other,
    ring_outer,
    ring_inner,
    port,  // a face with on_side on it
    starboard,
    on_side,
    port_line,  // lines and areas of a drawing
    starboard_line,
    key_face,
    key_edge,
    count
};

// What a text is for.
enum class Type { body, strong, small, caps, h2, number, h1, count };

// A text colour on what it stands on, and the least contrast it must reach (WCAG 2.1: 4.5 text, 3 outlines).
struct ColourPair {
    Role text;
    Role on;
    double least = 4.5;
};

struct Rgb {
    int r = 0;
    int g = 0;
    int b = 0;
};

Rgb colour_of(Look look, Role role);
// All pairs the screens use.
std::vector<ColourPair> colour_pairs();
// Contrast ratio of two sRGB colours, 1 to 21 (WCAG 2.1, "contrast ratio" and "relative luminance").
double contrast(const Rgb& a, const Rgb& b);

// The largest scale at which at least 640 x 400 dp remain, and at least 1.
float scale_for(float wanted, float width_px, float height_px);

class Theme {
  public:
    // Builds the letters for a look and a scale (1 = 100 %) into the current context's atlas, from the
    // folder that holds Inter-Regular.otf and Inter-SemiBold.otf. Error: a font file is missing.
    Result<void> build(Look look, float scale, const std::string& fonts_folder);

    Look look() const { return look_; }
    float scale() const { return scale_; }
    float px(float dp) const { return dp * scale_; }
    ImU32 colour(Role role, float alpha = 1) const;
    ImFont* font(Type type) const { return fonts_[static_cast<std::size_t>(type)]; }
    // From one line to the next, in pixels.
    float line_height(Type type) const;

  private:
    Look look_ = Look::light;
    float scale_ = 1;
    std::array<ImFont*, static_cast<std::size_t>(Type::count)> fonts_{};
};

}  // namespace hardover::window
