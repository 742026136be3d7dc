// Are texts short enough for the pages and plain enough for the reader: names and steps by letters, sentences
// by words, whole texts by their reading grade.
#include <algorithm>
#include <cmath>

#include "rules/reading/elsewhere.hpp"
#include "rules/reading/letters.hpp"
#include "rules/reading/plain_language.hpp"
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
    TextCheck(const Entry& entry, const TradeWords& trade, std::vector<Fault>& faults)
        : entry_(entry), trade_(trade), faults_(faults) {}

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
        plain(key, texts);
    }
    // A text of its own: its sentences and its reading grade.
    void prose(const char* key, const std::vector<std::string>& texts) {
        for (const std::string& text : texts) sentences(key, text);
        plain(key, texts);
    }
    void prose(const char* key, const std::string& text) { prose(key, std::vector<std::string>{text}); }
    void plain(const char* key, const std::vector<std::string>& texts) {
        const ReadingGrade read = reading_grade(texts, trade_);
        if (read.grade <= highest_grade(read.words)) return;
        warn("'" + std::string(key) + "' of '" + entry_.id + "' is hard to read: grade " +
                 tenths(read.grade) + ", more than " + tenths(highest_grade(read.words)) + " for " +
                 std::to_string(read.words) + " words",
             "shorter words and shorter sentences");
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
    static std::string tenths(double number) { return short_number(std::round(10 * number) / 10); }

    void sentences(const char* key, const std::string& text) {
        const int count = words_in_longest_sentence(text);
        if (count > most_words) {
            warn("a sentence in '" + std::string(key) + "' of '" + entry_.id + "' has " +
                     std::to_string(count) + " words, more than " + std::to_string(most_words),
                 "");
        }
    }
    void warn(std::string what, const std::string& text) {
        faults_.push_back({entry_.place, std::move(what), text, true});
    }

    const Entry& entry_;
    const TradeWords& trade_;
    std::vector<Fault>& faults_;
};

// What everybody in the trade calls things: the names of the parts and of how a rig is built.
TradeWords trade_words(const Knowledge& knowledge) {
    TradeWords trade;
    for (const Part& part : knowledge.parts) trade.add(part.name);
    for (const RigField& field : knowledge.rig_fields) {
        trade.add(field.name);
        for (const Word& choice : field.choices) trade.add(choice.text);
    }
    return trade;
}

void check_questions(const Knowledge& knowledge, const TradeWords& trade, std::vector<Fault>& faults) {
    for (const RigField& field : knowledge.rig_fields) {
        TextCheck text(field, trade, faults);
        text.at_most("name", field.name, 32);
        text.at_most("ask", field.ask, 110);
        text.plain("ask", {field.ask});
    }
    for (const Finding& finding : knowledge.findings) {
        TextCheck text(finding, trade, faults);
        text.at_most("name", finding.name, 32);
        text.at_most("ask", finding.ask, 110);
        text.plain("ask", {finding.ask});
        text.at_most("look", finding.look, 110);
        for (const Reading& reading : finding.readings) text.at_most("readings", reading.text, 40);
    }
    for (const Check& check : knowledge.checks) {
        TextCheck text(check, trade, faults);
        text.at_most("name", check.name, 40);
        text.prose("why", check.why);
        text.steps(check.steps, 7);
    }
}

void check_answers_and_work(const Knowledge& knowledge, const TradeWords& trade, std::vector<Fault>& faults) {
    for (const Cause& cause : knowledge.causes) {
        TextCheck text(cause, trade, faults);
        text.at_most("name", cause.name, 38);
        text.prose("about", cause.about);
    }
    for (const Remedy& remedy : knowledge.remedies) {
        TextCheck text(remedy, trade, faults);
        text.at_most("name", remedy.name, 40);
        text.at_most("steps", remedy.steps, 110);
        text.prose("figures", remedy.figures);
        text.prose("after", remedy.after);
    }
    for (const SameCure& same : knowledge.same_cures) TextCheck(same, trade, faults).prose("why", same.why);
    for (const Rule& rule : knowledge.rules) TextCheck(rule, trade, faults).prose("why", rule.why);
}

void check_warnings(const Knowledge& knowledge, const TradeWords& trade, std::vector<Fault>& faults) {
    for (const Caution& caution : knowledge.cautions) {
        TextCheck text(caution, trade, faults);
        text.prose("hurts", caution.hurts);
        text.prose("avoid", caution.avoid);
    }
    for (const Deferral& deferral : knowledge.deferrals) {
        TextCheck(deferral, trade, faults).prose("text", deferral.text);
    }
    for (const Stop& stop : knowledge.stops) TextCheck(stop, trade, faults).prose("text", stop.text);
    for (const Worksheet& sheet : knowledge.worksheets) {
        TextCheck text(sheet, trade, faults);
        text.prose("about", sheet.about);
        for (const WorksheetAdvice& advice : sheet.advice) text.prose("advice", advice.say);
        for (const WorksheetGuard& guard : sheet.holds_when) text.prose("holds_when", guard.otherwise);
    }
}

}  // namespace

void check_texts(const Knowledge& knowledge, std::vector<Fault>& faults) {
    const TradeWords trade = trade_words(knowledge);
    check_questions(knowledge, trade, faults);
    check_answers_and_work(knowledge, trade, faults);
    check_warnings(knowledge, trade, faults);
}

}  // namespace hardover::reading_detail

namespace hardover {

void check_prose(const Knowledge& knowledge, const Entry& entry, const char* key,
                 const std::vector<std::string>& texts, std::vector<Fault>& faults) {
    using namespace reading_detail;
    TextCheck(entry, trade_words(knowledge), faults).prose(key, texts);
}

}  // namespace hardover
