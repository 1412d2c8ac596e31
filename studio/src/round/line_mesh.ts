/** Thread and cord: straight stretches of a round line, all in one draw. */
import {
  BufferAttribute,
  DynamicDrawUsage,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  InstancedInterleavedBuffer,
  InterleavedBufferAttribute,
  Mesh,
  ShaderMaterial,
} from 'three';

import { lightChunk } from './light';

/** Seven numbers a stretch: from, to, half the diameter. */
export const stretchNumbers = 7;

const roundSides = 8;

const vertex = /* glsl */ `
attribute vec3 start;
attribute vec3 end;
attribute float radius;
attribute vec3 colour;
varying vec3 vNormal;
flat varying vec3 vColour;
${lightChunk}
void main() {
  vec3 way = end - start;
  vec3 axis = normalize(way + vec3(0.0, 0.0, 1e-6));
  vec3 u = normalize(cross(abs(axis.z) < 0.9 ? vec3(0.0, 0.0, 1.0) : vec3(1.0, 0.0, 0.0), axis));
  vec3 outwards = position.x * u + position.y * cross(axis, u);
  // A little over both ends, so that bends leave no gap.
  vec3 place = mix(start, end, position.z) + radius * (outwards + (position.z - 0.5) * 0.8 * axis);
  vColour = toLinear(colour);
  vNormal = normalMatrix * outwards;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(place, 1.0);
}
`;

const fragment = /* glsl */ `
varying vec3 vNormal;
flat varying vec3 vColour;
${lightChunk}
void main() {
  gl_FragColor = vec4(toSrgb(vColour * mix(0.25, 1.0, fallingLight(normalize(vNormal)))), 1.0);
}
`;

export class LineMesh {
  readonly mesh: Mesh<InstancedBufferGeometry, ShaderMaterial>;
  private readonly buffer: InstancedInterleavedBuffer;

  /** `stretches` is read again at each `update`; three bytes of colour a stretch. */
  constructor(stretches: Float32Array, colours: Uint8Array) {
    const count = stretches.length / stretchNumbers;
    const geometry = new InstancedBufferGeometry();
    geometry.instanceCount = count;
    const corners: number[] = [];
    const triangles: number[] = [];
    for (let i = 0; i < roundSides; i++) {
      const turn = (2 * Math.PI * i) / roundSides;
      corners.push(Math.cos(turn), Math.sin(turn), 0, Math.cos(turn), Math.sin(turn), 1);
      const [a, b] = [2 * i, 2 * ((i + 1) % roundSides)];
      triangles.push(a, b, a + 1, a + 1, b, b + 1);
    }
    geometry.setAttribute('position', new BufferAttribute(new Float32Array(corners), 3));
    geometry.setIndex(triangles);
    this.buffer = new InstancedInterleavedBuffer(stretches, stretchNumbers);
    this.buffer.setUsage(DynamicDrawUsage);
    geometry.setAttribute('start', new InterleavedBufferAttribute(this.buffer, 3, 0));
    geometry.setAttribute('end', new InterleavedBufferAttribute(this.buffer, 3, 3));
    geometry.setAttribute('radius', new InterleavedBufferAttribute(this.buffer, 1, 6));
    const four = new Uint8Array(count * 4);
    for (let i = 0; i < count; i++) four.set(colours.subarray(i * 3, i * 3 + 3), i * 4);
    geometry.setAttribute('colour', new InstancedBufferAttribute(four, 4, true));
    this.mesh = new Mesh(geometry, new ShaderMaterial({ vertexShader: vertex, fragmentShader: fragment }));
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = 1;
    this.mesh.visible = count > 0;
  }

  update(): void {
    this.buffer.needsUpdate = true;
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }
}
