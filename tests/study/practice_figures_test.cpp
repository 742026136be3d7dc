// The three players on the same boats: the marks rank them rightly, the same digits whoever plays.
#include "app/study/practice_figures.hpp"
#include "study/practice_support.hpp"

using namespace hardover;
using namespace hardover::study::practice;
using namespace hardover_tests;

TEST_CASE("The marks put the expert before who looks at nothing, and both before the guesser") {
    FiguresWish wish;
    wish.boats = 15;
    const PracticeFigures figures = practice_figures(prepared(), wish);
    CHECK(figures.boats + figures.refused == 15);
    const PlayerFigures& expert = figures.players[0];
    const PlayerFigures& first = figures.players[1];
    const PlayerFigures& guesser = figures.players[2];
    CHECK(expert.avoidable == 0);
    CHECK(expert.of_expert() == 1);
    CHECK(expert.of_expected() < 2.5);
    CHECK(first.of_expert() > 1.2);
    CHECK(guesser.of_expert() > first.of_expert());
    CHECK(guesser.avoidable > first.avoidable);
    CHECK(first.avoidable > 10 * first.boats);
    CHECK(guesser.cured < first.cured);
    CHECK(expert.brier < first.brier);
    for (const PlayerFigures& player : figures.players) CHECK(player.largest_gap < 1e-6);
}

TEST_CASE("Any number of threads gives the same digits") {
    FiguresWish wish;
    wish.boats = 3;
    wish.seed = 40;
    wish.threads = 1;
    const PracticeFigures one = practice_figures(prepared(), wish);
    wish.threads = 3;
    const PracticeFigures three = practice_figures(prepared(), wish);
    for (std::size_t p = 0; p < one.players.size(); ++p) {
        CHECK(one.players[p].minutes == three.players[p].minutes);
        CHECK(one.players[p].avoidable == three.players[p].avoidable);
        CHECK(one.players[p].luck == three.players[p].luck);
        CHECK(one.players[p].brier == three.players[p].brier);
    }
}
