#include "app/jobs/assessed_mark.hpp"

#include <fmt/format.h>

#include <iterator>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/replay.hpp"
#include "app/records/whole_file.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

using Text = std::back_insert_iterator<std::string>;

// What is compared goes through text; half a digest is more than enough to tell two apart.
std::string digest(const std::string& text) {
    return sha256_of(text).substr(0, 32);
}

template <typename E>
std::string id_of(const std::vector<E>& entries, Index index) {
    return index == none ? "-" : entries[static_cast<std::size_t>(index)].id;
}

template <typename E, typename Indices>
void list(Text& out, const char* what, const std::vector<E>& entries, const Indices& indices) {
    for (const Index index : indices) fmt::format_to(out, "{} {}\n", what, id_of(entries, index));
}

std::string answer_id(const Finding& finding, const Answer& answer) {
    if (const int* reading = std::get_if<int>(&answer.given)) {
        return finding.readings[static_cast<std::size_t>(*reading)].id;
    }
    if (const Quantity* quantity = std::get_if<Quantity>(&answer.given)) {
        return exact_text(*quantity, *finding.unit);
    }
    return "cannot_tell";
}

std::string told(const Knowledge& knowledge, const Facts& facts) {
    std::string text;
    Text out(text);
    fmt::format_to(out, "history {}\n", id_of(knowledge.histories, facts.history));
    list(out, "complaint", knowledge.complaints, facts.complaints);
    list(out, "unavailable", knowledge.needs, facts.unavailable);
    for (const auto& [index, value] : facts.rig) {
        const RigField& field = knowledge.rig_fields[static_cast<std::size_t>(index)];
        const Quantity* quantity = std::get_if<Quantity>(&value);
        fmt::format_to(
            out, "rig {} {}\n", field.id,
            quantity != nullptr ? exact_text(*quantity, *field.unit) : std::get<std::string>(value));
    }
    const auto answer = [&](Index index, int stage, const Answer& given) {
        const Finding& finding = knowledge.findings[static_cast<std::size_t>(index)];
        fmt::format_to(out, "answer {} {} {}\n", finding.id, stage, answer_id(finding, given));
    };
    for (const EarlierAnswer& earlier : facts.earlier) answer(earlier.finding, earlier.stage, earlier.answer);
    for (const auto& [index, given] : facts.answers) {
        const auto at = facts.answered_at.find(index);
        answer(index, at == facts.answered_at.end() ? 0 : at->second, given);
    }
    for (const auto& [index, outcome] : facts.tried) {
        fmt::format_to(out, "tried {} {}\n", id_of(knowledge.remedies, index), outcome_text(outcome));
    }
    return text;
}

std::string made_of_it(const Knowledge& knowledge, const Assessment& assessment) {
    std::string text;
    Text out(text);
    for (const FiredRule& fired : assessment.fired) {
        fmt::format_to(out, "rule {}\n", id_of(knowledge.rules, fired.rule));
    }
    list(out, "caution", knowledge.cautions, assessment.cautions);
    list(out, "deferral", knowledge.deferrals, assessment.deferrals);
    list(out, "stop", knowledge.stops, assessment.stops);
    list(out, "assumed", knowledge.rig_fields, assessment.assumed);
    for (const WorkedSheet& sheet : assessment.worksheets) {
        if (sheet.worksheet == none || !sheet.complete()) continue;
        const Worksheet& worksheet = knowledge.worksheets[static_cast<std::size_t>(sheet.worksheet)];
        for (std::size_t r = 0; r < sheet.results.size() && r < worksheet.results.size(); ++r) {
            const auto result = quantity_of(sheet.results[r]);
            if (!result) continue;
            fmt::format_to(out, "worksheet {}.{} {:.6g}\n", worksheet.id, worksheet.results[r].id,
                           in_unit(*result, worksheet.results[r].unit));
        }
    }
    return text;
}

std::string odds(const Knowledge& knowledge) {
    std::string text;
    Text out(text);
    for (const Cause& cause : knowledge.causes) {
        fmt::format_to(out, "{} {:.9g}\n", cause.id, fmt::join(cause.odds, " "));
        for (const Shows& shows : cause.shows) {
            fmt::format_to(out, " {:.9g}\n", fmt::join(shows.how_often, " "));
        }
    }
    fmt::format_to(out, "{:.9g}\n", knowledge.settings.not_listed_odds);
    return text;
}

std::string ranked(const Knowledge& knowledge, const Assessment& assessment) {
    std::string text;
    Text out(text);
    // By cause, not by rank: two that are as probable as each other may change places.
    std::vector<double> probability(knowledge.causes.size(), 0);
    for (const RankedCause& one : assessment.ranking) {
        probability[static_cast<std::size_t>(one.cause)] = one.probability;
    }
    for (std::size_t i = 0; i < probability.size(); ++i) {
        fmt::format_to(out, "{} {:.6f}\n", knowledge.causes[i].id, probability[i]);
    }
    fmt::format_to(out, "not_listed {:.6f}\nseveral {:.6f}\n", assessment.not_listed, assessment.several);
    return text;
}

}  // namespace

AssessedMark assessed_mark(const Knowledge& knowledge, const Facts& facts, const Assessment& assessment) {
    return {knowledge.fingerprint, digest(odds(knowledge)),
            digest(told(knowledge, facts) + made_of_it(knowledge, assessment)),
            digest(ranked(knowledge, assessment))};
}

}  // namespace hardover
