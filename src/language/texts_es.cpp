#include "language/texts.hpp"

namespace evencount::language {

constexpr Texts spanish_texts_table{
    // The word chart
    .word_chart = "Patrón escrito: {name}",
    .facts = "{technique}: {across}, {along}, {rows}, {closure}.",
    .label = "{row} ({side}){ends}",
    .label_end = "{label}:",
    .side_left = "I",
    .side_right = "D",
    .side_down = "B",
    .side_up = "A",
    .label_part = ", {part}",
    .begins_increase = "aumento al principio",
    .begins_decrease = "disminución al principio",
    .ends_increase = "aumento al final",
    .ends_decrease = "disminución al final",
    .on_the_back = "en el reverso",
    .decrease_sign = "dis",
    .row_range = "Hileras {first}–{last}",
    .round_range = "Vueltas {first}–{last}",
    .row_one = "Hilera {first}",
    .round_one = "Vuelta {first}",
    .work_rows = "como {rows} {times}",
    .again_row = "la hilera {first}",
    .again_rows = "las hileras {first}–{last}",
    .again_round = "la vuelta {first}",
    .again_rounds = "las vueltas {first}–{last}",
    .times = "× {n}",
    .times_once = "× 1",
    .times_twice = "× 2",
    // The sizes in the facts
    .columns_counted = "{n} {n|columna|columnas}",
    .edge_counted = "{n} {n|cuenta|cuentas} a lo largo del borde",
    .units_across = "{n} {n|unidad|unidades} de ancho",
    .units_along = "{n} {n|unidad|unidades} de largo",
    .rows_counted = "{n} {n|hilera|hileras}",
    .rounds_counted = "{n} {n|vuelta|vueltas}",
    .closure_open = "abierto",
    .closure_zip = "cerrado en cremallera",
    .closure_sew = "cosido",
    .closure_round = "tejido en redondo",
    // The techniques
    .peyote_even = "peyote plano, número par",
    .peyote_odd = "peyote plano, número impar",
    .peyote_odd_figure_eight = "peyote plano, número impar con giros en ocho",
    .two_drop_even = "peyote doble, número par",
    .two_drop_odd = "peyote doble, número impar",
    .peyote_shaped = "peyote plano con forma",
    .tubular_even = "peyote tubular, número par",
    .tubular_odd = "peyote tubular, número impar",
    .peyote_bezel = "engaste en peyote",
    .brick_stitch = "punto ladrillo",
    .square_stitch = "punto cuadrado",
    .loom_work = "tejido en telar",
    .herringbone = "punto espiga plano",
    .right_angle = "tejido en ángulo recto",
    .two_drop_note =
        "Trabajar con dos cuentas como si fueran una: en cada puntada se ensartan dos y se atraviesan dos.",
    .shaped_note =
        "Disminución al principio de una hilera: enganchar con un lazo el hilo del borde o, si no lo hay, "
        "volver por fuera de la última cuenta, de modo que la hilera empiece una cuenta más adentro. Aumento "
        "al principio: ensartar la cuenta nueva y atravesarla de nuevo desde fuera, de modo que el hilo la "
        "rodee, y pasar después por la última cuenta de la hilera anterior.",
    .step_up_note =
        "Ensartar las vueltas 1 y 2, cerrarlas en anillo y pasar otra vez por la primera cuenta. Al final de "
        "cada vuelta siguiente, subir: pasar por la primera cuenta de la vuelta recién hecha.",
    .spiral_note =
        "Ensartar las vueltas 1 y 2 y cerrarlas en anillo con la primera cuenta de la vuelta 3. Las vueltas "
        "se siguen en espiral, por lo que no hay que subir; los números solo sirven para contar.",
    .bezel_note =
        "Ensartar las vueltas 1 y 2, cerrarlas en anillo y pasar otra vez por la primera cuenta. Al final de "
        "cada vuelta siguiente, subir: pasar por la primera cuenta de la vuelta recién hecha. En dis no "
        "ensartar ninguna cuenta y pasar por las dos siguientes. Antes de la primera vuelta del reverso, "
        "bajar por las cuentas hasta la vuelta 1 y colocar la piedra con el frente hacia arriba.",
    .brick_note =
        "La hilera 1 es una escalera: sus cuentas quedan una junto a otra y cosidas dos veces entre sí. Las "
        "demás hileras empiezan con dos cuentas y cuelgan de los hilos que unen las cuentas de la hilera "
        "anterior.",
    .square_note =
        "Después de la hilera 1, cada cuenta se cose a la de abajo: ensartarla, pasar por la de abajo en "
        "sentido contrario y de nuevo por la cuenta nueva.",
    .loom_note =
        "Montar un hilo de urdimbre más que columnas y poner dobles los dos de los extremos. Ensartar una "
        "hilera entera, colocarla bajo la urdimbre con una cuenta en cada hueco y volver por todas las "
        "cuentas por encima de la urdimbre.",
    .herringbone_note =
        "La hilera 1 es una escalera de cuentas en vertical. Cada puntada siguiente ensarta dos cuentas: "
        "bajar por la cuenta situada bajo la segunda y subir por la siguiente. Al final de la hilera, subir "
        "por fuera de la cuenta de abajo y por la última ensartada.",
    .right_angle_note =
        "La aguja rodea cada unidad de cuatro cuentas y gira en cada esquina, sin cruzar nunca en línea "
        "recta. Cerrar la unidad pasando otra vez por la cuenta que comparte con la anterior y seguir "
        "alrededor hasta donde empieza la siguiente.",
    // The ends and the turns
    .closing_sewn =
        "Juntar los extremos y coserlos lado a lado: columna por columna, pasar por la cuenta final de un "
        "lado, volver por su vecina del otro, pasar de nuevo por la primera y seguir con la columna "
        "siguiente.",
    .closing_zipped =
        "Juntar los extremos de modo que encajen las cuentas de la hilera {low} y de la hilera {high}, y "
        "cerrarlos en cremallera: pasar {way} por {n} cuentas, una de cada extremo alternadamente, y tensar "
        "el hilo. Después, volver una vez por las mismas cuentas.",
    .row_ends = "La hilera {n} termina",
    .every_second_row_ends =
        "La hilera {first} y, de dos en dos, las siguientes hasta la hilera {last} terminan",
    .rows_end = "Las hileras {list} terminan",
    .figure_eight_note =
        "{rows_end} con un giro en ocho: bajar por las cuentas que están debajo de la última, girar y volver "
        "a subir por ella desde el otro lado, para que quede sujeta.",
    .loop_note =
        "{rows_end} con un lazo: deslizar la aguja bajo el hilo del borde y volver por la última cuenta.",
    .to_the_left = "hacia la izquierda",
    .to_the_right = "hacia la derecha",
    .downwards = "hacia abajo",
    .upwards = "hacia arriba",
    // Lists and joins
    .list_comma = ", ",
    .list_and = " y ",
    .clause_and = " y ",
    // Rows by their names within a sentence
    .the_row = "la hilera {first}",
    .the_rows = "las hileras {first} y {last}",
    .the_round = "la vuelta {first}",
    .the_rounds = "las vueltas {first} y {last}",
    .of_row = "de la hilera {first}",
    .of_rows = "de las hileras {first} y {last}",
    .of_round = "de la vuelta {first}",
    .of_rounds = "de las vueltas {first} y {last}",
    .last_beads = "las últimas cuentas",
    .first_beads = "las primeras cuentas",
    // What the needle does; {last} is whether nothing follows in the sentence
    .a_bead = "una cuenta",
    .some_beads = "{n} cuentas",
    .string_beads = "ensartar {beads}{marks}{outer}",
    .go_through = "pasar por {beads}{marks}{outer}",
    .go_through_of = "pasar por {beads} {of_row}{marks}{outer}",
    .go_through_again = "pasar de nuevo por {before}{marks}{outer}",
    .go_under = "pasar bajo el hilo que une dos cuentas {of_row}",
    .turn = "girar",
    .turn_loop = "rodear el hilo del borde",
    .turn_outside = "llevar el hilo por fuera de la última cuenta",
    .turn_warp = "rodear el hilo exterior de la urdimbre",
    .from_outside = " desde fuera, de modo que el hilo la rodee",
    .marks = " {now}",
    .marks_cut = " (las {n} primeras son {now})",
    .marks_again = " {now}",
    .marks_range = "{first} a {last}",
    // The moments that are drawn
    .moment_start = "El comienzo",
    .moment_start_ladder = "El comienzo, una escalera",
    .moment_start_text = "Dejar un cabo. {told}.",
    .moment_go_on_until = " Seguir así hasta que {row} tenga {beads}.",
    .moment_strung_row = "Para {row}: {told} y dejar un cabo.",
    .moment_strung_rows = "{told} y dejar un cabo. Formarán {row}.",
    .moment_press_up = " Empujarlas desde abajo entre los hilos de la urdimbre, una en cada hueco.",
    .moment_weft = "Vuelta sobre la urdimbre",
    .moment_weft_text = "{told}, esta vez por encima de la urdimbre, que queda entre dos hilos.",
    .moment_ring = "Cierre del anillo",
    .moment_ring_text =
        "{told}: así {beads} {of_row} se cierran en anillo. Las imágenes lo muestran extendido.",
    .moment_into_row = "Hacia {row}",
    .moment_into_row_text = "{row} va {way}. {told}.",
    .moment_wider_beginning = "Más ancho al principio",
    .moment_wider_end = "Más ancho al final",
    .moment_narrower_beginning = "Más estrecho al principio",
    .moment_begins_out = "{row} empieza más afuera. {told}.",
    .moment_ends_out = "{row} termina más afuera. {told}.",
    .moment_ends_out_held_later = "{row} termina más afuera. {told}; la hilera siguiente la sujetará.",
    .moment_begins_in = "{row} empieza más adentro. {told}.",
    .moment_left_out = "Una cuenta omitida",
    .moment_left_out_text = "{told}: en el hueco no se ensarta ninguna cuenta. Tensar el hilo.",
    .moment_loop = "Un lazo",
    .moment_figure_eight = "Un giro en ocho",
    .moment_end_bead = "Más allá de la última cuenta {of_row} no hay nada que la sujete. {told}.",
    .moment_back_to = "De vuelta a {row}",
    .moment_end_of = "El final {of_row}",
    .moment_row_end_text = "{told}.",
    .moment_row_end_ready = "{told}: la aguja queda donde empieza {row}.",
    .moment_stitch = "Una puntada {of_row}",
    .moment_stitch_text = "{told}.",
    .moment_stitch_go_on = " Seguir igual: {row} lleva {beads}.",
    .moment_step_up = "La subida",
    .moment_step_up_text =
        "{told}: la aguja sale otra vez por la primera cuenta {of_row}, lista para la vuelta siguiente.",
    .moment_new_thread = "Un hilo nuevo",
    .moment_new_thread_text =
        "Dejar el hilo anterior como cabo. Introducir el nuevo por donde iba el anterior, por {beads} "
        "{marks}, y seguir con {row}: {told}.",
    .moment_zip = "El cierre en cremallera",
    .moment_zip_text =
        "Juntar {last_end} con {first_end} de modo que sus cuentas encajen y tomar una de cada extremo "
        "alternadamente. {told}; tensar el hilo.",
    .moment_sew = "La unión cosida",
    .moment_sew_text =
        "Juntar los dos extremos de modo que sus cuentas queden una junto a otra. {told}. Seguir así hasta "
        "el otro borde.",
    .moment_finish = "El final del hilo",
    .moment_finish_text =
        "La aguja ha pasado por {n|la última cuenta|las últimas cuentas} {marks}. Rematar el cabo por unas "
        "cuantas cuentas, siguiendo el recorrido del hilo, y cortarlo; el cabo inicial se remata igual.",
    .picture_new = "nuevo",
    .picture_tail = "cabo",
    .picture_old = "anterior",
    // Numbers and measures
    .both_units = "{mm}\u00A0mm",
    .metres = "{n}\u00A0m",
    .centimetres = "{n}\u00A0cm",
    .grams = "{n}\u00A0g",
    .date = "{day} de {month} de {year}",
    .first_of_month = "1 de {month} de {year}",
    .months = "enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre",
    .beads_counted = "{n} {n|cuenta|cuentas}",
    .bands_counted = "{n} {n|banda|bandas}",
    .colours_counted = "{n} {n|color|colores}",
    .wide_and_long = "{across} de ancho, {along} de largo",
    .wide_and_round = "{across} de ancho, {along} de contorno",
    .round_and_long = "{across} de contorno, {along} de largo",
    .cylinder_bead = "cuenta cilíndrica {size}/0",
    .round_bead = "rocalla {size}/0",
    .thread_braided_6lb = "hilo trenzado para cuentas, 6 lb",
    .thread_braided_4lb = "hilo trenzado para cuentas, 4 lb",
    .thread_nylon_d = "hilo de nailon para cuentas, grosor D",
    .thread_nylon_b = "hilo de nailon para cuentas, grosor B",
    .needle_tool = "aguja para cuentas, número {size}",
    // The cover and what is needed
    .contents = "Índice",
    .page_number = "{title} · {n}",
    .left_handed_edition = "Edición para zurdos: cada hilera va en sentido contrario.",
    .size = "Tamaño",
    .finished_size = "Tamaño terminado",
    .bands = "Bandas",
    .beads = "Cuentas",
    .bands_of_size = "{bands}, {size}.",
    .bands_each_of_size = "{bands}, cada una {size}.",
    .other_sizes = "Los demás tamaños figuran junto a sus bandas.",
    .beads_in_colours = "{beads} en {colours}.",
    .in_the_picture = "En la imagen",
    .first_bands_shown = "Las {shown} primeras de {n} bandas.",
    .sizes_offered = "Tallas",
    .techniques_used = "Técnicas",
    .supplies = "Materiales",
    .column_letter = "Letra",
    .column_bead = "Cuenta",
    .column_size = "Tamaño",
    .column_count = "Cantidad",
    .column_grams = "Gramos",
    .column_packs = "Paquetes",
    .total = "Total",
    .counts_are_exact =
        "Las cantidades son exactamente las de los gráficos. Los gramos incluyen un {percent}\u00A0% más por "
        "las cuentas irregulares o perdidas.",
    .forms = "Soportes",
    .thread = "Hilo",
    .findings = "Fornituras",
    .tools = "Herramientas",
    .pieces_of = "{n} × {name}",
    .units_of = "{n}\u00A0{unit} de {name}",
    .thread_in_all = "{name}, {length} en total, cabos incluidos.",
    .thread_each_band = "{length} para cada banda.",
    .thread_of_band = "{name}: {length}.",
    .thread_with_bands = "Lo que lleva cada banda figura en su página.",
    .strung_for_size = "Lo ensartado es para la talla {size}.",
    // How to read
    .how_to_read = "Cómo leer los gráficos",
    .chart = "Gráfico",
    .words = "Patrón escrito",
    .counting = "Cómo contar",
    .chart_from_top = "El gráfico se lee desde arriba.",
    .chart_shifted = " Las columnas que quedan media cuenta más abajo pertenecen a las hileras pares.",
    .chart_along = " En el punto ladrillo, cada columna del gráfico es una hilera.",
    .chart_units = " En el tejido en ángulo recto, cuatro cuentas en torno a un cuadrado forman una unidad.",
    .chart_numbers = " El número de cada hilera está en el lado donde empieza.",
    .chart_numbers_stepped =
        " El número de cada hilera está en el lado donde empieza, y cada diez hileras hay una línea "
        "escalonada.",
    .chart_faces = " Las marcas junto al gráfico señalan las caras del soporte y la costura.",
    .words_help =
        "Las mismas hileras por escrito; puede seguirse lo uno o lo otro. Un número entre paréntesis y una "
        "letra indican cuántas cuentas de qué tipo se toman, en ese orden. ({right}) es una hilera hacia la "
        "derecha, ({left}) una hacia la izquierda",
    .words_help_along = ", ({down}) una hacia abajo, ({up}) una hacia arriba",
    .words_help_upright = ", con el gráfico en posición normal.",
    .words_help_rounds = " Todas las vueltas van en el mismo sentido.",
    .words_help_together =
        " Las cuentas de las dos primeras hileras se ensartan juntas y figuran en una sola línea.",
    .words_help_units = " Un punto y coma separa una unidad de la siguiente.",
    .words_help_decrease = " En dis no tomar ninguna cuenta y pasar por las dos siguientes.",
    .words_help_count = " La cifra pequeña al final de cada hilera es el número de sus cuentas.",
    .words_help_tick = " Marcar cada hilera al terminarla.",
    .counting_help =
        "En peyote, una hilera es una de cada dos cuentas a lo ancho de la banda. Contar las hileras en "
        "zigzag por dos columnas vecinas, o contar las cuentas de un borde y doblarlas.",
    .thread_help =
        "Dejar un cabo de {tail} en cada extremo del hilo y trabajar con {most} como máximo cada vez. Añadir "
        "un hilo nuevo pasándolo en diagonal por las cuentas y rematar igual los cabos. Mantener una tensión "
        "firme y uniforme.",
    // A band's pages
    .continued = "{name}, continuación",
    .band_of_bands = "Banda {n} de {all}",
    .beads_of_size = "{beads}, {size}",
    .make_copies = "hacer {n} iguales",
    .slides_on_form = "Se desliza sobre el soporte: {form}",
    .fixed_on_form = "Fija en el soporte: {form}",
    .part_of_chart =
        "Parte {part} de {parts}: columnas {first} a {last} de {columns}, cuentas {first_step} a {last_step} "
        "de {steps} a lo largo del borde",
    .key_page = "Cómo se disponen las partes",
    .key_page_text =
        "El gráfico es mayor que una página y ocupa {parts} partes. Cada una repite, en tono más pálido, las "
        "{rows} primeras cuentas de las partes siguientes; donde dos partes se juntan hay la misma marca en "
        "ambas.",
    .part_on_page = "{part}: página {page}",
    .overlap = "Repetido de la parte siguiente",
    .face_front = "frente",
    .face_back = "dorso",
    .face_side = "canto",
    .seam = "costura",
    .sum_of_rows = "{rows} con {beads} en total",
    .note_stitch = "La puntada",
    .note_joining = "Unir los extremos",
    .note_turns = "En los giros",
    .step_by_step = "Paso a paso",
    .step_sheet_title = "{name}, paso a paso",
    .steps_with = "El recorrido de la aguja está dibujado en {name}.",
    .steps_with_and_here =
        "El recorrido de la aguja está dibujado en {name}; lo nuevo se muestra a continuación.",
    .key_string = "ensartar esta cuenta",
    .key_go_through = "pasar por esta cuenta; los números siguen a la aguja",
    .thread_cut = "Cortar {length}, cabos incluidos.",
    .thread_cut_lengths = "Cortar {length} en {n} trozos, cabos incluidos.",
    .thread_cut_these = "Cortar {length} en {n} trozos, cabos incluidos: {list}.",
    .thread_new_rows = " Empezar un trozo nuevo en {n|la hilera|las hileras} {list}.",
    // Mounting, stringing, finishing
    .mounting = "Montaje en el soporte",
    .mount_round =
        "Colocar la banda plana alrededor de su soporte antes de unir los extremos, con la costura donde la "
        "señala el gráfico, y unirlos allí mismo. Un anillo ya cerrado no pasa por un soporte más ancho en "
        "el centro.",
    .mount_fixed =
        "Una banda fija debe quedar sin holgura. Llevarla a su sitio, pasar el hilo otra vez por la costura "
        "y coserla o pegarla donde el soporte lo permita; pegar solo lo que ya se haya probado.",
    .mount_sliding =
        "Probar el deslizamiento antes de rematar los cabos: la banda debe dar la vuelta entera empujada con "
        "el pulgar y quedarse donde se deja. Si se atasca, deshacer el cierre y aflojar el hilo; si resbala, "
        "tejer más apretado.",
    .stringing = "Ensartado",
    .stringing_to_scale = "A escala, en la talla {size}: {length} de contorno, cerrado.",
    .stringing_scaled =
        "Al {percent}\u00A0% de su tamaño, en la talla {size}: {length} de contorno, cerrado.",
    .stringing_extra = "Una cifra con un más indica cuántas cuentas más lleva allí el cordón exterior.",
    .cut_one_cord = "Cortar un cordón de {length}.",
    .cut_two_equal_cords = "Cortar dos cordones de {length} cada uno.",
    .cut_two_cords = "Cortar dos cordones: {first} y, para el exterior, {second}.",
    .string_piece = "{n} × {name}",
    .string_each_cord = "{n} × {name} en cada cordón",
    .string_between_each = "entre uno y otro, {what}",
    .string_close = "Cerrar con {name}.",
    .string_knot = "Anudar los extremos entre sí y ocultar el nudo.",
    .sizing_table = "Tabla de tallas",
    .sizing_help =
        "Las columnas indican cuántas cuentas lleva cada tramo en cada talla; dos cifras corresponden a los "
        "dos extremos.",
    .column_wrist = "Muñeca",
    .column_neck = "Cuello",
    .column_length = "Largo",
    .assembly = "Montaje",
    .finishing = "Acabado",
    .finishing_1 =
        "Rematar cada cabo siguiendo el recorrido del hilo, con una o dos vueltas atrás, y cortarlo al ras.",
    .finishing_2 =
        "Comparar otra vez la pieza con los gráficos y contar las cuentas sobrantes: lo que falte estará "
        "debajo de la mesa.",
    .finishing_3 = "Probarla antes de aplastar o pegar nada definitivamente.",
    // Care, cautions, proof
    .care = "Cuidados",
    .care_1 =
        "Ponerse la pieza al final y quitársela primero. Protegerla del agua, el perfume y los tejidos "
        "ásperos.",
    .care_2 = "Limpiarla con un paño suave y seco y guardarla plana, lejos de la luz fuerte.",
    .care_3 =
        "Revisar de vez en cuando las bandas y los cordones. El elástico envejece incluso en un cajón: "
        "volver a ensartar antes de que se afloje.",
    .safety = "Por su seguridad",
    .caution_1 =
        "La ley de su país y las fichas de datos de los productos que utilice prevalecen sobre todo lo dicho "
        "aquí.",
    .caution_2 =
        "Piezas pequeñas. Las cuentas y fornituras pueden tragarse o aspirarse: no aptas para menores de "
        "tres años (16 CFR 1501; EN 71-1).",
    .caution_3 =
        "Metal en contacto con la piel. En la Unión Europea está limitada la liberación de níquel (REACH, "
        "anexo XVII, entrada 27), así como el plomo y el cadmio en joyería (entradas 63 y 23): comprar "
        "fornituras que declaren cumplirlo, sobre todo para orejas perforadas.",
    .caution_4 =
        "Pegamento. Trabajar con ventilación, evitar la piel y los ojos y dejar curar de 24 a 72 horas antes "
        "de usar la pieza.",
    .caution_5 =
        "Agujas y vidrio. Al romper una cuenta saltan esquirlas: llevar protección ocular y cubrir las "
        "puntas del alicate. Contar las agujas al terminar.",
    .terms = "Condiciones de uso",
    .read_back = "Releído",
    .read_back_text =
        "Al crear este archivo, su texto se releyó de las páginas terminadas y se tejió en el ordenador: da "
        "exactamente {n|el gráfico de la banda|los gráficos de las {n} bandas}. Coinciden las cantidades de "
        "las hileras, de los colores y de los materiales: {beads}.",
    .made_on = "Creado el {date} con Evencount.",
    .made_with = "Creado con Evencount.",
    // Labels, lists and the price card
    .pick_list = "Lista de preparación",
    .packing_slip = "Nota de contenido",
    .kits_counted = "{n} {n|kit|kits}",
    .kit = "Kit",
    .kit_of = "Kit: {title}",
    .column_packed = "Envasado",
    .column_each_kit = "Cada kit",
    .column_in_all = "En total",
    .bag_beads = "{n} {n|cuenta|cuentas}, {grams}",
    .thread_lengths = "{n} × {length}",
    .small_parts_short = "Piezas pequeñas: no apto para menores de tres años.",
    .for_size = "Talla {size}",
    .price_of_kit = "El kit",
    .price_of_piece = "La pieza terminada",
    .packed_by = "Preparado por",
    .made_by_hand = "Hecho a mano",
    // Alternative texts of pictures
    .alt_chart = "Gráfico de {name}: {technique}, {across}, {along}, {beads} en {colours}: {list}.",
    .alt_band = "{name} en sus cuentas: una banda de {size}, {beads} en {colours}: {list}.",
    .alt_piece = "{title}: {bands} una junto a otra: {list}. {beads} en {colours}.",
    .alt_piece_strung = "{title}, cerrado en círculo: {bands} en {cords}: {list}. {beads} en {colours}.",
    .one_cord = "un cordón",
    .two_cords = "dos cordones",
    .alt_more = "{list} y {n} más",
    // The stitch-along page
    .stitch_along = "tejer paso a paso",
    .band = "Banda",
    .copy = "Ejemplar",
    .copy_of = "{number} de {copies}",
    .hand = "Mano",
    .right_handed = "Diestros",
    .left_handed = "Zurdos",
    .no_left = "Esta banda no tiene modo para zurdos: su técnica no permite tejer el gráfico en espejo.",
    .not_kept =
        "Este navegador no guarda nada de esta página: al cerrarla se pierde el punto en que está. Marque "
        "también las hileras en papel.",
    .left_help =
        "Se trabaja desde el otro lado: el gráfico se invierte y se muestra en un espejo, de modo que la "
        "pieza sale como en la imagen. En el texto, izquierda y derecha están intercambiadas.",
    .settings = "Ajustes",
    .keys =
        "Siguiente: espacio, flecha derecha o deslizar a la izquierda. Atrás: flecha izquierda o deslizar a "
        "la derecha. Toque las cuentas para marcarlas.",
    .parts = "Partes de esta página",
    .view_work = "Hilera",
    .view_words = "Texto",
    .view_steps = "Pasos",
    .view_supplies = "Materiales",
    .progress = "Progreso de la banda",
    .beads_of_row = "Cuentas de esta hilera, en el orden de ensartado",
    .next_row = "Lo siguiente en la aguja",
    .each_bead = "Marcar cada cuenta",
    .read_aloud = "Leer en voz alta",
    .read_each_row = "Leer cada hilera",
    .stay_awake = "Pantalla encendida",
    .begin_again = "Empezar de nuevo",
    .begin_again_sure = "¿Empezar esta banda de nuevo? Se olvida el punto en que está.",
    .chart_at = "Gráfico de {band}. Con contorno: {row}. Más pálido: lo tejido.",
    .chart_done = "Gráfico de {band}, todo tejido.",
    .smaller = "Gráfico más pequeño",
    .larger = "Gráfico más grande",
    .whole_width = "Todo el ancho",
    .find_row = "Mostrar hilera",
    .move_on = "De hilera en hilera",
    .back = "Atrás",
    .on = "Siguiente",
    .place = "{rows} de {all} hechas",
    .counter = "{ticked} de {beads} cuentas",
    .run = "{count} {letter} {name}",
    .left_out = "ninguna cuenta: pasar por las dos siguientes",
    .bead_of_run = "cuenta {number} de {count}, {letter} {name}",
    .unit = "unidad siguiente",
    .spoken_row = "{row}, {way}: {runs}.",
    .spoken_counts = "ninguna una dos tres cuatro cinco seis siete ocho nueve diez once doce",
    .thread_first = "Cortar {length} de hilo, cabos incluidos.",
    .thread_new = "Empezar con esta hilera un trozo nuevo de hilo: {length}, cabos incluidos.",
    .all_done = "Todas las hileras están hechas",
    .all_done_way = "Después, unir los extremos y rematar los cabos.",
    .all_done_open = "Después, rematar los cabos.",
    .nothing_next = "Nada: esta es la última hilera.",
    .awake_on = "La pantalla sigue encendida mientras esta página esté abierta.",
    .awake_off = "La pantalla puede volver a apagarse.",
    .awake_never =
        "Este navegador no puede mantener la pantalla encendida. Aumente el tiempo de pantalla de su "
        "dispositivo.",
    .speech_never = "Este navegador no puede leer en voz alta sin red.",
    .how_to_read_words = "Cómo leer el texto",
    .diagram = "Dibujo del recorrido de la aguja, descrito en el texto siguiente",
    .drawn_with = "(Dibujado con {band}; sus números de hilera pueden variar.)",
    .step_key =
        "Número oscuro: ensartar esta cuenta. Número claro: pasar por esta cuenta. Los números siguen a la "
        "aguja.",
    .counts_and_some_more =
        "Las cantidades son exactamente las de todas las hileras. Los gramos incluyen algo más por las "
        "cuentas irregulares o perdidas.",
    .works_offline =
        "Creado con Evencount. Esta página funciona sin red y no envía nada; su progreso se guarda solo en "
        "este navegador.",
};

const Texts& spanish_texts() {
  return spanish_texts_table;
}

}  // namespace evencount::language
