#include "study_samples.hpp"

#include <catch2/catch.hpp>

#include "shop.hpp"

namespace hardover_tests {

using namespace hardover;
using namespace hardover::window;

namespace {

class Maker {
  public:
    Maker()
        : store_(open()), desk_(PreparedKnowledge(shipped()), store_, [] { return "2026-11-25T15:03:13Z"; }) {
        desk_.show(hardover::UnitSystem::us);
    }

    std::vector<StudyState> make() {
        keep("nobody", {});
        desk_.carry_out(AddLearner{"Bert at the window"});
        desk_.carry_out(AddLearner{"Ann"});
        StudyView open;
        open.open = {"topics", "levels"};
        keep("learner", open);
        for (const char* form : {"signs", "shows", "order", "figure", "caution", "place"}) quiz(form);
        desk_.carry_out(ShowStudy{StudyShowing::progress});
        keep("progress", {});
        worked_boat();
        lonely_boat();
        return std::move(states_);
    }

  private:
    Store open() {
        auto opened = Store::open(folder_.file("records.db"));
        REQUIRE_OK(opened);
        return std::move(opened.value());
    }

    void keep(const std::string& name, const StudyView& view) {
        states_.push_back({name, desk_.page(), view});
    }

    void quiz(const std::string& form) {
        desk_.carry_out(StartQuiz{form});
        REQUIRE(desk_.page().quiz.has_value());
        const study::QuizPage quiz = *desk_.page().quiz;
        keep("quiz-" + form, {});
        std::string typed = quiz.way == study::Way::figure ? "1" : "a";
        for (std::size_t i = 1; quiz.way == study::Way::order && i < quiz.options.size(); ++i) {
            typed += std::string(" ") + static_cast<char>('a' + i);
        }
        desk_.carry_out(AnswerItem{typed, 0.8});
        keep("quiz-" + form + "-answered", {});
    }

    // The first boat of a learner is worked through with the expert's steps.
    void worked_boat() {
        desk_.carry_out(BeginBoat{1, "3"});
        REQUIRE(desk_.page().boat.has_value());
        keep("boat-worked", {});
        for (int steps = 0; steps < 60 && !desk_.page().right; ++steps) {
            REQUIRE(desk_.page().boat->led.has_value());
            do_carefully(desk_, desk_.page().boat->led->event);
        }
        REQUIRE(desk_.page().right);
        keep("boat-right", {});
        desk_.carry_out(Tell{practice::HandedOver{true}});
        REQUIRE(desk_.page().debrief.has_value());
        keep("debrief-good", {});
    }

    // A hard boat, no learner, every way to go wrong.
    void lonely_boat() {
        desk_.carry_out(ChooseLearner{0});
        desk_.carry_out(BeginBoat{5, "11"});
        REQUIRE(desk_.page().boat.has_value());
        const practice::Page boat = *desk_.page().boat;
        StudyView look;
        look.open = {"part." + boat.parts.front().id, "rig"};
        keep("boat-look", look);
        StudyView suspect;
        suspect.tab = PracticeTab::suspect;
        suspect.cause = boat.causes.front().id;
        keep("boat-suspect", suspect);
        StudyView remedy;
        remedy.tab = PracticeTab::remedy;
        keep("boat-remedy", remedy);
        desk_.carry_out(Tell{practice::Suspected{boat.causes.front().id, 0.6}});
        desk_.carry_out(Tell{practice::Hinted{3}});
        StudyView help;
        help.tab = PracticeTab::help;
        help.open = {"call"};
        keep("boat-help", help);
        for (const practice::NamedItem& item : boat.remedies) {
            desk_.carry_out(TakeUpWork{practice::Remedied{item.id}});
            if (desk_.page().work && !desk_.page().work->questions.empty()) break;
        }
        REQUIRE(desk_.page().work.has_value());
        keep("boat-caution", {});
        desk_.carry_out(MindCautions{{}, true});
        keep("boat-back", {});
        StudyView sheets;
        sheets.tab = PracticeTab::sheets;
        keep("boat-sheets", sheets);
        desk_.carry_out(TakeUpWork{practice::GaveUp{}});
        REQUIRE(desk_.page().debrief.has_value());
        StudyView unfolded;
        unfolded.open = {"minutes", "step.1", "at_start"};
        keep("debrief-bad", unfolded);
    }

    ScratchFolder folder_;
    Store store_;
    StudyDesk desk_;
    std::vector<StudyState> states_;
};

}  // namespace

void do_carefully(StudyDesk& desk, const practice::PracticeEvent& event) {
    desk.carry_out(TakeUpWork{event});
    while (desk.page().work) {
        if (desk.page().work->questions.empty()) {
            desk.carry_out(DoWork{});
            continue;
        }
        MindCautions mind;
        for (const CautionText& caution : desk.page().work->questions.front().cautions) {
            mind.named.push_back(caution.id);
        }
        desk.carry_out(mind);
    }
}

const std::vector<StudyState>& study_states() {
    static const std::vector<StudyState> states = Maker().make();
    return states;
}

}  // namespace hardover_tests
