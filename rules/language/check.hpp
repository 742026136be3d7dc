// Puts checked nodes together: refuses what does not fit (a length against a pressure) where it stands.
// Inner header of rules/language.
#pragma once

#include "rules/language/tokens.hpp"
#include "rules/language/tree.hpp"

namespace hardover::language_detail {

// Each gives the node, or the error at the letter `at` (the sign or the word that joins the operands).
class Checker {
  public:
    Checker(const Source& source, const Functions& functions) : source_(source), functions_(functions) {}

    NodePtr literal(const Token& token, double sign) const;
    NodePtr name(const Token& token, int index, const NameKind& kind) const;
    Result<NodePtr> negate(NodePtr operand, std::size_t at) const;
    Result<NodePtr> arithmetic(Operation operation, NodePtr left, NodePtr right, std::size_t at) const;
    Result<NodePtr> power(NodePtr base, NodePtr exponent, std::size_t at) const;
    Result<NodePtr> call(const Token& function, std::vector<NodePtr> arguments) const;
    Result<NodePtr> comparison(Operation operation, NodePtr left, NodePtr right, std::size_t at) const;
    Result<NodePtr> is_one_of(NodePtr name, const std::vector<Token>& words, std::size_t at) const;
    NodePtr is_known(NodePtr name) const;
    Result<NodePtr> logic(Operation operation, std::vector<NodePtr> operands, std::size_t at) const;

    // Refuses what is no yes or no, and what is no quantity.
    std::optional<Error> not_a_condition(const Node& node) const;
    std::optional<Error> not_a_quantity(const Node& node) const;

    // "a length", "a word", "yes or no".
    static std::string described(const Node& node);

  private:
    Result<NodePtr> choice(const Token& function, std::vector<NodePtr> arguments) const;
    std::optional<Error> not_of_one_kind(const Token& function, const std::vector<NodePtr>& values) const;
    Result<NodePtr> built_in(BuiltIn which, const Token& function, std::vector<NodePtr> arguments) const;
    Result<NodePtr> finish(Node node, std::size_t at) const;
    std::optional<Error> thermometer_reading(const Node& node, std::size_t at) const;

    const Source& source_;
    const Functions& functions_;
};

// "a length", "an angle", "a quantity in m·rad"; the noun is a name of a dimension.
std::string with_article(const std::string& noun);

}  // namespace hardover::language_detail
