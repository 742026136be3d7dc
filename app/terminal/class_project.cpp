// `hardover class project`: a practice boat worked by the class together, in plain lines. Works the same
// through a pipe. Decides nothing: app/classroom says what is put to the class and what came of it.
#include <fmt/format.h>

#include <cctype>
#include <ctime>
#include <ostream>
#include <sstream>

#include "app/classroom/hands_page.hpp"
#include "app/classroom/hands_record.hpp"
#include "app/jobs/job.hpp"
#include "app/terminal/known_learner.hpp"
#include "app/terminal/practice_run.hpp"
#include "app/terminal/practice_words.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

namespace {

using namespace classroom;
using namespace study::practice;

constexpr std::uint64_t seeds = 1000000;  // short enough to be told

class ProjectRun : Dialogue {
  public:
    ProjectRun(Context& context, ClassBoat boat)
        : Dialogue(context.streams, context.streams.out),
          units_(units_in_use(context)),
          boat_(std::move(boat)) {}

    Result<void> run() {
        print_start();
        while (!boat_.boat().ended() && !left_ && !input_ended() && !lost_) {
            if (boat_.boat().agreed()) {
                do_agreed();
            } else {
                vote();
            }
        }
        if (lost_) return *lost_;
        if (!boat_.boat().ended()) {
            say("Kept. Go on with: hardover class project");
            return {};
        }
        return print_end();
    }

  private:
    void print_start() {
        const HandsPage page = hands_page(boat_.boat(), units_);
        say(page.title);
        say(fmt::format("The customer says: {} ({})", page.customer, page.complaint));
        say("History: " + page.history + ".");
        std::string rig;
        for (const SheetLine& line : page.rig)
            rig += (rig.empty() ? "" : "; ") + line.name + ": " + line.value;
        say("The yard's sheet of the boat: " + rig + ".", 2);
        out_ << "\n";
        say("Count hands in the order of the choices, such as: 7 5 0 3. The most hands decide.");
        for (const char* line :
             {"  7 5 0 3 = B   the same, but take B", "  B             take B without counting hands",
              "  cause         ask what is wrong; step: ask what to do next",
              "  other WORDS   add a choice that somebody thought of",
              "  show          show what is wrong to everybody", "  quit          leave; the boat is kept"}) {
            out_ << line << "\n";
        }
        print_ranking(page);
    }

    void print_ranking(const HandsPage& page) {
        out_ << "\n";
        for (const RankBar& bar : page.ranking) {
            const std::string was = bar.moved.empty() ? "" : " (" + bar.moved + ")";
            say(fmt::format("  {:>10}  {}{}{}", bar.percent, bar.name, was,
                            bar.true_fault ? ", it is this" : ""),
                14);
        }
        say(page.clock + ".");
    }

    void print_ballot(const Ballot& ballot) {
        const BallotPage page = ballot_page(boat_.boat(), ballot);
        out_ << "\n";
        say(page.question);
        for (const ChoiceLine& line : page.choices) {
            say(fmt::format("  {}  {}{}", line.letter, line.name,
                            line.note.empty() ? "" : " (" + line.note + ")"),
                5);
        }
    }

    void vote() {
        const Ballot ballot =
            asks_ == Asks::step ? step_ballot(boat_.boat(), added_) : cause_ballot(boat_.boat(), added_);
        print_ballot(ballot);
        const std::optional<std::string> line = read_line("Hands: ");
        if (!line) return;
        const auto [word, rest] = first_word(trimmed(*line));
        if (word == "quit") {
            left_ = true;
        } else if (word == "cause" || word == "step") {
            asks_ = word == "cause" ? Asks::cause : Asks::step;
            added_.clear();
        } else if (word == "show") {
            keep(FaultRevealed{});
            for (const std::string& fault : hands_page(boat_.boat(), units_).faults)
                say("What is wrong: " + fault + ".");
        } else if (word == "other") {
            add(rest);
        } else if (const auto voted = read_vote(*line, ballot)) {
            settle(*voted);
        }
    }

    void settle(const Voted& voted) {
        if (!keep(voted)) return;
        const ChoiceLine taken = ballot_page(boat_.boat(), voted.ballot).choices[voted.taken];
        say(fmt::format("Taken: {} {}.", taken.letter, taken.name));
        added_.clear();
        asks_ = Asks::step;
    }

    // "7 5 0 3", "7 5 0 3 = B" or "B".
    std::optional<Voted> read_vote(const std::string& line, const Ballot& ballot) {
        Voted voted{ballot, {}, ballot.choices.size()};
        std::istringstream words(line);
        for (std::string word; words >> word;) {
            if (word == "=") continue;
            const bool letter = word.size() == 1 && std::isalpha(static_cast<unsigned char>(word[0])) != 0;
            if (letter) {
                voted.taken =
                    static_cast<std::size_t>(std::toupper(static_cast<unsigned char>(word[0])) - 'A');
            } else {
                const std::size_t hands = list_number(word);
                if (hands == 0 && word != "0") return odd_vote();
                voted.hands.push_back(static_cast<int>(hands));
            }
        }
        if (voted.hands.empty() && voted.taken == ballot.choices.size()) return odd_vote();
        // Those that were not named got none.
        if (!voted.hands.empty() && voted.hands.size() < ballot.choices.size())
            voted.hands.resize(ballot.choices.size(), 0);
        if (voted.taken < ballot.choices.size()) return voted;
        const auto most = majority(voted.hands);
        if (!most) {
            say(count_text(ballot, voted.hands));
            return std::nullopt;
        }
        voted.taken = *most;
        return voted;
    }

    std::optional<Voted> odd_vote() {
        say("Give the hands for each choice, such as 7 5 0 3, or the letter of a choice.");
        return std::nullopt;
    }

    // The first thing with these words in its name.
    void add(const std::string& words) {
        const Page page = make_page(boat_.boat().session(), units_);
        const auto holds = [&](const std::string& name) { return !words.empty() && has_words(name, words); };
        std::optional<PracticeEvent> found;
        if (asks_ == Asks::cause) {
            for (const NamedItem& cause : page.causes)
                if (!found && holds(cause.name)) found = Suspected{cause.id, 0};
        } else {
            for (const FindingGroup& group : page.parts)
                for (const FindingItem& item : group.items)
                    if (!found && holds(item.name)) found = Asked{item.id};
            for (const NamedItem& remedy : page.remedies)
                if (!found && holds(remedy.name)) found = Remedied{remedy.id};
            if (!found && holds("call for help")) found = GaveUp{};
        }
        if (found) {
            added_.push_back(*found);
        } else {
            say("Nothing has these words in its name. Try a shorter word.");
        }
    }

    // Its cautions are read out first.
    void do_agreed() {
        const HandsPage before = hands_page(boat_.boat(), units_);
        const PracticeEvent step = *boat_.boat().agreed();
        for (const CautionQuestion& question : before.agreed->cautions) {
            Precautions said{question.work, {}, false};
            for (const CautionText& caution : question.cautions) {
                say(fmt::format("CAUTION. {}: {} {}", caution.name, caution.hurts, caution.avoid), 2);
                said.named.push_back(caution.id);
            }
            if (!read_line("Read it out, then Enter: ")) return;
            if (!keep(PracticeEvent(said))) return;
        }
        if (!keep(step)) return;
        const HandsPage page = hands_page(boat_.boat(), units_);
        for (const std::string& line : page.happened) say(line, 2);
        print_ranking(page);
        for (const std::string& check : page.after) say("Check before handing over: " + check, 2);
    }

    Result<void> print_end() {
        const Result<Debrief> told = boat_.debrief(utc_now(), units_);
        if (!told) return told.error();
        print_debrief(out_, told.value());
        out_ << "\nThe class's votes\n";
        say(cause_votes_text(boat_.boat()));
        for (const VoteTold& vote : votes_told(boat_.boat())) {
            say("  " + vote.heading, 2);
            for (const std::string& count : vote.counts) say("    " + count, 6);
            if (!vote.right.empty()) say("    " + vote.right, 6);
        }
        return {};
    }

    bool keep(const ClassEvent& event) {
        const Result<void> taken = boat_.take(event, utc_now());
        if (taken) return true;
        if (taken.error().kind == Error::Kind::storage) {
            lost_ = taken.error();
        } else {
            say(taken.error().text());
        }
        return false;
    }

    UnitSystem units_;
    ClassBoat boat_;
    Asks asks_ = Asks::step;
    std::vector<PracticeEvent> added_;  // to the ballot in hand
    bool left_ = false;
    std::optional<Error> lost_;  // what kept an event from being written
};

Result<ClassBoat> begin_or_go_on(const PreparedKnowledge& prepared, Store& store,
                                 const ProjectRequest& request) {
    if (!request.seed && !request.level) {
        auto open = ClassBoat::go_on(prepared, store);
        if (!open) return open.error();
        if (open.value()) return std::move(*open.value());
    }
    Begun begun;
    begun.seed = request.seed.value_or(static_cast<std::uint64_t>(std::time(nullptr)) % seeds);
    begun.level = request.level.value_or(study::least_level);
    begun.knowledge = prepared.knowledge().fingerprint;
    begun.day = study_day();
    return ClassBoat::begin(prepared, store, begun, utc_now());
}

}  // namespace

int run_class_project(Context& context, const ProjectRequest& request) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const PreparedKnowledge prepared(knowledge.value());
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    Result<ClassBoat> boat = begin_or_go_on(prepared, store.value(), request);
    if (!boat) return refuse(context, boat.error());
    const Result<void> ran = ProjectRun(context, std::move(boat.value())).run();
    return ran ? 0 : refuse(context, ran.error());
}

}  // namespace hardover
