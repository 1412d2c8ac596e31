/** What a new project begins with, and the operations that make it. */
import type { Use } from '../../engine/shapes';
import type { Operation } from '../../project/operation';

export type NewPiece =
  | {
      readonly what: 'round';
      /** The form as written. */
      readonly shape: string;
      readonly kind: string;
      readonly bead: string;
      readonly use: Use;
      readonly columns: number;
      readonly edge: number;
    }
  | {
      readonly what: 'flat';
      readonly bead: string;
      readonly columns: number;
      readonly edge: number;
    };

/** A blank project has this bead, and these letters for it. */
const blankBead = 'cylinder-11';
const blankLetters = ['A', 'B'];

function beadOperations(bead: string): readonly Operation[] {
  if (bead === blankBead) return [];
  return [
    ...blankLetters.map((letter): Operation => ({ do: 'change_legend_entry', letter, entry: { bead } })),
    { do: 'set_beads', beads: [{ id: bead }] },
  ];
}

export function operationsFor(piece: NewPiece, bandName: string): readonly Operation[] {
  const { bead, columns, edge } = piece;
  const band = { do: 'add_band', name: bandName, bead, columns, edge } as const;
  if (piece.what === 'flat') return [...beadOperations(bead), band];
  return [
    ...beadOperations(bead),
    { do: 'add_form', id: piece.kind, shape: piece.shape },
    { ...band, form: piece.kind, use: piece.use },
  ];
}
