#include "app/jobs/boat_history.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "app/jobs/job.hpp"
#include "app/jobs/moment.hpp"
#include "app/jobs/page_parts.hpp"
#include "app/jobs/photos.hpp"
#include "app/jobs/proved.hpp"
#include "app/jobs/replay.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

// A job of the boat as the comparison needs it.
struct Past {
    Job job;
    std::string opened_on;  // days
    std::string closed_on;  // "" while in hand
};

std::string day_of(const std::string& at) {
    return local_moment(at).substr(0, 10);
}

// Days since 1970-01-01 (Howard Hinnant, "chrono-Compatible Low-Level Date Algorithms", days_from_civil); 0
// for a text that is no day.
long days_since_1970(const std::string& day) {
    int year = 0, month = 0, date = 0;
    if (std::sscanf(day.c_str(), "%d-%d-%d", &year, &month, &date) != 3) return 0;
    year -= month <= 2 ? 1 : 0;
    const long era = (year >= 0 ? year : year - 399) / 400;
    const long of_era = year - era * 400;
    const long of_year = (153L * (month + (month > 2 ? -3 : 9)) + 2) / 5 + date - 1;
    return era * 146097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year - 719468;
}

// None while the job is in hand.
std::vector<RecordedCause> causes_of_job(const Job& job) {
    return job.handed_back ? causes_of(*job.handed_back) : std::vector<RecordedCause>();
}

bool share_a_cause(const Job& a, const Job& b) {
    const std::vector<RecordedCause> of_a = causes_of_job(a), of_b = causes_of_job(b);
    return std::any_of(of_a.begin(), of_a.end(), [&of_b](const RecordedCause& one) {
        return std::any_of(of_b.begin(), of_b.end(),
                           [&one](const RecordedCause& other) { return other.cause == one.cause; });
    });
}

std::string complaints_text(const Knowledge& knowledge, const Job& job) {
    std::vector<std::string> names;
    for (const Index complaint : job.facts.complaints) {
        names.push_back(knowledge.complaints[static_cast<std::size_t>(complaint)].name);
    }
    return listed(names);
}

// Answers that are not as on a sound boat, and every figure.
std::vector<std::string> found_lines(const Knowledge& knowledge, const Job& job) {
    std::vector<std::string> lines;
    for (const auto& [index, answer] : job.facts.answers) {
        const Finding& finding = knowledge.findings[static_cast<std::size_t>(index)];
        const int* reading = std::get_if<int>(&answer.given);
        const bool sound = reading != nullptr && *reading + 1 == static_cast<int>(finding.readings.size());
        if (sound || std::holds_alternative<CannotTell>(answer.given)) continue;
        lines.push_back(finding.name + ": " + answer_text(knowledge, index, answer, job.shop.units));
    }
    return lines;
}

EarlierJob told(const Knowledge& knowledge, const Past& past) {
    const Job& job = past.job;
    EarlierJob line;
    line.number = job.number;
    line.title = fmt::format("Job {}, opened {}, {}", job.number, past.opened_on,
                             past.closed_on.empty() ? "in hand" : "handed back " + past.closed_on);
    line.words = job.words;
    line.complaints = complaints_text(knowledge, job);
    line.found = found_lines(knowledge, job);
    for (const auto& [remedy, outcome] : job.facts.tried) {
        line.work.push_back(knowledge.remedies[static_cast<std::size_t>(remedy)].name + ": " +
                            outcome_text(outcome));
    }
    line.cause = upper_first(recorded_text(knowledge, causes_of_job(job)));
    for (const Attached& photo : job.photos) line.photos.push_back(photo_name(photo));
    return line;
}

std::string jobs_text(const std::vector<const Past*>& jobs) {
    std::vector<std::string> numbers;
    for (const Past* past : jobs) numbers.push_back(fmt::format("job {}", past->job.number));
    return listed(numbers);
}

std::string days_text(const Past& from, const Past& to) {
    const long days = days_since_1970(to.opened_on) - days_since_1970(from.closed_on);
    if (days <= 0) return "the same day";
    return days == 1 ? "1 day later" : fmt::format("{} days later", days);
}

// Causes that came more than once, and complaints that came back with another cause.
void compare_closed(const Knowledge& knowledge, const std::vector<Past>& jobs,
                    std::vector<std::string>& compared) {
    std::map<std::string, std::vector<const Past*>> by_cause;
    std::set<std::string> assumed;  // in one job at least
    for (const Past& past : jobs) {
        for (const RecordedCause& one : causes_of_job(past.job)) {
            if (one.cause == "not_listed") continue;
            by_cause[one.cause].push_back(&past);
            if (!one.confirmed) assumed.insert(one.cause);
        }
    }
    for (const auto& [cause, came] : by_cause) {
        if (came.size() < 2) continue;
        const Index index = find(knowledge.causes, cause);
        compared.push_back(
            fmt::format("The same cause came again: {}, in {} (the last {}).{}",
                        index == none ? spoken_id(cause) : lower_first(cause_name(knowledge, index)),
                        jobs_text(came), days_text(*came[came.size() - 2], *came.back()),
                        assumed.contains(cause) ? " Not every time was it seen and proved."
                                                : " What brings it about may still be there."));
    }
    for (std::size_t i = 1; i < jobs.size(); ++i) {
        if (!jobs[i].job.handed_back) continue;
        for (std::size_t j = i; j-- > 0;) {
            if (!jobs[j].job.handed_back || jobs[i].job.facts.complaints != jobs[j].job.facts.complaints ||
                jobs[i].job.facts.complaints.empty() || share_a_cause(jobs[i].job, jobs[j].job)) {
                continue;
            }
            compared.push_back(fmt::format("The same complaint as in job {}, another cause, in job {} ({}).",
                                           jobs[j].job.number, jobs[i].job.number,
                                           days_text(jobs[j], jobs[i])));
            break;
        }
    }
}

// A job in hand beside those before it.
void compare_open(const PreparedKnowledge& prepared, const std::vector<Past>& jobs, const Past& open,
                  std::vector<std::string>& compared) {
    const Knowledge& knowledge = prepared.knowledge();
    std::set<std::string> said;
    const Assessment assessment = assess(prepared, open.job.facts, {false, false, false});
    for (const Past& past : jobs) {
        if (!past.job.handed_back || past.opened_on > open.opened_on) continue;
        for (const RecordedCause& one : causes_of_job(past.job)) {
            const Index cause = find(knowledge.causes, one.cause);
            if (cause == none || !said.insert(one.cause).second) continue;
            for (const RankedCause& ranked : assessment.ranking) {
                if (ranked.cause != cause) continue;
                compared.push_back(fmt::format("Job {} is in hand: {}, {} cause of job {}, is at {} now.",
                                               open.job.number, lower_first(cause_name(knowledge, cause)),
                                               past.job.handed_back->further.empty() ? "the" : "a",
                                               past.job.number, percent_text(ranked.probability)));
            }
        }
    }
}

}  // namespace

Result<BoatHistory> boat_history(const Store& store, const PreparedKnowledge& prepared,
                                 const std::string& boat) {
    const auto rows = store.jobs_of_boat(boat);
    if (!rows.ok()) return rows.error();
    if (rows.value().empty()) {
        return Error{Error::Kind::not_found, "there is no job of a boat '" + boat + "'", "",
                     "find its name with: hardover job list --boat PART-OF-IT"};
    }
    const Knowledge& knowledge = prepared.knowledge();
    std::vector<Past> jobs;
    for (const JobRow& row : rows.value()) {
        auto events = store.events(row.number);
        if (!events.ok()) return events.error();
        const auto shop = read_shop(store);
        if (!shop.ok()) return shop.error();
        Past past{replay_facts(knowledge, row.number, std::move(events.value()), shop.value().ways),
                  day_of(row.opened_at), ""};
        if (past.job.handed_back) past.closed_on = day_of(row.changed_at);
        for (auto event = past.job.events.rbegin(); event != past.job.events.rend(); ++event) {
            if (!past.job.handed_back || event->kind != "handed_back") continue;
            past.closed_on = day_of(event->at);
            break;
        }
        jobs.push_back(std::move(past));
    }
    BoatHistory history;
    history.title = fmt::format("{}: {} job{}", rows.value().front().summary.boat, jobs.size(),
                                jobs.size() == 1 ? "" : "s");
    for (const Past& past : jobs) history.jobs.push_back(told(knowledge, past));
    compare_closed(knowledge, jobs, history.compared);
    for (const Past& past : jobs) {
        if (!past.job.handed_back) compare_open(prepared, jobs, past, history.compared);
    }
    if (history.compared.empty() && jobs.size() > 1) {
        history.compared.emplace_back("No cause and no complaint came twice.");
    }
    return history;
}

std::string boat_history_text(const BoatHistory& history) {
    std::string text = history.title + "\n";
    const auto lines = [&text](const char* what, const std::vector<std::string>& all) {
        for (const std::string& line : all) text += fmt::format("  {}: {}\n", what, line);
    };
    for (const EarlierJob& job : history.jobs) {
        text += "\n" + job.title + "\n";
        if (!job.words.empty()) text += "  The customer: " + quoted(job.words) + "\n";
        if (!job.complaints.empty()) text += "  Complaint: " + job.complaints + "\n";
        lines("Found", job.found);
        lines("Done", job.work);
        if (!job.cause.empty()) text += "  Cause: " + job.cause + "\n";
        lines("Photo", job.photos);
    }
    if (!history.compared.empty()) text += "\nCompared\n";
    for (const std::string& line : history.compared) text += "  " + line + "\n";
    return text;
}

}  // namespace hardover
