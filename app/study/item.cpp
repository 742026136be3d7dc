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
}};

const FormText& text_of(Form form) {
    return form_texts[static_cast<std::size_t>(form)];
}

// An order that keeps every rule: of the options still free, always the first shown.
std::vector<int> order_by(const Item& item) {
    std::vector<int> order;
    std::vector<bool> used(item.options.size(), false);
    while (order.size() < item.options.size()) {
        const std::size_t before = order.size();
        for (std::size_t i = 0; i < item.options.size(); ++i) {
            const bool waits = std::any_of(item.rules.begin(), item.rules.end(), [&](const Before& rule) {
                return rule.second == static_cast<int>(i) && !used[static_cast<std::size_t>(rule.first)];
            });
            if (used[i] || waits) continue;
            used[i] = true;
            order.push_back(static_cast<int>(i));
            break;
        }
        if (order.size() == before) break;  // rules in a circle: nothing more can be placed
    }
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

double guess_chance(const Item& item) {
    return way_of(item.stem.form) == Way::single ? 1.0 / static_cast<double>(item.options.size()) : 0;
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
        if (item.options[i].right) add(i);
    }
    return answer;
}

}  // namespace hardover::study
