/**
 * The band on the page: hands what pointer, wheel and keys do to the modules that understand it, and what these answer to the easel and to the
 * page. Everything it decides with lies in the modules beside it.
 */
import { noBead, type Cell, type Cells } from './cells';
import { describeCell, describeSelection, type Described } from './describe';
import type { Preview, Worktop } from './drafts';
import { Easel, type EaselEvents } from './easel';
import { reflection, type Reflection } from './grid';
import { type KeyAnswer, KeyReader } from './keys';
import { boxOf, cellAt, type Lattice } from './lattice';
import { type Intent, sameCell, type Shown } from './model';
import type { OverlayWords } from './overlay';
import { longPress, type Place, type PointerAnswer, PointerReader, type PointerSample } from './pointer';
import { centredOn, revealed, type Spot, toMm, wheelled, zoomAbout } from './view';

export interface DeskEvents {
  readonly intent: (intent: Intent) => void;
  readonly seen: EaselEvents['seen'];
  /** Something for who doesn't see the band. */
  readonly say: (text: string) => void;
}

/** Milliseconds for which an edit that was asked for stays seen while its answer is on the way. */
const patience = 2000;

export class Desk {
  readonly #easel: Easel;
  readonly #pointer = new PointerReader();
  readonly #keys = new KeyReader();
  #shown: Shown | undefined;
  #reflections: { key: string; made: Reflection[] } | undefined;
  #empties = 0;
  #hover: Cell | undefined;
  #preview: Preview | undefined;
  #expected: Preview | undefined;
  #keyboard = false;
  #space: 'up' | 'held' | 'dragged' = 'up';

  constructor(
    private readonly host: HTMLElement,
    canvases: { beads: HTMLCanvasElement; over: HTMLCanvasElement },
    private readonly words: OverlayWords & { readonly fromHere: string },
    private readonly events: DeskEvents,
  ) {
    this.#easel = new Easel(host, canvases, words, {
      fingered: () => ({
        hover: this.#hover,
        focus: this.#keyboard ? this.#keys.focus : undefined,
        preview: this.#preview ?? this.#expected,
      }),
      seen: events.seen,
    });
  }

  show(shown: Shown): void {
    const before = this.#shown;
    this.#shown = shown;
    this.#empties = shown.beads.reduce((count, bead) => (bead === noBead ? count + 1 : count), 0);
    if (before?.tool !== shown.tool) this.#keys.forget();
    this.#keys.place(this.#keys.focus, this.#top(shown));
    if (before?.beads !== shown.beads || before.version !== shown.version) this.#expected = undefined;
    this.#easel.show(shown);
  }

  resize(width: number, height: number, density: number): void {
    this.#easel.resize(width, height, density);
  }

  relook(): void {
    this.#easel.relook();
  }

  fit(): void {
    this.#easel.fit();
  }

  zoom(by: number): void {
    const { view, frame } = this.#easel;
    const spot = { x: frame.width / 2, y: frame.height / 2 };
    if (this.#shown) this.#easel.look(zoomAbout(view, spot, by, this.#shown.lattice, frame));
  }

  centreOn(at: Spot): void {
    const { view, frame } = this.#easel;
    if (this.#shown) this.#easel.look(centredOn(view, at, this.#shown.lattice, frame));
  }

  pointer(event: PointerEvent): void {
    const place = this.#place();
    if (!place) return;
    const sample = this.#sample(event);
    if (event.type === 'pointerdown') this.#down(event, sample, place);
    else if (event.type === 'pointermove') {
      const between = event.getCoalescedEvents();
      const samples = between.length > 0 ? between.map((one) => this.#sample(one)) : [sample];
      this.#take(this.#pointer.move(samples, place));
    } else if (event.type === 'pointerup') this.#take(this.#pointer.up(sample, place));
    else if (event.type === 'pointercancel') this.#take(this.#pointer.cancel(sample.id, place));
    else if (event.type === 'pointerleave') this.#take(this.#pointer.leave(place));
  }

  wheel(event: WheelEvent): void {
    if (!this.#shown) return;
    event.preventDefault();
    const { view, frame } = this.#easel;
    const wheel = {
      ...this.#spot(event),
      dx: event.deltaX,
      dy: event.deltaY,
      mode: event.deltaMode,
      zooms: event.ctrlKey || event.metaKey,
      sideways: event.shiftKey,
    };
    this.#easel.look(wheelled(view, wheel, this.#shown.lattice, frame));
  }

  key(event: KeyboardEvent): void {
    const place = this.#place();
    const shown = this.#shown;
    if (!place || !shown || event.target !== this.host || !this.#isForKeys(event)) return;
    if (event.key === 'Escape' && this.#pointer.busy) {
      event.preventDefault();
      this.#take(this.#pointer.forget(place));
      return;
    }
    const answer = this.#keys.press(
      {
        key: event.key,
        shift: event.shiftKey,
        command: event.ctrlKey || event.metaKey,
        alt: event.altKey,
        time: event.timeStamp,
      },
      place.top,
      shown.legend,
    );
    if (!answer.taken) return;
    event.preventDefault();
    this.#answered(answer, shown, place);
  }

  focused(): void {
    this.#keyboard = this.host.matches(':focus-visible');
    this.#space = 'up';
    if (this.#shown && this.#keyboard) this.#sayFocus(this.#shown);
    this.#easel.ask();
  }

  blurred(): void {
    this.#keyboard = false;
    this.#space = 'up';
    this.#easel.ask();
  }

  dispose(): void {
    this.#easel.dispose();
  }

  #down(event: PointerEvent, sample: PointerSample, place: Place): void {
    this.host.setPointerCapture(event.pointerId);
    this.#keyboard = false;
    if (this.#space === 'held') this.#space = 'dragged';
    const { x, y } = toMm(place.view, sample);
    const cell = cellAt(place.top.lattice, x, y);
    if (cell) this.#keys.place(cell, place.top);
    this.#keys.forget();
    if (sample.device === 'touch')
      this.#easel.after(longPress, () => {
        const now = this.#place();
        if (now) this.#take(this.#pointer.rested(sample.id, now));
      });
    this.#take(this.#pointer.down(sample, place));
  }

  /** The space bar is also what the band is taken by: what it sets waits until it is let go. */
  #isForKeys(event: KeyboardEvent): boolean {
    if (event.key !== ' ') return event.type === 'keydown';
    event.preventDefault();
    const before = this.#space;
    if (event.type === 'keyup') this.#space = 'up';
    else if (before === 'up') this.#space = 'held';
    return event.type === 'keyup' && before === 'held';
  }

  #answered(answer: KeyAnswer, shown: Shown, { top, view, frame }: Place): void {
    this.#keyboard = true;
    this.#expect(answer.expected);
    for (const intent of answer.intents) {
      if (intent.kind === 'walk') {
        this.#easel.look(revealed(view, boxOf(shown.lattice, intent.cell), shown.lattice, frame));
        this.#sayFocus(shown);
      } else if (intent.kind === 'select') this.events.say(describeSelection(intent.selection));
      else if (intent.kind === 'pick' || intent.kind === 'beads')
        this.events.say(shown.legend[intent.bead]?.name ?? '');
      this.events.intent(intent);
    }
    if (answer.intents.length === 0 && sameCell(this.#keys.began, this.#keys.focus)) this.#sayFocus(shown);
    if (answer.zoom === 'fit') this.fit();
    else if (answer.zoom) this.#zoomOnFocus(answer.zoom === 'in' ? 1.25 : 0.8, shown.lattice);
    this.#preview = this.#keys.preview(top);
    this.#easel.ask();
  }

  #sayFocus(shown: Shown): void {
    const { lattice, legend, rows, marks } = shown;
    const described: Described = { lattice, cells: cellsOf(shown), legend, rows, marks };
    const text = describeCell(described, this.#keys.focus);
    const begins = sameCell(this.#keys.began, this.#keys.focus);
    this.events.say(begins ? `${text}, ${this.words.fromHere}` : text);
  }

  #zoomOnFocus(by: number, lattice: Lattice): void {
    const { view, frame } = this.#easel;
    const box = boxOf(lattice, this.#keys.focus);
    const spot = {
      x: (box.x + box.width / 2 - view.left) * view.scale,
      y: (box.y + box.height / 2 - view.top) * view.scale,
    };
    this.#easel.look(zoomAbout(view, spot, by, lattice, frame));
  }

  #take(answer: PointerAnswer): void {
    this.#preview = answer.preview;
    if (answer.intents.some(({ kind }) => kind !== 'hover')) this.#expect(answer.expected);
    for (const intent of answer.intents) {
      if (intent.kind === 'hover') this.#hover = intent.cell;
      this.events.intent(intent);
    }
    this.#easel.look(answer.view);
    this.#easel.ask();
  }

  /** Keeps showing what was asked for until the cells come back changed. */
  #expect(expected: Preview | undefined): void {
    if (!expected || expected.beads.size === 0) return;
    const kept = { beads: expected.beads };
    this.#expected = kept;
    this.#easel.after(patience, () => {
      if (this.#expected !== kept) return;
      this.#expected = undefined;
      this.#easel.ask();
    });
  }

  #place(): Place | undefined {
    const { view, frame } = this.#easel;
    return this.#shown && { top: this.#top(this.#shown), view, frame };
  }

  #top(shown: Shown): Worktop {
    const { lattice, tool, colour, filled, selection, stamp, mirrors } = shown;
    const cells = cellsOf(shown);
    // Which cells a mirror takes to which depends on where there are beads, not on their colours.
    const key = JSON.stringify([lattice, mirrors, this.#empties]);
    if (this.#reflections?.key !== key)
      this.#reflections = { key, made: mirrors.map((mirror) => reflection(lattice, cells, mirror)) };
    return { lattice, cells, tool, colour, filled, reflections: this.#reflections.made, selection, stamp };
  }

  #spot({ clientX, clientY }: MouseEvent): Spot {
    const { left, top } = this.host.getBoundingClientRect();
    return { x: clientX - left, y: clientY - top };
  }

  #sample(event: PointerEvent): PointerSample {
    const { pointerType, pointerId, button } = event;
    const device = pointerType === 'touch' || pointerType === 'pen' ? pointerType : 'mouse';
    return { ...this.#spot(event), id: pointerId, device, button, grabs: this.#space !== 'up' };
  }
}

const cellsOf = ({ lattice, beads }: Shown): Cells => ({
  columns: lattice.columns,
  edge: lattice.edge,
  beads,
});
