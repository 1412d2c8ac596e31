/// Prints so many random projects as JSON, each followed by a record separator (RFC 7464), for the schema's test.

#include <cstdlib>
#include <iostream>

#include "project/json.hpp"
#include "project/random_project.hpp"

int main(int count, char** arguments) {
  if (count != 2) return 2;
  for (int seed = 0; seed < std::atoi(arguments[1]); ++seed)
    std::cout << evencount::project::to_json(evencount::testing::random_project(seed)) << '\x1e';
}
