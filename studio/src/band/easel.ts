/** Paints the band on its two canvases, at most once a frame and only when something is to be painted. */
import type { Cell } from './cells';
import type { Preview } from './drafts';
import { marginFor } from './gutters';
import type { Shown } from './model';
import { type Inks, type OverlayWords, paintOverlay } from './overlay';
import { BandPainter } from './painter';
import { Raster } from './raster';
import { type Pen, screenSurface } from './surface';
import { clamp, fit, type Frame, type View } from './view';
import { mm, px } from '../engine/units';

/** Milliseconds without a change of scale after which beads are painted anew. */
const settling = 120;
/** Milliseconds of a frame that painting ahead may take; a frame at 60 a second has 16.7. */
const painting = 7;

const fallbackFont = 'system-ui, sans-serif';

/** What lies over the beads and comes from the hand. */
export interface Fingered {
  readonly hover: Cell | undefined;
  readonly focus: Cell | undefined;
  readonly preview: Preview | undefined;
}

export interface EaselEvents {
  readonly fingered: () => Fingered;
  /** The view, the window or the picture of the whole band changed. Told with a frame. */
  readonly seen: (view: View, frame: Frame, overview: HTMLCanvasElement | undefined) => void;
}

export class Easel {
  view: View = { scale: 1, left: mm(0), top: mm(0) };
  frame: Frame = { width: px(0), height: px(0), margin: { left: 0, right: 0, top: 0, bottom: 0 } };
  readonly #painter = new BandPainter(screenSurface);
  readonly #pens: { beads: Pen; over: Pen };
  readonly #timers = new Set<ReturnType<typeof setTimeout>>();
  #shown: Shown | undefined;
  #density = 1;
  #inks: Inks;
  #font = fallbackFont;
  #raster: Raster | undefined;
  #scaledAt = -Infinity;
  #asked = 0;
  #fitted = false;
  #toTell = false;
  #gone = false;

  constructor(
    private readonly host: HTMLElement,
    private readonly canvases: { beads: HTMLCanvasElement; over: HTMLCanvasElement },
    private readonly words: OverlayWords,
    private readonly events: EaselEvents,
  ) {
    const beads = canvases.beads.getContext('2d');
    const over = canvases.over.getContext('2d');
    if (!beads || !over) throw new Error('the browser gives no canvas to paint on');
    this.#pens = { beads, over };
    this.#inks = this.#readInks();
    void this.#awaitFont();
  }

  show(shown: Shown): void {
    const before = this.#shown?.lattice;
    this.#shown = shown;
    if (before?.columns !== shown.lattice.columns || before.edge !== shown.lattice.edge) this.#fitted = false;
    this.#layOut();
    this.ask();
  }

  resize(width: number, height: number, density: number): void {
    for (const canvas of [this.canvases.beads, this.canvases.over]) {
      canvas.width = Math.max(1, Math.round(width * density));
      canvas.height = Math.max(1, Math.round(height * density));
    }
    this.#density = density;
    // What was seen whole stays whole in a smaller frame.
    const before = this.#shown && this.frame.height > 0 && fit(this.#shown.lattice, this.frame);
    if (before && this.view.scale <= before.scale * 1.001) this.#fitted = false;
    this.frame = { ...this.frame, width: px(width), height: px(height) };
    this.#layOut();
  }

  /** The look changed: light or dark. */
  relook(): void {
    this.#inks = this.#readInks();
    this.ask();
  }

  /** Shows the whole band. */
  fit(): void {
    this.#fitted = false;
    this.#layOut();
  }

  look(view: View): void {
    const before = this.view;
    if (view.scale === before.scale && view.left === before.left && view.top === before.top) return;
    if (view.scale !== before.scale) this.#scaledAt = performance.now();
    this.view = view;
    this.#toTell = true;
    this.ask();
  }

  /** Asks for a frame. */
  ask(): void {
    if (this.#gone || this.#asked !== 0) return;
    this.#asked = requestAnimationFrame(() => {
      this.#asked = 0;
      this.#paint();
    });
  }

  after(wait: number, what: () => void): void {
    const timer = setTimeout(() => {
      this.#timers.delete(timer);
      what();
    }, wait);
    this.#timers.add(timer);
  }

  dispose(): void {
    this.#gone = true;
    cancelAnimationFrame(this.#asked);
    for (const timer of this.#timers) clearTimeout(timer);
    this.#painter.dispose();
  }

  /** Letters and numbers are painted again once their font is there. */
  async #awaitFont(): Promise<void> {
    await Promise.all(['400', '700'].map((weight) => document.fonts.load(`${weight} 12px Lato`)));
    this.#font = `Lato, ${fallbackFont}`;
    this.ask();
  }

  /** Hands the painter the cells, those about to change as they would be. */
  #update(shown: Shown, preview: Preview | undefined): void {
    const { lattice, legend, letters } = shown;
    let beads = shown.beads;
    if (preview && preview.beads.size > 0) {
      beads = beads.slice();
      for (const [index, bead] of preview.beads) beads[index] = bead;
    }
    const outline = this.#inks.line;
    const changed = this.#painter.update({ lattice, beads, legend, letters, outline, font: this.#font });
    if (changed > 0) this.#toTell = true;
  }

  /** A window, a band or marks of another size: the view is fitted or held in again. */
  #layOut(): void {
    const shown = this.#shown;
    if (!shown || this.frame.width === 0 || this.frame.height === 0) return;
    this.frame = { ...this.frame, margin: marginFor(shown.rows, shown.marks) };
    this.look(this.#fitted ? clamp(this.view, shown.lattice, this.frame) : fit(shown.lattice, this.frame));
    this.#fitted = true;
    this.#toTell = true;
    this.ask();
  }

  #paint(): void {
    const { view, frame } = this;
    const density = this.#density;
    const shown = this.#shown;
    if (!shown || this.#gone || frame.width === 0) return;
    const sinceScaled = performance.now() - this.#scaledAt;
    const moving = sinceScaled < settling;
    const now = () => performance.now();
    const fingered = this.events.fingered();
    this.#update(shown, fingered.preview);
    if (this.#painter.unfinished(view, frame, density))
      this.#painter.work(view, frame, density, { budget: painting, now, moving });
    this.#painter.compose(this.#pens.beads, view, frame, density);
    this.#paintOver(shown, fingered);
    if (this.#toTell) this.events.seen(view, frame, this.#painter.overview);
    this.#toTell = false;
    if (!this.#painter.unfinished(view, frame, density)) return;
    if (moving) this.after(settling - sinceScaled + 5, () => this.ask());
    else this.ask();
  }

  #paintOver(shown: Shown, fingered: Fingered): void {
    const scale = this.view.scale * this.#density;
    if (this.#raster?.lattice !== shown.lattice || this.#raster.scale !== scale)
      this.#raster = new Raster(shown.lattice, scale);
    paintOverlay(this.#pens.over, {
      raster: this.#raster,
      view: this.view,
      frame: this.frame,
      density: this.#density,
      inks: this.#inks,
      font: this.#font,
      words: this.words,
      rows: shown.rows,
      currentRow: shown.currentRow,
      marks: shown.marks,
      selection: shown.selection,
      ...fingered,
    });
  }

  #readInks(): Inks {
    const style = getComputedStyle(this.host);
    const read = (name: string, otherwise: string) => style.getPropertyValue(name).trim() || otherwise;
    return {
      ground: read('--table', '#e9e6de'),
      ink: read('--ink', '#23292b'),
      quiet: read('--ink-quiet', '#5a6266'),
      line: read('--line-strong', '#8b8a80'),
      accent: read('--thread', '#1d4e5f'),
    };
  }
}
