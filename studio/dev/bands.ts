/** Bands to look at. */
import moonwatch from '../../examples/moonwatch.evencount.json';
import { cellsOfRuns, noBead } from '../src/band/cells';
import type { Lattice } from '../src/band/lattice';
import { type Finish, type LegendEntry, type Marks, noMarks, type WorkedRow } from '../src/band/model';
import { mm } from '../src/engine/units';

export interface BenchBand {
  readonly lattice: Lattice;
  readonly beads: Uint16Array;
  readonly legend: readonly LegendEntry[];
  readonly marks: Marks;
  readonly rows: readonly WorkedRow[] | undefined;
}

export const legend: LegendEntry[] = moonwatch.legend.map(({ letter, name, colour, finish }) => ({
  letter,
  name,
  colour,
  finish: finish as Finish,
}));

const peyote = (columns: number, edge: number, edgeRound: boolean): Lattice => ({
  columns,
  edge,
  drop: 1,
  holes: 'across',
  edgeRound,
  columnsRound: false,
  columnMm: mm(1.35),
  edgeMm: mm(1.66),
});

/** Rows of even-count peyote as the engine's plan has them, for looking at only. */
function peyoteRows({ columns, edge }: Lattice): WorkedRow[] {
  const rows: WorkedRow[] = [];
  const row = (number: number, travel: WorkedRow['travel'], cells: number[]) =>
    rows.push({ firstNumber: number, lastNumber: number, travel, cells });
  const all = Array.from({ length: columns }, (_, i) => columns - 1 - i);
  rows.push({ firstNumber: 1, lastNumber: 2, travel: 'left', cells: all });
  for (let number = 3; number <= 2 * edge; ++number) {
    const step = Math.floor((number - 1) / 2);
    const odd = number % 2 === 0;
    const across = Array.from({ length: columns / 2 }, (_, i) => step * columns + 2 * i + (odd ? 1 : 0));
    row(number, odd ? 'left' : 'right', odd ? across.reverse() : across);
  }
  return rows;
}

export function moon(which: number): BenchBand {
  const band = moonwatch.bands[which] ?? moonwatch.bands[0];
  if (!band) throw new Error('the example has no band');
  const lattice = peyote(band.columns, band.edge, true);
  const { beads } = cellsOfRuns(
    band.columns,
    band.cells,
    legend.map(({ letter }) => letter),
  );
  const marks: Marks = {
    faces: [
      { side: 'front', firstStep: 1, steps: 11 },
      { side: 'back', firstStep: 13, steps: 11 },
    ],
    tapered: [
      { firstStep: 0, steps: 1 },
      { firstStep: 12, steps: 1 },
    ],
    seam: true,
  };
  return { lattice, beads, legend, marks, rows: peyoteRows(lattice) };
}

export function large(): BenchBand {
  const lattice = peyote(200, 300, false);
  const beads = new Uint16Array(200 * 300);
  for (let step = 0; step < 300; ++step)
    for (let column = 0; column < 200; ++column) {
      const wave = Math.sin(column / 17) * 14 + Math.sin(step / 31 + column / 40) * 9;
      beads[step * 200 + column] = Math.floor((step + wave + 400) / 13) % legend.length;
    }
  return { lattice, beads, legend, marks: noMarks, rows: peyoteRows(lattice) };
}

export function squares(): BenchBand {
  const lattice: Lattice = {
    ...peyote(21, 41, false),
    drop: 0,
    holes: 'squares',
    columnMm: mm(2.6),
    edgeMm: mm(2.6),
  };
  const beads = new Uint16Array(21 * 41).fill(noBead);
  for (let step = 0; step < 41; ++step)
    for (let column = 0; column < 21; ++column)
      if ((column + step) % 2 === 1)
        beads[step * 21 + column] = Math.floor((column + step) / 6) % legend.length;
  return { lattice, beads, legend, marks: noMarks, rows: undefined };
}

/** Every finish in a column of its own, and some empty places. */
export function finishes(): BenchBand {
  const all: Finish[] = [
    'opaque',
    'transparent',
    'lined',
    'metallic',
    'galvanised',
    'matte',
    'lustre',
    'pearl',
    'rainbow',
  ];
  const colours = ['#b3262f', '#d8a63a', '#46557a', '#2f7d4f', '#f3e9cf'];
  const entries = all.flatMap((finish, i) =>
    colours.map((colour, j) => ({
      letter: 'ABCDEFGHI'[i] + 'abcde'.charAt(j),
      name: finish,
      colour,
      finish,
    })),
  );
  const lattice = peyote(10, 18, false);
  const beads = new Uint16Array(180).fill(noBead);
  for (let step = 0; step < 18; ++step)
    for (let column = 0; column < 9; ++column)
      beads[step * 10 + column] = column * 5 + (Math.floor(step / 3) % 5);
  return { lattice, beads, legend: entries, marks: noMarks, rows: undefined };
}
