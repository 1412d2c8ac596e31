import { describe, expect, it } from 'vitest';

import { aroundOf } from './around';
import type { Lie } from './beads';
import {
  bearings,
  eyeOf,
  fieldOfView,
  type Gaze,
  moved,
  nearer,
  restGaze,
  sightThrough,
  standOf,
  turned,
} from './gaze';
import { cross, dot, plus, type Vec } from './vectors';

const box = Float32Array.from(
  [-9, 9].flatMap((x) => [-4, 4].flatMap((y) => [-6, 6].flatMap((z) => [x + 2, y - 1, z + 5]))),
);
const around = aroundOf([{ numbers: box, width: 3 }], 0.8);
const lies: Lie[] = ['flat', 'closed', 'round', 'hung'];

describe.each(lies)('a piece that lies %s', (lie) => {
  const stand = standOf(lie);
  const rest = restGaze(around, 1.5, lie);

  it('has directions that are right-handed', () => {
    expect(dot(cross(stand.right, stand.up), stand.front)).toBeCloseTo(1, 12);
    for (const turn of [0, 0.4, 3, -2])
      for (const lift of [-1.2, 0, 0.7]) {
        const ways = bearings({ ...rest, turn, lift }, stand);
        expect(dot(cross(ways.right, ways.up), ways.outwards)).toBeCloseTo(1, 12);
      }
  });

  it('is seen from its front at no turn', () => {
    expect(bearings({ ...rest, turn: 0, lift: 0 }, stand).outwards.map((v) => v + 0)).toEqual(
      stand.front.map((v) => v + 0),
    );
  });

  it('comes back when it is turned there and back, and the eye keeps its distance', () => {
    const there = turned(rest, 0.7, 0.2);
    const back = turned(there, -0.7, -0.2);
    expect(back.turn).toBeCloseTo(rest.turn, 12);
    expect(back.lift).toBeCloseTo(rest.lift, 12);
    expect(Math.hypot(...plus(eyeOf(there, stand), there.target, -1))).toBeCloseTo(there.distance, 9);
  });

  it('never tips over', () => {
    for (const lift of [5, -5]) expect(Math.abs(turned(rest, 0, lift).lift)).toBeLessThan(Math.PI / 2);
  });

  it.each([0.5, 1, 1.5, 3])('lies wholly within a view of %f to 1 from rest', (aspect) => {
    const gaze = restGaze(around, aspect, lie);
    const { outwards, right, up } = bearings(gaze, stand);
    const half = Math.tan(fieldOfView / 2);
    let fullest = 0;
    for (let i = 0; i < box.length; i += 3) {
      const from = plus([box[i] ?? 0, box[i + 1] ?? 0, box[i + 2] ?? 0], gaze.target, -1);
      const depth = gaze.distance - dot(from, outwards);
      const across = (Math.abs(dot(from, right)) + 0.8) / (depth * half * aspect);
      const upwards = (Math.abs(dot(from, up)) + 0.8) / (depth * half);
      expect(across).toBeLessThan(1);
      expect(upwards).toBeLessThan(1);
      fullest = Math.max(fullest, across, upwards);
    }
    expect(fullest).toBeGreaterThan(0.7);
  });

  it('looks through the middle at its target and through a corner along the edge of the view', () => {
    const middle = sightThrough(rest, stand, 1.5, 0, 0);
    const at = plus(middle.from, middle.along, rest.distance);
    at.forEach((part, j) => expect(part).toBeCloseTo(rest.target[j] ?? NaN, 9));
    const { outwards, up } = bearings(rest, stand);
    const above = sightThrough(rest, stand, 1.5, 0, 1);
    expect(Math.atan2(dot(above.along, up), -dot(above.along, outwards))).toBeCloseTo(fieldOfView / 2, 12);
  });
});

describe('coming nearer and moving', () => {
  const rest = restGaze(around, 1, 'closed');
  it('stays between a bead and a room', () => {
    let gaze: Gaze = rest;
    for (let i = 0; i < 100; i++) gaze = nearer(gaze, 0.5, around);
    expect(gaze.distance).toBe(4);
    for (let i = 0; i < 100; i++) gaze = nearer(gaze, 2, around);
    expect(gaze.distance).toBeLessThan(1000);
  });
  it('moves what is looked at, never out of the piece', () => {
    const stand = standOf('closed');
    const once = moved(rest, 0.1, 0, stand, around);
    const way = plus(once.target, rest.target, -1);
    expect(Math.hypot(...way)).toBeCloseTo(0.2 * rest.distance * Math.tan(fieldOfView / 2), 9);
    let gaze: Gaze = rest;
    for (let i = 0; i < 50; i++) gaze = moved(gaze, 0.5, 0.5, stand, around);
    const off: Vec = plus(gaze.target, around.centre, -1);
    expect(Math.hypot(...off)).toBeLessThanOrEqual(around.radius + 1e-9);
  });
});

describe('aroundOf', () => {
  it('holds every point', () => {
    for (let i = 0; i < box.length; i += 3) {
      const from = plus([box[i] ?? 0, box[i + 1] ?? 0, box[i + 2] ?? 0], around.centre, -1);
      expect(Math.hypot(...from)).toBeLessThanOrEqual(around.radius);
    }
    expect(around.centre).toEqual([2, -1, 5]);
  });
  it('is something where nothing is', () => {
    expect(aroundOf([], 0).radius).toBeGreaterThan(0);
  });
});
