#pragma once
/// What the program does where there is no more memory.
///
/// Its own allocations throw std::bad_alloc, and its threads std::system_error, which main turns into a message and exit status 3. Some
/// libraries below the pages end the process instead, by a signal: GLib (under Pango) says why and raises SIGTRAP where it gets no memory or
/// no thread; others use memory that they did not get. So SIGTRAP, and SIGABRT and SIGSEGV while memory really is used up, end with the same
/// message and status; else these two do what they always do, since it is a fault of ours or theirs. An exception that nobody can catch (a
/// library's, in a thread or while it cleans up) ends the program as one does that main catches.

#include <string_view>

namespace evencount::app {

inline constexpr std::string_view out_of_memory = "out of memory; no file was left half-written";
inline constexpr std::string_view out_of_threads = "no more memory or threads (what a library said of it stands above); no file was left half-written";

/// For SIGABRT, SIGTRAP, SIGSEGV and std::terminate, from now on.
void end_plainly_without_memory();

}  // namespace evencount::app
