import { describe, expect, it } from 'vitest';

import { mm } from '../engine/units';
import { cellsOfRuns, noBead } from './cells';
import { boxOf, cellAt, extentOf, holdsBead, type Lattice } from './lattice';

const lattices: Lattice[] = (['across', 'along', 'squares'] as const).flatMap((holes) =>
  [0, 1, 2].flatMap((drop) =>
    [
      [1, 1],
      [7, 5],
      [9, 13],
    ].map(([columns = 1, edge = 1]) => ({
      columns,
      edge,
      drop: holes === 'squares' ? 0 : drop,
      holes,
      edgeRound: false,
      columnsRound: false,
      columnMm: mm(1.35),
      edgeMm: mm(1.66),
    })),
  ),
);

const cellsOf = (lattice: Lattice) =>
  Array.from({ length: lattice.columns * lattice.edge }, (_, i) => ({
    column: i % lattice.columns,
    step: Math.floor(i / lattice.columns),
  })).filter((cell) => holdsBead(lattice, cell));

describe('lattice', () => {
  it('shows every bead within the piece and finds it again at its middle', () => {
    for (const lattice of lattices) {
      const whole = extentOf(lattice);
      for (const cell of cellsOf(lattice)) {
        const box = boxOf(lattice, cell);
        expect(box.x).toBeGreaterThanOrEqual(-1e-9);
        expect(box.y + box.height).toBeLessThanOrEqual(whole.height + 1e-9);
        expect(box.x + box.width).toBeLessThanOrEqual(whole.width + 1e-9);
        expect(cellAt(lattice, mm(box.x + box.width / 2), mm(box.y + box.height / 2))).toEqual(cell);
      }
    }
  });

  it('finds nothing beside the piece', () => {
    for (const lattice of lattices) {
      const { width, height } = extentOf(lattice);
      for (const [x, y] of [
        [-3, 1],
        [width + 3, 1],
        [0.5, -3],
        [0.5, height + 3],
      ] as const)
        expect(cellAt(lattice, mm(x), mm(y))).toBeUndefined();
    }
  });
});

describe('cells', () => {
  it('reads runs of letters', () => {
    const cells = cellsOfRuns(4, ['2A 1B 1.', '4AA'], ['A', 'B', 'AA']);
    expect([...cells.beads]).toEqual([0, 0, 1, noBead, 2, 2, 2, 2]);
  });
  it('refuses what is no run', () => {
    expect(() => cellsOfRuns(4, ['A2'], ['A'])).toThrow('A2');
  });
});
