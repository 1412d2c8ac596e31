#include "along_text.hpp"

#include <map>
#include <nlohmann/json.hpp>

namespace evencount::page {

std::string visible_text(std::string_view html) {
  static const std::map<std::string_view, char> references{{"amp", '&'}, {"lt", '<'}, {"gt", '>'}, {"quot", '"'}, {"#39", '\''}};
  std::string text;
  while (!html.empty()) {
    if (html.front() == '<') {
      const std::string_view tag = html.substr(0, html.find('>') + 1);
      for (const char* block : {"</li", "</p", "</h1", "</h2", "</h3", "</dt", "</dd", "</tr"})
        if (tag.starts_with(block)) text += '\n';
      html.remove_prefix(tag.size());
    } else if (html.front() == '&') {
      const std::size_t end = html.find(';');
      text += references.at(html.substr(1, end - 1));
      html.remove_prefix(end + 1);
    } else {
      if (html.front() != '\n') text += html.front();
      html.remove_prefix(1);
    }
  }
  return text;
}

std::string between(std::string_view text, std::string_view begin, std::string_view end) {
  const std::size_t from = text.find(begin);
  if (from == std::string_view::npos) return {};
  const std::size_t to = text.find(end, from + begin.size());
  if (to == std::string_view::npos) return {};
  return std::string(text.substr(from + begin.size(), to - from - begin.size()));
}

std::string words_on_page(std::string_view html, std::size_t band, std::string_view hand) {
  const std::string article = between(html, "data-band=\"" + std::to_string(band) + "\"", "</article>");
  return visible_text(between(article, "data-hand=\"" + std::string(hand) + "\">", "</div>"));
}

nlohmann::json design_on_page(std::string_view html) {
  return nlohmann::json::parse(between(html, "<script type=\"application/json\" id=\"design\">", "</script>"));
}

}  // namespace evencount::page
