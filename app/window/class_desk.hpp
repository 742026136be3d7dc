// The place Class on the instructor's PC and the list of sets taken on this one: the class in hand, its
// roster, sets, what was handed in and what it comes to. Everything is on disk before it shows. Knows no
// drawing library.
#pragma once

#include <atomic>
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
#include "app/study/portrait.hpp"
#include "app/window/background.hpp"
#include "app/window/beside_records.hpp"
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
    bool with_names = false;  // in what goes out of the figures
    std::string topic;        // of questions that go out; "": all
    int questions = 10;
    std::string set_path, set_seat, start_code;
    std::set<std::string> open{"item_map", "abilities", "over_best", "learners"};  // what is unfolded
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
    enum class Kind { done, stopped, trouble };
    std::string at;  // "roster", "import", "set" ...
    std::string text;
    Kind kind = Kind::done;
    std::string folder;  // where what was written is
    std::string file;    // that can be looked at
    bool trouble() const { return kind == Kind::trouble; }
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
    bool invented = false;           // the figures are those of a class that is made up
    std::vector<std::string> notes;  // what could not be marked, and why
    std::vector<classroom::TakenSet> taken;
    Told told;
    std::optional<WorkShown> working;           // long work that is being done
    ClassTab working_tab = ClassTab::together;  // where it was asked for
};

class ClassDesk {
  public:
    ClassDesk(const PreparedKnowledge& prepared, Store& store, std::function<std::string()> now);

    // On coming to the place: what the records have, anew.
    void show();
    void carry_out(const ClassAction& action);
    void use(const PreparedKnowledge& prepared);
    void use_fonts(const std::string& folder) { fonts_folder_ = folder; }
    // Long work is done beside the window from now on; without it, at once.
    void work_in(Background& background) { beside_.work_in(background); }
    // How far long work has come, for the page.
    void note_progress() { beside_.note_progress(); }
    // Long work has written to the records by a connection of its own.
    bool wrote_beside() const { return beside_.wrote(); }
    // In which figures questions are asked from now on: the shop's.
    void use_units(UnitSystem units) { units_ = units; }
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
    void apply(const InventClass& invent);
    void apply(const ExportClass& what);
    void apply(const ExportQuiz& what);
    void apply(const StopClassWork& stop);
    void apply(const BeginSet& begin);
    void apply(const GoOnWithSet& go_on);
    void apply(const HandInSet& hand_in);
    void apply(const PurgeSet& purge);

    void refused(const std::string& at, const Error& error);
    void done(const std::string& at, const std::string& text, const std::string& folder = "",
              const std::string& file = "");

    // What long work has on its thread, and the classes of its store.
    struct Beside : BesideRecords::Beside {
        ClassStore& classes;
    };
    using Work = std::function<Background::Outcome(const Beside&)>;
    // Does nothing while other work of this place is being done.
    void work(const BesideRecords::About& about, Work work);
    Background::Outcome refusal(const std::string& at, const Error& error);
    Background::Outcome stopped(const std::string& at, const std::string& text);
    Background::Outcome told_written(const std::string& at, const std::string& text, const std::string& file);
    static int threads_to_spare();  // one is left for the window
    using SharedPortraits = std::shared_ptr<const study::Portraits>;
    Background::Outcome figures_of(const classroom::MarkedClass& marked, const SharedPortraits& known,
                                   bool invented);
    void take_merged(const classroom::MergeReport& report);
    void take_keys(classroom::ClassKeys keys);

    bool change_roster(const std::string& at, const std::function<Result<void>(classroom::Roster&)>& change);
    // Into the class's folder beside the records; says where.
    Result<void> write_file(const std::string& name, const std::string& text, std::string& path) const;
    // The same; gives the path, or tells what was refused at `at`.
    std::optional<std::string> write(const std::string& at, const std::string& name, const std::string& text);
    std::string folder() const;
    void read_class();
    void read_sets();
    void tell_tasks();

    PreparedKnowledge prepared_;
    Store& store_;
    ClassStore classes_;
    std::function<std::string()> now_;
    std::string fonts_folder_;
    std::optional<classroom::Cost> cost_;
    std::optional<StoredClass> class_;
    std::shared_ptr<const classroom::ClassKeys> keys_;  // long work keeps them until it is done
    std::vector<classroom::Task> tasks_;
    std::optional<classroom::Taking> taking_;
    SharedPortraits portraits_;  // made when first needed
    UnitSystem units_ = UnitSystem::us;
    ClassPage page_;
    BesideRecords beside_{"class", page_.working,
                          [this](const std::string& at, const Error& error) { refused(at, error); }};
};

}  // namespace hardover::window
