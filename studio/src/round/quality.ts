/** How finely beads are drawn: by how many there are, and by how long the machine takes. */

/** fine: true shape with bore and lips. plain: fewer corners. coarse: no bore. rough: six sides, lit by its corners only. */
export const levels = ['fine', 'plain', 'coarse', 'rough'] as const;
export type Level = (typeof levels)[number];

/** Corners that a graphics chip of a small laptop draws without a pause: from memory. */
const plainFrom = 2_500;
export const coarseFrom = 20_000;

/** Longer than this is felt as a pause: from memory. */
export const slowFrameMs = 100;

export const levelFor = (beads: number): Level =>
  beads >= coarseFrom ? 'coarse' : beads >= plainFrom ? 'plain' : 'fine';

/** own: as finely as the machine draws without a pause. full: always as the number of beads allows. low: always simply. */
export type Quality = 'own' | 'full' | 'low';

/** `slow`: a frame has taken too long, not counting the first, which also builds the programs. */
export const chosenLevel = (beads: number, quality: Quality, slow: boolean): Level =>
  quality === 'low' || (slow && quality === 'own') ? 'rough' : levelFor(beads);
