// Events of jobs and learners as the records hold them: the first line of an input is the kind, the rest the
// body. What is read is written in one form, and comes to a state; what is not is refused in words.
#include <algorithm>

#include "app/jobs/event.hpp"
#include "app/study/learner.hpp"
#include "app/study/practice_event.hpp"
#include "fuzz/target.hpp"

using namespace hardover;
using namespace hardover_fuzz;

namespace {

// A body that was read, written and read again is written the same.
template <typename Read, typename Write>
void demand_one_form(const std::string& body, Read read, Write write) {
    const auto once = read(body);
    if (!once) return demand_worded(once.error());
    const std::string written = write(once.value());
    const auto again = read(written);
    demand(again.ok(), "a body that was written and is refused: " + written);
    demand(write(again.value()) == written, "a body that changes: " + written);
}

void try_job_event(const std::string& kind, const std::string& body) {
    const auto read = [&](const std::string& text) { return from_stored({1, "", kind, text}); };
    demand_one_form(body, read, [](const Event& event) { return to_stored(event).body; });
    const Result<Event> event = read(body);
    if (event) demand(!plain_text(event.value()).empty(), "an event without words");
}

void try_review(const std::string& body) {
    demand_one_form(body, study::read_review, study::review_body);
    const Result<study::Review> review = study::read_review(body);
    if (!review) return;
    study::LearnerState state;
    state.take(review.value());
    state.take(review.value());
    state.due(review.value().day);
    state.due(20000);
}

void try_practice(const std::string& body) {
    using namespace study::practice;
    demand_one_form(body, read_begun, [](const Begun& begun) { return body_of(begun); });
    demand_one_form(body, read_did,
                    [](const OfPractice<PracticeEvent>& did) { return body_of(did.practice, did.what); });
    demand_one_form(body, read_ended,
                    [](const OfPractice<Ended>& ended) { return body_of(ended.practice, ended.what); });
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string text = text_of(data, size);
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string kind = text.substr(0, end);
    const std::string body = end == text.size() ? "" : text.substr(end + 1);
    if (kind == "reviewed") {
        try_review(body);
    } else if (kind == "practice") {
        try_practice(body);
    } else {
        try_job_event(kind, body);
    }
    return 0;
}
