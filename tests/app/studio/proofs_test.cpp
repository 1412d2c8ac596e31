#include "app/studio/proofs.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <atomic>
#include <thread>

#include "app/run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app::studio {
namespace {

using evencount::testing::spill;
using evencount::testing::TemporaryFolder;

class ProofsOfOneProject : public ::testing::Test {
 protected:
  ProofsOfOneProject() {
    const std::string file = folder_ / "one.evencount.json";
    spill(file, R"({"format": 1, "title": "One", "beads": [], "legend": [], "bands": []})");
    session_ = std::move(*Session::open(file, [] { return 1'000; }));
  }
  void rename(int number) {
    const auto done = session_->operate(
        session_->revision(), fmt::format(R"({{"do": "change_texts", "title": "T{}"}})", number));
    ASSERT_TRUE(done.ok()) << message(done.problem());
  }

  TemporaryFolder folder_;
  std::unique_ptr<Session> session_;
  Proofs proofs_;
};

TEST_F(ProofsOfOneProject, OneIsMadeForEachState) {
  int made = 0;
  const auto title = [&made](const project::Project& project) { return ++made, project.title; };
  EXPECT_EQ(proofs_.of("one", *session_, title).text, "One");
  EXPECT_EQ(proofs_.of("one", *session_, title).text, "One");
  EXPECT_EQ(made, 1);
  rename(2);
  const Proofs::Proof second = proofs_.of("one", *session_, title);
  EXPECT_EQ(second.text, "T2");
  EXPECT_EQ(second.revision, session_->revision());
  EXPECT_EQ(made, 2);
}

/// However many ask while edits go on: never two at once, none twice, and each gets one of a state no older than its question.
TEST_F(ProofsOfOneProject, ManyWhoAskAtOnceShareThem) {
  std::atomic<int> making = 0, made = 0, most = 0;
  const auto slow = [&](const project::Project& project) {
    most = std::max<int>(most, ++making);
    std::this_thread::sleep_for(std::chrono::milliseconds(5));
    --making, ++made;
    return project.title;
  };
  std::atomic<bool> wrong = false;
  std::vector<std::thread> askers;
  for (int i = 0; i < 16; ++i)
    askers.emplace_back([&] {
      for (int question = 0; question < 10; ++question) {
        const std::int64_t asked_on = session_->revision();
        const Proofs::Proof proof = proofs_.of("one", *session_, slow);
        const std::string title = proof.revision == 0 ? "One" : fmt::format("T{}", proof.revision);
        if (proof.revision < asked_on || proof.text != title) wrong = true;
      }
    });
  constexpr int edits = 20;
  for (int i = 1; i <= edits; ++i) rename(i);
  for (std::thread& asker : askers) asker.join();
  EXPECT_FALSE(wrong);
  EXPECT_EQ(most, 1);
  EXPECT_LE(made, edits + 1);
}

}  // namespace
}  // namespace evencount::app::studio
