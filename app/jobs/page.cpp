// The job page put together from its parts.
#include "app/jobs/page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/complaint_order.hpp"
#include "app/jobs/page_parts.hpp"
#include "app/jobs/photos.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

constexpr double least_several = 0.05;

std::string phase_text(StepCard::Kind kind) {
    switch (kind) {
        case StepCard::Kind::intake:
            return "Intake";
        case StepCard::Kind::question:
        case StepCard::Kind::check:
        case StepCard::Kind::call_for_help:
            return "Finding the cause";
        case StepCard::Kind::prove:
            return "Proving it";
        case StepCard::Kind::remedy:
            return "Putting it right";
        case StepCard::Kind::after:
            return "Checks after";
        case StepCard::Kind::handed_back:
            return "Handed back";
    }
    return "";
}

// Every entry as a choice; `chosen` decides by index.
template <typename E, typename Chosen>
std::vector<ChoiceText> choices(const std::vector<E>& entries, const Chosen& chosen) {
    std::vector<ChoiceText> texts;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        texts.push_back({entries[i].id, entries[i].name, chosen(static_cast<Index>(i))});
    }
    return texts;
}

std::string apart_text(const std::vector<JobNumber>& twins) {
    if (twins.empty()) return "";
    std::vector<std::string> numbers;
    for (const JobNumber twin : twins) numbers.push_back(fmt::format("job {}", twin));
    return fmt::format(
        "This job went on differently on two computers and is kept twice: see {} too. "
        "Go on with one of them, and note in the other which.",
        listed(numbers));
}

void add_told(const View& view, JobPage& page) {
    const Facts& facts = view.job.facts;
    page.histories = choices(view.knowledge.histories, [&facts](Index i) { return facts.history == i; });
    for (const Index i : complaints_nearest_first(view.knowledge, view.job.words)) {
        const Complaint& complaint = view.knowledge.complaints[static_cast<std::size_t>(i)];
        page.complaints.push_back({complaint.id, complaint.name, facts.complaints.count(i) > 0});
    }
    page.needs = choices(view.knowledge.needs, [&facts](Index i) { return facts.unavailable.count(i) == 0; });
    for (const Index barred : view.job.assessment.barred) {
        page.needs[static_cast<std::size_t>(barred)].text += " (not to be had as the boat stands now)";
    }
    page.rig = rig_lines(view);
    page.notes = view.job.notes;
    for (const Attached& photo : view.job.photos) page.photos.push_back(photo_name(photo));
    page.apart = apart_text(view.job.twins);
    page.left_out = view.job.left_out;
    if (view.job.knowledge != view.knowledge.fingerprint) {
        page.other_knowledge =
            "This job was started with another state of the knowledge than today's. "
            "What it says now may differ from what it said then.";
    }
}

// The reasoning names rules by their ids; a person is told what each says.
std::string conflict_text(const Knowledge& knowledge, const std::string& conflict) {
    constexpr const char* id_letters = "abcdefghijklmnopqrstuvwxyz0123456789_";
    std::string text;
    for (std::size_t at = 0; at < conflict.size();) {
        std::size_t end = conflict.find_first_not_of(id_letters, at);
        if (end == at) end = at + 1;
        const std::string word = conflict.substr(at, end - at);
        const Index rule = find(knowledge.rules, word);
        text += rule == none ? word : quoted(knowledge.rules[rule].why);
        at = std::min(end, conflict.size());
    }
    return text;
}

void add_odds(View& view, JobPage& page) {
    const Assessment& assessment = view.job.assessment;
    page.causes = cause_lines(view);
    page.put_right = put_right_lines(view);
    page.not_listed_probability = assessment.not_listed;
    page.not_listed = fmt::format("Something not on this list: {}", percent_text(assessment.not_listed));
    if (assessment.several >= least_several) {
        page.several = fmt::format("More than one fault: {}", percent_text(assessment.several));
    }
    page.conflict = conflict_text(view.knowledge, assessment.conflict);
}

void add_way_ahead(const View& view, JobPage& page) {
    const Assessment& assessment = view.job.assessment;
    page.plan = plan_lines(view);
    const bool over =
        page.card.kind == StepCard::Kind::after || page.card.kind == StepCard::Kind::handed_back;
    if (over) return;
    page.minutes_left =
        fmt::format("About {} until the boat is right", minutes_text(assessment.minutes_left));
    for (const NextStep& step : assessment.also) {
        page.also.push_back(
            fmt::format("{}, about {}", step_line(view.knowledge, step), minutes_text(step.minutes)));
    }
}

void add_duties(View& view, JobPage& page) {
    const Assessment& assessment = view.job.assessment;
    // A boat that was cured and handed back may run again; what stopped it stands in its log.
    const bool runs_again = view.job.handed_back && assessment.next.kind == NextStep::Kind::done;
    for (const Index stop : assessment.stops) {
        if (runs_again) break;
        const Stop& entry = view.knowledge.stops[stop];
        page.stops.push_back(fmt::format("{}: {}", entry.name, sentence(entry.text)));
    }
    page.cautions = caution_texts(view.knowledge, assessment.cautions);
    for (const Index deferral : assessment.deferrals) {
        page.deferrals.push_back(deferral_text(view.knowledge.deferrals[deferral]));
    }
    for (const FiredRule& fired : assessment.fired) {
        const std::string because = spoken_because(view, fired.because);
        const std::string why = sentence(view.knowledge.rules[fired.rule].why);
        page.trace.push_back(because.empty() ? why
                                             : fmt::format("Because {}: {}", because, lower_first(why)));
    }
}

}  // namespace

JobPage make_job_page(const PreparedKnowledge& prepared, const Job& job) {
    View view(prepared, job);
    JobPage page;
    page.title = fmt::format("Job {} · {}", job.number, job.boat);
    page.words = job.words;
    page.card = next_card(view);
    page.phase = phase_text(page.card.kind);
    add_told(view, page);
    page.answers = answer_lines(view);
    add_odds(view, page);
    add_way_ahead(view, page);
    page.sheets = sheet_texts(view);
    add_duties(view, page);
    page.assumptions = assumption_lines(view);
    page.events = event_lines(view);
    return page;
}

}  // namespace hardover
