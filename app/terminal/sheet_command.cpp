// `hardover job sheet`: the job sheet as PDF or JSON.
#include <ctime>
#include <ostream>

#include "app/jobs/job.hpp"
#include "app/reports/job_sheet.hpp"
#include "app/reports/job_sheet_pdf.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/places.hpp"

namespace hardover {

namespace {

constexpr const char* shop_setting = "shop_name";  // in the records, beside the jobs

// The day a moment of the records falls on here: "25 Nov 2026". The moment as it is when it cannot be read.
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

// The shop's name as given, which is kept, or as kept.
Result<std::string> shop_name(Store& store, const std::string& given) {
    if (given.empty()) {
        const auto settings = store.settings();
        if (!settings) return settings.error();
        const auto kept = settings.value().find(shop_setting);
        return kept == settings.value().end() ? "" : kept->second;
    }
    BesideJobs change;
    change.settings[shop_setting] = given;
    const Result<void> written = store.keep(change);
    if (!written) return written.error();
    return given;
}

Result<JobSheet> sheet_of(Context& context, Store& store, JobNumber number, const SheetWish& wish) {
    const Result<Knowledge> knowledge = load_knowledge(context, store);
    if (!knowledge) return knowledge.error();
    const Result<Job> job = load_job(store, knowledge.value(), number);
    if (!job) return job.error();
    const Result<std::string> shop = shop_name(store, wish.shop);
    if (!shop) return shop.error();
    return make_job_sheet(knowledge.value(), job.value(), make_job_page(knowledge.value(), job.value()),
                          {shop.value(), local_day});
}

}  // namespace

int run_job_sheet(Context& context, JobNumber number, const SheetWish& wish) {
    Result<Store> store = open_records(context);
    if (!store) return refuse(context, store.error());
    const Result<JobSheet> sheet = sheet_of(context, store.value(), number, wish);
    if (!sheet) return refuse(context, sheet.error());
    if (wish.json) context.streams.out << job_sheet_json(sheet.value()).dump(2) << "\n";
    if (wish.file.empty()) return 0;
    const Result<std::string> assets = shipped_assets_folder();
    PdfWish pdf;
    pdf.paper = wish.paper == "a4" ? Paper::a4 : Paper::letter;
    pdf.fonts_folder = (assets ? assets.value() : "assets") + "/fonts";
    const Result<PdfMade> made = write_pdf(sheet.value(), wish.file, pdf);
    if (!made) return refuse(context, made.error());
    if (!made.value().remark.empty()) context.streams.err << "hardover: " << made.value().remark << "\n";
    if (!wish.json) {
        context.streams.out << "The job sheet is written to " << wish.file << ", " << made.value().pages
                            << (made.value().pages == 1 ? " page\n" : " pages\n");
    }
    return 0;
}

}  // namespace hardover
