// The place Class: what the answers and boats of the class come to, and what goes out of it.
#include <fmt/format.h>

#include "app/classroom/results_csv.hpp"
#include "app/reports/qti.hpp"
#include "app/study/known_learner.hpp"
#include "app/window/class_desk.hpp"

namespace hardover::window {

using namespace classroom;

namespace {

constexpr int exported_questions = 40;

}  // namespace

const study::Portraits& ClassDesk::portraits() {
    if (!portraits_) portraits_ = std::make_unique<study::Portraits>(prepared_.knowledge());
    return *portraits_;
}

std::optional<MarkedClass> ClassDesk::marked(const std::string& at) {
    if (!class_) return std::nullopt;
    auto results = class_results(classes_, *class_, portraits(), keys_ ? &*keys_ : nullptr);
    if (results) return std::move(results.value());
    refused(at, results.error());
    return std::nullopt;
}

void ClassDesk::apply(const WorkOutFigures&) {
    const auto results = marked("figures");
    if (!results) return;
    page_.figures = make_figures_page(make_figures(results->results, prepared_.knowledge()), true);
    page_.notes = results->notes;
}

void ClassDesk::apply(const ExportClass& what) {
    if (what.what == ClassExport::questions) {
        Task quiz;
        quiz.count = exported_questions;
        quiz.seed = 1;
        const auto items = items_of(quiz, portraits(), study::study_day(now_()));
        if (!items) return refused("export", items.error());
        const auto package =
            qti_package(prepared_.knowledge(), items.value(), {"Hydraulic steering", fonts_folder_});
        if (!package) return refused("export", package.error());
        const std::string path = folder() + "/questions.zip";
        const Result<void> written = write_package(path, package.value());
        if (!written) return refused("export", written.error());
        done("export", fmt::format("{} questions with their key are in {}", items.value().size(), path),
             folder());
        return;
    }
    const auto results = marked("export");
    if (!results) return;
    const ClassFigures figures = make_figures(results->results, prepared_.knowledge());
    std::size_t written = 0;
    for (const CsvFile& file : results_csv(results->results, figures, false)) {
        if (!write("export", file.name, file.text)) return;
        ++written;
    }
    done("export", fmt::format("{} tables are in {}. They name seats only.", written, folder()), folder());
}

}  // namespace hardover::window
