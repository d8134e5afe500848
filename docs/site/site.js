'use strict';
(() => {
const module0 = (() => {
// Where a line passes before another, or before itself, as somebody sees it. At such a place the farther line gives way and is
// interrupted, as in drawings of knots. The painter of pictures does the same (Crossings.java), step by step; a test holds the two
// together.

/** What is nearer by no more than this counts as equally near, metres. */
const LEVEL = 0.01;

/** Sine of the least angle under which two lines cross: below it they run along each other. */
const ALONG = 0.2;

const CELL = 6; // pixels
const LONG = 200; // pixels

/** @typedef {{ line: Float32Array, near: Float32Array, rows: number }} Lane points as seen: x and y in pixels, nearness in metres */
/** @typedef {{ lane: number, at: number, over: number, sine: number }} Cut where a lane gives way, in points from its start; to which */

let latest = new Int32Array(0);
let entered = new Int32Array(4096);
let before = new Int32Array(4096);

/**
 * The places on the paper at which lanes give way to what passes before them.
 *
 * @param {Lane[]} lanes
 * @param {number} width of the paper, pixels
 * @param {number} height
 * @param {number} long segments longer than this pass close by the eye and are left out, pixels
 * @returns {Cut[]}
 */
function crossings(lanes, width, height, long = LONG) {
  /** @type {Cut[]} */
  const cuts = [];
  let length = 0;
  let all = 0;
  for (const { line, rows } of lanes) {
    for (let i = 0; i + 1 < rows; i++, all++) {
      const step = Math.hypot(line[2 * i + 2] - line[2 * i], line[2 * i + 3] - line[2 * i + 1]);
      if (step < long) length += step;
    }
  }
  const cell = Math.max(CELL, (2 * length) / Math.max(1, all));
  const across = Math.ceil(width / cell) + 1;
  const up = Math.ceil(height / cell) + 1;
  if (latest.length !== across * up) latest = new Int32Array(across * up);
  latest.fill(-1);
  /** @type {number[]} */
  const starts = [];
  let count = 0;
  for (const { rows } of lanes) {
    starts.push(count);
    count += rows;
  }
  let entries = 0;
  lanes.forEach((one, lane) => {
    const { line, rows } = one;
    for (let i = 0; i + 1 < rows; i++) {
      const [x0, y0, x1, y1] = [line[2 * i], line[2 * i + 1], line[2 * i + 2], line[2 * i + 3]];
      if (!(Math.abs(x1 - x0) + Math.abs(y1 - y0) < long)) continue;
      const c0 = Math.max(0, Math.floor(Math.min(x0, x1) / cell));
      const c1 = Math.min(across - 1, Math.floor(Math.max(x0, x1) / cell));
      const r0 = Math.max(0, Math.floor(Math.min(y0, y1) / cell));
      const r1 = Math.min(up - 1, Math.floor(Math.max(y0, y1) / cell));
      // Whoever enters a cell meets those who entered it before.
      for (let r = r0; r <= r1; r++) {
        for (let c = c0; c <= c1; c++) {
          const at = r * across + c;
          for (let e = latest[at]; e >= 0; e = before[e]) {
            let other = lanes.length - 1;
            while (starts[other] > entered[e]) other--;
            meet(lanes, other, entered[e] - starts[other], lane, i, c, r, cell, cuts);
          }
          if (entries === entered.length) {
            entered = grown(entered);
            before = grown(before);
          }
          entered[entries] = starts[lane] + i;
          before[entries] = latest[at];
          latest[at] = entries++;
        }
      }
    }
  });
  return cuts;
}

// Two that share several cells meet in the one in which they cross.
/** @param {Lane[]} lanes @param {number} s @param {number} i @param {number} t @param {number} j @param {number} c @param {number} r @param {number} cell @param {Cut[]} cuts */
function meet(lanes, s, i, t, j, c, r, cell, cuts) {
  if (s === t && j - i < 2) return;
  const a = lanes[s].line;
  const b = lanes[t].line;
  const ax = a[2 * i + 2] - a[2 * i];
  const ay = a[2 * i + 3] - a[2 * i + 1];
  const bx = b[2 * j + 2] - b[2 * j];
  const by = b[2 * j + 3] - b[2 * j + 1];
  const cross = ax * by - ay * bx;
  const sine = Math.abs(cross) / Math.max(1e-12, Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by)));
  if (sine < ALONG) return;
  const ox = b[2 * j] - a[2 * i];
  const oy = b[2 * j + 1] - a[2 * i + 1];
  const p = (ox * by - oy * bx) / cross;
  const q = (ox * ay - oy * ax) / cross;
  if (p < 0 || p >= 1 || q < 0 || q >= 1) return;
  if (Math.floor((a[2 * i] + p * ax) / cell) !== c || Math.floor((a[2 * i + 1] + p * ay) / cell) !== r) return;
  const m = lanes[s].near;
  const n = lanes[t].near;
  const nearer = m[i] + p * (m[i + 1] - m[i]) - n[j] - q * (n[j + 1] - n[j]);
  if (nearer < -LEVEL) cuts.push({ lane: s, at: i + p, over: t, sine });
  else if (nearer > LEVEL) cuts.push({ lane: t, at: j + q, over: s, sine });
}

/** @param {Int32Array} array */
function grown(array) {
  const more = new Int32Array(2 * array.length);
  more.set(array);
  return more;
}
return {LEVEL, crossings};
})();
const module1 = (() => {
const { LEVEL } = module0;
// The performer as the stage draws it: rounded limbs that hang between balls and go with the hands. As seen, a limb is what lies
// between its balls' discs: in each direction it reaches as far as the disc that reaches farthest. Filled anew each frame into arrays
// that stay.



/** @typedef {import('./camera.js').Camera} Camera */

/** Corners of a limb's outline. */
const CORNERS = 24;

const STRIDE = 7; // prime to the corners, so that the first few asked lie all round
const SLOPE = 7; // numbers kept of a limb's plane
const SLOPES = 1; // by how much balls have to stand apart before they say how a limb slopes, pixels

/** How much of the outline's ink is in the fill of an arm, so that it shows before the trunk (our choice). */
const ARM = 0.16;

const COS = Array.from({ length: CORNERS }, (_, k) => Math.cos((2 * Math.PI * k) / CORNERS));
const SIN = Array.from({ length: CORNERS }, (_, k) => Math.sin((2 * Math.PI * k) / CORNERS));

class Person {
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
function filled(ink, arm) {
  return arm ? ink.body.map((c, i) => c + ARM * (ink.outline[i] - c)) : ink.body;
}
return {CORNERS, Person, filled};
})();
const module2 = (() => {
const { Person } = module1;
// A scene as the server sends it, unpacked once and kept in the same arrays from answer to answer.



const TRACKS = ['left.hand', 'left.head', 'right.hand', 'right.head'];

const FLAT = 6e-4; // metres that a straight piece between two samples may leave its path by
const SAME = 5e-4; // metres; a ghost that lies nowhere further from what is shown is not drawn

class Scene {
  constructor() {
    this.period = 1;
    this.count = 0;
    this.closed = true;
    this.items = [];
    this.tracks = {};
    this.ghosts = []; // tracks of the ideal that lie elsewhere than what is shown
    this.person = null; // who holds it
    this.cords = null; // pull of each side's cord
    this.base = null; // of a poi that was let go, the cycle it was let go from
    this.tethers = { left: 1, right: 1 };
    /** @type {{ side: string, xyz: Float32Array } | null} */
    this.best = null; // where a hand path would lie at best
    /** @type {Record<string, Float32Array> | null} */
    this.was = null; // by side, what the heads drew before sizes were fitted
    this.version = 0; // another number with every answer
    this.shape = ''; // which items there are; a new shape asks a drawer to build anew
  }

  /** Takes over an answer's scene and the pull of its cords. */
  read({ scene: sent, pull = null }) {
    this.version++;
    this.cords = pull;
    this.period = sent.period_s;
    this.closed = sent.periodic !== false;
    if (this.count !== sent.count) {
      this.count = sent.count;
      for (const track of TRACKS) this.tracks[track] = new Float32Array(3 * sent.count);
    }
    for (const side of ['left', 'right']) {
      unpack(sent.samples[side].hand, this.tracks[side + '.hand']);
      unpack(sent.samples[side].head, this.tracks[side + '.head']);
    }
    this.items = sent.items;
    this.#person(sent.items.find((item) => item.form === 'person'));
    this.#ghosts(sent);
    for (const side of ['left', 'right']) this.tethers[side] = this.#apart(side + '.hand', side + '.head', 0);
    this.best = null;
    this.reshape();
  }

  /** Says anew which items there are. */
  reshape() {
    let shape = '' + this.count + this.ghosts;
    for (const item of this.items) shape += '|' + item.id + item.form + (item.points || item.limbs || '').length;
    if (this.best) shape += '|best ' + this.best.side + this.best.xyz.length;
    if (this.was) shape += '|was ' + this.was.left.length;
    this.shape = shape;
  }

  /** Takes over what became of a poi that was let go from another scene's cycle. */
  readLetGo(answer, from) {
    this.read(answer);
    this.base = { side: answer.side, period: from.period, start: answer.from_s / from.period };
    for (const track of TRACKS) this.tracks['base.' + track] = from.tracks[track].slice();
    this.tethers = { ...from.tethers };
    this.shape += '|let go ' + answer.side + from.count;
  }

  #person(item) {
    if (!item) {
      this.person = null;
      return;
    }
    this.person ??= new Person();
    this.person.read(item, unpack);
  }

  #ghosts(sent) {
    this.ghosts = [];
    for (const track of TRACKS) delete this.tracks['ghost.' + track];
    for (const side of Object.keys(sent.ghost || {})) {
      for (const end of ['hand', 'head']) {
        const track = side + '.' + end;
        const ghost = new Float32Array(3 * sent.count);
        unpack(sent.ghost[side][end], ghost);
        this.tracks['ghost.' + track] = ghost;
        if (ghost.some((v, i) => Math.abs(v - this.tracks[track][i]) > SAME)) this.ghosts.push(track);
      }
    }
  }

  #apart(a, b, i) {
    const p = this.tracks[a];
    const q = this.tracks[b];
    return Math.hypot(p[3 * i] - q[3 * i], p[3 * i + 1] - q[3 * i + 1], p[3 * i + 2] - q[3 * i + 2]);
  }

  /** Tracks of the ideal at the same moment, by side, where it is elsewhere: { track, phase } of hand and head. */
  ghostOf(side, phase) {
    if (this.base) {
      if (side !== this.base.side) return null;
      const cycles = this.base.start + (phase * this.period) / this.base.period;
      return { prefix: 'base.', phase: cycles - Math.floor(cycles) };
    }
    return this.ghosts.some((track) => track.startsWith(side)) ? { prefix: 'ghost.', phase } : null;
  }

  /** Pull of a side's cord at a phase, in head weights, and whether it is slack. */
  pullAt(side, phase) {
    const cord = this.cords && this.cords[side];
    if (!cord) return { weights: 1, slack: false };
    const w = cord.weights;
    const n = this.closed ? w.length : w.length - 1;
    const share = phase * n;
    const i = Math.min(w.length - 1, Math.floor(share));
    const f = share - Math.floor(share);
    const weights = w[i] * (1 - f) + w[this.closed ? (i + 1) % w.length : Math.min(w.length - 1, i + 1)] * f;
    const time = phase * this.period;
    return { weights, slack: cord.slack.some((s) => time >= s.from_s && time <= s.to_s) };
  }

  /** Where a track stands at a phase in [0, 1), between its two nearest samples. */
  at(track, phase, out, offset = 0) {
    const xyz = this.tracks[track];
    const n = xyz.length / 3;
    const closed = this.closed || track.startsWith('base.');
    const share = closed ? phase * n : phase * (n - 1);
    const i = Math.floor(share) % n;
    const f = share - Math.floor(share);
    const j = closed ? (i + 1) % n : Math.min(n - 1, i + 1);
    for (let k = 0; k < 3; k++) out[offset + k] = xyz[3 * i + k] * (1 - f) + xyz[3 * j + k] * f;
    return out;
  }

  /** The level way in which a side's head moves most: across or toward the audience. */
  level(side) {
    const xyz = this.tracks[side + '.head'];
    let [x, z] = [0, 0];
    for (let i = 3; i < xyz.length; i += 3) {
      x = Math.max(x, Math.abs(xyz[i] - xyz[0]));
      z = Math.max(z, Math.abs(xyz[i + 2] - xyz[2]));
    }
    return x >= z ? [1, 0, 0] : [0, 0, 1];
  }

  /** Corners of the box that holds every path. */
  box() {
    const least = [Infinity, Infinity, Infinity];
    const most = [-Infinity, -Infinity, -Infinity];
    for (const track of TRACKS) {
      const xyz = this.tracks[track];
      for (let i = 0; i < xyz.length; i++) {
        const k = i % 3;
        if (xyz[i] < least[k]) least[k] = xyz[i];
        if (xyz[i] > most[k]) most[k] = xyz[i];
      }
    }
    return { least, most };
  }

  /**
   * How many samples of the cycle draw these paths, or others much like them, as if they were round. A straight piece between two
   * samples leaves a path by an eighth of its second difference, which goes with the square of their distance.
   *
   * @param {number} fewest
   * @param {number} most
   */
  enough(fewest, most) {
    const n = this.count;
    let bend = 0;
    for (const track of TRACKS) {
      const xyz = this.tracks[track];
      for (let i = this.closed ? 0 : 1; i < (this.closed ? n : n - 1); i++) {
        const [before, here, after] = [3 * ((i + n - 1) % n), 3 * i, 3 * ((i + 1) % n)];
        let square = 0;
        for (let k = 0; k < 3; k++) square += (xyz[before + k] - 2 * xyz[here + k] + xyz[after + k]) ** 2;
        bend = Math.max(bend, square);
      }
    }
    const needed = n * Math.sqrt(Math.sqrt(bend) / (8 * FLAT));
    return Math.max(fewest, Math.min(most, 24 * Math.ceil(needed / 24)));
  }

  /** Turns a second of the faster poi at full speed: how often its light passes the same way. */
  turnsPerSecond() {
    let most = 0;
    for (const side of ['left', 'right']) {
      const hand = this.tracks[side + '.hand'];
      const head = this.tracks[side + '.head'];
      let angle = 0;
      const n = this.count;
      for (let i = 0; i < (this.closed ? n : n - 1); i++) {
        const j = 3 * ((i + 1) % n);
        let cos = 0;
        let a = 0;
        let b = 0;
        for (let k = 0; k < 3; k++) {
          const u = head[3 * i + k] - hand[3 * i + k];
          const v = head[j + k] - hand[j + k];
          cos += u * v;
          a += u * u;
          b += v * v;
        }
        angle += Math.acos(Math.max(-1, Math.min(1, cos / Math.sqrt(a * b))));
      }
      most = Math.max(most, angle / (2 * Math.PI) / this.period);
    }
    return most;
  }
}

const bytes = [];

function unpack(base64, into) {
  const text = atob(base64);
  const view = bytes[text.length] || (bytes[text.length] = new Uint8Array(text.length));
  for (let i = 0; i < text.length; i++) view[i] = text.charCodeAt(i);
  into.set(new Float32Array(view.buffer));
}
return {TRACKS, Scene};
})();
const module3 = (() => {
// Fast lights: what is said before they play, and from how many turns a second on.

/** WCAG 2.3.1: more than three flashes in a second. */
const FLASHES = 3;

const CARE = {
  title: 'Fast lights',
  text: 'At this speed a light passes the same place more than three times a second. Moving lights like that can trouble people with photosensitive epilepsy.',
  slow: 'Play slower',
  full: 'Play at this speed',
  stay: 'Stay paused',
};

/** What a dialog is answered with. @param {HTMLDialogElement} dialog @returns {Promise<string>} */
function asked(dialog) {
  return new Promise((resolve) => {
    dialog.onclose = () => resolve(dialog.returnValue);
    dialog.returnValue = '';
    dialog.showModal();
  });
}
return {FLASHES, CARE, asked};
})();
const module4 = (() => {
// Where the onlooker stands. One camera serves both ways of drawing, the handles and the labels, so that all agree to the pixel.
// Frame: x to the performer's left, y up, z toward the audience, origin at the breastbone, metres.

/** Views from the level, from before or behind the performer. */
const VIEWS = ['audience', 'performer', 'mirror'];

/** All there is to choose from where a body stands in the picture: its own eyes take the place of the look from behind. */
const STANDS = ['audience', 'eyes', 'mirror', 'above', 'side'];

const FIELD = (32 * Math.PI) / 180; // upright field of view, radians
const OWN = (110 * Math.PI) / 180; // of the performer's own eyes, which see far to the sides; our choice
const DOWN = (20 * Math.PI) / 180; // by which they look down from straight ahead, toward the hands; our choice
const UP = Math.PI / 2;
const NEAREST = 1.2;
/** Where each view stands: turned about the upright and lifted above the level, radians. */
const FROM = { audience: [0, 0], performer: [Math.PI, 0], mirror: [0, 0], eyes: [Math.PI, DOWN], above: [0, UP], side: [UP, 0] };
const FURTHEST = 14;

class Camera {
  constructor() {
    this.view = 'audience';
    this.from = [0, 0]; // where the view stands, radians: about the upright, above the level
    this.flip = 1; // −1 as in a mirror, where left and right change places on the screen
    this.field = FIELD;
    this.eyes = [0, 0.28, 0]; // of the performer, metres
    this.turn = 0; // radians about the upright from there, positive to the onlooker's right
    this.lift = 0; // radians above that
    this.distance = 5.2;
    this.target = [0, -0.12, 0.15];
    this.width = 1;
    this.height = 1;
    this.scale = 1; // pixels a metre at a metre's distance
    this.aside = [0, 0]; // pixels by which what is looked at stands off the middle, to the right and down
    this.eye = [0, 0, 0];
    this.right = [1, 0, 0];
    this.up = [0, 1, 0];
    this.ahead = [0, 0, -1];
    this.version = 0; // another number whenever anything of it has changed
    this.settle();
  }

  /** @param {string} view */
  see(view) {
    this.view = view;
    this.from = [...(/** @type {Record<string, number[]>} */ (FROM)[view])];
    this.flip = view === 'mirror' ? -1 : 1;
    this.field = view === 'eyes' ? OWN : FIELD;
    this.turn = 0;
    this.lift = 0;
    this.settle();
  }

  /** All that says where the onlooker stands, as numbers that can be led over into others. */
  get stand() {
    return [...this.target, this.distance, ...this.aside, this.from[0] + this.turn, this.from[1] + this.lift, this.field, this.flip];
  }

  /** Stands where these numbers say; what was turned from the view's own place stays so. */
  set stand(v) {
    this.target = v.slice(0, 3);
    this.distance = v[3];
    this.aside = v.slice(4, 6);
    this.from = [v[6] - this.turn, v[7] - this.lift];
    this.field = v[8];
    this.flip = v[9];
    this.settle();
  }

  /** @param {number} turn @param {number} lift radians */
  orbit(turn, lift) {
    this.turn = wrapped(this.turn + turn * this.flip);
    const [, stands] = this.from;
    const most = Math.max(1.45, stands);
    this.lift = Math.max(-1.45 - stands, Math.min(most - stands, this.lift + lift));
    this.settle();
  }

  /** @param {number} factor */
  zoom(factor) {
    if (this.view === 'eyes') {
      this.field = Math.max(0.6, Math.min(2.1, this.field * factor));
      this.settle();
      return;
    }
    this.distance = Math.max(NEAREST, Math.min(FURTHEST, this.distance * factor));
    this.settle();
  }

  /** @param {number} width @param {number} height */
  resize(width, height) {
    this.width = Math.max(1, width);
    this.height = Math.max(1, height);
    this.settle();
  }

  /**
   * Steps back until the box fits into what is left of the paper inside these margins, pixels, and looks at it there. The box is
   * seen along one of the frame's three directions, its nearest face as large as any of it. Own eyes stay where they are.
   *
   * @param {ArrayLike<number>} least
   * @param {ArrayLike<number>} most
   */
  frame(least, most, { above = 10, right = 10, below = 10, left = 10 } = {}) {
    const high = Math.max(40, this.height - above - below);
    const wide = Math.max(40, this.width - left - right);
    this.aside[0] = (left - right) / 2;
    this.aside[1] = (above - below) / 2;
    if (this.view === 'eyes') {
      this.target = [...this.eyes];
      this.distance = 0;
      this.settle();
      return;
    }
    // Which of x, y, z lies across, upright and toward the onlooker. Across and ahead the body stays in the middle.
    const [across, upright, toward] = /** @type {Record<string, number[]>} */ ({ above: [0, 2, 1], side: [2, 1, 0] })[this.view] || [0, 1, 2];
    const middle = (/** @type {number} */ k) => (least[k] + most[k]) / 2;
    this.target = this.view === 'above' ? [0, 0, middle(2)] : this.view === 'side' ? [0, middle(1), middle(2)] : [0, middle(1), 0.15];
    const reach = (/** @type {number} */ k) => Math.max(Math.abs(least[k] - this.target[k]), Math.abs(most[k] - this.target[k]));
    const halfWidth = Math.max(reach(across), 0.05);
    const halfHeight = Math.max((most[upright] - least[upright]) / 2, 0.05);
    const half = Math.max((halfHeight * this.height) / high, (halfWidth * this.height) / wide);
    const nearest = this.view === 'above' ? Math.max(most[1], 0) : Math.max(reach(toward), 0);
    this.distance = Math.max(NEAREST, Math.min(FURTHEST, half / Math.tan(FIELD / 2) + nearest));
    this.settle();
  }

  settle() {
    this.version++;
    const angle = this.turn + this.from[0];
    const lift = this.lift + this.from[1];
    const level = Math.cos(lift);
    const back = [Math.sin(angle) * level, Math.sin(lift), Math.cos(angle) * level];
    for (let i = 0; i < 3; i++) {
      this.eye[i] = this.target[i] + back[i] * this.distance;
      this.ahead[i] = -back[i];
    }
    this.right[0] = Math.cos(angle);
    this.right[1] = 0;
    this.right[2] = -Math.sin(angle);
    this.up[0] = -Math.sin(angle) * Math.sin(lift);
    this.up[1] = level;
    this.up[2] = -Math.cos(angle) * Math.sin(lift);
    this.scale = this.height / (2 * Math.tan(this.field / 2));
  }

  /** The share of clip space a length across takes, as the projection matrix has it. */
  get across() {
    return (this.flip * 2 * this.scale) / this.width;
  }

  get upright() {
    return (2 * this.scale) / this.height;
  }

  /**
   * Writes x, y in CSS pixels and the depth in metres into out; false if behind the onlooker.
   *
   * @param {number} x @param {number} y @param {number} z
   * @param {number[]} out
   */
  project(x, y, z, out) {
    const dx = x - this.eye[0];
    const dy = y - this.eye[1];
    const dz = z - this.eye[2];
    const depth = dx * this.ahead[0] + dy * this.ahead[1] + dz * this.ahead[2];
    if (depth < 0.05) return false;
    const s = this.scale / depth;
    out[0] = this.width / 2 + this.aside[0] + this.flip * s * (dx * this.right[0] + dz * this.right[2]);
    out[1] = this.height / 2 + this.aside[1] - s * (dx * this.up[0] + dy * this.up[1] + dz * this.up[2]);
    out[2] = depth;
    return true;
  }

  /** Unit direction from the eye through a pixel. @param {number} px @param {number} py */
  ray(px, py) {
    const a = (this.flip * (px - this.width / 2 - this.aside[0])) / this.scale;
    const b = (this.height / 2 + this.aside[1] - py) / this.scale;
    const d = [0, 1, 2].map((i) => this.ahead[i] + a * this.right[i] + b * this.up[i]);
    const length = Math.hypot(...d);
    return d.map((v) => v / length);
  }

  /**
   * Where the ray through a pixel meets a plane; seen edge on, the point at the depth of `at`.
   *
   * @param {number} px @param {number} py
   * @param {number[]} at
   * @param {number[]} normal
   */
  meet(px, py, at, normal) {
    const d = this.ray(px, py);
    const facing = dot(d, normal);
    const n = Math.abs(facing) > 0.12 ? normal : this.ahead;
    const t = (dot(at, n) - dot(this.eye, n)) / dot(d, n);
    return [0, 1, 2].map((i) => this.eye[i] + t * d[i]);
  }
}

/** @param {number[]} a @param {number[]} b */
function dot(a, b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/** @param {number} angle */
function wrapped(angle) {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}
return {VIEWS, STANDS, Camera};
})();
const module5 = (() => {
// What is to be drawn at a moment, ready for either way of drawing: ribbons (whole paths), strokes (straight lines) and marks
// (shapes that keep their size on the screen). Filled anew each frame into arrays that stay.

const SHAPES = { disc: 0, diamond: 1, ring: 2, square: 3, cross: 4, dot: 5, halo: 6 };

/** How many strokes or marks there is room for. */
const ROOM = 256;

const SAG = 17; // parts of a slack cord, of which every other is drawn

/** The two hands are told apart by shape as well as colour: the left's marks are round, the right's have corners. */
const HAND = { left: SHAPES.ring, right: SHAPES.square };
const HEAD = { left: SHAPES.disc, right: SHAPES.diamond };

class Picture {
  constructor() {
    this.ends = new Float32Array(6 * ROOM);
    this.strokeStyle = new Float32Array(4 * ROOM); // half width, dash, space, how far into the dash it begins
    this.strokeColour = new Float32Array(4 * ROOM);
    this.strokeSide = new Int8Array(ROOM); // whose cord it is: 1 left, -1 right; 2 a link, 0 what nothing lies before
    this.strokes = 0;
    this.below = 0; // of the strokes, so many lie below the marks
    this.points = new Float32Array(3 * ROOM);
    this.markStyle = new Float32Array(2 * ROOM); // radius, shape
    this.markColour = new Float32Array(4 * ROOM);
    this.markSide = new Int8Array(ROOM); // whose hand or head it is
    this.marks = 0;
    this.link = new Float32Array(6);
    this.linkShown = false;
    this.hands = { left: new Float32Array(3), right: new Float32Array(3) };
  }

  /**
   * Sets strokes and marks of a scene at a phase.
   *
   * @param {Lit | null} lit what is lit up because it would move, or moves
   */
  compose(scene, phase, ink, show, scale = 1, lit = null) {
    this.scale = scale;
    this.lit = lit;
    this.strokes = 0;
    this.marks = 0;
    this.linkShown = false;
    const cords = show.cords !== false;
    if (cords) for (const side of ['left', 'right']) this.#ghost(scene, side, phase, ink);
    for (const item of scene.items) {
      const colour = ink[item.side] || ink.plain;
      switch (item.form) {
        case 'segment':
          if (item.role === 'link') {
            if (show.link) this.#link(scene, item, phase, ink);
          } else if (cords) {
            this.#stroke(scene, item, phase, colour);
          }
          break;
        case 'point':
          if (cords || item.role !== 'hand') this.#point(scene, item, phase, colour);
          else scene.at(item.track, phase, this.hands[item.side]);
          break;
        case 'fixed':
          if (cords && item.points.length === 1 && item.role === 'centre') this.#centre(item.points[0], colour);
          break;
      }
    }
    if (show.meets) this.#meeting(scene, show.meets, phase, ink);
    if (lit && lit.at) this.points.set(lit.at, 3 * this.#mark(15, SHAPES.halo, ink.link, 1));
    this.below = this.strokes;
  }

  #stroke(scene, item, phase, colour) {
    const { weights, slack } = scene.pullAt(item.side, phase);
    const i = this.strokes++;
    this.strokeSide[i] = item.side === 'left' ? 1 : -1;
    scene.at(item.from, phase, this.ends, 6 * i);
    scene.at(item.to, phase, this.ends, 6 * i + 3);
    this.strokeColour.set(colour, 4 * i);
    this.strokeColour[4 * i + 3] = 0.95;
    if (slack) {
      this.#slack(i, scene.tethers[item.side], scene.level(item.side));
      return;
    }
    // The more it pulls, the thicker. The left's lines are unbroken, the right's dashed, as on paper.
    const right = item.side === 'right';
    const bright = this.lit && this.lit.cord === item.side ? 2 : 0;
    this.#style(i, bright + Math.min(3.4, 0.6 + 0.62 * Math.sqrt(Math.max(0, weights))), right ? 11 : 0, right ? 3.5 : 0);
  }

  // A cord that does not pull hangs in a bow and is dotted. A flat bow of height s over a span d is about d + 8s²/3d long. Where the
  // cord stands upright the bow also goes aside, or it could not be seen.
  #slack(first, length, level) {
    const e = this.ends;
    const a = [...e.subarray(6 * first, 6 * first + 3)];
    const b = [...e.subarray(6 * first + 3, 6 * first + 6)];
    const span = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
    const bow = Math.max(0.1 * length, Math.sqrt(0.375 * Math.max(span, length / 4) * Math.max(0, length - span)));
    const aside = span > 0 ? (0.8 * Math.abs(a[1] - b[1])) / span : 0;
    const put = (share, at) => {
      const hang = (4 * bow * share * (1 - share)) / Math.hypot(1, aside);
      for (let k = 0; k < 3; k++) e[at + k] = a[k] + share * (b[k] - a[k]) + aside * hang * level[k];
      e[at + 1] -= hang;
    };
    for (let part = 0; part < SAG; part += 2) {
      const i = part === 0 ? first : this.strokes++;
      put(part / SAG, 6 * i);
      put((part + 1) / SAG, 6 * i + 3);
      this.#style(i, 1.3, 0, 0);
      this.strokeSide[i] = this.strokeSide[first];
      if (i !== first) this.strokeColour.copyWithin(4 * i, 4 * first, 4 * first + 4);
    }
  }

  // Where the ideal is at the same moment, thin and pale.
  #ghost(scene, side, phase, ink) {
    const ghost = scene.ghostOf(side, phase);
    if (!ghost) return;
    const i = this.strokes++;
    this.strokeSide[i] = 0;
    this.#style(i, 0.6, 0, 0);
    this.strokeColour.set(ink.plain, 4 * i);
    this.strokeColour[4 * i + 3] = 0.75;
    ['hand', 'head'].forEach((end, k) => {
      scene.at(ghost.prefix + side + '.' + end, ghost.phase, this.ends, 6 * i + 3 * k);
      const m = this.#mark(end === 'hand' ? 3 : 3.4, (end === 'hand' ? HAND : HEAD)[side], ink.plain, 0.8);
      for (let n = 0; n < 3; n++) this.points[3 * m + n] = this.ends[6 * i + 3 * k + n];
    });
  }

  #style(i, half, dash, space) {
    this.strokeStyle[4 * i] = half;
    this.strokeStyle[4 * i + 1] = dash;
    this.strokeStyle[4 * i + 2] = space;
    this.strokeStyle[4 * i + 3] = 0;
  }

  #link(scene, item, phase, ink) {
    const i = this.strokes++;
    this.strokeSide[i] = 2;
    scene.at(item.from, phase, this.ends, 6 * i);
    scene.at(item.to, phase, this.ends, 6 * i + 3);
    this.#style(i, 2, 4, 5);
    this.strokeColour.set(ink.link, 4 * i);
    this.strokeColour[4 * i + 3] = 1;
    for (let k = 0; k < 6; k++) this.link[k] = this.ends[6 * i + k];
    this.linkShown = true;
  }

  #point(scene, item, phase, colour) {
    const hand = item.role === 'hand';
    const i = this.#mark(hand ? 8 : 7.5, (hand ? HAND : HEAD)[item.side] ?? SHAPES.dot, colour, 1);
    this.markSide[i] = item.side === 'left' ? 1 : -1;
    scene.at(item.track, phase, this.points, 3 * i);
    if (hand) for (let k = 0; k < 3; k++) this.hands[item.side][k] = this.points[3 * i + k];
  }

  // Where the carrier's head and the rider's hand are at one place, a ring holds both, whether hands are shown or not.
  /** @param {any} scene @param {string} carrier @param {number} phase @param {any} ink */
  #meeting(scene, carrier, phase, ink) {
    scene.at(carrier + '.head', phase, this.points, 3 * this.#mark(13, SHAPES.halo, ink.link, 1));
  }

  #centre(at, colour) {
    const i = this.#mark(4.5, SHAPES.cross, colour, 0.55);
    this.points.set(at, 3 * i);
  }

  #mark(radius, shape, colour, alpha) {
    const i = this.marks++;
    this.markSide[i] = 0;
    this.markStyle[2 * i] = radius * this.scale;
    this.markStyle[2 * i + 1] = shape;
    this.markColour.set(colour, 4 * i);
    this.markColour[4 * i + 3] = alpha;
    return i;
  }
}

/** The whole-path ribbons of a scene, in drawing order. */
function ribbonsOf(scene) {
  const out = [];
  scene.items.forEach((item, index) => {
    if (item.form !== 'fixed' || item.points.length < 2) return;
    out.push({ id: item.id, kind: 'fixed', side: item.side, closed: !!item.closed, index });
  });
  for (const item of scene.items) {
    if (item.form !== 'track') continue;
    // Of a poi that was let go, the lines stay those of the cycle it left.
    const { base } = scene;
    const closed = (item.closed !== false && scene.closed) || base !== null;
    const track = base ? 'base.' + item.track : item.track;
    if (scene.ghosts.includes(item.track)) {
      out.push({ id: item.id + ':ghost', kind: 'ghost', side: item.side, closed, track: 'ghost.' + item.track });
    }
    if (item.role === 'hand-path') {
      out.push({ id: item.id, kind: 'path', side: item.side, closed, track });
    } else if (item.role === 'head-trail') {
      out.push({ id: item.id + ':figure', kind: base && base.side === item.side ? 'ghost' : 'figure', side: item.side, closed, track });
    }
  }
  for (const side of scene.was ? ['left', 'right'] : []) out.push({ id: 'was ' + side, kind: 'was', side, closed: scene.closed });
  if (scene.best) out.push({ id: 'best', kind: 'best', side: scene.best.side, closed: scene.closed });
  for (const item of scene.items) {
    if (item.form === 'track' && item.role === 'head-trail') {
      out.push({
        id: item.id,
        kind: 'trail',
        side: item.side,
        closed: item.closed !== false && scene.closed,
        track: item.track,
      });
    }
  }
  return out;
}

/** Points of a ribbon, as one array. */
function pointsOf(ribbon, scene) {
  if (ribbon.kind === 'best') return scene.best.xyz;
  if (ribbon.kind === 'was') return scene.was[ribbon.side];
  if (ribbon.track) return scene.tracks[ribbon.track];
  const item = scene.items[ribbon.index];
  const xyz = new Float32Array(3 * item.points.length);
  item.points.forEach((p, i) => xyz.set(p, 3 * i));
  return xyz;
}

/** How each kind of ribbon looks: half width of core and halo in pixels, opacity, dashes a cycle and the share of each that is drawn. */
const RIBBON = {
  fixed: { core: 0.6, halo: 0, alpha: 0.4 },
  ghost: { core: 0.55, halo: 0, alpha: 0.55 },
  path: { core: 0.9, halo: 0, alpha: 0.8, left: [96, 0.36], right: [48, 0.62] },
  best: { core: 1.1, halo: 0, alpha: 0.9, ink: 'link', left: [60, 0.5], right: [60, 0.5] },
  was: { core: 0.9, halo: 0, alpha: 0.6, right: [60, 0.6] },
  figure: { core: 0.75, halo: 0, alpha: 0.45, right: [120, 0.74] },
  trail: { core: 1.9, halo: 7.5, alpha: 1, right: [90, 0.72] },
};

/** Half width of the line round the performer, pixels. */
const EDGE = 1.2;

/**
 * What is lit up: by side, or both, or none; and where a halo stands.
 *
 * @typedef {{ path: string, figure: string, cord: string, at: ArrayLike<number> | null, one?: string, strength?: number }} Lit
 */

const LIT = { path: { core: 2.4, halo: 0, alpha: 1 }, figure: { core: 4.2, halo: 0, alpha: 0.42 } };

/**
 * How a ribbon looks while it is lit up, or null where it is not; `one` is the carrier whose head's figure and the other's hand path
 * are lit as one.
 *
 * @param {Lit | null} lit
 */
function lightOf(ribbon, lit) {
  if (!lit || !LIT[ribbon.kind]) return null;
  const { kind, side } = ribbon;
  if (lit.one && (kind === 'figure') === (lit.one === side)) {
    return { core: 2 + 5 * lit.strength, halo: 0, alpha: 0.35 + 0.65 * lit.strength, ink: 'link' };
  }
  return lit[kind] === 'both' || lit[kind] === side ? LIT[kind] : null;
}

/** Of a light that stays a whole cycle: how bright it is where it is oldest. */
const OLDEST = 0.42;

/** And how bright between the dashes by which the right's is told from the left's, where it is not new. */
const BETWEEN = 0.45;
return {SHAPES, ROOM, Picture, ribbonsOf, pointsOf, RIBBON, EDGE, lightOf, OLDEST, BETWEEN};
})();
const module6 = (() => {
const { LEVEL, crossings } = module0;
// A cord as seen at a moment, in pieces: none where the body hides it, none where the other cord passes before it, and with a gap of
// the ground's colour beside it where it passes before the body or before the other's hand or head. The painter of pictures does the
// same (Strand.java).



const STEP = 1.5; // pixels
const MOST = 600;

const HIDDEN = 0;
const PLAIN = 1;
const CASED = 2;
const ABOVE = 3;

/** @typedef {[x: number, y: number, near: number]} Spot pixels, and metres toward the onlooker */
/** @typedef {{ from: number, to: number, cased: boolean, above: boolean }} Strand shares of the cord from hand to head */

/**
 * The pieces of a cord.
 *
 * @param {Spot} hand where it begins
 * @param {Spot} head where it ends
 * @param {{ side: (x: number, y: number, near: number) => number } | null} body who might hide it
 * @param {{ at: Spot, reach: number }[]} marks the other side's
 * @param {Spot[]} other the other cord, from hand to head; none for no other
 * @param {number} own how far its own hand's and head's marks reach, which stay over it, pixels
 * @param {number} gap how far what is nearer keeps what is farther off, pixels
 * @returns {Strand[]}
 */
function strands(hand, head, body, marks, other, own, gap) {
  const length = Math.hypot(head[0] - hand[0], head[1] - hand[1]);
  const count = Math.max(2, Math.min(MOST, Math.ceil(length / STEP)));
  const state = new Uint8Array(count);
  const [from, to] = hole(hand, head, other, gap, length);
  for (let i = 0; i < count; i++) {
    const share = (i + 0.5) / count;
    const x = hand[0] + share * (head[0] - hand[0]);
    const y = hand[1] + share * (head[1] - hand[1]);
    const near = hand[2] + share * (head[2] - hand[2]);
    const side = body ? body.side(x, y, near) : 0;
    let above = false;
    const free = share * length > own && (1 - share) * length > own;
    for (const mark of marks) above ||= free && near > mark.at[2] + LEVEL && Math.hypot(x - mark.at[0], y - mark.at[1]) < mark.reach + gap;
    if (side < 0 || (share > from && share < to)) state[i] = HIDDEN;
    else state[i] = above ? ABOVE : side > 0 ? CASED : PLAIN;
  }
  const reach = Math.round((gap * count) / Math.max(length, 1e-9));
  return runs(widened(widened(state, CASED, reach), HIDDEN, reach));
}

// Where two cords cross, the farther has a hole.
/** @param {Spot} hand @param {Spot} head @param {Spot[]} other @param {number} gap @param {number} length */
function hole(hand, head, other, gap, length) {
  if (other.length === 0) return [2, 2];
  const all = [hand, head, ...other];
  const left = Math.min(...all.map((spot) => spot[0]));
  const top = Math.min(...all.map((spot) => spot[1]));
  const width = Math.max(...all.map((spot) => spot[0])) - left;
  const height = Math.max(...all.map((spot) => spot[1])) - top;
  for (const cut of crossings([lane([hand, head], left, top), lane(other, left, top)], width, height, Infinity)) {
    // What is hidden keeps a gap off on either side anyway.
    const half = Math.max(STEP / 2, gap / cut.sine - gap) / length;
    if (cut.lane === 0) return [cut.at - half, cut.at + half];
  }
  return [2, 2];
}

/** @param {Spot[]} spots @param {number} left @param {number} top @returns {import('./crossings.js').Lane} */
function lane(spots, left, top) {
  return { line: Float32Array.from(spots.flatMap(([x, y]) => [x - left, y - top])), near: Float32Array.from(spots.map((spot) => spot[2])), rows: spots.length };
}

/** @param {Uint8Array} state @param {number} which @param {number} reach */
function widened(state, which, reach) {
  const wide = state.slice();
  for (let i = 0; i < state.length; i++) {
    if (which === HIDDEN ? state[i] === HIDDEN : state[i] !== PLAIN) continue;
    for (let k = Math.max(0, i - reach); k <= Math.min(state.length - 1, i + reach); k++) if (state[k] === which) wide[i] = which;
  }
  return wide;
}

/** @param {Uint8Array} state @returns {Strand[]} */
function runs(state) {
  const count = state.length;
  const out = [];
  let begun = 0;
  for (let i = 1; i <= count; i++) {
    if (i < count && state[i] === state[begun]) continue;
    if (state[begun] !== HIDDEN) out.push({ from: begun / count, to: i / count, cased: state[begun] >= CASED, above: state[begun] === ABOVE });
    begun = i;
  }
  return out;
}
return {strands};
})();
const module7 = (() => {
const { crossings } = module0;
const { RIBBON, ROOM, SHAPES } = module5;
const { strands } = module6;
// What passes before what at a moment, as the camera sees it: where trails give way to nearer ones, what is seen faintly through the
// body, which pieces of the cords are seen, and which of hands and heads lies over which. Both ways of drawing ask it, once a frame.





/** How far what is nearer keeps what is farther off, pixels (our choice). */
const GAP = 3.2;

/** How much of a light, and of a mark, is seen through the body (our choice). */
const BEHIND = 0.3;
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

class Depth {
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
return {GAP, BEHIND, Depth};
})();
const module8 = (() => {
const { BEHIND, Depth, GAP } = module7;
const { CORNERS, filled } = module1;
const { EDGE, OLDEST, RIBBON, SHAPES, lightOf, pointsOf, ribbonsOf } = module5;
// Draws the same picture on a plain two-dimensional canvas, where there is no WebGL or where it is asked for.





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

class FlatDrawer {
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
return {FlatDrawer};
})();
const module9 = (() => {
// The colours that a figure is drawn in, as the style sheet has them where it stands.

const NAMES = { ground: '--stage-ground', plain: '--stage-plain', body: '--stage-body', outline: '--stage-outline', left: '--ink-left', right: '--ink-right', link: '--ink-link' };

/**
 * Each as red, green and blue from 0 to 1; and whether light glows there, 1 or 0.
 *
 * @param {Element} element
 */
function inks(element) {
  const style = getComputedStyle(element);
  /** @type {Record<string, number[]>} */
  const ink = {};
  for (const [name, variable] of Object.entries(NAMES)) {
    const hex = style.getPropertyValue(variable).trim();
    ink[name] = [1, 3, 5].map((i) => parseInt(hex.slice(i, i + 2), 16) / 255);
  }
  return { ink, glow: style.getPropertyValue('--stage-glow').trim() === '1' ? 1 : 0 };
}
return {inks};
})();
const module10 = (() => {
const { Camera } = module4;
const { FlatDrawer } = module8;
const { inks } = module9;
const { Picture } = module5;
const { Scene, TRACKS } = module2;
// The big figure: one pattern on the whole screen, as the audience sees it, as in a mirror or with the performer's own eyes.







const STAYS = 0.5; // how much of the cycle a trail takes to fade
const THICK = 2; // times as thick, to be seen from afar
const ASIDE = Math.tan((65 * Math.PI) / 180); // so far to a side own eyes have it in the picture; our choice
const LEVEL = 0.5; // seen more from the side than this no side of the picture is the left: the cosine of sixty degrees
const SLANT = [0.56, 0.42]; // radians, where no one side shows both hands

/** @type {Record<string, string>} */
const OTHER = { left: 'right', right: 'left' };
/** @type {Record<string, string>} */
const STANDS = { above: 'above', side: 'side' };

/** @typedef {{ above: number, right: number, below: number, left: number }} Margins */
/** @typedef {{ least: number[], most: number[] }} Box metres */

class HallFigure {
  /** @param {HTMLCanvasElement} canvas */
  constructor(canvas) {
    this.canvas = canvas;
    /** @type {any} */
    this.scene = new Scene();
    this.camera = new Camera();
    this.picture = new Picture();
    this.drawer = new FlatDrawer(canvas);
    this.drawn = 0; // pictures drawn so far
    this.view = 'audience';
    this.hand = 'both';
    this.far = false;
    this.stand = 'front';
    /** @type {any} */
    this.sent = null;
    /** @type {Box | null} */
    this.held = null;
    /** @type {any} */
    this.ink = null;
    /** @type {Margins} */
    this.margins = { above: 24, right: 24, below: 24, left: 24 };
    this.glow = 1;
    this.turns = 0; // of the faster poi, a second at the pattern's own tempo
    this.spot = [0, 0, 0];
    this.show = { link: false, body: true, path: true, figure: true, trail: true };
  }

  /**
   * Another pattern.
   *
   * @param {any} sent its scene
   * @param {string} stand from which side its planes show: front, above, side or slant
   */
  load(sent, stand) {
    this.sent = sent;
    this.stand = stand;
    this.#read();
  }

  /** From now on framed to that box, whatever is drawn; each to its own without one. @param {Box | null} box */
  hold(box) {
    this.held = box;
  }

  /** @param {string} hand both, left or right */
  alone(hand) {
    this.hand = hand;
    this.#read();
  }

  // What the other hand has is left out of the scene, and its arm rests where it began.
  #read() {
    const { sent, scene, hand } = this;
    if (!sent) return;
    const other = OTHER[hand];
    const items = other ? sent.items.filter((/** @type {any} */ item) => item.side !== other && item.role !== 'link') : sent.items;
    scene.read({ scene: { ...sent, items } });
    this.turns = scene.turnsPerSecond();
    if (other) {
      const at = scene.tracks[hand + '.hand'].slice(0, 3);
      for (const end of ['.hand', '.head']) for (let i = 0; i < scene.count; i++) scene.tracks[other + end].set(at, 3 * i);
      if (scene.person) {
        for (const limb of scene.person.limbs) if (limb.group.startsWith(other)) for (const ball of limb.balls) scene.person.moves[ball]?.set(stillness(scene.person.moves[ball]));
      }
    }
    this.drawer.load(scene);
    this.#frame();
  }

  /** @param {string} view audience, mirror or eyes */
  see(view) {
    this.view = view;
    this.#frame();
  }

  /** Where it may be drawn, and in which inks. @param {Margins} margins */
  resize(margins) {
    this.margins = margins;
    const box = /** @type {HTMLElement} */ (this.canvas.parentElement);
    const { clientWidth: width, clientHeight: height } = box;
    if (!width || !height) return;
    const thick = this.far ? THICK : 1;
    this.drawer.resize(width / thick, height / thick, thick * Math.min(2, devicePixelRatio || 1));
    this.camera.resize(width / thick, height / thick);
    Object.assign(this, inks(this.canvas));
    this.#frame();
  }

  #frame() {
    const { camera, margins } = this;
    const thick = this.far ? THICK : 1;
    const own = this.view === 'eyes';
    camera.see(own ? 'eyes' : (STANDS[this.stand] ?? 'audience'));
    if (own) camera.eyes = this.scene.person ? this.scene.person.eyes() : [0, 0.28, 0];
    if (!own && this.stand === 'slant') [camera.turn, camera.lift] = SLANT;
    if (this.view === 'mirror') camera.flip = -1;
    camera.settle();
    const { least, most } = this.held ?? this.scene.box();
    if (least[0] > most[0]) return;
    camera.frame(least, most, { above: margins.above / thick, right: margins.right / thick, below: margins.below / thick, left: margins.left / thick });
    if (own) this.#widen();
  }

  // On a narrow screen own eyes see as far to the sides as the figure goes, up to where it passes beside the head.
  #widen() {
    const { camera, scene, spot } = this;
    let wide = 0;
    for (const track of TRACKS) {
      const xyz = scene.tracks[track];
      for (let i = 0; i < xyz.length; i += 3) {
        if (!camera.project(xyz[i], xyz[i + 1], xyz[i + 2], spot)) continue;
        const aside = Math.abs(spot[0] - camera.width / 2 - camera.aside[0]) / camera.scale;
        if (aside < ASIDE) wide = Math.max(wide, aside);
      }
    }
    const half = camera.width / 2 - this.margins.left;
    if (wide * camera.scale <= half) return;
    camera.field = 2 * Math.atan((camera.height * wide) / (2 * half));
    camera.settle();
  }

  /** On which side of the picture the performer's left is; empty where neither shows it. */
  get left() {
    const { flip, right } = this.camera;
    const across = flip * right[0];
    return Math.abs(across) < LEVEL ? '' : across > 0 ? 'right' : 'left';
  }

  /** Where a moving point is drawn at a share of the cycle, CSS pixels from the upper left. @param {string} track @param {number} share */
  place(track, share) {
    const at = this.scene.at(track, share, [0, 0, 0]);
    this.camera.project(at[0], at[1], at[2], this.spot);
    const thick = this.far ? THICK : 1;
    return [thick * this.spot[0], thick * this.spot[1]];
  }

  /** @param {number} share of the cycle */
  draw(share) {
    if (!this.ink || !this.sent) return;
    this.drawn++;
    this.picture.compose(this.scene, share, this.ink, this.show, 1);
    this.drawer.draw(this.picture, this.camera, { ink: this.ink, phase: share, fade: STAYS, show: this.show, glow: this.glow });
  }
}

/** The first of its points over and over. @param {Float32Array | null} xyz */
function stillness(xyz) {
  const all = new Float32Array(xyz ? xyz.length : 0);
  if (xyz) for (let i = 0; i < all.length; i++) all[i] = xyz[i % 3];
  return all;
}
return {HallFigure};
})();
const module11 = (() => {
// Clicks on the counts. They are handed to the audio clock ahead of their time, so that each sounds exactly when it falls
// however busy the page is for that long; the picture asks the same clock what is heard now.

const AHEAD = 1.2; // seconds that clicks are handed over before they sound; what changes meanwhile takes them back
const EVERY = 100; // milliseconds between two looks ahead
const LEAD = 0.12; // seconds from the press to the first click
const LENGTH = 0.045; // seconds of a click
const KEPT = 200; // clicks remembered, to be looked at from outside

/** @typedef {import('./pulse.js').Pulse} Pulse */

class Clicks {
  /** @type {AudioContext | null} */
  #context = null;
  /** @type {AudioBuffer[]} */
  #sounds = [];
  /** @type {{ node: AudioBufferSourceNode, time: number }[]} */
  #waiting = [];
  #timer = 0;
  #until = 0;

  constructor() {
    /** @type {{ time: number, asked: number, said: string }[]} */
    this.struck = []; // when each click sounds and when it was asked for, seconds of the audio clock
  }

  /** The audio clock, once it runs; null where this browser has none. */
  async ready() {
    if (!globalThis.AudioContext) return null;
    this.#context ??= new AudioContext({ latencyHint: 'interactive' });
    const context = this.#context;
    if (!this.#sounds.length) this.#sounds = [click(context, 1000), click(context, 1600)];
    if (context.state !== 'running') await context.resume();
    return context;
  }

  /** The second of the audio clock that is heard at this moment. */
  heard() {
    const context = this.#context;
    if (!context) return 0;
    const { contextTime, performanceTime } = context.getOutputTimestamp();
    if (contextTime && performanceTime) {
      const since = (performance.now() - performanceTime) / 1000;
      if (since >= 0 && since < 0.5) return contextTime + since;
    }
    return context.currentTime - (context.outputLatency || 0);
  }

  /** A second a little ahead, at which something may still begin. */
  soon() {
    return this.#context ? this.#context.currentTime + LEAD : 0;
  }

  /** Clicks on what falls from now on. @param {Pulse} pulse */
  follow(pulse) {
    const context = this.#context;
    if (!context) return;
    this.still();
    this.#until = Math.max(pulse.at, context.currentTime);
    this.#look(pulse);
    this.#timer = setInterval(() => this.#look(pulse), EVERY);
  }

  /** No more clicks, nor those that were handed over and have not sounded. */
  still() {
    clearInterval(this.#timer);
    const now = this.#context ? this.#context.currentTime : 0;
    for (const { node, time } of this.#waiting) if (time > now) node.stop();
    this.struck = this.struck.filter(({ time }) => time <= now);
    this.#waiting = [];
  }

  /** Lets the loudspeaker rest. */
  rest() {
    this.still();
    if (this.#context) this.#context.suspend();
  }

  /** @param {Pulse} pulse */
  #look(pulse) {
    const context = this.#context;
    if (!context) return;
    const now = context.currentTime;
    const until = now + AHEAD;
    for (const { time, said, first } of pulse.strokes(this.#until, until)) {
      const node = context.createBufferSource();
      node.buffer = this.#sounds[first ? 1 : 0];
      node.connect(context.destination);
      node.start(time);
      this.#waiting.push({ node, time });
      this.struck.push({ time, asked: now, said });
    }
    this.#until = Math.max(this.#until, until);
    this.#waiting = this.#waiting.filter(({ time }) => time > now);
    if (this.struck.length > KEPT) this.struck.splice(0, this.struck.length - KEPT);
  }
}

/** A short tone that is loudest at once and dies away. @param {AudioContext} context @param {number} hertz */
function click(context, hertz) {
  const rate = context.sampleRate;
  const sound = context.createBuffer(1, Math.ceil(LENGTH * rate), rate);
  const wave = sound.getChannelData(0);
  for (let i = 0; i < wave.length; i++) wave[i] = 0.9 * Math.cos((2 * Math.PI * hertz * i) / rate) * Math.exp((-7 * i) / wave.length);
  return sound;
}
return {Clicks};
})();
const module12 = (() => {
// What falls when, on a clock that only goes forward: the picture and the clicks both ask here, so that they cannot drift apart.

const SAME = 1e-9; // cycles

/** @typedef {{ share: number, said: string }} Beat a count's place in the cycle, 0 to 1 */
/** @typedef {{ time: number, said: string, first: boolean }} Stroke a count at its second of the clock; whether it is the cycle's first */

class Pulse {
  constructor() {
    /** @type {Beat[]} */
    this.beats = [];
    this.from = 0; // the part of the cycle that comes round again and again
    this.to = 1;
    this.rate = 1; // cycles a second
    this.at = 0; // the second at which it began
    this.start = 0; // where in the cycle that was
  }

  /**
   * From that second on the cycle goes on from that share of it.
   *
   * @param {number} at seconds of the clock
   * @param {number} share
   */
  begin(at, share) {
    this.at = at;
    this.start = Math.min(Math.max(share, this.from), this.to - SAME);
  }

  /** Cycles since the loop's own beginning. @param {number} time */
  #inside(time) {
    return this.start - this.from + this.gone(time);
  }

  /** Where in the cycle it is at a second of the clock. @param {number} time */
  share(time) {
    const length = this.to - this.from;
    const inside = this.#inside(time);
    return this.from + Math.max(0, inside - length * Math.floor(inside / length + SAME));
  }

  /** Cycles since it began. @param {number} time */
  gone(time) {
    return Math.max(0, time - this.at) * this.rate;
  }

  /**
   * The counts that fall from one second on and before another.
   *
   * @param {number} since
   * @param {number} until
   * @returns {Stroke[]}
   */
  strokes(since, until) {
    /** @type {Stroke[]} */
    const out = [];
    if (until <= this.at) return out;
    const length = this.to - this.from;
    const [low, high] = [this.#inside(since), this.#inside(until)];
    for (let lap = Math.floor(low / length); lap * length < high; lap++) {
      this.beats.forEach(({ share, said }, i) => {
        if (share < this.from - SAME || share >= this.to - SAME) return;
        const inside = lap * length + share - this.from;
        if (inside < low - SAME || inside >= high - SAME) return;
        out.push({ time: this.at + (inside - (this.start - this.from)) / this.rate, said, first: i === 0 });
      });
    }
    return out;
  }

  /** The count that is on at a share of the cycle. @param {number} share */
  said(share) {
    let said = '';
    for (const beat of this.beats) if (beat.share <= share + SAME) ({ said } = beat);
    return said || (this.beats.length ? this.beats[this.beats.length - 1].said : '');
  }
}
return {Pulse};
})();
const module13 = (() => {
const { Clicks } = module11;
const { Pulse } = module12;
// Plays one pattern: by the audio clock where it clicks, else by the page's own. Nothing runs while it is paused.




const LONGEST = 0.25; // seconds between two frames that still count as practice

/** How fast it can be played, as shares of the pattern's own tempo. */
const STEPS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.5, 2];

class Player extends EventTarget {
  constructor() {
    super();
    this.pulse = new Pulse();
    this.clicks = new Clicks();
    this.aloud = true; // whether it clicks
    this.playing = false;
    this.share = 0; // of the cycle
    this.speed = 1; // of the pattern's own tempo
    this.period = 1; // seconds of a cycle at its own tempo
    this.practised = 0; // seconds played since the practice began
    this.gone = 0; // cycles played of this pattern
  }

  #byEar = false; // whether the audio clock is the one that is gone by
  #last = 0;
  #before = 0; // cycles that were gone when the pulse last began
  #frames = 0;
  #waits = 0; // seconds that were left, when it was paused, until its cycle was to begin
  #asked = 0; // another number with every play and pause

  /**
   * Another pattern, at its beginning.
   *
   * @param {number} period seconds of a cycle
   * @param {import('./pulse.js').Beat[]} beats
   */
  load(period, beats) {
    this.pause();
    this.period = period;
    this.pulse.beats = beats;
    this.pulse.from = 0;
    this.pulse.to = 1;
    this.share = this.gone = this.#waits = 0;
  }

  /** Seconds until its cycle begins, where something else comes before. */
  get ahead() {
    return this.playing ? Math.max(0, this.pulse.at - this.now()) : this.#waits;
  }

  get slowest() {
    return this.speed <= STEPS[0] + 1e-6;
  }

  get fastest() {
    return this.speed >= STEPS[STEPS.length - 1] - 1e-6;
  }

  /** Seconds of the clock that is gone by. */
  now() {
    return this.#byEar ? this.clicks.heard() : performance.now() / 1000;
  }

  async play() {
    if (this.playing) return;
    this.playing = true;
    const asked = ++this.#asked;
    this.dispatchEvent(new Event('state'));
    const ear = this.aloud ? await this.clicks.ready() : null;
    if (asked !== this.#asked) return;
    this.#byEar = ear !== null;
    this.pulse.rate = this.speed / this.period;
    this.pulse.begin((this.#byEar ? this.clicks.soon() : this.now()) + this.#waits, this.share);
    this.#waits = 0;
    if (this.#byEar) this.clicks.follow(this.pulse);
    this.#before = this.gone;
    this.#last = 0;
    this.#frames = requestAnimationFrame(this.#frame);
  }

  pause() {
    if (!this.playing) return;
    this.#waits = this.gone ? 0 : this.ahead;
    this.playing = false;
    this.#asked++;
    cancelAnimationFrame(this.#frames);
    this.clicks.rest();
    this.dispatchEvent(new Event('state'));
  }

  /** Stands at a share of the cycle. @param {number} share */
  seek(share) {
    this.share = share;
    this.gone = this.#waits = 0;
    if (this.playing) this.#anew();
    this.dispatchEvent(new Event('tick'));
  }

  /** @param {number} speed of the pattern's own tempo */
  pace(speed) {
    const ahead = this.gone ? 0 : (this.ahead * this.speed) / speed;
    this.speed = speed;
    if (this.playing) this.#anew(ahead);
    else this.#waits = ahead;
    this.dispatchEvent(new Event('state'));
  }

  /** Slower by a step, faster by a negative one; false where there is no further one. @param {number} by */
  slower(by) {
    const i = STEPS.findIndex((step) => step >= this.speed - 1e-6) - by;
    if (i < 0 || i >= STEPS.length) return false;
    this.pace(STEPS[i]);
    return true;
  }

  /** That part of the cycle again and again. @param {number} from @param {number} to */
  loop(from, to) {
    this.pulse.from = from;
    this.pulse.to = to;
    if (this.share < from || this.share >= to) this.share = from;
    if (this.playing) this.#anew();
    else this.dispatchEvent(new Event('tick'));
    this.dispatchEvent(new Event('state'));
  }

  /** Clicks or none from now on. @param {boolean} on */
  async sound(on) {
    this.aloud = on;
    if (this.playing) {
      this.pause();
      await this.play();
    } else {
      this.dispatchEvent(new Event('state'));
    }
  }

  /**
   * Another pattern comes after this one without a pause.
   *
   * @param {number} period seconds of a cycle
   * @param {import('./pulse.js').Beat[]} beats
   * @param {number} share where in its cycle it is entered
   * @param {number} wait seconds until it is
   */
  onward(period, beats, share, wait) {
    this.period = period;
    this.pulse.beats = beats;
    this.pulse.from = 0;
    this.pulse.to = 1;
    this.pulse.rate = this.speed / period;
    this.share = share;
    this.gone = this.#before = 0;
    this.pulse.begin(Math.max(this.now() + wait, this.#byEar ? this.clicks.soon() : 0), share);
    if (this.#byEar) this.clicks.follow(this.pulse);
    this.dispatchEvent(new Event('state'));
  }

  // The same moment goes on at another tempo or in another loop.
  #anew(ahead = 0) {
    this.#before = this.gone;
    this.pulse.rate = this.speed / this.period;
    this.pulse.begin(this.now() + ahead, this.share);
    if (this.#byEar) this.clicks.follow(this.pulse);
  }

  #frame = () => {
    if (!this.playing) return;
    const now = this.now();
    // A clock that was read too early never takes the picture back.
    const at = Math.max(now, this.#last);
    if (this.#last) this.practised += Math.min(LONGEST, at - this.#last);
    this.#last = at;
    this.share = this.pulse.share(at);
    this.gone = this.#before + this.pulse.gone(at);
    this.dispatchEvent(new Event('tick'));
    if (this.playing) this.#frames = requestAnimationFrame(this.#frame);
  };
}
return {Player};
})();
const module14 = (() => {
const { Pulse } = module12;
// Plays a set by its song: the sound is the clock, and the picture asks it what is heard now. Where the sound is gone, the page's
// own clock runs along the song's.



const LONGEST = 0.25; // seconds between two frames that still count as practice

/** How fast a song can be played and is still a song, as shares of its own tempo; our choice. */
const PACES = [0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25];

/**
 * @typedef {{ name: string, tempo: number, seconds: number, clock: number[][] }} Song
 * Its usual tempo in beats a minute, how long the set is, and pairs of a second of the sound and one of the set.
 */

class SongPlayer extends EventTarget {
  /** @param {Song} song @param {HTMLAudioElement | null} audio */
  constructor(song, audio) {
    super();
    this.song = song;
    this.audio = audio;
    this.pulse = new Pulse();
    this.aloud = true;
    this.playing = false;
    this.speed = 1;
    this.practised = 0;
    this.gone = 0; // seconds played
    this.share = 0;
    this.ahead = 0;
    this.#at = 0;
    if (audio) audio.addEventListener('ended', () => this.pause());
  }

  #at; // second of the sound
  #frames = 0;
  #last = 0; // second of the page's clock at the last frame
  #asked = 0;

  /** Seconds of the set that have gone; below 0 before it begins. */
  get time() {
    return along(this.song.clock, this.#at, 0);
  }

  /** Stands at a second of the set. @param {number} time */
  seek(time) {
    const { clock, seconds } = this.song;
    this.#at = Math.max(0, along(clock, Math.min(time, seconds), 1));
    if (this.audio) this.audio.currentTime = this.#at;
    this.gone = 0;
    this.dispatchEvent(new Event('tick'));
  }

  async play() {
    if (this.playing) return;
    this.playing = true;
    const asked = ++this.#asked;
    this.dispatchEvent(new Event('state'));
    if (this.audio) {
      this.audio.playbackRate = this.speed;
      try {
        await this.audio.play();
      } catch {
        if (asked === this.#asked) this.pause();
        return;
      }
      if (asked !== this.#asked) return;
    }
    this.#last = performance.now() / 1000;
    this.#frames = requestAnimationFrame(this.#frame);
  }

  pause() {
    if (!this.playing) return;
    this.playing = false;
    this.#asked++;
    cancelAnimationFrame(this.#frames);
    if (this.audio) this.audio.pause();
    this.dispatchEvent(new Event('state'));
  }

  /** Slower by a step, faster by a negative one; false where there is no further one. @param {number} by */
  slower(by) {
    const i = PACES.findIndex((pace) => pace >= this.speed - 1e-6) - by;
    if (i < 0 || i >= PACES.length) return false;
    this.speed = PACES[i];
    if (this.audio) this.audio.playbackRate = this.speed;
    this.dispatchEvent(new Event('state'));
    return true;
  }

  get slowest() {
    return this.speed <= PACES[0] + 1e-6;
  }

  get fastest() {
    return this.speed >= PACES[PACES.length - 1] - 1e-6;
  }

  /** Whether the song is heard. @param {boolean} on */
  async sound(on) {
    this.aloud = on;
    if (this.audio) this.audio.muted = !on;
    this.dispatchEvent(new Event('state'));
  }

  #frame = () => {
    if (!this.playing) return;
    const now = performance.now() / 1000;
    const passed = Math.min(LONGEST, now - this.#last);
    this.#last = now;
    this.practised += passed;
    this.gone += passed;
    // A clock that was read too early never takes the picture back.
    this.#at = this.audio ? Math.max(this.#at, this.audio.currentTime) : this.#at + passed * this.speed;
    this.dispatchEvent(new Event('tick'));
    if (this.time >= this.song.seconds) this.pause();
    else if (this.playing) this.#frames = requestAnimationFrame(this.#frame);
  };
}

/**
 * What stands beside a number in pairs that go up, evenly between two of them.
 *
 * @param {number[][]} pairs
 * @param {number} number
 * @param {number} from in which of the two it is looked for
 */
function along(pairs, number, from) {
  let low = 0;
  let high = pairs.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (pairs[middle][from] <= number) low = middle;
    else high = middle;
  }
  const [a, b] = [pairs[low], pairs[high]];
  const to = 1 - from;
  return a[to] + ((number - a[from]) / (b[from] - a[from])) * (b[to] - a[to]);
}
return {SongPlayer};
})();
const module15 = (() => {
const { Scene } = module2;
const { CARE, FLASHES, asked } = module3;
const { HallFigure } = module10;
const { Player } = module13;
const { SongPlayer } = module14;
// One figure that plays: a pattern over and over, or a set's patterns one after the other with the passages between. It has the
// buttons that play it, by their ids; whatever else stands on the page listens to it.







const ROUND = 1e-6;
const MET = 14; // pixels, nearer than which two letters would lie on each other
/** @type {Record<string, string>} */
const SEEN = { audience: 'Seen by the audience', mirror: 'Seen in a mirror', eyes: 'Seen with your own eyes' };

/**
 * @typedef {{ name: string, tempo: number, period_s: number, stand: string, counts: import('./pulse.js').Beat[] }} Played
 * @typedef {{ tempo: number, period_s: number, counts: number, starts_s: number, one_s: number, count_s: number, enters: number, wait_s: number, passage: any }} Step
 * What a step spins, null where that is gone.
 * @typedef {(step: any) => { pattern: Played, scene: any } | null} Spun
 */

/** @type {(selector: string) => any} */
const $ = (selector) => document.querySelector(selector);

class Show extends EventTarget {
  /** @type {{ steps: Step[], at: number, spun: Spun } | null} */
  #within = null;
  #passing = 0; // seconds of the passage that is on; 0 for none
  #cared = false;
  #own = new Player();
  #heard = new WeakSet(); // players that are listened to
  #song = { share: 0, said: '' }; // what is seen of a set to its song

  /** @param {HTMLCanvasElement} canvas */
  constructor(canvas) {
    super();
    /** @type {Player | SongPlayer} */
    this.player = this.#own;
    this.figure = new HallFigure(canvas);
    /** @type {Played | null} */
    this.pattern = null;
    this.#listen(canvas);
  }

  /** From now on that one plays. @param {Player | SongPlayer} player */
  #use(player) {
    if (player !== this.player) this.player.pause();
    this.player = player;
    if (this.#heard.has(player)) return;
    this.#heard.add(player);
    player.addEventListener('tick', () => {
      if (player !== this.player) return;
      if (player instanceof SongPlayer) this.#sung(player.time);
      else if (player.playing) this.#onward(player);
      this.draw();
    });
    player.addEventListener('state', () => {
      if (player !== this.player) return;
      if (player.playing && !this.#cared && this.#fast()) {
        player.pause();
        this.play();
        return;
      }
      this.buttons();
      this.dispatchEvent(new Event('state'));
    });
  }

  /**
   * A set from one of its steps on, to its song.
   *
   * @param {Step[]} steps
   * @param {number} at
   * @param {Spun} spun
   * @param {SongPlayer} player
   */
  sing(steps, at, spun, player) {
    const first = spun(steps[at]);
    if (!first) return;
    this.#use(player);
    this.#within = { steps, at, spun };
    this.figure.hold(around(steps, spun));
    player.practised = 0;
    this.#cared = false;
    player.pause();
    this.#enter(first.pattern, first.scene);
    while (player.slower(-1) && player.speed < 1);
    while (player.speed > 1 && player.slower(1));
    while (this.#fast() && player.slower(1));
    // The first is counted in by a bar of the song.
    player.seek(at ? steps[at].starts_s : -Infinity);
    this.buttons();
  }

  // What is seen at a second of the set: a step, or before that the passage to it.
  /** @param {number} time */
  #sung(time) {
    const within = this.#within;
    if (!within) return;
    const { steps, spun } = within;
    let at = 0;
    steps.forEach((each, i) => {
      if (each.counts > 0 && time >= each.starts_s - (i ? steps[i - 1].wait_s : 0) - ROUND) at = i;
    });
    const step = steps[at];
    const before = at && time < step.starts_s - ROUND ? steps[at - 1] : null;
    const passing = before && before.passage ? before.wait_s : 0;
    if (at !== within.at || passing !== this.#passing) {
      const it = spun(step);
      if (!it) return;
      within.at = at;
      if (passing) {
        this.#passing = passing;
        this.pattern = it.pattern;
        this.figure.load(/** @type {Step} */ (before).passage, it.pattern.stand);
        this.#seen();
        this.dispatchEvent(new Event('step'));
      } else {
        this.#enter(it.pattern, it.scene);
      }
    }
    const since = time - step.starts_s;
    const cycles = step.enters + Math.max(0, since) / (this.pattern?.period_s ?? 1);
    // Counted on the beats, from where the pattern is counted from 1.
    const late = step.one_s - step.starts_s;
    const count = Math.floor((since - late) / step.count_s + ROUND) + 1;
    const last = Math.max(1, Math.ceil(step.counts - late / step.count_s - 0.05));
    this.#song = {
      share: passing ? Math.min(1 - ROUND, Math.max(0, 1 + since / passing)) : cycles - Math.floor(cycles + ROUND),
      said: passing || since < late - ROUND ? '' : String(Math.min(count, last)),
    };
  }

  /**
   * A pattern, as slow at first as its lights can be borne.
   *
   * @param {Played} pattern
   * @param {any} scene
   */
  alone(pattern, scene) {
    this.#use(this.#own);
    this.#within = null;
    this.figure.hold(null);
    this.#begin(pattern, scene, 0);
  }

  /**
   * A set from one of its steps on.
   *
   * @param {Step[]} steps
   * @param {number} at
   * @param {Spun} spun
   */
  follow(steps, at, spun) {
    const first = spun(steps[at]);
    if (!first) return;
    this.#use(this.#own);
    this.#within = { steps, at, spun };
    this.figure.hold(around(steps, spun));
    this.#begin(first.pattern, first.scene, steps[at].enters);
  }

  /** The step that is on, or that a passage leads to; -1 where no set is played. */
  get step() {
    return this.#within ? this.#within.at : -1;
  }

  /** Whether a passage is on. */
  get passing() {
    return this.#passing > 0;
  }

  /** @param {Played} pattern @param {any} scene @param {number} share */
  #begin(pattern, scene, share) {
    const player = this.#own;
    player.practised = 0;
    this.#cared = false;
    player.load(pattern.period_s, pattern.counts);
    this.#enter(pattern, scene);
    player.speed = 1;
    while (this.#fast() && player.slower(1));
    player.seek(share);
    this.buttons();
  }

  /** @param {Played} pattern @param {any} scene */
  #enter(pattern, scene) {
    this.#passing = 0;
    this.pattern = pattern;
    this.figure.load(scene, pattern.stand);
    this.#seen();
    this.dispatchEvent(new Event('step'));
  }

  // So many counts, then the passage, then the next.
  /** @param {Player} player */
  #onward(player) {
    const within = this.#within;
    if (!within) return;
    if (this.#passing) {
      if (player.ahead <= 0) this.#joined();
      return;
    }
    const step = within.steps[within.at];
    if (player.gone * player.pulse.beats.length < step.counts - ROUND) return;
    const next = within.steps[within.at + 1];
    const spun = next ? within.spun(next) : null;
    if (!spun) {
      player.pause();
      return;
    }
    within.at++;
    player.onward(spun.pattern.period_s, spun.pattern.counts, next.enters, step.wait_s / player.speed);
    if (!step.passage) {
      this.#enter(spun.pattern, spun.scene);
      return;
    }
    this.#passing = step.wait_s;
    this.pattern = spun.pattern;
    this.figure.load(step.passage, spun.pattern.stand);
    this.#seen();
    this.dispatchEvent(new Event('step'));
  }

  #joined() {
    const within = this.#within;
    const spun = within ? within.spun(within.steps[within.at]) : null;
    if (spun) this.#enter(spun.pattern, spun.scene);
  }

  #fast() {
    return this.figure.turns * this.player.speed > FLASHES;
  }

  async play() {
    const { player } = this;
    if (player.playing) {
      player.pause();
      return;
    }
    if (!this.#cared && this.#fast()) {
      const answer = await asked($('.care'));
      if (answer !== 'slow' && answer !== 'full') return;
      this.#cared = answer === 'full';
      if (answer === 'slow') while (this.#fast() && player.slower(1));
    }
    await player.play();
  }

  /** Stands in the pose it begins with. */
  anew() {
    const { player } = this;
    player.pause();
    if (player instanceof SongPlayer) {
      player.seek(this.step > 0 ? (this.#within?.steps[this.step].starts_s ?? 0) : -Infinity);
      this.buttons();
      return;
    }
    if (this.#passing) this.#joined();
    player.seek(this.#within ? this.#within.steps[this.#within.at].enters : player.pulse.from);
    this.buttons();
  }

  draw() {
    const { player, figure } = this;
    if (!this.pattern) return;
    const sung = player instanceof SongPlayer;
    const share = sung ? this.#song.share : this.#passing ? Math.min(1 - ROUND, Math.max(0, 1 - (player.ahead * player.speed) / this.#passing)) : player.share;
    figure.draw(share);
    /** @type {number[][]} */
    const named = [];
    for (const side of ['left', 'right']) {
      const letter = $('.letter[data-side=' + side + ']');
      const shown = figure.hand === 'both' || figure.hand === side;
      letter.hidden = !shown;
      const [x, y] = figure.place(side + '.hand', share);
      if (!shown) continue;
      // Where the hands meet their letters stand on either side.
      const met = named.some((other) => Math.hypot(x - other[0], y - other[1]) < MET);
      letter.style.transform = `translate(${(x + (met ? 7 : -17)).toFixed(1)}px, ${(y + 13).toFixed(1)}px)`;
      named.push([x, y]);
    }
    const said = sung ? this.#song.said : this.#passing ? '' : player.pulse.said(share);
    if ($('#count').textContent !== said) $('#count').textContent = said;
  }

  /** Whose left and right the words mean, and where those are in the picture as it is seen now. */
  get whose() {
    const { left, view } = this.figure;
    return 'Left and right are the performer’s' + (left ? '. ' + SEEN[view] + ', the performer’s left is on the ' + left + '.' : '.');
  }

  #seen() {
    for (const said of document.querySelectorAll('.whose')) said.textContent = this.whose;
  }

  buttons() {
    const { player, pattern } = this;
    if (!pattern) return;
    $('#play').setAttribute('aria-pressed', String(player.playing));
    $('#play span').textContent = player.playing ? 'Pause' : 'Play';
    const cycles = Math.round(pattern.tempo * player.speed);
    $('#tempo').textContent = player instanceof SongPlayer ? cycles + ' cycles, ' + Math.round(player.song.tempo * player.speed) + ' beats a minute' : cycles + ' a minute';
    $('#slower').disabled = player.slowest;
    $('#faster').disabled = player.fastest;
    $('#click').textContent = player instanceof SongPlayer ? 'Song' : 'Click';
    $('#click').setAttribute('aria-pressed', String(player.aloud));
  }

  /** @param {HTMLCanvasElement} canvas */
  #listen(canvas) {
    const { figure } = this;
    this.#use(this.#own);
    $('.care h2').textContent = CARE.title;
    $('.care p').textContent = CARE.text;
    for (const button of document.querySelectorAll('.care button')) button.textContent = /** @type {Record<string, string>} */ (CARE)[button.value];
    const press = (/** @type {string} */ selector, /** @type {() => void} */ act) => $(selector).addEventListener('click', act);
    press('#play', () => this.play());
    canvas.addEventListener('click', () => this.play());
    press('#slower', () => this.player.slower(1));
    press('#faster', () => this.player.slower(-1));
    press('#anew', () => this.anew());
    press('#click', () => this.player.sound(!this.player.aloud));
    for (const radio of document.querySelectorAll('[name=view]')) {
      radio.addEventListener('change', () => {
        figure.see(radio.value);
        this.#seen();
        this.draw();
      });
    }
    for (const radio of document.querySelectorAll('[name=hand]')) {
      radio.addEventListener('change', () => {
        figure.alone(radio.value);
        this.draw();
      });
    }
    document.addEventListener('visibilitychange', () => document.hidden && this.player.pause());
    addEventListener('pagehide', () => this.player.pause());
  }
}

/** A pattern at the tempo that it has in a step. @template {Played} P @param {P} pattern @param {Step} step @returns {P} */
const stepped = (pattern, { tempo, period_s }) => ({ ...pattern, tempo, period_s });

/** Corners of the box in which a whole set is played. @param {Step[]} steps @param {Spun} spun */
function around(steps, spun) {
  const scene = new Scene();
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  for (const step of steps) {
    for (const sent of [spun(step)?.scene, step.passage]) {
      if (!sent) continue;
      scene.read({ scene: sent });
      const box = scene.box();
      for (let k = 0; k < 3; k++) {
        least[k] = Math.min(least[k], box.least[k]);
        most[k] = Math.max(most[k], box.most[k]);
      }
    }
  }
  return { least, most };
}
return {Show, stepped};
})();
const module16 = (() => {
// A small moving picture of a pairing: the light of the whole cycle is drawn once, and only the two moving heads over it. One clock
// moves all that are in view, where motion is wanted; else each shows one moment. Nothing is drawn of what is not in view.

const EVERY = 50; // milliseconds between two drawings of a small one
const LARGE = 140; // pixels from which on one is drawn with every frame
const SPEED = 0.5;
const STILL = 0.08; // cycles: the moment that is shown where no motion is wanted
const TRAIL = 0.16; // cycles that a head leaves bright behind it
const SHADES = 8;

const calm = matchMedia('(prefers-reduced-motion: reduce)');
/** @type {Set<MovingThumb>} */
const seen = new Set();
let running = false;
let resting = false;

const watch = new IntersectionObserver((entries) => {
  for (const { target, isIntersecting } of entries) {
    const thumb = /** @type {MovingThumb} */ (target);
    if (isIntersecting) seen.add(thumb);
    else seen.delete(thumb);
  }
  run();
});

const sizes = new ResizeObserver((entries) => {
  for (const { target } of entries) /** @type {MovingThumb} */ (target).fit();
});

function run() {
  if (running || resting || !seen.size || calm.matches || document.hidden) return;
  running = true;
  requestAnimationFrame(frame);
}

/** @param {number} now */
function frame(now) {
  if (resting || !seen.size || calm.matches || document.hidden) {
    running = false;
    return;
  }
  for (const thumb of seen) {
    if (now - thumb.last < thumb.every) continue;
    thumb.last = now;
    thumb.draw(((now / 1000) * SPEED) / thumb.period);
    drawings.moving ||= performance.now();
  }
  requestAnimationFrame(frame);
}

calm.addEventListener('change', () => {
  for (const thumb of seen) thumb.draw(STILL);
  run();
});
document.addEventListener('visibilitychange', run);

/** All of them stand still, or move again. @param {boolean} on */
function rest(on) {
  resting = on;
  run();
}

/** How often any thumbnail was drawn, and when the first moved, for measuring from outside. */
const drawings = { count: 0, moving: 0 };

/** @typedef {{ period_s: number, count: number, samples: Record<string, { hand: string, head: string }> }} Moves */

class MovingThumb extends HTMLElement {
  /** @type {Moves | undefined} */
  #sent;
  /** @type {string | undefined} */
  #themed;
  /** @type {Record<string, Float32Array> | undefined} */
  #tracks;
  /** @type {Record<string, Float32Array>} */
  #flat = {};
  /** @type {Record<string, string>} */
  #ink = {};
  /** @type {HTMLCanvasElement | undefined} */
  #lines;
  /** @type {string[]} */
  #sides = ['left', 'right'];
  #canvas = document.createElement('canvas');
  #size = 0; // pixels of the page
  #ratio = 1; // pixels of the screen to one of the page
  #unit = 1; // a line's width there
  #count = 1;
  #glow = false;
  #waits = false; // for the pointer or the focus

  period = 1;
  last = 0;

  get every() {
    return this.#size >= LARGE ? 0 : EVERY;
  }

  connectedCallback() {
    this.#canvas.setAttribute('aria-hidden', 'true');
    this.append(this.#canvas);
    if (!this.#waits) watch.observe(this);
    sizes.observe(this);
    this.#prepare();
  }

  /** Whether it is drawn. */
  get drawn() {
    return this.#lines !== undefined;
  }

  /**
   * Moves only while that element is under the pointer or holds the focus.
   *
   * @param {Element} element
   */
  set under(element) {
    this.#waits = true;
    for (const on of ['pointerenter', 'focusin']) element.addEventListener(on, () => this.#wake());
    for (const off of ['pointerleave', 'focusout']) element.addEventListener(off, () => element.matches(':hover, :focus-within') || this.#rest());
  }

  #wake() {
    if (!this.isConnected || !this.#tracks) return;
    seen.add(this);
    run();
  }

  #rest() {
    if (seen.delete(this)) this.draw(STILL);
  }

  disconnectedCallback() {
    watch.unobserve(this);
    sizes.unobserve(this);
    seen.delete(this);
  }

  /**
   * What moves, as the server sends it.
   *
   * @param {Moves | null | undefined} moves
   */
  set moves(moves) {
    if (!moves || this.#sent === moves) return;
    this.#sent = moves;
    this.period = moves.period_s;
    this.#count = moves.count;
    this.#tracks = {};
    for (const side of ['left', 'right']) {
      this.#tracks[side + '.hand'] = unpack(moves.samples[side].hand);
      this.#tracks[side + '.head'] = unpack(moves.samples[side].head);
    }
    this.#prepare();
  }

  /**
   * Whether the left hand alone is shown, where the other is not meant.
   *
   * @param {boolean} alone
   */
  set alone(alone) {
    if (alone === (this.#sides.length === 1)) return;
    this.#sides = alone ? ['left'] : ['left', 'right'];
    this.#prepare();
  }

  /** @param {string | undefined} theme */
  set theme(theme) {
    if (this.#themed === theme) return;
    this.#themed = theme;
    this.#prepare();
  }

  /** Draws anew where its size on the page has changed. */
  fit() {
    if (Math.abs(this.clientWidth - this.#size) > 1) this.#prepare();
  }

  // Seen along whichever axis the figures move least: a wall pattern from the front, a floor pattern from above.
  #prepare() {
    if (!this.#tracks || !this.isConnected || !this.clientWidth) return;
    const tracks = Object.entries(this.#tracks).filter(([track]) => this.#sides.some((side) => track.startsWith(side)));
    const least = [Infinity, Infinity, Infinity];
    const most = [-Infinity, -Infinity, -Infinity];
    for (const [, xyz] of tracks) {
      for (let i = 0; i < xyz.length; i++) {
        least[i % 3] = Math.min(least[i % 3], xyz[i]);
        most[i % 3] = Math.max(most[i % 3], xyz[i]);
      }
    }
    const wide = most.map((v, k) => v - least[k]);
    const across = wide[0] >= Math.min(wide[1], wide[2]) ? 0 : 2;
    const up = across === 2 ? 1 : wide[1] >= wide[2] ? 1 : 2;
    this.#size = this.clientWidth;
    this.#ratio = Math.min(2, devicePixelRatio || 1);
    const all = Math.round(this.#size * this.#ratio);
    this.#unit = this.#ratio * Math.max(0.62, Math.min(1.7, this.#size / 100));
    const scale = (all / 2 - 7 * this.#unit) / Math.max(wide[across] / 2, wide[up] / 2, 0.01);
    this.#canvas.width = this.#canvas.height = all;
    const middle = [(least[across] + most[across]) / 2, (least[up] + most[up]) / 2];
    const way = up === 1 ? -1 : 1;
    this.#flat = {};
    for (const [track, xyz] of tracks) {
      const xy = new Float32Array((2 * xyz.length) / 3);
      for (let i = 0; i < xy.length / 2; i++) {
        xy[2 * i] = all / 2 + (xyz[3 * i + across] - middle[0]) * scale;
        xy[2 * i + 1] = all / 2 + way * (xyz[3 * i + up] - middle[1]) * scale;
      }
      this.#flat[track] = xy;
    }
    const style = getComputedStyle(this);
    this.#ink = { left: style.getPropertyValue('--left'), right: style.getPropertyValue('--right'), ground: style.getPropertyValue('--stage-ground') };
    this.#glow = style.getPropertyValue('--stage-glow').trim() === '1';
    this.#light(all);
    this.draw(STILL);
    run();
  }

  // The light of a whole cycle, wide and faint below, narrow and bright above.
  /** @param {number} all */
  #light(all) {
    const u = this.#unit;
    this.#lines = document.createElement('canvas');
    this.#lines.width = this.#lines.height = all;
    const p = /** @type {CanvasRenderingContext2D} */ (this.#lines.getContext('2d'));
    p.fillStyle = this.#ink.ground;
    p.fillRect(0, 0, all, all);
    p.lineJoin = 'round';
    const layers = this.#glow ? [[7, 0.06], [3.4, 0.13], [1.3, 0.62]] : [[1.3, 0.8]];
    for (const side of this.#sides) {
      p.strokeStyle = this.#ink[side];
      p.globalCompositeOperation = 'source-over';
      p.globalAlpha = 0.4;
      p.lineWidth = 0.9 * u;
      p.setLineDash([1.6 * u, 2.6 * u]);
      p.stroke(closed(this.#flat[side + '.hand']));
      if (this.#glow) p.globalCompositeOperation = 'lighter';
      const path = closed(this.#flat[side + '.head']);
      for (const [width, alpha] of layers) {
        p.setLineDash(side === 'right' && width < 2 ? [6 * u, 2 * u] : []);
        p.lineWidth = width * u;
        p.globalAlpha = alpha;
        p.stroke(path);
      }
    }
  }

  /** @param {number} cycles */
  draw(cycles) {
    if (!this.#lines) return;
    drawings.count++;
    const p = /** @type {CanvasRenderingContext2D} */ (this.#canvas.getContext('2d'));
    const u = this.#unit;
    p.globalCompositeOperation = 'source-over';
    p.globalAlpha = 1;
    p.drawImage(this.#lines, 0, 0);
    p.lineCap = 'round';
    const moment = cycles - Math.floor(cycles);
    for (const side of this.#sides) {
      const heads = this.#flat[side + '.head'];
      const [hx, hy] = place(this.#flat[side + '.hand'], moment * this.#count);
      const [x, y] = place(heads, moment * this.#count);
      p.strokeStyle = p.fillStyle = this.#ink[side];
      p.globalCompositeOperation = this.#glow ? 'lighter' : 'source-over';
      // Brighter and wider toward the head.
      for (let i = 0; i < SHADES; i++) {
        p.globalAlpha = (0.75 * (i + 1)) / SHADES;
        p.lineWidth = (1 + (1.8 * (i + 1)) / SHADES) * u;
        p.beginPath();
        for (let j = 0; j <= 3; j++) {
          const back = TRAIL * (1 - (i + j / 3) / SHADES);
          p.lineTo(...place(heads, (moment + 1 - back) * this.#count));
        }
        p.stroke();
      }
      p.globalAlpha = this.#glow ? 0.5 : 0.9;
      p.lineWidth = u;
      p.beginPath();
      p.moveTo(hx, hy);
      p.lineTo(x, y);
      p.stroke();
      if (this.#glow) {
        for (const [r, alpha] of [[8, 0.1], [5.4, 0.2]]) {
          p.globalAlpha = alpha;
          p.beginPath();
          p.arc(x, y, r * u, 0, 2 * Math.PI);
          p.fill();
        }
      }
      p.globalCompositeOperation = 'source-over';
      p.globalAlpha = 1;
      p.beginPath();
      // The left's head is round, the right's has corners.
      if (side === 'left') p.arc(x, y, 2.8 * u, 0, 2 * Math.PI);
      else {
        p.moveTo(x - 3.6 * u, y);
        p.lineTo(x, y - 3.6 * u);
        p.lineTo(x + 3.6 * u, y);
        p.lineTo(x, y + 3.6 * u);
      }
      p.fill();
    }
  }
}

/** @param {Float32Array} xy */
function closed(xy) {
  const path = new Path2D();
  for (let i = 0; i <= xy.length / 2; i++) path.lineTo(xy[2 * (i % (xy.length / 2))], xy[2 * (i % (xy.length / 2)) + 1]);
  return path;
}

/**
 * @param {Float32Array} xy
 * @param {number} at
 * @returns {[number, number]}
 */
function place(xy, at) {
  const n = xy.length / 2;
  const i = Math.floor(at) % n;
  const j = (i + 1) % n;
  const f = at - Math.floor(at);
  return [xy[2 * i] * (1 - f) + xy[2 * j] * f, xy[2 * i + 1] * (1 - f) + xy[2 * j + 1] * f];
}

/** @param {string} base64 */
function unpack(base64) {
  const text = atob(base64);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return new Float32Array(bytes.buffer);
}

customElements.define('moving-thumb', MovingThumb);
return {rest, drawings, MovingThumb};
})();
const module17 = (() => {
// The search on the index: what stands on the page is searched, so that it needs neither a server nor a list of its own.

const PLACE = '#find=';

class Finder {
  /** @param {HTMLElement} form with its field */
  constructor(form) {
    this.field = /** @type {HTMLInputElement} */ (form.querySelector('input'));
    this.said = /** @type {HTMLElement} */ (form.querySelector('output'));
    this.items = [...document.querySelectorAll('[data-words]')].map((item) => ({
      item: /** @type {HTMLElement} */ (item),
      text: searched(item.textContent + ' ' + item.getAttribute('data-words')),
    }));
    form.hidden = false;
    this.field.addEventListener('input', () => this.find());
    form.addEventListener('submit', (event) => event.preventDefault());
    addEventListener('hashchange', () => this.#place());
    this.#place();
  }

  // A label on another page leads here with what is to be found.
  #place() {
    if (!location.hash.startsWith(PLACE)) return;
    this.field.value = decodeURIComponent(location.hash.slice(PLACE.length));
    this.find();
  }

  /** Shows what has every word of the field, at the beginning of one of its own. */
  find() {
    const words = folded(this.field.value).split(' ').filter(Boolean);
    let found = 0;
    for (const { item, text } of this.items) {
      item.hidden = !words.every((word) => text.includes(' ' + word));
      if (!item.hidden) found++;
    }
    for (const list of document.querySelectorAll('section')) {
      if (list.querySelector('[data-words]')) list.hidden = !list.querySelector('[data-words]:not([hidden])');
    }
    this.said.textContent = !words.length ? '' : found === 0 ? 'Nothing here has all these words.' : found === 1 ? 'One found.' : found + ' found.';
  }
}

/** Also as who leaves hyphens out may write it: cateye. @param {string} text */
function searched(text) {
  return folded(text) + folded(text.replace(/-/g, ''));
}

/** Small letters without marks, a space before each word. @param {string} text */
function folded(text) {
  const plain = text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  return ' ' + plain.replace(/[^\p{L}\p{N}]+/gu, ' ').trim();
}
return {Finder, folded};
})();
const module18 = (() => {
const { Show, stepped } = module15;
const { MovingThumb, rest } = module16;
const { Finder } = module17;
// The pages of a site: small figures that move, one large figure that plays, and the search on the index. All of it is read without
// this script as well; moving points come from files of the site, and nothing from anywhere else.





const EDGE = 18; // pixels left free beside the figure
const NEAR = '200px'; // so far outside the window small figures are fetched

/** @type {(selector: string) => any} */
const $ = (selector) => document.querySelector(selector);

class Site {
  /** @type {Record<string, any>} */
  #moves = {};
  /** @type {Record<string, Promise<any>>} */
  #asked = {};
  #calm = matchMedia('(prefers-reduced-motion: reduce)');
  #dark = matchMedia('(prefers-color-scheme: dark)');

  /** What a file of moving points says of itself. @param {string} name @param {any} moves */
  put(name, moves) {
    this.#moves[name] = moves;
  }

  begin() {
    if ($('#find')) this.finder = new Finder($('#find'));
    this.#smalls();
    if ($('#show')) this.#large();
    document.body.classList.add('ready');
  }

  // A page that was opened from a file may load scripts and nothing else.
  /** @param {string} name @returns {Promise<any>} */
  #fetch(name) {
    this.#asked[name] ??= new Promise((resolve, reject) => {
      const script = document.createElement('script');
      script.src = 'moves/' + name + '.js';
      script.addEventListener('load', () => resolve(this.#moves[name]));
      script.addEventListener('error', () => reject(new Error(name + ' has not come')));
      document.head.append(script);
    });
    return this.#asked[name];
  }

  // Small figures: pictures at first; where motion is wanted, each moves once it comes into view.
  #smalls() {
    const smalls = document.querySelectorAll('.small[data-moves]');
    const button = $('#still');
    if (!smalls.length || !button || this.#calm.matches) return;
    const near = new IntersectionObserver((entries) => {
      for (const { target, isIntersecting } of entries) {
        if (!isIntersecting) continue;
        near.unobserve(target);
        this.#moving(/** @type {HTMLElement} */ (target));
      }
    }, { rootMargin: NEAR });
    for (const small of smalls) near.observe(small);
    button.hidden = false;
    button.addEventListener('click', () => {
      const on = button.getAttribute('aria-pressed') !== 'true';
      button.setAttribute('aria-pressed', String(on));
      rest(on);
    });
  }

  /** @param {HTMLElement} small */
  async #moving(small) {
    const thumb = new MovingThumb();
    try {
      const { scene } = await this.#fetch(small.dataset.moves ?? '');
      small.append(thumb);
      thumb.moves = scene;
      small.classList.add('moving');
    } catch {
      // The picture stays.
      return;
    }
    this.#dark.addEventListener('change', () => (thumb.theme = String(this.#dark.matches)));
  }

  // The large figure of a pattern, or of a set from its first step on.
  async #large() {
    const box = $('#show');
    const { moves } = box.dataset;
    const whole = await this.#fetch(moves);
    const steps = whole.steps ?? [];
    const spun = new Map();
    for (const step of steps) if (step.moves && !spun.has(step.moves)) spun.set(step.moves, this.#fetch(step.moves));
    for (const [name, coming] of spun) spun.set(name, await coming);
    box.hidden = false;
    document.body.classList.add('shown');
    const show = new Show($('#show canvas'));
    this.show = show;
    show.player.aloud = false;
    const resize = () => {
      show.figure.resize({ above: EDGE, right: EDGE, below: EDGE, left: EDGE });
      show.draw();
    };
    show.addEventListener('step', () => {
      this.#mark(show);
      resize();
    });
    if (whole.steps) {
      const of = (/** @type {any} */ step) => (step.moves ? { pattern: stepped(spun.get(step.moves), step), scene: spun.get(step.moves).scene } : null);
      show.follow(steps, 0, of);
      for (const button of document.querySelectorAll('.from-here')) {
        button.hidden = false;
        button.addEventListener('click', () => {
          show.follow(steps, Number(button.dataset.step), of);
          show.player.play();
          box.scrollIntoView({ block: 'nearest' });
        });
      }
    } else show.alone(whole, whole.scene);
    new ResizeObserver(resize).observe($('#show .seen'));
    this.#dark.addEventListener('change', resize);
    addEventListener('keydown', (event) => {
      const { target } = event;
      if (event.key !== ' ' || !(target instanceof Element) || target.closest('button, input, a, summary, dialog')) return;
      event.preventDefault();
      show.play();
    });
  }

  // In a set, which step is on.
  /** @param {Show} show */
  #mark(show) {
    const on = $('#now');
    if (!on || !show.pattern) return;
    on.textContent = (show.passing ? 'Into ' : '') + show.pattern.name;
    document.querySelectorAll('#steps > li').forEach((/** @type {Element} */ item, /** @type {number} */ i) => {
      if (i === show.step) item.setAttribute('aria-current', 'step');
      else item.removeAttribute('aria-current');
    });
  }
}

window.deferentSite = new Site();
window.deferentSite.begin();
return {};
})();
})();
