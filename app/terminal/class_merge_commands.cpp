// `hardover class merge|check|figures`: hand-ins brought together on the instructor's PC, and what they come
// to.
#include <fmt/format.h>

#include <iterator>
#include <nlohmann/json.hpp>
#include <ostream>

#include "app/classroom/class_results.hpp"
#include "app/classroom/figures_page.hpp"
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

}  // namespace

int run_class_merge(Context& context, const ClassRequest& request) {
    Result<ClassOnFile> on_file = open_class_on_file(context, request);
    if (!on_file) return refuse(context, on_file.error());
    // One that cannot be read does not keep the others out.
    std::vector<NamedText> files;
    std::vector<MergedFile> unread;
    for (const std::string& name : request.files) {
        const Result<std::string> text = read_file(name);
        if (text) {
            files.push_back({name, text.value()});
            continue;
        }
        MergedFile file;
        file.file = name;
        file.refused = text.error();
        unread.push_back(std::move(file));
    }
    if (files.empty()) return refuse(context, *unread.front().refused);
    const Result<ClassKeys> keys = ask_for_keys(context, on_file.value().of, request);
    if (!keys) return refuse(context, keys.error());
    ClassStore store(on_file.value().store);
    auto report = merge_hand_ins(store, on_file.value().of, keys.value(), files, utc_now());
    if (!report) return refuse(context, report.error());
    std::move(unread.begin(), unread.end(), std::back_inserter(report.value().files));
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
                           const study::Portraits& portraits, const ClassKeys* keys, bool with_names,
                           bool json) {
    const auto marked = class_results(store, of, portraits, keys);
    if (!marked) return marked.error();
    const ClassFigures figures = make_figures(marked.value().results, portraits.knowledge());
    std::ostream& notes = json ? context.streams.err : context.streams.out;
    for (const std::string& note : marked.value().notes) say_wrapped(notes, note, 2);
    context.streams.out << (json ? figures_json(figures, with_names)
                                 : figures_text(make_figures_page(figures, with_names)));
    return {};
}

}  // namespace hardover
