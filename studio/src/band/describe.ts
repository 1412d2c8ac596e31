/** The band in words, for who doesn't see it. Columns and steps are numbered from 0, as in every message of the engine. */
import { beadAt, noBead, type Cell, type Cells } from './cells';
import type { Lattice } from './lattice';
import { indexOf, type LegendEntry, type Marks, type Stretch, ordered, type WorkedRow } from './model';
import { rowAt } from './overlay';
import { t } from '../words/words.svelte';

export interface Described {
  readonly lattice: Lattice;
  readonly cells: Cells;
  readonly legend: readonly LegendEntry[];
  readonly rows: readonly WorkedRow[] | undefined;
  readonly marks: Marks;
}

export function describeCell({ lattice, cells, legend, rows }: Described, cell: Cell): string {
  const bead = beadAt(cells, cell);
  const name = bead === noBead ? t('band.empty') : (legend[bead]?.name ?? t('band.unknown'));
  const where = t('band.cell', { column: cell.column, step: cell.step, name });
  const row = rowAt(rows, indexOf(lattice, cell));
  return row === undefined ? where : `${where}, ${t('band.row', { row })}`;
}

export function describeSelection(selection: Stretch | undefined): string {
  if (!selection) return t('band.selectedNothing');
  const { from, to } = ordered(selection);
  return t('band.selected', {
    columns: to.column - from.column + 1,
    steps: to.step - from.step + 1,
    column: from.column,
    step: from.step,
  });
}

export function summary({ lattice, legend, rows, marks }: Described): string {
  const parts = [t('band.summary', { columns: lattice.columns, edge: lattice.edge })];
  const last = rows?.at(-1);
  if (last) parts.push(t('band.summaryRows', { rows: last.lastNumber }));
  if (marks.seam) parts.push(t('band.summarySeam'));
  for (const { side, firstStep, steps } of marks.faces)
    parts.push(
      t('band.summaryFace', { side: t(`band.${side}`), first: firstStep, last: firstStep + steps - 1 }),
    );
  if (legend.length > 0)
    parts.push(
      t('band.summaryColours', { colours: legend.map(({ letter, name }) => `${letter} ${name}`).join(', ') }),
    );
  return parts.join(' ');
}
