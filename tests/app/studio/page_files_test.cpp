#include "app/studio/page_files.hpp"

#include <gtest/gtest.h>

#include <filesystem>

#include "app/run.hpp"
#include "support/temporary_folder.hpp"

namespace evencount::app::studio {
namespace {

using evencount::testing::spill;
using evencount::testing::TemporaryFolder;

Head asks(const std::string& target, const std::string& encodings = "") {
  Head head;
  head.method = "GET";
  EXPECT_TRUE(read_target(target, head).ok());
  if (!encodings.empty()) head.fields.emplace("accept-encoding", encodings);
  return head;
}

std::string field(const Response& response, const std::string& name) {
  for (const auto& [key, value] : response.fields)
    if (key == name) return value;
  return "";
}

struct Page {
  TemporaryFolder folder;
  std::string root = folder / "dist";
  Page() {
    std::filesystem::create_directories(root + "/assets");
    spill(root + "/index.html", "<p>page");
    spill(root + "/index.html.br", "packed by br");
    spill(root + "/index.html.gz", "packed by gz");
    spill(root + "/assets/a.js", "script");
    spill(folder / "secret.txt", "secret");
    std::filesystem::create_symlink("../secret.txt", root + "/link.txt");
  }
};

TEST(PageFiles, APathWithoutADotIsThePage) {
  const Page page;
  for (const char* target : {"/", "/project/moon", "/index.html"}) {
    const Response response = page_file(page.root, asks(target));
    EXPECT_EQ(response.status, 200) << target;
    EXPECT_EQ(response.body, "<p>page") << target;
    EXPECT_EQ(response.type, "text/html; charset=utf-8");
  }
  EXPECT_EQ(page_file(page.root, asks("/assets/a.js")).type, "text/javascript; charset=utf-8");
  EXPECT_NE(field(page_file(page.root, asks("/assets/a.js")), "Cache-Control").find("immutable"),
            std::string::npos);
}

TEST(PageFiles, WhatIsPackedIsSentToThoseWhoTakeIt) {
  const Page page;
  const Response br = page_file(page.root, asks("/", "gzip, deflate, br"));
  EXPECT_EQ(br.body, "packed by br");
  EXPECT_EQ(field(br, "Content-Encoding"), "br");
  EXPECT_EQ(page_file(page.root, asks("/", "gzip;q=1.0")).body, "packed by gz");
  EXPECT_EQ(page_file(page.root, asks("/", "br;q=0, gzip")).body, "packed by gz");
  EXPECT_EQ(page_file(page.root, asks("/", "zstd")).body, "<p>page");
  Head again = asks("/", "br");
  again.fields.emplace("if-none-match", field(br, "ETag"));
  EXPECT_EQ(page_file(page.root, again).status, 304);
}

TEST(PageFiles, NothingElseIsSent) {
  const Page page;
  for (const char* target :
       {"/link.txt", "/../secret.txt", "/%2e%2e/secret.txt", "/..%2fsecret.txt", "/assets/../../secret.txt",
        "//index.html", "/.hidden", "/assets", "/none.js", "/a%5c..%5csecret.txt"}) {
    const Response response = page_file(page.root, asks(target));
    EXPECT_EQ(response.body.find("secret\n"), std::string::npos);
    EXPECT_NE(response.body, "secret");
    EXPECT_EQ(response.status, std::string(target) == "/assets" ? 200 : 404) << target;
  }
  Head change = asks("/");
  change.method = "POST";
  EXPECT_EQ(page_file(page.root, change).status, 405);
}

TEST(PageFiles, WithoutABuiltPageThereIsOneThatSaysWhatToDo) {
  const TemporaryFolder empty;
  for (const std::string& folder : {std::string(), empty.path().string(), std::string("/nowhere")}) {
    EXPECT_FALSE(has_page(folder));
    EXPECT_NE(page_file(folder, asks("/")).body.find("npm run build"), std::string::npos);
    EXPECT_EQ(page_file(folder, asks("/assets/a.js")).status, 404);
  }
}

}  // namespace
}  // namespace evencount::app::studio
