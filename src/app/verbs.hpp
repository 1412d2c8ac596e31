#pragma once
/// The verbs: what each is asked for and what it does. The command line and the loopback server share them.
///
/// Every verb prints its result on `console.out`, messages on `console.err`, and returns the exit status.

#include <optional>
#include <string>
#include <vector>

#include "app/console.hpp"
#include "app/render_request.hpp"
#include "app/stock_source.hpp"

namespace evencount::app {

struct FitArguments {
  std::string form;    ///< notation; outline:FILE.csv reads the file; stone:… asks for a bezel
  std::string bead;    ///< id; may be empty with `table`
  std::string thread;  ///< id; empty for the default
  std::string gauge;   ///< COLUMNxEDGE; empty for the default
  std::string swatch;  ///< "12 columns = 16.1 mm, 20 along the edge = 33.4 mm"
  std::vector<std::string> finished;  ///< "lens:17x5x9 took 24, snug"; combined with the swatch or gauge
  std::string from;                   ///< a project whose saved gauge for the bead is used
  std::string keep;                   ///< a project to keep the gauge in
  std::string hand;                   ///< whose gauge it is
  std::string use = "fixed";
  std::string stitch = "peyote";  ///< peyote, square or brick
  std::string parity;             ///< even, odd or any; empty for what the stitch works in
  std::optional<int> columns;
  int together = 1;      ///< so many forms side by side under one band
  std::string reveal;    ///< least margin left bare on each side
  std::string cord;      ///< diameter of the cord, for what it passes
  std::string draw_in;   ///< the bead of a bezel's drawn-in rounds
  bool ring = false;     ///< beads strung round the form instead of a zipped band
  bool bridge = false;   ///< take an outline in spite of a dent
  bool table = false;    ///< every bead size
  bool explain = false;  ///< in sentences
  std::string drawing;   ///< a file for the section
  bool json = false;
};
int fit_verb(const FitArguments& arguments, const Console& console);

struct BandArguments {
  std::string project;
  std::string name;
  std::string form;  ///< notation; empty for a flat piece
  std::string bead = "cylinder-11";
  std::string use = "fixed";
  std::string gauge;
  std::optional<int> columns, edge, rows;
  std::string technique;             ///< an id; empty for flat peyote, even or odd count
  int begin_at = 0;                  ///< of a bezel
  bool open = false;                 ///< neither zipped nor sewn
  std::vector<std::string> colours;  ///< LETTER=#rrggbb or LETTER=#rrggbb:NAME
  std::string fill = "A";
  std::string motif;            ///< a file of letters, one line a step
  std::optional<int> motif_at;  ///< the step of the motif's first line
  std::string words;            ///< a file with a word chart
  std::string text;             ///< lettering, its lines parted by \n
  std::string text_letter = "B";      ///< the legend's letter it is drawn in
  std::string alphabet = "five";      ///< five or three columns
  std::string font;                   ///< the family of an installed font, instead of an alphabet
  std::string capital_height;         ///< of the font's capitals
  bool bold = false, italic = false;  ///< of the font
  std::string running = "across";     ///< across, down or up
  std::optional<int> text_steps;      ///< the window's steps, from --at on; to the end if left out
  std::string stamp;                  ///< one of the project's bands, whose drawing is stamped on this one
  std::string stamp_part;             ///< COLUMN,STEP,COLUMNS,STEPS of it; all of it if left out
  std::string stamp_leave;            ///< a letter that is left out, its ground say
  int at_column = 0;                  ///< where the stamp's first column comes to lie
};
int band_verb(const BandArguments& arguments, const Console& console);

struct PictureArguments {
  std::string image;
  std::string project;
  StockSource stock;
  bool only_free = false;  ///< no more of a bead than is free
  int colours = 8;
  std::optional<int> columns, edge;  ///< of a new band; both left out for one of the project's
  std::string name;
  std::string face;                ///< front or back: the picture covers that face of the band
  std::optional<int> at, steps;    ///< or so many steps from that one on
  std::string technique;  ///< an id; empty for flat peyote
  std::string bead = "cylinder-11";
  bool open = false;
  std::string fit = "fill";
  std::string crop;  ///< LEFT,TOP,WIDTH,HEIGHT in pixels
  double turn = 0;   ///< degrees, clockwise
  bool mirror = false, detail = false;
  std::string ground = "#ffffff";
  std::vector<std::string> require, forbid;  ///< names or #rrggbb of the stock
  std::vector<std::string> on_hand;          ///< COLOUR=BEADS: no more than that
  bool mix = false, smooth = false;
  double strength = 0.25;  ///< of smoothing
  bool table = false;      ///< the error against the number of colours, and nothing is saved
  bool quick = false;      ///< without the proof
  bool json = false;
};
int picture_verb(const PictureArguments& arguments, const Console& console);

struct WordsArguments {
  std::string project;
  std::string band;  ///< empty for all
  std::string output;
  std::string language = "en";
  std::string hand = "right";  ///< right or left
  bool fold = false;  ///< repeats within rows and of rows
  bool json = false;
};
int words_verb(const WordsArguments& arguments, const Console& console);

struct ReadArguments {
  std::string words;    ///< a file, or "-"
  std::string against;  ///< a project whose charts must come out; empty for none
  std::optional<int> columns, rows;
  bool json = false;
  std::string hand = "right";  ///< that the words are for
};
int read_verb(const ReadArguments& arguments, const Console& console);

struct ThreadArguments {
  std::string project;
  bool json = false;
};
int thread_verb(const ThreadArguments& arguments, const Console& console);

struct StringArguments {
  std::string project;
  std::string layout;   ///< a file with a layout to keep in the project
  std::string worn;     ///< wrist, neck or length, kept too
  std::string ease;     ///< kept too
  std::string size;     ///< one of its sizes; empty for all
  std::string measure;  ///< a wearer's own instead
  bool polygon = false; ///< longer by what rigid parts lose against the formula
  std::string flat;     ///< a file for the layout laid flat
  std::string as_worn;  ///< a file for it as worn
  bool json = false;
};
int string_verb(const StringArguments& arguments, const Console& console);

struct SuppliesArguments {
  std::vector<std::string> projects;
  int kits = 1;
  bool price = false;              ///< the cost sheet
  bool pick = false;               ///< the pick list; beads are then bought by the bag
  StockSource stock;               ///< what is on hand and on offer
  std::string size;                ///< the wearer's that things are strung for; empty for the middle one
  std::string reserve;             ///< a run of kits: what is on hand is promised to it
  std::vector<std::string> swaps;  ///< LETTER=CODE
  std::string costing;             ///< a file of rates, as a project's `costing`
  std::string hour;                ///< an hour's pay, such as 18.50
  std::optional<int> beads_a_day;
  std::string wholesale, retail;   ///< factors of the designer's own rule, such as 2.2
  bool json = false;
};
int supplies_verb(const SuppliesArguments& arguments, const Console& console);

struct ResizeArguments {
  std::string project;
  std::string output;
  std::vector<std::string> beads;          ///< NEW, or ID=NEW
  std::vector<std::string> forms;          ///< NOTATION, or ID=NOTATION
  std::vector<std::string> flat;           ///< size or counts, or BAND=…
  std::vector<std::string> carry;          ///< resample, repeat or centre, or BAND=…
  std::vector<std::string> columns, edge;  ///< BAND=NUMBER
  std::string border;                      ///< a letter
  bool by_area = false;                    ///< lines one bead wide may go
  bool overwrite = false;
  bool brief = false;  ///< count the beads that changed instead of listing them
  bool json = false;
};
int resize_verb(const ResizeArguments& arguments, const Console& console);

struct SeriesArguments {
  std::string table;
  std::string source;  ///< the template's project
  std::string band;    ///< of the template; empty for the only one
  std::string onto;    ///< a project that the bands are put into
  std::string output;  ///< empty: `onto` itself
  std::string letter = "B";
  std::string alphabet = "five", running = "across";
  std::string front, back;  ///< steps, FIRST-LAST
  bool skip_bad = false;
  bool replace_edited = false;
  bool overwrite = false;
  bool json = false;
};
int series_verb(const SeriesArguments& arguments, const Console& console);

struct PaletteArguments {
  std::vector<std::string> projects;
  bool json = false;
};
int palette_verb(const PaletteArguments& arguments, const Console& console);

struct ProofArguments {
  std::string project;
  StockSource stock;  ///< whose beads findings may recommend
  bool json = false;
};
int proof_verb(const ProofArguments& arguments, const Console& console);

struct DrawArguments {
  std::string project;
  std::string band;  ///< empty for the first
  std::string what = "chart";  ///< chart, band, steps or piece
  std::string language = "en";
  std::optional<int> pixels;  ///< the picture's width in pixels, of an SVG or a PNG
  bool alt = false;           ///< print the picture's description
  std::string output;
  std::string cell = "4mm";
  std::string seen;  ///< protan, deutan or tritan: as those eyes see it
  double dots_per_inch = 150;
  std::string signs = "none";  ///< none, letters or symbols, in a chart's cells
};
int draw_verb(const DrawArguments& arguments, const Console& console);

struct RenderArguments {
  std::string project;
  std::string output;  ///< a .png; of a turntable its numbers go before the ending
  RenderRequest request;
  int frames = 1;        ///< of a turntable
  bool preview = false;  ///< only the first quick picture
};
int render_verb(const RenderArguments& arguments, const Console& console);

struct BookletArguments {
  std::vector<std::string> projects;
  std::string output;  ///< for a single project
  std::string folder;  ///< for any number; one NAME.pdf each
  std::string paper = "a4";
  std::string signs = "letters";  ///< as in DrawArguments
  std::string language = "en";    ///< of the fixed texts
  std::string hand = "right";     ///< right or left
  bool no_steps = false;     ///< no step diagrams
  std::string cover;         ///< a picture's file; empty: the bands as they are drawn
};
int booklet_verb(const BookletArguments& arguments, const Console& console);

struct AlongArguments {
  std::vector<std::string> projects;
  std::string output;  ///< for a single project
  std::string folder;  ///< for any number; one NAME.html each
  std::string language = "en";
};
int along_verb(const AlongArguments& arguments, const Console& console);

struct LabelsArguments {
  std::string project;
  std::string output;
  std::string what = "labels";  ///< labels, pick-list, packing-slip or price-cards
  std::string sheet = "a4-63.5x38.1";
  int first = 1;  ///< the first label of the sheet that is still there
  int kits = 1;
  std::string size;  ///< the wearer's
  std::string paper = "a4";
  std::string signs = "letters";
  std::string language = "en";
  std::string price;  ///< on cards; reckoned where left out
};
int labels_verb(const LabelsArguments& arguments, const Console& console);

struct StudioArguments {
  std::string project;     ///< a file to open
  std::string projects;    ///< the folder of projects
  std::string page_files;  ///< the folder of the built page
  int port = 0;            ///< a free one
  bool lan = false;
  bool open = false;       ///< in this user's browser
};
/// Serves until it is told to end.
int studio_verb(const StudioArguments& arguments, const Console& console);

/// Looks whether this machine has what is needed; findings where something is wrong.
struct DoctorArguments {
  std::string projects;    ///< the folder of projects
  std::string page_files;  ///< the folder of the built page
  bool json = false;
};
int doctor_verb(const DoctorArguments& arguments, const Console& console);

}  // namespace evencount::app
