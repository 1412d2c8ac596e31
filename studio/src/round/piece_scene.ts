/** A piece as three.js draws it: beads of all bands in one table, forms, thread, cords and findings in one mesh each. */
import { Group } from 'three';

import { noBead } from '../band/cells';
import { BeadMeshes, lookNumbers } from './bead_meshes';
import {
  type BandItem,
  type BeadSize,
  finishes,
  type Finish,
  type Picked,
  type Piece,
  type PieceItem,
  seatNumbers,
} from './beads';
import { bytesOf } from './colour';
import { FindingMesh } from './finding_mesh';
import { FormMesh, type PlacedForm } from './form_mesh';
import { aroundOf } from './around';
import type { Around, Ray } from './gaze';
import { LineMesh, stretchNumbers } from './line_mesh';
import { bothSides, oneSide, outsideOf } from './outsides';
import { firstBead, sizeNumbers } from './pick';
import type { Level } from './quality';
import { slideSeats, type Track, trackOf } from './slide';
import { movedDirection, movedPoint, unmoved, type Vec } from './vectors';

/** A band's beads in the piece's table. */
interface Placed {
  readonly item: number;
  readonly first: number;
  readonly track: Track | undefined;
  readonly slid: Float32Array;
  /** Where its thread begins among the stretches. */
  readonly firstStretch: number;
  slide: number;
}

/** Whether two pieces differ in their cells and legends only, so that a scene of the one can be repainted as the other. */
export function sameSeats(a: Piece, b: Piece): boolean {
  if (a.lie !== b.lie || a.items.length !== b.items.length || a.cords !== b.cords) return false;
  return a.items.every((item, i) => {
    const other = b.items[i];
    if (item === other) return true;
    if (item.kind !== 'band' || other?.kind !== 'band') return false;
    return item.band === other.band && item.transform === other.transform;
  });
}

const beadsOf = (item: PieceItem): number =>
  item.kind === 'band' ? item.band.cellOf.length : item.kind === 'bead' ? 1 : 0;

export class PieceScene {
  readonly group = new Group();
  readonly count: number;
  private items: readonly PieceItem[];
  private readonly table;
  private readonly bands: Placed[] = [];
  private readonly meshes: BeadMeshes;
  private readonly forms: FormMesh;
  private readonly lines: LineMesh;
  private readonly stretches: Float32Array;
  private readonly findings: FindingMesh;
  /** The piece's item that each bead belongs to. */
  private readonly itemOf: Uint32Array;

  constructor(
    private readonly piece: Piece,
    level: Level,
  ) {
    this.items = piece.items;
    this.count = piece.items.reduce((sum, item) => sum + beadsOf(item), 0);
    this.table = {
      count: this.count,
      seats: new Float32Array(this.count * seatNumbers),
      sizes: new Float32Array(this.count * sizeNumbers),
      looks: new Uint8Array(this.count * lookNumbers),
      outsides: new Int8Array(this.count * 4),
    };
    this.itemOf = new Uint32Array(this.count);
    const threads = this.layOut();
    const cords = piece.cords.reduce((sum, cord) => sum + Math.max(0, cord.points.length / 3 - 1), 0);
    this.stretches = new Float32Array((threads + cords) * stretchNumbers);
    for (const placed of this.bands) this.seat(placed);
    this.layCords(threads);
    this.lines = new LineMesh(this.stretches, this.lineColours(threads + cords));
    this.forms = new FormMesh(formsOf(piece));
    this.findings = new FindingMesh(piece.items.filter((item) => item.kind === 'finding'));
    for (let item = 0; item < piece.items.length; item++) this.dress(item);
    this.meshes = new BeadMeshes(this.table, level);
    this.group.add(this.meshes.group, this.lines.mesh, this.findings.mesh, this.forms.mesh);
  }

  /** Gives each item its beads in the table; how many stretches of thread there are. */
  private layOut(): number {
    let first = 0;
    let stretch = 0;
    this.piece.items.forEach((item, i) => {
      this.itemOf.fill(i, first, first + beadsOf(item));
      if (item.kind === 'band') {
        const { band } = item;
        const track = band.ring && trackOf(band.seats, band.ring);
        this.bands.push({ item: i, first, track, slid: band.seats.slice(), firstStretch: stretch, slide: 0 });
        stretch += (band.thread?.mouths.length ?? 0) / 2;
      } else if (item.kind === 'bead') {
        const [m, a] = [movedPoint(item.transform, 0, 0, 0), movedDirection(item.transform, 0, 0, 1)];
        this.table.seats.set([...m, ...a], first * seatNumbers);
      }
      first += beadsOf(item);
    });
    return stretch;
  }

  private bandOf(placed: Placed): BandItem | undefined {
    const item = this.items[placed.item];
    return item?.kind === 'band' ? item : undefined;
  }

  /** Puts a band's beads and thread where its slide says. */
  private seat(placed: Placed): void {
    const item = this.bandOf(placed);
    if (!item) return;
    const { band, transform = unmoved } = item;
    const { track, slid, slide } = placed;
    if (band.ring && track) slideSeats(band.seats, band.ring, track, slide, slid);
    const both = band.lie === 'flat' ? bothSides : oneSide;
    for (let i = 0; i < band.cellOf.length; i++) {
      const [x = 0, y = 0, z = 0, ax = 0, ay = 0, az = 1] = slid.subarray(
        i * seatNumbers,
        (i + 1) * seatNumbers,
      );
      const at = (placed.first + i) * seatNumbers;
      this.table.seats.set(movedPoint(transform, x, y, z), at);
      this.table.seats.set(movedDirection(transform, ax, ay, az), at + 3);
      const outside = movedDirection(transform, ...outsideOf(band, track, i, slide));
      this.table.outsides.set(
        [...outside.map((part) => Math.round(127 * part)), both],
        (placed.first + i) * 4,
      );
    }
    this.layThread(placed, item);
  }

  private layThread(placed: Placed, { band }: BandItem): void {
    const { thread, size } = band;
    if (!thread) return;
    const mouth = (at: number, into: number) => {
      const index = thread.mouths[at] ?? 0;
      const bead = placed.first + (index >> 1);
      const reach = (index & 1 ? 1 : -1) * (size.length / 2);
      for (let j = 0; j < 3; j++)
        this.stretches[into + j] =
          (this.table.seats[bead * seatNumbers + j] ?? 0) +
          reach * (this.table.seats[bead * seatNumbers + 3 + j] ?? 0);
    };
    for (let k = 0; k < thread.mouths.length / 2; k++) {
      const into = (placed.firstStretch + k) * stretchNumbers;
      mouth(2 * k, into);
      mouth(2 * k + 1, into + 3);
      this.stretches[into + 6] = thread.diameter / 2;
    }
  }

  private layCords(from: number): void {
    let stretch = from;
    for (const cord of this.piece.cords)
      for (let k = 0; k + 1 < cord.points.length / 3; k++) {
        this.stretches.set(cord.points.subarray(3 * k, 3 * k + 6), stretch * stretchNumbers);
        this.stretches[stretch * stretchNumbers + 6] = cord.diameter / 2;
        stretch++;
      }
  }

  private lineColours(count: number): Uint8Array {
    const colours: number[] = [];
    const add = (colour: string, times: number) => {
      const bytes = bytesOf(colour);
      for (let i = 0; i < times; i++) colours.push(...bytes);
    };
    for (const item of this.piece.items)
      if (item.kind === 'band' && item.band.thread)
        add(item.band.thread.colour, item.band.thread.mouths.length / 2);
    for (const cord of this.piece.cords) add(cord.colour, Math.max(0, cord.points.length / 3 - 1));
    return Uint8Array.from(colours.slice(0, count * 3));
  }

  /** Colour, finish and size of an item's beads. */
  private dress(index: number): void {
    const item = this.items[index];
    const first = this.itemOf.indexOf(index);
    if (!item || first < 0) return;
    const put = (bead: number, colour: readonly number[], finish: Finish, size: BeadSize | undefined) => {
      this.table.looks.set([...colour, finishes.indexOf(finish)], bead * lookNumbers);
      this.table.sizes.set(
        size ? [size.diameter / 2, size.length / 2, size.hole / 2, size.rim] : [0, 0, 0, 0],
        bead * sizeNumbers,
      );
    };
    if (item.kind === 'bead') put(first, bytesOf(item.colour), item.finish, item.size);
    if (item.kind !== 'band') return;
    const colours = item.legend.map((bead) => bytesOf(bead.colour));
    item.band.cellOf.forEach((cell, i) => {
      const place = item.cells[cell] ?? noBead;
      const bead = item.legend[place];
      put(
        first + i,
        colours[place] ?? [0, 0, 0],
        bead?.finish ?? 'opaque',
        bead && (bead.size ?? item.band.size),
      );
    });
  }

  /** New cells or legends; the bands and their places must be the ones the scene was made of. */
  repaint(items: readonly PieceItem[]): void {
    this.items = items;
    for (const placed of this.bands) this.dress(placed.item);
    this.meshes.refill();
  }

  /** Slides a band to so many half beads from rest. */
  slide(item: number, halfBeads: number): void {
    const placed = this.bands.find((band) => band.item === item);
    if (!placed || placed.slide === halfBeads) return;
    placed.slide = halfBeads;
    this.seat(placed);
    this.meshes.reseat();
    this.lines.update();
  }

  /** What a line of sight meets first. */
  pick(ray: Ray): Picked | undefined {
    const bead = firstBead(ray, this.table.seats, this.table.sizes);
    if (bead === undefined) return undefined;
    const item = this.itemOf[bead] ?? 0;
    const placed = this.bands.find((band) => band.item === item);
    const band = placed && this.bandOf(placed);
    return { item, cell: placed && band?.band.cellOf[bead - placed.first] };
  }

  /** Rims a bead; true where that changes what is seen. */
  mark(picked: Picked | undefined): boolean {
    if (!picked) return this.meshes.setRim(undefined);
    const placed = this.bands.find((band) => band.item === picked.item);
    const item = placed && this.bandOf(placed);
    if (!placed || !item) return this.meshes.setRim(this.itemOf.indexOf(picked.item));
    const bead = picked.cell === undefined ? -1 : item.band.cellOf.indexOf(picked.cell);
    return this.meshes.setRim(bead < 0 ? undefined : placed.first + bead);
  }

  setRimColour(colour: string): void {
    this.meshes.setRimColour(colour);
  }
  setLevel(level: Level): void {
    this.meshes.setLevel(level);
  }
  sort(towards: Vec): void {
    this.meshes.sort(towards);
  }

  /** What beads, forms, findings and cords take up. */
  around(): Around {
    const largest = this.table.sizes.reduce((max, size) => Math.max(max, size), 0);
    return aroundOf(
      [
        { numbers: this.table.seats, width: seatNumbers },
        { numbers: this.forms.mesh.geometry.getAttribute('position').array, width: 3 },
        { numbers: this.findings.mesh.geometry.getAttribute('position').array, width: 3 },
        ...this.piece.cords.map((cord) => ({ numbers: cord.points, width: 3 })),
      ],
      largest,
    );
  }

  dispose(): void {
    for (const part of [this.meshes, this.forms, this.lines, this.findings]) part.dispose();
    this.group.clear();
  }
}

function formsOf(piece: Piece): PlacedForm[] {
  return piece.items.flatMap((item): PlacedForm[] => {
    if (item.kind === 'form') return [{ form: item.form, transform: item.transform }];
    if (item.kind === 'band' && item.band.form)
      return [{ form: item.band.form, transform: item.transform ?? unmoved }];
    return [];
  });
}
