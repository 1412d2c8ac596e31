/** What stands beside the band: row numbers where their rows begin, and quiet brackets for faces, tapered edges and the seam. */
import { boxOf, extentOf, type Lattice } from './lattice';
import { cellOf, type Marks, type StepSpan, type WorkedRow } from './model';
import { toPx, type Frame, type View } from './view';

export type GutterSide = 'left' | 'right' | 'top' | 'bottom';

export interface RowLabel {
  readonly text: string;
  readonly side: GutterSide;
  /** Pixels from the window's upper or left edge. */
  readonly at: number;
  /** Every tenth row; every hundredth where only tens are written. */
  readonly strong: boolean;
  readonly current: boolean;
}

/** Pixels. */
const labelHeight = 14;
const labelWidth = 30;
const numbersWide = 46;
const wordsWide = 100;

const beginning: Readonly<Record<WorkedRow['travel'], GutterSide>> = {
  right: 'left',
  left: 'right',
  down: 'top',
  up: 'bottom',
};

export const sideOf = ({ travel }: WorkedRow): GutterSide => beginning[travel];

const isAcross = (side: GutterSide): boolean => side === 'left' || side === 'right';

export function marginFor(rows: readonly WorkedRow[] | undefined, marks: Marks): Frame['margin'] {
  const has = (sides: readonly GutterSide[]) => rows?.some((row) => sides.includes(sideOf(row))) ?? false;
  const across = has(['left', 'right']) ? numbersWide : 16;
  const along = has(['top', 'bottom']) ? 34 : 22;
  const words = marks.faces.length > 0 || marks.tapered.length > 0 || marks.seam ? wordsWide : 0;
  return { left: across, right: across + words, top: along, bottom: along };
}

const strides = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000];

export const numbersOf = ({ firstNumber, lastNumber }: WorkedRow): string =>
  firstNumber === lastNumber ? String(firstNumber) : `${firstNumber}–${lastNumber}`;

/** The labels that are seen, as many as there is room for: every row, every second, fifth, tenth, ... */
export function rowLabels(
  lattice: Lattice,
  rows: readonly WorkedRow[],
  view: View,
  frame: Frame,
  currentRow: number | undefined,
): RowLabel[] {
  const placed = rows.flatMap((row) => {
    const first = row.cells[0];
    if (first === undefined) return [];
    const box = boxOf(lattice, cellOf(lattice, first));
    const middle = toPx(view, { x: box.x + box.width / 2, y: box.y + box.height / 2 });
    const side = sideOf(row);
    return [{ row, side, at: isAcross(side) ? middle.y : middle.x }];
  });
  const holdsNumber = (row: WorkedRow, of: (number: number) => boolean) =>
    of(row.firstNumber) || of(row.lastNumber);
  const chosen = (stride: number) =>
    placed.filter(({ row }, i) => stride === 1 || i === 0 || holdsNumber(row, (n) => n % stride === 0));
  const stride = strides.find((one) => roomy(chosen(one))) ?? 1000;
  const isCurrent = (row: WorkedRow) =>
    currentRow !== undefined && currentRow >= row.firstNumber && currentRow <= row.lastNumber;
  const shown = chosen(stride).filter(({ row }) => !isCurrent(row));
  const current = placed.filter(({ row }) => isCurrent(row));
  // The current row's number stands even where its turn is not due; what would touch it goes.
  const clear = shown.filter((one) =>
    current.every(({ side, at }) => side !== one.side || Math.abs(at - one.at) >= spacing(side)),
  );
  return [...clear, ...current]
    .filter(
      ({ at, side }) => at > -labelHeight && at < (isAcross(side) ? frame.height : frame.width) + labelHeight,
    )
    .map(({ row, side, at }) => ({
      text: numbersOf(row),
      side,
      at,
      strong: holdsNumber(row, (n) => n % (stride < 10 ? 10 : 100) === 0),
      current: isCurrent(row),
    }));
}

const spacing = (side: GutterSide): number => (isAcross(side) ? labelHeight : labelWidth);

/** Whether labels on each side keep apart; the first may be crowded by the second, which then gives way. */
function roomy(labels: readonly { side: GutterSide; at: number }[]): boolean {
  const last = new Map<GutterSide, number>();
  for (const { side, at } of labels) {
    const before = last.get(side);
    if (before !== undefined && Math.abs(at - before) < spacing(side)) return false;
    last.set(side, at);
  }
  return true;
}

export interface Bracket {
  readonly from: number;
  readonly to: number;
  readonly what: 'front' | 'back' | 'edge' | 'tapered';
}

/** Steps to pixels; one that reaches past the last step is two. */
export function brackets(lattice: Lattice, marks: Marks, view: View): Bracket[] {
  const at = (step: number) => toPx(view, { x: 0, y: step * lattice.edgeMm * pitchOf(lattice) }).y;
  const parts = ({ firstStep, steps }: StepSpan): [number, number][] => {
    const end = firstStep + steps;
    return end <= lattice.edge
      ? [[firstStep, end]]
      : [
          [firstStep, lattice.edge],
          [0, end - lattice.edge],
        ];
  };
  const shift = lattice.drop > 0 ? 0.25 : 0;
  const made = (span: StepSpan, what: Bracket['what']) =>
    parts(span).map(([from, to]) => ({ from: at(from + shift), to: at(to + shift), what }));
  return [
    ...marks.faces.flatMap((face) => made(face, face.side)),
    ...marks.tapered.flatMap((span) => made(span, 'tapered')),
  ];
}

/** In right-angle weave a step is half a unit. */
const pitchOf = (lattice: Lattice): number => (lattice.holes === 'squares' ? 0.5 : 1);

/** Where the band's sides stand in the window, held inside it so that numbers can be read while a part is seen large. */
export function sidesOf(lattice: Lattice, view: View, frame: Frame) {
  const extent = extentOf(lattice);
  const upper = toPx(view, { x: 0, y: 0 });
  const lower = toPx(view, { x: extent.width, y: extent.height });
  const { margin } = frame;
  return {
    left: Math.max(upper.x, margin.left),
    right: Math.min(lower.x, frame.width - margin.right),
    top: Math.max(upper.y, margin.top),
    bottom: Math.min(lower.y, frame.height - margin.bottom),
    covered: {
      left: upper.x < margin.left - 1,
      right: lower.x > frame.width - margin.right + 1,
      top: upper.y < margin.top - 1,
      bottom: lower.y > frame.height - margin.bottom + 1,
    },
    band: { left: upper.x, top: upper.y, right: lower.x, bottom: lower.y },
  };
}
