// A case written out once for all that is asked of it. Inner part of fault_network and fault_sets; pure
// numbers.
#pragma once

#include <optional>

#include "rules/reasoning/fault_network.hpp"
#include "rules/reasoning/fault_sets.hpp"
#include "rules/reasoning/frontier.hpp"
#include "rules/reasoning/set_growth.hpp"

namespace hardover {

// Everything is worked out when first asked for, and kept.
class WrittenCase {
  public:
    // Both must outlive the object.
    WrittenCase(const FaultNetwork& network, const FaultCase& given) : network_(network), given_(given) {}
    WrittenCase(const WrittenCase&) = delete;
    WrittenCase& operator=(const WrittenCase&) = delete;

    const FaultNetwork& network() const { return network_; }
    const FaultCase& given() const { return given_; }

    // Of a case without ties.
    const frontier::Problem& problem() {
        if (!problem_) problem_ = frontier::write_out(network_, given_);
        return *problem_;
    }
    const frontier::Order& order() {
        if (!order_) order_ = frontier::elimination_order(problem());
        return *order_;
    }
    const frontier::SetGrowth& growth() {
        if (!growth_) growth_.emplace(problem());
        return *growth_;
    }

  private:
    const FaultNetwork& network_;
    const FaultCase& given_;
    std::optional<frontier::Problem> problem_;
    std::optional<frontier::Order> order_;
    std::optional<frontier::SetGrowth> growth_;
};

// As the functions of these names for a network and a case.
Posterior posterior(WrittenCase& written, const PosteriorLimits& limits = {});
std::vector<WeighedSet> heaviest_sets(WrittenCase& written, std::size_t most, double log_least = never);
std::vector<double> log_weights_alone(WrittenCase& written, const std::vector<bool>& counted,
                                      std::size_t aside = most_aside);
std::vector<double> log_weights_among(WrittenCase& written, const std::vector<bool>& counted,
                                      const std::vector<WeighedSet>& sets, std::size_t aside = most_aside);

}  // namespace hardover
