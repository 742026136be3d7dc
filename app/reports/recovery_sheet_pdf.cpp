#include "app/reports/recovery_sheet_pdf.hpp"

#include "app/reports/pdf_pages.hpp"

namespace hardover {

using namespace reports_detail;
using typeset::bold;
using typeset::plain;

Result<std::string> recovery_sheet_pdf(const RecoverySheet& sheet, const PdfWish& wish) {
    constexpr std::size_t key_letters = 16;
    const Result<typeset::Typesetter> typesetter = typeset::Typesetter::open(wish.fonts_folder);
    if (!typesetter) return typesetter.error();
    std::vector<Piece> pieces;
    const auto add = [&](const std::string& markup, double size, double before) {
        const typeset::Block block =
            typesetter.value().set(markup, text_width(wish.paper), {size, PANGO_ALIGN_LEFT});
        pieces.push_back({before, block.height(), false, [block](cairo_t* cairo, double x, double y) {
                              cairo_set_source_rgb(cairo, 0, 0, 0);
                              block.draw(cairo, x, y);
                          }});
    };
    add(bold("Recovery sheet of the class: " + typeset::shortened(sheet.class_name, 80)), 15, 0);
    add(plain("Lock this sheet away. Whoever has it and a copy of the records can open the class: sign sets, "
              "countersign hand-ins and read the keys of graded sets. Delete the file it was printed from."),
        11, 14);
    add(plain("The words, in small letters with a blank between:"), 11, 18);
    add(bold(sheet.words), 17, 8);
    add(plain("When the passphrase is lost, give the class a new one with:"), 11, 22);
    add(bold("hardover class passphrase --recovery"), 12, 6);
    add(plain("The words stay good when the passphrase is changed. A new sheet makes this one useless: "
              "hardover "
              "class recovery-sheet OUT.pdf"),
        11, 14);
    add(plain("Key of the class begins " + sheet.key.substr(0, key_letters) + " · written on " + sheet.day),
        9, 22);
    const PdfLook look{wish.paper, "Recovery sheet", sheet.day + "T00:00:00Z", "Lock away"};
    return pdf_of(pieces, on_pages(pieces, text_height(wish.paper)), typesetter.value(), look);
}

}  // namespace hardover
