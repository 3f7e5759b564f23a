#pragma once
// Ageing laws as data: catalogue/ageing/*.json. Format: docs/formats/catalogue.md.
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "engine/ageing/life_points.h"
#include "engine/ageing/measured_storage.h"
#include "engine/ageing/opinion.h"
#include "engine/ageing/refused.h"
#include "engine/base/result.h"
#include "files/embedded.h"

namespace voltwright::files {

/// A published law that is not used, and why.
struct RefusedLaw {
  std::string id;
  std::string name;
  std::string reason;
  std::string source;                        // bibliography keys
  std::optional<ageing::GainingSpan> gains;  // where cycling would add capacity, if that is the reason
};

/// A measured storage test with its id.
struct StorageRecord {
  std::string id;
  ageing::StorageTable table;
};

/// Published life points with their id.
struct LifePointRecord {
  std::string id;
  std::vector<ageing::LifePoint> points;
};

struct AgeingCatalogue {
  std::vector<ageing::Opinions> opinions;
  std::vector<RefusedLaw> refused;
  std::vector<StorageRecord> storage;
  std::vector<LifePointRecord> life_points;
};

/// Reads ageing/*.json of `files`; every opinion's parts must be there, and no chemistry may stand twice. A
/// law that is refused for its polynomial must have one that is below 0 somewhere. All problems at once. How
/// far a law misses a storage test of the catalogue: engine/ageing/storage_error.h.
base::Result<AgeingCatalogue> read_ageing_files(std::span<const EmbeddedFile> files);

/// The same of the files packed into the program.
base::Result<AgeingCatalogue> read_ageing_catalogue();

}  // namespace voltwright::files
