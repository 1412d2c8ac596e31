import { describe, expect, it } from 'vitest';

import { noBead } from './cells';
import answers from './engine-answers.json';
import { neighbours, reflection } from './grid';
import { boxOf } from './lattice';
import { cellOf, indexOf, type Mirror, sameCell, type ShapeKind } from './model';
import { fillCells, lineCells, shapeCells, strokeCells } from './shapes';
import { everyCell, filledWith, lattice, seeded, squares } from './testing';

const sorted = (cells: readonly number[]) => cells.toSorted((a, b) => a - b);

/** Drawings that the engine made on charts drawn by lot: see tools/engine_answers.cpp. */
describe("the engine's own drawings", () => {
  it.each(answers.map((answer, i) => ({ i, ...answer })))('$i $kind', (answer) => {
    const on = lattice(answer.columns, answer.edge, { drop: answer.drop, edgeRound: answer.round });
    const cells = filledWith(on, (cell) => {
      const letter = answer.cells.charAt(indexOf(on, cell));
      return letter === '.' ? noBead : letter.charCodeAt(0) - 65;
    });
    const [fromColumn = 0, fromStep = 0] = answer.from;
    const [toColumn = 0, toStep = 0] = answer.to;
    const from = { column: fromColumn, step: fromStep };
    const stretch = { from, to: { column: toColumn, step: toStep } };
    const drawn =
      answer.kind === 'fill'
        ? fillCells(on, cells, from)
        : shapeCells(on, cells, answer.kind as ShapeKind, stretch, answer.filled);
    const expected = answer.changed === '' ? [] : answer.changed.split(' ').map(Number);
    expect(sorted(drawn)).toEqual(expected);
    const mirrors: [Mirror, string][] = [
      ['across', 'mirror across'],
      ['along', 'mirror along'],
      ['half turn', 'half turn'],
    ];
    for (const [mirror, name] of mirrors)
      expect(reflection(on, cells, mirror).exact).toBe(answer.symmetries.includes(name));
  });
});

describe('lines', () => {
  it('hold both ends and hang together where columns are shifted', () => {
    const random = seeded(7);
    const on = lattice(11, 14);
    const cells = filledWith(on);
    for (let i = 0; i < 200; ++i) {
      const stretch = {
        from: { column: random(11), step: random(14) },
        to: { column: random(11), step: random(14) },
      };
      const drawn = lineCells(on, cells, stretch);
      expect(drawn).toContain(indexOf(on, stretch.from));
      expect(drawn).toContain(indexOf(on, stretch.to));
      for (const index of drawn) {
        const beside = neighbours(on, cellOf(on, index)).map((cell) => indexOf(on, cell));
        expect(drawn.length === 1 || beside.some((other) => drawn.includes(other))).toBe(true);
      }
    }
  });
});

describe('strokes', () => {
  it('leave no gap between two samples, however far apart', () => {
    const random = seeded(11);
    for (const on of [lattice(20, 20), lattice(20, 20, { holes: 'along' })])
      for (let i = 0; i < 200; ++i) {
        const at = () => ({ x: 0.01 + random(1000) * 0.0267, y: 1 + random(1000) * 0.031 });
        const drawn = strokeCells(on, at(), at());
        expect(drawn.length).toBeGreaterThan(0);
        drawn.slice(1).forEach((cell, k) => {
          const before = drawn[k];
          if (before) expect(neighbours(on, before).some((other) => sameCell(other, cell))).toBe(true);
        });
      }
  });

  it('go from a cell to one that touches it at a corner at least where four beads meet at a point', () => {
    const random = seeded(13);
    for (const drop of [0, 2]) {
      const on = lattice(20, 20, { drop });
      for (let i = 0; i < 200; ++i) {
        const at = () => ({ x: 0.01 + random(1000) * 0.0267, y: 1 + random(1000) * 0.031 });
        const drawn = strokeCells(on, at(), at());
        drawn.slice(1).forEach((cell, k) => {
          const before = drawn[k];
          if (!before) return;
          expect(Math.abs(cell.column - before.column)).toBeLessThanOrEqual(1);
          expect(Math.abs(cell.step - before.step)).toBeLessThanOrEqual(1);
        });
      }
    }
  });

  it('along the middle of a row of sides of squares hold every one of them', () => {
    const on = squares(9, 9);
    const box = boxOf(on, { column: 1, step: 4 });
    const y = box.y + box.height / 2;
    const drawn = strokeCells(on, { x: box.x + box.width / 2, y }, { x: box.x + 3 * on.columnMm, y });
    for (const column of [1, 3, 5, 7]) expect(drawn).toContainEqual({ column, step: 4 });
  });

  it('see nothing beside the band', () => {
    const on = lattice(4, 4);
    expect(strokeCells(on, { x: -5, y: -5 }, { x: -5, y: 20 })).toEqual([]);
  });
});

describe('fills', () => {
  it('are all of one bead and take every neighbour of that bead', () => {
    const random = seeded(17);
    const on = lattice(12, 12, { edgeRound: true });
    const cells = filledWith(on, () => random(2));
    for (const from of everyCell(on).slice(0, 30)) {
      const drawn = new Set(fillCells(on, cells, from));
      const bead = cells.beads[indexOf(on, from)];
      for (const index of drawn) {
        expect(cells.beads[index]).toBe(bead);
        for (const beside of neighbours(on, cellOf(on, index)))
          if (cells.beads[indexOf(on, beside)] === bead) expect(drawn.has(indexOf(on, beside))).toBe(true);
      }
    }
  });
});
