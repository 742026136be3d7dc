#include "app/window/screens/parts.hpp"

#include <algorithm>
#include <vector>

#include "app/window/words_here.hpp"

namespace hardover::window {

FieldEvent draw_number_field(Kit& kit, const NumberLook& look, Draft& draft) {
    const float line = kit.theme().line_height(Type::small) + kit.px(4);
    const char side = side_of(look.id);
    const float indent = side == 0 ? 0 : kit.px(28);
    const float room = kit.width() - indent;
    const Box name = kit.take(std::max(line, kit.text_height(look.name, Type::small, room) + kit.px(4)));
    if (side != 0) kit.side_letter({name.x, name.y, kit.px(20), kit.px(20)}, side);
    kit.wrapped_in({name.x + indent, name.y, room, name.h}, look.name, Type::small, Role::ink);
    const FieldEvent event = kit.field(look.id, kit.take(kit.px(52)), draft.text,
                                       {.name = look.name, .unit = look.unit, .wrong = !draft.error.empty()});
    if (event.edited) {
        draft.changed = true;
        draft.error.clear();
    }
    const bool wrong = !event.cancelled && !draft.error.empty();
    const std::string& under = wrong ? draft.error : look.hint;
    if (!under.empty()) {
        kit.gap(4);
        kit.text(under, Type::small, wrong ? Role::wrong : Role::ink2);
    }
    kit.gap(10);
    return event;
}

void draw_sheet_line(Kit& kit, const SheetLine& line, Type type) {
    const float room = kit.width();
    const float value = std::min(room * 0.6F, kit.text_width(line.value, type) + 1);
    const float name = room - value - kit.px(12);
    const float h =
        std::max(kit.text_height(line.name, Type::body, name), kit.text_height(line.value, type, value));
    const Box box = kit.take(h + kit.px(6));
    kit.wrapped_in({box.x, box.y, name, box.h}, line.name, Type::body, Role::ink2);
    kit.wrapped_in({box.right() - value, box.y, value, box.h}, line.value, type, Role::ink);
    if (line.assumed) {
        const Box tag = kit.take(kit.theme().line_height(Type::small));
        kit.line_in(tag, "assumed, not measured on this boat", Type::small, Role::weigh_against);
    }
}

void draw_notice(Kit& kit, const std::string& text) {
    if (text.empty()) return;
    kit.card({.fill = Role::panel, .pad = 12, .edge = Role::outline},
             [&] { kit.text(words_here(text), Type::small, Role::ink); });
    kit.gap(8);
}

void draw_trouble(Kit& kit, const std::string& text) {
    if (text.empty()) return;
    kit.card({.fill = Role::wrong_tint, .line = Role::wrong, .pad = 14, .edge = Role::wrong},
             [&] { kit.text(words_here(text), Type::body, Role::ink); });
    kit.gap(12);
}

bool draw_work(Kit& kit, const WorkLook& look) {
    bool stop = false;
    kit.card({.pad = 22, .edge = Role::accent}, [&] {
        kit.text("WORKING", Type::caps, Role::accent);
        kit.gap(4);
        kit.text(look.what, Type::h2, Role::ink);
        kit.gap(12);
        kit.bar(kit.take(kit.px(10)), look.share, Role::accent);
        kit.gap(6);
        kit.text(look.progress.empty() ? "This takes a moment." : look.progress, Type::small, Role::ink2);
        if (!look.can_stop) return;
        kit.gap(12);
        kit.tab_starts_here();
        stop = draw_small_button(kit, "working.stop", {.label = "Stop"});
    });
    return stop;
}

bool draw_shown_work(Kit& kit, const WorkShown& work) {
    const bool pressed = draw_work(kit, {work.what, work.progress, work.share, work.can_stop});
    const bool by_key = work.can_stop && !kit.typing() && kit.take(Key::escape);
    return pressed || by_key;
}

bool draw_search_field(Kit& kit, const std::string& id, std::string& text, const std::string& name,
                       const std::string& placeholder) {
    return kit
        .field(id, kit.take(kit.px(52)), text,
               {.name = name, .placeholder = placeholder, .icon = Icon::search})
        .edited;
}

bool draw_hit_row(Kit& kit, const std::string& id, const SearchHit& hit) {
    const float pad = kit.px(12), room = kit.width() - 2 * pad;
    const float kind = kit.theme().line_height(Type::caps);
    const float title = kit.text_height(hit.title, Type::strong, room);
    const float under = kit.text_height(hit.under, Type::small, room);
    const Box box = kit.take(kind + title + under + 2 * pad);
    const Kit::Touch t = kit.touch(id, box, hit.title);
    kit.fill(box, t.over ? Role::raised_over : Role::card, 8);
    kit.outline(box, t.focused ? Role::accent : Role::hairline, t.focused ? 3 : 1.5F, 8);
    kit.inside({box.x + pad, box.y + pad, room, 0}, [&] {
        kit.text(hit.kind, Type::caps, Role::accent);
        kit.text(hit.title, Type::strong, Role::ink);
        kit.text(hit.under, Type::small, Role::ink2);
    });
    kit.gap(8);
    return t.pressed;
}

bool draw_entry_link(Kit& kit, const std::string& id, const std::string& words) {
    const float room = kit.width() - kit.px(46);
    const float h = kit.text_height(words, Type::body, room);
    const Box box = kit.take(std::max(kit.px(46), h + kit.px(18)));
    const Kit::Touch t = kit.touch(id, box, words);
    kit.fill(box, t.over ? Role::raised_over : Role::raised, 8);
    kit.outline(box, t.focused ? Role::accent : Role::hairline, t.focused ? 3 : 1.5F, 8);
    kit.wrapped_in({box.x + kit.px(12), box.y, room, box.h}, words, Type::body, Role::ink);
    kit.icon({box.right() - kit.px(28), box.middle_y() - kit.px(9), kit.px(18), kit.px(18)}, Icon::shut,
             Role::accent);
    kit.gap(6);
    return t.pressed;
}

bool draw_small_button(Kit& kit, const std::string& id, const ButtonLook& look) {
    const Box line = kit.take(kit.px(48));
    return kit.button(id, {line.x, line.y, std::min(line.w, kit.button_width(look)), line.h}, look);
}

int draw_button_row(Kit& kit, const std::vector<RowButton>& buttons) {
    const float gap = kit.px(8), h = kit.px(48);
    int pressed = -1;
    Box line = kit.take(h);
    float x = line.x;
    for (std::size_t i = 0; i < buttons.size(); ++i) {
        const float w = std::min(line.w, kit.button_width(buttons[i].look));
        if (x > line.x && x + w > line.right()) {
            kit.gap(8);
            line = kit.take(h);
            x = line.x;
        }
        if (kit.button(buttons[i].id, {x, line.y, w, h}, buttons[i].look)) pressed = static_cast<int>(i);
        x += w + gap;
    }
    return pressed;
}

void draw_columns(Kit& kit, float left_share, const std::function<void()>& left,
                  const std::function<void()>& right) {
    const Box start = kit.take(0);
    const float gap = kit.px(20), first = (start.w - gap) * left_share;
    const float a = kit.inside({start.x, start.y, first, 0}, left);
    const float b = kit.inside({start.x + first + gap, start.y, start.w - first - gap, 0}, right);
    kit.take(std::max(a, b));
}

void draw_in_columns(Kit& kit, std::size_t count, float least_dp, std::size_t most,
                     const std::function<void(std::size_t)>& each) {
    const float gap = kit.px(14);
    const auto fit = static_cast<std::size_t>((kit.width() + gap) / (kit.px(least_dp) + gap));
    const std::size_t across = std::clamp<std::size_t>(fit, 1, most);
    const float w = (kit.width() - gap * static_cast<float>(across - 1)) / static_cast<float>(across);
    for (std::size_t i = 0; i < count; i += across) {
        const Box start = kit.take(0);
        float h = 0;
        for (std::size_t k = i; k < std::min(count, i + across); ++k) {
            const float x = start.x + static_cast<float>(k - i) * (w + gap);
            h = std::max(h, kit.inside({x, start.y, w, 0}, [&] { each(k); }));
        }
        kit.take(h);
    }
}

void draw_numbered(Kit& kit, const std::vector<std::string>& lines) {
    int number = 0;
    for (const std::string& line : lines) {
        const Box start = kit.take(0);
        const float indent = kit.px(36);
        const float used = kit.inside({start.x + indent, start.y, start.w - indent, 0},
                                      [&] { kit.text(line, Type::body, Role::ink); });
        kit.line_in({start.x, start.y, indent, kit.theme().line_height(Type::body)}, std::to_string(++number),
                    Type::strong, Role::accent);
        kit.take(used);
        kit.gap(7);
    }
}

void draw_skipped_cautions(Kit& kit, const std::vector<study::practice::SkippedCautions>& works) {
    if (works.empty()) return;
    kit.card(
        {.fill = Role::safety_tint, .line = Role::safety, .pad = 18, .line_width = 2, .edge = Role::safety},
        [&] {
            const Box title = kit.take(kit.theme().line_height(Type::h2));
            kit.icon({title.x, title.y, kit.px(26), kit.px(26)}, Icon::caution, Role::ink);
            kit.line_in({title.x + kit.px(36), title.y, title.w - kit.px(36), title.h}, "Cautions left out",
                        Type::h2, Role::ink);
            for (const study::practice::SkippedCautions& skipped : works) {
                kit.gap(8);
                kit.text(skipped.work, Type::strong, Role::ink);
                for (const std::string& caution : skipped.cautions) {
                    kit.gap(7);
                    kit.text(caution, Type::body, Role::ink);
                }
            }
        });
    kit.gap(14);
}

}  // namespace hardover::window
