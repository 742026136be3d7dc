#include "app/study/practice_marks.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "app/jobs/replay.hpp"
#include "app/study/practice_players.hpp"
#include "app/study/scoring.hpp"
#include "rules/reasoning/effort.hpp"

namespace hardover::study::practice {

namespace {

constexpr Detail numbers_only{false, false};
constexpr double hardly_ever = 0.005;  // an answer this improbable does not make a question worth asking

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

bool same_next(const NextStep& a, const NextStep& b) {
    return a.kind == b.kind && a.index == b.index;
}

// Bits that a change of a cause's probability is worth (Kullback and Leibler 1951, of present or not).
double bits_between(double then, double before) {
    const auto term = [](double p, double q) { return p > 0 && q > 0 ? p * std::log2(p / q) : 0; };
    return term(then, before) + term(1 - then, 1 - before);
}

std::map<Index, double> probabilities(const Assessment& assessment) {
    std::map<Index, double> found;
    for (const RankedCause& cause : assessment.ranking) found[cause.cause] = cause.probability;
    found[none] = assessment.not_listed;
    return found;
}

// One thing that a step may come to.
struct Outlook {
    double chance = 0;
    Assessment then;
};

// What a step is worth before its outcome is known.
struct Worth {
    double minutes = 0;  // Q
    double bits = 0;
    bool changes_nothing = true;  // whatever it comes to, the same is done next
};

class Marker {
  public:
    explicit Marker(const Session& session)
        : session_(session), prepared_(session.prepared()), knowledge_(session.knowledge()) {}

    // Nothing when it was told to stop. The expert's own work counts as one more piece.
    std::optional<Marks> marks(const Watched& watched) {
        const std::size_t of = session_.work().size() + 1;
        Marks marks;
        Assessment now = assess(prepared_, session_.boat().told, numbers_only);
        marks.expected = now.minutes_left;
        marks.leading_at_start = leading(now);
        for (const Work& work : session_.work()) {
            if (!goes_on(watched, marks.work.size(), of)) return std::nullopt;
            const bool ends = work.kind == Work::Kind::call_for_help || work.outcome == Outcome::cured;
            Assessment after = assess(prepared_, work.after, numbers_only);
            WorkMark mark = mark_of(work, now);
            mark.left_after = ends ? 0 : after.minutes_left;
            mark.luck = split_minutes(work.minutes, mark.left_before, mark.left_after, mark.avoidable).luck;
            mark.leading = leading(after);
            mark.not_listed = after.not_listed;
            marks.minutes += work.minutes;
            marks.avoidable += mark.avoidable;
            marks.luck += mark.luck;
            marks.expected_left = mark.left_after;
            count(work, mark, marks);
            marks.work.push_back(std::move(mark));
            now = std::move(after);
        }
        if (session_.work().empty()) marks.expected_left = marks.expected;
        score_statements(marks);
        return marks;
    }

  private:
    static std::vector<std::pair<Index, double>> leading(const Assessment& assessment) {
        std::vector<std::pair<Index, double>> first;
        for (const RankedCause& cause : assessment.ranking) {
            if (first.size() == most_leading || cause.probability <= 0) break;
            if (!cause.put_right) first.emplace_back(cause.cause, cause.probability);
        }
        return first;
    }

    static void count(const Work& work, const WorkMark& mark, Marks& marks) {
        marks.told_nothing += mark.told_nothing ? 1 : 0;
        marks.cautions_skipped += static_cast<int>(work.missed.size());
        if (work.kind != Work::Kind::remedy) return;
        marks.unproved += mark.unproved && !mark.is_best ? 1 : 0;
        marks.wrong_remedies += work.was_present ? 0 : 1;
    }

    void score_statements(Marks& marks) const {
        for (const Statement& statement : session_.statements()) {
            marks.brier += brier_penalty(statement.sure, statement.right);
            ++marks.statements;
        }
        if (marks.statements > 0) marks.brier /= marks.statements;
    }

    WorkMark mark_of(const Work& work, const Assessment& now) {
        WorkMark mark;
        mark.best = now.next;
        mark.left_before = now.minutes_left;
        mark.is_best = is_best(work, now.next);
        mark.unproved = work.kind == Work::Kind::remedy && !proved(work.index, now);
        mark.bits = -1;
        if (mark.is_best) {
            mark.q = mark.q_best = now.minutes_left;
            return mark;
        }
        const Worth done = work.again ? Worth{work.minutes + now.minutes_left, 0, true} : worth_of(work, now);
        mark.q = done.minutes;
        const Worth best = worth_of_best(work, now);
        mark.q_best = best.minutes;
        mark.best_is_idle = best.changes_nothing;
        const double more = std::max(0.0, mark.q - mark.q_best);
        const double as_good = std::max(as_good_minutes, as_good_share * mark.left_before);
        mark.avoidable = more > as_good ? more : 0;
        if (work.kind == Work::Kind::ask) {
            mark.bits = done.bits;
            // What is to be asked first anyway, the expert's step included, changes nothing by itself.
            const bool changes_nothing = done.changes_nothing && !best.changes_nothing;
            const bool idle = done.bits < tells_nothing_bits || (changes_nothing && mark.avoidable > 0);
            mark.told_nothing = work.again || (idle && !proves_what_was_said(work));
        }
        if (work.kind == Work::Kind::remedy) {
            const double early = std::max(premature_minutes, as_good_share * mark.left_before);
            mark.premature = mark.avoidable > early && now.next.kind != NextStep::Kind::remedy &&
                             now.next.kind != NextStep::Kind::stop_asking;
        }
        if (work.kind == Work::Kind::call_for_help) mark.premature = true;
        return mark;
    }

    // Who has said what is wrong and proves it before fitting has learned what counts.
    bool proves_what_was_said(const Work& work) const {
        const auto number = static_cast<std::size_t>(&work - session_.work().data());
        return std::any_of(session_.statements().begin(), session_.statements().end(),
                           [&](const Statement& statement) {
                               return statement.cause == work.proof_of && statement.after <= number;
                           });
    }

    bool proved(Index remedy, const Assessment& now) const {
        return std::any_of(now.ranking.begin(), now.ranking.end(), [&](const RankedCause& cause) {
            return cause.proved && puts_right(knowledge_, remedy, cause.cause);
        });
    }

    Ground ground(const Work& work) const {
        return {knowledge_, session_.boat().makes_sense, work.before, work.set_up};
    }

    bool is_best(const Work& work, const NextStep& next) const {
        switch (next.kind) {
            case NextStep::Kind::remedy:
                return work.kind == Work::Kind::remedy && work.index == next.index;
            case NextStep::Kind::stop_asking:
                return work.kind == Work::Kind::call_for_help;
            case NextStep::Kind::done:
                return false;
            default:
                break;
        }
        if (work.kind != Work::Kind::ask) return false;
        const Index first = first_finding(next);
        const std::vector<Index> measured = to_measure(ground(work), work.index);
        return first == work.index || std::find(measured.begin(), measured.end(), first) != measured.end();
    }

    static Index first_finding(const NextStep& next) {
        if (next.kind == NextStep::Kind::ask || next.findings.empty()) return next.index;
        return next.findings.front();
    }

    Worth worth_of(const Work& work, const Assessment& now) {
        if (work.kind == Work::Kind::ask) return worth_of_asking(ground(work), work.index, now);
        if (work.kind == Work::Kind::remedy) return worth_of_remedy(work.before, work.index, now);
        return {knowledge_.settings.call_for_help, 0, true};
    }

    Worth worth_of_best(const Work& work, const Assessment& now) {
        switch (now.next.kind) {
            case NextStep::Kind::remedy:
                return worth_of_remedy(work.before, now.next.index, now);
            case NextStep::Kind::stop_asking:
            case NextStep::Kind::done:
                return {now.minutes_left, 0, true};
            default:
                return worth_of_asking(ground(work), first_finding(now.next), now);
        }
    }

    // A plain measurement is worth what its worksheet's results are: the one that leaves the fewest minutes.
    Worth worth_of_asking(const Ground& ground, Index finding, const Assessment& now) {
        const Finding& entry = at(knowledge_.findings, finding);
        if (!entry.readings.empty()) return worth_of_reading(ground, finding, now);
        std::optional<Worth> best;
        for (std::size_t f = 0; f < knowledge_.findings.size(); ++f) {
            const auto result = static_cast<Index>(f);
            if (!ground.makes_sense[f] || answered_now(ground.facts, result)) continue;
            if (!worked_out_from(knowledge_, knowledge_.findings[f], finding)) continue;
            const Worth worth = worth_of_reading(ground, result, now);
            if (!best || worth.minutes < best->minutes) best = worth;
        }
        const Worth nothing{minutes_of_finding(ground, finding) + now.minutes_left, 0, true};
        return best.value_or(nothing);
    }

    Worth worth_of_reading(const Ground& ground, Index finding, const Assessment& now) {
        const int stage = present_stage(ground.facts);
        Facts measured = ground.facts;
        for (const Index one : to_measure(ground, finding)) {
            if (one != finding) jobs_detail::keep_answer(measured, one, Answer{CannotTell{}}, stage);
        }
        std::vector<Outlook> outcomes;
        for (std::size_t r = 0; r < at(knowledge_.findings, finding).readings.size(); ++r) {
            Facts then = measured;
            jobs_detail::keep_answer(then, finding, Answer{static_cast<int>(r)}, stage);
            Outlook outlook{0, assess(prepared_, then, numbers_only)};
            const double ratio = outlook.then.log_evidence - now.log_evidence;
            outlook.chance = outlook.then.conflict.empty() ? std::exp(std::min(0.0, ratio)) : 0;
            outcomes.push_back(std::move(outlook));
        }
        return weigh(minutes_of_finding(ground, finding), outcomes, now);
    }

    // Cured, better and not cured, with the chances that the ranking gives them.
    Worth worth_of_remedy(const Facts& facts, Index remedy, const Assessment& now) {
        double absent = 1;
        double alone = 0;
        for (const RankedCause& cause : now.ranking) {
            if (puts_right(knowledge_, remedy, cause.cause)) absent *= 1 - cause.probability;
        }
        for (const FaultSet& set : now.sets) {
            const bool all = std::all_of(set.causes.begin(), set.causes.end(),
                                         [&](Index cause) { return puts_right(knowledge_, remedy, cause); });
            if (all && !set.causes.empty() && !set.not_listed) alone += set.probability;
        }
        const double present = 1 - absent;
        const double cured = std::min(present, alone > 0 ? alone : present * (1 - now.several));
        std::vector<Outlook> outcomes{{cured, Assessment{}}};
        outcomes.front().then.next.kind = NextStep::Kind::done;
        const std::pair<Outcome, double> others[] = {{Outcome::better, present - cured},
                                                     {Outcome::not_cured, 1 - present}};
        for (const auto& [outcome, chance] : others) {
            if (chance <= 0) continue;
            Facts then = facts;
            then.tried[remedy] = outcome;
            then.tried_as[remedy] = present_stage(facts) + 1;
            outcomes.push_back({chance, assess(prepared_, then, numbers_only)});
        }
        return weigh(minutes_of_remedy(knowledge_, remedy, facts.shop_rate), outcomes, now);
    }

    static Worth weigh(double minutes, const std::vector<Outlook>& outcomes, const Assessment& now) {
        double sum = 0;
        for (const Outlook& outcome : outcomes) sum += outcome.chance;
        Worth worth{minutes, 0, true};
        if (sum <= 0) {
            worth.minutes += now.minutes_left;
            return worth;
        }
        const std::map<Index, double> before = probabilities(now);
        const NextStep* next = nullptr;
        for (const Outlook& outcome : outcomes) {
            const double chance = outcome.chance / sum;
            worth.minutes += chance * outcome.then.minutes_left;
            if (chance < hardly_ever) continue;
            if (next != nullptr && !same_next(*next, outcome.then.next)) worth.changes_nothing = false;
            next = &outcome.then.next;
            if (outcome.then.ranking.empty()) continue;  // cured
            for (const auto& [cause, then] : probabilities(outcome.then)) {
                worth.bits += chance * bits_between(then, before.at(cause));
            }
        }
        return worth;
    }

    const Session& session_;
    const PreparedKnowledge prepared_;
    const Knowledge& knowledge_;
};

}  // namespace

Split split_minutes(double minutes, double left_before, double left_after, double over_best) {
    const double avoidable = std::max(0.0, over_best);
    return {avoidable, minutes + left_after - left_before - avoidable};
}

std::optional<Marks> mark(const Session& session, const Watched& watched) {
    std::optional<Marks> marks = Marker(session).marks(watched);
    const std::size_t pieces = session.work().size();
    if (!marks || !goes_on(watched, pieces, pieces + 1)) return std::nullopt;
    const Session expert = expert_on(session.prepared(), session.boat_shared());
    marks->expert = expert.minutes();
    marks->expert_put_right = expert.boat_is_right();
    return marks;
}

Marks mark(const Session& session) {
    return *mark(session, Watched());
}

Marks marks_alone(const Session& session) {
    return *Marker(session).marks(Watched());
}

PracticeEvent event_of_step(const Knowledge& knowledge, const NextStep& step) {
    switch (step.kind) {
        case NextStep::Kind::ask:
            return Asked{at(knowledge.findings, step.index).id};
        case NextStep::Kind::check:
        case NextStep::Kind::prove:
            return Asked{at(knowledge.findings, step.findings.front()).id};
        case NextStep::Kind::remedy:
            return Remedied{at(knowledge.remedies, step.index).id};
        case NextStep::Kind::stop_asking:
            return GaveUp{};
        case NextStep::Kind::done:
            break;
    }
    return HandedOver{true};
}

}  // namespace hardover::study::practice
