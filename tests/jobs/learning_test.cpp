// Learning from jobs on file: what counts and what does not, the switches, shops that hand each other counts,
// and calibration on the closed jobs.
#include "app/jobs/learning.hpp"

#include "app/jobs/job_calibration.hpp"
#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// A shop with its records; its jobs are closed a minute apart.
class Shop {
  public:
    explicit Shop(const Knowledge& knowledge) : knowledge_(knowledge), bench_(knowledge) {}

    Store& store() { return bench_.store(); }

    // A job with these events, each at the next minute. Gives its number.
    JobNumber job(const std::vector<Event>& events) {
        auto started = start_job(store(), knowledge_, {"Tern", "", ""}, next());
        REQUIRE_OK(started);
        Job job = std::move(started.value());
        for (const Event& event : events) REQUIRE_OK(record(store(), knowledge_, job, event, next()));
        return job.number;
    }
    void closed(const std::string& history, const std::string& cause, bool confirmed = true) {
        job({HistorySet{history}, HandedBack{cause, confirmed, ""}});
    }
    void more(JobNumber number, const std::vector<Event>& events) {
        auto loaded = load_job(store(), knowledge_, number);
        REQUIRE_OK(loaded);
        for (const Event& event : events) {
            REQUIRE_OK(record(store(), knowledge_, loaded.value(), event, next()));
        }
    }

    Knowledge learned() {
        auto knowledge = learned_knowledge(knowledge_, store());
        REQUIRE_OK(knowledge);
        return std::move(knowledge.value());
    }
    ClosedJobs counted(bool with_readings = false) {
        const auto settings = learning_settings(store());
        REQUIRE_OK(settings);
        const auto jobs = count_jobs(knowledge_, store(), settings.value(), with_readings);
        REQUIRE_OK(jobs);
        return jobs.value().own;
    }
    std::string exported() {
        const auto text = export_counts(knowledge_, store());
        REQUIRE_OK(text);
        return text.value();
    }
    Merging merge(const std::vector<std::string>& texts) {
        std::vector<CountFile> files;
        for (const std::string& text : texts) files.push_back({"file.json", text});
        const auto merging = merge_counts(store(), files);
        REQUIRE_OK(merging);
        return merging.value();
    }

  private:
    std::string next() {
        ++minutes_;
        const auto two = [](int n) { return (n < 10 ? "0" : "") + std::to_string(n); };
        return "2026-11-" + two(1 + minutes_ / 1440) + "T" + two(minutes_ / 60 % 24) + ":" +
               two(minutes_ % 60) + ":00Z";
    }

    const Knowledge& knowledge_;
    Bench bench_;
    int minutes_ = 0;
};

double odds(const Knowledge& knowledge, const std::string& cause, const std::string& history) {
    return knowledge.causes[find(knowledge.causes, cause)].odds[find(knowledge.histories, history)];
}

}  // namespace

TEST_CASE("A confirmed cause moves the odds of its history, an assumed one moves nothing") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    CHECK(odds(shop.learned(), "impeller_worn", "in_use") == 90);
    for (int i = 0; i < 5; ++i) shop.closed("in_use", "impeller_worn");
    for (int i = 0; i < 7; ++i) shop.closed("in_use", "fuse_blown", false);
    shop.job({HistorySet{"in_use"}});  // still in hand
    const Knowledge learned = shop.learned();
    // Shipped odds worth 20 jobs, then 5 of 5.
    CHECK(odds(learned, "impeller_worn", "in_use") == Approx(1000 * (20 * 0.090 + 5) / 25));
    CHECK(odds(learned, "fuse_blown", "in_use") == Approx(1000 * 20 * 0.080 / 25));
    CHECK(odds(learned, "impeller_worn", "just_installed") == 5);
    CHECK(shop.counted().in_all() == 5);
}

TEST_CASE("The odds learned change what the program says about the next job") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    Facts facts;
    facts.history = find(pump.histories, "in_use");
    const Index worn = find(pump.causes, "impeller_worn");
    const auto place = [&](const Knowledge& knowledge) {
        const Assessment assessment = assess(knowledge, facts);
        for (std::size_t i = 0; i < assessment.ranking.size(); ++i) {
            if (assessment.ranking[i].cause == worn) return i;
        }
        return assessment.ranking.size();
    };
    CHECK(place(shop.learned()) > 0);
    for (int i = 0; i < 20; ++i) shop.closed("in_use", "impeller_worn");
    CHECK(place(shop.learned()) == 0);
}

TEST_CASE("Reopened, taken back and closed again, a job counts once, as it stands") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    const JobNumber job = shop.job({HistorySet{"in_use"}, HandedBack{"fuse_blown", true, ""}});
    CHECK(shop.counted().with_cause("in_use", "fuse_blown") == 1);
    shop.more(job, {Reopened{}});
    CHECK(shop.counted() == ClosedJobs{});
    shop.more(job, {HistorySet{"just_installed"}, HandedBack{"hose_kinked", true, ""}, Noted{"he rang"}});
    CHECK(shop.counted().with_cause("just_installed", "hose_kinked") == 1);
    CHECK(shop.counted().in_all() == 1);
    shop.more(job, {Undone{6}});  // the second hand-back; event 3 was the first, 4 reopened it
    CHECK(shop.counted() == ClosedJobs{});
}

TEST_CASE("A job of a history nobody told, and one not on the list, are counted as such") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    shop.job({HandedBack{"not_listed", true, "a frog"}});
    CHECK(shop.counted().with_cause(history_not_known, not_listed_cause) == 1);
    const Knowledge learned = shop.learned();
    CHECK(odds(learned, "fuse_blown", "in_use") == 80);
    CHECK(learned.settings.not_listed_odds == Approx(1000 * (20 * 0.040 + 1) / 21));
}

TEST_CASE("Learning switched off gives the shipped odds, on again the learned ones") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    shop.closed("in_use", "impeller_worn");
    const double learned = odds(shop.learned(), "impeller_worn", "in_use");
    CHECK(learned > 90);
    REQUIRE_OK(switch_learning(shop.store(), false, false));
    CHECK(odds(shop.learned(), "impeller_worn", "in_use") == 90);
    REQUIRE_OK(switch_learning(shop.store(), true, false));
    CHECK(odds(shop.learned(), "impeller_worn", "in_use") == learned);
}

TEST_CASE("The strength is kept from 1 to 200 and refused beyond") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    CHECK(learning_settings(shop.store()).value().way.strength == 20);
    for (const int strength : {0, -3, 201}) {
        const auto refused = set_learning_strength(shop.store(), strength);
        REQUIRE_FALSE(refused.ok());
        CHECK(refused.error().cure == "a whole number of jobs from 1 to 200");
    }
    CHECK(learning_settings(shop.store()).value().way.strength == 20);
    for (const int strength : {1, 200}) {
        REQUIRE_OK(set_learning_strength(shop.store(), strength));
        CHECK(learning_settings(shop.store()).value().way.strength == strength);
    }
}

TEST_CASE("A setting that makes no sense is refused with the command that puts it right") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    REQUIRE_OK(shop.store().keep({{{"learning.strength", "many"}}, false, {}}));
    const auto learned = learned_knowledge(pump, shop.store());
    REQUIRE_FALSE(learned.ok());
    CHECK(learned.error().what == "the setting learning.strength is 'many'");
    CHECK(learned.error().where == shop.store().path());
    CHECK(learned.error().cure == "set it again: hardover learning strength 20");
    REQUIRE_OK(set_learning_strength(shop.store(), 20));
    shop.learned();
}

TEST_CASE("A reset leaves jobs out by the moment of their hand-back, and can be taken back") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    shop.closed("in_use", "impeller_worn");  // handed back on the 1st at 00:03
    shop.closed("in_use", "fuse_blown");     // at 00:06
    REQUIRE_OK(reset_learning(shop.store(), "2026-11-01T00:03:00Z", false));
    CHECK(shop.counted().with_cause("in_use", "impeller_worn") == 0);
    CHECK(shop.counted().with_cause("in_use", "fuse_blown") == 1);
    CHECK(learning_table(pump, shop.store()).value().counted.before == 1);
    REQUIRE_OK(reset_learning(shop.store(), "2026-11-01", false));  // before this day: none
    CHECK(shop.counted().in_all() == 2);
    REQUIRE_OK(reset_learning(shop.store(), "2026-11-02", false));
    CHECK(odds(shop.learned(), "impeller_worn", "in_use") == 90);
    REQUIRE_OK(reset_learning(shop.store(), "", false));
    CHECK(shop.counted().in_all() == 2);
}

TEST_CASE("Answers count as readings of the confirmed cause: asked ones, before the cure") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    shop.job({HistorySet{"in_use"}, ComplaintsSet{{"no_water"}}, Answered{"prime", "runs_back"},
              Answered{"fuse", "cannot_tell"}, Answered{"flow", "nothing"}, Answered{"flow", "weak"},
              Answered{"strainer", "clean"}, TakenBack{"strainer"}, Tried{"clean_strainer", "not_cured"},
              Tried{"renew_foot_valve", "cured"}, Answered{"prime", "holds"},
              HandedBack{"foot_valve_leaking", true, ""}});
    shop.job({HistorySet{"in_use"}, Answered{"prime", "sinks"}, HandedBack{"suction_air", false, ""}});
    const auto readings = shop.counted(true).readings;
    REQUIRE(readings.size() == 1);
    const std::map<std::string, std::map<std::string, std::int64_t>> expected = {
        {"prime", {{"runs_back", 1}}}, {"flow", {{"weak", 1}}}};
    CHECK(readings.at("foot_valve_leaking") == expected);
}

TEST_CASE("How often is learned only when it is switched on") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    for (int i = 0; i < 10; ++i) {
        shop.job(
            {HistorySet{"in_use"}, Answered{"prime", "sinks"}, HandedBack{"foot_valve_leaking", true, ""}});
    }
    const auto shows = [](const Knowledge& knowledge) {
        const Cause& cause = knowledge.causes[find(knowledge.causes, "foot_valve_leaking")];
        const Index prime = find(knowledge.findings, "prime");
        for (const Shows& link : cause.shows) {
            if (link.finding == prime) return link.how_often;
        }
        return std::vector<double>();
    };
    CHECK(shows(shop.learned()) == shows(pump));
    CHECK(learning_table(pump, shop.store()).value().shows.empty());
    REQUIRE_OK(switch_learning(shop.store(), true, true));
    CHECK(shows(shop.learned()).at(1) > shows(pump).at(1));
    const auto table = learning_table(pump, shop.store()).value();
    REQUIRE(table.shows.size() == 1);
    CHECK(table.shows[0].jobs == std::vector<std::int64_t>{0, 10, 0});
}

TEST_CASE("The table shows learned odds beside the shipped ones and what could not be used") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    shop.closed("in_use", "impeller_worn");
    shop.job({HandedBack{"fuse_blown", true, ""}});
    shop.merge({R"({"hardover_counts": 1, "shops": [{"shop": "a1", "number": 1,
        "jobs": {"in_use": {"barnacles": 4}, "laid_up": {"fuse_blown": 2}}, "readings": {}}]})"});
    const auto table = learning_table(pump, shop.store());
    REQUIRE_OK(table);
    CHECK(table.value().without_cause == 4);
    CHECK(table.value().without_history == 3);
    CHECK(table.value().counted.others.size() == 1);
    const auto& in_use = table.value().histories[find(pump.histories, "in_use")];
    CHECK(in_use.jobs == 5);
    REQUIRE(in_use.odds.size() == pump.causes.size());
    const Knowledge learned = shop.learned();
    for (const LearnedOdds& line : in_use.odds) {
        CHECK(line.shipped == odds(pump, line.cause, "in_use"));
        CHECK(line.learned == odds(learned, line.cause, "in_use"));
    }
    CHECK(table.value().not_listed.learned == learned.settings.not_listed_odds);
}

TEST_CASE("Two shops that hand each other their counts come to the same odds") {
    const Knowledge pump = pump_knowledge();
    Shop north(pump);
    Shop south(pump);
    for (int i = 0; i < 3; ++i) north.closed("in_use", "impeller_worn");
    for (int i = 0; i < 4; ++i) south.closed("in_use", "fuse_blown");
    const std::string from_north = north.exported();
    const std::string from_south = south.exported();
    CHECK(north.merge({from_south}).shops_new == 1);
    CHECK(south.merge({from_north}).shops_new == 1);
    for (const Cause& cause : pump.causes) {
        CHECK(odds(north.learned(), cause.id, "in_use") == odds(south.learned(), cause.id, "in_use"));
    }
    CHECK(odds(north.learned(), "impeller_worn", "in_use") == Approx(1000 * (20 * 0.090 + 3) / 27));
}

TEST_CASE("The same file twice changes nothing, a later one replaces, an earlier one is passed over") {
    const Knowledge pump = pump_knowledge();
    Shop north(pump);
    Shop south(pump);
    south.closed("in_use", "fuse_blown");
    const std::string first = south.exported();
    CHECK(south.exported() == first);  // nothing new: the same number
    south.closed("in_use", "fuse_blown");
    const std::string second = south.exported();
    const auto from_others = [&] {
        return learning_table(pump, north.store()).value().counted.sum().in_all();
    };
    CHECK(north.merge({first, first}).shops_new == 1);
    CHECK(from_others() == 1);
    CHECK(north.merge({first}).shops_known == 1);
    CHECK(from_others() == 1);
    CHECK(north.merge({second}).shops_newer == 1);
    CHECK(from_others() == 2);
    CHECK(north.merge({first}).shops_known == 1);
    CHECK(from_others() == 2);
}

TEST_CASE("A shop's own counts that come back through another shop do not count twice") {
    const Knowledge pump = pump_knowledge();
    Shop north(pump);
    Shop south(pump);
    north.closed("in_use", "fuse_blown");
    south.closed("in_use", "fuse_blown");
    south.merge({north.exported()});
    const Merging merging = north.merge({south.exported()});
    CHECK(merging.own);
    CHECK(merging.shops_new == 1);
    CHECK(learning_table(pump, north.store()).value().counted.sum().in_all() == 2);
}

TEST_CASE("One bad file among several: nothing of any is merged") {
    const Knowledge pump = pump_knowledge();
    Shop north(pump);
    Shop south(pump);
    south.closed("in_use", "fuse_blown");
    const auto merging =
        merge_counts(north.store(), {{"good.json", south.exported()}, {"bad.json", "{\"a\":"}});
    REQUIRE_FALSE(merging.ok());
    CHECK(merging.error().where == "bad.json:1:6");
    CHECK(north.store().counts().value().empty());
}

TEST_CASE("A reset that starts anew drops the counts of other shops, the jobs stay") {
    const Knowledge pump = pump_knowledge();
    Shop north(pump);
    Shop south(pump);
    south.closed("in_use", "fuse_blown");
    north.closed("in_use", "fuse_blown");
    north.merge({south.exported()});
    REQUIRE_OK(reset_learning(north.store(), "2027-01-01T00:00:00Z", true));
    CHECK(odds(north.learned(), "fuse_blown", "in_use") == 80);
    CHECK(north.store().counts().value().empty());
    REQUIRE_OK(reset_learning(north.store(), "", false));
    CHECK(north.counted().in_all() == 1);
}

TEST_CASE("Calibration looks at each job as it stood before its cure") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    // The answers point to the fuse; the cure alone would point to the clamps.
    shop.job({HistorySet{"in_use"}, RigSet{"drive", "electric"}, Answered{"fuse", "blown"},
              Answered{"motor_sound", "silent"}, Answered{"flow", "nothing"},
              Tried{"tighten_clamps", "cured"}, HandedBack{"suction_air", true, ""}});
    const auto missed = calibrate(pump, shop.store());
    REQUIRE_OK(missed);
    CHECK(missed.value().shipped.jobs.jobs == 1);
    CHECK(missed.value().shipped.jobs.first == 0);
    CHECK(missed.value().shipped.jobs.log_loss > 1);
    shop.job({HistorySet{"in_use"}, RigSet{"drive", "electric"}, Answered{"fuse", "blown"},
              Answered{"motor_sound", "silent"}, Answered{"flow", "nothing"}, Tried{"renew_fuse", "cured"},
              HandedBack{"fuse_blown", true, ""}});
    CHECK(calibrate(pump, shop.store()).value().shipped.jobs.first == 0.5);
}

TEST_CASE("A job does not teach the odds by which it is itself judged") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    shop.closed("in_use", "impeller_worn");
    const auto one = calibrate(pump, shop.store()).value();
    CHECK(one.learned.jobs.log_loss == one.shipped.jobs.log_loss);
    for (int i = 0; i < 30; ++i) shop.closed("in_use", "impeller_worn");
    const auto many = calibrate(pump, shop.store()).value();
    CHECK(many.shipped.jobs.log_loss == Approx(one.shipped.jobs.log_loss));
    CHECK(many.learned.jobs.log_loss < many.shipped.jobs.log_loss);
    CHECK(many.learned.jobs.first > many.shipped.jobs.first);
    std::size_t rows = 0;
    for (const ReliabilityRow& row : many.learned.table) rows += row.forecasts;
    CHECK(rows == many.learned.forecasts);
}

TEST_CASE("Calibration leaves out what was assumed, what a reset left out and what this knowledge lacks") {
    const Knowledge pump = pump_knowledge();
    Shop shop(pump);
    shop.closed("in_use", "impeller_worn");
    shop.closed("in_use", "fuse_blown", false);
    REQUIRE_OK(reset_learning(shop.store(), "2026-11-01T00:03:00Z", false));
    shop.closed("in_use", "hose_kinked");
    const Knowledge other =
        pump_knowledge({{"", "causes.yaml", "- cause: hose_kinked", "- cause: hose_bent"}});
    const auto calibration = calibrate(other, shop.store());
    REQUIRE_OK(calibration);
    CHECK(calibration.value().before == 1);
    CHECK(calibration.value().not_confirmed == 1);
    CHECK(calibration.value().without_cause == 1);
    CHECK(calibration.value().shipped.jobs.jobs == 0);
}
