import { describe, expect, it } from 'vitest';

import { type Cell, noBead } from './cells';
import { type Direction, nearestHolding, neighbours, reflection, walk, withImages } from './grid';
import { holdsBead, type Lattice } from './lattice';
import { mirrors, sameCell } from './model';
import { everyCell, filledWith, lattice, squares } from './testing';

const lattices: Lattice[] = [
  ...[0, 1, 2].flatMap((drop) =>
    [true, false].flatMap((edgeRound) => [
      lattice(1, 4, { drop, edgeRound }),
      lattice(6, 24, { drop, edgeRound }),
      lattice(7, 5, { drop, edgeRound }),
    ]),
  ),
  lattice(8, 6, { columnsRound: true }),
  squares(7, 9),
  squares(9, 5),
  squares(3, 3),
];

const back: Record<Direction, Direction> = { up: 'down', down: 'up', left: 'right', right: 'left' };
const directions = Object.keys(back) as Direction[];
const key = ({ column, step }: Cell) => `${column},${step}`;

describe('walks', () => {
  it('return where they began, unless an edge held them', () => {
    for (const on of lattices)
      for (const cell of everyCell(on))
        for (const direction of directions) {
          const to = walk(on, cell, direction);
          if (!sameCell(to, cell)) expect(walk(on, to, back[direction])).toEqual(cell);
        }
  });

  it('visit every bead from any', () => {
    for (const on of lattices) {
      const all = everyCell(on);
      const [start] = all;
      if (!start) throw new Error('a lattice without beads');
      const seen = new Set([key(start)]);
      const open = [start];
      for (let cell = open.pop(); cell; cell = open.pop())
        for (const direction of directions) {
          const to = walk(on, cell, direction);
          if (seen.has(key(to))) continue;
          seen.add(key(to));
          open.push(to);
        }
      expect(seen.size).toBe(all.length);
    }
  });

  it('only ever stand where a bead is held', () => {
    for (const on of lattices)
      for (const cell of everyCell(on))
        for (const direction of directions) expect(holdsBead(on, walk(on, cell, direction))).toBe(true);
    const weave = squares(7, 9);
    for (let column = -2; column < 9; ++column)
      for (let step = -2; step < 11; ++step)
        expect(holdsBead(weave, nearestHolding(weave, { column, step }))).toBe(true);
  });

  it('go half a bead along to the neighbouring column, and no further', () => {
    const on = lattice(6, 4);
    expect(walk(on, { column: 0, step: 2 }, 'right')).toEqual({ column: 1, step: 2 });
    expect(walk(on, { column: 1, step: 2 }, 'right')).toEqual({ column: 2, step: 2 });
    expect(walk(on, { column: 0, step: 0 }, 'up')).toEqual({ column: 0, step: 0 });
    expect(walk({ ...on, edgeRound: true }, { column: 0, step: 0 }, 'up')).toEqual({ column: 0, step: 3 });
  });
});

describe('neighbours', () => {
  it('are neighbours both ways', () => {
    for (const on of lattices.filter(({ holes }) => holes !== 'squares'))
      for (const cell of everyCell(on))
        for (const beside of neighbours(on, cell))
          expect(neighbours(on, beside).some((other) => sameCell(other, cell))).toBe(true);
  });
  it('are six in the middle of peyote, five in two-drop and four on a plain grid', () => {
    const counts = [1, 2, 0].map(
      (drop) => neighbours(lattice(9, 9, { drop }), { column: 4, step: 4 }).length,
    );
    expect(counts).toEqual([6, 5, 4]);
  });
});

describe('mirrors and turns', () => {
  it('done twice give every cell back', () => {
    for (const on of lattices)
      for (const mirror of mirrors) {
        const { of } = reflection(on, filledWith(on), mirror);
        for (const cell of everyCell(on)) {
          const to = of(cell);
          if (to) expect(of(to)).toEqual(cell);
        }
      }
  });

  it('are exact where the band has them: odd columns mirror across, even columns turn', () => {
    const exact = (columns: number) =>
      mirrors.map((mirror) => {
        const on = lattice(columns, 6);
        return reflection(on, filledWith(on), mirror).exact;
      });
    expect(exact(7)).toEqual([true, false, false]);
    expect(exact(6)).toEqual([false, false, true]);
  });

  it('take the nearest bead where none lies opposite', () => {
    const on = lattice(6, 8);
    const across = reflection(on, filledWith(on), 'across');
    expect(across.of({ column: 0, step: 3 })).toEqual({ column: 5, step: 3 });
  });

  it('turn an open band about its beads, not about its empty places', () => {
    const on = lattice(7, 6);
    const cells = filledWith(on, ({ column, step }) => (step === 5 && column % 2 === 1 ? noBead : 0));
    const along = reflection(on, cells, 'along');
    expect(along.exact).toBe(true);
    expect(along.of({ column: 0, step: 0 })).toEqual({ column: 0, step: 5 });
    expect(along.of({ column: 1, step: 0 })).toEqual({ column: 1, step: 4 });
  });

  it('together give each image once', () => {
    const on = lattice(7, 6, { drop: 0 });
    const both = (['across', 'along'] as const).map((mirror) => reflection(on, filledWith(on), mirror));
    expect(withImages(both, { column: 1, step: 1 })).toHaveLength(4);
    expect(withImages(both, { column: 3, step: 1 })).toHaveLength(2);
  });
});
