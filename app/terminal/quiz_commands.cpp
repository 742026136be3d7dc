// `hardover quiz ...` and `hardover learner ...`: questions made from the knowledge, by hand or through a
// pipe, and how far each learner has come.
#include <fmt/format.h>

#include <ctime>
#include <istream>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/jobs/job.hpp"
#include "app/reports/job_report.hpp"
#include "app/study/quiz_in_hand.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/known_learner.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

namespace {

using namespace study;
using nlohmann::ordered_json;

constexpr int page_width = 80;

void say(Context& context, const std::string& text, int hang = 0) {
    context.streams.out << wrapped_keeping_indent(text, page_width, hang) << "\n";
}

// One quiz in the terminal. Every answer is on disk before its feedback shows.
class QuizRun {
  public:
    QuizRun(Context& context, const Knowledge& knowledge, Store* store, const KnownLearner& learner,
            QuizInHand quiz)
        : context_(context),
          knowledge_(knowledge),
          store_(store),
          learner_(learner.number),
          name_(learner.name),
          events_(learner.events),
          quiz_(std::move(quiz)) {}

    int run() {
        say(context_, quiz_.opening() +
                          " After the answer you may say how sure you are, in 100: b @ 70. Can't tell: ?  "
                          "Leave: q");
        while (!quiz_.at_end()) {
            const Result<bool> answered = ask();
            if (!answered) return refuse(context_, answered.error());
            if (!answered.value()) break;
            quiz_.go_on();
        }
        context_.streams.out << "\n";
        for (const std::string& line : quiz_.closing()) say(context_, line);
        say(context_, store_ == nullptr ? "Nothing is kept without a learner: hardover quiz --learner NAME"
                                        : "Kept for " + name_ + ". See: hardover learner show " + name_);
        return 0;
    }

  private:
    void print() {
        const ItemText text = item_text(knowledge_, quiz_.item());
        context_.streams.out << "\n";
        say(context_, fmt::format("{} of {} · {}", quiz_.number(), quiz_.count(), text.heading));
        for (const std::string& line : text.given) say(context_, "  " + line, 4);
        say(context_, text.question + " " + text.how);
        for (const std::string& option : text.options) say(context_, "  " + option, 5);
    }

    // False: the learner left, or the input ended.
    Result<bool> ask() {
        print();
        for (std::string line;
             context_.streams.out << "> " << std::flush, std::getline(context_.streams.in, line);) {
            if (trimmed(line) == "q" || trimmed(line) == "quit") return false;
            const std::size_t mark = line.rfind('@');
            std::optional<double> sure;
            if (mark != std::string::npos) {
                const Result<double> read = read_sureness(line.substr(mark + 1));
                if (!read) {
                    say(context_, read.error().text());
                    continue;
                }
                sure = read.value();
            }
            const auto answer = quiz_.weigh(trimmed(line.substr(0, mark)), sure);
            if (!answer) {
                say(context_, answer.error().text());
                continue;
            }
            const Result<void> kept = keep(answer.value());
            if (!kept) return kept.error();
            return true;
        }
        context_.streams.out << "\n";
        return false;
    }

    Result<void> keep(const QuizInHand::Answer& answer) {
        if (store_ != nullptr) {
            const Result<void> written = store_->append_study(
                learner_, {events_ + 1, utc_now(), review_kind, review_body(answer.review)});
            if (!written) return written;
            ++events_;
        }
        const FeedbackText& feedback = quiz_.take(answer);
        say(context_, feedback.verdict);
        for (const std::string& text : feedback.lines) say(context_, "  " + text, 2);
        return {};
    }

    Context& context_;
    const Knowledge& knowledge_;
    Store* store_;
    LearnerNumber learner_;
    std::string name_;
    int events_ = 0;
    QuizInHand quiz_;
};

ordered_json json_of(const std::vector<ItemFigure>& figures) {
    ordered_json list = ordered_json::array();
    for (const ItemFigure& figure : figures) {
        list.push_back(
            {{"id", figure.id}, {"name", figure.name}, {"listed", figure.listed}, {"items", figure.made}});
    }
    return list;
}

void print_figures(Context& context, const std::string& title, const std::vector<ItemFigure>& figures) {
    context.streams.out << "\n" << title << "\n";
    for (const ItemFigure& figure : figures) {
        context.streams.out << fmt::format("  {:<44} {:>6} of {:>5}\n", figure.name, figure.made,
                                           figure.listed);
    }
}

}  // namespace

int run_quiz(Context& context, const QuizRequest& request) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    std::optional<Store> store;
    KnownLearner learner;
    if (!request.learner.empty()) {
        Result<Store> opened = open_records(context);
        if (!opened) return refuse(context, opened.error());
        store.emplace(std::move(opened.value()));
        Result<KnownLearner> known = learner_named(*store, request.learner);
        if (!known) return refuse(context, known.error());
        learner = std::move(known.value());
    }
    QuizWish wish;
    wish.topic = request.topic;
    wish.count = static_cast<std::size_t>(request.count);
    wish.day = study_day();
    wish.units = units_in_use(context);
    wish.seed = request.seed.value_or(static_cast<unsigned>(std::time(nullptr)));
    const Portraits portraits(knowledge.value());
    const Result<std::vector<Item>> items = choose_items(portraits, learner.state, wish);
    if (!items) return refuse(context, items.error());
    QuizInHand quiz(knowledge.value(), items.value(), learner.state, wish);
    return QuizRun(context, knowledge.value(), store ? &*store : nullptr, learner, std::move(quiz)).run();
}

int run_quiz_topics(Context& context) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    for (const Topic& topic : topics(knowledge.value())) {
        context.streams.out << fmt::format("{:<28} {}\n", topic.id, topic.name);
    }
    return 0;
}

int run_quiz_figures(Context& context, unsigned seed, bool json) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const ItemCounts counts = count_items(Portraits(knowledge.value()), seed);
    if (json) {
        const ordered_json figures = {{"items", counts.made},
                                      {"listed", counts.listed},
                                      {"statements", counts.statements},
                                      {"by_form", json_of(counts.by_form)},
                                      {"by_complaint", json_of(counts.by_complaint)},
                                      {"by_part", json_of(counts.by_part)}};
        context.streams.out << figures.dump(2) << "\n";
        return 0;
    }
    say(context, fmt::format("{} items on {} statements (of {} that may be asked; the others would not be "
                             "fair). A figure counts once, whatever its numbers.",
                             counts.made, counts.statements, counts.listed));
    print_figures(context, "By form", counts.by_form);
    print_figures(context, "By complaint (an item may belong to several)", counts.by_complaint);
    print_figures(context, "By part", counts.by_part);
    return 0;
}

}  // namespace hardover
