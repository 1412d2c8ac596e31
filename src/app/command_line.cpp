#include "app/command_line.hpp"

#include <CLI/CLI.hpp>

#include "app/self/completions.hpp"
#include "app/self/man_page.hpp"
#include "app/stock_verbs.hpp"
#include "app/verbs.hpp"
#include "page/labels.hpp"
#include "weave/technique.hpp"

namespace evencount::app {
namespace {

/// The verb that was asked for, ready to run.
using Action = std::function<int()>;

/// Declares verbs one by one; the one that is parsed leaves its action.
class Declarer {
 public:
  Declarer(CLI::App& app, const Console& console, Action& chosen)
      : app_(app), console_(console), chosen_(chosen) {}

  template <typename Arguments>
  CLI::App* verb(const std::string& name, const std::string& summary, std::shared_ptr<Arguments> arguments,
                 int (*run)(const Arguments&, const Console&)) {
    CLI::App* verb = app_.add_subcommand(name, summary);
    verb->callback(
        [this, arguments, run] { chosen_ = [this, arguments, run] { return run(*arguments, console_); }; });
    return verb;
  }

 private:
  CLI::App& app_;
  const Console& console_;
  Action& chosen_;
};

void declare_fit(Declarer& declarer) {
  auto a = std::make_shared<FitArguments>();
  CLI::App* verb = declarer.verb("fit", "how many beads across and along close round a form", a, fit_verb);
  verb->add_option("FORM", a->form,
                   "KIND:SIZES, such as lens:17x5x9, round:12x20, oval:18x13x5, bar:20x4x10, dome:20x6x10, "
                   "ring:54, ring:us7, "
                   "wrist:165, outline:FILE.csv,length=9; stone:14,girdle=0.5,dome=2.2,back=2.3 for a bezel")
      ->required();
  verb->add_option("--bead", a->bead, "KIND-SIZE, such as cylinder-11");
  verb->add_option("--use", a->use, "fixed (glued or sewn) or sliding");
  verb->add_option("--stitch", a->stitch, "peyote (zipped), square or brick (sewn)");
  verb->add_option("--columns", a->columns, "how many columns, instead of as many as fit");
  verb->add_option("--parity", a->parity, "even, odd or any number of columns");
  verb->add_option("--reveal", a->reveal, "the least margin of the form left bare on each side");
  verb->add_option("--together", a->together, "so many forms side by side under one band")
      ->check(CLI::Range(1, 100));
  verb->add_flag("--ring", a->ring, "strung round the form like a necklace: a ring start");
  verb->add_option("--gauge", a->gauge, "a measured gauge, COLUMNxEDGE in mm, such as 1.35x1.66");
  verb->add_option("--swatch", a->swatch,
                   "a measured swatch: '12 columns = 16.1 mm, 20 along the edge = 33.4 mm'");
  verb->add_option("--finished", a->finished,
                   "a band that was made: 'lens:17x5x9 took 24, snug'; may be repeated");
  verb->add_option("--thread", a->thread, "the thread, such as braided-6lb");
  verb->add_option("--from", a->from, "a project whose saved gauge for this bead and thread is used")->type_name("PROJECT");
  verb->add_option("--keep", a->keep, "a project to keep the gauge in, for later fits and bands")->type_name("PROJECT");
  verb->add_option("--hand", a->hand, "whose gauge is kept or used, in your own words");
  verb->add_option("--cord", a->cord, "the cord's diameter");
  verb->add_option("--draw-in", a->draw_in, "the bead of a bezel's drawn-in rounds, such as round-15");
  verb->add_flag("--bridge", a->bridge, "take an outline in spite of a dent that the beads would bridge");
  verb->add_flag("--table", a->table, "every bead size");
  verb->add_flag("--explain", a->explain, "the reasoning in plain sentences");
  verb->add_option("--draw", a->drawing, "a file for the section with every bead: .svg, .png or .pdf")->type_name("FILE");
  verb->add_flag("--json", a->json, "answer in JSON");
}

std::string technique_ids() {
  std::string ids;
  for (const weave::Technique& technique : weave::techniques())
    ids += (ids.empty() ? "" : ", ") + std::string(technique.id);
  return ids;
}

void declare_band(Declarer& declarer) {
  auto a = std::make_shared<BandArguments>();
  CLI::App* verb =
      declarer.verb("band", "make a band, blank, with a motif or from words, into a project", a, band_verb);
  verb->add_option("PROJECT", a->project, "the project's file; a new one is begun when there is none")
      ->required();
  verb->add_option("--name", a->name, "the band's name; one of the same name is replaced");
  verb->add_option("--form", a->form,
                   "what it goes round: KIND:SIZES, or the id of one of the project's forms");
  verb->add_option("--bead", a->bead, "KIND-SIZE, such as cylinder-11");
  verb->add_option("--use", a->use, "fixed or sliding");
  verb->add_option("--gauge", a->gauge, "a measured gauge, COLUMNxEDGE in mm");
  verb->add_option("--technique", a->technique, "how it is stitched; flat peyote if left out. One of: " + technique_ids());
  verb->add_option("--begin-at", a->begin_at, "for a bezel: how many rounds lie below its ring, on the back");
  verb->add_option("--columns", a->columns, "columns across, or units of right-angle weave; what fits, if left out");
  verb->add_option("--edge", a->edge, "beads along the edge, or units; what fits, if left out");
  verb->add_option("--rows", a->rows, "rows, instead of --edge");
  verb->add_flag("--open", a->open, "leave the ends open instead of joining them");
  verb->add_option("--colour", a->colours, "a legend entry, LETTER=#rrggbb:NAME; may be repeated");
  verb->add_option("--fill", a->fill, "the letter of the ground");
  verb->add_option("--motif", a->motif, "a file of letters, one line a step, centred; '.' leaves the ground, '_' an empty cell")->type_name("FILE");
  verb->add_option("--at", a->motif_at, "the step where the motif, the stamp or the text begins");
  verb->add_option("--stamp", a->stamp, "another band of the project: its drawing is put on this one, from --at on");
  verb->add_option("--stamp-part", a->stamp_part, "a part of that band: COLUMN,STEP,COLUMNS,STEPS");
  verb->add_option("--stamp-leave", a->stamp_leave, "a letter of it that is left out, its ground say");
  verb->add_option("--at-column", a->at_column, "the column where the stamp begins");
  verb->add_option("--text", a->text, "lettering in the middle of the band, or of the steps from --at on; \\n begins a new line");
  verb->add_option("--text-letter", a->text_letter, "the legend's letter that the text is drawn in");
  verb->add_option("--text-steps", a->text_steps, "how many steps the text may take, from --at on");
  verb->add_option("--alphabet", a->alphabet, "five or three columns a letter");
  verb->add_option("--font", a->font, "letter in a font that is installed, instead of the drawn alphabets");
  verb->add_option("--capital-height", a->capital_height, "how high the font's capitals are, such as 11.6mm");
  verb->add_flag("--bold", a->bold, "the font's bold");
  verb->add_flag("--italic", a->italic, "the font's italic");
  verb->add_option("--running", a->running, "text across the band, or down or up along it");
  verb->add_option("--words", a->words, "a file with a word chart to make the band from")->type_name("FILE");
}

/// Where the stock comes from.
void add_stock(CLI::App* verb, StockSource& source) {
  verb->add_option("--stock", source.file, "the beads to be had: a stockroom's file, a table (CSV) as docs/stock.md has it, or a palette of colours")->type_name("FILE");
  verb->add_flag("--my-stock", source.own, "your own stockroom (`evencount stock`)");
}

void declare_picture(Declarer& declarer) {
  auto a = std::make_shared<PictureArguments>();
  CLI::App* verb = declarer.verb("picture", "make a band from a picture, in beads of a stock", a, picture_verb);
  verb->add_option("IMAGE", a->image, "a PNG, JPEG, WebP or TIFF file")->required()->type_name("FILE");
  verb->add_option("PROJECT", a->project, "the project's file; a new one is begun when there is none")->required();
  add_stock(verb, a->stock);
  verb->add_option("--columns", a->columns, "columns across, of a new band")->check(CLI::Range(1, chart::most_columns));
  verb->add_option("--edge", a->edge, "beads along the edge, of a new band")->check(CLI::Range(1, chart::most_edge));
  verb->add_option("--colours", a->colours, "how many colours at the most")->check(CLI::Range(1, 1000));
  verb->add_option("--name", a->name, "the band's name; one of the same name is replaced. Without --columns and --edge the picture goes onto that band");
  verb->add_option("--face", a->face, "front or back: cover that face of the band and leave the rest");
  verb->add_option("--at", a->at, "the first step that the picture covers");
  verb->add_option("--steps", a->steps, "how many steps it covers")->check(CLI::Range(1, chart::most_edge));
  verb->add_option("--technique", a->technique, "how it is stitched; flat peyote if left out");
  verb->add_option("--bead", a->bead, "KIND-SIZE, such as cylinder-11");
  verb->add_flag("--open", a->open, "leave the ends open instead of joining them");
  verb->add_option("--fit", a->fit, "fill (cut what sticks out), contain (ground beside it) or stretch");
  verb->add_option("--crop", a->crop, "a part of the picture: LEFT,TOP,WIDTH,HEIGHT in pixels");
  verb->add_option("--turn", a->turn, "degrees to turn it clockwise")->check(CLI::Range(-360.0, 360.0));
  verb->add_flag("--mirror", a->mirror, "left and right change places");
  verb->add_flag("--detail", a->detail, "keep lines that are finer than a bead");
  verb->add_option("--ground", a->ground, "behind clear parts and beside the picture, #rrggbb");
  verb->add_option("--require", a->require, "a colour that must be used; may be repeated");
  verb->add_option("--forbid", a->forbid, "a colour that must not; may be repeated");
  verb->add_flag("--only-free", a->only_free, "no more of a bead than the stock has free");
  verb->add_option("--on-hand", a->on_hand, "COLOUR=BEADS: use no more than so many; may be repeated");
  verb->add_flag("--mix", a->mix, "mix beads so that the picture comes out nearer from afar");
  verb->add_flag("--smooth", a->smooth, "take out beads that stand alone, for at most 1 % of the difference");
  verb->add_option("--strength", a->strength, "of smoothing: how much ragged borders between colours are evened")->check(CLI::Range(0.0, 100.0));
  verb->add_flag("--table", a->table, "only show the error against the number of colours, 2 to 20");
  verb->add_flag("--quick", a->quick, "without proving that no choice is better");
  verb->add_flag("--json", a->json, "answer in JSON");
}

void declare_resize(Declarer& declarer) {
  auto a = std::make_shared<ResizeArguments>();
  CLI::App* verb = declarer.verb("resize", "the same design in other beads, forms or sizes, into a new project", a, resize_verb);
  verb->add_option("PROJECT", a->project, "the project's file; it stays as it is")->required();
  verb->add_option("-o,--output", a->output, "the new project's file")->required()->type_name("PROJECT");
  verb->add_option("--bead", a->beads, "the new bead, such as round-8, or OLD=NEW where there are several; may be repeated");
  verb->add_option("--form", a->forms, "the new form, KIND:SIZES, or ID=KIND:SIZES where there are several; may be repeated");
  verb->add_option("--flat", a->flat, "what bands without a form keep: size (in mm) or counts; BAND=size for one band");
  verb->add_option("--carry", a->carry, "how charts are carried over: resample, repeat or centre; BAND=repeat for one band");
  verb->add_option("--border", a->border, "the letter round a centred chart; the chart's most common one, if left out");
  verb->add_option("--columns", a->columns, "BAND=NUMBER: how many columns one band has");
  verb->add_option("--edge", a->edge, "BAND=NUMBER: how many beads along the edge one band has");
  verb->add_flag("--by-area", a->by_area, "resample by the covered area alone: lines one bead wide may go");
  verb->add_flag("--overwrite", a->overwrite, "write the new project over a file that is there");
  verb->add_flag("--brief", a->brief, "count the beads that changed instead of listing them");
  verb->add_flag("--json", a->json, "answer in JSON, every bead that changed in it");
}

void declare_series(Declarer& declarer) {
  auto a = std::make_shared<SeriesArguments>();
  CLI::App* verb = declarer.verb("series", "a set of bands from one template and a table", a, series_verb);
  verb->add_option("TABLE", a->table, "a CSV file, one band a line: name, front, back, front motif, back motif, letter, colour B …, note, copies")
      ->required()->type_name("FILE");
  verb->add_option("--template", a->source, "a project with the band that all are made from")->required()->type_name("PROJECT");
  verb->add_option("--band", a->band, "the template's band, where it has several");
  verb->add_option("-o,--output", a->output, "the project to write")->type_name("PROJECT");
  verb->add_option("--onto", a->onto, "a project to put the bands into; bands that were edited since are kept. Written itself without -o")->type_name("PROJECT");
  verb->add_option("--letter", a->letter, "the legend's letter that texts are drawn in");
  verb->add_option("--alphabet", a->alphabet, "five or three columns a letter");
  verb->add_option("--running", a->running, "text across the band, or down or up along it");
  verb->add_option("--front", a->front, "the front's steps, FIRST-LAST, instead of those seen from the front of its form");
  verb->add_option("--back", a->back, "the back's");
  verb->add_flag("--skip-bad", a->skip_bad, "make the good lines though others are bad");
  verb->add_flag("--replace-edited", a->replace_edited, "replace bands of these names though they were edited");
  verb->add_flag("--overwrite", a->overwrite, "write over a file that is there");
  verb->add_flag("--json", a->json, "answer in JSON");

  auto palette = std::make_shared<PaletteArguments>();
  verb = declarer.verb("palette", "whether a letter means the same bead in several projects", palette, palette_verb);
  verb->add_option("PROJECT", palette->projects, "two projects or more")->required()->expected(2, 1000);
  verb->add_flag("--json", palette->json, "answer in JSON");
}

void declare_words(Declarer& declarer) {
  auto a = std::make_shared<WordsArguments>();
  CLI::App* verb = declarer.verb("words", "write the word chart", a, words_verb);
  verb->add_option("PROJECT", a->project, "the project's file")->required();
  verb->add_option("--band", a->band, "one band instead of all");
  verb->add_option("-o,--output", a->output, "a file to write instead of printing")->type_name("FILE");
  verb->add_option("--language", a->language, "en, de, es, fr or ja");
  verb->add_option("--hand", a->hand, "right, or left: every row the other way");
  verb->add_flag("--fold", a->fold, "write repeats once: *(2)A, (1)B* × 6, and: work rows 5–12 twice");
  verb->add_flag("--json", a->json, "answer in JSON");
}

void declare_read(Declarer& declarer) {
  auto a = std::make_shared<ReadArguments>();
  CLI::App* verb = declarer.verb("read", "read word charts back into charts", a, read_verb);
  verb->add_option("WORDS", a->words,
                   "a file with word charts, alone or within other text; - for standard input")
      ->required()->type_name("FILE");
  verb->add_option("--against", a->against, "a project whose every chart must come out")->type_name("PROJECT");
  verb->add_option("--hand", a->hand, "left: the words are for the left hand, and make the charts in a mirror");
  verb->add_option("--columns", a->columns, "how many columns each band must have");
  verb->add_option("--rows", a->rows, "how many rows each band must have");
  verb->add_flag("--json", a->json, "answer in JSON");
}

void declare_supplies(Declarer& declarer) {
  auto a = std::make_shared<SuppliesArguments>();
  CLI::App* verb = declarer.verb("supplies", "counts, grams, packs, kits, cost and price", a, supplies_verb);
  verb->add_option("PROJECT", a->projects, "one project, or all those of a collection")->required();
  verb->add_option("--kits", a->kits, "for so many pieces of each");
  verb->add_flag("--price", a->price, "what a kit costs and may be sold for, line by line");
  verb->add_flag("--pick", a->pick, "what goes into each kit; beads are then bought by the bag");
  add_stock(verb, a->stock);
  verb->add_option("--size", a->size, "the wearer's size that things are strung for; the middle one, if left out");
  verb->add_option("--reserve", a->reserve, "promise what is on hand to a run of kits of this name");
  verb->add_option("--swap", a->swaps, "what another bead would save: LETTER=CODE of the stock, or another letter; may be repeated")->allow_extra_args(false);
  verb->add_option("--costing", a->costing, "a JSON file of your rates, as in a project's \"costing\"")->type_name("FILE");
  verb->add_option("--hour", a->hour, "an hour's pay, such as 18.50");
  verb->add_option("--beads-a-day", a->beads_a_day, "beads of flat peyote stitched in a day");
  verb->add_option("--wholesale", a->wholesale, "your own rule: so many times the cost");
  verb->add_option("--retail", a->retail, "your own rule: so many times the cost");
  verb->add_flag("--json", a->json, "answer in JSON");
}

void declare_string(Declarer& declarer) {
  auto a = std::make_shared<StringArguments>();
  CLI::App* verb = declarer.verb("string", "lay out what is strung, for a wearer's size", a, string_verb);
  verb->add_option("PROJECT", a->project, "the project's file")->required();
  verb->add_option("--layout", a->layout, "a file with a layout (docs/stringing.md) to keep in the project")->type_name("FILE");
  verb->add_option("--worn", a->worn, "what a size measures, kept in the project: wrist, neck or length");
  verb->add_option("--ease", a->ease, "added to the girth, kept in the project; 2 cm for a new strand");
  verb->add_option("--size", a->size, "one of the project's sizes instead of all");
  verb->add_option("--measure", a->measure, "a wearer's own measure instead of the sizes");
  verb->add_flag("--polygon", a->polygon, "make it longer by what rigid parts lose against the smooth formula");
  verb->add_option("--flat", a->flat, "a file for the first size laid flat: .svg, .png or .pdf")->type_name("FILE");
  verb->add_option("--as-worn", a->as_worn, "a file for the first size as worn")->type_name("FILE");
  verb->add_flag("--json", a->json, "answer in JSON");
}

void declare_project_verbs(Declarer& declarer) {
  auto thread = std::make_shared<ThreadArguments>();
  CLI::App* verb = declarer.verb("thread", "length, passes, where to join new thread", thread, thread_verb);
  verb->add_option("PROJECT", thread->project, "the project's file")->required();
  verb->add_flag("--json", thread->json, "answer in JSON");

  auto proof = std::make_shared<ProofArguments>();
  verb = declarer.verb("proof", "all checks of a project", proof, proof_verb);
  verb->add_option("PROJECT", proof->project, "the project's file")->required();
  add_stock(verb, proof->stock);
  verb->add_flag("--json", proof->json, "answer in JSON");
}

void declare_page_verbs(Declarer& declarer) {
  auto draw = std::make_shared<DrawArguments>();
  CLI::App* verb = declarer.verb("draw", "chart, band or step diagrams as SVG, PNG or PDF", draw, draw_verb);
  verb->add_option("PROJECT", draw->project, "the project's file")->required();
  verb->add_option("-o,--output", draw->output, "the file to write; its ending chooses SVG, PNG or PDF")
      ->required()->type_name("FILE");
  verb->add_option("--band", draw->band, "which band; the first, if left out");
  verb->add_option("--what", draw->what, "chart, band (true to size, in its colours), piece (all bands, as strung) or steps (diagrams of the needle's way)");
  verb->add_option("--pixels", draw->pixels, "how wide an SVG or a PNG is")->check(CLI::Range(16, 20000));
  verb->add_option("--language", draw->language, "of what is written in it and of its description: en, de, es, fr or ja");
  verb->add_flag("--alt", draw->alt, "print a description for whoever does not see the picture; SVG and PNG also carry it");
  verb->add_option("--cell", draw->cell, "the width of a chart's column");
  verb->add_option("--dpi", draw->dots_per_inch, "dots per inch of a PNG")->check(CLI::Range(10.0, 1200.0));
  verb->add_option("--seen", draw->seen, "as colour-blind eyes see it: protan, deutan or tritan");
  verb->add_option("--signs", draw->signs, "in a chart's cells: none, letters, or symbols (black on white, to print without colour)");

  auto booklet = std::make_shared<BookletArguments>();
  verb = declarer.verb("booklet", "the printed instructions as a PDF", booklet, booklet_verb);
  verb->add_option("PROJECT", booklet->projects, "one project or several")->required();
  verb->add_option("-o,--output", booklet->output, "the file to write, for one project")->type_name("FILE");
  verb->add_option("--folder", booklet->folder, "the folder for NAME.pdf of each project")->type_name("FOLDER");
  verb->add_option("--paper", booklet->paper, "a4 or letter");
  verb->add_option("--signs", booklet->signs, "in the charts' cells: none, letters, or symbols (black on white, to print without colour)");
  verb->add_option("--language", booklet->language, "of all fixed texts: en, de, es, fr or ja");
  verb->add_option("--hand", booklet->hand, "right, or left: every row goes the other way");
  verb->add_flag("--no-steps", booklet->no_steps, "no step diagrams");
  verb->add_option("--cover", booklet->cover, "a picture for the cover (PNG, JPEG, WebP, TIFF): a render or a photograph")->type_name("FILE");

  auto along = std::make_shared<AlongArguments>();
  verb = declarer.verb("along", "the stitch-along page: one HTML file to follow row by row on a telephone, without a network", along, along_verb);
  verb->add_option("PROJECT", along->projects, "one project or several")->required();
  verb->add_option("-o,--output", along->output, "the file to write, for one project")->type_name("FILE");
  verb->add_option("--folder", along->folder, "the folder for NAME.html of each project")->type_name("FOLDER");
  verb->add_option("--language", along->language, "of all fixed texts: en, de, es, fr or ja");
}

void declare_labels(Declarer& declarer) {
  auto a = std::make_shared<LabelsArguments>();
  CLI::App* verb = declarer.verb("labels", "labels for kit bags, pick list, packing slip and price cards as a PDF", a, labels_verb);
  verb->add_option("PROJECT", a->project, "the project's file")->required();
  verb->add_option("-o,--output", a->output, "the file to write")->required()->type_name("FILE");
  verb->add_option("--what", a->what, "labels, pick-list, packing-slip or price-cards");
  std::string sheets;
  for (const page::LabelSheet& sheet : page::label_sheets()) sheets += (sheets.empty() ? "" : ", ") + std::string(sheet.name);
  verb->add_option("--sheet", a->sheet, "paper and size of the labels in millimetres: " + sheets);
  verb->add_option("--first", a->first, "the first label of the sheet that is still there")->check(CLI::Range(1, 200));
  verb->add_option("--kits", a->kits, "how many kits")->check(CLI::Range(1, page::most_kits_printed));
  verb->add_option("--size", a->size, "the wearer's size that is packed");
  verb->add_option("--paper", a->paper, "of lists and cards: a4 or letter");
  verb->add_option("--signs", a->signs, "letters, or symbols for a printer without colour");
  verb->add_option("--language", a->language, "en, de, es, fr or ja");
  verb->add_option("--price", a->price, "as cards print it; reckoned by the project's rule if left out");
}

void declare_render(Declarer& declarer) {
  auto a = std::make_shared<RenderArguments>();
  CLI::App* verb = declarer.verb("render", "the catalogue picture of a piece, ray traced (docs/rendering.md)", a, render_verb);
  verb->add_option("PROJECT", a->project, "the project's file")->required();
  verb->add_option("-o,--output", a->output, "the PNG to write")->required()->type_name("FILE");
  verb->add_option("--band", a->request.band, "one band; the whole piece, if left out");
  verb->add_option("--wearer", a->request.wearer, "the wearer's size that things are strung for; the middle one, if left out");
  verb->add_option("--view", a->request.view, "table (three-quarter view), flat (from above) or worn");
  verb->add_option("--light", a->request.light, "tent (soft from all sides) or window");
  verb->add_option("--ground", a->request.ground, "paper, linen or none");
  verb->add_option("--size", a->request.size, "WIDTHxHEIGHT in pixels, a4 (a booklet's cover at 200 dpi) or square (1200 x 1200)");
  verb->add_option("--samples", a->request.samples, "a pixel, on average: more is slower and cleaner")->check(CLI::Range(1, render::most_samples));
  verb->add_option("--threads", a->request.threads, "as many as the machine runs at once, if left out")->check(CLI::Range(0, render::most_threads));
  verb->add_option("--seed", a->request.seed, "another one scatters beads and samples otherwise")->check(CLI::Range(0, most_seed));
  verb->add_option("--frames", a->frames, "a turntable of so many pictures: FILE-001.png and on")->check(CLI::Range(1, 999));
  verb->add_option("--turn", a->request.turn, "degrees that the piece is turned on the table, counterclockwise");
  verb->add_option("--blur", a->request.blur, "depth of field: 0 keeps all sharp, 1 is usual")->check(CLI::Range(0.0, most_blur));
  verb->add_option("--exposure", a->request.exposure, "stops; 0 shows white paper white")->check(CLI::Range(-most_stops, most_stops));
  verb->add_option("--ground-colour", a->request.ground_colour, "#rrggbb");
  verb->add_option("--thread-colour", a->request.thread_colour, "#rrggbb; a little darker than the beads, if left out");
  verb->add_option("--cord-colour", a->request.cord_colour, "#rrggbb");
  verb->add_option("--form-colour", a->request.form_colour, "#rrggbb that 5 mm of the forms' glass let through");
  verb->add_option("--stone", a->request.stone, "that bezels hold, as for fit: stone:14,girdle=0.5,dome=2.2,back=2.3; a cabochon that fits, if left out");
  verb->add_option("--stone-colour", a->request.stone_colour, "#rrggbb");
  verb->add_flag("--no-filter", a->request.no_filter, "leave the noise");
  verb->add_flag("--preview", a->preview, "only the first quick picture");
}

void declare_studio(Declarer& declarer) {
  auto a = std::make_shared<StudioArguments>();
  CLI::App* verb = declarer.verb("studio", "serve the studio's page on this machine", a, studio_verb);
  verb->add_option("PROJECT", a->project, "a project to open; the others of its folder can be opened too");
  verb->add_option("--projects", a->projects, "the folder of projects; ~/.local/share/evencount/projects if left out")->type_name("FOLDER");
  verb->add_option("--studio-files", a->page_files, "the folder of the built page")->type_name("FOLDER");
  verb->add_option("--port", a->port, "the port; a free one if left out")->check(CLI::Range(0, 65535));
  verb->add_flag("--open", a->open, "show it in your browser");
  verb->add_flag("--lan", a->lan, "also for other devices in this network, which must give a code that is shown here");
}

void declare_doctor(Declarer& declarer) {
  auto a = std::make_shared<DoctorArguments>();
  CLI::App* verb = declarer.verb("doctor", "whether this machine has what is needed, and what to do where it hasn't", a, doctor_verb);
  verb->add_option("--projects", a->projects, "the folder of projects that is tried")->type_name("FOLDER");
  verb->add_option("--studio-files", a->page_files, "the folder of the built page")->type_name("FOLDER");
  verb->add_flag("--json", a->json, "answer in JSON");
}

/// Hidden: what the build makes the manual page and the completions of. Must come last, as it describes what is declared.
void declare_describe(CLI::App& app, const Console& console, Action& chosen) {
  using namespace self;
  using Writer = std::string (*)(const Command&);
  static const std::map<std::string, Writer> writers{
      {"man", [](const Command& program) { return man_page(program, EVENCOUNT_VERSION); }},
      {"bash", bash_completion},
      {"zsh", zsh_completion},
      {"fish", fish_completion},
  };
  auto what = std::make_shared<std::string>();
  CLI::App* verb = app.add_subcommand("describe", "print the manual page (man) or a shell's completions (bash, zsh, fish)")->group("");
  verb->add_option("WHAT", *what, "man, bash, zsh or fish")->required()->check(CLI::IsMember({"man", "bash", "zsh", "fish"}));
  verb->callback([&app, &console, &chosen, what] {
    chosen = [&app, &console, what] {
      console.out << writers.at(*what)(command_tree(app));
      return exit_done;
    };
  });
}

}  // namespace

int run_command_line(const std::vector<std::string>& arguments, const Console& console) {
  CLI::App app("Design and publish bead-woven bands: fit, charts, words, thread, supplies, booklets.",
               "evencount");
  app.set_version_flag("--version", EVENCOUNT_VERSION);
  app.require_subcommand(1);
  app.footer(
      "Lengths are millimetres unless written with a unit (17mm, 0.67in).\n"
      "Exit status: 0 done, 1 the work has findings, 2 bad usage or bad input, 3 a file or system failure.");
  Action chosen;
  Declarer declarer(app, console, chosen);
  declare_fit(declarer);
  declare_band(declarer);
  declare_picture(declarer);
  declare_resize(declarer);
  declare_series(declarer);
  declare_words(declarer);
  declare_read(declarer);
  declare_string(declarer);
  declare_supplies(declarer);
  declare_project_verbs(declarer);
  declare_page_verbs(declarer);
  declare_render(declarer);
  declare_stock(app, console, chosen);
  declare_labels(declarer);
  declare_studio(declarer);
  declare_doctor(declarer);
  declare_describe(app, console, chosen);
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::Success& asked) {  // --help and --version
    app.exit(asked, console.out, console.err);
    return exit_done;
  } catch (const CLI::ParseError& error) {
    app.exit(error, console.out, console.err);
    return exit_bad_input;
  }
  return chosen();
}

}  // namespace evencount::app
