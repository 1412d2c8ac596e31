import { describe, expect, it } from 'vitest';

import { boxOf } from './lattice';
import { Raster } from './raster';
import { everyCell, lattice, squares } from './testing';

describe('raster', () => {
  const bands = [lattice(7, 9), lattice(8, 5, { drop: 2 }), lattice(5, 5, { drop: 0 }), squares(7, 9)];

  it('keeps every bead within a pixel of its true place', () => {
    for (const on of bands)
      for (const scale of [3.1, 7.77, 14, 31.4]) {
        const raster = new Raster(on, scale);
        for (const cell of everyCell(on)) {
          const box = raster.box(cell.column, cell.step);
          const exact = boxOf(on, cell);
          expect(Math.abs(box.x - exact.x * scale)).toBeLessThanOrEqual(0.5 + 1e-9);
          expect(Math.abs(box.y - exact.y * scale)).toBeLessThanOrEqual(0.5 + 1e-9);
          expect(Math.abs(box.width - exact.width * scale)).toBeLessThanOrEqual(1 + 1e-9);
          expect(Math.abs(box.height - exact.height * scale)).toBeLessThanOrEqual(1 + 1e-9);
        }
      }
  });

  it('lets no two beads overlap', () => {
    for (const on of bands) {
      const raster = new Raster(on, 9.37);
      const painted = new Set<string>();
      for (const { column, step } of everyCell(on)) {
        const box = raster.box(column, step);
        for (let y = box.y; y < box.y + box.height; ++y)
          for (let x = box.x; x < box.x + box.width; ++x) {
            expect(painted.has(`${x},${y}`)).toBe(false);
            painted.add(`${x},${y}`);
          }
      }
    }
  });

  it('names every size that occurs', () => {
    for (const on of bands)
      for (const scale of [3.1, 9.37, 20.9]) {
        const raster = new Raster(on, scale);
        const sizes = new Set(raster.sizes().map(({ width, height }) => `${width}x${height}`));
        for (const { column, step } of everyCell(on)) {
          const { width, height } = raster.box(column, step);
          expect(sizes.has(`${width}x${height}`)).toBe(true);
        }
      }
  });

  it('finds every cell that shows in a part', () => {
    for (const on of bands) {
      const raster = new Raster(on, 12.3);
      const part = { x: 21, y: 18, width: 30, height: 41 };
      const { columns, steps } = raster.cellsIn(part);
      for (const { column, step } of everyCell(on)) {
        const box = raster.box(column, step);
        const shows =
          box.x < part.x + part.width &&
          box.x + box.width > part.x &&
          box.y < part.y + part.height &&
          box.y + box.height > part.y;
        if (!shows) continue;
        expect(column).toBeGreaterThanOrEqual(columns[0]);
        expect(column).toBeLessThanOrEqual(columns[1]);
        expect(step).toBeGreaterThanOrEqual(steps[0]);
        expect(step).toBeLessThanOrEqual(steps[1]);
      }
    }
  });
});
