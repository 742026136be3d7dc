#include "app/study/item_text.hpp"

#include <cctype>
#include <cmath>

#include "app/study/items_parts.hpp"
#include "app/study/learner.hpp"

namespace hardover::study {

namespace {

std::string hundredths(double share) {
    return std::to_string(std::lround(100 * share));
}

std::string upper(std::string letters) {
    for (char& one : letters) one = static_cast<char>(std::toupper(static_cast<unsigned char>(one)));
    return letters;
}

std::string sureness_line(double sure, bool right) {
    const double penalty = brier_penalty(sure, right);
    return "You were " + hundredths(sure) + " in 100 sure: penalty " + hundredths(penalty) +
           " of 100 (Brier; 0 is best, an honest figure costs least).";
}

}  // namespace

std::string right_line(const Item& item) {
    if (item.figure) return "Right is " + right_answer(item) + ".";
    if (way_of(item.stem.form) == Way::order) return "A right order is " + upper(right_answer(item)) + ".";
    std::string line;
    for (std::size_t i = 0; i < item.options.size(); ++i) {
        if (!item.options[i].right) continue;
        line += (line.empty() ? "Right is " : "; ") + option_letter(i) + ") " + item.options[i].text;
    }
    return line;
}

ItemText item_text(const Knowledge& knowledge, const Item& item) {
    ItemText text;
    text.heading = form_name(item.stem.form);
    if (item.stem.part != none) text.heading += " · " + at(knowledge.parts, item.stem.part).name;
    text.given = item.given;
    text.question = item.question;
    for (std::size_t i = 0; i < item.options.size(); ++i) {
        text.options.push_back(option_letter(i) + ") " + item.options[i].text);
    }
    switch (way_of(item.stem.form)) {
        case Way::single:
            text.how = "One letter.";
            break;
        case Way::several:
            text.how = "All letters that apply: right ticks count, wrong ticks cost.";
            break;
        case Way::order:
            text.how = "All letters, the first thing first.";
            break;
        case Way::figure:
            break;  // the question itself says so
    }
    return text;
}

FeedbackText feedback_text(const Item& item, const Marked& marked, std::optional<double> sure, int days) {
    FeedbackText text;
    if (marked.mark >= 1) {
        text.verdict = "Right.";
    } else if (marked.mark > 0) {
        text.verdict = "Partly right, worth " + hundredths(marked.mark) + " in 100.";
        text.partly = true;
    } else {
        text.verdict = "Not right.";
    }
    if (!marked.why_not.empty()) text.lines.push_back(marked.why_not);
    if (marked.mark < 1 || item.figure) text.lines.push_back(right_line(item));
    std::string cautions;
    for (const std::string& caution : item.cautions) cautions += (cautions.empty() ? "" : "; ") + caution;
    if (!cautions.empty()) text.lines.push_back("Cautions before this work: " + cautions + ".");
    text.lines.push_back(item.reason);
    if (!item.source.empty()) text.lines.push_back(item.source);
    if (sure) text.lines.push_back(sureness_line(*sure, marked.right));
    text.lines.push_back("Next review: " + days_in_words(days) + ".");
    return text;
}

}  // namespace hardover::study
