// The colour values, the letters and the drawing library's style. Chart paper by day, a darkened bridge by
// night, and white and yellow on black for whoever sees little or sits in the sun.
#include "app/window/theme.hpp"

#include <imgui_freetype.h>

#include <cmath>
#include <filesystem>

namespace hardover::window {

namespace {

struct Shades {
    unsigned light;
    unsigned dark;
    unsigned high_contrast;
};

// One line per Role, in its order.
constexpr std::array<Shades, static_cast<std::size_t>(Role::count)> colours{{
    {0xE9E6DE, 0x0A1218, 0x000000},  // ground
    {0xF4F2EC, 0x0F1A22, 0x000000},  // panel
    {0xFFFFFF, 0x16232C, 0x000000},  // card
    {0xFFFFFF, 0x20313D, 0x000000},  // raised
    {0xEDF4F7, 0x2A3F4D, 0x2E2E2E},  // raised_over
    {0x14202A, 0xF1F4F5, 0xFFFFFF},  // ink
    {0x45525D, 0xB7C4CD, 0xE6E6E6},  // ink2
    {0xD8D3C7, 0x2B3C48, 0x8A8A8A},  // hairline
    {0x817B6E, 0x71879A, 0xFFFFFF},  // outline
    {0x0A5877, 0x5FC3E4, 0xFFE14D},  // accent
    {0x07445D, 0x8AD6EF, 0xFFF0A0},  // accent_over
    {0xFFFFFF, 0x04161E, 0x000000},  // on_accent
    {0xDBECF3, 0x123A4A, 0x332D00},  // accent_tint
    {0x11283A, 0x050B10, 0x1C1C1C},  // bridge
    {0x1F3B50, 0x16232C, 0x3A3A3A},  // bridge_raised
    {0xF6F3EC, 0xF1F4F5, 0xFFFFFF},  // on_bridge
    {0xB9C7D2, 0xA9B8C3, 0xE6E6E6},  // on_bridge2
    {0x0A5877, 0x79CEEB, 0x9BDCFF},  // weigh_for
    {0xDBECF3, 0x123A4A, 0x00263A},  // weigh_for_tint
    {0x963F00, 0xFFB066, 0xFFC27A},  // weigh_against
    {0xFBE7D4, 0x46300F, 0x331D00},  // weigh_against_tint
    {0xF2B705, 0xFFC933, 0xFFD400},  // safety
    {0x191407, 0x16120A, 0x000000},  // on_safety
    {0xFFF3CC, 0x382F12, 0x241E00},  // safety_tint
    {0xAE1B1B, 0xB92323, 0x8F0000},  // stop
    {0x861010, 0x7E1313, 0x5E0000},  // stop_hatch
    {0xFFFFFF, 0xFFFFFF, 0xFFFFFF},  // on_stop
    {0xA31818, 0xFF9E94, 0xFFB3AB},  // wrong
    {0xFBE4E1, 0x451B1A, 0x3A0A07},  // wrong_tint
    {0x17603E, 0x78D8A6, 0x8CF0B8},  // right
    {0xDDF0E5, 0x12382A, 0x00301A},  // right_tint
    {0xE2DED3, 0x2D3F4B, 0x4A4A4A},  // bar_track
    {0x75808A, 0x8B9CA8, 0xD0D0D0},  // bar_other
    {0x14202A, 0x05090C, 0x000000},  // ring_outer
    {0xFFB000, 0xFFC233, 0x00E5FF},  // ring_inner
    {0xB3202C, 0xC93642, 0x8F0F1A},  // port
    {0x0D6B3C, 0x12804A, 0x0A5230},  // starboard
    {0xFFFFFF, 0xFFFFFF, 0xFFFFFF},  // on_side
    {0xB3202C, 0xFF7D7D, 0xFFA3A3},  // port_line
    {0x0D6B3C, 0x4FD08A, 0x66E8A8},  // starboard_line
    {0xFBFAF7, 0x2A3F4D, 0x1C1C1C},  // key_face
    {0x817B6E, 0x71879A, 0xFFFFFF},  // key_edge
}};

struct Letters {
    float size;
    bool bold;
};

// Per Type, at 100 %. The size counts ascent and descent: Inter's is 1.21 times the size typographers name.
constexpr std::array<Letters, static_cast<std::size_t>(Type::count)> letters{{
    {19, false},     // body
    {19, true},      // strong
    {16.5F, false},  // small
    {14.5F, true},   // caps
    {22, true},      // h2
    {27, true},      // number
    {29, true},      // h1
}};

// Letters beyond Latin-1 that texts of the trade use. Must outlive the atlas.
constexpr std::array<ImWchar, 25> glyphs{
    0x0020, 0x017F, 0x0391, 0x03C9, 0x2010, 0x2027, 0x2030, 0x2033, 0x2044, 0x2044, 0x2070, 0x2089, 0x20AC,
    0x20AC, 0x2150, 0x215E, 0x2190, 0x2199, 0x2206, 0x221E, 0x2248, 0x2265, 0x25A0, 0x25CF, 0};

double linear(int channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

double luminance(const Rgb& c) {
    return 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
}

void set_style(const Theme& theme) {
    ImGuiStyle style;
    style.WindowPadding = {0, 0};
    style.WindowBorderSize = 0;
    style.ChildBorderSize = 0;
    style.FrameBorderSize = 0;
    style.ItemSpacing = {0, 0};
    style.ScrollbarSize = theme.px(14);
    style.ScrollbarRounding = theme.px(7);
    style.GrabMinSize = theme.px(44);
    const auto set = [&](ImGuiCol which, Role role, float alpha) {
        style.Colors[which] = ImGui::ColorConvertU32ToFloat4(theme.colour(role, alpha));
    };
    set(ImGuiCol_WindowBg, Role::ground, 1);
    set(ImGuiCol_ChildBg, Role::ground, 0);
    set(ImGuiCol_Text, Role::ink, 1);
    set(ImGuiCol_TextDisabled, Role::ink2, 1);
    set(ImGuiCol_TextSelectedBg, Role::accent, 0.35F);
    set(ImGuiCol_FrameBg, Role::card, 0);
    set(ImGuiCol_ScrollbarBg, Role::ground, 0);
    set(ImGuiCol_ScrollbarGrab, Role::outline, 0.75F);
    set(ImGuiCol_ScrollbarGrabHovered, Role::outline, 1);
    set(ImGuiCol_ScrollbarGrabActive, Role::accent, 1);
    set(ImGuiCol_NavHighlight, Role::ground, 0);
    ImGui::GetStyle() = style;
}

}  // namespace

const std::array<LookRow, 3>& looks() {
    static constexpr std::array<LookRow, 3> rows{{{Look::light, "light", "Light"},
                                                  {Look::dark, "dark", "Dark"},
                                                  {Look::high_contrast, "high_contrast", "High contrast"}}};
    return rows;
}

std::string_view look_id(Look look) {
    return looks()[static_cast<std::size_t>(look)].id;
}

Rgb colour_of(Look look, Role role) {
    const Shades& shades = colours[static_cast<std::size_t>(role)];
    const unsigned hex = look == Look::light  ? shades.light
                         : look == Look::dark ? shades.dark
                                              : shades.high_contrast;
    return {static_cast<int>(hex >> 16U), static_cast<int>(hex >> 8U & 0xFFU), static_cast<int>(hex & 0xFFU)};
}

std::vector<ColourPair> colour_pairs() {
    std::vector<ColourPair> pairs;
    for (const Role on : {Role::ground, Role::panel, Role::card, Role::raised, Role::raised_over}) {
        for (const Role text : {Role::ink, Role::ink2, Role::accent}) pairs.push_back({text, on});
    }
    for (const Role on : {Role::panel, Role::card, Role::raised}) pairs.push_back({Role::outline, on, 3});
    for (const Role text : {Role::ink, Role::ink2}) {
        for (const Role on : {Role::accent_tint, Role::safety_tint, Role::wrong_tint, Role::right_tint}) {
            pairs.push_back({text, on});
        }
    }
    for (const Role text : {Role::weigh_for, Role::weigh_against, Role::wrong, Role::right}) {
        pairs.push_back({text, Role::card});
        pairs.push_back({text, Role::panel});
    }
    // Lines of drawings and plots, on paper, on what lies under a quiz's drawing, and on lightly filled
    // areas.
    for (const Role line :
         {Role::port_line, Role::starboard_line, Role::wrong, Role::accent, Role::ink, Role::ink2}) {
        for (const Role on : {Role::card, Role::raised, Role::bar_track}) pairs.push_back({line, on, 3});
    }
    pairs.insert(pairs.end(), {{Role::on_accent, Role::accent},
                               {Role::on_accent, Role::accent_over},
                               {Role::accent, Role::accent_tint},
                               {Role::on_bridge, Role::bridge},
                               {Role::on_bridge2, Role::bridge},
                               {Role::on_bridge, Role::bridge_raised},
                               {Role::weigh_for, Role::weigh_for_tint},
                               {Role::weigh_against, Role::weigh_against_tint},
                               {Role::on_safety, Role::safety},
                               {Role::on_stop, Role::stop},
                               {Role::on_stop, Role::stop_hatch},
                               {Role::wrong, Role::wrong_tint},
                               {Role::right, Role::right_tint},
                               {Role::on_side, Role::port},
                               {Role::on_side, Role::starboard},
                               {Role::ink, Role::key_face},
                               {Role::bar_other, Role::card, 3},
                               {Role::ring_inner, Role::ring_outer, 3}});
    return pairs;
}

double contrast(const Rgb& a, const Rgb& b) {
    const double la = luminance(a), lb = luminance(b);
    return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

float scale_for(float wanted, float width_px, float height_px) {
    return std::max(1.0F, std::min(wanted, std::min(width_px / 640, height_px / 400)));
}

ImU32 Theme::colour(Role role, float alpha) const {
    const Rgb c = colour_of(look_, role);
    return IM_COL32(c.r, c.g, c.b, static_cast<int>(std::lround(alpha * 255)));
}

float Theme::line_height(Type type) const {
    return std::round(font(type)->FontSize * 1.14F);
}

Result<void> Theme::build(Look look, float scale, const std::string& fonts_folder) {
    const std::string regular = fonts_folder + "/Inter-Regular.otf";
    const std::string bold = fonts_folder + "/Inter-SemiBold.otf";
    for (const std::string& file : {regular, bold}) {
        if (!std::filesystem::exists(file)) {
            return Error{Error::Kind::not_found, "the letters for the window are missing", file,
                         "give the folder that holds assets/fonts"};
        }
    }
    look_ = look;
    scale_ = scale;
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    atlas.Flags |= ImFontAtlasFlags_NoPowerOfTwoHeight;
    atlas.TexDesiredWidth = 2048;
    ImFontConfig config;
    config.FontBuilderFlags = ImGuiFreeTypeBuilderFlags_LightHinting;
    config.RasterizerMultiply = look == Look::light ? 1.15F : 1.0F;  // dark letters on white come out thin
    config.OversampleH = 1;
    for (std::size_t i = 0; i < fonts_.size(); ++i) {
        const std::string& file = letters[i].bold ? bold : regular;
        const float size = std::round(letters[i].size * scale);
        fonts_[i] = atlas.AddFontFromFileTTF(file.c_str(), size, &config, glyphs.data());
    }
    atlas.FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
    atlas.Build();
    ImGui::GetIO().FontDefault = font(Type::body);
    set_style(*this);
    return {};
}

}  // namespace hardover::window
