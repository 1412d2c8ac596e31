import { describe, expect, it } from 'vitest';

import { noBead } from '../../band/cells';
import { mm } from '../../engine/units';
import { groundOf, linesOf, operationOf, type Drawn } from './operation_of';

const lattice = {
  columns: 4,
  edge: 3,
  drop: 1,
  holes: 'across',
  edgeRound: true,
  columnsRound: false,
  columnMm: mm(1.3),
  edgeMm: mm(1.6),
} as const;
const legend = [
  { letter: 'A', name: 'night', colour: '#101030', bead: 'cylinder-11' },
  { letter: 'B', name: 'moon', colour: '#ffffee', bead: 'cylinder-11' },
];
// prettier-ignore
const beads = Uint16Array.from([
  0, 0, 0, 0,
  0, 1, 1, 0,
  0, 0, 1, 0,
]);
const drawn: Drawn = { band: 2, lattice, beads, legend, stamp: undefined, ground: 0 };
const selection = { from: { column: 2, step: 2 }, to: { column: 1, step: 1 } };

describe('what is asked for', () => {
  it('names cells by column and step', () => {
    expect(operationOf({ kind: 'beads', cells: [0, 6], bead: 1 }, drawn)).toEqual({
      do: 'set',
      band: 2,
      cells: [
        [0, 0],
        [2, 1],
      ],
      letter: 'B',
    });
    expect(operationOf({ kind: 'beads', cells: [1], bead: noBead }, drawn)).toMatchObject({ letter: '.' });
    expect(operationOf({ kind: 'beads', cells: [], bead: 1 }, drawn)).toBeUndefined();
  });

  it('makes one change of mirrored shapes', () => {
    const stretch = { from: { column: 0, step: 0 }, to: { column: 1, step: 2 } };
    const one = { do: 'ellipse', band: 2, from: [0, 0], to: [1, 2], letter: 'B', filled: false };
    const shape = { kind: 'ellipse', bead: 1, filled: false } as const;
    expect(operationOf({ ...shape, stretches: [stretch] }, drawn)).toEqual(one);
    expect(operationOf({ ...shape, stretches: [stretch, stretch] }, drawn)).toEqual({
      do: 'several',
      operations: [one, one],
    });
  });

  it('moves what is selected, leaving the ground', () => {
    expect(operationOf({ kind: 'move', selection, to: { column: 3, step: 0 } }, drawn)).toEqual({
      do: 'several',
      operations: [
        { do: 'rectangle', band: 2, from: [1, 1], to: [2, 2], letter: 'A', filled: true },
        { do: 'press', band: 2, at: [3, 0], lines: ['2B', '1A 1B'], shift: 1 },
      ],
    });
  });

  it('asks nothing where no bead changes', () => {
    expect(operationOf({ kind: 'pick', bead: 1 }, drawn)).toBeUndefined();
    expect(operationOf({ kind: 'stamp', at: { column: 0, step: 0 } }, drawn)).toBeUndefined();
  });
});

describe('the ground', () => {
  it('is what most of the band outside the selection is made of', () => {
    expect(groundOf(lattice, beads, undefined)).toBe(0);
    const mostlyMoon = beads.map((bead) => 1 - bead);
    expect(groundOf(lattice, mostlyMoon, undefined)).toBe(1);
    const everything = { from: { column: 0, step: 0 }, to: { column: 3, step: 2 } };
    expect(groundOf(lattice, mostlyMoon, everything)).toBe(1);
    // Three beads are outside; they are moon.
    const all = Uint16Array.from([1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0]);
    expect(groundOf(lattice, all, { from: { column: 1, step: 0 }, to: { column: 3, step: 2 } })).toBe(1);
  });
});

describe('a piece', () => {
  it('is written in runs', () => {
    const stamp = { columns: 3, edge: 2, beads: Uint16Array.from([0, 0, 1, noBead, 1, 1]), shift: 0 };
    expect(linesOf(stamp, legend)).toEqual(['2A 1B', '1. 2B']);
  });
});
