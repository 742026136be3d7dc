// Kit: cards, lines, bars, key caps and side letters.
#include "app/window/kit.hpp"

namespace hardover::window {

bool Kit::in_sight(const Box& box) const {
    const ImVec2 low = list().GetClipRectMin(), high = list().GetClipRectMax();
    const float margin = px(4);  // outlines and focus rings reach beyond their box
    return box.right() >= low.x - margin && box.x <= high.x + margin && box.bottom() >= low.y - margin &&
           box.y <= high.y + margin;
}

void Kit::fill(const Box& box, Role role, float round_dp) {
    if (!in_sight(box)) return;
    list().AddRectFilled({box.x, box.y}, {box.right(), box.bottom()}, theme_.colour(role), px(round_dp));
}

void Kit::outline(const Box& box, Role role, float width_dp, float round_dp) {
    if (!in_sight(box)) return;
    list().AddRect({box.x, box.y}, {box.right(), box.bottom()}, theme_.colour(role), px(round_dp), 0,
                   px(width_dp));
}

void Kit::icon(const Box& box, Icon icon, Role role) {
    if (!in_sight(box)) return;
    draw_icon(list(), icon, box, theme_.colour(role));
}

void Kit::hatch(const Box& box, float stripe_dp, Role role) {
    if (!in_sight(box)) return;
    draw_hatch(list(), box, px(stripe_dp), theme_.colour(role));
}

void Kit::bar(const Box& box, double share, Role role) {
    fill(box, Role::bar_track, 3);
    const float w = box.w * static_cast<float>(std::clamp(share, 0.0, 1.0));
    if (w >= 1) fill({box.x, box.y, std::max(w, px(3)), box.h}, role, 3);
}

void Kit::stroke(const std::vector<ImVec2>& points, Role role, float width_dp) {
    list().AddPolyline(points.data(), static_cast<int>(points.size()), theme_.colour(role), ImDrawFlags_None,
                       std::max(1.0F, px(width_dp)));
}

void Kit::shape(const std::vector<ImVec2>& points, Role role) {
    list().AddConvexPolyFilled(points.data(), static_cast<int>(points.size()), theme_.colour(role));
}

void Kit::disc(ImVec2 centre, float radius_dp, Role role) {
    list().AddCircleFilled(centre, px(radius_dp), theme_.colour(role));
}

void Kit::within(const Box& box, const std::function<void()>& content) {
    list().PushClipRect({box.x, box.y}, {box.right(), box.bottom()}, true);
    content();
    list().PopClipRect();
}

float Kit::key_cap_width(std::string_view text) const {
    return std::max(px(26), text_width(text, Type::caps) + px(14));
}

void Kit::key_cap(const Box& box, std::string_view text, bool on_accent) {
    const Box face{box.x, box.y, box.w, box.h - px(2)};
    fill(box, Role::key_edge, 6);
    fill(face.inset(px(1)), Role::key_face, 5);
    if (on_accent) outline(box, Role::on_accent, 1, 6);
    line_in(face, text, Type::caps, Role::ink, Align::centre);
}

void Kit::side_letter(const Box& box, char letter) {
    fill(box, letter == 'P' ? Role::port : Role::starboard, 4);
    line_in(box, std::string_view(&letter, 1), Type::caps, Role::on_side, Align::centre);
}

// The content is drawn first and the surface slid under it, because only then its height is known.
void Kit::card(const SurfaceLook& look, const std::function<void()>& content) {
    const Flow outer = flow_;
    ImDrawListSplitter layers;
    layers.Split(&list(), 2);
    layers.SetCurrentChannel(&list(), 1);
    const float edge = look.edge == Role::count ? 0 : px(6);
    flow_ = {outer.x + px(look.pad) + edge, outer.y + px(look.pad), outer.w - 2 * px(look.pad) - edge};
    content();
    const float bottom = flow_.y + px(look.pad);
    layers.SetCurrentChannel(&list(), 0);
    const Box box{outer.x, outer.y, outer.w, bottom - outer.y};
    if (edge > 0 && in_sight(box)) {
        fill(box, look.edge, look.round);
        list().AddRectFilled({box.x + edge, box.y}, {box.right(), box.bottom()}, theme_.colour(look.fill),
                             px(look.round), ImDrawFlags_RoundCornersRight);
    } else {
        fill(box, look.fill, look.round);
    }
    if (look.line_width > 0) outline(box, look.line, look.line_width, look.round);
    layers.Merge(&list());
    flow_ = {outer.x, bottom, outer.w};
}

void Kit::floating_card(const Box& beside, float width_px, std::function<void()> content) {
    floating_ = Floating{beside, width_px, std::move(content)};
}

// Its height is known from the frame before; in the first one it may stand too low.
void Kit::draw_floating_card() {
    const ImVec2 screen = ImGui::GetIO().DisplaySize;
    const float w = std::min(floating_->w, screen.x);
    const float x = std::max(0.0F, floating_->beside.x - w - px(12));
    const float y = std::clamp(floating_->beside.y, 0.0F, std::max(0.0F, screen.y - memory_.floating_height));
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(screen);
    ImGui::Begin("floating", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoInputs | ImGuiWindowFlags_NoNav |
                     ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoSavedSettings |
                     ImGuiWindowFlags_NoFocusOnAppearing);
    memory_.floating_height = inside(
        {x, y, w, 0}, [&] { card({.line = Role::accent, .pad = 14, .line_width = 2}, floating_->content); });
    ImGui::End();
}

char side_of(std::string_view id) {
    const std::size_t dash = id.find_last_of("_.");
    const std::string_view last = dash == std::string_view::npos ? id : id.substr(dash + 1);
    if (last == "port") return 'P';
    if (last == "starboard") return 'S';
    return 0;
}

}  // namespace hardover::window
