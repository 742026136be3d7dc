#include "app/study/quiz.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "app/study/chance.hpp"
#include "app/study/items_parts.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::study {

namespace {

constexpr double worth_answering = 0.7;  // the chance of a right answer that new items are chosen near
constexpr double sharpness = 4;

// Draws new items so that every form comes up, more of those whose chance of a right answer lies near
// `worth_answering` (P. S. Efraimidis and P. G. Spirakis 2006: weighted order without replacement).
std::vector<const Stem*> in_drawn_order(const std::vector<const Stem*>& stems, const LearnerState& learner,
                                        Chance& chance) {
    std::map<Form, int> of_form;
    for (const Stem* stem : stems) ++of_form[stem->form];
    std::vector<std::pair<double, const Stem*>> keyed;
    for (const Stem* stem : stems) {
        const auto rated = learner.of_form.find(form_id(stem->form));
        const double difficulty = rated == learner.of_form.end() ? 0 : rated->second.value;
        const double guess = way_of(stem->form) == Way::single ? 0.25 : 0;
        const double off =
            std::abs(chance_of_right(learner.ability.value, difficulty, guess) - worth_answering);
        const double weight = std::exp(-sharpness * off) / of_form[stem->form];
        keyed.emplace_back(std::log(1 - chance.share()) / weight, stem);
    }
    std::stable_sort(keyed.begin(), keyed.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<const Stem*> order;
    for (const auto& [key, stem] : keyed) order.push_back(stem);
    return order;
}

// Due statements first, each by a form of it that was not the last one asked, if there is another.
std::vector<const Stem*> due_stems(const std::vector<const Stem*>& stems, const LearnerState& learner,
                                   int day) {
    std::vector<const Stem*> due;
    for (const std::string& statement : learner.due(day)) {
        const std::string& last = learner.statements.at(statement).last_item;
        for (const bool other : {true, false}) {
            for (const Stem* stem : stems) {
                if (stem->statement == statement && (stem->id != last) == other) due.push_back(stem);
            }
        }
    }
    return due;
}

Error no_such_topic(const Knowledge& knowledge, const std::string& topic) {
    std::vector<std::string> ids;
    for (const Topic& known : topics(knowledge)) ids.push_back(known.id);
    const std::string near = did_you_mean(topic, ids);
    return {Error::Kind::not_found, "there is no topic '" + topic + "'", "",
            near.empty() ? "see: hardover quiz topics" : near};
}

void count(std::vector<ItemFigure>& figures, const std::string& id, bool made) {
    for (ItemFigure& figure : figures) {
        if (figure.id != id) continue;
        ++figure.listed;
        figure.made += made ? 1 : 0;
    }
}

}  // namespace

std::vector<Topic> topics(const Knowledge& knowledge) {
    std::vector<Topic> all;
    for (const Complaint& complaint : knowledge.complaints) all.push_back({complaint.id, complaint.name});
    for (const Part& part : knowledge.parts) all.push_back({part.id, part.name});
    for (int form = 0; form < form_count; ++form) {
        all.push_back({form_id(static_cast<Form>(form)), form_name(static_cast<Form>(form))});
    }
    return all;
}

bool belongs(const Knowledge& knowledge, const Stem& stem, const std::string& topic) {
    if (topic.empty() || topic == form_id(stem.form)) return true;
    if (stem.part != none && at(knowledge.parts, stem.part).id == topic) return true;
    return std::any_of(stem.complaints.begin(), stem.complaints.end(),
                       [&](Index complaint) { return at(knowledge.complaints, complaint).id == topic; });
}

Result<std::vector<Item>> choose_items(const Portraits& portraits, const LearnerState& learner,
                                       const QuizWish& wish, const Watched& watched) {
    const Knowledge& all = portraits.knowledge();
    const std::vector<Topic> known = topics(all);
    const bool is_known =
        wish.topic.empty() ||
        std::any_of(known.begin(), known.end(), [&](const Topic& topic) { return topic.id == wish.topic; });
    if (!is_known) return no_such_topic(all, wish.topic);

    const std::vector<Stem> stems = list_stems(portraits);
    std::vector<const Stem*> wanted;
    std::vector<const Stem*> fresh;
    for (const Stem& stem : stems) {
        if (!belongs(all, stem, wish.topic)) continue;
        wanted.push_back(&stem);
        if (!learner.statements.contains(stem.statement)) fresh.push_back(&stem);
    }
    Chance chance(wish.seed, "quiz");
    std::vector<Item> items;
    std::set<std::string> asked;
    const auto take = [&](const std::vector<const Stem*>& from, std::size_t most) {
        for (const Stem* stem : from) {
            if (items.size() >= most || !goes_on(watched, items.size(), wish.count)) return;
            if (asked.contains(stem->statement)) continue;
            std::optional<Item> item = make_item(portraits, *stem, wish.seed, wish.units);
            if (!item) continue;
            asked.insert(stem->statement);
            items.push_back(std::move(*item));
        }
    };
    take(due_stems(wanted, learner, wish.day), std::min(wish.count, most_due));
    take(in_drawn_order(fresh, learner, chance), wish.count);
    if (items.empty()) {
        return Error{Error::Kind::not_found, "there is nothing to ask about that today", wish.topic,
                     "take another topic, or come back when a review is due"};
    }
    return items;
}

ItemCounts count_items(const Portraits& portraits, const std::vector<Stem>& askable) {
    const Knowledge& all = portraits.knowledge();
    std::set<std::string> ids;
    for (const Stem& stem : askable) ids.insert(stem.id);
    ItemCounts counts;
    for (int form = 0; form < form_count; ++form) {
        const auto of = static_cast<Form>(form);
        counts.by_form.push_back({form_id(of), form_name(of), 0, 0});
    }
    for (const Complaint& complaint : all.complaints) {
        counts.by_complaint.push_back({complaint.id, complaint.name, 0, 0});
    }
    for (const Part& part : all.parts) counts.by_part.push_back({part.id, part.name, 0, 0});
    counts.by_part.push_back({"", "Fitting out and worksheets", 0, 0});
    std::set<std::string> statements;
    for (const Stem& stem : list_stems(portraits)) {
        const bool made = ids.contains(stem.id);
        ++counts.listed;
        counts.made += made ? 1 : 0;
        if (made) statements.insert(stem.statement);
        count(counts.by_form, form_id(stem.form), made);
        count(counts.by_part, stem.part == none ? "" : at(all.parts, stem.part).id, made);
        for (const Index complaint : stem.complaints) {
            count(counts.by_complaint, at(all.complaints, complaint).id, made);
        }
    }
    counts.statements = static_cast<int>(statements.size());
    return counts;
}

}  // namespace hardover::study
