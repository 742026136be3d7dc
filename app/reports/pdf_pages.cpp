#include "app/reports/pdf_pages.hpp"

#include <cairo-pdf.h>

#include <memory>

namespace hardover::reports_detail {

namespace {

constexpr double margin = 40;  // points
constexpr double foot = 22;    // of the text area, for the page's last line

struct PaperSize {
    double width = 612;
    double height = 792;
};

PaperSize size_of(Paper paper) {
    return paper == Paper::a4 ? PaperSize{595.276, 841.89} : PaperSize{};
}

cairo_status_t keep(void* into, const unsigned char* bytes, unsigned int count) {
    static_cast<std::string*>(into)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

void draw_foot(cairo_t* cairo, const typeset::Typesetter& typesetter, const PdfLook& look, std::size_t page,
               std::size_t pages) {
    const double width = text_width(look.paper);
    const double y = size_of(look.paper).height - margin - 8;
    const std::string right = "Page " + std::to_string(page) + " of " + std::to_string(pages);
    cairo_set_source_rgb(cairo, 0, 0, 0);
    cairo_set_line_width(cairo, 0.4);
    cairo_move_to(cairo, margin, y - 4);
    cairo_line_to(cairo, margin + width, y - 4);
    cairo_stroke(cairo);
    typesetter.set(typeset::plain(look.foot), width - 70, {7.5}).draw(cairo, margin, y);
    typesetter.set(right, 60, {7.5, PANGO_ALIGN_RIGHT}).draw(cairo, margin + width - 60, y);
}

}  // namespace

double text_width(Paper paper) {
    return size_of(paper).width - 2 * margin;
}

double text_height(Paper paper) {
    return size_of(paper).height - 2 * margin - foot;
}

Result<std::string> pdf_of(const std::vector<Piece>& pieces,
                           const std::vector<std::vector<PlacedPiece>>& pages,
                           const typeset::Typesetter& typesetter, const PdfLook& look) {
    std::string bytes;
    const PaperSize paper = size_of(look.paper);
    const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
        cairo_pdf_surface_create_for_stream(keep, &bytes, paper.width, paper.height), cairo_surface_destroy);
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_TITLE,
                                   typeset::shortened(look.title, 200).c_str());
    // Without this cairo takes the clock, and no two files would be equal.
    cairo_pdf_surface_set_metadata(surface.get(), CAIRO_PDF_METADATA_CREATE_DATE, look.created.c_str());
    const std::unique_ptr<cairo_t, decltype(&cairo_destroy)> cairo(cairo_create(surface.get()),
                                                                   cairo_destroy);
    for (std::size_t page = 0; page < pages.size(); ++page) {
        for (const PlacedPiece& placed : pages[page]) {
            pieces[placed.piece].draw(cairo.get(), margin, margin + placed.y);
        }
        draw_foot(cairo.get(), typesetter, look, page + 1, pages.size());
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

}  // namespace hardover::reports_detail
