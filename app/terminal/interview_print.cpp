// How the interview prints a job page: plain text that reads well in a log.
#include <algorithm>
#include <ostream>

#include "app/reports/job_report.hpp"
#include "app/terminal/interview.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

void Interview::print_help() {
    say("Job " + std::to_string(job_.number) + (job_.boat.empty() ? "" : ", " + job_.boat) +
        ". Every answer is kept at once. Type a number, an id or a figure with its unit;");
    say("also: ? can't tell, u undo, why, turn, versus A B, all, rig, complaint, history, need, ask FINDING, "
        "answer "
        "FINDING VALUE, note "
        "TEXT, "
        "done CAUSE [seen], CAUSE [seen] ... (hand back; without causes: those proved and put right), reload "
        "(changed knowledge files), q quit.");
}

void Interview::print_step(const JobPage& page) {
    for (const std::string& stop : page.stops) say("STOP: " + stop, 6);
    if (!page.conflict.empty()) say("Note: " + page.conflict, 6);
    if (!looking_at_.empty()) {
        print_out_of_turn(question_card(in_use_.prepared(), job_, find(knowledge_.findings, looking_at_)));
        return;
    }
    if (page.card.kind != StepCard::Kind::intake) print_causes(page);
    print_not_told(page);
    print_card(page.card);
    print_check_in_hand(page.card);
    if (page.card.kind == StepCard::Kind::intake) {
        print_complaints(page);
        say("  Several go on one line: 1, 3. One more later: complaint ID");
    }
    if (page.card.kind == StepCard::Kind::remedy) say("  After it: 1 cured, 2 better, 3 not_cured");
    const bool hands_back =
        page.card.kind == StepCard::Kind::after || page.card.kind == StepCard::Kind::call_for_help;
    if (hands_back) {
        say("  Hand back: give the true cause by number or id ('not_listed' if none), and 'seen' after it if "
            "it was seen. Several go with commas between: 1 seen, 3. What its check has proved counts as "
            "seen.",
            2);
        std::vector<std::string> names;
        for (const CauseLine& cause : page.put_right) names.push_back(cause.name + " [" + cause.id + "]");
        if (!names.empty()) say("  Proved and put right: " + joined(names, "; ") + ". With these: done", 2);
    }
}

void Interview::print_complaints(const JobPage& page) {
    int number = 0;
    for (const ChoiceText& complaint : page.complaints) {
        say("  " + std::to_string(++number) + "  " + complaint.text + "  [" + complaint.id + "]" +
                (complaint.chosen ? " (told)" : ""),
            5);
    }
}

// The cautions and steps of the check in hand have been read.
void Interview::print_out_of_turn(const StepCard& card) {
    const std::vector<std::string> in_check = open_in_check();
    const bool of_check = std::find(in_check.begin(), in_check.end(), looking_at_) != in_check.end();
    if (of_check && !card.questions.empty()) {
        heading(in_hand_.heading);
        print_question(card.questions.front());
    } else {
        print_card(card);
    }
    say("  Enter alone: back to the next step");
}

void Interview::print_check_in_hand(const StepCard& next) {
    const std::vector<std::string> open = open_in_check();
    if (open.empty() || next.id == in_hand_.id) return;
    std::vector<std::string> names;
    for (const std::string& id : open) {
        names.push_back(knowledge_.findings[static_cast<std::size_t>(find(knowledge_.findings, id))].name);
    }
    say("  Still open in “" + in_hand_.heading + "”: " + joined(names, "; ") + ". Enter alone asks for it.",
        2);
}

// What decides on causes and was left open at the intake.
void Interview::print_not_told(const JobPage& page) {
    if (page.card.kind == StepCard::Kind::after || page.card.kind == StepCard::Kind::handed_back) return;
    constexpr std::size_t most_named = 3;
    std::vector<std::string> open;
    const bool history_told = std::any_of(page.histories.begin(), page.histories.end(),
                                          [](const ChoiceText& history) { return history.chosen; });
    if (!history_told) open.push_back("what was done lately (history ID)");
    for (const RigLine& line : page.rig) {
        if (!line.matters || line.choices.empty() || !line.value.empty()) continue;
        if (open.size() < most_named) open.push_back(line.name + " (rig " + line.id + " CHOICE)");
    }
    if (!open.empty()) say("Not told yet, and it matters here: " + joined(open, "; ") + ".");
}

void Interview::print_card(const StepCard& card) {
    heading(card.heading);
    if (!card.eyebrow.empty()) say(card.eyebrow);
    if (!card.why.empty()) say(card.why);
    for (const CautionText& caution : card.cautions) {
        say("  CAUTION " + caution.name + ": " + caution.hurts + " " + caution.avoid, 4);
    }
    int number = 0;
    for (const std::string& step : card.steps) say("  " + std::to_string(++number) + ". " + step, 5);
    if (!card.tools.empty()) say("  Tools: " + joined(card.tools, ", "), 4);
    if (!card.parts.empty()) say("  Parts: " + joined(card.parts, ", "), 4);
    for (const std::string& figure : card.figures) say("  Figure: " + figure, 4);
    for (const std::string& check : card.after) say("  Afterwards: " + check, 4);
    if (!card.sources.empty()) say("  " + card.sources, 4);
    if (!card.questions.empty()) print_question(card.questions.front());
}

void Interview::print_question(const QuestionText& question) {
    say(question.ask);
    int number = 0;
    for (const ChoiceText& choice : question.choices) {
        say("  " + std::to_string(++number) + "  " + choice.text + (choice.chosen ? "  (answered)" : "") +
                "  [" + choice.id + "]",
            5);
    }
    say("  ?  Can't tell");
    for (const MeasureField& field : question.fields) {
        const std::string how =
            field.id == question.finding ? "or the figure itself" : "or write: " + field.id + " FIGURE";
        say("  " + how + " (" + field.name + ", " + field.unit +
                (field.text.empty() ? "" : "; now " + field.text) +
                (field.hint.empty() ? "" : "; " + field.hint) + ")",
            4);
    }
}

void Interview::print_causes(const JobPage& page) {
    heading("Likely causes");
    int number = 0;
    for (const CauseLine& cause : page.causes) {
        if (++number > 5) break;
        say("  " + std::to_string(number) + "  " + cause.percent + "  " + cause.name +
                (cause.state.empty() ? "" : " (" + cause.state + ")"),
            5);
    }
    if (!page.not_listed.empty()) say("     " + page.not_listed);
    if (!page.several.empty()) say("     " + page.several);
    if (!page.minutes_left.empty()) say("     " + page.minutes_left);
}

void Interview::print_everything(const JobPage& page) {
    out_ << job_report(page, 80);
}

}  // namespace hardover
