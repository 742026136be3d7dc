// A practice boat being worked on: what came of the last step, the work that is about to be done, and the
// ways on.
#include "app/window/screens/choices.hpp"
#include "app/window/screens/parts.hpp"
#include "app/window/screens/study/study_lists.hpp"

namespace hardover::window {

namespace {

// Of the last step, and help asked for.
void draw_told(StudyScene& scene) {
    Kit& kit = scene.kit;
    if (!scene.page.told.empty()) {
        kit.card({.pad = 16, .edge = Role::right}, [&] {
            kit.text("WHAT CAME OF IT", Type::caps, Role::ink2);
            for (const std::string& line : scene.page.told) {
                kit.gap(4);
                kit.text(line, Type::body, Role::ink);
            }
        });
        kit.gap(12);
    }
    if (scene.page.hint.empty()) return;
    kit.card({.pad = 16, .edge = Role::accent}, [&] {
        kit.text("HELP", Type::caps, Role::accent);
        for (const std::string& line : scene.page.hint) {
            kit.gap(4);
            kit.text(line, Type::body, Role::ink);
        }
    });
    kit.gap(12);
}

// Help that stands there unasked: the expert's step with its reason, or a nudge.
void draw_guidance(StudyScene& scene) {
    Kit& kit = scene.kit;
    const practice::Page& boat = *scene.page.boat;
    if (!boat.led && boat.help.empty()) return;
    kit.card({.pad = 18, .edge = Role::accent}, [&] {
        kit.text(boat.led ? "THE EXPERT'S STEP" : "A HINT", Type::caps, Role::accent);
        for (const std::string& line : boat.help) {
            kit.gap(4);
            kit.text(line, Type::body, Role::ink);
        }
        if (!boat.led) return;
        kit.gap(4);
        kit.text(boat.led->heading, Type::h2, Role::ink);
        kit.text(boat.led->eyebrow, Type::small, Role::ink2);
        kit.gap(6);
        if (!boat.led->why.empty()) kit.text(boat.led->why, Type::body, Role::ink);
        if (!boat.led->what_then.empty()) {
            kit.gap(4);
            kit.text(boat.led->what_then, Type::small, Role::ink2);
        }
        kit.gap(10);
        const ButtonLook look{.label = "Do it", .face = Face::primary, .key = "Enter"};
        if (kit.button("led.do", kit.take(kit.px(56)), look) || kit.take(Key::enter)) {
            scene.ask(TakeUpWork{boat.led->event});
        }
    });
    kit.gap(14);
}

// The boat is right: what belongs before it goes back.
void draw_hand_over(StudyScene& scene) {
    Kit& kit = scene.kit;
    kit.card({.pad = 20, .edge = Role::right}, [&] {
        kit.text("THE BOAT IS RIGHT", Type::caps, Role::right);
        kit.gap(4);
        kit.text("Before it goes back", Type::h1, Role::ink);
        kit.gap(8);
        draw_numbered(kit, scene.page.boat->after);
        kit.gap(6);
        const ButtonLook checked{.label = "Checked: hand it over", .face = Face::primary, .key = "Enter"};
        if (kit.button("hand.checked", kit.take(kit.px(56)), checked) || kit.take(Key::enter)) {
            scene.ask(Tell{practice::HandedOver{true}});
        }
        kit.gap(8);
        if (kit.button("hand.unchecked", kit.take(kit.px(48)), {.label = "Hand it over without"})) {
            scene.ask(Tell{practice::HandedOver{false}});
        }
    });
    kit.gap(14);
}

void draw_caution_in_full(Kit& kit, const CautionText& caution) {
    kit.card({.fill = Role::safety_tint, .line = Role::safety, .pad = 14, .edge = Role::safety}, [&] {
        kit.text(caution.name, Type::strong, Role::ink);
        kit.gap(2);
        kit.text(caution.hurts, Type::small, Role::ink);
        kit.gap(4);
        kit.text(caution.avoid, Type::body, Role::ink);
    });
    kit.gap(8);
}

void use_caution(StudyScene& scene, const practice::CautionQuestion& question, bool skipped) {
    MindCautions mind{{}, skipped};
    for (const ChoiceText& option : question.options) {
        const bool ticked = scene.view.ticked.contains(option.id);
        if (!skipped && (question.pick ? ticked : option.chosen)) mind.named.push_back(option.id);
    }
    scene.view.ticked.clear();
    scene.ask(std::move(mind));
}

// Which cautions belong here, or the cautions themselves, before the work.
void draw_caution_question(StudyScene& scene, const practice::CautionQuestion& question) {
    Kit& kit = scene.kit;
    StudyView& view = scene.view;
    if (view.caution_of != question.work) {
        view.caution_of = question.work;
        view.ticked.clear();
    }
    const Box title = kit.take(0);
    kit.icon({title.x, title.y + kit.px(2), kit.px(28), kit.px(28)}, Icon::caution, Role::ink);
    kit.take(kit.inside({title.x + kit.px(40), title.y, title.w - kit.px(40), 0},
                        [&] { kit.text(question.ask, Type::h2, Role::ink); }));
    kit.gap(10);
    if (question.pick) {
        std::vector<std::string> ids, caps;
        std::vector<ChoiceLook> looks;
        for (std::size_t i = 0; i < question.options.size(); ++i)
            caps.push_back(i < 9 ? std::to_string(i + 1) : "");
        int pressed = -1;
        for (std::size_t i = 0; i < question.options.size(); ++i) {
            const ChoiceText& option = question.options[i];
            ids.push_back("caution." + option.id);
            looks.push_back(
                {.label = option.text, .cap = caps[i], .selected = view.ticked.contains(option.id)});
            if (!caps[i].empty() && kit.take_letter(U'1' + static_cast<char32_t>(i)))
                pressed = static_cast<int>(i);
        }
        kit.tab_starts_here();
        const int clicked = draw_choice_cells(kit, ids, looks, 2);
        if (clicked >= 0) pressed = clicked;
        if (pressed >= 0) {
            const std::string& id = question.options[static_cast<std::size_t>(pressed)].id;
            if (view.ticked.erase(id) == 0) view.ticked.insert(id);
        }
    } else {
        for (const CautionText& caution : question.cautions) draw_caution_in_full(kit, caution);
    }
    kit.gap(10);
    const bool none_ticked = question.pick && view.ticked.empty();
    const ButtonLook done{.label = question.pick ? "These belong here" : "I have done so",
                          .face = Face::primary,
                          .key = "Enter",
                          .enabled = !none_ticked};
    const bool entered = !none_ticked && kit.take(Key::enter);
    if (kit.button("caution.done", kit.take(kit.px(56)), done) || entered)
        use_caution(scene, question, false);
    kit.gap(8);
    if (kit.button("caution.skip", kit.take(kit.px(48)), {.label = "Go on without"})) {
        use_caution(scene, question, true);
    }
}

// The work that is about to be done: first its cautions, then how it goes.
void draw_work(StudyScene& scene, const WorkInHand& work) {
    Kit& kit = scene.kit;
    const practice::WorkCard& card = work.card;
    kit.card({.pad = 20, .edge = work.questions.empty() ? Role::accent : Role::safety}, [&] {
        kit.text("ABOUT TO BE DONE · " + card.minutes, Type::caps, Role::accent);
        kit.gap(4);
        kit.text(card.heading, Type::h1, Role::ink);
        kit.gap(10);
        if (!work.questions.empty()) {
            draw_caution_question(scene, work.questions.front());
        } else {
            draw_numbered(kit, card.steps);
            draw_list_of(kit, "TOOLS", card.tools);
            draw_list_of(kit, "PARTS", card.parts);
            draw_list_of(kit, "FIGURES", card.figures);
            if (!card.source.empty()) {
                kit.gap(8);
                kit.text(card.source, Type::small, Role::ink2);
            }
            kit.gap(12);
            kit.tab_starts_here();
            const ButtonLook done{.label = "Do it, and try the boat", .face = Face::primary, .key = "Enter"};
            if (kit.button("work.do", kit.take(kit.px(56)), done) || kit.take(Key::enter))
                scene.ask(DoWork{});
        }
        kit.gap(8);
        const ButtonLook drop{.label = "Leave it", .icon = Icon::back, .key = "Esc"};
        if (draw_small_button(kit, "work.drop", drop) || kit.take(Key::escape)) scene.ask(DropWork{});
    });
    kit.gap(14);
}

// Handed over, but the marking was stopped.
void draw_not_marked(StudyScene& scene) {
    Kit& kit = scene.kit;
    kit.card({.pad = 20, .edge = Role::accent}, [&] {
        kit.text("This boat is handed over and not marked yet.", Type::h2, Role::ink);
        kit.gap(12);
        kit.tab_starts_here();
        const ButtonLook mark{.label = "Mark it", .face = Face::primary, .key = "Enter"};
        if (kit.button("boat.mark", kit.take(kit.px(56)), mark) || kit.take(Key::enter))
            scene.ask(GoOnWithBoat{});
    });
}

struct TabText {
    PracticeTab tab;
    const char* id;
    const char* label;
    char key;
};
constexpr TabText tabs[] = {{PracticeTab::look, "tab.look", "Look", 'l'},
                            {PracticeTab::suspect, "tab.suspect", "Suspect", 'w'},
                            {PracticeTab::remedy, "tab.remedy", "Put right", 'r'},
                            {PracticeTab::sheets, "tab.sheets", "Sheets", 'm'},
                            {PracticeTab::help, "tab.help", "Help", 'h'}};

void draw_ways_on(StudyScene& scene) {
    Kit& kit = scene.kit;
    std::vector<std::string> ids, caps;
    std::vector<ChoiceLook> looks;
    for (const TabText& tab : tabs) caps.push_back(std::string(1, static_cast<char>(tab.key - 'a' + 'A')));
    int pressed = -1;
    for (std::size_t i = 0; i < std::size(tabs); ++i) {
        ids.push_back(tabs[i].id);
        looks.push_back({.label = tabs[i].label, .cap = caps[i], .selected = scene.view.tab == tabs[i].tab});
        if (take_command(kit, tabs[i].key)) pressed = static_cast<int>(i);
    }
    const int clicked = draw_choice_cells(kit, ids, looks, 5);
    if (clicked >= 0) pressed = clicked;
    if (pressed >= 0) {
        scene.view.tab = tabs[pressed].tab;
        scene.view.filter.clear();
    }
    kit.gap(12);
    switch (scene.view.tab) {
        case PracticeTab::look:
            draw_findings(scene);
            break;
        case PracticeTab::suspect:
            draw_causes(scene);
            break;
        case PracticeTab::remedy:
            draw_remedies(scene);
            break;
        case PracticeTab::sheets:
            draw_practice_sheets(scene);
            break;
        case PracticeTab::help:
            draw_help(scene);
            break;
    }
}

}  // namespace

void draw_practice(StudyScene& scene) {
    if (!scene.page.boat) return;
    draw_trouble(scene.kit, scene.page.trouble);
    draw_told(scene);
    if (scene.page.work) {
        draw_work(scene, *scene.page.work);
        return;
    }
    if (scene.page.done) {
        draw_not_marked(scene);
        return;
    }
    if (scene.page.right) {
        draw_hand_over(scene);
        return;
    }
    draw_guidance(scene);
    draw_ways_on(scene);
}

}  // namespace hardover::window
