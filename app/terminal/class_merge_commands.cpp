// `hardover class merge|check|figures`: hand-ins brought together on the instructor's PC, and what they come
// to.
#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <ostream>

#include "app/classroom/class_results.hpp"
#include "app/classroom/merge.hpp"
#include "app/jobs/job.hpp"
#include "app/terminal/class_commands.hpp"

namespace hardover {

namespace {

using namespace classroom;
using nlohmann::ordered_json;

ordered_json json_of(const MergeReport& report) {
    ordered_json files = ordered_json::array();
    for (const MergedFile& file : report.files) {
        ordered_json one = {{"file", file.file},         {"refused", file.refused.has_value()},
                            {"set", file.set},           {"seat", file.seat},
                            {"records", file.records},   {"new", file.fresh},
                            {"disputed", file.disputed}, {"other_pc", file.other_pc},
                            {"unknown", file.unknown}};
        if (file.refused) one["why"] = file.refused->text();
        files.push_back(one);
    }
    return {{"files", files}, {"missing", report.missing}};
}

ordered_json json_of(const MarkedClass& marked) {
    ordered_json seats = ordered_json::array();
    for (const Seat& seat : marked.results.seats) {
        int items = 0, boats = 0;
        double marks = 0;
        for (const ItemResult& item : marked.results.items) {
            if (item.origin.seat != seat.code) continue;
            ++items;
            marks += item.review.mark;
        }
        for (const BoatResult& boat : marked.results.boats) boats += boat.origin.seat == seat.code ? 1 : 0;
        seats.push_back({{"seat", seat.code}, {"answers", items}, {"marks", marks}, {"boats", boats}});
    }
    return {{"class", marked.results.name},
            {"answers", marked.results.items.size()},
            {"boats", marked.results.boats.size()},
            {"learners", learners_with_results(marked.results)},
            {"seats", seats},
            {"notes", marked.notes}};
}

}  // namespace

int run_class_merge(Context& context, const ClassRequest& request) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    std::vector<NamedText> files;
    for (const std::string& name : request.files) {
        const Result<std::string> text = read_file(name);
        if (!text) return refuse(context, text.error());
        files.push_back({name, text.value()});
    }
    const Result<ClassKeys> keys = ask_for_keys(context, on_file.value().of, request);
    if (!keys) return refuse(context, keys.error());
    ClassStore store(on_file.value().store);
    const auto report = merge_hand_ins(store, on_file.value().of, keys.value(), files, utc_now());
    if (!report) return refuse(context, report.error());
    bool refused = false;
    for (const MergedFile& file : report.value().files) refused = refused || file.refused.has_value();
    if (request.json) {
        context.streams.out << json_of(report.value()).dump(2) << "\n";
    } else {
        for (const std::string& line : merge_text(report.value())) say_wrapped(context.streams.out, line, 2);
        say_wrapped(context.streams.out, "What this protects against, and what not: hardover class protects");
    }
    return refused ? 1 : 0;
}

int run_class_check(Context& context, const ClassRequest& request) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    const auto faults = check_collected(ClassStore(on_file.value().store), on_file.value().of);
    if (!faults) return refuse(context, faults.error());
    for (const std::string& fault : faults.value()) say_wrapped(context.streams.out, fault, 2);
    if (faults.value().empty()) {
        say_wrapped(context.streams.out, "Everything collected is as it was countersigned.");
    }
    return faults.value().empty() ? 0 : 1;
}

Result<void> print_figures(Context& context, ClassStore& store, const StoredClass& of,
                           const study::Portraits& portraits, const ClassKeys* keys, bool json) {
    const auto marked = class_results(store, of, portraits, keys);
    if (!marked) return marked.error();
    const ordered_json figures = json_of(marked.value());
    std::ostream& out = context.streams.out;
    if (json) {
        out << figures.dump(2) << "\n";
        return {};
    }
    say_wrapped(out, fmt::format("Class '{}': {} learners with results, {} answers, {} practice boats.",
                                 of.name, learners_with_results(marked.value().results),
                                 marked.value().results.items.size(), marked.value().results.boats.size()));
    for (const std::string& note : marked.value().notes) say_wrapped(out, note, 2);
    return {};
}

int run_class_figures(Context& context, const ClassRequest& request) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    ClassStore store(on_file.value().store);
    const auto sets = sets_of(store, on_file.value().of);
    if (!sets) return refuse(context, sets.error());
    bool graded = false;
    for (const ClassSet& set : sets.value()) graded = graded || set.graded;
    std::optional<ClassKeys> keys;
    if (graded && (!request.passphrase_file.empty() || request.graded)) {
        Result<ClassKeys> opened = ask_for_keys(context, on_file.value().of, request);
        if (!opened) return refuse(context, opened.error());
        keys = std::move(opened).value();
    }
    const auto printed =
        print_figures(context, store, on_file.value().of, study::Portraits(knowledge.value()),
                      keys ? &*keys : nullptr, request.json);
    return printed ? 0 : refuse(context, printed.error());
}

}  // namespace hardover
