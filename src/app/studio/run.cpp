#include "app/studio/run.hpp"

#include <arpa/inet.h>
#include <fmt/ostream.h>
#include <ifaddrs.h>
#include <net/if.h>
#include <signal.h>
#include <unistd.h>

#include <chrono>
#include <cstring>
#include <filesystem>

#include "app/places.hpp"
#include "app/studio/api.hpp"
#include "app/studio/browser.hpp"
#include "app/studio/http_server.hpp"
#include "app/studio/log.hpp"
#include "app/studio/page_files.hpp"
#include "base/text.hpp"

namespace evencount::app::studio {
namespace {

namespace fs = std::filesystem;

constexpr const char* this_machine = "127.0.0.1";
constexpr std::string_view svg_type = "image/svg+xml";

std::int64_t now_ms() {
  return std::chrono::duration_cast<std::chrono::milliseconds>(
             std::chrono::system_clock::now().time_since_epoch())
      .count();
}

/// For limits and patience: nobody sets this one.
std::int64_t steady_ms() {
  return std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

/// This machine's first address in a network, or nothing.
std::string network_address() {
  ifaddrs* list = nullptr;
  if (::getifaddrs(&list) != 0) return "";
  std::string address;
  for (const ifaddrs* entry = list; entry && address.empty(); entry = entry->ifa_next) {
    if (!entry->ifa_addr || entry->ifa_addr->sa_family != AF_INET || (entry->ifa_flags & IFF_LOOPBACK) ||
        !(entry->ifa_flags & IFF_UP))
      continue;
    sockaddr_in ipv4{};
    std::memcpy(&ipv4, entry->ifa_addr, sizeof ipv4);
    char text[INET_ADDRSTRLEN] = {};
    if (::inet_ntop(AF_INET, &ipv4.sin_addr, text, sizeof text)) address = text;
  }
  ::freeifaddrs(list);
  return address;
}

/// These signals wait until they are asked for, in every thread that is begun afterwards.
sigset_t hold_signals() {
  sigset_t signals;
  sigemptyset(&signals);
  sigaddset(&signals, SIGINT);
  sigaddset(&signals, SIGTERM);
  sigaddset(&signals, SIGCHLD);
  ::signal(SIGCHLD, SIG_DFL);  // whoever started us may have had it ignored, and then it never comes
  struct sigaction hangup {};
  if (::sigaction(SIGHUP, nullptr, &hangup) == 0 && hangup.sa_handler != SIG_IGN) sigaddset(&signals, SIGHUP);
  ::pthread_sigmask(SIG_BLOCK, &signals, nullptr);
  ::signal(SIGPIPE, SIG_IGN);
  return signals;
}

Json event_of(const JobView& job) {
  return {{"id", job.id},
          {"kind", job.kind},
          {"project", job.project},
          {"state", state_name(job.state)},
          {"progress", job.progress},
          {"step", job.step},
          {"shown", job.shown}};
}

/// Whether somebody was let in by the address in the browser's file. The printed one leaves the file: the browser may be about to read it.
bool followed_the_file(const Head& head, const Response& entered) {
  const auto from = head.query.find(Browser::from_field);
  return entered.status == 303 && from != head.query.end() && from->second == Browser::from_file;
}

Response answer_request(Studio& studio, Browser& browser, const std::string& page, const Request& request) {
  Response response;
  if (auto entered = studio.guard.enter(request.head)) {
    if (followed_the_file(request.head, *entered)) browser.forget_file();
    response = std::move(*entered);
  } else
    response = request.head.is_api() ? answer(studio, request) : page_file(page, request.head);
  if (response.type == svg_type) response.fields.push_back(drawing_policy());
  return response;
}

struct Places {
  std::vector<std::string> addresses;
  std::vector<std::string> hosts;
};

Places places_for(const std::string& network, std::uint16_t port) {
  Places places{{this_machine},
                {fmt::format("{}:{}", this_machine, port), fmt::format("localhost:{}", port)}};
  if (network.empty()) return places;
  places.addresses.push_back(network);
  places.hosts.push_back(fmt::format("{}:{}", network, port));
  return places;
}

Result<LibraryFolders> folders_for(const Options& options) {
  LibraryFolders folders{options.projects, examples_folder()};
  if (options.project.empty()) {
    if (!folders.projects.empty()) return folders;
    const auto usual = usual_projects();
    if (!usual) return usual.problem();
    folders.projects = usual->string();
    return folders;
  }
  std::error_code error;
  const fs::path file = fs::canonical(options.project, error);
  if (error)
    return Problem{ProblemCode::file_not_found, options.project, error.message(), "a project's file"};
  if (!file.string().ends_with(".evencount.json"))
    return Problem{ProblemCode::bad_usage, "project", quote(options.project),
                   "a file NAME.evencount.json"};
  if (!fs::is_regular_file(file, error))
    return Problem{ProblemCode::file_unreadable, options.project, "something that is not a file", "a project's file"};
  folders.projects = file.parent_path().string();
  return folders;
}

std::string server_address(std::uint16_t port) {
  return fmt::format("http://{}:{}/", this_machine, port);
}

void announce(const Guard& guard, const std::string& project, const std::string& network, std::uint16_t port,
              const Console& console) {
  fmt::print(console.out, "{}?key={}\n", server_address(port), guard.key());
  console.out.flush();
  if (!project.empty()) fmt::print(console.err, "evencount: opened {}\n", project);
  if (!network.empty())
    fmt::print(console.err, "evencount: other devices: http://{}:{}/ with the code {}\n", network, port,
               guard.pairing_code());
  fmt::print(console.err, "evencount: the studio runs until Ctrl-C\n");
  console.err.flush();
}

/// Until the studio is told to end. Meanwhile what becomes of the browser is heard of, and its file doesn't stay.
void wait_for_the_end(const sigset_t& signals, Browser& browser, Log& log) {
  using Clock = std::chrono::steady_clock;
  constexpr std::chrono::seconds file_stays(60);  // our own: the slowest of browsers has begun
  const auto file_goes = Clock::now() + file_stays;
  while (true) {
    const auto rest = std::chrono::ceil<std::chrono::seconds>(file_goes - Clock::now());
    int signal = 0;
    if (rest.count() > 0) {
      const timespec time{rest.count(), 0};
      signal = ::sigtimedwait(&signals, nullptr, &time);
    } else {
      browser.forget_file();
      ::sigwait(&signals, &signal);
    }
    if (signal == SIGCHLD) {
      if (const auto opened = browser.opener_result(); !opened) log.line(message(opened.problem()));
    } else if (signal > 0) {
      return;
    }
  }
}

}  // namespace

int run(const Options& options, const Console& console) {
  const auto folders = folders_for(options);
  if (!folders) return console.fail(folders.problem());
  const std::string network = options.lan ? network_address() : "";
  if (options.lan && network.empty())
    return console.fail({ProblemCode::system_failure, "lan", "no network", "a network with an IPv4 address"});
  const sigset_t signals = hold_signals();

  Log log(console.err);
  Events events;
  Jobs jobs([&events](const JobView& job) { events.tell("job " + job.id, "job", json_line(event_of(job))); });
  auto library = Library::open(*folders, now_ms, [&events](const std::string& id, std::int64_t revision) {
    if (revision == 0)
      events.tell("projects", "projects", "{}");
    else
      events.tell("project " + id, "project", json_line({{"id", id}, {"revision", revision}}));
  });
  if (!library) return console.fail(library.problem());
  std::string opened;
  if (!options.project.empty()) {
    opened = (*library)->id_of(options.project).value_or("");
    if (const auto session = (*library)->session(opened); !session) return console.fail(session.problem());
  }

  const HttpLimits limits;
  auto server =
      HttpServer::listen(places_for(network, 0).addresses, static_cast<std::uint16_t>(options.port), limits);
  if (!server) return console.fail(server.problem());
  const std::uint16_t port = (*server)->port();
  Guard guard(places_for(network, port).hosts, port, new_secrets(options.lan));
  guard.on_new_code(
      [&log](const std::string& code) { log.line("too many wrong codes; the code is now " + code); });
  Uploads uploads;
  Proofs proofs;
  Studio studio{**library, events, jobs, uploads, proofs, guard, steady_ms};
  const std::string page = options.page_files.empty() ? page_folder() : options.page_files;
  Browser browser;
  (*server)->serve(
      {.admit = [&guard](const Head& head) -> Result<std::size_t> {
         if (auto good = guard.check(head); !good) return good.problem();
         return head.is_api() ? admit(head) : Result<std::size_t>(no_body);
       },
       .answer = [&studio, &browser,
                  &page](const Request& request) { return answer_request(studio, browser, page, request); },
       .log = [&log](const std::string& text) { log.line(text); },
       .fields = safety_fields()});
  announce(guard, opened, network, port, console);
  if (options.open)
    if (const auto shown = browser.show(server_address(port), guard.key()); !shown)
      log.line(message(shown.problem()));

  wait_for_the_end(signals, browser, log);
  log.line("ending");
  events.close();
  (*server)->stop();
  return exit_done;
}

}  // namespace evencount::app::studio
