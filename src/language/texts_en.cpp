#include "language/texts.hpp"

namespace evencount::language {

constexpr Texts english_texts_table{
    // The word chart
    .word_chart = "Word chart: {name}",
    .facts = "{technique}: {across}, {along}, {rows}, {closure}.",
    .label = "{row} ({side}){ends}",
    .label_end = "{label}:",
    .side_left = "L",
    .side_right = "R",
    .side_down = "D",
    .side_up = "U",
    .label_part = ", {part}",
    .begins_increase = "increase at the beginning",
    .begins_decrease = "decrease at the beginning",
    .ends_increase = "increase at the end",
    .ends_decrease = "decrease at the end",
    .on_the_back = "on the back",
    .decrease_sign = "dec",
    .row_range = "Rows {first}–{last}",
    .round_range = "Rounds {first}–{last}",
    .row_one = "Row {first}",
    .round_one = "Round {first}",
    .work_rows = "work {rows} {times}",
    .again_row = "row {first}",
    .again_rows = "rows {first}–{last}",
    .again_round = "round {first}",
    .again_rounds = "rounds {first}–{last}",
    .times = "{n} times",
    .times_once = "once",
    .times_twice = "twice",
    // The sizes in the facts
    .columns_counted = "{n} {n|column|columns}",
    .edge_counted = "{n} {n|bead|beads} along the edge",
    .units_across = "{n} {n|unit|units} across",
    .units_along = "{n} {n|unit|units} along",
    .rows_counted = "{n} {n|row|rows}",
    .rounds_counted = "{n} {n|round|rounds}",
    .closure_open = "open",
    .closure_zip = "zipped",
    .closure_sew = "sewn together",
    .closure_round = "worked in the round",
    // The techniques
    .peyote_even = "flat peyote, even count",
    .peyote_odd = "flat peyote, odd count",
    .peyote_odd_figure_eight = "flat peyote, odd count with figure-8 turns",
    .two_drop_even = "two-drop peyote, even count",
    .two_drop_odd = "two-drop peyote, odd count",
    .peyote_shaped = "shaped flat peyote",
    .tubular_even = "tubular peyote, even count",
    .tubular_odd = "tubular peyote, odd count",
    .peyote_bezel = "peyote bezel",
    .brick_stitch = "brick stitch",
    .square_stitch = "square stitch",
    .loom_work = "loom work",
    .herringbone = "flat herringbone",
    .right_angle = "right-angle weave",
    .two_drop_note = "Work with two beads as one: every stitch strings two and passes two.",
    .shaped_note =
        "Decrease at the beginning of a row: catch the thread along the edge with a loop, or where there is "
        "none come back past the outside of the last bead, so that the row begins one bead further in. "
        "Increase at the beginning: string the new bead and go back through it from its outer side, so that "
        "the thread lies round it, then through the last bead of the row before.",
    .step_up_note =
        "String rounds 1 and 2, draw them into a ring and pass through the first bead again. At the end of "
        "every later round step up: pass through the first bead of the round just made.",
    .spiral_note =
        "String rounds 1 and 2 and draw them into a ring with the first bead of round 3. The rounds run into "
        "each other in a spiral, so there is no step-up; they are numbered only to keep count.",
    .bezel_note =
        "String rounds 1 and 2, draw them into a ring and pass through the first bead again. At the end of "
        "every later round step up: pass through the first bead of the round just made. At dec string no "
        "bead and pass through the next two. Before the first round on the back pass down through the beads "
        "to round 1 and set the stone in with its front up.",
    .brick_note =
        "Row 1 is a ladder, its beads side by side and sewn to each other twice. Every other row begins with "
        "two beads and hangs on the threads between the beads of the row before.",
    .square_note =
        "After row 1 every bead is sewn to the bead below it: string it, go through the bead below the other "
        "way, then through the new bead again.",
    .loom_note =
        "Put on one warp thread more than there are columns, and double the two outer ones. String a whole "
        "row, lay it under the warps with one bead in each gap, and pass back through all of its beads above "
        "the warps.",
    .herringbone_note =
        "Row 1 is a ladder of beads on end. Each later stitch strings two beads: go down through the bead "
        "below the second and up through the next one. At the end of a row come up outside the bead below, "
        "through the last bead strung.",
    .right_angle_note =
        "The needle goes round each unit of four beads, turning at every corner, never straight across one. "
        "Close the unit by passing the bead it shares with the unit before once more, then go on round to "
        "where the next one begins.",
    // The ends and the turns
    .closing_sewn =
        "Bring the ends together and sew them side by side: column by column, go through the end bead of one "
        "side, back through its neighbour on the other, and through the first again, then on to the next "
        "column.",
    .closing_zipped =
        "Bring the ends together so that the beads of row {low} and of row {high} interlock, and zip them: "
        "pass through {n} beads {way}, one from each end in turn, and draw the thread tight. Then come back "
        "once through the same beads.",
    .row_ends = "Row {n} ends",
    .every_second_row_ends = "Row {first} and every second row after it, to row {last}, end",
    .rows_end = "Rows {list} end",
    .figure_eight_note =
        "{rows_end} with a figure-8 turn: go down through the beads below the last one, turn, and come back "
        "up through it from the other side, so that it is held.",
    .loop_note =
        "{rows_end} with a loop: slip the needle under the thread that lies along the edge, then pass back "
        "through the last bead.",
    .to_the_left = "to the left",
    .to_the_right = "to the right",
    .downwards = "downwards",
    .upwards = "upwards",
    // Lists and joins
    .list_comma = ", ",
    .list_and = " and ",
    .clause_and = " and ",
    // Rows by their names within a sentence
    .the_row = "row {first}",
    .the_rows = "rows {first} and {last}",
    .the_round = "round {first}",
    .the_rounds = "rounds {first} and {last}",
    .of_row = "of row {first}",
    .of_rows = "of rows {first} and {last}",
    .of_round = "of round {first}",
    .of_rounds = "of rounds {first} and {last}",
    .last_beads = "last beads",
    .first_beads = "first beads",
    // What the needle does; {last} is whether nothing follows in the sentence
    .a_bead = "a bead",
    .some_beads = "{n} beads",
    .string_beads = "string {beads}{marks}{outer}",
    .go_through = "go through {beads}{marks}{outer}",
    .go_through_of = "go through {beads} {of_row}{marks}{outer}",
    .go_through_again = "go through {before} again{marks}{outer}",
    .go_under = "go under the thread between two beads {of_row}",
    .turn = "turn",
    .turn_loop = "go round the thread that lies along the edge",
    .turn_outside = "take the thread round the outside of the end bead",
    .turn_warp = "go round the outer warp",
    .from_outside = " from its outer side, so that the thread runs round it",
    .marks = " {now}",
    .marks_cut = " (the first {n} are {now})",
    .marks_again = " {now}",
    .marks_range = "{first} to {last}",
    // The moments that are drawn
    .moment_start = "The start",
    .moment_start_ladder = "The start, a ladder",
    .moment_start_text = "Leave a tail. {told}.",
    .moment_go_on_until = " Go on until {row} has {beads}.",
    .moment_strung_row = "{told} for {row} and leave a tail.",
    .moment_strung_rows = "{told} and leave a tail. They become {row}.",
    .moment_press_up = " Press them up between the warps from below, one in each gap.",
    .moment_weft = "Back over the warps",
    .moment_weft_text = "{told}, over the warps this time, so that these lie between two threads.",
    .moment_ring = "Closing the ring",
    .moment_ring_text =
        "{told}: that draws the {beads} {of_row} into a ring. The pictures show it laid flat.",
    .moment_into_row = "Into {row}",
    .moment_into_row_text = "{row} goes {way}. {told}.",
    .moment_wider_beginning = "Wider at the beginning",
    .moment_wider_end = "Wider at the end",
    .moment_narrower_beginning = "Narrower at the beginning",
    .moment_begins_out = "{row} begins further out. {told}.",
    .moment_ends_out = "{row} ends further out. {told}.",
    .moment_ends_out_held_later = "{row} ends further out. {told}; the next row will hold it.",
    .moment_begins_in = "{row} begins further in. {told}.",
    .moment_left_out = "A bead left out",
    .moment_left_out_text = "{told}: no bead is strung in the gap. Draw the thread tight.",
    .moment_loop = "A loop",
    .moment_figure_eight = "A figure-8 turn",
    .moment_end_bead = "Nothing lies beyond the last bead {of_row} to hold it. {told}.",
    .moment_back_to = "Back to {row}",
    .moment_end_of = "The end {of_row}",
    .moment_row_end_text = "{told}.",
    .moment_row_end_ready = "{told}: the needle stands where {row} begins.",
    .moment_stitch = "A stitch {of_row}",
    .moment_stitch_text = "{told}.",
    .moment_stitch_go_on = " Go on in the same way: {row} takes {beads}.",
    .moment_step_up = "The step up",
    .moment_step_up_text =
        "{told}: the needle comes out of the first bead {of_row} again, ready for the next round.",
    .moment_new_thread = "A new thread",
    .moment_new_thread_text =
        "Leave the old thread as a tail. Bring the new one in where the old one ran, through {beads} "
        "{marks}, and go on with {row}: {told}.",
    .moment_zip = "The zip",
    .moment_zip_text =
        "Bring {last_end} to {first_end} so that their beads interlock, and take one from each end in turn. "
        "{told}; draw the thread tight.",
    .moment_sew = "The sewn join",
    .moment_sew_text =
        "Bring the two ends together so that their beads lie side by side. {told}. Go on so to the other "
        "edge.",
    .moment_finish = "The end of the thread",
    .moment_finish_text =
        "The needle has come through the last {n|bead|beads} {marks}. Weave the end on through a few beads "
        "the way the thread runs, and cut it; the tail of the start goes in likewise.",
    .picture_new = "new",
    .picture_tail = "tail",
    .picture_old = "old",
    // Numbers and measures
    .both_units = "{mm} mm ({in} in)",
    .metres = "{n} m",
    .centimetres = "{n} cm",
    .grams = "{n} g",
    .date = "{day} {month} {year}",
    .first_of_month = "1 {month} {year}",
    .months = "January February March April May June July August September October November December",
    .beads_counted = "{n} {n|bead|beads}",
    .bands_counted = "{n} {n|band|bands}",
    .colours_counted = "{n} {n|colour|colours}",
    .wide_and_long = "{across} wide, {along} long",
    .wide_and_round = "{across} wide, {along} round",
    .round_and_long = "{across} round, {along} long",
    .cylinder_bead = "{size}/0 cylinder bead",
    .round_bead = "{size}/0 round bead",
    .thread_braided_6lb = "6 lb braided beading thread",
    .thread_braided_4lb = "4 lb braided beading thread",
    .thread_nylon_d = "nylon beading thread, size D",
    .thread_nylon_b = "nylon beading thread, size B",
    .needle_tool = "beading needle, size {size}",
    // The cover and what is needed
    .contents = "Contents",
    .page_number = "{title} · {n}",
    .left_handed_edition = "Left-handed edition: every row goes the other way.",
    .size = "Size",
    .finished_size = "Finished size",
    .bands = "Bands",
    .beads = "Beads",
    .bands_of_size = "{bands}, {size}.",
    .bands_each_of_size = "{bands}, each {size}.",
    .other_sizes = "The other sizes are given with their bands.",
    .beads_in_colours = "{beads} in {colours}.",
    .in_the_picture = "In the picture",
    .first_bands_shown = "The first {shown} of {n} bands.",
    .sizes_offered = "Sizes",
    .techniques_used = "Techniques",
    .supplies = "What you need",
    .column_letter = "Letter",
    .column_bead = "Bead",
    .column_size = "Size",
    .column_count = "Count",
    .column_grams = "Grams",
    .column_packs = "Packs",
    .total = "Total",
    .counts_are_exact =
        "The counts are exactly what the charts hold. The grams hold {percent}% more, for beads set aside "
        "as uneven and beads lost.",
    .forms = "Forms",
    .thread = "Thread",
    .findings = "Findings",
    .tools = "Tools",
    .pieces_of = "{n} × {name}",
    .units_of = "{n} {unit} of {name}",
    .thread_in_all = "{name}, {length} in all, tails included.",
    .thread_each_band = "{length} for each band.",
    .thread_of_band = "{name}: {length}.",
    .thread_with_bands = "What each band takes is on its page.",
    .strung_for_size = "What is strung is for size {size}.",
    // How to read
    .how_to_read = "How to read the charts",
    .chart = "Chart",
    .words = "Word chart",
    .counting = "Counting",
    .chart_from_top = "The chart is read from the top.",
    .chart_shifted = " The columns that lie half a bead lower belong to the even rows.",
    .chart_along = " In brick stitch each column of the chart is a row.",
    .chart_units = " In right-angle weave four beads round a square are a unit.",
    .chart_numbers = " Each row’s number stands at the side where the row starts.",
    .chart_numbers_stepped =
        " Each row’s number stands at the side where the row starts, and a stepped line follows every tenth "
        "row.",
    .chart_faces = " Marks beside the chart show the faces of the form and the seam.",
    .words_help =
        "The same rows in words; follow either. A number in brackets and a letter say how many beads of "
        "which kind to pick up, in that order. ({right}) is a row worked towards the right, ({left}) one "
        "worked towards the left",
    .words_help_along = ", ({down}) one worked downwards, ({up}) one worked upwards",
    .words_help_upright = ", with the chart the right way up.",
    .words_help_rounds = " Rounds all go the same way.",
    .words_help_together = " The beads of the first two rows are strung together and written as one line.",
    .words_help_units = " A semicolon separates one unit from the next.",
    .words_help_decrease = " At dec pick up no bead and go through the next two.",
    .words_help_count = " The small figure at the end of a row is the number of its beads.",
    .words_help_tick = " Tick off each row as you finish it.",
    .counting_help =
        "In peyote a row is every other bead across the band. Count the rows in a zigzag up two neighbouring "
        "columns, or count the beads along one edge and double them.",
    .thread_help =
        "Leave a tail of {tail} at each end of a thread, and work with no more than {most} at once. Join a "
        "new thread by weaving it through the beads on a slanting path, and weave the tails in likewise. "
        "Keep an even, firm tension.",
    // A band's pages
    .continued = "{name}, continued",
    .band_of_bands = "Band {n} of {all}",
    .beads_of_size = "{beads}, {size}",
    .make_copies = "make {n} of it",
    .slides_on_form = "Slides on the form: {form}",
    .fixed_on_form = "Fixed on the form: {form}",
    .part_of_chart =
        "Part {part} of {parts}: columns {first} to {last} of {columns}, beads {first_step} to {last_step} "
        "of {steps} along the edge",
    .key_page = "How the parts lie",
    .key_page_text =
        "The chart is larger than a page and is cut into {parts} parts. Each repeats the first {rows} beads "
        "of the parts that follow it, in a paler print; the same mark stands at both places where two parts "
        "meet.",
    .part_on_page = "{part}: page {page}",
    .overlap = "Repeated from the next part",
    .face_front = "front",
    .face_back = "back",
    .face_side = "edge",
    .seam = "seam",
    .sum_of_rows = "{rows} with {beads} in all",
    .note_stitch = "The stitch",
    .note_joining = "Joining the ends",
    .note_turns = "At the turns",
    .step_by_step = "Step by step",
    .step_sheet_title = "{name}, step by step",
    .steps_with = "How the needle goes is drawn with {name}.",
    .steps_with_and_here = "How the needle goes is drawn with {name}; what is new here follows.",
    .key_string = "string this bead",
    .key_go_through = "go through this bead; the numbers follow the needle",
    .thread_cut = "Cut {length}, tails included.",
    .thread_cut_lengths = "Cut {length} in {n} lengths, tails included.",
    .thread_cut_these = "Cut {length} in {n} lengths, tails included: {list}.",
    .thread_new_rows = " Begin a new length at {n|row|rows} {list}.",
    // Mounting, stringing, finishing
    .mounting = "Mounting on the form",
    .mount_round =
        "Lay the flat band round its form before the ends are joined, the seam where the chart marks it, and "
        "join the ends there. A zipped ring no longer goes over a form that is wider in its middle.",
    .mount_fixed =
        "A fixed band must sit without slack. Press it to its place, pull the thread once more through the "
        "seam, and sew or glue it where the form allows; glue only what has been tried on.",
    .mount_sliding =
        "Test the slide before the tails are woven in: the band should travel right round with a push of the "
        "thumb and stay where it is left. If it sticks, undo the zip and ease the thread; if it slips, work "
        "the rows tighter.",
    .stringing = "Stringing",
    .stringing_to_scale = "To scale, in size {size}: {length} all the way round, closed.",
    .stringing_scaled = "At {percent}% of its size, in size {size}: {length} all the way round, closed.",
    .stringing_extra = "A figure with a plus says how many more beads the outer cord takes there.",
    .cut_one_cord = "Cut one cord of {length}.",
    .cut_two_equal_cords = "Cut two cords of {length} each.",
    .cut_two_cords = "Cut two cords: {first} and, for the outer one, {second}.",
    .string_piece = "{n} × {name}",
    .string_each_cord = "{n} × {name} on each cord",
    .string_between_each = "between neighbours {what}",
    .string_close = "Close with {name}.",
    .string_knot = "Knot the ends to each other and hide the knot.",
    .sizing_table = "Table of sizes",
    .sizing_help =
        "The columns say how many beads each run takes in each size; two figures stand for the two ends.",
    .column_wrist = "Wrist",
    .column_neck = "Neck",
    .column_length = "Length",
    .assembly = "Assembly",
    .finishing = "Finishing",
    .finishing_1 =
        "Weave every tail in along the way the thread runs, with one or two turns back, and cut it close.",
    .finishing_2 =
        "Check the piece against the charts once more and count the beads left over: what is missing here "
        "lies under the table.",
    .finishing_3 = "Try it on before anything is crimped or glued for good.",
    // Care, cautions, proof
    .care = "Care",
    .care_1 =
        "Put the piece on last and take it off first. Keep it away from water, perfume and rough cloth.",
    .care_2 = "Wipe it with a soft dry cloth and store it flat, away from strong light.",
    .care_3 =
        "Look the bands and the cords over now and then. Elastic ages even in a drawer: restring it before "
        "it goes slack.",
    .safety = "For your safety",
    .caution_1 =
        "The law where you live and the data sheets of the products that you use come before anything said "
        "here.",
    .caution_2 =
        "Small parts. Beads and findings can be swallowed or breathed in: not for children under three years "
        "(16 CFR 1501; EN 71-1).",
    .caution_3 =
        "Metal against skin. In the European Union the release of nickel is limited (REACH annex XVII, entry "
        "27), and so are lead and cadmium in jewellery (entries 63 and 23): buy findings that are declared "
        "to keep to it, above all for pierced ears.",
    .caution_4 =
        "Glue. Work in a well-aired room, keep it off skin and eyes, and let it cure for 24 to 72 hours "
        "before the piece is worn.",
    .caution_5 =
        "Needles and glass. Breaking a bead out of the work sends splinters flying: wear eye protection and "
        "cover the jaws of the pliers. Count your needles when you finish.",
    .terms = "Terms of use",
    .read_back = "Read back",
    .read_back_text =
        "When this file was made, its text was read again from the finished pages and its words stitched in "
        "the computer: they make {n|the chart of the band|the charts of all {n} bands} exactly. The counts "
        "of the rows, of the colours and of the supplies agree: {beads}.",
    .made_on = "Made on {date} with Evencount.",
    .made_with = "Made with Evencount.",
    // Labels, lists and the price card
    .pick_list = "Pick list",
    .packing_slip = "Packing slip",
    .kits_counted = "{n} {n|kit|kits}",
    .kit = "Kit",
    .kit_of = "Kit: {title}",
    .column_packed = "Packed",
    .column_each_kit = "Each kit",
    .column_in_all = "In all",
    .bag_beads = "{n} {n|bead|beads}, {grams}",
    .thread_lengths = "{n} × {length}",
    .small_parts_short = "Small parts: not for children under three years.",
    .for_size = "Size {size}",
    .price_of_kit = "The kit",
    .price_of_piece = "The finished piece",
    .packed_by = "Packed by",
    .made_by_hand = "Made by hand",
    // Alternative texts of pictures
    .alt_chart = "Chart of {name}: {technique}, {across}, {along}, {beads} in {colours}: {list}.",
    .alt_band = "{name} in its beads: a band {size}, {beads} in {colours}: {list}.",
    .alt_piece = "{title}: {bands} side by side: {list}. {beads} in {colours}.",
    .alt_piece_strung = "{title}, closed in a ring: {bands} on {cords}: {list}. {beads} in {colours}.",
    .one_cord = "one cord",
    .two_cords = "two cords",
    .alt_more = "{list} and {n} more",
    // The stitch-along page
    .stitch_along = "stitch along",
    .band = "Band",
    .copy = "Copy",
    .copy_of = "{number} of {copies}",
    .hand = "Hand",
    .right_handed = "Right-handed",
    .left_handed = "Left-handed",
    .no_left = "This band has no left-handed mode: its technique can’t make the mirrored chart.",
    .not_kept =
        "This browser keeps nothing for this page: your place is lost when the page is closed. Tick the rows "
        "on paper as well.",
    .left_help =
        "You work from the other side: the chart is mirrored, then shown in a mirror, so that the piece "
        "comes out as it is pictured. In the words left and right have changed places.",
    .settings = "Settings",
    .keys =
        "Next: space, arrow to the right, or swipe to the left. Back: arrow to the left, or swipe to the "
        "right. Tap beads to tick them off.",
    .parts = "Parts of this page",
    .view_work = "Row",
    .view_words = "Words",
    .view_steps = "Step by step",
    .view_supplies = "Supplies",
    .progress = "How far the band has come",
    .beads_of_row = "Beads of this row, in the order of stringing",
    .next_row = "Next on the needle",
    .each_bead = "Tick each bead",
    .read_aloud = "Read aloud",
    .read_each_row = "Read every row",
    .stay_awake = "Keep screen on",
    .begin_again = "Begin again",
    .begin_again_sure = "Begin this band again? Your place in it is forgotten.",
    .chart_at = "Chart of {band}. Outlined: {row}. Paler: what is worked.",
    .chart_done = "Chart of {band}, all of it worked.",
    .smaller = "Smaller chart",
    .larger = "Larger chart",
    .whole_width = "Whole width",
    .find_row = "Show row",
    .move_on = "From row to row",
    .back = "Back",
    .on = "Next",
    .place = "{rows} done of {all}",
    .counter = "{ticked} of {beads} beads",
    .run = "{count} {letter} {name}",
    .left_out = "no bead: go through the next two",
    .bead_of_run = "bead {number} of {count}, {letter} {name}",
    .unit = "next unit",
    .spoken_row = "{row}, {way}: {runs}.",
    .spoken_counts = "no one two three four five six seven eight nine ten eleven twelve",
    .thread_first = "Cut {length} of thread, tails included.",
    .thread_new = "Begin a new length of thread with this row: {length}, tails included.",
    .all_done = "All rows are done",
    .all_done_way = "Then join the ends and weave in the tails.",
    .all_done_open = "Then weave in the tails.",
    .nothing_next = "Nothing: this is the last row.",
    .awake_on = "The screen stays on while this page is open.",
    .awake_off = "The screen may go dark again.",
    .awake_never = "This browser can’t keep the screen on. Set your device’s screen to stay on longer.",
    .speech_never = "This browser can’t read aloud without a network.",
    .how_to_read_words = "How to read the words",
    .diagram = "Diagram of the needle’s way, told in the text below",
    .drawn_with = "(Drawn with {band}; your row numbers may differ.)",
    .step_key =
        "A dark number: string this bead. A light number: go through this bead. The numbers follow the "
        "needle.",
    .counts_and_some_more =
        "The counts are exactly what all rows hold. The grams hold some more, for beads that are uneven or "
        "lost.",
    .works_offline =
        "Made with Evencount. This page works without a network and sends nothing anywhere; your place is "
        "kept in this browser alone.",
};

const Texts& english_texts() {
  return english_texts_table;
}

}  // namespace evencount::language
