// Pages of an invented job in every state, made by hand, so that the screens are tested without knowledge,
// reasoning or records.
#pragma once

#include <string>
#include <vector>

#include "app/jobs/outlook.hpp"
#include "app/jobs/page.hpp"
#include "app/window/pages.hpp"

namespace hardover_tests {

hardover::JobPage intake_page();
hardover::JobPage question_page();
hardover::JobPage check_page();      // cautions, steps, a finding with readings, another one on the way
hardover::JobPage number_page();     // one number to be measured
hardover::JobPage worksheet_page();  // several numbers, a worksheet beside them
hardover::JobPage prove_page();
hardover::JobPage remedy_page();
hardover::JobPage after_page();
hardover::JobPage help_page();
hardover::JobPage handed_back_page();
hardover::JobPage stopped_page();  // a stop, a conflict, a deferral

struct NamedPage {
    std::string name;
    hardover::JobPage page;
};
std::vector<NamedPage> all_sample_pages();

// What stands beside every page of them: the question's answers drawn, and what would turn the first cause.
hardover::QuestionOutlook sample_outlook();
hardover::TurningSketch sample_turning();

std::vector<hardover::window::LookUpRow> sample_look_up();
hardover::window::BenchPage sample_bench();

}  // namespace hardover_tests
