// `hardover practice ...`: practice boats by hand or through a pipe, their debriefs, and figures on the
// marks and the items.
#include <fmt/format.h>

#include <ctime>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/jobs/job.hpp"
#include "app/jobs/json.hpp"
#include "app/jobs/moment.hpp"
#include "app/study/practice_begin.hpp"
#include "app/study/practice_figures.hpp"
#include "app/terminal/item_counts.hpp"
#include "app/terminal/known_learner.hpp"
#include "app/terminal/practice_run.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

namespace {

using namespace study;
using namespace study::practice;
using nlohmann::ordered_json;

constexpr std::uint64_t seeds = 1000000;  // short enough to tell a friend

// A new boat for whoever practises, or the one that is not finished.
Result<BoatInHand> begin_or_go_on(const PreparedKnowledge& prepared, const PracticeRequest& request,
                                  Record* record) {
    const RecordedBoat* open = record != nullptr ? record->unfinished() : nullptr;
    if (open != nullptr && !request.start_new && !request.seed && !request.level) {
        Result<Session> session = session_of(prepared, open->begun, open->events);
        if (!session) return session.error();
        return BoatInHand{std::move(session).value(), open->number};
    }
    BoatWish wish;
    wish.seed = request.seed.value_or(static_cast<std::uint64_t>(std::time(nullptr)) % seeds);
    wish.level = request.level;
    wish.day = study_day();
    if (!request.guidance.empty()) {
        const Result<Guidance> wished = read_guidance(request.guidance);
        if (!wished) return wished.error();
        wish.guidance = wished.value();
    }
    return begin_boat(prepared, wish, record, utc_now());
}

void tell(std::ostream& out, const Session& session, const Debrief& told, bool json) {
    if (json) {
        out << debrief_json(session, told) << "\n";
    } else {
        print_debrief(out, told);
    }
}

int play(Context& context, const PreparedKnowledge& prepared, const PracticeRequest& request,
         Record* record) {
    Result<BoatInHand> begun = begin_or_go_on(prepared, request, record);
    if (!begun) return refuse(context, begun.error());
    const int number = begun.value().number;
    std::ostream& out = request.json ? context.streams.err : context.streams.out;
    PracticeRun::Write write;
    if (record != nullptr) {
        write = [&](const PracticeEvent& event) { return record->add(number, event, utc_now()); };
    }
    PracticeRun run(context, out, std::move(begun.value().session), write);
    const Result<void> ran = run.run();
    if (!ran) return refuse(context, ran.error());
    const bool ended = run.session().phase() == Session::Phase::ended;
    if (!ended && record != nullptr) {
        out << "Kept. Go on with: hardover practice --learner " << shell_word(request.learner) << "\n";
        return 0;
    }
    const Debrief told = debrief(run.session(), mark(run.session()), units_in_use(context));
    if (record != nullptr) {
        const Result<void> kept = record->end(number, told.ended, utc_now());
        if (!kept) return refuse(context, kept.error());
    }
    tell(context.streams.out, run.session(), told, request.json);
    if (record != nullptr) {
        out << "\nKept as " << practice_id(record->learner(), number)
            << ". See it again with: hardover practice replay " << practice_id(record->learner(), number)
            << "\n";
    } else {
        out << "\nNothing is kept without a learner: hardover practice --learner NAME\n";
    }
    return 0;
}

ordered_json json_of(const std::vector<PlayerFigures>& players) {
    ordered_json list = ordered_json::array();
    for (const PlayerFigures& player : players) {
        list.push_back({{"player", player.id},
                        {"boats", player.boats},
                        {"cured", player.cured},
                        {"minutes", player.minutes},
                        {"expected", player.expected},
                        {"minutes_of_expected", player.of_expected()},
                        {"minutes_of_expert", player.of_expert()},
                        {"avoidable", player.avoidable},
                        {"luck", player.luck},
                        {"largest_gap", player.largest_gap},
                        {"brier", player.brier},
                        {"told_nothing", player.told_nothing},
                        {"wrong_remedies", player.wrong_remedies},
                        {"marked_no_better_than_expert", player.behind_expert}});
    }
    return list;
}

void print_players(std::ostream& out, const std::string& title, const std::vector<PlayerFigures>& players) {
    out << fmt::format("\n{:<24} {:>6} {:>6} {:>9} {:>9} {:>9} {:>7} {:>5} {:>6}\n", title, "cured", "min",
                       "of expect", "of expert", "avoidable", "luck", "idle", "Brier");
    for (const PlayerFigures& player : players) {
        const double boats = std::max(1, player.boats);
        out << fmt::format(
            "{:<24} {:>5.0f}% {:>6.0f} {:>9.2f} {:>9.2f} {:>9.1f} {:>7.1f} {:>5.1f} {:>6.3f}\n", player.name,
            100 * player.cured / boats, player.minutes / boats, player.of_expected(), player.of_expert(),
            player.avoidable / boats, player.luck / boats, player.told_nothing / boats, player.brier);
    }
}

}  // namespace

int run_practice(Context& context, const PracticeRequest& request) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const PreparedKnowledge prepared(knowledge.value());
    if (request.learner.empty()) return play(context, prepared, request, nullptr);
    Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    const Result<KnownLearner> learner = learner_named(store.value(), request.learner);
    if (!learner) return refuse(context, learner.error());
    Result<Record> record = Record::open(store.value(), learner.value().number);
    if (!record) return refuse(context, record.error());
    return play(context, prepared, request, &record.value());
}

int run_practice_replay(Context& context, const std::string& id, bool json) {
    const Result<PracticeId> read = read_practice_id(id);
    if (!read) return refuse(context, read.error());
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    const Result<Record> record = Record::open(store.value(), read.value().learner);
    if (!record) return refuse(context, record.error());
    const RecordedBoat* boat = record.value().boat(read.value().number);
    if (boat == nullptr) {
        return refuse(context, {Error::Kind::not_found, "there is no practice boat " + id, "",
                                "see them with: hardover practice list"});
    }
    const PreparedKnowledge prepared(knowledge.value());
    const Result<Session> session = session_of(prepared, boat->begun, boat->events);
    if (!session) return refuse(context, session.error());
    if (!boat->ended && !json) context.streams.out << "This boat is not finished.\n";
    const Debrief told = debrief(session.value(), mark(session.value()), units_in_use(context));
    tell(context.streams.out, session.value(), told, json);
    return 0;
}

int run_practice_list(Context& context) {
    Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    const auto learners = store.value().learners();
    if (!learners) return refuse(context, learners.error());
    int boats = 0;
    for (const LearnerRow& learner : learners.value()) {
        const Result<Record> record = Record::open(store.value(), learner.number);
        if (!record) return refuse(context, record.error());
        for (const RecordedBoat& boat : record.value().boats()) {
            ++boats;
            const std::string how = !boat.ended ? "not finished"
                                                : fmt::format("{}, {:.0f} min, {:.0f} avoidable",
                                                              boat.ended->cured ? "cured" : "help called",
                                                              boat.ended->minutes, boat.ended->avoidable);
            context.streams.out << fmt::format(
                "{:<8} {:<20} {:<10} level {}  boat {:<12} {}\n", practice_id(learner.number, boat.number),
                learner.name, local_moment(boat.at).substr(0, 10), boat.begun.level, boat.begun.seed, how);
        }
    }
    if (boats == 0)
        context.streams.out << "No practice boats yet. Begin one: hardover practice --learner NAME\n";
    return 0;
}

int run_practice_levels(Context& context) {
    for (const PracticeLevel& level : practice_levels()) {
        context.streams.out << fmt::format("{}  {}\n   {}\n", level.level, level.name, level.what);
    }
    return 0;
}

int run_practice_figures(Context& context, int boats, bool json) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    FiguresWish wish;
    wish.boats = boats;
    const ItemCounts counts = counted_items(knowledge.value(), 0);
    const PracticeFigures figures = practice_figures(PreparedKnowledge(knowledge.value()), wish);
    std::ostream& out = context.streams.out;
    if (json) {
        ordered_json all = {
            {"boats", figures.boats}, {"refused", figures.refused}, {"players", json_of(figures.players)}};
        for (const LevelFigures& level : figures.levels) {
            all["levels"].push_back({{"level", level.level}, {"players", json_of(level.players)}});
        }
        all["items"] = json_of(counts);
        out << json_text(all) << "\n";
        return 0;
    }
    say_wrapped(
        out, fmt::format("Three players on the same {} practice boats, the levels in turn. Minutes a boat.",
                         figures.boats));
    for (const char* line : {"'of expect': minutes over those that the best way takes on average, as "
                             "expected at the start: over "
                             "boats of every level with the same complaint, history and rig.",
                             "'of expert': minutes over the expert's on the same boats.",
                             "Minutes spent - expected = avoidable (the mark) + luck.",
                             "'idle': questions that could not have changed what was done next."}) {
        say_wrapped(out, line, 2);
    }
    print_players(out, "All levels", figures.players);
    for (const LevelFigures& level : figures.levels) {
        print_players(out, fmt::format("Level {}", level.level), level.players);
    }
    double gap = 0;
    for (const PlayerFigures& player : figures.players) gap = std::max(gap, player.largest_gap);
    out << fmt::format("\nLargest gap in the split over all boats: {:.1e} min.\n", gap);
    for (std::size_t p = 1; p < figures.players.size(); ++p) {
        out << fmt::format("{}: marked behind the expert or level on {} of {} boats.\n",
                           figures.players[p].name, figures.players[p].behind_expert, figures.boats);
    }
    out << "\nThe items of the quiz\n";
    print_item_counts(out, counts);
    return 0;
}

}  // namespace hardover
