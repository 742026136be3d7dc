// Every question of the shipped knowledge on the screen: its words fit, its answers can be pressed.
#include <catch2/catch.hpp>

#include "app/jobs/page.hpp"
#include "app/window/screens/job.hpp"
#include "shop.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

struct Size {
    float w;
    float h;
    float text;
};

}  // namespace

TEST_CASE(
    "Every question of the knowledge fits, with all of its answers and what they would tell on the screen") {
    const Knowledge& knowledge = shipped();
    const Job job = replay(knowledge, 1, {});
    const JobPage page = make_job_page(knowledge, job);
    const std::vector<LookUpRow> rows = make_look_up(knowledge, job);
    std::vector<QuestionOutlook> outlooks;
    for (std::size_t i = 0; i < knowledge.findings.size(); ++i) {
        outlooks.push_back(question_outlook(knowledge, job, static_cast<Index>(i)));
    }
    for (const Size size :
         {Size{1024, 640, 1}, Size{1280, 800, 1}, Size{1280, 800, 2}, Size{1920, 1080, 1.5F}}) {
        StepCard card;
        QuestionOutlook outlook;
        JobView view;
        view.showing = Showing::finding;
        Harness harness(size.w, size.h, scale_for(size.text, size.w, size.h), Look::light, [&](Kit& kit) {
            draw_job(kit, {page, &card, rows, &outlook}, view);
        });
        for (std::size_t i = 0; i < knowledge.findings.size(); ++i) {
            card = question_card(knowledge, job, static_cast<Index>(i));
            outlook = outlooks[i];
            const bool drawn_at_first = card.kind == StepCard::Kind::question && card.steps.empty();
            view.open = drawn_at_first ? std::set<std::string>{} : std::set<std::string>{"outlook"};
            view.finding = knowledge.findings[i].id;
            harness.frames(3);
            INFO(view.finding << " at " << size.w << " x " << size.h << ", text " << size.text);
            REQUIRE_FALSE(card.questions.empty());
            CHECK(harness.shows(card.questions.front().ask));
            for (const Mark& mark : harness.marks()) {
                INFO(mark.text);
                CHECK_FALSE(mark.cut);
                if (mark.control && mark.enabled && !mark.visible.empty())
                    CHECK(mark.visible.w >= mark.box.w - 1);
            }
        }
    }
}
