#include "app/rig/oil.hpp"

#include <cmath>
#include <limits>

namespace hardover::rig {

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double centistokes = 1e-6;  // m^2/s
constexpr double zero_celsius = 273.15;
constexpr double thin_oil = 2;  // cSt; below it D341's extra term counts

double walther_z(double viscosity) {
    const double z = viscosity + 0.7;
    if (viscosity >= thin_oil) return z;
    return z + std::exp(-1.47 - 1.84 * viscosity - 0.51 * viscosity * viscosity);
}

double viscosity_of_z(double z) {
    if (z >= thin_oil + 0.7) return z - 0.7;
    // walther_z rises all the way below 2 cSt, so halving finds the one viscosity that belongs to z.
    double low = 0;
    double high = thin_oil;
    for (int step = 0; step < 60; ++step) {
        const double middle = (low + high) / 2;
        (walther_z(middle) < z ? low : high) = middle;
    }
    return (low + high) / 2;
}

// ASTM D2270: viscosities at 40 C of the reference oils as a·Y^2 + b·Y + c of the viscosity Y at 100 C.
struct IndexRange {
    double up_to;  // cSt at 100 C
    double l[3];
    double h[3];
};

constexpr IndexRange index_ranges[] = {
    {3.8, {1.14673, 1.7576, -0.109}, {0.84155, 1.5521, -0.077}},
    {4.4, {3.38095, -15.4952, 33.196}, {0.78571, 1.7929, -0.183}},
    {5.0, {2.5000, -7.2143, 13.812}, {0.82143, 1.5679, 0.119}},
    {6.4, {0.10100, 16.6350, -45.469}, {0.04985, 9.1613, -18.557}},
    {7.0, {3.35714, -23.5643, 78.466}, {0.22619, 7.7369, -16.656}},
    {7.7, {0.01191, 21.4750, -72.870}, {0.79762, -0.7321, 14.610}},
    {9.0, {0.41858, 16.1558, -56.040}, {0.05794, 10.5156, -28.240}},
    {12, {0.88779, 7.5527, -16.600}, {0.26665, 6.7015, -10.810}},
    {15, {0.76720, 10.7972, -38.180}, {0.20073, 8.4658, -22.490}},
    {18, {0.97305, 5.3135, -2.200}, {0.28889, 5.9741, -4.930}},
    {22, {0.97256, 5.2500, -0.980}, {0.24504, 7.4160, -16.730}},
    {28, {0.91413, 7.4759, -21.820}, {0.20323, 9.1267, -34.230}},
    {40, {0.87031, 9.7157, -50.770}, {0.18411, 10.1015, -46.750}},
    {55, {0.84703, 12.6752, -133.310}, {0.17029, 11.4866, -80.620}},
    {70, {0.85921, 11.1009, -83.19}, {0.17130, 11.3680, -76.940}},
    {std::numeric_limits<double>::infinity(), {0.8353, 14.67, -216}, {0.1684, 11.85, -97}},
};

double parabola(const double (&factors)[3], double y) {
    return (factors[0] * y + factors[1]) * y + factors[2];
}

}  // namespace

Result<WaltherLine> walther_line(const ViscosityPoint& one, const ViscosityPoint& two) {
    const auto refuse = [](std::string what, std::string cure) {
        return Error{Error::Kind::bad_input, std::move(what), "", std::move(cure)};
    };
    if (!(one.temperature > 0 && two.temperature > 0) || one.temperature == two.temperature) {
        return refuse("the viscosity line needs two different temperatures", "such as 40 C and 100 C");
    }
    const double least = 0.3 * centistokes;
    if (!(one.kinematic_viscosity > least && two.kinematic_viscosity > least)) {
        return refuse("a viscosity must be above 0.3 cSt", "the data sheet's value in cSt");
    }
    if ((one.temperature < two.temperature) != (one.kinematic_viscosity > two.kinematic_viscosity)) {
        return refuse("oil gets thinner when hotter, these two values say the opposite",
                      "exchange the two viscosities");
    }
    const double w_one = std::log10(std::log10(walther_z(one.kinematic_viscosity / centistokes)));
    const double w_two = std::log10(std::log10(walther_z(two.kinematic_viscosity / centistokes)));
    WaltherLine line;
    line.b = (w_one - w_two) / (std::log10(two.temperature) - std::log10(one.temperature));
    line.a = w_one + line.b * std::log10(one.temperature);
    return line;
}

double viscosity_at(const WaltherLine& line, double temperature) {
    if (!(temperature > 0)) return nan;
    const double z = std::pow(10, std::pow(10, line.a - line.b * std::log10(temperature)));
    return viscosity_of_z(z) * centistokes;
}

double oil_viscosity(double at_40, double at_100, double temperature) {
    if (!(temperature >= coldest_on_the_line && temperature <= hottest_on_the_line)) return nan;
    const Result<WaltherLine> line = walther_line({zero_celsius + 40, at_40}, {zero_celsius + 100, at_100});
    return line ? viscosity_at(line.value(), temperature) : nan;
}

double dynamic_viscosity(double kinematic_viscosity, double density) {
    return kinematic_viscosity * density;
}

double viscosity_index(double at_40, double at_100) {
    const double u = at_40 / centistokes;
    const double y = at_100 / centistokes;
    if (!(y >= 2 && u > y)) return nan;
    const IndexRange* range = index_ranges;
    while (y > range->up_to) ++range;
    const double l = parabola(range->l, y);
    const double h = parabola(range->h, y);
    if (u >= h) return 100 * (l - u) / (l - h);
    const double n = (std::log10(h) - std::log10(u)) / std::log10(y);
    return 100 + (std::pow(10, n) - 1) / 0.00715;
}

double viscosity_of_saybolt(double seconds) {
    if (!(seconds >= 32)) return nan;
    const double centistokes_now =
        seconds <= 100 ? 0.226 * seconds - 195 / seconds : 0.220 * seconds - 135 / seconds;
    return centistokes_now * centistokes;
}

double saybolt_of_viscosity(double kinematic_viscosity) {
    const double nu = kinematic_viscosity / centistokes;
    if (!(kinematic_viscosity >= viscosity_of_saybolt(32))) return nan;
    const auto seconds = [nu](double slope, double over) {
        return (nu + std::sqrt(nu * nu + 4 * slope * over)) / (2 * slope);
    };
    const double slow = seconds(0.226, 195);
    return slow <= 100 ? slow : seconds(0.220, 135);
}

const std::vector<OilGrade>& oil_grades() {
    static const std::vector<OilGrade> grades = [] {
        std::vector<OilGrade> all;
        for (const int number : {10, 15, 22, 32, 46, 68}) {
            const double middle = number * centistokes;
            all.push_back({"VG " + std::to_string(number), middle, 0.9 * middle, 1.1 * middle});
        }
        return all;
    }();
    return grades;
}

const OilGrade* grade_of(double viscosity_at_40) {
    for (const OilGrade& grade : oil_grades()) {
        if (viscosity_at_40 >= grade.least && viscosity_at_40 <= grade.greatest) return &grade;
    }
    return nullptr;
}

double expansion_at_15(double density_at_15) {
    return density_at_15 > 0 ? 0.6278 / density_at_15 : nan;
}

double volume_correction(double density_at_15, double temperature) {
    if (!(temperature > 0)) return nan;
    const double swelling = expansion_at_15(density_at_15) * (temperature - zero_celsius - 15);
    return std::exp(-swelling * (1 + 0.8 * swelling));
}

double density_at(double density_at_15, double temperature) {
    return density_at_15 * volume_correction(density_at_15, temperature);
}

double expanded_volume(double volume, double density_at_15, double from_temperature, double to_temperature) {
    return volume * volume_correction(density_at_15, from_temperature) /
           volume_correction(density_at_15, to_temperature);
}

}  // namespace hardover::rig
