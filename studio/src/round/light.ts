/**
 * The light of the room, written as a formula: a wide window to the upper left behind the viewer, a narrow one to the right, pale walls,
 * a darker floor. It stays with the viewer, as a lamp on the worktable does when the piece is turned in the hand. All of it is neutral
 * grey, and a surface that faces the window has exactly the light that shows a colour as it is, so that no colour is pushed.
 */
export const lightChunk = /* glsl */ `
const vec3 windowAt = vec3(-0.34, 0.50, 0.796);
const vec3 windowRight = vec3(0.92, 0.0, 0.393);
const vec3 windowUp = vec3(-0.1965, 0.866, -0.46);

// Light that falls on a surface: 1 towards the window, about 0.95 towards the viewer.
float fallingLight(vec3 n) {
  float lamp = max((dot(n, windowAt) + 0.35) / 1.35, 0.0);
  float walls = 0.5 + 0.5 * n.y;
  return min(1.0, 0.16 + 0.14 * walls + 0.735 * lamp);
}

float pane(vec2 at, vec2 half_size, float blur) {
  vec2 inside = smoothstep(half_size + blur, half_size - blur, abs(at));
  return inside.x * inside.y;
}

// Light that comes from a direction, seen in a surface that blurs it.
float roomLight(vec3 r, float blur) {
  float room = mix(0.20, 0.62, smoothstep(-0.55 - blur, 0.75 + blur, r.y + 0.25 * r.z));
  float ahead = step(0.0, dot(r, windowAt));
  float window = ahead * pane(vec2(dot(r, windowRight), dot(r, windowUp)), vec2(0.27, 0.20), 0.02 + blur);
  float slit = step(0.0, r.z) * pane(vec2(r.x - 0.86, r.y - 0.05), vec2(0.05, 0.34), 0.02 + 0.5 * blur);
  float spread = 1.0 / (1.0 + 9.0 * blur);
  return room + 5.5 * spread * window + 2.2 * spread * slit;
}

float grazing(float facing, float least) {
  return least + (1.0 - least) * pow(1.0 - facing, 5.0);
}

vec3 toLinear(vec3 srgb) {
  return mix(srgb / 12.92, pow((srgb + 0.055) / 1.055, vec3(2.4)), step(0.04045, srgb));
}
vec3 toSrgb(vec3 linear) {
  vec3 c = clamp(linear, 0.0, 1.0);
  return mix(c * 12.92, 1.055 * pow(c, vec3(1.0 / 2.4)) - 0.055, step(0.0031308, c));
}
`;
