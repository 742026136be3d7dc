// Parts of the page of a class's figures. Inner part of app/classroom.
#pragma once

#include <string>

#include "app/classroom/figures_page.hpp"

namespace hardover::classroom {

FigurePlot item_map(const ClassFigures& figures);
FigurePlot abilities_plot(const ClassFigures& figures);
FigurePlot over_best_plot(const ClassFigures& figures);

// On what the reliability rests, what it is, and what it says of two learners.
std::string reliability_words(const ReliabilityFigures& figures);

}  // namespace hardover::classroom
