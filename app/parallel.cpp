#include "app/parallel.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace voltwright::app {

advise::Executor on_threads(unsigned threads) {
  return [threads](std::size_t count, const std::function<void(std::size_t)>& work) {
    const std::size_t wanted = threads > 0 ? threads : std::max(1U, std::thread::hardware_concurrency());
    std::atomic<std::size_t> next{0};
    std::exception_ptr failure;
    std::mutex failure_lock;
    const auto take = [&] {
      for (std::size_t i = next.fetch_add(1); i < count; i = next.fetch_add(1)) {
        try {
          work(i);
        } catch (...) {
          const std::scoped_lock lock(failure_lock);
          if (!failure) failure = std::current_exception();
        }
      }
    };
    {
      std::vector<std::jthread> crew;
      for (std::size_t i = 1; i < std::min(wanted, count); ++i) crew.emplace_back(take);
      take();
    }
    if (failure) std::rethrow_exception(failure);
  };
}

}  // namespace voltwright::app
