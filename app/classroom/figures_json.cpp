// A class's figures as JSON, for other programs. Names, once written, stay.
#include <nlohmann/json.hpp>

#include "app/classroom/figures_page.hpp"
#include "app/classroom/set.hpp"

namespace hardover::classroom {

namespace {

using nlohmann::ordered_json;

template <typename Value>
ordered_json json_of(const std::optional<Value>& value) {
    return value ? ordered_json(*value) : ordered_json(nullptr);
}

ordered_json json_of(const std::optional<study::Interval>& interval) {
    return interval ? ordered_json{interval->low, interval->high} : ordered_json(nullptr);
}

ordered_json json_of(const study::Estimate& estimate) {
    if (estimate.error <= 0) return nullptr;
    return {{"logits", estimate.value}, {"error", estimate.error}};
}

ordered_json json_of(const study::Calibration& sureness) {
    if (sureness.answers == 0) return nullptr;
    return {{"answers", sureness.answers}, {"brier", sureness.brier}, {"surer_than_right", sureness.bias()}};
}

ordered_json json_of(const BoatFigures& boats) {
    return {{"boats", boats.boats},
            {"cured", boats.cured},
            {"minutes", boats.minutes},
            {"over_best", boats.over_best()},
            {"by_choices", boats.avoidable},
            {"by_luck", boats.luck},
            {"hints", boats.hints},
            {"remedies_without_proof", boats.unproved},
            {"cautions_skipped", boats.cautions_skipped}};
}

ordered_json json_of(const LearnerFigures& learner, bool with_names) {
    ordered_json through_term = ordered_json::array();
    for (const BoatPoint& boat : learner.through_term) {
        through_term.push_back(
            {{"day", day_text(boat.day)}, {"by_choices", boat.avoidable}, {"by_luck", boat.luck}});
    }
    ordered_json object{{"seat", learner.seat}};
    if (with_names) object["name"] = learner.name;
    object.update({{"group", learner.group},
                   {"answers", learner.answers},
                   {"items", learner.items},
                   {"right", learner.right},
                   {"share_right_95", json_of(learner.right_95)},
                   {"ability", json_of(learner.ability)},
                   {"sureness", json_of(learner.sureness)},
                   {"boats", json_of(learner.boats)},
                   {"through_term", std::move(through_term)}});
    return object;
}

ordered_json json_of(const ItemFigures& item) {
    ordered_json choices = ordered_json::array();
    for (const ChoiceFigures& choice : item.choices) {
        choices.push_back({{"choice", choice.text},
                           {"right", choice.right},
                           {"taken", choice.taken},
                           {"of_strong", choice.strong},
                           {"of_weak", choice.weak}});
    }
    return {{"item", item.item},
            {"name", item.name},
            {"form", item.form},
            {"learners", item.learners},
            {"share_right", json_of(item.share_right)},
            {"share_right_95", json_of(item.share_95)},
            {"difficulty", item.difficulty ? json_of(*item.difficulty) : ordered_json(nullptr)},
            {"discrimination", json_of(item.discrimination)},
            {"with_rest", json_of(item.with_rest)},
            {"with_rest_95", json_of(item.with_rest_95)},
            {"kr20_without", json_of(item.reliability_without)},
            {"choices", std::move(choices)},
            {"verdict", verdict_id(item.verdict)},
            {"why", item.why}};
}

const char* kind_id(TopicKind kind) {
    switch (kind) {
        case TopicKind::complaint:
            return "complaint";
        case TopicKind::part:
            return "part";
        case TopicKind::form:
            return "form";
    }
    return "";
}

ordered_json json_of(const TopicFigures& topic) {
    return {{"kind", kind_id(topic.kind)},
            {"id", topic.id},
            {"name", topic.name},
            {"learners", topic.learners},
            {"answers", topic.answers},
            {"share_right", json_of(topic.share_right)},
            {"share_right_95", json_of(topic.share_95)}};
}

ordered_json json_of(const ReliabilityFigures& figures) {
    ordered_json object{{"set", figures.set},
                        {"learners", figures.learners},
                        {"items", figures.items},
                        {"learners_left_out", figures.learners_left_out},
                        {"items_left_out", figures.items_left_out},
                        {"mean", json_of(figures.mean)},
                        {"deviation", json_of(figures.deviation)},
                        {"kr20", nullptr}};
    if (figures.kr20) {
        object["kr20"] = {{"value", figures.kr20->value},
                          {"error", figures.kr20->error},
                          {"within_95", json_of(std::optional(figures.kr20->within_95))},
                          {"measurement_error", figures.kr20->measurement_error},
                          {"apart", figures.kr20->apart}};
    }
    return object;
}

ordered_json json_of(const Confusion& pair) {
    return {{"right", pair.right}, {"chosen", pair.chosen}, {"answers", pair.answers},
            {"boats", pair.boats}, {"of", pair.of},         {"learners", pair.learners}};
}

ordered_json json_of(const TermPeriod& period) {
    return {{"first_day", day_text(period.first_day)},
            {"last_day", day_text(period.last_day)},
            {"boats", period.boats},
            {"learners", period.learners},
            {"by_choices", json_of(period.avoidable)},
            {"by_luck", json_of(period.luck)}};
}

template <typename Values>
ordered_json list_of(const Values& values) {
    ordered_json list = ordered_json::array();
    for (const auto& value : values) list.push_back(json_of(value));
    return list;
}

}  // namespace

std::string figures_json(const ClassFigures& figures, bool with_names) {
    ordered_json learners = ordered_json::array();
    for (const LearnerFigures& learner : figures.by_learner) learners.push_back(json_of(learner, with_names));
    const ordered_json all{
        {"class", figures.name},
        {"seats", figures.seats},
        {"learners", figures.learners},
        {"answers", figures.answers},
        {"disputed", figures.disputed},
        {"rough", figures.rough},
        {"share_right", json_of(figures.share_right)},
        {"sureness", figures.sureness ? json_of(*figures.sureness) : ordered_json(nullptr)},
        {"boats", json_of(figures.all_boats)},
        {"reliability", json_of(figures.whole)},
        {"reliability_by_set", list_of(figures.by_set)},
        {"by_learner", std::move(learners)},
        {"by_item", list_of(figures.by_item)},
        {"by_topic", list_of(figures.by_topic)},
        {"confusions", list_of(figures.confusions)},
        {"cause_table", {{"causes", figures.table.causes}, {"times", figures.table.times}}},
        {"term", list_of(figures.term)}};
    return all.dump(2, ' ', false, ordered_json::error_handler_t::replace) + "\n";
}

}  // namespace hardover::classroom
