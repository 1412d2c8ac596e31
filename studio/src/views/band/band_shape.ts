/** What the server says of a band, as the unrolled band is given it. */
import type { Lattice } from '../../band/lattice';
import { noMarks, type Marks, type Mirror, type StepSpan, type WorkedRow } from '../../band/model';
import type { Closure, Faces, Row, Shape, SymmetryName } from '../../engine/shapes';
import { mm } from '../../engine/units';

/** Zipped or sewn into a ring along its edge. */
export const closesRound = (closure: Closure | undefined): boolean => closure === 'zip' || closure === 'sew';

export const latticeOf = (shape: Shape, closure: Closure | undefined): Lattice => ({
  columns: shape.columns,
  edge: shape.edge,
  drop: shape.drop,
  holes: shape.holes === 'round_squares' ? 'squares' : shape.holes,
  edgeRound: closesRound(closure),
  columnsRound: shape.round,
  columnMm: mm(shape.gauge.column_mm),
  edgeMm: mm(shape.gauge.edge_mm),
});

/** Steps whose even beads lie on an edge of the form, in stretches. */
function taperedSpans(faces: Faces): StepSpan[] {
  const spans: { firstStep: number; steps: number }[] = [];
  for (let step = 0; step < faces.edge; step++) {
    if (faces.half_steps[2 * step]?.side !== 'edge') continue;
    const last = spans.at(-1);
    if (last && last.firstStep + last.steps === step) last.steps++;
    else spans.push({ firstStep: step, steps: 1 });
  }
  return spans;
}

export function marksOf(faces: Faces | undefined, closure: Closure | undefined): Marks {
  const seam = closesRound(closure);
  if (!faces) return { ...noMarks, seam };
  return {
    faces: faces.windows.map(({ side, first_step, steps }) => ({ side, firstStep: first_step, steps })),
    tapered: taperedSpans(faces),
    seam,
  };
}

const travels = { left: 'left', right: 'right', forth: 'down', back: 'up' } as const;

export const workedRows = (rows: readonly Row[], columns: number): WorkedRow[] =>
  rows
    .filter(({ picks_up }) => picks_up)
    .map(({ first_row, last_row, travel, cells }) => ({
      firstNumber: first_row,
      lastNumber: last_row,
      travel: travels[travel],
      cells: Array.from(
        { length: Math.floor(cells.length / 2) },
        (_, i) => (cells[2 * i + 1] ?? 0) * columns + (cells[2 * i] ?? 0),
      ),
    }));

const symmetryMirrors: Readonly<Record<SymmetryName, Mirror>> = {
  mirror_across: 'across',
  mirror_along: 'along',
  half_turn: 'half turn',
};
export const mirrorOf = (symmetry: SymmetryName): Mirror => symmetryMirrors[symmetry];
