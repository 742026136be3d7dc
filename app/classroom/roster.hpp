// The roster of a class: seats with a code, a name where wanted, and a group. Results carry the code alone.
// Pure; knows no records.
#pragma once

#include <string>
#include <vector>

#include "app/classroom/results.hpp"
#include "rules/result/result.hpp"

namespace hardover::classroom {

inline constexpr std::size_t longest_code = 16;
inline constexpr std::size_t longest_name = 80;

class Roster {
  public:
    Roster() = default;
    // Of seats that are right already, as the records hold them.
    explicit Roster(std::vector<Seat> seats);

    const std::vector<Seat>& seats() const { return seats_; }  // by code
    // Capital and small letters of a code count as the same. nullptr: no such seat.
    const Seat* find(const std::string& code) const;

    // Error bad_input: no right code, a name or group that is too long, or the code is taken.
    Result<void> add(Seat seat);
    // Errors: not_found (with the nearest code); those of add.
    Result<void> rename(const std::string& code, const std::string& name);
    Result<void> move_to_group(const std::string& code, const std::string& group);
    Result<void> remove(const std::string& code);

  private:
    Result<Seat*> seat_of(const std::string& code);
    std::vector<Seat> seats_;
};

// Adds the seats of a table (RFC 4180): a first row with the names of the columns, `seat` and, where wanted,
// `name` and `group`, in any order. A seat that is there already gets the name and group of the table. All
// or nothing: the error names the place of the first fault as "file:line:column". Gives how many seats the
// table has.
Result<std::size_t> import_roster(Roster& roster, const std::string& text, const std::string& file);

}  // namespace hardover::classroom
