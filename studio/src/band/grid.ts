/**
 * How cells lie against each other, as far as walking and drawing on them must know. A port of the engine's grid
 * (src/chart/grid.cpp) for previews: what counts is the engine's answer.
 */
import { beadAt, noBead, type Cell, type Cells } from './cells';
import { holdsBead, shiftOf, type Lattice } from './lattice';
import type { Mirror } from './model';

export const floorMod = (value: number, by: number): number => ((value % by) + by) % by;

export const contains = (lattice: Lattice, { column, step }: Cell): boolean =>
  column >= 0 && column < lattice.columns && step >= 0 && step < lattice.edge;

/** How far along a cell lies, in half steps. */
export const alongHalves = (lattice: Lattice, cell: Cell): number =>
  2 * cell.step + shiftOf(lattice, cell.column);

/** Columns after which the shift comes again. */
export const columnPeriod = (lattice: Lattice): number => (lattice.drop === 0 ? 1 : 2 * lattice.drop);

/** The cells that touch a cell along a side. */
export function neighbours(lattice: Lattice, cell: Cell): Cell[] {
  const found: Cell[] = [];
  const along = alongHalves(lattice, cell);
  const add = (atColumn: number, atAlong: number) => {
    const column = lattice.columnsRound ? floorMod(atColumn, lattice.columns) : atColumn;
    const halves = lattice.edgeRound ? floorMod(atAlong, 2 * lattice.edge) : atAlong;
    if (column < 0 || column >= lattice.columns || halves < 0) return;
    const past = halves - shiftOf(lattice, column);
    if (past < 0 || past % 2 !== 0 || past / 2 >= lattice.edge) return;
    const step = past / 2;
    if (column === cell.column && step === cell.step) return;
    if (!found.some((other) => other.column === column && other.step === step)) found.push({ column, step });
  };
  for (const by of [-2, 2]) add(cell.column, along + by);
  for (const side of [-1, 1]) for (const by of [-1, 0, 1]) add(cell.column + side, along + by);
  return found;
}

/** How many cells touch a cell that lies nowhere at the edge. */
export function neighboursWithin(lattice: Lattice, { column }: Cell): number {
  const within = column + Math.max(1, 2 * lattice.drop);
  const shift = shiftOf(lattice, within);
  return [-1, 1].reduce((sum, side) => sum + (shiftOf(lattice, within + side) === shift ? 1 : 2), 2);
}

export type Direction = 'up' | 'down' | 'left' | 'right';

/**
 * The next cell in a direction, or the cell itself at an edge. Up and down follow the column bead by bead; left and right
 * go to the neighbouring column at the same step, half a bead further on or back, so that going there and back ends where it began.
 * In right-angle weave left and right zigzag from the side of a square to the next.
 */
export function walk(lattice: Lattice, cell: Cell, direction: Direction): Cell {
  const squares = lattice.holes === 'squares';
  const by = direction === 'left' || direction === 'up' ? -1 : 1;
  let { column, step } = cell;
  if (direction === 'up' || direction === 'down') step += squares ? 2 * by : by;
  else if (!squares) column += by;
  else {
    const zigzag = step % 2 === 0 ? step + 1 : step - 1;
    // The last line of squares has no uprights below it: there it goes on along the line.
    if (zigzag < lattice.edge) step = zigzag;
    column += zigzag < lattice.edge ? by : 2 * by;
  }
  if (lattice.columnsRound) column = floorMod(column, lattice.columns);
  if (lattice.edgeRound) step = floorMod(step, lattice.edge);
  const to = { column, step };
  return contains(lattice, to) && holdsBead(lattice, to) ? to : cell;
}

/** The cell nearest to a place that holds a bead at all. */
export function nearestHolding(lattice: Lattice, { column, step }: Cell): Cell {
  const inside = {
    column: Math.min(Math.max(column, 0), lattice.columns - 1),
    step: Math.min(Math.max(step, 0), lattice.edge - 1),
  };
  if (holdsBead(lattice, inside)) return inside;
  const beside = inside.column + 1 < lattice.columns ? inside.column + 1 : inside.column - 1;
  return { column: Math.max(0, beside), step: inside.step };
}

export interface Reflection {
  /** False where no bead lies exactly opposite and the nearest is taken, half a bead off. */
  readonly exact: boolean;
  readonly of: (cell: Cell) => Cell | undefined;
}

/**
 * A mirror or half turn of the whole band. It is the engine's symmetry where the band has it; an even-count peyote band, say, has no
 * exact mirror across, and there a cell goes to the same step of the column opposite.
 */
export function reflection(lattice: Lattice, cells: Cells, mirror: Mirror): Reflection {
  const { first, last } = rowsWithBeads(lattice, cells);
  const opposite = (column: number) => (mirror === 'along' ? column : lattice.columns - 1 - column);
  const about = (ends: number) => (cell: Cell) => {
    const column = opposite(cell.column);
    let along = alongHalves(lattice, cell);
    if (mirror !== 'across') along = ends - along;
    if (lattice.edgeRound) along = floorMod(along, 2 * lattice.edge);
    const past = along - shiftOf(lattice, column);
    const to = { column, step: past / 2 };
    return past >= 0 && past % 2 === 0 && contains(lattice, to) ? to : undefined;
  };
  for (const ends of lattice.edgeRound ? [0, 1] : [first + last]) {
    const of = about(ends);
    if (everyBeadMaps(cells, of)) return { exact: true, of };
  }
  const firstStep = Math.floor(first / 2);
  const lastStep = Math.floor(last / 2);
  return {
    exact: false,
    of: (cell) => {
      const step = mirror === 'across' ? cell.step : firstStep + lastStep - cell.step;
      const to = { column: opposite(cell.column), step };
      return contains(lattice, to) ? to : undefined;
    },
  };
}

function rowsWithBeads(lattice: Lattice, cells: Cells): { first: number; last: number } {
  let first = 2 * lattice.edge;
  let last = -1;
  cells.beads.forEach((bead, index) => {
    if (bead === noBead) return;
    const along =
      2 * Math.floor(index / lattice.columns) + shiftOf(lattice, index % Math.max(1, lattice.columns));
    first = Math.min(first, along);
    last = Math.max(last, along);
  });
  return { first, last };
}

function everyBeadMaps(cells: Cells, of: (cell: Cell) => Cell | undefined): boolean {
  for (let step = 0; step < cells.edge; ++step)
    for (let column = 0; column < cells.columns; ++column) {
      if (beadAt(cells, { column, step }) === noBead) continue;
      const to = of({ column, step });
      if (!to || beadAt(cells, to) === noBead) return false;
    }
  return true;
}

/** A cell with all its images under the mirrors that are on, each once, the cell itself first. */
export function withImages(reflections: readonly Reflection[], cell: Cell): Cell[] {
  let found = [cell];
  for (const { of } of reflections)
    for (const one of [...found]) {
      const image = of(one);
      if (image && !found.some((other) => other.column === image.column && other.step === image.step))
        found = [...found, image];
    }
  return found;
}
