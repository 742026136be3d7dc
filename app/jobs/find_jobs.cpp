#include "app/jobs/find_jobs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <ctime>
#include <optional>
#include <set>
#include <sstream>
#include <unordered_map>
#include <utility>

#include "app/jobs/closed_job.hpp"
#include "app/jobs/event.hpp"
#include "app/jobs/moment.hpp"
#include "app/jobs/page_parts.hpp"
#include "app/jobs/photos.hpp"
#include "app/jobs/proved.hpp"
#include "app/jobs/search.hpp"
#include "app/jobs/word_match.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

// A local day's first moment, or the next day's, in UTC as the records write it.
Result<std::string> moment_of_day(const std::string& day, bool end) {
    std::tm time{};
    std::istringstream text(day);
    int year = 0, month = 0, date = 0;
    char dash_1 = 0, dash_2 = 0;
    text >> year >> dash_1 >> month >> dash_2 >> date;
    const bool form = text && text.peek() == EOF && day.size() == 10 && dash_1 == '-' && dash_2 == '-';
    time.tm_year = year - 1900;
    time.tm_mon = month - 1;
    time.tm_mday = date + (end ? 1 : 0);
    time.tm_isdst = -1;
    if (!form || month < 1 || month > 12 || date < 1 || date > 31) {
        return Error{Error::Kind::bad_input, "'" + day + "' is no day", "", "write it as 2026-11-25"};
    }
    return moment_text(std::mktime(&time));
}

// The entry a person means by its id or by words for it.
template <typename E>
Result<Index> meant(const Knowledge& knowledge, const std::vector<E>& entries, const std::string& kind,
                    const std::string& typed) {
    const Index by_id = find(entries, typed);
    if (by_id != none) return by_id;
    const auto hits = SearchIndex(knowledge).find(typed, {kind}, 1, false);
    if (!hits.empty()) return find(entries, hits.front().to.id);
    return Error{Error::Kind::bad_input, "there is no " + kind + " like '" + typed + "'", "",
                 "list them with: hardover knowledge list " + kind + "s"};
}

std::vector<std::string> ids_in(const std::string& list) {
    std::vector<std::string> ids;
    std::istringstream parts(list);
    for (std::string id; std::getline(parts, id, ',');) {
        id.erase(0, id.find_first_not_of(' '));
        if (!id.empty()) ids.push_back(id);
    }
    return ids;
}

std::string state_name(const std::string& state) {
    return state == "handed back" ? "Handed back" : "In hand";
}

std::string title_of(const JobRow& row) {
    return fmt::format("Job {} · {}", row.number, row.summary.boat);
}

std::string cause_line(const Knowledge& knowledge, const ClosedJob& job) {
    return fmt::format("{}: {}", job.causes.size() == 1 ? "Cause" : "Causes",
                       recorded_text(knowledge, job.causes));
}

// The texts of an event that a person wrote, each with what it is.
std::vector<std::pair<std::string, std::string>> written(const StoredEvent& stored) {
    const auto event = from_stored(stored);
    if (!event.ok()) return {};
    if (const auto* e = std::get_if<Opened>(&event.value())) return {{"The customer", e->words}};
    if (const auto* e = std::get_if<Noted>(&event.value())) return {{"Note", e->text}};
    if (const auto* e = std::get_if<HandedBack>(&event.value())) return {{"Handed back", e->note}};
    if (const auto* e = std::get_if<Reopened>(&event.value())) return {{"Reopened", e->why}};
    if (const auto* e = std::get_if<Attached>(&event.value())) return {{"Photo", photo_name(*e)}};
    return {};
}

// The ids after each "cause": in a stored hand-back, without reading all of it.
std::vector<std::string> causes_in(const std::string& body) {
    constexpr std::string_view key = "\"cause\":\"";
    std::vector<std::string> causes;
    for (std::size_t at = body.find(key); at != std::string::npos; at = body.find(key, at)) {
        at += key.size();
        causes.push_back(body.substr(at, body.find('"', at) - at));
    }
    return causes;
}

bool contains(const std::vector<std::string>& ids, const std::string& id) {
    return std::find(ids.begin(), ids.end(), id) != ids.end();
}

class Finder {
  public:
    Finder(const Store& store, const Knowledge& knowledge, const JobFilter& filter)
        : store_(store), knowledge_(knowledge), filter_(filter) {}

    Result<FoundJobs> run() {
        if (auto ready = prepare(); !ready.ok()) return ready.error();
        auto rows = store_.jobs();
        if (!rows.ok()) return rows.error();
        FoundJobs found;
        found.of = rows.value().size();
        for (JobRow& row : rows.value()) {
            if (fits_row(row)) open_.emplace(row.number, Open{std::move(row), {}, "", false, {}});
        }
        if (auto read = read_events(); !read.ok()) return read.error();
        std::vector<Open*> fit;
        for (auto& [number, one] : open_) {
            if (fits(one)) fit.push_back(&one);
        }
        std::sort(fit.begin(), fit.end(), [](const Open* a, const Open* b) {
            return std::tie(a->row.changed_at, a->row.number) > std::tie(b->row.changed_at, b->row.number);
        });
        found.total = fit.size();
        if (filter_.most > 0 && fit.size() > filter_.most) fit.resize(filter_.most);
        for (Open* one : fit) {
            auto line = outcome_line(store_, knowledge_, one->row.number);
            if (!line.ok()) return line.error();
            found.jobs.push_back(told(std::move(*one), line.value()));
        }
        found.told = summary(found);
        return found;
    }

  private:
    // A job that fits by its row, and what its events still have to show.
    struct Open {
        JobRow row;
        std::vector<bool> has;  // by word
        std::string match;
        bool has_cause = false;
        std::vector<StoredEvent> closing;
    };

    Result<void> prepare() {
        if (!filter_.state.empty() && filter_.state != "in hand" && filter_.state != "handed back") {
            return Error{Error::Kind::bad_input, "'" + filter_.state + "' is no state of a job", "",
                         "in hand, or handed back"};
        }
        for (auto [day, into, end] :
             {std::tuple(&filter_.from, &from_, false), std::tuple(&filter_.to, &to_, true)}) {
            if (day->empty()) continue;
            auto moment = moment_of_day(*day, end);
            if (!moment.ok()) return moment.error();
            *into = moment.value();
        }
        if (!filter_.complaint.empty()) {
            const auto index = meant(knowledge_, knowledge_.complaints, "complaint", filter_.complaint);
            if (!index.ok()) return index.error();
            complaint_ = index.value();
        }
        if (filter_.cause == "not_listed") cause_ = "not_listed";
        if (!filter_.cause.empty() && cause_.empty()) {
            const auto index = meant(knowledge_, knowledge_.causes, "cause", filter_.cause);
            if (!index.ok()) return index.error();
            cause_ = knowledge_.causes[static_cast<std::size_t>(index.value())].id;
        }
        std::istringstream words(in_small_letters(filter_.words));
        for (std::string word; words >> word;) {
            std::set<std::string> causes;
            for (const Cause& cause : knowledge_.causes) {
                if (in_small_letters(cause.name).find(word) != std::string::npos) causes.insert(cause.id);
            }
            words_.push_back({word, std::move(causes)});
        }
        return {};
    }

    bool fits_row(const JobRow& row) const {
        if (!filter_.state.empty() && row.summary.state != filter_.state) return false;
        if (!filter_.boat.empty() && !has_all_words(row.summary.boat, filter_.boat)) return false;
        if (!from_.empty() && row.changed_at < from_) return false;
        if (!to_.empty() && row.opened_at >= to_) return false;
        if (!cause_.empty() && row.summary.state != "handed back") return false;
        if (complaint_ == none) return true;
        const auto ids = ids_in(row.summary.complaint);
        const std::string& id = knowledge_.complaints[static_cast<std::size_t>(complaint_)].id;
        return contains(ids, id);
    }

    Result<void> read_events() {
        for (auto& [number, one] : open_) {
            const std::string text = in_small_letters(title_of(one.row) + " " +
                                                      complaint_names(knowledge_, one.row.summary.complaint) +
                                                      " " + one.row.summary.state);
            for (const Word& word : words_) one.has.push_back(text.find(word.text) != std::string::npos);
        }
        if (words_.empty() && cause_.empty()) return {};
        return store_.each_event({"opened", "noted", "handed_back", "reopened", "attached", "undone"},
                                 [this](JobNumber number, const StoredEvent& event) {
                                     const auto one = open_.find(number);
                                     if (one != open_.end()) look_at(one->second, event);
                                 });
    }

    void look_at(Open& one, const StoredEvent& event) {
        const bool closes = event.kind != "opened" && event.kind != "noted" && event.kind != "attached";
        if (!cause_.empty() && closes) {
            one.has_cause = one.has_cause || contains(causes_in(event.body), cause_);
            one.closing.push_back(event);
        }
        if (std::find(one.has.begin(), one.has.end(), false) == one.has.end()) return;
        std::vector<std::string> causes;
        if (event.kind == "handed_back") causes = causes_in(event.body);
        const std::string body = in_small_letters(event.body);
        for (std::size_t w = 0; w < words_.size(); ++w) {
            if (one.has[w]) continue;
            one.has[w] = std::any_of(causes.begin(), causes.end(), [&](const std::string& cause) {
                return words_[w].causes.contains(cause);
            });
            if (one.has[w] || body.find(words_[w].text) == std::string::npos) continue;
            // The names of fields stand in the body too: look at what a person wrote.
            for (const auto& [what, text] : written(event)) {
                if (in_small_letters(text).find(words_[w].text) == std::string::npos) continue;
                one.has[w] = true;
                if (one.match.empty()) one.match = what + ": " + quoted(text);
            }
        }
    }

    bool fits(const Open& one) const {
        if (std::find(one.has.begin(), one.has.end(), false) != one.has.end()) return false;
        if (cause_.empty()) return true;
        if (!one.has_cause) return false;
        const auto closed = closed_job(one.row.number, one.closing);
        return closed && std::any_of(closed->causes.begin(), closed->causes.end(),
                                     [this](const RecordedCause& one) { return one.cause == cause_; });
    }

    FoundJob told(Open one, const std::string& outcome) const {
        FoundJob found{std::move(one.row), "", "", std::move(one.match)};
        found.title = title_of(found.row);
        found.under = state_name(found.row.summary.state) + ".";
        if (!found.row.sound) add_sentence(found.under, damaged_line);
        const std::string names = complaint_names(knowledge_, found.row.summary.complaint);
        if (!names.empty()) add_sentence(found.under, names + ".");
        if (!outcome.empty()) add_sentence(found.under, outcome);
        return found;
    }

    std::string summary(const FoundJobs& found) const {
        std::string text = fmt::format("{} of {} job{}.", found.total, found.of, found.of == 1 ? "" : "s");
        if (complaint_ != none) {
            add_sentence(text, fmt::format("Complaint: {}.",
                                           knowledge_.complaints[static_cast<std::size_t>(complaint_)].name));
        }
        if (!cause_.empty()) {
            add_sentence(text, fmt::format("Cause: {}.", lower_first(cause_name(
                                                             knowledge_, find(knowledge_.causes, cause_)))));
        }
        return text;
    }

    struct Word {
        std::string text;
        std::set<std::string> causes;  // ids of those whose name has it
    };

    const Store& store_;
    const Knowledge& knowledge_;
    const JobFilter& filter_;
    std::string from_, to_;
    Index complaint_ = none;
    std::string cause_;
    std::vector<Word> words_;
    std::unordered_map<JobNumber, Open> open_;
};

}  // namespace

Result<FoundJobs> find_jobs(const Store& store, const Knowledge& knowledge, const JobFilter& filter) {
    return Finder(store, knowledge, filter).run();
}

Result<std::string> outcome_line(const Store& store, const Knowledge& knowledge, JobNumber job) {
    const auto row = store.job(job);
    if (!row.ok()) return row.error();
    if (row.value().summary.state != "handed back") return std::string();
    const auto events = store.events(job);
    if (!events.ok()) return events.error();
    const auto closed = closed_job(job, events.value());
    return closed ? cause_line(knowledge, *closed) : std::string();
}

}  // namespace hardover
