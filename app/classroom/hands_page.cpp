#include "app/classroom/hands_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/wording.hpp"
#include "rules/reasoning/assessment.hpp"

namespace hardover::classroom {

using namespace study::practice;
using namespace jobs_detail;

namespace {

constexpr std::size_t most_bars = 5;  // what can be read across a room

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

std::string letter_of(std::size_t choice) {
    return std::string(1, static_cast<char>('A' + choice));
}

std::string hands_text(int hands) {
    return hands == 1 ? "1 hand" : fmt::format("{} hands", hands);
}

ChoiceLine line_of(const Session& session, const PracticeEvent& choice) {
    const Knowledge& knowledge = session.knowledge();
    const auto minutes = [&] { return "about " + minutes_text(session.minutes_of(choice)); };
    ChoiceLine line;
    if (session.minutes_of(choice) > 0) line.minutes = minutes_text(session.minutes_of(choice));
    if (const auto* asked = std::get_if<Asked>(&choice)) {
        const Index finding = find(knowledge.findings, asked->finding);
        if (finding == none) return line;
        const Finding& entry = at(knowledge.findings, finding);
        line.name = entry.name;
        line.note = entry.check == none ? "Look or ask, " + minutes()
                                        : at(knowledge.checks, entry.check).name + ", " + minutes();
    } else if (const auto* said = std::get_if<Suspected>(&choice)) {
        const Index cause = find(knowledge.causes, said->cause);
        line.name = cause == none ? "Something else" : at(knowledge.causes, cause).name;
        const Index part = cause == none ? none : at(knowledge.causes, cause).part;
        line.note = part == none ? "" : at(knowledge.parts, part).name;
    } else if (const auto* done = std::get_if<Remedied>(&choice)) {
        const Index remedy = find(knowledge.remedies, done->remedy);
        if (remedy == none) return line;
        line.name = at(knowledge.remedies, remedy).name;
        line.note = "Put right and try, " + minutes();
    } else if (const auto* over = std::get_if<HandedOver>(&choice)) {
        line.name = over->checked ? "Do the checks, then hand over" : "Hand over as it is";
    } else {
        line.name = "Call for help";
        line.note = minutes();
    }
    return line;
}

std::map<Index, double> probabilities(const Session& session, const Facts& facts) {
    std::map<Index, double> found;
    const Assessment now = assess(session.prepared(), facts, Detail{false, false});
    for (const RankedCause& cause : now.ranking) found[cause.cause] = cause.probability;
    found[none] = now.not_listed;
    return found;
}

// Once it may be told what was wrong.
bool told(const ShowOfHands& boat) {
    return boat.fault_shown() || boat.session().phase() != Session::Phase::working;
}

// The first causes and something not listed, the likeliest first; and what is wrong, wherever it stands, once
// it may be told.
std::vector<RankBar> ranking(const ShowOfHands& boat) {
    const Session& session = boat.session();
    const auto& faults = session.boat().faults;
    const auto now = probabilities(session, session.facts());
    const auto before = session.work().empty() ? now : probabilities(session, session.work().back().before);
    std::vector<std::pair<Index, double>> order(now.begin(), now.end());
    std::stable_sort(order.begin(), order.end(),
                     [](const auto& a, const auto& b) { return a.second > b.second; });
    std::vector<RankBar> bars;
    for (const auto& [cause, probability] : order) {
        const bool true_fault = told(boat) && std::find(faults.begin(), faults.end(), cause) != faults.end();
        const bool among_first = bars.size() < most_bars && probability > 0;
        if (!among_first && !true_fault) continue;
        RankBar bar;
        bar.name = cause == none ? "Something not on this list" : at(session.knowledge().causes, cause).name;
        bar.probability = probability;
        bar.before = before.at(cause);
        bar.percent = percent_text(probability);
        const std::string before_text = percent_text(bar.before);
        if (before_text != bar.percent) bar.moved = "was " + before_text;
        bar.true_fault = true_fault;
        bars.push_back(std::move(bar));
    }
    return bars;
}

// What the last piece of work came to. Votes on the cause and cautions come between.
std::vector<std::string> happened(const Session& session, UnitSystem units) {
    std::vector<std::string> lines;
    if (session.work().empty()) return lines;
    const std::size_t event = session.work().back().event;
    for (const Work& work : session.work()) {
        if (work.event != event) continue;
        const WorkLine line = work_line(session, work, units);
        lines.push_back(fmt::format("{}: {}.", line.text, line.found));
    }
    return lines;
}

std::string before_step(std::size_t after, std::size_t all) {
    return after >= all ? "after the last step" : fmt::format("before step {}", after + 1);
}

}  // namespace

BallotPage ballot_page(const ShowOfHands& boat, const Ballot& ballot) {
    BallotPage page;
    page.asks = ballot.asks;
    page.question = ballot.asks == Asks::cause       ? "What is wrong?"
                    : boat.session().boat_is_right() ? "The boat is right. What now?"
                                                     : "What do we do next?";
    for (std::size_t i = 0; i < ballot.choices.size(); ++i) {
        ChoiceLine line = line_of(boat.session(), ballot.choices[i]);
        line.letter = letter_of(i);
        page.choices.push_back(std::move(line));
    }
    return page;
}

std::string count_text(const Ballot& ballot, const std::vector<int>& hands) {
    const int all = all_hands(hands);
    if (all == 0) return "No hands yet. Count them, or choose without.";
    if (const auto most = majority(hands)) {
        return fmt::format("{}. Most for {}.", hands_text(all), letter_of(*most));
    }
    const int highest = *std::max_element(hands.begin(), hands.end());
    std::vector<std::string> level;
    for (std::size_t i = 0; i < ballot.choices.size() && i < hands.size(); ++i) {
        if (hands[i] == highest) level.push_back(letter_of(i));
    }
    return fmt::format("{}. {} are level: choose one.", hands_text(all), listed(level));
}

HandsPage hands_page(const ShowOfHands& boat, UnitSystem units) {
    const Session& session = boat.session();
    const Page practice = make_page(session, units);
    HandsPage page;
    page.title = fmt::format("Class boat {} · level {}", session.boat().seed, session.boat().level);
    page.customer = practice.customer;
    page.complaint = practice.complaint;
    page.history = practice.history;
    page.rig = practice.rig;
    page.clock = practice.clock;
    page.ranking = ranking(boat);
    page.happened = happened(session, units);
    if (boat.agreed()) {
        page.agreed = AgreedStep{work_card(session, *boat.agreed()), {}};
        page.agreed->cautions = caution_questions(session, *boat.agreed());
    }
    page.after = practice.after;
    page.right = session.boat_is_right();
    page.ended = boat.ended();
    page.fault_shown = boat.fault_shown();
    if (told(boat)) {
        for (const Index fault : session.boat().faults)
            page.faults.push_back(at(session.knowledge().causes, fault).name);
    }
    return page;
}

std::vector<VoteTold> votes_told(const ShowOfHands& boat) {
    std::vector<VoteTold> votes;
    const std::size_t all_work = boat.session().work().size();
    for (const Vote& vote : boat.votes()) {
        const Voted& voted = vote.voted;
        VoteTold one;
        one.step = vote.after + 1;
        one.heading = fmt::format("{}: {}", upper_first(before_step(vote.after, all_work)),
                                  voted.ballot.asks == Asks::cause ? "what is wrong?" : "what next?");
        const BallotPage page = ballot_page(boat, voted.ballot);
        for (std::size_t i = 0; i < page.choices.size(); ++i) {
            const bool taken = i == voted.taken;
            if (voted.hands.empty() && !taken) continue;
            const std::string count = voted.hands.empty() ? "no hands counted" : hands_text(voted.hands[i]);
            one.counts.push_back(fmt::format("{} {}: {}{}", page.choices[i].letter, page.choices[i].name,
                                             count, taken ? ", taken" : ""));
        }
        if (voted.ballot.asks == Asks::cause && !voted.hands.empty()) {
            one.right = fmt::format("{} of {} had it right.", hands_for_the_fault(boat, vote),
                                    hands_text(all_hands(voted.hands)));
        }
        votes.push_back(std::move(one));
    }
    return votes;
}

std::string cause_votes_text(const ShowOfHands& boat) {
    std::vector<std::string> parts;
    for (const Vote& vote : boat.votes()) {
        if (vote.voted.ballot.asks != Asks::cause || vote.voted.hands.empty()) continue;
        parts.push_back(fmt::format("{} of {} {}", hands_for_the_fault(boat, vote),
                                    hands_text(all_hands(vote.voted.hands)),
                                    before_step(vote.after, boat.session().work().size())));
    }
    if (parts.empty()) return "The class was never asked what is wrong, so nobody knows who had it right.";
    return fmt::format("The cause was named right by {}.", listed(parts));
}

}  // namespace hardover::classroom
