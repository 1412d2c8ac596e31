#pragma once
/// Changes of a project as a person means them: "fill this with B", "a band round the carrier bead".
///
/// An operation is a JSON object, {"do": NAME, …}; fields that it has not are refused. Cells are [column, step], both from 0. A bead is
/// the letter of a legend's entry; "." is an empty cell. `band` is a band's position, from 0. What may be left out is in brackets.
///
///   drawing on a band                                      chart/edit.hpp says what each does
///   set              band cells letter [mirror]            cells: a list; letter "." leaves them empty
///   line             band from to letter [mirror]
///   rectangle        band from to letter [filled mirror]   ellipse likewise
///   fill             band at letter [mirror]               all of one bead that hangs together
///   replace_letter   from to [band]                        in all bands if none is given
///   flip             band symmetry                         mirror_across, mirror_along, half_turn
///   shift            band [steps columns]                  round a ring, round a tube: one of them
///   insert_steps     band at count letter                  insert_columns likewise
///   delete_steps     band at count                         delete_columns likewise
///   stamp            band at from_band from to [leave mirror]      a rectangle of any band; `leave` is a letter that is left out
///   press            band at lines shift                   a piece given as lines of runs ("2A 1B"), from a column that is shifted so
///   repeat           band from to
///   text             band text letter [at columns steps alphabet running]    alphabet five or three; running across, down or up
///   mirror: a list of symmetries that the stroke is drawn in as well, where the lattice has them
///
///   the legend                                             an entry is an object as in the project's JSON
///   add_legend_entry      entry [at]                       without a letter it gets the first free one; a known bead size comes with it
///   change_legend_entry   letter entry                     the fields given; null takes one away
///   remove_legend_entry   letter [instead]                 `instead` takes its place; needed where it is drawn with
///   reorder_legend        letters                          all of them; the drawing stays as it is
///
///   bands
///   add_band        [name form bead technique closure use gauge begin_at columns edge rows letter at]     what fits the form, as `evencount band`
///   remove_band     band
///   duplicate_band  band [name]
///   move_band       band to
///   change_band     band [name technique closure use gauge begin_at copies note form bead]     null takes form or gauge away
///   resize_band     band columns edge [carry letter]       carry: centre (new beads of that letter), repeat or resample
///   resize          [beads forms flat carry border]        all bands in other beads or round other forms, as `evencount resize`:
///                                                          beads and forms are objects, of old ids to new ids and shapes
///
///   forms
///   add_form        shape [id name points]
///   change_form     id [shape name points]
///   remove_form     id                                     that no band goes round and that isn't strung
///
///   the strand                                             `item` and `part` are written in the language of strand/layout.hpp
///   begin_strand       [worn]                              the bands on elastic, as strand_start.hpp says
///   change_strand      [layout worn ease_mm lean tolerance_mm sizes]      as in the project's JSON; null takes one away
///   change_cords       [cords kind diameter_mm]
///   close_strand       [with part]                         without a name the ends are knotted to each other
///   add_element        item [at part]                      `part` is a new one that the item names: "bead stop 6mm"
///   change_element     at item [part]                      runs of its name change with it
///   move_element       from to                             `to` is its place when it has been taken out
///   duplicate_element  at
///   remove_element     at                                  brackets that nothing is left in go too
///   places are lists of positions, from the outermost list inwards: [3], or [3, 0] for the first in the brackets of the fourth
///   A band that gets another name (change_band) keeps its place on the strand; one that is removed is taken off it.
///
///   the project
///   change_texts    [title subtitle designer summary finished_size terms]
///   change_thread   thread                                 an object as in the project's JSON; the fields given
///   set_allowance   allowance
///   set_findings    findings                               set_tools, set_assembly, set_beads, set_gauges, set_costing and set_strand likewise
///   replace         project [sentence]                     a whole project, what other tools made of it
///   several         operations [sentence]                  one after the other, as one change
///
/// Properties (tests/project/operation_test.cpp):
///  (1) every project that an operation gives is one that parse_project(to_json(p)) gives back
///  (2) a stroke mirrored in a symmetry, on a chart that has it, leaves the chart with that symmetry
///  (3) a drawing operation changes nothing but cells of its band
///  (4) whatever an operation changes, its patch's inverse undoes
///  (5) operations on the strand's list leave a layout that can be read, and its comments before the list (operations_strand_test.cpp)

#include <string>
#include <string_view>
#include <vector>

#include "project/project.hpp"

namespace evencount::project {

struct Applied {
  Project project;
  std::string sentence;  ///< what was done, in the past: "filled 12 beads with B on Moon"
  bool operator==(const Applied&) const = default;
};

/// How many `several` may hold; none of them may be `several` again.
inline constexpr std::size_t most_operations = 1'000;

/// `where` of a problem is a pointer into the operation, or into the project's JSON where what came of it is at fault.
/// Errors: bad_json, missing_field, wrong_type, out_of_range, unknown_name (an operation, a field, a letter, a name), those of the
/// engine's functions.
[[nodiscard]] Result<Applied> apply_operation(const Project& project, std::string_view operation);

/// The names, in the order above.
[[nodiscard]] std::vector<std::string_view> operation_names();

}  // namespace evencount::project
