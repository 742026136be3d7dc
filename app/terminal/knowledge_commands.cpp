// `hardover knowledge ...`: check, count, list and show what is known.
#include <algorithm>
#include <cmath>
#include <ostream>

#include "app/jobs/json.hpp"
#include "app/jobs/page.hpp"
#include "app/jobs/rig_agreement.hpp"
#include "app/jobs/same_words_check.hpp"
#include "app/jobs/walk_text.hpp"
#include "app/reports/job_report.hpp"
#include "app/reports/knowledge_text.hpp"
#include "app/rig/functions.hpp"
#include "app/study/authored.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/words.hpp"
#include "rules/result/nearest.hpp"

namespace hardover {

namespace {

constexpr int page_width = 100;
constexpr int hanging = 8;

std::string per_cent(double share) {
    return std::to_string(std::lround(100 * share)) + " %";
}

// "piston_seal_leaking, drive_drift drifts or worse: table 71 %, 40 boats 36 %"
std::string line_of(const Knowledge& knowledge, const Disagreement& d) {
    const Finding& finding = knowledge.findings[static_cast<std::size_t>(d.finding)];
    return knowledge.causes[static_cast<std::size_t>(d.cause)].id + ", " + finding.id + " " +
           finding.readings[static_cast<std::size_t>(d.reading)].id + (d.reading > 0 ? " or worse" : "") +
           ": table " + per_cent(d.table) + ", " + std::to_string(d.sampled) + " boats " + per_cent(d.boats);
}

}  // namespace

int run_knowledge_check(Context& context, const std::string& folder, bool strict) {
    const Result<std::string> chosen =
        folder.empty() ? knowledge_folder(context) : Result<std::string>(folder);
    if (!chosen) return refuse(context, chosen.error());
    KnowledgeRead read = read_knowledge_folder(chosen.value(), rig::rig_functions());
    std::vector<Fault> faults = read.faults;
    if (read.knowledge.has_value()) {
        const std::vector<Fault> sense = check_sense(*read.knowledge);
        faults.insert(faults.end(), sense.begin(), sense.end());
        const std::vector<Fault> words = check_same_words(*read.knowledge);
        faults.insert(faults.end(), words.begin(), words.end());
        const std::vector<Fault> items = study::read_authored(*read.knowledge).faults;
        faults.insert(faults.end(), items.begin(), items.end());
    }
    const auto is_warning = [](const Fault& fault) { return fault.warning; };
    const auto warnings = std::count_if(faults.begin(), faults.end(), is_warning);
    const auto errors = static_cast<std::ptrdiff_t>(faults.size()) - warnings;
    for (const Fault& fault : faults) context.streams.out << fault.text() << "\n";
    context.streams.out << chosen.value() << ": " << errors << (errors == 1 ? " fault, " : " faults, ")
                        << warnings << (warnings == 1 ? " warning" : " warnings") << "\n";
    return errors > 0 || (strict && warnings > 0) ? 1 : 0;
}

int run_knowledge_figures(Context& context, bool json) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const nlohmann::ordered_json figures = figures_json(knowledge.value());
    if (json) {
        context.streams.out << json_text(figures) << "\n";
        return 0;
    }
    for (const auto& [kind, count] : figures.items()) context.streams.out << count << "  " << kind << "\n";
    return 0;
}

int run_knowledge_list(Context& context, const std::string& kind) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const Result<std::vector<EntryLine>> lines = entries_of_kind(knowledge.value(), kind);
    if (!lines) return refuse(context, lines.error());
    for (const EntryLine& line : lines.value()) context.streams.out << line.id << "  " << line.name << "\n";
    return 0;
}

int run_knowledge_show(Context& context, const std::string& id) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const Result<std::string> text = entry_text(knowledge.value(), id, units_in_use(context));
    if (!text) return refuse(context, text.error());
    context.streams.out << text.value();
    return 0;
}

int run_knowledge_try(Context& context, const WalkWish& wish, bool json) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const Result<Walk> walk = walk_job(knowledge.value(), wish);
    if (!walk) return refuse(context, walk.error());
    if (json) {
        context.streams.out << json_text(walk_json(knowledge.value(), walk.value())) << "\n";
        return 0;
    }
    for (const std::string& line : walk_lines(knowledge.value(), walk.value())) {
        context.streams.out << wrapped_keeping_indent(line, page_width, hanging) << "\n";
    }
    return 0;
}

int run_knowledge_try_all(Context& context, const WalkWish& wish, bool json) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    nlohmann::ordered_json walks = nlohmann::ordered_json::array();
    if (!json) context.streams.out << walk_summary_head() << "\n";
    for (const Cause& cause : knowledge.value().causes) {
        WalkWish of_cause = wish;
        of_cause.causes = {cause.id};
        const Result<Walk> walk = walk_job(knowledge.value(), of_cause);
        if (json && walk) walks.push_back(walk_json(knowledge.value(), walk.value()));
        if (json && !walk) walks.push_back({{"faults", {cause.id}}, {"error", walk.error().text()}});
        if (json) continue;
        context.streams.out << (walk ? walk_summary(knowledge.value(), walk.value())
                                     : cause.id + ": " + walk.error().text())
                            << std::endl;
    }
    if (json) context.streams.out << json_text(walks) << "\n";
    return 0;
}

int run_knowledge_compare_with_rig(Context& context, bool all, int boats, std::uint64_t seed) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const Result<Agreement> compared = compare_with_rig(knowledge.value(), {boats, seed});
    if (!compared) return refuse(context, compared.error());
    const Agreement& agreement = compared.value();
    for (const Disagreement& d : agreement.disagreements) {
        if (d.reason.empty())
            context.streams.out << "not explained: " << line_of(knowledge.value(), d) << "\n";
        if (all && !d.reason.empty()) {
            context.streams.out << "explained: " << line_of(knowledge.value(), d) << "\n    " << d.reason
                                << "\n";
        }
    }
    if (all) {
        for (const IdleReason& idle : agreement.idle) {
            context.streams.out << "explained but agreed on: "
                                << knowledge.value().causes[static_cast<std::size_t>(idle.cause)].id << ", "
                                << knowledge.value().findings[static_cast<std::size_t>(idle.finding)].id
                                << "\n";
        }
    }
    const auto explained = static_cast<int>(agreement.disagreements.size()) - agreement.unexplained();
    context.streams.out << agreement.causes << " causes on " << agreement.surveys << " boats, "
                        << agreement.pairs << " pairs of cause and finding: " << agreement.unexplained()
                        << " differences not explained, " << explained << " explained\n";
    return agreement.unexplained() == 0 ? 0 : 1;
}

}  // namespace hardover
