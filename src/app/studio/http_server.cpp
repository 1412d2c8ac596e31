// The only file that knows Boost.Beast: it takes long to compile.
#include "app/studio/http_server.hpp"

#include <fmt/format.h>
#include <sys/socket.h>

#include <atomic>
#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/write.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/http.hpp>
#include <cerrno>
#include <chrono>
#include <system_error>
#include <thread>

#include "app/studio/byte_budget.hpp"
#include "app/studio/connections.hpp"
#include "base/text.hpp"

namespace evencount::app::studio {
namespace {

namespace asio = boost::asio;
namespace beast = boost::beast;
namespace http = boost::beast::http;
using Socket = asio::ip::tcp::socket;
using Error = boost::system::error_code;

constexpr std::string_view server_name = "evencount";
constexpr int head_too_large = 431;       // RFC 6585
constexpr int not_in_this_coding = 415;  // RFC 9110, 15.5.16

std::string text_of(beast::string_view text) {
  return {text.data(), text.size()};
}

/// What all connections share.
struct Shared {
  HttpHandler handler;
  HttpLimits limits;
  ByteBudget bodies{limits.bodies_bytes};
  ByteBudget answers{limits.answers_bytes};
};

/// A share of a budget; none is needed for a few bytes. Nothing where there isn't enough.
using Counted = std::optional<ByteBudget::Share>;
bool count(ByteBudget& budget, std::size_t bytes, const HttpLimits& limits, Counted& counted) {
  if (bytes <= limits.uncounted_bytes) return true;
  if (auto share = budget.take(bytes)) counted.emplace(std::move(*share));
  return counted.has_value();
}

template <typename Body>
http::response<Body> begin_response(const Response& answer, const HttpHandler& handler, bool keep_alive) {
  http::response<Body> response(http::int_to_status(static_cast<unsigned>(answer.status)), 11);
  response.set(http::field::server, beast::string_view(server_name.data(), server_name.size()));
  response.set(http::field::content_type, answer.type);
  for (const auto& [name, value] : answer.fields) response.insert(name, value);
  for (const auto& [name, value] : handler.fields)
    if (response.find(name) == response.end()) response.insert(name, value);
  response.keep_alive(keep_alive);
  return response;
}

/// One connection, from its first request to its last.
class Conversation {
 public:
  Conversation(Socket& socket, Connections::Entry& entry, Shared& shared)
      : socket_(socket),
        entry_(entry),
        shared_(shared),
        handler_(shared.handler),
        limits_(shared.limits) {}

  void run() {
    try {
      while (serve_one()) {
      }
    } catch (const std::bad_alloc&) {  // for a body, say
      entry_.allow(limits_.write_seconds, true);
      (void)send(exhausted_response("memory"), false, false);
    }
    Error ignored;
    socket_.shutdown(Socket::shutdown_send, ignored);
    // What still comes is read away for a moment: closing with unread bytes would cut off the answer.
    entry_.allow(1, true);
    char rest[4096];
    while (!ignored && socket_.read_some(asio::buffer(rest), ignored) > 0) {
    }
  }

 private:
  using HeadParser = http::request_parser<http::empty_body>;
  using BodyParser = http::request_parser<http::string_body>;

  /// Whether the connection goes on.
  bool serve_one() {
    HeadParser parser;
    parser.header_limit(limits_.head_bytes);
    parser.body_limit(boost::none);
    Error error;
    if (buffer_.size() == 0) {
      entry_.allow(limits_.idle_seconds);
      const std::size_t count = socket_.read_some(buffer_.prepare(1024), error);
      if (error) return false;
      buffer_.commit(count);
    }
    entry_.allow(limits_.head_seconds);
    error = read_head_into(parser);
    if (error) return refuse_head(error);
    Request request;
    if (const auto read = read_head(parser, request.head); !read) {
      Response response = problem_response(read.problem());
      if (read.problem().where == "content-encoding") response.status = not_in_this_coding;
      return refuse(request.head, std::move(response), read.problem());
    }
    const auto most = handler_.admit(request.head);
    if (!most) return refuse(request.head, problem_response(most.problem()), most.problem());
    const auto length = parser.content_length();
    if (length && *length > *most) {
      const Problem problem{ProblemCode::too_large, "body", fmt::format("{} bytes", *length),
                            fmt::format("at most {}", *most)};
      return refuse(request.head, problem_response(problem), problem);
    }
    Counted counted;
    if (length && !count(shared_.bodies, *length, limits_, counted)) {
      const Problem problem{ProblemCode::too_many, "body", "too much that others are sending just now",
                            fmt::format("at most {} bytes together", shared_.bodies.most())};
      return refuse(request.head, problem_response(problem), problem);
    }
    const bool keep_alive = parser.get().keep_alive();
    if (!read_body(std::move(parser), *most, request)) return false;
    return answer(request, keep_alive);
  }

  /// As http::read_header, which would take a folded field for one line: readers differ about what such a head says.
  Error read_head_into(HeadParser& parser) {
    Error error;
    while (true) {
      const auto bytes = buffer_.cdata();
      const std::string_view text(static_cast<const char*>(bytes.data()), bytes.size());
      const std::string_view head = text.substr(0, text.find("\r\n\r\n"));
      if (head.find("\r\n ") != std::string_view::npos || head.find("\r\n\t") != std::string_view::npos)
        return http::make_error_code(http::error::bad_obs_fold);
      buffer_.consume(parser.put(bytes, error));
      if (parser.is_header_done() || (error && error != http::error::need_more)) return error;
      error = {};
      const std::size_t count = socket_.read_some(buffer_.prepare(1024), error);
      if (error) return error;
      buffer_.commit(count);
    }
  }

  static Result<Done> read_head(const HeadParser& parser, Head& head) {
    const auto& message = parser.get();
    head.method = text_of(message.method_string());
    for (const auto& field : message)
      head.fields.emplace(lower_ascii(text_of(field.name_string())), text_of(field.value()));
    const Problem unclear{ProblemCode::bad_usage, "head", "a body of unclear length",
                          "one Content-Length and no Transfer-Encoding"};
    if (parser.chunked() || head.fields.contains("transfer-encoding") ||
        head.fields.count("content-length") > 1)
      return unclear;
    if (head.fields.contains("content-encoding"))
      return Problem{ProblemCode::bad_usage, "content-encoding", "a packed body", "one as it is"};
    if (head.fields.count("host") != 1)
      return Problem{ProblemCode::bad_usage, "head", "no host, or more than one", "one Host"};
    return read_target({message.target().data(), message.target().size()}, head);
  }

  bool read_body(HeadParser&& head, std::size_t most, Request& request) {
    Error error;
    if (beast::iequals(head.get()[http::field::expect], "100-continue")) {
      const http::response<http::empty_body> go_on(http::status::continue_, 11);
      http::write(socket_, go_on, error);
      if (error) return false;
    }
    BodyParser parser(std::move(head));
    parser.body_limit(most);
    entry_.allow(limits_.body_seconds);
    http::read(socket_, buffer_, parser, error);
    if (error) {
      if (entry_.expired()) return refuse(request.head, problem_response(too_slow()), too_slow());
      return false;
    }
    request.body = std::move(parser.get().body());
    return true;
  }

  static Problem too_slow() {
    return {ProblemCode::too_slow, "request", "a request that came too slowly", "all of it in a few seconds"};
  }

  bool refuse_head(Error error) {
    if (error == http::error::end_of_stream) return false;
    if (entry_.expired()) return refuse({}, problem_response(too_slow()), too_slow());
    if (error.category() != http::make_error_code(http::error::end_of_stream).category())
      return false;  // the other side went
    const bool too_long = error == http::error::header_limit || error == http::error::buffer_overflow;
    const Problem problem{
        too_long ? ProblemCode::too_large : ProblemCode::bad_usage, "head", error.message(),
        too_long ? fmt::format("a head of at most {} bytes", limits_.head_bytes) : "an HTTP/1.1 request"};
    Response response = problem_response(problem);
    if (too_long) response.status = head_too_large;
    return refuse({}, std::move(response), problem);
  }

  /// Says no, and ends the connection: what follows may be anything.
  bool refuse(const Head& head, Response response, const Problem& problem) {
    handler_.log(fmt::format("refused {} {}: {}",
                             head.method.empty() ? "a request" : quote(head.method),
                             address_without_query(head.target), message(problem)));
    entry_.allow(limits_.write_seconds, true);
    (void)send(std::move(response), false, head.method == "HEAD");
    return false;
  }

  bool send(Response answer, bool keep_alive, bool head_only) {
    Error error;
    if (head_only) {
      auto response = begin_response<http::empty_body>(answer, handler_, keep_alive);
      response.content_length(answer.body.size());
      http::response_serializer<http::empty_body> serializer(response);
      http::write_header(socket_, serializer, error);
    } else {
      auto response = begin_response<http::string_body>(answer, handler_, keep_alive);
      response.body() = std::move(answer.body);
      response.prepare_payload();
      http::write(socket_, response, error);
    }
    return !error && keep_alive;
  }

  /// Whatever goes wrong in one request is that one's answer.
  Response answer_to(const Request& request) {
    try {
      return handler_.answer(request);
    } catch (const std::bad_alloc&) {
      return exhausted_response("memory");
    } catch (const std::system_error&) {
      return exhausted_response("threads");
    } catch (const std::exception& fault) {
      return problem_response({ProblemCode::system_failure, "studio", fmt::format("a fault of ours: {}", fault.what()), ""});
    }
  }

  bool answer(const Request& request, bool keep_alive) {
    const bool head_only = request.head.method == "HEAD";
    entry_.work();
    Response answer = answer_to(request);
    if (answer.next) return stream(answer, head_only);
    Counted counted;
    if (!head_only && !count(shared_.answers, answer.body.size(), limits_, counted))
      answer = problem_response({ProblemCode::too_many, "answer", "too much that is being sent just now",
                                 fmt::format("at most {} bytes together", shared_.answers.most())});
    entry_.allow(limits_.write_seconds, true);
    if (answer.status >= 400)
      handler_.log(fmt::format("answered {} {} with {}: {}", quote(request.head.method),
                               address_without_query(request.head.target), answer.status,
                               trim(answer.body.substr(0, 300))));
    return send(std::move(answer), keep_alive, head_only);
  }

  bool stream(const Response& answer, bool head_only) {
    Error error;
    auto response = begin_response<http::empty_body>(answer, handler_, false);
    http::response_serializer<http::empty_body> serializer(response);
    entry_.allow(limits_.write_seconds, true);
    http::write_header(socket_, serializer, error);
    while (!error && !head_only) {
      entry_.work();
      const auto piece = answer.next();
      if (!piece || reader_is_gone()) break;
      if (piece->empty()) continue;
      entry_.allow(limits_.write_seconds, true);
      asio::write(socket_, asio::buffer(*piece), error);
    }
    return false;
  }

  /// A page that is loaded anew leaves its stream, which would keep its place until something is written.
  bool reader_is_gone() {
    char byte = 0;
    const ssize_t count = ::recv(socket_.native_handle(), &byte, 1, MSG_PEEK | MSG_DONTWAIT);
    return count == 0 || (count < 0 && errno != EAGAIN && errno != EINTR);
  }

  Socket& socket_;
  Connections::Entry& entry_;
  Shared& shared_;
  const HttpHandler& handler_;
  const HttpLimits& limits_;
  beast::flat_buffer buffer_{1 << 20};
};

}  // namespace

struct HttpServer::Inside {
  asio::io_context context;
  std::vector<asio::ip::tcp::acceptor> acceptors;
  Shared shared;
  Connections connections;
  std::vector<std::thread> threads;
  std::atomic<bool> stopped = false;

  explicit Inside(const HttpLimits& given) : shared{.handler = {}, .limits = given}, connections(given.connections) {}

  void refuse_connection(Socket& socket, const Response& answer) const {
    shared.handler.log(fmt::format("refused a connection: {}", trim(answer.body)));
    auto response = begin_response<http::string_body>(answer, shared.handler, false);
    response.body() = answer.body;
    response.prepare_payload();
    Error error;
    socket.non_blocking(true, error);  // it fits the socket's own buffer
    http::write(socket, response, error);
    socket.shutdown(Socket::shutdown_send, error);
  }

  void converse(std::unique_ptr<Socket> socket) {
    try {
      Connections::Entry entry(connections, socket->native_handle());
      Error error;
      socket->set_option(asio::ip::tcp::no_delay(true), error);
      Conversation(*socket, entry, shared).run();
    } catch (const std::exception& fault) {
      log_fault(fault);
    }
    socket.reset();
    connections.end();  // after this the server may go
  }

  void log_fault(const std::exception& fault) const {
    try {
      shared.handler.log(fmt::format("a connection ended: {}", fault.what()));
    } catch (const std::exception&) {  // no memory for this either
    }
  }

  void accept_one(asio::ip::tcp::acceptor& acceptor) {
    Error error;
    auto socket = std::make_unique<Socket>(context);
    acceptor.accept(*socket, error);
    if (stopped) return;
    if (error) return pause();  // out of descriptors, say: it passes
    if (!connections.begin())
      return refuse_connection(*socket, problem_response({ProblemCode::too_many, "connections",
                                                          fmt::format("more than {} at once", shared.limits.connections), "fewer"}));
    // Shared, so that it is still here to be answered when no thread begins.
    const auto kept = std::make_shared<std::unique_ptr<Socket>>(std::move(socket));
    try {
      std::thread([this, kept] { converse(std::move(*kept)); }).detach();
    } catch (const std::system_error&) {
      connections.end();
      refuse_connection(**kept, exhausted_response("threads"));
    } catch (const std::bad_alloc&) {
      connections.end();
      throw;
    }
  }

  static void pause() { std::this_thread::sleep_for(std::chrono::milliseconds(50)); }

  void accept_all(asio::ip::tcp::acceptor& acceptor) {
    while (!stopped) {
      try {
        accept_one(acceptor);
      } catch (const std::exception& fault) {  // no memory just now
        log_fault(fault);
        pause();
      }
    }
  }
};

HttpServer::HttpServer(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}

HttpServer::~HttpServer() {
  stop();
}

Result<std::unique_ptr<HttpServer>> HttpServer::listen(const std::vector<std::string>& addresses,
                                                       std::uint16_t port, const HttpLimits& limits) {
  auto inside = std::make_unique<Inside>(limits);
  for (const std::string& address : addresses) {
    Error error;
    const auto ip = asio::ip::make_address(address, error);
    if (error)
      return Problem{ProblemCode::system_failure, address, error.message(), "an address of this machine"};
    const asio::ip::tcp::endpoint endpoint(ip, port);
    asio::ip::tcp::acceptor acceptor(inside->context);
    acceptor.open(endpoint.protocol(), error);
    // Only what waits after a closed connection is taken over, never a port that somebody listens on.
    if (!error) acceptor.set_option(asio::ip::tcp::acceptor::reuse_address(true), error);
    if (!error) acceptor.bind(endpoint, error);
    if (!error) acceptor.listen(asio::socket_base::max_listen_connections, error);
    if (error)
      return Problem{ProblemCode::in_use, fmt::format("{}:{}", address, port), error.message(),
                     "a free port (--port)"};
    if (port == 0) port = acceptor.local_endpoint().port();
    inside->acceptors.push_back(std::move(acceptor));
  }
  return std::unique_ptr<HttpServer>(new HttpServer(std::move(inside)));
}

std::uint16_t HttpServer::port() const {
  return inside_->acceptors.front().local_endpoint().port();
}

void HttpServer::serve(HttpHandler handler) {
  inside_->shared.handler = std::move(handler);
  for (auto& acceptor : inside_->acceptors)
    inside_->threads.emplace_back([this, &acceptor] { inside_->accept_all(acceptor); });
}

void HttpServer::stop() {
  if (inside_->stopped.exchange(true)) return;
  for (auto& acceptor : inside_->acceptors)
    ::shutdown(acceptor.native_handle(), SHUT_RDWR);  // wakes a waiting accept
  for (std::thread& thread : inside_->threads) thread.join();
  inside_->connections.end_all();
}

}  // namespace evencount::app::studio
