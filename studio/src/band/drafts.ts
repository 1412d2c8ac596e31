/** What an edit that is being made would do, so that it is seen before it is asked for. */
import { beadAt, noBead, type Cell, type Cells } from './cells';
import { columnPeriod, contains, floorMod, type Reflection, withImages } from './grid';
import { type Lattice } from './lattice';
import { indexOf, type Intent, ordered, type ShapeKind, type Stamp, type Stretch, type Tool } from './model';
import { fillCells, shapeCells } from './shapes';

/** What the hand works with. */
export interface Worktop {
  readonly lattice: Lattice;
  readonly cells: Cells;
  readonly tool: Tool;
  /** The colour in hand: a place in the legend. */
  readonly colour: number;
  /** Rectangles and ellipses. */
  readonly filled: boolean;
  readonly reflections: readonly Reflection[];
  readonly selection: Stretch | undefined;
  readonly stamp: Stamp | undefined;
}

/** Places in `beads`, and the bead each would have. */
export interface Preview {
  readonly beads: ReadonlyMap<number, number>;
  readonly outline?: Stretch;
}

export interface Draft {
  readonly intent: Intent;
  readonly preview: Preview;
}

export const isShape = (tool: Tool): tool is ShapeKind =>
  tool === 'line' || tool === 'rectangle' || tool === 'ellipse';

/** The stretch and its images, each once. */
export function mirroredStretches({ reflections }: Worktop, stretch: Stretch): Stretch[] {
  let found = [stretch];
  for (const { of } of reflections)
    for (const one of [...found]) {
      const from = of(one.from);
      const to = of(one.to);
      if (!from || !to) continue;
      const key = JSON.stringify(ordered({ from, to }));
      const same = found.some(
        (other) =>
          JSON.stringify(other) === JSON.stringify({ from, to }) ||
          (key === JSON.stringify(ordered(other)) && sameDiagonal(other, { from, to })),
      );
      if (!same) found = [...found, { from, to }];
    }
  return found;
}

const slope = ({ from, to }: Stretch) => Math.sign(to.column - from.column) * Math.sign(to.step - from.step);
const sameDiagonal = (a: Stretch, b: Stretch) => slope(a) === slope(b);

export function shapeDraft(top: Worktop, kind: ShapeKind, stretch: Stretch): Draft {
  const stretches = mirroredStretches(top, stretch);
  const beads = new Map<number, number>();
  for (const one of stretches)
    for (const index of shapeCells(top.lattice, top.cells, kind, one, top.filled))
      beads.set(index, top.colour);
  return { intent: { kind, stretches, bead: top.colour, filled: top.filled }, preview: { beads } };
}

/** The cells of a stroke and their images that hold a bead, each once. */
export function strokeDraft(top: Worktop, cells: readonly Cell[]): Draft {
  const beads = new Map<number, number>();
  for (const cell of cells)
    for (const image of withImages(top.reflections, cell))
      if (beadAt(top.cells, image) !== noBead) beads.set(indexOf(top.lattice, image), top.colour);
  return { intent: { kind: 'beads', cells: [...beads.keys()], bead: top.colour }, preview: { beads } };
}

export function fillDraft(top: Worktop, cell: Cell): Draft {
  const from = withImages(top.reflections, cell).filter((one) => beadAt(top.cells, one) !== noBead);
  const beads = new Map<number, number>();
  for (const one of from)
    for (const index of fillCells(top.lattice, top.cells, one)) beads.set(index, top.colour);
  return { intent: { kind: 'fill', from, bead: top.colour }, preview: { beads } };
}

/** Cells of a stamp with its first cell at a place; what falls outside is cut off or goes on round a ring. */
function pressed(top: Worktop, stamp: Stamp, at: Cell): Map<number, number> {
  const { lattice, cells } = top;
  const beads = new Map<number, number>();
  for (let step = 0; step < stamp.edge; ++step)
    for (let column = 0; column < stamp.columns; ++column) {
      const bead = stamp.beads[step * stamp.columns + column] ?? noBead;
      const to = {
        column: lattice.columnsRound ? floorMod(at.column + column, lattice.columns) : at.column + column,
        step: lattice.edgeRound ? floorMod(at.step + step, lattice.edge) : at.step + step,
      };
      if (bead !== noBead && contains(lattice, to) && beadAt(cells, to) !== noBead)
        beads.set(indexOf(lattice, to), bead);
    }
  return beads;
}

/** The column nearest to one, at which columns of a stamp keep their shift. */
export function keepingShift(lattice: Lattice, column: number, shift: number): number {
  const period = columnPeriod(lattice);
  const below = column - floorMod(column - shift, period);
  const near = column - below > period / 2 ? below + period : below;
  if (near >= lattice.columns) return near - period;
  return near < 0 ? near + period : near;
}

export function stampDraft(top: Worktop, cell: Cell): Draft | undefined {
  if (!top.stamp) return undefined;
  const at = { column: keepingShift(top.lattice, cell.column, top.stamp.shift), step: cell.step };
  if (!contains(top.lattice, at)) return undefined;
  return { intent: { kind: 'stamp', at }, preview: { beads: pressed(top, top.stamp, at) } };
}

/** The beads of a rectangle as a stamp. */
export function cutOut(lattice: Lattice, cells: Cells, stretch: Stretch): Stamp {
  const { from, to } = ordered(stretch);
  const columns = to.column - from.column + 1;
  const edge = to.step - from.step + 1;
  const beads = new Uint16Array(columns * edge);
  for (let step = 0; step < edge; ++step)
    for (let column = 0; column < columns; ++column)
      beads[step * columns + column] = beadAt(cells, {
        column: from.column + column,
        step: from.step + step,
      });
  return { columns, edge, beads, shift: from.column % columnPeriod(lattice) };
}

/** The selection taken along from one cell to another. */
export function moveDraft(top: Worktop, grabbed: Cell, now: Cell): Draft | undefined {
  const { selection, lattice } = top;
  if (!selection) return undefined;
  const { from, to: last } = ordered(selection);
  const stamp = cutOut(lattice, top.cells, selection);
  const period = columnPeriod(lattice);
  const by = Math.round((now.column - grabbed.column) / period) * period;
  const to = {
    column: lattice.columnsRound ? floorMod(from.column + by, lattice.columns) : from.column + by,
    step: lattice.edgeRound
      ? floorMod(from.step + now.step - grabbed.step, lattice.edge)
      : from.step + now.step - grabbed.step,
  };
  if (!contains(lattice, to)) return undefined;
  return {
    intent: { kind: 'move', selection: { from, to: last }, to },
    preview: { beads: pressed(top, stamp, to), outline: { from, to: last } },
  };
}

export function replaceIntent(top: Worktop, cell: Cell): Intent | undefined {
  const from = beadAt(top.cells, cell);
  return from === noBead || from === top.colour ? undefined : { kind: 'replace', from, to: top.colour };
}

export function pickIntent(top: Worktop, cell: Cell): Intent | undefined {
  const bead = beadAt(top.cells, cell);
  return bead === noBead ? undefined : { kind: 'pick', bead };
}
