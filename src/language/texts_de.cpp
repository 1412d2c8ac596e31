#include "language/texts.hpp"

namespace evencount::language {

constexpr Texts german_texts_table{
    // The word chart
    .word_chart = "Perlenfolge: {name}",
    .facts = "{technique}: {across}, {along}, {rows}, {closure}.",
    .label = "{row} ({side}){ends}",
    .label_end = "{label}:",
    .side_left = "L",
    .side_right = "R",
    .side_down = "U",
    .side_up = "O",
    .label_part = ", {part}",
    .begins_increase = "Zunahme am Anfang",
    .begins_decrease = "Abnahme am Anfang",
    .ends_increase = "Zunahme am Ende",
    .ends_decrease = "Abnahme am Ende",
    .on_the_back = "auf der Rückseite",
    .decrease_sign = "abn",
    .row_range = "Reihen {first}–{last}",
    .round_range = "Runden {first}–{last}",
    .row_one = "Reihe {first}",
    .round_one = "Runde {first}",
    .work_rows = "wie {rows} {times}",
    .again_row = "Reihe {first}",
    .again_rows = "Reihen {first}–{last}",
    .again_round = "Runde {first}",
    .again_rounds = "Runden {first}–{last}",
    .times = "× {n}",
    .times_once = "× 1",
    .times_twice = "× 2",
    // The sizes in the facts
    .columns_counted = "{n} {n|Spalte|Spalten}",
    .edge_counted = "{n} {n|Perle|Perlen} entlang der Kante",
    .units_across = "{n} {n|Einheit|Einheiten} quer",
    .units_along = "{n} {n|Einheit|Einheiten} längs",
    .rows_counted = "{n} {n|Reihe|Reihen}",
    .rounds_counted = "{n} {n|Runde|Runden}",
    .closure_open = "offen",
    .closure_zip = "verzahnt",
    .closure_sew = "zusammengenäht",
    .closure_round = "rund gearbeitet",
    // The techniques
    .peyote_even = "flacher Peyotestich, gerade Spaltenzahl",
    .peyote_odd = "flacher Peyotestich, ungerade Spaltenzahl",
    .peyote_odd_figure_eight = "flacher Peyotestich, ungerade Spaltenzahl mit Achterwenden",
    .two_drop_even = "Zweier-Peyotestich, gerade Paarzahl",
    .two_drop_odd = "Zweier-Peyotestich, ungerade Paarzahl",
    .peyote_shaped = "flacher Peyotestich in Form",
    .tubular_even = "Schlauch-Peyotestich, gerade Spaltenzahl",
    .tubular_odd = "Schlauch-Peyotestich, ungerade Spaltenzahl",
    .peyote_bezel = "Peyote-Fassung",
    .brick_stitch = "Ziegelstich",
    .square_stitch = "Quadratstich",
    .loom_work = "Webarbeit",
    .herringbone = "flacher Fischgrätstich",
    .right_angle = "Rechtwinkelstich",
    .two_drop_note =
        "Immer zwei Perlen wie eine behandeln: Bei jedem Stich werden zwei aufgefädelt und zwei durchstochen.",
    .shaped_note =
        "Abnahme am Anfang einer Reihe: den Randfaden mit einer Schlinge fassen oder, wo keiner liegt, außen "
        "um die letzte Perle zurückgehen, sodass die Reihe eine Perle weiter innen beginnt. Zunahme am "
        "Anfang: die neue Perle auffädeln und von außen noch einmal durch sie gehen, sodass der Faden um sie "
        "liegt, dann durch die letzte Perle der vorigen Reihe.",
    .step_up_note =
        "Die Runden 1 und 2 auffädeln, zum Ring schließen und noch einmal durch die erste Perle gehen. Am "
        "Ende jeder weiteren Runde aufsteigen: durch die erste Perle der eben gearbeiteten Runde gehen.",
    .spiral_note =
        "Die Runden 1 und 2 auffädeln und mit der ersten Perle von Runde 3 zum Ring schließen. Die Runden "
        "gehen spiralförmig ineinander über, es gibt also kein Aufsteigen; die Nummern dienen nur dem Zählen.",
    .bezel_note =
        "Die Runden 1 und 2 auffädeln, zum Ring schließen und noch einmal durch die erste Perle gehen. Am "
        "Ende jeder weiteren Runde aufsteigen: durch die erste Perle der eben gearbeiteten Runde gehen. Bei "
        "abn keine Perle auffädeln und durch die nächsten zwei gehen. Vor der ersten Runde auf der Rückseite "
        "durch die Perlen hinunter bis zu Runde 1 gehen und den Stein mit der Vorderseite nach oben "
        "einsetzen.",
    .brick_note =
        "Reihe 1 ist eine Leiter: Ihre Perlen liegen nebeneinander und sind doppelt aneinandergenäht. Jede "
        "weitere Reihe beginnt mit zwei Perlen und hängt an den Fäden zwischen den Perlen der vorigen Reihe.",
    .square_note =
        "Nach Reihe 1 wird jede Perle an die Perle darunter genäht: auffädeln, in Gegenrichtung durch die "
        "untere Perle gehen, dann noch einmal durch die neue.",
    .loom_note =
        "Einen Kettfaden mehr aufspannen, als es Spalten gibt, und die beiden äußeren doppelt nehmen. Eine "
        "ganze Reihe auffädeln, unter die Kettfäden legen, eine Perle in jede Lücke, und über den Kettfäden "
        "durch alle Perlen zurückgehen.",
    .herringbone_note =
        "Reihe 1 ist eine Leiter aus aufrecht stehenden Perlen. Jeder weitere Stich fädelt zwei Perlen auf: "
        "durch die Perle unter der zweiten hinunter und durch die nächste hinauf. Am Ende einer Reihe außen "
        "an der unteren Perle vorbei durch die zuletzt aufgefädelte hinaufgehen.",
    .right_angle_note =
        "Die Nadel geht um jede Einheit aus vier Perlen herum und wendet an jeder Ecke; nie geht sie "
        "geradeaus hinüber. Die Einheit schließen, indem man noch einmal durch die mit der vorigen Einheit "
        "geteilte Perle geht, dann weiter herum bis dorthin, wo die nächste beginnt.",
    // The ends and the turns
    .closing_sewn =
        "Die Enden aneinanderlegen und Seite an Seite zusammennähen: Spalte für Spalte durch die Endperle "
        "der einen Seite, zurück durch ihre Nachbarin auf der anderen, noch einmal durch die erste und "
        "weiter zur nächsten Spalte gehen.",
    .closing_zipped =
        "Die Enden so aneinanderlegen, dass die Perlen von Reihe {low} und Reihe {high} ineinandergreifen, "
        "und verzahnen: {way} durch {n} Perlen gehen, abwechselnd durch eine von jedem Ende, und den Faden "
        "fest anziehen. Dann einmal durch dieselben Perlen zurückgehen.",
    .row_ends = "Reihe {n} endet",
    .every_second_row_ends = "Reihe {first} und danach jede zweite bis Reihe {last} enden",
    .rows_end = "Die Reihen {list} enden",
    .figure_eight_note =
        "{rows_end} mit einer Achterwende: durch die Perlen unter der letzten hinuntergehen, wenden und von "
        "der anderen Seite wieder durch sie heraufkommen, sodass sie gehalten wird.",
    .loop_note =
        "{rows_end} mit einer Schlinge: die Nadel unter dem Randfaden hindurchführen, dann durch die letzte "
        "Perle zurückgehen.",
    .to_the_left = "nach links",
    .to_the_right = "nach rechts",
    .downwards = "nach unten",
    .upwards = "nach oben",
    // Lists and joins
    .list_comma = ", ",
    .list_and = " und ",
    .clause_and = " und ",
    // Rows by their names within a sentence
    .the_row = "Reihe {first}",
    .the_rows = "Reihen {first} und {last}",
    .the_round = "Runde {first}",
    .the_rounds = "Runden {first} und {last}",
    .of_row = "von Reihe {first}",
    .of_rows = "von Reihe {first} und {last}",
    .of_round = "von Runde {first}",
    .of_rounds = "von Runde {first} und {last}",
    .last_beads = "die letzten Perlen",
    .first_beads = "die ersten Perlen",
    // What the needle does; {last} is whether nothing follows in the sentence
    .a_bead = "eine Perle",
    .some_beads = "{n} Perlen",
    .string_beads = "{beads}{marks}{outer} auffädeln",
    .go_through = "durch {beads}{marks}{outer} gehen",
    .go_through_of = "durch {beads} {of_row}{marks}{outer} gehen",
    .go_through_again = "noch einmal durch {before}{marks}{outer} gehen",
    .go_under = "unter dem Faden zwischen zwei Perlen {of_row} durchgehen",
    .turn = "wenden",
    .turn_loop = "um den Randfaden gehen",
    .turn_outside = "den Faden außen um die Endperle führen",
    .turn_warp = "um den äußeren Kettfaden gehen",
    .from_outside = " von außen, sodass der Faden um sie läuft,",
    .marks = " {now}",
    .marks_cut = " (die ersten {n} sind {now})",
    .marks_again = " {now}",
    .marks_range = "{first} bis {last}",
    // The moments that are drawn
    .moment_start = "Der Anfang",
    .moment_start_ladder = "Der Anfang, eine Leiter",
    .moment_start_text = "Ein Fadenende hängen lassen. {told}.",
    .moment_go_on_until = " So fortfahren, bis {row} {beads} hat.",
    .moment_strung_row = "Für {row}: {told} und ein Fadenende hängen lassen.",
    .moment_strung_rows = "{told} und ein Fadenende hängen lassen. Daraus werden {row}.",
    .moment_press_up = " Sie von unten zwischen die Kettfäden drücken, eine in jede Lücke.",
    .moment_weft = "Zurück über die Kettfäden",
    .moment_weft_text = "{told}, diesmal über den Kettfäden, sodass diese zwischen zwei Fäden liegen.",
    .moment_ring = "Den Ring schließen",
    .moment_ring_text =
        "{told}: Das zieht {beads} {of_row} zum Ring zusammen. Die Bilder zeigen ihn flach ausgelegt.",
    .moment_into_row = "Weiter mit {row}",
    .moment_into_row_text = "{row} geht {way}. {told}.",
    .moment_wider_beginning = "Am Anfang breiter",
    .moment_wider_end = "Am Ende breiter",
    .moment_narrower_beginning = "Am Anfang schmaler",
    .moment_begins_out = "{row} beginnt weiter außen. {told}.",
    .moment_ends_out = "{row} endet weiter außen. {told}.",
    .moment_ends_out_held_later = "{row} endet weiter außen. {told}; die nächste Reihe hält sie fest.",
    .moment_begins_in = "{row} beginnt weiter innen. {told}.",
    .moment_left_out = "Eine ausgelassene Perle",
    .moment_left_out_text = "{told}: In der Lücke wird keine Perle aufgefädelt. Den Faden fest anziehen.",
    .moment_loop = "Eine Schlinge",
    .moment_figure_eight = "Eine Achterwende",
    .moment_end_bead = "Jenseits der letzten Perle {of_row} liegt nichts, was sie hält. {told}.",
    .moment_back_to = "Zurück zu {row}",
    .moment_end_of = "Das Ende {of_row}",
    .moment_row_end_text = "{told}.",
    .moment_row_end_ready = "{told}: Die Nadel steht dort, wo {row} beginnt.",
    .moment_stitch = "Ein Stich {of_row}",
    .moment_stitch_text = "{told}.",
    .moment_stitch_go_on = " Ebenso fortfahren: {row} braucht {beads}.",
    .moment_step_up = "Das Aufsteigen",
    .moment_step_up_text =
        "{told}: Die Nadel kommt wieder aus der ersten Perle {of_row}, bereit für die nächste Runde.",
    .moment_new_thread = "Ein neuer Faden",
    .moment_new_thread_text =
        "Den alten Faden als Ende hängen lassen. Den neuen dort einführen, wo der alte lief, durch {beads} "
        "{marks}, und mit {row} fortfahren: {told}.",
    .moment_zip = "Das Verzahnen",
    .moment_zip_text =
        "Beide Enden so zusammenbringen, dass {last_end} und {first_end} ineinandergreifen, und abwechselnd "
        "eine Perle von jedem Ende nehmen. {told}; den Faden fest anziehen.",
    .moment_sew = "Das Zusammennähen",
    .moment_sew_text =
        "Beide Enden so zusammenbringen, dass ihre Perlen nebeneinanderliegen. {told}. So bis zur anderen "
        "Kante fortfahren.",
    .moment_finish = "Das Fadenende",
    .moment_finish_text =
        "Die Nadel ist durch die {n|letzte Perle|letzten Perlen} {marks} gekommen. Das Fadenende noch durch "
        "einige Perlen führen, wie der Faden läuft, und abschneiden; das Anfangsende ebenso vernähen.",
    .picture_new = "neu",
    .picture_tail = "Ende",
    .picture_old = "alt",
    // Numbers and measures
    .both_units = "{mm}\u00A0mm",
    .metres = "{n}\u00A0m",
    .centimetres = "{n}\u00A0cm",
    .grams = "{n}\u00A0g",
    .date = "{day}. {month} {year}",
    .first_of_month = "1. {month} {year}",
    .months = "Januar Februar März April Mai Juni Juli August September Oktober November Dezember",
    .beads_counted = "{n} {n|Perle|Perlen}",
    .bands_counted = "{n} {n|Band|Bänder}",
    .colours_counted = "{n} {n|Farbe|Farben}",
    .wide_and_long = "{across} breit, {along} lang",
    .wide_and_round = "{across} breit, {along} Umfang",
    .round_and_long = "{across} Umfang, {along} lang",
    .cylinder_bead = "Zylinderperle {size}/0",
    .round_bead = "Rocaille {size}/0",
    .thread_braided_6lb = "geflochtener Perlfaden, 6 lb",
    .thread_braided_4lb = "geflochtener Perlfaden, 4 lb",
    .thread_nylon_d = "Nylon-Perlfaden, Stärke D",
    .thread_nylon_b = "Nylon-Perlfaden, Stärke B",
    .needle_tool = "Perlnadel, Stärke {size}",
    // The cover and what is needed
    .contents = "Inhalt",
    .page_number = "{title} · {n}",
    .left_handed_edition = "Ausgabe für Linkshänder: Jede Reihe läuft in die Gegenrichtung.",
    .size = "Größe",
    .finished_size = "Fertige Größe",
    .bands = "Bänder",
    .beads = "Perlen",
    .bands_of_size = "{bands}, {size}.",
    .bands_each_of_size = "{bands}, jedes {size}.",
    .other_sizes = "Die übrigen Größen stehen bei ihren Bändern.",
    .beads_in_colours = "{beads} in {colours}.",
    .in_the_picture = "Im Bild",
    .first_bands_shown = "Die ersten {shown} von {n} Bändern.",
    .sizes_offered = "Größen",
    .techniques_used = "Techniken",
    .supplies = "Material",
    .column_letter = "Buchstabe",
    .column_bead = "Perle",
    .column_size = "Größe",
    .column_count = "Anzahl",
    .column_grams = "Gramm",
    .column_packs = "Packungen",
    .total = "Summe",
    .counts_are_exact =
        "Die Anzahlen sind genau die der Zählmuster. Die Grammangaben enthalten {percent}\u00A0% mehr für "
        "aussortierte und verlorene Perlen.",
    .forms = "Formen",
    .thread = "Faden",
    .findings = "Zubehör",
    .tools = "Werkzeug",
    .pieces_of = "{n} × {name}",
    .units_of = "{n}\u00A0{unit} {name}",
    .thread_in_all = "{name}, insgesamt {length} einschließlich der Fadenenden.",
    .thread_each_band = "{length} für jedes Band.",
    .thread_of_band = "{name}: {length}.",
    .thread_with_bands = "Was jedes Band braucht, steht auf seiner Seite.",
    .strung_for_size = "Das Aufgefädelte gilt für Größe {size}.",
    // How to read
    .how_to_read = "Wie die Zählmuster gelesen werden",
    .chart = "Zählmuster",
    .words = "Perlenfolge",
    .counting = "Zählen",
    .chart_from_top = "Das Zählmuster wird von oben gelesen.",
    .chart_shifted = " Die Spalten, die eine halbe Perle tiefer liegen, gehören zu den geraden Reihen.",
    .chart_along = " Beim Ziegelstich ist jede Spalte des Zählmusters eine Reihe.",
    .chart_units = " Beim Rechtwinkelstich bilden vier Perlen um ein Quadrat eine Einheit.",
    .chart_numbers = " Die Nummer einer Reihe steht an der Seite, an der die Reihe beginnt.",
    .chart_numbers_stepped =
        " Die Nummer einer Reihe steht an der Seite, an der die Reihe beginnt; nach jeder zehnten Reihe "
        "folgt eine gestufte Linie.",
    .chart_faces = " Marken neben dem Zählmuster zeigen die Seiten der Form und die Naht.",
    .words_help =
        "Dieselben Reihen in Worten; beides führt zum Ziel. Eine Zahl in Klammern und ein Buchstabe sagen, "
        "wie viele Perlen welcher Art in dieser Folge aufzunehmen sind. ({right}) ist eine Reihe nach "
        "rechts, ({left}) eine nach links",
    .words_help_along = ", ({down}) eine nach unten, ({up}) eine nach oben",
    .words_help_upright = ", das Zählmuster aufrecht gehalten.",
    .words_help_rounds = " Runden laufen alle in dieselbe Richtung.",
    .words_help_together =
        " Die Perlen der ersten zwei Reihen werden zusammen aufgefädelt und stehen in einer Zeile.",
    .words_help_units = " Ein Strichpunkt trennt eine Einheit von der nächsten.",
    .words_help_decrease = " Bei abn keine Perle aufnehmen und durch die nächsten zwei gehen.",
    .words_help_count = " Die kleine Zahl am Ende einer Reihe ist die Anzahl ihrer Perlen.",
    .words_help_tick = " Jede fertige Reihe abhaken.",
    .counting_help =
        "Beim Peyotestich ist eine Reihe jede zweite Perle quer über das Band. Die Reihen im Zickzack an "
        "zwei benachbarten Spalten zählen oder die Perlen einer Kante zählen und verdoppeln.",
    .thread_help =
        "An jedem Fadenende {tail} hängen lassen und mit höchstens {most} auf einmal arbeiten. Einen neuen "
        "Faden schräg durch die Perlen geführt ansetzen und die Enden ebenso vernähen. Den Faden gleichmäßig "
        "fest halten.",
    // A band's pages
    .continued = "{name}, Fortsetzung",
    .band_of_bands = "Band {n} von {all}",
    .beads_of_size = "{beads}, {size}",
    .make_copies = "{n}-mal arbeiten",
    .slides_on_form = "Gleitet auf der Form: {form}",
    .fixed_on_form = "Fest auf der Form: {form}",
    .part_of_chart =
        "Teil {part} von {parts}: Spalten {first} bis {last} von {columns}, Perlen {first_step} bis "
        "{last_step} von {steps} entlang der Kante",
    .key_page = "Wie die Teile liegen",
    .key_page_text =
        "Das Zählmuster ist größer als eine Seite und in {parts} Teile zerlegt. Jeder wiederholt blasser die "
        "ersten {rows} Perlen der folgenden Teile; wo zwei Teile zusammentreffen, steht auf beiden dieselbe "
        "Marke.",
    .part_on_page = "{part}: Seite {page}",
    .overlap = "Aus dem nächsten Teil wiederholt",
    .face_front = "vorn",
    .face_back = "hinten",
    .face_side = "Kante",
    .seam = "Naht",
    .sum_of_rows = "{rows} mit insgesamt {beads}",
    .note_stitch = "Der Stich",
    .note_joining = "Die Enden verbinden",
    .note_turns = "An den Wenden",
    .step_by_step = "Schritt für Schritt",
    .step_sheet_title = "{name}, Schritt für Schritt",
    .steps_with = "Der Weg der Nadel ist bei {name} gezeichnet.",
    .steps_with_and_here = "Der Weg der Nadel ist bei {name} gezeichnet; was hier neu ist, folgt.",
    .key_string = "diese Perle auffädeln",
    .key_go_through = "durch diese Perle gehen; die Zahlen folgen der Nadel",
    .thread_cut = "{length} zuschneiden, Fadenenden eingerechnet.",
    .thread_cut_lengths = "{length} in {n} Stücken zuschneiden, Fadenenden eingerechnet.",
    .thread_cut_these = "{length} in {n} Stücken zuschneiden, Fadenenden eingerechnet: {list}.",
    .thread_new_rows = " Bei {n|Reihe|den Reihen} {list} einen neuen Faden beginnen.",
    // Mounting, stringing, finishing
    .mounting = "Auf die Form ziehen",
    .mount_round =
        "Das flache Band um die Form legen, bevor die Enden verbunden werden, die Naht dort, wo das "
        "Zählmuster sie zeigt, und die Enden an Ort und Stelle verbinden. Ein geschlossener Ring geht nicht "
        "mehr über eine Form, die in der Mitte breiter ist.",
    .mount_fixed =
        "Ein festes Band muss ohne Spiel sitzen. Es an seinen Platz drücken, den Faden noch einmal durch die "
        "Naht ziehen und es annähen oder ankleben, wo die Form es zulässt; nur kleben, was anprobiert ist.",
    .mount_sliding =
        "Das Gleiten prüfen, bevor die Enden vernäht werden: Das Band soll sich mit dem Daumen ganz "
        "herumschieben lassen und dort bleiben, wo man es lässt. Klemmt es, die Naht öffnen und den Faden "
        "lockern; rutscht es, fester arbeiten.",
    .stringing = "Auffädeln",
    .stringing_to_scale = "Maßstäblich, in Größe {size}: geschlossen {length} rundum.",
    .stringing_scaled = "Auf {percent}\u00A0% verkleinert, in Größe {size}: geschlossen {length} rundum.",
    .stringing_extra = "Eine Zahl mit Plus sagt, wie viele Perlen mehr die äußere Schnur dort nimmt.",
    .cut_one_cord = "Eine Schnur von {length} zuschneiden.",
    .cut_two_equal_cords = "Zwei Schnüre von je {length} zuschneiden.",
    .cut_two_cords = "Zwei Schnüre zuschneiden: {first} und für die äußere {second}.",
    .string_piece = "{n} × {name}",
    .string_each_cord = "{n} × {name} auf jede Schnur",
    .string_between_each = "dazwischen jeweils {what}",
    .string_close = "Schließen mit: {name}.",
    .string_knot = "Die Enden miteinander verknoten und den Knoten verstecken.",
    .sizing_table = "Größentabelle",
    .sizing_help =
        "Die Spalten nennen die Perlenzahl jeder Strecke in jeder Größe; zwei Zahlen gelten für die zwei "
        "Enden.",
    .column_wrist = "Handgelenk",
    .column_neck = "Hals",
    .column_length = "Länge",
    .assembly = "Zusammenbau",
    .finishing = "Fertigstellen",
    .finishing_1 =
        "Jedes Fadenende auf dem Weg des Fadens mit ein bis zwei Wenden vernähen und knapp abschneiden.",
    .finishing_2 =
        "Das Stück noch einmal mit den Zählmustern vergleichen und die übrigen Perlen zählen: Was hier "
        "fehlt, liegt unter dem Tisch.",
    .finishing_3 = "Anprobieren, bevor etwas endgültig gequetscht oder geklebt wird.",
    // Care, cautions, proof
    .care = "Pflege",
    .care_1 = "Das Stück zuletzt anlegen und zuerst ablegen. Vor Wasser, Parfüm und rauem Stoff bewahren.",
    .care_2 = "Mit einem weichen trockenen Tuch abwischen und flach und lichtgeschützt aufbewahren.",
    .care_3 =
        "Bänder und Schnüre ab und zu prüfen. Gummi altert auch in der Schublade: neu auffädeln, bevor es "
        "erschlafft.",
    .safety = "Zu Ihrer Sicherheit",
    .caution_1 =
        "Das Recht Ihres Landes und die Datenblätter der verwendeten Produkte gehen allem vor, was hier "
        "steht.",
    .caution_2 =
        "Kleinteile. Perlen und Zubehör können verschluckt oder eingeatmet werden: nicht für Kinder unter "
        "drei Jahren (16 CFR 1501; EN 71-1).",
    .caution_3 =
        "Metall auf der Haut. In der Europäischen Union sind die Abgabe von Nickel (REACH Anhang XVII, "
        "Eintrag 27) sowie Blei und Cadmium in Schmuck (Einträge 63 und 23) begrenzt: nur Zubehör kaufen, "
        "dessen Einhaltung erklärt ist, vor allem für durchstochene Ohren.",
    .caution_4 =
        "Klebstoff. Nur gut gelüftet arbeiten, von Haut und Augen fernhalten und 24 bis 72 Stunden "
        "aushärten lassen, bevor das Stück getragen wird.",
    .caution_5 =
        "Nadeln und Glas. Beim Herausbrechen einer Perle fliegen Splitter: Augenschutz tragen und die "
        "Zangenbacken abdecken. Zum Schluss die Nadeln zählen.",
    .terms = "Nutzungsbedingungen",
    .read_back = "Zurückgelesen",
    .read_back_text =
        "Als diese Datei entstand, wurde ihr Text von den fertigen Seiten wieder eingelesen und im Rechner "
        "nachgearbeitet: Er ergibt genau {n|das Zählmuster des Bandes|die Zählmuster aller {n} Bänder}. Die "
        "Anzahlen der Reihen, der Farben und des Materials stimmen überein: {beads}.",
    .made_on = "Erstellt am {date} mit Evencount.",
    .made_with = "Erstellt mit Evencount.",
    // Labels, lists and the price card
    .pick_list = "Sammelliste",
    .packing_slip = "Packzettel",
    .kits_counted = "{n} {n|Packung|Packungen}",
    .kit = "Materialpackung",
    .kit_of = "Materialpackung: {title}",
    .column_packed = "Gepackt",
    .column_each_kit = "Je Packung",
    .column_in_all = "Insgesamt",
    .bag_beads = "{n} {n|Perle|Perlen}, {grams}",
    .thread_lengths = "{n} × {length}",
    .small_parts_short = "Kleinteile: nicht für Kinder unter drei Jahren.",
    .for_size = "Größe {size}",
    .price_of_kit = "Die Materialpackung",
    .price_of_piece = "Das fertige Stück",
    .packed_by = "Gepackt von",
    .made_by_hand = "Handgearbeitet",
    // Alternative texts of pictures
    .alt_chart = "Zählmuster von {name}: {technique}, {across}, {along}, {beads} in {colours}: {list}.",
    .alt_band = "{name} in Perlen: ein Band, {size}, {beads} in {colours}: {list}.",
    .alt_piece = "{title}: {bands} nebeneinander: {list}. {beads} in {colours}.",
    .alt_piece_strung = "{title}, zum Ring geschlossen: {bands} auf {cords}: {list}. {beads} in {colours}.",
    .one_cord = "einer Schnur",
    .two_cords = "zwei Schnüren",
    .alt_more = "{list} und {n} weitere",
    // The stitch-along page
    .stitch_along = "Schritt für Schritt arbeiten",
    .band = "Band",
    .copy = "Exemplar",
    .copy_of = "{number} von {copies}",
    .hand = "Hand",
    .right_handed = "Rechtshändig",
    .left_handed = "Linkshändig",
    .no_left =
        "Dieses Band hat keine Ansicht für Linkshänder: Seine Technik kann das gespiegelte Zählmuster nicht "
        "arbeiten.",
    .not_kept =
        "Dieser Browser merkt sich für diese Seite nichts: Beim Schließen geht Ihre Stelle verloren. Haken "
        "Sie die Reihen auch auf Papier ab.",
    .left_help =
        "Sie arbeiten von der anderen Seite: Das Zählmuster ist gespiegelt und wird im Spiegel gezeigt, "
        "sodass das Stück wie abgebildet entsteht. In den Worten sind links und rechts vertauscht.",
    .settings = "Einstellungen",
    .keys =
        "Weiter: Leertaste, Pfeil nach rechts oder nach links wischen. Zurück: Pfeil nach links oder nach "
        "rechts wischen. Perlen antippen, um sie abzuhaken.",
    .parts = "Teile dieser Seite",
    .view_work = "Reihe",
    .view_words = "Worte",
    .view_steps = "Schritte",
    .view_supplies = "Material",
    .progress = "Wie weit das Band ist",
    .beads_of_row = "Perlen dieser Reihe in der Folge des Auffädelns",
    .next_row = "Als Nächstes auf die Nadel",
    .each_bead = "Jede Perle abhaken",
    .read_aloud = "Vorlesen",
    .read_each_row = "Jede Reihe vorlesen",
    .stay_awake = "Bildschirm anlassen",
    .begin_again = "Von vorn",
    .begin_again_sure = "Dieses Band von vorn beginnen? Ihre Stelle darin wird vergessen.",
    .chart_at = "Zählmuster von {band}. Umrandet: {row}. Blasser: was gearbeitet ist.",
    .chart_done = "Zählmuster von {band}, ganz gearbeitet.",
    .smaller = "Kleineres Zählmuster",
    .larger = "Größeres Zählmuster",
    .whole_width = "Ganze Breite",
    .find_row = "Reihe zeigen",
    .move_on = "Von Reihe zu Reihe",
    .back = "Zurück",
    .on = "Weiter",
    .place = "{rows} von {all} fertig",
    .counter = "{ticked} von {beads} Perlen",
    .run = "{count} {letter} {name}",
    .left_out = "keine Perle: durch die nächsten zwei gehen",
    .bead_of_run = "Perle {number} von {count}, {letter} {name}",
    .unit = "nächste Einheit",
    .spoken_row = "{row}, {way}: {runs}.",
    .spoken_counts = "keine eine zwei drei vier fünf sechs sieben acht neun zehn elf zwölf",
    .thread_first = "{length} Faden zuschneiden, Enden eingerechnet.",
    .thread_new = "Mit dieser Reihe einen neuen Faden beginnen: {length}, Enden eingerechnet.",
    .all_done = "Alle Reihen sind fertig",
    .all_done_way = "Dann die Enden verbinden und die Fadenenden vernähen.",
    .all_done_open = "Dann die Fadenenden vernähen.",
    .nothing_next = "Nichts: Das ist die letzte Reihe.",
    .awake_on = "Der Bildschirm bleibt an, solange diese Seite offen ist.",
    .awake_off = "Der Bildschirm darf wieder dunkel werden.",
    .awake_never =
        "Dieser Browser kann den Bildschirm nicht anlassen. Stellen Sie am Gerät eine längere Anzeigedauer "
        "ein.",
    .speech_never = "Dieser Browser kann ohne Netz nicht vorlesen.",
    .how_to_read_words = "Wie die Perlenfolge gelesen wird",
    .diagram = "Zeichnung des Nadelwegs, im Text darunter beschrieben",
    .drawn_with = "(Gezeichnet für {band}; Ihre Reihennummern können abweichen.)",
    .step_key =
        "Dunkle Zahl: diese Perle auffädeln. Helle Zahl: durch diese Perle gehen. Die Zahlen folgen der "
        "Nadel.",
    .counts_and_some_more =
        "Die Anzahlen sind genau die aller Reihen. Die Grammangaben enthalten etwas mehr für ungleiche oder "
        "verlorene Perlen.",
    .works_offline =
        "Erstellt mit Evencount. Diese Seite kommt ohne Netz aus und sendet nichts; Ihre Stelle bleibt "
        "allein in diesem Browser.",
};

const Texts& german_texts() {
  return german_texts_table;
}

}  // namespace evencount::language
