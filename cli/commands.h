#pragma once
// The sub-commands of the terminal face. Exit codes: 0 answered; 1 an output could not be written; 2 the
// input has problems.

namespace CLI {
class App;
}

namespace voltwright::cli {

inline constexpr int kAnswered = 0;
inline constexpr int kNotWritten = 1;
inline constexpr int kBadInput = 2;

/// Each adds its command; `exit_code` receives the outcome when it is run.
void add_advise(CLI::App& app, int& exit_code);
void add_simulate(CLI::App& app, int& exit_code);
void add_legs(CLI::App& app, int& exit_code);
void add_life(CLI::App& app, int& exit_code);
void add_vet(CLI::App& app, int& exit_code);
void add_runtime(CLI::App& app, int& exit_code);
void add_swap(CLI::App& app, int& exit_code);
void add_sky(CLI::App& app, int& exit_code);
void add_catalogue(CLI::App& app, int& exit_code);
void add_chart(CLI::App& app, int& exit_code);
void add_myths(CLI::App& app, int& exit_code);
/// Below `catalogue`.
CLI::App* add_compose(CLI::App& catalogue, int& exit_code);

}  // namespace voltwright::cli
