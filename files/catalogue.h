#pragma once
// The catalogue as engine types, read from the JSON files packed into the program.
#include <string>
#include <string_view>
#include <vector>

#include "engine/bank/battery.h"
#include "engine/base/result.h"
#include "engine/cell/chemistry.h"
#include "engine/cell/format.h"
#include "engine/demand/appliance.h"

namespace voltwright::files {

struct Catalogue {
  std::vector<cell::Chemistry> chemistries;
  std::vector<cell::CellFormat> cells;
  std::vector<bank::Battery> batteries;
  std::vector<demand::Appliance> appliances;
  std::string mark;  // first eight hexadecimal digits of a hash over all files read

  const cell::Chemistry* chemistry(std::string_view id) const;
  const cell::CellFormat* cell(std::string_view id) const;
  const bank::Battery* battery(std::string_view id) const;
  const demand::Appliance* appliance(std::string_view id) const;
};

/// Reads every record; all problems of all files at once.
base::Result<Catalogue> read_catalogue();

}  // namespace voltwright::files
