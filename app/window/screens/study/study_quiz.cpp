// One item of a quiz: what is given, the question, the choices; after the answer what was right and why.
#include <algorithm>
#include <numeric>

#include "app/window/paint_drawing.hpp"
#include "app/window/screens/choices.hpp"
#include "app/window/screens/parts.hpp"
#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

Icon verdict_icon(const study::QuizPage& quiz) {
    if (quiz.feedback && quiz.feedback->partly) return Icon::half;
    return quiz.right ? Icon::tick : Icon::cross;
}

namespace {

constexpr float finger = 16;  // dp around a part that still count as on it

using study::QuizOption;
using study::QuizPage;
using study::Way;

std::string letter_of(std::size_t option) {
    return std::string(1, static_cast<char>('A' + option));
}

// A new item starts with nothing said.
void follow_item(StudyView& view, const QuizPage& quiz) {
    const std::string item = quiz.progress + quiz.question;
    if (view.item == item) return;
    view.item = item;
    view.chosen.clear();
    view.held.reset();
    view.figure.clear();
    view.sure.reset();
    if (quiz.way != Way::order) return;
    view.chosen.resize(quiz.options.size());
    std::iota(view.chosen.begin(), view.chosen.end(), std::size_t{0});
}

void choose(StudyView& view, const QuizPage& quiz, std::size_t option) {
    const auto there = std::find(view.chosen.begin(), view.chosen.end(), option);
    if (there != view.chosen.end()) {
        view.chosen.erase(there);
        return;
    }
    if (quiz.way == Way::single) view.chosen.clear();
    view.chosen.push_back(option);
}

// What the marks take for an answer.
std::string typed_answer(const StudyView& view, const QuizPage& quiz) {
    if (quiz.way == Way::figure) return view.figure;
    std::vector<std::size_t> chosen = view.chosen;
    if (quiz.way != Way::order) std::sort(chosen.begin(), chosen.end());
    std::string typed;
    for (const std::size_t option : chosen) {
        typed += (typed.empty() ? "" : " ") + std::string(1, static_cast<char>('a' + option));
    }
    return typed;
}

// The drawing, with the place chosen or the right one lit.
Box draw_drawing(StudyScene& scene, const QuizPage& quiz, const std::string& lit) {
    Kit& kit = scene.kit;
    // Whole between the question and the answer bar, so that nobody has to scroll to see what to press.
    const float tallest = std::max(kit.px(280), kit.screen().h * 0.4F);
    const Box sheet = kit.take(std::clamp(kit.width() * 0.6F, kit.px(240), tallest));
    kit.fill(sheet, Role::raised, 8);
    kit.outline(sheet, Role::outline, 1.5F, 8);
    paint_drawing(kit, sheet.inset(kit.px(8)), *quiz.drawing, lit);
    return sheet;
}

void choose_part(StudyView& view, const QuizPage& quiz, const std::string& part) {
    for (std::size_t i = 0; i < quiz.options.size(); ++i) {
        if (!part.empty() && quiz.options[i].drawn == part) view.chosen = {i};
    }
}

// A letter for each part.
void draw_letters(StudyScene& scene, const QuizPage& quiz) {
    Kit& kit = scene.kit;
    StudyView& view = scene.view;
    const float side = kit.px(48), gap = kit.px(8);
    const auto across =
        std::max<std::size_t>(1, static_cast<std::size_t>((kit.width() + gap) / (side + gap)));
    Box line;
    for (std::size_t i = 0; i < quiz.options.size(); ++i) {
        if (i % across == 0) line = kit.take(side + gap);
        const std::string letter = letter_of(i);
        const bool chosen = !view.chosen.empty() && view.chosen.front() == i;
        const Box box{line.x + static_cast<float>(i % across) * (side + gap), line.y, side, side};
        const bool pressed = kit.button("part." + letter, box, {.label = letter, .selected = chosen});
        if (pressed || take_command(kit, letter.front())) view.chosen = {i};
    }
}

// A press on a part chooses it; the arrows step through the parts, and the one chosen is lit.
void draw_places(StudyScene& scene, const QuizPage& quiz) {
    Kit& kit = scene.kit;
    StudyView& view = scene.view;
    draw_letters(scene, quiz);
    const std::string lit = view.chosen.empty() ? "" : quiz.options[view.chosen.front()].drawn;
    const Box sheet = draw_drawing(scene, quiz, lit);
    const Kit::Grip grip = kit.grip("drawing", sheet, quiz.drawing->title);
    if (grip.focused) kit.focus_ring(sheet, 8);
    if (grip.started && grip.over) {
        const drawing::Placement placement = placement_in(kit, sheet.inset(kit.px(8)), *quiz.drawing);
        const drawing::Point at{(grip.x - placement.origin.x) / placement.scale,
                                (placement.origin.y - grip.y) / placement.scale};
        choose_part(view, quiz, drawing::part_at(*quiz.drawing, at, kit.px(finger) / placement.scale));
    }
    const auto count = static_cast<int>(quiz.options.size());
    if (grip.steps != 0 && count > 0) {
        const int from =
            view.chosen.empty() ? (grip.steps > 0 ? -1 : 0) : static_cast<int>(view.chosen.front());
        view.chosen = {static_cast<std::size_t>((from + grip.steps + count) % count)};
    }
}

void answer(StudyScene& scene, const std::string& typed) {
    scene.ask(AnswerItem{typed, scene.view.sure});
}

void draw_choices_of(StudyScene& scene, const QuizPage& quiz) {
    std::vector<std::string> ids, caps;
    for (std::size_t i = 0; i < quiz.options.size(); ++i) {
        ids.push_back("option." + std::to_string(i + 1));
        caps.push_back(letter_of(i));
    }
    std::vector<ChoiceLook> looks;
    int pressed = -1;
    for (std::size_t i = 0; i < quiz.options.size(); ++i) {
        const bool chosen =
            std::find(scene.view.chosen.begin(), scene.view.chosen.end(), i) != scene.view.chosen.end();
        looks.push_back({.label = quiz.options[i].text, .cap = caps[i], .selected = chosen});
        const bool digit = scene.kit.take_letter(U'1' + static_cast<char32_t>(i));
        if (digit || take_command(scene.kit, caps[i].front())) pressed = static_cast<int>(i);
    }
    const int clicked = draw_choice_cells(scene.kit, ids, looks, 2);
    if (clicked >= 0) pressed = clicked;
    if (pressed >= 0) choose(scene.view, quiz, static_cast<std::size_t>(pressed));
}

void move(StudyView& view, std::size_t place, int by) {
    const auto to = static_cast<std::ptrdiff_t>(place) + by;
    if (to < 0 || to >= static_cast<std::ptrdiff_t>(view.chosen.size())) return;
    std::swap(view.chosen[place], view.chosen[static_cast<std::size_t>(to)]);
    view.held = static_cast<std::size_t>(to);
}

// One step of an order with its two buttons. A press on it takes it up; U and D move what is taken up.
void draw_order_line(StudyScene& scene, const QuizPage& quiz, std::size_t place) {
    Kit& kit = scene.kit;
    const std::size_t option = scene.view.chosen[place];
    const float button = kit.px(48), pad = kit.px(12), number = kit.px(36);
    const float gap = kit.px(8), line_w = kit.width() - 2 * (button + gap);
    const float room = line_w - 2 * pad - number;
    const float h =
        std::max(button, kit.text_height(quiz.options[option].text, Type::strong, room) + 2 * pad);
    const Box box = kit.take(h);
    const bool held = scene.view.held == place;
    const std::string id = std::to_string(option + 1);
    const Box line{box.x, box.y, line_w, h};
    const Kit::Touch t = kit.touch("order." + id, line, quiz.options[option].text, true, held);
    kit.fill(line, held ? Role::accent_tint : t.over ? Role::raised_over : Role::raised, 8);
    kit.outline(line, held || t.focused ? Role::accent : Role::outline, held || t.focused ? 3 : 2, 8);
    kit.line_in({line.x + pad, line.y, number, h}, std::to_string(place + 1), Type::strong, Role::accent);
    kit.wrapped_in({line.x + pad + number, line.y, room, h}, quiz.options[option].text, Type::strong,
                   Role::ink);
    const ButtonLook up{.icon = Icon::up, .enabled = place > 0, .name = "Earlier"};
    const ButtonLook down{
        .icon = Icon::open, .enabled = place + 1 < scene.view.chosen.size(), .name = "Later"};
    const float y = box.middle_y() - button / 2;
    const bool earlier = kit.button("up." + id, {line.right() + gap, y, button, button}, up);
    const bool later = kit.button("down." + id, {line.right() + 2 * gap + button, y, button, button}, down);
    kit.gap(8);
    if (t.pressed || kit.take_letter(U'1' + static_cast<char32_t>(place))) {
        scene.view.held = held ? std::nullopt : std::optional(place);
    }
    if (earlier) move(scene.view, place, -1);
    if (later) move(scene.view, place, 1);
}

void draw_order(StudyScene& scene, const QuizPage& quiz) {
    const auto held = scene.view.held;
    if (held && take_command(scene.kit, 'u')) move(scene.view, *held, -1);
    if (held && take_command(scene.kit, 'd')) move(scene.view, *held, 1);
    for (std::size_t place = 0; place < scene.view.chosen.size(); ++place)
        draw_order_line(scene, quiz, place);
}

void draw_figure(StudyScene& scene) {
    Kit& kit = scene.kit;
    const FieldEvent event = kit.field(
        "figure", kit.take(kit.px(52)), scene.view.figure,
        {.name = "The figure with its unit", .placeholder = "A figure with its unit, such as 12.5 in"});
    if (event.entered && !scene.view.figure.empty()) answer(scene, scene.view.figure);
}

const char* how_to_answer(const QuizPage& quiz) {
    if (quiz.drawing) return "Press the place on the drawing.";
    switch (quiz.way) {
        case Way::single:
            return "One is right.";
        case Way::several:
            return "Tick all that apply. A wrong tick costs what a right one earns.";
        case Way::order:
            return "The first thing first: move each up or down.";
        case Way::figure:
            break;
    }
    return "The unit counts.";
}

// An option once it is answered: right and wrong by sign and word, not by colour alone.
void draw_answered_option(Kit& kit, const QuizOption& option, std::size_t at) {
    const bool wrong = option.chosen && !option.right;
    const Role role = option.right ? Role::right : wrong ? Role::wrong : Role::ink2;
    const std::string word = option.right ? (option.chosen ? "right, and you said so" : "right")
                             : wrong      ? "you said this"
                                          : "";
    const float indent = kit.px(36);
    const Box start = kit.take(0);
    const Icon icon = option.right ? Icon::tick : wrong ? Icon::cross : Icon::none;
    if (icon != Icon::none) kit.icon({start.x, start.y, kit.px(22), kit.px(22)}, icon, role);
    const float used = kit.inside({start.x + indent, start.y, start.w - indent, 0}, [&] {
        kit.text(letter_of(at) + ")  " + option.text, Type::body,
                 icon == Icon::none ? Role::ink2 : Role::ink);
        if (!word.empty()) kit.text(word, Type::small, role);
    });
    kit.take(used);
    kit.gap(8);
}

void draw_verdict(StudyScene& scene, const QuizPage& quiz) {
    Kit& kit = scene.kit;
    const bool right = quiz.right;
    const bool partly = quiz.feedback->partly;
    kit.card({.pad = 18, .edge = right ? Role::right : Role::weigh_against}, [&] {
        const Box line = kit.take(kit.theme().line_height(Type::h1));
        kit.icon({line.x, line.y + kit.px(4), kit.px(26), kit.px(26)}, verdict_icon(quiz),
                 partly  ? Role::ink
                 : right ? Role::right
                         : Role::wrong);
        kit.line_in({line.x + kit.px(36), line.y, line.w - kit.px(36), line.h}, quiz.feedback->verdict,
                    Type::h2, Role::ink);
        for (const std::string& text : quiz.feedback->lines) {
            kit.gap(6);
            kit.text(text, Type::body, Role::ink);
        }
    });
    kit.gap(14);
}

void draw_closing(StudyScene& scene, const QuizPage& quiz) {
    Kit& kit = scene.kit;
    kit.card({.pad = 22, .edge = Role::right}, [&] {
        kit.text("THE QUIZ IS DONE", Type::caps, Role::accent);
        kit.gap(6);
        for (const std::string& line : quiz.closing) {
            kit.text(line, Type::body, Role::ink);
            kit.gap(4);
        }
        const bool nobody = scene.page.learner.empty();
        kit.text(nobody ? "Nothing is kept without a learner." : "Kept for " + scene.page.learner + ".",
                 Type::body, Role::ink2);
        kit.gap(12);
        const ButtonLook more{.label = "Another quiz", .face = Face::primary, .key = "Enter"};
        kit.tab_starts_here();
        if (kit.button("quiz.more", kit.take(kit.px(56)), more) || kit.take(Key::enter)) {
            scene.ask(StartQuiz{scene.view.topic});
        }
        kit.gap(8);
        const ButtonLook back{.label = "Back to Study", .icon = Icon::back, .key = "Esc"};
        if (draw_small_button(kit, "quiz.back", back)) scene.ask(ShowStudy{StudyShowing::start});
    });
}

bool can_answer(const StudyScene& scene) {
    return !typed_answer(scene.view, *scene.page.quiz).empty();
}

}  // namespace

void draw_quiz(StudyScene& scene) {
    Kit& kit = scene.kit;
    if (!scene.page.quiz) return;
    const QuizPage& quiz = *scene.page.quiz;
    draw_trouble(kit, scene.page.trouble);
    if (!quiz.closing.empty()) {
        draw_closing(scene, quiz);
        return;
    }
    follow_item(scene.view, quiz);
    if (quiz.feedback) draw_verdict(scene, quiz);
    kit.card({.pad = 20, .edge = Role::accent}, [&] {
        kit.text(quiz.progress + " · " + quiz.heading, Type::caps, Role::accent);
        kit.gap(6);
        for (const std::string& line : quiz.given) {
            kit.text(line, Type::body, Role::ink);
            kit.gap(3);
        }
        if (!quiz.given.empty()) kit.gap(6);
        kit.text(quiz.question, Type::h2, Role::ink);
        kit.gap(4);
        if (!quiz.feedback) kit.text(how_to_answer(quiz), Type::small, Role::ink2);
        kit.gap(10);
        if (quiz.feedback) {
            const auto right = std::find_if(quiz.options.begin(), quiz.options.end(),
                                            [](const QuizOption& option) { return option.right; });
            if (quiz.drawing && right != quiz.options.end()) {
                draw_drawing(scene, quiz, right->drawn);
                kit.gap(10);
            }
            for (std::size_t i = 0; i < quiz.options.size(); ++i) {
                if (quiz.way == Way::order) {
                    kit.text(letter_of(i) + ")  " + quiz.options[i].text, Type::body, Role::ink);
                    kit.gap(4);
                } else {
                    draw_answered_option(kit, quiz.options[i], i);
                }
            }
            return;
        }
        kit.tab_starts_here();
        if (quiz.way == Way::figure) {
            draw_figure(scene);
        } else if (quiz.way == Way::order) {
            draw_order(scene, quiz);
        } else if (quiz.drawing) {
            draw_places(scene, quiz);
        } else {
            draw_choices_of(scene, quiz);
        }
    });
    kit.gap(14);
}

float quiz_dock_height(StudyScene& scene, float width_px) {
    Kit& kit = scene.kit;
    if (!scene.page.quiz || !scene.page.quiz->closing.empty()) return 0;
    if (scene.page.quiz->feedback) return kit.px(84);
    const auto& steps = study::sure_steps();
    std::vector<ChoiceLook> looks;
    for (const study::SureStep& step : steps) {
        looks.push_back({.label = step.name, .note = "00 in 100", .selected = scene.view.sure == step.sure});
    }
    return choice_cells(kit, looks, width_px, 5).whole + kit.theme().line_height(Type::small) +
           kit.px(56 + 46);
}

// Answering stands in the same place every time.
void draw_quiz_dock(StudyScene& scene) {
    Kit& kit = scene.kit;
    const QuizPage& quiz = *scene.page.quiz;
    if (quiz.feedback) {
        const ButtonLook next{.label = "Go on", .face = Face::primary, .key = "Enter"};
        if (kit.button("quiz.next", kit.take(kit.px(56)), next) || kit.take(Key::enter))
            scene.ask(NextItem{});
        return;
    }
    kit.text("How sure are you? You need not say.", Type::small, Role::ink2);
    kit.gap(6);
    draw_sure_steps(kit, "sure", scene.view.sure);
    use_sure_key(kit, scene.view.sure);
    kit.gap(10);
    const Box line = kit.take(kit.px(56));
    const ButtonLook unknown{.label = "Can't tell", .key = "0"};
    const float w = kit.button_width(unknown) + kit.px(16);
    const bool can = can_answer(scene);
    const ButtonLook done{.label = "Answer", .face = Face::primary, .key = "Enter", .enabled = can};
    const Box right{line.x + w + kit.px(12), line.y, line.w - w - kit.px(12), line.h};
    const bool cannot = kit.button("quiz.cannot_tell", {line.x, line.y, w, line.h}, unknown);
    if (cannot || kit.take_letter(U'0') || kit.take_letter(U'?')) answer(scene, "?");
    if (kit.button("quiz.answer", right, done) || (can && kit.take(Key::enter))) {
        answer(scene, typed_answer(scene.view, quiz));
    }
}

}  // namespace hardover::window
