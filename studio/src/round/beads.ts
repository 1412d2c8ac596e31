/** What the view in the round is given: beads that already have their places. The server's fabric has worked them out. */
import type { Finish } from '../engine/shapes';
import type { Mm } from '../engine/units';

export type { Finish };
export const finishes: readonly Finish[] = [
  'opaque',
  'transparent',
  'lined',
  'metallic',
  'galvanised',
  'matte',
  'lustre',
  'pearl',
  'rainbow',
];

/** Light goes through these: they are drawn after the solid ones, the farthest first. */
export const seeThrough = (finish: Finish): boolean => finish === 'transparent' || finish === 'lined';

/** `length` runs along the hole; `rim` is the radius to which the outer edge of the ends is rounded. */
export interface BeadSize {
  readonly kind: 'cylinder' | 'round';
  readonly diameter: Mm;
  readonly length: Mm;
  readonly hole: Mm;
  readonly rim: Mm;
}

export interface LegendBead {
  readonly letter: string;
  readonly name: string;
  /** "#rrggbb", sRGB. */
  readonly colour: string;
  readonly finish: Finish;
  /** Where it isn't the band's own bead. */
  readonly size?: BeadSize;
}

/** Six numbers a bead: x, y, z of its middle in millimetres, and its hole's direction as a unit vector. */
export type Seats = Float32Array;
export const seatNumbers = 6;

/** The closed path that a band is slid along, counted in half beads; `placeOf` is each bead's place on it. */
export interface Ring {
  readonly places: number;
  readonly placeOf: Uint16Array;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A form: its section in the plane z = 0, drawn along the holes; the middle of its length is at z = 0. */
export interface FormShape {
  readonly kind: string;
  /** A closed polygon, counterclockwise, millimetres. */
  readonly section: readonly Point[];
  readonly length: Mm;
  readonly holes: readonly { readonly x: number; readonly y: number; readonly diameter: number }[];
}

/** Thread between mouths, two numbers a stretch; a mouth is bead * 2, and 1 more at the end that its axis points to. */
export interface BandThread {
  readonly mouths: Uint32Array;
  readonly diameter: Mm;
  readonly colour: string;
}

/**
 * flat: seen from +z, y up. closed: round a form, the holes along z, seen from +y. round: a tube, its axis z. As in the
 * engine's fabric. hung: a whole piece, seen from +y, z up.
 */
export type Lie = 'flat' | 'closed' | 'round' | 'hung';

export interface PlacedBand {
  readonly lie: Lie;
  readonly seats: Seats;
  /** The cell that each bead belongs to: step * columns + column. */
  readonly cellOf: Uint32Array;
  readonly size: BeadSize;
  readonly ring?: Ring;
  readonly form?: FormShape;
  readonly thread?: BandThread;
}

/** Sixteen numbers, column after column; none: where it is. */
export type Transform = readonly number[];

export interface BandItem {
  readonly kind: 'band';
  readonly transform?: Transform;
  readonly band: PlacedBand;
  readonly cells: Uint16Array;
  readonly legend: readonly LegendBead[];
}
/** A single bead on a cord; its hole runs along z. */
export interface BeadItem {
  readonly kind: 'bead';
  readonly transform: Transform;
  readonly size: BeadSize;
  readonly colour: string;
  readonly finish: Finish;
}
export interface FormItem {
  readonly kind: 'form';
  readonly transform: Transform;
  readonly form: FormShape;
}
/** A ring of wire lies in the plane z = 0; a bar runs along z. */
export type FindingShape =
  | { readonly kind: 'ring'; readonly diameter: Mm; readonly wire: Mm }
  | { readonly kind: 'bar'; readonly length: Mm; readonly diameter: Mm };
export interface FindingItem {
  readonly kind: 'finding';
  readonly transform: Transform;
  readonly shape: FindingShape;
  readonly colour: string;
}
export type PieceItem = BandItem | BeadItem | FormItem | FindingItem;

/** A cord as a line of points, three numbers each. */
export interface Cord {
  readonly points: Float32Array;
  readonly diameter: Mm;
  readonly colour: string;
}

export interface Piece {
  readonly lie: Lie;
  readonly items: readonly PieceItem[];
  readonly cords: readonly Cord[];
}

/** What a pointer means to do: give a bead of a band the bead in hand. `cell` is none on anything but a band. */
export interface Picked {
  readonly item: number;
  readonly cell: number | undefined;
}
