// `hardover class take|taken|hand-in|purge`: a set on a student's PC, from the file to the hand-in.
#include <fmt/format.h>

#include <algorithm>
#include <istream>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/classroom/hand_in.hpp"
#include "app/classroom/taking.hpp"
#include "app/jobs/job.hpp"
#include "app/records/whole_file.hpp"
#include "app/terminal/class_commands.hpp"
#include "app/terminal/known_learner.hpp"
#include "app/terminal/passphrase.hpp"
#include "app/terminal/practice_run.hpp"
#include "app/terminal/practice_words.hpp"
#include "app/terminal/quiz_run.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

namespace {

using namespace classroom;
using nlohmann::ordered_json;
using study::practice::Session;

// The start code of a graded set; "" where none is needed.
Result<std::string> start_code(Context& context, const ClassRequest& request, bool graded) {
    if (!graded) return std::string();
    if (!request.start_code_file.empty()) {
        const Result<std::string> line = first_line_of(request.start_code_file);
        if (!line) return line.error();
        return trimmed(line.value());
    }
    context.streams.out << "Start code, four words: " << std::flush;
    std::string line;
    std::getline(context.streams.in, line);
    return trimmed(line);
}

// One set in the terminal, task after task.
class SetRun {
  public:
    SetRun(Context& context, const study::Portraits& portraits, Taking taking)
        : context_(context), portraits_(portraits), taking_(std::move(taking)) {}

    int run() {
        while (!taking_.at_end()) {
            context_.streams.out << "\n";
            say_wrapped(context_.streams.out, taking_.heading());
            const bool quiz = taking_.task().kind == Task::Kind::quiz;
            const Result<bool> done = quiz ? run_quiz() : run_boat();
            if (!done) return refuse(context_, done.error());
            if (!done.value()) {
                say_wrapped(context_.streams.out,
                            "All you did is kept. Go on with the same command, whenever you like.");
                return 0;
            }
        }
        say_wrapped(context_.streams.out, taking_.heading() +
                                              " Hand it in: hardover class hand-in FOLDER "
                                              "--seat " +
                                              taking_.of().seat + " --set " + taking_.set().id);
        return 0;
    }

  private:
    // False: the learner left, or the input ended.
    Result<bool> run_quiz() {
        auto quiz = taking_.quiz(portraits_, study_day());
        if (!quiz) return quiz.error();
        if (!quiz.value().at_end()) {
            QuizRun run(
                context_, portraits_.knowledge(), std::move(quiz).value(),
                [&](const study::QuizInHand::Answer& answer, double seconds) {
                    return taking_.keep(++number_, answer, seconds, utc_now());
                },
                taking_.tells_marks());
            number_ = run.quiz().number() - 1;
            const Result<bool> ran = run.run("");
            if (!ran || !ran.value()) return ran;
        }
        return finished(taking_.finish_task(std::nullopt, utc_now()));
    }

    Result<bool> run_boat() {
        auto session = taking_.boat(portraits_.prepared(), study_day());
        if (!session) return session.error();
        PracticeRun run(
            context_, context_.streams.out, std::move(session).value(),
            [&](const study::practice::PracticeEvent& event) { return taking_.keep(event, utc_now()); });
        if (const Result<void> ran = run.run(); !ran) return ran.error();
        if (run.session().phase() != Session::Phase::ended) return false;
        if (!taking_.tells_marks()) {
            say_wrapped(context_.streams.out, "Noted. The instructor marks it.");
            return finished(taking_.finish_task(std::nullopt, utc_now()));
        }
        const auto told = study::practice::debrief(run.session(), study::practice::mark(run.session()),
                                                   units_in_use(context_));
        const Result<bool> kept = finished(taking_.finish_task(told.ended, utc_now()));
        if (kept) print_debrief(context_.streams.out, told);
        return kept;
    }

    static Result<bool> finished(const Result<void>& written) {
        if (!written) return written.error();
        return true;
    }

    Context& context_;
    const study::Portraits& portraits_;
    Taking taking_;
    std::size_t number_ = 0;  // of the item answered last
};

// The attempt of a seat at a set on this PC; the set need not be named where there is one only.
Result<TakenSet> find_taken(const ClassStore& store, const ClassRequest& request) {
    const auto taken = taken_sets(store);
    if (!taken) return taken.error();
    std::vector<TakenSet> fitting;
    for (const TakenSet& each : taken.value()) {
        if (lower(each.seat) != lower(request.seat) || each.purged) continue;
        if (request.set.empty() || lower(each.set) == lower(request.set)) fitting.push_back(each);
    }
    if (fitting.size() == 1) return fitting.front();
    if (fitting.empty()) {
        return Error{Error::Kind::not_found,
                     "seat " + request.seat + " has no answers to " +
                         (request.set.empty() ? "any set" : "set " + request.set) + " on this PC",
                     "", "see: hardover class taken"};
    }
    return Error{Error::Kind::bad_input, "seat " + request.seat + " has taken several sets on this PC", "",
                 "say which: --set " + fitting.front().set};
}

}  // namespace

int run_class_take(Context& context, const ClassRequest& request) {
    const Result<std::string> text = read_file(request.file);
    if (!text) return refuse(context, text.error());
    const auto set = read_set_file(text.value(), request.file);
    if (!set) return refuse(context, set.error());
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    Result<Store> opened = open_records(context);
    if (!opened) return refuse(context, opened.error());
    ClassStore store(opened.value());
    const Result<std::string> code = start_code(context, request, set.value().graded);
    if (!code) return refuse(context, code.error());
    Result<Taking> taking = Taking::begin(store, text.value(), request.file, request.seat, code.value(),
                                          knowledge.value(), utc_now());
    if (!taking) return refuse(context, taking.error());
    const study::Portraits portraits(knowledge.value());
    return SetRun(context, portraits, std::move(taking).value()).run();
}

int run_class_taken(Context& context, const ClassRequest& request) {
    Result<Store> opened = open_records_on_file(context);
    if (!opened) return refuse(context, opened.error());
    const auto taken = taken_sets(ClassStore(opened.value()));
    if (!taken) return refuse(context, taken.error());
    ordered_json list = ordered_json::array();
    for (const TakenSet& each : taken.value()) {
        if (request.json) {
            list.push_back({{"set", each.set},
                            {"title", each.title},
                            {"seat", each.seat},
                            {"attempt", each.attempt},
                            {"records", each.records},
                            {"handed_in", each.handed_in},
                            {"handed_in_at", each.handed_in_at},
                            {"purged", each.purged}});
            continue;
        }
        const std::string state = each.purged                     ? "handed in, taken off this PC"
                                  : each.handed_in == 0           ? "not handed in"
                                  : each.handed_in < each.records ? "handed in in part"
                                                                  : "handed in";
        context.streams.out << fmt::format("{:<8} seat {:<8} {:>4} records  {}\n", each.set, each.seat,
                                           each.records, state);
    }
    if (request.json) context.streams.out << list.dump(2) << "\n";
    if (taken.value().empty() && !request.json) {
        say_wrapped(context.streams.out,
                    "No set was taken on this PC. Take one: hardover class take FILE --seat A01");
    }
    return 0;
}

int run_class_hand_in(Context& context, const ClassRequest& request) {
    Result<Store> opened = open_records_on_file(context);
    if (!opened) return refuse(context, opened.error());
    ClassStore store(opened.value());
    const auto taken = find_taken(store, request);
    if (!taken) return refuse(context, taken.error());
    const auto made = hand_in(
        store, taken.value().attempt,
        [&](const HandedIn& file) {
            return write_whole_file(request.folder + "/" + file.file_name, file.text);
        },
        utc_now());
    if (!made) return refuse(context, made.error());
    const std::string path = request.folder + "/" + made.value().file_name;
    if (request.json) {
        context.streams.out << ordered_json{{"file", path}, {"records", made.value().records}}.dump(2)
                            << "\n";
        return 0;
    }
    say_wrapped(
        context.streams.out,
        fmt::format("{} records of seat {} are in {}. They also stay on this PC until: hardover class "
                    "purge --seat {} --set {}",
                    made.value().records, taken.value().seat, path, taken.value().seat, taken.value().set));
    return 0;
}

int run_class_purge(Context& context, const ClassRequest& request) {
    Result<Store> opened = open_records_on_file(context);
    if (!opened) return refuse(context, opened.error());
    ClassStore store(opened.value());
    const auto taken = find_taken(store, request);
    if (!taken) return refuse(context, taken.error());
    if (const auto gone = store.purge(taken.value().attempt, utc_now()); !gone) {
        return refuse(context, gone.error());
    }
    say_wrapped(context.streams.out, "The answers of seat " + taken.value().seat + " to set " +
                                         taken.value().set + " are off this PC.");
    return 0;
}

}  // namespace hardover
