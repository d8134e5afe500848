// A scene as the server sends it, unpacked once and kept in the same arrays from answer to answer.

import { Person } from './person.js';

export const TRACKS = ['left.hand', 'left.head', 'right.hand', 'right.head'];

const FLAT = 6e-4; // metres that a straight piece between two samples may leave its path by
const SAME = 5e-4; // metres; a ghost that lies nowhere further from what is shown is not drawn

export class Scene {
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
