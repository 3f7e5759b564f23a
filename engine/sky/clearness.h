#pragma once
#include <array>
#include <vector>

namespace voltwright::sky {

/// Model of the day-to-day sequence of clearness.
enum class DailyModel {
  kMatrices,     // Aguiar, Collares-Pereira and Conde 1988
  kExponential,  // Bendt, Collares-Pereira and Rabl 1981 with the correlation of Graham et al. 1988
};

/// How the global light of made minutes is split into beam and diffuse.
enum class DiffuseModel {
  kErbs,     // Erbs, Klein and Duffie 1982 at each minute's clearness
  kEngerer,  // Engerer2 with the one-minute weights of Bright and Engerer 2019
};

/// Ten Markov matrices of the daily clearness index (Aguiar, Collares-Pereira and Conde 1988), chosen by the
/// monthly mean with edges 0.30, 0.35 ... 0.70. Row = today's state, column = tomorrow's.
struct ClearnessMatrices {
  struct Matrix {
    double k_min = 0.0;
    double k_max = 1.0;
    std::array<std::array<double, 10>, 10> row{};
  };
  std::vector<Matrix> matrices;  // ten
};

}  // namespace voltwright::sky
