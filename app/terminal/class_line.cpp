// The command line of `hardover class ...`.
#include <CLI/CLI.hpp>
#include <memory>

#include "app/terminal/class_commands.hpp"
#include "app/terminal/command_tree.hpp"
#include "app/terminal/typed.hpp"

namespace hardover {

namespace {

using Run = int (*)(Context&, const ClassRequest&);

// Declares the commands of one class; all of them fill the same request.
class ClassLine {
  public:
    ClassLine(CLI::App& app, std::function<int(Context&)>& run)
        : class_(*app.add_subcommand("class", "A shop class: roster, sets, hand-ins, figures")), run_(run) {
        class_.require_subcommand(1);
        const std::string heading = std::string(before_or_after) + " of 'class'";
        class_.add_option("--class", request_->class_name, "Which class, where there are several")
            ->group(heading);
        class_
            .add_option("--passphrase-file", request_->passphrase_file,
                        "File whose first line is the passphrase; - for the standard input")
            ->group(heading);
    }

    CLI::App& add_all() {
        CLI::App* made = add(class_, "new", "Make a class, and its keys behind a passphrase", run_class_new);
        made->add_option("NAME", request_->name, "Name of the class")->required()->check(a_name());
        json(add(class_, "list", "The classes on this PC", run_class_list));
        CLI::App* passphrase = add(class_, "passphrase", "Change the passphrase", run_class_passphrase);
        passphrase->add_option("--new-passphrase-file", request_->new_passphrase_file,
                               "File with the new one; asked for if missing");
        passphrase->add_flag("--recovery", request_->recovery,
                             "The words of the recovery sheet take the place of the passphrase");
        CLI::App* recovery =
            add(class_, "recovery-sheet", "Words on paper that open the class when the passphrase is lost",
                run_class_recovery_sheet);
        recovery->add_option("OUT", request_->file, "PDF file to be written")->required()->check(not_empty());
        paper(recovery);
        CLI::App* cleared = add(class_, "clear-out", "Sets not used for long: list them, or delete them",
                                run_class_clear_out);
        cleared->add_option("--months", request_->months, "Last used more than so many months ago (24)")
            ->check(CLI::Range(1, 1200));
        cleared->add_flag("--yes", request_->yes, "Delete them with their hand-ins");
        json(
            add(class_, "protects", "What the signatures protect against, and what not", run_class_protects));
        add_roster();
        add_sets();
        add_student();
        add_merging();
        add_outgoing();
        return class_;
    }

  private:
    CLI::App* add(CLI::App& under, const char* name, const char* about, Run what) {
        CLI::App* command = under.add_subcommand(name, about);
        command->callback([request = request_, run = &run_, what] {
            *run = [request, what](Context& context) { return what(context, *request); };
        });
        return command;
    }

    CLI::App* json(CLI::App* command) {
        command->add_flag("--json", request_->json, "Print JSON");
        return command;
    }

    void of_results(CLI::App* command) {
        command->add_flag("--graded", request_->graded, "Graded sets too: asks for the passphrase");
        command->add_flag("--names", request_->with_names, "With names, not with seats alone");
    }

    void paper(CLI::App* command) {
        command->add_option("--paper", request_->paper, "letter or a4; as settled in the window if missing")
            ->check(CLI::IsMember({"letter", "a4"}));
    }

    void of_items(CLI::App* command) {
        command->add_option("--topic", request_->topic, "A complaint, a part or a form; see: quiz topics");
        command->add_option("--count", request_->count, "How many questions (10)")->check(CLI::Range(1, 200));
        command->add_option("--seed", request_->seed, "The same seed asks the same (1)");
    }

    void seat(CLI::App* command) {
        command->add_option("SEAT", request_->seat, "Code of the seat, such as A07")->required();
    }

    void add_roster() {
        CLI::App* roster = class_.add_subcommand("roster", "Who sits where; names stay on this PC");
        roster->require_subcommand(1);
        json(add(*roster, "list", "All seats", run_roster_list));
        CLI::App* added = add(*roster, "add", "Add a seat", run_roster_add);
        seat(added);
        added->add_option("--name", request_->name, "Name, where one is wanted");
        added->add_option("--group", request_->group, "Group");
        CLI::App* renamed = add(*roster, "rename", "Give a seat another name, or none", run_roster_rename);
        seat(renamed);
        renamed->add_option("NAME", request_->name, "Name; none if missing");
        CLI::App* moved = add(*roster, "group", "Put a seat into a group, or none", run_roster_group);
        seat(moved);
        moved->add_option("GROUP", request_->group, "Group; none if missing");
        seat(add(*roster, "remove", "Take a seat and its name off the roster", run_roster_remove));
        CLI::App* imported = add(*roster, "import", "Add the seats of a CSV table", run_roster_import);
        imported->add_option("FILE", request_->file, "First row: seat,name,group")
            ->required()
            ->check(not_empty());
    }

    void add_sets() {
        CLI::App* set = class_.add_subcommand("set", "Sets of quizzes and practice boats");
        set->require_subcommand(1);
        CLI::App* made = add(*set, "make", "Make a set and write its file to a folder", run_set_make);
        made->add_option("FOLDER", request_->folder, "Where the file goes")->required()->check(not_empty());
        made->add_option("TASKS", request_->tasks,
                         "In order: 'quiz topic=wander count=10 due=2026-12-04', 'boat level=2 help=unaided'")
            ->required();
        made->add_option("--title", request_->title, "What it is about");
        made->add_option("--id", request_->set, "Short name; the next of S1, S2 ... if missing");
        made->add_option("--seats", request_->seats, "Only these seats")->delimiter(',');
        made->add_flag("--graded", request_->graded,
                       "Seal the questions under a start code; only the instructor's program marks");
        json(made);
        json(add(*set, "list", "The sets of the class", run_set_list));
        CLI::App* shown = add(*set, "show", "What stands in the file of a set", run_set_show);
        shown->add_option("FILE", request_->file, "File of the set")->required()->check(not_empty());
        json(shown);
        CLI::App* written = add(*set, "write", "Write the file of a set once more", run_set_write);
        written->add_option("ID", request_->set, "Id of the set")->required();
        written->add_option("FOLDER", request_->folder, "Where the file goes")
            ->required()
            ->check(not_empty());
        CLI::App* code = add(*set, "start-code", "The start code of a graded set", run_set_start_code);
        code->add_option("ID", request_->set, "Id of the set")->required();
    }

    void add_student() {
        CLI::App* take = add(class_, "take", "Take a set at a seat, or go on with it", run_class_take);
        take->add_option("FILE", request_->file, "File of the set")->required()->check(not_empty());
        take->add_option("--seat", request_->seat, "Code of the seat")->required();
        take->add_option("--start-code-file", request_->start_code_file,
                         "File with the start code of a graded set; asked for if missing");
        json(add(class_, "taken", "The sets taken on this PC", run_class_taken));
        CLI::App* handed =
            add(class_, "hand-in", "Write the hand-in of a seat to a folder", run_class_hand_in);
        handed->add_option("FOLDER", request_->folder, "Stick or shared folder")
            ->required()
            ->check(not_empty());
        CLI::App* purged =
            add(class_, "purge", "Take a seat's answers off this PC, after the hand-in", run_class_purge);
        for (CLI::App* command : {handed, purged}) {
            command->add_option("--seat", request_->seat, "Code of the seat")->required();
            command->add_option("--set", request_->set, "Id of the set, where the seat took several");
        }
        json(handed);
    }

    void add_merging() {
        CLI::App* merge =
            add(class_, "merge", "Bring hand-ins together; any order, any number of times", run_class_merge);
        merge->add_option("FILES", request_->files, "Hand-ins")->required()->check(not_empty());
        json(merge);
        add(class_, "check", "Is everything collected as it was countersigned?", run_class_check);
        of_results(json(add(class_, "figures", "What the class came to", run_class_figures)));
        CLI::App* demo = add(class_, "demo", "Build an invented class of 20 with results", run_class_demo);
        demo->add_option("OUT", request_->folder, "Folder to be made")->required()->check(not_empty());
        demo->add_option("--seed", request_->seed, "Another seed, another class");
    }

    void add_outgoing() {
        CLI::App* csv = add(class_, "csv", "Results and figures as tables for a spreadsheet", run_class_csv);
        csv->add_option("OUT", request_->folder, "Folder for the tables; made if it is not there")
            ->required();
        of_results(csv);
        CLI::App* sheet = add(class_, "sheet", "The class's figures on one to three pages", run_class_sheet);
        sheet->add_option("OUT", request_->file, "PDF file to be written")->required()->check(not_empty());
        of_results(sheet);
        paper(sheet);
        CLI::App* qti = add(class_, "qti", "Write questions as QTI 2.2 for another program", run_class_qti);
        qti->add_option("OUT", request_->file, "A file ending in .zip, or a folder")
            ->required()
            ->check(not_empty());
        of_items(qti);
        CLI::App* quiz =
            add(class_, "paper", "A quiz on paper, the key on pages of its own", run_class_paper);
        quiz->add_option("OUT", request_->file, "PDF file to be written")->required()->check(not_empty());
        of_items(quiz);
        paper(quiz);
    }

    CLI::App& class_;
    std::function<int(Context&)>& run_;
    std::shared_ptr<ClassRequest> request_ = std::make_shared<ClassRequest>();
};

}  // namespace

CLI::App& add_class(CLI::App& app, std::function<int(Context&)>& run) {
    return ClassLine(app, run).add_all();
}

}  // namespace hardover
