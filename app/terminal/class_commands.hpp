// `hardover class ...`: what its commands are asked for, and the functions that run them.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "app/classroom/archive.hpp"
#include "app/classroom/instructor.hpp"
#include "app/reports/pdf_wish.hpp"
#include "app/study/portrait.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/words.hpp"

namespace CLI {
class App;
}

namespace hardover {

struct ClassRequest {
    std::string class_name;       // "": the only one
    std::string passphrase_file;  // "": ask; "-": the standard input
    std::string new_passphrase_file;
    std::string start_code_file;
    std::string name;  // of a class, a learner, a set
    std::string seat;
    std::string group;
    std::string file;
    std::string folder;
    std::string title;
    std::string set;
    std::vector<std::string> tasks;
    std::vector<std::string> seats;
    std::vector<std::string> files;
    std::string topic;  // of a quiz; "": all
    int count = 10;     // questions
    std::string paper;  // "": as the shop has settled
    bool graded = false;
    bool with_names = false;
    bool json = false;
    bool recovery = false;  // by the words of the recovery sheet
    bool yes = false;       // do it, rather than say what would be done
    int months = classroom::months_kept;
    std::uint64_t seed = 1;
};

// Declares `class` and its commands, and gives it back for others to be added; the one chosen is put into
// `run`.
CLI::App& add_class(CLI::App& app, std::function<int(Context&)>& run);

int run_class_new(Context& context, const ClassRequest& request);
int run_class_list(Context& context, const ClassRequest& request);
int run_class_passphrase(Context& context, const ClassRequest& request);
int run_class_recovery_sheet(Context& context, const ClassRequest& request);
int run_class_clear_out(Context& context, const ClassRequest& request);
int run_class_protects(Context& context, const ClassRequest& request);

int run_roster_list(Context& context, const ClassRequest& request);
int run_roster_add(Context& context, const ClassRequest& request);
int run_roster_rename(Context& context, const ClassRequest& request);
int run_roster_group(Context& context, const ClassRequest& request);
int run_roster_remove(Context& context, const ClassRequest& request);
int run_roster_import(Context& context, const ClassRequest& request);

int run_set_make(Context& context, const ClassRequest& request);
int run_set_list(Context& context, const ClassRequest& request);
int run_set_show(Context& context, const ClassRequest& request);
int run_set_write(Context& context, const ClassRequest& request);
int run_set_start_code(Context& context, const ClassRequest& request);

int run_class_take(Context& context, const ClassRequest& request);
int run_class_taken(Context& context, const ClassRequest& request);
int run_class_hand_in(Context& context, const ClassRequest& request);
int run_class_purge(Context& context, const ClassRequest& request);

int run_class_merge(Context& context, const ClassRequest& request);
int run_class_check(Context& context, const ClassRequest& request);
int run_class_figures(Context& context, const ClassRequest& request);
int run_class_csv(Context& context, const ClassRequest& request);
int run_class_sheet(Context& context, const ClassRequest& request);
int run_class_qti(Context& context, const ClassRequest& request);
int run_class_paper(Context& context, const ClassRequest& request);

int run_class_demo(Context& context, const ClassRequest& request);

// What the commands share.

// The records, and the class asked for in them.
struct ClassOnFile {
    Store store;
    StoredClass of;
};
Result<ClassOnFile> open_class_on_file(Context& context, const ClassRequest& request);

// The class's keys, with the passphrase asked for.
Result<classroom::ClassKeys> ask_for_keys(Context& context, const StoredClass& of,
                                          const ClassRequest& request);

// How a PDF is wanted: its paper by the request, else as the shop has settled.
Result<PdfWish> pdf_wish(Context& context, const ClassRequest& request);

// What figures and exports are made from: the merged results, marked. Graded sets are opened where `request`
// asks for it; what could not be marked is told on `notes`.
Result<classroom::ClassResults> results_on_file(Context& context, const ClassRequest& request,
                                                const study::Portraits& portraits, std::ostream& notes);

// Prints the figures of a class: `keys` may be nullptr.
Result<void> print_figures(Context& context, ClassStore& store, const StoredClass& of,
                           const study::Portraits& portraits, const classroom::ClassKeys* keys,
                           bool with_names, bool json);

}  // namespace hardover
