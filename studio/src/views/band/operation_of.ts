/** What is asked for on the band, as an operation of the engine. */
import { noBead } from '../../band/cells';
import { cutOut } from '../../band/drafts';
import type { Lattice } from '../../band/lattice';
import { cellOf, ordered, type Intent, type Stamp, type Stretch } from '../../band/model';
import type { Cell } from '../../band/cells';
import type { LegendEntry } from '../../engine/shapes';
import type { Operation } from '../../project/operation';

export interface Drawn {
  readonly band: number;
  readonly lattice: Lattice;
  readonly beads: Uint16Array;
  readonly legend: readonly LegendEntry[];
  /** What is pressed on by the stamp. */
  readonly stamp: Stamp | undefined;
  /** What is left where something is moved or cut away: a place in the legend. */
  readonly ground: number;
}

const placeOf = ({ column, step }: Cell): readonly [number, number] => [column, step];

/** One as it is; more as one change. */
const together = (operations: readonly Operation[]): Operation | undefined =>
  operations.length > 1 ? { do: 'several', operations } : operations[0];

/** "2A 1B": runs of letters, as the engine reads a piece. */
export function linesOf(stamp: Stamp, legend: readonly LegendEntry[]): string[] {
  const letter = (bead: number) => (bead === noBead ? '.' : (legend[bead]?.letter ?? '.'));
  return Array.from({ length: stamp.edge }, (_, step) => {
    const runs: { count: number; letter: string }[] = [];
    for (let column = 0; column < stamp.columns; column++) {
      const here = letter(stamp.beads[step * stamp.columns + column] ?? noBead);
      const last = runs.at(-1);
      if (last?.letter === here) last.count++;
      else runs.push({ count: 1, letter: here });
    }
    return runs.map((run) => `${run.count}${run.letter}`).join(' ');
  });
}

/** The bead that most of the band is made of, of those that are not in the rectangle unless there are no others. */
export function groundOf(lattice: Lattice, beads: Uint16Array, around: Stretch | undefined): number {
  const counts = new Map<number, number>();
  const within = around && ordered(around);
  beads.forEach((bead, index) => {
    if (bead === noBead) return;
    const { column, step } = cellOf(lattice, index);
    const inside =
      within &&
      column >= within.from.column &&
      column <= within.to.column &&
      step >= within.from.step &&
      step <= within.to.step;
    counts.set(bead, (counts.get(bead) ?? 0) + (inside ? 0.001 : 1));
  });
  let best = 0;
  let most = 0;
  for (const [bead, count] of counts) if (count > most) [best, most] = [bead, count];
  return best;
}

function clearing({ band, legend, ground }: Drawn, selection: Stretch): Operation {
  const { from, to } = ordered(selection);
  return {
    do: 'rectangle',
    band,
    from: placeOf(from),
    to: placeOf(to),
    letter: legend[ground]?.letter ?? '.',
    filled: true,
  };
}

const pressing = (drawn: Drawn, stamp: Stamp, at: Cell): Operation => ({
  do: 'press',
  band: drawn.band,
  at: placeOf(at),
  lines: linesOf(stamp, drawn.legend),
  shift: stamp.shift,
});

/** Nothing for what changes no bead. */
export function operationOf(intent: Intent, drawn: Drawn): Operation | undefined {
  const { band, legend, lattice, beads } = drawn;
  const letterOf = (bead: number) => (bead === noBead ? '.' : (legend[bead]?.letter ?? '.'));
  switch (intent.kind) {
    case 'beads':
      if (intent.cells.length === 0) return undefined;
      return {
        do: 'set',
        band,
        cells: intent.cells.map((index) => placeOf(cellOf(lattice, index))),
        letter: letterOf(intent.bead),
      };
    case 'line':
      return together(
        intent.stretches.map(({ from, to }) => ({
          do: 'line',
          band,
          from: placeOf(from),
          to: placeOf(to),
          letter: letterOf(intent.bead),
        })),
      );
    case 'rectangle':
    case 'ellipse':
      return together(
        intent.stretches.map(({ from, to }) => ({
          do: intent.kind,
          band,
          from: placeOf(from),
          to: placeOf(to),
          letter: letterOf(intent.bead),
          filled: intent.filled,
        })),
      );
    case 'fill':
      return together(
        intent.from.map((at) => ({ do: 'fill', band, at: placeOf(at), letter: letterOf(intent.bead) })),
      );
    case 'replace':
      return { do: 'replace_letter', band, from: letterOf(intent.from), to: letterOf(intent.to) };
    case 'cut':
      return clearing(drawn, intent.selection);
    case 'move': {
      const { from, to } = ordered(intent.selection);
      const stamp = cutOut(lattice, { columns: lattice.columns, edge: lattice.edge, beads }, { from, to });
      return {
        do: 'several',
        operations: [clearing(drawn, intent.selection), pressing(drawn, stamp, intent.to)],
      };
    }
    case 'stamp':
      return drawn.stamp && pressing(drawn, drawn.stamp, intent.at);
    case 'pick':
    case 'select':
    case 'copy':
    case 'hover':
    case 'walk':
      return undefined;
  }
}
