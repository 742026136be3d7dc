// The debrief of the class's way: how it went, who had it right when, and each step with its votes.
#include "app/window/screens/parts.hpp"
#include "app/window/screens/project/project_parts.hpp"

namespace hardover::window {

namespace {

using classroom::VoteTold;
using study::practice::Debrief;
using study::practice::DebriefStep;

void draw_vote_told(Kit& kit, const VoteTold& vote) {
    kit.card({.fill = Role::panel, .pad = 12, .edge = Role::accent}, [&] {
        kit.text(vote.heading, Type::strong, Role::ink);
        for (const std::string& count : vote.counts) {
            kit.gap(2);
            kit.text(count, Type::body, Role::ink);
        }
        if (vote.right.empty()) return;
        kit.gap(4);
        kit.text(vote.right, Type::strong, Role::right);
    });
    kit.gap(8);
}

void draw_step(Kit& kit, const DebriefStep& step) {
    kit.card({.pad = 14, .edge = step.good ? Role::right : Role::weigh_against}, [&] {
        kit.text(std::to_string(step.number) + ". " + step.did, Type::h2, Role::ink);
        kit.text(step.found + ", " + step.minutes, Type::body, Role::ink);
        kit.gap(4);
        kit.text(step.verdict, Type::strong, step.good ? Role::right : Role::weigh_against);
        if (step.best.empty()) return;
        kit.text(step.best_label + ": " + step.best + ".", Type::body, Role::ink);
    });
    kit.gap(8);
}

}  // namespace

void draw_class_debrief(ProjectScene& scene) {
    Kit& kit = scene.kit;
    const ProjectPage& page = scene.page();
    draw_trouble(kit, page.trouble);
    if (!page.debrief) return;
    const Debrief& told = *page.debrief;
    draw_skipped_cautions(kit, told.skipped_cautions);
    kit.text(told.headline, Type::h1, Role::ink);
    kit.gap(8);
    kit.text(told.truth, Type::h2, Role::ink);
    kit.gap(12);
    kit.text(page.cause_votes, Type::h2, Role::accent);
    kit.gap(12);
    for (std::size_t step = 0; step <= told.steps.size(); ++step) {
        for (const VoteTold& vote : page.votes) {
            if (vote.step == step + 1) draw_vote_told(kit, vote);
        }
        if (step < told.steps.size()) draw_step(kit, told.steps[step]);
    }
    kit.gap(8);
    kit.text("Three things to practise", Type::h2, Role::ink);
    kit.gap(4);
    draw_numbered(kit, told.practise);
    kit.gap(8);
    for (const std::string& line : told.minutes) {
        kit.text(line, Type::body, Role::ink2);
        kit.gap(4);
    }
}

}  // namespace hardover::window
