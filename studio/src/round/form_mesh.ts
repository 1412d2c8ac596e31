/** Forms as clear glass: hardly there where they are looked through, darker and brighter at their edges. Two draws: back, then front. */
import { BufferAttribute, BufferGeometry, DoubleSide, Mesh, ShaderMaterial } from 'three';

import type { FormShape, Transform } from './beads';
import { addForm, emptyBody } from './form_geometry';
import { lightChunk } from './light';

const vertex = /* glsl */ `
varying vec3 vNormal;
varying vec3 vEye;
void main() {
  vec4 seen = modelViewMatrix * vec4(position, 1.0);
  vNormal = normalMatrix * normal;
  vEye = -seen.xyz;
  gl_Position = projectionMatrix * seen;
}
`;

const fragment = /* glsl */ `
varying vec3 vNormal;
varying vec3 vEye;
${lightChunk}
void main() {
  vec3 eye = normalize(vEye);
  vec3 n = normalize(vNormal);
  if (dot(n, eye) < 0.0) n = -n;
  float facing = clamp(dot(n, eye), 0.0, 1.0);
  float edge = pow(1.0 - facing, 2.2);
  float shine = grazing(facing, 0.05) * roomLight(reflect(-eye, n), 0.015);
  // Glass of this thickness is a little green: linear light.
  vec3 glass = mix(vec3(0.55, 0.66, 0.68), vec3(0.16, 0.25, 0.28), edge);
  float alpha = mix(0.12, 0.62, edge);
  float added = clamp(0.8 * shine, 0.0, 1.0 - alpha * 0.5);
  // Already weighted: what shines adds to what is seen through.
  gl_FragColor = vec4(toSrgb(glass) * alpha + vec3(added), clamp(alpha + added, 0.0, 1.0));
}
`;

export interface PlacedForm {
  readonly form: FormShape;
  readonly transform: Transform;
}

export class FormMesh {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;

  constructor(forms: readonly PlacedForm[]) {
    const body = emptyBody();
    for (const { form, transform } of forms) addForm(body, form, transform);
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(new Float32Array(body.positions), 3));
    geometry.setAttribute('normal', new BufferAttribute(new Float32Array(body.normals), 3));
    geometry.setIndex(new BufferAttribute(new Uint32Array(body.triangles), 1));
    const material = new ShaderMaterial({
      vertexShader: vertex,
      fragmentShader: fragment,
      transparent: true,
      premultipliedAlpha: true,
      depthWrite: false,
      side: DoubleSide,
    });
    this.mesh = new Mesh(geometry, material);
    this.mesh.frustumCulled = false;
    this.mesh.renderOrder = 3;
    this.mesh.visible = body.triangles.length > 0;
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }
}
