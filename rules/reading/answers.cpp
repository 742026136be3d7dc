// Reads one answer or one rig field's value as a person types it.
#include <algorithm>
#include <cmath>

#include "rules/quantity/decimal_comma.hpp"
#include "rules/reading/reading.hpp"
#include "rules/result/nearest.hpp"

namespace hardover {
namespace {

std::string trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(" \t\r\n");
    if (first == std::string_view::npos) return "";
    return std::string(text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1));
}

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return text;
}

template <typename Words>
std::string listed(const Words& words) {
    std::string line;
    for (const auto& word : words) line += (line.empty() ? "" : ", ") + word.id;
    return line;
}

// Index of the word with this id or text, however it is capitalised; -1 when there is none.
template <typename Words>
int find_word(const Words& words, const std::string& typed) {
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (lower(words[i].id) == typed || lower(words[i].text) == typed) return static_cast<int>(i);
    }
    return -1;
}

template <typename Words>
std::string cure_for(const Words& words, const std::string& typed) {
    std::vector<std::string> ids;
    for (const auto& word : words) ids.push_back(word.id);
    const std::string near = did_you_mean(typed, ids);
    return near.empty() ? "one of: " + listed(words) : near;
}

bool starts_like_a_number(const std::string& text) {
    return text.find_first_of("0123456789") <= 1;  // also "-1" and ".5"
}

}  // namespace

Result<Answer> read_answer(const Finding& finding, std::string_view text) {
    const std::string typed = lower(trimmed(text));
    if (typed == "can't tell" || typed == "cannot_tell" || typed == "?") return Answer{CannotTell{}};
    const int reading = find_word(finding.readings, typed);
    if (reading >= 0) return Answer{reading};

    const bool is_quantity = finding.unit && (finding.readings.empty() || starts_like_a_number(typed));
    if (is_quantity) {
        const Result<Quantity> quantity = read_quantity_of(with_decimal_points(trimmed(text)), *finding.unit);
        if (!quantity) return quantity.error();
        return Answer{quantity.value()};
    }
    std::string cure = cure_for(finding.readings, typed);
    if (finding.unit) cure += ", or a quantity in " + finding.unit->name;
    return Error{Error::Kind::bad_input, "'" + trimmed(text) + "' is no reading of '" + finding.id + "'", "",
                 cure};
}

Result<RigValue> read_rig_value(const RigField& field, std::string_view text) {
    const std::string typed = trimmed(text);
    if (!field.unit) {
        const int choice = find_word(field.choices, lower(typed));
        if (choice >= 0) return RigValue{field.choices[choice].id};
        return Error{Error::Kind::bad_input, "'" + typed + "' is no choice of '" + field.id + "'", "",
                     cure_for(field.choices, lower(typed))};
    }
    const Result<Quantity> quantity = read_quantity_of(with_decimal_points(typed), *field.unit);
    if (!quantity) return quantity.error();
    const double value = quantity.value().value;
    const double tolerance = 1e-9 * std::abs(value);  // 6 in is within 6 in, whatever unit it was typed in
    if (field.least && value < field.least->value - tolerance) {
        return Error{Error::Kind::bad_input, "'" + typed + "' is too small for '" + field.id + "'", "",
                     "at least " + show(*field.least, *field.unit)};
    }
    if (field.most && value > field.most->value + tolerance) {
        return Error{Error::Kind::bad_input, "'" + typed + "' is too large for '" + field.id + "'", "",
                     "at most " + show(*field.most, *field.unit)};
    }
    return RigValue{quantity.value()};
}

Result<Value> read_input_value(const WorksheetInput& input, std::string_view text) {
    if (!input.choices.empty()) {
        const std::string typed = trimmed(text);
        const int choice = find_word(input.choices, lower(typed));
        if (choice >= 0) return Value{Choice{{input.choices[choice].id}}};
        return Error{Error::Kind::bad_input, "'" + typed + "' is no choice of '" + input.id + "'", "",
                     cure_for(input.choices, lower(typed))};
    }
    Result<Quantity> quantity = read_quantity_of(with_decimal_points(text), input.unit);
    if (!quantity) return quantity.error();
    if (quantity.value().spread == 0) quantity.value().spread = input.spread;
    return Value{quantity.value()};
}

}  // namespace hardover
