#include "app/studio/page_files.hpp"

#include <fmt/format.h>
#include <sys/stat.h>

#include <algorithm>
#include <filesystem>

#include "app/files.hpp"
#include "base/text.hpp"

namespace evencount::app::studio {
namespace {

namespace fs = std::filesystem;

struct FileType {
  std::string_view ending, type;
};
constexpr FileType types[] = {
    {".html", "text/html; charset=utf-8"},
    {".js", "text/javascript; charset=utf-8"},
    {".mjs", "text/javascript; charset=utf-8"},
    {".css", "text/css; charset=utf-8"},
    {".svg", "image/svg+xml"},
    {".png", "image/png"},
    {".webp", "image/webp"},
    {".jpg", "image/jpeg"},
    {".ico", "image/x-icon"},
    {".woff2", "font/woff2"},
    {".woff", "font/woff"},
    {".json", "application/json"},
    {".webmanifest", "application/manifest+json"},
    {".txt", "text/plain; charset=utf-8"},
    {".wasm", "application/wasm"},
    {".map", "application/json"},
};

constexpr std::string_view plain_page = R"(<!doctype html>
<html lang="en"><head><meta charset="utf-8"><title>Evencount</title></head>
<body><h1>Evencount is running</h1>
<p>Its studio page has not been built. In the source folder: <code>cd studio; npm ci; npm run build</code>, then start it again;
or say where the built page is: <code>evencount studio --studio-files FOLDER</code>.</p>
<p>The programming interface answers under <code>/api</code>; docs/openapi.yaml describes it.</p></body></html>
)";

std::string type_of(const fs::path& path) {
  const std::string ending = lower_ascii(path.extension().string());
  const auto* found =
      std::find_if(std::begin(types), std::end(types), [&](const FileType& t) { return t.ending == ending; });
  return std::string(found == std::end(types) ? "application/octet-stream" : found->type);
}

bool takes(const Head& head, std::string_view encoding) {
  const std::string accepted = lower_ascii(head.field("accept-encoding"));
  for (const std::string_view part : split(accepted, ',')) {
    const auto words = split(part, ';');
    if (trim(words.front()) == encoding)
      return std::none_of(words.begin() + 1, words.end(),
                          [](std::string_view w) { return trim(w) == "q=0"; });
  }
  return false;
}

/// Whether a path is one that files could have: nothing hidden, nothing that leads up.
bool is_plain(const std::vector<std::string>& path) {
  return std::none_of(path.begin(), path.end(), [](const std::string& segment) {
    return segment.empty() || segment.front() == '.' || segment.find('/') != std::string::npos ||
           segment.find('\\') != std::string::npos;
  });
}

/// The file of a path, inside the folder when all links are followed; nothing otherwise.
std::optional<fs::path> find_file(const std::string& folder, const std::vector<std::string>& path) {
  std::error_code error;
  const fs::path root = fs::canonical(folder, error);
  if (error) return std::nullopt;
  fs::path file = root;
  for (const std::string& segment : path) file /= segment;
  const fs::path real = fs::canonical(file, error);
  if (error || !fs::is_regular_file(real, error)) return std::nullopt;
  const auto [end_of_root, within] = std::mismatch(root.begin(), root.end(), real.begin(), real.end());
  return end_of_root == root.end() ? std::optional(real) : std::nullopt;
}

std::string tag_of(const fs::path& file) {
  struct stat status {};
  if (::stat(file.c_str(), &status) != 0) return "";
  return fmt::format("\"{:x}-{:x}\"", status.st_size,
                     status.st_mtim.tv_sec * 1'000'000'000 + status.st_mtim.tv_nsec);
}

Response send(const Head& head, const fs::path& file) {
  Response response;
  response.type = type_of(file);
  fs::path sent = file;
  for (const auto& [encoding, ending] : {std::pair<std::string, std::string>{"br", ".br"}, {"gzip", ".gz"}}) {
    std::error_code error;
    const fs::path packed = file.string() + ending;
    if (!takes(head, encoding) || !fs::is_regular_file(fs::symlink_status(packed, error))) continue;
    sent = packed;
    response.fields.emplace_back("Content-Encoding", encoding);
    break;
  }
  response.fields.emplace_back("Vary", "Accept-Encoding");
  // Files under assets/ have names that change with what is in them.
  const bool named_by_content = head.path.size() > 1 && head.path.front() == "assets";
  response.fields.emplace_back("Cache-Control",
                               named_by_content ? "public, max-age=31536000, immutable" : "no-cache");
  const std::string tag = tag_of(sent);
  response.fields.emplace_back("ETag", tag);
  if (!tag.empty() && head.field("if-none-match") == tag) {
    response.status = 304;
    return response;
  }
  auto bytes = read_file(sent.string());
  // Not by its own problem, which says where on this machine the page lies, to whoever asks.
  if (!bytes)
    return problem_response(
        {ProblemCode::file_unreadable, "address", address_without_query(head.target), "a file of the page that can be read"});
  response.body = std::move(*bytes);
  return response;
}

}  // namespace

bool has_page(const std::string& folder) {
  return !folder.empty() && find_file(folder, {"index.html"}).has_value();
}

Response page_file(const std::string& folder, const Head& head) {
  if (head.changes()) {
    Response response = problem_response({ProblemCode::bad_usage, "method", quote(head.method), "GET or HEAD"});
    response.status = 405;
    response.fields.emplace_back("Allow", "GET, HEAD");
    return response;
  }
  if (!is_plain(head.path))
    return problem_response(
        {ProblemCode::not_found, "address", address_without_query(head.target), "a file of the page"});
  const bool is_page = head.path.empty() || head.path.back().find('.') == std::string::npos;
  if (!has_page(folder)) {
    if (!is_page)
      return problem_response(
          {ProblemCode::not_found, "address", address_without_query(head.target), "a page that has been built"});
    Response response;
    response.type = "text/html; charset=utf-8";
    response.body = plain_page;
    response.fields.emplace_back("Cache-Control", "no-store");
    return response;
  }
  if (const auto file = find_file(folder, is_page ? std::vector<std::string>{"index.html"} : head.path))
    return send(head, *file);
  return problem_response(
      {ProblemCode::not_found, "address", address_without_query(head.target), "a file of the page"});
}

}  // namespace evencount::app::studio
