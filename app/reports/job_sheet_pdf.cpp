#include "app/reports/job_sheet_pdf.hpp"

#include <optional>
#include <utility>

#include "app/records/whole_file.hpp"
#include "app/reports/pdf_pages.hpp"
#include "app/reports/sheet_pages.hpp"
#include "app/reports/typeset.hpp"

namespace hardover {

using namespace reports_detail;

namespace {

constexpr std::size_t most_pages = 2;
// From roomy to tight.
constexpr Room rooms[] = {{9, 1000, 1000, 5000, false, 245},
                          {8.5, 1000, 1000, 5000, false, 185},
                          {8.2, 26, 14, 900, false, 185},
                          {8, 14, 8, 400, false, 185},
                          {7.6, 8, 4, 200, true, 170}};
constexpr std::size_t whole_rooms = 2;  // the first so many leave nothing out

// Pieces and where they go.
struct Laid {
    std::vector<Piece> pieces;
    std::vector<std::vector<PlacedPiece>> pages;
};

Laid laid_out(const JobSheet& sheet, const typeset::Typesetter& typesetter, Paper paper, const Room& room) {
    Laid laid;
    laid.pieces = sheet_pieces(sheet, typesetter, text_width(paper), room);
    laid.pages = on_pages(laid.pieces, text_height(paper));
    return laid;
}

// One page where that leaves nothing out; else the roomiest of at most two.
Result<Laid> laid_out(const JobSheet& sheet, const typeset::Typesetter& typesetter, Paper paper) {
    std::optional<Laid> roomiest;
    std::size_t tried = 0;
    for (const Room& room : rooms) {
        if (roomiest && tried >= whole_rooms) break;
        ++tried;
        Laid laid = laid_out(sheet, typesetter, paper, room);
        if (laid.pages.size() == 1) return laid;
        if (!roomiest && laid.pages.size() <= most_pages) roomiest = std::move(laid);
    }
    if (roomiest) return std::move(*roomiest);
    return Error{Error::Kind::unsupported, "the sheet does not fit on two pages even when shortened", "",
                 "shorten the notes, or use: hardover job show"};
}

}  // namespace

Result<PdfMade> write_pdf(const JobSheet& sheet, const std::string& path, const PdfWish& wish) {
    const Result<typeset::Typesetter> typesetter = typeset::Typesetter::open(wish.fonts_folder);
    if (!typesetter) return typesetter.error();
    const Result<Laid> laid = laid_out(sheet, typesetter.value(), wish.paper);
    if (!laid) return laid.error();
    const PdfLook look{wish.paper, "Job sheet " + std::to_string(sheet.number) + ", " + sheet.boat, sheet.at,
                       "Job " + std::to_string(sheet.number) + " · " + typeset::shortened(sheet.boat, 60) +
                           " · " + sheet.day};
    const Result<std::string> bytes =
        pdf_of(laid.value().pieces, laid.value().pages, typesetter.value(), look);
    if (!bytes) return bytes.error();
    const Result<void> written = write_whole_file(path, bytes.value());
    if (!written) return written.error();
    return PdfMade{static_cast<int>(laid.value().pages.size()), typesetter.value().remark()};
}

}  // namespace hardover
