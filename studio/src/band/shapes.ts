/**
 * Which cells a line, a rectangle, an ellipse or a fill takes: the engine's rules (src/chart/edit.cpp) once more, so that they are seen
 * before they are drawn. Cells without a bead are no part of a drawing. Cells are given as places in `beads`, each once.
 */
import { beadAt, noBead, type Cell, type Cells } from './cells';
import { alongHalves, contains, neighbours, neighboursWithin } from './grid';
import { cellAt, shiftOf, type Lattice } from './lattice';
import { indexOf, ordered, type ShapeKind, type Stretch } from './model';
import { mm } from '../engine/units';

/** Ties go away from zero, as the engine rounds. */
const rounded = (value: number): number => Math.sign(value) * Math.round(Math.abs(value));

const middleOf = (lattice: Lattice, cell: Cell) => ({
  across: cell.column,
  along: alongHalves(lattice, cell) / 2,
});

export function lineCells(lattice: Lattice, cells: Cells, stretch: Stretch): number[] {
  const from = middleOf(lattice, stretch.from);
  const to = middleOf(lattice, stretch.to);
  const across = to.across - from.across;
  const along = to.along - from.along;
  const found = new Set<number>();
  const put = (cell: Cell) => {
    if (contains(lattice, cell) && beadAt(cells, cell) !== noBead) found.add(indexOf(lattice, cell));
  };
  const samplesToACell = lattice.drop === 0 ? 1 : 64;
  const longer = Math.max(Math.abs(across), Math.abs(along));
  const samples = Math.max(1, rounded(longer * samplesToACell));
  for (let i = 0; i <= samples; ++i) {
    const share = i / samples;
    const column = rounded(from.across + across * share);
    const step = Math.floor(from.along + along * share - shiftOf(lattice, column) / 2 + 0.5);
    put({ column, step: Math.min(Math.max(step, 0), lattice.edge - 1) });
  }
  put(stretch.to);
  return [...found];
}

type Inside = (cell: Cell) => boolean;

function cellsWithin(lattice: Lattice, cells: Cells, stretch: Stretch, inside: Inside): number[] {
  const { from, to } = ordered(stretch);
  const found: number[] = [];
  for (let step = from.step; step <= to.step; ++step)
    for (let column = from.column; column <= to.column; ++column) {
      const cell = { column, step };
      if (contains(lattice, cell) && beadAt(cells, cell) !== noBead && inside(cell))
        found.push(indexOf(lattice, cell));
    }
  return found;
}

/** Those inside that touch a cell outside, or the edge of the piece. */
const outlineOf =
  (lattice: Lattice, inside: Inside): Inside =>
  (cell) => {
    if (!inside(cell)) return false;
    const beside = neighbours(lattice, cell);
    return beside.length < neighboursWithin(lattice, cell) || beside.some((other) => !inside(other));
  };

export function rectangleCells(lattice: Lattice, cells: Cells, stretch: Stretch, filled: boolean): number[] {
  const { from, to } = ordered(stretch);
  const inside: Inside = ({ column, step }) =>
    column >= from.column && column <= to.column && step >= from.step && step <= to.step;
  return cellsWithin(lattice, cells, stretch, filled ? inside : outlineOf(lattice, inside));
}

export function ellipseCells(lattice: Lattice, cells: Cells, stretch: Stretch, filled: boolean): number[] {
  const from = middleOf(lattice, stretch.from);
  const to = middleOf(lattice, stretch.to);
  const centre = { across: (from.across + to.across) / 2, along: (from.along + to.along) / 2 };
  const a = Math.abs(to.across - from.across) / 2 + 0.5;
  const b = Math.abs(to.along - from.along) / 2 + 0.5;
  const inside: Inside = (cell) => {
    const at = middleOf(lattice, cell);
    return Math.hypot((at.across - centre.across) / a, (at.along - centre.along) / b) <= 1;
  };
  return cellsWithin(lattice, cells, stretch, filled ? inside : outlineOf(lattice, inside));
}

export function shapeCells(
  lattice: Lattice,
  cells: Cells,
  kind: ShapeKind,
  stretch: Stretch,
  filled: boolean,
): number[] {
  if (kind === 'line') return lineCells(lattice, cells, stretch);
  if (kind === 'rectangle') return rectangleCells(lattice, cells, stretch, filled);
  return ellipseCells(lattice, cells, stretch, filled);
}

/** All cells of one bead that hang together with a cell. */
export function fillCells(lattice: Lattice, cells: Cells, from: Cell): number[] {
  const bead = beadAt(cells, from);
  if (bead === noBead) return [];
  const found = new Set([indexOf(lattice, from)]);
  const open = [from];
  for (let cell = open.pop(); cell; cell = open.pop())
    for (const beside of neighbours(lattice, cell)) {
      const index = indexOf(lattice, beside);
      if (beadAt(cells, beside) !== bead || found.has(index)) continue;
      found.add(index);
      open.push(beside);
    }
  return [...found];
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * The cells under a straight stroke in millimetres, in order. Two cells that don't touch, at a corner at least, lie half a bead or more
 * apart, so samples closer than that leave no gap.
 */
export function strokeCells(lattice: Lattice, from: Point, to: Point): Cell[] {
  const nearest = Math.min(lattice.columnMm, lattice.edgeMm / 2) / (lattice.holes === 'squares' ? 4 : 2.5);
  const samples = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / nearest));
  const found: Cell[] = [];
  for (let i = 0; i <= samples; ++i) {
    const share = i / samples;
    const cell = cellAt(lattice, mm(from.x + (to.x - from.x) * share), mm(from.y + (to.y - from.y) * share));
    const last = found.at(-1);
    if (cell && (cell.column !== last?.column || cell.step !== last.step)) found.push(cell);
  }
  return found;
}
