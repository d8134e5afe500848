// Draws the same picture on a plain two-dimensional canvas, where there is no WebGL or where it is asked for.

import { BEHIND, Depth, GAP } from './depth.js';
import { CORNERS, filled } from './person.js';
import { EDGE, OLDEST, RIBBON, SHAPES, lightOf, pointsOf, ribbonsOf } from './picture.js';

const STEPS = 28; // shades of a fading trail
const FINE = 0.25; // rows

// How strongly a way is seen at a row: 0 in a gap where another passes before it, if its gaps are asked for; above 1 before the body.
/** @param {import('./depth.js').Way} way @param {number} at @param {boolean} gaps */
function shade(way, at, gaps) {
  const i = Math.min(way.rows - 1, Math.floor(at));
  const j = Math.min(way.rows - 1, i + 1);
  const f = at - i;
  if (gaps && way.interrupted && way.gaps[i] * (1 - f) + way.gaps[j] * f < 0) return 0;
  return way.seen[f < 0.5 ? i : j];
}

export class FlatDrawer {
  constructor(canvas) {
    this.canvas = canvas;
    this.paper = canvas.getContext('2d', { alpha: false });
    this.name = 'two-dimensional canvas';
    this.ribbons = [];
    this.shape = '';
    this.at = [0, 0, 0];
    this.depth = new Depth();
    this.limb = new Float32Array(2 * CORNERS);
  }

  resize(width, height, ratio) {
    this.ratio = ratio;
    this.canvas.width = Math.round(width * ratio);
    this.canvas.height = Math.round(height * ratio);
  }

  load(scene) {
    this.depth.load(scene);
    if (scene.shape !== this.shape) {
      this.shape = scene.shape;
      this.ribbons = ribbonsOf(scene).map((what) => ({ what }));
    }
    for (const ribbon of this.ribbons) {
      ribbon.xyz = pointsOf(ribbon.what, scene);
      const points = ribbon.xyz.length / 3;
      ribbon.rows = ribbon.what.closed ? points + 1 : points;
      if (!ribbon.line || ribbon.line.length !== 2 * ribbon.rows) ribbon.line = new Float32Array(2 * ribbon.rows);
    }
  }

  draw(picture, camera, look) {
    const { ink, phase, fade, show, glow } = look;
    const p = this.paper;
    p.setTransform(this.ratio, 0, 0, this.ratio, 0, 0);
    p.globalAlpha = 1;
    p.fillStyle = css(ink.ground, 1);
    p.fillRect(0, 0, camera.width, camera.height);
    p.lineJoin = 'round';
    p.lineCap = 'butt';
    this.depth.see(camera, look);
    this.depth.order(picture, camera, look);
    const nearest = [...this.ribbons].sort((a, b) => this.depth.rank(a.what) - this.depth.rank(b.what));
    this.#person(look);
    for (const ribbon of nearest) if (ribbon.what.kind === 'trail' && (fade >= 1 || show.figure !== false)) this.#casing(ribbon, camera, look);
    const whole = fade >= 1 || show.figure !== false;
    for (const ribbon of nearest) {
      const light = lightOf(ribbon.what, look.lit);
      if (show[ribbon.what.kind] === false && !light) continue;
      this.#project(ribbon, camera);
      const way = this.depth.wayOf(ribbon.what);
      const style = light || (ribbon.what.kind === 'was' ? { ...RIBBON.was, alpha: RIBBON.was.alpha * (show.was ?? 1) } : RIBBON[ribbon.what.kind]);
      const colour = ink[style.ink] || (ribbon.what.kind !== 'ghost' && ribbon.what.side && ink[ribbon.what.side]) || ink.plain;
      if (ribbon.what.kind === 'trail') this.#trail(ribbon, colour, phase, fade, style, glow, way, whole);
      else this.#line(ribbon, colour, style, way, whole);
    }
    this.#strokes(picture, camera, 0, picture.below);
    this.#marks(picture, camera, ink);
    this.#strokes(picture, camera, picture.below, picture.strokes);
  }

  read(x, y, width, height) {
    const r = this.ratio;
    return this.paper.getImageData(Math.round(x * r), Math.round(y * r), Math.max(1, Math.round(width * r)), Math.max(1, Math.round(height * r))).data;
  }

  dispose() {}

  // Trunk, then either arm, as silhouettes: their parts are outlined first and then filled, so that the outline stays only round the whole.
  #person(look) {
    const person = this.depth.body;
    if (!person) return;
    const p = this.paper;
    for (const group of person.groups) {
      for (const grown of [EDGE, 0]) {
        p.fillStyle = css(grown ? look.ink.outline : filled(look.ink, group.arm), 1);
        for (const limb of group.limbs) {
          person.outline(limb, grown, this.limb);
          p.beginPath();
          for (let k = 0; k < CORNERS; k++) p.lineTo(this.limb[2 * k], this.limb[2 * k + 1]);
          p.fill();
        }
      }
    }
  }

  #project(ribbon, camera) {
    const points = ribbon.xyz.length / 3;
    for (let row = 0; row < ribbon.rows; row++) {
      const i = 3 * (row % points);
      const seen = camera.project(ribbon.xyz[i], ribbon.xyz[i + 1], ribbon.xyz[i + 2], this.at);
      ribbon.line[2 * row] = seen ? this.at[0] : NaN;
      ribbon.line[2 * row + 1] = seen ? this.at[1] : NaN;
    }
  }

  // The ground's colour beside what of a light passes before the body.
  #casing(ribbon, camera, look) {
    const way = this.depth.wayOf(ribbon.what);
    if (!way || !way.before) return;
    this.#project(ribbon, camera);
    const p = this.paper;
    p.strokeStyle = css(look.ink.ground, 1);
    p.lineWidth = 2 * (RIBBON.trail.core + GAP);
    p.beginPath();
    this.#stretch(ribbon.line, ribbon.rows - 1, 0, ribbon.rows - 1, (/** @type {number} */ at) => shade(way, at, true) > 1);
    p.stroke();
  }

  #line(ribbon, colour, style, way, whole) {
    const p = this.paper;
    const l = ribbon.line;
    const [dashes, share] = style[ribbon.what.side] || [0, 1];
    p.lineWidth = 2 * style.core;
    for (const strength of way && way.faint ? [1, BEHIND] : [1]) {
      p.strokeStyle = css(colour, style.alpha * strength);
      p.beginPath();
      let down = false;
      for (let row = 0; row < ribbon.rows; row++) {
        const part = 2 * Math.abs((((row / (ribbon.rows - 1)) * dashes) % 1) - 0.5);
        const drawn = (!dashes || part < share) && (!way || Math.min(1, shade(way, row, whole)) === strength);
        if (drawn && down) p.lineTo(l[2 * row], l[2 * row + 1]);
        else if (drawn) p.moveTo(l[2 * row], l[2 * row + 1]);
        down = drawn;
      }
      p.stroke();
    }
  }

  #trail(ribbon, colour, phase, fade, style, glow, way, whole) {
    const p = this.paper;
    const l = ribbon.line;
    const last = ribbon.rows - 1;
    const head = phase * last;
    const lit = Math.min(1, fade);
    const length = lit * last;
    const oldest = fade >= 1 ? OLDEST : 0;
    const [dashes, share] = (fade >= 1 && style[ribbon.what.side]) || [0, 1];
    if (dashes) p.setLineDash(this.#dashes(l, last, dashes, share));
    p.lineCap = 'butt';
    for (let step = STEPS - 1; step >= 0; step--) {
      const young = (step / STEPS) * length;
      const old = ((step + 1) / STEPS) * length;
      const left = Math.max(oldest, Math.pow(Math.max(0, 1 - (young + old) / 2 / (lit * last)), 1.5));
      if (left < 0.01) continue;
      for (const strength of way && way.faint ? [1, BEHIND] : [1]) {
        const plain = !way || !(way.faint || (way.interrupted && whole));
        const shown = plain ? null : (/** @type {number} */ at) => Math.min(1, shade(way, at, whole)) === strength;
        p.beginPath();
        if (ribbon.what.closed) this.#stretch(l, last, head - old, head - young, shown);
        else if (head - young > 0) this.#stretch(l, last, Math.max(0, head - old), head - young, shown);
        else continue;
        if (glow > 0) {
          p.globalCompositeOperation = 'lighter';
          p.strokeStyle = css(colour, 0.13 * left * strength);
          p.lineWidth = 11;
          p.stroke();
        }
        p.strokeStyle = css(glow > 0 ? whitened(colour, 0.45 * left * strength) : colour, left * strength);
        p.lineWidth = 2 * style.core;
        p.stroke();
        p.globalCompositeOperation = 'source-over';
      }
    }
    p.setLineDash([]);
  }

  // Dashes as long on the screen as so many a cycle are on an even path.
  #dashes(l, last, count, share) {
    let length = 0;
    for (let row = 0; row < last; row++) length += Math.hypot(l[2 * row + 2] - l[2 * row], l[2 * row + 3] - l[2 * row + 1]) || 0;
    const one = Math.max(2, length / count);
    return [one * share, one * (1 - share)];
  }

  // The line from one place to another, counted in rows and wrapped round; where it is asked, only what is shown of it.
  #stretch(l, last, from, to, shown = null) {
    const p = this.paper;
    const wrapped = (row) => (row === last ? last : ((row % last) + last) % last);
    const point = (row) => {
      const at = wrapped(row);
      const i = Math.floor(at);
      const f = at - i;
      const j = Math.min(last, i + 1);
      return [l[2 * i] * (1 - f) + l[2 * j] * f, l[2 * i + 1] * (1 - f) + l[2 * j + 1] * f];
    };
    if (!shown) {
      p.moveTo(...point(from));
      for (let row = Math.ceil(from); row < to; row++) p.lineTo(...point(row));
      p.lineTo(...point(to));
      return;
    }
    // Gaps are finer than rows.
    for (let row = from; row < to; row += FINE) {
      if (!shown(wrapped(row + FINE / 2))) continue;
      p.moveTo(...point(row));
      p.lineTo(...point(Math.min(to, row + FINE)));
    }
  }

  #strokes(picture, camera, first, end) {
    const p = this.paper;
    const b = [0, 0, 0];
    for (let i = first; i < end; i++) {
      const e = picture.ends;
      if (!camera.project(e[6 * i], e[6 * i + 1], e[6 * i + 2], this.at)) continue;
      if (!camera.project(e[6 * i + 3], e[6 * i + 4], e[6 * i + 5], b)) continue;
      const s = picture.strokeStyle;
      const c = picture.strokeColour.subarray(4 * i, 4 * i + 4);
      p.strokeStyle = css(c, c[3]);
      p.setLineDash(s[4 * i + 1] > 0 ? [s[4 * i + 1], s[4 * i + 2]] : []);
      p.lineDashOffset = s[4 * i + 3];
      p.lineWidth = 2 * s[4 * i];
      p.beginPath();
      p.moveTo(this.at[0], this.at[1]);
      p.lineTo(b[0], b[1]);
      p.stroke();
    }
    p.setLineDash([]);
    p.lineDashOffset = 0;
  }

  #marks(picture, camera, ink) {
    const p = this.paper;
    for (let i = 0; i < picture.marks; i++) {
      const q = picture.points;
      if (!camera.project(q[3 * i], q[3 * i + 1], q[3 * i + 2], this.at)) continue;
      const [x, y] = this.at;
      const r = picture.markStyle[2 * i];
      const shape = picture.markStyle[2 * i + 1];
      const c = picture.markColour.subarray(4 * i, 4 * i + 4);
      const hollow = shape === SHAPES.ring || shape === SHAPES.square;
      p.beginPath();
      if (shape === SHAPES.halo) {
        p.arc(x, y, r, 0, 2 * Math.PI);
        p.strokeStyle = css(c, c[3]);
        p.lineWidth = 2.2;
        p.stroke();
        continue;
      }
      if (shape === SHAPES.cross) {
        p.moveTo(x - r, y);
        p.lineTo(x + r, y);
        p.moveTo(x, y - r);
        p.lineTo(x, y + r);
        p.strokeStyle = css(c, c[3]);
        p.lineWidth = 1.4;
        p.stroke();
        continue;
      }
      const inner = hollow ? r - 1.2 : r;
      if (shape === SHAPES.diamond) {
        p.moveTo(x - inner * 1.25, y);
        p.lineTo(x, y - inner * 1.25);
        p.lineTo(x + inner * 1.25, y);
        p.lineTo(x, y + inner * 1.25);
        p.closePath();
      } else if (shape === SHAPES.square) {
        p.rect(x - inner * 0.86, y - inner * 0.86, inner * 1.72, inner * 1.72);
      } else {
        p.arc(x, y, inner, 0, 2 * Math.PI);
      }
      p.globalAlpha = c[3];
      p.strokeStyle = css(ink.ground, 0.8);
      p.lineWidth = hollow ? 5.4 : 3.2;
      p.stroke();
      p.fillStyle = css(hollow ? ink.ground : c, 1);
      p.fill();
      p.globalAlpha = 1;
      if (hollow) {
        p.strokeStyle = css(c, c[3]);
        p.lineWidth = 2.4;
        p.stroke();
      }
    }
  }
}

const written = new Map();

function css(c, alpha) {
  const key = ((Math.round(c[0] * 255) << 16) | (Math.round(c[1] * 255) << 8) | Math.round(c[2] * 255)) * 101 + Math.round(alpha * 100);
  let text = written.get(key);
  if (!text) {
    if (written.size > 4000) written.clear();
    text = `rgba(${Math.round(c[0] * 255)},${Math.round(c[1] * 255)},${Math.round(c[2] * 255)},${Math.round(alpha * 100) / 100})`;
    written.set(key, text);
  }
  return text;
}

function whitened(c, share) {
  return [c[0] + (1 - c[0]) * share, c[1] + (1 - c[1]) * share, c[2] + (1 - c[2]) * share];
}
