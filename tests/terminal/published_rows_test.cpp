// The troubleshooting rows published elsewhere: each is carried by case files, asks for what it published and
// no more, and its cause is found. The counts are printed (`tests/rows/run`).
#include <fmt/format.h>
#include <yaml-cpp/yaml.h>

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <map>
#include <set>

#include "rules/reasoning/assessment.hpp"
#include "shipped.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

struct PublishedCause {
    std::string text;
    std::set<std::string> is;  // our causes that it may mean on a boat
    std::string not_here;      // why it means none
};

struct PublishedRow {
    std::string id;
    std::vector<std::string> complaints;
    std::vector<PublishedCause> causes;
    std::string not_here;  // why the whole row is out of scope
};

struct RowCase {
    std::string name;
    Case read;
    std::set<std::string> expected;
    std::vector<std::string> first_three;

    bool cause_first() const { return expected.contains(first_three.front()); }
    bool all_among_three() const {
        return std::all_of(expected.begin(), expected.end(), [&](const std::string& cause) {
            return std::count(first_three.begin(), first_three.end(), cause) == 1;
        });
    }
};

std::set<std::string> set_of(const YAML::Node& list) {
    std::set<std::string> found;
    for (const auto& item : list) found.insert(item.as<std::string>());
    return found;
}

std::vector<PublishedRow> published_rows() {
    std::vector<PublishedRow> rows;
    for (const auto& node : YAML::LoadFile(source_path("tests/rows/published_rows.yaml"))) {
        PublishedRow row{node["row"].as<std::string>(), {}, {}, node["not_here"].as<std::string>("")};
        for (const auto& id : node["complaints"]) row.complaints.push_back(id.as<std::string>());
        for (const auto& cause : node["causes"]) {
            row.causes.push_back({cause["cause"].as<std::string>(), set_of(cause["is"]),
                                  cause["not_here"].as<std::string>("")});
        }
        rows.push_back(row);
    }
    return rows;
}

std::vector<std::string> first_three_of(const Facts& facts) {
    const Assessment assessment = assess(shipped(), facts);
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < 3; ++i) ids.push_back(shipped().causes[assessment.ranking[i].cause].id);
    return ids;
}

// The row's id in a file name: row_A01_mounting.yaml carries A01.
std::string row_of(const std::string& name) {
    const std::size_t from = name.find('_') + 1;
    return name.substr(from, name.find_first_of("_.", from) - from);
}

// All cases that carry a published row, by the row's id; each assessed once.
const std::map<std::string, std::vector<RowCase>>& row_cases() {
    static const auto cases = [] {
        std::map<std::string, std::vector<RowCase>> found;
        for (const auto& entry : std::filesystem::directory_iterator(source_path("tests/cases"))) {
            const std::string name = entry.path().filename().string();
            if (name.rfind("row_", 0) != 0) continue;
            CaseRead read = read_case({name, file_text(entry.path().string())}, shipped());
            INFO(name);
            REQUIRE(read.found.has_value());
            const CaseExpectation& expect = read.found->expect;
            std::set<std::string> expected(expect.among_first_three.begin(), expect.among_first_three.end());
            if (!expect.first.empty()) expected.insert(expect.first);
            std::vector<std::string> first_three = first_three_of(read.found->facts);
            found[row_of(name)].push_back({name, *read.found, expected, first_three});
        }
        for (auto& [id, of_row] : found) {
            std::sort(of_row.begin(), of_row.end(),
                      [](const RowCase& a, const RowCase& b) { return a.name < b.name; });
        }
        return found;
    }();
    return cases;
}

const std::vector<RowCase>& cases_of(const PublishedRow& row) {
    static const std::vector<RowCase> no_cases;
    const auto found = row_cases().find(row.id);
    return found == row_cases().end() ? no_cases : found->second;
}

bool expects_one_of(const std::vector<RowCase>& cases, const std::set<std::string>& causes) {
    return std::any_of(cases.begin(), cases.end(), [&](const RowCase& row_case) {
        return std::any_of(causes.begin(), causes.end(),
                           [&](const std::string& cause) { return row_case.expected.contains(cause); });
    });
}

std::set<std::string> causes_of(const PublishedRow& row) {
    std::set<std::string> all;
    for (const PublishedCause& cause : row.causes) all.insert(cause.is.begin(), cause.is.end());
    return all;
}

// Nothing told but the complaint, on the rig and with the history of the row's first case.
std::vector<std::string> first_three_by_complaint(const PublishedRow& row, const std::string& complaint) {
    Facts told = cases_of(row).front().read.facts;
    told.answers.clear();
    told.tried.clear();
    told.complaints = {find(shipped().complaints, complaint)};
    return first_three_of(told);
}

struct Count {
    int rows = 0, first = 0, three = 0;

    void add(bool is_first, bool is_among) {
        ++rows;
        first += is_first ? 1 : 0;
        three += is_among ? 1 : 0;
    }
    double first_share() const { return static_cast<double>(first) / rows; }
    double three_share() const { return static_cast<double>(three) / rows; }
    std::string text(const std::string& what) const {
        return fmt::format(
            "{}: {} in scope, published cause first in {} ({:.0f} %), among the first three in {} "
            "({:.0f} %)\n",
            what, rows, first, 100 * first_share(), three, 100 * three_share());
    }
};

}  // namespace

TEST_CASE("Each published row, and each cause it lists, is carried by a case or says why it is not here",
          "[rows]") {
    std::set<std::string> known;
    for (const PublishedRow& row : published_rows()) {
        INFO("row " << row.id);
        CHECK(known.insert(row.id).second);
        CHECK(cases_of(row).empty() != row.not_here.empty());
        for (const std::string& complaint : row.complaints) {
            INFO(complaint);
            CHECK(find(shipped().complaints, complaint) != none);
        }
        for (const PublishedCause& cause : row.causes) {
            INFO(cause.text);
            CHECK(cause.is.empty() != cause.not_here.empty());
            for (const std::string& id : cause.is) {
                INFO(id);
                CHECK(find(shipped().causes, id) != none);
            }
            if (!cause.is.empty()) CHECK(expects_one_of(cases_of(row), cause.is));
        }
    }
    for (const auto& [id, cases] : row_cases()) {
        INFO("row " << id << " of " << cases.front().name);
        CHECK(known.contains(id));
    }
}

TEST_CASE("No case asks for a cause that its published row does not give", "[rows]") {
    for (const PublishedRow& row : published_rows()) {
        const std::set<std::string> given = causes_of(row);
        for (const RowCase& row_case : cases_of(row)) {
            for (const std::string& cause : row_case.expected) {
                INFO(row_case.name << " asks for " << cause);
                CHECK(given.contains(cause));
            }
        }
    }
}

TEST_CASE("The cause a published row gives comes first in 7 rows of 10 and among the first three in all",
          "[rows]") {
    Count rows, files, told;
    for (const PublishedRow& row : published_rows()) {
        if (!row.not_here.empty()) {
            std::cout << "row " << row.id << " is out of scope: " << row.not_here << "\n";
            continue;
        }
        bool all_first = true;
        bool all_among = true;
        for (const RowCase& row_case : cases_of(row)) {
            files.add(row_case.cause_first(), row_case.all_among_three());
            all_first = all_first && row_case.cause_first();
            all_among = all_among && row_case.all_among_three();
            if (!row_case.all_among_three()) {
                std::cout << row_case.name << ": not among the first three: "
                          << fmt::format("{}\n", fmt::join(row_case.first_three, ", "));
            }
        }
        rows.add(all_first, all_among);
        bool is_first = false;
        bool is_among = false;
        for (const std::string& complaint : row.complaints) {
            const auto first_three = first_three_by_complaint(row, complaint);
            const std::set<std::string> given = causes_of(row);
            is_first = is_first || given.contains(first_three.front());
            is_among = is_among || std::any_of(first_three.begin(), first_three.end(),
                                               [&](const std::string& id) { return given.contains(id); });
        }
        if (!is_among) std::cout << "row " << row.id << ": the complaint alone does not lead to it\n";
        told.add(is_first, is_among);
    }
    std::cout << rows.text("published rows")  // a row counts when each of its case files does
              << files.text("their case files") << told.text("by the complaint alone");
    CHECK(rows.first_share() >= 0.70);
    CHECK(rows.three == rows.rows);
    CHECK(files.three == files.rows);
}
