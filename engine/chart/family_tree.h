#pragma once
// The kinds of batteries by descent.
#include <string>
#include <vector>

namespace voltwright::chart {

struct Branch {
  std::string name;
  std::string note;       // may be empty
  std::string chemistry;  // id of a record of the chart; may be empty
  std::vector<Branch> branches;
};

struct FamilyTree {
  std::string name;
  std::vector<std::string> steps;  // what divides at each depth: "rechargeable or not", "element", ...
  std::vector<Branch> branches;
};

}  // namespace voltwright::chart
