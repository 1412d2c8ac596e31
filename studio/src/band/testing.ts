/** Bands for tests. */
import { mm } from '../engine/units';
import { type Cell, type Cells, noBead } from './cells';
import type { Worktop } from './drafts';
import { holdsBead, type Lattice } from './lattice';
import type { LegendEntry } from './model';

export function lattice(columns: number, edge: number, more: Partial<Lattice> = {}): Lattice {
  return {
    columns,
    edge,
    drop: 1,
    holes: 'across',
    edgeRound: false,
    columnsRound: false,
    columnMm: mm(1.35),
    edgeMm: mm(1.66),
    ...more,
  };
}

export const squares = (columns: number, edge: number): Lattice =>
  lattice(columns, edge, { holes: 'squares', drop: 0, columnMm: mm(2.6), edgeMm: mm(2.6) });

/** Numbers that look random and are the same in every run: a linear congruential generator with the constants of C's rand, from memory. */
export function seeded(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1103515245) + 12345) >>> 0;
    return Math.floor(((state >>> 8) / 2 ** 24) * below);
  };
}

export function filledWith(on: Lattice, bead: (cell: Cell) => number = () => 0): Cells {
  const beads = new Uint16Array(on.columns * on.edge).fill(noBead);
  for (const cell of everyCell(on)) beads[cell.step * on.columns + cell.column] = bead(cell);
  return { columns: on.columns, edge: on.edge, beads };
}

export const everyCell = (on: Lattice): Cell[] =>
  Array.from({ length: on.columns * on.edge }, (_, i) => ({
    column: i % on.columns,
    step: Math.floor(i / on.columns),
  })).filter((cell) => holdsBead(on, cell));

export const legend: readonly LegendEntry[] = [
  { letter: 'A', name: 'night blue', colour: '#17233f', finish: 'matte' },
  { letter: 'B', name: 'moon ivory', colour: '#f3e9cf', finish: 'opaque' },
  { letter: 'AA', name: 'star gold', colour: '#d8a63a', finish: 'metallic' },
];

export function worktop(on: Lattice, more: Partial<Worktop> = {}): Worktop {
  return {
    lattice: on,
    cells: filledWith(on),
    tool: 'bead',
    colour: 1,
    filled: true,
    reflections: [],
    selection: undefined,
    stamp: undefined,
    ...more,
  };
}
