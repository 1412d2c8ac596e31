#include "app/doctor.hpp"

#include <arpa/inet.h>
#include <fmt/format.h>
#include <sys/socket.h>
#include <sys/statvfs.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

#include "app/places.hpp"
#include "app/studio/page_files.hpp"
#include "base/text.hpp"
#include "page/font_bitmap.hpp"

namespace evencount::app {
namespace {

namespace fs = std::filesystem;

std::string reason() {
  return std::strerror(errno);  // NOLINT(concurrency-mt-unsafe): no other thread runs yet
}

std::string install(std::string_view packages) {
  return fmt::format("sudo apt install {}", packages);
}

void check_fonts(const std::vector<page::FontFile>& fonts, std::vector<Check>& checks) {
  for (const page::FontFile& font : fonts) {
    Check check{.id = "font", .found = fmt::format("{}, {}", font.family, fs::path(font.path).filename().string())};
    if (const auto good = page::check_font(font); !good) {
      check.health = Health::fault;
      check.found = fmt::format("{}: {} is missing, or is another font", font.family, font.path);
      check.remedy = fmt::format("Nothing can be printed or drawn without it: {}", install(font.package));
    }
    checks.push_back(std::move(check));
  }
}

/// The nearest folder upwards that is there.
fs::path nearest_folder(fs::path folder) {
  std::error_code error;
  while (!fs::exists(folder, error) && folder.has_relative_path()) folder = folder.parent_path();
  return folder;
}

/// Makes what is missing of a folder and a file in it, and takes all of it away again. Empty, or what failed.
std::string try_to_write(const fs::path& folder) {
  std::error_code error;
  const fs::path there = nearest_folder(folder);
  fs::create_directories(folder, error);
  std::string failed = error ? error.message() : "";
  if (failed.empty()) {
    std::string name = (folder / ".evencount-doctor-XXXXXX").string();
    errno = 0;
    if (const int file = ::mkstemp(name.data()); file < 0)
      failed = reason();
    else {
      if (::write(file, "x", 1) != 1) failed = reason();
      ::close(file);
      ::unlink(name.c_str());
    }
  }
  // Only what was made here, and only while it is empty.
  for (fs::path made = folder; made != there && made.has_relative_path(); made = made.parent_path()) ::rmdir(made.c_str());
  return failed;
}

void check_folder(const std::string& folder, std::vector<Check>& checks) {
  if (folder.empty()) {
    checks.push_back({"projects", Health::fault, "no home folder is known for the projects",
                      "Set HOME to your home folder, or name a folder with evencount studio --projects FOLDER."});
    return;
  }
  std::error_code error;
  Check check{.id = "projects", .found = fmt::format("{} can be written", folder)};
  if (!fs::is_directory(folder, error)) check.found = fmt::format("{} can be made", folder);
  if (const std::string failed = try_to_write(fs::absolute(folder, error).lexically_normal()); !failed.empty())
    check = {"projects", Health::fault, fmt::format("{} can't be written: {}", folder, failed),
             "Name another folder with evencount studio --projects FOLDER, or make this one yours."};
  checks.push_back(std::move(check));
  struct statvfs disk {};
  if (::statvfs(nearest_folder(fs::absolute(folder, error)).c_str(), &disk) == 0)
    checks.push_back(check_space(static_cast<std::uint64_t>(disk.f_bavail) * disk.f_frsize, folder));
}

void check_page(const std::string& folder, std::vector<Check>& checks) {
  if (studio::has_page(folder))
    checks.push_back({"page", Health::good, fmt::format("the studio's page, {}", folder), ""});
  else
    checks.push_back({"page", Health::fault, folder.empty() ? "the studio's page is not there" : fmt::format("no page of the studio in {}", folder),
                      "Install the package again, or build the page in the source folder: tools/page"});
}

void check_loopback(const std::string& address, std::vector<Check>& checks) {
  Check check{.id = "loopback", .found = fmt::format("a port can be opened on {}", address)};
  sockaddr_in place{};
  place.sin_family = AF_INET;
  const int socket = ::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
  const bool open = socket >= 0 && ::inet_pton(AF_INET, address.c_str(), &place.sin_addr) == 1 &&
                    ::bind(socket, reinterpret_cast<const sockaddr*>(&place), sizeof place) == 0 && ::listen(socket, 1) == 0;
  if (!open)
    check = {"loopback", Health::fault, fmt::format("no port can be opened on {}: {}", address, reason()),
             "The studio can't be served: bring the loopback interface up (sudo ip link set lo up), or allow it in this container or sandbox."};
  if (socket >= 0) ::close(socket);
  checks.push_back(std::move(check));
}

/// The first of these programs on the search path; empty where there is none.
std::string find_program(const std::string& search_path, std::initializer_list<std::string_view> names) {
  for (const std::string_view name : names)
    for (const std::string_view folder : split(search_path, ':')) {
      const fs::path program = fs::path(folder) / name;
      std::error_code error;
      if (!folder.empty() && fs::is_regular_file(program, error) && ::access(program.c_str(), X_OK) == 0) return program.string();
    }
  return "";
}

void check_programs(const std::string& search_path, std::vector<Check>& checks) {
  const std::string browser = find_program(search_path, {"x-www-browser", "firefox", "firefox-esr", "chromium", "chromium-browser", "epiphany-browser"});
  if (!browser.empty())
    checks.push_back({"browser", Health::good, fmt::format("a browser, {}", browser), ""});
  else
    checks.push_back({"browser", Health::note, "no browser found",
                      fmt::format("The studio is a page: {}, or open it from another device with evencount studio --lan.", install("firefox-esr"))});
  const std::string opener = find_program(search_path, {"xdg-open"});
  if (!opener.empty())
    checks.push_back({"opener", Health::good, fmt::format("xdg-open, {}", opener), ""});
  else
    checks.push_back({"opener", Health::note, "no xdg-open found",
                      fmt::format("Only needed by evencount studio --open, and by the desktop's menu: {}", install("xdg-utils"))});
  const std::string to_text = find_program(search_path, {"pdftotext"});
  if (!to_text.empty())
    checks.push_back({"pdftotext", Health::good, fmt::format("pdftotext, {}", to_text), ""});
  else
    checks.push_back({"pdftotext", Health::note, "no pdftotext found",
                      fmt::format("Only needed to read the words of a printed booklet back (evencount read): {}", install("poppler-utils"))});
}

void check_lettering(const std::vector<std::string>& families, std::vector<Check>& checks) {
  if (!families.empty())
    checks.push_back({"lettering", Health::good, fmt::format("{} font families to letter bands in", families.size()), ""});
  else
    checks.push_back({"lettering", Health::note, "no font to letter bands in",
                      fmt::format("The drawn alphabets always work; for evencount band --font, {}", install("fontconfig fonts-dejavu-core"))});
}

void check_locale(const std::string& locale, std::vector<Check>& checks) {
  const std::string lower = lower_ascii(locale);
  if (lower.find("utf-8") != std::string::npos || lower.find("utf8") != std::string::npos)
    checks.push_back({"locale", Health::good, fmt::format("the terminal's locale is {}", locale), ""});
  else
    checks.push_back({"locale", Health::note, locale.empty() ? "no locale is set" : fmt::format("the terminal's locale is {}", locale),
                      "Signs such as × and – may look wrong in this terminal, though not in files: export LANG=C.UTF-8"});
}

}  // namespace

std::string_view health_name(Health health) {
  constexpr std::array<std::string_view, 3> names{"ok", "note", "fault"};
  return names[static_cast<std::size_t>(health)];
}

Surroundings this_machine() {
  Surroundings here;
  const auto fonts = page::booklet_fonts();
  here.fonts.assign(fonts.begin(), fonts.end());
  here.families = page::font_families();
  if (const auto usual = usual_projects()) here.projects = usual->string();
  here.page_folder = page_folder();
  here.loopback = "127.0.0.1";
  here.search_path = variable("PATH");
  for (const char* name : {"LC_ALL", "LC_CTYPE", "LANG"})
    if (here.locale.empty()) here.locale = variable(name);
  return here;
}

std::vector<Check> examine(const Surroundings& surroundings) {
  std::vector<Check> checks;
  check_fonts(surroundings.fonts, checks);
  check_folder(surroundings.projects, checks);
  check_page(surroundings.page_folder, checks);
  check_loopback(surroundings.loopback, checks);
  check_programs(surroundings.search_path, checks);
  check_lettering(surroundings.families, checks);
  check_locale(surroundings.locale, checks);
  return checks;
}

Check check_space(std::uint64_t free_bytes, const std::string& folder) {
  // Our own: a project with its history takes some 10 MB at the most, a session of pictures and renders a few hundred.
  constexpr std::uint64_t megabyte = 1'000'000, least = 20 * megabyte, easy = 500 * megabyte;
  Check check{.id = "space", .found = fmt::format("{:.1f} GB free for {}", static_cast<double>(free_bytes) / 1e9, folder)};
  if (free_bytes >= easy) return check;
  check.found = fmt::format("{} MB free for {}", free_bytes / megabyte, folder);
  check.health = free_bytes < least ? Health::fault : Health::note;
  check.remedy = free_bytes < least ? "Work may not be saved: make room on that disk." : "Make room on that disk before pictures are rendered.";
  return check;
}

}  // namespace evencount::app
