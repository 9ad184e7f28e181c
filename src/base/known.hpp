// SPDX-License-Identifier: MIT
// A value, or the reason why it is missing; a missing value never becomes zero.
#pragma once

#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

namespace routeweigh {

template<typename T>
class Known {
  public:
    Known(T value)
        : value_(std::move(value)) {} // NOLINT(google-explicit-constructor): a value is a known value

    static Known missing(std::string_view reason) {
        Known result;
        result.reason_ = reason;
        return result;
    }

    bool has_value() const { return value_.has_value(); }
    explicit operator bool() const { return has_value(); }

    // Throws std::logic_error, with the reason, where the value is missing.
    const T& value() const {
        if (!value_) throw std::logic_error("missing value read: " + reason_);
        return *value_;
    }
    const T& operator*() const { return value(); }
    const T* operator->() const { return &value(); }

    // Why the value is missing; empty where it is known.
    const std::string& reason() const { return reason_; }

    // The function of the value, or the same reason.
    template<typename F>
    auto map(F&& function) const -> Known<decltype(function(std::declval<const T&>()))> {
        using Result = Known<decltype(function(std::declval<const T&>()))>;
        if (!value_) return Result::missing(reason_);
        return Result(std::forward<F>(function)(*value_));
    }

  private:
    Known() = default;

    std::optional<T> value_;
    std::string reason_;
};

} // namespace routeweigh
