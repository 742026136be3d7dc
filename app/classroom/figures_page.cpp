#include "app/classroom/figures_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "app/classroom/figures_page_parts.hpp"
#include "app/classroom/set.hpp"
#include "app/jobs/wording.hpp"
#include "app/study/mastery.hpp"

namespace hardover::classroom {

using jobs_detail::quoted;
using jobs_detail::upper_first;

namespace {

constexpr std::size_t most_pairs = 12;      // rows of confusions
constexpr std::size_t most_to_look_at = 8;  // sentences of a kind

std::string in_100(double share) {
    return fmt::format("{:.0f} in 100", 100 * share);
}

std::string count_of(int number, const char* one, const char* many) {
    return fmt::format("{} {}", number, number == 1 ? one : many);
}

// Rounded, and never "-0".
std::string fixed(double value, int places) {
    const double scale = std::pow(10.0, places);
    return fmt::format("{:.{}f}", std::round(value * scale) / scale + 0.0, places);
}

// A dash where there is nothing to tell.
std::string cell(const std::optional<double>& value, int places) {
    return value ? fixed(*value, places) : "–";
}

std::string cell(const study::Estimate& estimate) {
    return estimate.error > 0 ? fixed(estimate.value, 1) + " ± " + fixed(1.96 * estimate.error, 1) : "–";
}

std::string share_cell(int right, int of) {
    return of > 0 ? fmt::format("{:.0f} %", 100.0 * right / of) : "–";
}

std::string minutes_cell(const BoatFigures& boats, double minutes) {
    return boats.boats > 0 ? fixed(minutes / boats.boats, 0) : "–";
}

// Groups are told only where there are any, names only where they are wanted.
std::string who(const LearnerFigures& learner, bool with_names) {
    return with_names && !learner.name.empty() ? learner.seat + " " + learner.name : learner.seat;
}

FigureTable learners_table(const ClassFigures& figures, bool with_names) {
    FigureTable table;
    table.name = "Learners";
    table.note =
        "Right: of the first answers to each item. Ability: Rasch, in logits, with its 95 % error; 0 is the "
        "middle. "
        "Surer than right: sureness said less share right; Brier: 0 best, 0.25 no better than tossing a "
        "coin. "
        "Minutes over the best, by choices and by luck, are means per practice boat.";
    table.empty = "Nobody has handed in anything yet.";
    table.columns = {{"Seat", false, 0.17},          {"Items", true, 0.07},           {"Right", true, 0.07},
                     {"Ability", true, 0.12},        {"Surer than right", true, 0.1}, {"Brier", true, 0.08},
                     {"Boats", true, 0.07},          {"By choices", true, 0.1},       {"By luck", true, 0.08},
                     {"Cautions skipped", true, 0.1}};
    if (with_names) {
        constexpr double room = 0.32;  // for a seat with its name
        const double others = (1 - room) / (1 - table.columns[0].share);
        for (FigureColumn& column : table.columns) column.share *= others;
        table.columns[0].share = room;
    }
    for (const LearnerFigures& learner : figures.by_learner) {
        const bool sure = learner.sureness.answers > 0;
        FigureRow row;
        row.id = learner.seat;
        row.cells = {who(learner, with_names),
                     std::to_string(learner.items),
                     share_cell(learner.right, learner.items),
                     cell(learner.ability),
                     sure ? fmt::format("{:+.0f} %", std::round(100 * learner.sureness.bias()) + 0.0) : "–",
                     sure ? fmt::format("{:.2f}", learner.sureness.brier) : "–",
                     std::to_string(learner.boats.boats),
                     minutes_cell(learner.boats, learner.boats.avoidable),
                     minutes_cell(learner.boats, learner.boats.luck),
                     learner.boats.boats > 0 ? std::to_string(learner.boats.cautions_skipped) : "–"};
        row.look_at = learner.boats.cautions_skipped > 0;
        table.rows.push_back(std::move(row));
    }
    return table;
}

// Where each verdict stands among those that want looking at; 0: it does not.
int urgency(ItemVerdict verdict) {
    switch (verdict) {
        case ItemVerdict::key_suspect:
            return 6;
        case ItemVerdict::everyone_wrong:
            return 5;
        case ItemVerdict::weak:
            return 4;
        case ItemVerdict::too_hard:
            return 3;
        case ItemVerdict::too_easy:
            return 2;
        case ItemVerdict::everyone_right:
            return 1;
        case ItemVerdict::too_few:
        case ItemVerdict::fine:
            return 0;
    }
    return 0;
}

FigureTable items_table(const ClassFigures& figures) {
    FigureTable table;
    table.name = "Items";
    table.note = fmt::format(
        "N: learners who answered. Difficulty: Rasch, in logits, with its 95 % error. Discrimination: share "
        "right of "
        "the best 27 % less that of the worst. Rest: correlation with the learner's other answers. Nothing "
        "is told "
        "of fewer than {} learners.",
        fewest_learners);
    table.empty = "No item has been answered yet.";
    table.columns = {{"No.", true, 0.05},   {"Item", false, 0.51},      {"N", true, 0.06},
                     {"Right", true, 0.08}, {"Difficulty", true, 0.12}, {"Discrimination", true, 0.11},
                     {"Rest", true, 0.07}};
    for (const ItemFigures& item : figures.by_item) {
        FigureRow row;
        row.id = item.item;
        row.cells = {std::to_string(table.rows.size() + 1),
                     item.name,
                     std::to_string(item.learners),
                     item.share_right ? share_cell(item.right, item.learners) : "–",
                     item.difficulty ? cell(*item.difficulty) : "–",
                     cell(item.discrimination, 2),
                     cell(item.with_rest, 2)};
        row.look_at = urgency(item.verdict) > 0;
        if (!item.discriminates()) row.note = item.why;
        table.rows.push_back(std::move(row));
    }
    return table;
}

const char* kind_name(TopicKind kind) {
    switch (kind) {
        case TopicKind::complaint:
            return "Complaint";
        case TopicKind::part:
            return "Part";
        case TopicKind::form:
            return "Form";
    }
    return "";
}

FigureTable topics_table(const ClassFigures& figures) {
    FigureTable table;
    table.name = "Topics";
    table.note =
        fmt::format("First answers of all learners, with the share's 95 % range; – : fewer than {} learners.",
                    fewest_learners);
    table.empty = "No item has been answered yet.";
    table.columns = {{"About", false, 0.14},  {"Topic", false, 0.36}, {"Learners", true, 0.12},
                     {"Answers", true, 0.12}, {"Right", true, 0.1},   {"95 %", true, 0.16}};
    table.whole = figures.topics_named;
    if (figures.all_topics) {
        table.others = "The quizzes ask about every topic of the knowledge";
    } else if (figures.topics_named > 0) {
        table.others = "Every topic that a quiz is about stands here; its questions touch others too";
    }
    for (const TopicFigures& topic : figures.by_topic) {
        table.rows.push_back(
            {topic.id,
             {kind_name(topic.kind), topic.name, std::to_string(topic.learners),
              std::to_string(topic.answers), topic.share_right ? share_cell(topic.right, topic.answers) : "–",
              topic.share_95
                  ? fmt::format("{:.0f} to {:.0f} %", 100 * topic.share_95->low, 100 * topic.share_95->high)
                  : "–"},
             false,
             ""});
    }
    return table;
}

std::string confusion_words(const Confusion& pair) {
    return fmt::format("{} was taken for {} {} of {}, by {}.", quoted(pair.right_name),
                       quoted(pair.chosen_name), pair.times(), count_of(pair.of, "time", "times"),
                       count_of(pair.learners, "learner", "learners"));
}

FigureTable confusions_table(const ClassFigures& figures) {
    FigureTable table;
    table.name = "Causes taken for others";
    table.note =
        "Of items that ask for a cause, and of practice boats. Of: how often the cause was the right one.";
    table.empty = "No cause was taken for another.";
    table.columns = {{"It was", false, 0.29}, {"Taken for", false, 0.29}, {"Items", true, 0.1},
                     {"Boats", true, 0.1},    {"Of", true, 0.1},          {"Learners", true, 0.12}};
    for (const Confusion& pair : figures.confusions) {
        if (table.rows.size() == most_pairs) break;
        table.rows.push_back(
            {pair.right + "/" + pair.chosen,
             {pair.right_name, pair.chosen_name, std::to_string(pair.answers), std::to_string(pair.boats),
              std::to_string(pair.of), std::to_string(pair.learners)},
             false,
             ""});
    }
    return table;
}

std::string letter(std::size_t number) {
    return std::string(1, static_cast<char>('A' + number));
}

FigureTable causes_table(const CauseTable& causes) {
    FigureTable table;
    table.name = "Which cause was taken for which";
    table.note = "Rows: what it was. Columns: what was chosen, by letter. Right ones stand on the slant.";
    table.empty = "No cause was taken for another.";
    table.columns = {{"It was", false, 0.44}};
    for (std::size_t c = 0; c < causes.causes.size(); ++c) {
        table.columns.push_back({letter(c), true, 0.56 / static_cast<double>(causes.causes.size())});
    }
    for (std::size_t r = 0; r < causes.causes.size(); ++r) {
        FigureRow row{causes.causes[r], {letter(r) + "  " + causes.names[r]}, false, ""};
        for (std::size_t c = 0; c < causes.causes.size(); ++c) {
            const int times = causes.times[r][c];
            row.cells.push_back(times > 0 ? std::to_string(times) : "·");
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

FigureTable term_table(const ClassFigures& figures) {
    FigureTable table;
    table.name = "Practice boats through the term";
    table.note = fmt::format(
        "Minutes per boat beyond what the expert's way is expected to take: lost by choices, and by luck "
        "(won where "
        "below 0). – : fewer than {} learners.",
        fewest_learners);
    table.empty = "No practice boat has been finished yet.";
    table.columns = {{figures.by_week ? "Week from" : "Day", false, 0.25},
                     {"Boats", true, 0.15},
                     {"Learners", true, 0.15},
                     {"By choices", true, 0.15},
                     {"By luck", true, 0.15},
                     {"Together", true, 0.15}};
    for (const TermPeriod& period : figures.term) {
        std::optional<double> together;
        if (period.avoidable) together = *period.avoidable + *period.luck;
        table.rows.push_back(
            {day_text(period.first_day),
             {day_text(period.first_day), std::to_string(period.boats), std::to_string(period.learners),
              cell(period.avoidable, 0), cell(period.luck, 0), cell(together, 0)},
             false,
             ""});
    }
    return table;
}

// Places of the items that want looking at.
std::vector<std::size_t> worst_first(const std::vector<ItemFigures>& items) {
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (urgency(items[i].verdict) > 0) places.push_back(i);
    }
    std::stable_sort(places.begin(), places.end(), [&](std::size_t a, std::size_t b) {
        return urgency(items[a].verdict) > urgency(items[b].verdict);
    });
    return places;
}

std::string headline_of(const ClassFigures& figures) {
    return fmt::format("{}: {}, {}, {}.", figures.name.empty() ? "Class" : upper_first(figures.name),
                       count_of(figures.learners, "learner with results", "learners with results"),
                       count_of(figures.answers, "answer", "answers"),
                       count_of(figures.boats, "practice boat", "practice boats"));
}

void add_answer_sentences(std::vector<std::string>& lines, const ClassFigures& figures) {
    if (figures.answers == 0) return;
    if (!figures.share_right) {
        lines.push_back(
            fmt::format("No average of the class is told with fewer than {} learners.", fewest_learners));
        return;
    }
    lines.push_back(
        fmt::format("{} of the first answers were right.", upper_first(in_100(*figures.share_right))));
    if (figures.sureness) {
        const double bias = figures.sureness->bias();
        const std::string than = std::abs(bias) < 0.005
                                     ? std::string("as sure as it was right")
                                     : fmt::format("{} than it was right by {}",
                                                   bias < 0 ? "less sure" : "surer", in_100(std::abs(bias)));
        lines.push_back(fmt::format("Over {} with sureness said, the class was {} (Brier {:.2f}; 0 is best).",
                                    count_of(figures.sureness->answers, "answer", "answers"), than,
                                    figures.sureness->brier));
    }
    if (figures.rough) {
        lines.push_back(
            fmt::format("Difficulties and abilities are rough: fewer than {} learners (J. M. Linacre "
                        "1994). Do not rank by them.",
                        study::enough_learners));
    }
}

void add_boat_sentences(std::vector<std::string>& lines, const ClassFigures& figures) {
    const BoatFigures& boats = figures.all_boats;
    if (boats.boats == 0) return;
    std::string line = fmt::format("{} of {} practice boats were cured", boats.cured, boats.boats);
    const auto workers = std::count_if(figures.by_learner.begin(), figures.by_learner.end(),
                                       [](const LearnerFigures& learner) { return learner.boats.boats > 0; });
    if (workers >= fewest_learners) {
        line += fmt::format("; a boat took {:.0f} minutes, {:.0f} lost by choices and {:.0f} {} by luck",
                            boats.minutes / boats.boats, boats.avoidable / boats.boats,
                            std::abs(boats.luck) / boats.boats, boats.luck < 0 ? "won" : "lost");
    }
    lines.push_back(line + ".");
    if (boats.cautions_skipped > 0) {
        lines.push_back(fmt::format("{} skipped: talk about {} first.",
                                    count_of(boats.cautions_skipped, "caution was", "cautions were"),
                                    boats.cautions_skipped == 1 ? "it" : "them"));
    }
}

std::string left_out_words(const ReliabilityFigures& figures) {
    if (figures.learners_left_out == 0 && figures.items_left_out == 0) return "";
    return fmt::format(" Left out, so that no answer is missing: {} and {}.",
                       count_of(figures.learners_left_out, "learner", "learners"),
                       count_of(figures.items_left_out, "item", "items"));
}

std::string title_of(const ReliabilityFigures& figures) {
    return figures.set.empty() ? "All answers together" : "Set " + figures.set;
}

}  // namespace

std::string reliability_words(const ReliabilityFigures& figures) {
    const std::string rests =
        fmt::format("{}, {} by {}", title_of(figures), count_of(figures.learners, "learner", "learners"),
                    count_of(figures.items, "item", "items"));
    if (!figures.kr20) {
        const bool alike = figures.learners >= fewest_learners && figures.items >= 2;
        return rests +
               (alike ? ": no reliability, everyone has the same number right."
                      : ": too little without gaps for a reliability (KR-20).") +
               left_out_words(figures);
    }
    return fmt::format(
               "{}: reliability (KR-20) {:.2f} ± {:.2f}, 95 % from {:.2f} to {:.2f}. Mean {:.1f} right, "
               "standard error "
               "of a learner's number right {:.1f}: two closer than {:.1f} are not shown to differ.",
               rests, figures.kr20->value, figures.kr20->error, figures.kr20->within_95.low,
               figures.kr20->within_95.high, *figures.mean, figures.kr20->measurement_error,
               figures.kr20->apart) +
           left_out_words(figures);
}

FiguresPage make_figures_page(const ClassFigures& figures, bool with_names) {
    FiguresPage page;
    page.headline = headline_of(figures);
    add_answer_sentences(page.summary, figures);
    if (figures.answers > 0) page.summary.push_back(reliability_words(figures.whole));
    for (const ReliabilityFigures& set : figures.by_set) page.summary.push_back(reliability_words(set));
    add_boat_sentences(page.summary, figures);
    if (figures.disputed > 0) {
        page.summary.push_back(fmt::format("{} left out: two different records claim the same place.",
                                           count_of(figures.disputed, "result is", "results are")));
    }
    for (const std::size_t i : worst_first(figures.by_item)) {
        if (page.to_look_at.size() == most_to_look_at) break;
        const ItemFigures& item = figures.by_item[i];
        page.to_look_at.push_back(fmt::format("Item {}, {}. {}", i + 1, item.name, item.why));
    }
    const std::size_t items = page.to_look_at.size();
    for (const Confusion& pair : figures.confusions) {
        if (pair.times() < 2 || page.to_look_at.size() - items == most_to_look_at / 2) break;
        page.to_look_at.push_back(confusion_words(pair));
    }
    page.learners = learners_table(figures, with_names);
    page.items = items_table(figures);
    page.topics = topics_table(figures);
    page.confusions = confusions_table(figures);
    page.causes = causes_table(figures.table);
    page.term = term_table(figures);
    page.item_map = item_map(figures);
    page.abilities = abilities_plot(figures);
    page.over_best = over_best_plot(figures);
    return page;
}

}  // namespace hardover::classroom
