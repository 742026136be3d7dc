// Solves a network: damped Newton with the corners of the laws rounded less and less. Knows equations only.
#pragma once

#include <Eigen/Dense>

#include "app/rig/circuit_network.hpp"

namespace hardover::rig::circuit {

struct Settled {
    Eigen::VectorXd unknowns;  // in the order of Network
    bool done = false;
    double residual = 0;
    int worst = 0;  // the equation furthest from fulfilled, same order as the unknowns
    int steps = 0;
};

// `start`: empty, or unknowns to begin near.
Settled settle(const Network& network, const Eigen::VectorXd& start);

// Net flow into each node, dimensionless, from branches and pistons.
Eigen::VectorXd net_inflow(const Network& network, const Eigen::VectorXd& unknowns);

}  // namespace hardover::rig::circuit
