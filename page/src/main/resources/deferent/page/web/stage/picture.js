// What is to be drawn at a moment, ready for either way of drawing: ribbons (whole paths), strokes (straight lines) and marks
// (shapes that keep their size on the screen). Filled anew each frame into arrays that stay.

export const SHAPES = { disc: 0, diamond: 1, ring: 2, square: 3, cross: 4, dot: 5, halo: 6 };

/** How many strokes or marks there is room for. */
export const ROOM = 256;

const SAG = 17; // parts of a slack cord, of which every other is drawn

/** The two hands are told apart by shape as well as colour: the left's marks are round, the right's have corners. */
const HAND = { left: SHAPES.ring, right: SHAPES.square };
const HEAD = { left: SHAPES.disc, right: SHAPES.diamond };

export class Picture {
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
export function ribbonsOf(scene) {
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
export function pointsOf(ribbon, scene) {
  if (ribbon.kind === 'best') return scene.best.xyz;
  if (ribbon.kind === 'was') return scene.was[ribbon.side];
  if (ribbon.track) return scene.tracks[ribbon.track];
  const item = scene.items[ribbon.index];
  const xyz = new Float32Array(3 * item.points.length);
  item.points.forEach((p, i) => xyz.set(p, 3 * i));
  return xyz;
}

/** How each kind of ribbon looks: half width of core and halo in pixels, opacity, dashes a cycle and the share of each that is drawn. */
export const RIBBON = {
  fixed: { core: 0.6, halo: 0, alpha: 0.4 },
  ghost: { core: 0.55, halo: 0, alpha: 0.55 },
  path: { core: 0.9, halo: 0, alpha: 0.8, left: [96, 0.36], right: [48, 0.62] },
  best: { core: 1.1, halo: 0, alpha: 0.9, ink: 'link', left: [60, 0.5], right: [60, 0.5] },
  was: { core: 0.9, halo: 0, alpha: 0.6, right: [60, 0.6] },
  figure: { core: 0.75, halo: 0, alpha: 0.45, right: [120, 0.74] },
  trail: { core: 1.9, halo: 7.5, alpha: 1, right: [90, 0.72] },
};

/** Half width of the line round the performer, pixels. */
export const EDGE = 1.2;

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
export function lightOf(ribbon, lit) {
  if (!lit || !LIT[ribbon.kind]) return null;
  const { kind, side } = ribbon;
  if (lit.one && (kind === 'figure') === (lit.one === side)) {
    return { core: 2 + 5 * lit.strength, halo: 0, alpha: 0.35 + 0.65 * lit.strength, ink: 'link' };
  }
  return lit[kind] === 'both' || lit[kind] === side ? LIT[kind] : null;
}

/** Of a light that stays a whole cycle: how bright it is where it is oldest. */
export const OLDEST = 0.42;

/** And how bright between the dashes by which the right's is told from the left's, where it is not new. */
export const BETWEEN = 0.45;
