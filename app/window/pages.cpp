// The bench's and the look-up's words.
#include "app/window/pages.hpp"

#include <array>
#include <ctime>

#include "app/jobs/find_jobs.hpp"
#include "app/jobs/page.hpp"
#include "app/jobs/search.hpp"
#include "app/jobs/word_match.hpp"

namespace hardover::window {

namespace {

std::string complaints_of(const Knowledge& knowledge, const JobRow& row) {
    const std::string names = complaint_names(knowledge, row.summary.complaint);
    return names.empty() ? "No complaint noted yet" : names;
}

}  // namespace

std::string shown_time(const std::string& utc) {
    static constexpr std::array<const char*, 12> months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                        "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    if (utc.size() != 20 || utc[4] != '-' || utc[10] != 'T') return utc;
    const auto month = static_cast<std::size_t>((utc[5] - '0') * 10 + utc[6] - '1');
    if (month >= months.size()) return utc;
    const std::string day = utc[8] == '0' ? utc.substr(9, 1) : utc.substr(8, 2);
    return day + " " + months[month] + " " + utc.substr(0, 4) + ", " + utc.substr(11, 5) + " UTC";
}

std::string time_ago(const std::string& utc, const std::string& now) {
    const auto seconds_of = [](const std::string& text) -> std::time_t {
        std::tm time{};
        return strptime(text.c_str(), "%Y-%m-%dT%H:%M:%SZ", &time) == nullptr ? 0 : timegm(&time);
    };
    const std::time_t then = seconds_of(utc), here = seconds_of(now);
    if (then == 0 || here == 0) return "";
    const long minutes = static_cast<long>(here - then) / 60;
    if (minutes < 2) return "just now";
    if (minutes < 60) return std::to_string(minutes) + " min ago";
    if (minutes < 24 * 60) return std::to_string(minutes / 60) + " h ago";
    const long days = minutes / (24 * 60);
    return days == 1 ? "yesterday" : std::to_string(days) + " days ago";
}

BenchPage make_bench_page(const Knowledge& knowledge, const Result<std::vector<JobRow>>& rows,
                          const std::string& records_path, const std::string& now) {
    BenchPage page;
    page.records = records_path;
    page.knowledge = std::to_string(knowledge.complaints.size()) + " complaints, " +
                     std::to_string(knowledge.findings.size()) + " findings, " +
                     std::to_string(knowledge.causes.size()) + " causes";
    if (!rows) {
        page.trouble = rows.error().text();
        return page;
    }
    for (const JobRow& row : rows.value()) {
        BenchRow shown;
        shown.number = row.number;
        shown.title = "Job " + std::to_string(row.number);
        shown.boat = row.summary.boat.empty() ? "Boat without a name" : row.summary.boat;
        shown.complaint = row.sound ? complaints_of(knowledge, row) : damaged_line;
        shown.changed = shown_time(row.changed_at);
        shown.changed_at = row.changed_at;
        shown.ago = time_ago(row.changed_at, now);
        (row.summary.state == "handed back" ? page.handed_back : page.in_hand).push_back(shown);
    }
    return page;
}

std::vector<LookUpRow> make_look_up(const Knowledge& knowledge, const Job& job) {
    std::vector<LookUpRow> rows;
    for (std::size_t i = 0; i < knowledge.findings.size(); ++i) {
        const Finding& finding = knowledge.findings[i];
        LookUpRow row{finding.id, finding.name, finding.ask, ""};
        const auto given = job.facts.answers.find(static_cast<Index>(i));
        if (given != job.facts.answers.end()) {
            row.answer = answer_text(knowledge, static_cast<Index>(i), given->second, job.shop.units);
        }
        rows.push_back(row);
    }
    return rows;
}

bool matches(const LookUpRow& row, std::string_view filter) {
    return has_all_words(row.name + " " + row.ask + " " + row.answer, filter);
}

}  // namespace hardover::window
