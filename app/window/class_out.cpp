// The place Class: what goes out of it, as files beside the records. Each is written as a whole or not at
// all.
#include <fmt/format.h>

#include <filesystem>

#include "app/classroom/results_csv.hpp"
#include "app/jobs/shop.hpp"
#include "app/reports/class_sheet_pdf.hpp"
#include "app/reports/file_package.hpp"
#include "app/reports/qti.hpp"
#include "app/reports/quiz_paper_pdf.hpp"
#include "app/reports/sheet_file.hpp"
#include "app/study/known_learner.hpp"
#include "app/window/class_desk.hpp"
#include "app/window/study_work.hpp"

namespace hardover::window {

using namespace classroom;

namespace {

// What was written, in words, and the file to look at where there is one.
struct Written {
    std::string text;
    std::string file;
};

Result<void> make_folder(const std::string& folder) {
    std::error_code failed;
    std::filesystem::create_directories(folder, failed);
    if (!failed) return {};
    return Error{Error::Kind::storage, "the folder cannot be made: " + failed.message(), folder,
                 "give the folder of the records leave to be written"};
}

Result<PdfWish> pdf_wish(const Store& store, const std::string& fonts_folder) {
    const Result<ShopSettings> shop = read_shop(store);
    if (!shop) return shop.error();
    return PdfWish{shop.value().a4 ? Paper::a4 : Paper::letter, fonts_folder};
}

Written pdf_written(const std::string& what, const std::string& path, const PdfMade& made) {
    const std::string pages = fmt::format("{} page{}", made.pages, made.pages == 1 ? "" : "s");
    return {fmt::format("{}, {}: {}{}", what, pages, path, made.remark.empty() ? "" : ". " + made.remark),
            path};
}

struct FiguresWish {
    std::string folder;
    std::string fonts_folder;
    bool with_names = false;
};

Result<Written> write_tables(const ClassResults& results, const ClassFigures& figures,
                             const FiguresWish& wish) {
    std::vector<PackageFile> files;
    for (CsvFile& file : results_csv(results, figures, wish.with_names))
        files.push_back({std::move(file.name), std::move(file.text)});
    if (const auto written = write_package(wish.folder, files); !written) return written.error();
    return Written{fmt::format("{} tables are in {}. {}", files.size(), wish.folder,
                               wish.with_names ? "They carry names: keep them where only you read them."
                                               : "They name seats only."),
                   ""};
}

Result<Written> write_sheet(const Store& store, const ClassResults& results, const ClassFigures& figures,
                            const FiguresWish& wish) {
    const Result<PdfWish> paper = pdf_wish(store, wish.fonts_folder);
    if (!paper) return paper.error();
    const ClassSheet sheet = make_class_sheet(results, figures, wish.with_names);
    const std::string name = name_for_file(sheet.class_name);
    const std::string path = wish.folder + "/Class sheet" + (name.empty() ? "" : " " + name) + ".pdf";
    const auto made = write_class_sheet_pdf(sheet, path, paper.value());
    if (!made) return made.error();
    return pdf_written("The class sheet is written", path, made.value());
}

Result<Written> write_quiz(const Store& store, const Knowledge& knowledge, const QuizPaper& paper,
                           QuizExport what, const FiguresWish& wish) {
    const std::string stem = wish.folder + "/" + name_for_file(paper.title + " " + paper.mark);
    if (what == QuizExport::paper) {
        const Result<PdfWish> pdf = pdf_wish(store, wish.fonts_folder);
        if (!pdf) return pdf.error();
        const auto made = write_quiz_paper_pdf(knowledge, paper, stem + ".pdf", pdf.value());
        if (!made) return made.error();
        return pdf_written("The quiz is written, its key on pages of its own at the end", stem + ".pdf",
                           made.value());
    }
    const auto package = qti_package(knowledge, paper.items, {paper.title, wish.fonts_folder});
    if (!package) return package.error();
    const Result<void> written = write_package(stem + ".zip", package.value());
    if (!written) return written.error();
    return Written{
        fmt::format("{} questions with their key, as QTI 2.2: {}", paper.items.size(), stem + ".zip"), ""};
}

}  // namespace

Background::Outcome ClassDesk::told_written(const std::string& at, const std::string& text,
                                            const std::string& file) {
    return [this, at, text, file] { done(at, text, folder(), file); };
}

void ClassDesk::apply(const ExportClass& what) {
    if (!class_) return;
    const FiguresWish wish{folder(), fonts_folder_, what.with_names};
    work({"export", what.what == ClassExport::sheet ? "Making the class sheet" : "Making the tables"},
         [this, of = *class_, keys = keys_, prepared = prepared_, portraits = portraits_, wish,
          what = what.what](const Beside& beside) -> Background::Outcome {
             const auto known = made_if_needed(portraits, prepared);
             const auto marked =
                 class_results(beside.classes, of, *known, keys.get(), threads_to_spare(), beside.watched);
             if (beside.stop) return stopped("export", "Stopped. Nothing was written.");
             if (!marked) return refusal("export", marked.error());
             const ClassResults& results = marked.value().results;
             const ClassFigures figures = make_figures(results, prepared.knowledge());
             if (const auto made = make_folder(wish.folder); !made) return refusal("export", made.error());
             const auto written = what == ClassExport::sheet
                                      ? write_sheet(beside.store, results, figures, wish)
                                      : write_tables(results, figures, wish);
             if (!written) return refusal("export", written.error());
             return told_written("export", written.value().text, written.value().file);
         });
}

void ClassDesk::apply(const ExportQuiz& what) {
    const study::QuizWish quiz{what.topic, static_cast<std::size_t>(what.count), random_seed(),
                               study::study_day(now_()), units_};
    const FiguresWish wish{folder(), fonts_folder_, false};
    work({"quiz_out", "Making the questions"},
         [this, prepared = prepared_, portraits = portraits_, quiz, wish,
          what = what.what](const Beside& beside) -> Background::Outcome {
             const auto known = made_if_needed(portraits, prepared);
             const auto paper = make_quiz_paper(*known, quiz, beside.watched);
             if (beside.stop) return stopped("quiz_out", "Stopped. Nothing was written.");
             if (!paper) return refusal("quiz_out", paper.error());
             if (const auto made = make_folder(wish.folder); !made) return refusal("quiz_out", made.error());
             const auto written = write_quiz(beside.store, prepared.knowledge(), paper.value(), what, wish);
             if (!written) return refusal("quiz_out", written.error());
             return told_written("quiz_out", written.value().text, written.value().file);
         });
}

}  // namespace hardover::window
