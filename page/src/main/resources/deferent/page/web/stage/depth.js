// What passes before what at a moment, as the camera sees it: where trails give way to nearer ones, what is seen faintly through the
// body, which pieces of the cords are seen, and which of hands and heads lies over which. Both ways of drawing ask it, once a frame.

import { crossings } from './crossings.js';
import { RIBBON, ROOM, SHAPES } from './picture.js';
import { strands } from './strand.js';

/** How far what is nearer keeps what is farther off, pixels (our choice). */
export const GAP = 3.2;

/** How much of a light, and of a mark, is seen through the body (our choice). */
export const BEHIND = 0.3;
const SHADE = 0.4;

const FAR = 1e3;
const KINDS = ['fixed', 'ghost', 'path', 'figure', 'was', 'best', 'trail']; // as they are laid over each other
const HEADS = ['left.head', 'right.head'];

/** @typedef {import('./camera.js').Camera} Camera */
/** @typedef {import('./picture.js').Picture} Picture */
/** @typedef {import('./strand.js').Spot} Spot */
/** @typedef {import('./strand.js').Strand} Strand */
/** @typedef {[Spot, Spot] | null} Ends a cord's hand and head as seen; none of what is behind the onlooker */
/** @typedef {{ i: number, rank: number, side: number, at: [number, number, number], reach: number }} Mark */

/**
 * A moving point's whole way as seen. `gaps` says how far each point is from the nearest gap, pixels, less than 0 in one; `seen` is
 * 2 before the body, 1 beside it and BEHIND behind it.
 *
 * @typedef {{ rows: number, line: Float32Array, near: Float32Array, gaps: Float32Array, seen: Float32Array, interrupted: boolean,
 *   faint: boolean, before: boolean }} Way
 */

export class Depth {
  /** @type {any} */
  #scene = null;
  #version = '';
  #farther = 'right'; // whose head is farther off on the whole
  #spot = [0, 0, 0];
  #kept = { ends: new Float32Array(6 * ROOM), style: new Float32Array(4 * ROOM), colour: new Float32Array(4 * ROOM), side: new Int8Array(ROOM) };
  #marks = { points: new Float32Array(3 * ROOM), style: new Float32Array(2 * ROOM), colour: new Float32Array(4 * ROOM), side: new Int8Array(ROOM) };

  constructor() {
    this.ways = new Map(); // by track
    /** @type {import('./person.js').Person | null} */
    this.body = null; // who stands in the way, where somebody is seen
    this.changed = 0; // another number whenever the ways' gaps are others
  }

  /** @param {any} scene */
  load(scene) {
    this.#scene = scene;
    this.#version = '';
  }

  /**
   * Looks at everything but the picture's strokes and marks.
   *
   * @param {Camera} camera
   * @param {{ phase: number, show: any }} look
   */
  see(camera, { phase, show }) {
    const scene = this.#scene;
    this.body = null;
    if (!scene) return; // nothing has been answered yet
    const { person } = scene;
    if (person && show.body !== false) {
      person.look(phase, scene.closed, camera);
      if (person.whole) this.body = person;
    }
    const version = scene.version + ' ' + camera.version;
    if (version !== this.#version) {
      this.#version = version;
      this.#cross(camera);
    }
    for (const way of this.ways.values()) this.#through(way);
  }

  /** The way a ribbon runs along, as seen; none of what is no hand's or head's own. @param {any} what */
  wayOf(what) {
    return what.kind === 'figure' || what.kind === 'trail' || what.kind === 'path' ? (this.ways.get(what.track) ?? null) : null;
  }

  /** Where a ribbon comes among the others: kind by kind as ever, and of two heads' the farther first. @param {any} what */
  rank(what) {
    const kind = KINDS.indexOf(what.kind);
    const far = this.#farther === what.side && (what.kind === 'figure' || what.kind === 'trail') ? 0 : 0.5;
    return kind + far;
  }

  // Where the ways lie on the paper, and where they give way.
  /** @param {Camera} camera */
  #cross(camera) {
    const scene = this.#scene;
    this.changed++;
    for (const track of Object.keys(scene.tracks)) {
      if (!/^(left|right)\./.test(track)) continue;
      const xyz = scene.tracks[track];
      const points = xyz.length / 3;
      const rows = scene.closed ? points + 1 : points;
      let way = this.ways.get(track);
      if (!way || way.rows !== rows) {
        way = { rows, line: new Float32Array(2 * rows), near: new Float32Array(rows), gaps: new Float32Array(rows), seen: new Float32Array(rows) };
        this.ways.set(track, way);
      }
      for (let row = 0; row < rows; row++) {
        const i = 3 * (row % points);
        const seen = camera.project(xyz[i], xyz[i + 1], xyz[i + 2], this.#spot);
        way.line[2 * row] = seen ? this.#spot[0] : NaN;
        way.line[2 * row + 1] = seen ? this.#spot[1] : NaN;
        way.near[row] = seen ? -this.#spot[2] : NaN;
      }
      way.gaps.fill(FAR);
      way.interrupted = false;
    }
    const lanes = HEADS.map((track) => this.ways.get(track));
    const [left, right] = lanes.map(({ near }) => near.reduce((/** @type {number} */ sum, /** @type {number} */ n) => sum + (n || 0), 0) / near.length);
    this.#farther = left < right - 1e-3 ? 'left' : 'right';
    for (const cut of crossings(lanes, camera.width, camera.height)) interrupt(lanes[cut.lane], cut, scene.closed);
  }

  /** @param {Way} way */
  #through(way) {
    const { body } = this;
    way.faint = way.before = false;
    if (!body) {
      way.seen.fill(1);
      return;
    }
    for (let row = 0; row < way.rows; row++) {
      const side = body.side(way.line[2 * row], way.line[2 * row + 1], way.near[row]);
      way.seen[row] = side < 0 ? BEHIND : side > 0 ? 2 : 1;
      way.faint ||= side < 0;
      way.before ||= side > 0;
    }
  }

  /**
   * Cuts a picture's cords and puts its hands and heads in order, the farthest first.
   *
   * @param {Picture} picture
   * @param {Camera} camera
   * @param {{ ink: { ground: number[] } }} look
   */
  order(picture, camera, { ink }) {
    const marks = this.#seenMarks(picture, camera);
    this.#cords(picture, camera, marks, ink.ground);
  }

  /** @param {Picture} picture @param {Camera} camera @returns {Mark[]} */
  #seenMarks(picture, camera) {
    const kept = this.#marks;
    kept.points.set(picture.points);
    kept.style.set(picture.markStyle);
    kept.colour.set(picture.markColour);
    kept.side.set(picture.markSide);
    /** @type {Mark[]} */
    const all = [];
    for (let i = 0; i < picture.marks; i++) {
      const seen = camera.project(kept.points[3 * i], kept.points[3 * i + 1], kept.points[3 * i + 2], this.#spot);
      const near = seen ? -this.#spot[2] : -FAR;
      // What is no hand or head keeps its place: below all, or, as what rings them, above.
      const rank = kept.side[i] !== 0 ? 1 : kept.style[2 * i + 1] === SHAPES.halo ? 2 : 0;
      all.push({ i, rank, side: kept.side[i], at: [this.#spot[0], this.#spot[1], near], reach: kept.style[2 * i] });
    }
    all.sort((a, b) => a.rank - b.rank || (a.rank === 1 ? Math.round(1000 * (a.at[2] - b.at[2])) : 0) || a.i - b.i);
    all.forEach(({ i, side, at }, to) => {
      picture.points.set(kept.points.subarray(3 * i, 3 * i + 3), 3 * to);
      picture.markStyle.set(kept.style.subarray(2 * i, 2 * i + 2), 2 * to);
      picture.markColour.set(kept.colour.subarray(4 * i, 4 * i + 4), 4 * to);
      picture.markSide[to] = side;
      if (side !== 0 && this.body && this.body.side(...at) < 0) picture.markColour[4 * to + 3] *= SHADE;
    });
    return all;
  }

  /** @param {Picture} picture @param {Camera} camera @param {Mark[]} marks @param {number[]} ground */
  #cords(picture, camera, marks, ground) {
    const kept = this.#kept;
    const count = picture.strokes;
    kept.ends.set(picture.ends);
    kept.style.set(picture.strokeStyle);
    kept.colour.set(picture.strokeColour);
    kept.side.set(picture.strokeSide);
    /** @type {Ends[]} */
    const spots = [];
    for (let i = 0; i < count; i++) {
      const hand = kept.side[i] === 0 ? null : this.#at(camera, 6 * i);
      const head = hand && this.#at(camera, 6 * i + 3);
      spots.push(hand && head ? [hand, head] : null);
    }
    picture.strokes = 0;
    /** @type {{ i: number, piece: Strand, ends: [Spot, Spot] }[]} */
    const over = [];
    for (let i = 0; i < count; i++) {
      const ends = spots[i];
      if (!ends || (!this.body && !this.#meets(spots, marks, i))) {
        this.#put(picture, i, 0, 1, 0, null);
        continue;
      }
      // A slack cord comes in many strokes: only a taut one has another to cross.
      const side = kept.side[i];
      const others = spots.filter((other, k) => other && kept.side[k] === -side);
      const crossed = (others.length === 1 && others[0]) || [];
      const foreign = marks.filter((mark) => mark.side === -side);
      const own = Math.max(0, ...marks.filter((mark) => mark.side === side).map((mark) => mark.reach));
      for (const piece of strands(ends[0], ends[1], this.body, foreign, crossed, own, GAP + kept.style[4 * i])) {
        if (piece.above) over.push({ i, piece, ends });
        else this.#piece(picture, i, piece, ends, ground);
      }
    }
    picture.below = picture.strokes;
    for (const { i, piece, ends } of over) this.#piece(picture, i, piece, ends, ground);
  }

  // Whether anything of the other side is near a cord on the screen, so that it is worth looking closely.
  /** @param {Ends[]} spots @param {Mark[]} marks @param {number} i */
  #meets(spots, marks, i) {
    const side = this.#kept.side[i];
    const [a, b] = /** @type {[Spot, Spot]} */ (spots[i]);
    const left = Math.min(a[0], b[0]);
    const right = Math.max(a[0], b[0]);
    const top = Math.min(a[1], b[1]);
    const foot = Math.max(a[1], b[1]);
    for (const { side: whose, at, reach } of marks) {
      const r = reach + GAP;
      if (whose === -side && at[0] > left - r && at[0] < right + r && at[1] > top - r && at[1] < foot + r) return true;
    }
    return spots.some((ends, k) => {
      if (!ends || this.#kept.side[k] !== -side) return false;
      const [c, d] = ends;
      return Math.min(c[0], d[0]) < right && Math.max(c[0], d[0]) > left && Math.min(c[1], d[1]) < foot && Math.max(c[1], d[1]) > top;
    });
  }

  /** @param {Picture} picture @param {number} i @param {Strand} piece @param {[Spot, Spot]} ends @param {number[]} ground */
  #piece(picture, i, { from, to, cased }, [hand, head], ground) {
    const gone = from * Math.hypot(head[0] - hand[0], head[1] - hand[1]);
    // Shares on the screen are not those in space where one end is nearer.
    const inSpace = (/** @type {number} */ share) => {
      const a = -hand[2];
      const b = -head[2];
      return (share * a) / (share * a + (1 - share) * b);
    };
    if (cased) this.#put(picture, i, inSpace(from), inSpace(to), 0, ground);
    this.#put(picture, i, inSpace(from), inSpace(to), gone, null);
  }

  /** @param {Picture} picture @param {number} i @param {number} from @param {number} to @param {number} gone @param {number[] | null} ground */
  #put(picture, i, from, to, gone, ground) {
    if (picture.strokes >= ROOM) return;
    const kept = this.#kept;
    const n = picture.strokes++;
    for (let k = 0; k < 3; k++) {
      const a = kept.ends[6 * i + k];
      const b = kept.ends[6 * i + 3 + k];
      picture.ends[6 * n + k] = a + from * (b - a);
      picture.ends[6 * n + 3 + k] = a + to * (b - a);
    }
    picture.strokeStyle.set(kept.style.subarray(4 * i, 4 * i + 4), 4 * n);
    picture.strokeColour.set(kept.colour.subarray(4 * i, 4 * i + 4), 4 * n);
    picture.strokeStyle[4 * n + 3] = gone;
    picture.strokeSide[n] = kept.side[i];
    if (!ground) return;
    picture.strokeStyle[4 * n] += GAP;
    picture.strokeStyle[4 * n + 1] = picture.strokeStyle[4 * n + 2] = 0;
    picture.strokeColour.set([...ground, 1], 4 * n);
  }

  /** @param {Camera} camera @param {number} k @returns {Spot | null} */
  #at(camera, k) {
    const e = this.#kept.ends;
    return camera.project(e[k], e[k + 1], e[k + 2], this.#spot) ? [this.#spot[0], this.#spot[1], -this.#spot[2]] : null;
  }
}

// A way's gap: each point learns how far it is off.
/** @param {Way} way @param {import('./crossings.js').Cut} cut @param {boolean} closed */
function interrupt(way, cut, closed) {
  const { line, rows, gaps } = way;
  const last = rows - 1;
  const i = Math.floor(cut.at);
  const step = Math.hypot(line[2 * i + 2] - line[2 * i], line[2 * i + 3] - line[2 * i + 1]);
  const half = Math.max((RIBBON.trail.core + GAP) / cut.sine, 0.75 * step);
  way.interrupted = true;
  for (const along of [1, -1]) {
    let off = along > 0 ? (i + 1 - cut.at) * step : (cut.at - i) * step;
    let row = along > 0 ? i + 1 : i;
    for (let k = 0; k < last; k++) {
      gaps[row] = Math.min(gaps[row], off - half);
      if (off > half + 3 * step + 12) break;
      let next = row + along;
      if (next < 0 || next > last) {
        if (!closed) break;
        // The first point stands again as the last.
        row = next < 0 ? last : 0;
        gaps[row] = Math.min(gaps[row], off - half);
        next = row + along;
      }
      off += Math.hypot(line[2 * next] - line[2 * row], line[2 * next + 1] - line[2 * row + 1]);
      row = next;
    }
  }
}
