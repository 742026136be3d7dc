// `hardover class ...`: what its commands are asked for, and the functions that run them.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "app/classroom/instructor.hpp"
#include "app/study/portrait.hpp"
#include "app/terminal/context.hpp"

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
    bool graded = false;
    bool json = false;
    std::uint64_t seed = 1;
};

// Declares `class` and its commands; the one chosen is put into `run`.
void add_class(CLI::App& app, std::function<int(Context&)>& run);

int run_class_new(Context& context, const ClassRequest& request);
int run_class_list(Context& context, const ClassRequest& request);
int run_class_passphrase(Context& context, const ClassRequest& request);
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

// Prints the figures of a class: `keys` may be nullptr.
Result<void> print_figures(Context& context, ClassStore& store, const StoredClass& of,
                           const study::Portraits& portraits, const classroom::ClassKeys* keys, bool json);

// A text of one or more sentences, wrapped.
void say_wrapped(std::ostream& out, const std::string& text, int hang = 0);

}  // namespace hardover
