#pragma once
// What is often said of house batteries, with the numbers of this catalogue, for the faces.
#include <optional>
#include <string>
#include <vector>

#include "app/myths/myth.h"
#include "engine/base/result.h"

namespace voltwright::app {

struct MythsRequest {
  std::optional<int> number;  // one entry, 1 to 30; none: all
};

struct MythsResponse {
  std::string catalogue_mark;
  std::vector<Myth> myths;
};

/// Reads the catalogue and works the entries out. A problem for a number that no entry has.
base::Result<MythsResponse> tell_myths(const MythsRequest& request);

/// Format: docs/formats/answer.md.
std::string to_json(const MythsResponse& response);

}  // namespace voltwright::app
