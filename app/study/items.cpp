#include "app/study/items.hpp"

#include "app/jobs/page.hpp"
#include "app/study/items_parts.hpp"

namespace hardover::study {

namespace {

bool take_authored(const Portraits& portraits, Item& item) {
    const AuthoredItem& authored = at(portraits.authored(), item.stem.authored);
    item.question = authored.ask;
    item.options = authored.options;
    item.reason = authored.reason;
    item.source = source_text(portraits.knowledge(), authored.sources);
    return true;
}

bool made(const Portraits& portraits, Item& item, Chance& chance) {
    switch (item.stem.form) {
        case Form::signs:
            return make_signs(portraits, item);
        case Form::speaks:
            return make_speaks(portraits, item, chance);
        case Form::shows:
            return make_shows(portraits, item);
        case Form::apart:
            return make_apart(portraits, item, chance);
        case Form::proof:
            return make_proof(portraits, item, chance);
        case Form::remedy:
            return make_remedy(portraits, item, chance);
        case Form::order:
            return make_order(portraits, item);
        case Form::next:
            return make_next(portraits, item, chance);
        case Form::caution:
            return make_caution(portraits, item, chance);
        case Form::figure:
            return make_figure(portraits, item, chance);
        case Form::place:
            return make_place(portraits, item);
        case Form::method:
        case Form::stopping:
        case Form::telling:
        case Form::deciding:
            return take_authored(portraits, item);
    }
    return false;
}

bool has_enough(const Item& item) {
    const auto right =
        std::count_if(item.options.begin(), item.options.end(), [](const Option& o) { return o.right; });
    const auto wrong = static_cast<std::ptrdiff_t>(item.options.size()) - right;
    switch (way_of(item.stem.form)) {
        case Way::single:
            // Of places on a drawing any may be right.
            return (item.drawing ? right >= 1 : right == 1) &&
                   wrong >= static_cast<std::ptrdiff_t>(fewest_wrong);
        case Way::several:
            return right >= 2 && wrong >= 2;
        case Way::order:
            return item.options.size() >= 3 && !item.rules.empty();
        case Way::figure:
            return item.figure.has_value();
    }
    return false;
}

// Puts the options in a drawn order; rules go on naming the same ones.
void shuffle_options(Item& item, Chance& chance) {
    std::vector<int> order(item.options.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = static_cast<int>(i);
    chance.shuffle(order);
    std::vector<Option> options;
    std::vector<int> place(order.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        options.push_back(item.options[static_cast<std::size_t>(order[i])]);
        place[static_cast<std::size_t>(order[i])] = static_cast<int>(i);
    }
    item.options = std::move(options);
    for (Before& rule : item.rules) {
        rule.first = place[static_cast<std::size_t>(rule.first)];
        rule.second = place[static_cast<std::size_t>(rule.second)];
    }
}

}  // namespace

std::optional<Item> make_item(const Portraits& portraits, const Stem& stem, std::uint64_t seed,
                              UnitSystem units) {
    Item item;
    item.units = units;
    item.stem = stem;
    Chance chance(seed, stem.id);
    if (!made(portraits, item, chance) || !has_enough(item)) return std::nullopt;
    shuffle_options(item, chance);
    return item;
}

std::optional<std::vector<Stem>> askable_stems(const Portraits& portraits, std::uint64_t seed,
                                               const Watched& watched) {
    const std::vector<Stem> stems = list_stems(portraits);
    std::vector<Stem> askable;
    for (std::size_t i = 0; i < stems.size(); ++i) {
        if (!goes_on(watched, i, stems.size())) return std::nullopt;
        if (make_item(portraits, stems[i], seed)) askable.push_back(stems[i]);
    }
    return askable;
}

void add_option(Item& item, Option option) {
    const bool there = std::any_of(item.options.begin(), item.options.end(),
                                   [&](const Option& other) { return other.text == option.text; });
    if (!there) item.options.push_back(std::move(option));
}

void add_some(Item& item, std::vector<Option> wrong, Chance& chance) {
    if (wrong.size() > drawn_from) wrong.resize(drawn_from);
    chance.shuffle(wrong);
    const std::size_t full = item.options.size() + most_wrong;
    for (Option& option : wrong) {
        if (item.options.size() < full) add_option(item, std::move(option));
    }
}

std::string reading_line(const Knowledge& knowledge, Index finding, int reading) {
    const Finding& entry = at(knowledge.findings, finding);
    return entry.name + ": " + entry.readings[static_cast<std::size_t>(reading)].text;
}

LikelyReading likeliest_reading(const std::vector<double>& shares, bool bad_only) {
    LikelyReading likely;
    const std::size_t end = shares.size() - (bad_only && !shares.empty() ? 1 : 0);
    for (std::size_t r = 0; r < end; ++r) {
        if (shares[r] > likely.share) likely = {static_cast<int>(r), shares[r]};
    }
    return likely;
}

std::vector<std::string> caution_names(const Knowledge& knowledge, const std::vector<Index>& cautions) {
    std::vector<std::string> names;
    for (const Index caution : cautions) names.push_back(at(knowledge.cautions, caution).name);
    return names;
}

std::vector<Index> causes_of_remedy(const Knowledge& knowledge, Index remedy) {
    std::vector<Index> causes;
    for (std::size_t c = 0; c < knowledge.causes.size(); ++c) {
        if (knowledge.causes[c].remedy == remedy) causes.push_back(static_cast<Index>(c));
    }
    return causes;
}

std::vector<Index> parts_of_check(const Knowledge& knowledge, Index check) {
    std::vector<Index> parts;
    for (const Index finding : at(knowledge.checks, check).gets) {
        const Index part = at(knowledge.findings, finding).part;
        if (part != none && !holds(parts, part)) parts.push_back(part);
    }
    return parts;
}

std::vector<Index> parts_of_remedy(const Knowledge& knowledge, Index remedy) {
    std::vector<Index> parts;
    for (const Index cause : causes_of_remedy(knowledge, remedy)) {
        const Index part = at(knowledge.causes, cause).part;
        if (part != none && !holds(parts, part)) parts.push_back(part);
    }
    return parts;
}

}  // namespace hardover::study
