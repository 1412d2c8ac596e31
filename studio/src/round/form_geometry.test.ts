import { describe, expect, it } from 'vitest';

import { mm } from '../engine/units';
import type { FormShape, Point } from './beads';
import { addForm, emptyBody, normalsOf } from './form_geometry';
import { alongAxis, unmoved } from './vectors';

const ellipse = (width: number, height: number): Point[] =>
  Array.from({ length: 40 }, (_, i) => {
    const turn = (2 * Math.PI * i) / 40;
    return { x: (width / 2) * Math.cos(turn), y: (height / 2) * Math.sin(turn) };
  });
const form: FormShape = {
  kind: 'oval',
  section: ellipse(17, 5),
  length: mm(9),
  holes: [
    { x: -3, y: 0, diameter: 1.5 },
    { x: 3, y: 0, diameter: 1.5 },
  ],
};
const points = (numbers: readonly number[]) =>
  Array.from(
    { length: numbers.length / 3 },
    (_, i) => [...numbers.slice(3 * i, 3 * i + 3)] as [number, number, number],
  );

describe('addForm', () => {
  const body = emptyBody();
  addForm(body, form, unmoved);
  const corners = points(body.positions);

  it('keeps within the section and the length, and reaches them', () => {
    const most = (j: number) => Math.max(...corners.map((corner) => Math.abs(corner[j] ?? 0)));
    expect(most(0)).toBeCloseTo(8.5, 9);
    expect(most(1)).toBeCloseTo(2.5, 9);
    expect(most(2)).toBeCloseTo(4.5, 9);
  });

  it('has unit normals, and faces that turn with them', () => {
    const normals = points(body.normals);
    expect(Math.max(...normals.map((normal) => Math.abs(Math.hypot(...normal) - 1)))).toBeLessThan(1e-9);
    let least = Infinity;
    for (let i = 0; i < body.triangles.length; i += 3) {
      const [a = 0, b = 0, c = 0] = body.triangles.slice(i, i + 3);
      const [p, q, r] = [corners[a], corners[b], corners[c]];
      const n = normals[a];
      if (!p || !q || !r || !n) throw new Error('a triangle without corners');
      const [u0, u1, u2] = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
      const [v0, v1, v2] = [r[0] - p[0], r[1] - p[1], r[2] - p[2]];
      const face = (u1 * v2 - u2 * v1) * n[0] + (u2 * v0 - u0 * v2) * n[1] + (u0 * v1 - u1 * v0) * n[2];
      least = Math.min(least, face);
    }
    expect(least).toBeGreaterThanOrEqual(-1e-9);
  });

  it('leaves the holes open', () => {
    // No corner of a cap lies within a hole, and its wall lies on it.
    let wall = 0;
    for (const [x, y, z] of corners) {
      const from = Math.min(Math.hypot(x - 3, y), Math.hypot(x + 3, y));
      if (Math.abs(z) > 4.49) expect(from).toBeGreaterThan(0.7499);
      if (Math.abs(from - 0.75) < 1e-9) wall++;
    }
    expect(wall).toBeGreaterThan(100);
  });

  it('is put where its transform says, one after the other', () => {
    const two = emptyBody();
    addForm(two, form, unmoved);
    addForm(two, form, alongAxis([50, 0, 0], [0, 1, 0]));
    expect(two.triangles.length).toBe(2 * body.triangles.length);
    expect(Math.max(...two.triangles)).toBe(2 * corners.length - 1);
    const there = points(two.positions).slice(corners.length);
    expect(Math.max(...there.map((corner) => Math.abs(corner[1])))).toBeCloseTo(4.5, 9);
  });

  it('adds nothing for what is no form', () => {
    const none = emptyBody();
    addForm(none, { ...form, section: [] }, unmoved);
    addForm(none, { ...form, length: mm(0) }, unmoved);
    expect(none.positions).toEqual([]);
  });
});

it('has normals that point outwards from a counterclockwise polygon', () => {
  normalsOf(form.section).forEach((n, i) => {
    const p = form.section[i] ?? { x: 0, y: 0 };
    expect(n.x * p.x + n.y * p.y).toBeGreaterThan(0);
    expect(Math.hypot(n.x, n.y)).toBeCloseTo(1, 9);
  });
});
