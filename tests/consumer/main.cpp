// Fits a band, stitches it blank, and prints its first row: enough to prove that headers, targets and libraries are installed.
#include <bead/thread.hpp>
#include <form/fit.hpp>
#include <iostream>
#include <page/output.hpp>
#include <weave/technique.hpp>
#include <wording/words.hpp>

int main() {
  using namespace evencount;
  form::FitRequest request;
  request.form = form::parse_form("lens:17x5x9").value();
  request.bead = bead::find_size("cylinder-11").value();
  request.gauge = bead::default_gauge(request.bead, bead::threads().front());
  const auto fit = form::fit(request).value();
  const auto chart = chart::Chart::make(fit.columns, fit.edge).value();
  const auto plan = weave::make_plan("peyote-even-count", chart, {weave::Closure::zip}).value();
  const std::vector<std::string> letters{"A"};
  const auto words = wording::write_words(plan, letters, "Consumer");
  std::cout << words.lines.front().label << ": " << words.lines.front().beads << '\n';
  return page::to_svg({.width = millimetres(10), .height = millimetres(10), .marks = {}}).ok() ? 0 : 1;
}
