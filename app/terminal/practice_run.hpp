// A practice boat in the terminal: prints what happened, reads one line, does it, again. Works the same
// through a pipe. Decides nothing: app/study/practice_* says what can be done and what came of it.
#pragma once

#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "app/study/practice_debrief.hpp"
#include "app/study/practice_page.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/dialogue.hpp"

namespace hardover {

class PracticeRun : Dialogue {
  public:
    // Writes an event where the boat is kept.
    using Write = std::function<Result<void>(const study::practice::PracticeEvent&)>;

    // `write` may be empty: the boat is not kept.
    PracticeRun(Context& context, std::ostream& out, study::practice::Session session, Write write);

    // Until the boat is handed over, the apprentice leaves or the input ends.
    Result<void> run();

    const study::practice::Session& session() const { return session_; }

  private:
    enum class Flow { go_on, leave };
    // A list on the screen, to choose from by number.
    struct Shown {
        enum class Kind { findings, causes, remedies, parts };
        Kind kind = Kind::findings;
        std::vector<std::string> ids;
        bool for_good = false;  // causes: name rather than suspect
        bool to_prove = false;
        std::optional<double> sure;
    };

    void print_start();
    void print_help();
    void print_boat();
    void print_near();
    void print_parts();
    void print_items(const std::string& title, const std::vector<study::practice::FindingItem>& items);
    void print_notes();
    void print_sheets();
    void print_page_help();
    void print_card(const study::practice::PracticeEvent& event);

    void print_cautions(const std::vector<CautionText>& cautions);

    Flow take_line(const std::string& line);
    void take_number(std::size_t number);
    void take_enter();
    void find_findings(const std::string& words);
    void ask(const std::string& words);
    void suspect(const std::string& rest, bool for_good);
    void say_cause(const std::string& id, bool for_good, std::optional<double> sure);
    void list_causes(const std::string& words);
    void prove(const std::string& words);
    void fix(const std::string& words);
    void hint(const std::string& rest);
    void hand_over();
    void call_for_help();
    // By value: the page it may come from is made anew meanwhile.
    void do_work(study::practice::PracticeEvent event);
    // False: the input ended.
    bool mind_cautions(const study::practice::PracticeEvent& event);
    std::optional<study::practice::Precautions> read_precautions(
        const study::practice::CautionQuestion& question);
    bool keep(const study::practice::PracticeEvent& event);

    UnitSystem units_;  // the shop's
    study::practice::Session session_;
    Write write_;
    study::practice::Page page_;  // of the session as it stands
    Shown shown_;
    std::set<std::string> told_cautions_;  // in full
    std::string thought_;                  // cause said last
    std::size_t hinted_at_ = 0;            // work done when the last hint was taken
    int hinted_ = 0;                       // its level
    std::optional<Error> lost_;            // what kept an event from being written
};

void print_debrief(std::ostream& out, const study::practice::Debrief& debrief);

}  // namespace hardover
