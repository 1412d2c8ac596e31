/** The cells of a band, as the page holds them. */

/** A cell without a bead. */
export const noBead = 0xffff;

export interface Cell {
  readonly column: number;
  readonly step: number;
}

/** `beads[step * columns + column]` is a place in the legend, or noBead. */
export interface Cells {
  readonly columns: number;
  readonly edge: number;
  readonly beads: Uint16Array;
}

export const beadAt = (cells: Cells, { column, step }: Cell): number =>
  cells.beads[step * cells.columns + column] ?? noBead;

/** Reads the runs of a project's file, one text a step: "2A 1B 3-" with . for empty cells. */
export function cellsOfRuns(columns: number, runs: readonly string[], letters: readonly string[]): Cells {
  const place = new Map(letters.map((letter, i) => [letter, i]));
  const beads = new Uint16Array(columns * runs.length).fill(noBead);
  runs.forEach((text, step) => {
    let column = 0;
    for (const run of text.split(' ').filter((part) => part !== '')) {
      const match = /^(\d+)(.+)$/.exec(run);
      if (!match?.[1] || !match[2]) throw new Error(`step ${step}: ${run} is no run`);
      const count = Number(match[1]);
      const bead = place.get(match[2]) ?? noBead;
      beads.fill(bead, step * columns + column, step * columns + Math.min(columns, column + count));
      column += count;
    }
  });
  return { columns, edge: runs.length, beads };
}
