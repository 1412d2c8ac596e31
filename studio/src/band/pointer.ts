/**
 * Mouse, pen and fingers to intents. Nothing is asked for before the pointer is lifted, so a stroke that turns out to be the beginning of
 * a pinch is simply forgotten.
 *
 * Mouse and pen: draw with the main button; pan with the middle one, or with the space key held; pick up a colour with the other one.
 * Fingers: one draws, two pan and pinch, one that rests picks up the colour. While a pen draws, a resting palm is not heard.
 */
import type { Cell } from './cells';
import {
  type Draft,
  fillDraft,
  isShape,
  moveDraft,
  pickIntent,
  type Preview,
  replaceIntent,
  shapeDraft,
  stampDraft,
  strokeDraft,
  type Worktop,
} from './drafts';
import { cellAt } from './lattice';
import { type Intent, isWithin, sameCell } from './model';
import { nearestHolding } from './grid';
import { type Point, strokeCells } from './shapes';
import { type Fingers, type Frame, panBy, pinch, type Spot, toMm, type View } from './view';

export interface PointerSample extends Spot {
  readonly id: number;
  readonly device: 'mouse' | 'pen' | 'touch';
  /** As PointerEvent has it: 0 main, 1 middle, 2 other. */
  readonly button: number;
  /** The space key is held. */
  readonly grabs: boolean;
}

export interface PointerAnswer {
  readonly intents: readonly Intent[];
  readonly preview: Preview | undefined;
  readonly view: View;
  /** What the intents will show once they are done. */
  readonly expected?: Preview;
}

/** What the pointer is over. */
export interface Place {
  readonly top: Worktop;
  readonly view: View;
  readonly frame: Frame;
}

/** A finger may tremble by this much (pixels) and still rest. */
const tremble = 8;
/** Milliseconds after which a resting finger picks up the colour: as long as systems wait for a long press. From memory. */
export const longPress = 500;

type Gesture =
  | { kind: 'none' }
  | { kind: 'stroke'; id: number; cells: Cell[]; last: Point; began: Spot; moved: boolean; device: string }
  | {
      kind: 'drag';
      id: number;
      from: Cell;
      to: Cell;
      began: Spot;
      moved: boolean;
      device: string;
      clears: boolean;
    }
  | { kind: 'press'; id: number; cell: Cell; began: Spot; moved: boolean; device: string }
  | { kind: 'pan'; id: number; last: Spot }
  | { kind: 'pinch'; ids: readonly [number, number] }
  /** Fingers that are still down after a pinch or a long press. */
  | { kind: 'spent' };

export class PointerReader {
  #gesture: Gesture = { kind: 'none' };
  readonly #fingers = new Map<number, Spot>();
  #hovered: Cell | undefined;

  get busy(): boolean {
    return this.#gesture.kind !== 'none';
  }

  down(sample: PointerSample, place: Place): PointerAnswer {
    if (sample.device === 'touch') {
      if ('device' in this.#gesture && this.#gesture.device === 'pen') return this.#answer(place);
      this.#fingers.set(sample.id, { x: sample.x, y: sample.y });
      const [first, second] = [...this.#fingers.keys()];
      if (first !== undefined && second !== undefined) {
        if (this.#fingers.size === 2) this.#gesture = { kind: 'pinch', ids: [first, second] };
        return this.#answer(place);
      }
    } else if (sample.device === 'pen' && this.#gesture.kind !== 'none') {
      // The pen comes down where the hand rests already.
      this.#fingers.clear();
      this.#gesture = { kind: 'none' };
    }
    if (this.#gesture.kind !== 'none') return this.#answer(place);
    if (sample.button === 1 || sample.grabs) {
      this.#gesture = { kind: 'pan', id: sample.id, last: sample };
      return this.#answer(place);
    }
    const cell = this.#cellUnder(sample, place);
    if (sample.button === 2) {
      const pick = cell && pickIntent(place.top, cell);
      return this.#answer(place, pick ? [pick] : []);
    }
    this.#begin(sample, cell, place);
    return this.#answer(place);
  }

  /** Samples of one pointer since the last call, in order. */
  move(samples: readonly PointerSample[], place: Place): PointerAnswer {
    let { view } = place;
    const last = samples.at(-1);
    if (!last) return this.#answer(place);
    const intents = last.device === 'touch' ? [] : this.#hover(last, place);
    for (const sample of samples) view = this.#moved(sample, { ...place, view });
    return this.#answer({ ...place, view }, intents);
  }

  up(sample: PointerSample, place: Place): PointerAnswer {
    const gesture = this.#gesture;
    const own = 'id' in gesture && gesture.id === sample.id;
    if (own) this.#moved(sample, place);
    const draft = own ? this.#draft(place.top) : undefined;
    const intents = own ? this.#asked(draft, place) : [];
    this.#lift(sample.id, own);
    return { intents, preview: undefined, view: place.view, ...(draft ? { expected: draft.preview } : {}) };
  }

  /** The system took the pointer away: nothing is done. */
  cancel(id: number, place: Place): PointerAnswer {
    this.#lift(id, 'id' in this.#gesture && this.#gesture.id === id);
    return this.#answer(place);
  }

  /** Whatever was begun is forgotten. */
  forget(place: Place): PointerAnswer {
    this.#gesture = this.#gesture.kind === 'none' ? { kind: 'none' } : { kind: 'spent' };
    return this.#answer(place);
  }

  leave(place: Place): PointerAnswer {
    const left = this.#hovered;
    this.#hovered = undefined;
    return this.#answer(place, left ? [{ kind: 'hover', cell: undefined }] : []);
  }

  /** To be called `longPress` after a finger came down. */
  rested(id: number, place: Place): PointerAnswer {
    const gesture = this.#gesture;
    if (!('moved' in gesture) || gesture.id !== id || gesture.moved || gesture.device !== 'touch')
      return this.#answer(place);
    const cell = this.#cellUnder(gesture.began, place);
    this.#gesture = { kind: 'spent' };
    const pick = cell && pickIntent(place.top, cell);
    return this.#answer(place, pick ? [pick] : []);
  }

  #begin(sample: PointerSample, cell: Cell | undefined, { top, view }: Place): void {
    const { id, device } = sample;
    const common = { id, device, began: { x: sample.x, y: sample.y }, moved: false };
    if (top.tool === 'bead')
      this.#gesture = { kind: 'stroke', ...common, cells: cell ? [cell] : [], last: toMm(view, sample) };
    else if (isShape(top.tool) && cell)
      this.#gesture = { kind: 'drag', ...common, from: cell, to: cell, clears: false };
    else if (top.tool === 'select') {
      const clears = !cell;
      const from = cell ?? nearest(sample, { top, view });
      this.#gesture = { kind: 'drag', ...common, from, to: from, clears };
    } else if (top.tool === 'move' && cell && top.selection && isWithin(top.selection, cell))
      this.#gesture = { kind: 'drag', ...common, from: cell, to: cell, clears: false };
    else if (cell) this.#gesture = { kind: 'press', ...common, cell };
    // Beside the band there is nothing to work on: there it is taken by the hand.
    else this.#gesture = { kind: 'pan', id, last: sample };
  }

  #moved(sample: PointerSample, place: Place): View {
    const { view, frame, top } = place;
    const gesture = this.#gesture;
    if (gesture.kind === 'pinch') return this.#pinched(sample, place, gesture.ids);
    if (!('id' in gesture) || gesture.id !== sample.id) return view;
    if (this.#fingers.has(sample.id)) this.#fingers.set(sample.id, { x: sample.x, y: sample.y });
    if (gesture.kind === 'pan') {
      const { last } = gesture;
      gesture.last = sample;
      return panBy(view, sample.x - last.x, sample.y - last.y, top.lattice, frame);
    }
    if (Math.hypot(sample.x - gesture.began.x, sample.y - gesture.began.y) > tremble) gesture.moved = true;
    const at = toMm(view, sample);
    if (gesture.kind === 'stroke') {
      for (const cell of strokeCells(top.lattice, gesture.last, at))
        if (!sameCell(gesture.cells.at(-1), cell)) gesture.cells.push(cell);
      gesture.last = at;
    } else if (gesture.kind === 'drag') gesture.to = nearest(sample, place);
    else if (gesture.kind === 'press') gesture.cell = this.#cellUnder(sample, place) ?? gesture.cell;
    return view;
  }

  #pinched(sample: PointerSample, { view, frame, top }: Place, ids: readonly [number, number]): View {
    const before = this.#pair(ids);
    if (!this.#fingers.has(sample.id)) return view;
    this.#fingers.set(sample.id, { x: sample.x, y: sample.y });
    const after = this.#pair(ids);
    return before && after ? pinch(view, before, after, top.lattice, frame) : view;
  }

  #pair([first, second]: readonly [number, number]): Fingers | undefined {
    const a = this.#fingers.get(first);
    const b = this.#fingers.get(second);
    return a && b ? [a, b] : undefined;
  }

  #lift(id: number, own: boolean): void {
    this.#fingers.delete(id);
    if (own || this.#gesture.kind === 'pinch') this.#gesture = { kind: 'spent' };
    if (this.#gesture.kind === 'spent' && this.#fingers.size === 0) this.#gesture = { kind: 'none' };
  }

  #hover(sample: PointerSample, place: Place): Intent[] {
    const cell = this.#cellUnder(sample, place);
    if (sameCell(cell, this.#hovered)) return [];
    this.#hovered = cell;
    return [{ kind: 'hover', cell }];
  }

  #cellUnder(spot: Spot, { top, view }: Place): Cell | undefined {
    const { x, y } = toMm(view, spot);
    return cellAt(top.lattice, x, y);
  }

  /** What would be asked for if the pointer were lifted now. */
  #draft(top: Worktop): Draft | undefined {
    const gesture = this.#gesture;
    if (gesture.kind === 'stroke') return strokeDraft(top, gesture.cells);
    if (gesture.kind === 'drag') {
      const stretch = { from: gesture.from, to: gesture.to };
      if (isShape(top.tool)) return shapeDraft(top, top.tool, stretch);
      if (top.tool === 'move') return moveDraft(top, gesture.from, gesture.to);
      if (top.tool !== 'select') return undefined;
      const selection = gesture.clears && !gesture.moved ? undefined : stretch;
      const preview = { beads: new Map<number, number>(), ...(selection ? { outline: selection } : {}) };
      return { intent: { kind: 'select', selection }, preview };
    }
    if (gesture.kind !== 'press') return undefined;
    if (top.tool === 'stamp') return stampDraft(top, gesture.cell);
    return top.tool === 'fill' ? fillDraft(top, gesture.cell) : undefined;
  }

  #asked(draft: Draft | undefined, { top }: Place): Intent[] {
    if (draft) {
      const { intent } = draft;
      const nothing =
        (intent.kind === 'beads' && intent.cells.length === 0) ||
        (intent.kind === 'fill' && intent.from.length === 0) ||
        (intent.kind === 'move' && sameCell(intent.to, intent.selection.from));
      return nothing ? [] : [intent];
    }
    if (this.#gesture.kind !== 'press') return [];
    const { cell } = this.#gesture;
    const intent =
      top.tool === 'replace'
        ? replaceIntent(top, cell)
        : top.tool === 'pick'
          ? pickIntent(top, cell)
          : undefined;
    return intent ? [intent] : [];
  }

  #answer(place: Place, intents: readonly Intent[] = []): PointerAnswer {
    const draft =
      this.#gesture.kind === 'press' && place.top.tool === 'fill' ? undefined : this.#draft(place.top);
    const preview = draft?.preview ?? this.#stampToBe(place.top);
    return { intents, preview, view: place.view };
  }

  /** The stamp is seen under the pointer before it is pressed. */
  #stampToBe(top: Worktop): Preview | undefined {
    if (top.tool !== 'stamp' || !this.#hovered || this.#gesture.kind !== 'none') return undefined;
    return stampDraft(top, this.#hovered)?.preview;
  }
}

/** The cell under a spot, or beside the band the one nearest to it. */
function nearest(spot: Spot, { top, view }: { top: Worktop; view: View }): Cell {
  const { lattice } = top;
  const { x, y } = toMm(view, spot);
  const found = cellAt(lattice, x, y);
  if (found) return found;
  const units = lattice.holes === 'squares' ? 2 : 1;
  return nearestHolding(lattice, {
    column: Math.floor((x / lattice.columnMm) * units),
    step: Math.floor((y / lattice.edgeMm) * units),
  });
}
