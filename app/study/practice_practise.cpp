#include "app/study/practice_practise.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/wording.hpp"

namespace hardover::study::practice {

using namespace jobs_detail;

namespace {

// How much each fault of the work weighs against the others, in minutes. From memory: safety before all.
constexpr double per_caution = 1000;
constexpr double per_unproved = 30;
constexpr double unchecked_weighs = 25;
constexpr double early_call_weighs = 20;
constexpr double sureness_weighs = 100;  // times the Brier penalty over that of saying nothing
constexpr double no_sureness_weighs = 5;
constexpr double per_hint = 3;
constexpr double worthless_brier = 0.25;  // of always saying one in two
constexpr double share_well_done = 0.15;  // of the minutes expected, lost by choices

struct Thing {
    double weight = 0;
    std::string text;
};

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

std::string work_name(const Knowledge& knowledge, const Work& work) {
    if (work.kind == Work::Kind::call_for_help) return "calling for help";
    return quoted(work.kind == Work::Kind::ask ? at(knowledge.findings, work.index).name
                                               : at(knowledge.remedies, work.index).name);
}

class Things {
  public:
    Things(const Session& session, const Marks& marks)
        : session_(session), knowledge_(session.knowledge()), marks_(marks) {}

    std::vector<std::string> three() {
        cautions();
        idle_steps();
        remedies();
        dearest_step();
        early_call();
        sureness();
        help();
        after();
        on_from_here();
        std::stable_sort(things_.begin(), things_.end(),
                         [](const Thing& a, const Thing& b) { return a.weight > b.weight; });
        std::vector<std::string> texts;
        for (const Thing& thing : things_) {
            if (texts.size() < 3) texts.push_back(thing.text);
        }
        return texts;
    }

  private:
    void add(double weight, std::string text) {
        if (weight > 0) things_.push_back({weight, std::move(text)});
    }

    void cautions() {
        std::vector<std::string> names;
        for (const Work& work : session_.work()) {
            for (const Index caution : work.missed) {
                const std::string name = lower_first(at(knowledge_.cautions, caution).name);
                if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
            }
        }
        add(per_caution * marks_.cautions_skipped,
            fmt::format("Say the cautions before you touch anything. This time: {}.", listed(names)));
    }

    void idle_steps() {
        double minutes = 0;
        std::vector<std::string> names;
        for (std::size_t i = 0; i < marks_.work.size(); ++i) {
            if (!marks_.work[i].told_nothing) continue;
            minutes += session_.work()[i].minutes;
            if (names.size() < 3) names.push_back(work_name(knowledge_, session_.work()[i]));
        }
        if (names.empty()) return;
        add(minutes, fmt::format("Before you ask, think what each answer would change. {} could not have "
                                 "changed what you did next.",
                                 listed(names)));
    }

    void remedies() {
        double minutes = 0;
        std::vector<std::string> names;
        for (std::size_t i = 0; i < marks_.work.size(); ++i) {
            const WorkMark& mark = marks_.work[i];
            if (session_.work()[i].kind != Work::Kind::remedy || !mark.unproved || mark.is_best) continue;
            minutes += per_unproved + mark.avoidable;
            if (names.size() < 3) names.push_back(work_name(knowledge_, session_.work()[i]));
        }
        if (names.empty()) return;
        add(minutes, fmt::format("Prove it before you fit it. You did {} without proof.", listed(names)));
    }

    void dearest_step() {
        const auto dearest =
            std::max_element(marks_.work.begin(), marks_.work.end(),
                             [](const WorkMark& a, const WorkMark& b) { return a.avoidable < b.avoidable; });
        if (dearest == marks_.work.end() || dearest->avoidable <= 0) return;
        const auto number = static_cast<std::size_t>(dearest - marks_.work.begin());
        add(dearest->avoidable,
            fmt::format(
                "Look again at step {}, {}: it cost you the most. {} first saves about {} on average.",
                number + 1, work_name(knowledge_, session_.work()[number]),
                quoted(step_text(knowledge_, dearest->best)), minutes_text(dearest->avoidable)));
    }

    void early_call() {
        if (!session_.gave_up()) return;
        const WorkMark& call = marks_.work.back();
        if (!call.premature || call.avoidable > 0) return;
        add(early_call_weighs,
            fmt::format("Before you call for help, do what is still worth doing. Here it was {}.",
                        quoted(step_text(knowledge_, call.best))));
    }

    // Whether it was right tells what is wrong: not before the boat is done.
    void sureness() {
        if (marks_.statements > 0 && !session_.over()) return;
        if (marks_.statements == 0) {
            add(no_sureness_weighs,
                "Say what you suspect, and how sure you are, as you go. It shows you what you really know.");
            return;
        }
        double bias = 0;
        for (const Statement& statement : session_.statements()) {
            bias += (statement.sure - (statement.right ? 1 : 0)) / marks_.statements;
        }
        add(sureness_weighs * (marks_.brier - worthless_brier),
            bias > 0
                ? "You were surer than you were right. Ask what else could look like this before you name "
                  "a cause."
                : "You knew more than you trusted yourself to know. Say so when the signs agree.");
    }

    void help() {
        const auto taken = static_cast<double>(session_.hints().size());
        add(per_hint * taken,
            "Try the next boat of this level with less help: look at the list of signs before "
            "you ask for a hint.");
    }

    void after() {
        const bool unchecked = session_.boat_is_right() && session_.over() && !session_.checked_after();
        add(unchecked ? unchecked_weighs : 0,
            "Do the checks that belong to the remedy before you hand the boat over.");
    }

    // What is always worth doing, so that there are three.
    void on_from_here() {
        const PracticeBoat& boat = session_.boat();
        if (session_.over()) {
            const Cause& cause = at(knowledge_.causes, boat.faults.front());
            add(0.3,
                fmt::format("Read once more in the knowledge what {} shows, and why.", quoted(cause.name)));
            const std::string part = cause.part == none ? "" : at(knowledge_.parts, cause.part).name;
            add(0.2, "Keep it from fading: a quiz" + (part.empty() ? "." : " about " + quoted(part) + "."));
        } else {
            add(0.3, "Bring this boat to its end: what was wrong is told then.");
            add(0.2, "Keep what you know from fading: a quiz.");
        }
        const bool well = session_.boat_is_right() && session_.hints().empty() &&
                          marks_.avoidable <= share_well_done * marks_.expected;
        const int next = std::min(most_level, boat.level + (well ? 1 : 0));
        add(0.1, fmt::format("Take another boat, of level {}.", next));
    }

    const Session& session_;
    const Knowledge& knowledge_;
    const Marks& marks_;
    std::vector<Thing> things_;
};

}  // namespace

std::string step_text(const Knowledge& knowledge, const NextStep& step) {
    const auto with_finding = [&](const std::string& check) {
        if (step.findings.empty()) return check;
        return check + ": " + lower_first(at(knowledge.findings, step.findings.front()).name);
    };
    switch (step.kind) {
        case NextStep::Kind::ask:
            return at(knowledge.findings, step.index).name;
        case NextStep::Kind::check:
        case NextStep::Kind::prove:
            return with_finding(at(knowledge.checks, step.index).name);
        case NextStep::Kind::remedy:
            return at(knowledge.remedies, step.index).name;
        case NextStep::Kind::stop_asking:
            return "Call for help";
        case NextStep::Kind::done:
            break;
    }
    return "Hand the boat over";
}

std::vector<std::string> things_to_practise(const Session& session, const Marks& marks) {
    return Things(session, marks).three();
}

}  // namespace hardover::study::practice
