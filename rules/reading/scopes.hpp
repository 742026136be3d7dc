// The names an expression may use, made from the knowledge. Knows no YAML.
#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "rules/language/language.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover::reading_detail {

class NameTable : public Scope {
  public:
    const NameKind* kind_of(const std::string& name) const override;
    std::vector<std::string> names() const override { return names_; }

    void add(const std::string& name, NameKind kind);

  private:
    std::unordered_map<std::string, NameKind> kinds_;
    std::vector<std::string> names_;  // in the order added
};

// All names outside worksheets.
NameTable outer_names(const Knowledge& knowledge);

// The names inside a worksheet: its inputs and its first `results` results.
NameTable inner_names(const Worksheet& worksheet, std::size_t results);

}  // namespace hardover::reading_detail
