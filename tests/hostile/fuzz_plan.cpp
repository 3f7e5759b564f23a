// Reads damaged plans for a given time: fuzz_plan --seconds N [--from NUMBER]. Prints the number of the first
// text that breaks a promise and the text itself, and ends with 1.
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "tests/hostile/plan_mutation.h"

int main(int count, char** words) {
  double seconds = 10.0;
  std::uint64_t number = 1'000'000;
  for (int i = 1; i + 1 < count; i += 2) {
    if (std::string_view(words[i]) == "--seconds") seconds = std::strtod(words[i + 1], nullptr);
    if (std::string_view(words[i]) == "--from") number = std::strtoull(words[i + 1], nullptr, 10);
  }
  const auto start = std::chrono::steady_clock::now();
  std::uint64_t done = 0;
  while (std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count() < seconds) {
    const std::string text = voltwright::files::damaged_plan(number);
    const std::string broken = voltwright::files::broken_promise(text);
    if (!broken.empty()) {
      std::printf("number %llu: %s\n%s\n", static_cast<unsigned long long>(number), broken.c_str(),
                  text.c_str());
      return 1;
    }
    ++number;
    ++done;
  }
  std::printf("%llu damaged plans read, none broke a promise\n", static_cast<unsigned long long>(done));
  return 0;
}
