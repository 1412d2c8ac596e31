/** Three numbers that are a place or a direction, and what is done with them. */
import type { Transform } from './beads';

export type Vec = readonly [number, number, number];

export const plus = (a: Vec, b: Vec, times = 1): Vec => [
  a[0] + b[0] * times,
  a[1] + b[1] * times,
  a[2] + b[2] * times,
];
export const dot = (a: Vec, b: Vec): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vec, b: Vec): Vec => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export function unit(a: Vec): Vec {
  const length = Math.hypot(...a);
  return length > 0 ? [a[0] / length, a[1] / length, a[2] / length] : [0, 0, 1];
}

/** Puts +z along `axis` and the origin at `at`: a rotation without mirroring. The turn about the axis is free and means nothing. */
export function alongAxis(at: Vec, axis: Vec): Transform {
  const z = unit(axis);
  const x = unit(cross(Math.abs(z[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0], z));
  const y = cross(z, x);
  return [...x, 0, ...y, 0, ...z, 0, ...at, 1];
}

export const unmoved: Transform = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];

const at = (m: Transform, i: number): number => m[i] ?? 0;

export const movedPoint = (m: Transform, x: number, y: number, z: number): Vec => [
  at(m, 0) * x + at(m, 4) * y + at(m, 8) * z + at(m, 12),
  at(m, 1) * x + at(m, 5) * y + at(m, 9) * z + at(m, 13),
  at(m, 2) * x + at(m, 6) * y + at(m, 10) * z + at(m, 14),
];
export const movedDirection = (m: Transform, x: number, y: number, z: number): Vec =>
  unit([
    at(m, 0) * x + at(m, 4) * y + at(m, 8) * z,
    at(m, 1) * x + at(m, 5) * y + at(m, 9) * z,
    at(m, 2) * x + at(m, 6) * y + at(m, 10) * z,
  ]);
