// Quiz items in the form of 1EdTech's QTI 2.2, for other teaching programs: one file an item, drawings as
// pictures beside them, and the manifest of the package. Written after the published information model, from
// memory. Pure: writes no file.
//
// What travels: the question, the right answer, its marks and, as feedback, the reason, the source and why a
// wrong choice is wrong. What does not: how sure the learner was, part marks of an order (every order that
// keeps all rules is right, any other is not).
#pragma once

#include <string>
#include <vector>

#include "app/reports/file_package.hpp"
#include "app/study/item.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover {

struct QtiWish {
    std::string title;         // of the package
    std::string fonts_folder;  // of the letters in drawings
};

// imsmanifest.xml first, then the items in their order, each followed by its picture. Errors: no typeface, a
// drawing that cannot be painted.
Result<std::vector<PackageFile>> qti_package(const Knowledge& knowledge,
                                             const std::vector<study::Item>& items, const QtiWish& wish);

}  // namespace hardover
