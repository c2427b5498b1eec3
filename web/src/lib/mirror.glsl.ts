/** The mirror's programs for the graphics card, GLSL ES 3.00. */

/** One triangle over the whole picture. */
export const vertex = `#version 300 es
void main() {
  vec2 corner = vec2(gl_VertexID == 1 ? 3.0 : -1.0, gl_VertexID == 2 ? 3.0 : -1.0);
  gl_Position = vec4(corner, 0.0, 1.0);
}`;

export const fragment = `#version 300 es
precision highp float;
precision highp int;
precision highp sampler2D;
uniform sampler2D slopes;   // intended x, intended y, deviation x, deviation y
uniform sampler2D heights;  // intended, deviation, 1 where it was read
uniform vec4 grid;          // x0, y0, step, middle height
uniform vec2 cells;
uniform vec4 laid;          // cos, sin, shift: from the look's frame to the surface's own
uniform vec3 eye, eyeRight, eyeDown, ahead;
uniform vec4 lens;          // focal px, k1, width, height
uniform vec3 boardMiddle, boardU, boardV;
uniform vec2 boardSize;
uniform vec4 lines;         // pitch, cos, sin of the turn, slid
uniform float times;
uniform bool asNumbers;
out vec4 colour;

const int UNBEND_STEPS = 5;
const int MEET_STEPS = 6;

vec2 own(vec2 p) { return vec2(laid.x * p.x - laid.y * p.y, laid.y * p.x + laid.x * p.y) + laid.zw; }
vec2 back(vec2 slope) { return vec2(laid.x * slope.x + laid.y * slope.y, laid.x * slope.y - laid.y * slope.x); }

/** Four values between cell centres; all of the neighbours must have been read. */
vec4 between(sampler2D map, vec2 cell) {
  ivec2 low = ivec2(floor(cell));
  vec2 t = cell - vec2(low);
  vec4 a = texelFetch(map, low, 0), b = texelFetch(map, low + ivec2(1, 0), 0);
  vec4 c = texelFetch(map, low + ivec2(0, 1), 0), d = texelFetch(map, low + ivec2(1, 1), 0);
  return mix(mix(a, b, t.x), mix(c, d, t.x), t.y);
}

bool inside(vec2 cell) { return all(greaterThanEqual(cell, vec2(0.0))) && all(lessThan(cell, cells - 1.0)); }
vec2 cellOf(vec2 p) { return (own(p) - grid.xy) / grid.z; }

vec3 rayOf(vec2 pixel) {
  vec2 bent = (pixel - 0.5 * lens.zw) / lens.x;
  vec2 at = bent;
  for (int k = 0; k < UNBEND_STEPS; k++) at = bent / (1.0 + lens.y * dot(at, at));
  return normalize(ahead + eyeRight * at.x + eyeDown * at.y);
}

/** Light of the lines at a place, evenly over the pixel's own width across them. */
float light(float phase) {
  float wide = max(fwidth(phase), 1e-4);
  float edge = 0.25 - abs(fract(phase) - 0.5);
  float sharp = clamp(0.5 - edge / wide, 0.0, 1.0);
  return mix(sharp, 0.5, smoothstep(0.5, 1.0, wide));
}

void main() {
  vec3 ray = rayOf(vec2(gl_FragCoord.x, lens.w - gl_FragCoord.y));
  vec3 hit = eye + ray * ((grid.w - eye.z) / ray.z);
  vec4 height = vec4(0.0);
  for (int k = 0; k < MEET_STEPS; k++) {
    vec2 cell = cellOf(hit.xy);
    if (!inside(cell)) break;
    height = between(heights, cell);
    vec4 s = between(slopes, cell);
    vec2 slope = back(s.xy + times * s.zw);
    float off = hit.z - (height.x + times * height.y);
    hit -= ray * (off / (ray.z - dot(slope, ray.xy)));
  }
  vec2 cell = cellOf(hit.xy);
  bool onPanel = inside(cell) && between(heights, cell).z > 0.999;
  vec4 s = onPanel ? between(slopes, cell) : vec4(0.0);
  vec3 normal = normalize(vec3(-back(s.xy + times * s.zw), 1.0));
  vec3 mirrored = reflect(ray, normal);
  vec3 facing = cross(boardU, boardV);
  float against = dot(mirrored, facing);
  float far = dot(boardMiddle - hit, facing) / against;
  vec3 to = hit + mirrored * far - boardMiddle;
  vec2 place = vec2(dot(to, boardU), dot(to, boardV));
  bool onBoard = onPanel && against < 0.0 && far > 0.0 && all(lessThanEqual(abs(place), 0.5 * boardSize));
  float lit = light((dot(place, lines.yz) - lines.w) / lines.x);
  if (asNumbers) {
    colour = vec4(place, onBoard ? 1.0 : 0.0, 0.0);
    return;
  }
  // Clear coat, Schlick's approximation for the refractive index 1.5, over dark paint.
  float shine = 0.04 + 0.96 * pow(1.0 - max(-dot(ray, normal), 0.0), 5.0);
  vec3 paint = vec3(0.055, 0.065, 0.075);
  vec3 room = vec3(0.10, 0.11, 0.115);
  vec3 seen = paint + (onBoard ? vec3(0.92, 0.94, 0.86) * lit : room) * clamp(0.7 + 2.0 * shine, 0.0, 1.0);
  colour = vec4(onPanel ? seen : vec3(0.035, 0.045, 0.04), 1.0);
}`;
