// The place Class: what the answers and boats of the class come to, and what those of an invented class do.
#include <fmt/format.h>

#include <filesystem>

#include "app/classroom/demo.hpp"
#include "app/window/class_desk.hpp"
#include "app/window/study_work.hpp"

namespace hardover::window {

using namespace classroom;

namespace {

constexpr std::uint64_t demo_seed = 1;

// A folder for records that nobody keeps; it goes with this.
class PassingFolder {
  public:
    PassingFolder() {
        std::error_code failed;
        path_ = std::filesystem::temp_directory_path(failed) / ("hardover-" + random_id());
    }
    ~PassingFolder() {
        std::error_code failed;
        std::filesystem::remove_all(path_, failed);
    }
    PassingFolder(const PassingFolder&) = delete;
    PassingFolder& operator=(const PassingFolder&) = delete;

    std::string file(const std::string& name) const { return (path_ / name).string(); }

  private:
    std::filesystem::path path_;
};

// The invented class from its roster to its figures.
Result<MarkedClass> invented_class(const study::Portraits& portraits, int threads, const Watched& watched) {
    const PassingFolder folder;
    auto store = Store::open(folder.file("records.db"));
    if (!store) return store.error();
    ClassStore classes(store.value());
    const auto demo = make_demo(classes, portraits, demo_seed, watched);
    if (!demo) return demo.error();
    return demo_results(classes, demo.value(), portraits, threads, watched);
}

}  // namespace

// On the work's thread.
Background::Outcome ClassDesk::figures_of(const MarkedClass& marked, const SharedPortraits& known,
                                          bool invented) {
    const auto page = std::make_shared<const FiguresPage>(
        make_figures_page(make_figures(marked.results, known->knowledge()), true));
    return [this, known, page, notes = marked.notes, invented] {
        portraits_ = known;
        page_.figures = *page;
        page_.notes = notes;
        page_.invented = invented;
    };
}

void ClassDesk::apply(const WorkOutFigures&) {
    if (!class_) return;
    work({"figures", "Marking what was handed in"},
         [this, of = *class_, keys = keys_, prepared = prepared_,
          portraits = portraits_](const Beside& beside) -> Background::Outcome {
             const auto known = made_if_needed(portraits, prepared);
             const auto marked =
                 class_results(beside.classes, of, *known, keys.get(), threads_to_spare(), beside.watched);
             if (beside.stop)
                 return stopped("figures",
                                "Stopped. Boats that are marked stay so: the next time is quicker.");
             if (!marked) return refusal("figures", marked.error());
             return figures_of(marked.value(), known, false);
         });
}

void ClassDesk::apply(const InventClass&) {
    work({"invented", "Inventing a class, its answers and its boats"},
         [this, prepared = prepared_, portraits = portraits_](const Beside& beside) -> Background::Outcome {
             const auto known = made_if_needed(portraits, prepared);
             const auto marked = invented_class(*known, threads_to_spare(), beside.watched);
             if (beside.stop) return stopped("invented", "Stopped. Nothing of it is kept.");
             if (!marked) return refusal("invented", marked.error());
             return figures_of(marked.value(), known, true);
         });
}

}  // namespace hardover::window
