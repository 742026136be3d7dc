#include "app/study/practice_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <set>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/walk_setting.hpp"
#include "app/jobs/wording.hpp"
#include "app/study/practice_marks.hpp"

namespace hardover::study::practice {

using namespace jobs_detail;

namespace {

constexpr std::size_t most_near = 12;
constexpr double clear_lead = 2;    // times the next cause's probability
constexpr double finding_it = 0.5;  // half-guided: the expert leads until a cause stands at this

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

std::string clock_text(double minutes) {
    return std::lround(minutes) <= 0 ? "Not begun yet" : spent_text(minutes) + " so far";
}

std::string guidance_text(Guidance guidance) {
    switch (guidance) {
        case Guidance::worked:
            return "A worked boat: every step is the expert's, with its reason. Do it and see what comes of "
                   "it. You may leave the path at any time.";
        case Guidance::half:
            return "The expert leads until one cause stands out. Proving it and putting it right are yours.";
        case Guidance::nudged:
            return "You lead. A nudge stands here before every step.";
        case Guidance::unaided:
            return "You lead. Help is there when you ask for it, and is counted.";
    }
    return "";
}

// How an answer is said: the figure or reading, and what a worksheet makes of figures.
std::string found_text(const Session& session, const Work& work, UnitSystem units) {
    const Knowledge& knowledge = session.knowledge();
    std::vector<std::string> texts;
    const auto add = [&](Index finding, const Answer& answer, bool alone) {
        const std::string text = answer_text(knowledge, finding, answer, units);
        texts.push_back(alone ? text : at(knowledge.findings, finding).name + ": " + text);
    };
    const bool alone = work.answers.size() == 1 && work.answers.front().finding == work.index;
    for (const BoatAnswer& given : work.answers) {
        if (!std::holds_alternative<CannotTell>(given.answer.given)) add(given.finding, given.answer, alone);
    }
    const Finding& entry = at(knowledge.findings, work.index);
    const bool told = std::any_of(work.answers.begin(), work.answers.end(),
                                  [&](const BoatAnswer& given) { return given.finding == work.index; });
    if (entry.from && !told) {
        Situation situation(session.prepared(), work.after);
        const std::optional<Answer>& worked = situation.answer_to(work.index);
        if (worked) add(work.index, *worked, false);
    }
    std::string text;
    for (const std::string& one : texts) text += (text.empty() ? "" : "; ") + one;
    return text.empty() ? "measured, but it says nothing by itself" : text;
}

std::string answered_as(const Session& session, Index finding, UnitSystem units) {
    const auto answer = session.facts().answers.find(finding);
    if (answer == session.facts().answers.end() || !answered_now(session.facts(), finding)) return "";
    return answer_text(session.knowledge(), finding, answer->second, units);
}

FindingItem item_of(const Session& session, Index finding, UnitSystem units) {
    const Finding& entry = at(session.knowledge().findings, finding);
    const Asked event{entry.id};
    return {entry.id,
            entry.name,
            entry.ask,
            minutes_text(session.minutes_of(event)),
            answered_as(session, finding, units),
            entry.check == none ? "" : at(session.knowledge().checks, entry.check).name};
}

// How much each finding has to do with the causes that bring this complaint.
std::vector<Index> near_findings(const Session& session) {
    const Knowledge& knowledge = session.knowledge();
    const auto& network = *session.prepared().network();
    const std::vector<bool> none_gone{false};
    const auto& says = at(knowledge.complaints, session.boat().complaint).says;
    std::map<Index, double> weights;
    Situation situation(session.prepared(), session.boat().told);
    for (std::size_t c = 0; c < knowledge.causes.size(); ++c) {
        const auto cause = static_cast<Index>(c);
        double weight = knowledge.causes[c].odds[static_cast<std::size_t>(session.boat().told.history)];
        if (weight <= 0 || situation.holds(session.prepared().cause_possible_when(cause)) == Truth::no) {
            continue;
        }
        for (const auto& [finding, reading] : says) {
            weight *= chances_of(network, {cause}, none_gone, finding)[static_cast<std::size_t>(reading)];
        }
        for (const Shows& shows : knowledge.causes[c].shows) {
            if (session.makes_sense(shows.finding)) weights[shows.finding] += weight;
        }
    }
    std::vector<std::pair<double, Index>> heaviest;
    for (const auto& weighed : weights) {
        const bool said = std::any_of(says.begin(), says.end(),
                                      [&](const auto& told) { return told.first == weighed.first; });
        if (!said) heaviest.emplace_back(weighed.second, weighed.first);
    }
    std::stable_sort(heaviest.begin(), heaviest.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    heaviest.resize(std::min(heaviest.size(), most_near));
    std::vector<Index> found;
    for (const auto& [weight, finding] : heaviest) found.push_back(finding);
    std::sort(found.begin(), found.end());  // the order does not give it away
    return found;
}

void add_lists(const Session& session, UnitSystem units, Page& page) {
    const Knowledge& knowledge = session.knowledge();
    for (const Index finding : near_findings(session)) {
        page.near.push_back(item_of(session, finding, units));
    }
    for (std::size_t p = 0; p < knowledge.parts.size(); ++p) {
        FindingGroup group{knowledge.parts[p].id, knowledge.parts[p].name, {}};
        for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
            const auto finding = static_cast<Index>(f);
            if (knowledge.findings[f].part == static_cast<Index>(p) && session.makes_sense(finding)) {
                group.items.push_back(item_of(session, finding, units));
            }
        }
        if (!group.items.empty()) page.parts.push_back(std::move(group));
    }
    FindingGroup rest{"other", "Anything else", {}};
    for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
        const auto finding = static_cast<Index>(f);
        if (knowledge.findings[f].part == none && session.makes_sense(finding)) {
            rest.items.push_back(item_of(session, finding, units));
        }
    }
    if (!rest.items.empty()) page.parts.push_back(std::move(rest));
}

void add_causes(const Session& session, Page& page) {
    const Knowledge& knowledge = session.knowledge();
    Situation situation(session.prepared(), session.boat().told);
    std::set<Index> remedies;
    for (std::size_t p = 0; p <= knowledge.parts.size(); ++p) {
        const Index part = p < knowledge.parts.size() ? static_cast<Index>(p) : none;
        for (std::size_t c = 0; c < knowledge.causes.size(); ++c) {
            const Cause& cause = knowledge.causes[c];
            const auto& possible = session.prepared().cause_possible_when(static_cast<Index>(c));
            if (cause.part != part || situation.holds(possible) == Truth::no) continue;
            const std::string name = part == none ? "" : at(knowledge.parts, part).name;
            page.causes.push_back({cause.id, cause.name, cause.about, name});
            if (!remedies.insert(cause.remedy).second) continue;
            const Remedy& remedy = at(knowledge.remedies, cause.remedy);
            page.remedies.push_back({remedy.id, remedy.name,
                                     "About " + minutes_text(session.minutes_of(Remedied{remedy.id})) +
                                         " with its parts and a trial run.",
                                     name});
        }
    }
}

void add_sheets(const Session& session, UnitSystem units, Page& page) {
    Situation situation(session.prepared(), session.facts());
    for (std::size_t w = 0; w < session.knowledge().worksheets.size(); ++w) {
        const WorkedSheet& sheet = situation.worked(static_cast<Index>(w));
        const bool measured = std::any_of(
            session.knowledge().worksheets[w].inputs.begin(), session.knowledge().worksheets[w].inputs.end(),
            [&](const WorksheetInput& input) { return session.facts().answers.contains(input.finding); });
        if (measured) page.sheets.push_back(sheet_text(session.knowledge(), sheet, units));
    }
}

// Where the expert leaves the boat to the apprentice.
std::string where_it_stands(const Knowledge& knowledge, const std::vector<RankedCause>& ranking) {
    std::vector<RankedCause> open;
    std::copy_if(ranking.begin(), ranking.end(), std::back_inserter(open),
                 [](const RankedCause& cause) { return !cause.put_right; });
    if (open.empty()) return "The expert stops here: nothing on the list is left.";
    const RankedCause& first = open.front();
    const Cause& cause = at(knowledge.causes, first.cause);
    const std::string name = quoted(cause.name);
    if (first.proved) return fmt::format("The expert stops here: {} is proved. Put it right.", name);
    const double next = open.size() > 1 ? open[1].probability : 0;
    const char* how = first.probability >= finding_it          ? "stands out"
                      : first.probability >= clear_lead * next ? "leads"
                                                               : "leads by little";
    return fmt::format("The expert stops here: {} {}. {}, or look further.", name, how,
                       cause.proof == none ? "Put it right" : "Prove it");
}

void add_help(const Session& session, Page& page) {
    if (session.phase() != Session::Phase::working) return;
    const Guidance guidance = session.begun().guidance;
    if (guidance == Guidance::unaided) return;
    if (guidance == Guidance::nudged) {
        page.help = hint_text(session, 1);
        return;
    }
    const Assessment now = assess(session.prepared(), session.facts(), Detail{false, false});
    const bool still_finding =
        now.ranking.front().probability < finding_it &&
        (now.next.kind == NextStep::Kind::ask || now.next.kind == NextStep::Kind::check);
    if (guidance == Guidance::half && !still_finding) {
        page.help = {where_it_stands(session.knowledge(), now.ranking)};
        return;
    }
    page.led = next_step_advice(session.prepared(), session.facts());
}

// What is asked of a rig only because it has something else says nothing of one that has not.
bool applies(const rig::Boat& boat, const std::string& field) {
    if (field == "assist") return boat.helm == rig::Boat::Helm::manual_pump;
    if (field == "tie_bar" || field == "drive_spacing") return boat.drives > 1;
    return true;
}

void add_boat(const Session& session, UnitSystem units, Page& page) {
    const Knowledge& knowledge = session.knowledge();
    const PracticeBoat& boat = session.boat();
    const PracticeLevel& level = practice_levels()[static_cast<std::size_t>(boat.level - 1)];
    // Who knows the seed of a boat that counts for a class can work on it at leisure first.
    const std::string seed = session.begun().of_a_set ? "" : fmt::format(" {}", boat.seed);
    page.title = fmt::format("Practice boat{} · level {}, {}", seed, boat.level, lower_first(level.name));
    page.about_level = level.what;
    page.customer = quoted(upper_first(boat.words));
    page.complaint = at(knowledge.complaints, boat.complaint).name;
    page.history = at(knowledge.histories, boat.told.history).name;
    for (const auto& [field, value] : boat.told.rig) {
        const RigField& entry = at(knowledge.rig_fields, field);
        if (!applies(boat.rig, entry.id)) continue;
        page.rig.push_back({entry.name, said_rig_value(entry, value, units), false, true});
    }
}

}  // namespace

std::string spent_text(double minutes) {
    const long whole = std::lround(minutes);
    return whole < 60 ? fmt::format("{} min", whole) : fmt::format("{} h {} min", whole / 60, whole % 60);
}

WorkLine work_line(const Session& session, const Work& work, UnitSystem units) {
    const Knowledge& knowledge = session.knowledge();
    WorkLine line;
    line.minutes = minutes_text(work.minutes);
    switch (work.kind) {
        case Work::Kind::ask: {
            line.text = at(knowledge.findings, work.index).name;
            line.found = found_text(session, work, units);
            break;
        }
        case Work::Kind::remedy:
            line.text = at(knowledge.remedies, work.index).name;
            line.found = *work.outcome == Outcome::cured    ? "cured: the boat is right"
                         : *work.outcome == Outcome::better ? "better, but something is still wrong"
                                                            : "no change, the boat came back as it was";
            break;
        case Work::Kind::call_for_help:
            line.text = "Called for help";
            line.found = "somebody else finds it";
            break;
    }
    return line;
}

std::vector<std::string> what_happened(const Session& session, UnitSystem units) {
    std::vector<std::string> lines;
    if (session.events().empty()) return lines;
    const std::size_t event = session.events().size() - 1;
    for (const Work& work : session.work()) {
        if (work.event != event) continue;
        const WorkLine line = work_line(session, work, units);
        lines.push_back(fmt::format("{}: {} ({})", line.text, line.found, line.minutes));
    }
    if (const auto* proved = std::get_if<Proved>(&session.events().back())) {
        const Index cause = find(session.knowledge().causes, proved->cause);
        const std::string name = quoted(at(session.knowledge().causes, cause).name);
        const Truth truth = session.proof_of(cause);
        lines.push_back(truth == Truth::yes  ? fmt::format("That proves {}.", name)
                        : truth == Truth::no ? fmt::format("That speaks against {}: it is not proved.", name)
                                             : fmt::format("That does not settle {} yet.", name));
    }
    return lines;
}

Page make_page(const Session& session, UnitSystem units) {
    Page page;
    add_boat(session, units, page);
    page.guidance = guidance_text(session.begun().guidance);
    page.clock = clock_text(session.minutes());
    page.phase = session.phase() == Session::Phase::ended   ? "Handed over"
                 : session.phase() == Session::Phase::cured ? "Checks after"
                                                            : "Finding the cause";
    for (const Work& work : session.work()) page.work.push_back(work_line(session, work, units));
    for (const Statement& statement : session.statements()) {
        page.statements.push_back(fmt::format(
            "{}, {:.0f} in 100", at(session.knowledge().causes, statement.cause).name, 100 * statement.sure));
    }
    if (session.boat_is_right()) {
        for (const auto& [remedy, outcome] : session.facts().tried) {
            const Remedy& entry = at(session.knowledge().remedies, remedy);
            if (outcome != Outcome::not_cured) {
                page.after.insert(page.after.end(), entry.after.begin(), entry.after.end());
            }
        }
    }
    add_lists(session, units, page);
    add_causes(session, page);
    add_sheets(session, units, page);
    add_help(session, page);
    return page;
}

}  // namespace hardover::study::practice
