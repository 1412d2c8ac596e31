#include "app/studio/jobs.hpp"

#include <gtest/gtest.h>

#include <future>

#include "app/studio/events.hpp"

namespace evencount::app::studio {
namespace {

JobView wait_for(const Jobs& jobs, const std::string& id) {
  while (true) {
    JobView view = jobs.view(id).value();
    if (view.state != JobState::waiting && view.state != JobState::running) return view;
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
}

TEST(Jobs, AreDoneInOrderAndKeepTheirResults) {
  std::vector<int> order;
  Jobs jobs([](const JobView&) {});
  std::vector<std::string> ids;
  for (int i = 0; i < 5; ++i)
    ids.push_back(jobs.start("test", "p",
                             [i, &order](JobControl& control) -> Result<JobResult> {
                               control.progress(0.5, "half");
                               order.push_back(i);
                               return JobResult{"{}", {{"part", {"text/plain", std::to_string(i)}}}};
                             })
                      .value());
  const JobView last = wait_for(jobs, ids.back());
  EXPECT_EQ(last.state, JobState::done);
  EXPECT_EQ(last.result->parts.at("part").bytes, "4");
  EXPECT_EQ(order, (std::vector<int>{0, 1, 2, 3, 4}));
}

TEST(Jobs, LargeResultsPushOutOlderOnes) {
  Jobs jobs([](const JobView&) {}, 100);
  const auto of_size = [&jobs](std::size_t bytes) {
    const auto id = jobs.start("test", "p", [bytes](JobControl&) -> Result<JobResult> {
      return JobResult{"{}", {{"part", {"text/plain", std::string(bytes, 'x')}}}};
    });
    (void)wait_for(jobs, *id);
    return *id;
  };
  const std::string first = of_size(40), second = of_size(60);
  EXPECT_TRUE(jobs.view(first).ok()) << "together they are at the limit";
  const std::string third = of_size(30);
  EXPECT_FALSE(jobs.view(first).ok());
  EXPECT_TRUE(jobs.view(second).ok());
  const std::string large = of_size(1000);
  EXPECT_FALSE(jobs.view(second).ok() || jobs.view(third).ok());
  EXPECT_EQ(jobs.view(large)->result->parts.at("part").bytes.size(), 1000u) << "the newest is always there";
}

TEST(Jobs, ProblemsAndFaultsAreFailures) {
  Jobs jobs([](const JobView&) {});
  const auto bad = jobs.start("test", "", [](JobControl&) -> Result<JobResult> {
    return Problem{ProblemCode::bad_text, "x", "y", "z"};
  });
  const auto fault =
      jobs.start("test", "", [](JobControl&) -> Result<JobResult> { throw std::runtime_error("oh"); });
  EXPECT_EQ(wait_for(jobs, *bad).problem->code, ProblemCode::bad_text);
  EXPECT_EQ(wait_for(jobs, *fault).problem->code, ProblemCode::system_failure);
  EXPECT_EQ(jobs.view("99").problem().code, ProblemCode::not_found);
}

TEST(Jobs, WhatIsCalledOffEndsOrNeverBegins) {
  std::promise<void> began;
  Jobs jobs([](const JobView&) {});
  const auto running = jobs.start("test", "", [&began](JobControl& control) -> Result<JobResult> {
    began.set_value();
    while (!control.cancelled()) std::this_thread::sleep_for(std::chrono::milliseconds(1));
    return JobResult{};
  });
  bool ran = false;
  const auto waiting = jobs.start("test", "", [&ran](JobControl&) -> Result<JobResult> {
    ran = true;
    return JobResult{};
  });
  began.get_future().wait();
  EXPECT_TRUE(jobs.cancel(*waiting).ok());
  EXPECT_TRUE(jobs.cancel(*running).ok());
  EXPECT_EQ(wait_for(jobs, *running).state, JobState::cancelled);
  const auto after = jobs.start("test", "", [](JobControl&) -> Result<JobResult> {
    return JobResult{"{}", {}};
  });
  EXPECT_EQ(wait_for(jobs, *after).state, JobState::done);
  EXPECT_EQ(jobs.view(*waiting)->state, JobState::cancelled);
  EXPECT_FALSE(ran);
}

TEST(Jobs, OnlyTheLastAreKept) {
  Jobs jobs([](const JobView&) {});
  for (std::size_t i = 0; i < 2 * Jobs::most_kept; ++i)
    (void)wait_for(jobs, jobs.start("test", "",
                                    [](JobControl&) -> Result<JobResult> {
                                      return JobResult{"{}", {}};
                                    })
                             .value());
  EXPECT_LE(jobs.all().size(), Jobs::most_kept);
  EXPECT_FALSE(jobs.view("1").ok());
}

/// What has been shown is there while the work goes on, and the result takes its place.
TEST(Jobs, WhatThereIsSoFarCanBeLookedAt) {
  std::promise<void> looked, shown;
  Jobs jobs([](const JobView&) {});
  const auto id = jobs.start("render", "moon", [&](JobControl& control) -> Result<JobResult> {
    control.show({R"({"so": "far"})", {{"picture.png", {"image/png", "half"}}}});
    shown.set_value();
    looked.get_future().wait();
    return JobResult{"{}", {{"picture.png", {"image/png", "whole"}}}};
  });
  ASSERT_TRUE(id.ok());
  shown.get_future().wait();
  const JobView during = *jobs.view(*id);
  EXPECT_EQ(during.state, JobState::running);
  EXPECT_EQ(during.shown, 1);
  ASSERT_TRUE(during.result);
  EXPECT_EQ(during.result->parts.at("picture.png").bytes, "half");
  looked.set_value();
  EXPECT_EQ(wait_for(jobs, *id).result->parts.at("picture.png").bytes, "whole");
}

TEST(Events, OnlyTheNewestOfANameWaits) {
  Events events(2);
  const auto reader = events.join([] { return std::string("first\n\n"); });
  ASSERT_TRUE(reader.ok());
  for (int i = 0; i < 1000; ++i) events.tell("a", "a", std::to_string(i));
  events.tell("b", "b", "{}");
  const auto text = (*reader)->next();
  ASSERT_TRUE(text.has_value());
  EXPECT_EQ(*text, "retry: 2000\n\nfirst\n\nevent: a\ndata: 999\n\nevent: b\ndata: {}\n\n");
  const auto second = events.join([] { return std::string(); });
  EXPECT_TRUE(second.ok());
  EXPECT_EQ(events.join([] { return std::string(); }).problem().code, ProblemCode::too_many);
  events.close();
  EXPECT_FALSE((*reader)->next().has_value());
}

/// Between what a reader is told first and what it hears from then on nothing is lost.
TEST(Events, WhatHappensWhileAReaderJoinsReachesIt) {
  Events events;
  const auto reader = events.join([&events] {
    const std::string before = "revision 1\n\n";
    events.tell("project", "project", "2");
    return before;
  });
  ASSERT_TRUE(reader.ok());
  EXPECT_EQ((*reader)->next(), "retry: 2000\n\nrevision 1\n\nevent: project\ndata: 2\n\n");
}

}  // namespace
}  // namespace evencount::app::studio
