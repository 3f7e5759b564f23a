#pragma once
#include <string>

#include "engine/base/problem.h"

namespace voltwright::cli {

/// Writes every problem to stderr, or as JSON to stdout.
void show_problems(const base::Problems& problems, bool json);

/// Says that only one thing can go to standard output, if both the JSON and a table were asked for there.
bool both_on_stdout(bool json, const std::string& csv);

/// Writes a text to stdout; false if it did not all arrive.
bool show(const std::string& text);

/// Writes text to a file, or to stdout if the path is "-". Problems go to stderr; false if it failed.
bool deliver(const std::string& path, const std::string& text, const std::string& what);

/// True if stderr is a terminal, so that progress makes sense.
bool progress_wanted();

/// Overwrites the progress line on stderr; an empty text clears it.
void show_progress(const std::string& text);

/// Columns of the terminal on stdout, 110 if it is none.
std::size_t terminal_width();

}  // namespace voltwright::cli
