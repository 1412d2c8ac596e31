/**
 * Sliding a band round its form. The seats are the server's; sliding by k half beads takes each bead to the place that lies k half
 * beads further on along the closed path, and between two places along a smooth curve through them.
 *
 * Properties (slide.test.ts): by 0 and by the whole ring nothing moves; there and back nothing moves; by whole beads the seats of
 * a column are only exchanged among its beads; by j and then k is by j + k.
 */
import type { Lattice } from '../band/lattice';
import { shiftOf } from '../band/lattice';
import { type Ring, type Seats, seatNumbers } from './beads';

/** The places of a band's beads along its ring, in half beads; none for a flat piece. */
export function ringOf(lattice: Lattice, cellOf: Uint32Array): Ring | undefined {
  if (!lattice.edgeRound && !lattice.columnsRound) return undefined;
  const places = 2 * (lattice.edgeRound ? lattice.edge : lattice.columns);
  const placeOf = Uint16Array.from(cellOf, (cell) => {
    const column = cell % lattice.columns;
    const step = Math.floor(cell / lattice.columns);
    // A tube's columns run clockwise where a band's steps run counterclockwise.
    return lattice.edgeRound ? 2 * step + shiftOf(lattice, column) : (places - 2 * column) % places;
  });
  return { places, placeOf };
}

/** The path in the section's plane, one point a place. */
export interface Track {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

const wrapped = (place: number, places: number): number => ((place % places) + places) % places;

/** A cubic through b and c that has the slopes of its neighbours, and its derivative. */
function curve(a: number, b: number, c: number, d: number, t: number): [number, number] {
  const p = (c - a) / 2;
  const q = a - 2.5 * b + 2 * c - d / 2;
  const r = (d - a) / 2 + 1.5 * (b - c);
  return [b + t * (p + t * (q + t * r)), p + t * (2 * q + t * 3 * r)];
}

/** The mean of the seats at each place; a place without a bead is put on the curve through its neighbours. */
export function trackOf(seats: Seats, ring: Ring): Track {
  const { places, placeOf } = ring;
  const x = new Float64Array(places);
  const y = new Float64Array(places);
  const beads = new Float64Array(places);
  placeOf.forEach((place, i) => {
    x[place] = (x[place] ?? 0) + (seats[i * seatNumbers] ?? 0);
    y[place] = (y[place] ?? 0) + (seats[i * seatNumbers + 1] ?? 0);
    beads[place] = (beads[place] ?? 0) + 1;
  });
  const known: number[] = [];
  beads.forEach((count, place) => {
    if (count === 0) return;
    known.push(place);
    x[place] = (x[place] ?? 0) / count;
    y[place] = (y[place] ?? 0) / count;
  });
  known.forEach((from, k) => {
    const near = [k - 1, k, k + 1, k + 2].map((j) => known[wrapped(j, known.length)] ?? 0);
    const gap = wrapped((near[2] ?? 0) - from, places) || places;
    for (let j = 1; j < gap; j++)
      for (const line of [x, y]) {
        const [a = 0, b = 0, c = 0, d = 0] = near.map((place) => line[place] ?? 0);
        line[wrapped(from + j, places)] = curve(a, b, c, d, j / gap)[0];
      }
  });
  return { x, y };
}

export interface OnTrack {
  readonly x: number;
  readonly y: number;
  /** Unit tangent; the path runs counterclockwise, so (ty, -tx) points outwards. */
  readonly tx: number;
  readonly ty: number;
}

/** Where the path is at a place, which may lie between two. */
export function onTrack(track: Track, place: number): OnTrack {
  const places = track.x.length;
  const first = Math.floor(place);
  const near = [-1, 0, 1, 2].map((j) => wrapped(first + j, places));
  const [xa = 0, xb = 0, xc = 0, xd = 0] = near.map((p) => track.x[p] ?? 0);
  const [ya = 0, yb = 0, yc = 0, yd = 0] = near.map((p) => track.y[p] ?? 0);
  const [x, dx] = curve(xa, xb, xc, xd, place - first);
  const [y, dy] = curve(ya, yb, yc, yd, place - first);
  const length = Math.hypot(dx, dy) || 1;
  return { x, y, tx: dx / length, ty: dy / length };
}

/** The seats of a band slid by so many half beads, counterclockwise above 0; written into `into`. */
export function slideSeats(seats: Seats, ring: Ring, track: Track, by: number, into: Seats): void {
  const { places, placeOf } = ring;
  const shift = wrapped(by, places);
  const from = Array.from({ length: places }, (_, place) => onTrack(track, place));
  const to = Array.from({ length: places }, (_, place) => onTrack(track, place + shift));
  placeOf.forEach((place, i) => {
    const a = from[place];
    const b = to[place];
    if (!a || !b) return;
    // The turn from the one tangent to the other.
    const cosine = a.tx * b.tx + a.ty * b.ty;
    const sine = a.tx * b.ty - a.ty * b.tx;
    const o = i * seatNumbers;
    const x = (seats[o] ?? 0) - a.x;
    const y = (seats[o + 1] ?? 0) - a.y;
    const ax = seats[o + 3] ?? 0;
    const ay = seats[o + 4] ?? 0;
    into[o] = b.x + cosine * x - sine * y;
    into[o + 1] = b.y + sine * x + cosine * y;
    into[o + 2] = seats[o + 2] ?? 0;
    into[o + 3] = cosine * ax - sine * ay;
    into[o + 4] = sine * ax + cosine * ay;
    into[o + 5] = seats[o + 5] ?? 0;
  });
}

/** Of two ways round the ring the shorter one, in half beads. */
export function shortWay(from: number, to: number, places: number): number {
  const onwards = wrapped(to - from, places);
  return onwards <= places / 2 ? onwards : onwards - places;
}
