#pragma once
// The catalogue from any set of files, so that broken ones can be tried.
#include <span>

#include "engine/base/result.h"
#include "files/catalogue.h"
#include "files/embedded.h"

namespace voltwright::files {

/// Reads chemistries/*.json, cells/*.json, batteries/*.json and appliances/*.json of `files`, and checks that
/// ids are file names, stand once, and that every cell and battery names a chemistry that is there. Records
/// are sorted by id; the mark is the FNV-1a hash (64 bit) over the names and bytes of all of `files`.
base::Result<Catalogue> read_catalogue_files(std::span<const EmbeddedFile> files);

}  // namespace voltwright::files
