#include "core/result/traced.hpp"

namespace overwater {

std::int32_t Trace::step(Output output) const {
    for (std::size_t i = nodes_.size(); i-- > 0;) {
        if (nodes_[i].kind == TraceNode::Kind::step && nodes_[i].output == output) return static_cast<std::int32_t>(i);
    }
    return -1;
}

Traced Traced::combined(TraceNode node, const Traced& a, const Traced& b, double value) {
    Trace* trace = a.trace_ != nullptr ? a.trace_ : b.trace_;
    if (trace == nullptr) return Traced(value);  // two literals: still a literal
    node.a = a.index_in(trace);
    node.b = &a == &b ? node.a : b.index_in(trace);
    node.value = value;
    return recorded(trace, node);
}

Traced Traced::stated(Trace& trace, Output output, double value, double last_digit) {
    TraceNode node;
    node.value = last_digit;
    const std::int32_t digit = trace.add(node);
    node.value = value;
    const std::int32_t number = trace.add(node);
    node.kind = TraceNode::Kind::step;
    node.output = output;
    node.a = number;
    node.b = digit;
    return recorded(&trace, node);
}

double recomputed(const Trace& trace, std::int32_t index) {
    using Kind = TraceNode::Kind;
    const TraceNode& node = trace[index];
    const auto a = [&] { return recomputed(trace, node.a); };
    const auto b = [&] { return recomputed(trace, node.b); };
    switch (node.kind) {
        case Kind::sum: return a() + b();
        case Kind::difference: return a() - b();
        case Kind::product: return a() * b();
        case Kind::quotient: return a() / b();
        case Kind::negative: return -a();
        case Kind::square_root: return std::sqrt(a());
        case Kind::exponential: return std::exp(a());
        case Kind::power: return std::pow(a(), b());
        case Kind::smaller: {
            const double first = a();
            const double second = b();
            return second < first ? second : first;
        }
        case Kind::step: return a();
        case Kind::looked_up: return b();
        case Kind::literal:
        case Kind::constant:
        case Kind::input: break;
    }
    return node.value;
}

}  // namespace overwater
