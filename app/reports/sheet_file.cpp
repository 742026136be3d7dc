// Names, folder and head of the job sheet's file.
#include "app/reports/sheet_file.hpp"

#include <cctype>
#include <ctime>
#include <filesystem>

#include "app/reports/job_sheet_pdf.hpp"

namespace hardover {

std::string local_day(const std::string& at) {
    static constexpr const char* months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                             "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    std::tm utc{};
    if (strptime(at.c_str(), "%Y-%m-%dT%H:%M:%SZ", &utc) == nullptr) return at;
    const std::time_t moment = timegm(&utc);
    std::tm here{};
    localtime_r(&moment, &here);
    return std::to_string(here.tm_mday) + " " + months[here.tm_mon] + " " +
           std::to_string(here.tm_year + 1900);
}

std::string name_for_file(const std::string& from) {
    constexpr std::size_t most_letters = 40;
    std::string name;
    for (const char letter : from) {
        if (std::isalnum(static_cast<unsigned char>(letter)) != 0) {
            name += letter;
        } else if (!name.empty() && name.back() != ' ') {
            name += ' ';
        }
    }
    name.resize(std::min(name.size(), most_letters));
    while (!name.empty() && name.back() == ' ') name.pop_back();
    return name;
}

std::string sheet_file_name(JobNumber number, const std::string& boat) {
    const std::string name = name_for_file(boat);
    return "Job " + std::to_string(number) + (name.empty() ? "" : " " + name) + ".pdf";
}

std::string sheet_folder(const Store& store) {
    return (std::filesystem::path(store.path()).parent_path() / "job sheets").string();
}

Result<SheetFile> write_job_sheet(const Store& store, const Knowledge& knowledge, const Job& job,
                                  const std::string& fonts_folder) {
    const Result<ShopSettings> shop = read_shop(store);
    if (!shop) return shop.error();
    const std::string folder = sheet_folder(store);
    std::error_code failed;
    std::filesystem::create_directories(folder, failed);
    if (failed) {
        return Error{Error::Kind::storage,
                     "the folder for the job sheets cannot be made: " + failed.message(), folder,
                     "give the folder of the records leave to be written"};
    }
    const JobSheet sheet =
        make_job_sheet(knowledge, job, make_job_page(knowledge, job), {shop.value().name, local_day});
    const std::string path = folder + "/" + sheet_file_name(job.number, job.boat);
    const PdfWish wish{shop.value().a4 ? Paper::a4 : Paper::letter, fonts_folder};
    const Result<PdfMade> made = write_pdf(sheet, path, wish);
    if (!made) return made.error();
    return SheetFile{path, made.value().remark};
}

}  // namespace hardover
