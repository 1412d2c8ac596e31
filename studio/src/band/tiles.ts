/** The painted band at one scale, in square tiles: only those near the window are there, and a changed bead touches one to four. */
import { noBead } from './cells';
import { holdsBead } from './lattice';
import type { PixelBox, Raster } from './raster';
import type { SpriteSheet } from './sprites';
import { type MakeSurface, type Pen, release, type Surface } from './surface';

/** Pixels. Small enough that one is painted within a frame, large enough that a window takes few. */
export const tileSize = 512;

interface Tile {
  readonly surface: Surface;
  readonly x: number;
  readonly y: number;
  /** Painted from cells that are no longer so. */
  stale: boolean;
}

const overlap = (box: PixelBox, x: number, y: number, size: number): boolean =>
  box.x < x + size && box.x + box.width > x && box.y < y + size && box.y + box.height > y;

export class TileSet {
  readonly #tiles = new Map<string, Tile>();

  constructor(
    private readonly make: MakeSurface,
    readonly raster: Raster,
    readonly sheet: SpriteSheet,
  ) {}

  /** Where a part of the band has no painted tile, or a stale one: the nearest to its middle first. */
  lacking(part: PixelBox): { x: number; y: number }[] {
    const middle = { x: part.x + part.width / 2, y: part.y + part.height / 2 };
    const found: { x: number; y: number; far: number }[] = [];
    if (part.width <= 0 || part.height <= 0) return found;
    for (let y = floorTo(part.y); y < part.y + part.height; y += tileSize)
      for (let x = floorTo(part.x); x < part.x + part.width; x += tileSize) {
        const tile = this.#tiles.get(`${x},${y}`);
        const far = Math.hypot(x + tileSize / 2 - middle.x, y + tileSize / 2 - middle.y);
        if (!tile || tile.stale) found.push({ x, y, far });
      }
    return found.sort((a, b) => a.far - b.far);
  }

  stale(part: PixelBox): { x: number; y: number }[] {
    return [...this.#tiles.values()].filter((tile) => tile.stale && overlap(part, tile.x, tile.y, tileSize));
  }

  /** Copies every bead that shows in a tile, pixel by pixel: beads never overlap, so nothing is to be mixed. */
  paint(x: number, y: number, beads: Uint16Array, spare: ImageData): void {
    const { lattice } = this.raster;
    const target = new Uint32Array(spare.data.buffer);
    target.fill(0);
    const { columns, steps } = this.raster.cellsIn({ x, y, width: tileSize, height: tileSize });
    for (let step = steps[0]; step <= steps[1]; ++step)
      for (let column = columns[0]; column <= columns[1]; ++column) {
        if (!holdsBead(lattice, { column, step })) continue;
        const box = this.raster.box(column, step);
        if (!overlap(box, x, y, tileSize)) continue;
        const bead = beads[step * lattice.columns + column] ?? noBead;
        const sprite = this.sheet.sprite(bead, box.width, box.height);
        if (sprite) copy(sprite.words, box, target, x, y);
      }
    const key = `${x},${y}`;
    const tile = this.#tiles.get(key) ?? { surface: this.make(tileSize, tileSize), x, y, stale: false };
    tile.stale = false;
    tile.surface.pen.putImageData(spare, 0, 0);
    this.#tiles.set(key, tile);
  }

  repaintCell(column: number, step: number, bead: number): void {
    if (!holdsBead(this.raster.lattice, { column, step })) return;
    const box = this.raster.box(column, step);
    const sprite = this.sheet.sprite(bead, box.width, box.height);
    if (!sprite) return;
    for (const y of new Set([floorTo(box.y), floorTo(box.y + box.height - 1)]))
      for (const x of new Set([floorTo(box.x), floorTo(box.x + box.width - 1)]))
        this.#tiles.get(`${x},${y}`)?.surface.pen.putImageData(sprite.image, box.x - x, box.y - y);
  }

  outdate(): void {
    for (const tile of this.#tiles.values()) tile.stale = true;
  }

  /** With the band's corner at (left, top), `ratio` times as large. Edges are rounded so that tiles meet. */
  draw(pen: Pen, left: number, top: number, ratio: number, part: PixelBox): void {
    for (const { surface, x, y } of this.#tiles.values()) {
      if (!overlap(part, x, y, tileSize)) continue;
      if (ratio === 1) {
        pen.drawImage(surface.canvas, left + x, top + y);
        continue;
      }
      const [x0, y0] = [Math.round(left + x * ratio), Math.round(top + y * ratio)];
      const [x1, y1] = [Math.round(left + (x + tileSize) * ratio), Math.round(top + (y + tileSize) * ratio)];
      pen.drawImage(surface.canvas, x0, y0, x1 - x0, y1 - y0);
    }
  }

  /** Lets go of what lies outside a part. */
  keep(part: PixelBox): void {
    for (const [key, { surface, x, y }] of this.#tiles)
      if (!overlap(part, x, y, tileSize)) {
        release(surface);
        this.#tiles.delete(key);
      }
  }

  dispose(): void {
    for (const { surface } of this.#tiles.values()) release(surface);
    this.#tiles.clear();
    this.sheet.dispose();
  }
}

const floorTo = (value: number): number => Math.floor(value / tileSize) * tileSize;

function copy(from: Uint32Array, box: PixelBox, to: Uint32Array, x: number, y: number): void {
  const first = Math.max(box.x, x);
  const end = Math.min(box.x + box.width, x + tileSize);
  const bottom = Math.min(box.y + box.height, y + tileSize);
  for (let row = Math.max(box.y, y); row < bottom; ++row) {
    let source = (row - box.y) * box.width + first - box.x;
    let target = (row - y) * tileSize + first - x;
    for (let column = first; column < end; ++column) to[target++] = from[source++] ?? 0;
  }
}
