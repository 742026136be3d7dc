// What the bench shows: its jobs, how far each has come, and what a search finds.
#include "app/window/app_state.hpp"

namespace hardover::window {

namespace {

constexpr std::size_t most_hits = 12;

}  // namespace

void search_bench(AppState& state) {
    if (state.bench_view.search.empty()) {
        state.bench.hits.clear();
        return;
    }
    if (state.search_index.fingerprint() != state.knowledge.fingerprint)
        state.search_index = SearchIndex(state.knowledge);
    state.bench.hits =
        search(state.search_index, state.knowledge, state.job_rows, state.bench_view.search, most_hits);
}

void show_bench(AppState& state) {
    const auto rows = state.store.jobs();
    state.job_rows = rows ? rows.value() : std::vector<JobRow>{};
    state.bench = make_bench_page(state.knowledge, rows, state.store.path(), state.now());
    for (BenchRow& row : state.bench.in_hand) {
        const auto known = state.looked_into.find(row.number);
        if (known == state.looked_into.end() || known->second.changed_at != row.changed_at) continue;
        row.phase = known->second.phase;
        row.next = known->second.next;
    }
    search_bench(state);
}

void look_into(AppState& state, JobNumber number) {
    for (BenchRow& row : state.bench.in_hand) {
        if (row.number != number) continue;
        const Result<Job> job = load_job(state.store, state.prepared, number);
        if (job) {
            const JobPage page = make_job_page(state.prepared, job.value());
            row.phase = page.phase;
            row.next = page.card.heading.empty() ? "" : "Next: " + page.card.heading;
        } else {
            row.phase = "Cannot be read: " + job.error().text();
        }
        state.looked_into[number] = row;
    }
}

}  // namespace hardover::window
