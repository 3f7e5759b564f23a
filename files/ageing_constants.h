#pragma once
// The constants of ageing laws from their records: one reader for each equation.
#include <memory>

#include "engine/ageing/part.h"
#include "files/json_reader.h"

namespace voltwright::files {

using PartPointer = std::shared_ptr<const ageing::Part>;

/// Each reads the blocks that its equation needs (docs/method/ageing_lithium.md) and notes what is wrong with
/// them; the part is of no use then.
PartPointer read_naumann_storage(JsonReader& record, const ageing::Validity& validity);
PartPointer read_naumann_resistance(JsonReader& record, const ageing::Validity& validity);
PartPointer read_naumann_cycling(JsonReader& record, const ageing::Validity& validity);
PartPointer read_schimpe(JsonReader& record, const ageing::Validity& validity);
PartPointer read_wang_2011(JsonReader& record, const ageing::Validity& validity);
PartPointer read_schmalstieg(JsonReader& record, const ageing::Validity& validity);
PartPointer read_xu(JsonReader& record, const ageing::Validity& validity);
PartPointer read_cordoba_arenas(JsonReader& record, const ageing::Validity& validity);

}  // namespace voltwright::files
