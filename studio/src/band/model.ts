/**
 * What the unrolled band is given, and what it asks for. It changes nothing itself: every edit leaves as an `Intent`, and comes back
 * as new cells.
 */
import type { Finish } from '../engine/shapes';
import type { Cell } from './cells';
import type { Lattice } from './lattice';

export type { Finish };

export interface LegendEntry {
  readonly letter: string;
  readonly name: string;
  /** `#rrggbb`. */
  readonly colour: string;
  readonly finish: Finish;
}

/** Steps of a closed band may reach past the last one and on from step 0. */
export interface StepSpan {
  readonly firstStep: number;
  readonly steps: number;
}

export interface FaceWindow extends StepSpan {
  readonly side: 'front' | 'back' | 'edge';
}

export interface Marks {
  readonly faces: readonly FaceWindow[];
  readonly tapered: readonly StepSpan[];
  /** Where the band is zipped: before step 0. */
  readonly seam: boolean;
}

export const noMarks: Marks = { faces: [], tapered: [], seam: false };

/** A pass of the needle. Rows that are picked up together (1 and 2 of peyote) are one with two numbers. */
export interface WorkedRow {
  readonly firstNumber: number;
  readonly lastNumber: number;
  readonly travel: 'left' | 'right' | 'up' | 'down';
  /** Places in `beads`, in the order of stitching. */
  readonly cells: readonly number[];
}

/** Both ends of a line, or two opposite corners. */
export interface Stretch {
  readonly from: Cell;
  readonly to: Cell;
}

/** A piece of a drawing. `shift` is where its first column stands in a pair of shifted groups of columns. */
export interface Stamp {
  readonly columns: number;
  readonly edge: number;
  readonly beads: Uint16Array;
  readonly shift: number;
}

export const tools = [
  'bead',
  'line',
  'rectangle',
  'ellipse',
  'fill',
  'replace',
  'pick',
  'select',
  'move',
  'stamp',
] as const;
export type Tool = (typeof tools)[number];

export const mirrors = ['across', 'along', 'half turn'] as const;
export type Mirror = (typeof mirrors)[number];

export type ShapeKind = 'line' | 'rectangle' | 'ellipse';

export type Intent =
  | { readonly kind: 'beads'; readonly cells: readonly number[]; readonly bead: number }
  /** One for each mirrored place, the drawn one first. */
  | {
      readonly kind: ShapeKind;
      readonly stretches: readonly Stretch[];
      readonly bead: number;
      readonly filled: boolean;
    }
  | { readonly kind: 'fill'; readonly from: readonly Cell[]; readonly bead: number }
  | { readonly kind: 'replace'; readonly from: number; readonly to: number }
  | { readonly kind: 'pick'; readonly bead: number }
  | { readonly kind: 'select'; readonly selection: Stretch | undefined }
  | { readonly kind: 'copy'; readonly selection: Stretch }
  | { readonly kind: 'cut'; readonly selection: Stretch }
  /** The rectangle's drawing, its first cell (least column, least step) to `to`. */
  | { readonly kind: 'move'; readonly selection: Stretch; readonly to: Cell }
  | { readonly kind: 'stamp'; readonly at: Cell }
  | { readonly kind: 'hover'; readonly cell: Cell | undefined }
  | { readonly kind: 'walk'; readonly cell: Cell };

/** All that the band is given. */
export interface Shown {
  readonly lattice: Lattice;
  readonly beads: Uint16Array;
  /** Another one when the same array was written into. */
  readonly version: number;
  readonly legend: readonly LegendEntry[];
  readonly marks: Marks;
  readonly rows: readonly WorkedRow[] | undefined;
  readonly currentRow: number | undefined;
  readonly selection: Stretch | undefined;
  readonly tool: Tool;
  /** The colour in hand: a place in the legend. */
  readonly colour: number;
  /** Rectangles and ellipses are filled. */
  readonly filled: boolean;
  readonly mirrors: readonly Mirror[];
  readonly stamp: Stamp | undefined;
  readonly letters: boolean;
}

export const sameCell = (a: Cell | undefined, b: Cell | undefined): boolean =>
  a?.column === b?.column && a?.step === b?.step;

export const indexOf = (lattice: Lattice, { column, step }: Cell): number => step * lattice.columns + column;

export const cellOf = (lattice: Lattice, index: number): Cell => ({
  column: index % lattice.columns,
  step: Math.floor(index / lattice.columns),
});

/** The stretch from its least column and step to its greatest. */
export function ordered({ from, to }: Stretch): Stretch {
  return {
    from: { column: Math.min(from.column, to.column), step: Math.min(from.step, to.step) },
    to: { column: Math.max(from.column, to.column), step: Math.max(from.step, to.step) },
  };
}

export function isWithin(stretch: Stretch, { column, step }: Cell): boolean {
  const { from, to } = ordered(stretch);
  return column >= from.column && column <= to.column && step >= from.step && step <= to.step;
}
