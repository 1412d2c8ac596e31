/** Whether the guide to a first band is out, and what has been done with it: kept in this browser. */
import { steps, type Step } from './steps';

const key = 'evencount-guide';

interface Kept {
  readonly out: boolean;
  readonly done: readonly Step[];
}

function kept(): Kept {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(key) ?? 'null');
    if (
      typeof read === 'object' &&
      read !== null &&
      'out' in read &&
      'done' in read &&
      Array.isArray(read.done)
    ) {
      const { done } = read;
      return { out: read.out === true, done: steps.filter((step) => done.includes(step)) };
    }
  } catch {
    // Nothing is kept, or what is can't be read.
  }
  return { out: false, done: [] };
}

let state = $state.raw<Kept>(kept());

function keep(next: Kept): void {
  state = next;
  try {
    localStorage.setItem(key, JSON.stringify(next));
  } catch {
    // It is out as long as the page is.
  }
}

export const guide = {
  get out(): boolean {
    return state.out;
  },
  get done(): readonly Step[] {
    return state.done;
  },
  /** From the first step, with a new piece. */
  begin(): void {
    keep({ out: true, done: [] });
  },
  takeUp(): void {
    keep({ ...state, out: true });
  },
  putAway(): void {
    keep({ ...state, out: false });
  },
  tick(...done: readonly Step[]): void {
    const more = done.filter((step) => !state.done.includes(step));
    if (more.length > 0) keep({ ...state, done: [...state.done, ...more] });
  },
};
