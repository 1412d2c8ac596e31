/** What a request came to. Nothing is thrown: who asks looks at `ok`. */

/** As the server says it; `code` is a word to act on. */
export interface Problem {
  readonly code: string;
  readonly where: string;
  readonly found: string;
  readonly expected: string;
  readonly message: string;
}

export interface Done<T> {
  readonly ok: true;
  readonly value: T;
}
export interface Failed {
  readonly ok: false;
  readonly problem: Problem;
  /** 0 where the server was not reached. */
  readonly status: number;
}
export type Outcome<T> = Done<T> | Failed;

export const done = <T>(value: T): Done<T> => ({ ok: true, value });

/** The server can't be reached, or does not answer as it should. */
export const noAnswer = 'no_answer';

export const failed = (status: number, problem: Partial<Problem> & { readonly code: string }): Failed => ({
  ok: false,
  status,
  problem: { where: '', found: '', expected: '', message: '', ...problem },
});
