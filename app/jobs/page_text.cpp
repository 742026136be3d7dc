// Names, values and conditions of the knowledge in words.
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <string_view>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/replay.hpp"
#include "app/jobs/wording.hpp"
#include "rules/reasoning/evidence.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

// A name that conditions use, for people, with the words it may be compared with.
struct SpokenName {
    std::string name;
    std::vector<Word> words;
    std::optional<Unit> unit;
};

template <typename E>
std::vector<Word> names_as_words(const std::vector<E>& entries) {
    std::vector<Word> words;
    for (const E& entry : entries) words.push_back({entry.id, entry.name});
    return words;
}

std::optional<SpokenName> spoken_result(const Knowledge& knowledge, const std::string& name) {
    for (const Worksheet& sheet : knowledge.worksheets) {
        for (const WorksheetOutput& result : sheet.results) {
            if (sheet.id + "." + result.id == name)
                return SpokenName{lower_first(result.name), {}, result.unit};
        }
    }
    return std::nullopt;
}

SpokenName spoken_name(const Knowledge& knowledge, const std::string& name) {
    if (name == "history") return {"the history", names_as_words(knowledge.histories), {}};
    if (name == "complaint") return {"the complaint", names_as_words(knowledge.complaints), {}};
    if (name.starts_with("rig.")) {
        const Index field = find(knowledge.rig_fields, std::string_view(name).substr(4));
        if (field != none) {
            const RigField& entry = knowledge.rig_fields[field];
            return {lower_first(entry.name), entry.choices, entry.unit};
        }
    }
    if (const Index finding = find(knowledge.findings, name); finding != none) {
        const Finding& entry = knowledge.findings[finding];
        SpokenName spoken{lower_first(entry.name), {}, entry.unit};
        for (const Reading& reading : entry.readings) spoken.words.push_back({reading.id, reading.text});
        return spoken;
    }
    if (auto result = spoken_result(knowledge, name)) return *result;
    return {spoken_id(name.starts_with("fact.") ? name.substr(5) : name), {}, {}};
}

std::string word_text(const SpokenName& spoken, const std::string& id) {
    for (const Word& word : spoken.words) {
        if (word.id == id) return quoted(word.text);
    }
    return spoken_id(id);
}

std::string choice_text(const SpokenName& spoken, const Choice& choice, const std::string& last) {
    std::vector<std::string> texts;
    for (const std::string& id : choice.possible) texts.push_back(word_text(spoken, id));
    return listed(texts, last);
}

// "helm is “Manual helm pump”", or "" when the value is not known.
std::string name_and_value(View& view, const std::string& name) {
    const SpokenName spoken = spoken_name(view.knowledge, name);
    const Value value = view.situation.value_of(name);
    if (const Truth* truth = std::get_if<Truth>(&value)) {
        if (*truth == Truth::unknown) return "";
        return fmt::format("{} {}", spoken.name, *truth == Truth::yes ? "holds" : "does not hold");
    }
    if (const Choice* choice = std::get_if<Choice>(&value)) {
        const char* last = name == "complaint" ? "and" : "or";
        return fmt::format("{} is {}", spoken.name, choice_text(spoken, *choice, last));
    }
    const auto quantity = quantity_of(value);
    if (!quantity || !spoken.unit) return "";
    std::string text = fmt::format("{} is {}", spoken.name, show(*quantity, *spoken.unit, view.units()));
    if (const Measured* measured = std::get_if<Measured>(&value)) {
        text += fmt::format(" ({})", choice_text(spoken, measured->reading, "or"));
    }
    return text;
}

std::string comparison_text(std::string_view sign) {
    if (sign == "<") return "is less than";
    if (sign == "<=") return "is at most";
    if (sign == ">") return "is more than";
    if (sign == ">=") return "is at least";
    if (sign == "=" || sign == "==") return "is";
    if (sign == "!=") return "is not";
    return std::string(sign);
}

bool in_word(char letter) {
    return std::isalnum(static_cast<unsigned char>(letter)) || letter == '_' || letter == '.';
}

bool in_comparison(char letter) {
    return letter == '<' || letter == '>' || letter == '=' || letter == '!';
}

bool is_grammar(std::string_view word) {
    constexpr std::string_view words[] = {"and", "or", "not", "is", "one", "of", "known", "unknown"};
    return std::find(std::begin(words), std::end(words), word) != std::end(words);
}

std::string source_line(const Source& source) {
    switch (source.kind) {
        case Source::Kind::published:
            return source.where.empty() ? source.name : fmt::format("{} ({})", source.name, source.where);
        case Source::Kind::common_practice:
            return "common practice, no source";
        case Source::Kind::from_memory:
            return "from memory";
        case Source::Kind::invented:
            return "invented for teaching";
    }
    return "";
}

}  // namespace

std::string source_text(const Knowledge& knowledge, const std::vector<Index>& sources) {
    std::vector<std::string> lines;
    for (const Index source : sources) {
        const std::string line = source_line(knowledge.sources[source]);
        if (std::find(lines.begin(), lines.end(), line) == lines.end()) lines.push_back(line);
    }
    std::string text;
    for (const std::string& line : lines) text += (text.empty() ? "" : "; ") + line;
    return text.empty() ? "" : fmt::format("Source: {}", text);
}

std::string answer_text(const Knowledge& knowledge, Index finding, const Answer& answer, UnitSystem units) {
    const Finding& entry = knowledge.findings[finding];
    if (const int* reading = std::get_if<int>(&answer.given)) return entry.readings[*reading].text;
    const Quantity* quantity = std::get_if<Quantity>(&answer.given);
    if (quantity == nullptr || !entry.unit) return "can't tell";
    const Quantity measured = with_spread(*quantity, entry.spread);
    const std::string number = show(measured, *entry.unit, units);
    if (entry.readings.empty()) return number;
    std::vector<std::string> readings;
    for (const std::string& id : possible_readings(entry, measured).possible) {
        const int reading = find_reading(entry, id);
        if (reading >= 0) readings.push_back(entry.readings[reading].text);
    }
    return fmt::format("{} ({})", number, listed(readings, "or"));
}

namespace jobs_detail {

std::string cause_name(const Knowledge& knowledge, Index cause) {
    return cause == none ? "something not on this list" : knowledge.causes[cause].name;
}

double probability_of(const Job& job, Index cause) {
    if (cause == none) return job.assessment.not_listed;
    for (const RankedCause& ranked : job.assessment.ranking) {
        if (ranked.cause == cause) return ranked.probability;
    }
    return 0;
}

std::string spoken_condition(const Knowledge& knowledge, const Expression& condition) {
    const std::string& text = condition.text();
    const auto& names = condition.names();
    std::string spoken;
    SpokenName current;
    bool in_list = false;  // inside "one of (a, b)", which is spoken as "a or b"
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at + 1;
        const auto rest = std::string_view(text).substr(at);
        if (rest.starts_with("one of (")) {
            in_list = true;
            end = at + std::string_view("one of (").size();
        } else if (in_word(text[at])) {
            while (end < text.size() && in_word(text[end])) ++end;
            const std::string word = text.substr(at, end - at);
            if (std::find(names.begin(), names.end(), word) != names.end()) {
                current = spoken_name(knowledge, word);
                spoken += current.name;
            } else {
                spoken += is_grammar(word) ? word : word_text(current, word);
            }
        } else if (in_comparison(text[at])) {
            while (end < text.size() && in_comparison(text[end])) ++end;
            spoken += comparison_text(rest.substr(0, end - at));
        } else if (in_list && text[at] == ',') {
            spoken += " or";
        } else if (in_list && text[at] == ')') {
            in_list = false;
        } else {
            spoken += text[at];
        }
        at = end;
    }
    return spoken;
}

std::string spoken_because(View& view, const std::vector<std::string>& names) {
    std::vector<std::string> parts;
    for (const std::string& name : names) {
        std::string part = name_and_value(view, name);
        if (!part.empty()) parts.push_back(std::move(part));
    }
    return listed(parts);
}

std::string rig_value_text(const RigField& field, const RigValue& value, UnitSystem units) {
    if (const Quantity* quantity = std::get_if<Quantity>(&value)) {
        return field.unit ? show(*quantity, *field.unit, units) : "";
    }
    const std::string& id = std::get<std::string>(value);
    for (const Word& choice : field.choices) {
        if (choice.id == id) return choice.text;
    }
    return spoken_id(id);
}

std::string said_rig_value(const RigField& field, const RigValue& value, UnitSystem units) {
    const Quantity* quantity = std::get_if<Quantity>(&value);
    if (quantity == nullptr || !field.unit || !(field.unit->dimension == Dimension{1, 0, 0, 0, 0}))
        return rig_value_text(field, value, units);
    // The coarsest step within 3 in 100 of the length (from memory: how closely lengths are told).
    constexpr double within = 0.03;
    static const std::vector<double> us_steps{0.125, 0.25, 0.5, 1, 6, 12};  // in
    static const std::vector<double> metric_steps{1, 5, 10, 50, 100, 500};  // mm
    const bool us = units == UnitSystem::us;
    const double unit = us ? 0.0254 : 0.001;
    Quantity said = *quantity;
    for (const double step : us ? us_steps : metric_steps) {
        if (step * unit > within * std::abs(quantity->value)) break;
        said.value = std::round(quantity->value / (step * unit)) * step * unit;
    }
    return show(said, *field.unit, units);
}

std::optional<Quantity> quantity_of(const Value& value) {
    if (const Quantity* quantity = std::get_if<Quantity>(&value)) return *quantity;
    if (const Measured* measured = std::get_if<Measured>(&value)) return measured->quantity;
    return std::nullopt;
}

std::vector<CautionText> caution_texts(const Knowledge& knowledge, const std::vector<Index>& cautions) {
    std::vector<CautionText> texts;
    for (const Index index : cautions) {
        const Caution& caution = knowledge.cautions[index];
        const bool there = std::any_of(texts.begin(), texts.end(),
                                       [&caution](const CautionText& t) { return t.id == caution.id; });
        if (!there) texts.push_back({caution.id, caution.name, caution.hurts, caution.avoid});
    }
    return texts;
}

std::string deferral_text(const Deferral& deferral) {
    return fmt::format("{}: {} Left to: {}", deferral.name, sentence(deferral.text),
                       sentence(lower_first(deferral.to)));
}

}  // namespace jobs_detail

std::string outcome_text(Outcome outcome) {
    switch (outcome) {
        case Outcome::cured:
            return "cured";
        case Outcome::better:
            return "better, not cured";
        case Outcome::not_cured:
            return "not cured";
    }
    return "";
}

}  // namespace hardover
