#include "app/terminal/practice_run.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <ostream>
#include <sstream>

#include "app/jobs/wording.hpp"
#include "app/terminal/practice_words.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

using namespace study::practice;
using jobs_detail::quoted;

PracticeRun::PracticeRun(Context& context, std::ostream& out, Session session, Write write)
    : Dialogue(context.streams, out),
      units_(units_in_use(context)),
      session_(std::move(session)),
      write_(std::move(write)),
      page_(make_page(session_, units_)),
      hinted_at_(session_.work().size()) {}

Result<void> PracticeRun::run() {
    print_start();
    while (session_.phase() != Session::Phase::ended && !input_ended() && !lost_) {
        print_page_help();
        const std::optional<std::string> line = read_line("> ");
        if (!line || take_line(trimmed(*line)) == Flow::leave) break;
    }
    if (lost_) return *lost_;
    return {};
}

void PracticeRun::print_sheets() {
    if (page_.sheets.empty()) say("Nothing has been measured that a worksheet could use.");
    for (const SheetText& sheet : page_.sheets) {
        if (!keep(WorkedOut{sheet.id})) return;
        heading(sheet.name);
        for (const SheetLine& line : sheet.inputs) say("  " + line.name + ": " + line.value, 4);
        for (const SheetLine& line : sheet.results) say("  = " + line.name + ": " + line.value, 4);
        for (const std::string& advice : sheet.advice) say("  " + advice, 4);
        if (!sheet.refused.empty()) say("  " + sheet.refused, 4);
    }
}

PracticeRun::Flow PracticeRun::take_line(const std::string& line) {
    if (line.empty()) {
        take_enter();
        return Flow::go_on;
    }
    if (const std::size_t number = list_number(line)) {
        take_number(number);
        return Flow::go_on;
    }
    const auto [word, rest] = first_word(line);
    if (word == "q" || word == "quit") return Flow::leave;
    if (word == "help" || word == "h" || word == "?") {
        print_help();
    } else if (word == "list" || word == "l") {
        print_near();
    } else if (word == "parts") {
        print_parts();
    } else if (word == "find" || word == "f") {
        find_findings(rest);
    } else if (word == "ask" || word == "look") {
        ask(rest);
    } else if (word == "suspect" || word == "name") {
        suspect(rest, word == "name");
    } else if (word == "causes") {
        list_causes(rest);
    } else if (word == "prove") {
        prove(rest);
    } else if (word == "fix") {
        fix(rest);
    } else if (word == "hint") {
        hint(rest);
    } else if (word == "notes") {
        print_notes();
    } else if (word == "boat") {
        print_boat();
    } else if (word == "sheets" || word == "sheet") {
        print_sheets();
    } else if (word == "call") {
        call_for_help();
    } else if (word == "done") {
        hand_over();
    } else {
        find_findings(line);
    }
    return Flow::go_on;
}

void PracticeRun::take_enter() {
    if (page_.led) {
        do_work(page_.led->event);
    } else if (session_.boat_is_right()) {
        hand_over();
    } else {
        say("Type a number of the list, or help.");
    }
}

void PracticeRun::take_number(std::size_t number) {
    if (number > shown_.ids.size()) {
        say(fmt::format("There is no number {} in the list. Show it with: list", number));
        return;
    }
    const Shown shown = shown_;
    const std::string& id = shown.ids[number - 1];
    switch (shown.kind) {
        case Shown::Kind::findings:
            do_work(Asked{id});
            break;
        case Shown::Kind::causes:
            if (shown.to_prove) {
                do_work(Proved{id});
            } else {
                say_cause(id, shown.for_good, shown.sure);
            }
            break;
        case Shown::Kind::remedies:
            do_work(Remedied{id});
            break;
        case Shown::Kind::parts:
            for (const FindingGroup& group : page_.parts) {
                if (group.id == id) print_items(group.name + ":", group.items);
            }
            break;
    }
}

void PracticeRun::find_findings(const std::string& words) {
    std::vector<FindingItem> found;
    for (const FindingGroup& group : page_.parts) {
        for (const FindingItem& item : group.items) {
            if (has_words(item.name + " " + item.ask + " " + item.id, words)) found.push_back(item);
        }
    }
    if (found.empty()) {
        say(quoted(words) + " is neither a thing to do nor a thing to look at here. Type help, or parts.");
        return;
    }
    print_items("Look at which? Give its number.", found);
}

void PracticeRun::ask(const std::string& words) {
    for (const FindingGroup& group : page_.parts) {
        for (const FindingItem& item : group.items) {
            if (item.id == words || lower(item.name) == lower(words)) {
                do_work(Asked{item.id});
                return;
            }
        }
    }
    find_findings(words);
}

void PracticeRun::list_causes(const std::string& words) {
    const std::vector<NamedItem> found = matching(page_.causes, words);
    shown_ = {};
    shown_.kind = Shown::Kind::causes;
    std::string part;
    for (const NamedItem& cause : found) {
        if (cause.part != part) say(cause.part + ":");
        part = cause.part;
        shown_.ids.push_back(cause.id);
        say(fmt::format("  {:>3}  {}", shown_.ids.size(), cause.name), 7);
    }
    say(found.empty() ? "No cause has these words in its name." : "A number says that you suspect it.");
}

void PracticeRun::suspect(const std::string& rest, bool for_good) {
    if (const std::string odd = odd_sureness(rest); !odd.empty()) {
        say(fmt::format("How sure you are is a whole number from 0 to 100, and {} is none.", odd));
        return;
    }
    const auto [words, sure] = split_sureness(rest);
    if (words.empty()) {
        say(fmt::format("Say which cause: {} HOSE 60. List them with: causes",
                        for_good ? "name" : "suspect"));
        return;
    }
    const std::vector<NamedItem> found = matching(page_.causes, words);
    if (found.size() == 1) {
        say_cause(found.front().id, for_good, sure);
        return;
    }
    if (found.empty()) {
        say("No cause has these words in its name. List them with: causes, or: causes HOSE");
        return;
    }
    say("Which? Give its number.");
    shown_ = {Shown::Kind::causes, {}, for_good, false, sure};
    for (const NamedItem& cause : found) {
        shown_.ids.push_back(cause.id);
        say(fmt::format("  {:>2}  {}", shown_.ids.size(), cause.name), 6);
    }
}

void PracticeRun::say_cause(const std::string& id, bool for_good, std::optional<double> sure) {
    while (!sure) {
        const std::optional<std::string> line = read_line("How sure are you, in 100? ");
        if (!line) return;
        if (trimmed(*line).empty()) {
            say("Nothing is noted.");
            return;
        }
        sure = split_sureness("x " + trimmed(*line)).second;
        if (!sure) {
            say("A whole number from 0 to 100: in how many of 100 such boats would you be right? An empty "
                "line "
                "notes nothing.");
        }
    }
    const PracticeEvent event =
        for_good ? PracticeEvent(Named{id, *sure}) : PracticeEvent(Suspected{id, *sure});
    if (!keep(event)) return;
    thought_ = id;
    say("Noted: " + page_.statements.back() + ".");
}

void PracticeRun::prove(const std::string& words) {
    if (words.empty()) {
        if (thought_.empty()) {
            say("Say first what you suspect: suspect WORDS 60. Or: prove WORDS");
        } else {
            do_work(Proved{thought_});
        }
        return;
    }
    const std::vector<NamedItem> found = matching(page_.causes, words);
    if (found.size() == 1) {
        do_work(Proved{found.front().id});
        return;
    }
    say(found.empty() ? "No cause has these words in its name." : "Which? Give its number.");
    shown_ = {Shown::Kind::causes, {}, false, true, std::nullopt};
    for (const NamedItem& cause : found) {
        shown_.ids.push_back(cause.id);
        say(fmt::format("  {:>2}  {}", shown_.ids.size(), cause.name), 6);
    }
}

void PracticeRun::fix(const std::string& words) {
    const Knowledge& knowledge = session_.knowledge();
    if (words.empty()) {
        const Index cause = find(knowledge.causes, thought_);
        if (cause == none) {
            say("Say first what is wrong: name WORDS 80. Or: fix WORDS");
            return;
        }
        const Index remedy = knowledge.causes[static_cast<std::size_t>(cause)].remedy;
        do_work(Remedied{knowledge.remedies[static_cast<std::size_t>(remedy)].id});
        return;
    }
    const std::vector<NamedItem> found = matching(page_.remedies, words);
    if (found.size() == 1) {
        do_work(Remedied{found.front().id});
        return;
    }
    say(found.empty() ? "No remedy has these words in its name." : "Which? Give its number.");
    shown_ = {};
    shown_.kind = Shown::Kind::remedies;
    for (const NamedItem& remedy : found) {
        shown_.ids.push_back(remedy.id);
        say(fmt::format("  {:>2}  {}. {}", shown_.ids.size(), remedy.name, remedy.about), 6);
    }
}

void PracticeRun::hint(const std::string& rest) {
    if (session_.work().size() != hinted_at_) hinted_ = 0;
    hinted_at_ = session_.work().size();
    const bool given = rest == "1" || rest == "2" || rest == "3";
    hinted_ = given ? std::stoi(rest) : std::min(3, hinted_ + 1);
    if (!keep(Hinted{hinted_})) return;
    for (const std::string& line : hint_text(session_, hinted_)) say("  " + line, 2);
    if (hinted_ < 3) say(fmt::format("  (hint again: {})", hint_name(hinted_ + 1)));
}

void PracticeRun::hand_over() {
    bool checked = false;
    if (session_.boat_is_right()) {
        const std::optional<std::string> line = read_line("Have you done the checks above? yes or no: ");
        if (!line) return;
        checked = !trimmed(*line).empty() && lower(trimmed(*line)).front() == 'y';
    }
    keep(HandedOver{checked});
}

// What counts for a class is not ended by a slip of the finger.
void PracticeRun::call_for_help() {
    if (session_.begun().of_a_set && !session_.boat_is_right()) {
        const std::optional<std::string> line =
            read_line("Calling for help ends this boat, and it counts as it is. Call? yes or no: ");
        if (!line) return;
        if (trimmed(*line).empty() || lower(trimmed(*line)).front() != 'y') {
            say("No help was called.");
            return;
        }
    }
    do_work(GaveUp{});
}

void PracticeRun::do_work(PracticeEvent event) {
    if (!mind_cautions(event)) return;
    print_card(event);
    if (!keep(event)) return;
    for (const std::string& line : what_happened(session_, units_)) say(line, 2);
    say(page_.clock + ".");
}

bool PracticeRun::mind_cautions(const PracticeEvent& event) {
    for (const CautionQuestion& question : caution_questions(session_, event)) {
        say("CAUTION. " + question.ask);
        int number = 0;
        for (const ChoiceText& option : question.options) {
            if (question.pick) say(fmt::format("  {}  {}", ++number, option.text), 5);
        }
        if (!question.pick) print_cautions(question.cautions);
        const std::optional<Precautions> said = read_precautions(question);
        if (!said || !keep(*said)) return false;
        const std::string left_out = caution_feedback(question, *said);
        if (!left_out.empty()) say(left_out);
        if (question.pick) print_cautions(question.cautions);
    }
    return true;
}

// Asks until there are numbers, or "skip". Where nothing is to be picked, Enter says that all were minded.
std::optional<Precautions> PracticeRun::read_precautions(const CautionQuestion& question) {
    while (true) {
        const std::optional<std::string> line =
            read_line(question.pick ? "Their numbers, such as 1 3; or skip: "
                                    : "Enter when you have done so; or skip: ");
        if (!line) return std::nullopt;
        Precautions said{question.work, {}, lower(trimmed(*line)) == "skip"};
        if (said.skipped) return said;
        if (!question.pick) {
            for (const CautionText& caution : question.cautions) said.named.push_back(caution.id);
            return said;
        }
        std::istringstream numbers(*line);
        bool understood = false;
        bool odd = false;
        for (std::string word; numbers >> word; understood = true) {
            const std::size_t chosen = list_number(word);
            odd = odd || chosen == 0 || chosen > question.options.size();
            if (!odd) said.named.push_back(question.options[chosen - 1].id);
        }
        if (understood && !odd) return said;
        say("Give the numbers of the cautions that belong here, or type skip. Skipping is kept.");
    }
}

// What is refused is not kept; what cannot be written ends the run.
bool PracticeRun::keep(const PracticeEvent& event) {
    const Result<void> taken = session_.take(event);
    if (!taken) {
        say(taken.error().text());
        return false;
    }
    page_ = make_page(session_, units_);
    if (!write_) return true;
    const Result<void> written = write_(event);
    if (!written) lost_ = written.error();
    return written.ok();
}

}  // namespace hardover
