// Finds how many choices go side by side, and draws them.
#include "app/window/screens/choices.hpp"

#include <sstream>
#include <string>

namespace hardover::window {

namespace {

constexpr float gap_dp = 10;
constexpr float least_dp = 150;

bool has_notes(const std::vector<ChoiceLook>& looks) {
    return std::any_of(looks.begin(), looks.end(), [](const ChoiceLook& look) { return !look.note.empty(); });
}

// A word that is wider than its cell would be broken in the middle. With the tick, since any may be chosen.
bool breaks_a_word(Kit& kit, const ChoiceLook& look, float width_px) {
    ChoiceLook one = look;
    one.note = {};
    one.selected = true;
    one.label = "i";
    const float line = kit.choice_height(one, width_px);
    std::istringstream words{std::string(look.label)};
    for (std::string word; words >> word;) {
        one.label = word;
        if (kit.choice_height(one, width_px) > line) return true;
    }
    return false;
}

}  // namespace

ChoiceCells choice_cells(Kit& kit, const std::vector<ChoiceLook>& looks, float width_px,
                         std::size_t most_across) {
    ChoiceCells cells;
    if (looks.empty()) return cells;
    const float two_lines = 2 * kit.theme().line_height(Type::strong) + kit.px(27);
    const float with_note = two_lines + 2 * kit.theme().line_height(Type::small) + kit.px(4);
    for (std::size_t most = std::min(looks.size(), most_across); most >= 1; --most) {
        const std::size_t lines = (looks.size() + most - 1) / most;
        cells.across = (looks.size() + lines - 1) / lines;  // evenly filled lines
        const auto count = static_cast<float>(cells.across);
        cells.w = (width_px - kit.px(gap_dp) * (count - 1)) / count;
        cells.heights.assign(lines, 0);
        for (std::size_t i = 0; i < looks.size(); ++i) {
            float& h = cells.heights[i / cells.across];
            h = std::max(h, kit.choice_height(looks[i], cells.w));
        }
        cells.whole = kit.px(gap_dp) * static_cast<float>(lines - 1);
        for (const float h : cells.heights) cells.whole += h;
        const float highest = *std::max_element(cells.heights.begin(), cells.heights.end());
        const bool broken = std::any_of(looks.begin(), looks.end(), [&](const ChoiceLook& look) {
            return breaks_a_word(kit, look, cells.w);
        });
        if (!broken && highest <= (has_notes(looks) ? with_note : two_lines) && cells.w >= kit.px(least_dp))
            break;
    }
    return cells;
}

int draw_choice_cells(Kit& kit, const std::vector<std::string>& ids, const std::vector<ChoiceLook>& looks,
                      std::size_t most_across) {
    const ChoiceCells cells = choice_cells(kit, looks, kit.width(), most_across);
    const Box all = kit.take(cells.whole);
    int pressed = -1;
    float y = all.y;
    for (std::size_t i = 0; i < looks.size(); ++i) {
        const std::size_t column = i % cells.across, line = i / cells.across;
        if (column == 0 && line > 0) y += cells.heights[line - 1] + kit.px(gap_dp);
        const float x = all.x + static_cast<float>(column) * (cells.w + kit.px(gap_dp));
        if (kit.choice(ids[i], {x, y, cells.w, cells.heights[line]}, looks[i])) pressed = static_cast<int>(i);
    }
    return pressed;
}

}  // namespace hardover::window
