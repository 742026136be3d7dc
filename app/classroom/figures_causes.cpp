// Which causes are taken for which, on items that ask for a cause and on practice boats.
#include <algorithm>
#include <map>
#include <set>

#include "app/classroom/figures_parts.hpp"

namespace hardover::classroom {

namespace {

constexpr std::size_t most_causes = 8;  // in the table

struct Named {
    std::string seat;
    std::vector<std::string> there;  // causes that were right
    std::string chosen;
    bool boat = false;
};

// Every time a cause was asked for and one was named.
std::vector<Named> namings(const ClassResults& results) {
    std::vector<Named> all;
    for (const ItemResult& item : results.items) {
        if (item.origin.disputed || item.right_cause.empty() || item.chosen_cause.empty()) continue;
        all.push_back({item.origin.seat, {item.right_cause}, item.chosen_cause, false});
    }
    for (const BoatResult& boat : results.boats) {
        if (boat.origin.disputed || boat.faults.empty() || boat.named.empty()) continue;
        all.push_back({boat.origin.seat, boat.faults, boat.named, true});
    }
    return all;
}

bool is_there(const Named& named) {
    return std::find(named.there.begin(), named.there.end(), named.chosen) != named.there.end();
}

}  // namespace

std::vector<Confusion> confusions_of(const ClassResults& results, const Knowledge& knowledge) {
    std::map<std::pair<std::string, std::string>, Confusion> pairs;
    std::map<std::pair<std::string, std::string>, std::set<std::string>> who;
    std::map<std::string, int> asked;
    for (const Named& named : namings(results)) {
        for (const std::string& right : named.there) {
            ++asked[right];
            if (is_there(named)) continue;
            Confusion& pair = pairs[{right, named.chosen}];
            ++(named.boat ? pair.boats : pair.answers);
            who[{right, named.chosen}].insert(named.seat);
        }
    }
    std::vector<Confusion> confusions;
    for (auto& [ids, pair] : pairs) {
        pair.right = ids.first;
        pair.chosen = ids.second;
        pair.right_name = cause_name(knowledge, pair.right);
        pair.chosen_name = cause_name(knowledge, pair.chosen);
        pair.learners = static_cast<int>(who[ids].size());
        pair.of = asked[pair.right];
        confusions.push_back(pair);
    }
    std::stable_sort(confusions.begin(), confusions.end(), [](const Confusion& a, const Confusion& b) {
        if (a.times() != b.times()) return a.times() > b.times();
        return a.of < b.of;  // the greater share
    });
    return confusions;
}

CauseTable table_of(const ClassResults& results, const std::vector<Confusion>& confusions,
                    const Knowledge& knowledge) {
    CauseTable table;
    std::map<std::string, std::size_t> places;
    for (const Confusion& pair : confusions) {
        std::set<std::string> fresh;
        for (const std::string& id : {pair.right, pair.chosen}) {
            if (places.count(id) == 0) fresh.insert(id);
        }
        if (places.size() + fresh.size() > most_causes) continue;
        for (const std::string& id : fresh) {
            places.emplace(id, table.causes.size());
            table.causes.push_back(id);
            table.names.push_back(cause_name(knowledge, id));
        }
    }
    table.times.assign(places.size(), std::vector<int>(places.size()));
    for (const Named& named : namings(results)) {
        const auto chosen = places.find(named.chosen);
        if (chosen == places.end()) continue;
        for (const std::string& there : named.there) {
            const bool missed = is_there(named) && there != named.chosen;  // the other fault of two was named
            if (const auto right = places.find(there); right != places.end() && !missed) {
                ++table.times[right->second][chosen->second];
            }
        }
    }
    return table;
}

}  // namespace hardover::classroom
