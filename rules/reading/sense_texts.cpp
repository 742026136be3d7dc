// Are texts short enough for the pages and the reader: names and steps by letters, sentences by words.
#include <algorithm>

#include "rules/reading/letters.hpp"
#include "rules/reading/sense.hpp"

namespace hardover::reading_detail {
namespace {

constexpr int most_words = 25;  // in a sentence

int words_in_longest_sentence(const std::string& text) {
    int longest = 0;
    int words = 0;
    bool in_word = false;
    for (std::size_t i = 0; i <= text.size(); ++i) {
        const char c = i < text.size() ? text[i] : ' ';
        const bool is_space = c == ' ' || c == '\n' || c == '\t';
        if (!is_space) {
            in_word = true;
            continue;
        }
        if (!in_word) continue;
        in_word = false;
        longest = std::max(longest, ++words);
        const char last = text[i - 1];
        if (last == '.' || last == '!' || last == '?' || last == ':') words = 0;
    }
    return longest;
}

class TextCheck {
  public:
    TextCheck(const Entry& entry, std::vector<Fault>& faults) : entry_(entry), faults_(faults) {}

    void at_most(const char* key, const std::string& text, int letters) {
        const int count = count_letters(text);
        if (count > letters) {
            warn("'" + std::string(key) + "' of '" + entry_.id + "' has " + std::to_string(count) +
                     " letters, more than " + std::to_string(letters),
                 text);
        }
        sentences(key, text);
    }
    void at_most(const char* key, const std::vector<std::string>& texts, int letters) {
        for (const std::string& text : texts) at_most(key, text, letters);
    }
    void sentences(const char* key, const std::string& text) {
        const int count = words_in_longest_sentence(text);
        if (count > most_words) {
            warn("a sentence in '" + std::string(key) + "' of '" + entry_.id + "' has " +
                     std::to_string(count) + " words, more than " + std::to_string(most_words),
                 "");
        }
    }
    void sentences(const char* key, const std::vector<std::string>& texts) {
        for (const std::string& text : texts) sentences(key, text);
    }
    void steps(const std::vector<std::string>& steps, std::size_t most) {
        at_most("steps", steps, 110);
        if (steps.size() > most) {
            warn("'" + entry_.id + "' has " + std::to_string(steps.size()) + " steps, more than " +
                     std::to_string(most),
                 "");
        }
    }

  private:
    void warn(std::string what, const std::string& text) {
        faults_.push_back({entry_.place, std::move(what), text, true});
    }

    const Entry& entry_;
    std::vector<Fault>& faults_;
};

void check_questions(const Knowledge& knowledge, std::vector<Fault>& faults) {
    for (const RigField& field : knowledge.rig_fields) {
        TextCheck text(field, faults);
        text.at_most("name", field.name, 32);
        text.at_most("ask", field.ask, 110);
    }
    for (const Finding& finding : knowledge.findings) {
        TextCheck text(finding, faults);
        text.at_most("name", finding.name, 32);
        text.at_most("ask", finding.ask, 110);
        text.at_most("look", finding.look, 110);
        for (const Reading& reading : finding.readings) text.at_most("readings", reading.text, 40);
    }
    for (const Check& check : knowledge.checks) {
        TextCheck text(check, faults);
        text.at_most("name", check.name, 40);
        text.sentences("why", check.why);
        text.steps(check.steps, 7);
    }
}

void check_answers_and_work(const Knowledge& knowledge, std::vector<Fault>& faults) {
    for (const Cause& cause : knowledge.causes) {
        TextCheck text(cause, faults);
        text.at_most("name", cause.name, 38);
        text.sentences("about", cause.about);
    }
    for (const Remedy& remedy : knowledge.remedies) {
        TextCheck text(remedy, faults);
        text.at_most("name", remedy.name, 40);
        text.at_most("steps", remedy.steps, 110);
        text.sentences("figures", remedy.figures);
        text.sentences("after", remedy.after);
    }
    for (const Rule& rule : knowledge.rules) TextCheck(rule, faults).sentences("why", rule.why);
}

void check_warnings(const Knowledge& knowledge, std::vector<Fault>& faults) {
    for (const Caution& caution : knowledge.cautions) {
        TextCheck text(caution, faults);
        text.sentences("hurts", caution.hurts);
        text.sentences("avoid", caution.avoid);
    }
    for (const Deferral& deferral : knowledge.deferrals) {
        TextCheck(deferral, faults).sentences("text", deferral.text);
    }
    for (const Stop& stop : knowledge.stops) TextCheck(stop, faults).sentences("text", stop.text);
    for (const Worksheet& sheet : knowledge.worksheets) {
        TextCheck text(sheet, faults);
        text.sentences("about", sheet.about);
        for (const WorksheetAdvice& advice : sheet.advice) text.sentences("advice", advice.say);
    }
}

}  // namespace

void check_texts(const Knowledge& knowledge, std::vector<Fault>& faults) {
    check_questions(knowledge, faults);
    check_answers_and_work(knowledge, faults);
    check_warnings(knowledge, faults);
}

}  // namespace hardover::reading_detail
