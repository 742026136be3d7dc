// What a practice boat looks like in the terminal.
#include <fmt/format.h>

#include <ostream>

#include "app/terminal/practice_run.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

using namespace study::practice;

namespace {

std::string ranking_text(const std::vector<RankLine>& ranking) {
    std::string text;
    for (const RankLine& rank : ranking) {
        text += (text.empty() ? "" : ", ") + rank.name + (rank.true_fault ? " (it was this)" : "") + " " +
                rank.percent;
    }
    return text;
}

void print_step(std::ostream& out, const DebriefStep& step) {
    say_wrapped(out, fmt::format("{}. {}: {} ({})", step.number, step.did, step.found, step.minutes), 3);
    for (const std::string& note : step.notes) say_wrapped(out, "   " + note, 3);
    say_wrapped(out, "   " + step.verdict, 3);
    if (!step.best.empty()) {
        say_wrapped(out, fmt::format("   {}: {}. {}", step.best_label, step.best, step.why), 3);
    }
    if (!step.ranking.empty()) say_wrapped(out, "   Then: " + ranking_text(step.ranking) + ".", 3);
}

}  // namespace

void PracticeRun::print_start() {
    heading(page_.title);
    say(page_.about_level);
    say(page_.guidance);
    print_boat();
    print_near();
    print_help();
}

void PracticeRun::print_boat() {
    out_ << "\n";
    say(fmt::format("The customer says: {} ({})", page_.customer, page_.complaint));
    say("History: " + page_.history + ".");
    std::string rig;
    for (const SheetLine& line : page_.rig) rig += (rig.empty() ? "" : "; ") + line.name + ": " + line.value;
    say("The yard's sheet of the boat: " + rig + ".", 2);
}

void PracticeRun::print_help() {
    out_ << "\n";
    say("Type what you want to do:");
    for (const char* line :
         {"  3               look at, feel or measure number 3 of the list",
          "  find OIL LEVEL  look for a question by its words; parts: everything, part by part",
          "  suspect HOSE 60 say what you suspect, and how sure you are in 100",
          "  name HOSE 90    say what is wrong, for good", "  prove           do the check that proves it",
          "  fix             put it right and try the boat; fix WORDS: another remedy",
          "  done            hand the boat over once it is right; call: call for help",
          "  hint            a nudge; again: what to compare; again: the step. Each is counted",
          "  notes, boat, list, causes, sheets, help, quit"}) {
        out_ << line << "\n";
    }
}

void PracticeRun::print_items(const std::string& title, const std::vector<FindingItem>& items) {
    out_ << "\n";
    say(title);
    shown_ = {};
    for (const FindingItem& item : items) {
        shown_.ids.push_back(item.id);
        say(fmt::format("  {:>2}  {} ({}){}", shown_.ids.size(), item.name, item.minutes,
                        item.answer.empty() ? "" : ": " + item.answer),
            6);
    }
}

void PracticeRun::print_near() {
    print_items("Worth a thought with such a complaint:", page_.near);
}

void PracticeRun::print_parts() {
    shown_ = {};
    shown_.kind = Shown::Kind::parts;
    out_ << "\n";
    for (const FindingGroup& group : page_.parts) {
        shown_.ids.push_back(group.id);
        say(fmt::format("  {:>2}  {} ({} things to look at)", shown_.ids.size(), group.name,
                        group.items.size()));
    }
    say("A number opens a part.");
}

void PracticeRun::print_notes() {
    out_ << "\n";
    say(page_.clock + ".");
    for (const WorkLine& line : page_.work) {
        say(fmt::format("  {}: {} ({})", line.text, line.found, line.minutes), 4);
    }
    for (const std::string& statement : page_.statements) say("  You thought: " + statement, 4);
}

// What stands there unasked: the expert's step, or a nudge.
void PracticeRun::print_page_help() {
    out_ << "\n";
    if (page_.led) {
        say(fmt::format("The expert's step: {} ({})", page_.led->heading, page_.led->eyebrow));
        if (!page_.led->why.empty()) say("  " + page_.led->why, 2);
        say("  Press Enter to do it.");
    }
    for (const std::string& line : page_.help) say(line);
    if (session_.boat_is_right()) {
        say("The boat is right. Before it goes back:");
        for (const std::string& check : page_.after) say("  - " + check, 4);
        say("Type done to hand it over.");
    }
}

// How it goes, in short: the steps are what an apprentice would do now.
void PracticeRun::print_card(const study::practice::PracticeEvent& event) {
    const WorkCard card = work_card(session_, event);
    if (!card.ask.empty()) say("  " + card.ask, 2);
    if (card.heading.empty() || card.steps.empty()) return;
    say(card.heading + " (" + card.minutes + ")");
    int number = 0;
    for (const std::string& step : card.steps) say(fmt::format("  {}. {}", ++number, step), 5);
    for (const std::string& figure : card.figures) say("  Figure: " + figure, 4);
    if (!card.parts.empty()) say("  Parts: " + joined(card.parts, ", "), 4);
}

// In full the first time, by name after that.
void PracticeRun::print_cautions(const std::vector<CautionText>& cautions) {
    for (const CautionText& caution : cautions) {
        if (told_cautions_.insert(caution.id).second) {
            say(fmt::format("  {}: {} {}", caution.name, caution.hurts, caution.avoid), 4);
        } else {
            say("  " + caution.name + ", as before", 4);
        }
    }
}

void print_debrief(std::ostream& out, const Debrief& debrief) {
    if (!debrief.skipped_cautions.empty()) {
        out << "\nCAUTIONS LEFT OUT\n";
        for (const SkippedCautions& skipped : debrief.skipped_cautions) {
            say_wrapped(out, "  " + skipped.work, 4);
            for (const std::string& caution : skipped.cautions) say_wrapped(out, "    " + caution, 6);
        }
    }
    out << "\nHow it went\n";
    say_wrapped(out, debrief.headline);
    say_wrapped(out, debrief.truth);
    for (const std::string& sentence : debrief.minutes) say_wrapped(out, "  " + sentence, 4);
    for (const Habit& habit : debrief.habits) {
        say_wrapped(out, fmt::format("  {} {}. {}", habit.kept ? "kept  " : "broken", habit.name, habit.text),
                    9);
    }
    say_wrapped(out, debrief.sureness);
    say_wrapped(out, debrief.help);
    out << "\nStep by step\n";
    say_wrapped(out, "At the start: " + ranking_text(debrief.ranking_at_start) + ".");
    for (const DebriefStep& step : debrief.steps) print_step(out, step);
    out << "\nThree things to practise\n";
    int number = 0;
    for (const std::string& thing : debrief.practise)
        say_wrapped(out, fmt::format("  {}. {}", ++number, thing), 5);
}

}  // namespace hardover
