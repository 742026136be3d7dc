#include "app/window/study_desk.hpp"

#include <algorithm>

#include "app/window/seed_typed.hpp"
#include "app/window/study_work.hpp"

namespace hardover::window {

using namespace study;

namespace {

constexpr std::size_t items_of_a_quiz = 10;

constexpr const char* study_work = "study";

}  // namespace

StudyDesk::StudyDesk(const PreparedKnowledge& prepared, Store& store, std::function<std::string()> now)
    : prepared_(prepared), store_(store), now_(std::move(now)) {}

void StudyDesk::show(UnitSystem units) {
    if (units_ != units && session_) page_.boat = practice::make_page(*session_, units);
    units_ = units;
    page_.notice.clear();
    read_start();
    if (page_.showing == StudyShowing::progress) read_progress();
}

void StudyDesk::use(const PreparedKnowledge& prepared) {
    const bool any = quiz_.has_value() || session_.has_value() || page_.working.has_value();
    stop_working();
    prepared_ = prepared;
    portraits_.reset();
    askable_.reset();
    quiz_.reset();
    session_.reset();
    taking_.reset();
    page_ = {};
    read_start();
    if (any) {
        page_.notice = "The knowledge was read anew: what was in hand here is put away. What was kept stays.";
    }
}

void StudyDesk::carry_out(const StudyAction& action) {
    page_.trouble.clear();
    page_.notice.clear();
    std::visit([this](const auto& what) { apply(what); }, action);
}

bool StudyDesk::refused(const Error& error) {
    page_.trouble = error.text();
    return true;
}

void StudyDesk::work(const std::string& what, StudyShowing showing, Background::Work work) {
    if (background_ == nullptr) {
        Background::Watch watch;
        if (const Background::Outcome outcome = work(watch)) outcome();
        return;
    }
    page_.working = StudyWork{what, "", 0, showing};
    background_->start(study_work, std::move(work));
}

void StudyDesk::stop_working() {
    page_.working.reset();
    if (background_ != nullptr) background_->drop(study_work);
}

void StudyDesk::note_progress() {
    if (!page_.working) return;
    if (!background_->working_on(study_work))
        return stop_working();  // another part of the program dropped it
    const Background::Progress progress = background_->progress(study_work);
    if (progress.of == 0) return;
    page_.working->progress = std::to_string(progress.done) + " of " + std::to_string(progress.of);
    page_.working->share = static_cast<double>(progress.done) / static_cast<double>(progress.of);
}

void StudyDesk::apply(const StopWork&) {
    if (!page_.working) return;
    const bool boat = page_.working->showing == StudyShowing::practice;
    stop_working();
    if (!boat) apply(ShowStudy{StudyShowing::start});
}

// Opened anew each time: quiz and boat write to the same learner.
Result<std::optional<practice::Record>> StudyDesk::record() {
    if (learner_ == 0) return std::optional<practice::Record>();
    Result<practice::Record> opened = practice::Record::open(store_, learner_);
    if (!opened) return opened.error();
    return std::optional<practice::Record>(std::move(opened.value()));
}

void StudyDesk::read_start() {
    const auto rows = store_.learners();
    if (!rows) {
        refused(rows.error());
        return;
    }
    page_.learners.clear();
    page_.learner.clear();
    for (const LearnerRow& row : rows.value()) {
        page_.learners.push_back({row.number, row.name, row.number == learner_});
        if (row.number == learner_) page_.learner = row.name;
    }
    page_.topics = topics(prepared_.knowledge());
    page_.due.clear();
    if (learner_ != 0) {
        const Result<LearnerState> state = learner_state(store_, learner_);
        if (!state) {
            refused(state.error());
            return;
        }
        page_.due = due_sentence(static_cast<int>(state.value().due(study_day(now_())).size()));
    }
    const auto kept = record();
    if (!kept) {
        refused(kept.error());
        return;
    }
    page_.start = practice::make_start_page(kept.value() ? &*kept.value() : nullptr);
}

void StudyDesk::read_progress() {
    page_.progress.reset();
    if (learner_ == 0) return;
    const auto rows = store_.learners();
    if (!rows) {
        refused(rows.error());
        return;
    }
    std::vector<LearnerState> everyone;
    std::size_t who = 0;
    for (const LearnerRow& row : rows.value()) {
        if (row.number == learner_) who = everyone.size();
        Result<LearnerState> state = learner_state(store_, row.number);
        if (!state) {
            refused(state.error());
            return;
        }
        everyone.push_back(std::move(state.value()));
    }
    const auto kept = record();
    if (!kept) {
        refused(kept.error());
        return;
    }
    work("Looking at what is known", StudyShowing::progress,
         [this, prepared = prepared_, portraits = portraits_, askable = askable_,
          everyone = std::move(everyone), who, boats = kept.value()->boats(),
          day = study_day(now_())](Background::Watch& watch) mutable -> Background::Outcome {
             const auto known = made_if_needed(portraits, prepared);
             if (!askable) {
                 askable = askable_stems(*known, mastery_seed, [&watch](std::size_t done, std::size_t of) {
                     return watch.go_on(done, of);
                 });
             }
             if (!askable) return {};
             const LearnerSummary summary = summarise(prepared.knowledge(), *askable, everyone, who, day);
             const ProgressPage page = make_progress_page(summary, everyone[who], boats, day);
             return Background::Outcome([this, known, askable, page] {
                 page_.working.reset();
                 portraits_ = known;
                 askable_ = askable;
                 page_.progress = page;
             });
         });
}

void StudyDesk::apply(const FitMemory&) {
    const Result<LearnerState> state = learner_state(store_, learner_);
    if (!state) {
        refused(state.error());
        return;
    }
    work("Fitting the review times", StudyShowing::progress,
         [this, reviews = state.value().reviews, learner = learner_](Background::Watch&) {
             return Background::Outcome([this, fit = fit_memory(reviews), learner] {
                 page_.working.reset();
                 const Result<void> kept = keep_fit(store_, learner, fit, now_());
                 if (!kept) refused(kept.error());
                 page_.notice.clear();
                 if (!fit.adopted) page_.notice = fit_sentences(fit).front();
                 read_progress();
             });
         });
}

void StudyDesk::apply(const UsualMemory&) {
    const Result<void> kept = use_usual_memory(store_, learner_, now_());
    if (!kept) {
        refused(kept.error());
        return;
    }
    read_progress();
}

// What is in hand belongs to whoever learned before.
void StudyDesk::apply(const ChooseLearner& choose) {
    if (choose.learner != learner_ || taking_) {
        stop_working();
        taking_.reset();
        quiz_.reset();
        session_.reset();
        page_ = {};
    }
    learner_ = choose.learner;
    read_start();
}

void StudyDesk::apply(const AddLearner& add) {
    const Result<KnownLearner> added = add_learner(store_, add.name, now_());
    if (!added) {
        refused(added.error());
        return;
    }
    apply(ChooseLearner{added.value().number});
}

void StudyDesk::apply(const ShowStudy& show) {
    // A boat goes on being marked while one looks elsewhere; what was only to be looked at is not wanted.
    if (page_.working && page_.working->showing != StudyShowing::practice) stop_working();
    page_.showing = show.showing;
    if (show.showing == StudyShowing::start) read_start();
    if (show.showing == StudyShowing::progress) read_progress();
}

void StudyDesk::apply(const StartQuiz& start) {
    if (taking_) return apply(TakeTask{});
    LearnerState state;
    if (learner_ != 0) {
        Result<LearnerState> known = learner_state(store_, learner_);
        if (!known) {
            refused(known.error());
            return;
        }
        state = std::move(known.value());
    }
    const QuizWish wish{start.topic, items_of_a_quiz, seed_of(now_()), study_day(now_()), units_};
    quiz_.reset();
    page_.quiz.reset();
    page_.showing = StudyShowing::quiz;
    work("Making the questions", StudyShowing::quiz,
         [this, prepared = prepared_, portraits = portraits_, state = std::move(state),
          wish](Background::Watch& watch) {
             const auto known = made_if_needed(portraits, prepared);
             const auto items = choose_items(*known, state, wish, watched_by(watch));
             return Background::Outcome([this, known, items, state, wish] {
                 page_.working.reset();
                 portraits_ = known;
                 take_quiz(items, state, wish);
             });
         });
}

void StudyDesk::take_quiz(const Result<std::vector<Item>>& items, const LearnerState& learner,
                          const QuizWish& wish) {
    if (!items) {
        page_.showing = StudyShowing::start;
        refused(items.error());
        return;
    }
    quiz_.emplace(prepared_.knowledge(), items.value(), learner, wish);
    page_.quiz = make_quiz_page(prepared_.knowledge(), *quiz_);
}

void StudyDesk::apply(const AnswerItem& answer) {
    if (!quiz_ || quiz_->at_end() || quiz_->answered()) return;
    const auto weighed = quiz_->weigh(answer.typed, answer.sure);
    if (!weighed) {
        refused(weighed.error());
        return;
    }
    if (taking_) {
        if (!keep_in_set(weighed.value())) return;
    } else if (learner_ != 0) {
        const Result<KnownLearner> known = learner_numbered(store_, learner_);
        if (!known) {
            refused(known.error());
            return;
        }
        const Result<void> kept = store_.append_study(
            learner_, {known.value().events + 1, now_(), review_kind, review_body(weighed.value().review)});
        if (!kept) {
            refused(kept.error());
            return;
        }
    }
    quiz_->take(weighed.value());
    page_.quiz = make_quiz_page(prepared_.knowledge(), *quiz_);
    pass_over_marks();
}

void StudyDesk::apply(const NextItem&) {
    if (!quiz_ || !quiz_->answered()) return;
    quiz_->go_on();
    page_.quiz = make_quiz_page(prepared_.knowledge(), *quiz_);
    pass_on_at_end();
}

}  // namespace hardover::window
