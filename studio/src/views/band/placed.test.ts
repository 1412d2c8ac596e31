import { describe, expect, it } from 'vitest';

import { mm } from '../../engine/units';
import { placedBand, readPositions, sizeOf } from './placed';

/** Two beads and one stretch of thread, as the server writes them. */
function bytes(): ArrayBuffer {
  const buffer = new ArrayBuffer(20 + 2 * 4 + 2 * 8 * 4 + 8);
  const view = new DataView(buffer);
  [...'EvB2'].forEach((letter, i) => view.setUint8(i, letter.charCodeAt(0)));
  [2, 8, 1, 1].forEach((number, i) => view.setUint32(4 + 4 * i, number, true));
  [0, 1 | (2 << 16)].forEach((cell, i) => view.setUint32(20 + 4 * i, cell, true));
  [1, 2, 3, 0, 0, 1, 0.8, 0.65, 4, 5, 6, 1, 0, 0, 0.8, 0.65].forEach((real, i) =>
    view.setFloat32(28 + 4 * i, real, true),
  );
  [1, 2].forEach((mouth, i) => view.setUint32(92 + 4 * i, mouth, true));
  return buffer;
}

const noTables = { beads: [], threads: [], forms: [], techniques: [], finishes: [] };

const lattice = {
  columns: 3,
  edge: 4,
  drop: 1,
  holes: 'across',
  edgeRound: true,
  columnsRound: false,
  columnMm: mm(1.3),
  edgeMm: mm(1.6),
} as const;

describe('places of beads', () => {
  it('are read as they were written', () => {
    const { cells, seats, closed, mouths } = readPositions(bytes());
    expect([...cells]).toEqual([0, 0x20001]);
    expect([...seats]).toEqual([1, 2, 3, 0, 0, 1, 4, 5, 6, 1, 0, 0]);
    expect(closed).toBe(true);
    expect([...mouths]).toEqual([1, 2]);
  });

  it('that end too soon, or are something else, are refused', () => {
    expect(() => readPositions(bytes().slice(0, -4))).toThrow(/bytes/);
    const other = bytes();
    new DataView(other).setUint8(3, 0x31);
    expect(() => readPositions(other)).toThrow(/form/);
    expect(() => readPositions(new ArrayBuffer(3))).toThrow(/form/);
  });

  it('become a band on a ring', () => {
    const band = placedBand(readPositions(bytes()), lattice, sizeOf(undefined, noTables), undefined, 0.2);
    expect(band.lie).toBe('closed');
    expect([...band.cellOf]).toEqual([0, 7]);
    expect(band.ring?.places).toBe(8);
    expect([...(band.ring?.placeOf ?? [])]).toEqual([0, 5]);
  });
});

describe('the size of a bead', () => {
  it('is the project’s, else the tables’', () => {
    const known = {
      id: 'round-8',
      name: '8/0 round',
      kind: 'round',
      diameter_mm: 3,
      length_mm: 2,
      hole_mm: 1,
      rim_mm: 0.9,
      beads_per_gram: 40,
    } as const;
    const tables = { ...noTables, beads: [known] };
    expect(sizeOf({ id: 'round-8' }, tables)).toEqual({
      kind: 'round',
      diameter: 3,
      length: 2,
      hole: 1,
      rim: 0.9,
    });
    expect(sizeOf({ id: 'round-8', diameter_mm: 3.1 }, tables).diameter).toBe(3.1);
  });
});
