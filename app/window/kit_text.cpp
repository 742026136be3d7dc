// Kit: text on one line, wrapped text, and the marks it leaves.
#include <cmath>

#include "app/window/kit.hpp"

namespace hardover::window {

namespace {

Box box_of(const ImVec2& low, const ImVec2& high) {
    return {low.x, low.y, high.x - low.x, high.y - low.y};
}

}  // namespace

void Kit::mark_text(const Box& box, std::string_view text, bool cut) {
    const Box clip = box_of(list().GetClipRectMin(), list().GetClipRectMax());
    Mark mark;
    mark.text = text;
    mark.box = box;
    mark.visible = box.meet(clip);
    mark.cut = cut;
    marks_.push_back(mark);
}

// The drawing library sets wrapped lines solid, so lines are broken here and set one by one.
std::vector<std::string_view> Kit::lines_of(std::string_view text, Type type, float width_px) const {
    std::vector<std::string_view> lines;
    const ImFont* font = theme_.font(type);
    const char* at = text.data();
    const char* const end = at + text.size();
    while (at < end) {
        const char* stop = font->CalcWordWrapPositionA(1.0F, at, end, std::max(1.0F, width_px));
        if (stop == at) ++stop;  // not even one letter fits
        const char* const new_line = std::find(at, stop, '\n');
        lines.emplace_back(at, static_cast<std::size_t>(new_line - at));
        at = new_line < stop ? new_line + 1 : stop;
        while (at < end && *at == ' ') ++at;
    }
    return lines;
}

void Kit::draw_line(float x, float y, std::string_view text, Type type, Role role) {
    const ImFont* font = theme_.font(type);
    const float height = theme_.line_height(type);
    if (!in_sight({x, y, list().GetClipRectMax().x - x, height})) return;
    const float lead = (height - font->FontSize) / 2;
    list().AddText(font, font->FontSize, {std::round(x), std::round(y + lead)}, theme_.colour(role),
                   text.data(), text.data() + text.size());
}

float Kit::text_width(std::string_view text, Type type) const {
    const ImFont* font = theme_.font(type);
    return font->CalcTextSizeA(font->FontSize, 1e9F, -1, text.data(), text.data() + text.size()).x;
}

float Kit::text_height(std::string_view text, Type type, float width_px) const {
    return static_cast<float>(lines_of(text, type, width_px).size()) * theme_.line_height(type);
}

void Kit::text(std::string_view text, Type type, Role role, Align align) {
    if (text.empty()) return;
    const Box start = take(0);
    float widest = 0;
    for (const std::string_view line : lines_of(text, type, flow_.w)) {
        const float w = text_width(line, type);
        const float x = align == Align::right    ? flow_.x + flow_.w - w
                        : align == Align::centre ? flow_.x + (flow_.w - w) / 2
                                                 : flow_.x;
        draw_line(x, flow_.y, line, type, role);
        widest = std::max(widest, w);
        flow_.y += theme_.line_height(type);
    }
    const float left = align == Align::right    ? flow_.x + flow_.w - widest
                       : align == Align::centre ? flow_.x + (flow_.w - widest) / 2
                                                : start.x;
    mark_text({left, start.y, widest, flow_.y - start.y}, text, widest > flow_.w + 1);
}

void Kit::line_in(const Box& box, std::string_view text, Type type, Role role, Align align) {
    if (text.empty()) return;
    std::string shown(text);
    bool cut = false;
    while (text_width(shown, type) > box.w + 0.5F && shown.size() > 3) {
        if (cut) shown.resize(shown.size() - 3);  // the ellipsis is three bytes long
        shown.pop_back();
        while (!shown.empty() && (static_cast<unsigned char>(shown.back()) & 0xC0U) == 0x80U)
            shown.pop_back();
        if (!shown.empty() && static_cast<unsigned char>(shown.back()) >= 0xC0U) shown.pop_back();
        shown += "\xE2\x80\xA6";
        cut = true;
    }
    const float w = text_width(shown, type), h = theme_.line_height(type);
    float x = box.x;
    if (align == Align::centre) x += (box.w - w) / 2;
    if (align == Align::right) x += box.w - w;
    const float y = box.y + (box.h - h) / 2;
    draw_line(x, y, shown, type, role);
    mark_text({x, y, w, h}, text, cut);
}

void Kit::wrapped_in(const Box& box, std::string_view text, Type type, Role role) {
    if (text.empty()) return;
    const auto lines = lines_of(text, type, box.w);
    const float h = static_cast<float>(lines.size()) * theme_.line_height(type);
    float y = box.y + std::max(0.0F, (box.h - h) / 2), widest = 0;
    const float top = y;
    for (const std::string_view line : lines) {
        draw_line(box.x, y, line, type, role);
        widest = std::max(widest, text_width(line, type));
        y += theme_.line_height(type);
    }
    mark_text({box.x, top, widest, h}, text, h > box.h + 1 || widest > box.w + 1);
}

}  // namespace hardover::window
