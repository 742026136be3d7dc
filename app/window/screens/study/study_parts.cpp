#include "app/window/screens/study/study_parts.hpp"

#include <cctype>
#include <cmath>

#include "app/window/screens/choices.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

bool draw_study_row(Kit& kit, const std::string& id, const RowLook& look) {
    const float pad = kit.px(12), cap = look.cap.empty() ? 0 : kit.px(44);
    const float side = look.side.empty() ? 0 : kit.text_width(look.side, Type::strong) + kit.px(10);
    const float whole = kit.width() - 2 * pad - cap, room = whole - side;
    float h = kit.text_height(look.title, Type::strong, room);
    if (!look.note.empty()) h += kit.px(2) + kit.text_height(look.note, Type::small, whole);
    if (!look.found.empty()) h += kit.px(4) + kit.text_height(look.found, Type::strong, whole - kit.px(28));
    const Box box = kit.take(std::max(kit.px(48), h + 2 * pad));
    const Kit::Touch t = kit.touch(id, box, look.title, true, look.selected);
    kit.fill(box, look.selected ? Role::accent_tint : t.over ? Role::raised_over : Role::raised, 8);
    const bool marked = t.focused || look.selected;
    kit.outline(box, marked ? Role::accent : Role::hairline, marked ? 3 : 1.5F, 8);
    if (cap > 0) kit.key_cap({box.x + pad, box.middle_y() - kit.px(15), kit.px(30), kit.px(30)}, look.cap);
    const float x = box.x + pad + cap;
    const float top = box.y + std::max(pad, (box.h - h) / 2);
    if (side > 0) {
        kit.line_in({box.right() - pad - side, top, side, kit.theme().line_height(Type::strong)}, look.side,
                    Type::strong, Role::ink2, Align::right);
    }
    const float title = kit.inside({x, top, room, 0}, [&] { kit.text(look.title, Type::strong, Role::ink); });
    kit.inside({x, top + title, whole, 0}, [&] {
        if (!look.note.empty()) {
            kit.gap(2);
            kit.text(look.note, Type::small, Role::ink2);
        }
        if (look.found.empty()) return;
        kit.gap(4);
        const Box line = kit.take(0);
        kit.icon({line.x, line.y + kit.px(1), kit.px(20), kit.px(20)}, Icon::tick, Role::right);
        kit.inside({line.x + kit.px(28), line.y, line.w - kit.px(28), 0},
                   [&] { kit.text(look.found, Type::strong, Role::right); });
    });
    const bool by_key = !look.cap.empty() && kit.take_letter(static_cast<char32_t>(look.cap.front()));
    kit.gap(8);
    return t.pressed || by_key;
}

void draw_sure_steps(Kit& kit, const std::string& prefix, std::optional<double>& sure) {
    std::vector<std::string> ids;
    std::vector<ChoiceLook> looks;
    std::vector<std::string> notes;
    for (const study::SureStep& step : study::sure_steps()) {
        notes.push_back(std::to_string(std::lround(100 * step.sure)) + " in 100");
    }
    for (std::size_t i = 0; i < study::sure_steps().size(); ++i) {
        const study::SureStep& step = study::sure_steps()[i];
        ids.push_back(prefix + "." + std::to_string(i + 1));
        looks.push_back({.label = step.name, .note = notes[i], .selected = sure == step.sure});
    }
    const int pressed = draw_choice_cells(kit, ids, looks, 5);
    if (pressed < 0) return;
    const double said = study::sure_steps()[static_cast<std::size_t>(pressed)].sure;
    if (sure == said) {
        sure.reset();
    } else {
        sure = said;
    }
}

void use_sure_key(Kit& kit, std::optional<double>& sure) {
    if (!take_command(kit, 's')) return;
    const auto& steps = study::sure_steps();
    std::size_t next = 0;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (sure == steps[i].sure) next = i + 1;
    }
    if (next < steps.size()) {
        sure = steps[next].sure;
    } else {
        sure.reset();
    }
}

void draw_list_of(Kit& kit, const std::string& name, const std::vector<std::string>& items) {
    if (items.empty()) return;
    kit.gap(8);
    kit.text(name, Type::caps, Role::ink2);
    kit.gap(3);
    for (const std::string& item : items) {
        kit.text(item, Type::body, Role::ink);
        kit.gap(2);
    }
}

void draw_working(StudyScene& scene) {
    if (!scene.page.working) return;
    const StudyWork& work = *scene.page.working;
    if (draw_work(scene.kit, {work.what, work.progress, work.share})) scene.ask(StopWork{});
}

bool take_command(Kit& kit, char letter) {
    const auto plain = static_cast<unsigned char>(letter);
    return kit.take_letter(static_cast<char32_t>(std::tolower(plain))) ||
           kit.take_letter(static_cast<char32_t>(std::toupper(plain)));
}

}  // namespace hardover::window
