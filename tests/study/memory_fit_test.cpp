// Review times fitted to a learner's own answers, against learners whose memory is known because it is made
// up.
#include "app/study/memory_fit.hpp"

#include <cmath>

#include "app/study/chance.hpp"
#include "app/study/known_learner.hpp"
#include "app/study/learner.hpp"
#include "scratch_folder.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover_tests;

namespace {

// A learner who forgets just as this model says, reviewed when the usual weights call for it.
std::vector<Review> simulated(const MemoryModel& truth, int statements, int each, std::uint64_t seed) {
    Chance chance(seed, "memory");
    struct Known {
        Memory truth;
        Memory planned;
        int due = 0;
        int last = 0;
        int reviews = 0;
    };
    std::vector<Known> known(static_cast<std::size_t>(statements));
    std::vector<Review> reviews;
    for (int day = 0; day < 400; ++day) {
        for (int s = 0; s < statements; ++s) {
            Known& one = known[static_cast<std::size_t>(s)];
            if (one.reviews == each || one.due > day || s > 20 * (day + 1)) continue;
            const int days = day - one.last;
            Grade grade = Grade::good;
            if (one.reviews == 0) {
                const double drawn = chance.share();
                grade = drawn < 0.35 ? Grade::again : drawn < 0.6 ? Grade::hard : Grade::good;
            } else if (chance.share() > chance_of_remembering(truth, one.truth.stability, days)) {
                grade = Grade::again;
            }
            const MemoryModel usual;
            one.truth =
                one.reviews == 0 ? first_review(truth, grade) : next_review(truth, one.truth, days, grade);
            one.planned =
                one.reviews == 0 ? first_review(usual, grade) : next_review(usual, one.planned, days, grade);
            one.last = day;
            one.due = day + whole_days_until(usual, one.planned.stability, target_chance, most_days);
            ++one.reviews;
            Review review;
            review.statement = "s" + std::to_string(s);
            review.item = review.statement + "/a";
            review.form = "proof";
            review.day = day;
            review.grade = grade;
            review.mark = grade == Grade::again ? 0 : 1;
            reviews.push_back(std::move(review));
        }
    }
    return reviews;
}

}  // namespace

TEST_CASE("Weights are recovered from simulated reviews to about a quarter") {
    // The stated error: a factor of 1.25 with some 6,000 scored reviews; fewer days after a wrong answer are
    // told by few different intervals, and so are held to 1.4.
    const FirstDays truth{0.6, 3.5, 9};
    const std::vector<Review> reviews = simulated(with_first_days(truth), 2000, 4, 1);
    const MemoryFit fit = fit_memory(reviews);
    CHECK(fit.scored > 4000);
    REQUIRE(fit.adopted);
    CHECK(std::abs(std::log(fit.days[0] / truth[0])) < std::log(1.4));
    CHECK(std::abs(std::log(fit.days[1] / truth[1])) < std::log(1.25));
    CHECK(std::abs(std::log(fit.days[2] / truth[2])) < std::log(1.25));
    CHECK(fit.held_out < fit.held_out_usual);
}

TEST_CASE("Fitted weights are only used where they foretell held-out reviews no worse than the usual ones") {
    int adopted = 0, refused = 0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const bool like_all = seed % 2 == 0;
        const MemoryModel truth = like_all ? MemoryModel() : with_first_days({0.1, 0.7, 1.2});
        const MemoryFit fit = fit_memory(simulated(truth, 120, 4, seed));
        INFO("learner " << seed);
        if (fit.adopted) CHECK(fit.held_out <= fit.held_out_usual);
        if (!fit.adopted) CHECK(fit.days == first_days_of(MemoryModel()));
        (fit.adopted ? adopted : refused) += 1;
    }
    CHECK(adopted > 5);
    CHECK(refused > 0);
}

TEST_CASE("The log loss is that of the published benchmark: minus the mean logarithm of what came about") {
    std::vector<Review> reviews(3);
    for (std::size_t i = 0; i < 3; ++i) reviews[i].statement = "s";
    reviews[0].grade = Grade::good;
    reviews[1].day = 2;
    reviews[1].grade = Grade::good;
    reviews[2].day = 2;  // the same day: not scored
    reviews[2].grade = Grade::again;
    const MemoryModel model;
    const double chance = chance_of_remembering(model, 2.3065, 2);
    CHECK(log_loss(model, reviews) == Approx(-std::log(chance)));
    reviews[1].grade = Grade::again;
    CHECK(log_loss(model, reviews) == Approx(-std::log(1 - chance)));
    CHECK(log_loss(model, {}) == 0);
}

TEST_CASE("Too few reviews leave the usual weights, and say how many it takes") {
    const MemoryFit fit = fit_memory(simulated(MemoryModel(), 20, 3, 1));
    CHECK_FALSE(fit.adopted);
    CHECK(fit.days == first_days_of(MemoryModel()));
    CHECK(fit_sentences(fit).front().find("takes 200 reviews") != std::string::npos);
}

TEST_CASE("A fit is on record, changes the review times, and is taken back") {
    const ScratchFolder folder;
    auto store = Store::open(folder.file("records.db"));
    REQUIRE_OK(store);
    const std::string now = "2026-11-25T15:03:13Z";
    const auto ann = add_learner(store.value(), "Ann", now);
    REQUIRE_OK(ann);
    int event = 0;
    for (const Review& review : simulated(with_first_days({0.6, 3.5, 9}), 300, 4, 3)) {
        REQUIRE_OK(
            store.value().append_study(ann.value().number, {++event, now, review_kind, review_body(review)}));
    }
    const auto state = [&] { return learner_state(store.value(), ann.value().number).value(); };
    const LearnerState usual = state();
    CHECK_FALSE(usual.fitted);
    const auto fit = fit_learner(store.value(), ann.value().number, now);
    REQUIRE_OK(fit);
    REQUIRE(fit.value().adopted);
    const LearnerState fitted = state();
    REQUIRE(fitted.fitted);
    CHECK(fitted.fitted->days == fit.value().days);
    CHECK(fitted.reviews.size() == usual.reviews.size());
    const auto due = [](const LearnerState& learner) {
        long sum = 0;
        for (const auto& [id, statement] : learner.statements) sum += statement.due_day();
        return sum;
    };
    CHECK(due(fitted) > due(usual));
    REQUIRE_OK(use_usual_memory(store.value(), ann.value().number, now));
    CHECK_FALSE(state().fitted);
    CHECK(due(state()) == due(usual));
}

TEST_CASE("A fit reads back as it was written, and what is none is refused") {
    MemoryFit fit;
    fit.scored = 312;
    fit.adopted = true;
    fit.days = {0.3, 1.5, 4.25};
    fit.held_out = 0.31;
    fit.held_out_usual = 0.34;
    const auto read = read_fit(fit_body(fit));
    REQUIRE_OK(read);
    CHECK(read.value().days == fit.days);
    CHECK(read.value().held_out_usual == fit.held_out_usual);
    for (const char* wrong : {"", "{}", "[1]", R"({"days":[1,2],"scored":1,"held_out":0,"held_out_usual":0})",
                              R"({"days":[-1,2,3],"scored":1,"held_out":0,"held_out_usual":0})"}) {
        INFO(wrong);
        CHECK_FALSE(read_fit(wrong).ok());
    }
}
