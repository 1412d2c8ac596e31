/** A canvas on which a piece is looked at, turned, slid and painted: the stage, the pieces on it and the hands, held together. */
import type { Picked, Piece } from './beads';
import { moved, nearer, turned } from './gaze';
import { listen, type Wishes } from './gestures';
import { PieceScene, sameSeats } from './piece_scene';
import { webglPainter } from './painter';
import type { Quality } from './quality';
import { shortWay } from './slide';
import { type Frame, type Painter, Stage } from './stage';

export interface ViewerOptions {
  readonly quality: Quality;
  /** A bead is to be given the bead in hand. */
  readonly onTap?: (picked: Picked) => void;
  readonly onOver?: (picked: Picked | undefined) => void;
  /** Whether a drag that begins on a bead gives beads. */
  readonly paints?: () => boolean;
  readonly onFrame?: (frame: Frame) => void;
  readonly makePainter?: ((canvas: HTMLCanvasElement, quality: Quality) => Painter | undefined) | undefined;
}

/** Half a turn over the height of the view. */
const turnPerHeight = Math.PI;
/** A bead takes this long to slide to the next seat, a longer way not much longer. */
const slideMs = 240;

interface Slide {
  readonly from: number;
  readonly by: number;
  readonly to: number;
  start: number | undefined;
}

export class Viewer {
  private readonly stage: Stage;
  private readonly stopListening: () => void;
  private readonly sizes: ResizeObserver | undefined;
  private piece: Piece | undefined;
  private scene: PieceScene | undefined;
  private slid = new Map<number, number>();
  private sliding = new Map<number, Slide>();
  private marked: Picked | undefined;
  /** Beads have other colours than those last put into the scene. */
  private repaintDue = false;
  private under: Picked | undefined;
  private lastGiven: Picked | undefined;

  /** None where the browser can't draw in 3D. `hands` is what takes pointers and keys; it has the canvas's size. */
  static on(canvas: HTMLCanvasElement, hands: HTMLElement, options: ViewerOptions): Viewer | undefined {
    const painter = (options.makePainter ?? webglPainter)(canvas, options.quality);
    return painter && new Viewer(canvas, hands, painter, options);
  }

  private constructor(
    private readonly canvas: HTMLCanvasElement,
    hands: HTMLElement,
    painter: Painter,
    private readonly options: ViewerOptions,
  ) {
    this.stage = new Stage(painter, { quality: options.quality, onFrame: options.onFrame });
    this.stopListening = listen(hands, this.wishes());
    if (typeof ResizeObserver !== 'undefined') {
      this.sizes = new ResizeObserver(() => this.measure());
      this.sizes.observe(canvas);
    }
    this.measure();
  }

  private measure(): void {
    const { clientWidth, clientHeight } = this.canvas;
    this.stage.resize(clientWidth, clientHeight, window.devicePixelRatio || 1);
  }

  private wishes(): Wishes {
    return {
      turn: (right, up) => this.turn(right, up),
      shift: (right, up) =>
        this.stage.look(moved(this.stage.gaze, right, up, this.stage.stand, this.stage.ball)),
      nearer: (factor) => this.nearer(factor),
      rest: () => this.rest(),
      tap: (x, y) => this.tap(x, y),
      over: (x, y) => this.over(x, y),
      away: () => this.setUnder(undefined),
      tapMiddle: () => {
        this.lastGiven = undefined;
        this.tap(0, 0);
      },
      paints: () => {
        this.lastGiven = undefined;
        return this.options.paints?.() ?? false;
      },
    };
  }

  /** Turns the piece as a hand would, by shares of half a turn. */
  turn(right: number, up: number): void {
    this.stage.look(turned(this.stage.gaze, -right * turnPerHeight, -up * turnPerHeight));
  }
  nearer(factor: number): void {
    this.stage.look(nearer(this.stage.gaze, factor, this.stage.ball));
  }
  rest(): void {
    this.stage.look(undefined);
  }
  setQuality(quality: Quality): void {
    this.stage.setQuality(quality);
  }

  /** A drag meets each bead once. */
  private tap(x: number, y: number): boolean {
    const picked = this.scene?.pick(this.stage.ray(x, y));
    if (!picked) return false;
    const again = picked.item === this.lastGiven?.item && picked.cell === this.lastGiven.cell;
    this.lastGiven = picked;
    if (!again) this.options.onTap?.(picked);
    return true;
  }

  private over(x: number, y: number): void {
    this.setUnder(this.scene?.pick(this.stage.ray(x, y)));
  }

  private setUnder(picked: Picked | undefined): void {
    if (picked?.item === this.under?.item && picked?.cell === this.under?.cell) return;
    this.under = picked;
    this.options.onOver?.(picked);
    // Where a frame is slow the rim would lag behind the pointer.
    if (this.stage.quick) this.showMark();
  }

  /** Rims a bead that is pointed at elsewhere. */
  mark(picked: Picked | undefined): void {
    this.marked = picked;
    if (this.stage.quick) this.showMark();
  }

  private showMark(): void {
    const colour = getComputedStyle(this.canvas).getPropertyValue('--thread');
    this.scene?.setRimColour(colour);
    if (this.scene?.mark(this.under ?? this.marked)) this.drawCalmly();
  }

  private drawCalmly(): void {
    this.stage.invalidateCalmly(() => {
      if (this.repaintDue && this.piece) this.scene?.repaint(this.piece.items);
      this.repaintDue = false;
    });
  }

  /** Shows a piece; one that differs in its cells or legends only is repainted. */
  show(piece: Piece): void {
    if (this.scene && this.piece && sameSeats(this.piece, piece)) {
      this.piece = piece;
      this.repaintDue = true;
      this.drawCalmly();
      return;
    }
    this.takeDown();
    this.piece = piece;
    const beads = piece.items.reduce(
      (n, item) => n + (item.kind === 'band' ? item.band.cellOf.length : 1),
      0,
    );
    this.scene = new PieceScene(piece, this.stage.levelFor(beads));
    for (const [item, halfBeads] of this.slid) this.scene.slide(item, halfBeads);
    this.stage.show(this.scene, piece.lie);
    this.showMark();
  }

  /** Slides a band of the piece to so many half beads from rest: bead by bead, or at once where motion is unwelcome. */
  slide(item: number, halfBeads: number): void {
    const band = this.piece?.items[item];
    const ring = band?.kind === 'band' ? band.band.ring : undefined;
    const target = this.sliding.get(item)?.to ?? this.slid.get(item) ?? 0;
    if (target === halfBeads) return;
    if (!ring || !this.scene || stillPreferred()) {
      this.sliding.delete(item);
      this.slid.set(item, halfBeads);
      this.scene?.slide(item, halfBeads);
      this.stage.invalidate();
      return;
    }
    const from = this.slid.get(item) ?? 0;
    this.sliding.set(item, {
      from,
      to: halfBeads,
      by: shortWay(from, halfBeads, ring.places),
      start: undefined,
    });
    this.stage.move((now) => this.slideOn(now));
  }

  private slideOn(now: number): boolean {
    for (const [item, slide] of this.sliding) {
      slide.start ??= now;
      const share = Math.min(
        1,
        (now - slide.start) / (slideMs * Math.sqrt(Math.max(1, Math.abs(slide.by) / 2))),
      );
      const at = share < 1 ? slide.from + slide.by * share * (2 - share) : slide.to;
      this.slid.set(item, at);
      this.scene?.slide(item, at);
      if (share >= 1) this.sliding.delete(item);
    }
    return this.sliding.size > 0;
  }

  private takeDown(): void {
    this.stage.clear();
    this.scene?.dispose();
    this.scene = undefined;
    this.sliding.clear();
  }

  dispose(): void {
    this.stopListening();
    this.sizes?.disconnect();
    this.takeDown();
    this.stage.dispose();
  }
}

const stillPreferred = (): boolean =>
  typeof window.matchMedia === 'function' && window.matchMedia('(prefers-reduced-motion: reduce)').matches;
