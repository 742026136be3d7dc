#include "app/reports/job_sheet.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <string_view>

#include "app/jobs/proved.hpp"
#include "app/jobs/rig_applies.hpp"
#include "app/jobs/rig_boat.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

namespace {

constexpr std::size_t most_reasons = 4;
constexpr std::size_t most_open_causes = 3;
constexpr double worth_telling = 2;  // decibans: below this a finding says barely anything

std::string with_stop(std::string text) {
    const bool open = !text.empty() && std::string(".?!").find(text.back()) == std::string::npos;
    return open ? text + "." : text;
}

std::string joined(const std::vector<std::string>& texts, const std::string& between) {
    std::string all;
    for (const std::string& text : texts) all += (all.empty() ? "" : between) + text;
    return all;
}

void add_new(std::vector<std::string>& list, const std::vector<std::string>& more) {
    for (const std::string& text : more) {
        if (std::find(list.begin(), list.end(), text) == list.end()) list.push_back(text);
    }
}

const AnswerLine* answer_of(const JobPage& page, const std::string& finding) {
    for (const AnswerLine& line : page.answers) {
        if (line.finding == finding) return &line;
    }
    return nullptr;
}

const CauseLine* line_of(const std::vector<CauseLine>& causes, const std::string& cause) {
    for (const CauseLine& line : causes) {
        if (line.id == cause) return &line;
    }
    return nullptr;
}

// The remedies that were tried and still count, in order, with the moment of each.
struct TriedRemedy {
    std::string at;
    Index remedy = none;
    Outcome outcome = Outcome::not_cured;
};

std::vector<TriedRemedy> tried_remedies(const Knowledge& knowledge, const Job& job, const JobPage& page) {
    std::vector<TriedRemedy> tried;
    for (std::size_t i = 0; i < job.events.size() && i < page.events.size(); ++i) {
        if (!page.events[i].counts) continue;
        const Result<Event> event = from_stored(job.events[i]);
        const Tried* one = event ? std::get_if<Tried>(&event.value()) : nullptr;
        if (one == nullptr) continue;
        const Index remedy = find(knowledge.remedies, one->remedy);
        if (remedy == none) continue;
        const Outcome outcome = one->outcome == "cured"    ? Outcome::cured
                                : one->outcome == "better" ? Outcome::better
                                                           : Outcome::not_cured;
        tried.push_back({job.events[i].at, remedy, outcome});
    }
    return tried;
}

// The causes as they stood before the work that put them right: afterwards nothing speaks for any of them.
class CausesBefore {
  public:
    CausesBefore(const Knowledge& knowledge, const Job& job, const JobPage& page)
        : knowledge_(knowledge), job_(job), page_(page) {}

    // Nothing: it is not among the likely ones of then.
    const CauseLine* line(const std::string& id) {
        return line_of(causes(work_on(find(knowledge_.causes, id))), id);
    }

  private:
    // The event to look before: the last cure by a remedy for this cause; else the first that helped with it;
    // else the last cure of all.
    std::optional<std::size_t> work_on(Index cause) const {
        std::optional<std::size_t> cure, own_cure, own_help;
        for (std::size_t i = 0; i < job_.events.size() && i < page_.events.size(); ++i) {
            const Result<Event> event = from_stored(job_.events[i]);
            const Tried* tried =
                event && page_.events[i].counts ? std::get_if<Tried>(&event.value()) : nullptr;
            if (tried == nullptr || tried->outcome == "not_cured") continue;
            const bool cured = tried->outcome == "cured";
            const bool own =
                cause != none && puts_right(knowledge_, find(knowledge_.remedies, tried->remedy), cause);
            if (cured) cure = i;
            if (cured && own) own_cure = i;
            if (!cured && own && !own_help) own_help = i;
        }
        if (own_cure) return own_cure;
        return own_help ? own_help : cure;
    }

    const std::vector<CauseLine>& causes(const std::optional<std::size_t>& work) {
        if (!work) return page_.causes;
        const auto known = by_work_.find(*work);
        if (known != by_work_.end()) return known->second;
        const auto end = job_.events.begin() + static_cast<std::ptrdiff_t>(*work);
        const Job then = replay(knowledge_, job_.number, {job_.events.begin(), end}, job_.shop);
        return by_work_[*work] = make_job_page(knowledge_, then).causes;
    }

    const Knowledge& knowledge_;
    const Job& job_;
    const JobPage& page_;
    std::map<std::size_t, std::vector<CauseLine>> by_work_;
};

// The check that proves a cause, with what it gave.
std::string proof_text(const Knowledge& knowledge, const JobPage& page, const Cause& cause) {
    std::vector<std::string> gave;
    for (const std::string& name : cause.proved_when.names()) {
        const AnswerLine* line = answer_of(page, name);
        if (line != nullptr && line->origin.rfind("told by the customer", 0) != 0) {
            gave.push_back(line->name + ": " + line->answer);
        }
    }
    if (gave.empty() || cause.proof == none) return "";
    return with_stop(knowledge.checks[cause.proof].name + ". " + joined(gave, "; "));
}

// What weighs most, but for what the proof says already.
std::vector<std::string> reasons(const std::vector<WeightText>& weights, const std::string& proof) {
    std::vector<std::string> texts;
    for (const WeightText& weight : weights) {
        if (texts.size() == most_reasons || std::abs(weight.decibans) < worth_telling) break;
        if (proof.find(weight.text) == std::string::npos) texts.push_back(weight.text);
    }
    return texts;
}

void add_open_causes(const JobPage& page, const std::string& first, SheetCause& cause) {
    for (const CauseLine& line : page.causes) {
        const bool running = line.probability >= 0.01 && line.state.rfind("ruled out", 0) != 0;
        if (line.id == first || !running || cause.also_possible.size() == most_open_causes) continue;
        cause.also_possible.push_back(line.name + ", " + line.percent);
    }
    if (!page.not_listed.empty()) cause.also_possible.push_back(page.not_listed);
}

void add_evidence(const Knowledge& knowledge, const JobPage& page, Index index, const CauseLine* before,
                  SheetCause& cause) {
    if (index != none) cause.proof = proof_text(knowledge, page, knowledge.causes[index]);
    if (before == nullptr) return;
    cause.speaks_for = reasons(before->weights_for, cause.proof);
    cause.speaks_against = reasons(before->weights_against, cause.proof);
}

SheetCause recorded_cause(const Knowledge& knowledge, const JobPage& page, const RecordedCause& recorded,
                          CausesBefore& before) {
    SheetCause cause;
    const Index index = find(knowledge.causes, recorded.cause);
    if (index != none) {
        cause.name = knowledge.causes[index].name;
    } else {
        cause.name = recorded.cause == "not_listed" ? "Something not on the list"
                                                    : "A cause that this knowledge does not have";
    }
    cause.certainty = jobs_detail::upper_first(certainty_text(recorded.confirmed));
    add_evidence(knowledge, page, index, before.line(recorded.cause), cause);
    return cause;
}

SheetCause likely_cause(const Knowledge& knowledge, const JobPage& page, CausesBefore& before) {
    SheetCause cause;
    if (page.answers.empty() || page.causes.empty()) {
        cause.name = "Not known yet";
        cause.certainty = "Nothing has been looked at yet";
        return cause;
    }
    const CauseLine& now = page.causes.front();
    const CauseLine* then = before.line(now.id);
    cause.name = now.name;
    if (now.state == "put right" && !now.proved) {
        cause.certainty = "Its remedy cured the boat; not proved";
    } else if (now.proved) {
        cause.certainty = "Proved, job still in hand";
    } else {
        cause.certainty = "Likely (" + (then != nullptr ? then->percent : "") + "), not proved yet";
    }
    add_evidence(knowledge, page, find(knowledge.causes, now.id), then, cause);
    add_open_causes(page, now.id, cause);
    return cause;
}

void add_causes(const Knowledge& knowledge, const Job& job, const JobPage& page, CausesBefore& before,
                JobSheet& sheet) {
    if (!job.handed_back) {
        sheet.cause = likely_cause(knowledge, page, before);
        return;
    }
    const std::vector<RecordedCause> causes = causes_of(*job.handed_back);
    sheet.cause = recorded_cause(knowledge, page, causes.front(), before);
    sheet.cause.note = job.handed_back->note;
    const std::string left = left_text(knowledge, job);
    if (!left.empty()) sheet.cause.note += (sheet.cause.note.empty() ? "" : " ") + left;
    for (std::size_t i = 1; i < causes.size(); ++i) {
        sheet.further_causes.push_back(recorded_cause(knowledge, page, causes[i], before));
    }
}

// What the sheet is about: the causes recorded, or the likeliest one.
std::vector<std::string> causes_told(const Job& job, const JobPage& page) {
    std::vector<std::string> ids;
    if (job.handed_back) {
        for (const RecordedCause& one : causes_of(*job.handed_back)) ids.push_back(one.cause);
    } else if (!page.causes.empty()) {
        ids.push_back(page.causes.front().id);
    }
    return ids;
}

// Whether what was found is most likely another reading than a sound boat's.
bool is_off(const Job& job, Index finding) {
    const auto evidence = job.assessment.evidence.find(finding);
    if (evidence == job.assessment.evidence.end() || evidence->second.empty()) return false;
    const auto& likelihood = evidence->second;
    return std::max_element(likelihood.begin(), likelihood.end()) != likelihood.end() - 1;
}

// "answered" says little to whoever was not asked.
std::string origin_for_owner(const std::string& origin) {
    constexpr std::string_view answered = "answered";
    return origin.starts_with(answered) ? "looked at" + origin.substr(answered.size()) : origin;
}

std::vector<SheetFinding> findings_of(const Knowledge& knowledge, const Job& job, const JobPage& page,
                                      CausesBefore& before) {
    std::set<std::string> deciding;
    for (const std::string& id : causes_told(job, page)) {
        const CauseLine* line = before.line(id);
        if (line == nullptr) continue;
        for (const WeightText& weight : line->weights_for) deciding.insert(weight.id);
    }
    std::vector<std::pair<int, SheetFinding>> ordered;
    for (const AnswerLine& line : page.answers) {
        const Index index = find(knowledge.findings, line.finding);
        if (index == none) continue;
        const Finding& finding = knowledge.findings[index];
        SheetFinding row{line.name, line.answer, "", origin_for_owner(line.origin), is_off(job, index)};
        if (!line.before_work.empty()) row.origin += ", " + line.before_work;
        if (!finding.readings.empty()) row.sound = finding.readings.back().text;
        const auto given = job.facts.answers.find(index);
        const bool open =
            given != job.facts.answers.end() && std::holds_alternative<CannotTell>(given->second.given);
        const int place = open ? 4 : row.off && deciding.count(line.finding) > 0 ? 0 : row.off ? 1 : 2;
        ordered.emplace_back(place, std::move(row));
    }
    std::stable_sort(ordered.begin(), ordered.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<SheetFinding> findings;
    for (auto& [place, row] : ordered) findings.push_back(std::move(row));
    return findings;
}

void add_work(const Knowledge& knowledge, const Job& job, const JobPage& page, const SheetHead& head,
              JobSheet& sheet) {
    std::vector<Index> sources;
    std::set<Index> of_the_work;
    for (const TriedRemedy& tried : tried_remedies(knowledge, job, page)) {
        const Remedy& remedy = knowledge.remedies[tried.remedy];
        SheetWork work{head.day(tried.at), remedy.name, outcome_text(tried.outcome), {}};
        for (const PricedPart& part : remedy.parts) work.parts.push_back(part.part);
        sheet.work.push_back(std::move(work));
        add_new(sheet.figures, remedy.figures);
        if (!remedy.figures.empty())
            sources.insert(sources.end(), remedy.sources.begin(), remedy.sources.end());
        if (tried.outcome != Outcome::not_cured) add_new(sheet.after, remedy.after);
        of_the_work.insert(remedy.cautions.begin(), remedy.cautions.end());
    }
    sheet.figure_sources = source_text(knowledge, sources);
    // In full what the rules raised for this boat; of the work's own, how not to be hurt.
    for (const CautionText& caution : page.cautions) {
        of_the_work.erase(find(knowledge.cautions, caution.id));
        sheet.cautions.push_back({caution.name, with_stop(caution.hurts) + " " + with_stop(caution.avoid)});
    }
    for (const Index index : of_the_work) {
        sheet.cautions.push_back(
            {knowledge.cautions[index].name, with_stop(knowledge.cautions[index].avoid)});
    }
}

void add_duties(const Knowledge& knowledge, const Job& job, const JobPage& page, JobSheet& sheet) {
    if (!page.stops.empty()) {
        for (const Index stop : job.assessment.stops) {
            sheet.stops.push_back({knowledge.stops[stop].name, with_stop(knowledge.stops[stop].text)});
        }
    }
    for (const Index index : job.assessment.deferrals) {
        const Deferral& deferral = knowledge.deferrals[index];
        sheet.deferrals.push_back(
            {deferral.name, with_stop(deferral.text) + " Left to: " + with_stop(deferral.to)});
    }
}

// What the sketch rests on, and what of it nobody has told.
std::string sketch_note_of(const Knowledge& knowledge, const Job& job) {
    const std::vector<std::string> taken = rig_fields_taken_as_usual(knowledge, job.facts);
    std::string note =
        "To scale: rams, their pins and brackets, worked out for this stroke; not measured on this boat. "
        "Hull, "
        "drive, helm, reservoir and hoses are symbols. Full hose: steers to starboard; dashed: to port.";
    if (!taken.empty()) note += " Not told, taken as usual: " + joined(taken, ", ") + ".";
    return note;
}

void add_sketch(const Knowledge& knowledge, const Job& job, JobSheet& sheet) {
    const Result<drawing::RigPlan> plan = drawing::plan_of(boat_of_rig(knowledge, job.facts, rig::Boat{}));
    const Result<drawing::RigSketch> sketch = plan ? drawing::rig_sketch(plan.value(), {}, job.shop.units)
                                                   : Result<drawing::RigSketch>(plan.error());
    if (!sketch) {
        sheet.sketch_note = "No sketch: " + sketch.error().what + ".";
        return;
    }
    sheet.sketch = sketch.value();
    sheet.sketch_note = sketch_note_of(knowledge, job);
}

void add_told(const Knowledge& knowledge, const Job& job, const JobPage& page, JobSheet& sheet) {
    for (const ChoiceText& complaint : page.complaints) {
        if (complaint.chosen) sheet.complaints.push_back(complaint.text);
    }
    for (const ChoiceText& history : page.histories) {
        if (history.chosen) sheet.history = history.text;
    }
    for (const RigLine& line : page.rig) {
        if (line.value.empty()) continue;
        const Index field = find(knowledge.rig_fields, line.id);
        if (line.assumed && !jobs_detail::applies_here(knowledge, job, field)) continue;
        sheet.rig.push_back({line.name, line.value + (line.assumed ? " (assumed)" : "")});
    }
    sheet.assumptions = page.assumptions;
    sheet.notes = page.notes;
    sheet.photos = page.photos;
    if (!page.apart.empty()) sheet.notes.push_back(page.apart);
    if (!page.other_knowledge.empty()) sheet.notes.push_back(page.other_knowledge);
    if (!page.conflict.empty()) sheet.notes.push_back(page.conflict);
    add_new(sheet.notes, page.left_out);
}

}  // namespace

JobSheet make_job_sheet(const Knowledge& knowledge, const Job& job, const JobPage& page,
                        const SheetHead& head) {
    JobSheet sheet;
    sheet.shop = head.shop;
    sheet.number = job.number;
    sheet.boat = job.boat;
    sheet.state = page.phase;
    sheet.words = job.words;
    if (!job.events.empty()) {
        sheet.at = job.events.back().at;
        sheet.day = head.day(sheet.at);
        sheet.opened = head.day(job.events.front().at);
    }
    add_duties(knowledge, job, page, sheet);
    add_told(knowledge, job, page, sheet);
    CausesBefore before(knowledge, job, page);
    add_causes(knowledge, job, page, before, sheet);
    add_work(knowledge, job, page, head, sheet);
    sheet.findings = findings_of(knowledge, job, page, before);
    add_sketch(knowledge, job, sheet);
    return sheet;
}

}  // namespace hardover
