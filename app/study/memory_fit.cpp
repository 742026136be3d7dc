#include "app/study/memory_fit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>

#include "app/study/learner.hpp"

namespace hardover::study {

namespace {

constexpr double least_days = 0.05, most_first_days = 100;
constexpr int grid = 24;  // coarse steps over the logarithm before the fine search
constexpr int narrowings = 30;
constexpr double hardly = 1e-6;  // a chance is kept this far from 0 and 1

// The reviews of one statement, in order; `place` is each one's place among all scored reviews, -1 for the
// first and for those on the day of the one before.
struct History {
    struct Step {
        int days = 0;
        Grade grade = Grade::again;
        int place = -1;
    };
    std::vector<Step> steps;
    int last_day = 0;
};

struct Histories {
    std::vector<History> all;
    int scored = 0;
};

Histories histories_of(const std::vector<Review>& reviews) {
    Histories found;
    std::map<std::string, std::size_t> at;
    for (const Review& review : reviews) {
        const auto [entry, is_new] = at.try_emplace(review.statement, found.all.size());
        if (is_new) found.all.emplace_back();
        History& history = found.all[entry->second];
        const int days = is_new ? 0 : std::max(0, review.day - history.last_day);
        history.steps.push_back({days, review.grade, days > 0 ? found.scored++ : -1});
        history.last_day = review.day;
    }
    return found;
}

// Sum of log losses over the scored reviews of a statement whose places lie in [from, to).
double loss_of(const MemoryModel& model, const History& history, int from, int to) {
    double loss = 0;
    Memory memory;
    for (std::size_t i = 0; i < history.steps.size(); ++i) {
        const History::Step& step = history.steps[i];
        if (step.place >= from && step.place < to) {
            const double chance =
                std::clamp(chance_of_remembering(model, memory.stability, step.days), hardly, 1 - hardly);
            loss -= std::log(step.grade == Grade::again ? 1 - chance : chance);
        }
        memory = i == 0 ? first_review(model, step.grade) : next_review(model, memory, step.days, step.grade);
    }
    return loss;
}

double loss_of(const MemoryModel& model, const Histories& histories, int from, int to) {
    double loss = 0;
    for (const History& history : histories.all) loss += loss_of(model, history, from, to);
    return loss;
}

// The smallest value over [low, high]: a coarse look, then the golden section (J. Kiefer 1953).
template <typename Function>
double least_at(const Function& value, double low, double high) {
    double best = low, least = value(low);
    const double step = (high - low) / grid;
    for (int i = 1; i <= grid; ++i) {
        const double x = low + i * step;
        const double y = value(x);
        if (y < least) {
            least = y;
            best = x;
        }
    }
    const double ratio = (std::sqrt(5.0) - 1) / 2;
    double a = std::max(low, best - step), b = std::min(high, best + step);
    for (int i = 0; i < narrowings; ++i) {
        const double c = b - ratio * (b - a), d = a + ratio * (b - a);
        if (value(c) < value(d)) {
            b = d;
        } else {
            a = c;
        }
    }
    return (a + b) / 2;
}

// A first answer of one grade says nothing of the others, so each figure is fitted by itself, from the scored
// reviews before `to`.
FirstDays fitted_days(const Histories& histories, int to) {
    const FirstDays usual = first_days_of(MemoryModel());
    FirstDays days = usual;
    for (std::size_t grade = 0; grade < days.size(); ++grade) {
        std::vector<const History*> those;
        for (const History& history : histories.all) {
            if (static_cast<std::size_t>(history.steps.front().grade) == grade + 1) those.push_back(&history);
        }
        const auto value = [&](double logarithm) {
            FirstDays tried = usual;
            tried[grade] = std::exp(logarithm);
            const MemoryModel model = with_first_days(tried);
            const double away = logarithm - std::log(usual[grade]);
            double sum = away * away / 2;
            for (const History* history : those) sum += loss_of(model, *history, 0, to);
            return sum;
        };
        days[grade] = std::exp(least_at(value, std::log(least_days), std::log(most_first_days)));
    }
    // A better answer never stays for a shorter time.
    for (std::size_t grade = 1; grade < days.size(); ++grade)
        days[grade] = std::max(days[grade], days[grade - 1]);
    return days;
}

int first_held_out(int scored) {
    return scored - static_cast<int>(std::floor(held_out_share * scored));
}

}  // namespace

FirstDays first_days_of(const MemoryModel& model) {
    return {model.w[0], model.w[1], model.w[2]};
}

MemoryModel with_first_days(const FirstDays& days) {
    MemoryModel model;
    std::copy(days.begin(), days.end(), model.w.begin());
    model.w[3] = std::max(model.w[3], model.w[2]);
    return model;
}

MemoryFit fit_memory(const std::vector<Review>& reviews) {
    const Histories histories = histories_of(reviews);
    MemoryFit fit;
    fit.scored = histories.scored;
    if (fit.scored < enough_scored) return fit;
    const int held_out = first_held_out(fit.scored);
    const double of = fit.scored - held_out;
    const MemoryModel before = with_first_days(fitted_days(histories, held_out));
    fit.held_out = loss_of(before, histories, held_out, fit.scored) / of;
    fit.held_out_usual = loss_of(MemoryModel(), histories, held_out, fit.scored) / of;
    fit.adopted = fit.held_out <= fit.held_out_usual;
    // The days held out have done their work: what is used rests on all of them.
    if (fit.adopted) fit.days = fitted_days(histories, fit.scored);
    return fit;
}

double log_loss(const MemoryModel& model, const std::vector<Review>& reviews, double from_share) {
    const Histories histories = histories_of(reviews);
    const int from = static_cast<int>(std::ceil(from_share * histories.scored));
    if (from >= histories.scored) return 0;
    return loss_of(model, histories, from, histories.scored) / (histories.scored - from);
}

std::string fit_body(const MemoryFit& fit) {
    return nlohmann::json{{"days", fit.days},
                          {"scored", fit.scored},
                          {"held_out", fit.held_out},
                          {"held_out_usual", fit.held_out_usual}}
        .dump();
}

Result<MemoryFit> read_fit(const std::string& body) {
    const nlohmann::json read = nlohmann::json::parse(body, nullptr, false);
    const Error refused{Error::Kind::bad_input, "these are no fitted review times", "", ""};
    if (!read.is_object()) return refused;
    try {
        MemoryFit fit;
        fit.days = read.at("days").get<FirstDays>();
        fit.scored = read.at("scored").get<int>();
        fit.held_out = read.at("held_out").get<double>();
        fit.held_out_usual = read.at("held_out_usual").get<double>();
        fit.adopted = true;
        const bool sound = std::all_of(fit.days.begin(), fit.days.end(), [](double days) {
            return days >= least_days / 2 && days <= 2 * most_first_days;
        });
        if (!sound) return refused;
        return fit;
    } catch (const nlohmann::json::exception&) {
        return refused;
    }
}

std::vector<std::string> fit_sentences(const MemoryFit& fit) {
    if (fit.scored < enough_scored) {
        return {
            fmt::format("Review times go by the usual weights. To fit them to your own answers takes {} "
                        "reviews on a later day; there are {}.",
                        enough_scored, fit.scored)};
    }
    const std::string losses = fmt::format("log loss {:.3f} a review, {:.3f} by the usual weights",
                                           fit.held_out, fit.held_out_usual);
    if (!fit.adopted) {
        return {
            fmt::format("Fitted to your own answers, review times would have foretold your last ones "
                        "worse ({}), so the usual weights stay.",
                        losses)};
    }
    const FirstDays usual = first_days_of(MemoryModel());
    return {fmt::format("Review times are fitted to {} of your own reviews. They foretold the last of them "
                        "no worse: {}.",
                        fit.scored, losses),
            fmt::format("What you get wrong at first stays {:.1f} days (usually {:.1f}), half right or "
                        "unsure {:.1f} ({:.1f}), right {:.1f} ({:.1f}), until 90 in 100 is left.",
                        fit.days[0], usual[0], fit.days[1], usual[1], fit.days[2], usual[2])};
}

}  // namespace hardover::study
