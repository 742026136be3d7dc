// A plain triangle rasteriser: texture coordinates and colours by barycentric weights, blended on sRGB bytes
// as the real window does.
#include "raster.hpp"

#define STB_IMAGE_WRITE_IMPLEMENTATION
#define STB_IMAGE_WRITE_STATIC
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wunused-function"
#pragma GCC diagnostic ignored "-Wmissing-field-initializers"
#include <stb_image_write.h>
#pragma GCC diagnostic pop

#include <algorithm>
#include <cmath>
#include <vector>

namespace hardover_tests {

namespace {

struct Picture {
    int w = 0;
    int h = 0;
    std::vector<unsigned char> rgb;
};

struct Atlas {
    unsigned char* alpha = nullptr;
    int w = 0;
    int h = 0;

    float at(float u, float v) const {
        const float x = u * static_cast<float>(w) - 0.5F, y = v * static_cast<float>(h) - 0.5F;
        const int x0 = static_cast<int>(std::floor(x)), y0 = static_cast<int>(std::floor(y));
        const float fx = x - static_cast<float>(x0), fy = y - static_cast<float>(y0);
        const auto texel = [&](int i, int j) {
            i = std::clamp(i, 0, w - 1);
            j = std::clamp(j, 0, h - 1);
            return static_cast<float>(alpha[j * w + i]) / 255;
        };
        return (texel(x0, y0) * (1 - fx) + texel(x0 + 1, y0) * fx) * (1 - fy) +
               (texel(x0, y0 + 1) * (1 - fx) + texel(x0 + 1, y0 + 1) * fx) * fy;
    }
};

float channel(ImU32 colour, int shift) {
    return static_cast<float>(colour >> shift & 0xFFU);
}

float cross(const ImVec2& a, const ImVec2& b, float x, float y) {
    return (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
}

void draw_triangle(Picture& picture, const Atlas& atlas, const ImVec4& clip, const ImDrawVert& a,
                   const ImDrawVert& b, const ImDrawVert& c) {
    const float area = cross(a.pos, b.pos, c.pos.x, c.pos.y);
    if (area == 0) return;
    const float low_x = std::max(clip.x, std::min({a.pos.x, b.pos.x, c.pos.x}));
    const float low_y = std::max(clip.y, std::min({a.pos.y, b.pos.y, c.pos.y}));
    const float high_x = std::min(clip.z, std::max({a.pos.x, b.pos.x, c.pos.x}));
    const float high_y = std::min(clip.w, std::max({a.pos.y, b.pos.y, c.pos.y}));
    for (int y = std::max(0, static_cast<int>(low_y));
         y < std::min(picture.h, static_cast<int>(std::ceil(high_y))); ++y) {
        for (int x = std::max(0, static_cast<int>(low_x));
             x < std::min(picture.w, static_cast<int>(std::ceil(high_x))); ++x) {
            // A hair off the middle, so that a pixel on a shared edge is drawn by one triangle only.
            const float px = static_cast<float>(x) + 0.5013F, py = static_cast<float>(y) + 0.5007F;
            const float wa = cross(b.pos, c.pos, px, py) / area, wb = cross(c.pos, a.pos, px, py) / area;
            const float wc = 1 - wa - wb;
            if (wa < 0 || wb < 0 || wc < 0) continue;
            const float cover =
                atlas.at(wa * a.uv.x + wb * b.uv.x + wc * c.uv.x, wa * a.uv.y + wb * b.uv.y + wc * c.uv.y);
            const auto mixed = [&](int shift) {
                return wa * channel(a.col, shift) + wb * channel(b.col, shift) + wc * channel(c.col, shift);
            };
            const float alpha = cover * mixed(IM_COL32_A_SHIFT) / 255;
            unsigned char* pixel = &picture.rgb[static_cast<std::size_t>((y * picture.w + x) * 3)];
            const int shifts[3] = {IM_COL32_R_SHIFT, IM_COL32_G_SHIFT, IM_COL32_B_SHIFT};
            for (int i = 0; i < 3; ++i) {
                const float over = static_cast<float>(pixel[i]) * (1 - alpha) + mixed(shifts[i]) * alpha;
                pixel[i] = static_cast<unsigned char>(std::clamp(std::lround(over), 0L, 255L));
            }
        }
    }
}

}  // namespace

hardover::Result<void> save_png(const ImDrawData& data, const PictureColour& ground,
                                const std::string& path) {
    Picture picture{static_cast<int>(data.DisplaySize.x), static_cast<int>(data.DisplaySize.y), {}};
    for (int i = 0; i < picture.w * picture.h; ++i) {
        for (const int value : {ground.r, ground.g, ground.b})
            picture.rgb.push_back(static_cast<unsigned char>(value));
    }
    Atlas atlas;
    ImGui::GetIO().Fonts->GetTexDataAsAlpha8(&atlas.alpha, &atlas.w, &atlas.h);
    for (int n = 0; n < data.CmdListsCount; ++n) {
        const ImDrawList& list = *data.CmdLists[n];
        for (const ImDrawCmd& cmd : list.CmdBuffer) {
            for (unsigned i = 0; i + 2 < cmd.ElemCount; i += 3) {
                const auto vertex = [&](unsigned k) {
                    const unsigned index = list.IdxBuffer[static_cast<int>(cmd.IdxOffset + i + k)];
                    return list.VtxBuffer[static_cast<int>(cmd.VtxOffset + index)];
                };
                draw_triangle(picture, atlas, cmd.ClipRect, vertex(0), vertex(1), vertex(2));
            }
        }
    }
    if (stbi_write_png(path.c_str(), picture.w, picture.h, 3, picture.rgb.data(), picture.w * 3) == 0) {
        return hardover::Error{hardover::Error::Kind::storage, "the picture cannot be written", path, ""};
    }
    return {};
}

}  // namespace hardover_tests
