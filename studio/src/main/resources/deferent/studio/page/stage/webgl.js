// Draws a picture with WebGL through three.js. Whole paths go to the graphics memory once an answer; how a trail fades is worked
// out there from the moment alone, so that a frame in play sends a dozen numbers and no path.

import {
  BufferAttribute,
  BufferGeometry,
  Camera as Eye,
  CustomBlending,
  DoubleSide,
  DynamicDrawUsage,
  GLSL3,
  InstancedBufferAttribute,
  InstancedBufferGeometry,
  InterleavedBuffer,
  InterleavedBufferAttribute,
  Matrix4,
  Mesh,
  OneFactor,
  OneMinusSrcAlphaFactor,
  RawShaderMaterial,
  Scene as Group,
  Vector2,
  Vector3,
  Vector4,
  WebGLRenderer,
} from 'three';
import { Depth, GAP } from './depth.js';
import { CORNERS, filled } from './person.js';
import { BETWEEN, EDGE, OLDEST, RIBBON, ROOM, lightOf, pointsOf, ribbonsOf } from './picture.js';

const FAN = CORNERS + 1; // points of a limb: its middle and its corners

const RIBBON_VERTEX = `
precision highp float;
in vec3 position;
in vec3 before;
in vec3 after;
in vec2 along;
in vec2 depth;
uniform mat4 toClip;
uniform vec2 halfSize;
uniform float reach;
uniform float casing;
out float across;
out float phase;
out vec2 layer;
void main() {
  layer = depth;
  // Nothing is to be filled where nothing passes before the body.
  float wide = casing > 0.5 && depth.y < 1.5 ? 0.0 : reach;
  vec4 p = toClip * vec4(position, 1.0);
  vec4 b = toClip * vec4(before, 1.0);
  vec4 a = toClip * vec4(after, 1.0);
  // What comes behind the eye is cut off where it passes it; beside that place a line has no breadth.
  if (min(p.w, min(b.w, a.w)) < 0.06) {
    gl_Position = p;
    across = along.y * reach;
    phase = along.x;
    return;
  }
  vec2 here = p.xy / p.w * halfSize;
  vec2 come = here - b.xy / b.w * halfSize;
  vec2 go = a.xy / a.w * halfSize - here;
  float comeLength = length(come);
  float goLength = length(go);
  vec2 t1 = comeLength > 1e-4 ? come / comeLength : (goLength > 1e-4 ? go / goLength : vec2(1.0, 0.0));
  vec2 t2 = goLength > 1e-4 ? go / goLength : t1;
  vec2 t = t1 + t2;
  t = length(t) > 1e-2 ? normalize(t) : t2;
  vec2 n = vec2(-t.y, t.x);
  float mitre = 1.0 / max(0.7, abs(dot(n, vec2(-t1.y, t1.x))));
  here += n * along.y * wide * mitre;
  gl_Position = vec4(here / halfSize * p.w, p.z, p.w);
  across = along.y * reach;
  phase = along.x;
}`;

const RIBBON_FRAGMENT = `
precision highp float;
in float across;
in float phase;
in vec2 layer;
uniform vec4 colour;
uniform float ratio;
uniform float gapped;
uniform float casing;
uniform float core;
uniform float halo;
uniform vec2 dashes;
uniform float now;
uniform float fade;
uniform float wraps;
uniform float glow;
uniform float oldest;
uniform float between;
out vec4 paint;
void main() {
  float d = abs(across);
  float a = clamp((core + 0.6 - d) / 1.2, 0.0, 1.0);
  // The gap beside what passes before the body.
  if (casing > 0.5) {
    a *= clamp((layer.y - 1.0) * 4.0, 0.0, 1.0);
    paint = vec4(colour.rgb * a, a);
    return;
  }
  // What gives way to what passes before it, and what is seen faintly through the body.
  float kept = min(1.0, layer.y) * mix(1.0, clamp(layer.x * ratio + 0.5, 0.0, 1.0), gapped);
  vec3 c = colour.rgb;
  if (fade > 0.0) {
    float since = now - phase;
    float age = (wraps > 0.5 ? fract(since) : (since < 0.0 ? fade : since)) / fade;
    float young = max(0.0, 1.0 - age);
    float left = max(oldest, young * sqrt(young));
    float near = max(0.0, 1.0 - d * d / (halo * halo));
    float soft = near * near * near; // as good as a bell, and much sooner had
    c = mix(c, mix(c, vec3(1.0), 0.55), a * left * glow);
    a = (a + soft * mix(0.16, 0.42, glow)) * left;
  }
  if (dashes.x > 0.0) {
    float part = abs(fract(phase * dashes.x) - 0.5) * 2.0;
    a *= mix(1.0, between, smoothstep(dashes.y - 0.06, dashes.y + 0.06, part));
  }
  a = min(1.0, a) * colour.a * kept;
  paint = vec4(c * a, fade > 0.0 ? a * (1.0 - glow * 0.6) : a);
}`;

const STROKE_VERTEX = `
precision highp float;
in vec2 corner;
in vec3 from;
in vec3 to;
in vec4 style;
in vec4 colour;
uniform mat4 toClip;
uniform vec2 halfSize;
out vec2 place;
out float run;
out vec4 look;
out vec4 tint;
void main() {
  vec4 a = toClip * vec4(from, 1.0);
  vec4 b = toClip * vec4(to, 1.0);
  if (min(a.w, b.w) < 0.06) {
    gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
    return;
  }
  vec2 pa = a.xy / a.w * halfSize;
  vec2 pb = b.xy / b.w * halfSize;
  vec2 d = pb - pa;
  run = length(d);
  d = run > 1e-4 ? d / run : vec2(1.0, 0.0);
  float reach = style.x + 1.0;
  vec4 p = corner.x < 0.5 ? a : b;
  vec2 here = (corner.x < 0.5 ? pa : pb) + vec2(-d.y, d.x) * corner.y * reach;
  gl_Position = vec4(here / halfSize * p.w, p.z, p.w);
  place = vec2(corner.x * run, corner.y * reach);
  look = style;
  tint = colour;
}`;

const STROKE_FRAGMENT = `
precision highp float;
in vec2 place;
in float run;
in vec4 look;
in vec4 tint;
uniform float ratio;
out vec4 paint;
void main() {
  float d = abs(place.y);
  float a = 1.0 - smoothstep(look.x - 0.5, look.x + 0.5, d);
  if (look.y > 0.0) {
    float cycle = (look.y + look.z) * ratio;
    float at = mod(place.x + look.w * ratio, cycle);
    a *= 1.0 - smoothstep(look.y * ratio - 0.5, look.y * ratio + 0.5, at);
  }
  a *= tint.a;
  paint = vec4(tint.rgb * a, a);
}`;

// The performer comes as fans of corners on the screen, farthest first, each with its colour. How deep inside its outline a point lies
// is 0 on the rim and 1 at the fan's middle, so that its slope tells the distance from the rim in pixels, which makes the edge soft.
const PERSON_VERTEX = `
precision highp float;
in vec2 place;
in vec4 colour;
uniform vec2 halfSize;
uniform float ratio;
flat out vec3 tint;
out float deep;
void main() {
  gl_Position = vec4(place.x * ratio / halfSize.x - 1.0, 1.0 - place.y * ratio / halfSize.y, 0.0, 1.0);
  tint = colour.rgb;
  deep = colour.a;
}`;

const PERSON_FRAGMENT = `
precision highp float;
flat in vec3 tint;
in float deep;
out vec4 paint;
void main() {
  vec2 slope = vec2(dFdx(deep), dFdy(deep));
  float a = min(1.0, deep * inversesqrt(dot(slope, slope)));
  paint = vec4(tint * a, a);
}`;

const MARK_VERTEX = `
precision highp float;
in vec2 corner;
in vec3 at;
in vec2 style;
in vec4 colour;
uniform mat4 toClip;
uniform vec2 halfSize;
uniform float ratio;
out vec2 place;
out vec2 look;
out vec4 tint;
void main() {
  float reach = (style.x + 4.0) * ratio;
  vec4 p = toClip * vec4(at, 1.0);
  if (p.w < 0.06) {
    gl_Position = vec4(2.0, 2.0, 2.0, 1.0);
    return;
  }
  gl_Position = vec4((p.xy / p.w * halfSize + corner * reach) / halfSize * p.w, p.z, p.w);
  place = corner * (style.x + 4.0);
  look = style;
  tint = colour;
}`;

const MARK_FRAGMENT = `
precision highp float;
in vec2 place;
in vec2 look;
in vec4 tint;
uniform vec3 ground;
out vec4 paint;
void main() {
  float r = look.x;
  int shape = int(look.y + 0.5);
  vec2 q = abs(place);
  float d = length(place) - r;
  if (shape == 1) d = (q.x + q.y - r * 1.25) * 0.7071;
  if (shape == 3) d = max(q.x, q.y) - r * 0.86;
  if (shape == 4) d = min(max(q.x - r, q.y - 0.7), max(q.y - r, q.x - 0.7));
  if (shape == 6) d = abs(d) - 1.1;
  float inside = 1.0 - smoothstep(-0.5, 0.5, d);
  float edge = (1.0 - smoothstep(0.9, 2.0, d)) * (shape == 4 || shape == 6 ? 0.0 : 0.75);
  bool hollow = shape == 2 || shape == 3;
  float hole = hollow ? 1.0 - smoothstep(-0.5, 0.5, d + 2.4) : 0.0;
  vec3 c = mix(ground, tint.rgb, inside * (1.0 - hole));
  float a = max(inside, edge) * tint.a;
  paint = vec4(c * a, a);
}`;

export class WebglDrawer {
  /** Throws where the browser has no WebGL. */
  constructor(canvas) {
    this.canvas = canvas;
    this.renderer = new WebGLRenderer({ canvas, antialias: false, alpha: false, depth: false, stencil: false, powerPreference: 'high-performance' });
    this.renderer.autoClear = true;
    this.renderer.sortObjects = false;
    const gl = this.renderer.getContext();
    const known = gl.getExtension('WEBGL_debug_renderer_info');
    this.name = 'WebGL, ' + gl.getParameter(known ? known.UNMASKED_RENDERER_WEBGL : gl.RENDERER);
    this.gl = gl;
    this.group = new Group();
    this.eye = new Eye();
    this.eye.matrixAutoUpdate = false;
    this.shared = { toClip: { value: new Matrix4() }, halfSize: { value: new Vector2(1, 1) }, ratio: { value: 1 } };
    this.ground = new Vector3();
    this.depth = new Depth();
    this.figure = null; // the performer's corners
    this.ribbons = [];
    this.shape = '';
    this.view = new Matrix4();
    this.strokes = this.#instanced(STROKE_VERTEX, STROKE_FRAGMENT, [0, -1, 1, -1, 1, 1, 0, 1], {
      from: 3, to: 3, style: 4, colour: 4,
    });
    this.overs = this.#instanced(STROKE_VERTEX, STROKE_FRAGMENT, [0, -1, 1, -1, 1, 1, 0, 1], {
      from: 3, to: 3, style: 4, colour: 4,
    });
    this.marks = this.#instanced(MARK_VERTEX, MARK_FRAGMENT, [-1, -1, 1, -1, 1, 1, -1, 1], { at: 3, style: 2, colour: 4 });
    this.marks.material.uniforms.ground = { value: this.ground };
    this.ratio = 1;
  }

  resize(width, height, ratio) {
    this.ratio = ratio;
    this.renderer.setPixelRatio(ratio);
    this.renderer.setSize(width, height, false);
    this.shared.halfSize.value.set((width * ratio) / 2, (height * ratio) / 2);
    this.shared.ratio.value = ratio;
  }

  /** Takes a new answer's paths. */
  load(scene) {
    if (scene.shape !== this.shape) this.#build(scene);
    this.depth.load(scene);
    for (const ribbon of this.ribbons) this.#fill(ribbon, pointsOf(ribbon.what, scene));
  }

  draw(picture, camera, look) {
    this.#aim(camera);
    const { ink, phase, fade, show, glow } = look;
    const ground = ink.ground;
    this.renderer.setClearColor((Math.round(ground[0] * 255) << 16) | (Math.round(ground[1] * 255) << 8) | Math.round(ground[2] * 255), 1);
    this.ground.set(ground[0], ground[1], ground[2]);
    this.depth.see(camera, look);
    this.depth.order(picture, camera, look);
    const gapped = fade >= 1 || show.figure !== false;
    for (const ribbon of this.ribbons) {
      this.#layer(ribbon, ground, gapped);
      const u = ribbon.mesh.material.uniforms;
      const { kind } = ribbon.what;
      const light = lightOf(ribbon.what, look.lit);
      const style = light || (kind === 'was' ? { ...RIBBON.was, alpha: RIBBON.was.alpha * (show.was ?? 1) } : RIBBON[kind]);
      const colour = ink[style.ink] || (kind !== 'ghost' && ribbon.what.side && ink[ribbon.what.side]) || ink.plain;
      u.colour.value.set(colour[0], colour[1], colour[2], style.alpha);
      u.core.value = style.core * this.ratio;
      u.halo.value = style.halo * this.ratio;
      u.reach.value = Math.max(style.halo, style.core + 1) * this.ratio;
      const trail = ribbon.what.kind === 'trail';
      const whole = fade >= 1;
      const dashes = !trail || whole ? style[ribbon.what.side] : null;
      u.dashes.value.set(dashes ? dashes[0] : 0, dashes ? dashes[1] : 0);
      u.now.value = phase;
      u.fade.value = trail ? Math.min(1, fade) : 0;
      u.oldest.value = trail && whole ? OLDEST : 0;
      u.between.value = trail ? BETWEEN : 0;
      u.wraps.value = ribbon.what.closed ? 1 : 0;
      if (trail && ribbon.what.closed) {
        const parts = ribbon.rows - 1;
        const lit = Math.min(parts, Math.ceil(Math.min(1, fade) * parts) + 2);
        const last = Math.floor(phase * parts) + 1 + (phase < Math.min(1, fade) ? parts : 0);
        ribbon.mesh.geometry.setDrawRange(6 * Math.max(0, Math.min(last - lit, parts)), 6 * lit);
      } else if (trail) {
        // Of what plays once, that which is still lit.
        const parts = ribbon.rows - 1;
        const first = whole ? 0 : Math.max(0, Math.floor((phase - fade) * parts) - 1);
        ribbon.mesh.geometry.setDrawRange(6 * first, 6 * ((whole ? parts : Math.min(parts, Math.ceil(phase * parts) + 1)) - first));
      }
      u.glow.value = glow;
      ribbon.mesh.visible = show[kind] !== false || !!light;
    }
    this.group.children.sort((a, b) => a.renderOrder - b.renderOrder);
    this.#person(look);
    this.#strokes(this.strokes, picture, 0, picture.below);
    this.#strokes(this.overs, picture, picture.below, picture.strokes);
    this.#send(this.marks, { at: [picture.points, 3, 0], style: [picture.markStyle, 2, 0], colour: [picture.markColour, 4, 0] }, picture.marks);
    this.renderer.render(this.group, this.eye);
  }

  /** Reads pixels back, which waits until everything drawn so far is there: x, y from the top left in CSS pixels. */
  read(x, y, width, height) {
    const gl = this.gl;
    const r = this.ratio;
    const w = Math.max(1, Math.round(width * r));
    const h = Math.max(1, Math.round(height * r));
    const out = new Uint8Array(4 * w * h);
    gl.readPixels(Math.round(x * r), Math.round(this.canvas.height - (y + height) * r), w, h, gl.RGBA, gl.UNSIGNED_BYTE, out);
    return out;
  }

  dispose() {
    this.#clear();
    this.renderer.dispose();
  }

  #aim(camera) {
    const c = camera;
    const e = c.eye;
    const [r, u, a] = [c.right, c.up, c.ahead];
    const near = 0.05;
    const far = 60;
    const sx = c.across;
    const sy = c.upright;
    const ax = (2 * c.aside[0]) / c.width;
    const ay = (-2 * c.aside[1]) / c.height;
    const depthScale = (far + near) / (far - near);
    const depthShift = (-2 * far * near) / (far - near);
    const dot = (v) => v[0] * e[0] + v[1] * e[1] + v[2] * e[2];
    this.shared.toClip.value.set(
      sx * r[0] + ax * a[0], sx * r[1] + ax * a[1], sx * r[2] + ax * a[2], -sx * dot(r) - ax * dot(a),
      sy * u[0] + ay * a[0], sy * u[1] + ay * a[1], sy * u[2] + ay * a[2], -sy * dot(u) - ay * dot(a),
      depthScale * a[0], depthScale * a[1], depthScale * a[2], -depthScale * dot(a) + depthShift,
      a[0], a[1], a[2], -dot(a),
    );
  }

  #build(scene) {
    this.#clear();
    this.shape = scene.shape;
    if (scene.person) {
      this.figure = this.#corners(scene.person.limbs.length);
      this.group.add(this.figure);
    }
    for (const what of ribbonsOf(scene)) {
      const points = pointsOf(what, scene).length / 3;
      const rows = what.closed ? points + 1 : points;
      // Each point stands twice, once a side, with its neighbours read from the same buffer two places on and back.
      const buffer = new InterleavedBuffer(new Float32Array(3 * 2 * (rows + 2)), 3);
      buffer.setUsage(DynamicDrawUsage);
      const geometry = new BufferGeometry();
      geometry.setAttribute('before', new InterleavedBufferAttribute(buffer, 3, 0));
      geometry.setAttribute('position', new InterleavedBufferAttribute(buffer, 3, 6));
      geometry.setAttribute('after', new InterleavedBufferAttribute(buffer, 3, 12));
      const along = new Float32Array(4 * rows);
      // A trail's order runs twice round, so that what is lit is one stretch of it wherever the head stands.
      const rounds = what.kind === 'trail' && what.closed ? 2 : 1;
      const order = new Uint16Array(6 * (rows - 1) * rounds);
      for (let i = 0; i < rows; i++) {
        const phase = i / (what.closed ? points : points - 1);
        along.set([phase, -1, phase, 1], 4 * i);
        if (i < rows - 1) order.set([2 * i, 2 * i + 1, 2 * i + 2, 2 * i + 2, 2 * i + 1, 2 * i + 3], 6 * i);
      }
      if (rounds === 2) order.copyWithin(order.length / 2, 0, order.length / 2);
      geometry.setAttribute('along', new BufferAttribute(along, 2));
      const depth = new BufferAttribute(new Float32Array(4 * rows), 2);
      depth.setUsage(DynamicDrawUsage);
      geometry.setAttribute('depth', depth);
      geometry.setIndex(new BufferAttribute(order, 1));
      const material = this.#material(RIBBON_VERTEX, RIBBON_FRAGMENT, {
        colour: { value: new Vector4() },
        core: { value: 1 },
        halo: { value: 1 },
        reach: { value: 1 },
        dashes: { value: new Vector2() },
        now: { value: 0 },
        fade: { value: 0 },
        wraps: { value: 1 },
        glow: { value: 1 },
        oldest: { value: 0 },
        between: { value: 0 },
        gapped: { value: 0 },
        casing: { value: 0 },
      });
      const mesh = new Mesh(geometry, material);
      mesh.frustumCulled = false;
      let casing = null;
      if (what.kind === 'figure') {
        const uniforms = Object.fromEntries(Object.entries(material.uniforms).map(([name, { value }]) => [name, { value: value?.clone ? value.clone() : value }]));
        casing = new Mesh(geometry, this.#material(RIBBON_VERTEX, RIBBON_FRAGMENT, { ...uniforms, casing: { value: 1 } }));
        casing.frustumCulled = false;
        casing.renderOrder = 1;
        this.group.add(casing);
      }
      this.ribbons.push({ what, mesh, casing, buffer, points, rows, layered: -2 });
      this.group.add(mesh);
    }
    this.strokes.renderOrder = 20;
    this.marks.renderOrder = 21;
    this.overs.renderOrder = 22;
    this.group.add(this.strokes, this.marks, this.overs);
  }

  // Each limb twice, as what outlines it and as what fills it: a middle and the corners round it.
  #corners(limbs) {
    const polygons = 2 * limbs;
    const points = polygons * FAN;
    const geometry = new BufferGeometry();
    for (const [name, size] of /** @type {[string, number][]} */ ([['place', 2], ['colour', 4]])) {
      const attribute = new BufferAttribute(new Float32Array(size * points), size);
      attribute.setUsage(DynamicDrawUsage);
      geometry.setAttribute(name, attribute);
    }
    const order = [];
    for (let i = 0; i < polygons; i++) {
      const middle = FAN * i;
      for (let k = 0; k < CORNERS; k++) order.push(middle, middle + 1 + k, middle + 1 + ((k + 1) % CORNERS));
    }
    geometry.setIndex(order);
    const mesh = new Mesh(geometry, this.#material(PERSON_VERTEX, PERSON_FRAGMENT, {}));
    mesh.frustumCulled = false;
    return mesh;
  }

  #strokes(mesh, picture, first, end) {
    const { ends, strokeStyle, strokeColour } = picture;
    this.#send(mesh, { from: [ends, 6, 6 * first], to: [ends, 6, 6 * first + 3], style: [strokeStyle, 4, 4 * first], colour: [strokeColour, 4, 4 * first] }, end - first);
    const { array } = mesh.geometry.attributes.style;
    for (let i = 0; i < end - first; i++) array[4 * i] *= this.ratio;
  }

  // What of a ribbon gives way, is faint or has a gap beside it; and where it comes among the others.
  #layer(ribbon, ground, gapped) {
    const { mesh, casing, rows, what } = ribbon;
    const way = this.depth.wayOf(what);
    mesh.renderOrder = 2 + this.depth.rank(what);
    mesh.material.uniforms.gapped.value = gapped && way ? 1 : 0;
    if (casing) {
      casing.visible = gapped && !!way && way.before;
      casing.material.uniforms.colour.value.set(ground[0], ground[1], ground[2], 1);
      casing.material.uniforms.core.value = (RIBBON.trail.core + GAP) * this.ratio;
      casing.material.uniforms.reach.value = (RIBBON.trail.core + GAP + 1) * this.ratio;
    }
    const { depth } = mesh.geometry.attributes;
    const { array } = depth;
    // Nothing is sent anew while nothing has changed.
    const state = way ? this.depth.changed + (this.depth.body ? NaN : 0) : -1;
    if (ribbon.layered === state) return;
    ribbon.layered = state;
    for (let row = 0; row < rows; row++) {
      array[4 * row] = array[4 * row + 2] = way && way.rows === rows ? way.gaps[row] : 1e3;
      array[4 * row + 1] = array[4 * row + 3] = way && way.rows === rows ? way.seen[row] : 1;
    }
    depth.needsUpdate = true;
  }

  #person({ ink }) {
    const { figure } = this;
    const person = this.depth.body;
    if (figure) figure.visible = !!person;
    if (!person || !figure) return;
    const { place, colour } = figure.geometry.attributes;
    const soft = 0.5 / this.ratio;
    let at = 0;
    for (const group of person.groups) {
      for (const grown of [EDGE, 0]) {
        const [r, g, b] = grown ? ink.outline : filled(ink, group.arm);
        for (const limb of group.limbs) {
          person.middle(limb, place.array, 2 * at);
          person.outline(limb, grown + soft, place.array, 2 * (at + 1));
          for (let k = 0; k < FAN; k++) {
            const c = 4 * (at + k);
            colour.array[c] = r;
            colour.array[c + 1] = g;
            colour.array[c + 2] = b;
            colour.array[c + 3] = k === 0 ? 1 : 0;
          }
          at += FAN;
        }
      }
    }
    place.needsUpdate = true;
    colour.needsUpdate = true;
  }

  #fill(ribbon, xyz) {
    const { buffer, points, rows } = ribbon;
    const to = buffer.array;
    const closed = ribbon.what.closed;
    for (let row = -1; row <= rows; row++) {
      let i = row;
      if (closed) i = (row + points) % points;
      else i = Math.max(0, Math.min(points - 1, row));
      const o = 6 * (row + 1);
      const s = 3 * i;
      to[o] = to[o + 3] = xyz[s];
      to[o + 1] = to[o + 4] = xyz[s + 1];
      to[o + 2] = to[o + 5] = xyz[s + 2];
    }
    buffer.needsUpdate = true;
  }

  #send(mesh, sources, count) {
    const g = mesh.geometry;
    g.instanceCount = count;
    for (const name in sources) {
      const [from, stride, offset] = sources[name];
      const attribute = g.attributes[name];
      const size = attribute.itemSize;
      const to = attribute.array;
      for (let i = 0; i < count; i++) for (let k = 0; k < size; k++) to[size * i + k] = from[stride * i + offset + k];
      attribute.needsUpdate = true;
    }
  }

  #instanced(vertex, fragment, corners, attributes) {
    const geometry = new InstancedBufferGeometry();
    geometry.setAttribute('corner', new BufferAttribute(new Float32Array(corners), 2));
    for (const name in attributes) {
      const attribute = new InstancedBufferAttribute(new Float32Array(ROOM * attributes[name]), attributes[name]);
      attribute.setUsage(DynamicDrawUsage);
      geometry.setAttribute(name, attribute);
    }
    geometry.setIndex([0, 1, 2, 0, 2, 3]);
    const mesh = new Mesh(geometry, this.#material(vertex, fragment, {}));
    mesh.frustumCulled = false;
    return mesh;
  }

  #material(vertexShader, fragmentShader, uniforms) {
    return new RawShaderMaterial({
      glslVersion: GLSL3,
      vertexShader,
      fragmentShader,
      uniforms: { ...uniforms, ...this.shared },
      side: DoubleSide,
      depthTest: false,
      depthWrite: false,
      transparent: true,
      blending: CustomBlending,
      blendSrc: OneFactor,
      blendDst: OneMinusSrcAlphaFactor,
      blendSrcAlpha: OneFactor,
      blendDstAlpha: OneMinusSrcAlphaFactor,
      premultipliedAlpha: true,
    });
  }

  #clear() {
    for (const mesh of [...this.ribbons.flatMap((r) => (r.casing ? [r.mesh, r.casing] : [r.mesh])), ...(this.figure ? [this.figure] : [])]) {
      mesh.geometry.dispose();
      mesh.material.dispose();
    }
    this.ribbons = [];
    this.figure = null;
    this.group.clear();
  }
}
