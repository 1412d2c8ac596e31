/**
 * Where beads are shown: the places of DESIGN's lattice in millimetres, from what the server says of a band. Nothing is worked out
 * here that a maker relies on; it is only where a bead is painted and which one lies under the pointer.
 */
import { type Mm, mm } from '../engine/units';
import type { Cell } from './cells';

export interface Lattice {
  readonly columns: number;
  readonly edge: number;
  /** Columns that are shifted together by half a bead: 1 peyote and brick, 2 two-drop, 0 none. */
  readonly drop: number;
  /** Which way the holes run; `squares` is right-angle weave, whose cells are the sides of squares. */
  readonly holes: 'across' | 'along' | 'squares';
  /** Past the last step comes step 0. */
  readonly edgeRound: boolean;
  /** Past the last column comes column 0. */
  readonly columnsRound: boolean;
  /** Millimetres a column, and a bead along the edge. */
  readonly columnMm: Mm;
  readonly edgeMm: Mm;
}

export interface Box {
  readonly x: Mm;
  readonly y: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

/** Of a unit of right-angle weave, how thick a bead is shown: as the printed charts have it. */
const sideThickness = 0.3;

export const holdsBead = (lattice: Lattice, { column, step }: Cell): boolean =>
  lattice.holes !== 'squares' || (column + step) % 2 === 1;

/** 0 or 1 half beads further on. */
export const shiftOf = (lattice: Lattice, column: number): number =>
  lattice.drop === 0 ? 0 : Math.floor(column / lattice.drop) % 2;

export function boxOf(lattice: Lattice, { column, step }: Cell): Box {
  if (lattice.holes !== 'squares')
    return {
      x: mm(column * lattice.columnMm),
      y: mm((step + shiftOf(lattice, column) / 2) * lattice.edgeMm),
      width: lattice.columnMm,
      height: lattice.edgeMm,
    };
  const across = step % 2 === 0;
  const half = sideThickness / 2;
  const width = across ? 1 - sideThickness : sideThickness;
  const height = across ? sideThickness : 1 - sideThickness;
  return {
    x: mm((half + column / 2 - width / 2) * lattice.columnMm),
    y: mm((half + step / 2 - height / 2) * lattice.edgeMm),
    width: mm(width * lattice.columnMm),
    height: mm(height * lattice.edgeMm),
  };
}

/** The whole flat piece. */
export function extentOf(lattice: Lattice): { width: Mm; height: Mm } {
  if (lattice.holes === 'squares')
    return {
      width: mm(((lattice.columns - 1) / 2 + sideThickness) * lattice.columnMm),
      height: mm(((lattice.edge - 1) / 2 + sideThickness) * lattice.edgeMm),
    };
  const overhang = lattice.drop > 0 && lattice.columns > lattice.drop ? 0.5 : 0;
  return {
    width: mm(lattice.columns * lattice.columnMm),
    height: mm((lattice.edge + overhang) * lattice.edgeMm),
  };
}

/** The cell that is shown at a point, if any. */
export function cellAt(lattice: Lattice, x: Mm, y: Mm): Cell | undefined {
  const inside = (cell: Cell) =>
    cell.column >= 0 && cell.column < lattice.columns && cell.step >= 0 && cell.step < lattice.edge;
  if (lattice.holes !== 'squares') {
    const column = Math.floor(x / lattice.columnMm);
    const cell = { column, step: Math.floor(y / lattice.edgeMm - shiftOf(lattice, column) / 2) };
    return inside(cell) ? cell : undefined;
  }
  // The side of a square whose middle is nearest.
  const u = (x / lattice.columnMm - sideThickness / 2) * 2;
  const v = (y / lattice.edgeMm - sideThickness / 2) * 2;
  let best: Cell | undefined;
  let least = Infinity;
  for (const column of [Math.floor(u), Math.ceil(u)])
    for (const step of [Math.floor(v), Math.ceil(v)]) {
      const cell = { column, step };
      const from = Math.hypot(u - column, v - step);
      if (inside(cell) && holdsBead(lattice, cell) && from < least) [best, least] = [cell, from];
    }
  return least < 1.2 ? best : undefined;
}
