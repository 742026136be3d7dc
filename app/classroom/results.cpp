#include "app/classroom/results.hpp"

#include <set>

namespace hardover::classroom {

int learners_with_results(const ClassResults& results) {
    std::set<std::string> seats;
    for (const ItemResult& item : results.items) {
        seats.insert(item.origin.seat);
    }
    for (const BoatResult& boat : results.boats) {
        seats.insert(boat.origin.seat);
    }
    return static_cast<int>(seats.size());
}

}  // namespace hardover::classroom
