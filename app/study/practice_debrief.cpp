#include "app/study/practice_debrief.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "app/jobs/wording.hpp"
#include "app/study/practice_page.hpp"
#include "app/study/practice_practise.hpp"

namespace hardover::study::practice {

using namespace jobs_detail;

namespace {

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

class Teller {
  public:
    Teller(const Session& session, const Marks& marks, UnitSystem units)
        : session_(session), knowledge_(session.knowledge()), marks_(marks), units_(units) {}

    // Nothing when it was told to stop.
    std::optional<Debrief> tell(const Watched& watched) {
        Debrief debrief;
        debrief.skipped_cautions = skipped_cautions();
        debrief.headline = headline();
        debrief.truth = truth();
        debrief.minutes = minutes();
        debrief.habits = habits();
        debrief.sureness = sureness();
        debrief.help = help();
        debrief.ranking_at_start = ranking(marks_.leading_at_start, -1);
        for (std::size_t i = 0; i < session_.work().size(); ++i) {
            if (!goes_on(watched, i, session_.work().size())) return std::nullopt;
            debrief.steps.push_back(step(i));
        }
        debrief.practise = things_to_practise(session_, marks_);
        debrief.ended = ended_of(session_, marks_);
        return debrief;
    }

  private:
    std::string cause_name(Index cause) const { return at(knowledge_.causes, cause).name; }

    std::vector<SkippedCautions> skipped_cautions() const {
        std::vector<SkippedCautions> skipped;
        std::set<Index> told;
        for (std::size_t i = 0; i < session_.work().size(); ++i) {
            const Work& work = session_.work()[i];
            const WorkLine line = work_line(session_, work, units_);
            if (work.missed.empty()) continue;
            skipped.push_back({fmt::format("Step {}, {}", i + 1, line.text), {}});
            for (const Index index : work.missed) {
                const Caution& caution = at(knowledge_.cautions, index);
                const bool first = told.insert(index).second;
                skipped.back().cautions.push_back(
                    first ? fmt::format("{}: {}", caution.name, sentence(caution.avoid))
                          : fmt::format("{}, as above", caution.name));
            }
        }
        return skipped;
    }

    std::string headline() const {
        if (session_.work().empty()) return "Not finished: nothing was done yet.";
        const std::string took = spent_text(marks_.minutes - minutes_of_help());
        const std::string saved =
            marks_.avoidable > 0
                ? fmt::format("On average over boats like it, better steps save {}.",
                              minutes_text(marks_.avoidable))
                : std::string("On average over boats like it, no other step would have been better.");
        if (session_.gave_up()) {
            std::string text = fmt::format(
                "Help was called after {}. The boat is not right yet: that somebody else finds the fault and "
                "puts it right is counted as {}.",
                took, spent_text(minutes_of_help()));
            if (marks_.avoidable > 0 || marks_.work.back().is_best) add_sentence(text, saved);
            return text;
        }
        if (session_.boat_is_right()) return fmt::format("The boat is right after {}. {}", took, saved);
        return fmt::format("Not finished: {} so far. {}", took, saved);
    }

    double minutes_of_help() const { return session_.gave_up() ? knowledge_.settings.call_for_help : 0; }

    std::string truth() const {
        if (!session_.over()) return "What is wrong stays hidden until it is done.";
        std::vector<std::string> names;
        for (const Index fault : session_.boat().faults) names.push_back(cause_name(fault));
        std::string text = fmt::format("What was wrong: {}.", listed(names));
        for (const Index fault : session_.boat().faults) {
            add_sentence(text, at(knowledge_.causes, fault).about);
        }
        return text;
    }

    // What is expected knows the complaint, the history and the rig, and not the level the boat was drawn at.
    static std::string luck_text(double luck) {
        const std::string much = minutes_text(std::abs(luck));
        if (std::abs(luck) < 0.5) return "Luck played no part: this boat was as such boats are on average.";
        return luck > 0 ? fmt::format(
                              "Bad luck took {} more: this boat showed itself later, or had a dearer "
                              "fault, than such boats on average.",
                              much)
                        : fmt::format(
                              "Good luck spared you {}: this boat showed itself sooner, or had a "
                              "cheaper fault, than such boats on average.",
                              much);
    }

    // The split in whole sentences; the figures add up before they are rounded.
    std::vector<std::string> minutes() const {
        std::vector<std::string> lines;
        lines.push_back(
            fmt::format("Boats like it at the start, with the same complaint, history and rig, "
                        "take {} on average by the best way.",
                        minutes_text(marks_.expected)));
        if (session_.work().empty()) return lines;
        lines.back() += fmt::format(" You took {}{}.", spent_text(marks_.minutes),
                                    session_.gave_up() ? fmt::format(", {} of them counted for the help",
                                                                     spent_text(minutes_of_help()))
                                                       : "");
        lines.push_back(marks_.avoidable > 0
                            ? fmt::format("Your choices cost {} on average over such boats: this is your "
                                          "mark, and 0 is best.",
                                          minutes_text(marks_.avoidable))
                            : std::string("Your choices cost 0 min: this is your mark, and 0 is best."));
        lines.push_back(luck_text(marks_.luck) +
                        " Luck is this boat against such boats of every level; it is shown, not marked.");
        lines.push_back(fmt::format(
            "The sum: {:.1f} min - {:.1f} min expected = {:.1f} avoidable {} {:.1f} luck{}.", marks_.minutes,
            marks_.expected, marks_.avoidable, marks_.luck < 0 ? "-" : "+", std::abs(marks_.luck),
            marks_.expected_left > 0 ? fmt::format(" - {:.1f} still to do", marks_.expected_left) : ""));
        if (session_.over()) lines.push_back(expert());
        return lines;
    }

    // Fewer minutes than the expert's are no merit of a call: help counts the same whatever the fault.
    std::string expert() const {
        std::string text = fmt::format(
            "The expert took {} on this very boat, with the same answers, and {}.", spent_text(marks_.expert),
            marks_.expert_put_right ? "put it right" : "called for help in the end");
        if (marks_.expert <= marks_.minutes + as_good_minutes) return text;
        if (!session_.gave_up()) {
            add_sentence(text, "The way that is best on average is not the shortest on every boat.");
        } else if (marks_.expert_put_right) {
            add_sentence(text,
                         "A call looks quicker here only because help is counted alike for every fault; this "
                         "boat still has its own.");
        } else if (!marks_.work.back().is_best) {
            add_sentence(text,
                         "A call looks quicker here only because nothing on the list helped; nobody could "
                         "know that before it was looked at.");
        }
        return text;
    }

    bool did(Work::Kind kind) const {
        return std::any_of(session_.work().begin(), session_.work().end(),
                           [kind](const Work& work) { return work.kind == kind; });
    }

    // Only those that there was an occasion for.
    std::vector<Habit> habits() const {
        std::vector<Habit> habits;
        const auto add = [&](const char* name, bool kept, const char* good, const std::string& bad) {
            habits.push_back({name, kept, kept ? good : bad});
        };
        const bool cautioned = std::any_of(session_.work().begin(), session_.work().end(),
                                           [](const Work& work) { return !work.cautions.empty(); });
        if (cautioned) {
            add("Nothing unsafe", marks_.cautions_skipped == 0, "Every caution was named before its work.",
                fmt::format("Cautions left out: {}.", marks_.cautions_skipped));
        }
        if (did(Work::Kind::remedy)) {
            add("Proved before fitting", marks_.unproved == 0,
                "Nothing was fitted that had to be proved first.",
                fmt::format("Remedies without proof: {}.", marks_.unproved));
            add("Nothing good replaced", marks_.wrong_remedies == 0,
                "Every remedy met a fault that was there.",
                fmt::format("Remedies for what was not wrong: {}.", marks_.wrong_remedies));
        }
        if (did(Work::Kind::ask)) {
            add("Every question mattered", marks_.told_nothing == 0,
                "Every question could have changed what you did next.",
                fmt::format("Questions that could not have changed what you did next: {}.",
                            marks_.told_nothing));
        }
        if (session_.gave_up()) {
            add("Help called when it was due", marks_.work.back().is_best,
                "Nothing on the list was worth trying any more.",
                "Something was still worth doing when help was called.");
        }
        if (session_.boat_is_right() && session_.over()) {
            add("Repair proved", session_.checked_after(), "The checks after the remedy were done.",
                "The checks after the remedy were not done.");
        }
        return habits;
    }

    std::string sureness() const {
        if (marks_.statements == 0) return "You never said how sure you were, so sureness has no mark.";
        const std::string said =
            fmt::format("You said what you suspected {}.",
                        marks_.statements == 1 ? "once" : fmt::format("{} times", marks_.statements));
        if (!session_.over()) return said + " Sureness is marked when the boat is done.";
        return fmt::format(
            "{} Sureness scored {:.2f} (Brier: 0 is best, 0.25 is a coin, 1 is sure and wrong).", said,
            marks_.brier);
    }

    std::string help() const {
        int taken[3] = {0, 0, 0};
        for (const HintTaken& hint : session_.hints()) ++taken[hint.level - 1];
        std::vector<std::string> parts;
        for (int level = 1; level <= 3; ++level) {
            if (taken[level - 1] > 0)
                parts.push_back(fmt::format("{} {}x", hint_name(level), taken[level - 1]));
        }
        if (session_.begun().guidance != Guidance::unaided)
            parts.push_back("the help that stood on the page");
        return parts.empty() ? "No help was taken." : fmt::format("Help taken: {}.", listed(parts));
    }

    std::vector<RankLine> ranking(const std::vector<std::pair<Index, double>>& leading,
                                  double not_listed) const {
        std::vector<RankLine> lines;
        const auto& faults = session_.boat().faults;
        const bool done = session_.over();
        for (const auto& [cause, probability] : leading) {
            const bool there = done && std::find(faults.begin(), faults.end(), cause) != faults.end();
            lines.push_back({cause_name(cause), percent_text(probability), probability, there});
        }
        if (not_listed >= 0) {
            lines.push_back({"Something not on this list", percent_text(not_listed), not_listed, false});
        }
        return lines;
    }

    // Never "as good as the best": a call leaves the fault to be found.
    static std::string verdict_on_call(const WorkMark& mark) {
        if (mark.is_best) return "Right: nothing on the list was worth trying any more.";
        if (mark.avoidable <= 0) return "Too early: something was still worth doing.";
        return fmt::format(
            "Too early: something was still worth doing. The call cost about {} more, on average.",
            minutes_text(mark.avoidable));
    }

    static std::string verdict(const Work& work, const WorkMark& mark) {
        if (work.kind == Work::Kind::call_for_help) return verdict_on_call(mark);
        if (mark.is_best) return "The best step.";
        if (mark.told_nothing) {
            const std::string cost =
                mark.avoidable > 0 ? fmt::format(", and cost about {}", minutes_text(mark.avoidable)) : "";
            const char* why = work.again                       ? "Asked before: the answer was known"
                              : mark.bits < tells_nothing_bits ? "Could not have told you anything"
                                                               : "Could not have changed what you did next";
            return why + cost + ".";
        }
        if (mark.avoidable <= 0) return "As good as the best step.";
        const std::string cost = minutes_text(mark.avoidable);
        if (mark.premature)
            return fmt::format("Too early: cost about {} over looking further, on average.", cost);
        return fmt::format("Cost about {} more than the best step, on average.", cost);
    }

    DebriefStep step(std::size_t i) const {
        const Work& work = session_.work()[i];
        const WorkMark& mark = marks_.work[i];
        const WorkLine line = work_line(session_, work, units_);
        DebriefStep step;
        step.number = static_cast<int>(i) + 1;
        step.did = line.text;
        step.found = line.found;
        step.minutes = line.minutes;
        step.work = work.minutes;
        step.avoidable = mark.avoidable;
        step.luck = mark.luck;
        const bool early_call = work.kind == Work::Kind::call_for_help && mark.premature;
        step.good = mark.avoidable <= 0 && !mark.told_nothing && !early_call;
        step.verdict = verdict(work, mark);
        if (!mark.is_best) {
            const Advice advice = next_step_advice(session_.prepared(), work.before);
            step.best = advice.heading;
            step.best_label = step.good || mark.best_is_idle ? "The expert's step" : "Better";
            step.why = advice.why;
        }
        step.notes = notes(i);
        if (work.outcome != Outcome::cured && work.kind != Work::Kind::call_for_help) {
            step.ranking = ranking(mark.leading, mark.not_listed);
        }
        return step;
    }

    // What was said and taken just before this piece of work, and what was left out.
    std::vector<std::string> notes(std::size_t i) const {
        std::vector<std::string> notes;
        for (const HintTaken& hint : session_.hints()) {
            if (hint.after == i) notes.push_back(fmt::format("Help taken first: {}.", hint_name(hint.level)));
        }
        for (const Statement& statement : session_.statements()) {
            if (statement.after != i) continue;
            notes.push_back(fmt::format("You {} {}, {:.0f} in 100 sure: {}.",
                                        statement.named ? "named" : "suspected",
                                        quoted(cause_name(statement.cause)), 100 * statement.sure,
                                        !session_.over()  ? "to be seen"
                                        : statement.right ? "right"
                                                          : "not so"));
        }
        if (session_.work()[i].kind == Work::Kind::remedy && marks_.work[i].unproved) {
            notes.push_back(marks_.work[i].is_best
                                ? "It was not proved, but fitting it cost less than looking further."
                                : "It was not proved.");
        }
        if (!session_.work()[i].missed.empty()) notes.push_back("Cautions were left out: see above.");
        return notes;
    }

    const Session& session_;
    const Knowledge& knowledge_;
    const Marks& marks_;
    UnitSystem units_;
};

}  // namespace

Debrief debrief(const Session& session, const Marks& marks, UnitSystem units) {
    return *Teller(session, marks, units).tell(Watched());
}

std::optional<Debrief> marked_debrief(const Session& session, UnitSystem units, const Watched& watched) {
    const std::size_t marked = session.work().size() + 1;
    const std::size_t of = marked + session.work().size();
    const auto marks =
        mark(session, [&](std::size_t done, std::size_t) { return goes_on(watched, done, of); });
    if (!marks) return std::nullopt;
    return Teller(session, *marks, units).tell([&](std::size_t done, std::size_t) {
        return goes_on(watched, marked + done, of);
    });
}

Ended ended_of(const Session& session, const Marks& marks) {
    Ended ended;
    ended.cured = session.boat_is_right();
    ended.minutes = marks.minutes;
    ended.expected = marks.expected;
    ended.expert = marks.expert;
    ended.avoidable = marks.avoidable;
    ended.luck = marks.luck;
    for (const HintTaken& hint : session.hints()) ++ended.hints[hint.level - 1];
    ended.unproved = marks.unproved;
    ended.cautions_skipped = marks.cautions_skipped;
    ended.told_nothing = marks.told_nothing;
    ended.statements = marks.statements;
    ended.brier = marks.brier;
    ended.level = session.boat().level;
    ended.guidance = session.begun().guidance;
    return ended;
}

std::vector<MinutesPart> minutes_bar(const Ended& ended) {
    const double spared = std::clamp(-ended.luck, 0.0, ended.expected);
    std::vector<MinutesPart> parts;
    const auto add = [&](MinutesPart::Kind kind, double minutes, const char* words) {
        if (minutes >= 0.5) parts.push_back({kind, minutes, minutes_text(minutes) + words});
    };
    add(MinutesPart::Kind::work, ended.expected - spared,
        spared < 0.5 ? " of work, as expected at the start" : " of work");
    add(MinutesPart::Kind::spared, spared, " expected at the start and spared by good luck: not marked");
    add(MinutesPart::Kind::avoidable, ended.avoidable, " that better steps save on average: your mark");
    add(MinutesPart::Kind::bad_luck, ended.luck, " of bad luck: not marked");
    return parts;
}

}  // namespace hardover::study::practice
