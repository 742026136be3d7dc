// `hardover knowledge book OUT`: writes the knowledge as HTML pages.
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <ostream>

#include "app/records/whole_file.hpp"
#include "app/reports/knowledge_book.hpp"
#include "app/terminal/context.hpp"

namespace hardover {

namespace {

Result<void> write_page(const std::string& path, const std::string& html) {
    errno = 0;
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file << html;
    file.close();
    if (file) return {};
    const std::string why = errno != 0 ? std::string(": ") + std::strerror(errno) : "";
    std::error_code none_left;
    if (std::filesystem::is_regular_file(path, none_left)) std::filesystem::remove(path, none_left);
    return Error{Error::Kind::storage, "the page cannot be written" + why, path,
                 "give a folder you may write to"};
}

Result<void> make_folder(const std::string& folder) {
    if (auto there = folder_above(folder); !there) return there;
    std::error_code failed;
    std::filesystem::create_directory(folder, failed);
    if (std::filesystem::is_directory(folder)) return {};
    return Error{Error::Kind::storage, "the folder cannot be made" + (failed ? ": " + failed.message() : ""),
                 folder, "give a folder you may write to"};
}

}  // namespace

int run_knowledge_book(Context& context, const std::string& folder) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const Result<void> made = make_folder(folder);
    if (!made) return refuse(context, made.error());
    for (const BookPage& page : knowledge_book(
             knowledge.value(), study::read_authored(knowledge.value()).items, units_in_use(context))) {
        const std::string path = (std::filesystem::path(folder) / page.file).string();
        const Result<void> written = write_page(path, page.html);
        if (!written) return refuse(context, written.error());
        context.streams.out << page.file << ": " << page.entries
                            << (page.entries == 1 ? " entry" : " entries") << std::endl;
    }
    context.streams.out << "Open " << (std::filesystem::path(folder) / "index.html").string()
                        << " in a browser.\n";
    return 0;
}

}  // namespace hardover
