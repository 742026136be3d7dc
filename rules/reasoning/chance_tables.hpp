// The chances of every question's readings under every hypothesis. Pure storage.
#pragma once

#include <cstddef>
#include <initializer_list>
#include <span>
#include <vector>

namespace hardover {

// One table a question: [reading * hypotheses + hypothesis]. All lie in one piece of memory, and equal ones
// are kept once: to take and give back some hundred for every step was a fortieth of its instructions.
class ChanceTables {
  public:
    ChanceTables() = default;
    ChanceTables(std::initializer_list<std::vector<double>> tables) {
        for (const std::vector<double>& table : tables) push_back(table);
    }

    std::size_t size() const { return tables_.size(); }
    // Valid until the next question is added.
    std::span<const double> operator[](std::size_t question) const {
        return {numbers_.data() + tables_[question].first, tables_[question].count};
    }

    void reserve(std::size_t questions, std::size_t numbers) {
        tables_.reserve(questions);
        numbers_.reserve(numbers);
    }

    // The next question, with a table to be filled; valid until the next one is added.
    std::span<double> add(std::size_t count) {
        tables_.push_back({numbers_.size(), count});
        numbers_.resize(numbers_.size() + count);
        return {numbers_.data() + tables_.back().first, count};
    }
    // The next question has the table of an earlier one.
    void add_same_as(std::size_t question) { tables_.push_back(tables_[question]); }
    void push_back(const std::vector<double>& table) {
        tables_.push_back({numbers_.size(), table.size()});
        numbers_.insert(numbers_.end(), table.begin(), table.end());
    }

  private:
    struct Table {
        std::size_t first = 0;
        std::size_t count = 0;
    };

    std::vector<double> numbers_;
    std::vector<Table> tables_;  // by question
};

}  // namespace hardover
