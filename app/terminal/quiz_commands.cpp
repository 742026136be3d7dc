// `hardover quiz ...` and `hardover learner ...`: questions made from the knowledge, by hand or through a
// pipe, and how far each learner has come.
#include <fmt/format.h>

#include <ctime>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/jobs/job.hpp"
#include "app/jobs/json.hpp"
#include "app/reports/job_report.hpp"
#include "app/study/quiz_in_hand.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/item_counts.hpp"
#include "app/terminal/known_learner.hpp"
#include "app/terminal/quiz_run.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

using namespace study;

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
    QuizRun run(context, knowledge.value(), QuizInHand(knowledge.value(), items.value(), learner.state, wish),
                [&](const QuizInHand::Answer& answer, double) -> Result<void> {
                    if (!store) return {};
                    const Result<void> written = store->append_study(
                        learner.number,
                        {learner.events + 1, utc_now(), review_kind, review_body(answer.review)});
                    if (written) ++learner.events;
                    return written;
                });
    const Result<bool> ran = run.run(run.quiz().opening() + " ");
    if (!ran) return refuse(context, ran.error());
    context.streams.out << (store ? "Kept for " + learner.name + ". See: hardover learner show " +
                                        shell_word(learner.name)
                                  : "Nothing is kept without a learner: hardover quiz --learner NAME")
                        << "\n";
    return 0;
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
    const ItemCounts counts = counted_items(knowledge.value(), seed);
    if (json) {
        context.streams.out << json_text(json_of(counts)) << "\n";
    } else {
        print_item_counts(context.streams.out, counts);
    }
    return 0;
}

}  // namespace hardover
