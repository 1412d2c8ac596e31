/**
 * A form's body: its section drawn along the holes, the ends rounded off a little, the holes through it. Many forms go into one
 * geometry, so that a piece's forms are drawn together.
 *
 * Properties (form_geometry.test.ts): every corner lies within the section's box and the length; each hole's wall has the hole's
 * diameter; normals are unit and the sides' point outwards.
 */
import { ShapeUtils, Vector2 } from 'three';

import type { FormShape, Point, Transform } from './beads';
import { movedDirection, movedPoint } from './vectors';

export interface Body {
  readonly positions: number[];
  readonly normals: number[];
  readonly triangles: number[];
}
export const emptyBody = (): Body => ({ positions: [], normals: [], triangles: [] });

/** The ends of glass are ground round: a quarter of a millimetre to one, from memory. */
const roundedEnd = 0.7;
const roundingSteps = 4;
const holeSides = 20;

type Put = (x: number, y: number, z: number, nx: number, ny: number, nz: number) => number;

/** Outward normals at the corners of a counterclockwise polygon. */
export function normalsOf(section: readonly Point[]): Point[] {
  return section.map((_, i) => {
    const before = section[(i + section.length - 1) % section.length] ?? { x: 0, y: 0 };
    const after = section[(i + 1) % section.length] ?? { x: 0, y: 0 };
    const [dx, dy] = [after.x - before.x, after.y - before.y];
    const length = Math.hypot(dx, dy) || 1;
    return { x: dy / length, y: -dx / length };
  });
}

interface Narrowing {
  /** Shares of the section's width and thickness. */
  readonly across: number;
  readonly through: number;
  readonly z: number;
  /** How far the normal leans towards the end. */
  readonly lean: number;
}

/** How the body narrows towards its ends, from below to above. */
function profileOf(form: FormShape): Narrowing[] {
  const half = form.length / 2;
  const reach = (of: (p: Point) => number) => Math.max(...form.section.map((p) => Math.abs(of(p)))) || 1;
  const [width, thickness] = [reach((p) => p.x), reach((p) => p.y)];
  const rounding = Math.min(roundedEnd, half / 2, width / 3, thickness / 3);
  const upper = Array.from({ length: roundingSteps + 1 }, (_, j) => {
    const lean = ((j / roundingSteps) * Math.PI) / 2;
    const inwards = rounding * (1 - Math.cos(lean));
    const z = half - rounding * (1 - Math.sin(lean));
    return { across: 1 - inwards / width, through: 1 - inwards / thickness, z, lean };
  });
  return [...upper.map((ring) => ({ ...ring, z: -ring.z, lean: -ring.lean })).toReversed(), ...upper];
}

function sides(form: FormShape, put: Put, body: Body): void {
  const normals = normalsOf(form.section);
  const profile = profileOf(form);
  const rings = profile.map(({ across, through, z, lean }) =>
    form.section.map((p, i) => {
      const n = normals[i] ?? { x: 1, y: 0 };
      return put(p.x * across, p.y * through, z, n.x * Math.cos(lean), n.y * Math.cos(lean), Math.sin(lean));
    }),
  );
  rings.slice(1).forEach((ring, k) => bridge(rings[k] ?? [], ring, body));
  const last = profile.at(-1);
  if (last) caps(form, last, put, body);
}

/** Two rings of as many corners, the second one higher, seen from outside. */
function bridge(lower: readonly number[], upper: readonly number[], body: Body): void {
  lower.forEach((a, i) => {
    const next = (i + 1) % lower.length;
    const [b = 0, c = 0, d = 0] = [lower[next], upper[i], upper[next]];
    body.triangles.push(a, b, c, c, b, d);
  });
}

function caps(form: FormShape, { across, through }: Narrowing, put: Put, body: Body): void {
  const half = form.length / 2;
  const outline = form.section.map((p) => new Vector2(p.x * across, p.y * through));
  const holes = form.holes.map((hole) =>
    circle(hole.diameter / 2).map((p) => new Vector2(hole.x + p.x, hole.y + p.y)),
  );
  const faces = ShapeUtils.triangulateShape(outline, holes);
  for (const end of [1, -1]) {
    const corners = [outline, ...holes].flat().map((p) => put(p.x, p.y, end * half, 0, 0, end));
    for (const face of faces) {
      const [a = 0, b = 0, c = 0] = face.map((i) => corners[i] ?? 0);
      body.triangles.push(...(end > 0 ? [a, b, c] : [a, c, b]));
    }
  }
  form.holes.forEach((hole) => {
    const wall = (z: number) =>
      circle(hole.diameter / 2).map((p) =>
        put(hole.x + p.x, hole.y + p.y, z, -p.x / (hole.diameter / 2), -p.y / (hole.diameter / 2), 0),
      );
    bridge(wall(half), wall(-half), body);
  });
}

const circle = (radius: number): Point[] =>
  Array.from({ length: holeSides }, (_, i) => {
    const turn = (2 * Math.PI * i) / holeSides;
    return { x: radius * Math.cos(turn), y: radius * Math.sin(turn) };
  });

/** Adds a form to a body. A section of fewer than three corners or without length adds nothing. */
export function addForm(body: Body, form: FormShape, transform: Transform): void {
  if (form.section.length < 3 || form.length <= 0) return;
  const put: Put = (x, y, z, nx, ny, nz) => {
    body.positions.push(...movedPoint(transform, x, y, z));
    body.normals.push(...movedDirection(transform, nx, ny, nz));
    return body.positions.length / 3 - 1;
  };
  sides(form, put, body);
}
