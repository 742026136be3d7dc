// Knowledge files that change while the program runs.
#include "app/jobs/knowledge_in_use.hpp"

#include <unistd.h>

#include <algorithm>

#include <filesystem>
#include <fstream>
#include <memory>

#include "app/rig/functions.hpp"
#include "reading/reading_support.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// The garden pump's files in a folder of their own, in use, beside empty records.
struct PumpShop {
    PumpShop() : path(made()), store(opened()) {
        for (const KnowledgeFile& file : garden_pump()) write(file.name, file.text);
        KnowledgeRead read = read_knowledge_folder(path, rig::rig_functions());
        INFO(as_text(read.faults));
        REQUIRE(read.knowledge.has_value());
        in_use = std::make_unique<KnowledgeInUse>(std::move(*read.knowledge));
    }
    ~PumpShop() {
        std::error_code failed;
        std::filesystem::remove_all(path, failed);
    }
    PumpShop(const PumpShop&) = delete;
    PumpShop& operator=(const PumpShop&) = delete;

    void write(const std::string& name, const std::string& text) const {
        std::ofstream(path + "/" + name, std::ios::binary) << text;
    }
    void change(const std::string& name, const std::string& from, const std::string& to) const {
        std::string text = file_text(path + "/" + name);
        const std::size_t at = text.find(from);
        REQUIRE(at != std::string::npos);
        write(name, text.replace(at, from.size(), to));
    }

    std::string path;
    Store store;
    std::unique_ptr<KnowledgeInUse> in_use;

  private:
    static std::string made() {
        std::string pattern = (std::filesystem::temp_directory_path() / "hardover-pump-XXXXXX").string();
        REQUIRE(mkdtemp(pattern.data()) != nullptr);
        return pattern;
    }
    Store opened() const {
        auto store = Store::open(path + "/records.db");
        REQUIRE_OK(store);
        return std::move(store.value());
    }
};

}  // namespace

TEST_CASE("Files that are only saved again have not changed") {
    const PumpShop shop;
    CHECK_FALSE(shop.in_use->changed_on_disk());
    shop.write("causes.yaml", file_text(shop.path + "/causes.yaml"));
    CHECK_FALSE(shop.in_use->changed_on_disk());
}

TEST_CASE("A changed text of the same length and time is noticed") {
    const PumpShop shop;
    const auto time = std::filesystem::last_write_time(shop.path + "/causes.yaml");
    shop.change("causes.yaml", "name: Hose kinked", "name: Hose kinkEd");
    std::filesystem::last_write_time(shop.path + "/causes.yaml", time);
    CHECK(shop.in_use->changed_on_disk());
}

TEST_CASE("A new file and a file taken away are noticed") {
    const PumpShop shop;
    shop.write("more.yaml", "- part: pipe\n  name: Pipe\n");
    CHECK(shop.in_use->changed_on_disk());
    std::filesystem::remove(shop.path + "/more.yaml");
    CHECK_FALSE(shop.in_use->changed_on_disk());
    std::filesystem::remove(shop.path + "/rules.yaml");
    CHECK(shop.in_use->changed_on_disk());
}

TEST_CASE("Knowledge read anew stands where the old one stood") {
    const PumpShop shop;
    const Knowledge* before = &shop.in_use->get();
    shop.change("causes.yaml", "name: Hose kinked", "name: Hose bent");
    const Result<void> read = shop.in_use->reload(shop.store);
    REQUIRE_OK(read);
    CHECK(&shop.in_use->get() == before);
    CHECK(before->causes[static_cast<std::size_t>(find(before->causes, "hose_kinked"))].name == "Hose bent");
    CHECK(shop.in_use->told(read).rfind("The knowledge was read anew: ", 0) == 0);
    CHECK_FALSE(shop.in_use->changed_on_disk());
}

TEST_CASE("A broken edit keeps the old knowledge and says where it is broken") {
    const PumpShop shop;
    const std::string before = shop.in_use->get().fingerprint;
    shop.change("causes.yaml", "remedy: straighten_hose", "remedy: straigten_hose");
    const Result<void> read = shop.in_use->reload(shop.store);
    REQUIRE_FALSE(read.ok());
    CHECK(read.error().text() == shop.path +
                                     "/causes.yaml:69:11: unknown remedy 'straigten_hose' (did you mean "
                                     "'straighten_hose'?)");
    CHECK(shop.in_use->get().fingerprint == before);
    CHECK_FALSE(shop.in_use->changed_on_disk());  // it has been told
    shop.change("causes.yaml", "remedy: straigten_hose", "remedy: straighten_hose");
    CHECK(shop.in_use->changed_on_disk());
    REQUIRE_OK(shop.in_use->reload(shop.store));
    CHECK(shop.in_use->get().fingerprint == before);
}

TEST_CASE("Many faults are counted, and only the first are shown") {
    const PumpShop shop;
    shop.write("more.yaml", "- part: a\n- part: b\n- part: c\n- part: d\n- part: e\n- part: f\n- part: g\n");
    const Result<void> read = shop.in_use->reload(shop.store);
    REQUIRE_FALSE(read.ok());
    const std::string text = read.error().text();
    CHECK(std::count(text.begin(), text.end(), '\n') == 5);
    CHECK(text.find("\nand 2 more") != std::string::npos);
}

TEST_CASE("A knowledge folder that is gone keeps the old knowledge") {
    const PumpShop shop;
    for (const KnowledgeFile& file : garden_pump()) std::filesystem::remove(shop.path + "/" + file.name);
    CHECK(shop.in_use->changed_on_disk());
    CHECK_FALSE(shop.in_use->reload(shop.store).ok());
    CHECK_FALSE(shop.in_use->get().causes.empty());
    CHECK_FALSE(shop.in_use->changed_on_disk());
}
