// `hardover learner ...`: who learns here, and how far each has come.
#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <ostream>

#include "app/jobs/job.hpp"
#include "app/jobs/json.hpp"
#include "app/study/askable_kept.hpp"
#include "app/study/progress_page.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/known_learner.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

namespace {

using namespace study;
using nlohmann::ordered_json;

ordered_json json_of(const TopicMastery& topic) {
    return {{"id", topic.id},
            {"name", topic.name},
            {"statements", topic.statements},
            {"met", topic.met},
            {"answers", topic.answers},
            {"right", topic.right},
            {"remembered", topic.remembered},
            {"ability", topic.ability.value},
            {"ability_error", topic.ability.error}};
}

ordered_json json_of(const std::vector<TopicMastery>& topics) {
    ordered_json list = ordered_json::array();
    for (const TopicMastery& topic : topics) list.push_back(json_of(topic));
    return list;
}

void print_mastery(Context& context, const std::string& title, const std::vector<TopicMastery>& topics) {
    context.streams.out << "\n"
                        << fmt::format("{:<36} {:>11} {:>9} {:>11} {:>9}\n", title, "met", "right",
                                       "tomorrow", "ability");
    for (const TopicMastery& topic : topics) {
        context.streams.out << fmt::format("  {:<34} {:>4} of {:>4}", topic.name, topic.met,
                                           topic.statements);
        if (topic.answers == 0) {
            context.streams.out << "\n";
            continue;
        }
        context.streams.out << fmt::format(" {:>3} of {:>2} {:>9.0f} % {:>+6.1f} ± {:.1f}\n", topic.right,
                                           topic.answers, 100 * topic.remembered, topic.ability.value,
                                           topic.ability.error);
    }
}

}  // namespace

int run_learner_add(Context& context, const std::string& name) {
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    const auto added = add_learner(store.value(), name, utc_now());
    if (!added) return refuse(context, added.error());
    const std::string& clean = added.value().name;
    context.streams.out << "Learner " << clean << " is added. Start with: hardover quiz --learner "
                        << shell_word(clean) << "\n";
    return 0;
}

int run_learner_list(Context& context, bool json) {
    const Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    const auto rows = store.value().learners();
    if (!rows) return refuse(context, rows.error());
    ordered_json list = ordered_json::array();
    if (rows.value().empty() && !json)
        say_wrapped(context.streams.out, "No learner yet. Add one with: hardover learner add NAME");
    for (const LearnerRow& row : rows.value()) {
        Result<LearnerState> state = learner_state(store.value(), row.number);
        if (!state) return refuse(context, state.error());
        const std::size_t due = state.value().due(study_day()).size();
        if (json) {
            list.push_back({{"name", row.name},
                            {"added_at", row.added_at},
                            {"answers", state.value().reviews.size()},
                            {"due", due}});
            continue;
        }
        context.streams.out << fmt::format("{:<24} {} answer{}, {} due\n", row.name,
                                           state.value().reviews.size(),
                                           state.value().reviews.size() == 1 ? "" : "s", due);
    }
    if (json) context.streams.out << json_text(list) << "\n";
    return 0;
}

int run_learner_fit(Context& context, const std::string& name, bool usual) {
    Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    const Result<KnownLearner> learner = learner_named(store.value(), name);
    if (!learner) return refuse(context, learner.error());
    const LearnerNumber number = learner.value().number;
    if (usual) {
        const Result<void> kept = use_usual_memory(store.value(), number, utc_now());
        if (!kept) return refuse(context, kept.error());
        say_wrapped(context.streams.out, "Review times go by the usual weights again.");
        return 0;
    }
    const Result<MemoryFit> fit = fit_learner(store.value(), number, utc_now());
    if (!fit) return refuse(context, fit.error());
    for (const std::string& line : fit_sentences(fit.value())) say_wrapped(context.streams.out, line);
    if (fit.value().adopted)
        say_wrapped(context.streams.out, "Take it back with: hardover learner fit --usual '" + name + "'");
    return 0;
}

int run_learner_show(Context& context, const std::string& name, bool json) {
    const Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    const Result<KnownLearner> learner = learner_named(store.value(), name);
    if (!learner) return refuse(context, learner.error());
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const auto rows = store.value().learners();
    if (!rows) return refuse(context, rows.error());
    std::vector<LearnerState> everyone;
    std::size_t who = 0;
    for (const LearnerRow& row : rows.value()) {
        if (row.number == learner.value().number) who = everyone.size();
        Result<LearnerState> state = learner_state(store.value(), row.number);
        if (!state) return refuse(context, state.error());
        everyone.push_back(std::move(state.value()));
    }
    const std::vector<Stem> askable =
        askable_kept(Portraits(knowledge.value()), mastery_seed, store.value().path() + ".askable");
    const LearnerSummary summary = summarise(knowledge.value(), askable, everyone, who, study_day());
    if (json) {
        const ordered_json page = {{"name", name},
                                   {"due", summary.due},
                                   {"all", json_of(summary.all)},
                                   {"sureness",
                                    {{"answers", summary.calibration.answers},
                                     {"bias", summary.calibration.bias()},
                                     {"brier", summary.calibration.brier}}},
                                   {"rough", summary.rough},
                                   {"by_complaint", json_of(summary.by_complaint)},
                                   {"by_part", json_of(summary.by_part)}};
        context.streams.out << json_text(page) << "\n";
        return 0;
    }
    say_wrapped(context.streams.out, name + ": " + progress_headline(summary));
    for (const std::string& line : sureness_sentences(summary.calibration))
        say_wrapped(context.streams.out, line);
    for (const std::string& line : memory_sentences(learner.value().state))
        say_wrapped(context.streams.out, line);
    print_mastery(context, "By complaint", summary.by_complaint);
    print_mastery(context, "By part", summary.by_part);
    if (summary.rough) {
        say_wrapped(context.streams.out,
                    "\nAbilities are in logits (0 is the middle of all learners) and rough: they "
                    "rest on few learners.");
    }
    return 0;
}

}  // namespace hardover
