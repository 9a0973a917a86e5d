#include "web/app/undo.hpp"

#include <utility>

namespace overwater {

namespace {

constexpr double pause_ms = 1000;
constexpr std::size_t most_steps = 200;

std::optional<Undo::Place> step(std::vector<Undo::Place>& from, std::vector<Undo::Place>& to, const Record& current) {
    if (from.empty()) return std::nullopt;
    Undo::Place place = std::move(from.back());
    from.pop_back();
    to.push_back({current, place.key});
    return place;
}

}  // namespace

void Undo::before_change(const Record& record, const std::string& key, double now_ms) {
    const bool same_step = key == open_key_ && now_ms - last_ms_ < pause_ms;
    last_ms_ = now_ms;
    continuing_ = same_step;
    if (same_step) return;
    open_key_ = key;
    undone_.clear();
    done_.push_back({record, key});
    if (done_.size() > most_steps) done_.erase(done_.begin());
}

std::optional<Undo::Place> Undo::undo(const Record& current) {
    leave();
    return step(done_, undone_, current);
}

std::optional<Undo::Place> Undo::redo(const Record& current) {
    leave();
    return step(undone_, done_, current);
}

void Undo::forget() {
    done_.clear();
    undone_.clear();
    leave();
}

}  // namespace overwater
