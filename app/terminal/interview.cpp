#include "app/terminal/interview.hpp"

#include <ostream>
#include <sstream>

#include "app/jobs/explain.hpp"
#include "app/jobs/proved.hpp"
#include "app/reports/job_report.hpp"
#include "app/terminal/records_commands.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

Interview::Interview(Context& context, KnowledgeInUse& knowledge, Store& store, Job job)
    : Dialogue(context.streams, context.streams.out),
      in_use_(knowledge),
      knowledge_(knowledge.get()),
      store_(store),
      job_(std::move(job)) {}

int Interview::run() {
    print_help();
    while (true) {
        tell_of_changed_files();
        const JobPage page = make_job_page(in_use_.prepared(), job_);
        if (page.card.kind == StepCard::Kind::handed_back) {
            print_step(page);
            say("Job " + std::to_string(job_.number) +
                " is handed back and filed. See it with: hardover job show " + std::to_string(job_.number));
            return 0;
        }
        print_step(page);
        const std::optional<std::string> line = read_line("> ");
        const bool leaves = !line.has_value() || take_line(trimmed(*line), page) == Flow::leave;
        if (leaves) {
            say("Job " + std::to_string(job_.number) + " is kept. Go on with: hardover interview --job " +
                std::to_string(job_.number));
            return 0;
        }
    }
}

Interview::Flow Interview::take_line(const std::string& line, const JobPage& page) {
    if (line.empty()) {
        take_empty_line();
        return Flow::go_on;
    }
    const auto [word, rest] = first_word(line);
    bool known = true;
    const Flow flow = take_command(word, rest, known);
    if (known) return flow;

    if (!looking_at_.empty()) {
        const StepCard card = question_card(in_use_.prepared(), job_, find(knowledge_.findings, looking_at_));
        if (!card.questions.empty()) take_answer(line, card.questions.front());
        return Flow::go_on;
    }
    switch (page.card.kind) {
        case StepCard::Kind::intake:
            take_complaints(line, page);
            break;
        case StepCard::Kind::remedy:
            take_outcome(line, page.card);
            break;
        case StepCard::Kind::after:
        case StepCard::Kind::call_for_help:
            take_hand_back(line, page);
            break;
        default:
            if (page.card.questions.empty()) break;
            keep_check_in_hand(page.card);
            take_answer(line, page.card.questions.front());
    }
    return Flow::go_on;
}

// Leaves what is asked out of turn, or else asks what the check in hand can tell besides.
void Interview::take_empty_line() {
    const std::vector<std::string> open = open_in_check();
    const bool leaves = !looking_at_.empty();
    looking_at_ = leaves || open.empty() ? "" : open.front();
}

// The next step may lie elsewhere, while what this check shows besides is in front of the eyes now.
void Interview::keep_check_in_hand(const StepCard& card) {
    in_hand_ = {};
    if (card.kind != StepCard::Kind::check && card.kind != StepCard::Kind::prove) return;
    in_hand_ = {card.id, card.heading, {}};
    for (const QuestionText& question : card.questions) in_hand_.findings.push_back(question.finding);
}

std::vector<std::string> Interview::open_in_check() const {
    std::vector<std::string> open;
    for (const std::string& id : in_hand_.findings) {
        const Index finding = find(knowledge_.findings, id);
        if (finding == none || answered_now(job_.facts, finding)) continue;
        const bool worked_out = knowledge_.findings[static_cast<std::size_t>(finding)].from &&
                                job_.assessment.evidence.contains(finding);
        if (!worked_out) open.push_back(id);
    }
    return open;
}

Interview::Flow Interview::take_command(const std::string& word, const std::string& rest, bool& known) {
    if (word == "quit" || word == "q") return Flow::leave;
    if (word == "help" || word == "h") {
        print_help();
    } else if ((word == "undo" || word == "u") && !looking_at_.empty()) {
        looking_at_.clear();  // there is no answer yet to take back
    } else if (word == "undo" || word == "u") {
        const Result<void> undone = undo(store_, in_use_.prepared(), job_, now());
        say(undone ? "Taken back." : undone.error().text());
    } else if (word == "all") {
        print_everything(make_job_page(in_use_.prepared(), job_));
    } else if (word == "why") {
        const StepCard card = make_job_page(in_use_.prepared(), job_).card;
        for (const std::string& branch : card.branches) say("  " + branch, 4);
        if (card.branches.empty()) say(card.why.empty() ? "There is nothing to weigh up here." : card.why);
    } else if (word == "turn") {
        say_each("What would turn it",
                 turning_texts(knowledge_, what_would_turn(in_use_.prepared(), job_.facts)));
        say_each("What each thing matters", trace_texts(knowledge_, trace(in_use_.prepared(), job_.facts)));
    } else if (word == "versus") {
        compare_causes(rest);
    } else if (word == "ask") {
        looking_at_ = find(knowledge_.findings, rest) == none ? "" : rest;
        if (looking_at_.empty())
            say("There is no finding '" + rest + "'. List them with: hardover knowledge list findings");
    } else if (word == "answer") {
        answer_by_name(rest);
    } else if (word == "rig") {
        set_rig(rest);
    } else if (word == "complaint") {
        add_complaints(rest);
    } else if (word == "history") {
        set_history(rest);
    } else if (word == "need") {
        mark_need(rest);
    } else if (word == "reload") {
        read_knowledge_anew();
    } else if (word == "note") {
        keep(Noted{rest});
    } else if (word == "done") {
        hand_back_at_once(rest);
    } else {
        known = false;
    }
    return Flow::go_on;
}

void Interview::tell_of_changed_files() {
    const bool changed = in_use_.changed_on_disk();
    if (changed && !change_told_) say("Note: the knowledge files have changed. Use them with: reload");
    change_told_ = changed;
}

// The job stays as it is: its events are replayed with the new knowledge.
void Interview::read_knowledge_anew() {
    const Result<void> read = in_use_.reload(store_);
    std::istringstream lines(in_use_.told(read));
    for (std::string line; std::getline(lines, line);) say(line, 2);
    if (read) job_ = replay(in_use_.prepared(), job_.number, job_.events, job_.shop);
}

void Interview::take_complaints(const std::string& line, const JobPage& page) {
    std::vector<std::string> chosen;
    for (const ChoiceText& complaint : page.complaints) {
        if (complaint.chosen) chosen.push_back(complaint.id);
    }
    std::istringstream words(line);
    for (std::string word; words >> word;) {
        if (word.back() == ',') word.pop_back();
        const std::optional<std::string> id = chosen_id(word, page.complaints);
        if (!id.has_value()) {
            say("'" + word + "' is not one of the complaints. Give their numbers, such as: 1 or 1, 3");
            return;
        }
        chosen.push_back(*id);
    }
    keep(ComplaintsSet{chosen});
}

void Interview::add_complaints(const std::string& rest) {
    const JobPage page = make_job_page(in_use_.prepared(), job_);
    if (!rest.empty()) {
        take_complaints(rest, page);
        return;
    }
    print_complaints(page);
    say("Add one with: complaint ID");
}

void Interview::take_answer(const std::string& line, const QuestionText& question) {
    if (means_cannot_tell(line)) {
        if (keep(Answered{question.finding, "cannot_tell"})) looking_at_.clear();
        return;
    }
    if (const std::optional<std::string> id = chosen_id(line, question.choices)) {
        if (keep(Answered{question.finding, *id})) looking_at_.clear();
        return;
    }
    // "FIELD NUMBER UNIT" gives one of the numbers the question's worksheet needs.
    const auto [word, rest] = first_word(line);
    for (const MeasureField& field : question.fields) {
        if (field.id != word) continue;
        const bool in_rig = find(knowledge_.findings, field.id) == none;
        if (in_rig)
            keep(RigSet{field.id, rest});
        else
            keep(Answered{field.id, rest});
        return;
    }
    if (keep(Answered{question.finding, line})) looking_at_.clear();
}

void Interview::take_outcome(const std::string& line, const StepCard& card) {
    static const std::vector<ChoiceText> outcomes = {
        {"cured", "Cured", false}, {"better", "Better, not right", false}, {"not_cured", "No change", false}};
    const std::optional<std::string> outcome = chosen_id(line, outcomes);
    if (!outcome.has_value()) {
        say("Say how the boat is after it: 1 cured, 2 better, 3 not_cured.");
        return;
    }
    in_hand_ = {};
    keep(Tried{card.id, *outcome});
}

void Interview::take_hand_back(const std::string& line, const JobPage& page) {
    const std::optional<std::vector<RecordedCause>> told = told_causes(line, page);
    if (told.has_value()) {
        hand_back(*told);
    } else {
        say("Give the number or id of the true cause, and 'seen' after it when it was seen, not only "
            "assumed. Several go with commas between: 1 seen, 3");
    }
}

std::optional<std::vector<RecordedCause>> Interview::told_causes(const std::string& line,
                                                                 const JobPage& page) const {
    std::vector<ChoiceText> shown;
    for (const CauseLine& cause : page.causes) shown.push_back({cause.id, cause.name, false});
    std::vector<RecordedCause> told;
    std::istringstream parts(line + ",");
    for (std::string part; std::getline(parts, part, ',');) {
        const auto [word, rest] = first_word(part);
        const std::optional<std::string> id = chosen_id(word, shown);
        const bool is_id = !word.empty() && word.find_first_of("0123456789") != 0;
        if ((!id.has_value() && !is_id) || (!rest.empty() && rest != "seen")) return std::nullopt;
        // An id that is not shown may be a cause all the same; the job refuses what is none.
        told.push_back({id.value_or(word), rest == "seen"});
    }
    return told;
}

// Without causes: those that were proved and put right.
void Interview::hand_back_at_once(const std::string& rest) {
    const JobPage page = make_job_page(in_use_.prepared(), job_);
    if (!rest.empty()) {
        take_hand_back(rest, page);
        return;
    }
    const std::vector<RecordedCause> suggested = suggested_causes(in_use_.prepared(), job_);
    if (suggested.empty()) {
        say("Nothing is proved and put right yet. Say with which cause the boat goes: done CAUSE, or: done "
            "not_listed");
        return;
    }
    hand_back(suggested);
}

void Interview::hand_back(const std::vector<RecordedCause>& told) {
    keep(hand_back_with(in_use_.prepared(), job_, told, ""));
}

void Interview::answer_by_name(const std::string& rest) {
    const auto [finding, answer] = first_word(rest);
    if (answer.empty()) {
        say("Write: answer FINDING VALUE, such as: answer wheel_feel springy");
        return;
    }
    keep(answer == "-" ? Event(TakenBack{finding})
                       : Event(Answered{finding, means_cannot_tell(answer) ? "cannot_tell" : answer}));
}

void Interview::compare_causes(const std::string& rest) {
    std::vector<ChoiceText> causes;
    for (const CauseLine& cause : make_job_page(in_use_.prepared(), job_).causes) {
        causes.push_back({cause.id, cause.name, false});
    }
    causes.push_back({"not_listed", "Something not on this list", false});
    const auto [first, second] = first_word(rest);
    const std::optional<std::string> a = chosen_id(first, causes);
    const std::optional<std::string> b = chosen_id(second, causes);
    if (!a.has_value() || !b.has_value() || *a == *b) {
        say("Write: versus A B, with the numbers or ids of two causes ('not_listed' for none of them), such "
            "as: versus 1 2");
        return;
    }
    const Index index_a = find(knowledge_.causes, *a);
    const Index index_b = find(knowledge_.causes, *b);
    say_each("One rather than the other",
             contrast_texts(knowledge_, index_a, index_b,
                            contrast(in_use_.prepared(), job_.facts, index_a, index_b)));
}

void Interview::say_each(const std::string& title, const std::vector<std::string>& lines) {
    heading(title);
    for (const std::string& line : lines) say("  " + line, 4);
}

void Interview::set_rig(const std::string& rest) {
    const auto [field, value] = first_word(rest);
    if (!field.empty()) {
        if (value.empty())
            say("Write: rig FIELD VALUE, such as: rig helm manual_pump. A value of - makes it unknown.");
        else
            keep(RigSet{field, value == "-" ? "" : value});
        return;
    }
    heading("Rig");
    for (const RigLine& line : make_job_page(in_use_.prepared(), job_).rig) {
        std::string choices;
        for (const ChoiceText& choice : line.choices) choices += (choices.empty() ? "" : ", ") + choice.id;
        say("  " + line.id + ": " + (line.value.empty() ? "unknown" : line.value) +
                (line.assumed ? " (assumed)" : "") + "  [" + (choices.empty() ? line.field.unit : choices) +
                "]",
            4);
    }
    say("Change one with: rig FIELD VALUE");
}

void Interview::set_history(const std::string& word) {
    const JobPage page = make_job_page(in_use_.prepared(), job_);
    const std::optional<std::string> id = chosen_id(word, page.histories);
    if (id.has_value()) {
        keep(HistorySet{*id});
        return;
    }
    if (!word.empty()) say("There is no history '" + word + "'. There are:");
    for (const ChoiceText& history : page.histories) {
        say("  " + history.id + ": " + history.text + (history.chosen ? " (this one)" : ""));
    }
    say("Set it with: history ID");
}

void Interview::mark_need(const std::string& rest) {
    const auto [need, value] = first_word(rest);
    if (value == "no" || value == "yes") {
        keep(NeedMarked{need, value == "yes"});
        return;
    }
    if (!rest.empty()) say("'" + rest + "' does not say yes or no of one of these:");
    for (const ChoiceText& line : make_job_page(in_use_.prepared(), job_).needs) {
        say("  " + line.id + ": " + line.text + (line.chosen ? "" : " (not available now)"));
    }
    say("Mark one with: need ID no, or: need ID yes");
}

bool Interview::keep(const Event& event) {
    const Result<void> kept = record(store_, in_use_.prepared(), job_, event, now());
    if (!kept) say(kept.error().text());
    return kept.ok();
}

std::string Interview::now() const {
    return utc_now();
}

int run_interview(Context& context, JobNumber number, const std::string& boat) {
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    Result<Knowledge> read = load_knowledge(context, store.value());
    if (!read) return refuse(context, read.error());
    KnowledgeInUse knowledge(std::move(read).value());
    Result<Job> job = [&]() -> Result<Job> {
        if (number != 0) return load_job(store.value(), knowledge.prepared(), number);
        const Opened opened{boat.empty() ? "Boat not named" : boat, "", knowledge.get().fingerprint};
        return start_job(store.value(), knowledge.prepared(), opened, utc_now());
    }();
    if (!job) return refuse(context, job.error());
    const int code = Interview(context, knowledge, store.value(), std::move(job).value()).run();
    back_up_on_close(context, store.value());
    return code;
}

}  // namespace hardover
