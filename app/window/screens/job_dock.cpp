// The dock under the step: the answers to it, or the one thing to do next, always in the same place.
#include "app/window/hand_back.hpp"
#include "app/window/screens/choices.hpp"
#include "app/window/screens/job_parts.hpp"

namespace hardover::window {

namespace {

constexpr std::size_t most_across = 4;

struct DockChoice {
    std::string id;
    std::string label;
    std::string cap;
    char32_t letter = 0;  // pressed as a key
    bool selected = false;
    bool quiet = false;
    Action action;
    char side = 0;
};

struct DockButton {
    std::string id;
    std::string label;
    std::string why_not;  // empty: can be pressed
    Action action;
    bool leads_on = true;  // Enter presses it
};

// What the dock holds, before anything is drawn, so that it can be measured.
struct Dock {
    std::string title;
    const MeasureField* field = nullptr;       // one number: typed here
    const MeasureField* first_open = nullptr;  // several: typed beside the steps, this one first
    std::vector<DockChoice> choices;
    std::vector<DockChoice> others;  // can't tell, take back: beside the title
    std::optional<DockButton> button;
};

// The first number not yet given, or the first of all.
const MeasureField* first_open_field(const QuestionText& question) {
    for (const MeasureField& field : question.fields) {
        if (field.text.empty()) return &field;
    }
    return question.fields.empty() ? nullptr : &question.fields.front();
}

void add_answers(Dock& dock, const QuestionText& question) {
    dock.title = question.ask;
    const bool number_first = !question.fields.empty();
    if (question.fields.size() == 1) dock.field = &question.fields.front();
    if (question.fields.size() > 1) dock.first_open = first_open_field(question);
    for (std::size_t i = 0; i < question.choices.size(); ++i) {
        const ChoiceText& choice = question.choices[i];
        const bool has_key = !number_first && i < 9;
        const char32_t digit = has_key ? U'1' + static_cast<char32_t>(i) : 0;
        dock.choices.push_back({"answer." + std::to_string(i + 1), choice.text,
                                has_key ? std::to_string(i + 1) : "", digit, choice.chosen, number_first,
                                GiveAnswer{question.finding, choice.id}, side_of(choice.id)});
    }
    dock.others.push_back({"answer.cannot_tell", "Can't tell", number_first ? "C" : "0",
                           number_first ? U'c' : U'0', false, true,
                           GiveAnswer{question.finding, "cannot_tell"}});
    if (!question.answer.empty()) {
        dock.others.push_back(
            {"answer.take_back", "Take back", "T", U't', false, true, TakeBack{question.finding}});
    }
}

Dock step_dock(const JobScene& scene) {
    const StepCard& card = scene.card;
    Dock dock;
    switch (card.kind) {
        case StepCard::Kind::question:
        case StepCard::Kind::check:
        case StepCard::Kind::prove:
            if (!card.questions.empty()) add_answers(dock, card.questions.front());
            if (card.kind == StepCard::Kind::question) dock.title = "Your answer";  // asked in the card
            break;
        case StepCard::Kind::remedy:
            dock.title = "When it is done and tried: how is the boat?";
            dock.choices = {
                {"remedy.cured", "Cured", "1", U'1', false, false, Try{card.id, "cured"}},
                {"remedy.better", "Better, not right", "2", U'2', false, false, Try{card.id, "better"}},
                {"remedy.not_cured", "No change", "3", U'3', false, false, Try{card.id, "not_cured"}}};
            break;
        case StepCard::Kind::after:
            dock.button = {"dock.hand_back", "Hand the boat back", "", Show{Showing::hand_back, ""}};
            break;
        case StepCard::Kind::call_for_help:
            dock.button = {"dock.hand_back", "Hand the boat back", "", Show{Showing::hand_back, ""}, false};
            break;
        case StepCard::Kind::handed_back:
            dock.title = "The boat is back with its owner";
            dock.others = {{"dock.reopen", "Open the job again", "", 0, false, true, Reopen{}}};
            dock.button = {"dock.sheet", "Write the job sheet", "", WriteSheet{}};
            break;
        case StepCard::Kind::intake:
            break;
    }
    return dock;
}

Dock make_dock(const JobScene& scene) {
    Dock dock;
    const bool intake = scene.card.kind == StepCard::Kind::intake;
    switch (scene.view.showing) {
        case Showing::look_up:
        case Showing::time_line:
            return dock;
        case Showing::hand_back: {
            const std::string why_not = why_not_handed_back(scene.view, scene.page);
            dock.button = {"dock.hand_back_now", "Hand back and close the job", why_not, HandBack{}};
            return dock;
        }
        case Showing::intake: {
            const std::string why_not =
                intake ? "Choose a complaint first. Everything else may stay open." : "";
            dock.button = {"dock.begin", "Look for the cause", why_not, Show{Showing::step, ""}};
            return dock;
        }
        default:
            break;
    }
    if (intake) {
        dock.button = {"dock.begin", "Look for the cause",
                       "Choose a complaint first. Everything else may stay open.", Show{Showing::step, ""}};
        return dock;
    }
    return step_dock(scene);
}

std::vector<ChoiceLook> looks_of(const std::vector<DockChoice>& choices) {
    std::vector<ChoiceLook> looks;
    for (const DockChoice& choice : choices) {
        looks.push_back({.label = choice.label,
                         .cap = choice.cap,
                         .selected = choice.selected,
                         .quiet = choice.quiet,
                         .side = choice.side});
    }
    return looks;
}

bool by_key(Kit& kit, const DockChoice& choice) {
    if (choice.letter == 0) return false;
    if (kit.take_letter(choice.letter)) return true;
    if (choice.id == "answer.cannot_tell") return kit.take_letter(U'c') || kit.take_letter(U'C');
    return choice.letter == U't' && kit.take_letter(U'T');
}

void draw_choices(JobScene& scene, const Dock& dock) {
    Kit& kit = scene.kit;
    std::vector<std::string> ids;
    for (const DockChoice& choice : dock.choices) {
        ids.push_back(choice.id);
        if (by_key(kit, choice)) scene.action = choice.action;
    }
    const int pressed = draw_choice_cells(kit, ids, looks_of(dock.choices), most_across);
    if (pressed >= 0) scene.action = dock.choices[static_cast<std::size_t>(pressed)].action;
}

ButtonLook look_of(const DockChoice& other) {
    return {.label = other.label, .key = other.cap};
}

float others_width(Kit& kit, const Dock& dock) {
    float w = 0;
    for (const DockChoice& other : dock.others) w += kit.button_width(look_of(other)) + kit.px(10);
    return w;
}

// The title's width beside the other answers; all of it where they go under it.
float title_width(Kit& kit, const Dock& dock, float width_px) {
    const float beside = width_px - others_width(kit, dock);
    return beside > kit.px(220) ? beside : width_px;
}

float title_height(Kit& kit, const Dock& dock, float width_px) {
    if (dock.title.empty()) return 0;
    const float room = title_width(kit, dock, width_px);
    const float title = kit.text_height(dock.title, Type::strong, room);
    if (dock.others.empty()) return title + kit.px(10);
    return (room < width_px ? std::max(kit.px(46), title) : title + kit.px(8 + 46)) + kit.px(10);
}

// What is asked, and at the right end the answers that are none.
void draw_title(JobScene& scene, const Dock& dock) {
    Kit& kit = scene.kit;
    if (dock.title.empty()) return;
    const Box line = kit.take(title_height(kit, dock, kit.width()) - kit.px(10));
    const float room = title_width(kit, dock, line.w);
    const bool beside = room < line.w;
    const float title = kit.text_height(dock.title, Type::strong, room);
    kit.wrapped_in({line.x, line.y, room, beside ? line.h : title}, dock.title, Type::strong, Role::ink);
    float x = line.right() - others_width(kit, dock) + kit.px(10);
    if (!beside) x = line.x;
    for (const DockChoice& other : dock.others) {
        const float w = kit.button_width(look_of(other));
        if (kit.button(other.id, {x, line.bottom() - kit.px(46), w, kit.px(46)}, look_of(other)) ||
            by_key(kit, other)) {
            scene.action = other.action;
        }
        x += w + kit.px(10);
    }
    kit.gap(10);
}

void draw_field(JobScene& scene, const MeasureField& field) {
    Kit& kit = scene.kit;
    const std::string id = "number." + field.id;
    Draft& draft = scene.view.drafts.of(field.id, field.text);
    const ButtonLook save{.label = "Save", .face = Face::primary, .key = "Enter"};
    const Box line = kit.take(kit.px(58));
    const float button = kit.button_width(save);
    const Box box{line.x, line.y, line.w - button - kit.px(10), line.h};
    const FieldEvent event = kit.field(id, box, draft.text,
                                       {.name = field.name,
                                        .placeholder = "Type the number",
                                        .unit = field.unit,
                                        .wrong = !draft.error.empty()});
    if (event.edited) {
        draft.changed = true;
        draft.error.clear();
    }
    const bool pressed = kit.button("answer.save", {line.right() - button, line.y, button, line.h}, save);
    if (event.cancelled) {
        scene.view.drafts.drop(field.id);
        return;
    }
    if ((event.committed && draft.changed) || pressed)
        scene.action = GiveNumber{field.id, with_shown_unit(draft.text, field.unit), field.of_rig};
    kit.gap(4);
    const bool wrong = !draft.error.empty();
    kit.text(wrong ? draft.error : field.hint, Type::small, wrong ? Role::wrong : Role::ink2);
    kit.gap(8);
}

// A digit begins the number without reaching for the field first.
void digits_open_field(JobScene& scene) {
    const auto& questions = scene.card.questions;
    if (questions.empty() || questions.front().fields.empty()) return;
    const MeasureField* first = first_open_field(questions.front());
    if (const auto digit = scene.kit.take_digit()) scene.kit.open_field("number." + first->id, digit);
}

}  // namespace

float dock_height(JobScene& scene, float width_px) {
    Kit& kit = scene.kit;
    const Dock dock = make_dock(scene);
    float h = 0;
    h += title_height(kit, dock, width_px);
    if (dock.first_open != nullptr) h += kit.px(56 + 10);
    if (dock.field != nullptr) {
        const Draft& draft = scene.view.drafts.of(dock.field->id, dock.field->text);
        const std::string& under = draft.error.empty() ? dock.field->hint : draft.error;
        h += kit.px(58 + 12) + kit.text_height(under, Type::small, width_px);
    }
    if (!dock.choices.empty()) {
        h += choice_cells(kit, looks_of(dock.choices), width_px, most_across).whole;
    }
    if (dock.button) {
        h += kit.px(56);
        if (!dock.button->why_not.empty())
            h += kit.px(6) + kit.text_height(dock.button->why_not, Type::small, width_px);
    }
    return h == 0 ? -kit.px(28) : h;
}

void draw_dock(JobScene& scene) {
    Kit& kit = scene.kit;
    const Dock dock = make_dock(scene);
    draw_title(scene, dock);
    kit.tab_starts_here();
    if (dock.field != nullptr) draw_field(scene, *dock.field);
    if (dock.first_open != nullptr) {
        const ButtonLook write{
            .label = "Write down the numbers", .icon = Icon::pencil, .face = Face::primary};
        if (kit.button("answer.write", kit.take(kit.px(56)), write))
            kit.open_field("number." + dock.first_open->id);
        kit.gap(10);
    }
    if (scene.view.showing == Showing::step || scene.view.showing == Showing::finding)
        digits_open_field(scene);
    if (!dock.choices.empty()) draw_choices(scene, dock);
    if (!dock.button) return;
    const DockButton& button = *dock.button;
    const bool enabled = button.why_not.empty();
    const bool entered = enabled && button.leads_on && kit.take(Key::enter);
    const ButtonLook look{.label = button.label,
                          .face = button.leads_on ? Face::primary : Face::plain,
                          .key = button.leads_on ? "Enter" : "",
                          .enabled = enabled};
    if (kit.button(button.id, kit.take(kit.px(56)), look) || entered) scene.action = button.action;
    if (!enabled) {
        kit.gap(6);
        kit.text(button.why_not, Type::small, Role::ink2);
    }
}

std::vector<std::pair<std::string, std::string>> dock_keys(const JobScene& scene) {
    const Dock dock = make_dock(scene);
    std::vector<std::pair<std::string, std::string>> keys;
    if (scene.view.showing == Showing::intake && !scene.page.complaints.empty()) {
        keys.emplace_back("1-" + std::to_string(std::min<std::size_t>(9, scene.page.complaints.size())),
                          "complaint");
    }
    if (dock.button && dock.button->leads_on && dock.button->why_not.empty())
        keys.emplace_back("Enter", "go on");
    if (dock.choices.empty() && dock.others.empty()) return keys;
    std::size_t digits = 0;
    for (const DockChoice& choice : dock.choices)
        digits += choice.letter >= U'1' && choice.letter <= U'9' ? 1 : 0;
    const bool number = !scene.card.questions.empty() && !scene.card.questions.front().fields.empty();
    if (number) keys.emplace_back("0-9", "type the number");
    if (digits == 1) keys.emplace_back("1", "answer");
    if (digits > 1) keys.emplace_back("1-" + std::to_string(digits), "answer");
    if (!scene.card.questions.empty()) keys.emplace_back(number ? "C" : "0", "can't tell");
    return keys;
}

}  // namespace hardover::window
