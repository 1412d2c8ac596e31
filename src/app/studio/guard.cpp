#include "app/studio/guard.hpp"

#include <fmt/format.h>
#include <sys/random.h>

#include <algorithm>
#include <array>
#include <cstdlib>

#include "base/text.hpp"

namespace evencount::app::studio {
namespace {

constexpr std::int64_t minute = 60'000;
constexpr std::size_t secret_digits = 64, pairing_digits = 6;

/// Takes as long wherever the texts differ.
bool same_secret(std::string_view one, std::string_view other) {
  unsigned difference = one.size() == other.size() ? 0u : 1u;
  for (std::size_t i = 0; i < std::min(one.size(), other.size()); ++i)
    difference |=
        static_cast<unsigned>(static_cast<unsigned char>(one[i]) ^ static_cast<unsigned char>(other[i]));
  return difference == 0;
}

std::string random_text(std::size_t count, std::string_view letters) {
  std::string text;
  while (text.size() < count) {
    std::array<unsigned char, 64> bytes{};
    if (::getrandom(bytes.data(), bytes.size(), 0) != static_cast<ssize_t>(bytes.size()))
      std::abort();  // no secrets, no server
    // Bytes beyond the last whole round of letters would make some letters likelier.
    const std::size_t usable = 256 / letters.size() * letters.size();
    for (const unsigned char byte : bytes)
      if (byte < usable && text.size() < count) text += letters[byte % letters.size()];
  }
  return text;
}

Problem not_allowed(std::string where, const std::string& found, std::string expected) {
  return {ProblemCode::not_allowed, std::move(where), found.empty() ? "nothing" : quote(found),
          std::move(expected)};
}

}  // namespace

std::string random_digits(std::size_t count) {
  return random_text(count, "0123456789abcdef");
}

std::string random_code(std::size_t count) {
  return random_text(count, "0123456789");
}

GuardSecrets new_secrets(bool pairing) {
  return {random_digits(secret_digits), random_digits(secret_digits),
          pairing ? random_code(pairing_digits) : ""};
}

Guard::Guard(std::vector<std::string> hosts, std::uint16_t port, GuardSecrets secrets)
    : hosts_(std::move(hosts)),
      cookie_name_(fmt::format("evencount-{}", port)),
      secrets_(std::move(secrets)) {}

bool Guard::has_cookie(const Head& head) const {
  const std::string cookies = head.field("cookie");
  for (const std::string_view part : split(cookies, ';')) {
    const std::string_view pair = trim(part);
    const auto equals = pair.find('=');
    if (equals != std::string_view::npos && pair.substr(0, equals) == cookie_name_ &&
        same_secret(pair.substr(equals + 1), secrets_.cookie))
      return true;
  }
  return false;
}

Result<Done> Guard::check(const Head& head) const {
  const std::string host = lower_ascii(head.field("host"));
  if (std::find(hosts_.begin(), hosts_.end(), host) == hosts_.end())
    return not_allowed("host", host, "the address that was printed");
  if (head.fields.contains("origin") && lower_ascii(head.field("origin")) != "http://" + host)
    return not_allowed("origin", head.field("origin"), "this studio's own page");
  if (!head.is_api()) return Done{};
  const std::string site = head.field("sec-fetch-site");
  if (head.fields.contains("sec-fetch-site") && site != "same-origin" && site != "none")
    return not_allowed("sec-fetch-site", site, "this studio's own page");
  if (head.changes() && !head.fields.contains(change_field))
    return not_allowed("head", "", fmt::format("a field {}", change_field));
  const bool pairs = head.path.size() == 2 && head.path[1] == "pair";
  if (!pairs && !has_cookie(head))
    return not_allowed("cookie", "", "the studio opened by the address that was printed");
  return Done{};
}

std::string Guard::cookie_field() const {
  return fmt::format("{}={}; Path=/; HttpOnly; SameSite=Strict", cookie_name_, secrets_.cookie);
}

std::optional<Response> Guard::enter(const Head& head) const {
  const auto key = head.query.find("key");
  if (!head.path.empty() || key == head.query.end()) return std::nullopt;
  if (!same_secret(key->second, secrets_.key))
    return problem_response(
        not_allowed("key", "another key",
                    "the address that was printed when the studio began; an older one is no longer good"));
  Response response;
  response.status = 303;
  response.type = "text/plain; charset=utf-8";
  response.fields = {{"Location", "/"}, {"Set-Cookie", cookie_field()}, {"Cache-Control", "no-store"}};
  return response;
}

std::string Guard::pairing_code() const {
  const std::lock_guard lock(mutex_);
  return secrets_.pairing;
}

Result<Response> Guard::pair(const std::string& code, std::int64_t now) {
  const std::lock_guard lock(mutex_);
  if (secrets_.pairing.empty())
    return Problem{ProblemCode::not_allowed, "code", "a code", "a studio that was started with --lan"};
  std::erase_if(wrong_, [&](std::int64_t at) { return at + minute <= now; });
  if (wrong_.size() >= tries_a_minute)
    return Problem{ProblemCode::too_many, "code", "too many wrong codes", "another try in a minute"};
  if (!same_secret(code, secrets_.pairing)) {
    wrong_.push_back(now);
    if (++wrong_in_all_ % tries_a_code == 0) {
      secrets_.pairing = random_code(pairing_digits);
      if (listener_) listener_(secrets_.pairing);
    }
    return Problem{ProblemCode::not_allowed, "code", "another code",
                   "the code that the studio's terminal shows"};
  }
  Response response;
  response.body = "{}\n";
  response.fields = {{"Set-Cookie", cookie_field()}};
  return response;
}

std::pair<std::string, std::string> drawing_policy() {
  return {"Content-Security-Policy",
          "default-src 'none'; img-src data:; style-src 'unsafe-inline'; frame-ancestors 'none'; sandbox"};
}

std::vector<std::pair<std::string, std::string>> safety_fields() {
  return {
      {"Content-Security-Policy",
       "default-src 'self'; img-src 'self' data: blob:; object-src 'none'; base-uri 'none'; form-action "
       "'none'; frame-ancestors 'none'"},
      {"X-Content-Type-Options", "nosniff"},
      {"X-Frame-Options", "DENY"},
      {"Referrer-Policy", "no-referrer"},
      {"Cross-Origin-Opener-Policy", "same-origin"},
      {"Cross-Origin-Resource-Policy", "same-origin"},
  };
}

}  // namespace evencount::app::studio
