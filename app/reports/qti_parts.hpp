// What the writers of QTI share. Inner part of app/reports.
#pragma once

#include <optional>
#include <pugixml.hpp>
#include <string>
#include <vector>

#include "app/reports/typeset.hpp"
#include "app/study/item.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover::reports_detail {

// A stretch of the picture, in pixels from its upper left corner.
struct Area {
    std::string shape;   // "poly", "circle"
    std::string coords;  // as QTI writes them
};

// The drawing of a place item as a picture.
struct Picture {
    std::string png;
    int width = 0;
    int height = 0;
    std::vector<Area> right;  // where pointing is right
    std::string point;        // "x y", one point that is right
};
Result<Picture> picture_of(const study::Item& item, const typeset::Typesetter& typesetter);

// A drawing as PNG, black on white, the same each time. `zoom`: pixels per point.
Result<std::string> png_of(const drawing::Drawing& drawing, const typeset::Typesetter& typesetter,
                           double width, double height, double zoom);

// One item; `picture` of place items, at `picture_file` seen from the item's file.
pugi::xml_document qti_item(const Knowledge& knowledge, const study::Item& item,
                            const std::string& identifier, const Picture* picture,
                            const std::string& picture_file);

std::string written(const pugi::xml_document& document);

}  // namespace hardover::reports_detail
