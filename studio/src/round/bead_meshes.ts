/**
 * Every bead of a piece in two draws: the solid ones, then those that light goes through. Colour, finish, size and place go with the
 * bead, so that neither the number of colours nor that of bands costs a draw more. A third draw rims the bead under the pointer.
 */
import {
  BackSide,
  Color,
  DynamicDrawUsage,
  Group,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  InstancedInterleavedBuffer,
  InterleavedBufferAttribute,
  Mesh,
  ShaderMaterial,
} from 'three';

import { beadGeometry } from './bead_geometry';
import { beadFragment, beadVertex } from './bead_shader';
import { finishes, type Seats, seatNumbers, seeThrough } from './beads';
import { bytesOf } from './colour';
import { type Sizes, sizeNumbers } from './pick';
import type { Level } from './quality';
import type { Vec } from './vectors';

export const lookNumbers = 4;

/** All beads of a piece, in one order. A bead of no size is not drawn. */
export interface BeadTable {
  readonly count: number;
  readonly seats: Seats;
  readonly sizes: Sizes;
  /** Red, green, blue and the finish's place in `finishes`. */
  readonly looks: Uint8Array;
  /** Away from the form, and how the neighbours shade: 0 none, 127/2 one side, 127 both sides. */
  readonly outsides: Int8Array;
}

/** More beads than this are not sorted by distance: it would take longer than it shows. */
const mostSorted = 8_000;

/** How far the rim of the bead under the pointer stands out, as a share of the bead's radius. */
const rimShare = 0.15;

function material(level: Level, defines: Record<string, string> = {}): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: beadVertex,
    fragmentShader: beadFragment,
    defines: level === 'rough' ? { ...defines, ROUGH: '' } : defines,
    uniforms: { swell: { value: 0 }, tint: { value: new Color() } },
  });
}

/** The beads of one draw. Each has corners of its own: buffers that meshes share go when the first of them goes. */
class Draw {
  readonly mesh: Mesh<InstancedBufferGeometry, ShaderMaterial>;
  private order = new Uint32Array();
  private room = 0;

  constructor(
    look: ShaderMaterial,
    private readonly whole = false,
  ) {
    this.mesh = new Mesh(new InstancedBufferGeometry(), look);
    this.mesh.frustumCulled = false;
    this.mesh.visible = false;
  }

  /** A geometry can't take more beads once it is drawn: a new one takes its place. */
  private make(level: Level, room: number): void {
    this.room = room;
    const { mesh } = this;
    mesh.geometry.dispose();
    mesh.geometry = new InstancedBufferGeometry();
    const shape = beadGeometry(level, this.whole);
    for (const [name, attribute] of Object.entries(shape.attributes))
      mesh.geometry.setAttribute(name, attribute);
    mesh.geometry.setIndex(shape.index);
    const seats = new InstancedInterleavedBuffer(new Float32Array(room * seatNumbers), seatNumbers);
    seats.setUsage(DynamicDrawUsage);
    mesh.geometry.setAttribute('seat', new InterleavedBufferAttribute(seats, 3, 0));
    mesh.geometry.setAttribute('axis', new InterleavedBufferAttribute(seats, 3, 3));
    const put = (name: string, numbers: Float32Array | Uint8Array | Int8Array, normalised: boolean) =>
      mesh.geometry.setAttribute(name, new InstancedBufferAttribute(numbers, 4, normalised));
    put('size', new Float32Array(room * sizeNumbers), false);
    put('look', new Uint8Array(room * lookNumbers), true);
    put('outside', new Int8Array(room * 4), true);
  }

  fill(level: Level, anew: boolean, table: BeadTable, order: Uint32Array<ArrayBuffer>): void {
    if (anew || order.length > this.room) this.make(level, order.length);
    this.order = order;
    this.mesh.visible = order.length > 0;
    this.mesh.geometry.instanceCount = order.length;
    this.write(table);
  }

  /** The numbers of the table in this draw's order. */
  write(table: BeadTable, only?: 'seats'): void {
    if (this.order.length === 0) return;
    const attributes = this.mesh.geometry.attributes;
    const copy = (name: string, from: ArrayLike<number>, width: number) => {
      const attribute = attributes[name];
      if (!attribute) return;
      const into = attribute.array;
      this.order.forEach((bead, i) => {
        for (let j = 0; j < width; j++) into[i * width + j] = from[bead * width + j] ?? 0;
      });
      if (attribute instanceof InterleavedBufferAttribute) attribute.data.needsUpdate = true;
      else attribute.needsUpdate = true;
    };
    copy('seat', table.seats, seatNumbers);
    copy('outside', table.outsides, 4);
    if (only) return;
    copy('size', table.sizes, sizeNumbers);
    copy('look', table.looks, lookNumbers);
  }

  /** The farthest first. */
  sort(table: BeadTable, towards: Vec): void {
    if (this.order.length < 2 || this.order.length > mostSorted) return;
    const near = new Float32Array(table.count);
    for (const bead of this.order)
      towards.forEach((part, j) => {
        near[bead] = (near[bead] ?? 0) + part * (table.seats[bead * seatNumbers + j] ?? 0);
      });
    this.order.sort((a, b) => (near[a] ?? 0) - (near[b] ?? 0));
    this.write(table);
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }
}

export class BeadMeshes {
  readonly group = new Group();
  private readonly solid: Draw;
  private readonly glass: Draw;
  private readonly rim: Draw;
  private rimmed: number | undefined;

  constructor(
    private readonly table: BeadTable,
    private level: Level,
  ) {
    this.solid = new Draw(material(level));
    this.glass = new Draw(material(level));
    this.rim = new Draw(material(level, { PLAIN_TINT: '' }), true);
    this.rim.mesh.material.side = BackSide;
    this.glass.mesh.renderOrder = 2;
    this.glass.mesh.material.transparent = level !== 'rough';
    this.group.add(this.solid.mesh, this.glass.mesh, this.rim.mesh);
    this.refill();
  }

  /** The rim's colour goes to the screen as it is: no light falls on it. */
  setRimColour(colour: string): void {
    const tint = this.rim.mesh.material.uniforms['tint'];
    if (tint) tint.value = new Color().fromArray(bytesOf(colour).map((byte) => byte / 255));
  }

  /** After colours, finishes or sizes have changed in the table; `anew` after the level has. */
  refill(anew = false): void {
    const solid: number[] = [];
    const glass: number[] = [];
    for (let i = 0; i < this.table.count; i++) {
      if ((this.table.sizes[i * sizeNumbers] ?? 0) <= 0) continue;
      const finish = finishes[this.table.looks[i * lookNumbers + 3] ?? 0] ?? 'opaque';
      (seeThrough(finish) ? glass : solid).push(i);
    }
    this.solid.fill(this.level, anew, this.table, Uint32Array.from(solid));
    this.glass.fill(this.level, anew, this.table, Uint32Array.from(glass));
    this.refillRim(anew);
  }

  /** After places have changed in the table. */
  reseat(): void {
    for (const draw of [this.solid, this.glass, this.rim]) draw.write(this.table, 'seats');
  }

  /** Before a draw: beads that light goes through lie over one another. */
  sort(towards: Vec): void {
    if (this.level !== 'rough') this.glass.sort(this.table, towards);
  }

  /** True where that changes what is seen. */
  setRim(bead: number | undefined): boolean {
    if (bead === this.rimmed) return false;
    this.rimmed = bead;
    this.refillRim();
    return true;
  }

  private refillRim(anew = false): void {
    const radius = this.rimmed === undefined ? 0 : (this.table.sizes[this.rimmed * sizeNumbers] ?? 0);
    const order = Uint32Array.from(this.rimmed !== undefined && radius > 0 ? [this.rimmed] : []);
    this.rim.fill(this.level, anew, this.table, order);
    const swell = this.rim.mesh.material.uniforms['swell'];
    if (swell) swell.value = rimShare * radius;
  }

  setLevel(level: Level): void {
    if (level === this.level) return;
    this.level = level;
    for (const { mesh } of [this.solid, this.glass, this.rim]) {
      if (level === 'rough') mesh.material.defines['ROUGH'] = '';
      else delete mesh.material.defines['ROUGH'];
      mesh.material.needsUpdate = true;
    }
    this.glass.mesh.material.transparent = level !== 'rough';
    this.refill(true);
  }

  dispose(): void {
    for (const draw of [this.solid, this.glass, this.rim]) draw.dispose();
  }
}
