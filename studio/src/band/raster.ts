/**
 * The lattice in whole device pixels. Edges are rounded, not sizes: beads differ by a pixel at most, meet without gaps, and
 * the band as a whole keeps its true proportion.
 */
import { boxOf, extentOf, holdsBead, type Lattice, shiftOf } from './lattice';

export interface PixelBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export class Raster {
  readonly width: number;
  readonly height: number;
  readonly #columns: number[] = [];
  readonly #halves: number[] = [];

  /** `scale`: device pixels a millimetre. */
  constructor(
    readonly lattice: Lattice,
    readonly scale: number,
  ) {
    const extent = extentOf(lattice);
    this.width = Math.ceil(extent.width * scale);
    this.height = Math.ceil(extent.height * scale);
    for (let column = 0; column <= lattice.columns; ++column)
      this.#columns.push(Math.round(column * lattice.columnMm * scale));
    for (let half = 0; half <= 2 * lattice.edge + 1; ++half)
      this.#halves.push(Math.round((half / 2) * lattice.edgeMm * scale));
  }

  /** The smaller side of a bead, not rounded. */
  get beadSize(): number {
    const box = boxOf(this.lattice, { column: 1, step: 0 });
    return Math.min(box.width, box.height) * this.scale;
  }

  box(column: number, step: number): PixelBox {
    if (this.lattice.holes === 'squares') {
      const box = boxOf(this.lattice, { column, step });
      const x = Math.round(box.x * this.scale);
      const y = Math.round(box.y * this.scale);
      return {
        x,
        y,
        width: Math.max(1, Math.round((box.x + box.width) * this.scale) - x),
        height: Math.max(1, Math.round((box.y + box.height) * this.scale) - y),
      };
    }
    const half = 2 * step + shiftOf(this.lattice, column);
    const x = this.#columns[column] ?? 0;
    const y = this.#halves[half] ?? 0;
    return { x, y, width: (this.#columns[column + 1] ?? x) - x, height: (this.#halves[half + 2] ?? y) - y };
  }

  /** Every size that occurs. */
  sizes(): { width: number; height: number }[] {
    const { columns, edge } = this.lattice;
    const found = new Map<string, { width: number; height: number }>();
    const add = (column: number, step: number) => {
      if (!holdsBead(this.lattice, { column, step })) return;
      const { width, height } = this.box(column, step);
      found.set(`${width}x${height}`, { width, height });
    };
    if (this.lattice.holes === 'squares') {
      for (let step = 0; step < edge; ++step)
        for (let column = 0; column < columns; ++column) add(column, step);
      return [...found.values()];
    }
    // Widths depend on the column only, heights on the step and the shift only.
    const widths = new Set<number>();
    const heights = new Set<number>();
    for (let column = 0; column < columns; ++column) widths.add(this.box(column, 0).width);
    for (let step = 0; step < edge; ++step)
      for (const column of [0, Math.min(this.lattice.drop, columns - 1)])
        heights.add(this.box(column, step).height);
    return [...widths].flatMap((width) => [...heights].map((height) => ({ width, height })));
  }

  /** Columns and steps that may show in a part of the band. */
  cellsIn(part: PixelBox): { columns: readonly [number, number]; steps: readonly [number, number] } {
    const { lattice, scale } = this;
    const half = lattice.holes === 'squares' ? 2 : 1;
    const span = (from: number, size: number, pitch: number, count: number): readonly [number, number] => [
      Math.max(0, Math.floor((from / scale / pitch) * half) - 1),
      Math.min(count - 1, Math.ceil(((from + size) / scale / pitch) * half) + 1),
    ];
    return {
      columns: span(part.x, part.width, lattice.columnMm, lattice.columns),
      steps: span(part.y, part.height, lattice.edgeMm, lattice.edge),
    };
  }
}
