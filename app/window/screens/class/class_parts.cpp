#include "app/window/screens/class/class_parts.hpp"

#include "app/window/screens/choices.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

bool draw_text(ClassScene& scene, std::string& text, const TextLook& look) {
    Kit& kit = scene.kit;
    kit.text(look.name, Type::small, Role::ink);
    kit.gap(4);
    const FieldEvent event =
        kit.field(look.id, kit.take(kit.px(52)), text,
                  {.name = look.name, .placeholder = look.placeholder, .hidden = look.hidden});
    if (!look.hint.empty()) {
        kit.gap(4);
        kit.text(look.hint, Type::small, Role::ink2);
    }
    kit.gap(10);
    return event.entered;
}

bool draw_primary(ClassScene& scene, const std::string& id, const std::string& label, bool enabled) {
    return draw_small_button(
        scene.kit, id, {.label = label, .face = Face::primary, .enabled = enabled && !scene.page().working});
}

void draw_class_work(ClassScene& scene) {
    const WorkShown& work = *scene.page().working;
    if (draw_work(scene.kit, {work.what, work.progress, work.share, work.can_stop}))
        scene.ask(StopClassWork{});
}

void draw_told_at(ClassScene& scene, const std::string& at) {
    Kit& kit = scene.kit;
    const ClassPage& page = scene.page();
    if (page.working && page.working->at == at && page.working_tab == scene.view().tab) {
        kit.gap(8);
        draw_class_work(scene);
    }
    const Told& told = page.told;
    if (told.at != at || told.text.empty()) return;
    kit.gap(8);
    if (told.trouble()) {
        draw_trouble(kit, told.text);
        return;
    }
    if (told.kind == Told::Kind::stopped) {
        draw_notice(kit, told.text);
        return;
    }
    kit.card({.fill = Role::right_tint, .line = Role::right, .pad = 12, .edge = Role::right}, [&] {
        kit.text(told.text, Type::strong, Role::ink);
        const auto way = [&](const char* id, const char* label, Icon icon, const std::string& path) {
            if (path.empty()) return;
            kit.gap(8);
            if (draw_small_button(kit, id, {.label = label, .icon = icon}))
                scene.action = Action{SettingsAction{OpenFolder{path}}};
        };
        way("told.file", "Open it", Icon::sheet, told.file);
        way("told.folder", "Show the folder", Icon::bench, told.folder);
    });
    kit.gap(8);
}

bool draw_class_first(ClassScene& scene) {
    Kit& kit = scene.kit;
    const ClassPage& page = scene.page();
    ClassView& view = scene.view();
    if (!page.name.empty()) {
        if (page.classes.size() > 1) {
            std::vector<std::string> ids;
            std::vector<ChoiceLook> looks;
            for (const std::string& name : page.classes) {
                ids.push_back("class." + name);
                looks.push_back({.label = name, .selected = name == page.name});
            }
            const int pressed = draw_choice_cells(kit, ids, looks, 3);
            if (pressed >= 0) scene.ask(ChooseClass{page.classes[static_cast<std::size_t>(pressed)]});
            kit.gap(10);
        }
        draw_told_at(scene, "class");
        return true;
    }
    kit.text("Make your class", Type::h1, Role::ink);
    kit.gap(4);
    kit.text(
        "On the instructor's PC only. The passphrase opens the answer keys and signs what you give out. It "
        "cannot be found again: write it down and lock it away.",
        Type::body, Role::ink2);
    kit.gap(12);
    bool entered =
        draw_text(scene, view.name, {"class.name", "Name of the class", "", "Harbour Street, evenings"});
    entered |=
        draw_text(scene, view.passphrase,
                  {"class.passphrase", "Passphrase", "At least 12 letters; some words are best.", "", true});
    entered |= draw_text(scene, view.again, {"class.again", "The same passphrase again", "", "", true});
    const bool whole = !view.name.empty() && !view.passphrase.empty() && !view.again.empty();
    if (draw_primary(scene, "class.make", "Make the class", whole) || (entered && whole))
        scene.ask(MakeClass{view.name, view.passphrase, view.again});
    draw_told_at(scene, "class");
    return false;
}

bool draw_keys_first(ClassScene& scene) {
    Kit& kit = scene.kit;
    ClassView& view = scene.view();
    if (scene.page().keys_open) return true;
    kit.card({.edge = Role::safety}, [&] {
        kit.text("Give the passphrase of the class", Type::h2, Role::ink);
        kit.text("It is asked for once; closing the program forgets it.", Type::small, Role::ink2);
        kit.gap(8);
        const bool entered =
            draw_text(scene, view.passphrase, {"keys.passphrase", "Passphrase", "", "", true});
        const bool there = !view.passphrase.empty();
        if (draw_primary(scene, "keys.open", "Open", there) || (entered && there))
            scene.ask(OpenKeys{view.passphrase});
        draw_told_at(scene, "keys");
    });
    kit.gap(14);
    return false;
}

}  // namespace hardover::window
