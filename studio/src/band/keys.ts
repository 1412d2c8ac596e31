/**
 * The keyboard on the band: a cell has the focus, arrows walk it, Enter or the space bar does with the tool in hand what a press
 * of the pointer does. What takes two places (a line, a rectangle, an ellipse, a selection, a move) takes two presses.
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
import { type Direction, nearestHolding, walk } from './grid';
import { type Intent, isWithin, type LegendEntry, sameCell } from './model';

export interface KeyPress {
  readonly key: string;
  readonly shift: boolean;
  /** Control, or Command where that is used. */
  readonly command: boolean;
  readonly alt: boolean;
  /** Milliseconds, for letters typed one after another. */
  readonly time: number;
}

export interface KeyAnswer {
  /** False: the page may do with the key what it likes. */
  readonly taken: boolean;
  readonly intents: readonly Intent[];
  readonly zoom?: 'in' | 'out' | 'fit';
  readonly expected?: Preview;
}

const directions: Readonly<Record<string, Direction>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right',
};

/** Letters typed within this time (milliseconds) belong together: A, A is AA where the legend has one. */
const together = 700;
const pageOfSteps = 10;

const notTaken: KeyAnswer = { taken: false, intents: [] };

export class KeyReader {
  #focus: Cell = { column: 0, step: 0 };
  #began: Cell | undefined;
  #typed = '';
  #typedAt = -Infinity;

  get focus(): Cell {
    return this.#focus;
  }

  /** Where the first of two presses was. */
  get began(): Cell | undefined {
    return this.#began;
  }

  /** The pointer took the focus along, or the band changed its size. */
  place(cell: Cell, top: Worktop): void {
    this.#focus = nearestHolding(top.lattice, cell);
  }

  /** What Enter would do now, where a first place was set. */
  preview(top: Worktop): Preview | undefined {
    return this.#began ? this.#second(top, this.#began)?.preview : undefined;
  }

  forget(): void {
    this.#began = undefined;
  }

  press(press: KeyPress, top: Worktop, legend: readonly LegendEntry[]): KeyAnswer {
    if (press.alt) return notTaken;
    const { key } = press;
    const direction = directions[key];
    if (direction) return this.#arrow(press, direction, top);
    if (press.command) return this.#command(press, top);
    if (key === 'Enter' || key === ' ') return this.#act(top);
    if (key === 'Escape') return this.#escape(top);
    if (key === '+' || key === '=') return { taken: true, intents: [], zoom: 'in' };
    if (key === '-' || key === '_') return { taken: true, intents: [], zoom: 'out' };
    if (key === '0') return { taken: true, intents: [], zoom: 'fit' };
    return this.#leap(press, top) ?? this.#letter(press, legend);
  }

  #walkTo(to: Cell, top: Worktop): KeyAnswer {
    const cell = nearestHolding(top.lattice, to);
    if (sameCell(cell, this.#focus)) return { taken: true, intents: [] };
    this.#focus = cell;
    return { taken: true, intents: [{ kind: 'walk', cell }] };
  }

  #arrow(press: KeyPress, direction: Direction, top: Worktop): KeyAnswer {
    const { lattice } = top;
    if (press.command) {
      const { column, step } = this.#focus;
      if (direction === 'up') return this.#walkTo({ column, step: 0 }, top);
      if (direction === 'down') return this.#walkTo({ column, step: lattice.edge - 1 }, top);
      return this.#walkTo({ column: direction === 'left' ? 0 : lattice.columns - 1, step }, top);
    }
    const before = this.#focus;
    const answer = this.#walkTo(walk(lattice, before, direction), top);
    if (!press.shift) return answer;
    const from = top.selection && sameCell(top.selection.to, before) ? top.selection.from : before;
    return {
      taken: true,
      intents: [...answer.intents, { kind: 'select', selection: { from, to: this.#focus } }],
    };
  }

  #leap({ key, shift }: KeyPress, top: Worktop): KeyAnswer | undefined {
    const { columns, edge } = top.lattice;
    const { column, step } = this.#focus;
    if (key === 'Home') return this.#walkTo({ column: shift ? 0 : column, step: 0 }, top);
    if (key === 'End') return this.#walkTo({ column: shift ? columns - 1 : column, step: edge - 1 }, top);
    if (key === 'PageUp') return this.#walkTo({ column, step: step - pageOfSteps }, top);
    if (key === 'PageDown') return this.#walkTo({ column, step: step + pageOfSteps }, top);
    return undefined;
  }

  #command({ key }: KeyPress, top: Worktop): KeyAnswer {
    const letter = key.toLowerCase();
    if (letter === 'a') {
      const to = { column: top.lattice.columns - 1, step: top.lattice.edge - 1 };
      return { taken: true, intents: [{ kind: 'select', selection: { from: { column: 0, step: 0 }, to } }] };
    }
    if (letter === 'v') {
      const draft = stampDraft(top, this.#focus);
      return draft ? { taken: true, intents: [draft.intent], expected: draft.preview } : notTaken;
    }
    if ((letter !== 'c' && letter !== 'x') || !top.selection) return notTaken;
    return { taken: true, intents: [{ kind: letter === 'c' ? 'copy' : 'cut', selection: top.selection }] };
  }

  #escape(top: Worktop): KeyAnswer {
    if (this.#began) {
      this.#began = undefined;
      return { taken: true, intents: [] };
    }
    return top.selection ? { taken: true, intents: [{ kind: 'select', selection: undefined }] } : notTaken;
  }

  #act(top: Worktop): KeyAnswer {
    const { tool } = top;
    if (isShape(tool) || tool === 'select' || tool === 'move') return this.#actTwice(top);
    this.#began = undefined;
    const draft =
      tool === 'bead'
        ? strokeDraft(top, [this.#focus])
        : tool === 'fill'
          ? fillDraft(top, this.#focus)
          : tool === 'stamp'
            ? stampDraft(top, this.#focus)
            : undefined;
    if (draft) return { taken: true, intents: [draft.intent], expected: draft.preview };
    const intent =
      tool === 'replace'
        ? replaceIntent(top, this.#focus)
        : tool === 'pick'
          ? pickIntent(top, this.#focus)
          : undefined;
    return { taken: true, intents: intent ? [intent] : [] };
  }

  #actTwice(top: Worktop): KeyAnswer {
    if (this.#began) {
      const draft = this.#second(top, this.#began);
      this.#began = undefined;
      return draft
        ? { taken: true, intents: [draft.intent], expected: draft.preview }
        : { taken: true, intents: [] };
    }
    if (top.tool !== 'move' || (top.selection && isWithin(top.selection, this.#focus)))
      this.#began = this.#focus;
    return { taken: true, intents: [] };
  }

  #second(top: Worktop, from: Cell): Draft | undefined {
    const stretch = { from, to: this.#focus };
    if (isShape(top.tool)) return shapeDraft(top, top.tool, stretch);
    if (top.tool === 'move') return moveDraft(top, from, this.#focus);
    if (top.tool !== 'select') return undefined;
    return {
      intent: { kind: 'select', selection: stretch },
      preview: { beads: new Map(), outline: stretch },
    };
  }

  #letter({ key, time }: KeyPress, legend: readonly LegendEntry[]): KeyAnswer {
    if ([...key].length !== 1) return notTaken;
    const before = time - this.#typedAt <= together ? this.#typed : '';
    const find = (text: string) => {
      const exact = legend.findIndex(({ letter }) => letter === text);
      return exact >= 0
        ? exact
        : legend.findIndex(({ letter }) => letter.toLowerCase() === text.toLowerCase());
    };
    for (const text of before === '' ? [key] : [before + key, key]) {
      const bead = find(text);
      if (bead < 0) continue;
      this.#typed = text;
      this.#typedAt = time;
      return { taken: true, intents: [{ kind: 'pick', bead }] };
    }
    this.#typed = key;
    this.#typedAt = time;
    return notTaken;
  }
}
