#include "app/study/progress_page.hpp"

#include <fmt/format.h>

#include <cmath>
#include <limits>

#include "app/jobs/wording.hpp"
#include "app/study/quiz_in_hand.hpp"

namespace hardover::study {

namespace {

constexpr int enough_for_calibration = 20;

MasteryLine mastery_line(const TopicMastery& topic) {
    MasteryLine line{topic.id, topic.name, fmt::format("{} of {} met", topic.met, topic.statements), 0, 0};
    if (topic.statements > 0) {
        line.met = static_cast<double>(topic.met) / topic.statements;
        line.remembered = topic.remembered * line.met;
    }
    if (topic.answers == 0) return line;
    line.words += fmt::format(
        ", {} of {} {} right, about {:.0f} in 100 of what was met will still be known tomorrow", topic.right,
        topic.answers, topic.answers == 1 ? "answer" : "answers", 100 * topic.remembered);
    return line;
}

// The step of sureness nearest to what was said.
std::size_t nearest_step(double sure) {
    const std::vector<SureStep>& steps = sure_steps();
    std::size_t nearest = 0;
    for (std::size_t i = 1; i < steps.size(); ++i) {
        if (std::abs(steps[i].sure - sure) < std::abs(steps[nearest].sure - sure)) nearest = i;
    }
    return nearest;
}

std::vector<SureBand> bands_of(const std::vector<SureAnswer>& answers) {
    std::vector<SureBand> bands;
    for (std::size_t step = 0; step < sure_steps().size(); ++step) {
        SureBand band;
        int count = 0, right = 0;
        for (const SureAnswer& answer : answers) {
            if (nearest_step(answer.sure) != step) continue;
            ++count;
            right += answer.right ? 1 : 0;
            band.said += answer.sure;
        }
        if (count == 0) continue;
        band.said /= count;
        band.right = static_cast<double>(right) / count;
        band.name = fmt::format("{}: {:.0f} in 100", sure_steps()[step].name, 100 * band.said);
        band.words = fmt::format("{} {}, {:.0f} in 100 right", count, count == 1 ? "answer" : "answers",
                                 100 * band.right);
        bands.push_back(std::move(band));
    }
    return bands;
}

std::vector<DueLine> due_lines(const LearnerState& learner, int day) {
    struct Span {
        const char* when;
        int last;  // day from today
    };
    constexpr Span spans[] = {{"Today", 0},
                              {"Tomorrow", 1},
                              {"In 2 to 7 days", 7},
                              {"In 8 to 30 days", 30},
                              {"Later", most_days + 1}};
    std::vector<DueLine> lines;
    int from = std::numeric_limits<int>::min();
    for (const Span& span : spans) {
        DueLine line{span.when, 0};
        for (const auto& [id, state] : learner.statements) {
            const int in = state.due_day() - day;
            line.statements += in > from && in <= span.last ? 1 : 0;
        }
        from = span.last;
        if (line.statements > 0) lines.push_back(line);
    }
    return lines;
}

std::string boat_line(const practice::RecordedBoat& boat) {
    using jobs_detail::minutes_text;
    const std::string name = fmt::format("Practice boat {}, level {}, begun {}: ", boat.begun.seed,
                                         boat.begun.level, boat.at.substr(0, 10));
    if (!boat.ended) return name + "not finished";
    const std::string saved = boat.ended->avoidable > 0
                                  ? "better steps save " + minutes_text(boat.ended->avoidable) + " on average"
                                  : "no better steps on average";
    return fmt::format("{}{} after {}; {}", name, boat.ended->cured ? "right" : "help called",
                       minutes_text(boat.ended->minutes), saved);
}

}  // namespace

std::string progress_headline(const LearnerSummary& summary) {
    return fmt::format("{} {}, {} of them right; {} of {} statements met, {} due today.", summary.all.answers,
                       summary.all.answers == 1 ? "answer" : "answers", summary.all.right, summary.all.met,
                       summary.all.statements, summary.due);
}

std::string due_sentence(int due) {
    if (due == 0) return "Nothing is due today.";
    return fmt::format("{} {} due today.", due, due == 1 ? "statement is" : "statements are");
}

std::vector<std::string> memory_sentences(const LearnerState& learner) {
    if (learner.fitted) return fit_sentences(*learner.fitted);
    return {"Review times go by the usual weights, published for FSRS-6."};
}

std::vector<std::string> sureness_sentences(const Calibration& calibration) {
    std::vector<std::string> lines;
    if (calibration.answers == 0) return lines;
    const double bias = 100 * calibration.bias();
    lines.push_back(fmt::format(
        "Sureness given with {} answer{}: {}.", calibration.answers, calibration.answers == 1 ? "" : "s",
        std::abs(bias) < 1 ? std::string("on average as sure as right")
                           : fmt::format("on average {:.0f} in 100 {} than right", std::abs(bias),
                                         bias > 0 ? "surer" : "less sure")));
    if (calibration.answers < enough_for_calibration) return lines;
    lines.push_back(fmt::format("Brier {:.3f} = reliability {:.3f} - resolution {:.3f} + uncertainty {:.3f}.",
                                calibration.brier, calibration.reliability, calibration.resolution,
                                calibration.uncertainty));
    return lines;
}

ProgressPage make_progress_page(const LearnerSummary& summary, const LearnerState& learner,
                                const std::vector<practice::RecordedBoat>& boats, int day) {
    ProgressPage page;
    page.headline = progress_headline(summary);
    page.sureness = sureness_sentences(summary.calibration);
    page.bands = bands_of(learner.sure);
    page.due = due_lines(learner, day);
    page.memory = memory_sentences(learner);
    page.fitted = learner.fitted.has_value();
    for (const TopicMastery& topic : summary.by_complaint) page.by_complaint.push_back(mastery_line(topic));
    for (const TopicMastery& topic : summary.by_part) page.by_part.push_back(mastery_line(topic));
    for (auto boat = boats.rbegin(); boat != boats.rend(); ++boat) page.boats.push_back(boat_line(*boat));
    if (learner.sure.empty()) {
        page.sureness = {
            "No sureness given yet. Say with an answer how sure you are, and see here whether "
            "you are as right as you are sure."};
    }
    return page;
}

}  // namespace hardover::study
