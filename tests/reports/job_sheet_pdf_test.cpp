// The printed job sheet as other programs read it: pages, paper, words, fonts, bytes, and files that cannot
// be written.
#include <sys/resource.h>

#include <csignal>
#include <fstream>

#include "app/records/whole_file.hpp"
#include "app/reports/sheet_composer.hpp"
#include "app/reports/sheet_pages.hpp"
#include "reports/sheet_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

std::string pdf_info(const std::string& file) {
    return printed("pdfinfo '" + file + "'");
}

std::string pdf_text(const std::string& file) {
    return printed("pdftotext -layout '" + file + "' -");
}

int pages_of(const std::string& file) {
    const std::string info = pdf_info(file);
    return std::stoi(info.substr(info.find("Pages:") + 6));
}

// Words in order with single blanks, so that a text is found however its lines are broken.
std::string flat_text(const std::string& file) {
    std::istringstream words(printed("pdftotext '" + file + "' -"));
    std::string all;
    for (std::string word; words >> word;) all += word + " ";
    return all;
}

}  // namespace

TEST_CASE("The sheet has at most two pages of the paper asked for") {
    const PdfFolder folder;
    const JobSheet sheet = sheet_of(job_of(air_events()));
    const auto letter = write_pdf(sheet, folder.file("letter.pdf"), bundled_font());
    REQUIRE_OK(letter);
    CHECK(letter.value().remark.empty());
    CHECK(pages_of(folder.file("letter.pdf")) == letter.value().pages);
    CHECK(letter.value().pages <= 2);
    CHECK(holds(pdf_info(folder.file("letter.pdf")), "612 x 792 pts (letter)"));
    REQUIRE_OK(write_pdf(sheet, folder.file("a4.pdf"), bundled_font(Paper::a4)));
    CHECK(holds(pdf_info(folder.file("a4.pdf")), "(A4)"));
    CHECK(pages_of(folder.file("a4.pdf")) <= 2);
}

TEST_CASE("The words on the sheet can be read back, figures with their spread and names in any letters") {
    const PdfFolder folder;
    REQUIRE_OK(write_pdf(sheet_of(job_of(air_events())), folder.file("sheet.pdf"), bundled_font()));
    const std::string text = flat_text(folder.file("sheet.pdf"));
    INFO(text);
    CHECK(holds(text, "Reed Creek Boat Yard"));
    CHECK(holds(text, "Job sheet 12"));
    CHECK(holds(text, "Żabka Łódź"));
    CHECK(holds(text, "“It wanders, and the wheel comes back at me — like a sponge.”"));
    CHECK(holds(text, "Air left in the oil"));
    CHECK(holds(text, "Seen and proved"));
    CHECK(holds(text, "2 3/4 in ± 1/4 in"));
    CHECK(holds(text, "Bleed lock to lock: cured (2026-11-25)."));
    CHECK(holds(text, "Bled twice, the second time warm."));
    CHECK(holds(text, "Topped up with 6 floz"));
    CHECK(holds(text, "From above, drive straight ahead"));
    CHECK(holds(text, "Technician, date"));
    const std::string laid = pdf_text(folder.file("sheet.pdf"));
    CHECK(holds(laid, "Sponge at the rim"));
}

TEST_CASE("Two writings of a sheet are equal to the last byte, and the fonts are in the file") {
    const PdfFolder folder;
    const Job job = job_of(air_events());
    REQUIRE_OK(write_pdf(sheet_of(job), folder.file("one.pdf"), bundled_font()));
    REQUIRE_OK(write_pdf(sheet_of(job), folder.file("two.pdf"), bundled_font()));
    CHECK(file_text(folder.file("one.pdf")) == file_text(folder.file("two.pdf")));
    CHECK(folder.files() == 2);
    std::istringstream fonts(printed("pdffonts '" + folder.file("one.pdf") + "'"));
    std::string line;
    int fonts_seen = 0;
    while (std::getline(fonts, line)) {
        if (!holds(line, "Inter")) continue;
        ++fonts_seen;
        CHECK(holds(line, "yes yes yes"));  // embedded, a subset, with a table back to letters
    }
    CHECK(fonts_seen >= 2);
    CHECK(holds(pdf_info(folder.file("one.pdf")), "CreationDate:    Wed Nov 25 12:13:00 2026"));
}

TEST_CASE("A boat that is not to be run says so first, boxed, and at the signature") {
    const PdfFolder folder;
    auto events = air_events();
    events.resize(6);
    events.push_back(Answered{"rams_fight", "frees"});
    const JobSheet sheet = sheet_of(job_of(events));
    REQUIRE_FALSE(sheet.stops.empty());
    REQUIRE_OK(write_pdf(sheet, folder.file("stop.pdf"), bundled_font()));
    const std::string text = flat_text(folder.file("stop.pdf"));
    INFO(text);
    CHECK(text.find("STOP") < text.find("Complaint"));
    CHECK(holds(text, "The boat is not to be run until"));
    CHECK(holds(text, "I know the boat is not to be run"));
}

TEST_CASE("A very long job still fits on two pages and says how much was left out") {
    const PdfFolder folder;
    const Knowledge& knowledge = shipped();
    auto events = air_events();
    events.pop_back();
    std::string long_words;
    for (int i = 0; i < 400; ++i) long_words += "It groans. ";
    std::get<Opened>(events.front()).words = long_words;
    for (std::size_t f = 0; f < 60; ++f) {
        const Finding& finding = knowledge.findings[f];
        if (!finding.readings.empty() && !finding.unit) {
            events.push_back(Answered{finding.id, finding.readings.front().id});
        }
    }
    for (int i = 0; i < 60; ++i) events.push_back(Noted{"Note " + std::to_string(i) + ". " + long_words});
    for (std::size_t r = 0; r < 20; ++r) events.push_back(Tried{knowledge.remedies[r].id, "not_cured"});
    const JobSheet sheet = sheet_of(job_of(events));
    const auto made = write_pdf(sheet, folder.file("long.pdf"), bundled_font());
    REQUIRE_OK(made);
    CHECK(pages_of(folder.file("long.pdf")) <= 2);
    const std::string text = flat_text(folder.file("long.pdf"));
    CHECK(holds(text, "more in the record"));
    for (const SheetNote& stop : sheet.stops) CHECK(holds(text, stop.name));
    for (const SheetNote& caution : sheet.cautions) CHECK(holds(text, caution.name));
    for (const SheetNote& deferral : sheet.deferrals) CHECK(holds(text, deferral.name));
}

TEST_CASE("Odd letters in what people wrote do no harm") {
    const PdfFolder folder;
    auto events = air_events();
    std::get<Opened>(events.front()) = {"A <b>& \xff\x01 boat", "first line\nsecond\tline </span>", ""};
    REQUIRE_OK(write_pdf(sheet_of(job_of(events), "Ståhl & Søn"), folder.file("odd.pdf"), bundled_font()));
    const std::string text = flat_text(folder.file("odd.pdf"));
    INFO(text);
    CHECK(holds(text, "Ståhl & Søn"));
    CHECK(holds(text, "A <b>& "));
    CHECK(holds(text, "first line second line </span>"));
    CHECK(holds(pdf_info(folder.file("odd.pdf")), "Job sheet 12, A <b>& "));
}

TEST_CASE("A word as long as a page is broken, not lost") {
    const PdfFolder folder;
    auto events = air_events();
    std::get<Opened>(events.front()).words = std::string(300, 'w');
    REQUIRE_OK(write_pdf(sheet_of(job_of(events)), folder.file("word.pdf"), bundled_font()));
    std::string text = printed("pdftotext '" + folder.file("word.pdf") + "' -");
    CHECK(std::count(text.begin(), text.end(), 'w') >= 300);
}

TEST_CASE("Without the bundled typeface the sheet is still written and says so") {
    const PdfFolder folder;
    const auto made = write_pdf(sheet_of(job_of(air_events())), folder.file("other.pdf"),
                                {Paper::letter, folder.file("no-fonts")});
    if (!made) {  // a computer without any typeface of its own
        CHECK(holds(made.error().text(), "no typeface"));
        return;
    }
    CHECK(holds(made.value().remark, "typeface is missing"));
    CHECK(pages_of(folder.file("other.pdf")) <= 2);
}

TEST_CASE("A file that cannot be written is one clear error and leaves nothing behind") {
    const PdfFolder folder;
    const JobSheet sheet = sheet_of(job_of(air_events()));
    const auto no_folder = write_pdf(sheet, folder.file("nowhere/sheet.pdf"), bundled_font());
    REQUIRE_FALSE(no_folder.ok());
    CHECK(holds(no_folder.error().text(), "nowhere/sheet.pdf: the file cannot be written"));
    const auto a_folder = write_pdf(sheet, folder.file(""), bundled_font());
    REQUIRE_FALSE(a_folder.ok());
    CHECK_FALSE(write_whole_file("", "x").ok());
    CHECK(folder.files() == 0);
}

TEST_CASE("On a full disk the old file stays whole and no half of a new one is left") {
    const PdfFolder folder;
    const std::string path = folder.file("sheet.pdf");
    REQUIRE_OK(write_whole_file(path, "the old sheet"));
    // A file may grow to 64 bytes only: the same refusal in the middle of writing as on a full disk.
    rlimit before{};
    getrlimit(RLIMIT_FSIZE, &before);
    const auto old_handler = std::signal(SIGXFSZ, SIG_IGN);
    const rlimit small{64, before.rlim_max};
    setrlimit(RLIMIT_FSIZE, &small);
    const auto made = write_pdf(sheet_of(job_of(air_events())), path, bundled_font());
    setrlimit(RLIMIT_FSIZE, &before);
    std::signal(SIGXFSZ, old_handler);
    REQUIRE_FALSE(made.ok());
    CHECK(holds(made.error().text(), "make room on the disk"));
    CHECK(file_text(path) == "the old sheet");
    CHECK(folder.files() == 1);
}

TEST_CASE("Pieces that belong together are not parted by the foot of a page") {
    using reports_detail::on_pages;
    using reports_detail::Piece;
    const auto piece = [](double height, bool with_next) { return Piece{10, height, with_next, nullptr}; };
    const auto pages = on_pages({piece(60, false), piece(20, true), piece(30, false)}, 100);
    REQUIRE(pages.size() == 2);
    CHECK(pages[0].size() == 1);
    CHECK(pages[1][0].y == 0);
    CHECK(pages[1][1].y == 30);
    CHECK(on_pages({piece(60, false), piece(20, true), piece(30, false)}, 140).size() == 1);
    CHECK(on_pages({piece(500, false), piece(500, false)}, 100).size() == 2);
}

TEST_CASE("A short section is as high as its heading with the note below") {
    const auto typesetter = typeset::Typesetter::open(bundled_font().fonts_folder);
    REQUIRE_OK(typesetter);
    const auto height_of = [&](const std::string& note, int lines) {
        reports_detail::Composer page(typesetter.value(), 532, {});
        page.section("Complaint", note);
        for (int i = 0; i < lines; ++i) page.paragraph("One line.");
        double height = 0;
        for (const reports_detail::Piece& piece : std::move(page).pieces())
            height += piece.before + piece.height;
        return height;
    };
    CHECK(height_of("opened on a day", 1) > height_of("", 1) + 6);
    CHECK(height_of("opened on a day", 5) == Approx(height_of("", 5)));
}
