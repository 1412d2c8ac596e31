import { describe, expect, it } from 'vitest';

import type { Lattice } from '../band/lattice';
import { mm } from '../engine/units';
import { onTrack, ringOf, shortWay, slideSeats, trackOf } from './slide';

/** Beads on an ellipse, a place each half bead, column after column along z. */
function band(columns: number, edge: number, drop: 0 | 1) {
  const lattice: Lattice = {
    columns,
    edge,
    drop,
    holes: 'across',
    edgeRound: true,
    columnsRound: false,
    columnMm: mm(1.3),
    edgeMm: mm(1.6),
  };
  const seats: number[] = [];
  for (let cell = 0; cell < columns * edge; cell++) {
    const column = cell % columns;
    const place = 2 * Math.floor(cell / columns) + (drop === 0 ? 0 : column % 2);
    const turn = (Math.PI * place) / edge;
    seats.push(9 * Math.cos(turn), 4 * Math.sin(turn), column * 1.3, 0, 0, 1);
  }
  const cellOf = Uint32Array.from({ length: columns * edge }, (_, cell) => cell);
  const ring = ringOf(lattice, cellOf);
  if (!ring) throw new Error('a closed band has a ring');
  const rest = Float32Array.from(seats);
  const track = trackOf(rest, ring);
  const slid = (by: number, from = rest) => {
    const into = new Float32Array(from.length);
    slideSeats(from, ring, track, by, into);
    return into;
  };
  return { rest, ring, track, slid, columns, edge };
}

const bead = (seats: Float32Array, i: number) => Array.from(seats.subarray(6 * i, 6 * i + 6));
function expectClose(a: Float32Array, b: Float32Array, within = 1e-4) {
  expect(a.length).toBe(b.length);
  expect(Math.max(...a.map((v, i) => Math.abs(v - (b[i] ?? NaN))))).toBeLessThan(within);
}

describe.each([
  [8, 28, 1],
  [5, 14, 1],
  [3, 11, 0],
] as const)('a band of %i by %i, drop %i', (columns, edge, drop) => {
  const { rest, ring, track, slid } = band(columns, edge, drop);

  it('stays by 0 and by the whole ring', () => {
    for (const by of [0, ring.places, -3 * ring.places]) expectClose(slid(by), rest);
  });

  it('moves each bead to the seat of the bead that lies so many steps on', () => {
    for (const beads of [1, 2, 5, -1, edge - 1]) {
      const moved = slid(2 * beads);
      const wanted = new Float32Array(rest.length);
      for (let i = 0; i < columns * edge; i++) {
        const step = (Math.floor(i / columns) + beads + edge) % edge;
        const there = step * columns + (i % columns);
        wanted.set(bead(rest, there), 6 * i);
      }
      expectClose(moved, wanted);
    }
  });

  it('only exchanges the seats of a column by whole beads', () => {
    const sorted = (seats: Float32Array, column: number) =>
      Array.from({ length: edge }, (_, step) =>
        bead(seats, step * columns + column)
          .map((v) => (Math.round(v * 1000) / 1000 + 0).toFixed(3))
          .join(' '),
      ).sort();
    for (let column = 0; column < columns; column++)
      expect(sorted(slid(6), column)).toEqual(sorted(rest, column));
  });

  it('comes back from there', () => {
    for (const by of [1, 2, 7, ring.places / 2]) {
      // Where the bead of each place has come to is where the way back begins.
      const placeOf = Uint16Array.from(ring.placeOf, (place) => (place + by) % ring.places);
      const back = new Float32Array(rest.length);
      slideSeats(slid(by), { ...ring, placeOf }, track, -by, back);
      expectClose(back, rest);
    }
  });

  it('by j and then by k is by j + k', () => {
    const placeOf = Uint16Array.from(ring.placeOf, (place) => (place + 3) % ring.places);
    const both = new Float32Array(rest.length);
    slideSeats(slid(3), { ...ring, placeOf }, track, 4.5, both);
    expectClose(both, slid(7.5));
  });

  it('keeps beads on the path between seats and moves them without a jump', () => {
    let before = slid(0);
    let farthestOff = 0;
    let longestStep = 0;
    for (let by = 0.25; by < 4; by += 0.25) {
      const now = slid(by);
      for (let i = 0; i < now.length; i += 6) {
        const [x, y] = [now[i] ?? NaN, now[i + 1] ?? NaN];
        farthestOff = Math.max(farthestOff, Math.abs(Math.hypot(x / 9, y / 4) - 1));
        longestStep = Math.max(longestStep, Math.hypot(x - (before[i] ?? NaN), y - (before[i + 1] ?? NaN)));
      }
      before = now;
    }
    expect(farthestOff).toBeLessThan(0.03);
    // A quarter of half a bead on the widest of these bands, and a little more where the curve is fastest.
    expect(longestStep).toBeLessThan(1);
  });

  it('has tangents that run counterclockwise, of length 1', () => {
    for (let place = 0; place < ring.places; place += 0.5) {
      const at = onTrack(track, place);
      expect(Math.hypot(at.tx, at.ty)).toBeCloseTo(1, 9);
      expect(at.x * at.ty - at.y * at.tx).toBeGreaterThan(0);
    }
  });
});

describe('ringOf', () => {
  const lattice: Lattice = {
    columns: 6,
    edge: 4,
    drop: 1,
    holes: 'across',
    edgeRound: false,
    columnsRound: false,
    columnMm: mm(1.3),
    edgeMm: mm(1.6),
  };
  it('has none for a flat piece', () => {
    expect(ringOf(lattice, Uint32Array.from([0, 1]))).toBeUndefined();
  });
  it('goes by columns where a tube is worked round, against their order', () => {
    const ring = ringOf({ ...lattice, columnsRound: true }, Uint32Array.from([0, 1, 5, 6]));
    expect(ring?.places).toBe(12);
    expect([...(ring?.placeOf ?? [])]).toEqual([0, 10, 2, 0]);
  });
});

it('puts a place without beads between its neighbours', () => {
  const seats = Float32Array.from([1, 0, 0, 0, 0, 1, 0, 1, 0, 0, 0, 1, -1, 0, 0, 0, 0, 1, 0, -1, 0, 0, 0, 1]);
  const track = trackOf(seats, { places: 8, placeOf: Uint16Array.from([0, 2, 4, 6]) });
  for (let place = 0; place < 8; place++)
    expect(Math.hypot(track.x[place] ?? 0, track.y[place] ?? 0)).toBeGreaterThan(0.85);
});

it('goes the shorter way round', () => {
  for (let from = 0; from < 12; from++)
    for (let to = 0; to < 12; to++) {
      const by = shortWay(from, to, 12);
      expect(Math.abs(by)).toBeLessThanOrEqual(6);
      expect((from + by + 24) % 12).toBe(to);
    }
});
