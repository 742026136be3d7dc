// Faults that can be put in, what is known at a part, and the choices of the rig.
#include <algorithm>
#include <sstream>

#include "app/window/pages.hpp"
#include "app/window/screens/boat/boat_parts.hpp"
#include "app/window/screens/choices.hpp"

namespace hardover::window {

namespace {

// The lists of a drawing's parts, of those it has in any view once.
std::vector<drawing::Part> all_parts(const BoatPage& page) {
    std::vector<drawing::Part> parts;
    if (!page.sketch) return parts;
    for (const drawing::Drawing* view : {&page.sketch->above, &page.sketch->behind, &page.sketch->side}) {
        for (const drawing::Part& part : view->parts) {
            const bool there = std::any_of(parts.begin(), parts.end(),
                                           [&](const drawing::Part& other) { return other.id == part.id; });
            if (!there) parts.push_back(part);
        }
    }
    return parts;
}

// A line that opens something, as high as its text needs.
bool draw_link(Kit& kit, const std::string& id, const std::string& text, bool selected = false) {
    const ChoiceLook look{.label = text, .selected = selected, .quiet = true};
    const bool pressed = kit.choice(id, kit.take(kit.choice_height(look, kit.width())), look);
    kit.gap(8);
    return pressed;
}

void draw_entries(BoatScene& scene, const char* title, const char* kind,
                  const std::vector<PlaceEntry>& entries) {
    Kit& kit = scene.kit;
    if (entries.empty()) return;
    kit.gap(6);
    kit.text(title, Type::strong, Role::ink);
    kit.gap(6);
    for (const PlaceEntry& entry : entries) {
        if (draw_link(kit, std::string("boat.") + kind + "." + entry.id, entry.name))
            scene.action = Action{KnowledgeAction{ShowKnowledge{{kind, entry.id}}}};
    }
}

}  // namespace

void draw_boat_faults(BoatScene& scene) {
    Kit& kit = scene.kit;
    kit.text("Put a fault in", Type::h2, Role::ink);
    kit.gap(8);
    kit.field("boat.filter", kit.take(kit.px(52)), scene.view.filter,
              {.name = "Search the faults", .placeholder = "Search", .icon = Icon::search});
    kit.gap(10);
    std::string part;
    int shown = 0;
    for (const PossibleFault& fault : scene.desk.possible()) {
        if (!matches(LookUpRow{fault.id, fault.name, fault.part, ""}, scene.view.filter)) continue;
        if (fault.part != part) {
            kit.gap(4);
            kit.text(fault.part, Type::strong, Role::ink2);
            kit.gap(6);
            part = fault.part;
        }
        const auto& in = scene.desk.faults();
        const bool is_in =
            std::any_of(in.begin(), in.end(), [&](const FaultIn& other) { return other.cause == fault.id; });
        if (draw_link(kit, "boat.put." + fault.id, fault.name, is_in)) {
            if (is_in) {
                scene.act(TakeFaultOut{fault.id});
            } else {
                scene.act(PutFaultIn{fault.id});
            }
        }
        ++shown;
    }
    if (shown == 0) kit.text("No fault of this rig has these words.", Type::body, Role::ink2);
}

void draw_boat_place(BoatScene& scene) {
    Kit& kit = scene.kit;
    const PartPlace& place = scene.desk.place();
    if (place.part.empty()) {
        kit.text("Press on a part of the drawing, or choose one here.", Type::body, Role::ink2);
        kit.gap(10);
        for (const drawing::Part& part : all_parts(scene.page()))
            if (draw_link(kit, "boat.part." + part.id, part.words)) scene.act(LookAtPart{part.id});
        return;
    }
    const ButtonLook back{.label = "All parts", .icon = Icon::back, .face = Face::quiet, .spread = true};
    if (kit.button("boat.part.none", kit.take(kit.px(44)), back)) scene.act(LookAtPart{});
    kit.gap(8);
    kit.text(place.place, Type::h2, Role::ink);
    kit.gap(4);
    kit.text(place.words, Type::body, Role::ink2);
    draw_entries(scene, "What can be found here", "finding", place.findings);
    draw_entries(scene, "What can be wrong here", "cause", place.causes);
}

void draw_boat_rig(BoatScene& scene) {
    Kit& kit = scene.kit;
    kit.text("The rig", Type::h2, Role::ink);
    kit.gap(4);
    kit.text(scene.page().rig, Type::body, Role::ink2);
    kit.gap(10);
    if (scene.desk.of_job()) {
        kit.text("This is the boat of the job in hand. Its rig is told there.", Type::body, Role::ink);
        kit.gap(10);
        if (draw_link(kit, "boat.to_job", "Go to the job")) scene.action = Action{GoTo{Place::job}};
        return;
    }
    for (const RigChoice& choice : scene.desk.choices()) {
        kit.text(choice.name, Type::strong, Role::ink);
        kit.gap(6);
        std::vector<std::string> ids;
        std::vector<ChoiceLook> looks;
        for (const RigChoice::Way& way : choice.ways) {
            ids.push_back("boat.rig." + choice.field + "." + way.id);
            looks.push_back({.label = way.text, .selected = way.chosen});
        }
        const int pressed = draw_choice_cells(kit, ids, looks, 2);
        if (pressed >= 0)
            scene.act(ChooseRig{choice.field, choice.ways[static_cast<std::size_t>(pressed)].id});
        kit.gap(12);
    }
}

}  // namespace hardover::window
