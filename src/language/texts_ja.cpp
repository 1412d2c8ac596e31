#include "language/texts.hpp"

namespace evencount::language {

constexpr Texts japanese_texts_table{
    // The word chart
    .word_chart = "ビーズ配列表: {name}",
    .facts = "{technique}: {across}、{along}、{rows}、{closure}.",
    .label = "{row} ({side}){ends}",
    .label_end = "{label}:",
    .side_left = "左",
    .side_right = "右",
    .side_down = "下",
    .side_up = "上",
    .label_part = "、{part}",
    .begins_increase = "始めで増し目",
    .begins_decrease = "始めで減らし目",
    .ends_increase = "終わりで増し目",
    .ends_decrease = "終わりで減らし目",
    .on_the_back = "裏側",
    .decrease_sign = "減",
    .row_range = "第{first}–{last}段",
    .round_range = "第{first}–{last}周",
    .row_one = "第{first}段",
    .round_one = "第{first}周",
    .work_rows = "くり返し {rows} {times}",
    .again_row = "第{first}段",
    .again_rows = "第{first}–{last}段",
    .again_round = "第{first}周",
    .again_rounds = "第{first}–{last}周",
    .times = "× {n}",
    .times_once = "× 1",
    .times_twice = "× 2",
    // The sizes in the facts
    .columns_counted = "{n}列",
    .edge_counted = "縁のビーズ{n}個",
    .units_across = "{n}ユニット幅",
    .units_along = "{n}ユニット長",
    .rows_counted = "{n}段",
    .rounds_counted = "{n}周",
    .closure_open = "開いた形",
    .closure_zip = "ジッパーとじ",
    .closure_sew = "縫い合わせ",
    .closure_round = "輪編み",
    // The techniques
    .peyote_even = "フラットペヨーテ、偶数目",
    .peyote_odd = "フラットペヨーテ、奇数目",
    .peyote_odd_figure_eight = "フラットペヨーテ、奇数目で8の字ターン",
    .two_drop_even = "ツードロップペヨーテ、偶数目",
    .two_drop_odd = "ツードロップペヨーテ、奇数目",
    .peyote_shaped = "増減目のフラットペヨーテ",
    .tubular_even = "チューブラーペヨーテ、偶数目",
    .tubular_odd = "チューブラーペヨーテ、奇数目",
    .peyote_bezel = "ペヨーテのベゼル",
    .brick_stitch = "ブリックステッチ",
    .square_stitch = "スクエアステッチ",
    .loom_work = "ビーズ織り",
    .herringbone = "フラットヘリンボーン",
    .right_angle = "ライトアングルウィーブ",
    .two_drop_note = "ビーズ2個を1個とみなし、ひと目ごとに2個拾って2個に通す。",
    .shaped_note =
        "始めで減らし目：端に渡る糸にループをかけるか、糸がなければ最後のビーズの外側を回って戻り、1個内側か"
        "ら段を始める。始めで増し目：新しいビーズを拾い、糸がビーズを回るように外側からもう一度通し、続けて前"
        "段の最後のビーズに通す。",
    .step_up_note =
        "1周めと2周めのビーズを拾って輪にし、最初のビーズにもう一度通す。以降は周の終わりごとにステップアップ"
        "する。今作った周の最初のビーズに通して上がる。",
    .spiral_note =
        "1周めと2周めのビーズを拾い、3周めの最初のビーズで輪にする。周はらせん状につながるのでステップアップ"
        "はない。番号は数えるための目安。",
    .bezel_note =
        "1周めと2周めのビーズを拾って輪にし、最初のビーズにもう一度通す。以降は周の終わりごとにステップアップ"
        "する。「減」ではビーズを拾わず、次の2個に通す。裏側の最初の周の前に、ビーズを伝って1周めまで下り、表"
        "を上にして石を入れる。",
    .brick_note =
        "1段めはラダー（はしご）で、ビーズを並べて2度ずつ縫いつなぐ。以降の段は2個から始め、前段のビーズの間"
        "に渡る糸にかけていく。",
    .square_note =
        "2段めからは、どのビーズも下のビーズに縫いつける。ビーズを拾い、下のビーズに逆向きに通し、新しいビー"
        "ズにもう一度通す。",
    .loom_note =
        "たて糸は列数より1本多く張り、両端の2本は二重にする。1段分を拾ってたて糸の下に置き、すき間に1個ずつ入"
        "れて、たて糸の上を通って全部のビーズに戻る。",
    .herringbone_note =
        "1段めはビーズを立てたラダー。以降はひと目ごとに2個拾い、2個めの下のビーズを下向きに、次のビーズを上"
        "向きに通す。段の終わりは下のビーズの外側を回り、最後に拾ったビーズに通して上がる。",
    .right_angle_note =
        "針は4個1組のユニットを回り、角ごとに向きを変え、まっすぐには渡らない。前のユニットと共有するビーズに"
        "もう一度通して閉じ、次のユニットの始まりまで回る。",
    // The ends and the turns
    .closing_sewn =
        "両端を突き合わせて縫い合わせる。1列ずつ、片側の端のビーズに通し、向かいのビーズに戻し、最初のビーズ"
        "にもう一度通して次の列へ進む。",
    .closing_zipped =
        "第{low}段と第{high}段のビーズがかみ合うように両端を合わせ、ジッパーとじにする。両端から1個ずつ交互に"
        "、{way}{n}個に通して糸を引き締める。同じビーズをもう一度通って戻る。",
    .row_ends = "第{n}段の終わりは",
    .every_second_row_ends = "第{first}段から1段おきに第{last}段まで、段の終わりは",
    .rows_end = "{list}段の終わりは",
    .figure_eight_note =
        "{rows_end}8の字ターンにする。最後のビーズの下のビーズを通って下り、向きを変え、反対側から最後のビー"
        "ズに通して戻り、固定する。",
    .loop_note = "{rows_end}ループで留める。端に渡る糸の下に針をくぐらせ、最後のビーズに通して戻る。",
    .to_the_left = "左へ",
    .to_the_right = "右へ",
    .downwards = "下へ",
    .upwards = "上へ",
    // Lists and joins
    .list_comma = "、",
    .list_and = "と",
    .clause_and = "、",
    // Rows by their names within a sentence
    .the_row = "第{first}段",
    .the_rows = "第{first}段と第{last}段",
    .the_round = "第{first}周",
    .the_rounds = "第{first}周と第{last}周",
    .of_row = "第{first}段の",
    .of_rows = "第{first}段と第{last}段の",
    .of_round = "第{first}周の",
    .of_rounds = "第{first}周と第{last}周の",
    .last_beads = "終わりのビーズ",
    .first_beads = "始めのビーズ",
    // What the needle does; {last} is whether nothing follows in the sentence
    .a_bead = "ビーズ1個",
    .some_beads = "ビーズ{n}個",
    .string_beads = "{outer}{beads}{marks}を{last|拾い|拾う}",
    .go_through = "{outer}{beads}{marks}に{last|通し|通す}",
    .go_through_of = "{outer}{of_row}{beads}{marks}に{last|通し|通す}",
    .go_through_again = "{outer}もう一度{before}に{last|通し|通す}{marks}",
    .go_under = "{of_row}ビーズの間に渡る糸の下を{last|くぐらせ|くぐらせる}",
    .turn = "向きを{last|変え|変える}",
    .turn_loop = "端に渡る糸に{last|かけ|かける}",
    .turn_outside = "糸を端のビーズの外側に{last|回し|回す}",
    .turn_warp = "端のたて糸を{last|回り|回る}",
    .from_outside = "糸がビーズを回るように外側から",
    .marks = "{now}",
    .marks_cut = "（はじめの{n}個が{now}）",
    .marks_again = "{now}",
    .marks_range = "{first}～{last}",
    // The moments that are drawn
    .moment_start = "作り始め",
    .moment_start_ladder = "作り始め（ラダー）",
    .moment_start_text = "糸端を残す。{told}。",
    .moment_go_on_until = "{row}が{beads}になるまで続ける。",
    .moment_strung_row = "{row}として、{told}。糸端を残す。",
    .moment_strung_rows = "{told}。糸端を残す。これが{row}になる。",
    .moment_press_up = "下からたて糸の間に1個ずつ押し上げる。",
    .moment_weft = "たて糸の上を戻る",
    .moment_weft_text = "{told}。今度はたて糸の上を通り、たて糸を2本の糸ではさむ。",
    .moment_ring = "輪にする",
    .moment_ring_text = "{told}。これで{of_row}{beads}が輪になる。図は平らに開いて示す。",
    .moment_into_row = "{row}へ",
    .moment_into_row_text = "{row}は{way}進む。{told}。",
    .moment_wider_beginning = "始めで広げる",
    .moment_wider_end = "終わりで広げる",
    .moment_narrower_beginning = "始めで狭める",
    .moment_begins_out = "{row}は外側から始める。{told}。",
    .moment_ends_out = "{row}は外側で終わる。{told}。",
    .moment_ends_out_held_later = "{row}は外側で終わる。{told}。次の段で固定される。",
    .moment_begins_in = "{row}は内側から始める。{told}。",
    .moment_left_out = "ビーズを抜く",
    .moment_left_out_text = "{told}。すき間にはビーズを拾わない。糸を引き締める。",
    .moment_loop = "ループで留める",
    .moment_figure_eight = "8の字ターン",
    .moment_end_bead = "{of_row}最後のビーズの先には留めるものがない。{told}。",
    .moment_back_to = "{row}へ戻る",
    .moment_end_of = "{of_row}終わり",
    .moment_row_end_text = "{told}。",
    .moment_row_end_ready = "{told}。針は{row}の始まりに出る。",
    .moment_stitch = "{of_row}ひと目",
    .moment_stitch_text = "{told}。",
    .moment_stitch_go_on = "同様に続ける。{row}は{beads}。",
    .moment_step_up = "ステップアップ",
    .moment_step_up_text = "{told}。針は{of_row}最初のビーズから出て、次の周に進める。",
    .moment_new_thread = "糸をつぐ",
    .moment_new_thread_text =
        "古い糸は糸端として残す。新しい糸を古い糸の通り道に沿って{beads}{marks}に通し、{row}を続ける。{told}"
        "。",
    .moment_zip = "ジッパーとじ",
    .moment_zip_text =
        "{last_end}と{first_end}のビーズをかみ合わせ、両端から交互に1個ずつ通す。{told}。糸を引き締める。",
    .moment_sew = "縫い合わせ",
    .moment_sew_text = "両端のビーズが隣り合うように合わせる。{told}。反対側の端まで同様に続ける。",
    .moment_finish = "糸の始末",
    .moment_finish_text =
        "針は最後のビーズ{marks}を通っている。糸の流れに沿ってさらに数個のビーズに通して切る。始めの糸端も同"
        "様に始末する。",
    .picture_new = "新しい糸",
    .picture_tail = "糸端",
    .picture_old = "古い糸",
    // Numbers and measures
    .both_units = "{mm} mm",
    .metres = "{n} m",
    .centimetres = "{n} cm",
    .grams = "{n} g",
    .date = "{year}年{month}{day}日",
    .first_of_month = "{year}年{month}1日",
    .months = "1月 2月 3月 4月 5月 6月 7月 8月 9月 10月 11月 12月",
    .beads_counted = "ビーズ{n}個",
    .bands_counted = "バンド{n}本",
    .colours_counted = "{n}色",
    .wide_and_long = "幅{across}、長さ{along}",
    .wide_and_round = "幅{across}、周囲{along}",
    .round_and_long = "周囲{across}、長さ{along}",
    .cylinder_bead = "シリンダービーズ {size}/0",
    .round_bead = "丸ビーズ {size}/0",
    .thread_braided_6lb = "ビーズ用より糸 6 lb",
    .thread_braided_4lb = "ビーズ用より糸 4 lb",
    .thread_nylon_d = "ナイロンのビーズ糸 D",
    .thread_nylon_b = "ナイロンのビーズ糸 B",
    .needle_tool = "ビーズ針 {size}",
    // The cover and what is needed
    .contents = "目次",
    .page_number = "{title} · {n}",
    .left_handed_edition = "左利き用：どの段も逆向きに進む。",
    .size = "サイズ",
    .finished_size = "仕上がり寸法",
    .bands = "バンド",
    .beads = "ビーズ",
    .bands_of_size = "{bands}、{size}。",
    .bands_each_of_size = "{bands}、各{size}。",
    .other_sizes = "そのほかの寸法は各バンドのページに示す。",
    .beads_in_colours = "{beads}、{colours}。",
    .in_the_picture = "写真",
    .first_bands_shown = "全{n}本のうち、はじめの{shown}本。",
    .sizes_offered = "サイズ展開",
    .techniques_used = "技法",
    .supplies = "材料と用具",
    .column_letter = "記号",
    .column_bead = "ビーズ",
    .column_size = "サイズ",
    .column_count = "個数",
    .column_grams = "グラム",
    .column_packs = "パック",
    .total = "合計",
    .counts_are_exact = "個数はチャートのとおり。グラムには、不ぞろいや紛失に備えて{percent}%の余裕を含む。",
    .forms = "土台",
    .thread = "糸",
    .findings = "金具など",
    .tools = "用具",
    .pieces_of = "{name} {n}個",
    .units_of = "{name} {n} {unit}",
    .thread_in_all = "{name}、糸端を含めて全部で{length}。",
    .thread_each_band = "バンド1本につき{length}。",
    .thread_of_band = "{name}：{length}。",
    .thread_with_bands = "各バンドの必要量はそれぞれのページに示す。",
    .strung_for_size = "通すパーツはサイズ{size}の数。",
    // How to read
    .how_to_read = "チャートの見方",
    .chart = "チャート",
    .words = "配列表",
    .counting = "数え方",
    .chart_from_top = "チャートは上から読む。",
    .chart_shifted = "ビーズ半分だけ低い列は偶数段のもの。",
    .chart_along = "ブリックステッチではチャートの1列が1段になる。",
    .chart_units = "ライトアングルウィーブでは、四角を囲む4個が1ユニット。",
    .chart_numbers = "段の番号は、その段の始まる側にある。",
    .chart_numbers_stepped = "段の番号は、その段の始まる側にある。10段ごとに段状の線が入る。",
    .chart_faces = "チャート脇の印は、土台の面と、とじ目の位置を示す。",
    .words_help =
        "同じ段を文字で示したもので、どちらを見てもよい。かっこ内の数と記号は、拾うビーズの個数と種類を順に表"
        "す。({right})は右へ、({left})は左へ進む段",
    .words_help_along = "、({down})は下へ、({up})は上へ進む段",
    .words_help_upright = "を、チャートの向きのまま表す。",
    .words_help_rounds = "周はすべて同じ向きに進む。",
    .words_help_together = "はじめの2段は一緒に拾うので、1行に示す。",
    .words_help_units = "セミコロンはユニットの区切り。",
    .words_help_decrease = "「減」ではビーズを拾わず、次の2個に通す。",
    .words_help_count = "行末の小さい数字はその段のビーズ数。",
    .words_help_tick = "段が済んだら印をつける。",
    .counting_help =
        "ペヨーテの1段は、幅方向に1個おきのビーズ。隣り合う2列をジグザグに数えるか、片側の縁のビーズを数えて2"
        "倍する。",
    .thread_help =
        "糸の両端に{tail}の糸端を残し、一度に使う糸は{most}までとする。新しい糸はビーズの中を斜めに通してつぎ"
        "、糸端も同様に始末する。糸の引き加減は均一に、しっかりと。",
    // A band's pages
    .continued = "{name}（続き）",
    .band_of_bands = "バンド {n}／{all}",
    .beads_of_size = "{beads}、{size}",
    .make_copies = "{n}本作る",
    .slides_on_form = "土台の上を動かす：{form}",
    .fixed_on_form = "土台に固定：{form}",
    .part_of_chart =
        "{parts}枚中{part}枚め：{columns}列中{first}～{last}列、縁のビーズ{steps}個中{first_step}～{last_step"
        "}個め",
    .key_page = "分割図の並び",
    .key_page_text =
        "チャートは1ページに収まらないため、{parts}枚に分かれる。各図は続く図のはじめの{rows}個分を淡く重ねて"
        "示す。図のつながる所には双方に同じ印がある。",
    .part_on_page = "{part}：{page}ページ",
    .overlap = "次の図との重なり",
    .face_front = "表",
    .face_back = "裏",
    .face_side = "側面",
    .seam = "とじ目",
    .sum_of_rows = "{rows}、全部で{beads}",
    .note_stitch = "ステッチ",
    .note_joining = "端のとじ方",
    .note_turns = "ターン",
    .step_by_step = "手順図",
    .step_sheet_title = "{name}：手順図",
    .steps_with = "針の運びは{name}のページに図示。",
    .steps_with_and_here = "針の運びは{name}のページに図示。ここで新しい部分は次に示す。",
    .key_string = "このビーズを拾う",
    .key_go_through = "このビーズに通す（番号は針の順）",
    .thread_cut = "糸端を含めて{length}に切る。",
    .thread_cut_lengths = "糸端を含めて全部で{length}を{n}本に切る。",
    .thread_cut_these = "糸端を含めて全部で{length}を{n}本に切る：{list}。",
    .thread_new_rows = "{list}段めで新しい糸に替える。",
    // Mounting, stringing, finishing
    .mounting = "土台への取りつけ",
    .mount_round =
        "両端をとじる前に、平らなバンドを土台に巻き、チャートの印の位置にとじ目を合わせ、その場でとじる。中央"
        "のふくらんだ土台には、輪にしてからでは入らない。",
    .mount_fixed =
        "固定するバンドは、ゆるみなく収まること。位置を決め、とじ目にもう一度糸を通し、土台に応じて縫うか接着"
        "する。接着は試しづけのあとで。",
    .mount_sliding =
        "糸始末の前に動きを確かめる。親指で押して一周し、止めた所で止まるのがよい。固ければとじをほどいて糸を"
        "ゆるめ、すべるようなら目をきつくする。",
    .stringing = "パーツの通し方",
    .stringing_to_scale = "実寸、サイズ{size}：留めて一周{length}。",
    .stringing_scaled = "{percent}%に縮小、サイズ{size}：留めて一周{length}。",
    .stringing_extra = "プラスつきの数字は、外側のコードに足すビーズの数。",
    .cut_one_cord = "コードを{length}に切る。",
    .cut_two_equal_cords = "コードを{length}ずつ2本切る。",
    .cut_two_cords = "コードを2本切る：{first}と、外側用に{second}。",
    .string_piece = "{name} ×{n}",
    .string_each_cord = "各コードに{name} ×{n}",
    .string_between_each = "それぞれの間に{what}",
    .string_close = "{name}で留める。",
    .string_knot = "両端を結び、結び目を隠す。",
    .sizing_table = "サイズ表",
    .sizing_help = "各欄は、サイズごとの通すビーズの数。数字が2つのときは両端それぞれの数。",
    .column_wrist = "手首",
    .column_neck = "首まわり",
    .column_length = "長さ",
    .assembly = "組み立て",
    .finishing = "仕上げ",
    .finishing_1 = "糸端は糸の流れに沿って、1～2回折り返しながら通し、際で切る。",
    .finishing_2 = "作品をもう一度チャートと見比べ、残ったビーズを数える。足りない分は机の下にある。",
    .finishing_3 = "つぶし玉を締めたり接着したりする前に、必ず試着する。",
    // Care, cautions, proof
    .care = "お手入れ",
    .care_1 = "身につけるのは最後、外すのは最初に。水、香水、粗い布を避ける。",
    .care_2 = "柔らかい乾いた布でふき、平らにして強い光の当たらない所にしまう。",
    .care_3 = "バンドとコードは時々点検する。ゴムはしまっておいても傷むので、ゆるむ前に通し直す。",
    .safety = "安全のために",
    .caution_1 = "お住まいの地域の法令と、使用する製品のデータシートが、ここに書かれたことに優先する。",
    .caution_2 =
        "小さな部品。ビーズや金具は誤飲や吸い込みのおそれがあり、3歳未満の子どもには向かない（16 CFR 1501、EN"
        " 71-1）。",
    .caution_3 =
        "肌に触れる金属。欧州連合ではニッケルの溶出（REACH附属書XVII第27項）と、装身具の鉛・カドミウム（第63"
        "項、第23項）に制限がある。適合をうたう金具を選び、ピアスには特に注意する。",
    .caution_4 = "接着剤。風通しのよい所で使い、皮膚や目につけない。身につける前に24～72時間硬化させる。",
    .caution_5 =
        "針とガラス。ビーズを割り取ると破片が飛ぶので、目を保護し、ペンチの先を覆う。終わったら針の数を数える"
        "。",
    .terms = "利用条件",
    .read_back = "読み返し",
    .read_back_text =
        "このファイルの作成時に、完成したページの文字を読み直し、計算機上で編み直した。バンド{n}本すべてのチ"
        "ャートと完全に一致する。段・色・材料の個数も一致する：{beads}。",
    .made_on = "{date}、Evencountで作成。",
    .made_with = "Evencountで作成。",
    // Labels, lists and the price card
    .pick_list = "ピッキングリスト",
    .packing_slip = "同梱明細",
    .kits_counted = "{n}キット",
    .kit = "キット",
    .kit_of = "キット：{title}",
    .column_packed = "袋入り",
    .column_each_kit = "1キット分",
    .column_in_all = "合計",
    .bag_beads = "{n}個、{grams}",
    .thread_lengths = "{length} ×{n}",
    .small_parts_short = "小さな部品あり。3歳未満の子どもには与えないこと。",
    .for_size = "サイズ{size}",
    .price_of_kit = "キット",
    .price_of_piece = "完成品",
    .packed_by = "梱包者",
    .made_by_hand = "手作り",
    // Alternative texts of pictures
    .alt_chart = "{name}のチャート：{technique}、{across}、{along}、{beads}、{colours}（{list}）。",
    .alt_band = "ビーズで見た{name}：{size}のバンド、{beads}、{colours}（{list}）。",
    .alt_piece = "{title}：並んだ{bands}（{list}）。{beads}、{colours}。",
    .alt_piece_strung = "輪に閉じた{title}：{cords}に通した{bands}（{list}）。{beads}、{colours}。",
    .one_cord = "1本のコード",
    .two_cords = "2本のコード",
    .alt_more = "{list}ほか{n}",
    // The stitch-along page
    .stitch_along = "ステッチガイド",
    .band = "バンド",
    .copy = "何本め",
    .copy_of = "{copies}本中{number}本め",
    .hand = "利き手",
    .right_handed = "右利き",
    .left_handed = "左利き",
    .no_left = "このバンドに左利き用はない。この技法では左右反転したチャートを作れない。",
    .not_kept =
        "このブラウザはこのページの記録を残せません。閉じると進み具合が失われるので、紙にも印をつけてください"
        "。",
    .left_help =
        "反対側から編みます。チャートは左右反転したうえで鏡に映して示すので、仕上がりは図のとおりになります。"
        "文中の左と右は入れ替えてあります。",
    .settings = "設定",
    .keys =
        "次へ：スペース、右矢印、または左へスワイプ。戻る：左矢印、または右へスワイプ。ビーズに触れると印がつ"
        "きます。",
    .parts = "このページの内容",
    .view_work = "段",
    .view_words = "配列表",
    .view_steps = "手順図",
    .view_supplies = "材料",
    .progress = "バンドの進み具合",
    .beads_of_row = "この段のビーズ（拾う順）",
    .next_row = "次に拾うビーズ",
    .each_bead = "1個ずつ印をつける",
    .read_aloud = "読み上げる",
    .read_each_row = "段ごとに読み上げる",
    .stay_awake = "画面を消さない",
    .begin_again = "はじめから",
    .begin_again_sure = "このバンドをはじめからやり直しますか。進み具合は消えます。",
    .chart_at = "{band}のチャート。枠：{row}。淡い部分は済み。",
    .chart_done = "{band}のチャート。すべて済み。",
    .smaller = "チャートを小さく",
    .larger = "チャートを大きく",
    .whole_width = "全幅",
    .find_row = "段を表示",
    .move_on = "段の移動",
    .back = "戻る",
    .on = "次へ",
    .place = "{all}段中{rows}段済み",
    .counter = "ビーズ{beads}個中{ticked}個",
    .run = "{letter} {name}を{count}個",
    .left_out = "拾わずに次の2個に通す",
    .bead_of_run = "{letter} {name}、{count}個中{number}個め",
    .unit = "次のユニット",
    .spoken_row = "{row}、{way}。{runs}。",
    .spoken_counts = "0 1 2 3 4 5 6 7 8 9 10 11 12",
    .thread_first = "糸端を含めて糸を{length}に切る。",
    .thread_new = "この段から新しい糸を使う：糸端を含めて{length}。",
    .all_done = "すべての段が終了",
    .all_done_way = "両端をとじ、糸端を始末する。",
    .all_done_open = "糸端を始末する。",
    .nothing_next = "なし：最後の段です。",
    .awake_on = "このページを開いている間、画面は消えません。",
    .awake_off = "画面は再び消えるようになります。",
    .awake_never = "このブラウザでは画面を点けたままにできません。端末の設定で表示時間を長くしてください。",
    .speech_never = "このブラウザはネットワークなしでは読み上げできません。",
    .how_to_read_words = "配列表の見方",
    .diagram = "針の運びの図（下の文で説明）",
    .drawn_with = "（図は{band}のもの。段の番号は異なることがあります。）",
    .step_key = "濃い番号：このビーズを拾う。淡い番号：このビーズに通す。番号は針の進む順。",
    .counts_and_some_more =
        "個数はすべての段の合計どおり。グラムには、不ぞろいや紛失に備えて少し余裕を含む。",
    .works_offline =
        "Evencountで作成。このページはネットワークなしで動き、どこにも送信しません。進み具合はこのブラウザだ"
        "けに残ります。",
};

const Texts& japanese_texts() {
  return japanese_texts_table;
}

}  // namespace evencount::language
