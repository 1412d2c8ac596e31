import { describe, expect, it } from 'vitest';

import { cornerAt, fineness, outlineOf, trianglesOf } from './bead_profile';
import { levels } from './quality';

const beads = [
  { name: 'cylinder', radius: 0.8, half: 0.65, hole: 0.4, rim: 0.16 },
  { name: 'round', radius: 1.1, half: 0.75, hole: 0.38, rim: 0.75 },
  { name: 'long', radius: 0.9, half: 3, hole: 0.5, rim: 0.1 },
];

describe.each(levels)('a %s outline', (level) => {
  const outline = outlineOf(level);
  const { sides, facing } = fineness[level];

  it.each(beads)('of a $name bead keeps within its sizes and reaches them', (bead) => {
    const corners = outline.map((corner) => cornerAt(corner, bead.radius, bead.half, bead.hole, bead.rim));
    expect(Math.max(...corners.map((c) => c.r))).toBeCloseTo(bead.radius, 9);
    expect(Math.max(...corners.map((c) => c.z))).toBeCloseTo(bead.half, 9);
    expect(Math.min(...corners.map((c) => c.z))).toBeCloseTo(-bead.half, 9);
    if (fineness[level].bore) expect(Math.min(...corners.map((c) => c.r))).toBeCloseTo(bead.hole, 9);
    for (const [i, corner] of corners.entries()) {
      const other = corners[corners.length - 1 - i];
      expect(corner.r).toBeCloseTo(other?.r ?? NaN, 12);
      expect(corner.z).toBeCloseTo(-(other?.z ?? NaN), 12);
    }
  });

  it('has unit normals', () => {
    for (const { normal } of outline) expect(Math.hypot(...normal)).toBeCloseTo(1, 9);
  });

  it.each(beads)('of a $name bead turns every triangle outwards', (bead) => {
    const points = Array.from({ length: sides }, (_, side) =>
      outline.map((corner) => {
        const { r, z } = cornerAt(corner, bead.radius, bead.half, bead.hole, bead.rim);
        const turn = (2 * Math.PI * side) / sides;
        const normal = [
          corner.normal[0] * Math.cos(turn),
          corner.normal[0] * Math.sin(turn),
          corner.normal[1],
        ];
        return { at: [r * Math.cos(turn), r * Math.sin(turn), z], normal };
      }),
    ).flat();
    const triangles = trianglesOf(outline, sides, facing);
    let smallest = Infinity;
    let least = Infinity;
    for (let i = 0; i < triangles.length; i += 3) {
      const [a, b, c] = [0, 1, 2].map((j) => points[triangles[i + j] ?? 0]);
      if (!a || !b || !c) throw new Error('a triangle without corners');
      const p = b.at.map((v, j) => v - (a.at[j] ?? 0));
      const q = c.at.map((v, j) => v - (a.at[j] ?? 0));
      const [p0 = 0, p1 = 0, p2 = 0, q0 = 0, q1 = 0, q2 = 0] = [...p, ...q];
      const face = [p1 * q2 - p2 * q1, p2 * q0 - p0 * q2, p0 * q1 - p1 * q0];
      const mean = [0, 1, 2].map((j) => (a.normal[j] ?? 0) + (b.normal[j] ?? 0) + (c.normal[j] ?? 0));
      least = Math.min(
        least,
        face.reduce((sum, v, j) => sum + v * (mean[j] ?? 0), 0),
      );
      smallest = Math.min(smallest, Math.hypot(...face) / 2);
    }
    expect(least).toBeGreaterThanOrEqual(-1e-9);
    // The flat end of a round bead has no width.
    if (bead.name !== 'round') expect(smallest).toBeGreaterThan(1e-6);
  });

  it('leaves out what is turned away where only the front is wanted, and only there', () => {
    const whole = trianglesOf(outline, sides, false).length;
    const front = trianglesOf(outline, sides, true).length;
    expect(front).toBeLessThan(whole);
    expect(front).toBeGreaterThan(whole * 0.3);
  });
});

it('takes fewer triangles from level to level', () => {
  const counts = levels.map(
    (level) => trianglesOf(outlineOf(level), fineness[level].sides, fineness[level].facing).length / 3,
  );
  for (const [i, count] of counts.entries()) if (i > 0) expect(count).toBeLessThan(counts[i - 1] ?? 0);
  expect(counts.at(-1)).toBeLessThanOrEqual(24);
});
