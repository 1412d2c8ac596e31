#include "app/studio/guard.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace evencount::app::studio {
namespace {

const GuardSecrets secrets{"the-key", "the-cookie", "123456"};

Guard guard_of() {
  return Guard({"127.0.0.1:8080", "localhost:8080"}, 8080, secrets);
}

Head request(const std::string& method, const std::string& target) {
  Head head;
  head.method = method;
  EXPECT_TRUE(read_target(target, head).ok());
  head.fields = {{"host", "127.0.0.1:8080"},
                 {"cookie", "other=1; evencount-8080=the-cookie"},
                 {"x-evencount", "1"},
                 {"origin", "http://127.0.0.1:8080"}};
  return head;
}

void put(Head& head, const std::string& name, const std::string& value) {
  head.fields.erase(name);
  head.fields.emplace(name, value);
}

void expect_refused(const Guard& guard, const Head& head, const std::string& where) {
  const auto checked = guard.check(head);
  ASSERT_FALSE(checked.ok()) << where;
  EXPECT_EQ(checked.problem().code, ProblemCode::not_allowed);
  EXPECT_EQ(checked.problem().where, where);
}

TEST(Guard, LetsItsOwnPageIn) {
  const Guard guard = guard_of();
  EXPECT_TRUE(guard.check(request("POST", "/api/projects/x/undo")).ok());
  Head head = request("GET", "/api/projects");
  head.fields.erase("x-evencount"), head.fields.erase("origin");
  EXPECT_TRUE(guard.check(head).ok());
  put(head, "host", "LocalHost:8080");
  EXPECT_TRUE(guard.check(head).ok());
  put(head, "sec-fetch-site", "same-origin");
  EXPECT_TRUE(guard.check(head).ok());
  Head page = request("GET", "/");
  page.fields.erase("cookie");
  EXPECT_TRUE(guard.check(page).ok()) << "the page itself holds no secret";
}

TEST(Guard, EachFaultAloneIsEnough) {
  const Guard guard = guard_of();
  for (const char* host : {"evil.example:8080", "127.0.0.1:8081", "127.0.0.1", "127.0.0.1:8080.evil.example",
                           "[::1]:8080", ""}) {
    Head head = request("GET", "/");
    put(head, "host", host);
    expect_refused(guard, head, "host");
  }
  for (const char* origin : {"http://evil.example", "null", "http://127.0.0.1:8081", "https://127.0.0.1:8080",
                             "http://localhost:8080", ""}) {
    Head head = request("GET", "/api/projects");
    put(head, "origin", origin);
    expect_refused(guard, head, "origin");
  }
  Head twice = request("GET", "/api/projects");
  twice.fields.emplace("origin", "http://127.0.0.1:8080");
  expect_refused(guard, twice, "origin");
  for (const char* site : {"cross-site", "same-site", "x"}) {
    Head head = request("GET", "/api/projects");
    put(head, "sec-fetch-site", site);
    expect_refused(guard, head, "sec-fetch-site");
  }
  for (const char* cookie : {"", "evencount-8080=the-cookiE", "evencount-8080=", "evencount-8081=the-cookie",
                             "xevencount-8080=the-cookie", "evencount-8080=the-cookie2"}) {
    Head head = request("GET", "/api/projects");
    put(head, "cookie", cookie);
    expect_refused(guard, head, "cookie");
  }
  for (const char* method : {"POST", "DELETE", "PUT"}) {
    Head head = request(method, "/api/projects");
    head.fields.erase("x-evencount");
    expect_refused(guard, head, "head");
  }
}

TEST(Guard, TheKeyGivesTheCookie) {
  const Guard guard = guard_of();
  EXPECT_FALSE(guard.enter(request("GET", "/")).has_value());
  EXPECT_FALSE(guard.enter(request("GET", "/api/projects?key=the-key")).has_value());
  EXPECT_EQ(guard.enter(request("GET", "/?key=other"))->status, 403);
  const auto entered = guard.enter(request("GET", "/?key=the-key"));
  ASSERT_TRUE(entered.has_value());
  EXPECT_EQ(entered->status, 303);
  EXPECT_NE(std::find(entered->fields.begin(), entered->fields.end(),
                      std::pair<std::string, std::string>(
                          "Set-Cookie", "evencount-8080=the-cookie; Path=/; HttpOnly; SameSite=Strict")),
            entered->fields.end());
}

TEST(Guard, CodesCanNotBeTriedOneAfterAnother) {
  Guard guard = guard_of();
  std::string told;
  guard.on_new_code([&told](const std::string& code) { told = code; });
  EXPECT_TRUE(guard.pair("123456", 0).ok());
  for (int i = 0; i < Guard::tries_a_minute; ++i)
    EXPECT_EQ(guard.pair("000000", 1000 + i).problem().code, ProblemCode::not_allowed);
  EXPECT_EQ(guard.pair("123456", 2000).problem().code, ProblemCode::too_many) << "not even the right one now";
  EXPECT_TRUE(guard.pair("123456", 62'000).ok());
  for (int i = Guard::tries_a_minute; i < Guard::tries_a_code; ++i)
    (void)guard.pair("000000", 1'000'000 + i * 60'000);
  EXPECT_NE(guard.pairing_code(), "123456");
  EXPECT_EQ(guard.pairing_code(), told);
  Guard closed({"127.0.0.1:8080"}, 8080, {"k", "c", ""});
  EXPECT_EQ(closed.pair("", 0).problem().code, ProblemCode::not_allowed);
}

TEST(Guard, SecretsAreLongAndDiffer) {
  std::set<std::string> seen;
  for (int i = 0; i < 50; ++i) {
    const GuardSecrets made = new_secrets(true);
    EXPECT_EQ(made.key.size(), 64u);
    EXPECT_EQ(made.pairing.size(), 6u);
    seen.insert(made.key), seen.insert(made.cookie);
  }
  EXPECT_EQ(seen.size(), 100u);
}

TEST(Target, IsTakenApartAndDecoded) {
  Head head;
  ASSERT_TRUE(read_target("/api/projects/a%20b/x?after=3&name=m%c3%b6nd+1&flag", head).ok());
  EXPECT_EQ(head.path, (std::vector<std::string>{"api", "projects", "a b", "x"}));
  EXPECT_EQ(head.query,
            (std::map<std::string, std::string>{{"after", "3"}, {"flag", ""}, {"name", "mönd 1"}}));
  Head root;
  ASSERT_TRUE(read_target("/", root).ok());
  EXPECT_TRUE(root.path.empty());
  for (const char* bad : {"", "*", "http://x/", "/%", "/%4", "/%zz", "/%00", "/%ff", "/a?%x"}) {
    Head other;
    EXPECT_FALSE(read_target(bad, other).ok()) << bad;
  }
}

}  // namespace
}  // namespace evencount::app::studio
