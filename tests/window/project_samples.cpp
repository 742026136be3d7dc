#include "project_samples.hpp"

#include "shipped.hpp"

namespace hardover_tests {

using namespace hardover;
using namespace hardover::window;
using Scene = ProjectPage::Scene;

namespace {

class Walk {
  public:
    explicit Walk(const std::function<void(const ProjectSample&)>& look)
        : look_(look),
          store_(open()),
          desk_(PreparedKnowledge(shipped()), store_, [] { return "2026-11-25T15:03:13Z"; }) {
        desk_.show(UnitSystem::us);
    }

    void go() {
        desk_.carry_out(BeginClassBoat{2, "7"});
        REQUIRE(desk_.page().scene == Scene::vote);
        see("vote", {});
        see("vote-counted", counted());
        ProjectView ideas = counted();
        ideas.current = 1;
        ideas.ideas = true;
        see("vote-ideas", ideas);
        ProjectView wrong = counted();
        wrong.hands[0] = "many";
        see("vote-wrong", wrong);
        ProjectView boat;
        boat.boat = true;
        see("boat-hidden", boat);
        desk_.carry_out(PutToClass{classroom::Asks::cause});
        see("vote-cause", counted());
        desk_.carry_out(SettleVote{{3, 9, 1, 2, 0, 4}, std::nullopt});
        do_steps();
        desk_.carry_out(ShowTheFault{});
        see("boat-fault", boat);
        end();
    }

  private:
    Store open() {
        auto opened = Store::open(folder_.file("records.db"));
        REQUIRE_OK(opened);
        return std::move(opened.value());
    }

    ProjectView counted() const {
        ProjectView view;
        view.follow(desk_.page().number, desk_.page().ballot.choices.size());
        for (std::size_t i = 0; i < view.hands.size(); ++i) view.hands[i] = std::to_string(i * 4);
        return view;
    }

    void see(const std::string& name, const ProjectView& view) {
        INFO(name);
        ProjectSample sample{name, &desk_, view};
        look_(sample);
    }

    // The last choice is a remedy, with cautions more often than not; the first is a look.
    void do_steps() {
        desk_.carry_out(SettleVote{{}, 0});
        if (desk_.page().scene == Scene::agreed) desk_.carry_out(DoAgreed{});
        REQUIRE(desk_.page().scene == Scene::outcome);
        see("outcome", {});
        desk_.carry_out(NextQuestion{});
        ProjectView ranking = counted();
        ranking.ranking = true;
        see("ranking", ranking);
        desk_.carry_out(SettleVote{{}, desk_.page().ballot.choices.size() - 1});
        REQUIRE(desk_.page().scene == Scene::agreed);
        see("agreed", {});
        desk_.carry_out(DoAgreed{});
        see("outcome-remedy", {});
        desk_.carry_out(NextQuestion{});
    }

    void end() {
        const classroom::BallotPage& ballot = desk_.page().ballot;
        desk_.carry_out(AddToBallot{study::practice::GaveUp{}});
        std::vector<int> hands(ballot.choices.size(), 2);
        hands.back() = 14;
        desk_.carry_out(SettleVote{hands, std::nullopt});
        if (desk_.page().scene == Scene::agreed) desk_.carry_out(DoAgreed{});
        REQUIRE(desk_.page().scene == Scene::debrief);
        see("debrief", {});
    }

    const std::function<void(const ProjectSample&)>& look_;
    ScratchFolder folder_;
    Store store_;
    ProjectDesk desk_;
};

}  // namespace

void each_project_state(const std::function<void(const ProjectSample&)>& look) {
    Walk(look).go();
}

}  // namespace hardover_tests
