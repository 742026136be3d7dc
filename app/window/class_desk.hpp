// The place Class on the instructor's PC and the list of sets taken on this one: the class in hand, its
// roster, sets, what was handed in and what it comes to. Everything is on disk before it shows. Knows no
// drawing library.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "app/classroom/class_results.hpp"
#include "app/classroom/figures_page.hpp"
#include "app/classroom/instructor.hpp"
#include "app/classroom/merge.hpp"
#include "app/classroom/taking.hpp"
#include "app/window/class_actions.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"

namespace hardover::window {

// What is being typed and what is open. Nothing here is on record.
struct ClassView {
    ClassTab tab = ClassTab::together;
    std::string seed;  // of the next boat that is projected
    std::string name, passphrase, again;
    std::string seat, seat_name, seat_group;
    std::string changing;  // the seat whose name and group stand in the fields; "": a new one
    std::string roster_path;
    std::string title, due;
    bool graded = false;
    std::string hand_in_path;
    std::string set_path, set_seat, start_code;
    std::set<std::string> open;  // what is unfolded
};

struct SetLine {
    std::string id;
    std::string title;
    std::vector<std::string> tasks;
    std::string about;       // "For 20 seats, graded."
    std::string start_code;  // of a graded set, while the keys are open
    std::string file;        // where it was written; "" before
};

// One file that was handed in.
struct CollectedLine {
    std::string text;
    bool refused = false;
};

// Where something was refused or done: beside what was pressed.
struct Told {
    std::string at;  // "roster", "import", "set" ...
    std::string text;
    bool trouble = false;
    std::string folder;  // where what was written is
};

struct ClassPage {
    std::vector<std::string> classes;
    std::string name;  // of the class in hand; "": none yet
    bool keys_open = false;
    std::vector<classroom::Seat> seats;
    std::vector<std::string> tasks;  // of the set being made
    std::vector<study::Topic> topics;
    std::vector<SetLine> sets;
    std::vector<CollectedLine> collected;
    std::vector<std::string> missing;
    std::vector<std::string> checked;
    std::optional<classroom::FiguresPage> figures;
    std::vector<std::string> notes;  // what could not be marked, and why
    std::vector<classroom::TakenSet> taken;
    Told told;
    std::string working;  // long work that is being done; "": none
};

class ClassDesk {
  public:
    ClassDesk(const PreparedKnowledge& prepared, Store& store, std::function<std::string()> now);

    // On coming to the place: what the records have, anew.
    void show();
    void carry_out(const ClassAction& action);
    void use(const PreparedKnowledge& prepared);
    void use_fonts(const std::string& folder) { fonts_folder_ = folder; }
    // What a passphrase costs to be tried; as usual unless told. For tests.
    void use_cost(const classroom::Cost& cost) { cost_ = cost; }

    const ClassPage& page() const { return page_; }
    // A set that was begun or gone on with, to be worked on at the place Study. Given once.
    std::optional<classroom::Taking> taken_up();

    ClassView view;

  private:
    void apply(const ShowClassTab& show);
    void apply(const MakeClass& make);
    void apply(const OpenKeys& open);
    void apply(const ShutKeys& shut);
    void apply(const ChooseClass& choose);
    void apply(const AddSeat& add);
    void apply(const ChangeSeat& change);
    void apply(const RemoveSeat& remove);
    void apply(const ImportRoster& import);
    void apply(const AddQuizTask& add);
    void apply(const AddBoatTask& add);
    void apply(const DropTask& drop);
    void apply(const MakeSet& make);
    void apply(const WriteSet& write);
    void apply(const CollectHandIns& collect);
    void apply(const CheckCollected& check);
    void apply(const WorkOutFigures& work);
    void apply(const ExportClass& what);
    void apply(const BeginSet& begin);
    void apply(const GoOnWithSet& go_on);
    void apply(const HandInSet& hand_in);
    void apply(const PurgeSet& purge);

    void refused(const std::string& at, const Error& error);
    void done(const std::string& at, const std::string& text, const std::string& folder = "");
    bool change_roster(const std::string& at, const std::function<Result<void>(classroom::Roster&)>& change);
    // Into the class's folder beside the records; says where.
    Result<void> write_file(const std::string& name, const std::string& text, std::string& path) const;
    // The same; gives the path, or tells what was refused at `at`.
    std::optional<std::string> write(const std::string& at, const std::string& name, const std::string& text);
    std::string folder() const;
    void read_class();
    void read_sets();
    void tell_tasks();
    const study::Portraits& portraits();
    std::optional<classroom::MarkedClass> marked(const std::string& at);

    PreparedKnowledge prepared_;
    Store& store_;
    ClassStore classes_;
    std::function<std::string()> now_;
    std::string fonts_folder_;
    std::optional<classroom::Cost> cost_;
    std::optional<StoredClass> class_;
    std::optional<classroom::ClassKeys> keys_;
    std::vector<classroom::Task> tasks_;
    std::optional<classroom::Taking> taking_;
    std::unique_ptr<study::Portraits> portraits_;  // made when first needed
    ClassPage page_;
};

}  // namespace hardover::window
