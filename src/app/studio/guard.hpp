#pragma once
/// Who may talk to the server.
///
/// A page of another site must reach nothing: not by its own requests (Origin, Sec-Fetch-Site), not under another name for this machine
/// (Host), not by forms or pictures (a field of its own for changes). Nor may another user of the machine: everything under /api needs a
/// cookie, which the server gives only to whoever has the key that it printed, or, from the network, the pairing code.
///
/// Properties (tests/app/studio/guard_test.cpp): each of these alone is enough to be refused.

#include <functional>
#include <mutex>
#include <string>
#include <vector>

#include "app/studio/http.hpp"

namespace evencount::app::studio {

/// The field that every change must carry, with any value: a page of another site can't add it.
inline constexpr const char* change_field = "x-evencount";

/// Random hexadecimal digits, for secrets. Reads the system's generator.
[[nodiscard]] std::string random_digits(std::size_t count);
/// The same number of decimal ones.
[[nodiscard]] std::string random_code(std::size_t count);

struct GuardSecrets {
  std::string key;  ///< in the printed address
  std::string cookie;
  std::string pairing;  ///< the code for other devices; empty when they may not come
};
[[nodiscard]] GuardSecrets new_secrets(bool pairing);

class Guard {
 public:
  /// `hosts`: what a request's Host may be, "127.0.0.1:8080".
  Guard(std::vector<std::string> hosts, std::uint16_t port, GuardSecrets secrets);

  /// Errors: not_allowed.
  [[nodiscard]] Result<Done> check(const Head& head) const;

  /// "/?key=…" sets the cookie and leads to "/". Nothing for any other request.
  [[nodiscard]] std::optional<Response> enter(const Head& head) const;

  /// Whether the code is right, at a time in milliseconds. After a few wrong ones nobody is let in for a minute; the code changes when
  /// it was wrong too often. Errors: not_allowed, too_many.
  [[nodiscard]] Result<Response> pair(const std::string& code, std::int64_t now);
  /// Called with the code when it has changed.
  void on_new_code(std::function<void(const std::string&)> listener) { listener_ = std::move(listener); }
  /// The code as it is now.
  [[nodiscard]] std::string pairing_code() const;
  [[nodiscard]] const std::string& key() const { return secrets_.key; }

  static constexpr int tries_a_minute = 5;
  static constexpr int tries_a_code = 20;

 private:
  [[nodiscard]] bool has_cookie(const Head& head) const;
  [[nodiscard]] std::string cookie_field() const;

  std::vector<std::string> hosts_;
  std::string cookie_name_;  ///< names the port: cookies are shared by all ports of a machine
  GuardSecrets secrets_;
  mutable std::mutex mutex_;
  std::vector<std::int64_t> wrong_;  ///< when
  int wrong_in_all_ = 0;
  std::function<void(const std::string&)> listener_;
};

/// The fields that every answer carries: where a page's parts may come from, and that it is not guessed at or framed.
[[nodiscard]] std::vector<std::pair<std::string, std::string>> safety_fields();
/// The policy of a drawing in SVG that is opened by itself: it shows, and can do nothing.
[[nodiscard]] std::pair<std::string, std::string> drawing_policy();

}  // namespace evencount::app::studio
