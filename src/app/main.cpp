#include <exception>
#include <iostream>
#include <system_error>

#include "app/command_line.hpp"
#include "app/out_of_memory.hpp"

int main(int argc, char** argv) {
  using namespace evencount::app;
  const Console console{std::cout, std::cerr};
  end_plainly_without_memory();
  try {
    const int status = run_command_line({argv + 1, argv + argc}, console);
    std::cout.flush();
    if (std::cout.fail()) {
      std::cerr << "evencount: standard output can't be written\n";
      return exit_failure;
    }
    return status;
  } catch (const std::bad_alloc&) {
    std::cerr << "evencount: " << out_of_memory << '\n';
  } catch (const std::system_error& fault) {
    std::cerr << "evencount: the system refused something: " << fault.code().message() << "; no file was left half-written\n";
  } catch (const std::exception& fault) {
    std::cerr << "evencount: a fault of ours: " << fault.what() << '\n';
  }
  return exit_failure;
}
