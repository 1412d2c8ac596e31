#include "app/studio/uploads.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace evencount::app::studio {
namespace {

TEST(Uploads, TheLastFewAreKept) {
  Uploads uploads;
  std::vector<std::string> ids;
  for (std::size_t i = 0; i <= Uploads::most_kept; ++i) ids.push_back(uploads.keep("picture " + std::to_string(i)).value());
  EXPECT_EQ(uploads.find(ids.front()).problem().code, ProblemCode::not_found);
  for (std::size_t i = 1; i < ids.size(); ++i) EXPECT_EQ(**uploads.find(ids[i]), "picture " + std::to_string(i));
}

TEST(Uploads, LargeOnesPushOutOthers) {
  Uploads uploads(100);
  const auto first = uploads.keep(std::string(60, 'a')), second = uploads.keep(std::string(40, 'b'));
  EXPECT_TRUE(uploads.find(*first).ok());
  const auto third = uploads.keep(std::string(50, 'c'));
  ASSERT_TRUE(third.ok());
  EXPECT_FALSE(uploads.find(*first).ok());
  EXPECT_TRUE(uploads.find(*second).ok());
  EXPECT_EQ(uploads.keep(std::string(101, 'd')).problem().code, ProblemCode::too_many);
}

TEST(Uploads, WhatWaitsToBeWorkedOnCounts) {
  Uploads uploads(100);
  auto waiting = uploads.find(*uploads.keep(std::string(60, 'a'))).value();
  EXPECT_EQ(uploads.keep(std::string(60, 'b')).problem().code, ProblemCode::too_many) << "pushed out here, but still held by work";
  EXPECT_TRUE(uploads.keep(std::string(40, 'c')).ok());
  waiting.reset();
  EXPECT_TRUE(uploads.keep(std::string(60, 'd')).ok());
}

TEST(Uploads, WorkMayOutliveThem) {
  std::shared_ptr<const std::string> bytes;
  {
    Uploads uploads;
    bytes = uploads.find(*uploads.keep("late")).value();
  }
  EXPECT_EQ(*bytes, "late");
}

}  // namespace
}  // namespace evencount::app::studio
