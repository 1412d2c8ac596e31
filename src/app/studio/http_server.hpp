#pragma once
/// The server: a thread for each connection, limits on everything that comes in.
///
/// Properties (tests/app/studio/hostile_test.py):
///  (1) no request, however made, keeps the server from answering others: slow heads and bodies, connections without end, claims of
///      bodies that are larger than taken, heads without end, answers that are never read
///  (2) a request with a body of unclear length (chunked, or with two lengths) is refused and its connection closed
///  (3) `stop` ends every connection, event streams too
///  (4) every answer, refusals of the server's own too, carries the handler's fields
///  (5) what is written to the log holds no query of an address

#include <memory>

#include "app/studio/http.hpp"

namespace evencount::app::studio {

class HttpServer {
 public:
  /// Listens on these addresses, all on one port; 0 takes a free one. Errors: system_failure, in_use.
  [[nodiscard]] static Result<std::unique_ptr<HttpServer>> listen(const std::vector<std::string>& addresses,
                                                                  std::uint16_t port,
                                                                  const HttpLimits& limits);
  ~HttpServer();
  HttpServer(const HttpServer&) = delete;
  HttpServer& operator=(const HttpServer&) = delete;

  [[nodiscard]] std::uint16_t port() const;
  /// Begins to serve, on threads of its own.
  void serve(HttpHandler handler);
  /// Ends every connection and waits for it.
  void stop();

 private:
  struct Inside;
  explicit HttpServer(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace evencount::app::studio
