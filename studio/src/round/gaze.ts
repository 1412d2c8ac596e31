/**
 * Where the piece is looked at from: a turn about its upright, a lift above its middle, a distance. Angles in radians, lengths in mm.
 *
 * Properties (gaze.test.ts): turning there and back is nothing; the eye is always `distance` from the target; a piece that is looked
 * at from rest lies wholly within the view.
 */
import type { Lie } from './beads';
import { dot, plus, type Vec } from './vectors';

export interface Gaze {
  readonly turn: number;
  readonly lift: number;
  readonly distance: number;
  readonly target: Vec;
}

/** The directions of a piece at rest, right-handed. */
export interface Stand {
  readonly right: Vec;
  readonly up: Vec;
  readonly front: Vec;
}

/** What a piece takes up: a ball round it, its outermost points in many directions, and how far beads reach beyond them. */
export interface Around {
  readonly centre: Vec;
  readonly radius: number;
  readonly outermost: readonly Vec[];
  readonly edge: number;
}

const standing: Stand = { right: [-1, 0, 0], up: [0, 0, 1], front: [0, 1, 0] };
const lying: Stand = { right: [1, 0, 0], up: [0, 1, 0], front: [0, 0, 1] };
export const standOf = (lie: Lie): Stand => (lie === 'flat' ? lying : standing);

const degree = Math.PI / 180;
/** The upright angle of view: as a thing in the hand is seen at arm's length. */
export const fieldOfView = 26 * degree;
const mostLift = 86 * degree;
/** From the right and a little above: the front and one edge are seen. */
const restTurn = 28 * degree;
const restLift = 20 * degree;

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** Of the view, left free on each side. */
const margin = 0.06;

/** How far off, in a direction, all of it is just in view. */
export function fittingDistance(around: Around, gaze: Gaze, stand: Stand, aspect: number): number {
  const { outwards, right, up } = bearings(gaze, stand);
  const half = Math.tan(fieldOfView / 2) * (1 - 2 * margin);
  let least = 0;
  for (const point of around.outermost) {
    const from = plus(point, gaze.target, -1);
    const across = (Math.abs(dot(from, right)) + around.edge) / (half * aspect);
    const upwards = (Math.abs(dot(from, up)) + around.edge) / half;
    least = Math.max(least, dot(from, outwards) + around.edge + Math.max(across, upwards));
  }
  return least > 0 ? least : around.radius * 5;
}

export function restGaze(around: Around, aspect: number, lie: Lie): Gaze {
  const share = { flat: 0.6, closed: 1, round: 1, hung: 0.45 }[lie];
  const gaze = { turn: restTurn * share, lift: restLift * share, distance: 1, target: around.centre };
  return { ...gaze, distance: fittingDistance(around, gaze, standOf(lie), aspect) };
}

export const turned = (gaze: Gaze, turn: number, lift: number): Gaze => ({
  ...gaze,
  turn: (gaze.turn + turn) % (2 * Math.PI),
  lift: within(gaze.lift + lift, -mostLift, mostLift),
});

/** Nearer for factors below 1; from 4 mm off to where the piece is small. */
export const nearer = (gaze: Gaze, factor: number, around: Around): Gaze => ({
  ...gaze,
  distance: within(gaze.distance * factor, 4, Math.max(40, 20 * around.radius)),
});

/** The way from the target to the eye, and what is right and up on the screen. */
export function bearings(gaze: Gaze, stand: Stand): { outwards: Vec; right: Vec; up: Vec } {
  const [st, ct] = [Math.sin(gaze.turn), Math.cos(gaze.turn)];
  const [sl, cl] = [Math.sin(gaze.lift), Math.cos(gaze.lift)];
  const mix = (r: number, u: number, f: number): Vec =>
    plus(plus(plus([0, 0, 0], stand.right, r), stand.up, u), stand.front, f);
  return { outwards: mix(st * cl, sl, ct * cl), right: mix(ct, 0, -st), up: mix(-st * sl, cl, -ct * sl) };
}

export const eyeOf = (gaze: Gaze, stand: Stand): Vec =>
  plus(gaze.target, bearings(gaze, stand).outwards, gaze.distance);

/** Moves what is looked at by shares of the view's height, but never out of sight of the piece. */
export function moved(gaze: Gaze, right: number, up: number, stand: Stand, around: Around): Gaze {
  const height = 2 * gaze.distance * Math.tan(fieldOfView / 2);
  const ways = bearings(gaze, stand);
  const target = plus(plus(gaze.target, ways.right, right * height), ways.up, up * height);
  const from = plus(target, around.centre, -1);
  const off = Math.hypot(...from);
  return { ...gaze, target: off > around.radius ? plus(around.centre, from, around.radius / off) : target };
}

export interface Ray {
  readonly from: Vec;
  /** Unit. */
  readonly along: Vec;
}

/** The line of sight through a point of the view; -1 to 1 from left to right and from below to above. */
export function sightThrough(gaze: Gaze, stand: Stand, aspect: number, x: number, y: number): Ray {
  const { outwards, right, up } = bearings(gaze, stand);
  const half = Math.tan(fieldOfView / 2);
  const along = plus(plus(plus([0, 0, 0], outwards, -1), right, x * half * aspect), up, y * half);
  const length = Math.hypot(...along);
  return {
    from: eyeOf(gaze, stand),
    along: [along[0] / length, along[1] / length, along[2] / length],
  };
}
