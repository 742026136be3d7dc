// Hand-ins: taken in from a file or a folder, each with what is new in it or why it was refused.
#include "app/window/screens/class/class_parts.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

void draw_lines(Kit& kit, const std::vector<std::string>& lines, Type type, Role role) {
    for (const std::string& line : lines) {
        kit.gap(4);
        kit.text(line, type, role);
    }
}

// What was refused first, each by itself; what came in, as one list.
void draw_collected(Kit& kit, const std::vector<CollectedLine>& all) {
    std::vector<std::string> taken;
    for (const CollectedLine& line : all) {
        if (!line.refused) {
            taken.push_back(line.text);
            continue;
        }
        kit.card({.fill = Role::wrong_tint, .line = Role::wrong, .pad = 12, .edge = Role::wrong},
                 [&] { kit.text(line.text, Type::body, Role::ink); });
        kit.gap(6);
    }
    if (taken.empty()) return;
    kit.card({.pad = 14, .edge = Role::right}, [&] {
        kit.text("Taken in", Type::strong, Role::right);
        draw_lines(kit, taken, Type::body, Role::ink);
    });
    kit.gap(6);
}

void draw_protection(ClassScene& scene) {
    Kit& kit = scene.kit;
    std::set<std::string>& open = scene.view().open;
    const bool shown = open.contains("protection");
    if (kit.fold("protection", "What the signatures protect against", shown)) {
        if (shown) {
            open.erase("protection");
        } else {
            open.insert("protection");
        }
    }
    if (!shown) return;
    kit.text("They do", Type::strong, Role::ink);
    draw_lines(kit, classroom::protection().does, Type::body, Role::ink);
    kit.gap(8);
    kit.text("They do not", Type::strong, Role::ink);
    draw_lines(kit, classroom::protection().does_not, Type::body, Role::ink);
}

}  // namespace

void draw_collect(ClassScene& scene) {
    if (!draw_class_first(scene) || !draw_keys_first(scene)) return;
    Kit& kit = scene.kit;
    const ClassPage& page = scene.page();
    ClassView& view = scene.view();
    kit.card({}, [&] {
        kit.text("Collect hand-ins", Type::h2, Role::ink);
        kit.gap(6);
        const bool entered =
            draw_text(scene, view.hand_in_path,
                      {"hand_in.path", "A file, or the folder they lie in",
                       "The same file twice does no harm. A file let fall on the window comes in here too.",
                       "/media/stick"});
        const bool there = !view.hand_in_path.empty();
        if (draw_primary(scene, "hand_in.collect", "Take in", there) || (entered && there))
            scene.ask(CollectHandIns{view.hand_in_path});
        draw_told_at(scene, "collect");
    });
    kit.gap(12);
    draw_collected(kit, page.collected);
    if (!page.missing.empty()) {
        kit.gap(8);
        kit.text("Not handed in yet", Type::h2, Role::ink);
        draw_lines(kit, page.missing, Type::body, Role::ink);
        kit.gap(10);
    }
    kit.gap(8);
    if (draw_small_button(kit, "hand_in.check", {.label = "Look over all that was collected"}))
        scene.ask(CheckCollected{});
    draw_told_at(scene, "check");
    draw_lines(kit, page.checked, Type::body, Role::wrong);
    kit.gap(8);
    draw_protection(scene);
}

}  // namespace hardover::window
