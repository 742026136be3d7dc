// The drawing of a place item as a picture, and where on it pointing is right.
#include <fmt/format.h>

#include <cmath>
#include <memory>

#include "app/reports/qti_parts.hpp"

namespace hardover::reports_detail {

namespace {

using drawing::Point;

constexpr double zoom = 2;  // pixels per point
constexpr double picture_width = 400;
constexpr double picture_height = 300;  // points
constexpr double reach = 7;             // of a line, to either side, points: pointing is no finer

cairo_status_t keep(void* into, const unsigned char* bytes, unsigned int count) {
    static_cast<std::string*>(into)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

int pixel(double points) {
    return static_cast<int>(std::lround(points * zoom));
}

std::string polygon(const std::vector<Point>& corners) {
    std::string coords;
    for (const Point& corner : corners) {
        coords += fmt::format("{}{},{}", coords.empty() ? "" : ",", pixel(corner.x), pixel(corner.y));
    }
    return coords;
}

// A stroke as wide as a finger along each stretch of a line, with its ends.
void add_line(std::vector<Area>& areas, const std::vector<Point>& line) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const Point &a = line[i], &b = line[i + 1];
        const double length = std::hypot(b.x - a.x, b.y - a.y);
        if (length <= 0) continue;
        const double x = (b.x - a.x) / length * reach, y = (b.y - a.y) / length * reach;
        areas.push_back({"poly", polygon({{a.x - x - y, a.y - y + x},
                                          {b.x + x - y, b.y + y + x},
                                          {b.x + x + y, b.y + y - x},
                                          {a.x - x + y, a.y - y - x}})});
    }
}

// Where one shape is pointed at, and a point on it.
struct Target {
    const drawing::Placement& placement;
    Picture& picture;

    void point_at(const Point& point) const {
        if (picture.point.empty()) picture.point = fmt::format("{} {}", pixel(point.x), pixel(point.y));
    }
    void operator()(const drawing::Outline& outline) const {
        std::vector<Point> corners;
        for (const Point& point : outline.points) corners.push_back(placement.on_page(point));
        if (corners.size() < 2) return;
        if (outline.closed) {
            picture.right.push_back({"poly", polygon(corners)});
            corners.push_back(corners.front());
        }
        add_line(picture.right, corners);
        point_at({(corners[0].x + corners[1].x) / 2, (corners[0].y + corners[1].y) / 2});
    }
    void operator()(const drawing::Circle& circle) const {
        const Point centre = placement.on_page(circle.centre);
        const double radius = circle.radius * placement.scale + reach;
        picture.right.push_back(
            {"circle", fmt::format("{},{},{}", pixel(centre.x), pixel(centre.y), pixel(radius))});
        point_at(centre);
    }
    void operator()(const drawing::Text&) const {}
    void operator()(const drawing::DimensionLine&) const {}
};

}  // namespace

Result<std::string> png_of(const drawing::Drawing& drawing, const typeset::Typesetter& typesetter,
                           double width, double height, double pixels) {
    const std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)> surface(
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, static_cast<int>(std::lround(width * pixels)),
                                   static_cast<int>(std::lround(height * pixels))),
        cairo_surface_destroy);
    const std::unique_ptr<cairo_t, decltype(&cairo_destroy)> cairo(cairo_create(surface.get()),
                                                                   cairo_destroy);
    cairo_set_source_rgb(cairo.get(), 1, 1, 1);
    cairo_paint(cairo.get());
    cairo_scale(cairo.get(), pixels, pixels);
    typeset::paint(cairo.get(), typesetter, drawing, {0, 0}, width, height,
                   typeset::scale_to_fit(drawing, width, height));
    std::string png;
    const cairo_status_t drawn = cairo_status(cairo.get());
    const cairo_status_t status =
        drawn == CAIRO_STATUS_SUCCESS ? cairo_surface_write_to_png_stream(surface.get(), keep, &png) : drawn;
    if (status != CAIRO_STATUS_SUCCESS) {
        return Error{Error::Kind::unsupported,
                     std::string("the drawing cannot be painted: ") + cairo_status_to_string(status), "", ""};
    }
    return png;
}

Result<Picture> picture_of(const study::Item& item, const typeset::Typesetter& typesetter) {
    const drawing::Drawing& drawing = *item.drawing;
    Result<std::string> png = png_of(drawing, typesetter, picture_width, picture_height, zoom);
    if (!png) return png.error();
    Picture picture{std::move(png).value(), pixel(picture_width), pixel(picture_height), {}, ""};
    const drawing::Placement placement =
        typeset::placement_in(drawing, {0, 0}, picture_width, picture_height,
                              typeset::scale_to_fit(drawing, picture_width, picture_height));
    for (const study::Option& option : item.options) {
        if (!option.right) continue;
        for (const drawing::Shape& shape : drawing.shapes) {
            if (shape.part == option.drawn) std::visit(Target{placement, picture}, shape.form);
        }
    }
    return picture;
}

}  // namespace hardover::reports_detail
