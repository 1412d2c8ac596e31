#include "app/places.hpp"

#include <gtest/gtest.h>

#include <cstdlib>

#include "app/run.hpp"
#include "app/verbs/stock_text.hpp"

namespace evencount::app {
namespace {

using namespace evencount::testing;

/// Sets an environment variable while it lives; nothing takes it out.
class Setting {
 public:
  Setting(const char* name, const char* value) : name_(name), kept_(variable(name)), was_set_(std::getenv(name) != nullptr) {
    if (value)
      ::setenv(name, value, 1);
    else
      ::unsetenv(name);
  }
  Setting(const Setting&) = delete;
  Setting& operator=(const Setting&) = delete;
  ~Setting() {
    if (was_set_)
      ::setenv(name_, kept_.c_str(), 1);
    else
      ::unsetenv(name_);
  }

 private:
  const char* name_;
  std::string kept_;
  bool was_set_;
};

TEST(Places, DataLiesInAnAbsoluteFolderOrNowhere) {
  const struct {
    const char *data_home, *home, *folder;  ///< nothing where no folder is known
  } all[] = {
      {"/data", "/home/you", "/data/evencount"},
      {"/data", nullptr, "/data/evencount"},
      {nullptr, "/home/you", "/home/you/.local/share/evencount"},
      {"", "/home/you", "/home/you/.local/share/evencount"},
      {"data", "/home/you", "/home/you/.local/share/evencount"},
      {"./data", "", nullptr},
      {nullptr, nullptr, nullptr},
      {nullptr, "you", nullptr},
  };
  for (const auto& each : all) {
    const Setting data_home("XDG_DATA_HOME", each.data_home), home("HOME", each.home);
    const auto data = data_folder("--stock FILE");
    const auto projects = usual_projects();
    ASSERT_EQ(data.ok(), each.folder != nullptr);
    ASSERT_EQ(projects.ok(), data.ok());
    if (data) {
      EXPECT_TRUE(data->is_absolute());
      EXPECT_EQ(*data, each.folder);
      EXPECT_EQ(*projects, *data / "projects");
    } else {
      EXPECT_EQ(data.problem().code, ProblemCode::missing_field);
      EXPECT_EQ(message(data.problem()), "your data: found no home folder, expected --stock FILE, or $HOME");
      EXPECT_EQ(open_stock("").problem(), data.problem());
    }
  }
}

TEST(Places, AStudioWithoutAHomeSaysWhatToName) {
  const Setting data_home("XDG_DATA_HOME", nullptr), home("HOME", nullptr);
  const Ran ran = run({"studio"});
  EXPECT_EQ(ran.status, exit_bad_input);
  EXPECT_NE(ran.err.find("--projects FOLDER"), std::string::npos) << ran.err;
  const Ran stock = run({"stock", "list"});
  EXPECT_EQ(stock.status, exit_bad_input);
  EXPECT_NE(stock.err.find("--stock FILE"), std::string::npos) << stock.err;
}

}  // namespace
}  // namespace evencount::app
