// A quiz on paper: the questions with room for the answers, and on pages of its own at the end the key with
// reasons and sources. The same items give the same bytes.
#pragma once

#include <string>
#include <vector>

#include "app/reports/pdf_wish.hpp"
#include "app/study/item.hpp"
#include "app/study/quiz.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct QuizPaper {
    std::string title;  // "Quiz: Wanders"
    std::string mark;   // tells one paper from another, at the foot: "seed 7"
    std::vector<study::Item> items;
};

// What somebody who has answered nothing yet is asked by this wish. Told to stop, it gives the questions made
// so far. Errors: those of choose_items.
Result<QuizPaper> make_quiz_paper(const study::Portraits& portraits, const study::QuizWish& wish,
                                  const Watched& watched = {});

// Writes the file as a whole or not at all. Errors: no typeface, cairo's own, what write_whole_file says.
Result<PdfMade> write_quiz_paper_pdf(const Knowledge& knowledge, const QuizPaper& paper,
                                     const std::string& path, const PdfWish& wish);

}  // namespace hardover
