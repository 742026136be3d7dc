// The interview in the terminal: prints the job page's step, reads one line, records it, again. Works the
// same through a pipe. Decides nothing about the job: the page says what to ask, app/jobs records the answer.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/jobs/job.hpp"
#include "app/jobs/knowledge_in_use.hpp"
#include "app/jobs/page.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/dialogue.hpp"

namespace hardover {

class Interview : Dialogue {
  public:
    Interview(Context& context, KnowledgeInUse& knowledge, Store& store, Job job);

    // Asks until the job is handed back, the person leaves or the input ends. Gives the exit code; the job is
    // kept in every case.
    int run();

  private:
    enum class Flow { go_on, leave };

    void print_step(const JobPage& page);
    void print_card(const StepCard& card);
    void print_out_of_turn(const StepCard& card);
    void print_complaints(const JobPage& page);
    void print_check_in_hand(const StepCard& next);
    void print_not_told(const JobPage& page);
    void print_question(const QuestionText& question);
    void print_causes(const JobPage& page);
    void print_everything(const JobPage& page);
    void print_help();
    void tell_of_changed_files();
    void read_knowledge_anew();

    Flow take_line(const std::string& line, const JobPage& page);
    Flow take_command(const std::string& word, const std::string& rest, bool& known);
    void take_empty_line();
    void keep_check_in_hand(const StepCard& card);
    std::vector<std::string> open_in_check() const;
    // Adds to what the customer complains of; an unknown complaint is told and changes nothing.
    void take_complaints(const std::string& line, const JobPage& page);
    void add_complaints(const std::string& rest);
    void take_answer(const std::string& line, const QuestionText& question);
    void take_outcome(const std::string& line, const StepCard& card);
    void take_hand_back(const std::string& line, const JobPage& page);
    void hand_back(const std::vector<RecordedCause>& told);
    void hand_back_at_once(const std::string& rest);
    // "1 seen, hose_chafed": numbers of the causes shown, or ids. Nothing where it is not written like that.
    std::optional<std::vector<RecordedCause>> told_causes(const std::string& line, const JobPage& page) const;
    void answer_by_name(const std::string& rest);
    void set_rig(const std::string& rest);
    void set_history(const std::string& word);
    void mark_need(const std::string& rest);
    void compare_causes(const std::string& rest);

    void say_each(const std::string& title, const std::vector<std::string>& lines);
    bool keep(const Event& event);  // records; prints the refusal when it is refused
    std::string now() const;

    KnowledgeInUse& in_use_;
    const Knowledge& knowledge_;  // of in_use_
    bool change_told_ = false;    // that the files have changed
    Store& store_;
    Job job_;
    std::string looking_at_;  // finding asked out of turn: with `ask`, or of the check in hand

    // The check that was answered last, with all that it gets.
    struct CheckInHand {
        std::string id;
        std::string heading;
        std::vector<std::string> findings;
    };
    CheckInHand in_hand_;
};

}  // namespace hardover
