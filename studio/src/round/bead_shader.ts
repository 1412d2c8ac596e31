/** How a bead is placed and what its finish looks like. */
import { finishes } from './beads';
import { lightChunk } from './light';

const finishNumbers = finishes.map((name, i) => `#define FINISH_${name.toUpperCase()} ${i}`).join('\n');

export const beadVertex = /* glsl */ `
attribute vec4 across;
attribute vec3 along;
attribute vec2 slope;
attribute vec3 seat;
attribute vec3 axis;
attribute vec4 size;    // half diameter, half length, half hole, rim
attribute vec4 look;    // sRGB colour; finish / 255
attribute vec4 outside; // away from the form; w: how much the neighbours shade
uniform float swell;

varying vec3 vNormal;
varying vec3 vEye;
varying vec3 vAxis;
varying float vLight;
varying float vCore;
flat varying vec3 vColour;
flat varying int vFinish;
${lightChunk}
void main() {
  float lip = min(0.06, 0.2 * (size.x - size.z));
  float rimAcross = min(size.w, size.x - size.z - lip);
  float rimAlong = min(size.w, size.y);
  float r = dot(across, vec4(size.x, size.z, rimAcross, lip)) + swell * across.x;
  float z = dot(along, vec3(size.y, rimAlong, lip)) + swell * along.x;

  // A bead looks alike from all round and from both ends: it may be turned so that the corners there are face the viewer.
  vec3 toEye = cameraPosition - seat;
  vec3 way = dot(axis, toEye) < 0.0 ? -axis : axis;
  vec3 side = toEye - dot(toEye, way) * way;
  vec3 u = dot(side, side) > 1e-4 ? normalize(side) : normalize(cross(abs(way.z) < 0.9 ? vec3(0.0, 0.0, 1.0) : vec3(1.0, 0.0, 0.0), way));
  vec3 v = cross(way, u);
  vec3 outwards = position.x * u + position.y * v;
  vec3 place = seat + r * outwards + z * way;
  vec2 tilt = normalize(slope * vec2(rimAlong, rimAcross) + vec2(0.0, 1e-9));
  vec3 normal = tilt.x * outwards + tilt.y * way;

  // Neighbours and the form take the light from a bead's sides and back.
  float open = outside.w > 0.0 ? smoothstep(-0.25, 0.85, dot(normal, outside.xyz)) : 1.0;
  if (outside.w > 0.75) open = smoothstep(-0.25, 0.85, abs(dot(normal, outside.xyz)));
  vLight = position.z * mix(0.42, 1.0, open);

  vec4 seen = modelViewMatrix * vec4(place, 1.0);
  vNormal = normalMatrix * normal;
  vAxis = normalMatrix * axis;
  vEye = -seen.xyz;
  vCore = size.z / size.x;
  vFinish = int(look.a * 255.0 + 0.5);
  vColour = toLinear(look.rgb);
#ifdef ROUGH
  vColour = vec3(1.0);
  vNormal = toSrgb(toLinear(look.rgb) * fallingLight(normalize(vNormal)) * vLight);
#endif
  gl_Position = projectionMatrix * seen;
}
`;

export const beadFragment = /* glsl */ `
${finishNumbers}
uniform vec3 tint;
varying vec3 vNormal;
varying vec3 vEye;
varying vec3 vAxis;
varying float vLight;
varying float vCore;
flat varying vec3 vColour;
flat varying int vFinish;
${lightChunk}
// The colours of a thin coat, by how slantwise it is looked through; their mean is grey.
vec3 thinCoat(float facing) {
  return 0.5 + 0.5 * cos(6.2832 * (1.15 * facing + vec3(0.05, 0.38, 0.72)));
}
void main() {
#ifdef PLAIN_TINT
  gl_FragColor = vec4(tint, 1.0);
#elif defined(ROUGH)
  gl_FragColor = vec4(vNormal, 1.0);
#else
  vec3 n = normalize(vNormal);
  vec3 eye = normalize(vEye);
  vec3 axis = normalize(vAxis);
  float facing = clamp(dot(n, eye), 0.0, 1.0);
  vec3 back = reflect(-eye, n);
  float falling = fallingLight(n) * vLight;
  float openLight = smoothstep(0.3, 1.0, vLight);
  vec3 body = vColour * falling;
  vec3 shine = vec3(0.0);
  float alpha = 1.0;

  if (vFinish == FINISH_OPAQUE) {
    shine = vec3(grazing(facing, 0.04) * roomLight(back, 0.05));
  } else if (vFinish == FINISH_MATTE) {
    float frost = pow(1.0 - facing, 2.0);
    body = mix(body, vec3(dot(body, vec3(0.333)) + 0.10 * falling), 0.35 * frost);
    shine = vec3(0.012 * roomLight(back, 0.6));
  } else if (vFinish == FINISH_TRANSPARENT || vFinish == FINISH_LINED) {
    // How far off its axis the bead is looked through: 0 through the bore, 1 at the edge.
    vec3 flatEye = eye - dot(eye, axis) * axis;
    vec3 flatN = n - dot(n, axis) * axis;
    float aside = length(flatN);
    float c = clamp(dot(flatN / max(aside, 1e-4), normalize(flatEye + vec3(1e-5))), 0.0, 1.0);
    float off = sqrt(1.0 - c * c);
    // Glass bends the light: the bore looks half again as wide.
    float core = 1.0 - smoothstep(1.5 * vCore - 0.16, 1.5 * vCore + 0.06, off);
    core *= smoothstep(0.08, 0.4, aside);
    if (vFinish == FINISH_LINED) {
      vec3 glass = mix(vColour, vec3(0.86), 0.38);
      body = mix(glass * mix(0.62, 0.95, facing), vColour * 1.04, core) * mix(0.55, 1.0, falling);
      alpha = mix(mix(0.62, 0.84, pow(1.0 - facing, 2.0)), 1.0, core);
    } else {
      // Light from behind gathers low in the bead, across from the window.
      float gathered = smoothstep(-0.1, 0.9, dot(normalize(-windowAt + 1.5 * eye), n));
      vec3 deep = vColour * vColour * 0.6;
      body = mix(deep, vColour * 1.12, clamp(0.25 + 0.85 * gathered * facing, 0.0, 1.0));
      body *= mix(0.6, 1.0, vLight) * mix(1.0, 0.86, core * facing);
      alpha = mix(0.66, 0.95, pow(1.0 - facing, 1.5));
    }
    shine = vec3(grazing(facing, 0.05) * roomLight(back, 0.02));
  } else if (vFinish == FINISH_METALLIC) {
    float light = roomLight(back, 0.22);
    body = vColour * (0.62 * falling + 0.75 * light * mix(0.5, 1.0, openLight));
    shine = vec3(grazing(facing, 0.0) * light * 0.5);
  } else if (vFinish == FINISH_GALVANISED) {
    float light = roomLight(back, 0.07);
    body = vColour * (0.30 * falling + 1.15 * light * mix(0.4, 1.0, openLight));
    shine = vec3(grazing(facing, 0.02) * light * 0.7);
  } else if (vFinish == FINISH_LUSTRE) {
    vec3 coat = mix(vec3(1.0), vColour, 0.35);
    shine = coat * grazing(facing, 0.085) * roomLight(back, 0.14) * 1.1;
    body *= 0.96;
  } else if (vFinish == FINISH_PEARL) {
    float milk = 0.10 + 0.32 * pow(1.0 - facing, 1.6);
    vec3 nacre = 0.92 + 0.10 * (thinCoat(facing * 0.8) - 0.5);
    body = mix(body, nacre * falling, milk);
    shine = nacre * grazing(facing, 0.08) * roomLight(back, 0.34) * 1.2;
  } else {
    vec3 coat = thinCoat(facing);
    vec3 rim = 2.0 * coat * pow(1.0 - facing, 0.9);
    body = body * mix(vec3(1.0), 2.0 * coat, 0.30) + vColour * 0.10 * rim;
    shine = mix(vec3(1.0), 1.8 * coat, 0.85) * (0.05 + 0.42 * pow(1.0 - facing, 1.7)) * roomLight(back, 0.06);
  }
  gl_FragColor = vec4(toSrgb(body + shine * mix(0.25, 1.0, openLight)), alpha);
#endif
}
`;
