/**
 * Paints the beads of a band.
 *
 * Beads are painted once into tiles round the window; panning copies the tiles, zooming copies them larger or smaller, and when the view
 * has come to rest new tiles are painted, a few in a frame. Of changed cells only those are painted again. From far off
 * there are no tiles, only `Blocks`, which also fill in where a tile isn't painted yet.
 *
 * Properties (painter.test.ts):
 *  (1) new cells repaint exactly the cells that differ, also when the same array was written into
 *  (2) a frame in which nothing changed paints no bead
 *  (3) what is seen of a large change is seen at once, never half of it
 */
import { Blocks } from './blocks';
import { noBead } from './cells';
import { rgbOf } from './colour';
import { extentOf, type Lattice } from './lattice';
import type { LegendEntry } from './model';
import { type PixelBox, Raster } from './raster';
import { SpriteSheet } from './sprites';
import type { MakeSurface, Pen } from './surface';
import { tileSize, TileSet } from './tiles';
import type { Frame, View } from './view';

/** Below this size (device pixels) a bead is a block: a rounded one couldn't be seen. */
export const leastSprite = 4;
/** With more changes than this whole tiles are painted again. */
const manyChanges = 2000;

export interface Scene {
  readonly lattice: Lattice;
  readonly beads: Uint16Array;
  readonly legend: readonly LegendEntry[];
  readonly letters: boolean;
  /** Of empty places. */
  readonly outline: string;
  readonly font: string;
}

export class BandPainter {
  #scene: Scene | undefined;
  #shown = new Uint16Array(0);
  #blocks: Blocks | undefined;
  #tiles: TileSet | undefined;
  /** Of the scale before, until all that is seen is painted at the new one. */
  #before: TileSet | undefined;
  #spare: ImageData | undefined;

  constructor(private readonly make: MakeSurface) {}

  /** The small picture of the whole band. */
  get overview(): HTMLCanvasElement | undefined {
    return this.#blocks?.canvas;
  }

  /** Takes what is to be shown and paints again what differs; the count of cells that do. */
  update(scene: Scene): number {
    const before = this.#scene;
    this.#scene = scene;
    if (!before || !looksAlike(before, scene)) {
      this.#drop();
      const colours = scene.legend.map(({ colour }) => rgbOf(colour));
      this.#blocks = new Blocks(this.make, scene.lattice, colours);
      this.#blocks.setAll(scene.beads);
      this.#shown = scene.beads.slice();
      return scene.beads.length;
    }
    const changed: number[] = [];
    for (let index = 0; index < this.#shown.length; ++index)
      if (this.#shown[index] !== scene.beads[index]) changed.push(index);
    if (changed.length === 0) return 0;
    this.#shown.set(scene.beads.subarray(0, this.#shown.length));
    this.#repaint(changed);
    return changed.length;
  }

  /** True while a better picture of this view is to come: then call `work` in the next frames. */
  unfinished(view: View, frame: Frame, density: number): boolean {
    if (this.#isFar(view, density)) return false;
    const tiles = this.#tiles;
    if (!tiles || tiles.raster.scale !== view.scale * density) return true;
    return tiles.lacking(this.#reach(view, frame, density, tileSize / 2)).length > 0;
  }

  /** Paints on for so many milliseconds; `moving` while the scale still changes. */
  work(
    view: View,
    frame: Frame,
    density: number,
    options: { readonly budget: number; readonly now: () => number; readonly moving: boolean },
  ): void {
    if (this.#isFar(view, density)) {
      this.#drop();
      return;
    }
    if (this.#tiles?.raster.scale !== view.scale * density) {
      if (options.moving && this.#tiles) return;
      this.#rescale(view.scale * density);
    }
    const tiles = this.#tiles;
    if (!tiles) return;
    const seen = this.#reach(view, frame, density, 0);
    for (const { x, y } of tiles.stale(seen)) this.#paintTile(tiles, x, y);
    const until = options.now() + options.budget;
    let painted = 0;
    for (const { x, y } of [
      ...tiles.lacking(seen),
      ...tiles.lacking(this.#reach(view, frame, density, tileSize / 2)),
    ]) {
      // One at least, so that there is an end to it on the slowest machine.
      if (painted > 0 && options.now() >= until) break;
      this.#paintTile(tiles, x, y);
      painted += 1;
    }
    tiles.keep(this.#reach(view, frame, density, 2 * tileSize));
    if (this.#before && tiles.lacking(seen).length === 0) {
      this.#before.dispose();
      this.#before = undefined;
    }
  }

  /** The frame: copies what is painted to where it is seen. */
  compose(pen: Pen, view: View, frame: Frame, density: number): void {
    const scale = view.scale * density;
    const left = -Math.round(view.left * scale);
    const top = -Math.round(view.top * scale);
    const seen = this.#reach(view, frame, density, 0);
    const tiles = this.#isFar(view, density) ? undefined : this.#tiles;
    pen.clearRect(0, 0, Math.ceil(frame.width * density), Math.ceil(frame.height * density));
    if (!tiles) {
      this.#fillIn(pen, { left, top, scale, seen }, density);
      return;
    }
    const ratio = scale / tiles.raster.scale;
    const part = scaled(seen, 1 / ratio);
    const holes = tiles.lacking(part);
    if (holes.length > 0) {
      pen.save();
      pen.beginPath();
      for (const { x, y } of holes)
        pen.rect(
          Math.floor(left + x * ratio),
          Math.floor(top + y * ratio),
          Math.ceil(tileSize * ratio) + 1,
          Math.ceil(tileSize * ratio) + 1,
        );
      pen.clip();
      this.#fillIn(pen, { left, top, scale, seen }, density);
      pen.restore();
    }
    pen.imageSmoothingEnabled = smooth(density);
    tiles.draw(pen, left, top, ratio, part);
  }

  /** Blocks, and over them what there is at the scale before. */
  #fillIn(pen: Pen, at: { left: number; top: number; scale: number; seen: PixelBox }, density: number): void {
    pen.imageSmoothingEnabled = at.scale * (this.#scene?.lattice.columnMm ?? 1) < 1;
    this.#blocks?.draw(pen, at.left, at.top, at.scale);
    if (!this.#before) return;
    const ratio = at.scale / this.#before.raster.scale;
    pen.imageSmoothingEnabled = smooth(density);
    this.#before.draw(pen, at.left, at.top, ratio, scaled(at.seen, 1 / ratio));
  }

  dispose(): void {
    this.#drop();
    this.#blocks?.dispose();
    this.#blocks = undefined;
    this.#scene = undefined;
  }

  #isFar(view: View, density: number): boolean {
    const lattice = this.#scene?.lattice;
    if (!lattice) return true;
    const side = lattice.holes === 'squares' ? 0.5 : 1;
    return Math.min(lattice.columnMm, lattice.edgeMm) * side * view.scale * density < leastSprite;
  }

  /** What is seen of the band and so many pixels more on every side, in the band's device pixels. */
  #reach(view: View, frame: Frame, density: number, more: number): PixelBox {
    const scale = view.scale * density;
    const extent = this.#scene ? extentOf(this.#scene.lattice) : { width: 0, height: 0 };
    const clip = (start: number, size: number, whole: number): [number, number] => {
      const from = Math.min(Math.max(0, Math.floor(start - more)), whole);
      return [from, Math.max(0, Math.min(whole, Math.ceil(start + size + more)) - from)];
    };
    const [x, width] = clip(view.left * scale, frame.width * density, Math.ceil(extent.width * scale));
    const [y, height] = clip(view.top * scale, frame.height * density, Math.ceil(extent.height * scale));
    return { x, y, width, height };
  }

  #rescale(scale: number): void {
    const scene = this.#scene;
    if (!scene) return;
    this.#before?.dispose();
    this.#before = this.#tiles;
    const { lattice, legend, letters, outline, font } = scene;
    const raster = new Raster(lattice, scale);
    const options = { holes: lattice.holes, letters, outline, font };
    this.#tiles = new TileSet(this.make, raster, new SpriteSheet(this.make, legend, raster.sizes(), options));
  }

  #paintTile(tiles: TileSet, x: number, y: number): void {
    this.#spare ??= this.#blocks?.blankImage(tileSize, tileSize);
    if (this.#spare) tiles.paint(x, y, this.#shown, this.#spare);
  }

  #repaint(changed: readonly number[]): void {
    const columns = this.#scene?.lattice.columns ?? 1;
    if (changed.length > manyChanges) {
      this.#blocks?.setAll(this.#shown);
      this.#before?.dispose();
      this.#before = undefined;
      this.#tiles?.outdate();
      return;
    }
    for (const index of changed) {
      const column = index % columns;
      const step = Math.floor(index / columns);
      const bead = this.#shown[index] ?? noBead;
      this.#blocks?.setOne(column, step, bead);
      this.#tiles?.repaintCell(column, step, bead);
      this.#before?.repaintCell(column, step, bead);
    }
  }

  #drop(): void {
    this.#tiles?.dispose();
    this.#before?.dispose();
    this.#tiles = undefined;
    this.#before = undefined;
  }
}

/** Bilinear copying of a large window takes longer than a frame where there is no graphics processor; close pixels don't need it. */
const smooth = (density: number): boolean => density < 1.5;

const scaled = ({ x, y, width, height }: PixelBox, by: number): PixelBox => ({
  x: x * by,
  y: y * by,
  width: width * by,
  height: height * by,
});

function looksAlike(a: Scene, b: Scene): boolean {
  return (
    (a.legend === b.legend || JSON.stringify(a.legend) === JSON.stringify(b.legend)) &&
    a.letters === b.letters &&
    a.outline === b.outline &&
    a.font === b.font &&
    (a.lattice === b.lattice || JSON.stringify(a.lattice) === JSON.stringify(b.lattice))
  );
}
