// `hardover class figures`, and what goes out of a class: tables, class sheet, questions as QTI, a quiz on
// paper.
#include <fmt/format.h>

#include <optional>
#include <ostream>

#include "app/classroom/class_results.hpp"
#include "app/classroom/figures_page.hpp"
#include "app/classroom/results_csv.hpp"
#include "app/jobs/shop.hpp"
#include "app/reports/class_sheet_pdf.hpp"
#include "app/reports/file_package.hpp"
#include "app/reports/qti.hpp"
#include "app/reports/quiz_paper_pdf.hpp"
#include "app/study/quiz.hpp"
#include "app/terminal/class_commands.hpp"
#include "app/terminal/places.hpp"

namespace hardover {

using namespace classroom;

namespace {

std::string fonts_folder() {
    const Result<std::string> assets = shipped_assets_folder();
    return (assets ? assets.value() : "assets") + "/fonts";
}

int told(Context& context, const char* what, const std::string& path, const PdfMade& made) {
    if (!made.remark.empty()) context.streams.err << "hardover: " << made.remark << "\n";
    context.streams.out << fmt::format("{} is written to {}, {} page{}.\n", what, path, made.pages,
                                       made.pages == 1 ? "" : "s");
    return 0;
}

Result<QuizPaper> paper_for(Context& context, const Knowledge& knowledge, const ClassRequest& request) {
    study::QuizWish wish;
    wish.topic = request.topic;
    wish.count = static_cast<std::size_t>(request.count);
    wish.seed = request.seed;
    wish.units = units_in_use(context);
    return make_quiz_paper(study::Portraits(knowledge), wish);
}

}  // namespace

Result<PdfWish> pdf_wish(Context& context, const ClassRequest& request) {
    bool a4 = request.paper == "a4";
    if (request.paper.empty()) {
        const Result<Store> store = open_records_on_file(context);
        const bool none_yet = !store && store.error().kind == Error::Kind::not_found;
        if (!store && !none_yet) return store.error();
        const Result<ShopSettings> shop = none_yet ? ShopSettings() : read_shop(store.value());
        if (!shop) return shop.error();
        a4 = shop.value().a4;
    }
    return PdfWish{a4 ? Paper::a4 : Paper::letter, fonts_folder()};
}

Result<ClassResults> results_on_file(Context& context, const ClassRequest& request,
                                     const study::Portraits& portraits, std::ostream& notes) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return on_file.error();
    ClassStore store(on_file.value().store);
    const auto sets = sets_of(store, on_file.value().of);
    if (!sets) return sets.error();
    bool graded = false;
    for (const ClassSet& set : sets.value()) graded = graded || set.graded;
    std::optional<ClassKeys> keys;
    if (graded && (!request.passphrase_file.empty() || request.graded)) {
        Result<ClassKeys> opened = ask_for_keys(context, on_file.value().of, request);
        if (!opened) return opened.error();
        keys = std::move(opened).value();
    }
    auto marked = class_results(store, on_file.value().of, portraits, keys ? &*keys : nullptr);
    if (!marked) return marked.error();
    for (const std::string& note : marked.value().notes) say_wrapped(notes, note, 2);
    return std::move(marked).value().results;
}

int run_class_figures(Context& context, const ClassRequest& request) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    std::ostream& notes = request.json ? context.streams.err : context.streams.out;
    const auto results = results_on_file(context, request, study::Portraits(knowledge.value()), notes);
    if (!results) return refuse(context, results.error());
    const ClassFigures figures = make_figures(results.value(), knowledge.value());
    context.streams.out << (request.json ? figures_json(figures, request.with_names)
                                         : figures_text(make_figures_page(figures, request.with_names)));
    return 0;
}

int run_class_csv(Context& context, const ClassRequest& request) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const auto results =
        results_on_file(context, request, study::Portraits(knowledge.value()), context.streams.err);
    if (!results) return refuse(context, results.error());
    std::vector<PackageFile> files;
    for (CsvFile& file :
         results_csv(results.value(), make_figures(results.value(), knowledge.value()), request.with_names)) {
        files.push_back({std::move(file.name), std::move(file.text)});
    }
    if (const auto written = write_package(request.folder, files); !written)
        return refuse(context, written.error());
    for (const PackageFile& file : files) context.streams.out << request.folder << "/" << file.name << "\n";
    return 0;
}

int run_class_sheet(Context& context, const ClassRequest& request) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const auto results =
        results_on_file(context, request, study::Portraits(knowledge.value()), context.streams.err);
    if (!results) return refuse(context, results.error());
    const Result<PdfWish> wish = pdf_wish(context, request);
    if (!wish) return refuse(context, wish.error());
    const ClassFigures figures = make_figures(results.value(), knowledge.value());
    const auto made = write_class_sheet_pdf(make_class_sheet(results.value(), figures, request.with_names),
                                            request.file, wish.value());
    return made ? told(context, "The class sheet", request.file, made.value())
                : refuse(context, made.error());
}

int run_class_qti(Context& context, const ClassRequest& request) {
    if (!is_zip_name(request.file)) {
        if (const auto empty = demand_empty_folder(request.file); !empty) {
            return refuse(context, empty.error());
        }
    }
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const auto paper = paper_for(context, knowledge.value(), request);
    if (!paper) return refuse(context, paper.error());
    const std::vector<study::Item>& items = paper.value().items;
    const auto files = qti_package(knowledge.value(), items, {paper.value().title, fonts_folder()});
    if (!files) return refuse(context, files.error());
    if (const auto written = write_package(request.file, files.value()); !written) {
        return refuse(context, written.error());
    }
    say_wrapped(
        context.streams.out,
        fmt::format("{} question{} as QTI 2.2: {}. Orders are marked right or not, without part marks; how "
                    "sure the learner was is not asked.",
                    items.size(), items.size() == 1 ? "" : "s", request.file));
    return 0;
}

int run_class_paper(Context& context, const ClassRequest& request) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const auto paper = paper_for(context, knowledge.value(), request);
    if (!paper) return refuse(context, paper.error());
    const Result<PdfWish> wish = pdf_wish(context, request);
    if (!wish) return refuse(context, wish.error());
    const auto made = write_quiz_paper_pdf(knowledge.value(), paper.value(), request.file, wish.value());
    return made ? told(context, "The quiz with its key", request.file, made.value())
                : refuse(context, made.error());
}

}  // namespace hardover
