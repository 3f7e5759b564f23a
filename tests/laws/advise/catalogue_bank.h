#pragma once
// Banks of the catalogue as the runtimes and equivalents take them.
#include <string_view>

#include "engine/advise/runtime.h"
#include "files/catalogue.h"

namespace voltwright::laws {

/// The catalogue packed into the program; read once.
inline const files::Catalogue& catalogue() {
  static const files::Catalogue kCatalogue = files::read_catalogue().value();
  return kCatalogue;
}

inline advise::BankOnHand bank_of(const bank::Battery& battery, int in_parallel = 1, double lost = 0.0) {
  advise::BankOnHand bank{&battery, catalogue().chemistry(battery.chemistry), {}};
  bank.layout.in_parallel = in_parallel;
  bank.layout.lost_capacity = lost;
  return bank;
}

inline advise::BankOnHand bank_of(std::string_view id, int in_parallel = 1, double lost = 0.0) {
  return bank_of(*catalogue().battery(id), in_parallel, lost);
}

}  // namespace voltwright::laws
