#include "row_threads.hpp"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <condition_variable>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

namespace backspring {
namespace {

constexpr std::chrono::milliseconds kAskEvery{50};

class RowThreads {
  public:
    RowThreads(std::int64_t rows,
               std::int64_t chunk_rows,
               const std::function<void(std::int64_t, std::int64_t)>& run)
        : rows_(rows), chunk_rows_(chunk_rows), run_(run) {}

    /// Whether all rows were run.
    bool work(int threads, const std::function<bool(std::int64_t)>& keep_going) {
        working_ = threads;
        {
            std::vector<std::jthread> team;
            const Stopper stopper{stop_};
            for (int i = 0; i < threads; ++i) team.emplace_back([this] { work_chunks(); });
            watch(keep_going);
            // The team is waited for before an exception goes on.
        }
        if (thrown_) std::rethrow_exception(thrown_);
        return done_ == rows_;
    }

  private:
    /// Lets no thread work on when the watch ends by an exception.
    struct Stopper {
        std::atomic<bool>& stop;
        ~Stopper() { stop = true; }
    };

    void work_chunks() {
        try {
            while (!stop_) {
                const std::int64_t from = next_.fetch_add(chunk_rows_);
                if (from >= rows_) break;
                const std::int64_t to = std::min(from + chunk_rows_, rows_);
                run_(from, to);
                done_ += to - from;
            }
        } catch (...) {
            const std::lock_guard lock(mutex_);
            if (!thrown_) thrown_ = std::current_exception();
            stop_ = true;
        }
        const std::lock_guard lock(mutex_);
        --working_;
        changed_.notify_one();
    }

    void watch(const std::function<bool(std::int64_t)>& keep_going) {
        std::unique_lock lock(mutex_);
        while (!changed_.wait_for(lock, kAskEvery, [this] { return working_ == 0; })) {
            if (!keep_going) continue;
            lock.unlock();
            if (!keep_going(done_)) stop_ = true;
            lock.lock();
        }
        lock.unlock();
        if (keep_going) keep_going(done_);
    }

    std::int64_t rows_;
    std::int64_t chunk_rows_;
    const std::function<void(std::int64_t, std::int64_t)>& run_;
    std::atomic<std::int64_t> next_{0};
    std::atomic<std::int64_t> done_{0};
    std::atomic<bool> stop_{false};
    std::mutex mutex_;
    std::condition_variable changed_;
    int working_ = 0;
    std::exception_ptr thrown_;
};

}  // namespace

bool detail::run_rows(std::int64_t rows,
                      std::int64_t chunk_rows,
                      int threads,
                      const std::function<void(std::int64_t, std::int64_t)>& run,
                      const std::function<bool(std::int64_t)>& keep_going) {
    const std::int64_t chunks = (rows + chunk_rows - 1) / chunk_rows;
    const auto machine = static_cast<int>(std::max(std::thread::hardware_concurrency(), 1u));
    const std::int64_t wanted = threads > 0 ? threads : machine;
    const int team =
        static_cast<int>(std::clamp<std::int64_t>(wanted, 1, std::max<std::int64_t>(chunks, 1)));
    return RowThreads(rows, chunk_rows, run).work(team, keep_going);
}

}  // namespace backspring
