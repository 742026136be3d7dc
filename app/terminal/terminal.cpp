#include "app/terminal/terminal.hpp"

#include <algorithm>
#include <CLI/CLI.hpp>
#include <filesystem>
#include <future>
#include <ostream>

#include "app/jobs/wording.hpp"
#include "app/records/way_back.hpp"
#include "app/terminal/class_commands.hpp"
#include "app/terminal/command_tree.hpp"
#include "app/terminal/completion.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/manual.hpp"
#include "app/terminal/places.hpp"
#include "app/terminal/records_commands.hpp"
#include "app/terminal/typed.hpp"
#include "app/terminal/words.hpp"
#include "rules/result/nearest.hpp"

namespace hardover {

namespace {

// What the command line asked for.
struct Wish {
    std::function<int(Context&)> run;  // empty: open the window
    JobNumber job = 0;
    std::string boat;
    std::string file;
    std::string folder;
    std::string name;
    std::vector<std::string> inputs;
    int strength = 0;
    WalkWish walk;
    QuizRequest quiz;
    PracticeRequest practice;
    ProjectRequest project;
    SheetWish sheet;
    unsigned seed = 0;
    bool json = false;
    bool strict = false;
    bool how_often = false;
    bool all = false;
    int boats = 40;
    std::uint64_t first_boat = 1;
};

// To go on with a job needs records; only a new one begins them.
Result<void> job_may_be_there(const Context& context, JobNumber job) {
    if (job == 0) return {};
    const Result<std::string> path = records_path(context);
    if (!path) return path.error();
    return records_there(path.value());
}

// The help of a command ends with the options of those above it that may stand after it.
class HelpFormat : public CLI::Formatter {
  public:
    std::string make_footer(const CLI::App* app) const override {
        std::string text;
        for (const CLI::App* above = app->get_parent(); above != nullptr; above = above->get_parent()) {
            const auto options =
                above->get_options([](const CLI::Option* option) { return may_stand_after(*option); });
            if (!options.empty()) text += make_group(options.front()->get_group(), false, options);
        }
        return text;
    }
};

// A command would also take what only the one above it can use, and pass over it.
void refuse_what_is_passed_over(const CLI::App& app) {
    const CLI::App* at = &app;
    for (; !at->get_subcommands().empty(); at = at->get_subcommands().front()) {
        for (const CLI::Option* option : at->get_options()) {
            if (option->count() > 0 && !may_stand_after(*option)) {
                throw CLI::ExtrasError(at->get_name(), {option->get_name()});
            }
        }
    }
}

// What the program says of its own commands, for man and for shells.
void add_manual(CLI::App& app, Wish& wish, const std::string& version) {
    app.add_subcommand("manual", "Print the manual page in the form that man takes")
        ->callback([&app, &wish, version] {
            wish.run = [&app, version](Context& context) {
                context.streams.out << manual_page(tree_of(app), version);
                return 0;
            };
        });
    CLI::App* completion = app.add_subcommand("completion", "Print the completion of commands for a shell");
    completion->add_option("SHELL", wish.name, "bash, zsh or fish")
        ->required()
        ->check(CLI::IsMember({"bash", "zsh", "fish"}));
    completion->callback([&app, &wish] {
        wish.run = [&app, &wish](Context& context) {
            const CommandTree tree = tree_of(app);
            context.streams.out << (wish.name == "bash"  ? bash_completion(tree)
                                    : wish.name == "zsh" ? zsh_completion(tree)
                                                         : fish_completion(tree));
            return 0;
        };
    });
}

void add_interview(CLI::App& app, Wish& wish) {
    CLI::App* interview = app.add_subcommand("interview", "Ask in the terminal, also through a pipe");
    interview->add_option("--job", wish.job, "Go on with this job")->check(a_job_number());
    interview->add_option("--boat", wish.boat, "Name of the boat for a new job")->check(a_name());
    interview->callback([&wish] {
        wish.run = [&wish](Context& context) {
            if (const Result<void> there = job_may_be_there(context, wish.job); !there) {
                return refuse(context, there.error());
            }
            return run_interview(context, wish.job, wish.boat);
        };
    });
}

void add_assess(CLI::App& app, Wish& wish) {
    CLI::App* assess = app.add_subcommand("assess", "Answer a case file once, without records");
    assess->add_option("CASE", wish.file, "YAML file with rig, history, complaints, answers")->required();
    assess->add_flag("--json", wish.json, "Print JSON");
    assess->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_assess(context, wish.file, wish.json); };
    });
}

void add_worksheet(CLI::App& app, Wish& wish) {
    CLI::App* worksheet = app.add_subcommand("worksheet", "List the worksheets, or work one out");
    worksheet->add_option("NAME", wish.name, "'list', or a worksheet's id")->required();
    worksheet->add_option("INPUTS", wish.inputs, "Its inputs as key=value, such as stroke='9 in'");
    worksheet->add_flag("--json", wish.json, "Print JSON");
    worksheet->callback([&wish] {
        wish.run = [&wish](Context& context) {
            if (wish.name == "list") return run_worksheet_list(context, wish.json);
            return run_worksheet(context, wish.name, wish.inputs, wish.json);
        };
    });
}

void add_knowledge_try(CLI::App& knowledge, Wish& wish) {
    CLI::App* walk = knowledge.add_subcommand("try", "Walk through a job on a boat that has these faults");
    CLI::Option* causes = walk->add_option("CAUSES", wish.walk.causes, "Ids of the causes that are present");
    walk->add_flag("--all", wish.all, "Each cause alone, a line each")->excludes(causes);
    walk->add_option("--history", wish.walk.history, "What was done before; the likeliest if missing");
    walk->add_option("--rig", wish.walk.rig, "A rig field as field=value; may be given several times")
        ->take_all()
        ->allow_extra_args(false);
    walk->add_option("--complaint", wish.walk.complaint, "What the customer says; the likeliest if missing");
    CLI::Option* seed =
        walk->add_option("--seed", wish.seed, "Draw the readings by chance instead of the most likely ones");
    walk->add_flag("--json", wish.json, "Print JSON");
    walk->callback([&wish, seed, causes] {
        if (causes->count() == 0 && !wish.all) throw CLI::RequiredError("CAUSES, or --all,");
        if (seed->count() > 0) wish.walk.seed = wish.seed;
        wish.run = [&wish](Context& context) {
            return wish.all ? run_knowledge_try_all(context, wish.walk, wish.json)
                            : run_knowledge_try(context, wish.walk, wish.json);
        };
    });
}

void add_knowledge(CLI::App& app, Wish& wish) {
    CLI::App* knowledge = app.add_subcommand("knowledge", "Check, count and read the knowledge");
    knowledge->require_subcommand(1);
    CLI::App* check = knowledge->add_subcommand("check", "List every fault at file:line:column");
    check->add_option("FOLDER", wish.folder, "Folder of YAML files; the shipped one if missing")
        ->check(not_empty());
    check->add_flag("--strict", wish.strict, "Fail on warnings too");
    check->callback([&wish] {
        wish.run = [&wish](Context& context) {
            return run_knowledge_check(context, wish.folder, wish.strict);
        };
    });
    CLI::App* figures = knowledge->add_subcommand("figures", "Count causes, findings, checks ...");
    figures->add_flag("--json", wish.json, "Print JSON");
    figures->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_knowledge_figures(context, wish.json); };
    });
    CLI::App* list = knowledge->add_subcommand("list", "List complaints, findings, causes, ...");
    list->add_option("KIND", wish.name, "complaints, findings, causes, checks, remedies, rules, ...")
        ->required();
    list->callback(
        [&wish] { wish.run = [&wish](Context& context) { return run_knowledge_list(context, wish.name); }; });
    CLI::App* compare = knowledge->add_subcommand(
        "compare-with-rig",
        "Hold what each cause shows against the numeric boat; fails while they differ unexplained");
    compare->add_flag("--all", wish.all, "List the explained differences too");
    compare->add_option("--seed", wish.first_boat, "Number that picks the boats to sample (1)");
    compare->add_option("--boats", wish.boats, "Boats for each cause (40)")->check(CLI::Range(1, 100000));
    compare->callback([&wish] {
        wish.run = [&wish](Context& context) {
            return run_knowledge_compare_with_rig(context, wish.all, wish.boats, wish.first_boat);
        };
    });
    add_knowledge_try(*knowledge, wish);
    CLI::App* book = knowledge->add_subcommand("book", "Write everything that is known as HTML pages");
    book->add_option("OUT", wish.folder, "Folder for the pages; made if it is not there")->required();
    book->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_knowledge_book(context, wish.folder); };
    });
    CLI::App* show = knowledge->add_subcommand("show", "Show one entry in full");
    show->add_option("ID", wish.name, "Id of any entry")->required();
    show->callback(
        [&wish] { wish.run = [&wish](Context& context) { return run_knowledge_show(context, wish.name); }; });
}

void add_job_sheet(CLI::App& job, Wish& wish) {
    CLI::App* sheet = job.add_subcommand("sheet", "Write the job sheet for the customer and the file");
    sheet->add_option("N", wish.job, "Number of the job")->required()->check(a_job_number());
    sheet->add_option("OUT", wish.sheet.file, "PDF file to be written");
    sheet->add_option("--paper", wish.sheet.paper, "letter or a4; as settled in the window if missing")
        ->check(CLI::IsMember({"letter", "a4"}));
    sheet->add_option("--shop", wish.sheet.shop, "Name of the shop; kept for the next sheets")
        ->check(a_name());
    sheet->add_flag("--json", wish.sheet.json, "Print what stands on the sheet as JSON");
    sheet->callback([&wish] {
        if (wish.sheet.file.empty() && !wish.sheet.json) throw CLI::RequiredError("OUT or --json");
        wish.run = [&wish](Context& context) { return run_job_sheet(context, wish.job, wish.sheet); };
    });
}

void add_job(CLI::App& app, Wish& wish) {
    CLI::App* job = app.add_subcommand("job", "Jobs on file");
    job->require_subcommand(1);
    add_job_records(*job, wish.run);
    CLI::App* show = job->add_subcommand("show", "A job as it stands");
    show->add_option("N", wish.job, "Number of the job")->required()->check(a_job_number());
    show->callback(
        [&wish] { wish.run = [&wish](Context& context) { return run_job_show(context, wish.job); }; });
    CLI::App* events = job->add_subcommand("events", "Everything that happened to a job");
    events->add_option("N", wish.job, "Number of the job")->required()->check(a_job_number());
    events->callback(
        [&wish] { wish.run = [&wish](Context& context) { return run_job_events(context, wish.job); }; });
    add_job_sheet(*job, wish);
}

void add_learning(CLI::App& app, Wish& wish) {
    CLI::App* learning = app.add_subcommand("learning", "Odds learned from closed jobs");
    learning->require_subcommand(1);
    CLI::App* show = learning->add_subcommand("show", "Learned odds beside the shipped ones");
    show->add_flag("--json", wish.json, "Print JSON");
    show->callback(
        [&wish] { wish.run = [&wish](Context& context) { return run_learning_show(context, wish.json); }; });
    CLI::App* on = learning->add_subcommand("on", "Use what closed jobs teach");
    on->add_flag("--how-often", wish.how_often, "Also learn how often a cause shows a finding");
    on->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_learning_switch(context, true, wish.how_often); };
    });
    learning->add_subcommand("off", "Use the odds as shipped")->callback([&wish] {
        wish.run = [](Context& context) { return run_learning_switch(context, false, false); };
    });
    CLI::App* strength =
        learning->add_subcommand("strength", "How many jobs the shipped odds weigh as much as");
    strength->add_option("N", wish.strength, "Jobs, 1 to 200")->required();
    strength->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_learning_strength(context, wish.strength); };
    });
    CLI::App* reset = learning->add_subcommand("reset", "Start counting anew; no job is lost");
    CLI::Option* before =
        reset->add_option("--before", wish.name, "Leave out only own jobs handed back before this day");
    reset->add_flag("--count-all", wish.all, "Count all own jobs again")->excludes(before);
    reset->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_learning_reset(context, wish.name, wish.all); };
    });
    CLI::App* counts = learning->add_subcommand("export", "Write the counts to a file for other shops");
    counts->add_option("FILE", wish.file, "File to be written")->required();
    counts->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_learning_export(context, wish.file); };
    });
    CLI::App* merge = learning->add_subcommand("merge", "Add the counts of other shops");
    merge->add_option("FILES", wish.inputs, "Files made by export")->required();
    merge->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_learning_merge(context, wish.inputs); };
    });
    CLI::App* calibration = learning->add_subcommand("calibration", "How well it foretold the closed jobs");
    calibration->add_flag("--json", wish.json, "Print JSON");
    calibration->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_learning_calibration(context, wish.json); };
    });
}

void add_quiz(CLI::App& app, Wish& wish) {
    CLI::App* quiz = app.add_subcommand("quiz", "Questions made from the knowledge, also through a pipe");
    quiz->add_option("--topic", wish.quiz.topic, "A complaint, a part or a form; see: quiz topics");
    quiz->add_option("--count", wish.quiz.count, "How many questions")->check(CLI::Range(1, 200));
    CLI::Option* seed = quiz->add_option("--seed", wish.seed, "The same seed asks the same");
    quiz->add_option("--learner", wish.quiz.learner, "Keep the answers, and ask first what is due");
    quiz->require_subcommand(0, 1);
    quiz->final_callback([&wish, quiz, seed] {
        if (!quiz->get_subcommands().empty()) return;
        if (seed->count() > 0) wish.quiz.seed = wish.seed;
        wish.run = [&wish](Context& context) { return run_quiz(context, wish.quiz); };
    });
    quiz->add_subcommand("topics", "What a quiz may be about")->callback([&wish] {
        wish.run = [](Context& context) { return run_quiz_topics(context); };
    });
    CLI::App* figures = quiz->add_subcommand("figures", "Count the items by form, complaint and part");
    figures->add_option("--seed", wish.seed, "Numbers of the figures are drawn with it");
    figures->add_flag("--json", wish.json, "Print JSON");
    figures->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_quiz_figures(context, wish.seed, wish.json); };
    });
}

void add_practice(CLI::App& app, Wish& wish) {
    CLI::App* practice = app.add_subcommand("practice", "A boat with a hidden fault to find, also by a pipe");
    practice->add_option("--seed", wish.practice.seed, "The same seed and level make the same boat");
    practice->add_option("--level", wish.practice.level, "1 (easiest) to 5; see: practice levels")
        ->check(CLI::Range(1, 5));
    practice->add_option("--learner", wish.practice.learner, "Keep it, and go on with what is not finished");
    practice->add_option("--help-shown", wish.practice.guidance, "worked, half, nudged or unaided");
    practice->add_flag("--new", wish.practice.start_new, "A new boat although one is not finished");
    practice->add_flag("--json", wish.practice.json, "Print the debrief as JSON");
    practice->require_subcommand(0, 1);
    practice->final_callback([&wish, practice] {
        if (!practice->get_subcommands().empty()) return;
        wish.run = [&wish](Context& context) { return run_practice(context, wish.practice); };
    });
    CLI::App* replay = practice->add_subcommand("replay", "The debrief of a practice boat once more");
    replay->add_option("ID", wish.name, "As practice list says it")->required();
    replay->add_flag("--json", wish.json, "Print JSON");
    replay->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_practice_replay(context, wish.name, wish.json); };
    });
    practice->add_subcommand("list", "Practice boats on record")->callback([&wish] {
        wish.run = [](Context& context) { return run_practice_list(context); };
    });
    practice->add_subcommand("levels", "What each level is")->callback([&wish] {
        wish.run = [](Context& context) { return run_practice_levels(context); };
    });
    CLI::App* figures = practice->add_subcommand(
        "figures", "Do the marks tell good work from bad? With the figures on the items");
    CLI::Option* boats = figures->add_option("--boats", wish.boats, "How many boats (2000)");
    boats->check(CLI::Range(1, 100000));
    figures->add_flag("--json", wish.json, "Print JSON");
    figures->callback([&wish, boats] {
        const int count = boats->count() > 0 ? wish.boats : 2000;
        wish.run = [&wish, count](Context& context) {
            return run_practice_figures(context, count, wish.json);
        };
    });
}

void add_learner(CLI::App& app, Wish& wish) {
    CLI::App* learner = app.add_subcommand("learner", "Learners and how far they have come");
    learner->require_subcommand(1);
    CLI::App* add = learner->add_subcommand("add", "Add a learner; a seat such as A07 will do for a name");
    add->add_option("NAME", wish.name, "Name")->required()->check(a_name());
    add->callback(
        [&wish] { wish.run = [&wish](Context& context) { return run_learner_add(context, wish.name); }; });
    CLI::App* list = learner->add_subcommand("list", "All learners");
    list->add_flag("--json", wish.json, "Print JSON");
    list->callback(
        [&wish] { wish.run = [&wish](Context& context) { return run_learner_list(context, wish.json); }; });
    CLI::App* show = learner->add_subcommand("show", "Mastery by complaint and part, and sureness");
    show->add_option("NAME", wish.name, "Name")->required();
    show->add_flag("--json", wish.json, "Print JSON");
    show->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_learner_show(context, wish.name, wish.json); };
    });
    CLI::App* fit = learner->add_subcommand("fit", "Fit the review times to the learner's own answers");
    fit->add_option("NAME", wish.name, "Name")->required();
    fit->add_flag("--usual", wish.all, "Back to the usual review times");
    fit->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_learner_fit(context, wish.name, wish.all); };
    });
}

void add_class_project(CLI::App& group, Wish& wish) {
    CLI::App* project = group.add_subcommand("project", "A boat worked by the class, hands being counted");
    project->add_option("--seed", wish.project.seed, "The same seed and level make the same boat");
    project->add_option("--level", wish.project.level, "1 (easiest) to 5; see: practice levels")
        ->check(CLI::Range(1, 5));
    project->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_class_project(context, wish.project); };
    });
}

int open_the_window(Context& context, const Wish& wish, const OpenWindow& open_window) {
    if (const Result<void> there = job_may_be_there(context, wish.job); !there) {
        return refuse(context, there.error());
    }
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    auto reading = std::async(std::launch::async, [&] { return load_knowledge(context, store.value()); });
    const std::string data_folder = std::filesystem::path(store.value().path()).parent_path().string();
    const int code =
        open_window([&] { return reading.get(); }, store.value(), WindowRequest{wish.job, data_folder});
    back_up_on_close(context, store.value());
    return code;
}

// Where a command of several stays out, or is none of them: which there are. Nothing for every other fault.
std::string missing_command(const CLI::App& app) {
    const CLI::App* at = &app;
    std::string name = "hardover";
    while (!at->get_subcommands().empty()) {
        at = at->get_subcommands().front();
        name += " " + at->get_name();
    }
    if (at->get_require_subcommand_min() == 0) return "";
    std::vector<std::string> names;
    for (const CLI::App* below : at->get_subcommands([](const CLI::App*) { return true; }))
        names.push_back(below->get_name());
    const std::vector<std::string> left = app.remaining(true);
    const std::string they_are = "they are " + jobs_detail::listed(names);
    if (left.empty()) return "'" + name + "' needs one of its commands (" + they_are + ")";
    const std::string near = did_you_mean(left.front(), names);
    return "'" + left.front() + "' is no command of '" + name + "' (" + (near.empty() ? "" : near + " ") +
           they_are + ")";
}

}  // namespace

int run_terminal(const std::vector<std::string>& arguments, Streams streams, const std::string& version,
                 const OpenWindow& open_window) {
    Context context{streams, "", ""};
    Wish wish;
    CLI::App app{
        "Finds, proves and cures faults of hydraulic steering on small craft.\n"
        "Without a command it opens the window.",
        "hardover"};
    app.fallthrough();
    app.formatter(std::make_shared<HelpFormat>());
    app.set_version_flag("--version", "hardover " + version);
    app.add_option("--knowledge", context.knowledge_folder,
                   "Folder of knowledge files instead of the shipped one")
        ->check(not_empty())
        ->group(before_or_after);
    app.add_option("--records", context.records_file, "Records file instead of the one in your data folder")
        ->check(not_empty())
        ->group(before_or_after);
    app.add_option("--job", wish.job, "Open the window on this job")->check(a_job_number());
    app.require_subcommand(0, 1);
    add_interview(app, wish);
    add_assess(app, wish);
    add_worksheet(app, wish);
    add_knowledge(app, wish);
    add_job(app, wish);
    add_learning(app, wish);
    add_quiz(app, wish);
    add_practice(app, wish);
    add_learner(app, wish);
    add_class_project(add_class(app, wish.run), wish);
    add_records(app, wish.run);
    add_manual(app, wish, version);
    check_whole_numbers(app);
    try {
        std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());  // as CLI11 takes them
        app.parse(reversed);
        refuse_what_is_passed_over(app);
    } catch (const CLI::RequiredError& error) {
        const std::string told = missing_command(app);
        if (told.empty()) return app.exit(error, streams.out, streams.err) == 0 ? 0 : 2;
        say_wrapped(streams.err, "hardover: " + told);
        return 2;
    } catch (const CLI::ParseError& error) {
        const int code = app.exit(error, streams.out, streams.err);
        return code == 0 ? 0 : 2;
    }
    if (const Result<void> named = records_named_well(context); !named) return refuse(context, named.error());
    return wish.run ? wish.run(context) : open_the_window(context, wish, open_window);
}

}  // namespace hardover
