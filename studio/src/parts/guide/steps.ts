/** The steps of a first band, and how one sees that they are done. */
import type { Stop } from '../../place/route';

export const steps = ['sizes', 'fit', 'draw', 'slide', 'words', 'print'] as const;
export type Step = (typeof steps)[number];

/** Where each is worked on. */
export const stopOf: Readonly<Record<Step, Stop>> = {
  sizes: 'form',
  fit: 'form',
  draw: 'band',
  slide: 'band',
  words: 'band',
  print: 'proof',
};

/** What can be seen of a project and of where its maker has been. */
export interface Seen {
  readonly forms: number;
  readonly bandsRoundForms: number;
  /** The most colours that any band is drawn with. */
  readonly colours: number;
  readonly row: boolean;
  readonly stop: Stop;
}

/** The steps that show for themselves to be done. */
export function doneBy(seen: Seen): readonly Step[] {
  const done: Step[] = [];
  if (seen.forms > 0) done.push('sizes');
  if (seen.bandsRoundForms > 0) done.push('fit');
  if (seen.colours > 1) done.push('draw');
  if (seen.row) done.push('words');
  if (seen.stop === 'booklet') done.push('print');
  return done;
}

/** The first that is not done; undefined when all are. */
export const nextStep = (done: ReadonlySet<Step>): Step | undefined => steps.find((step) => !done.has(step));

/** How many kinds of beads a band is drawn with. */
export function coloursIn(beads: Uint16Array, none: number): number {
  const found = new Set<number>();
  for (const bead of beads) if (bead !== none) found.add(bead);
  return found.size;
}
