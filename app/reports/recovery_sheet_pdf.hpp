// The sheet to be locked away: the words that open a class when its passphrase is lost. One page.
#pragma once

#include <string>

#include "app/reports/pdf_wish.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct RecoverySheet {
    std::string class_name;
    std::string key;    // the class's public key, in hex
    std::string words;  // with blanks between
    std::string day;    // it was written, as 2026-11-25
};

// The page as a PDF, in memory. Errors: no typeface, cairo's own.
Result<std::string> recovery_sheet_pdf(const RecoverySheet& sheet, const PdfWish& wish);

}  // namespace hardover
