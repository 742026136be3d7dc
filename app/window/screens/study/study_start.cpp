// Who learns, and what to learn with.
#include "app/window/screens/choices.hpp"
#include "app/window/screens/parts.hpp"
#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

namespace {

constexpr float side_by_side_from = 820;  // dp

void draw_learners(StudyScene& scene) {
    Kit& kit = scene.kit;
    const bool nobody = scene.page.learner.empty();
    kit.card({.pad = 20, .edge = Role::accent}, [&] {
        kit.text("WHO LEARNS", Type::caps, Role::accent);
        kit.gap(4);
        kit.text(nobody ? "Nobody is chosen" : scene.page.learner, Type::h1, Role::ink);
        kit.gap(4);
        kit.text(nobody ? "You may try everything, and nothing is kept." : scene.page.due, Type::body,
                 Role::ink2);
        kit.gap(10);
        kit.tab_starts_here();
        std::vector<std::string> ids;
        std::vector<ChoiceLook> looks;
        for (const LearnerLine& learner : scene.page.learners) {
            ids.push_back("learner." + std::to_string(learner.number));
            looks.push_back({.label = learner.name, .selected = learner.chosen});
        }
        if (!scene.page.learners.empty()) {
            ids.push_back("learner.nobody");
            looks.push_back({.label = "Nobody", .selected = nobody, .quiet = true});
        }
        const int pressed = looks.empty() ? -1 : draw_choice_cells(kit, ids, looks, 3);
        if (pressed >= 0) {
            const auto at = static_cast<std::size_t>(pressed);
            const bool one = at < scene.page.learners.size();
            scene.ask(ChooseLearner{one ? scene.page.learners[at].number : 0});
        }
        kit.gap(14);
        kit.text("Add a learner", Type::small, Role::ink);
        kit.gap(4);
        const FieldEvent typed =
            kit.field("learner.name", kit.take(kit.px(52)), scene.view.name,
                      {.name = "Add a learner", .placeholder = "A name, or a seat such as A07"});
        kit.gap(8);
        const bool added = draw_small_button(kit, "learner.add", {.label = "Add", .icon = Icon::plus});
        if (added || (typed.entered && !scene.view.name.empty())) {
            scene.ask(AddLearner{scene.view.name});
        }
    });
    kit.gap(16);
}

void draw_quiz_card(StudyScene& scene) {
    Kit& kit = scene.kit;
    kit.card({.pad = 20}, [&] {
        kit.text("QUIZ", Type::caps, Role::accent);
        kit.gap(4);
        kit.text("Ten questions from the knowledge", Type::h2, Role::ink);
        kit.gap(4);
        kit.text("What is about to be forgotten comes first, then what is new.", Type::body, Role::ink2);
        kit.gap(10);
        const bool open = scene.view.is_open("topics");
        std::string about = "About everything";
        for (const study::Topic& topic : scene.page.topics) {
            if (topic.id == scene.view.topic) about = "About: " + topic.name;
        }
        if (kit.fold("quiz.topics", about, open)) scene.view.fold("topics");
        if (open) {
            std::vector<std::string> ids{"topic.all"};
            std::vector<ChoiceLook> looks{{.label = "Everything", .selected = scene.view.topic.empty()}};
            for (const study::Topic& topic : scene.page.topics) {
                ids.push_back("topic." + topic.id);
                looks.push_back({.label = topic.name, .selected = topic.id == scene.view.topic});
            }
            const int pressed = draw_choice_cells(kit, ids, looks, 3);
            if (pressed >= 0) {
                const auto at = static_cast<std::size_t>(pressed);
                scene.view.topic = at == 0 ? "" : scene.page.topics[at - 1].id;
                scene.view.fold("topics");
            }
        }
        kit.gap(8);
        const ButtonLook start{.label = "Start a quiz", .face = Face::primary, .key = "Q"};
        if (kit.button("quiz.start", kit.take(kit.px(56)), start) || take_command(kit, 'q')) {
            scene.ask(StartQuiz{scene.view.topic});
        }
        if (!scene.page.quiz || !scene.page.quiz->closing.empty()) return;
        kit.gap(8);
        if (draw_small_button(kit, "quiz.go_on",
                              {.label = "Go on with question " + scene.page.quiz->progress})) {
            scene.ask(ShowStudy{StudyShowing::quiz});
        }
    });
    kit.gap(16);
}

void draw_levels(StudyScene& scene) {
    Kit& kit = scene.kit;
    const bool open = scene.view.is_open("levels");
    if (kit.fold("boat.levels", "Choose the level or the number of the boat", open))
        scene.view.fold("levels");
    if (!open) return;
    kit.text("Number of the boat", Type::small, Role::ink);
    kit.gap(4);
    kit.field(
        "boat.seed", kit.take(kit.px(52)), scene.view.seed,
        {.name = "Number of the boat", .placeholder = "Empty: any. The same number gives the same boat"});
    kit.gap(12);
    for (const practice::LevelText& level : scene.page.start.levels) {
        if (draw_study_row(kit, "level." + std::to_string(level.level),
                           {level.name, level.about, "", "", "", false})) {
            scene.ask(BeginBoat{level.level, scene.view.seed});
        }
    }
}

void draw_practice_card(StudyScene& scene) {
    Kit& kit = scene.kit;
    const std::string open = unfinished_boat(scene.page);
    kit.card({.pad = 20}, [&] {
        kit.text("PRACTICE BOAT", Type::caps, Role::accent);
        kit.gap(4);
        kit.text("A boat comes back. Find out why", Type::h2, Role::ink);
        kit.gap(4);
        kit.text("Next for you: " + scene.page.start.next + " " + scene.page.start.why, Type::body,
                 Role::ink2);
        kit.gap(10);
        if (!open.empty()) {
            const ButtonLook look{.label = "Go on with it", .face = Face::primary, .key = "G"};
            kit.text(open + " is not finished.", Type::body, Role::ink);
            kit.gap(6);
            if (kit.button("boat.go_on", kit.take(kit.px(56)), look) || take_command(kit, 'g')) {
                scene.ask(GoOnWithBoat{});
            }
            kit.gap(8);
        }
        const ButtonLook next{.label = open.empty() ? "The next boat" : "Another boat",
                              .face = open.empty() ? Face::primary : Face::plain,
                              .key = "B"};
        if (kit.button("boat.next", kit.take(kit.px(56)), next) || take_command(kit, 'b')) {
            scene.ask(BeginBoat{std::nullopt, scene.view.seed});
        }
        kit.gap(8);
        draw_levels(scene);
        if (scene.page.debrief && draw_small_button(kit, "boat.debrief", {.label = "The last debrief"})) {
            scene.ask(ShowStudy{StudyShowing::practice});
        }
    });
    kit.gap(16);
}

void draw_progress_card(StudyScene& scene) {
    Kit& kit = scene.kit;
    kit.card({.pad = 20}, [&] {
        kit.text("HOW I AM DOING", Type::caps, Role::accent);
        kit.gap(4);
        kit.text(
            "What has been met, what is remembered, what comes back when, and whether you are as right "
            "as you are sure.",
            Type::body, Role::ink2);
        kit.gap(10);
        const bool can = !scene.page.learner.empty();
        const ButtonLook look{.label = "Show me", .key = "H", .enabled = can};
        if (kit.button("progress.show", kit.take(kit.px(56)), look) || (can && take_command(kit, 'h'))) {
            scene.ask(ShowStudy{StudyShowing::progress});
        }
        if (can) return;
        kit.gap(4);
        kit.text("Choose a learner first.", Type::small, Role::ink2);
    });
}

}  // namespace

namespace {

// A set of the class in hand: the task that comes next.
void draw_set_in_hand(StudyScene& scene) {
    Kit& kit = scene.kit;
    const SetInHand& set = *scene.page.set;
    kit.card({.pad = 20, .edge = Role::accent}, [&] {
        kit.text(set.heading, Type::h2, Role::ink);
        kit.gap(4);
        kit.text(set.next, Type::body, Role::ink);
        kit.gap(10);
        if (!set.at_end) {
            const ButtonLook go{.label = "Go on", .face = Face::primary, .key = "Enter"};
            const bool by_key = !kit.typing() && kit.take(Key::enter);
            if (draw_small_button(kit, "set.go_on", go) || by_key) scene.ask(TakeTask{});
            kit.gap(8);
        }
        const ButtonLook away{.label = "Put the set away", .face = set.at_end ? Face::primary : Face::quiet};
        if (draw_small_button(kit, "set.away", away)) scene.ask(PutSetAway{});
        kit.gap(4);
        kit.text("What was answered is kept.", Type::small, Role::ink2);
    });
    kit.gap(16);
}

}  // namespace

std::string unfinished_boat(const StudyPage& page) {
    return page.boat && !page.debrief ? page.boat->title : page.start.unfinished;
}

void draw_study_start(StudyScene& scene) {
    Kit& kit = scene.kit;
    draw_notice(kit, scene.page.notice);
    draw_trouble(kit, scene.page.trouble);
    if (scene.page.set) {
        draw_set_in_hand(scene);
        return;
    }
    const auto left = [&] {
        draw_learners(scene);
        draw_progress_card(scene);
    };
    const auto right = [&] {
        draw_quiz_card(scene);
        draw_practice_card(scene);
    };
    if (kit.width() >= kit.px(side_by_side_from)) {
        draw_columns(kit, 0.42F, left, right);
        return;
    }
    draw_learners(scene);
    right();
    draw_progress_card(scene);
}

}  // namespace hardover::window
