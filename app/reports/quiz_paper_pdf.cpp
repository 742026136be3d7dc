#include "app/reports/quiz_paper_pdf.hpp"

#include <fmt/format.h>

#include "app/records/whole_file.hpp"
#include "app/reports/pdf_pages.hpp"
#include "app/reports/sheet_composer.hpp"
#include "app/study/item_text.hpp"

namespace hardover {

using namespace reports_detail;
using study::Item;
using study::ItemText;
using study::Way;
using typeset::bold;
using typeset::plain;

namespace {

constexpr double drawing_height = 215;  // points
constexpr double key_drawing_height = 190;
constexpr double box = 8;

void line(cairo_t* cairo, double x, double y, double length) {
    cairo_set_source_rgb(cairo, 0, 0, 0);
    cairo_set_line_width(cairo, 0.5);
    cairo_move_to(cairo, x, y);
    cairo_line_to(cairo, x + length, y);
    cairo_stroke(cairo);
}

// The questions or the key: numbers in a column of their own, everything about one question kept together.
class PaperPage {
  public:
    PaperPage(const typeset::Typesetter& typesetter, double width, double size)
        : typesetter_(typesetter), width_(width), size_(size) {}

    static constexpr double gutter = 26;
    double content() const { return width_ - gutter; }

    // The pieces added next belong to question `number`.
    void begin(std::size_t number) {
        end();
        number_ = std::to_string(number);
        above_ = 11;
    }
    void text(const std::string& markup, double size = 0, double before = 2, double indent = 0) {
        const typeset::Block block =
            typesetter_.set(markup, content() - indent, {size > 0 ? size : size_, PANGO_ALIGN_LEFT});
        add(before, block.height(), [block, indent](cairo_t* cairo, double x, double y) {
            block.draw(cairo, x + gutter + indent, y);
        });
    }
    void option(const std::string& markup, bool boxed) {
        const double indent = boxed ? box + 6 : 0;
        const typeset::Block block = typesetter_.set(markup, content() - indent, {size_});
        add(3, block.height(), [=](cairo_t* cairo, double x, double y) {
            if (boxed) {
                cairo_rectangle(cairo, x + gutter + 0.5, y + 1.5, box, box);
                cairo_set_source_rgb(cairo, 0, 0, 0);
                cairo_set_line_width(cairo, 0.7);
                cairo_stroke(cairo);
            }
            block.draw(cairo, x + gutter + indent, y);
        });
    }
    // A line to write on, words before and after it.
    void answer_line(const std::string& before, double length, const std::string& after) {
        const typeset::Block first = typesetter_.set(plain(before), content(), {size_});
        const typeset::Block second = typesetter_.set(plain(after), content(), {size_});
        add(9, first.height(), [=](cairo_t* cairo, double x, double y) {
            const double start = x + gutter + first.width() + 4;
            first.draw(cairo, x + gutter, y);
            line(cairo, start, y + first.height() - 1, length);
            second.draw(cairo, start + length + 4, y);
        });
    }
    void picture(const drawing::Drawing& drawing, double height) {
        const typeset::Typesetter& typesetter = typesetter_;
        const double width = content();
        add(4, height, [&typesetter, drawing, width, height](cairo_t* cairo, double x, double y) {
            typeset::paint(cairo, typesetter, drawing, {x + gutter, y}, width, height,
                           typeset::scale_to_fit(drawing, width, height));
        });
    }
    void piece(Piece piece) { pieces_.push_back(std::move(piece)); }

    std::vector<Piece> pieces() && {
        end();
        return std::move(pieces_);
    }

  private:
    void end() {
        if (!pieces_.empty()) pieces_.back().with_next = false;
    }
    void add(double before, double height, std::function<void(cairo_t*, double, double)> draw) {
        if (!number_.empty()) {
            const typeset::Block number = typesetter_.set(bold(number_), gutter - 6, {size_ + 1});
            draw = [number, draw](cairo_t* cairo, double x, double y) {
                cairo_set_source_rgb(cairo, 0, 0, 0);
                number.draw(cairo, x, y - 1);
                draw(cairo, x, y);
            };
            before = above_;
            number_.clear();
        }
        pieces_.push_back({before, height, true, [draw](cairo_t* cairo, double x, double y) {
                               cairo_set_source_rgb(cairo, 0, 0, 0);
                               draw(cairo, x, y);
                           }});
    }

    const typeset::Typesetter& typesetter_;
    double width_;
    double size_;
    std::string number_;
    double above_ = 0;
    std::vector<Piece> pieces_;
};

void add_head(PaperPage& page, const typeset::Typesetter& typesetter, double width, const std::string& title,
              bool names) {
    const typeset::Block head = typesetter.set(bold(title), width, {15});
    const typeset::Block name = typesetter.set("Name or seat", 80, {9});
    const typeset::Block day = typesetter.set("Day", 30, {9});
    const double height = head.height() + (names ? 30 : 6);
    page.piece({0, height, true, [=](cairo_t* cairo, double x, double y) {
                    cairo_set_source_rgb(cairo, 0, 0, 0);
                    head.draw(cairo, x, y);
                    cairo_set_line_width(cairo, 1.4);
                    cairo_move_to(cairo, x, y + head.height() + 3);
                    cairo_line_to(cairo, x + width, y + head.height() + 3);
                    cairo_stroke(cairo);
                    if (!names) return;
                    const double low = y + height - 14;
                    name.draw(cairo, x, low);
                    line(cairo, x + 62, low + 11, width - 62 - 150);
                    day.draw(cairo, x + width - 140, low);
                    line(cairo, x + width - 118, low + 11, 118);
                }});
}

// How it is answered on paper.
std::string how_of(const Item& item) {
    if (item.drawing && item.stem.form == study::Form::place) return "Mark the place with a cross.";
    switch (way_of(item.stem.form)) {
        case Way::single:
            return "Tick one.";
        case Way::several:
            return "Tick all that apply: right ticks count, wrong ticks cost.";
        case Way::order:
            return "Write all letters, the first thing first.";
        case Way::figure:
            return "Write the figure and its unit.";
    }
    return "";
}

void add_question(PaperPage& page, const Knowledge& knowledge, const Item& item, std::size_t number) {
    const ItemText text = study::item_text(knowledge, item);
    const bool place = item.drawing && item.stem.form == study::Form::place;
    page.begin(number);
    page.text("<span foreground=\"#444\">" + plain(text.heading) + "</span>", 7.5);
    for (const std::string& line : text.given) page.text(plain(line), 0, 1.5);
    page.text(bold(text.question), 0, 3);
    page.text("<i>" + plain(how_of(item)) + "</i>", 8, 1);
    if (place) {
        page.picture(*item.drawing, drawing_height);
        return;
    }
    const bool ordered = way_of(item.stem.form) == Way::order;
    for (const std::string& option : text.options) page.option(plain(option), !ordered);
    if (ordered) page.answer_line("Order:", 160, "");
    if (item.figure) page.answer_line("Answer:", 160, "");
}

std::string right_places(const Item& item) {
    std::string line;
    for (const study::Option& option : item.options) {
        if (option.right) line += (line.empty() ? "Right is: " : "; or: ") + option.text;
    }
    return line;
}

void add_key(PaperPage& page, const Item& item, std::size_t number) {
    const bool place = item.drawing && item.stem.form == study::Form::place;
    page.begin(number);
    page.text(bold(place ? right_places(item) : study::right_line(item)));
    std::string cautions;
    for (const std::string& caution : item.cautions) cautions += (cautions.empty() ? "" : "; ") + caution;
    if (!cautions.empty()) page.text(bold("Cautions before this work: ") + plain(cautions + "."), 0, 1);
    std::string reason = plain(item.reason);
    if (!item.source.empty()) reason += " <i>" + plain(item.source) + "</i>";
    page.text(reason, 0, 1);
    if (!place) return;
    drawing::Drawing marked = *item.drawing;
    std::vector<std::string> parts;
    for (const study::Option& option : item.options) {
        if (option.right) parts.push_back(option.drawn);
    }
    drawing::mark_faults(marked, parts);
    page.picture(marked, key_drawing_height);
}

}  // namespace

Result<QuizPaper> make_quiz_paper(const study::Portraits& portraits, const study::QuizWish& wish,
                                  const Watched& watched) {
    auto items = study::choose_items(portraits, study::LearnerState{}, wish, watched);
    if (!items) return items.error();
    QuizPaper paper{"Quiz", fmt::format("seed {}", wish.seed), std::move(items).value()};
    for (const study::Topic& topic : study::topics(portraits.knowledge())) {
        if (topic.id == wish.topic) paper.title = "Quiz: " + topic.name;
    }
    return paper;
}

Result<PdfMade> write_quiz_paper_pdf(const Knowledge& knowledge, const QuizPaper& paper,
                                     const std::string& path, const PdfWish& wish) {
    const Result<typeset::Typesetter> typesetter = typeset::Typesetter::open(wish.fonts_folder);
    if (!typesetter) return typesetter.error();
    const double width = text_width(wish.paper);
    PaperPage questions(typesetter.value(), width, 9.5);
    add_head(questions, typesetter.value(), width, paper.title, true);
    PaperPage key(typesetter.value(), width, 8.5);
    add_head(key, typesetter.value(), width, "Key to " + paper.title, false);
    for (std::size_t i = 0; i < paper.items.size(); ++i) {
        add_question(questions, knowledge, paper.items[i], i + 1);
        add_key(key, paper.items[i], i + 1);
    }
    std::vector<Piece> pieces = std::move(questions).pieces();
    auto pages = on_pages(pieces, text_height(wish.paper));
    const std::size_t first_of_key = pieces.size();
    const std::vector<Piece> of_key = std::move(key).pieces();
    for (std::vector<PlacedPiece> page : on_pages(of_key, text_height(wish.paper))) {
        for (PlacedPiece& placed : page) placed.piece += first_of_key;
        pages.push_back(std::move(page));
    }
    pieces.insert(pieces.end(), of_key.begin(), of_key.end());
    const PdfLook look{wish.paper, paper.title, "2000-01-01T00:00:00Z",
                       typeset::shortened(paper.title, 60) + (paper.mark.empty() ? "" : " · " + paper.mark)};
    const Result<std::string> bytes = pdf_of(pieces, pages, typesetter.value(), look);
    if (!bytes) return bytes.error();
    if (const auto written = write_whole_file(path, bytes.value()); !written) return written.error();
    return PdfMade{static_cast<int>(pages.size()), typesetter.value().remark()};
}

}  // namespace hardover
