/** The engine's answers and the project's JSON, as schema/project.schema.json and docs/openapi.yaml say. */

export type Finish =
  'opaque' | 'transparent' | 'lined' | 'metallic' | 'galvanised' | 'matte' | 'lustre' | 'pearl' | 'rainbow';

export interface Bead {
  readonly id: string;
  readonly name?: string;
  readonly kind?: 'cylinder' | 'round';
  readonly diameter_mm?: number;
  readonly length_mm?: number;
  readonly hole_mm?: number;
  readonly rim_mm?: number;
  readonly beads_per_gram?: number;
  readonly scatter?: number;
  readonly lot_shift?: number;
  readonly source?: string;
}

export interface Thread {
  readonly id: string;
  readonly name?: string;
  readonly diameter_mm?: number;
  readonly tail_mm?: number;
  readonly working_length_mm?: number;
  readonly reinforced_rows?: number;
  readonly source?: string;
}

export interface Pack {
  readonly grams: number;
  readonly price_minor?: number;
  readonly currency?: string;
}

export interface LegendEntry {
  readonly letter: string;
  readonly name: string;
  readonly colour: string;
  readonly finish?: Finish;
  readonly bead: string;
  readonly pack?: Pack;
}

export interface Form {
  readonly id: string;
  readonly name?: string;
  readonly shape: string;
  readonly points?: readonly { readonly x_mm: number; readonly y_mm: number }[];
}

export interface Gauge {
  readonly column_mm: number;
  readonly edge_mm: number;
  readonly source?: string;
  readonly uncertainty?: number;
}

export type Use = 'fixed' | 'sliding';
export type Closure = 'open' | 'zip' | 'sew' | 'round';

/** A band without its cells. */
export interface BandHead {
  readonly name: string;
  readonly technique: string;
  readonly bead: string;
  readonly form?: string;
  readonly use?: Use;
  readonly closure?: Closure;
  readonly begin_at?: number;
  readonly gauge?: Gauge;
  readonly copies?: number;
  readonly note?: string;
  readonly columns: number;
  readonly edge: number;
}

export interface WearerSize {
  readonly name: string;
  readonly measure_mm: number;
}

export interface Strand {
  readonly layout: readonly string[];
  readonly worn: 'wrist' | 'neck' | 'length';
  readonly ease_mm?: number;
  readonly lean?: number;
  readonly tolerance_mm?: number;
  readonly sizes?: readonly WearerSize[];
}

export interface Finding {
  readonly name: string;
  readonly count?: number;
  readonly unit?: string;
}

export interface Costing {
  readonly currency?: string;
  readonly hour_minor?: number;
  readonly [name: string]: unknown;
}

/** All but the bands. */
export interface ProjectHead {
  readonly format: number;
  readonly title: string;
  readonly subtitle?: string;
  readonly designer?: string;
  readonly summary?: string;
  readonly finished_size?: string;
  readonly terms?: string;
  readonly beads: readonly Bead[];
  readonly thread?: Thread;
  readonly allowance?: number;
  readonly legend: readonly LegendEntry[];
  readonly forms?: readonly Form[];
  readonly strand?: Strand;
  readonly findings?: readonly Finding[];
  readonly tools?: readonly string[];
  readonly assembly?: readonly string[];
  readonly costing?: Costing;
}

export interface SavedBand extends BandHead {
  readonly cells: readonly string[];
}
export interface SavedProject extends ProjectHead {
  readonly bands: readonly SavedBand[];
}

/** A band in a patch: `cells` are pairs of numbers, how many of which bead; -1 is no bead. */
export interface WholeBand extends BandHead {
  readonly cells: readonly number[];
}
export interface Patch {
  readonly cells?: readonly { readonly band: number; readonly runs: readonly number[] }[];
  readonly bands?: readonly {
    readonly at: number;
    readonly of: number;
    readonly before: readonly WholeBand[];
    readonly after: readonly WholeBand[];
  }[];
  readonly values?: readonly { readonly at: string; readonly before?: unknown; readonly after?: unknown }[];
}

export interface ProjectState {
  readonly id: string;
  readonly revision: number;
  readonly undo: string | null;
  readonly redo: string | null;
  readonly file_problem: string | null;
  readonly project: SavedProject;
}
export interface Accepted {
  readonly revision: number;
  readonly sentence: string;
  readonly undo: string | null;
  readonly redo: string | null;
  readonly patch: Patch;
}
export interface Previewed {
  readonly revision: number;
  readonly sentence: string;
  readonly patch: Patch;
}
export interface Patches {
  /** What stands after the newest revision there is. */
  readonly revision: number;
  readonly undo: string | null;
  readonly redo: string | null;
  readonly file_problem: string | null;
  readonly patches: readonly {
    readonly revision: number;
    readonly sentence: string;
    readonly patch: Patch;
  }[];
}

export interface Listed {
  readonly id: string;
  readonly title: string;
  readonly changed_ms: number;
  readonly bands: number;
  readonly problem?: string;
}
export interface Projects {
  readonly projects: readonly Listed[];
  readonly examples: readonly Listed[];
}

export interface KnownBead extends Bead {
  readonly name: string;
  readonly kind: 'cylinder' | 'round';
  readonly diameter_mm: number;
  readonly length_mm: number;
  readonly hole_mm: number;
  readonly rim_mm: number;
  readonly beads_per_gram: number;
}
export interface Technique {
  readonly id: string;
  readonly name: string;
  readonly closures: readonly Closure[];
  readonly note: string;
  readonly drop: number;
  readonly holes: string;
  readonly round: boolean;
}
export interface Tables {
  readonly beads: readonly KnownBead[];
  readonly threads: readonly Required<Pick<Thread, 'id' | 'name' | 'diameter_mm'>>[];
  readonly forms: readonly { readonly kind: string; readonly sizes: string; readonly example: string }[];
  readonly techniques: readonly Technique[];
  readonly finishes: readonly Finish[];
}

export type SymmetryName = 'mirror_across' | 'mirror_along' | 'half_turn';

export interface Shape {
  readonly columns: number;
  readonly edge: number;
  readonly drop: number;
  readonly holes: 'across' | 'along' | 'round_squares';
  readonly round: boolean;
  readonly rise: number;
  readonly gauge: { readonly column_mm: number; readonly edge_mm: number; readonly source: string };
  readonly symmetries: readonly SymmetryName[];
  readonly rows: number | null;
  readonly problem: string | null;
}

export interface WordLine {
  readonly label: string;
  readonly beads: string;
  readonly first_row: number;
  readonly last_row: number;
  readonly count: number;
}
export interface Words {
  readonly name: string;
  readonly heading: string;
  readonly facts: string;
  readonly lines: readonly WordLine[];
  readonly closing: string;
  readonly technique_note: string;
  readonly turn_note: string;
}
export interface Row {
  readonly name: string;
  readonly first_row: number;
  readonly last_row: number;
  readonly picks_up: boolean;
  readonly travel: 'left' | 'right' | 'forth' | 'back';
  readonly on_back: boolean;
  readonly cells: readonly number[];
}
export interface Rows {
  readonly rows: readonly Row[];
}

export type Verdict = 'too_tight' | 'tight' | 'snug' | 'easy' | 'too_loose';
export interface Candidate {
  readonly edge: number;
  readonly rows: number;
  readonly strain: number;
  readonly slack_mm: number;
  readonly chance: number;
  readonly verdict: Verdict;
  readonly closes: boolean;
}
export interface Fit {
  readonly form: string;
  readonly bead: string;
  readonly gauge: Gauge;
  readonly use: Use;
  readonly columns: number;
  readonly edge: number;
  readonly rows: number;
  readonly beads: number;
  readonly width_mm: number;
  readonly reveal_mm: number;
  readonly verdict: Verdict;
  readonly candidates: readonly Candidate[];
  readonly words: string | null;
  readonly warning: string | null;
}

export interface StockItem {
  readonly code: string;
  readonly name: string;
  readonly size: string;
  readonly finish: Finish;
  readonly colour: string | null;
  /** About how many are free. */
  readonly beads: number | null;
  /** CIEDE2000 to the colour that was asked for. */
  readonly difference: number | null;
  readonly note: string;
  readonly entry: Omit<LegendEntry, 'letter'> | null;
}
export interface Stock {
  readonly items: readonly StockItem[];
  /** How many the words fit, and how many there are whatever the words. */
  readonly found: number;
  readonly owned: number;
}

export interface MeasuredBead {
  readonly colour: string;
  readonly uncertainty: number;
  readonly spread: number;
  readonly pixels: number;
  readonly left_out: number;
}

export type Deficiency = 'protan' | 'deutan' | 'tritan';
export interface PalettePair {
  readonly first: string;
  readonly second: string;
  readonly side_by_side: boolean;
  readonly difference: number;
  readonly contrast: number;
  readonly alike: boolean;
  readonly alike_in_grey: boolean;
  readonly lost_to: Deficiency | null;
  readonly left: number | null;
}
export interface Palette {
  readonly entries: readonly { readonly letter: string; readonly beads: number }[];
  readonly pairs: readonly PalettePair[];
}

export interface BandMeasure {
  readonly bead: string;
  readonly form: string | null;
  readonly columns: number;
  readonly edge: number;
  readonly width_mm: number;
  readonly length_mm: number;
  readonly beads: number;
}
export interface Resized {
  readonly bands: readonly {
    readonly name: string;
    readonly before: BandMeasure;
    readonly after: BandMeasure;
    readonly verdict: Verdict | null;
    readonly gauge_dropped: boolean;
  }[];
  readonly untouched: readonly string[];
  readonly notes: readonly string[];
}

export interface FaceWindowAnswer {
  readonly side: 'front' | 'back';
  readonly first_step: number;
  readonly steps: number;
  readonly slide_to_front: number;
}
export interface Faces {
  readonly edge: number;
  readonly windows: readonly FaceWindowAnswer[];
  readonly half_steps: readonly { readonly side: string; readonly foreshortening: number }[];
  /** By half step: centre x y and normal x y in the section, mm. */
  readonly seats: readonly (readonly [number, number, number, number])[];
}

export type Severity = 'error' | 'warning' | 'note';
/** What is known of the place that a finding speaks of. */
export interface FindingPlace {
  readonly band?: number;
  readonly row?: number;
  readonly cell?: readonly [column: number, step: number];
  readonly letters?: readonly string[];
  /** A wearer's. */
  readonly size?: string;
  readonly piece?: number;
  readonly line?: number;
  readonly column?: number;
}
export interface FindingSaid {
  readonly severity: Severity;
  readonly check: string;
  readonly where: string;
  readonly place: FindingPlace;
  readonly message: string;
}
export interface Proof {
  readonly findings: readonly FindingSaid[];
  readonly checks: readonly { readonly name: string; readonly purpose: string }[];
}

export interface Job {
  readonly id: string;
  readonly kind: string;
  readonly project: string;
  readonly state: 'waiting' | 'running' | 'done' | 'failed' | 'cancelled';
  /** 0 to 1. */
  readonly progress: number;
  readonly step: string;
  /** How often what there is so far has been shown. */
  readonly shown: number;
  readonly problem?: { readonly message: string };
  readonly summary?: Readonly<Record<string, unknown>>;
  readonly parts?: readonly { readonly name: string; readonly type: string; readonly bytes: number }[];
}
