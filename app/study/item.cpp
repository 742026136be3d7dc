#include "app/study/item.hpp"

#include <algorithm>
#include <array>
#include <numeric>

namespace hardover::study {

namespace {

struct FormText {
    const char* id;
    const char* name;
    Way way;
};
constexpr std::array<FormText, form_count> form_texts = {{
    {"signs", "Cause from signs", Way::single},
    {"speaks", "Cause from one reading", Way::single},
    {"shows", "Signs of a cause", Way::several},
    {"apart", "Telling two causes apart", Way::single},
    {"proof", "Check that proves", Way::single},
    {"remedy", "Remedy of a cause", Way::single},
    {"order", "Order of the work", Way::order},
    {"next", "Next step", Way::single},
    {"caution", "Missing caution", Way::single},
    {"figure", "Figure with its unit", Way::figure},
    {"place", "Place on the drawing", Way::single},
    {"method", "Way of working", Way::single},
    {"stopping", "When to stop", Way::single},
    {"telling", "What to tell the owner", Way::single},
    {"deciding", "Which paper decides", Way::single},
}};

const FormText& text_of(Form form) {
    return form_texts[static_cast<std::size_t>(form)];
}

// The order of the knowledge: an order that keeps every rule.
std::vector<int> order_by(const Item& item) {
    std::vector<int> order(item.options.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        return item.options[static_cast<std::size_t>(a)].of < item.options[static_cast<std::size_t>(b)].of;
    });
    return order;
}

}  // namespace

const char* form_id(Form form) {
    return text_of(form).id;
}

const char* form_name(Form form) {
    return text_of(form).name;
}

Way way_of(Form form) {
    return text_of(form).way;
}

std::string option_letter(std::size_t option) {
    return std::string(1, static_cast<char>('A' + option));
}

double guess_chance(const Item& item) {
    if (way_of(item.stem.form) != Way::single) return 0;
    const auto right = std::count_if(item.options.begin(), item.options.end(),
                                     [](const Option& option) { return option.right; });
    return static_cast<double>(right) / static_cast<double>(item.options.size());
}

std::string right_answer(const Item& item) {
    if (item.figure) return show({item.figure->right, item.figure->unit.dimension, 0}, item.figure->unit);
    std::string answer;
    const auto add = [&](std::size_t option) {
        answer += (answer.empty() ? "" : " ") + std::string(1, static_cast<char>('a' + option));
    };
    if (way_of(item.stem.form) == Way::order) {
        for (const int option : order_by(item)) add(static_cast<std::size_t>(option));
        return answer;
    }
    for (std::size_t i = 0; i < item.options.size(); ++i) {
        if (!item.options[i].right) continue;
        add(i);
        if (way_of(item.stem.form) == Way::single) break;  // any of several places will do
    }
    return answer;
}

}  // namespace hardover::study
