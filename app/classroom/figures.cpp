// Learners, topics and the term; the rest stands in figures_items and figures_causes.
#include "app/classroom/figures.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "app/classroom/figures_parts.hpp"
#include "app/study/mastery.hpp"

namespace hardover::classroom {

namespace {

constexpr int days_before_weeks = 21;  // a longer term is told by the week

bool is_right(const ItemResult& result) {
    return result.review.mark >= counts_as_right;
}

auto place_of(const Origin& origin) {
    return std::tie(origin.seat, origin.day, origin.attempt, origin.sequence);
}

std::vector<const BoatResult*> boats_in_order(const ClassResults& results) {
    std::vector<const BoatResult*> boats;
    for (const BoatResult& boat : results.boats) {
        if (!boat.origin.disputed) boats.push_back(&boat);
    }
    std::stable_sort(boats.begin(), boats.end(), [](const BoatResult* a, const BoatResult* b) {
        return place_of(a->origin) < place_of(b->origin);
    });
    return boats;
}

std::vector<study::SureAnswer> sure_answers(const ItemResults& results) {
    std::vector<study::SureAnswer> answers;
    for (const ItemResult* result : results) {
        if (result->review.sure) answers.push_back({*result->review.sure, is_right(*result)});
    }
    return answers;
}

// Everyone with results, with name and group where the roster has them.
std::vector<LearnerFigures> learners_of(const ClassResults& results, const ItemResults& items,
                                        const std::vector<const BoatResult*>& boats) {
    std::map<std::string, Seat> seats;
    for (const ItemResult* item : items) seats[item->origin.seat].code = item->origin.seat;
    for (const BoatResult* boat : boats) seats[boat->origin.seat].code = boat->origin.seat;
    for (const Seat& seat : results.seats) {
        if (const auto found = seats.find(seat.code); found != seats.end()) found->second = seat;
    }
    std::vector<LearnerFigures> learners;
    for (const auto& [code, seat] : seats) {
        LearnerFigures learner;
        learner.seat = code;
        learner.name = seat.name;
        learner.group = seat.group;
        learners.push_back(std::move(learner));
    }
    return learners;
}

LearnerFigures& learner_at(std::vector<LearnerFigures>& learners, const std::string& seat) {
    return *std::lower_bound(
        learners.begin(), learners.end(), seat,
        [](const LearnerFigures& learner, const std::string& code) { return learner.seat < code; });
}

void add_answers(std::vector<LearnerFigures>& learners, const ItemResults& items, const FirstAnswers& first,
                 const study::RaschFit& fit) {
    std::map<std::string, ItemResults> by_seat;
    for (const ItemResult* item : items) by_seat[item->origin.seat].push_back(item);
    for (std::size_t n = 0; n < first.seats.size(); ++n) {
        LearnerFigures& learner = learner_at(learners, first.seats[n]);
        const ItemResults& theirs = by_seat[first.seats[n]];
        learner.answers = static_cast<int>(theirs.size());
        for (const int given : first.table[n]) {
            learner.items += given >= 0 ? 1 : 0;
            learner.right += given == 1 ? 1 : 0;
        }
        learner.right_95 = study::wilson_95(learner.right, learner.items);
        learner.ability = fit.ability[n];
        learner.sureness = study::calibrate(sure_answers(theirs));
    }
}

void add_boats(std::vector<LearnerFigures>& learners, const std::vector<const BoatResult*>& boats) {
    for (const BoatResult* boat : boats) {
        LearnerFigures& learner = learner_at(learners, boat->origin.seat);
        learner.boats.add(boat->ended);
        learner.through_term.push_back({boat->origin.day, boat->ended.avoidable, boat->ended.luck});
    }
}

// Counts the first answers to items of a topic.
class TopicCount {
  public:
    void take(const ItemResult& result) {
        seats_.insert(result.origin.seat);
        ++answers_;
        right_ += is_right(result) ? 1 : 0;
    }
    void write(TopicFigures& topic) const {
        topic.learners = static_cast<int>(seats_.size());
        topic.answers = answers_;
        topic.right = right_;
        if (topic.learners < fewest_learners) return;
        topic.share_right = static_cast<double>(right_) / answers_;
        topic.share_95 = study::wilson_95(right_, answers_);
    }

  private:
    std::set<std::string> seats_;
    int answers_ = 0;
    int right_ = 0;
};

std::vector<TopicFigures> topics_of(const FirstAnswers& first, const Knowledge& knowledge) {
    std::map<std::pair<TopicKind, std::string>, TopicCount> counts;
    for (const auto& row : first.given) {
        for (const ItemResult* result : row) {
            if (result == nullptr) continue;
            for (const std::string& complaint : result->review.complaints) {
                counts[{TopicKind::complaint, complaint}].take(*result);
            }
            counts[{TopicKind::part, result->review.part}].take(*result);
            counts[{TopicKind::form, result->review.form}].take(*result);
        }
    }
    std::vector<TopicFigures> topics;
    const auto add = [&](TopicKind kind, const std::string& id, const std::string& name) {
        const auto count = counts.find({kind, id});
        if (count == counts.end()) return;
        TopicFigures topic;
        topic.kind = kind;
        topic.id = id;
        topic.name = name;
        count->second.write(topic);
        topics.push_back(std::move(topic));
        counts.erase(count);
    };
    for (const Complaint& complaint : knowledge.complaints)
        add(TopicKind::complaint, complaint.id, complaint.name);
    for (const Part& part : knowledge.parts) add(TopicKind::part, part.id, part.name);
    add(TopicKind::part, "", "Fitting out");
    for (int form = 0; form < study::form_count; ++form) {
        add(TopicKind::form, study::form_id(static_cast<study::Form>(form)),
            study::form_name(static_cast<study::Form>(form)));
    }
    // What this knowledge does not know stands under its id.
    while (!counts.empty()) {
        const auto [kind, id] = counts.begin()->first;
        add(kind, id, id);
    }
    return topics;
}

// The Monday of a day's week: 1970-01-01 was a Thursday.
int monday_of(int day) {
    const int since = day + 3;
    const int weeks = since >= 0 ? since / 7 : (since - 6) / 7;
    return weeks * 7 - 3;
}

void add_term(ClassFigures& figures, const std::vector<const BoatResult*>& boats) {
    if (boats.empty()) return;
    const auto by_day = [](const BoatResult* a, const BoatResult* b) {
        return a->origin.day < b->origin.day;
    };
    const auto [first, last] = std::minmax_element(boats.begin(), boats.end(), by_day);
    figures.by_week = (*last)->origin.day - (*first)->origin.day > days_before_weeks;
    std::map<int, std::vector<const BoatResult*>> periods;
    for (const BoatResult* boat : boats) {
        periods[figures.by_week ? monday_of(boat->origin.day) : boat->origin.day].push_back(boat);
    }
    for (const auto& [day, theirs] : periods) {
        TermPeriod period;
        period.first_day = day;
        period.last_day = figures.by_week ? day + 6 : day;
        period.boats = static_cast<int>(theirs.size());
        std::set<std::string> seats;
        BoatFigures sum;
        for (const BoatResult* boat : theirs) {
            seats.insert(boat->origin.seat);
            sum.add(boat->ended);
        }
        period.learners = static_cast<int>(seats.size());
        if (period.learners >= fewest_learners) {
            period.avoidable = sum.avoidable / sum.boats;
            period.luck = sum.luck / sum.boats;
        }
        figures.term.push_back(period);
    }
}

void add_sets(ClassFigures& figures, const ItemResults& items) {
    std::map<std::string, ItemResults> sets;
    for (const ItemResult* item : items) sets[item->origin.set].push_back(item);
    if (sets.size() < 2) return;
    for (const auto& [set, theirs] : sets) {
        if (!set.empty()) figures.by_set.push_back(reliability_of(first_answers(theirs), set));
    }
}

void add_class(ClassFigures& figures, const FirstAnswers& first, const ItemResults& items) {
    int right = 0;
    int answers = 0;
    for (const LearnerFigures& learner : figures.by_learner) {
        right += learner.right;
        answers += learner.items;
        figures.all_boats.boats += learner.boats.boats;
        figures.all_boats.cured += learner.boats.cured;
        figures.all_boats.minutes += learner.boats.minutes;
        figures.all_boats.avoidable += learner.boats.avoidable;
        figures.all_boats.luck += learner.boats.luck;
        figures.all_boats.hints += learner.boats.hints;
        figures.all_boats.unproved += learner.boats.unproved;
        figures.all_boats.cautions_skipped += learner.boats.cautions_skipped;
    }
    if (first.seats.size() < static_cast<std::size_t>(fewest_learners)) return;
    figures.share_right = static_cast<double>(right) / answers;
    const auto sure = sure_answers(items);
    std::set<std::string> who;
    for (const ItemResult* item : items) {
        if (item->review.sure) who.insert(item->origin.seat);
    }
    if (who.size() >= static_cast<std::size_t>(fewest_learners)) figures.sureness = study::calibrate(sure);
}

}  // namespace

void BoatFigures::add(const study::practice::Ended& ended) {
    ++boats;
    cured += ended.cured ? 1 : 0;
    minutes += ended.minutes;
    avoidable += ended.avoidable;
    luck += ended.luck;
    hints += ended.hints[0] + ended.hints[1] + ended.hints[2];
    unproved += ended.unproved;
    cautions_skipped += ended.cautions_skipped;
}

ItemResults in_order(const ClassResults& results) {
    ItemResults items;
    for (const ItemResult& item : results.items) {
        if (!item.origin.disputed) items.push_back(&item);
    }
    std::stable_sort(items.begin(), items.end(), [](const ItemResult* a, const ItemResult* b) {
        return place_of(a->origin) < place_of(b->origin);
    });
    return items;
}

FirstAnswers first_answers(const ItemResults& ordered) {
    FirstAnswers first;
    std::map<std::string, std::size_t> rows;
    std::map<std::string, std::size_t> columns;
    for (const ItemResult* result : ordered) {
        rows.emplace(result->origin.seat, 0);
        columns.emplace(result->review.item, 0);
    }
    for (auto& [seat, row] : rows) {
        row = first.seats.size();
        first.seats.push_back(seat);
    }
    for (auto& [item, column] : columns) {
        column = first.items.size();
        first.items.push_back(item);
    }
    first.table.assign(rows.size(), std::vector<int>(columns.size(), -1));
    first.given.assign(rows.size(), std::vector<const ItemResult*>(columns.size(), nullptr));
    for (const ItemResult* result : ordered) {
        const std::size_t row = rows.at(result->origin.seat);
        const std::size_t column = columns.at(result->review.item);
        if (first.given[row][column] != nullptr) continue;
        first.given[row][column] = result;
        first.table[row][column] = is_right(*result) ? 1 : 0;
    }
    return first;
}

std::string cause_name(const Knowledge& knowledge, const std::string& id) {
    const Index cause = find(knowledge.causes, id);
    return cause == none ? id : knowledge.causes[static_cast<std::size_t>(cause)].name;
}

ClassFigures make_figures(const ClassResults& results, const Knowledge& knowledge) {
    const ItemResults items = in_order(results);
    const std::vector<const BoatResult*> boats = boats_in_order(results);
    const FirstAnswers first = first_answers(items);
    const study::RaschFit fit = study::fit_rasch(first.table);
    ClassFigures figures;
    figures.name = results.name;
    figures.seats = static_cast<int>(results.seats.size());
    figures.answers = static_cast<int>(items.size());
    figures.boats = static_cast<int>(boats.size());
    figures.disputed =
        static_cast<int>(results.items.size() - items.size() + results.boats.size() - boats.size());
    figures.by_learner = learners_of(results, items, boats);
    figures.learners = static_cast<int>(figures.by_learner.size());
    figures.rough = first.seats.size() < study::enough_learners;
    add_answers(figures.by_learner, items, first, fit);
    add_boats(figures.by_learner, boats);
    add_class(figures, first, items);
    figures.by_item = figures_of_items(first, fit, knowledge);
    add_reliability_without(first, figures.by_item);
    figures.by_topic = topics_of(first, knowledge);
    const auto others = std::stable_partition(
        figures.by_topic.begin(), figures.by_topic.end(),
        [&](const TopicFigures& topic) { return !topic.id.empty() && results.topics.contains(topic.id); });
    figures.topics_named = static_cast<std::size_t>(others - figures.by_topic.begin());
    figures.all_topics = results.topics.contains("");
    figures.whole = reliability_of(first, "");
    add_sets(figures, items);
    figures.confusions = confusions_of(results, knowledge);
    figures.table = table_of(results, figures.confusions, knowledge);
    add_term(figures, boats);
    return figures;
}

}  // namespace hardover::classroom
