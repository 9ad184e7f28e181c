// SPDX-License-Identifier: MIT
#include "compare/uncertainty/parallel.hpp"

#include <atomic>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace routeweigh {

void for_each_piece(int threads, std::size_t count,
                    const std::function<void(std::size_t worker, std::size_t index)>& piece) {
    std::atomic<std::size_t> next{0};
    std::exception_ptr failure;
    std::mutex failing;
    const auto work = [&](std::size_t worker) {
        try {
            for (std::size_t index = next++; index < count; index = next++)
                piece(worker, index);
        } catch (...) {
            const std::lock_guard<std::mutex> lock(failing);
            if (!failure) failure = std::current_exception();
            next = count;
        }
    };
    std::vector<std::thread> others;
    for (int worker = 1; worker < threads && static_cast<std::size_t>(worker) < count; ++worker)
        others.emplace_back(work, static_cast<std::size_t>(worker));
    work(0);
    for (std::thread& other : others)
        other.join();
    if (failure) std::rethrow_exception(failure);
}

} // namespace routeweigh
