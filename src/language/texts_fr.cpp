#include "language/texts.hpp"

namespace evencount::language {

constexpr Texts french_texts_table{
    // The word chart
    .word_chart = "Diagramme écrit\u00A0: {name}",
    .facts = "{technique}\u00A0: {across}, {along}, {rows}, {closure}.",
    .label = "{row} ({side}){ends}",
    .label_end = "{label}\u00A0:",
    .side_left = "G",
    .side_right = "D",
    .side_down = "B",
    .side_up = "H",
    .label_part = ", {part}",
    .begins_increase = "augmentation au début",
    .begins_decrease = "diminution au début",
    .ends_increase = "augmentation à la fin",
    .ends_decrease = "diminution à la fin",
    .on_the_back = "au dos",
    .decrease_sign = "dim",
    .row_range = "Rangs {first}–{last}",
    .round_range = "Tours {first}–{last}",
    .row_one = "Rang {first}",
    .round_one = "Tour {first}",
    .work_rows = "comme {rows} {times}",
    .again_row = "le rang {first}",
    .again_rows = "les rangs {first}–{last}",
    .again_round = "le tour {first}",
    .again_rounds = "les tours {first}–{last}",
    .times = "× {n}",
    .times_once = "× 1",
    .times_twice = "× 2",
    // The sizes in the facts
    .columns_counted = "{n} {n|colonne|colonnes}",
    .edge_counted = "{n} {n|perle|perles} le long du bord",
    .units_across = "{n} {n|unité|unités} en largeur",
    .units_along = "{n} {n|unité|unités} en longueur",
    .rows_counted = "{n} {n|rang|rangs}",
    .rounds_counted = "{n} {n|tour|tours}",
    .closure_open = "ouvert",
    .closure_zip = "fermé en zip",
    .closure_sew = "cousu",
    .closure_round = "travaillé en rond",
    // The techniques
    .peyote_even = "peyote plat, nombre pair",
    .peyote_odd = "peyote plat, nombre impair",
    .peyote_odd_figure_eight = "peyote plat, nombre impair avec retours en huit",
    .two_drop_even = "peyote double, nombre pair",
    .two_drop_odd = "peyote double, nombre impair",
    .peyote_shaped = "peyote plat en forme",
    .tubular_even = "peyote tubulaire, nombre pair",
    .tubular_odd = "peyote tubulaire, nombre impair",
    .peyote_bezel = "sertissage en peyote",
    .brick_stitch = "point de brique",
    .square_stitch = "point carré",
    .loom_work = "tissage au métier",
    .herringbone = "point ndébélé plat",
    .right_angle = "tissage à angle droit",
    .two_drop_note =
        "Travailler deux perles comme une seule\u00A0: à chaque point, on en enfile deux et on passe dans "
        "deux.",
    .shaped_note =
        "Diminution au début d’un rang\u00A0: prendre le fil du bord dans une boucle ou, s’il n’y en a pas, "
        "revenir par l’extérieur de la dernière perle, pour que le rang commence une perle plus à "
        "l’intérieur. Augmentation au début\u00A0: enfiler la nouvelle perle et y repasser par l’extérieur, "
        "pour que le fil l’entoure, puis passer dans la dernière perle du rang précédent.",
    .step_up_note =
        "Enfiler les tours 1 et 2, les fermer en anneau et repasser dans la première perle. À la fin de "
        "chaque tour suivant, monter\u00A0: passer dans la première perle du tour que l’on vient de faire.",
    .spiral_note =
        "Enfiler les tours 1 et 2 et les fermer en anneau avec la première perle du tour 3. Les tours se "
        "suivent en spirale\u00A0: on ne monte donc pas\u00A0; les numéros ne servent qu’à compter.",
    .bezel_note =
        "Enfiler les tours 1 et 2, les fermer en anneau et repasser dans la première perle. À la fin de "
        "chaque tour suivant, monter\u00A0: passer dans la première perle du tour que l’on vient de faire. À "
        "dim, n’enfiler aucune perle et passer dans les deux suivantes. Avant le premier tour du dos, "
        "redescendre par les perles jusqu’au tour 1 et placer la pierre, face vers le haut.",
    .brick_note =
        "Le rang 1 est une échelle\u00A0: ses perles sont côte à côte et cousues deux fois l’une à l’autre. "
        "Chaque autre rang commence par deux perles et s’accroche aux fils entre les perles du rang "
        "précédent.",
    .square_note =
        "Après le rang 1, chaque perle est cousue à celle du dessous\u00A0: l’enfiler, passer en sens "
        "inverse dans la perle du dessous, puis de nouveau dans la nouvelle.",
    .loom_note =
        "Tendre un fil de chaîne de plus qu’il n’y a de colonnes et doubler les deux extérieurs. Enfiler un "
        "rang entier, le placer sous la chaîne, une perle dans chaque intervalle, et repasser dans toutes "
        "les perles par-dessus la chaîne.",
    .herringbone_note =
        "Le rang 1 est une échelle de perles debout. Chaque point suivant enfile deux perles\u00A0: "
        "descendre dans la perle sous la seconde et remonter dans la suivante. À la fin d’un rang, remonter "
        "par l’extérieur de la perle du dessous, dans la dernière perle enfilée.",
    .right_angle_note =
        "L’aiguille fait le tour de chaque unité de quatre perles en tournant à chaque angle, jamais tout "
        "droit. Fermer l’unité en repassant dans la perle commune avec la précédente, puis continuer jusqu’à "
        "l’endroit où commence la suivante.",
    // The ends and the turns
    .closing_sewn =
        "Rapprocher les extrémités et les coudre côte à côte\u00A0: colonne par colonne, passer dans la "
        "perle finale d’un côté, revenir par sa voisine de l’autre, repasser dans la première, puis "
        "continuer avec la colonne suivante.",
    .closing_zipped =
        "Rapprocher les extrémités pour que les perles du rang {low} et du rang {high} s’emboîtent, puis les "
        "zipper\u00A0: passer {way} dans {n} perles, une de chaque côté à tour de rôle, et serrer le fil. "
        "Revenir ensuite une fois dans les mêmes perles.",
    .row_ends = "Le rang {n} se termine",
    .every_second_row_ends =
        "Le rang {first} et un rang sur deux ensuite, jusqu’au rang {last}, se terminent",
    .rows_end = "Les rangs {list} se terminent",
    .figure_eight_note =
        "{rows_end} par un retour en huit\u00A0: descendre dans les perles sous la dernière, tourner et y "
        "remonter par l’autre côté, pour qu’elle soit tenue.",
    .loop_note =
        "{rows_end} par une boucle\u00A0: glisser l’aiguille sous le fil du bord, puis revenir dans la "
        "dernière perle.",
    .to_the_left = "vers la gauche",
    .to_the_right = "vers la droite",
    .downwards = "vers le bas",
    .upwards = "vers le haut",
    // Lists and joins
    .list_comma = ", ",
    .list_and = " et ",
    .clause_and = " et ",
    // Rows by their names within a sentence
    .the_row = "le rang {first}",
    .the_rows = "les rangs {first} et {last}",
    .the_round = "le tour {first}",
    .the_rounds = "les tours {first} et {last}",
    .of_row = "du rang {first}",
    .of_rows = "des rangs {first} et {last}",
    .of_round = "du tour {first}",
    .of_rounds = "des tours {first} et {last}",
    .last_beads = "les dernières perles",
    .first_beads = "les premières perles",
    // What the needle does; {last} is whether nothing follows in the sentence
    .a_bead = "une perle",
    .some_beads = "{n} perles",
    .string_beads = "enfiler {beads}{marks}{outer}",
    .go_through = "passer dans {beads}{marks}{outer}",
    .go_through_of = "passer dans {beads} {of_row}{marks}{outer}",
    .go_through_again = "repasser dans {before}{marks}{outer}",
    .go_under = "passer sous le fil entre deux perles {of_row}",
    .turn = "tourner",
    .turn_loop = "passer autour du fil du bord",
    .turn_outside = "faire passer le fil à l’extérieur de la perle du bout",
    .turn_warp = "passer autour du fil de chaîne extérieur",
    .from_outside = " par l’extérieur, pour que le fil l’entoure",
    .marks = " {now}",
    .marks_cut = " (les {n} premières sont {now})",
    .marks_again = " {now}",
    .marks_range = "{first} à {last}",
    // The moments that are drawn
    .moment_start = "Le début",
    .moment_start_ladder = "Le début, une échelle",
    .moment_start_text = "Laisser un bout de fil. {told}.",
    .moment_go_on_until = " Continuer jusqu’à ce que {row} compte {beads}.",
    .moment_strung_row = "Pour {row}\u00A0: {told} et laisser un bout de fil.",
    .moment_strung_rows = "{told} et laisser un bout de fil. Elles formeront {row}.",
    .moment_press_up = " Les pousser par-dessous entre les fils de chaîne, une dans chaque intervalle.",
    .moment_weft = "Retour par-dessus la chaîne",
    .moment_weft_text = "{told}, cette fois par-dessus la chaîne, qui se trouve ainsi entre deux fils.",
    .moment_ring = "Fermer l’anneau",
    .moment_ring_text =
        "{told}\u00A0: {beads} {of_row} se ferment ainsi en anneau. Les images le montrent à plat.",
    .moment_into_row = "Vers {row}",
    .moment_into_row_text = "{row} va {way}. {told}.",
    .moment_wider_beginning = "Plus large au début",
    .moment_wider_end = "Plus large à la fin",
    .moment_narrower_beginning = "Plus étroit au début",
    .moment_begins_out = "{row} commence plus à l’extérieur. {told}.",
    .moment_ends_out = "{row} se termine plus à l’extérieur. {told}.",
    .moment_ends_out_held_later =
        "{row} se termine plus à l’extérieur. {told}\u00A0; le rang suivant la tiendra.",
    .moment_begins_in = "{row} commence plus à l’intérieur. {told}.",
    .moment_left_out = "Une perle omise",
    .moment_left_out_text = "{told}\u00A0: aucune perle n’est enfilée dans l’intervalle. Serrer le fil.",
    .moment_loop = "Une boucle",
    .moment_figure_eight = "Un retour en huit",
    .moment_end_bead = "Rien ne tient la dernière perle {of_row}. {told}.",
    .moment_back_to = "Retour vers {row}",
    .moment_end_of = "La fin {of_row}",
    .moment_row_end_text = "{told}.",
    .moment_row_end_ready = "{told}\u00A0: l’aiguille se trouve là où commence {row}.",
    .moment_stitch = "Un point {of_row}",
    .moment_stitch_text = "{told}.",
    .moment_stitch_go_on = " Continuer ainsi\u00A0: {row} prend {beads}.",
    .moment_step_up = "La montée",
    .moment_step_up_text =
        "{told}\u00A0: l’aiguille ressort de la première perle {of_row}, prête pour le tour suivant.",
    .moment_new_thread = "Un nouveau fil",
    .moment_new_thread_text =
        "Laisser l’ancien fil pendre. Faire entrer le nouveau là où passait l’ancien, dans {beads} {marks}, "
        "et continuer avec {row}\u00A0: {told}.",
    .moment_zip = "L’assemblage en zip",
    .moment_zip_text =
        "Rapprocher {last_end} et {first_end} pour que leurs perles s’emboîtent et prendre une perle de "
        "chaque côté à tour de rôle. {told}\u00A0; serrer le fil.",
    .moment_sew = "L’assemblage cousu",
    .moment_sew_text =
        "Rapprocher les deux extrémités pour que leurs perles soient côte à côte. {told}. Continuer ainsi "
        "jusqu’à l’autre bord.",
    .moment_finish = "La fin du fil",
    .moment_finish_text =
        "L’aiguille est sortie {n|de la dernière perle|des dernières perles} {marks}. Rentrer le fil dans "
        "quelques perles en suivant son trajet et le couper\u00A0; rentrer de même le fil du début.",
    .picture_new = "nouveau",
    .picture_tail = "bout",
    .picture_old = "ancien",
    // Numbers and measures
    .both_units = "{mm}\u00A0mm",
    .metres = "{n}\u00A0m",
    .centimetres = "{n}\u00A0cm",
    .grams = "{n}\u00A0g",
    .date = "{day} {month} {year}",
    .first_of_month = "1er {month} {year}",
    .months = "janvier février mars avril mai juin juillet août septembre octobre novembre décembre",
    .beads_counted = "{n} {n|perle|perles}",
    .bands_counted = "{n} {n|bande|bandes}",
    .colours_counted = "{n} {n|couleur|couleurs}",
    .wide_and_long = "{across} de large, {along} de long",
    .wide_and_round = "{across} de large, {along} de tour",
    .round_and_long = "{across} de tour, {along} de long",
    .cylinder_bead = "perle cylindrique {size}/0",
    .round_bead = "rocaille {size}/0",
    .thread_braided_6lb = "fil tressé pour perles, 6 lb",
    .thread_braided_4lb = "fil tressé pour perles, 4 lb",
    .thread_nylon_d = "fil nylon pour perles, taille D",
    .thread_nylon_b = "fil nylon pour perles, taille B",
    .needle_tool = "aiguille à perles, taille {size}",
    // The cover and what is needed
    .contents = "Sommaire",
    .page_number = "{title} · {n}",
    .left_handed_edition = "Édition pour gauchers\u00A0: chaque rang va dans l’autre sens.",
    .size = "Taille",
    .finished_size = "Dimensions finies",
    .bands = "Bandes",
    .beads = "Perles",
    .bands_of_size = "{bands}, {size}.",
    .bands_each_of_size = "{bands}, chacune {size}.",
    .other_sizes = "Les autres dimensions figurent avec leurs bandes.",
    .beads_in_colours = "{beads} en {colours}.",
    .in_the_picture = "Sur l’image",
    .first_bands_shown = "Les {shown} premières bandes sur {n}.",
    .sizes_offered = "Tailles",
    .techniques_used = "Techniques",
    .supplies = "Fournitures",
    .column_letter = "Lettre",
    .column_bead = "Perle",
    .column_size = "Taille",
    .column_count = "Nombre",
    .column_grams = "Grammes",
    .column_packs = "Sachets",
    .total = "Total",
    .counts_are_exact =
        "Les nombres sont exactement ceux des grilles. Les grammes comptent {percent}\u00A0% de plus pour "
        "les perles irrégulières ou perdues.",
    .forms = "Supports",
    .thread = "Fil",
    .findings = "Apprêts",
    .tools = "Outils",
    .pieces_of = "{n} × {name}",
    .units_of = "{n}\u00A0{unit} de {name}",
    .thread_in_all = "{name}, {length} en tout, bouts compris.",
    .thread_each_band = "{length} pour chaque bande.",
    .thread_of_band = "{name}\u00A0: {length}.",
    .thread_with_bands = "Ce que prend chaque bande figure sur sa page.",
    .strung_for_size = "Ce qui est enfilé correspond à la taille {size}.",
    // How to read
    .how_to_read = "Comment lire les grilles",
    .chart = "Grille",
    .words = "Diagramme écrit",
    .counting = "Compter",
    .chart_from_top = "La grille se lit depuis le haut.",
    .chart_shifted = " Les colonnes situées une demi-perle plus bas appartiennent aux rangs pairs.",
    .chart_along = " En point de brique, chaque colonne de la grille est un rang.",
    .chart_units = " En tissage à angle droit, quatre perles autour d’un carré forment une unité.",
    .chart_numbers = " Le numéro de chaque rang est placé du côté où le rang commence.",
    .chart_numbers_stepped =
        " Le numéro de chaque rang est placé du côté où le rang commence\u00A0; une ligne en escalier suit "
        "chaque dixième rang.",
    .chart_faces = " Les repères à côté de la grille indiquent les faces du support et la couture.",
    .words_help =
        "Les mêmes rangs par écrit\u00A0; suivre l’un ou l’autre. Un nombre entre parenthèses et une lettre "
        "disent combien de perles de quelle sorte enfiler, dans cet ordre. ({right}) est un rang vers la "
        "droite, ({left}) un rang vers la gauche",
    .words_help_along = ", ({down}) un rang vers le bas, ({up}) un rang vers le haut",
    .words_help_upright = ", la grille tenue à l’endroit.",
    .words_help_rounds = " Les tours vont tous dans le même sens.",
    .words_help_together =
        " Les perles des deux premiers rangs sont enfilées ensemble et écrites sur une seule ligne.",
    .words_help_units = " Un point-virgule sépare une unité de la suivante.",
    .words_help_decrease = " À dim, n’enfiler aucune perle et passer dans les deux suivantes.",
    .words_help_count = " Le petit chiffre à la fin d’un rang est le nombre de ses perles.",
    .words_help_tick = " Cocher chaque rang une fois terminé.",
    .counting_help =
        "En peyote, un rang est une perle sur deux en travers de la bande. Compter les rangs en zigzag sur "
        "deux colonnes voisines, ou compter les perles d’un bord et doubler.",
    .thread_help =
        "Laisser {tail} de fil à chaque bout et ne pas travailler avec plus de {most} à la fois. Ajouter un "
        "nouveau fil en le passant en biais dans les perles et rentrer les bouts de même. Garder une tension "
        "ferme et régulière.",
    // A band's pages
    .continued = "{name}, suite",
    .band_of_bands = "Bande {n} sur {all}",
    .beads_of_size = "{beads}, {size}",
    .make_copies = "en faire {n}",
    .slides_on_form = "Coulisse sur le support\u00A0: {form}",
    .fixed_on_form = "Fixée sur le support\u00A0: {form}",
    .part_of_chart =
        "Partie {part} sur {parts}\u00A0: colonnes {first} à {last} sur {columns}, perles {first_step} à "
        "{last_step} sur {steps} le long du bord",
    .key_page = "Disposition des parties",
    .key_page_text =
        "La grille dépasse une page et occupe {parts} parties. Chacune répète, en plus pâle, les {rows} "
        "premières perles des parties suivantes\u00A0; là où deux parties se rejoignent, le même repère "
        "figure sur les deux.",
    .part_on_page = "{part}\u00A0: page {page}",
    .overlap = "Répété de la partie suivante",
    .face_front = "devant",
    .face_back = "derrière",
    .face_side = "tranche",
    .seam = "couture",
    .sum_of_rows = "{rows}, {beads} en tout",
    .note_stitch = "Le point",
    .note_joining = "Assembler les extrémités",
    .note_turns = "Aux retours",
    .step_by_step = "Pas à pas",
    .step_sheet_title = "{name}, pas à pas",
    .steps_with = "Le trajet de l’aiguille est dessiné avec {name}.",
    .steps_with_and_here = "Le trajet de l’aiguille est dessiné avec {name}\u00A0; ce qui est nouveau suit.",
    .key_string = "enfiler cette perle",
    .key_go_through = "passer dans cette perle\u00A0; les numéros suivent l’aiguille",
    .thread_cut = "Couper {length}, bouts compris.",
    .thread_cut_lengths = "Couper {length} en {n} morceaux, bouts compris.",
    .thread_cut_these = "Couper {length} en {n} morceaux, bouts compris\u00A0: {list}.",
    .thread_new_rows = " Commencer un nouveau morceau {n|au rang|aux rangs} {list}.",
    // Mounting, stringing, finishing
    .mounting = "Montage sur le support",
    .mount_round =
        "Poser la bande à plat autour de son support avant d’assembler les extrémités, la couture là où la "
        "grille l’indique, et les assembler sur place. Un anneau déjà fermé ne passe plus sur un support "
        "plus large au milieu.",
    .mount_fixed =
        "Une bande fixe doit tenir sans jeu. La pousser en place, repasser une fois le fil dans la couture, "
        "puis la coudre ou la coller là où le support le permet\u00A0; ne coller que ce qui a été essayé.",
    .mount_sliding =
        "Essayer le coulissement avant de rentrer les fils\u00A0: la bande doit faire tout le tour poussée "
        "du pouce et rester où on la laisse. Si elle coince, défaire l’assemblage et détendre le fil\u00A0; "
        "si elle glisse, travailler plus serré.",
    .stringing = "Enfilage",
    .stringing_to_scale = "À l’échelle, en taille {size}\u00A0: {length} de tour, fermé.",
    .stringing_scaled = "À {percent}\u00A0% de sa taille, en taille {size}\u00A0: {length} de tour, fermé.",
    .stringing_extra = "Un chiffre avec un plus dit combien de perles de plus prend là le cordon extérieur.",
    .cut_one_cord = "Couper un cordon de {length}.",
    .cut_two_equal_cords = "Couper deux cordons de {length} chacun.",
    .cut_two_cords = "Couper deux cordons\u00A0: {first} et, pour l’extérieur, {second}.",
    .string_piece = "{n} × {name}",
    .string_each_cord = "{n} × {name} sur chaque cordon",
    .string_between_each = "entre deux, {what}",
    .string_close = "Fermer avec {name}.",
    .string_knot = "Nouer les extrémités ensemble et cacher le nœud.",
    .sizing_table = "Tableau des tailles",
    .sizing_help =
        "Les colonnes donnent le nombre de perles de chaque suite dans chaque taille\u00A0; deux chiffres "
        "valent pour les deux bouts.",
    .column_wrist = "Poignet",
    .column_neck = "Cou",
    .column_length = "Longueur",
    .assembly = "Assemblage",
    .finishing = "Finitions",
    .finishing_1 =
        "Rentrer chaque bout en suivant le trajet du fil, avec un ou deux retours, et couper à ras.",
    .finishing_2 =
        "Comparer encore la pièce aux grilles et compter les perles qui restent\u00A0: ce qui manque est "
        "sous la table.",
    .finishing_3 = "Essayer la pièce avant de sertir ou de coller définitivement.",
    // Care, cautions, proof
    .care = "Entretien",
    .care_1 =
        "Mettre la pièce en dernier et l’ôter en premier. La tenir loin de l’eau, du parfum et des tissus "
        "rêches.",
    .care_2 = "L’essuyer avec un chiffon doux et sec et la ranger à plat, à l’abri de la lumière vive.",
    .care_3 =
        "Vérifier de temps en temps les bandes et les cordons. L’élastique vieillit même dans un "
        "tiroir\u00A0: renfiler avant qu’il ne se détende.",
    .safety = "Pour votre sécurité",
    .caution_1 =
        "La loi de votre pays et les fiches techniques des produits employés priment sur tout ce qui est dit "
        "ici.",
    .caution_2 =
        "Petites pièces. Les perles et les apprêts peuvent être avalés ou inhalés\u00A0: ne convient pas aux "
        "enfants de moins de trois ans (16 CFR 1501\u00A0; EN 71-1).",
    .caution_3 =
        "Métal contre la peau. Dans l’Union européenne, la libération de nickel est limitée (REACH, annexe "
        "XVII, entrée 27), ainsi que le plomb et le cadmium dans les bijoux (entrées 63 et 23)\u00A0: "
        "acheter des apprêts déclarés conformes, surtout pour les oreilles percées.",
    .caution_4 =
        "Colle. Travailler dans une pièce bien aérée, éviter la peau et les yeux, et laisser durcir 24 à 72 "
        "heures avant de porter la pièce.",
    .caution_5 =
        "Aiguilles et verre. Casser une perle projette des éclats\u00A0: porter des lunettes de protection "
        "et couvrir les mâchoires de la pince. Compter les aiguilles à la fin.",
    .terms = "Conditions d’utilisation",
    .read_back = "Relu",
    .read_back_text =
        "À la création de ce fichier, son texte a été relu sur les pages terminées et retravaillé par "
        "l’ordinateur\u00A0: il redonne exactement {n|la grille de la bande|les grilles des {n} bandes}. Les "
        "nombres des rangs, des couleurs et des fournitures concordent\u00A0: {beads}.",
    .made_on = "Créé le {date} avec Evencount.",
    .made_with = "Créé avec Evencount.",
    // Labels, lists and the price card
    .pick_list = "Liste de préparation",
    .packing_slip = "Bordereau de colisage",
    .kits_counted = "{n} {n|kit|kits}",
    .kit = "Kit",
    .kit_of = "Kit\u00A0: {title}",
    .column_packed = "Emballé",
    .column_each_kit = "Par kit",
    .column_in_all = "En tout",
    .bag_beads = "{n} {n|perle|perles}, {grams}",
    .thread_lengths = "{n} × {length}",
    .small_parts_short = "Petites pièces\u00A0: interdit aux moins de trois ans.",
    .for_size = "Taille {size}",
    .price_of_kit = "Le kit",
    .price_of_piece = "La pièce finie",
    .packed_by = "Préparé par",
    .made_by_hand = "Fait main",
    // Alternative texts of pictures
    .alt_chart =
        "Grille de {name}\u00A0: {technique}, {across}, {along}, {beads} en {colours}\u00A0: {list}.",
    .alt_band = "{name} dans ses perles\u00A0: une bande de {size}, {beads} en {colours}\u00A0: {list}.",
    .alt_piece = "{title}\u00A0: {bands} côte à côte\u00A0: {list}. {beads} en {colours}.",
    .alt_piece_strung =
        "{title}, fermé en cercle\u00A0: {bands} sur {cords}\u00A0: {list}. {beads} en {colours}.",
    .one_cord = "un cordon",
    .two_cords = "deux cordons",
    .alt_more = "{list} et {n} de plus",
    // The stitch-along page
    .stitch_along = "tisser pas à pas",
    .band = "Bande",
    .copy = "Exemplaire",
    .copy_of = "{number} sur {copies}",
    .hand = "Main",
    .right_handed = "Droitier",
    .left_handed = "Gaucher",
    .no_left =
        "Cette bande n’a pas de mode gaucher\u00A0: sa technique ne permet pas de tisser la grille en miroir.",
    .not_kept =
        "Ce navigateur ne garde rien pour cette page\u00A0: votre place est perdue à la fermeture. Cochez "
        "aussi les rangs sur papier.",
    .left_help =
        "Vous travaillez de l’autre côté\u00A0: la grille est inversée puis montrée dans un miroir, pour que "
        "la pièce soit comme sur l’image. Dans le texte, gauche et droite sont échangées.",
    .settings = "Réglages",
    .keys =
        "Suivant\u00A0: espace, flèche droite ou glisser vers la gauche. Retour\u00A0: flèche gauche ou "
        "glisser vers la droite. Touchez les perles pour les cocher.",
    .parts = "Parties de cette page",
    .view_work = "Rang",
    .view_words = "Texte",
    .view_steps = "Pas à pas",
    .view_supplies = "Fournitures",
    .progress = "Avancement de la bande",
    .beads_of_row = "Perles de ce rang, dans l’ordre d’enfilage",
    .next_row = "Ensuite sur l’aiguille",
    .each_bead = "Cocher chaque perle",
    .read_aloud = "Lire à voix haute",
    .read_each_row = "Lire chaque rang",
    .stay_awake = "Garder l’écran allumé",
    .begin_again = "Recommencer",
    .begin_again_sure = "Recommencer cette bande\u00A0? Votre place y sera oubliée.",
    .chart_at = "Grille de {band}. Encadré\u00A0: {row}. Plus pâle\u00A0: ce qui est fait.",
    .chart_done = "Grille de {band}, entièrement tissée.",
    .smaller = "Grille plus petite",
    .larger = "Grille plus grande",
    .whole_width = "Toute la largeur",
    .find_row = "Montrer le rang",
    .move_on = "De rang en rang",
    .back = "Retour",
    .on = "Suivant",
    .place = "{rows} sur {all} faits",
    .counter = "{ticked} sur {beads} perles",
    .run = "{count} {letter} {name}",
    .left_out = "aucune perle\u00A0: passer dans les deux suivantes",
    .bead_of_run = "perle {number} sur {count}, {letter} {name}",
    .unit = "unité suivante",
    .spoken_row = "{row}, {way}\u00A0: {runs}.",
    .spoken_counts = "zéro une deux trois quatre cinq six sept huit neuf dix onze douze",
    .thread_first = "Couper {length} de fil, bouts compris.",
    .thread_new = "Commencer un nouveau fil avec ce rang\u00A0: {length}, bouts compris.",
    .all_done = "Tous les rangs sont faits",
    .all_done_way = "Ensuite, assembler les extrémités et rentrer les fils.",
    .all_done_open = "Ensuite, rentrer les fils.",
    .nothing_next = "Rien\u00A0: c’est le dernier rang.",
    .awake_on = "L’écran reste allumé tant que cette page est ouverte.",
    .awake_off = "L’écran peut de nouveau s’éteindre.",
    .awake_never =
        "Ce navigateur ne peut pas garder l’écran allumé. Allongez la durée d’affichage de votre appareil.",
    .speech_never = "Ce navigateur ne peut pas lire à voix haute hors réseau.",
    .how_to_read_words = "Comment lire le texte",
    .diagram = "Dessin du trajet de l’aiguille, décrit dans le texte ci-dessous",
    .drawn_with = "(Dessiné avec {band}\u00A0; vos numéros de rang peuvent différer.)",
    .step_key =
        "Numéro foncé\u00A0: enfiler cette perle. Numéro clair\u00A0: passer dans cette perle. Les numéros "
        "suivent l’aiguille.",
    .counts_and_some_more =
        "Les nombres sont exactement ceux de tous les rangs. Les grammes comptent un peu plus, pour les "
        "perles irrégulières ou perdues.",
    .works_offline =
        "Créé avec Evencount. Cette page fonctionne sans réseau et n’envoie rien\u00A0; votre place reste "
        "dans ce seul navigateur.",
};

const Texts& french_texts() {
  return french_texts_table;
}

}  // namespace evencount::language
