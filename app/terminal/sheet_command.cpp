// `hardover job sheet`: the job sheet as PDF or JSON.
#include <ostream>

#include "app/jobs/job.hpp"
#include "app/jobs/json.hpp"
#include "app/reports/job_sheet.hpp"
#include "app/reports/job_sheet_pdf.hpp"
#include "app/reports/sheet_file.hpp"
#include "app/terminal/context.hpp"
#include "app/terminal/places.hpp"

namespace hardover {

namespace {

// The shop's settings; a name that is given is kept.
Result<ShopSettings> shop_of(Store& store, const std::string& given) {
    Result<ShopSettings> shop = read_shop(store);
    if (!shop || given.empty()) return shop;
    shop.value().name = given;
    const Result<void> written = keep_shop(store, shop.value());
    if (!written) return written.error();
    return shop;
}

Result<JobSheet> sheet_of(Context& context, Store& store, JobNumber number, const SheetWish& wish) {
    const Result<Knowledge> knowledge = load_knowledge(context, store);
    if (!knowledge) return knowledge.error();
    const Result<Job> job = load_job(store, knowledge.value(), number);
    if (!job) return job.error();
    const Result<ShopSettings> shop = shop_of(store, wish.shop);
    if (!shop) return shop.error();
    return make_job_sheet(knowledge.value(), job.value(), make_job_page(knowledge.value(), job.value()),
                          {shop.value().name, local_day});
}

}  // namespace

int run_job_sheet(Context& context, JobNumber number, const SheetWish& wish) {
    Result<Store> store = open_records_on_file(context);
    if (!store) return refuse(context, store.error());
    const Result<JobSheet> sheet = sheet_of(context, store.value(), number, wish);
    if (!sheet) return refuse(context, sheet.error());
    if (wish.json) context.streams.out << json_text(job_sheet_json(sheet.value())) << "\n";
    if (wish.file.empty()) return 0;
    const Result<std::string> assets = shipped_assets_folder();
    const Result<ShopSettings> shop = read_shop(store.value());
    if (!shop) return refuse(context, shop.error());
    const bool a4 = wish.paper.empty() ? shop.value().a4 : wish.paper == "a4";
    PdfWish pdf;
    pdf.paper = a4 ? Paper::a4 : Paper::letter;
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
