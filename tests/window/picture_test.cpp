// Pictures of every screen, drawn without a display by the software rasteriser: every place in the table of
// places and every state of a job. With HARDOVER_PICTURES naming a folder (`tests/run shots OUT`) they are
// kept there, in each theme, at 1280 x 800 and with text at 200 %; without it one of each is drawn and
// dropped.
#include <catch2/catch.hpp>
#include <cstdlib>
#include <utility>

#include "album.hpp"
#include "sample_pages.hpp"
#include "shop.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

struct Shot {
    LookRow look;
    int text_percent = 100;
};

std::vector<Shot> wanted_shots(bool kept) {
    if (!kept) return {{looks().front(), 100}};
    std::vector<Shot> shots;
    for (const LookRow& look : looks()) {
        for (const int percent : {100, 200}) shots.push_back({look, percent});
    }
    return shots;
}

// What can stand in the middle of the job screen instead of the step.
struct Middle {
    Showing showing;
    const char* name;
};
constexpr Middle middles[] = {{Showing::intake, "boat"},
                              {Showing::look_up, "look_up"},
                              {Showing::hand_back, "hand_back"},
                              {Showing::time_line, "time_line"}};

// The whole window on records and knowledge of its own, one picture after another.
class Studio {
  public:
    explicit Studio(std::string folder) : folder_(std::move(folder)) {
        shop_.start_job("Grey Heron", "tight to port since you fitted it");
        const Result<JobNumber> other =
            start_other_job("Skiff 7 of the invented yard", "groans at full lock");
        REQUIRE_OK(other);
        shop_.harness.reset();  // the drawing library knows one context at a time
    }

    AppState& state() { return *shop_.state; }

    // A picture of one colour packs into almost nothing; one with text does not.
    void take(const std::string& name, const Shot& shot) {
        const float wanted = static_cast<float>(shot.text_percent) / 100;
        // A list covers a place that was drawn before: the keys are those of that place.
        const Listed listed = std::exchange(state().listed, Listed::nothing);
        Harness harness(1280, 800, scale_for(wanted, 1280, 800), shot.look.look,
                        [this](Kit& kit) { draw_app(kit, *shop_.state); });
        harness.frames(4);
        state().listed = listed;
        harness.frames(4);
        const std::string size = shot.text_percent == 100 ? "" : "-" + std::to_string(shot.text_percent);
        const std::string path = folder_ + "/" + name + "-" + std::string(shot.look.id) + size + ".png";
        INFO(path);
        harness.save_picture(path);
        CHECK(std::filesystem::file_size(path) > 10000);
    }

  private:
    Result<JobNumber> start_other_job(const std::string& boat, const std::string& words) {
        const auto job =
            hardover::start_job(*shop_.store, state().prepared, {boat, words, ""}, state().now());
        if (!job) return job.error();
        return job.value().number;
    }

    Shop shop_;
    std::string folder_;
};

}  // namespace

TEST_CASE("Every place and every state of a job can be drawn in every theme", "[pictures]") {
    const ScratchFolder scratch;
    const char* wanted = pictures_folder();
    Studio studio(wanted == nullptr ? scratch.file("") : wanted);
    AppState& state = studio.state();
    const JobPage real = state.page;
    for (const Shot& shot : wanted_shots(wanted != nullptr)) {
        state.preferences.look = shot.look.look;
        state.preferences.text_percent = shot.text_percent;
        for (const PlaceRow& place : places()) {
            if (place.place == hardover::window::Place::job) continue;
            carry_out(state, GoTo{place.place});
            studio.take(place.id, shot);
        }
        carry_out(state, GoTo{hardover::window::Place::job});
        for (const NamedPage& named : all_sample_pages()) {
            state.page = named.page;
            state.outlook = sample_outlook();
            state.turning = sample_turning();
            state.view = {};
            state.view.open = {"turning"};
            studio.take("job-" + named.name, shot);
        }
        state.page = after_page();
        for (const Middle& middle : middles) {
            state.view = {};
            state.view.showing = middle.showing;
            studio.take(std::string("job-") + middle.name, shot);
        }
        state.page = real;
        for (const Listed listed : {Listed::places, Listed::keys}) {
            state.listed = listed;
            studio.take(listed == Listed::places ? "all-places" : "all-keys", shot);
        }
        state.listed = Listed::nothing;
    }
}
