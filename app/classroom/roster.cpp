#include "app/classroom/roster.hpp"

#include <algorithm>
#include <cctype>
#include <optional>

#include "app/classroom/csv.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::classroom {

namespace {

std::string capitals(std::string text) {
    for (char& letter : text) letter = static_cast<char>(std::toupper(static_cast<unsigned char>(letter)));
    return text;
}

bool by_code(const Seat& one, const Seat& other) {
    return capitals(one.code) < capitals(other.code);
}

std::string without_blanks(const std::string& text) {
    const std::size_t first = text.find_first_not_of(" \t"), last = text.find_last_not_of(" \t");
    return first == std::string::npos ? "" : text.substr(first, last - first + 1);
}

bool has_control(const std::string& text) {
    return std::any_of(text.begin(), text.end(),
                       [](char letter) { return static_cast<unsigned char>(letter) < 0x20; });
}

Result<void> look_over(const Seat& seat) {
    const bool plain = std::all_of(seat.code.begin(), seat.code.end(), [](char letter) {
        return std::isalnum(static_cast<unsigned char>(letter)) != 0 || letter == '-' || letter == '_';
    });
    if (seat.code.empty() || seat.code.size() > longest_code || !plain) {
        return Error{Error::Kind::bad_input, "'" + seat.code + "' is no code of a seat", "",
                     "up to 16 letters and figures, such as A07"};
    }
    for (const std::string* text : {&seat.name, &seat.group}) {
        if (text->size() <= longest_name && !has_control(*text)) continue;
        return Error{Error::Kind::bad_input, "the name or group of seat " + seat.code + " is too long or odd",
                     "", "80 letters on one line at most"};
    }
    return {};
}

struct Columns {
    std::optional<std::size_t> seat, name, group;
};

Result<Columns> columns_of(const std::vector<CsvField>& head, const std::string& file) {
    Columns columns;
    for (std::size_t i = 0; i < head.size(); ++i) {
        std::optional<std::size_t>* column = nullptr;
        const std::string word = capitals(without_blanks(head[i].text));
        if (word == "SEAT") column = &columns.seat;
        if (word == "NAME") column = &columns.name;
        if (word == "GROUP") column = &columns.group;
        if (column == nullptr || *column) {
            return Error{Error::Kind::bad_input,
                         column == nullptr ? "there is no column '" + head[i].text + "'"
                                           : "the column '" + head[i].text + "' stands there twice",
                         place_in(file, head[i].line, head[i].column),
                         "the first row names the columns: seat, name, group"};
        }
        *column = i;
    }
    if (!columns.seat) {
        return Error{Error::Kind::bad_input, "there is no column 'seat'",
                     place_in(file, head.front().line, head.front().column),
                     "the first row names the columns: seat, name, group"};
    }
    return columns;
}

}  // namespace

Roster::Roster(std::vector<Seat> seats) : seats_(std::move(seats)) {
    std::sort(seats_.begin(), seats_.end(), by_code);
}

const Seat* Roster::find(const std::string& code) const {
    const auto found = std::find_if(seats_.begin(), seats_.end(),
                                    [&](const Seat& seat) { return capitals(seat.code) == capitals(code); });
    return found == seats_.end() ? nullptr : &*found;
}

Result<Seat*> Roster::seat_of(const std::string& code) {
    std::vector<std::string> codes;
    for (Seat& seat : seats_) {
        if (capitals(seat.code) == capitals(code)) return &seat;
        codes.push_back(seat.code);
    }
    return Error{Error::Kind::not_found, "there is no seat '" + code + "'", "", did_you_mean(code, codes)};
}

Result<void> Roster::add(Seat seat) {
    seat.name = without_blanks(seat.name);
    seat.group = without_blanks(seat.group);
    if (auto right = look_over(seat); !right) return right;
    if (find(seat.code) != nullptr) {
        return Error{Error::Kind::bad_input, "there is a seat '" + seat.code + "' already", "",
                     "take another code"};
    }
    seats_.insert(std::upper_bound(seats_.begin(), seats_.end(), seat, by_code), seat);
    return {};
}

Result<void> Roster::rename(const std::string& code, const std::string& name) {
    const auto seat = seat_of(code);
    if (!seat) return seat.error();
    Seat changed = *seat.value();
    changed.name = without_blanks(name);
    if (auto right = look_over(changed); !right) return right;
    *seat.value() = changed;
    return {};
}

Result<void> Roster::move_to_group(const std::string& code, const std::string& group) {
    const auto seat = seat_of(code);
    if (!seat) return seat.error();
    Seat changed = *seat.value();
    changed.group = without_blanks(group);
    if (auto right = look_over(changed); !right) return right;
    *seat.value() = changed;
    return {};
}

Result<void> Roster::remove(const std::string& code) {
    const auto seat = seat_of(code);
    if (!seat) return seat.error();
    seats_.erase(seats_.begin() + (seat.value() - seats_.data()));
    return {};
}

Result<std::size_t> import_roster(Roster& roster, const std::string& text, const std::string& file) {
    const auto rows = read_csv(text, file);
    if (!rows) return rows.error();
    if (rows.value().empty()) {
        return Error{Error::Kind::bad_input, "the table is empty", file, "a first row with: seat,name,group"};
    }
    const auto columns = columns_of(rows.value().front(), file);
    if (!columns) return columns.error();
    Roster added = roster;
    Roster of_table;
    for (std::size_t r = 1; r < rows.value().size(); ++r) {
        const std::vector<CsvField>& row = rows.value()[r];
        const auto field = [&](const std::optional<std::size_t>& column) {
            return column && *column < row.size() ? without_blanks(row[*column].text) : std::string();
        };
        const Seat seat{field(columns.value().seat), field(columns.value().name),
                        field(columns.value().group)};
        const CsvField& place = *columns.value().seat < row.size() ? row[*columns.value().seat] : row.front();
        if (row.size() > rows.value().front().size()) {
            return Error{Error::Kind::bad_input, "this row has more fields than the first",
                         place_in(file, row.back().line, row.back().column),
                         "put a field with commas in quotes"};
        }
        auto taken = of_table.add(seat);
        if (taken && added.find(seat.code) != nullptr) taken = added.remove(seat.code);
        if (taken) taken = added.add(seat);
        if (taken) continue;
        Error fault = taken.error();
        fault.where = place_in(file, place.line, place.column);
        return fault;
    }
    roster = std::move(added);
    return of_table.seats().size();
}

}  // namespace hardover::classroom
