// Where a boat that the class works together is begun, or gone on with.
#include "app/window/screens/choices.hpp"
#include "app/window/screens/class/class_parts.hpp"
#include "app/window/screens/parts.hpp"
#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

namespace {

void ask(ClassScene& scene, ProjectAction what) {
    scene.action = Action{std::move(what)};
}

}  // namespace

void draw_together(ClassScene& scene) {
    Kit& kit = scene.kit;
    const ProjectPage& page = scene.state.project.page();
    draw_trouble(kit, page.trouble);
    kit.text("A boat for everybody", Type::h1, Role::ink);
    kit.gap(4);
    kit.text(
        "One boat with a hidden fault, shown large for the whole room. The class raises its hands for what "
        "to do next, you count them, and the most hands decide.",
        Type::body, Role::ink2);
    kit.gap(14);
    if (!page.unfinished.empty()) {
        const ButtonLook go_on{
            .label = "Go on with it", .icon = Icon::boat, .face = Face::primary, .key = "G"};
        kit.card({.edge = Role::accent}, [&] {
            kit.text(page.unfinished, Type::h2, Role::ink);
            kit.text("Not finished. It is kept as it was left.", Type::small, Role::ink2);
            kit.gap(8);
            if (draw_small_button(kit, "together.go_on", go_on) || take_command(kit, 'g'))
                ask(scene, GoOnClassBoat{});
        });
        kit.gap(14);
    }
    kit.text("Begin a boat", Type::h2, Role::ink);
    kit.gap(6);
    for (const study::practice::LevelText& level : page.levels) {
        RowLook look;
        look.title = level.name;
        look.note = level.about;
        look.cap = std::to_string(level.level);
        const bool by_key = !kit.typing() && kit.take_letter(static_cast<char32_t>('0' + level.level));
        if (draw_study_row(kit, "together.level." + std::to_string(level.level), look) || by_key)
            ask(scene, BeginClassBoat{level.level, scene.view().seed});
    }
    kit.gap(8);
    kit.text("Number of the boat", Type::small, Role::ink);
    kit.gap(4);
    const Box line = kit.take(kit.px(52));
    kit.field("together.seed", {line.x, line.y, std::min(line.w, kit.px(320)), line.h}, scene.view().seed,
              {.name = "Number of the boat", .placeholder = "Any"});
    kit.gap(4);
    kit.text("The same number and level make the same boat again.", Type::small, Role::ink2);
}

}  // namespace hardover::window
