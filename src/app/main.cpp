#include <exception>
#include <iostream>

#include "app/command_line.hpp"

int main(int argc, char** argv) {
  using namespace evencount::app;
  const Console console{std::cout, std::cerr};
  try {
    const int status = run_command_line({argv + 1, argv + argc}, console);
    std::cout.flush();
    if (std::cout.fail()) {
      std::cerr << "evencount: standard output can't be written\n";
      return exit_failure;
    }
    return status;
  } catch (const std::bad_alloc&) {
    std::cerr << "evencount: out of memory; nothing was changed\n";
  } catch (const std::exception& fault) {
    std::cerr << "evencount: a fault of ours: " << fault.what() << '\n';
  }
  return exit_failure;
}
