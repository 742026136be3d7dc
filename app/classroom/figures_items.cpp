// Items: how hard, how well they tell strong from weak, what is wrong with those that do not; and how
// reliable a set is.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "app/classroom/figures_parts.hpp"
#include "app/jobs/wording.hpp"
#include "app/study/item.hpp"

namespace hardover::classroom {

using jobs_detail::quoted;

namespace {

// Where an item is called what: rules of thumb, common practice, no source.
constexpr int enough_answers = 10;          // to say anything about it
constexpr double least_correlation = 0.10;  // of an item that tells strong from weak
constexpr double hard_below = 0.2;
constexpr double easy_above = 0.9;

std::optional<study::Form> form_of(const std::string& id) {
    for (int form = 0; form < study::form_count; ++form) {
        if (study::form_id(static_cast<study::Form>(form)) == id) return static_cast<study::Form>(form);
    }
    return std::nullopt;
}

// What the learner chose, where it can be compared between learners; "" where not: a cause, or the letter of
// an item that everyone got in the same version.
class Choices {
  public:
    Choices(const FirstAnswers& first, std::size_t item) {
        std::optional<std::uint64_t> seed;
        for (const auto& row : first.given) {
            const ItemResult* result = row[item];
            if (result == nullptr) continue;
            const auto form = form_of(result->review.form);
            if (!form || study::way_of(*form) != study::Way::single) same_ = false;
            if (seed && *seed != result->review.seed) same_ = false;
            seed = result->review.seed;
        }
    }
    std::string of(const ItemResult& result) const {
        if (!result.chosen_cause.empty()) return result.chosen_cause;
        return same_ && result.right_cause.empty() ? result.review.answer : "";
    }

  private:
    bool same_ = true;
};

std::vector<ChoiceFigures> choices_of(const FirstAnswers& first, const study::EdgeGroups& groups,
                                      std::size_t item, const Knowledge& knowledge) {
    const Choices choices(first, item);
    std::map<std::string, ChoiceFigures> taken;
    for (std::size_t n = 0; n < first.given.size(); ++n) {
        const ItemResult* result = first.given[n][item];
        if (result == nullptr) continue;
        const std::string chosen = choices.of(*result);
        if (chosen.empty()) continue;
        ChoiceFigures& choice = taken[chosen];
        choice.text = result->chosen_cause.empty() ? "choice " + chosen : cause_name(knowledge, chosen);
        choice.right = choice.right || result->review.mark >= counts_as_right;
        ++choice.taken;
        choice.strong += groups.strong[n];
        choice.weak += groups.weak[n];
    }
    std::vector<ChoiceFigures> list;
    for (auto& [id, choice] : taken) list.push_back(choice);
    std::stable_sort(list.begin(), list.end(), [](const ChoiceFigures& a, const ChoiceFigures& b) {
        if (a.right != b.right) return a.right;
        return a.taken > b.taken;
    });
    return list;
}

// The wrong choice that most of the strong took, if they took any.
const ChoiceFigures* drawn_to(const ItemFigures& item) {
    const ChoiceFigures* most = nullptr;
    for (const ChoiceFigures& choice : item.choices) {
        if (choice.right || choice.strong <= 0) continue;
        if (most == nullptr || choice.strong > most->strong) most = &choice;
    }
    return most;
}

// More of the strong took this one than the right one, and not by chance: of those who took either, the 95 %
// range of the share lies above half.
bool draws_the_strong(const ItemFigures& item, const ChoiceFigures& drawn, double right) {
    if (drawn.strong < 0.5 || drawn.strong <= right || drawn.strong < drawn.weak) return false;
    const double strong = study::edge_share * item.learners;
    const int took = static_cast<int>(std::lround(drawn.strong * strong));
    const int of = static_cast<int>(std::lround((drawn.strong + right) * strong));
    return of > 0 && study::wilson_95(took, of).low > 0.5;
}

double strong_right(const ItemFigures& item) {
    double share = 0;
    for (const ChoiceFigures& choice : item.choices) share += choice.right ? choice.strong : 0;
    return share;
}

int in_100(double share) {
    return static_cast<int>(std::lround(share * 100));
}

// Without "-0.00".
double hundredths(double value) {
    return std::round(value * 100) / 100 + 0.0;
}

std::string correlation_words(const ItemFigures& item) {
    return fmt::format("correlation with the rest {:.2f}, 95 % from {:.2f} to {:.2f}",
                       hundredths(*item.with_rest), hundredths(item.with_rest_95->low),
                       hundredths(item.with_rest_95->high));
}

void judge(ItemFigures& item, ItemVerdict verdict, std::string why) {
    item.verdict = verdict;
    item.why = std::move(why);
}

// The strong go wrong together: the marking may be wrong.
bool judge_key(ItemFigures& item) {
    if (item.with_rest && item.with_rest_95->high < 0) {
        judge(item, ItemVerdict::key_suspect,
              "The weak have it right more often than the strong (" + correlation_words(item) +
                  "): look whether the marking is right, or what the strong know that it does not.");
        return true;
    }
    const ChoiceFigures* drawn = drawn_to(item);
    if (drawn == nullptr || !draws_the_strong(item, *drawn, strong_right(item))) return false;
    judge(item, ItemVerdict::key_suspect,
          fmt::format(
              "Most of the strong took the wrong {} ({} in 100 of them, {} in 100 of the weak): look whether "
              "it is right too.",
              quoted(drawn->text), in_100(drawn->strong), in_100(drawn->weak)));
    return true;
}

// A correlation above or below the least by chance is no evidence: its 95 % range has to lie on one side.
bool judge_weak(ItemFigures& item) {
    if (item.with_rest && item.with_rest_95->low > 0 && *item.with_rest >= least_correlation) return false;
    const ChoiceFigures* drawn = drawn_to(item);
    if (!item.with_rest || item.with_rest_95->high >= least_correlation) {
        judge(
            item, ItemVerdict::too_few,
            fmt::format("Too few answers to tell whether strong and weak differ on it: {}{}.", item.learners,
                        item.with_rest ? " (" + correlation_words(item) + ")" : std::string()));
    } else if (drawn != nullptr && drawn->strong >= drawn->weak && drawn->strong >= 0.2) {
        judge(item, ItemVerdict::weak,
              fmt::format(
                  "Does not tell strong from weak: the wrong {} is taken as often by the strong ({} in 100) "
                  "as by the weak ({} in 100).",
                  quoted(drawn->text), in_100(drawn->strong), in_100(drawn->weak)));
    } else {
        judge(item, ItemVerdict::weak,
              "Does not tell strong from weak: both have it right about as often (" +
                  correlation_words(item) + ").");
    }
    return true;
}

void judge(ItemFigures& item) {
    const std::string count = fmt::format("{} of {} had it right", item.right, item.learners);
    const double share = item.learners > 0 ? static_cast<double>(item.right) / item.learners : 0;
    if (item.learners < enough_answers) {
        judge(item, ItemVerdict::too_few,
              fmt::format("{} {} too few to say anything; {} are needed.", item.learners,
                          item.learners == 1 ? "answer is" : "answers are", enough_answers));
    } else if (item.right == item.learners) {
        judge(item, ItemVerdict::everyone_right, "Everyone had it right: it tells nobody from anybody.");
    } else if (item.right == 0) {
        judge(item, ItemVerdict::everyone_wrong,
              "Nobody had it right: look at the marking, or teach it first.");
    } else if (judge_key(item)) {
        return;
    } else if (share < hard_below) {
        judge(item, ItemVerdict::too_hard,
              "Too hard for this class to tell strong from weak: " + count + ".");
    } else if (share > easy_above) {
        judge(item, ItemVerdict::too_easy,
              "Too easy for this class to tell strong from weak: " + count + ".");
    } else if (!judge_weak(item)) {
        judge(item, ItemVerdict::fine, "Tells strong from weak (" + correlation_words(item) + ").");
    }
}

// Rows and columns that hold no gap.
struct WholeTable {
    study::AnswerTable table;
    std::vector<std::size_t> rows;
    std::vector<std::size_t> columns;
};

int count_left(const std::vector<char>& in) {
    return static_cast<int>(std::count(in.begin(), in.end(), 1));
}

WholeTable without_gaps(const study::AnswerTable& table) {
    if (table.empty()) return {};
    std::vector<char> row_in(table.size(), 1);
    std::vector<char> column_in(table.front().size(), 1);
    std::vector<int> row_gaps(table.size());
    std::vector<int> column_gaps(table.front().size());
    for (std::size_t r = 0; r < table.size(); ++r) {
        for (std::size_t c = 0; c < column_gaps.size(); ++c) {
            if (table[r][c] >= 0) continue;
            ++row_gaps[r];
            ++column_gaps[c];
        }
    }
    const auto most = [](const std::vector<int>& gaps, const std::vector<char>& in) {
        std::size_t at = 0;
        int greatest = -1;
        for (std::size_t i = 0; i < gaps.size(); ++i) {
            if (in[i] != 0 && gaps[i] > greatest) {
                at = i;
                greatest = gaps[i];
            }
        }
        return at;
    };
    while (count_left(row_in) > 0 && count_left(column_in) > 0) {
        const std::size_t r = most(row_gaps, row_in);
        const std::size_t c = most(column_gaps, column_in);
        if (row_gaps[r] == 0) break;  // then no column has one either
        // The greater share of gaps goes; of equals the item, so that learners stay.
        const long row_share = static_cast<long>(row_gaps[r]) * count_left(row_in);
        const long column_share = static_cast<long>(column_gaps[c]) * count_left(column_in);
        if (row_share > column_share) {
            row_in[r] = 0;
            for (std::size_t i = 0; i < column_gaps.size(); ++i) column_gaps[i] -= table[r][i] < 0 ? 1 : 0;
        } else {
            column_in[c] = 0;
            for (std::size_t i = 0; i < row_gaps.size(); ++i) row_gaps[i] -= table[i][c] < 0 ? 1 : 0;
        }
    }
    WholeTable whole;
    for (std::size_t c = 0; c < column_in.size(); ++c) {
        if (column_in[c] != 0) whole.columns.push_back(c);
    }
    for (std::size_t r = 0; r < row_in.size(); ++r) {
        if (row_in[r] == 0) continue;
        whole.rows.push_back(r);
        std::vector<int> row;
        for (const std::size_t c : whole.columns) row.push_back(table[r][c]);
        whole.table.push_back(std::move(row));
    }
    return whole;
}

}  // namespace

const char* verdict_id(ItemVerdict verdict) {
    switch (verdict) {
        case ItemVerdict::fine:
            return "fine";
        case ItemVerdict::key_suspect:
            return "key_suspect";
        case ItemVerdict::everyone_right:
            return "everyone_right";
        case ItemVerdict::everyone_wrong:
            return "everyone_wrong";
        case ItemVerdict::too_hard:
            return "too_hard";
        case ItemVerdict::too_easy:
            return "too_easy";
        case ItemVerdict::weak:
            return "weak";
        case ItemVerdict::too_few:
            return "too_few";
    }
    return "";
}

std::vector<ItemFigures> figures_of_items(const FirstAnswers& first, const study::RaschFit& fit,
                                          const Knowledge& knowledge) {
    const std::vector<study::ItemFigures> plain = study::item_figures(first.table);
    const std::vector<double> stands = study::standing(first.table);
    ItemNames names(knowledge);
    std::vector<ItemFigures> figures;
    for (std::size_t i = 0; i < first.items.size(); ++i) {
        ItemFigures item;
        item.item = first.items[i];
        item.name = names.of(item.item);
        item.form = item.item.substr(0, item.item.find('/'));
        item.learners = plain[i].answers;
        item.right = static_cast<int>(std::lround(plain[i].share_right * item.learners));
        if (item.learners >= fewest_learners) {
            item.share_right = plain[i].share_right;
            item.share_95 = study::wilson_95(item.right, item.learners);
            item.difficulty = fit.difficulty[i];
            item.discrimination = plain[i].discrimination;
            item.with_rest = plain[i].with_rest;
            if (item.with_rest) item.with_rest_95 = study::correlation_95(*item.with_rest, item.learners);
            item.choices = choices_of(first, study::edge_groups(first.table, stands, i), i, knowledge);
        }
        judge(item);
        figures.push_back(std::move(item));
    }
    return figures;
}

ReliabilityFigures reliability_of(const FirstAnswers& first, const std::string& set) {
    const WholeTable whole = without_gaps(first.table);
    ReliabilityFigures figures;
    figures.set = set;
    figures.learners = static_cast<int>(whole.rows.size());
    figures.items = static_cast<int>(whole.columns.size());
    figures.learners_left_out = static_cast<int>(first.seats.size()) - figures.learners;
    figures.items_left_out = static_cast<int>(first.items.size()) - figures.items;
    if (figures.learners < fewest_learners || figures.items == 0) return figures;
    const study::Totals totals = study::totals(whole.table);
    figures.mean = totals.mean;
    figures.deviation = totals.deviation;
    figures.kr20 = study::reliability(whole.table);
    return figures;
}

void add_reliability_without(const FirstAnswers& first, std::vector<ItemFigures>& items) {
    const WholeTable whole = without_gaps(first.table);
    if (whole.rows.size() < static_cast<std::size_t>(fewest_learners)) return;
    const auto without = study::kuder_richardson_20_without(whole.table);
    for (std::size_t i = 0; i < without.size(); ++i) items[whole.columns[i]].reliability_without = without[i];
}

}  // namespace hardover::classroom
