/** What the person has in hand: kept while she walks along the path and back. */
import type { Mirror, Stamp, Stretch, Tool } from '../../band/model';

export const besides = ['words', 'lettering', 'picture', 'rearrange'] as const;
export type Beside = (typeof besides)[number];

class Hand {
  tool = $state<Tool>('bead');
  /** A place in the legend. */
  colour = $state(0);
  filled = $state(true);
  mirrors = $state.raw<readonly Mirror[]>([]);
  letters = $state(false);
  selection = $state.raw<Stretch>();
  stamp = $state.raw<Stamp>();
  /** What is worked on beside the band. */
  beside = $state<Beside>('words');
  /** Beads that the band in the round is slid. */
  slide = $state(0);
}

export const hand = new Hand();
