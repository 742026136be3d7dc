#include "app/study/practice_figures.hpp"

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <optional>
#include <thread>

#include "app/study/practice_players.hpp"

namespace hardover::study::practice {

namespace {

constexpr std::size_t player_count = 3;
constexpr const char* player_ids[player_count] = {"expert", "first_choice", "guesser"};
constexpr const char* player_names[player_count] = {"Expert policy", "Always the first choice",
                                                    "Random guesser"};

struct OnBoat {
    bool cured = false;
    Marks marks;
};
using AllOnBoat = std::array<OnBoat, player_count>;

std::optional<AllOnBoat> play(const PreparedKnowledge& prepared, std::uint64_t seed, int level) {
    const auto boat = make_practice_boat(prepared, seed, level);
    if (!boat) return std::nullopt;
    const Session sessions[player_count] = {expert_on(prepared, boat.value()),
                                            first_choice_on(prepared, boat.value()),
                                            guesser_on(prepared, boat.value(), seed)};
    AllOnBoat all;
    for (std::size_t p = 0; p < player_count; ++p) {
        all[p] = {sessions[p].boat_is_right(), marks_alone(sessions[p])};
    }
    return all;
}

void add(const AllOnBoat& all, std::vector<PlayerFigures>& players) {
    for (std::size_t p = 0; p < player_count; ++p) {
        const Marks& marks = all[p].marks;
        PlayerFigures& player = players[p];
        ++player.boats;
        player.cured += all[p].cured ? 1 : 0;
        player.minutes += marks.minutes;
        player.expected += marks.expected;
        player.avoidable += marks.avoidable;
        player.luck += marks.luck;
        player.largest_gap =
            std::max(player.largest_gap, std::abs(marks.over() - marks.avoidable - marks.luck));
        player.told_nothing += marks.told_nothing;
        player.wrong_remedies += marks.wrong_remedies;
        player.behind_expert += marks.avoidable >= all[0].marks.avoidable ? 1 : 0;
        if (marks.statements == 0) continue;
        ++player.said;
        player.brier += marks.brier;
    }
}

std::vector<PlayerFigures> fresh() {
    std::vector<PlayerFigures> players(player_count);
    for (std::size_t p = 0; p < player_count; ++p) {
        players[p].id = player_ids[p];
        players[p].name = player_names[p];
    }
    return players;
}

void take_means(std::vector<PlayerFigures>& players) {
    for (PlayerFigures& player : players) {
        if (player.said > 0) player.brier /= player.said;
    }
}

}  // namespace

PracticeFigures practice_figures(const PreparedKnowledge& prepared, const FiguresWish& wish) {
    const auto boats = static_cast<std::size_t>(std::max(0, wish.boats));
    std::vector<std::optional<AllOnBoat>> played(boats);
    const auto level_of = [](std::size_t boat) { return least_level + static_cast<int>(boat % most_level); };
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        for (std::size_t b = next++; b < boats; b = next++) {
            played[b] = play(prepared, wish.seed + b, level_of(b));
        }
    };
    const unsigned wanted =
        wish.threads > 0 ? static_cast<unsigned>(wish.threads) : std::thread::hardware_concurrency();
    std::vector<std::thread> threads;
    for (unsigned t = 1; t < wanted; ++t) threads.emplace_back(work);
    work();
    for (std::thread& thread : threads) thread.join();

    PracticeFigures figures;
    figures.players = fresh();
    for (int level = least_level; level <= most_level; ++level) figures.levels.push_back({level, fresh()});
    for (std::size_t b = 0; b < boats; ++b) {  // in the order of the boats, whoever played them
        if (!played[b]) {
            ++figures.refused;
            continue;
        }
        ++figures.boats;
        add(*played[b], figures.players);
        add(*played[b], figures.levels[static_cast<std::size_t>(level_of(b) - least_level)].players);
    }
    take_means(figures.players);
    for (LevelFigures& level : figures.levels) take_means(level.players);
    return figures;
}

}  // namespace hardover::study::practice
