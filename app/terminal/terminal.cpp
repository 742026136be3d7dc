#include "app/terminal/terminal.hpp"

#include <algorithm>
#include <CLI/CLI.hpp>
#include <filesystem>
#include <ostream>

#include "app/terminal/context.hpp"
#include "app/terminal/places.hpp"

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
    bool json = false;
};

void add_interview(CLI::App& app, Wish& wish) {
    CLI::App* interview = app.add_subcommand("interview", "Ask in the terminal, also through a pipe");
    interview->add_option("--job", wish.job, "Go on with this job")->check(CLI::PositiveNumber);
    interview->add_option("--boat", wish.boat, "Name of the boat for a new job");
    interview->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_interview(context, wish.job, wish.boat); };
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

void add_knowledge(CLI::App& app, Wish& wish) {
    CLI::App* knowledge = app.add_subcommand("knowledge", "Check, count and read the knowledge");
    knowledge->require_subcommand(1);
    CLI::App* check = knowledge->add_subcommand("check", "List every fault at file:line:column");
    check->add_option("FOLDER", wish.folder, "Folder of YAML files; the shipped one if missing");
    check->callback([&wish] {
        wish.run = [&wish](Context& context) { return run_knowledge_check(context, wish.folder); };
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
    CLI::App* show = knowledge->add_subcommand("show", "Show one entry in full");
    show->add_option("ID", wish.name, "Id of any entry")->required();
    show->callback(
        [&wish] { wish.run = [&wish](Context& context) { return run_knowledge_show(context, wish.name); }; });
}

void add_job(CLI::App& app, Wish& wish) {
    CLI::App* job = app.add_subcommand("job", "Jobs on file");
    job->require_subcommand(1);
    job->add_subcommand("list", "All jobs, the last changed first")->callback([&wish] {
        wish.run = [](Context& context) { return run_job_list(context); };
    });
    CLI::App* show = job->add_subcommand("show", "A job as it stands");
    show->add_option("N", wish.job, "Number of the job")->required()->check(CLI::PositiveNumber);
    show->callback(
        [&wish] { wish.run = [&wish](Context& context) { return run_job_show(context, wish.job); }; });
    CLI::App* events = job->add_subcommand("events", "Everything that happened to a job");
    events->add_option("N", wish.job, "Number of the job")->required()->check(CLI::PositiveNumber);
    events->callback(
        [&wish] { wish.run = [&wish](Context& context) { return run_job_events(context, wish.job); }; });
}

int open_the_window(Context& context, const Wish& wish, const OpenWindow& open_window) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    const std::string data_folder = std::filesystem::path(store.value().path()).parent_path().string();
    return open_window(knowledge.value(), store.value(), WindowRequest{wish.job, data_folder});
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
    app.set_version_flag("--version", "hardover " + version);
    app.add_option("--knowledge", context.knowledge_folder,
                   "Folder of knowledge files instead of the shipped one");
    app.add_option("--records", context.records_file, "Records file instead of the one in your data folder");
    app.add_option("--job", wish.job, "Open the window on this job")->check(CLI::PositiveNumber);
    app.require_subcommand(0, 1);
    add_interview(app, wish);
    add_assess(app, wish);
    add_worksheet(app, wish);
    add_knowledge(app, wish);
    add_job(app, wish);
    try {
        std::vector<std::string> reversed(arguments.rbegin(), arguments.rend());  // as CLI11 takes them
        app.parse(reversed);
    } catch (const CLI::ParseError& error) {
        const int code = app.exit(error, streams.out, streams.err);
        return code == 0 ? 0 : 2;
    }
    return wish.run ? wish.run(context) : open_the_window(context, wish, open_window);
}

}  // namespace hardover
