// Practice boats made by seed (drawn, surveyed, with a complaint), and whole sessions played and marked on
// them.
#include <iostream>

#include "app/study/practice_marks.hpp"
#include "app/study/practice_players.hpp"
#include "bench/common.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover_bench;

namespace {

std::string a_second(double milliseconds) {
    return milliseconds > 0 ? fixed(1000 / milliseconds, 1) : "-";
}

// A row for a level: time of each boat; refused seeds are counted.
std::vector<std::string> boats_row(const PreparedKnowledge& prepared, int level, int boats,
                                   std::vector<double>& all) {
    std::vector<double> times;
    int refused = 0;
    for (int b = 0; b < boats; ++b) {
        const double before = thread_milliseconds();
        const auto boat = make_practice_boat(prepared, static_cast<std::uint64_t>(b), level);
        times.push_back(thread_milliseconds() - before);
        refused += boat.ok() ? 0 : 1;
    }
    all.insert(all.end(), times.begin(), times.end());
    return {"level " + std::to_string(level),
            std::to_string(boats),
            a_second(mean(times)),
            fixed(percentile(times, 0.5), 2),
            fixed(percentile(times, 0.99), 2),
            std::to_string(refused)};
}

using Player = practice::Session (*)(const PreparedKnowledge&, const std::shared_ptr<const PracticeBoat>&);

std::vector<std::string> sessions_row(const PreparedKnowledge& prepared, const std::string& name,
                                      Player player, int boats) {
    std::vector<double> played, marked;
    std::size_t work = 0;
    for (int b = 0; b < boats; ++b) {
        const auto boat =
            make_practice_boat(prepared, static_cast<std::uint64_t>(b), least_level + b % most_level);
        if (!boat) continue;
        const double before = thread_milliseconds();
        const practice::Session session = player(prepared, boat.value());
        const double between = thread_milliseconds();
        const practice::Marks marks = practice::marks_alone(session);
        played.push_back(between - before);
        marked.push_back(thread_milliseconds() - between);
        work += marks.work.size();
    }
    return {name, std::to_string(played.size()), fixed(static_cast<double>(work) / played.size(), 1),
            a_second(mean(played)), a_second(mean(played) + mean(marked))};
}

practice::Session guesser(const PreparedKnowledge& prepared,
                          const std::shared_ptr<const PracticeBoat>& boat) {
    return practice::guesser_on(prepared, boat, boat->seed);
}

}  // namespace

// practice_bench [BOATS [SESSIONS]]
int main(int argc, char** argv) {
    const int boats = argument(argc, argv, 1, 10000);
    const int sessions = argument(argc, argv, 2, 50);
    const Knowledge knowledge = shipped_knowledge();
    const PreparedKnowledge prepared(knowledge);
    std::cout << boats << " practice boats made, the levels in turn, one core\n\n";
    std::vector<std::vector<std::string>> rows{
        {"boats", "made", "a second", "median ms", "99 % ms", "seeds refused"}};
    std::vector<double> all;
    for (int level = least_level; level <= most_level; ++level) {
        rows.push_back(boats_row(prepared, level, boats / most_level, all));
    }
    rows.push_back({"all", std::to_string(all.size()), a_second(mean(all)), fixed(percentile(all, 0.5), 2),
                    fixed(percentile(all, 0.99), 2), ""});
    print_table(rows);
    std::cout << "\nSessions on them, one core\n\n";
    rows = {{"player", "sessions", "steps each", "played a second", "played and marked a second"}};
    rows.push_back(sessions_row(prepared, "expert policy", practice::expert_on, sessions));
    rows.push_back(sessions_row(prepared, "first choice", practice::first_choice_on, sessions));
    rows.push_back(sessions_row(prepared, "guesser", guesser, sessions));
    print_table(rows);
}
