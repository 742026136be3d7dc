// Lists of numbers in one piece of memory. Pure storage.
#pragma once

#include <cstddef>
#include <initializer_list>
#include <span>
#include <utility>
#include <vector>

namespace hardover {

// Rows of any lengths, one after the other; rows that are equal can be kept once. A vector a row, some
// hundred of them taken and given back for every step, was a fiftieth of its instructions.
template <typename Number>
class Rows {
  public:
    Rows() = default;
    Rows(std::initializer_list<std::vector<Number>> rows) {
        for (const std::vector<Number>& row : rows) push_back(row);
    }

    std::size_t size() const { return rows_.size(); }
    bool empty() const { return rows_.empty(); }
    // Valid until the next row is added.
    std::span<const Number> operator[](std::size_t row) const {
        return {numbers_.data() + rows_[row].first, rows_[row].count};
    }

    void reserve(std::size_t rows, std::size_t numbers) {
        rows_.reserve(rows);
        numbers_.reserve(numbers);
    }

    // The next row; so far it has nothing in it.
    void add() { rows_.push_back({numbers_.size(), 0}); }
    // So many of a number at the end of the last row. What is returned is the last row, valid until the next
    // number.
    std::span<Number> append(std::size_t count, Number number) {
        numbers_.insert(numbers_.end(), count, number);
        rows_.back().count += count;
        return {numbers_.data() + rows_.back().first, rows_.back().count};
    }
    // The next row is as an earlier one.
    void add_same_as(std::size_t row) { rows_.push_back(rows_[row]); }
    void push_back(const std::vector<Number>& row) {
        rows_.push_back({numbers_.size(), row.size()});
        numbers_.insert(numbers_.end(), row.begin(), row.end());
    }

    // Of every pair (row, number) the number in its row, in the order given.
    static Rows of_pairs(std::size_t rows, const std::vector<std::pair<int, Number>>& pairs) {
        Rows sorted;
        sorted.rows_.resize(rows);
        for (const auto& pair : pairs) ++sorted.rows_[static_cast<std::size_t>(pair.first)].count;
        std::size_t first = 0;
        for (Row& row : sorted.rows_) {
            row.first = first;
            first += std::exchange(row.count, 0);
        }
        sorted.numbers_.resize(first);
        for (const auto& [at, number] : pairs) {
            Row& row = sorted.rows_[static_cast<std::size_t>(at)];
            sorted.numbers_[row.first + row.count++] = number;
        }
        return sorted;
    }

  private:
    struct Row {
        std::size_t first = 0;
        std::size_t count = 0;
    };

    std::vector<Number> numbers_;
    std::vector<Row> rows_;
};

}  // namespace hardover
