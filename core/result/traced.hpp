#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <vector>

#include "core/result/measured.hpp"
#include "core/result/outcome.hpp"
#include "core/result/tags.hpp"

namespace overwater {

/// One operation of a traced computation. Children are indices of earlier nodes of the same trace.
struct TraceNode {
    enum class Kind : std::uint8_t {
        literal,
        constant,  ///< an exact number with a name: `constant`
        input,     ///< a reading or a looked-up number: `input`
        sum,
        difference,
        product,
        quotient,
        negative,
        square_root,
        exponential,
        power,  ///< `a` to the literal power `b`
        smaller,
        step,      ///< the named output `output`, whose expression is `a`; stated by somebody: the value of its last digit is `b`
        looked_up  ///< `function` of `a`, whose own computation is `b`
    };
    Kind kind = Kind::literal;
    std::int32_t a = -1;
    std::int32_t b = -1;
    double value = 0;
    Constant constant = Constant::none;
    Input input = Input::count;
    Output output = Output::count;
    Function function = Function::water_vapour_pressure;
};

/// The expression trees of one evaluation. The only part of an evaluation that allocates.
class Trace {
public:
    std::int32_t add(TraceNode node) {
        nodes_.push_back(node);
        return static_cast<std::int32_t>(nodes_.size()) - 1;
    }
    const TraceNode& operator[](std::int32_t index) const { return nodes_[static_cast<std::size_t>(index)]; }
    std::size_t size() const { return nodes_.size(); }
    /// The node of a named step, or -1 where it was not computed.
    std::int32_t step(Output output) const;

private:
    std::vector<TraceNode> nodes_;
};

/// The value of a node, computed anew from the leaves of its tree: the test that what is explained is what was computed.
double recomputed(const Trace& trace, std::int32_t index);

/// A number that remembers how it was made. A number without a trace is an exact literal.
class Traced {
public:
    Traced() = default;
    Traced(double value) { node_.value = value; }  // NOLINT(google-explicit-constructor): a plain number is one
    static Traced input(Trace& trace, Input which, double value) {
        TraceNode node;
        node.kind = TraceNode::Kind::input;
        node.input = which;
        node.value = value;
        return recorded(&trace, node);
    }

    /// A step that somebody has stated instead of computing it; `last_digit` is the value of its last digit.
    static Traced stated(Trace& trace, Output output, double value, double last_digit);

    double value() const { return node_.value; }
    std::int32_t index() const { return index_; }

    friend Traced operator+(const Traced& a, const Traced& b) {
        return combined(TraceNode::Kind::sum, a, b, a.value() + b.value());
    }
    friend Traced operator-(const Traced& a, const Traced& b) {
        return combined(TraceNode::Kind::difference, a, b, a.value() - b.value());
    }
    friend Traced operator*(const Traced& a, const Traced& b) {
        return combined(TraceNode::Kind::product, a, b, a.value() * b.value());
    }
    friend Traced operator/(const Traced& a, const Traced& b) {
        return combined(TraceNode::Kind::quotient, a, b, a.value() / b.value());
    }
    friend Traced operator-(const Traced& a) { return combined(TraceNode::Kind::negative, a, a, -a.value()); }
    friend Traced sqrt(const Traced& a) {
        return combined(TraceNode::Kind::square_root, a, a, std::sqrt(a.value()));
    }
    friend Traced exp(const Traced& a) {
        return combined(TraceNode::Kind::exponential, a, a, std::exp(a.value()));
    }
    friend Traced pow(const Traced& a, double exponent) {
        return combined(TraceNode::Kind::power, a, Traced(exponent), std::pow(a.value(), exponent));
    }
    friend Traced min(const Traced& a, const Traced& b) {
        return combined(TraceNode::Kind::smaller, a, b, b.value() < a.value() ? b.value() : a.value());
    }
    friend Traced constant(const Traced& like, Constant which, double value) {
        TraceNode node;
        node.kind = TraceNode::Kind::constant;
        node.constant = which;
        node.value = value;
        return recorded(like.trace_, node);
    }
    /// What was written down is an exact number from then on.
    friend Traced rewritten(const Traced& a, double (*write)(double)) {
        return constant(a, Constant::none, write(a.value()));
    }
    friend Traced named_step(Output output, const Traced& value) {
        TraceNode node;
        node.kind = TraceNode::Kind::step;
        node.output = output;
        return combined(node, value, value, value.value());
    }
    friend Traced looked_up(Function function, const Traced& argument, const Traced& value) {
        TraceNode node;
        node.kind = TraceNode::Kind::looked_up;
        node.function = function;
        return combined(node, argument, value, value.value());
    }

private:
    static Traced recorded(Trace* trace, const TraceNode& node) {
        Traced t;
        t.trace_ = trace;
        t.node_ = node;
        t.index_ = trace->add(node);
        return t;
    }
    /// A literal gets its place in the trace when it first meets a number that has one.
    std::int32_t index_in(Trace* trace) const { return trace_ != nullptr ? index_ : trace->add(node_); }

    static Traced combined(TraceNode::Kind kind, const Traced& a, const Traced& b, double value) {
        TraceNode node;
        node.kind = kind;
        return combined(node, a, b, value);
    }
    static Traced combined(TraceNode node, const Traced& a, const Traced& b, double value);

    Trace* trace_ = nullptr;
    std::int32_t index_ = -1;
    TraceNode node_;
};

}  // namespace overwater
