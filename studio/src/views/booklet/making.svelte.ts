/**
 * The booklet that was made last, and from what: kept while other stops are visited, and found again when the page is opened anew as long as
 * the server still has it.
 */
import { address } from '../../engine/api';
import { Work } from '../../engine/job.svelte';

export const papers = ['a4', 'letter'] as const;
export type Paper = (typeof papers)[number];
export const signKinds = ['letters', 'symbols', 'none'] as const;
export type Signs = (typeof signKinds)[number];

export interface BookletOptions {
  readonly paper: Paper;
  readonly signs: Signs;
  readonly steps: boolean;
}

interface Kept {
  readonly job: string;
  readonly revision: number;
  readonly options: BookletOptions;
}

export class Making {
  readonly work = new Work();
  readonly along = new Work();
  #made = $state.raw<Omit<Kept, 'job'>>();
  #alongMade = $state<number>();

  constructor(readonly project: string) {
    const kept = recall(project);
    if (!kept) return;
    this.#made = kept;
    void this.work.take(kept.job);
  }

  /** What the booklet was made from; undefined where there is none. */
  get made(): Omit<Kept, 'job'> | undefined {
    return this.#made;
  }
  get alongMade(): number | undefined {
    return this.#alongMade;
  }

  async make(revision: number, options: BookletOptions): Promise<void> {
    this.#made = { revision, options };
    const begun = await this.work.start(address(['projects', this.project, 'booklet'], { ...options }));
    if (begun && this.work.job) remember(this.project, { job: this.work.job.id, revision, options });
  }
  async makeAlong(revision: number): Promise<void> {
    this.#alongMade = revision;
    await this.along.start(address(['projects', this.project, 'along']));
  }
}

const keyOf = (project: string): string => `evencount-booklet-${project}`;

function remember(project: string, kept: Kept): void {
  try {
    sessionStorage.setItem(keyOf(project), JSON.stringify(kept));
  } catch {
    // It is made again, then.
  }
}
function recall(project: string): Kept | undefined {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(keyOf(project)) ?? 'null');
    return typeof kept === 'object' && kept !== null && 'job' in kept ? (kept as Kept) : undefined;
  } catch {
    return undefined;
  }
}

const makings: Record<string, Making> = {};

/** One for each project, as long as the page is open. */
export function makingOf(project: string): Making {
  return (makings[project] ??= new Making(project));
}
