// Knowledge files that change while the window is open: the job in hand goes on.
#include <catch2/catch.hpp>
#include <fstream>

#include "app/rig/functions.hpp"
#include "rules/reading/reading.hpp"
#include "shop.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

// A shop whose knowledge is a copy of the shipped files.
struct AuthorsShop {
    AuthorsShop() {
        std::filesystem::create_directory(copy);
        for (const auto& entry : std::filesystem::directory_iterator(source_path("knowledge"))) {
            std::filesystem::copy(entry.path(), copy + "/" + entry.path().filename().string());
        }
        KnowledgeRead read = read_knowledge_folder(copy, rig::rig_functions());
        REQUIRE(read.knowledge.has_value());
        in_use = std::make_unique<KnowledgeInUse>(std::move(*read.knowledge));
        auto opened = Store::open(folder.file("records.db"));
        REQUIRE_OK(opened);
        store = std::make_unique<Store>(std::move(opened.value()));
        state = std::make_unique<AppState>(in_use->get(), *store, [] { return "2026-11-25T15:03:13Z"; });
        state->in_use = in_use.get();
        show_bench(*state);
        harness = std::make_unique<Harness>(1280, 800, 1, Look::light, [this](Kit& kit) {
            if (const auto action = draw_app(kit, *state)) carry_out(*state, *action);
        });
    }
    void add(const std::string& text) const { std::ofstream(copy + "/zz_added.yaml") << text; }

    ScratchFolder folder;
    std::string copy = folder.file("knowledge");
    std::unique_ptr<KnowledgeInUse> in_use;
    std::unique_ptr<Store> store;
    std::unique_ptr<AppState> state;
    std::unique_ptr<Harness> harness;
};

const char* const a_new_need = "- need: dry_day\n  name: A dry day\n";

}  // namespace

TEST_CASE("F5 reads the knowledge anew and keeps the job, its answers and what is typed") {
    AuthorsShop shop;
    carry_out(*shop.state, StartJob{"Grey Heron", "she wanders"});
    carry_out(*shop.state, SwitchComplaint{"wander"});
    carry_out(*shop.state, GiveAnswer{"wheel_feel", "springy"});
    shop.state->view.drafts.of("note", "") = {"half a note", "", true};
    REQUIRE(shop.state->job.has_value());
    const std::size_t events = shop.state->job->events.size();
    const std::size_t needs = shop.state->page.needs.size();

    shop.add(a_new_need);
    shop.harness->press(Key::f5);
    CHECK(shop.state->page.needs.size() == needs + 1);
    REQUIRE(shop.state->job.has_value());
    CHECK(shop.state->job->events.size() == events);
    const Index feel = find(shop.state->knowledge.findings, "wheel_feel");
    CHECK(shop.state->job->facts.answers.count(feel) == 1);
    CHECK(shop.state->view.drafts.of("note", "").text == "half a note");
    CHECK(shop.state->view.notice.rfind("The knowledge was read anew: ", 0) == 0);
    CHECK(shop.state->view.trouble.empty());
    carry_out(*shop.state, GiveAnswer{"wheel_feel", "firm"});
    CHECK(shop.state->view.notice.empty());
}

TEST_CASE("A window that comes to the front reads only what has changed") {
    AuthorsShop shop;
    carry_out(*shop.state, ReloadKnowledge{true});
    CHECK(shop.state->bench_view.notice.empty());
    shop.add(a_new_need);
    carry_out(*shop.state, ReloadKnowledge{true});
    CHECK_FALSE(shop.state->bench_view.notice.empty());
}

TEST_CASE("A broken edit keeps the old knowledge and shows where it is broken") {
    AuthorsShop shop;
    carry_out(*shop.state, StartJob{"Grey Heron", "she wanders"});
    const std::size_t needs = shop.state->page.needs.size();
    shop.add("- need: dry_day\n  nam: A dry day\n");
    shop.harness->press(Key::f5);
    CHECK(shop.state->view.trouble.find("zz_added.yaml:2:3: ") != std::string::npos);
    CHECK(shop.state->page.needs.size() == needs);
    REQUIRE(shop.state->job.has_value());
    carry_out(*shop.state, SwitchComplaint{"wander"});
    CHECK(shop.state->view.trouble.empty());
    shop.add(a_new_need);
    carry_out(*shop.state, ReloadKnowledge{true});
    CHECK(shop.state->page.needs.size() == needs + 1);
}
