/**
 * Where a scene is drawn: only when something has changed, never in a running loop. It keeps the gaze, measures how long a frame takes,
 * and frees all it holds when it is disposed of.
 */
import { type Camera, PerspectiveCamera, Scene } from 'three';

import {
  type Around,
  bearings,
  eyeOf,
  fieldOfView,
  type Gaze,
  type Ray,
  restGaze,
  sightThrough,
  standOf,
} from './gaze';
import type { Lie } from './beads';
import type { PieceScene } from './piece_scene';
import { chosenLevel, type Level, type Quality, slowFrameMs } from './quality';

/** What the stage needs of a renderer; tests bring their own. */
export interface Painter {
  /** Known to be slow before anything is drawn: a processor paints instead of a graphics chip. */
  readonly slow: boolean;
  render(scene: Scene, camera: Camera): void;
  setSize(width: number, height: number, pixelRatio: number): void;
  /** Draws and triangles of the last frame. */
  figures(): { calls: number; triangles: number };
  /** Calls back when the last frame is on the screen. */
  whenDrawn(then: () => void): void;
  dispose(): void;
}

export interface Frame {
  readonly calls: number;
  readonly triangles: number;
  readonly ms: number;
  readonly level: Level;
}

export interface StageOptions {
  readonly quality: Quality;
  readonly onFrame?: ((frame: Frame) => void) | undefined;
}

/** Changes this far apart are seen one by one where frames are slow: a stroke takes less. */
const leastCalmMs = 400;

/** Beyond this the eye sees no gain, and four times as many points are to be painted. */
const mostPixelRatio = 2;

export class Stage {
  private readonly scene = new Scene();
  private readonly camera = new PerspectiveCamera((fieldOfView * 180) / Math.PI);
  private piece: PieceScene | undefined;
  private lie: Lie = 'closed';
  private around: Around = { centre: [0, 0, 0], radius: 1, edge: 0, outermost: [] };
  private rest: Gaze = restGaze(this.around, 1, this.lie);
  private seen: Gaze | undefined;
  private width = 0;
  private height = 0;
  private ratio = 1;
  private asked = 0;
  private moving: ((now: number) => boolean) | undefined;
  private slow: boolean;
  private gone = false;
  /** Frames since the programs were last built: the first takes longer. */
  private frames = 0;
  private lastMs = 0;
  /** A frame is with the graphics chip, and whether another has been asked for since. */
  private drawing = false;
  private again = false;
  private calm = 0;

  constructor(
    private readonly painter: Painter,
    private options: StageOptions,
  ) {
    this.slow = painter.slow;
  }

  get ball(): Around {
    return this.around;
  }
  get aspect(): number {
    return this.height > 0 ? this.width / this.height : 1;
  }
  get stand() {
    return standOf(this.lie);
  }
  get gaze(): Gaze {
    return this.seen ?? this.rest;
  }
  /** Whether the machine keeps up with a pointer. */
  get quick(): boolean {
    return this.lastMs < slowFrameMs;
  }

  /** Looks; none looks from rest again. */
  look(gaze: Gaze | undefined): void {
    this.seen = gaze;
    this.invalidate();
  }

  /** The level at which a piece of so many beads is to be drawn. */
  levelFor(beads: number): Level {
    return chosenLevel(beads, this.options.quality, this.slow);
  }

  /** Shows a piece, which stays its maker's to dispose of. */
  show(piece: PieceScene, lie: Lie): void {
    this.clear();
    this.piece = piece;
    this.lie = lie;
    this.around = piece.around();
    this.rest = restGaze(this.around, this.aspect, lie);
    this.scene.add(piece.group);
    this.frames = 0;
    this.invalidate();
  }

  clear(): void {
    this.moving = undefined;
    if (this.piece) this.scene.remove(this.piece.group);
    this.piece = undefined;
  }

  setQuality(quality: Quality): void {
    if (quality === this.options.quality) return;
    this.options = { ...this.options, quality };
    this.slow = this.painter.slow;
    this.takeLevel();
  }

  private takeLevel(): void {
    if (!this.piece) return;
    this.piece.setLevel(this.levelFor(this.piece.count));
    this.frames = 0;
    this.takeSize();
    this.invalidate();
  }

  resize(width: number, height: number, ratio: number): void {
    if (width === this.width && height === this.height && ratio === this.ratio) return;
    [this.width, this.height, this.ratio] = [width, height, ratio];
    this.rest = restGaze(this.around, this.aspect, this.lie);
    this.takeSize();
    this.invalidate();
  }

  private takeSize(): void {
    if (this.width <= 0 || this.height <= 0) return;
    const rough = this.levelFor(0) === 'rough';
    this.painter.setSize(this.width, this.height, rough ? 1 : Math.min(this.ratio, mostPixelRatio));
  }

  ray(x: number, y: number): Ray {
    return sightThrough(this.gaze, this.stand, this.aspect, x, y);
  }

  /** Asks for one frame, however often it is called. */
  invalidate(): void {
    if (this.asked !== 0 || this.gone) return;
    this.asked = requestAnimationFrame((now) => {
      this.asked = 0;
      const more = this.moving?.(now) ?? false;
      if (!more) this.moving = undefined;
      this.draw();
      if (more) this.invalidate();
    });
  }

  /**
   * Asks for a frame for what changed elsewhere. Where frames are slow it waits until changes pause, so that drawing on the flat
   * band never waits for the picture in the round. `before` is done before that frame, however often it was called.
   */
  invalidateCalmly(before?: () => void): void {
    clearTimeout(this.calm);
    const now = () => {
      before?.();
      this.invalidate();
    };
    if (this.quick) return now();
    this.calm = window.setTimeout(() => !this.gone && now(), Math.max(leastCalmMs, 2 * this.lastMs));
  }

  /** Calls `step` before each frame until it says that it is done. */
  move(step: (now: number) => boolean): void {
    this.moving = step;
    this.invalidate();
  }

  private draw(): void {
    if (!this.piece || this.width <= 0 || this.height <= 0 || this.gone) return;
    // Frames that wait for each other would keep the chip busy long after the hand has stopped.
    if (this.drawing) {
      this.again = true;
      return;
    }
    this.drawing = true;
    this.placeCamera();
    this.piece.sort(bearings(this.gaze, this.stand).outwards);
    const start = performance.now();
    const level = this.levelFor(this.piece.count);
    this.painter.render(this.scene, this.camera);
    const first = this.frames++ === 0;
    this.painter.whenDrawn(() => {
      if (this.gone) return;
      this.drawing = false;
      if (this.again) this.invalidate();
      this.again = false;
      this.lastMs = performance.now() - start;
      this.options.onFrame?.({ ...this.painter.figures(), ms: this.lastMs, level });
      if (this.lastMs <= slowFrameMs || this.slow || this.options.quality !== 'own') return;
      // The first frame also builds the programs: ask again before anything is given up.
      if (first) return this.invalidate();
      this.slow = true;
      this.takeLevel();
    });
  }

  private placeCamera(): void {
    const { gaze, stand, camera } = this;
    const reach =
      this.around.radius + Math.hypot(...gaze.target.map((v, j) => v - (this.around.centre[j] ?? 0)));
    camera.aspect = this.aspect;
    camera.near = Math.max(gaze.distance / 200, gaze.distance - 1.5 * reach);
    camera.far = gaze.distance + 1.5 * reach;
    camera.position.set(...eyeOf(gaze, stand));
    camera.up.set(...bearings(gaze, stand).up);
    camera.lookAt(...gaze.target);
    camera.updateProjectionMatrix();
  }

  dispose(): void {
    this.gone = true;
    if (this.asked !== 0) cancelAnimationFrame(this.asked);
    this.asked = 0;
    clearTimeout(this.calm);
    this.clear();
    this.painter.dispose();
  }
}
