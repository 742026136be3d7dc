#include "app/window/screens/study/study_lists.hpp"

#include <algorithm>

#include "app/jobs/word_match.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

void draw_finding(StudyScene& scene, const practice::FindingItem& item, const std::string& prefix,
                  const std::string& cap) {
    const std::string note = item.check.empty() ? item.ask : item.ask + "  (" + item.check + ")";
    if (draw_study_row(scene.kit, prefix + item.id,
                       {item.name, note, item.minutes, item.answer, cap, false})) {
        scene.ask(TakeUpWork{practice::Asked{item.id}});
    }
}

// What the same check gets stands together, in the order of the first of each.
std::vector<const practice::FindingItem*> by_check(const practice::FindingGroup& group) {
    std::vector<std::string> checks;
    for (const practice::FindingItem& item : group.items) {
        if (std::find(checks.begin(), checks.end(), item.check) == checks.end()) checks.push_back(item.check);
    }
    std::vector<const practice::FindingItem*> items;
    for (const std::string& check : checks) {
        for (const practice::FindingItem& item : group.items) {
            if (item.check == check) items.push_back(&item);
        }
    }
    return items;
}

void draw_found(StudyScene& scene) {
    Kit& kit = scene.kit;
    bool any = false;
    for (const practice::FindingGroup& group : scene.page.boat->parts) {
        bool first = true;
        for (const practice::FindingItem* item : by_check(group)) {
            if (!has_all_words(item->name + " " + item->ask + " " + item->check, scene.view.filter)) continue;
            if (first) {
                kit.text(group.name, Type::caps, Role::ink2);
                kit.gap(4);
            }
            first = false;
            any = true;
            draw_finding(scene, *item, "look.", "");
        }
    }
    if (!any) kit.text("Nothing has all of these words. Try one of them alone.", Type::body, Role::ink2);
}

// The causes of a filter by part; a press takes one up to be weighed.
void draw_cause_rows(StudyScene& scene) {
    Kit& kit = scene.kit;
    std::string part;
    bool any = false;
    for (const practice::NamedItem& cause : scene.page.boat->causes) {
        if (!has_all_words(cause.name + " " + cause.part, scene.view.filter)) continue;
        any = true;
        const std::string group = cause.part.empty() ? "Anything else" : cause.part;
        if (group != part) {
            part = group;
            kit.gap(4);
            kit.text(part, Type::caps, Role::ink2);
            kit.gap(4);
        }
        const bool chosen = cause.id == scene.view.cause;
        if (draw_study_row(kit, "cause." + cause.id, {cause.name, "", "", "", "", chosen})) {
            scene.view.cause = chosen ? "" : cause.id;
            scene.view.cause_sure.reset();
        }
    }
    if (!any) kit.text("No cause has all of these words in its name.", Type::body, Role::ink2);
}

// How sure, and what follows from it.
void draw_weighed(StudyScene& scene, const practice::NamedItem& cause) {
    Kit& kit = scene.kit;
    StudyView& view = scene.view;
    kit.card({.pad = 18, .edge = Role::accent}, [&] {
        kit.text("I THINK IT IS", Type::caps, Role::accent);
        kit.gap(4);
        kit.text(cause.name, Type::h2, Role::ink);
        if (!cause.about.empty()) kit.text(cause.about, Type::small, Role::ink2);
        kit.gap(8);
        kit.text("In how many of 100 such boats would you be right?", Type::small, Role::ink);
        kit.gap(6);
        draw_sure_steps(kit, "cause_sure", view.cause_sure);
        use_sure_key(kit, view.cause_sure);
        kit.gap(10);
        const bool can = view.cause_sure.has_value();
        const ButtonLook suspect{.label = "I suspect it", .key = "1", .enabled = can};
        const bool said = can && kit.take_letter(U'1');
        if (kit.button("cause.suspect", kit.take(kit.px(52)), suspect) || said) {
            scene.ask(Tell{practice::Suspected{cause.id, *view.cause_sure}});
        }
        kit.gap(8);
        const ButtonLook name{.label = "It is this, for good", .key = "2", .enabled = can};
        const bool named = can && kit.take_letter(U'2');
        if (kit.button("cause.name", kit.take(kit.px(52)), name) || named) {
            scene.ask(Tell{practice::Named{cause.id, *view.cause_sure}});
        }
        kit.gap(8);
        const ButtonLook prove{.label = "Do the check that proves it", .face = Face::primary, .key = "3"};
        if (kit.button("cause.prove", kit.take(kit.px(52)), prove) || kit.take_letter(U'3')) {
            scene.ask(TakeUpWork{practice::Proved{cause.id}});
        }
    });
    kit.gap(14);
}

}  // namespace

void draw_findings(StudyScene& scene) {
    Kit& kit = scene.kit;
    draw_search_field(kit, "look.filter", scene.view.filter, "Find by a word",
                      "Find by a word: oil, noise, ram ...");
    kit.gap(12);
    if (!scene.view.filter.empty()) {
        draw_found(scene);
        return;
    }
    kit.text("Worth a thought with such a complaint", Type::h2, Role::ink);
    kit.gap(6);
    int number = 0;
    for (const practice::FindingItem& item : scene.page.boat->near) {
        ++number;
        draw_finding(scene, item, "near.", number <= 9 ? std::to_string(number) : "");
    }
    kit.gap(8);
    kit.text("Everything, part by part", Type::h2, Role::ink);
    for (const practice::FindingGroup& group : scene.page.boat->parts) {
        const std::string name = "part." + group.id;
        const bool open = scene.view.is_open(name);
        if (kit.fold(name, group.name + " (" + std::to_string(group.items.size()) + ")", open)) {
            scene.view.fold(name);
        }
        if (!open) continue;
        for (const practice::FindingItem* item : by_check(group)) draw_finding(scene, *item, "look.", "");
    }
}

void draw_causes(StudyScene& scene) {
    Kit& kit = scene.kit;
    const auto& causes = scene.page.boat->causes;
    const auto weighed = std::find_if(causes.begin(), causes.end(), [&](const practice::NamedItem& cause) {
        return cause.id == scene.view.cause;
    });
    if (weighed != causes.end()) draw_weighed(scene, *weighed);
    draw_search_field(kit, "cause.filter", scene.view.filter, "Find a cause",
                      "Find by a word: hose, air, seal ...");
    kit.gap(10);
    draw_cause_rows(scene);
}

void draw_remedies(StudyScene& scene) {
    Kit& kit = scene.kit;
    kit.text("A remedy that is not right costs its minutes and parts, and the boat comes back.", Type::body,
             Role::ink2);
    kit.gap(8);
    draw_search_field(kit, "remedy.filter", scene.view.filter, "Find a remedy",
                      "Find by a word: bleed, hose, seal ...");
    kit.gap(10);
    bool any = false;
    for (const practice::NamedItem& remedy : scene.page.boat->remedies) {
        if (!has_all_words(remedy.name + " " + remedy.part, scene.view.filter)) continue;
        any = true;
        if (draw_study_row(kit, "remedy." + remedy.id, {remedy.name, remedy.about, "", "", "", false})) {
            scene.ask(TakeUpWork{practice::Remedied{remedy.id}});
        }
    }
    if (!any) kit.text("No remedy has all of these words in its name.", Type::body, Role::ink2);
}

void draw_practice_sheets(StudyScene& scene) {
    Kit& kit = scene.kit;
    if (scene.page.boat->sheets.empty()) {
        kit.text("Nothing has been measured yet that a worksheet could use.", Type::body, Role::ink2);
    }
    for (const SheetText& sheet : scene.page.boat->sheets) {
        const std::string name = "sheet." + sheet.id;
        const bool open = scene.view.is_open(name);
        if (kit.fold(name, sheet.name, open)) {
            scene.view.fold(name);
            if (!open) scene.ask(Tell{practice::WorkedOut{sheet.id}});
        }
        if (!open) continue;
        kit.card({.pad = 16}, [&] {
            for (const SheetLine& line : sheet.inputs) draw_sheet_line(kit, line, Type::body);
            kit.gap(4);
            for (const SheetLine& line : sheet.results) draw_sheet_line(kit, line, Type::strong);
            if (!sheet.refused.empty()) kit.text(sheet.refused, Type::body, Role::wrong);
            for (const std::string& advice : sheet.advice) {
                kit.gap(6);
                kit.text(advice, Type::body, Role::ink);
            }
            if (!sheet.source.empty()) {
                kit.gap(6);
                kit.text(sheet.source, Type::small, Role::ink2);
            }
        });
        kit.gap(8);
    }
}

void draw_help(StudyScene& scene) {
    Kit& kit = scene.kit;
    kit.text("Help is there when you want it. It is counted and shown, never hidden.", Type::body,
             Role::ink2);
    kit.gap(8);
    for (int level = 1; level <= 3; ++level) {
        const std::string cap = std::to_string(level);
        const RowLook look{practice::hint_title(level), "", "", "", cap, false};
        if (draw_study_row(kit, "hint." + cap, look)) scene.ask(Tell{practice::Hinted{level}});
    }
    kit.gap(10);
    const bool open = scene.view.is_open("call");
    if (kit.fold("call", "Give the boat up", open)) scene.view.fold("call");
    if (!open) return;
    kit.text("Somebody else finds it. It costs the minutes of a call, and the debrief follows.", Type::body,
             Role::ink2);
    kit.gap(8);
    const ButtonLook call{.label = "Call for help", .icon = Icon::telephone};
    if (kit.button("call.now", kit.take(kit.px(52)), call)) scene.ask(TakeUpWork{practice::GaveUp{}});
}

}  // namespace hardover::window
