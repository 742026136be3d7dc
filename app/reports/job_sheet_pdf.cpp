#include "app/reports/job_sheet_pdf.hpp"

#include <cairo-pdf.h>

#include <memory>
#include <optional>
#include <utility>

#include "app/records/whole_file.hpp"
#include "app/reports/sheet_pages.hpp"
#include "app/reports/typeset.hpp"

namespace hardover {

using namespace reports_detail;

namespace {

constexpr double margin = 40;  // points
constexpr double foot = 22;    // of the text area, for the page's last line
constexpr std::size_t most_pages = 2;
// From roomy to tight.
constexpr Room rooms[] = {{9, 1000, 1000, 5000, false, 245},
                          {8.5, 1000, 1000, 5000, false, 185},
                          {8.2, 26, 14, 900, false, 185},
                          {8, 14, 8, 400, false, 185},
                          {7.6, 8, 4, 200, true, 170}};
constexpr std::size_t whole_rooms = 2;  // the first so many leave nothing out

struct PaperSize {
    double width = 612;
    double height = 792;
};

PaperSize size_of(Paper paper) {
    return paper == Paper::a4 ? PaperSize{595.276, 841.89} : PaperSize{};
}

// Pieces and where they go.
struct Laid {
    std::vector<Piece> pieces;
    std::vector<std::vector<PlacedPiece>> pages;
};

Laid laid_out(const JobSheet& sheet, const typeset::Typesetter& typesetter, const PaperSize& paper,
              const Room& room) {
    Laid laid;
    laid.pieces = sheet_pieces(sheet, typesetter, paper.width - 2 * margin, room);
    laid.pages = on_pages(laid.pieces, paper.height - 2 * margin - foot);
    return laid;
}

// One page where that leaves nothing out; else the roomiest of at most two.
Result<Laid> laid_out(const JobSheet& sheet, const typeset::Typesetter& typesetter, const PaperSize& paper) {
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

cairo_status_t keep(void* into, const unsigned char* bytes, unsigned int count) {
    static_cast<std::string*>(into)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

void draw_foot(cairo_t* cairo, const typeset::Typesetter& typesetter, const JobSheet& sheet,
               const PaperSize& paper, std::size_t page, std::size_t pages) {
    const double width = paper.width - 2 * margin;
    const double y = paper.height - margin - 8;
    const std::string left = "Job " + std::to_string(sheet.number) + " · " +
                             typeset::shortened(sheet.boat, 60) + " · " + sheet.day;
    const std::string right = "Page " + std::to_string(page) + " of " + std::to_string(pages);
    cairo_set_source_rgb(cairo, 0, 0, 0);
    cairo_set_line_width(cairo, 0.4);
    cairo_move_to(cairo, margin, y - 4);
    cairo_line_to(cairo, margin + width, y - 4);
    cairo_stroke(cairo);
    typesetter.set(typeset::plain(left), width - 70, {7.5}).draw(cairo, margin, y);
    typesetter.set(right, 60, {7.5, PANGO_ALIGN_RIGHT}).draw(cairo, margin + width - 60, y);
}

Result<std::string> pdf_of(const JobSheet& sheet, const typeset::Typesetter& typesetter, const Laid& laid,
                           const PaperSize& paper) {
    std::string bytes;
    const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
        cairo_pdf_surface_create_for_stream(keep, &bytes, paper.width, paper.height), cairo_surface_destroy);
    const std::string title = "Job sheet " + std::to_string(sheet.number) + ", " + sheet.boat;
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE,
                                   typeset::shortened(title, 200).c_str());
    // Without this cairo takes the clock, and no two files would be equal.
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, sheet.at.c_str());
    const std::unique_ptr<cairo_t, decltype(&cairo_destroy)> cairo(cairo_create(surface.get()),
                                                                   cairo_destroy);
    for (std::size_t page = 0; page < laid.pages.size(); ++page) {
        for (const PlacedPiece& placed : laid.pages[page]) {
            laid.pieces[placed.piece].draw(cairo.get(), margin, margin + placed.y);
        }
        draw_foot(cairo.get(), typesetter, sheet, paper, page + 1, laid.pages.size());
        cairo_show_page(cairo.get());
    }
    cairo_surface_finish(surface.get());
    for (const cairo_status_t status : {cairo_status(cairo.get()), cairo_surface_status(surface.get())}) {
        if (status != CAIRO_STATUS_SUCCESS) {
            return Error{Error::Kind::unsupported,
                         std::string("the sheet cannot be drawn: ") + cairo_status_to_string(status), "", ""};
        }
    }
    return bytes;
}

}  // namespace

Result<PdfMade> write_pdf(const JobSheet& sheet, const std::string& path, const PdfWish& wish) {
    const Result<typeset::Typesetter> typesetter = typeset::Typesetter::open(wish.fonts_folder);
    if (!typesetter) return typesetter.error();
    const PaperSize paper = size_of(wish.paper);
    const Result<Laid> laid = laid_out(sheet, typesetter.value(), paper);
    if (!laid) return laid.error();
    const Result<std::string> bytes = pdf_of(sheet, typesetter.value(), laid.value(), paper);
    if (!bytes) return bytes.error();
    const Result<void> written = write_whole_file(path, bytes.value());
    if (!written) return written.error();
    return PdfMade{static_cast<int>(laid.value().pages.size()), typesetter.value().remark()};
}

}  // namespace hardover
