// The performer as the stage draws it: rounded limbs that hang between balls and go with the hands. As seen, a limb is what lies
// between its balls' discs: in each direction it reaches as far as the disc that reaches farthest. Filled anew each frame into arrays
// that stay.

import { LEVEL } from './crossings.js';

/** @typedef {import('./camera.js').Camera} Camera */

/** Corners of a limb's outline. */
export const CORNERS = 24;

const STRIDE = 7; // prime to the corners, so that the first few asked lie all round
const SLOPE = 7; // numbers kept of a limb's plane
const SLOPES = 1; // by how much balls have to stand apart before they say how a limb slopes, pixels

/** How much of the outline's ink is in the fill of an arm, so that it shows before the trunk (our choice). */
const ARM = 0.16;

const COS = Array.from({ length: CORNERS }, (_, k) => Math.cos((2 * Math.PI * k) / CORNERS));
const SIN = Array.from({ length: CORNERS }, (_, k) => Math.sin((2 * Math.PI * k) / CORNERS));

export class Person {
  constructor() {
    this.limbs = /** @type {{ group: string, balls: number[] }[]} */ ([]);
    this.groups = /** @type {{ arm: boolean, limbs: number[], near: number }[]} */ ([]);
    this.instants = 1;
    this.radii = new Float32Array(0);
    this.still = new Float32Array(0); // of balls that never move
    this.moves = /** @type {(Float32Array | null)[]} */ ([]);
    this.seen = new Float32Array(0); // x, y in pixels, depth in metres and radius in pixels of each ball
    this.reach = new Float32Array(0); // of each limb in every way, pixels
    this.slope = new Float32Array(0); // of each limb: middle, how near it is there, how it slopes, least and most
    this.whole = false; // nothing of it is behind the onlooker
    this.spot = [0, 0, 0];
  }

  /**
   * Takes over what the server sends.
   * @param {any} item
   * @param {(base64: string, into: Float32Array) => void} unpack
   */
  read(item, unpack) {
    const count = item.balls.length;
    this.instants = item.instants;
    if (this.radii.length !== count) {
      this.radii = new Float32Array(count);
      this.still = new Float32Array(3 * count);
      this.seen = new Float32Array(4 * count);
      this.moves = [];
    }
    item.balls.forEach((/** @type {any} */ ball, /** @type {number} */ i) => {
      this.radii[i] = ball.radius_m;
      if (ball.at) {
        this.still.set(ball.at, 3 * i);
        this.moves[i] = null;
        return;
      }
      const kept = this.moves[i];
      const xyz = kept && kept.length === 3 * item.instants ? kept : new Float32Array(3 * item.instants);
      unpack(ball.moves, xyz);
      this.moves[i] = xyz;
    });
    this.limbs = item.limbs;
    const groups = new Map();
    this.limbs.forEach((limb, i) => {
      if (!groups.has(limb.group)) groups.set(limb.group, { arm: limb.group !== 'trunk', limbs: [], near: 0 });
      groups.get(limb.group).limbs.push(i);
    });
    this.groups = [...groups.values()];
  }

  /** Where its eyes are at the start: at the front of the topmost ball, the skull, and a little below its middle. */
  eyes() {
    let eyes = [0, -Infinity, 0];
    let top = -Infinity;
    this.radii.forEach((r, ball) => {
      const [, y, z] = this.moves[ball] ?? this.still.subarray(3 * ball, 3 * ball + 3);
      if (y + r <= top) return;
      top = y + r;
      eyes = [0, y - 0.3 * r, z + r];
    });
    return eyes;
  }

  /**
   * Where all of it is seen at a phase, and which of trunk and arms is nearer; the farthest comes first.
   * @param {number} phase
   * @param {boolean} closed
   * @param {Camera} camera
   */
  look(phase, closed, camera) {
    const n = this.instants;
    const share = phase * n;
    const i = Math.min(n - 1, Math.floor(share));
    const f = share - i;
    const j = closed ? (i + 1) % n : Math.min(n - 1, i + 1);
    this.whole = true;
    for (let ball = 0; ball < this.radii.length; ball++) {
      const xyz = this.moves[ball];
      let x = this.still[3 * ball];
      let y = this.still[3 * ball + 1];
      let z = this.still[3 * ball + 2];
      if (xyz) {
        x = xyz[3 * i] * (1 - f) + xyz[3 * j] * f;
        y = xyz[3 * i + 1] * (1 - f) + xyz[3 * j + 1] * f;
        z = xyz[3 * i + 2] * (1 - f) + xyz[3 * j + 2] * f;
      }
      if (!camera.project(x, y, z, this.spot)) this.whole = false;
      this.seen.set(this.spot, 4 * ball);
      this.seen[4 * ball + 3] = (this.radii[ball] * camera.scale) / this.spot[2];
    }
    this.limbs.forEach((limb, at) => this.#seen(limb.balls, at));
    this.#order();
  }

  // Which of trunk and arms lies over which where they overlap; the farthest comes first.
  #order() {
    for (const group of this.groups) {
      group.near = 0;
      for (const limb of group.limbs) group.near += this.slope[SLOPE * limb + 2] / group.limbs.length;
    }
    const left = [...this.groups];
    this.groups.length = 0;
    while (left.length > 0) {
      let best = 0;
      let least = Infinity;
      left.forEach((group, i) => {
        const over = left.filter((other) => other !== group && this.#beyond(group, other) - this.#beyond(other, group) > 0).length;
        if (over < least || (over === least && group.near < left[best].near)) [best, least] = [i, over];
      });
      this.groups.push(...left.splice(best, 1));
    }
  }

  // How much nearer one group is than another where it lies on it, summed.
  /** @param {{ limbs: number[] }} group @param {{ limbs: number[] }} other */
  #beyond(group, other) {
    let sum = 0;
    for (const limb of group.limbs) {
      const { balls } = this.limbs[limb];
      const a = 4 * balls[0];
      const b = 4 * balls[balls.length - 1];
      for (let share = 0.125; share < 1; share += 0.25) {
        const x = this.seen[a] + share * (this.seen[b] - this.seen[a]);
        const y = this.seen[a + 1] + share * (this.seen[b + 1] - this.seen[a + 1]);
        const near = -this.seen[a + 2] - share * (this.seen[b + 2] - this.seen[a + 2]);
        for (const under of other.limbs) if (this.#covers(under, x, y)) sum += near - this.#near(under, x, y);
      }
    }
    return sum;
  }

  // How far a limb reaches in every way, and the plane that goes best through its balls' middles.
  /** @param {number[]} balls @param {number} limb */
  #seen(balls, limb) {
    if (this.reach.length !== CORNERS * this.limbs.length) {
      this.reach = new Float32Array(CORNERS * this.limbs.length);
      this.slope = new Float32Array(SLOPE * this.limbs.length);
    }
    const { seen } = this;
    let [x, y, near] = [0, 0, 0];
    for (const ball of balls) {
      x += seen[4 * ball] / balls.length;
      y += seen[4 * ball + 1] / balls.length;
      near -= seen[4 * ball + 2] / balls.length;
    }
    let [xx, yy, xy, xn, yn, least, most] = [SLOPES, SLOPES, 0, 0, 0, near, near];
    for (const ball of balls) {
      const dx = seen[4 * ball] - x;
      const dy = seen[4 * ball + 1] - y;
      const dn = -seen[4 * ball + 2] - near;
      xx += dx * dx;
      yy += dy * dy;
      xy += dx * dy;
      xn += dx * dn;
      yn += dy * dn;
      least = Math.min(least, near + dn);
      most = Math.max(most, near + dn);
    }
    const det = xx * yy - xy * xy;
    this.slope.set([x, y, near, (xn * yy - yn * xy) / det, (yn * xx - xn * xy) / det, least, most], SLOPE * limb);
    for (let k = 0; k < CORNERS; k++) {
      let far = -Infinity;
      for (const ball of balls) far = Math.max(far, seen[4 * ball] * COS[k] + seen[4 * ball + 1] * SIN[k] + seen[4 * ball + 3]);
      this.reach[CORNERS * limb + k] = far;
    }
  }

  /** @param {number} limb @param {number} x @param {number} y */
  #covers(limb, x, y) {
    const at = CORNERS * limb;
    for (let i = 0; i < CORNERS; i++) {
      const k = (i * STRIDE) % CORNERS;
      if (x * COS[k] + y * SIN[k] > this.reach[at + k]) return false;
    }
    return true;
  }

  /** @param {number} limb @param {number} x @param {number} y */
  #near(limb, x, y) {
    const s = this.slope;
    const i = SLOPE * limb;
    return Math.max(s[i + 5], Math.min(s[i + 6], s[i + 2] + s[i + 3] * (x - s[i]) + s[i + 4] * (y - s[i + 1])));
  }

  /**
   * Whether a place is before the body as it was looked at last, behind it or beside it: what is seen there of the body is what lies
   * over the rest. The painter of pictures does the same (Silhouette.java).
   *
   * @param {number} x pixels
   * @param {number} y pixels
   * @param {number} near metres toward the onlooker
   * @returns {number} 1 before, -1 behind, 0 beside
   */
  side(x, y, near) {
    for (let g = this.groups.length - 1; g >= 0; g--) {
      let surface = -Infinity;
      for (const limb of this.groups[g].limbs) if (this.#covers(limb, x, y)) surface = Math.max(surface, this.#near(limb, x, y));
      if (surface > -Infinity) return near < surface - LEVEL ? -1 : 1;
    }
    return 0;
  }

  /**
   * A place inside a limb as it was looked at last, x and y in pixels: the middle of its balls.
   * @param {number} limb
   * @param {Float32Array} into
   * @param {number} at
   */
  middle(limb, into, at) {
    const { balls } = this.limbs[limb];
    into[at] = into[at + 1] = 0;
    for (const ball of balls) {
      into[at] += this.seen[4 * ball] / balls.length;
      into[at + 1] += this.seen[4 * ball + 1] / balls.length;
    }
  }

  /**
   * Corners of a limb's outline as it was looked at last, x and y in pixels; all of it larger all round by so many pixels.
   * @param {number} limb
   * @param {number} grown
   * @param {Float32Array} into
   * @param {number} at
   */
  outline(limb, grown, into, at = 0) {
    const { balls } = this.limbs[limb];
    for (let k = 0; k < CORNERS; k++) {
      let most = -Infinity;
      for (const ball of balls) {
        const r = this.seen[4 * ball + 3] + grown;
        const x = this.seen[4 * ball];
        const y = this.seen[4 * ball + 1];
        const reach = x * COS[k] + y * SIN[k] + r;
        if (reach > most) {
          most = reach;
          into[at + 2 * k] = x + r * COS[k];
          into[at + 2 * k + 1] = y + r * SIN[k];
        }
      }
    }
  }
}

/**
 * What a part of it is filled with.
 * @param {{ body: number[], outline: number[] }} ink
 * @param {boolean} arm
 */
export function filled(ink, arm) {
  return arm ? ink.body.map((c, i) => c + ARM * (ink.outline[i] - c)) : ink.body;
}
