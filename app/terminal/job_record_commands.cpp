// `hardover job list, reopen, boat, attach, photos`: finding jobs, and what is put with them.
#include <memory>

#include "app/jobs/boat_history.hpp"
#include "app/jobs/find_jobs.hpp"
#include "app/jobs/job.hpp"
#include "app/jobs/moment.hpp"
#include "app/jobs/photos.hpp"
#include "app/terminal/records_commands.hpp"
#include "app/terminal/typed.hpp"

namespace hardover {

namespace {

int run_job_list(Context& context, const JobFilter& filter) {
    const Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const Result<FoundJobs> found = find_jobs(store.value(), knowledge.value(), filter);
    if (!found) return refuse(context, found.error());
    std::ostream& out = context.streams.out;
    if (found.value().of == 0) {
        out << "No jobs yet. Start one with: hardover interview\n";
        return 0;
    }
    for (const FoundJob& job : found.value().jobs) {
        out << job.row.number << "  " << local_moment(job.row.changed_at) << "  "
            << (job.row.summary.boat.empty() ? "(boat not named)" : job.row.summary.boat) << "  " << job.under
            << "\n";
        if (!job.match.empty()) out << "    " << job.match << "\n";
    }
    out << found.value().told << "\n";
    if (found.value().jobs.size() < found.value().total) out << "The others are left out by --most.\n";
    return 0;
}

// A job of the records, with the knowledge to work on it.
struct JobInHand {
    Store store;
    Knowledge knowledge;
};

Result<JobInHand> open_all(Context& context) {
    Result<Store> store = open_records_on_file(context);
    if (!store) return store.error();
    Result<Knowledge> knowledge = load_knowledge(context, store.value());
    if (!knowledge) return knowledge.error();
    return JobInHand{std::move(store).value(), std::move(knowledge).value()};
}

int run_reopen(Context& context, JobNumber number, const std::string& why) {
    Result<JobInHand> all = open_all(context);
    if (!all) return refuse(context, all.error());
    const PreparedKnowledge prepared(all.value().knowledge);
    Result<Job> job = load_job(all.value().store, prepared, number);
    if (!job) return refuse(context, job.error());
    const Result<void> done = record(all.value().store, prepared, job.value(), Reopened{why}, utc_now());
    if (!done) return refuse(context, done.error());
    context.streams.out << "Job " << number
                        << " is in hand again. Until it is handed back anew it teaches the odds "
                        << "nothing; then only its last cause counts.\nGo on with: hardover interview --job "
                        << number << "\n";
    back_up_on_close(context, all.value().store);
    return 0;
}

int run_boat(Context& context, const std::string& boat) {
    Result<JobInHand> all = open_all(context);
    if (!all) return refuse(context, all.error());
    const PreparedKnowledge prepared(all.value().knowledge);
    const Result<BoatHistory> history = boat_history(all.value().store, prepared, boat);
    if (!history) return refuse(context, history.error());
    context.streams.out << boat_history_text(history.value());
    return 0;
}

int run_attach(Context& context, JobNumber number, const std::vector<std::string>& files,
               const std::string& caption) {
    Result<JobInHand> all = open_all(context);
    if (!all) return refuse(context, all.error());
    const PreparedKnowledge prepared(all.value().knowledge);
    Result<Job> job = load_job(all.value().store, prepared, number);
    if (!job) return refuse(context, job.error());
    for (const std::string& file : files) {
        const std::size_t before = job.value().photos.size();
        const Result<void> attached =
            attach_photo(all.value().store, prepared, job.value(), file, caption, utc_now());
        if (!attached) return refuse(context, attached.error());
        const bool is_new = job.value().photos.size() > before;
        context.streams.out << "Job " << number << ": "
                            << (is_new ? photo_name(job.value().photos.back())
                                       : file + " is with the job already.")
                            << "\n";
    }
    back_up_on_close(context, all.value().store);
    return 0;
}

int run_photos(Context& context, JobNumber number) {
    Result<JobInHand> all = open_all(context);
    if (!all) return refuse(context, all.error());
    const PreparedKnowledge prepared(all.value().knowledge);
    const Result<Job> job = load_job(all.value().store, prepared, number);
    if (!job) return refuse(context, job.error());
    bool whole = true;
    for (const PhotoLine& photo : photo_lines(all.value().store.path(), job.value())) {
        context.streams.out << photo.text << "\n    " << photo.path << "\n";
        whole = whole && photo.state == PhotoState::whole;
    }
    if (job.value().photos.empty()) context.streams.out << "No photos with job " << number << ".\n";
    return whole ? 0 : 1;
}

void add_list(CLI::App& job, RunCommand& run) {
    const auto filter = std::make_shared<JobFilter>();
    const auto words = std::make_shared<std::vector<std::string>>();
    CLI::App* list = job.add_subcommand("list", "Jobs, the last changed first, all or those looked for");
    list->add_option("WORDS", *words, "Words of the boat, complaint, notes, captions or cause");
    list->add_option("--boat", filter->boat, "Words of the boat's name");
    list->add_option("--complaint", filter->complaint, "A complaint, by id or words");
    list->add_option("--cause", filter->cause, "Handed back with this cause, by id or words");
    list->add_option("--state", filter->state, "'in hand' or 'handed back'");
    list->add_option("--from", filter->from, "In hand or changed on this day or later, as 2026-11-25");
    list->add_option("--to", filter->to, "Opened on this day or earlier");
    list->add_option("--most", filter->most, "Show at most so many")->check(CLI::Range(1, 1000000));
    list->callback([&run, filter, words] {
        for (const std::string& word : *words) filter->words += word + " ";
        run = [filter](Context& context) { return run_job_list(context, *filter); };
    });
}

}  // namespace

void add_job_records(CLI::App& job, RunCommand& run) {
    add_list(job, run);
    const auto number = std::make_shared<JobNumber>(0);
    const auto text = std::make_shared<std::string>();
    const auto files = std::make_shared<std::vector<std::string>>();
    const auto takes_number = [&number](CLI::App* command) {
        command->add_option("N", *number, "Number of the job")->required()->check(a_job_number());
    };
    CLI::App* reopen = job.add_subcommand("reopen", "Take a job that was handed back in hand again");
    takes_number(reopen);
    reopen->add_option("--why", *text, "Why, in your words");
    reopen->callback([&run, number, text] {
        run = [=](Context& context) { return run_reopen(context, *number, *text); };
    });
    CLI::App* boat =
        job.add_subcommand("boat", "All jobs of a boat beside each other: did the same come again?");
    boat->add_option("BOAT", *text, "Its name")->required();
    boat->callback([&run, text] { run = [=](Context& context) { return run_boat(context, *text); }; });
    CLI::App* attach = job.add_subcommand("attach", "Put photos or other files with a job");
    takes_number(attach);
    attach->add_option("FILES", *files, "Copied beside the records; the originals stay")
        ->required()
        ->check(not_empty());
    attach->add_option("--caption", *text, "What they show");
    attach->callback([&run, number, files, text] {
        run = [=](Context& context) { return run_attach(context, *number, *files, *text); };
    });
    CLI::App* photos = job.add_subcommand("photos", "The photos of a job, where they are and whether whole");
    takes_number(photos);
    photos->callback(
        [&run, number] { run = [=](Context& context) { return run_photos(context, *number); }; });
}

}  // namespace hardover
