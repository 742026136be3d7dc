// Text and drawings set for paper by pango and cairo: the only place that knows these two libraries beside
// the pages. Lengths in points (1/72 in), black on white. Knows no job.
#pragma once

#include <cairo.h>
#include <pango/pango.h>

#include <memory>
#include <string>

#include "app/drawing/drawing.hpp"
#include "rules/result/result.hpp"

namespace hardover::typeset {

struct Style {
    double size = 9;  // points
    PangoAlignment align = PANGO_ALIGN_LEFT;
};

// Broken letters mended, control characters and line ends turned into blanks.
std::string clean(const std::string& text);
// At most so many letters of a clean text, with "…" where it was cut.
std::string shortened(const std::string& text, std::size_t letters);
// A text as it can stand in markup: clean, & and < escaped, no line break before a percent sign.
std::string plain(const std::string& text);
std::string bold(const std::string& text);  // plain() in bold

// Text set to a width; cheap to copy.
class Block {
  public:
    Block() = default;
    explicit Block(PangoLayout* layout) : layout_(layout, g_object_unref) {}
    double height() const;
    double width() const;  // of the ink's lines, not of the column
    void draw(cairo_t* cairo, double x, double y) const;

  private:
    std::shared_ptr<PangoLayout> layout_;
};

class Typesetter {
  public:
    // `fonts_folder` holds the bundled typeface; where it is missing, `remark` says so and the computer's own
    // sans-serif is taken. Error: there is no typeface at all.
    static Result<Typesetter> open(const std::string& fonts_folder);

    // Markup set to a width, in points. A word longer than the width is broken.
    Block set(const std::string& markup, double width, const Style& style) const;

    const std::string& remark() const { return remark_; }

  private:
    Typesetter() = default;

    std::shared_ptr<PangoFontMap> fonts_;
    std::shared_ptr<PangoContext> context_;
    std::string family_;
    std::string remark_;
};

// Points per drawing unit at which a drawing, with its title, fills a place.
double scale_to_fit(const drawing::Drawing& drawing, double width, double height);

// Where `paint` puts a drawing.
drawing::Placement placement_in(const drawing::Drawing& drawing, const drawing::Point& top_left, double width,
                                double height, double scale);

// Paints a drawing in the middle of a place, its title above it.
void paint(cairo_t* cairo, const Typesetter& typesetter, const drawing::Drawing& drawing,
           const drawing::Point& top_left, double width, double height, double scale);

}  // namespace hardover::typeset
