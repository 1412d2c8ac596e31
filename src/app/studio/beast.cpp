// Boost.Asio and Boost.Beast, compiled once.
#include <boost/asio/impl/src.hpp>
#include <boost/beast/src.hpp>
