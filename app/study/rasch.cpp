#include "app/study/rasch.hpp"

#include <algorithm>
#include <cmath>
#include <Eigen/Dense>
#include <map>

namespace hardover::study {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double prior_deviation = 2;  // of the difficulties
constexpr int most_rounds = 100;
constexpr double settled = 1e-10;
constexpr double reach = 8.5;  // abilities from -reach to reach
constexpr double widest_step = 0.25;
constexpr double no_share = 1e-14;  // of a learner at an ability: left out of the second derivatives

// Evenly spaced abilities with their shares of a standard normal. The step is no wider than the least spread
// that so many answers can leave: the sum over them is then exact to some 1e-8 (the error of the trapezium
// rule on a normal curve is about exp(-2 pi^2 (spread / step)^2)).
struct Abilities {
    VectorXd at;
    VectorXd log_share;
};

Abilities normal_abilities(Index items) {
    const double step = std::min(widest_step, 1 / std::sqrt(1 + static_cast<double>(items) / 4));
    const auto half = static_cast<Index>(std::ceil(reach / step));
    Abilities abilities{VectorXd(2 * half + 1), VectorXd(2 * half + 1)};
    for (Index q = 0; q < abilities.at.size(); ++q) {
        const double at = static_cast<double>(q - half) * step;
        abilities.at(q) = at;
        abilities.log_share(q) = std::log(step) - at * at / 2 - std::log(2 * M_PI) / 2;
    }
    return abilities;
}

// Learners by items: 1 where the answer was right, and where it was wrong. Learners who answered the same
// items stand together in `alike`.
struct Answers {
    MatrixXd right;
    MatrixXd wrong;
    std::map<std::vector<Index>, std::vector<Index>> alike;  // items answered -> learners
};

Answers answers_of(const std::vector<AnswerRow>& rows) {
    const auto learners = static_cast<Index>(rows.size());
    const auto items = static_cast<Index>(rows.front().size());
    Answers answers{MatrixXd::Zero(learners, items), MatrixXd::Zero(learners, items), {}};
    for (Index n = 0; n < learners; ++n) {
        std::vector<Index> answered;
        for (Index i = 0; i < items; ++i) {
            const int given = rows[static_cast<std::size_t>(n)][static_cast<std::size_t>(i)];
            if (given < 0) continue;
            answered.push_back(i);
            (given == 1 ? answers.right : answers.wrong)(n, i) = 1;
        }
        answers.alike[answered].push_back(n);
    }
    return answers;
}

// Everything at some difficulties.
struct At {
    MatrixXd right;   // P(right), items by abilities
    MatrixXd shares;  // of each ability given the answers, learners by abilities
    double log_posterior = 0;
};

At at_difficulty(const Answers& answers, const VectorXd& difficulty, const Abilities& abilities) {
    const Eigen::ArrayXXd over = abilities.at.transpose().replicate(difficulty.size(), 1).array() -
                                 difficulty.replicate(1, abilities.at.size()).array();
    At at;
    at.right = 1 / (1 + (-over).exp());
    // ln P(right) = -ln(1 + e^-over), ln P(wrong) = -ln(1 + e^over), without loss far out.
    const MatrixXd log_right = over.min(0) - (-over.abs()).exp().log1p();
    const MatrixXd log_wrong = log_right.array() - over;
    at.shares = answers.right * log_right + answers.wrong * log_wrong;
    at.shares.rowwise() += abilities.log_share.transpose();
    const VectorXd greatest = at.shares.rowwise().maxCoeff();
    at.shares = (at.shares.colwise() - greatest).array().exp();
    const VectorXd sums = at.shares.rowwise().sum();
    at.shares = sums.cwiseInverse().asDiagonal() * at.shares;
    at.log_posterior = -difficulty.squaredNorm() / (2 * prior_deviation * prior_deviation) + greatest.sum() +
                       sums.array().log().sum();
    return at;
}

constexpr double prior = 1 / (prior_deviation * prior_deviation);

// First derivatives of the log posterior by the difficulties: chances less answers.
VectorXd slope_at(const Answers& answers, const VectorXd& difficulty, const At& at) {
    const MatrixXd expected = at.shares * at.right.transpose();
    const MatrixXd answered = answers.right + answers.wrong;
    return (expected.cwiseProduct(answered) - answers.right).colwise().sum().transpose() - prior * difficulty;
}

// Second derivatives with their sign turned (T. A. Louis 1982).
MatrixXd curvature_at(const Answers& answers, const At& at) {
    const Index items = at.right.rows();
    MatrixXd curvature = prior * MatrixXd::Identity(items, items);
    for (const auto& [answered, learners] : answers.alike) {
        MatrixXd theirs(static_cast<Index>(learners.size()), at.shares.cols());
        for (std::size_t n = 0; n < learners.size(); ++n) {
            theirs.row(static_cast<Index>(n)) = at.shares.row(learners[n]);
        }
        const VectorXd total = theirs.colwise().sum();
        std::vector<Index> held;  // abilities that anyone of them may have
        for (Index q = 0; q < total.size(); ++q) {
            if (total(q) > no_share) held.push_back(q);
        }
        const MatrixXd right = at.right(answered, held);
        const VectorXd share = total(held);
        const MatrixXd mean = right * theirs(Eigen::all, held).transpose();
        MatrixXd within = mean * mean.transpose() - right * share.asDiagonal() * right.transpose();
        within.diagonal() += (right.array() * (1 - right.array())).matrix() * share;
        for (std::size_t i = 0; i < answered.size(); ++i) {
            for (std::size_t j = 0; j < answered.size(); ++j) {
                curvature(answered[i], answered[j]) += within(static_cast<Index>(i), static_cast<Index>(j));
            }
        }
    }
    return curvature;
}

// The log odds of a wrong answer, a little spread out for the learners' own spread.
VectorXd first_guess(const Answers& answers) {
    const VectorXd right = answers.right.colwise().sum();
    const VectorXd wrong = answers.wrong.colwise().sum();
    return 1.2 * ((wrong.array() + 0.5) / (right.array() + 0.5)).log();
}

// Newton's steps. The second derivatives are the dear part, so they are kept while the steps shrink fast.
VectorXd most_probable(const Answers& answers, const Abilities& abilities) {
    VectorXd difficulty = first_guess(answers);
    At at = at_difficulty(answers, difficulty, abilities);
    Eigen::LDLT<MatrixXd> solver;
    double last = 0;  // length of the step before; 0: take the derivatives anew
    for (int round = 0; round < most_rounds; ++round) {
        if (last == 0) solver.compute(curvature_at(answers, at));
        VectorXd step = solver.solve(slope_at(answers, difficulty, at));
        const double length = step.cwiseAbs().maxCoeff();
        At then = at_difficulty(answers, difficulty + step, abilities);
        bool halved = false;
        for (int halving = 0; then.log_posterior < at.log_posterior && length > 1e-7 && halving < 30;
             ++halving) {
            step /= 2;
            halved = true;
            then = at_difficulty(answers, difficulty + step, abilities);
        }
        difficulty += step;
        at = std::move(then);
        if (length < settled) break;
        const bool slow = halved || (last > 0 && length > 0.3 * last);
        last = slow ? 0 : length;
    }
    return difficulty;
}

}  // namespace

RaschFit fit_rasch(const std::vector<AnswerRow>& rows) {
    RaschFit fit;
    if (rows.empty() || rows.front().empty()) return fit;
    const Answers answers = answers_of(rows);
    const Abilities abilities = normal_abilities(answers.right.cols());
    const VectorXd difficulty = most_probable(answers, abilities);
    const At at = at_difficulty(answers, difficulty, abilities);
    const MatrixXd spread =
        curvature_at(answers, at).llt().solve(MatrixXd::Identity(difficulty.size(), difficulty.size()));
    for (Index i = 0; i < difficulty.size(); ++i) {
        fit.difficulty.push_back({difficulty(i), std::sqrt(spread(i, i))});
    }
    const VectorXd means = at.shares * abilities.at;
    const VectorXd squares = at.shares * abilities.at.array().square().matrix();
    for (Index n = 0; n < means.size(); ++n) {
        fit.ability.push_back({means(n), std::sqrt(std::max(0.0, squares(n) - means(n) * means(n)))});
    }
    return fit;
}

}  // namespace hardover::study
