// Jobs written to a file and read again without loss, merged from other records, and tables of them.
#include "app/jobs/job_file.hpp"

#include <sys/resource.h>
#include <csignal>
#include <nlohmann/json.hpp>

#include "app/jobs/csv.hpp"
#include "app/jobs/learning.hpp"
#include "app/jobs/photos.hpp"
#include "app/jobs/records_merge.hpp"
#include "app/records/whole_file.hpp"
#include "jobs/yard_records.hpp"

using namespace hardover;
using namespace hardover_tests;
using nlohmann::json;

namespace {

void put(const std::string& path, const std::string& text) {
    REQUIRE_OK(write_whole_file(path, text));
}

void attach(YardRecords& yard, JobNumber number, const std::string& name, const std::string& caption) {
    put(yard.file(name), "%PDF- a page about " + name);
    Job job = yard.load(number);
    REQUIRE_OK(
        attach_photo(yard.store(), yard.prepared(), job, yard.file(name), caption, "2026-11-25T12:00:00Z"));
}

bool equal(const std::vector<StoredEvent>& a, const std::vector<StoredEvent>& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const StoredEvent& x, const StoredEvent& y) {
        return std::tie(x.sequence, x.at, x.kind, x.body) == std::tie(y.sequence, y.at, y.kind, y.body);
    });
}

// A yard with three jobs, one with a photo, and one with what an older or newer program may have written.
void fill(YardRecords& yard) {
    attach(yard, yard.foot_valve("Grey Heron", "2026-03-01"), "bracket.pdf", "crack, at the \"aft\" bolt");
    yard.job("Möwe ⚓", "2026-04-01", {ComplaintsSet{{"no_water"}}, Answered{"bucket_time", "25.5 s"}},
             "line one\nline two, with a comma");
    const JobNumber odd = yard.job("Little Auk", "2026-05-01", {});
    const JobSummary summary{"Little Auk", "in hand", ""};
    REQUIRE_OK(yard.store().append(
        odd, {2, "2026-05-01T12:00:00Z", "foretold", R"({ "b" : 1.50, "a" : [ ] })"}, summary));
    REQUIRE_OK(
        yard.store().append(odd, {3, "2026-05-01T12:00:00Z", "foretold", "no object at all"}, summary));
}

Error refused(const YardRecords& yard, const std::string& text) {
    put(yard.file("in.json"), text);
    const auto read = read_job_file(yard.knowledge(), yard.file("in.json"));
    REQUIRE_FALSE(read.ok());
    return read.error();
}

}  // namespace

TEST_CASE("Jobs written to a file and read into empty records are the same to the letter") {
    YardRecords yard, other;
    fill(yard);
    const std::string file = yard.file("out/jobs.json");
    std::filesystem::create_directories(yard.file("out"));
    const auto written = write_job_file(yard.store(), file, {}, true);
    REQUIRE_OK(written);
    CHECK(written.value().jobs == 3);
    CHECK(written.value().photos.copied == 1);
    const auto taken = import_jobs(other.store(), other.knowledge(), file);
    REQUIRE_OK(taken);
    CHECK(taken.value().photos.copied == 1);
    for (JobNumber job = 1; job <= 3; ++job) {
        CHECK(equal(other.store().events(job).value(), yard.store().events(job).value()));
        const JobRow ours = yard.store().job(job).value(), theirs = other.store().job(job).value();
        CHECK(ours.opened_at == theirs.opened_at);
        CHECK(ours.changed_at == theirs.changed_at);
        CHECK(ours.summary.boat == theirs.summary.boat);
        CHECK(ours.summary.state == theirs.summary.state);
        CHECK(ours.summary.complaint == theirs.summary.complaint);
        CHECK(yard.load(job).assessment.log_evidence == other.load(job).assessment.log_evidence);
        CHECK(yard.load(job).assessment.not_listed == other.load(job).assessment.not_listed);
    }
    CHECK(photo_lines(other.store().path(), other.load(1))[0].state == PhotoState::whole);
    // Equal records, equal bytes.
    REQUIRE_OK(write_job_file(other.store(), other.file("again.json"), {}, false));
    CHECK(file_text(other.file("again.json")) == file_text(file));
}

TEST_CASE("Importing into records that have jobs gives new numbers and doubles none") {
    YardRecords yard, other;
    fill(yard);
    other.job("Marsh Hen", "2026-01-01", {});
    const std::string file = yard.file("jobs.json");
    REQUIRE_OK(write_job_file(yard.store(), file, {}, false));
    const auto first = import_jobs(other.store(), other.knowledge(), file);
    REQUIRE_OK(first);
    CHECK(first.value().lines[0] == "3 jobs: 3 new or longer, 0 here already.");
    CHECK(first.value().all.jobs[0].here == 2);
    const auto again = import_jobs(other.store(), other.knowledge(), file);
    REQUIRE_OK(again);
    CHECK(again.value().lines[0] == "3 jobs: 0 new or longer, 3 here already.");
    CHECK(other.store().number_of_jobs().value() == 4);
    CHECK(in_one(first.value().lines).find("1 photo missing.") != std::string::npos);
}

TEST_CASE("One job alone can be written, and one that is not there is named") {
    YardRecords yard;
    fill(yard);
    REQUIRE_OK(write_job_file(yard.store(), yard.file("one.json"), {2}, false));
    const json one = json::parse(file_text(yard.file("one.json")));
    REQUIRE(one["jobs"].size() == 1);
    CHECK(one["hardover_jobs"] == 1);
    CHECK(one["jobs"][0]["number"] == 2);
    CHECK(one["jobs"][0]["events"][0]["body"]["boat"] == "Möwe ⚓");
    CHECK(write_job_file(yard.store(), yard.file("none.json"), {9}, false).error().kind ==
          Error::Kind::not_found);
    CHECK_FALSE(std::filesystem::exists(yard.file("none.json")));
}

TEST_CASE("A job file that was damaged or edited is refused at its place, and nothing comes in") {
    YardRecords yard;
    fill(yard);
    REQUIRE_OK(write_job_file(yard.store(), yard.file("jobs.json"), {}, false));
    const std::string whole = file_text(yard.file("jobs.json"));
    const std::string in = yard.file("in.json");
    CHECK(refused(yard, "").where == in + ":1:1");
    CHECK(refused(yard, "{\n  \"hardover_jobs\": 1,\n  oops").where == in + ":3:3");
    CHECK(refused(yard, whole.substr(0, whole.size() / 2)).what.starts_with("this is no job file"));
    CHECK(refused(yard, "{\"jobs\": []}").what == "this is no job file: it lacks 'hardover_jobs'");
    CHECK(refused(yard, "{\"hardover_jobs\": 99, \"jobs\": []}").kind == Error::Kind::unsupported);
    CHECK(refused(yard, "{\"hardover_jobs\": 1, \"jobs\": [7]}").what == "'jobs' is not a list of jobs");
    json edited = json::parse(whole);
    edited["jobs"][0]["events"][0]["body"]["boat"] = "Another";
    CHECK(refused(yard, edited.dump()).text() == in + ", job 1: the first event is not the one the job was "
                                                      "known by (export it again; events are not to be "
                                                      "edited)");
    edited = json::parse(whole);
    edited["jobs"][1]["events"][2]["sequence"] = 7;
    CHECK(refused(yard, edited.dump()).where == in + ", job 2, event 3");
    edited = json::parse(whole);
    edited["jobs"][0]["events"][1]["at"] = "yesterday";
    CHECK(refused(yard, edited.dump()).what == "'at' is not a moment such as 2026-11-25T15:03:13Z");
    edited = json::parse(whole);
    edited["jobs"][0]["events"][1]["body"] = json::object();
    CHECK(refused(yard, edited.dump()).what == "the event 'complaints_set' lacks 'complaints'");
    edited = json::parse(whole);
    edited["jobs"].push_back(edited["jobs"][0]);
    CHECK(refused(yard, edited.dump()).what == "two jobs have the number 1");
}

TEST_CASE("When the disk fills, an older export stays whole") {
    YardRecords yard;
    fill(yard);
    put(yard.file("jobs.json"), "the old export");
    rlimit before{};
    getrlimit(RLIMIT_FSIZE, &before);
    const auto old_handler = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit tight{500, before.rlim_max};
    setrlimit(RLIMIT_FSIZE, &tight);
    const auto written = write_job_file(yard.store(), yard.file("jobs.json"), {}, false);
    setrlimit(RLIMIT_FSIZE, &before);
    std::signal(SIGXFSZ, old_handler);
    REQUIRE_FALSE(written.ok());
    CHECK(written.error().cure == "make room on the disk and write it again");
    CHECK(file_text(yard.file("jobs.json")) == "the old export");
    CHECK_FALSE(write_job_file(yard.store(), yard.file("gone/jobs.json"), {}, false).ok());
}

TEST_CASE("A CSV record is quoted as RFC 4180 has it, and no text turns into a formula") {
    CHECK(csv_record({"a", "", "b c"}) == "a,,b c\r\n");
    CHECK(csv_record({"a,b", "say \"so\"", "two\nlines"}) == "\"a,b\",\"say \"\"so\"\"\",\"two\nlines\"\r\n");
    CHECK(csv_record({"=1+1", "-12.5", "-x"}) == "'=1+1,-12.5,'-x\r\n");
}

TEST_CASE("The table of jobs has a line each, with its columns named") {
    YardRecords yard;
    fill(yard);
    const auto written = write_job_table(yard.store(), yard.knowledge(), yard.file("jobs.csv"), {1});
    REQUIRE_OK(written);
    const std::string text = file_text(yard.file("jobs.csv"));
    CHECK(text.starts_with("job,identity,boat,state,"));
    CHECK(text.find(",foot_valve_leaking,yes,dirt in it,renew_foot_valve: cured,The bracket is loose,") !=
          std::string::npos);
    CHECK(std::count(text.begin(), text.end(), '\n') == 2);
    CHECK(write_event_table(yard.store(), yard.file("events.csv"), {}).value() == 3);
}

TEST_CASE(
    "Records of another computer come in with learners and photos, but counts of the same jobs do not") {
    YardRecords ours, theirs;
    fill(theirs);
    REQUIRE_OK(theirs.store().add_learner("Ann", "2026-01-01T00:00:00Z"));
    // Their counts came here by file before: their jobs would count twice now.
    const auto counts = export_counts(theirs.knowledge(), theirs.store());
    REQUIRE_OK(counts);
    REQUIRE_OK(merge_counts(ours.store(), {{"counts.json", counts.value()}}));
    REQUIRE(ours.store().counts().value().size() == 1);
    const auto taken = merge_records(ours.store(), theirs.store().path());
    REQUIRE_OK(taken);
    CHECK(taken.value().all.jobs.size() == 3);
    CHECK(taken.value().photos.copied == 1);
    CHECK(ours.store().learners().value().size() == 1);
    CHECK(ours.store().counts().value().empty());
    CHECK(merge_records(ours.store(), theirs.store().path()).value().lines[0] ==
          "3 jobs: 0 new or longer, 3 here already.");
    CHECK(merge_records(ours.store(), ours.store().path()).error().what == "this is the records file in use");
}

TEST_CASE("A job that went on differently elsewhere is kept beside the one here, and each names the other") {
    YardRecords ours, theirs;
    ours.job("Grey Heron", "2026-03-01", {});
    REQUIRE_OK(merge_records(theirs.store(), ours.store().path()));
    ours.tell(1, Noted{"here"});
    theirs.tell(1, Noted{"there"});
    const auto taken = merge_records(ours.store(), theirs.store().path());
    REQUIRE_OK(taken);
    CHECK(in_one(taken.value().lines).find("went on differently: both are kept") != std::string::npos);
    for (const JobNumber job : {1, 2}) {
        const JobPage page = make_job_page(ours.prepared(), ours.load(job));
        CHECK(page.apart.find(job == 1 ? "see job 2 too" : "see job 1 too") != std::string::npos);
    }
}

TEST_CASE("Two jobs for boats without a name, opened in the same second, are never taken for one") {
    YardRecords ours, theirs;
    ours.job("Boat not named", "2026-03-01", {});
    theirs.job("Boat not named", "2026-03-01", {});
    CHECK(merge_records(ours.store(), theirs.store().path()).value().all.jobs[0].what == Arrival::added);
    CHECK(ours.store().number_of_jobs().value() == 2);
}
