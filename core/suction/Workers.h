#pragma once
// One piece of work shared out over threads.

#include <cstddef>
#include <functional>
#include <system_error>
#include <thread>
#include <vector>

namespace sumpwright::suction {

/// run(worker) by that many workers at once, of which the caller is worker 0; returns when all
/// have. Work is to be taken, not dealt out: where the system gives no more threads fewer do it
/// all, at worst the caller alone. `Thread` joins when it goes.
template <class Thread = std::jthread>
void onWorkers(std::size_t workers, const std::function<void(std::size_t worker)>& run) {
  std::vector<Thread> others;
  if (workers > 1) others.reserve(workers - 1);
  for (std::size_t worker = 1; worker < workers; ++worker) {
    try {
      others.emplace_back(run, worker);
    } catch (const std::system_error&) {  // no more threads: those there are take all of it
      break;
    }
  }
  run(0);
}

}  // namespace sumpwright::suction
