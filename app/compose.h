#pragma once
// A battery composed of cells of the catalogue, with its figures and a record for the catalogue.
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "engine/bank/builder.h"
#include "engine/base/result.h"

namespace voltwright::app {

/// Texts are "value unit" as in a plan; an empty one takes the default of bank::Overheads.
struct ComposeRequest {
  std::string cell;  // catalogue id
  int in_series = 1;
  int in_parallel = 1;
  std::string packing;  // "hexagonal" or "square"
  std::string gap;      // between cylinders
  std::string clearance;
  std::string headroom;
  std::string wall;
  std::string case_mass;
  std::string joint_resistance;
  std::string busbar_current;
  std::string protection_resistance;
  std::string protection_mass;
  std::string protection_current;
  std::string protection_peak;
};

struct ComposeResponse {
  std::string catalogue_mark;
  cell::CellFormat cell;
  cell::Chemistry chemistry;
  bank::Composition made;
  std::vector<std::string> cautions;
  std::optional<nlohmann::ordered_json> record;  // none if no house system runs at this voltage
};

/// Reads the catalogue and composes; every problem of the request at once.
base::Result<ComposeResponse> compose(const ComposeRequest& request);

/// Format: docs/formats/answer.md.
std::string to_json(const ComposeResponse& response);

}  // namespace voltwright::app
