/** Where on a band something is put. */
import { ordered, type Stretch } from '../../band/model';
import type { BandHead, FaceWindowAnswer } from '../../engine/shapes';

export type Where = 'front' | 'back' | 'whole' | 'selection';

export interface Area {
  readonly at: readonly [column: number, step: number];
  readonly columns: number;
  readonly steps: number;
}

/** The places that a band has, the likeliest first. */
export function placesOf(windows: readonly FaceWindowAnswer[], selection: Stretch | undefined): Where[] {
  const faces = windows.map(({ side }) => side);
  return [...faces, 'whole', ...(selection ? (['selection'] as const) : [])];
}

export function areaOf(
  where: Where,
  head: BandHead,
  windows: readonly FaceWindowAnswer[],
  selection: Stretch | undefined,
): Area {
  const window = windows.find(({ side }) => side === where);
  if (window) return { at: [0, window.first_step], columns: head.columns, steps: window.steps };
  if (where === 'selection' && selection) {
    const { from, to } = ordered(selection);
    return {
      at: [from.column, from.step],
      columns: to.column - from.column + 1,
      steps: to.step - from.step + 1,
    };
  }
  return { at: [0, 0], columns: head.columns, steps: head.edge };
}
