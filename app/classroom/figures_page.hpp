// A class's figures in words, tables and plots: what the terminal prints, the window shows and the class
// sheet carries. Pure; knows no screens and no paper.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/classroom/figures.hpp"
#include "app/jobs/plot.hpp"

namespace hardover::classroom {

struct FigureColumn {
    std::string name;
    bool number = false;  // set to the right
    double share = 0.1;   // of the table's width
};

struct FigureRow {
    std::string id;  // seat, item or topic
    std::vector<std::string> cells;
    bool look_at = false;  // wants the instructor's eye
    std::string note;      // a sentence below the row; may be empty
};

struct FigureTable {
    std::string name;
    std::string note;   // what the columns are, on what they rest
    std::string empty;  // what stands there when there are no rows
    std::vector<FigureColumn> columns;
    std::vector<FigureRow> rows;
    std::size_t whole = 0;  // so many rows, the first, stand on any sheet, however little room there is
    std::string others;     // what a sheet says of rows that it leaves out; "": how many they are
};

struct FigurePlot {
    std::string name;
    std::string empty;  // why there is no plot; "": there is one
    Plot plot;
};

struct FiguresPage {
    std::string headline;              // "Class Harbour Street: 20 learners, 400 answers, 60 practice boats."
    std::vector<std::string> summary;  // sentences, the most important first
    std::vector<std::string> to_look_at;  // items and confusions worth a lesson, in words, the worst first
    FigureTable learners;
    FigureTable items;
    FigureTable topics;
    FigureTable confusions;  // the worst pairs
    FigureTable causes;      // right against chosen, as counts
    FigureTable term;
    FigurePlot item_map;   // difficulty against discrimination
    FigurePlot abilities;  // learners with their error
    FigurePlot over_best;  // minutes over the best through the term
};

// Without names only seats are told.
FiguresPage make_figures_page(const ClassFigures& figures, bool with_names);

std::string figures_text(const FiguresPage& page);
// Figures that are not told are null. Field names, once written, stay.
std::string figures_json(const ClassFigures& figures, bool with_names);

}  // namespace hardover::classroom
