// What the tests of the job sheet share: invented jobs told event by event, and what other programs read in a
// PDF.
#pragma once

#include <array>
#include <cstdio>
#include <filesystem>
#include <string>
#include <vector>

#include "app/jobs/job.hpp"
#include "app/jobs/page.hpp"
#include "app/reports/job_sheet.hpp"
#include "app/reports/job_sheet_pdf.hpp"
#include "reading/reading_support.hpp"
#include "shipped.hpp"
#include "support.hpp"

namespace hardover_tests {

// Job 12 as its events leave it, one a minute from noon.
inline hardover::Job job_of(const std::vector<hardover::Event>& events) {
    std::vector<hardover::StoredEvent> stored;
    for (const hardover::Event& event : events) {
        hardover::StoredEvent one = hardover::to_stored(event);
        one.sequence = static_cast<int>(stored.size()) + 1;
        std::array<char, 32> at{};
        std::snprintf(at.data(), at.size(), "2026-11-25T%02d:%02d:00Z", 12 + one.sequence / 60,
                      one.sequence % 60);
        one.at = at.data();
        stored.push_back(one);
    }
    return hardover::replay(shipped(), 12, stored);
}

inline hardover::JobSheet sheet_of(const hardover::Job& job,
                                   const std::string& shop = "Reed Creek Boat Yard") {
    const hardover::Knowledge& knowledge = shipped();
    return hardover::make_job_sheet(knowledge, job, hardover::make_job_page(knowledge, job),
                                    {shop, [](const std::string& at) { return at.substr(0, 10); }});
}

// An invented comeback with air in the oil: proved by the sponge test, bled, handed back. The yard, the boat
// and its owner are invented.
inline std::vector<hardover::Event> air_events() {
    using namespace hardover;
    return {Opened{"Żabka Łódź", "It wanders, and the wheel comes back at me — like a sponge.",
                   shipped().fingerprint},
            RigSet{"helm", "manual_pump"},
            RigSet{"rams", "2"},
            RigSet{"ram_bore", "1 1/2 in"},
            HistorySet{"just_fitted"},
            ComplaintsSet{{"wander"}},
            Answered{"wheel_feel", "springy"},
            Answered{"reservoir_oil", "foaming"},
            Answered{"bracket_moves", "still"},
            Answered{"wheel_sponge", "2 3/4 in"},
            Tried{"bleed_lock_to_lock", "cured"},
            Noted{"Topped up with 6 floz of the oil the maker names."},
            HandedBack{"air_in_oil", true, "Bled twice, the second time warm."}};
}

// The pieces a program prints; "" when it fails.
inline std::string printed(const std::string& command) {
    std::string text;
    FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    REQUIRE(pipe != nullptr);
    std::array<char, 4096> buffer{};
    while (const std::size_t got = fread(buffer.data(), 1, buffer.size(), pipe))
        text.append(buffer.data(), got);
    REQUIRE(pclose(pipe) == 0);
    return text;
}

inline bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// A folder for PDFs that goes away.
class PdfFolder {
  public:
    PdfFolder() {
        std::string pattern = (std::filesystem::temp_directory_path() / "hardover-pdf-XXXXXX").string();
        REQUIRE(mkdtemp(pattern.data()) != nullptr);
        path_ = pattern;
    }
    ~PdfFolder() {
        std::error_code failed;
        std::filesystem::remove_all(path_, failed);
    }
    PdfFolder(const PdfFolder&) = delete;
    PdfFolder& operator=(const PdfFolder&) = delete;

    std::string file(const std::string& name) const { return path_ + "/" + name; }
    std::size_t files() const {
        std::size_t count = 0;
        for (const auto& entry : std::filesystem::directory_iterator(path_)) count += entry.exists() ? 1 : 0;
        return count;
    }

  private:
    std::string path_;
};

inline hardover::PdfWish bundled_font(hardover::Paper paper = hardover::Paper::letter) {
    return {paper, source_path("assets/fonts")};
}

}  // namespace hardover_tests
