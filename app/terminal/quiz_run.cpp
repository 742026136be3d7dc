#include "app/terminal/quiz_run.hpp"

#include <fmt/format.h>

#include <chrono>
#include <ostream>

#include "app/terminal/words.hpp"

namespace hardover {

using namespace study;

QuizRun::QuizRun(Context& context, const Knowledge& knowledge, QuizInHand quiz, Keep keep, bool tells_marks)
    : Dialogue(context.streams, context.streams.out),
      knowledge_(knowledge),
      quiz_(std::move(quiz)),
      keep_(std::move(keep)),
      tells_marks_(tells_marks) {}

Result<bool> QuizRun::run(const std::string& opening) {
    say(opening + "After the answer you may say how sure you are, in 100: b @ 70. Can't tell: ?  Leave: q");
    bool left = false;
    while (!quiz_.at_end() && !left) {
        const Result<bool> answered = ask();
        if (!answered) return answered.error();
        left = !answered.value();
        if (!left) quiz_.go_on();
    }
    out_ << "\n";
    if (tells_marks_) {
        for (const std::string& line : quiz_.closing()) say(line);
    }
    return !left;
}

void QuizRun::print_item() {
    const ItemText text = item_text(knowledge_, quiz_.item());
    out_ << "\n";
    say(fmt::format("{} of {} · {}", quiz_.number(), quiz_.count(), text.heading));
    for (const std::string& line : text.given) say("  " + line, 4);
    say(text.how.empty() ? text.question : text.question + " " + text.how);
    for (const std::string& option : text.options) say("  " + option, 5);
}

// False: the learner left, or the input ended.
Result<bool> QuizRun::ask() {
    print_item();
    const auto shown = std::chrono::steady_clock::now();
    while (const std::optional<std::string> line = read_line("> ")) {
        if (trimmed(*line) == "q" || trimmed(*line) == "quit") return false;
        const std::size_t mark = line->rfind('@');
        std::optional<double> sure;
        if (mark != std::string::npos) {
            const Result<double> read = read_sureness(line->substr(mark + 1));
            if (!read) {
                say(read.error().text());
                continue;
            }
            sure = read.value();
        }
        const auto answer = quiz_.weigh(trimmed(line->substr(0, mark)), sure);
        if (!answer) {
            say(answer.error().text());
            continue;
        }
        const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - shown;
        const Result<void> taken = take(answer.value(), spent.count());
        if (!taken) return taken.error();
        return true;
    }
    return false;
}

Result<void> QuizRun::take(const QuizInHand::Answer& answer, double seconds) {
    if (Result<void> kept = keep_(answer, seconds); !kept) return kept;
    const FeedbackText& feedback = quiz_.take(answer);
    if (!tells_marks_) {
        say("Noted.");
        return {};
    }
    say(feedback.verdict);
    for (const std::string& text : feedback.lines) say("  " + text, 2);
    return {};
}

}  // namespace hardover
