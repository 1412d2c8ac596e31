/**
 * The booklet that was made last, and from what: kept while other stops are visited, and found again when the page is opened anew as long as
 * the server still has it.
 */
import { address } from '../../engine/api';
import { Work } from '../../engine/job.svelte';
import { currentLanguage } from '../../words/words.svelte';

export const papers = ['a4', 'letter'] as const;
export type Paper = (typeof papers)[number];
export const signKinds = ['letters', 'symbols', 'none'] as const;
export type Signs = (typeof signKinds)[number];

export const hands = ['right', 'left'] as const;
export type Hand = (typeof hands)[number];

/** What a booklet can be written in, by the names that their readers know. */
export const printedLanguages = {
  en: 'English',
  de: 'Deutsch',
  es: 'Español',
  fr: 'Français',
  ja: '日本語',
} as const;
export type PrintedLanguage = keyof typeof printedLanguages;

export const isPrinted = (language: string): language is PrintedLanguage => language in printedLanguages;

export interface BookletOptions {
  readonly paper: Paper;
  readonly signs: Signs;
  readonly steps: boolean;
  readonly language: PrintedLanguage;
  readonly hand: Hand;
  /** The job of the picture that is on the cover. */
  readonly cover?: string | undefined;
}

interface Kept {
  readonly job: string;
  readonly revision: number;
  readonly options: BookletOptions;
}

interface AlongMade {
  readonly revision: number;
  readonly language: PrintedLanguage;
}

export class Making {
  /** In which the next one will be written. */
  language = $state<PrintedLanguage>('en');
  readonly work = new Work();
  readonly along = new Work();
  #made = $state.raw<Omit<Kept, 'job'>>();
  #alongMade = $state.raw<AlongMade>();

  constructor(readonly project: string) {
    const [kept, spoken] = [recall(project), currentLanguage()];
    this.language = kept?.options.language ?? (isPrinted(spoken) ? spoken : 'en');
    if (!kept) return;
    this.#made = kept;
    void this.work.take(kept.job);
  }

  /** What the booklet was made from; undefined where there is none. */
  get made(): Omit<Kept, 'job'> | undefined {
    return this.#made;
  }
  /** And the stitch-along page. */
  get alongMade(): AlongMade | undefined {
    return this.#alongMade;
  }

  async make(revision: number, options: BookletOptions): Promise<void> {
    this.#made = { revision, options };
    const begun = await this.work.start(address(['projects', this.project, 'booklet'], { ...options }));
    if (begun && this.work.job) remember(this.project, { job: this.work.job.id, revision, options });
  }
  async makeAlong(revision: number): Promise<void> {
    this.#alongMade = { revision, language: this.language };
    await this.along.start(address(['projects', this.project, 'along'], { language: this.language }));
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
