// `hardover job ...` and `hardover assess`: what is on file, and a case answered once.
#include <ostream>

#include "app/jobs/explain.hpp"
#include "app/jobs/job.hpp"
#include "app/jobs/json.hpp"
#include "app/jobs/moment.hpp"
#include "app/jobs/page.hpp"
#include "app/reports/job_report.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/words.hpp"

namespace hardover {

int run_job_show(Context& context, JobNumber number) {
    const Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    const Result<Knowledge> knowledge = load_knowledge(context, store.value());
    if (!knowledge) return refuse(context, knowledge.error());
    const Result<Job> job = load_job(store.value(), knowledge.value(), number);
    if (!job) return refuse(context, job.error());
    context.streams.out << job_report(make_job_page(knowledge.value(), job.value()));
    return 0;
}

int run_job_events(Context& context, JobNumber number) {
    const Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    const Result<std::vector<StoredEvent>> events = store.value().events(number);
    if (!events) return refuse(context, events.error());
    for (const StoredEvent& stored : events.value()) {
        const Result<Event> event = from_stored(stored);
        context.streams.out << stored.sequence << "  " << local_moment(stored.at) << "  "
                            << (event ? plain_text(event.value()) : event.error().text()) << "\n";
    }
    return 0;
}

int run_assess(Context& context, const std::string& case_file, bool json) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const Result<std::string> text = read_file(case_file);
    if (!text) return refuse(context, text.error());
    const CaseRead read = read_case({case_file, text.value()}, knowledge.value());
    for (const Fault& fault : read.faults) context.streams.err << fault.text() << "\n";
    if (!read.found.has_value()) {
        return refuse(context, {Error::Kind::bad_input, "the case cannot be used", case_file,
                                "put right what is listed above"});
    }
    const PreparedKnowledge prepared(knowledge.value());
    Job job;
    job.knowledge = knowledge.value().fingerprint;
    job.facts = read.found->facts;
    job.words = read.found->story;
    job.assessment = assess(prepared, job.facts);
    if (json) {
        nlohmann::ordered_json all = assessment_json(knowledge.value(), job.assessment);
        all["turning"] = turning_json(knowledge.value(), what_would_turn(prepared, job.facts));
        all["trace"] = trace_json(knowledge.value(), trace(prepared, job.facts));
        context.streams.out << json_text(all) << "\n";
        return 0;
    }
    JobPage page = make_job_page(prepared, job);
    page.title = "Case " + case_file;
    context.streams.out << job_report(page) << "\nNext\n----\n" << wrapped(page.card.heading, 80) << "\n";
    if (!page.card.eyebrow.empty()) context.streams.out << page.card.eyebrow << "\n";
    if (!page.card.why.empty()) context.streams.out << wrapped(page.card.why, 80) << "\n";
    for (const CautionText& caution : page.card.cautions) {
        context.streams.out << wrapped(
                                   "Caution, " + caution.name + ": " + caution.hurts + " " + caution.avoid,
                                   80)
                            << "\n";
    }
    int number = 0;
    for (const std::string& step : page.card.steps) {
        context.streams.out << wrapped(std::to_string(++number) + ". " + step, 80, 3) << "\n";
    }
    context.streams.out << "\nWhat would turn it\n------------------\n";
    for (const std::string& line : turning_texts(knowledge.value(), what_would_turn(prepared, job.facts))) {
        context.streams.out << "  - " << wrapped(line, 76, 4) << "\n";
    }
    return 0;
}

}  // namespace hardover
