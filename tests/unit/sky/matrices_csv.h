#pragma once
// The catalogue's clearness matrices for tests, read by the plainest means.
#include <cstddef>
#include <fstream>
#include <sstream>
#include <string>

#include "engine/sky/clearness.h"

namespace voltwright::sky {

inline ClearnessMatrices catalogue_matrices() {
  ClearnessMatrices matrices;
  matrices.matrices.resize(10);
  std::ifstream file(VW_SOURCE_DIR "/catalogue/climates/clearness_matrices.csv");
  std::string line;
  while (std::getline(file, line)) {
    if (line.empty() || line[0] < '0' || line[0] > '9') continue;
    std::istringstream fields(line);
    std::array<double, 14> value{};
    std::string field;
    for (double& v : value) {
      std::getline(fields, field, ',');
      v = std::stod(field);
    }
    ClearnessMatrices::Matrix& matrix = matrices.matrices.at(static_cast<std::size_t>(value[0]));
    matrix.k_min = value[1];
    matrix.k_max = value[2];
    for (std::size_t j = 0; j < 10; ++j) matrix.row.at(static_cast<std::size_t>(value[3]))[j] = value[4 + j];
  }
  return matrices;
}

}  // namespace voltwright::sky
