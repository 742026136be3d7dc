// `hardover learning ...`: learned odds beside the shipped ones, the switches, counts of other shops, and how
// well the closed jobs were foretold.
#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/jobs/job.hpp"
#include "app/jobs/job_calibration.hpp"
#include "app/jobs/json.hpp"
#include "app/jobs/learning.hpp"
#include "app/records/whole_file.hpp"
#include "app/reports/job_report.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

namespace {

using nlohmann::ordered_json;

constexpr std::size_t fewest_to_say_much = 20;

std::string number_of(std::int64_t count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

std::string jobs(std::int64_t count) {
    return number_of(count, "job", "jobs");
}

std::string percent(double share) {
    return fmt::format("{:.0f} %", 100 * share);
}

// What counts and what does not, a sentence each.
std::vector<std::string> sentences(const LearningTable& table) {
    const LearningSettings& settings = table.settings;
    std::vector<std::string> lines;
    lines.push_back(settings.on ? "Learning is on."
                                : "Learning is off: the shipped odds are used. Learned odds are shown as "
                                  "they would be.");
    lines.push_back("The shipped odds weigh as much as " + jobs(settings.way.strength) + ".");
    lines.push_back(
        "Counted: " + jobs(table.counted.own_jobs) + " of this shop, " +
        jobs(sum_of(table.counted.others).in_all()) + " of " +
        number_of(static_cast<std::int64_t>(table.counted.others.size()), "other shop", "other shops") + ".");
    if (table.counted.own.in_all() > table.counted.own_jobs) {
        lines.push_back("A job with several confirmed causes counts once for each: " +
                        number_of(table.counted.own.in_all(), "cause", "causes") + " in all.");
    }
    if (table.counted.not_confirmed > 0) {
        lines.push_back(
            "Not counted, because the cause was only assumed: " + jobs(table.counted.not_confirmed) + ".");
    }
    if (table.counted.before > 0) {
        lines.push_back("Not counted since the reset (handed back until " + settings.from +
                        "): " + jobs(table.counted.before) + ".");
    }
    if (table.without_history > 0) {
        lines.push_back("Of no history that is known here, so that they move no cause's odds: " +
                        jobs(table.without_history) + ".");
    }
    if (table.without_cause > 0) {
        lines.push_back("Of causes that this knowledge does not have: " + jobs(table.without_cause) + ".");
    }
    if (table.foretells_best) {
        lines.push_back("These jobs would have been foretold best with a strength of " +
                        std::to_string(*table.foretells_best) + " (of 4, 10, 20, 50, 100, 200).");
    }
    return lines;
}

void print_odds(std::ostream& out, const LearnedOdds& odds) {
    out << fmt::format("  {:<42} {:>5} {:>9.1f} {:>9.1f} ± {:.1f}\n", odds.name, odds.jobs, odds.shipped,
                       odds.learned, odds.deviation);
}

void print_history(std::ostream& out, const LearnedHistory& history, int strength) {
    out << "\n" << history.name << ": " << jobs(history.jobs) << "\n";
    if (history.jobs == 0) return;
    out << fmt::format("  {:<42} {:>5} {:>9} {:>9}\n", "Odds per 1000 comebacks", "jobs", "shipped",
                       "learned");
    std::vector<LearnedOdds> found = history.odds;
    std::erase_if(found, [](const LearnedOdds& odds) { return odds.jobs == 0; });
    std::stable_sort(found.begin(), found.end(),
                     [](const LearnedOdds& a, const LearnedOdds& b) { return a.jobs > b.jobs; });
    for (const LearnedOdds& odds : found) print_odds(out, odds);
    const double factor = strength / (strength + static_cast<double>(history.jobs));
    out << fmt::format("  The other {} causes: shipped odds times {:.2f}\n",
                       history.odds.size() - found.size(), factor);
}

void print_shows(std::ostream& out, const LearnedShows& shows) {
    out << "  " << shows.cause << ", " << shows.name << ":";
    for (std::size_t i = 0; i < shows.readings.size(); ++i) {
        out << fmt::format("{} {} {:.2f} -> {:.2f} ({})", i == 0 ? "" : ",", shows.readings[i],
                           shows.shipped[i], shows.learned[i], jobs(shows.jobs[i]));
    }
    out << "\n";
}

ordered_json odds_json(const LearnedOdds& odds) {
    return {{"cause", odds.cause},     {"name", odds.name},       {"jobs", odds.jobs},
            {"shipped", odds.shipped}, {"learned", odds.learned}, {"deviation", odds.deviation}};
}

ordered_json table_json(const LearningTable& table) {
    const LearningSettings& settings = table.settings;
    ordered_json histories = ordered_json::array();
    for (const LearnedHistory& history : table.histories) {
        ordered_json odds = ordered_json::array();
        for (const LearnedOdds& cause : history.odds) odds.push_back(odds_json(cause));
        histories.push_back(
            {{"history", history.history}, {"name", history.name}, {"jobs", history.jobs}, {"odds", odds}});
    }
    ordered_json shows = ordered_json::array();
    for (const LearnedShows& of : table.shows) {
        shows.push_back({{"cause", of.cause},
                         {"finding", of.finding},
                         {"readings", of.readings},
                         {"jobs", of.jobs},
                         {"shipped", of.shipped},
                         {"learned", of.learned}});
    }
    ordered_json best;
    if (table.foretells_best) best = *table.foretells_best;
    return {{"on", settings.on},
            {"how_often", settings.way.how_often},
            {"strength", settings.way.strength},
            {"strength_that_foretells_best", best},
            {"from", settings.from},
            {"own_jobs", table.counted.own_jobs},
            {"own_causes", table.counted.own.in_all()},
            {"other_shops", table.counted.others.size()},
            {"other_jobs", sum_of(table.counted.others).in_all()},
            {"not_confirmed", table.counted.not_confirmed},
            {"before_reset", table.counted.before},
            {"without_history", table.without_history},
            {"without_cause", table.without_cause},
            {"histories", histories},
            {"not_listed", odds_json(table.not_listed)},
            {"shows", shows}};
}

ordered_json calibrated_json(const CalibratedOdds& odds) {
    ordered_json rows = ordered_json::array();
    for (const ReliabilityRow& row : odds.table) {
        rows.push_back({{"least", row.least},
                        {"most", row.most},
                        {"said", row.said},
                        {"forecasts", row.forecasts},
                        {"came", row.came},
                        {"share", row.share()},
                        {"low", row.low},
                        {"high", row.high}});
    }
    return {{"first", odds.jobs.first},
            {"first_three", odds.jobs.first_three},
            {"reciprocal_rank", odds.jobs.reciprocal_rank},
            {"job_brier", odds.jobs.brier},
            {"job_log_loss", odds.jobs.log_loss},
            {"forecasts", odds.forecasts},
            {"brier", odds.brier.brier},
            {"reliability", odds.brier.reliability},
            {"resolution", odds.brier.resolution},
            {"uncertainty", odds.brier.uncertainty},
            {"within", odds.brier.within},
            {"log_loss", odds.log_loss},
            {"calibration_error", odds.error.mean},
            {"greatest_calibration_error", odds.error.greatest},
            {"table", rows}};
}

void print_scores(std::ostream& out, const CalibratedOdds& shipped, const CalibratedOdds& learned) {
    const auto line = [&](const std::string& name, const std::string& a, const std::string& b) {
        out << fmt::format("  {:<48} {:>9} {:>9}\n", name, a, b);
    };
    const auto figure = [](double x) { return fmt::format("{:.3f}", x); };
    line("", "shipped", "learned");
    line("Confirmed cause came first", percent(shipped.jobs.first), percent(learned.jobs.first));
    line("Among the first three", percent(shipped.jobs.first_three), percent(learned.jobs.first_three));
    line("Log loss of the confirmed cause (less is better)", figure(shipped.jobs.log_loss),
         figure(learned.jobs.log_loss));
    line("Forecasts above 2 %", std::to_string(shipped.forecasts), std::to_string(learned.forecasts));
    line("Brier score (less is better)", figure(shipped.brier.brier), figure(learned.brier.brier));
    line("  reliability (less is better)", figure(shipped.brier.reliability),
         figure(learned.brier.reliability));
    line("  resolution (more is better)", figure(shipped.brier.resolution), figure(learned.brier.resolution));
    line("  uncertainty", figure(shipped.brier.uncertainty), figure(learned.brier.uncertainty));
    line("  blurred by the rows", figure(shipped.brier.within), figure(learned.brier.within));
    line("Calibration error", figure(shipped.error.mean), figure(learned.error.mean));
}

void print_table(std::ostream& out, const std::string& title, const std::vector<ReliabilityRow>& table) {
    out << "\n" << title << "\n";
    for (const ReliabilityRow& row : table) {
        out << fmt::format("  said {:>5}, came {:>5} ({} of {}), true share {} to {}\n", percent(row.said),
                           percent(row.share()), row.came, row.forecasts, percent(row.low),
                           percent(row.high));
    }
}

bool is_day(const std::string& text) {
    if (text.size() != 10) return false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool fits = i == 4 || i == 7 ? text[i] == '-' : text[i] >= '0' && text[i] <= '9';
        if (!fits) return false;
    }
    return text.substr(5, 2) >= "01" && text.substr(5, 2) <= "12" && text.substr(8) >= "01" &&
           text.substr(8) <= "31";
}

// Whether the counts may be written to this path: nothing is there, or an earlier export.
Result<void> may_be_written(const std::string& path) {
    std::error_code failed;
    if (!std::filesystem::exists(path, failed)) return {};
    const Result<std::string> there = read_file(path);
    if (!there) return there.error();
    if (there.value().empty() || read_count_file(there.value(), path).ok()) return {};
    return Error{Error::Kind::bad_input, "this file holds something else", path,
                 "it was left as it is; name another file"};
}

}  // namespace

int run_learning_show(Context& context, bool json) {
    const Result<Knowledge> shipped = load_knowledge(context);
    if (!shipped) return refuse(context, shipped.error());
    const Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    const Result<LearningTable> table = learning_table(shipped.value(), store.value());
    if (!table) return refuse(context, table.error());
    std::ostream& out = context.streams.out;
    if (json) {
        out << json_text(table_json(table.value())) << "\n";
        return 0;
    }
    for (const std::string& sentence : sentences(table.value())) say_wrapped(context.streams.out, sentence);
    for (const LearnedHistory& history : table.value().histories) {
        print_history(out, history, table.value().settings.way.strength);
    }
    out << "\nAny history\n";
    print_odds(out, table.value().not_listed);
    if (!table.value().shows.empty()) out << "\nHow often a cause shows a finding\n";
    for (const LearnedShows& shows : table.value().shows) print_shows(out, shows);
    return 0;
}

int run_learning_switch(Context& context, bool on, bool how_often) {
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    const Result<void> done = switch_learning(store.value(), on, how_often);
    if (!done) return refuse(context, done.error());
    if (!on) {
        say_wrapped(context.streams.out, "Learning is off: the odds are as shipped. Nothing is forgotten.");
    } else {
        say_wrapped(context.streams.out,
                    std::string("Learning is on: closed jobs with a confirmed cause move the odds") +
                        (how_often ? ", and how often a cause shows a finding." : "."));
    }
    return 0;
}

int run_learning_strength(Context& context, int strength) {
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    const Result<void> done = set_learning_strength(store.value(), strength);
    if (!done) return refuse(context, done.error());
    say_wrapped(context.streams.out, "The shipped odds weigh as much as " + jobs(strength) + ".");
    return 0;
}

int run_learning_reset(Context& context, const std::string& before, bool count_all) {
    if (!before.empty() && !is_day(before)) {
        return refuse(context, {Error::Kind::bad_input, "'" + before + "' is not a day", "--before",
                                "write it as 2026-11-25"});
    }
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    const bool anew = before.empty() && !count_all;
    const Result<void> done = reset_learning(store.value(), anew ? utc_now() : before, anew);
    if (!done) return refuse(context, done.error());
    if (count_all) {
        say_wrapped(context.streams.out, "All jobs of this shop count.");
    } else if (anew) {
        say_wrapped(
            context.streams.out,
            "The odds are as shipped: no job handed back until now counts, and the counts of other shops are "
            "dropped. No job is lost; count them again with: hardover learning reset --count-all");
    } else {
        say_wrapped(context.streams.out, "Jobs of this shop handed back before " + before + " do not count.");
    }
    return 0;
}

int run_learning_export(Context& context, const std::string& file) {
    const Result<Knowledge> shipped = load_knowledge(context);
    if (!shipped) return refuse(context, shipped.error());
    const Result<void> free = may_be_written(file);
    if (!free) return refuse(context, free.error());
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    const Result<std::string> text = export_counts(shipped.value(), store.value());
    if (!text) return refuse(context, text.error());
    const Result<void> written = write_whole_file(file, text.value());
    if (!written) return refuse(context, written.error());
    say_wrapped(context.streams.out, "The counts stand in " + file + ". No boat, customer or note is in it.");
    return 0;
}

int run_learning_merge(Context& context, const std::vector<std::string>& files) {
    std::vector<CountFile> read;
    for (const std::string& file : files) {
        Result<std::string> text = read_file(file);
        if (!text) return refuse(context, text.error());
        read.push_back({file, std::move(text.value())});
    }
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    const Result<Merging> merging = merge_counts(store.value(), read);
    if (!merging) return refuse(context, merging.error());
    const Merging& done = merging.value();
    say_wrapped(context.streams.out,
                "Shops: " + std::to_string(done.shops_new) + " new, " + std::to_string(done.shops_newer) +
                    " with newer counts, " + std::to_string(done.shops_known) + " known already." +
                    (done.own ? " This shop's own counts were passed over; they count already." : ""));
    return 0;
}

int run_learning_calibration(Context& context, bool json) {
    const Result<Knowledge> shipped = load_knowledge(context);
    if (!shipped) return refuse(context, shipped.error());
    const Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    const Result<JobCalibration> done = calibrate(shipped.value(), store.value());
    if (!done) return refuse(context, done.error());
    const JobCalibration& calibration = done.value();
    std::ostream& out = context.streams.out;
    if (json) {
        out << json_text({{"jobs", calibration.shipped.jobs.jobs},
                          {"not_confirmed", calibration.not_confirmed},
                          {"before_reset", calibration.before},
                          {"without_cause", calibration.without_cause},
                          {"shipped", calibrated_json(calibration.shipped)},
                          {"learned", calibrated_json(calibration.learned)}})
            << "\n";
        return 0;
    }
    const std::size_t scored = calibration.shipped.jobs.jobs;
    if (scored == 0) {
        say_wrapped(context.streams.out, "No job of this shop is handed back with a confirmed cause yet.");
        return 0;
    }
    say_wrapped(context.streams.out,
                jobs(static_cast<std::int64_t>(scored)) +
                    " with a confirmed cause, each as it stood before the cure. Learned odds are those from "
                    "the jobs handed back before it, and from other shops.");
    if (scored < fewest_to_say_much)
        say_wrapped(context.streams.out, "With fewer than 20 jobs these figures say little.");
    print_scores(out, calibration.shipped, calibration.learned);
    print_table(out, "Shipped odds, true share with 95 % certainty", calibration.shipped.table);
    print_table(out, "Learned odds, true share with 95 % certainty", calibration.learned.table);
    return 0;
}

}  // namespace hardover
