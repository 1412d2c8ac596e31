#include "wording/reader_vocabulary.hpp"

#include <algorithm>

#include "base/text.hpp"

namespace evencount::wording::reader {
namespace {

using enum Remark;
using Word = std::string_view;

template <std::size_t n>
using List = std::array<Word, n>;

// English

constexpr List<2> en_row{"row", "rows"}, en_round{"round", "rounds"};
constexpr List<3> en_left{"l", "left", "rtl"}, en_right{"r", "right", "ltr"};
constexpr List<2> en_down{"d", "down"}, en_up{"u", "up"}, en_ways{"to", "the"};
constexpr std::array<RemarkWords, 7> en_remarks{{{increase_begin, "increase at the beginning"},
                                                 {decrease_begin, "decrease at the beginning"},
                                                 {increase_begin, "increase at the start"},
                                                 {decrease_begin, "decrease at the start"},
                                                 {increase_end, "increase at the end"},
                                                 {decrease_end, "decrease at the end"},
                                                 {on_back, "on the back"}}};
constexpr std::array<TechniqueWords, 14> en_techniques{
    {{"peyote-even-count", "flat peyote, even count"},
     {"peyote-odd-count", "flat peyote, odd count"},
     {"peyote-odd-count-figure-8", "flat peyote, odd count with figure-8 turns"},
     {"two-drop-even-count", "two-drop peyote, even count"},
     {"two-drop-odd-count", "two-drop peyote, odd count"},
     {"peyote-shaped", "shaped flat peyote"},
     {"tubular-even-count", "tubular peyote, even count"},
     {"tubular-odd-count", "tubular peyote, odd count"},
     {"peyote-bezel", "peyote bezel"},
     {"brick", "brick stitch"},
     {"square", "square stitch"},
     {"loom", "loom work"},
     {"herringbone", "flat herringbone"},
     {"right-angle", "right-angle weave"}}};
constexpr Vocabulary english{.heading = "word chart",
                             .row = en_row,
                             .round = en_round,
                             .left = en_left,
                             .right = en_right,
                             .down = en_down,
                             .up = en_up,
                             .ways = en_ways,
                             .remarks = en_remarks,
                             .techniques = en_techniques};

// German

constexpr List<2> de_row{"reihe", "reihen"}, de_round{"runde", "runden"};
constexpr List<2> de_left{"l", "links"}, de_right{"r", "rechts"}, de_down{"u", "unten"}, de_up{"o", "oben"};
constexpr List<1> de_ways{"nach"};
constexpr std::array<RemarkWords, 5> de_remarks{{{increase_begin, "zunahme am anfang"},
                                                 {decrease_begin, "abnahme am anfang"},
                                                 {increase_end, "zunahme am ende"},
                                                 {decrease_end, "abnahme am ende"},
                                                 {on_back, "auf der rückseite"}}};
constexpr std::array<TechniqueWords, 14> de_techniques{
    {{"peyote-even-count", "flacher peyotestich, gerade spaltenzahl"},
     {"peyote-odd-count", "flacher peyotestich, ungerade spaltenzahl"},
     {"peyote-odd-count-figure-8", "flacher peyotestich, ungerade spaltenzahl mit achterwenden"},
     {"two-drop-even-count", "zweier-peyotestich, gerade paarzahl"},
     {"two-drop-odd-count", "zweier-peyotestich, ungerade paarzahl"},
     {"peyote-shaped", "flacher peyotestich in form"},
     {"tubular-even-count", "schlauch-peyotestich, gerade spaltenzahl"},
     {"tubular-odd-count", "schlauch-peyotestich, ungerade spaltenzahl"},
     {"peyote-bezel", "peyote-fassung"},
     {"brick", "ziegelstich"},
     {"square", "quadratstich"},
     {"loom", "webarbeit"},
     {"herringbone", "flacher fischgrätstich"},
     {"right-angle", "rechtwinkelstich"}}};
constexpr Vocabulary german{.heading = "perlenfolge",
                            .row = de_row,
                            .round = de_round,
                            .left = de_left,
                            .right = de_right,
                            .down = de_down,
                            .up = de_up,
                            .ways = de_ways,
                            .remarks = de_remarks,
                            .techniques = de_techniques};

// Spanish

constexpr List<2> es_row{"hilera", "hileras"}, es_round{"vuelta", "vueltas"};
constexpr List<2> es_left{"i", "izquierda"}, es_right{"d", "derecha"}, es_down{"b", "abajo"}, es_up{"a", "arriba"};
constexpr List<2> es_ways{"hacia", "la"};
constexpr std::array<RemarkWords, 5> es_remarks{{{increase_begin, "aumento al principio"},
                                                 {decrease_begin, "disminución al principio"},
                                                 {increase_end, "aumento al final"},
                                                 {decrease_end, "disminución al final"},
                                                 {on_back, "en el reverso"}}};
constexpr std::array<TechniqueWords, 14> es_techniques{
    {{"peyote-even-count", "peyote plano, número par"},
     {"peyote-odd-count", "peyote plano, número impar"},
     {"peyote-odd-count-figure-8", "peyote plano, número impar con giros en ocho"},
     {"two-drop-even-count", "peyote doble, número par"},
     {"two-drop-odd-count", "peyote doble, número impar"},
     {"peyote-shaped", "peyote plano con forma"},
     {"tubular-even-count", "peyote tubular, número par"},
     {"tubular-odd-count", "peyote tubular, número impar"},
     {"peyote-bezel", "engaste en peyote"},
     {"brick", "punto ladrillo"},
     {"square", "punto cuadrado"},
     {"loom", "tejido en telar"},
     {"herringbone", "punto espiga plano"},
     {"right-angle", "tejido en ángulo recto"}}};
constexpr Vocabulary spanish{.heading = "patrón escrito",
                             .row = es_row,
                             .round = es_round,
                             .left = es_left,
                             .right = es_right,
                             .down = es_down,
                             .up = es_up,
                             .ways = es_ways,
                             .remarks = es_remarks,
                             .techniques = es_techniques};

// French

constexpr List<2> fr_row{"rang", "rangs"}, fr_round{"tour", "tours"};
constexpr List<2> fr_left{"g", "gauche"}, fr_right{"d", "droite"}, fr_down{"b", "bas"}, fr_up{"h", "haut"};
constexpr List<3> fr_ways{"vers", "la", "le"};
constexpr std::array<RemarkWords, 5> fr_remarks{{{increase_begin, "augmentation au début"},
                                                 {decrease_begin, "diminution au début"},
                                                 {increase_end, "augmentation à la fin"},
                                                 {decrease_end, "diminution à la fin"},
                                                 {on_back, "au dos"}}};
constexpr std::array<TechniqueWords, 14> fr_techniques{
    {{"peyote-even-count", "peyote plat, nombre pair"},
     {"peyote-odd-count", "peyote plat, nombre impair"},
     {"peyote-odd-count-figure-8", "peyote plat, nombre impair avec retours en huit"},
     {"two-drop-even-count", "peyote double, nombre pair"},
     {"two-drop-odd-count", "peyote double, nombre impair"},
     {"peyote-shaped", "peyote plat en forme"},
     {"tubular-even-count", "peyote tubulaire, nombre pair"},
     {"tubular-odd-count", "peyote tubulaire, nombre impair"},
     {"peyote-bezel", "sertissage en peyote"},
     {"brick", "point de brique"},
     {"square", "point carré"},
     {"loom", "tissage au métier"},
     {"herringbone", "point ndébélé plat"},
     {"right-angle", "tissage à angle droit"}}};
constexpr Vocabulary french{.heading = "diagramme écrit",
                            .row = fr_row,
                            .round = fr_round,
                            .left = fr_left,
                            .right = fr_right,
                            .down = fr_down,
                            .up = fr_up,
                            .ways = fr_ways,
                            .remarks = fr_remarks,
                            .techniques = fr_techniques};

// Japanese

constexpr List<1> ja_left{"左"}, ja_right{"右"}, ja_down{"下"}, ja_up{"上"};
constexpr std::array<RemarkWords, 5> ja_remarks{{{increase_begin, "始めで増し目"},
                                                 {decrease_begin, "始めで減らし目"},
                                                 {increase_end, "終わりで増し目"},
                                                 {decrease_end, "終わりで減らし目"},
                                                 {on_back, "裏側"}}};
constexpr std::array<TechniqueWords, 14> ja_techniques{
    {{"peyote-even-count", "フラットペヨーテ、偶数目"},
     {"peyote-odd-count", "フラットペヨーテ、奇数目"},
     {"peyote-odd-count-figure-8", "フラットペヨーテ、奇数目で8の字ターン"},
     {"two-drop-even-count", "ツードロップペヨーテ、偶数目"},
     {"two-drop-odd-count", "ツードロップペヨーテ、奇数目"},
     {"peyote-shaped", "増減目のフラットペヨーテ"},
     {"tubular-even-count", "チューブラーペヨーテ、偶数目"},
     {"tubular-odd-count", "チューブラーペヨーテ、奇数目"},
     {"peyote-bezel", "ペヨーテのベゼル"},
     {"brick", "ブリックステッチ"},
     {"square", "スクエアステッチ"},
     {"loom", "ビーズ織り"},
     {"herringbone", "フラットヘリンボーン"},
     {"right-angle", "ライトアングルウィーブ"}}};
constexpr Vocabulary japanese{.heading = "ビーズ配列表",
                              .ordinal = "第",
                              .row_counter = "段",
                              .round_counter = "周",
                              .left = ja_left,
                              .right = ja_right,
                              .down = ja_down,
                              .up = ja_up,
                              .remarks = ja_remarks,
                              .techniques = ja_techniques};

struct ClosureWord {
  Word word;
  weave::Closure closure;
};

}  // namespace

std::span<const Vocabulary* const> vocabularies() {
  static constexpr std::array<const Vocabulary*, 5> all{&english, &german, &spanish, &french, &japanese};
  return all;
}

bool is_one_of(const std::vector<Token>& tokens, std::size_t i, Words words) {
  return std::any_of(words.begin(), words.end(), [&](Word word) { return is_word(tokens, i, word); });
}

bool is_counter(const std::vector<Token>& tokens, std::size_t i) {
  return is_word(tokens, i, japanese.row_counter) || is_word(tokens, i, japanese.round_counter);
}

std::optional<RowWord> row_word_of(const std::vector<Token>& tokens, std::size_t i) {
  if (!is(tokens, i, TokenKind::word) || !is(tokens, i + 1, TokenKind::number)) return std::nullopt;
  for (const Vocabulary* vocabulary : vocabularies()) {
    if (is_one_of(tokens, i, vocabulary->row)) return RowWord{vocabulary, false};
    if (is_one_of(tokens, i, vocabulary->round)) return RowWord{vocabulary, true};
    if (vocabulary->ordinal.empty() || !is_word(tokens, i, vocabulary->ordinal)) continue;
    const bool range = is(tokens, i + 2, TokenKind::dash) && is(tokens, i + 3, TokenKind::number);
    const std::size_t counter = i + (range ? 4 : 2);
    if (is_counter(tokens, counter)) return RowWord{vocabulary, is_word(tokens, counter, vocabulary->round_counter)};
  }
  return std::nullopt;
}

bool is_decrease_sign(Word word) {
  constexpr List<5> signs{"dec", "abn", "dis", "dim", "減"};
  const std::string lower = lower_ascii(word);
  return std::find(signs.begin(), signs.end(), lower) != signs.end();
}

Words column_words() {
  static constexpr List<9> words{"columns",  "column",   "spalten", "spalte", "columnas",
                                 "columna", "colonnes", "colonne", "列"};
  return words;
}

Words bead_words() {
  static constexpr List<9> words{"beads", "bead", "perlen", "perle", "cuentas", "cuenta", "perles", "perle", "個"};
  return words;
}

Words row_words() {
  static constexpr List<9> words{"rows", "row", "reihen", "reihe", "hileras", "hilera", "rangs", "rang", "段"};
  return words;
}

Words round_words() {
  static constexpr List<9> words{"rounds", "round", "runden", "runde", "vueltas", "vuelta", "tours", "tour", "周"};
  return words;
}

Words across_words() {
  static constexpr List<5> words{"across", "quer", "ancho", "largeur", "ユニット幅"};
  return words;
}

Words along_words() {
  static constexpr List<5> words{"along", "längs", "largo", "longueur", "ユニット長"};
  return words;
}

std::optional<weave::Closure> closure_word(const std::vector<Token>& tokens, std::size_t i) {
  using enum weave::Closure;
  static constexpr std::array<ClosureWord, 19> words{
      {{"zipped", zip}, {"verzahnt", zip}, {"cremallera", zip}, {"zip", zip}, {"ジッパーとじ", zip},
       {"open", weave::Closure::open}, {"offen", weave::Closure::open}, {"abierto", weave::Closure::open},
       {"ouvert", weave::Closure::open}, {"開いた形", weave::Closure::open},
       {"sewn", sew}, {"zusammengenäht", sew}, {"cosido", sew}, {"cousu", sew}, {"縫い合わせ", sew},
       {"rund", weave::Closure::round}, {"redondo", weave::Closure::round}, {"rond", weave::Closure::round},
       {"輪編み", weave::Closure::round}}};
  const auto* found =
      std::find_if(words.begin(), words.end(), [&](const ClosureWord& word) { return is_word(tokens, i, word.word); });
  return found == words.end() ? std::nullopt : std::optional(found->closure);
}

Words again_words() {
  static constexpr List<6> words{"work", "repeat", "wie", "como", "comme", "くり返し"};
  return words;
}

Words articles() {
  static constexpr List<6> words{"la", "las", "le", "les", "die", "der"};
  return words;
}

}  // namespace evencount::wording::reader
