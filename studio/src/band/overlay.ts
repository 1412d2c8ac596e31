/** Everything that lies over the beads: the row that is worked, previews, the selection, the focus, and what stands beside the band. */
import { holdsBead, type Lattice, shiftOf } from './lattice';
import type { Cell } from './cells';
import type { Preview } from './drafts';
import { brackets, type Bracket, numbersOf, type RowLabel, rowLabels, sidesOf } from './gutters';
import { cellOf, type Marks, ordered, type Stretch, type WorkedRow } from './model';
import type { PixelBox, Raster } from './raster';
import type { Pen } from './surface';
import type { Frame, View } from './view';

/** The look's colours. */
export interface Inks {
  readonly ground: string;
  readonly ink: string;
  readonly quiet: string;
  readonly line: string;
  readonly accent: string;
}

export interface OverlayWords {
  readonly front: string;
  readonly back: string;
  readonly edge: string;
  readonly tapered: string;
  readonly seam: string;
}

export interface OverlayScene {
  readonly raster: Raster;
  readonly view: View;
  readonly frame: Frame;
  /** Device pixels a pixel. */
  readonly density: number;
  readonly inks: Inks;
  readonly font: string;
  readonly words: OverlayWords;
  readonly rows: readonly WorkedRow[] | undefined;
  readonly currentRow: number | undefined;
  readonly marks: Marks;
  readonly selection: Stretch | undefined;
  readonly hover: Cell | undefined;
  readonly focus: Cell | undefined;
  readonly preview: Preview | undefined;
}

/** Cells. More are seen as a whole, and marking each would take longer than a frame. */
const mostMarked = 2000;

export function paintOverlay(pen: Pen, scene: OverlayScene): void {
  const { frame, density } = scene;
  pen.setTransform(1, 0, 0, 1, 0, 0);
  pen.clearRect(0, 0, Math.ceil(frame.width * density), Math.ceil(frame.height * density));
  veilOtherRows(pen, scene);
  markPreview(pen, scene);
  if (scene.selection) outlineStretch(pen, scene, scene.selection, [5, 4]);
  if (scene.preview?.outline) outlineStretch(pen, scene, scene.preview.outline, [2, 3]);
  if (scene.hover && !scene.preview) ring(pen, scene, scene.hover, 1.25, scene.inks.ink);
  if (scene.focus) ring(pen, scene, scene.focus, 2.5, scene.inks.accent);
  pen.setTransform(density, 0, 0, density, 0, 0);
  paintGutters(pen, scene);
  pen.setTransform(1, 0, 0, 1, 0, 0);
}

/** Device pixels in the window. */
function boxAt({ raster, view }: OverlayScene, { column, step }: Cell): PixelBox {
  const { x, y, width, height } = raster.box(column, step);
  return {
    x: x - Math.round(view.left * raster.scale),
    y: y - Math.round(view.top * raster.scale),
    width,
    height,
  };
}

const isSeen = (box: PixelBox, { frame, density }: OverlayScene): boolean =>
  box.x + box.width > 0 &&
  box.y + box.height > 0 &&
  box.x < frame.width * density &&
  box.y < frame.height * density;

const holdsNumber = (row: WorkedRow, number: number): boolean =>
  number >= row.firstNumber && number <= row.lastNumber;

function veilOtherRows(pen: Pen, scene: OverlayScene): void {
  const { rows, currentRow, raster, view, frame, density, inks } = scene;
  const current = currentRow === undefined ? undefined : rows?.find((row) => holdsNumber(row, currentRow));
  if (!current) return;
  const x = Math.max(0, -Math.round(view.left * raster.scale));
  const y = Math.max(0, -Math.round(view.top * raster.scale));
  const right = Math.min(frame.width * density, raster.width - Math.round(view.left * raster.scale));
  const bottom = Math.min(frame.height * density, raster.height - Math.round(view.top * raster.scale));
  pen.globalAlpha = 0.5;
  pen.fillStyle = inks.ground;
  pen.fillRect(x, y, right - x, bottom - y);
  pen.globalAlpha = 1;
  const boxes = current.cells
    .map((index) => boxAt(scene, cellOf(raster.lattice, index)))
    .filter((box) => isSeen(box, scene));
  for (const box of boxes) pen.clearRect(box.x, box.y, box.width, box.height);
  pen.strokeStyle = inks.accent;
  pen.lineWidth = Math.max(1, density * 1.25);
  for (const box of boxes)
    if (box.width >= 6) pen.strokeRect(box.x + 0.5, box.y + 0.5, box.width - 1, box.height - 1);
}

/** Beads that are about to change are painted as they would be; here they are only marked, as long as they can be told apart. */
function markPreview(pen: Pen, scene: OverlayScene): void {
  if (!scene.preview || scene.preview.beads.size > mostMarked) return;
  const { lattice } = scene.raster;
  pen.strokeStyle = scene.inks.accent;
  pen.lineWidth = scene.density;
  pen.beginPath();
  for (const index of scene.preview.beads.keys()) {
    const box = boxAt(scene, cellOf(lattice, index));
    if (box.width >= 8 && isSeen(box, scene))
      pen.rect(box.x + 0.5, box.y + 0.5, box.width - 1, box.height - 1);
  }
  pen.stroke();
}

/** A ring that shows on every colour: light below, dark above. */
function ring(pen: Pen, scene: OverlayScene, cell: Cell, thickness: number, colour: string): void {
  const { density, raster } = scene;
  if (!holdsBead(raster.lattice, cell)) return;
  const { x, y, width, height } = boxAt(scene, cell);
  const radius = Math.min(width, height) * 0.26;
  for (const [extra, style] of [
    [1.75, scene.inks.ground],
    [0, colour],
  ] as const) {
    pen.beginPath();
    pen.roundRect(x, y, width, height, radius);
    pen.strokeStyle = style;
    pen.lineWidth = (thickness + extra) * density;
    pen.stroke();
  }
}

/** Corners of a rectangle of cells, following the shifted columns. */
export function outlinePoints(lattice: Lattice, raster: Raster, stretch: Stretch): [number, number][] {
  const { from, to } = ordered(stretch);
  const points: [number, number][] = [];
  if (lattice.holes === 'squares') {
    // Uprights are taller, sides across wider: the outline goes round whichever reaches further.
    let [x, y, right, bottom] = [Infinity, Infinity, 0, 0];
    for (let step = from.step; step <= to.step; ++step)
      for (let column = from.column; column <= to.column; ++column) {
        if (!holdsBead(lattice, { column, step })) continue;
        const box = raster.box(column, step);
        [x, y] = [Math.min(x, box.x), Math.min(y, box.y)];
        [right, bottom] = [Math.max(right, box.x + box.width), Math.max(bottom, box.y + box.height)];
      }
    if (right === 0) return [];
    return [
      [x, y],
      [right, y],
      [right, bottom],
      [x, bottom],
    ];
  }
  for (let column = from.column; column <= to.column; ++column) {
    const { x, y, width } = raster.box(column, from.step);
    const turns = column > from.column && shiftOf(lattice, column) === shiftOf(lattice, column - 1);
    if (turns) points.pop();
    else points.push([x, y]);
    points.push([x + width, y]);
  }
  for (let column = to.column; column >= from.column; --column) {
    const { x, y, width, height } = raster.box(column, to.step);
    const turns = column < to.column && shiftOf(lattice, column) === shiftOf(lattice, column + 1);
    if (turns) points.pop();
    else points.push([x + width, y + height]);
    points.push([x, y + height]);
  }
  return points;
}

function outlineStretch(pen: Pen, scene: OverlayScene, stretch: Stretch, dash: number[]): void {
  const { raster, view, density, inks } = scene;
  const left = Math.round(view.left * raster.scale);
  const top = Math.round(view.top * raster.scale);
  pen.beginPath();
  outlinePoints(raster.lattice, raster, stretch).forEach(([x, y], i) => {
    if (i === 0) pen.moveTo(x - left, y - top);
    else pen.lineTo(x - left, y - top);
  });
  pen.closePath();
  pen.lineJoin = 'round';
  pen.strokeStyle = inks.ground;
  pen.lineWidth = 3.5 * density;
  pen.stroke();
  pen.setLineDash(dash.map((length) => length * density));
  pen.strokeStyle = inks.accent;
  pen.lineWidth = 2 * density;
  pen.stroke();
  pen.setLineDash([]);
}

type Sides = ReturnType<typeof sidesOf>;

function paintGutters(pen: Pen, scene: OverlayScene): void {
  const { raster, view, frame, inks, rows } = scene;
  const sides = sidesOf(raster.lattice, view, frame);
  // Where the band goes on beneath numbers and words, the ground comes through.
  pen.fillStyle = inks.ground;
  pen.globalAlpha = 0.86;
  const { margin } = frame;
  if (sides.covered.left) pen.fillRect(0, 0, margin.left, frame.height);
  if (sides.covered.right) pen.fillRect(frame.width - margin.right, 0, margin.right, frame.height);
  pen.globalAlpha = 1;
  for (const label of rowLabels(raster.lattice, rows ?? [], view, frame, scene.currentRow))
    paintLabel(pen, scene, sides, label);
  const x = sides.right + (rows?.length ? 46 : 12);
  for (const bracket of brackets(raster.lattice, scene.marks, view)) paintBracket(pen, scene, bracket, x);
  if (scene.marks.seam) paintSeam(pen, scene, sides, x);
}

function paintLabel(pen: Pen, scene: OverlayScene, sides: Sides, label: RowLabel): void {
  const { inks, font } = scene;
  const tick = label.strong || label.current ? 9 : 4;
  pen.strokeStyle = label.current ? inks.accent : label.strong ? inks.ink : inks.line;
  pen.lineWidth = label.strong || label.current ? 1.5 : 1;
  pen.font = `${label.strong || label.current ? 700 : 400} 12px ${font}`;
  pen.fillStyle = label.current ? inks.accent : label.strong ? inks.ink : inks.quiet;
  pen.textBaseline = 'middle';
  pen.beginPath();
  const at = Math.round(label.at) + 0.5;
  if (label.side === 'left' || label.side === 'right') {
    const away = label.side === 'left' ? -1 : 1;
    const edge = sides[label.side];
    pen.moveTo(edge + away * 3, at);
    pen.lineTo(edge + away * (3 + tick), at);
    pen.textAlign = label.side === 'left' ? 'right' : 'left';
    pen.fillText(label.text, edge + away * 14, at + 0.5);
  } else {
    const away = label.side === 'top' ? -1 : 1;
    const edge = sides[label.side];
    pen.moveTo(at, edge + away * 3);
    pen.lineTo(at, edge + away * (3 + tick));
    pen.textAlign = 'center';
    pen.fillText(label.text, at, edge + away * 20);
  }
  pen.stroke();
}

function paintBracket(pen: Pen, scene: OverlayScene, bracket: Bracket, x: number): void {
  const { inks, font, frame } = scene;
  const from = bracket.from + 2;
  const to = Math.max(from + 1, bracket.to - 2);
  if (to < 0 || from > frame.height) return;
  pen.strokeStyle = inks.line;
  pen.lineWidth = 1;
  if (bracket.what === 'tapered') pen.setLineDash([2, 2]);
  pen.beginPath();
  const serif = to - from > 8 ? 5 : 0;
  pen.moveTo(x - serif, from);
  pen.lineTo(x, from);
  pen.lineTo(x, to);
  pen.lineTo(x - serif, to);
  pen.stroke();
  pen.setLineDash([]);
  // The word stands in the middle of what is seen of the bracket.
  const middle = (Math.max(from, 0) + Math.min(to, frame.height)) / 2;
  if (to - from < 9) return;
  pen.font = `400 12px ${font}`;
  pen.fillStyle = inks.quiet;
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  pen.fillText(scene.words[bracket.what], x + 8, middle);
}

function paintSeam(pen: Pen, scene: OverlayScene, sides: Sides, x: number): void {
  const { inks, font, words } = scene;
  const { band } = sides;
  pen.strokeStyle = inks.accent;
  pen.lineWidth = 1.5;
  pen.font = `400 12px ${font}`;
  pen.fillStyle = inks.accent;
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  for (const at of [band.top - 5, band.bottom + 5]) {
    pen.setLineDash([4, 3]);
    pen.beginPath();
    pen.moveTo(Math.max(sides.left - 10, 0), at);
    pen.lineTo(x, at);
    pen.stroke();
    pen.setLineDash([]);
    pen.fillText(words.seam, x + 8, at);
  }
}

/** The numbers of the row that a place in `beads` belongs to, if rows are known. */
export function rowAt(rows: readonly WorkedRow[] | undefined, index: number): string | undefined {
  const row = rows?.find(({ cells }) => cells.includes(index));
  return row && numbersOf(row);
}
