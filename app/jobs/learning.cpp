// Counting closed jobs, and the switches of learning in the records.
#include "app/jobs/learning.hpp"

#include <algorithm>
#include <charconv>
#include <map>
#include <set>
#include <utility>

#include "app/jobs/random_id.hpp"
#include "app/jobs/replay.hpp"
#include "rules/reasoning/evidence.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

// Names of settings in the records; once written, they stay.
constexpr const char* switch_name = "learning";               // "on", "off"
constexpr const char* how_often_name = "learning.how_often";  // "on", "off"
constexpr const char* strength_name = "learning.strength";
constexpr const char* from_name = "learning.from";
constexpr const char* shop_name = "shop";
const std::string joined_prefix = "joined_shop.";
constexpr const char* number_name = "export.number";
constexpr const char* exported_name = "export.counts";

std::optional<std::int64_t> whole_number(const std::string& text) {
    std::int64_t number = 0;
    const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (failed != std::errc() || end != text.data() + text.size()) return std::nullopt;
    return number;
}

Error odd_setting(const Store& store, const char* name, const std::string& value, const std::string& cure) {
    return {Error::Kind::storage, std::string("the setting ") + name + " is '" + value + "'", store.path(),
            cure};
}

// "on" or "off", `otherwise` when it was never set.
Result<bool> read_switch(const Store& store, const std::map<std::string, std::string>& settings,
                         const char* name, bool otherwise) {
    const auto found = settings.find(name);
    if (found == settings.end()) return otherwise;
    if (found->second == "on" || found->second == "off") return found->second == "on";
    return odd_setting(store, name, found->second, "switch it again: hardover learning on");
}

// The reading an answer is, a measurement the one it speaks for most; -1 when it says nothing.
int reading_of(const Knowledge& knowledge, Index finding, const Answer& answer) {
    const auto likelihood = likelihood_of(knowledge.findings[static_cast<std::size_t>(finding)], answer,
                                          knowledge.settings.misreading);
    if (!likelihood) return -1;
    const auto most = std::max_element(likelihood->begin(), likelihood->end());
    return static_cast<int>(most - likelihood->begin());
}

void count_readings(const Knowledge& knowledge, const ClosedJob& job, const std::string& cause,
                    ClosedJobs& sum) {
    if (find(knowledge.causes, cause) == none) return;
    const Job replayed = replay_facts(knowledge, job.number, before_work_on(knowledge, job, cause));
    for (const auto& [index, answer] : replayed.facts.answers) {
        const Finding& finding = knowledge.findings[static_cast<std::size_t>(index)];
        const int reading = reading_of(knowledge, index, answer);
        if (reading < 0) continue;
        ++sum.readings[cause][finding.id][finding.readings[static_cast<std::size_t>(reading)].id];
    }
}

Result<Shops> other_shops(const Store& store) {
    const auto stored = store.counts();
    if (!stored.ok()) return stored.error();
    Shops shops;
    for (const StoredCounts& counts : stored.value()) {
        const auto jobs = read_counts(counts.counts, store.path() + ", counts of shop " + counts.shop);
        if (!jobs.ok()) {
            return Error{Error::Kind::storage, jobs.error().what, jobs.error().where,
                         "this drops the counts of other shops: hardover learning reset"};
        }
        shops[counts.shop] = {counts.number, jobs.value()};
    }
    return shops;
}

LearnedOdds learned_odds(const std::string& id, const std::string& name, double shipped, int strength,
                         std::int64_t with, std::int64_t of) {
    const LearnedShare share = share_after(shipped / 1000, strength, with, of);
    return {id, name, with, shipped, 1000 * share.mean, 1000 * share.deviation};
}

std::vector<LearnedShows> learned_shows(const Knowledge& shipped, const ClosedJobs& jobs,
                                        const LearningWay& way) {
    const Knowledge learned = with_learned(shipped, jobs, way);
    std::vector<LearnedShows> all;
    for (std::size_t i = 0; i < shipped.causes.size(); ++i) {
        const auto of_cause = jobs.readings.find(shipped.causes[i].id);
        if (of_cause == jobs.readings.end()) continue;
        for (std::size_t s = 0; s < shipped.causes[i].shows.size(); ++s) {
            const Shows& before = shipped.causes[i].shows[s];
            const Finding& finding = shipped.findings[static_cast<std::size_t>(before.finding)];
            const auto found = of_cause->second.find(finding.id);
            if (found == of_cause->second.end()) continue;
            LearnedShows shows{shipped.causes[i].id,
                               finding.id,
                               finding.name,
                               {},
                               {},
                               before.how_often,
                               learned.causes[i].shows[s].how_often};
            for (const Reading& reading : finding.readings) {
                const auto count = found->second.find(reading.id);
                shows.readings.push_back(reading.id);
                shows.jobs.push_back(count == found->second.end() ? 0 : count->second);
            }
            all.push_back(std::move(shows));
        }
    }
    return all;
}

}  // namespace

Result<LearningSettings> learning_settings(const Store& store) {
    const auto kept = store.settings();
    if (!kept.ok()) return kept.error();
    LearningSettings settings;
    const auto on = read_switch(store, kept.value(), switch_name, settings.on);
    if (!on.ok()) return on.error();
    const auto how_often = read_switch(store, kept.value(), how_often_name, settings.way.how_often);
    if (!how_often.ok()) return how_often.error();
    settings.on = on.value();
    settings.way.how_often = how_often.value();
    if (const auto found = kept.value().find(strength_name); found != kept.value().end()) {
        const auto strength = whole_number(found->second);
        if (!strength || *strength < least_strength || *strength > greatest_strength) {
            return odd_setting(
                store, strength_name, found->second,
                "set it again: hardover learning strength " + std::to_string(shipped_strength));
        }
        settings.way.strength = static_cast<int>(*strength);
    }
    if (const auto found = kept.value().find(from_name); found != kept.value().end()) {
        settings.from = found->second;
    }
    return settings;
}

Result<void> switch_learning(Store& store, bool on, bool how_often) {
    return store.keep(
        {{{switch_name, on ? "on" : "off"}, {how_often_name, on && how_often ? "on" : "off"}}, false, {}});
}

Result<void> set_learning_strength(Store& store, int strength) {
    if (strength < least_strength || strength > greatest_strength) {
        return Error{Error::Kind::bad_input, "the strength cannot be " + std::to_string(strength), "",
                     "a whole number of jobs from " + std::to_string(least_strength) + " to " +
                         std::to_string(greatest_strength)};
    }
    return store.keep({{{strength_name, std::to_string(strength)}}, false, {}});
}

Result<void> reset_learning(Store& store, const std::string& moment, bool drop_others) {
    std::optional<std::string> from;
    if (!moment.empty()) from = moment;
    return store.keep({{{from_name, from}}, drop_others, {}});
}

bool is_counted(const ClosedJob& job, const LearningSettings& settings) {
    return !job.confirmed().empty() && job.handed_back_at > settings.from;
}

void count_job(const Knowledge& knowledge, const ClosedJob& job, bool with_readings, ClosedJobs& sum) {
    auto& causes = sum.causes[job.history.empty() ? history_not_known : job.history];
    for (const std::string& cause : job.confirmed()) {
        ++causes[cause];
        if (with_readings) count_readings(knowledge, job, cause, sum);
    }
}

ClosedJobs CountedJobs::sum() const {
    ClosedJobs all = sum_of(others);
    add(all, own);
    return all;
}

Result<CountedJobs> count_jobs(const Knowledge& knowledge, const Store& store,
                               const LearningSettings& settings, bool with_readings) {
    CountedJobs counted;
    const auto jobs = closed_jobs(store, with_readings ? closing_and_answer_kinds() : closing_kinds());
    if (!jobs.ok()) return jobs.error();
    for (const ClosedJob& job : jobs.value()) {
        if (is_counted(job, settings)) {
            count_job(knowledge, job, with_readings, counted.own);
            ++counted.own_jobs;
        } else {
            ++(job.confirmed().empty() ? counted.not_confirmed : counted.before);
        }
    }
    auto others = other_shops(store);
    if (!others.ok()) return others.error();
    counted.others = std::move(others.value());
    return counted;
}

Result<std::string> own_shop_id(const Store& store) {
    const auto settings = store.settings();
    if (!settings.ok()) return settings.error();
    const auto own = settings.value().find(shop_name);
    return own == settings.value().end() ? std::string() : own->second;
}

std::string joined_shop_setting(const std::string& shop) {
    return joined_prefix + shop;
}

Result<std::set<std::string>> shops_counted_as_own(const Store& store) {
    const auto settings = store.settings();
    if (!settings.ok()) return settings.error();
    std::set<std::string> shops;
    for (const auto& [name, value] : settings.value()) {
        if (name == shop_name) shops.insert(value);
        if (name.starts_with(joined_prefix)) shops.insert(name.substr(joined_prefix.size()));
    }
    return shops;
}

Result<Knowledge> learned_knowledge(const Knowledge& shipped, const Store& store) {
    const auto settings = learning_settings(store);
    if (!settings.ok()) return settings.error();
    if (!settings.value().on) return shipped;
    const LearningWay& way = settings.value().way;
    const auto counted = count_jobs(shipped, store, settings.value(), way.how_often);
    if (!counted.ok()) return counted.error();
    return with_learned(shipped, counted.value().sum(), way);
}

Result<LearningTable> learning_table(const Knowledge& shipped, const Store& store) {
    const auto settings = learning_settings(store);
    if (!settings.ok()) return settings.error();
    const LearningWay& way = settings.value().way;
    auto counted = count_jobs(shipped, store, settings.value(), way.how_often);
    if (!counted.ok()) return counted.error();
    LearningTable table;
    table.settings = settings.value();
    table.counted = std::move(counted.value());
    const ClosedJobs jobs = table.counted.sum();
    for (std::size_t h = 0; h < shipped.histories.size(); ++h) {
        const History& history = shipped.histories[h];
        LearnedHistory learned{history.id, history.name, jobs.of_history(history.id), {}};
        for (const Cause& cause : shipped.causes) {
            learned.odds.push_back(learned_odds(cause.id, cause.name, cause.odds[h], way.strength,
                                                jobs.with_cause(history.id, cause.id), learned.jobs));
        }
        table.histories.push_back(std::move(learned));
    }
    table.not_listed =
        learned_odds(not_listed_cause, "Something not on this list", shipped.settings.not_listed_odds,
                     way.strength, jobs.with_cause(not_listed_cause), jobs.in_all());
    for (const auto& [history, causes] : jobs.causes) {
        if (find(shipped.histories, history) == none) table.without_history += jobs.of_history(history);
        for (const auto& [cause, count] : causes) {
            if (cause != not_listed_cause && find(shipped.causes, cause) == none)
                table.without_cause += count;
        }
    }
    if (way.how_often) table.shows = learned_shows(shipped, jobs, way);
    table.foretells_best = strength_that_foretells_best(shipped, jobs);
    return table;
}

Result<std::string> export_counts(const Knowledge& knowledge, Store& store) {
    const auto settings = learning_settings(store);
    if (!settings.ok()) return settings.error();
    const auto counted = count_jobs(knowledge, store, settings.value(), true);
    if (!counted.ok()) return counted.error();
    auto kept = store.settings();
    if (!kept.ok()) return kept.error();
    std::map<std::string, std::string>& before = kept.value();
    const std::string shop = before.count(shop_name) ? before[shop_name] : random_id();
    const std::string counts = counts_text(counted.value().own);
    std::int64_t number = whole_number(before[number_name]).value_or(0);
    if (number < 1 || before[exported_name] != counts) ++number;
    const auto written = store.keep(
        {{{shop_name, shop}, {number_name, std::to_string(number)}, {exported_name, counts}}, false, {}});
    if (!written.ok()) return written.error();
    Shops shops = counted.value().others;
    shops[shop] = {number, counted.value().own};
    return count_file_text(shops);
}

Result<Merging> merge_counts(Store& store, const std::vector<CountFile>& files) {
    const auto own = shops_counted_as_own(store);
    if (!own.ok()) return own.error();
    const auto known = other_shops(store);
    if (!known.ok()) return known.error();
    Merging merging;
    Shops all = known.value();
    std::set<std::string> named;
    for (const CountFile& file : files) {
        auto shops = read_count_file(file.text, file.name);
        if (!shops.ok()) return shops.error();
        for (const std::string& shop : own.value()) {
            if (shops.value().erase(shop) > 0) merging.own = true;
        }
        for (const auto& [shop, counts] : shops.value()) named.insert(shop);
        auto together = merged(all, shops.value());
        if (!together.ok()) {
            return Error{together.error().kind, together.error().what, file.name, together.error().cure};
        }
        all = std::move(together.value());
    }
    BesideJobs change;
    for (const std::string& shop : named) {
        const ShopCounts& counts = all[shop];
        const auto before = known.value().find(shop);
        const bool is_new = before == known.value().end();
        const bool is_newer = !is_new && before->second != counts;
        ++(is_new ? merging.shops_new : is_newer ? merging.shops_newer : merging.shops_known);
        if (is_new || is_newer) change.counts.push_back({shop, counts.number, counts_text(counts.jobs)});
    }
    if (const auto written = store.keep(change); !written.ok()) return written.error();
    return merging;
}

}  // namespace hardover
