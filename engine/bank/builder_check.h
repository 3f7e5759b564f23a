#pragma once
// What compose refuses, and what it warns of.
#include "engine/bank/builder.h"

namespace voltwright::bank {

/// Errors in what was asked for; empty if it can be composed.
base::Problems composition_errors(const cell::CellFormat& format, const cell::Chemistry& chemistry,
                                  int in_series, int in_parallel, const Overheads& overheads);

/// Warnings about a composed battery. `clamped_ohm` is what the simulation's cells have more than the format.
base::Problems composition_findings(const Composition& made, const cell::Chemistry& chemistry,
                                    double clamped_ohm);

}  // namespace voltwright::bank
