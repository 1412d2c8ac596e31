import { describe, expect, it } from 'vitest';

import { firstBead, toRounded } from './pick';
import { alongAxis, cross, dot, movedDirection, movedPoint, unit, unmoved, type Vec } from './vectors';

const seats = (...beads: [Vec, Vec][]) => Float32Array.from(beads.flatMap(([at, axis]) => [...at, ...axis]));
const sizes = (n: number, rim = 0.16) =>
  Float32Array.from(Array.from({ length: n }, () => [0.8, 0.65, 0.4, rim]).flat());

describe('firstBead', () => {
  const three = seats(
    [
      [0, 0, 0],
      [1, 0, 0],
    ],
    [
      [0, 0, 2],
      [1, 0, 0],
    ],
    [
      [3, 0, 0],
      [0, 0, 1],
    ],
  );

  it('is the nearer of two that lie behind each other', () => {
    expect(firstBead({ from: [0, 0, 10], along: [0, 0, -1] }, three, sizes(3))).toBe(1);
    expect(firstBead({ from: [0, 0, -10], along: [0, 0, 1] }, three, sizes(3))).toBe(0);
  });
  it('passes by beads that are not there', () => {
    const gone = sizes(3);
    gone.set([0, 0, 0, 0], 4);
    expect(firstBead({ from: [0, 0, 10], along: [0, 0, -1] }, three, gone)).toBe(0);
  });
  it('is none beside them and behind the eye', () => {
    expect(firstBead({ from: [0, 1, 10], along: [0, 0, -1] }, three, sizes(3))).toBeUndefined();
    expect(firstBead({ from: [0, 0, 10], along: [0, 0, 1] }, three, sizes(3))).toBeUndefined();
  });
  it('passes the corner of a round bead that a cylinder would have', () => {
    const along: Vec = [0, 0, -1];
    const one = seats([
      [0, 0, 0],
      [1, 0, 0],
    ]);
    expect(firstBead({ from: [0.6, 0.76, 5], along }, one, sizes(1, 0))).toBe(0);
    expect(firstBead({ from: [0.6, 0.76, 5], along }, one, sizes(1, 0.65))).toBeUndefined();
  });
  it('agrees with a bead cut into small steps, from all sides', () => {
    let seed = 7;
    const random = () => (seed = (seed * 16807) % 2147483647) / 2147483647 - 0.5;
    let met = 0;
    for (let i = 0; i < 120; i++) {
      const axis = unit([random(), random(), random()]);
      const from: Vec = [2.4 * random(), 2.4 * random(), 6];
      const along = unit([random() * 0.2, random() * 0.2, -1]);
      const found = firstBead({ from, along }, seats([[0, 0, 0], axis]), sizes(1));
      let deepest = Infinity;
      for (let t = 3; t < 9; t += 0.005) {
        const p: Vec = [from[0] + t * along[0], from[1] + t * along[1], from[2] + t * along[2]];
        const z = dot(p, axis);
        deepest = Math.min(deepest, toRounded(Math.sqrt(Math.max(0, dot(p, p) - z * z)), z, 0.8, 0.65, 0.16));
      }
      if (Math.abs(deepest) < 0.02) continue;
      expect(found === 0).toBe(deepest < 0);
      if (found === 0) met++;
    }
    expect(met).toBeGreaterThan(15);
  });
});

describe('alongAxis', () => {
  it('is a rotation that puts z along the axis and the origin in its place', () => {
    for (const axis of [
      [0, 0, 1],
      [0, 0, -1],
      [1, 0, 0],
      [0, 1, 0],
      [0.6, 0, 0.8],
      [-2, 3, 1],
    ] as Vec[]) {
      const m = alongAxis([1, 2, 3], axis);
      const [x, y, z] = [movedDirection(m, 1, 0, 0), movedDirection(m, 0, 1, 0), movedDirection(m, 0, 0, 1)];
      for (const [a, b] of [
        [x, y],
        [y, z],
        [z, x],
      ] as const)
        expect(dot(a, b)).toBeCloseTo(0, 12);
      expect(dot(cross(x, y), z)).toBeCloseTo(1, 12);
      expect(dot(z, unit(axis))).toBeCloseTo(1, 12);
      expect(movedPoint(m, 0, 0, 0)).toEqual([1, 2, 3]);
      expect(dot(movedPoint(m, 0, 0, 2), z) - dot([1, 2, 3], z)).toBeCloseTo(2, 12);
    }
  });
  it('leaves all as it is without a transform', () => {
    expect(movedPoint(unmoved, 1, 2, 3)).toEqual([1, 2, 3]);
  });
});
