#include "app/classroom/results_csv.hpp"

#include <fmt/format.h>

#include <functional>
#include <map>

#include "app/classroom/set.hpp"

namespace hardover::classroom {

namespace {

// As it stands in the file.
struct Cell {
    std::string text;
};

std::string quoted_cell(const std::string& text) {
    if (text.find_first_of(",\"\r\n") == std::string::npos) return text;
    std::string quoted = "\"";
    for (const char letter : text) quoted += letter == '"' ? std::string("\"\"") : std::string(1, letter);
    return quoted + "\"";
}

Cell words(const std::string& text) {
    const bool formula = !text.empty() && std::string("=+-@\t\r").find(text.front()) != std::string::npos;
    return {quoted_cell((formula ? "'" : "") + text)};
}
Cell number(double value) {
    return {fmt::format("{}", value)};  // shortest that reads back the same, with a decimal point
}
Cell number(int value) {
    return {std::to_string(value)};
}
Cell number(std::uint64_t value) {
    return {std::to_string(value)};
}
Cell number(const std::optional<double>& value) {
    return value ? number(*value) : Cell{};
}

std::string joined(const std::vector<std::string>& ids) {
    std::string all;
    for (const std::string& id : ids) all += (all.empty() ? "" : " ") + id;
    return all;
}

// A column and its cell of one row.
template <typename Row>
struct Column {
    const char* name;
    std::function<Cell(const Row&)> cell;
};

template <typename Row>
std::string table(const std::vector<Column<Row>>& columns, const std::vector<Row>& rows) {
    std::string text;
    for (std::size_t c = 0; c < columns.size(); ++c)
        text += (c > 0 ? "," : "") + std::string(columns[c].name);
    text += "\r\n";
    for (const Row& row : rows) {
        for (std::size_t c = 0; c < columns.size(); ++c)
            text += (c > 0 ? "," : "") + columns[c].cell(row).text;
        text += "\r\n";
    }
    return text;
}

using Names = std::map<std::string, std::string>;  // by seat

// What every result says of itself; `name` only where names are wanted.
template <typename Row>
std::vector<Column<Row>> origin_columns(const Names* names) {
    std::vector<Column<Row>> columns = {{"set_id", [](const Row& row) { return words(row.origin.set); }},
                                        {"seat", [](const Row& row) { return words(row.origin.seat); }}};
    if (names != nullptr) {
        columns.push_back({"name", [names](const Row& row) {
                               const auto found = names->find(row.origin.seat);
                               return words(found == names->end() ? "" : found->second);
                           }});
    }
    columns.push_back({"attempt_id", [](const Row& row) { return words(row.origin.attempt); }});
    columns.push_back({"seq", [](const Row& row) { return number(row.origin.sequence); }});
    columns.push_back({"day", [](const Row& row) { return words(day_text(row.origin.day)); }});
    columns.push_back({"flags", [](const Row& row) { return words(row.origin.disputed ? "disputed" : ""); }});
    return columns;
}

template <typename Row>
void append(std::vector<Column<Row>>& columns, std::vector<Column<Row>> more) {
    columns.insert(columns.end(), more.begin(), more.end());
}

std::string answers(const ClassResults& results, const Names* names) {
    using Row = ItemResult;
    auto columns = origin_columns<Row>(names);
    append<Row>(columns,
                {{"item_id", [](const Row& row) { return words(row.review.item); }},
                 {"item_version", [](const Row& row) { return number(row.review.seed); }},
                 {"kind", [](const Row& row) { return words(row.review.form); }},
                 {"seconds", [](const Row& row) { return row.seconds > 0 ? number(row.seconds) : Cell{}; }},
                 {"response", [](const Row& row) { return words(row.review.answer); }},
                 {"score", [](const Row& row) { return number(row.review.mark); }},
                 {"max_score", [](const Row&) { return number(1); }},
                 {"confidence", [](const Row& row) { return number(row.review.sure); }},
                 {"right_cause", [](const Row& row) { return words(row.right_cause); }},
                 {"chosen_cause", [](const Row& row) { return words(row.chosen_cause); }},
                 {"knowledge", [](const Row& row) { return words(row.review.knowledge); }}});
    return table(columns, results.items);
}

std::string boats(const ClassResults& results, const Names* names) {
    using Row = BoatResult;
    using study::practice::guidance_id;
    auto columns = origin_columns<Row>(names);
    append<Row>(columns,
                {{"boat_seed", [](const Row& row) { return number(row.begun.seed); }},
                 {"level", [](const Row& row) { return number(row.begun.level); }},
                 {"help_shown", [](const Row& row) { return words(guidance_id(row.begun.guidance)); }},
                 {"cured", [](const Row& row) { return number(row.ended.cured ? 1 : 0); }},
                 {"minutes", [](const Row& row) { return number(row.ended.minutes); }},
                 {"minutes_expected", [](const Row& row) { return number(row.ended.expected); }},
                 {"minutes_expert", [](const Row& row) { return number(row.ended.expert); }},
                 {"minutes_by_choices", [](const Row& row) { return number(row.ended.avoidable); }},
                 {"minutes_by_luck", [](const Row& row) { return number(row.ended.luck); }},
                 {"hints",
                  [](const Row& row) {
                      return number(row.ended.hints[0] + row.ended.hints[1] + row.ended.hints[2]);
                  }},
                 {"remedies_without_proof", [](const Row& row) { return number(row.ended.unproved); }},
                 {"cautions_skipped", [](const Row& row) { return number(row.ended.cautions_skipped); }},
                 {"faults", [](const Row& row) { return words(joined(row.faults)); }},
                 {"named", [](const Row& row) { return words(row.named); }},
                 {"knowledge", [](const Row& row) { return words(row.begun.knowledge); }}});
    return table(columns, results.boats);
}

Cell of_estimate(const std::optional<study::Estimate>& estimate, double study::Estimate::*part) {
    return estimate && estimate->error > 0 ? number((*estimate).*part) : Cell{};
}

Cell of_range(const std::optional<study::Interval>& range, double study::Interval::*end) {
    return range ? number((*range).*end) : Cell{};
}

std::string learners(const ClassFigures& figures, bool with_names) {
    using Row = LearnerFigures;
    std::vector<Column<Row>> columns = {{"seat", [](const Row& row) { return words(row.seat); }}};
    if (with_names) columns.push_back({"name", [](const Row& row) { return words(row.name); }});
    append<Row>(
        columns,
        {{"group", [](const Row& row) { return words(row.group); }},
         {"answers", [](const Row& row) { return number(row.answers); }},
         {"items", [](const Row& row) { return number(row.items); }},
         {"right", [](const Row& row) { return number(row.right); }},
         {"right_low_95", [](const Row& row) { return of_range(row.right_95, &study::Interval::low); }},
         {"right_high_95", [](const Row& row) { return of_range(row.right_95, &study::Interval::high); }},
         {"ability_logits", [](const Row& row) { return of_estimate(row.ability, &study::Estimate::value); }},
         {"ability_error", [](const Row& row) { return of_estimate(row.ability, &study::Estimate::error); }},
         {"sureness_answers", [](const Row& row) { return number(row.sureness.answers); }},
         {"brier",
          [](const Row& row) { return row.sureness.answers > 0 ? number(row.sureness.brier) : Cell{}; }},
         {"surer_than_right",
          [](const Row& row) { return row.sureness.answers > 0 ? number(row.sureness.bias()) : Cell{}; }},
         {"boats", [](const Row& row) { return number(row.boats.boats); }},
         {"boats_cured", [](const Row& row) { return number(row.boats.cured); }},
         {"minutes_over_best", [](const Row& row) { return number(row.boats.over_best()); }},
         {"minutes_by_choices", [](const Row& row) { return number(row.boats.avoidable); }},
         {"minutes_by_luck", [](const Row& row) { return number(row.boats.luck); }},
         {"cautions_skipped", [](const Row& row) { return number(row.boats.cautions_skipped); }}});
    return table(columns, figures.by_learner);
}

std::string items(const ClassFigures& figures) {
    using Row = ItemFigures;
    const std::vector<Column<Row>> columns = {
        {"item_id", [](const Row& row) { return words(row.item); }},
        {"item_name", [](const Row& row) { return words(row.name); }},
        {"kind", [](const Row& row) { return words(row.form); }},
        {"learners", [](const Row& row) { return number(row.learners); }},
        {"share_right", [](const Row& row) { return number(row.share_right); }},
        {"share_low_95", [](const Row& row) { return of_range(row.share_95, &study::Interval::low); }},
        {"share_high_95", [](const Row& row) { return of_range(row.share_95, &study::Interval::high); }},
        {"difficulty_logits",
         [](const Row& row) { return of_estimate(row.difficulty, &study::Estimate::value); }},
        {"difficulty_error",
         [](const Row& row) { return of_estimate(row.difficulty, &study::Estimate::error); }},
        {"discrimination", [](const Row& row) { return number(row.discrimination); }},
        {"with_rest", [](const Row& row) { return number(row.with_rest); }},
        {"with_rest_low_95",
         [](const Row& row) { return of_range(row.with_rest_95, &study::Interval::low); }},
        {"with_rest_high_95",
         [](const Row& row) { return of_range(row.with_rest_95, &study::Interval::high); }},
        {"kr20_without", [](const Row& row) { return number(row.reliability_without); }},
        {"verdict", [](const Row& row) { return words(verdict_id(row.verdict)); }},
        {"why", [](const Row& row) { return words(row.why); }}};
    return table(columns, figures.by_item);
}

}  // namespace

std::vector<CsvFile> results_csv(const ClassResults& results, const ClassFigures& figures, bool with_names) {
    Names names;
    for (const Seat& seat : results.seats) names[seat.code] = seat.name;
    const Names* wanted = with_names ? &names : nullptr;
    return {{"answers_v1.csv", answers(results, wanted)},
            {"boats_v1.csv", boats(results, wanted)},
            {"learners_v1.csv", learners(figures, with_names)},
            {"items_v1.csv", items(figures)}};
}

}  // namespace hardover::classroom
