// How a PDF is wanted, and what came of it. Plain values.
#pragma once

#include <string>

namespace hardover {

enum class Paper { letter, a4 };

struct PdfWish {
    Paper paper = Paper::letter;
    std::string fonts_folder;  // the bundled typeface's
};

struct PdfMade {
    int pages = 0;
    std::string remark;  // not empty: the typeface is not the bundled one
};

}  // namespace hardover
