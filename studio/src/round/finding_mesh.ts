/** Findings: rings and bars of metal, all in one draw. */
import { BufferAttribute, BufferGeometry, CapsuleGeometry, Mesh, ShaderMaterial, TorusGeometry } from 'three';

import type { FindingItem, FindingShape } from './beads';
import { bytesOf } from './colour';
import { lightChunk } from './light';
import { movedDirection, movedPoint } from './vectors';

const vertex = /* glsl */ `
attribute vec3 colour;
varying vec3 vNormal;
varying vec3 vEye;
varying vec3 vColour;
${lightChunk}
void main() {
  vec4 seen = modelViewMatrix * vec4(position, 1.0);
  vNormal = normalMatrix * normal;
  vEye = -seen.xyz;
  vColour = toLinear(colour);
  gl_Position = projectionMatrix * seen;
}
`;

const fragment = /* glsl */ `
varying vec3 vNormal;
varying vec3 vEye;
varying vec3 vColour;
${lightChunk}
void main() {
  vec3 eye = normalize(vEye);
  vec3 n = normalize(vNormal);
  float light = roomLight(reflect(-eye, n), 0.1);
  gl_FragColor = vec4(toSrgb(vColour * (0.25 * fallingLight(n) + 1.2 * light)), 1.0);
}
`;

function shapeOf(shape: FindingShape): BufferGeometry {
  if (shape.kind === 'ring')
    return new TorusGeometry((shape.diameter - shape.wire) / 2, shape.wire / 2, 12, 40);
  return new CapsuleGeometry(shape.diameter / 2, Math.max(0, shape.length - shape.diameter), 8, 20).rotateX(
    Math.PI / 2,
  );
}

export class FindingMesh {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;

  constructor(findings: readonly FindingItem[]) {
    const positions: number[] = [];
    const normals: number[] = [];
    const colours: number[] = [];
    const triangles: number[] = [];
    for (const { shape, transform, colour } of findings) {
      const geometry = shapeOf(shape);
      const [at, normal] = [geometry.getAttribute('position'), geometry.getAttribute('normal')];
      const first = positions.length / 3;
      const [r, g, b] = bytesOf(colour);
      for (let i = 0; i < at.count; i++) {
        positions.push(...movedPoint(transform, at.getX(i), at.getY(i), at.getZ(i)));
        normals.push(...movedDirection(transform, normal.getX(i), normal.getY(i), normal.getZ(i)));
        colours.push(r, g, b, 255);
      }
      for (const corner of geometry.index?.array ?? []) triangles.push(first + corner);
      geometry.dispose();
    }
    const merged = new BufferGeometry();
    merged.setAttribute('position', new BufferAttribute(new Float32Array(positions), 3));
    merged.setAttribute('normal', new BufferAttribute(new Float32Array(normals), 3));
    merged.setAttribute('colour', new BufferAttribute(new Uint8Array(colours), 4, true));
    merged.setIndex(new BufferAttribute(new Uint32Array(triangles), 1));
    this.mesh = new Mesh(merged, new ShaderMaterial({ vertexShader: vertex, fragmentShader: fragment }));
    this.mesh.frustumCulled = false;
    this.mesh.visible = triangles.length > 0;
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }
}
