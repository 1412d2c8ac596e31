/** The corners of a bead's outline turned round its axis, as the shader reads them. */
import { BufferAttribute, BufferGeometry } from 'three';

import { fineness, outlineOf, trianglesOf } from './bead_profile';
import type { Level } from './quality';

/** Without instances. `whole`: also what is turned away from the viewer, whatever the level. */
export function beadGeometry(level: Level, whole = false): BufferGeometry {
  const { sides, facing } = fineness[level];
  const corners = outlineOf(level);
  const position: number[] = [];
  const across: number[] = [];
  const along: number[] = [];
  const slope: number[] = [];
  for (let side = 0; side < sides; side++) {
    const turn = (2 * Math.PI * side) / sides;
    for (const corner of corners) {
      position.push(Math.cos(turn), Math.sin(turn), corner.light);
      across.push(...corner.across);
      along.push(...corner.along);
      slope.push(...corner.normal);
    }
  }
  const geometry = new BufferGeometry();
  const put = (name: string, numbers: number[], size: number) =>
    geometry.setAttribute(name, new BufferAttribute(new Float32Array(numbers), size));
  put('position', position, 3);
  put('across', across, 4);
  put('along', along, 3);
  put('slope', slope, 2);
  geometry.setIndex(new BufferAttribute(trianglesOf(corners, sides, facing && !whole), 1));
  return geometry;
}
