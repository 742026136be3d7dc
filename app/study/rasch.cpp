#include "app/study/rasch.hpp"

#include <algorithm>
#include <cmath>
#include <Eigen/Dense>

namespace hardover::study {

namespace {

constexpr int points = 61;
constexpr double prior_deviation = 2;  // of the difficulties
constexpr int most_rounds = 100;
constexpr double settled = 1e-11;

// Nodes and weights for the mean over a standard normal: the eigenvalues of the Jacobi matrix of the Hermite
// polynomials, and the squared first parts of its eigenvectors (Golub and Welsch 1969).
struct Abilities {
    Eigen::VectorXd at;
    Eigen::VectorXd share;
};

Abilities normal_abilities() {
    Eigen::MatrixXd jacobi = Eigen::MatrixXd::Zero(points, points);
    for (int i = 1; i < points; ++i) jacobi(i, i - 1) = jacobi(i - 1, i) = std::sqrt(static_cast<double>(i));
    const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> solver(jacobi);
    return {solver.eigenvalues(), solver.eigenvectors().row(0).transpose().array().square()};
}

// P(right) per item and ability point.
Eigen::MatrixXd chances(const Eigen::VectorXd& difficulty, const Abilities& abilities) {
    Eigen::MatrixXd right(difficulty.size(), points);
    for (int i = 0; i < right.rows(); ++i) {
        for (int q = 0; q < points; ++q) right(i, q) = 1 / (1 + std::exp(difficulty(i) - abilities.at(q)));
    }
    return right;
}

struct Learner {
    Eigen::VectorXd share;  // of each ability point, given the answers
    double log_likelihood = 0;
};

Learner learner_given(const AnswerRow& row, const Eigen::MatrixXd& right, const Abilities& abilities) {
    Eigen::VectorXd log_share = abilities.share.array().log();
    for (int i = 0; i < right.rows(); ++i) {
        if (row[static_cast<std::size_t>(i)] < 0) continue;
        const bool was_right = row[static_cast<std::size_t>(i)] == 1;
        for (int q = 0; q < points; ++q) log_share(q) += std::log(was_right ? right(i, q) : 1 - right(i, q));
    }
    const double greatest = log_share.maxCoeff();
    const Eigen::VectorXd share = (log_share.array() - greatest).exp();
    return {share / share.sum(), greatest + std::log(share.sum())};
}

double log_posterior(const std::vector<AnswerRow>& answers, const Eigen::VectorXd& difficulty,
                     const Abilities& abilities) {
    const Eigen::MatrixXd right = chances(difficulty, abilities);
    double sum = -difficulty.squaredNorm() / (2 * prior_deviation * prior_deviation);
    for (const AnswerRow& row : answers) sum += learner_given(row, right, abilities).log_likelihood;
    return sum;
}

// First and second derivatives of the log posterior by the difficulties (T. A. Louis 1982).
struct Slope {
    Eigen::VectorXd first;
    Eigen::MatrixXd second;
};

Slope slope_at(const std::vector<AnswerRow>& answers, const Eigen::VectorXd& difficulty,
               const Abilities& abilities) {
    const auto items = difficulty.size();
    const double prior = 1 / (prior_deviation * prior_deviation);
    Slope slope{-prior * difficulty, -prior * Eigen::MatrixXd::Identity(items, items)};
    const Eigen::MatrixXd right = chances(difficulty, abilities);
    for (const AnswerRow& row : answers) {
        const Eigen::VectorXd share = learner_given(row, right, abilities).share;
        Eigen::MatrixXd over = Eigen::MatrixXd::Zero(items, points);  // expected less given
        for (int i = 0; i < items; ++i) {
            const int given = row[static_cast<std::size_t>(i)];
            if (given < 0) continue;
            over.row(i) = right.row(i).array() - given;
            slope.second(i, i) -= (right.row(i).array() * (1 - right.row(i).array())).matrix().dot(share);
        }
        const Eigen::VectorXd mean = over * share;
        slope.first += mean;
        slope.second += over * share.asDiagonal() * over.transpose() - mean * mean.transpose();
    }
    return slope;
}

Eigen::VectorXd most_probable(const std::vector<AnswerRow>& answers, Eigen::Index items,
                              const Abilities& abilities) {
    Eigen::VectorXd difficulty = Eigen::VectorXd::Zero(items);
    double reached = log_posterior(answers, difficulty, abilities);
    for (int round = 0; round < most_rounds; ++round) {
        const Slope slope = slope_at(answers, difficulty, abilities);
        Eigen::VectorXd step = (-slope.second).ldlt().solve(slope.first);
        double then = log_posterior(answers, difficulty + step, abilities);
        for (int halving = 0; then < reached && halving < 30; ++halving) {
            step /= 2;
            then = log_posterior(answers, difficulty + step, abilities);
        }
        if (then < reached) break;
        difficulty += step;
        reached = then;
        if (step.cwiseAbs().maxCoeff() < settled) break;
    }
    return difficulty;
}

}  // namespace

RaschFit fit_rasch(const std::vector<AnswerRow>& answers) {
    RaschFit fit;
    if (answers.empty() || answers.front().empty()) return fit;
    static const Abilities abilities = normal_abilities();
    const auto items = static_cast<Eigen::Index>(answers.front().size());
    const Eigen::VectorXd difficulty = most_probable(answers, items, abilities);
    const Eigen::MatrixXd spread = (-slope_at(answers, difficulty, abilities).second).inverse();
    for (Eigen::Index i = 0; i < items; ++i) {
        fit.difficulty.push_back({difficulty(i), std::sqrt(spread(i, i))});
    }
    const Eigen::MatrixXd right = chances(difficulty, abilities);
    for (const AnswerRow& row : answers) {
        const Eigen::VectorXd share = learner_given(row, right, abilities).share;
        const double mean = share.dot(abilities.at);
        const double square = share.dot(abilities.at.array().square().matrix());
        fit.ability.push_back({mean, std::sqrt(std::max(0.0, square - mean * mean))});
    }
    return fit;
}

}  // namespace hardover::study
