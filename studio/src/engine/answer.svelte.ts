/** What the server works out for a view, kept up to date while the view is shown. */
import { ask } from './api';
import type { Problem } from './outcome';

export interface Answer<T> {
  /** The last answer; while a newer one is on its way, the one before. */
  readonly value: T | undefined;
  readonly problem: Problem | undefined;
  readonly waiting: boolean;
}

export interface Question<T> {
  /** Nothing is asked while it is undefined. */
  readonly where: () => string | undefined;
  /** What is sent with it, as JSON, where a question is longer than an address. */
  readonly body?: () => unknown;
  /** Asked again when this changes: the project's revision, or a band's structure. Numbers or texts, which are compared. */
  readonly since?: () => unknown;
  readonly read?: (response: Response) => Promise<T>;
  /** Changes that follow each other closely are asked about once, this long after the last (ms). */
  readonly pause?: number;
}

/** To be called while a component is made; the asking ends with it. A newer question calls off the one before. */
export function answerTo<T>({ where, body, since, read, pause = 0 }: Question<T>): Answer<T> {
  let value = $state.raw<T>();
  let problem = $state.raw<Problem>();
  let waiting = $state(false);
  let asked: string | undefined;

  // Compared before anything is asked: what they are read from changes more often than they do.
  const asking = $derived(where());
  const key = $derived(since?.());
  const sending = $derived(body ? JSON.stringify(body()) : undefined);

  $effect(() => {
    const address = asking;
    const sent: unknown = sending ? JSON.parse(sending) : undefined;
    void key;
    if (address === undefined) {
      value = undefined;
      problem = undefined;
      waiting = false;
      asked = undefined;
      return;
    }
    const abort = new AbortController();
    const put = async () => {
      // Also when it is called off: a change that comes before the first answer waits its turn like any other.
      asked = address;
      const answer = await ask<T>(address, { signal: abort.signal, body: sent }, read);
      if (abort.signal.aborted) return;
      waiting = false;
      problem = answer.ok ? undefined : answer.problem;
      value = answer.ok ? answer.value : undefined;
    };
    waiting = true;
    // The first answer of a place is waited for by a person; repetitions can wait for the end of a stroke.
    const timer = setTimeout(() => void put(), asked === undefined ? 0 : pause);
    return () => {
      clearTimeout(timer);
      abort.abort();
    };
  });

  return {
    get value() {
      return value;
    },
    get problem() {
      return problem;
    },
    get waiting() {
      return waiting;
    },
  };
}
