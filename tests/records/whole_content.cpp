#include "records/whole_content.hpp"

#include <algorithm>
#include <sstream>

#include "app/records/class_store.hpp"
#include "support.hpp"

namespace hardover_tests {

using namespace hardover;

namespace {

const std::string day = "2026-11-26T08:00:00Z";
const std::string refused = "refused: ";
// What is read of many jobs at once: items that may lack what is damaged.
const std::string of_many = "of many: ";

StoredEvent told(int sequence) {
    return {sequence, day, sequence % 3 == 0 ? "answered" : "noted",
            R"({"text":"event )" + std::to_string(sequence) + "\"}"};
}

std::string text_of(const StoredEvent& event) {
    return std::to_string(event.sequence) + "|" + event.at + "|" + event.kind + "|" + event.body + "\n";
}

template <typename Rows, typename Tell>
std::string lines_of(const Rows& rows, const Tell& tell) {
    if (!rows.ok()) return refused + rows.error().text();
    std::string lines;
    for (const auto& row : rows.value()) lines += tell(row) + "\n";
    return lines;
}

std::string text_of(const Result<std::vector<StoredEvent>>& events) {
    return lines_of(events, [](const StoredEvent& event) { return text_of(event); });
}

void make_class(Store& store) {
    ClassStore classes(store);
    const auto number = classes.add_class({0, "Evening", day, "public key", "sealed"});
    REQUIRE_OK(number);
    REQUIRE_OK(classes.keep_seats(number.value(), {{"A07", "Ann", "one"}, {"B08", "", "two"}}));
    REQUIRE_OK(classes.add_set(number.value(), {"sitting", "S1", day, "set file"}));
    const StoredHandIn hand_in{"attempt", "last", "key", "sitting", "A07", {"a", "b"}, "signed", "c", day};
    REQUIRE_OK(classes.collect(
        hand_in, {{"a", "sitting", "attempt", 1, "line 1"}, {"b", "sitting", "attempt", 2, "2"}}));
    REQUIRE_OK(classes.keep_marks({{"attempt", "marks"}}));
    REQUIRE_OK(classes.keep_own_key({"public", "secret"}));
    StoredAttempt attempt;
    attempt.attempt = "own attempt";
    attempt.sitting = "sitting";
    attempt.seat = "A07";
    attempt.began_at = day;
    attempt.file = "set file";
    REQUIRE_OK(classes.begin_attempt(attempt, "line 1"));
    for (int line = 2; line <= 30; ++line) {
        REQUIRE_OK(classes.append("own attempt", line, "line " + std::to_string(line)));
    }
    REQUIRE_OK(classes.keep_handed_in("own attempt", 20, day));
}

void read_jobs(const Store& store, Content& content) {
    const auto rows = store.jobs();
    if (!rows.ok()) content["list"] = refused + rows.error().text();
    int place = 0;
    for (const JobRow& row : rows.ok() ? rows.value() : std::vector<JobRow>()) {
        const std::string job = "job " + std::to_string(row.number);
        const std::string line = row.opened_at + "|" + row.changed_at + "|" + row.summary.boat + "|" +
                                 row.summary.state + "|" + row.summary.complaint + "|" +
                                 std::to_string(row.events);
        content[job + " in the list, place " + std::to_string(++place)] =
            row.sound ? line : refused + "the line";
        content["events of " + job] = text_of(store.events(row.number));
    }
    // By number: their order is that of their lines.
    auto of_boat = store.jobs_of_boat("grey heron");
    if (of_boat.ok()) {
        std::sort(of_boat.value().begin(), of_boat.value().end(),
                  [](const JobRow& one, const JobRow& other) { return one.number < other.number; });
    }
    content[of_many + "jobs of a boat"] =
        lines_of(of_boat, [](const JobRow& row) { return std::to_string(row.number); });
}

void read_many(const Store& store, Content& content) {
    for (const char* kind : {"noted", "answered"}) {
        std::string all;
        const auto read = store.each_event({kind}, [&all](JobNumber job, const StoredEvent& event) {
            all += std::to_string(job) + "|" + text_of(event);
        });
        content[of_many + kind] = read.ok() ? all : refused + read.error().text();
    }
    content[of_many + "in hand"] = lines_of(store.events_of("in hand", {"noted"}), [](const JobEvents& job) {
        std::string all = std::to_string(job.job) + "|";
        for (const StoredEvent& event : job.events) all += text_of(event) + "|";
        std::replace(all.begin(), all.end(), '\n', ' ');
        return all;
    });
}

void read_beside(const Store& store, Content& content) {
    const auto learners = store.learners();
    content["learners"] = lines_of(learners, [](const LearnerRow& row) {
        return std::to_string(row.number) + "|" + row.name + "|" + row.added_at + "|" +
               std::to_string(row.events);
    });
    content["events of learner 1"] = text_of(store.study_events(1));
    const auto settings = store.settings();
    content["settings"] = lines_of(settings, [](const auto& one) { return one.first + "|" + one.second; });
    content["counts"] = lines_of(store.counts(), [](const StoredCounts& one) {
        return one.shop + "|" + std::to_string(one.number) + "|" + one.counts;
    });
}

void read_classes(Store& store, Content& content) {
    const ClassStore classes(store);
    content["classes"] = lines_of(classes.classes(), [](const StoredClass& one) {
        return std::to_string(one.number) + "|" + one.name + "|" + one.made_at + "|" + one.public_key + "|" +
               one.sealed;
    });
    content["seats"] = lines_of(
        classes.seats(1), [](const StoredSeat& one) { return one.code + "|" + one.name + "|" + one.group; });
    content["sets"] = lines_of(classes.sets(1), [](const StoredSet& one) {
        return one.sitting + "|" + one.id + "|" + one.made_at + "|" + one.file;
    });
    content["records"] = lines_of(classes.records(1), [](const StoredClassRecord& one) {
        return one.id + "|" + one.sitting + "|" + one.attempt + "|" + std::to_string(one.sequence) + "|" +
               one.line;
    });
    content["hand-ins"] = lines_of(classes.hand_ins(1), [](const StoredHandIn& one) {
        return one.attempt + one.last + one.key + one.sitting + one.seat + one.signature +
               one.countersignature + one.collected_at + std::to_string(one.records.size());
    });
    content["attempts"] = lines_of(classes.attempts(), [](const StoredAttempt& one) {
        return one.attempt + one.sitting + one.seat + one.began_at + one.file + std::to_string(one.records) +
               "|" + std::to_string(one.handed_in) + one.handed_in_at + one.purged_at;
    });
    content["own attempt"] =
        lines_of(classes.attempt_lines("own attempt"), [](const std::string& line) { return line; });
    const auto key = classes.own_key();
    content["own key"] = !key.ok()     ? refused + key.error().text()
                         : key.value() ? key.value()->public_key + "|" + key.value()->secret_key
                                       : "none";
    const auto marks = classes.marks("attempt");
    content["marks"] = !marks.ok() ? refused + marks.error().text() : marks.value().value_or("none");
}

// Whether the lines of `part` stand in `whole`, in order.
bool are_among(const std::string& part, const std::string& whole) {
    std::istringstream parts(part), wholes(whole);
    std::string line, other;
    while (std::getline(parts, line)) {
        do {
            if (!std::getline(wholes, other)) return false;
        } while (other != line);
    }
    return true;
}

}  // namespace

void make_full_records(const std::string& path, int jobs, int events) {
    auto opened = Store::open(path);
    REQUIRE_OK(opened);
    Store& store = opened.value();
    const JobSummary summary{"Grey Heron", "in hand", "wander"};
    for (int job = 1; job <= jobs; ++job) {
        REQUIRE_OK(store.start_job(told(1), summary));
        for (int i = 2; i <= events; ++i) REQUIRE_OK(store.append(job, told(i), summary));
    }
    const auto learner = store.add_learner("A07", day);
    REQUIRE_OK(learner);
    for (int i = 1; i <= events; ++i) REQUIRE_OK(store.append_study(learner.value(), told(i)));
    REQUIRE_OK(store.keep({{{"learning", "off"}, {"units", "metric"}}, false, {{"a1", 1, "{}"}}}));
    make_class(store);
}

Content content_of(Store& store) {
    Content content;
    read_jobs(store, content);
    read_many(store, content);
    read_beside(store, content);
    read_classes(store, content);
    return content;
}

Difference difference(const Content& sound, const Content& found, const Store& store) {
    if (sound == found) return Difference::none;
    const bool any_line_refused = std::any_of(found.begin(), found.end(), [](const auto& item) {
        return item.first.find("in the list") != std::string::npos && item.second.rfind(refused, 0) == 0;
    });
    for (const auto& [name, text] : sound) {
        const auto now = found.find(name);
        const bool missing = now == found.end();
        if (missing && any_line_refused) continue;  // it stands there under another number
        if (missing) return Difference::silent;
        if (now->second == text || now->second.rfind(refused, 0) == 0) continue;
        const bool left_out = name.rfind(of_many, 0) == 0 && are_among(now->second, text);
        if (!left_out || store.check().ok()) return Difference::silent;
    }
    return Difference::named;
}

}  // namespace hardover_tests
