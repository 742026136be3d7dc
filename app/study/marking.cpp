#include "app/study/marking.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>
#include <vector>

#include "app/study/scoring.hpp"
#include "rules/quantity/decimal_comma.hpp"

namespace hardover::study {

namespace {

constexpr double without_unit = 0.8;  // mark of a right number
constexpr double counts_as_right = 0.8;

std::string letters_up_to(std::size_t count) {
    return "a to " + std::string(1, static_cast<char>('a' + count - 1));
}

Result<Marked> mark_single(const Item& item, const std::vector<int>& choices) {
    if (choices.size() != 1) {
        return Error{Error::Kind::bad_input, "only one is right here", "", "give one letter"};
    }
    const Option& chosen = item.options[static_cast<std::size_t>(choices.front())];
    return Marked{chosen.right ? 1.0 : 0.0, chosen.right, chosen.right ? "" : chosen.why};
}

Marked mark_several(const Item& item, const std::vector<int>& choices) {
    std::vector<bool> right;
    for (const Option& option : item.options) right.push_back(option.right);
    std::vector<bool> ticked(right.size(), false);
    Marked marked;
    for (const int choice : choices) {
        const Option& option = item.options[static_cast<std::size_t>(choice)];
        ticked[static_cast<std::size_t>(choice)] = true;
        if (option.right || option.why.empty()) continue;
        marked.why_not += (marked.why_not.empty() ? "" : " ") +
                          option_letter(static_cast<std::size_t>(choice)) + ") " + option.why;
    }
    marked.mark = several_mark(right, ticked);
    marked.right = marked.mark >= counts_as_right;
    return marked;
}

Result<Marked> mark_order(const Item& item, const std::vector<int>& order) {
    if (order.size() != item.options.size()) {
        return Error{Error::Kind::bad_input, "the order is not complete", "",
                     "give all letters from " + letters_up_to(item.options.size()) + ", the first first"};
    }
    Marked marked;
    marked.mark = order_mark(order, item.rules);
    marked.right = marked.mark >= counts_as_right;
    const auto place = [&](int option) { return std::find(order.begin(), order.end(), option); };
    for (const Before& rule : item.rules) {
        if (place(rule.first) < place(rule.second) || !marked.why_not.empty()) continue;
        const auto text = [&](int option) {
            std::string quoted = item.options[static_cast<std::size_t>(option)].text;
            if (!quoted.empty() && quoted.back() == '.')
                quoted.pop_back();  // the sentence goes on, or has its own
            return quoted;
        };
        marked.why_not = "“" + text(rule.first) + "” must come before “" + text(rule.second) + "”.";
    }
    return marked;
}

Marked mark_number(const Figure& figure, double value) {
    if (std::abs(value - figure.right) <= figure.tolerance) return {1, true, ""};
    for (const Slip& slip : figure.slips) {
        if (std::abs(value - slip.value) > figure.tolerance) continue;
        return {slip.of_unit ? mark_of_unit_slip : mark_of_slip, false, "That looks like " + slip.name + "."};
    }
    return {};
}

bool is_bare_number(const std::string& typed) {
    return std::none_of(typed.begin(), typed.end(), [](unsigned char letter) {
        return std::isalpha(letter) || letter == '"' || letter == '%' || letter > 127;
    });
}

// What is typed behind the number; empty when it is no single unit ("3 ft 4 in").
std::optional<Unit> unit_typed(const std::string& typed) {
    const std::size_t start = typed.find_first_not_of("+-0123456789./ ");
    if (start == std::string::npos) return std::nullopt;
    const Result<Unit> unit = find_unit(typed.substr(start));
    if (!unit) return std::nullopt;
    return unit.value();
}

Result<Marked> mark_figure(const Item& item, const std::string& answer) {
    const Figure& figure = *item.figure;
    const std::string typed = with_decimal_points(answer);
    const bool bare = is_bare_number(typed);
    const Result<Quantity> read = read_quantity(typed, bare ? figure.unit.name : std::string());
    if (!read) return read.error();
    if (!(read.value().dimension == figure.unit.dimension)) {
        return Marked{0, false,
                      "That is a " + name_of(read.value().dimension) + "; a " +
                          name_of(figure.unit.dimension) + " was asked for."};
    }
    const std::optional<Unit> typed_in = unit_typed(typed);
    if (figure.given_in && typed_in && typed_in->factor == figure.given_in->factor) {
        return Marked{0, false, "It was given in " + figure.given_in->name + " already."};
    }
    Marked marked = mark_number(figure, read.value().value);
    if (bare && !figure.unit.dimension.is_number() && marked.right) {
        marked.mark = without_unit;
        marked.why_not = "The unit is missing.";
    }
    return marked;
}

std::string trimmed(const std::string& text) {
    const std::size_t first = text.find_first_not_of(" \t\r");
    if (first == std::string::npos) return "";
    return text.substr(first, text.find_last_not_of(" \t\r") - first + 1);
}

}  // namespace

Result<std::vector<int>> read_choices(const Item& item, const std::string& typed) {
    const int count = static_cast<int>(item.options.size());
    std::vector<int> choices;
    for (const char letter : typed) {
        const auto plain = static_cast<unsigned char>(letter);
        if (std::isspace(plain) || letter == ',' || letter == '.' || letter == ')') continue;
        int choice = -1;
        if (std::isdigit(plain)) choice = letter - '1';
        if (std::isalpha(plain)) choice = std::tolower(plain) - 'a';
        if (choice < 0 || choice >= count) {
            return Error{Error::Kind::bad_input, "'" + std::string(1, letter) + "' is none of the choices",
                         "", "give letters from " + letters_up_to(item.options.size())};
        }
        if (std::find(choices.begin(), choices.end(), choice) != choices.end()) {
            return Error{Error::Kind::bad_input, "a choice stands there twice", "", "name each once"};
        }
        choices.push_back(choice);
    }
    if (choices.empty()) {
        return Error{Error::Kind::bad_input, "there is no answer", "",
                     "give letters from " + letters_up_to(item.options.size()) + ", or ? for can't tell"};
    }
    return choices;
}

Result<Marked> mark_answer(const Item& item, const std::string& typed) {
    const std::string answer = trimmed(typed);
    if (answer == "?" || answer == "can't tell") return Marked{};
    if (item.figure) return mark_figure(item, answer);
    const Result<std::vector<int>> choices = read_choices(item, answer);
    if (!choices) return choices.error();
    switch (way_of(item.stem.form)) {
        case Way::single:
            return mark_single(item, choices.value());
        case Way::order:
            return mark_order(item, choices.value());
        case Way::several:
        case Way::figure:
            break;
    }
    return mark_several(item, choices.value());
}

Result<double> read_sureness(const std::string& typed) {
    const std::string text = trimmed(typed);
    const Error unread{Error::Kind::bad_input, "'" + text + "' is not a chance", "",
                       "how many in 100, such as 70"};
    char* end = nullptr;
    double sure = std::strtod(text.c_str(), &end);
    const std::string rest = trimmed(end);
    if (end == text.c_str() || !std::isfinite(sure) || sure < 0) return unread;
    if (rest == "in 10") {
        sure /= 10;
    } else if (rest == "%" || rest == "in 100" || (rest.empty() && sure > 1)) {
        sure /= 100;
    } else if (!rest.empty()) {
        return unread;
    }
    if (sure > 1) return unread;
    return std::clamp(sure, 0.01, 0.99);
}

Grade grade_of(double mark, std::optional<double> sure) {
    if (mark < 0.5) return Grade::again;
    const bool unsure = sure && *sure < 0.5;
    return mark < counts_as_right || unsure ? Grade::hard : Grade::good;
}

}  // namespace hardover::study
