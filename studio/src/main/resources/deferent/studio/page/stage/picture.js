// What is to be drawn at a moment, ready for either way of drawing: ribbons (whole paths), strokes (straight lines) and marks
// (shapes that keep their size on the screen). Filled anew each frame into arrays that stay.

export const SHAPES = { disc: 0, diamond: 1, ring: 2, square: 3, cross: 4, dot: 5 };

const ROOM = 64;

/** The two hands are told apart by shape as well as colour: the left's marks are round, the right's have corners. */
const HAND = { left: SHAPES.ring, right: SHAPES.square };
const HEAD = { left: SHAPES.disc, right: SHAPES.diamond };

export class Picture {
  constructor() {
    this.ends = new Float32Array(6 * ROOM);
    this.strokeStyle = new Float32Array(4 * ROOM); // half width, dash, space, spare
    this.strokeColour = new Float32Array(4 * ROOM);
    this.strokes = 0;
    this.points = new Float32Array(3 * ROOM);
    this.markStyle = new Float32Array(2 * ROOM); // radius, shape
    this.markColour = new Float32Array(4 * ROOM);
    this.marks = 0;
    this.tie = new Float32Array(6);
    this.tied = false;
    this.hands = { left: new Float32Array(3), right: new Float32Array(3) };
  }

  /** Sets strokes and marks of a scene at a phase. */
  compose(scene, phase, ink, show, scale = 1) {
    this.scale = scale;
    this.strokes = 0;
    this.marks = 0;
    this.tied = false;
    for (const item of scene.items) {
      const colour = ink[item.side] || ink.plain;
      switch (item.form) {
        case 'segment':
          if (item.role === 'tie') {
            if (show.tie) this.#tie(scene, item, phase, ink);
          } else {
            this.#stroke(scene, item, phase, colour);
          }
          break;
        case 'point':
          this.#point(scene, item, phase, colour);
          break;
        case 'fixed':
          if (item.points.length === 1 && item.role === 'centre') this.#centre(item.points[0], colour);
          break;
      }
    }
  }

  #stroke(scene, item, phase, colour) {
    const i = this.strokes++;
    scene.at(item.from, phase, this.ends, 6 * i);
    scene.at(item.to, phase, this.ends, 6 * i + 3);
    // The left's lines are unbroken, the right's dashed, as on paper.
    const right = item.side === 'right';
    this.#style(i, right ? 1.35 : 1.25, right ? 11 : 0, right ? 3.5 : 0);
    this.strokeColour.set(colour, 4 * i);
    this.strokeColour[4 * i + 3] = 0.95;
  }

  #style(i, half, dash, space) {
    this.strokeStyle[4 * i] = half;
    this.strokeStyle[4 * i + 1] = dash;
    this.strokeStyle[4 * i + 2] = space;
    this.strokeStyle[4 * i + 3] = 0;
  }

  #tie(scene, item, phase, ink) {
    const i = this.strokes++;
    scene.at(item.from, phase, this.ends, 6 * i);
    scene.at(item.to, phase, this.ends, 6 * i + 3);
    this.#style(i, 2, 4, 5);
    this.strokeColour.set(ink.tie, 4 * i);
    this.strokeColour[4 * i + 3] = 1;
    for (let k = 0; k < 6; k++) this.tie[k] = this.ends[6 * i + k];
    this.tied = true;
  }

  #point(scene, item, phase, colour) {
    const hand = item.role === 'hand';
    const i = this.#mark(hand ? 8 : 7.5, (hand ? HAND : HEAD)[item.side] ?? SHAPES.dot, colour, 1);
    scene.at(item.track, phase, this.points, 3 * i);
    if (hand) for (let k = 0; k < 3; k++) this.hands[item.side][k] = this.points[3 * i + k];
  }

  #centre(at, colour) {
    const i = this.#mark(4.5, SHAPES.cross, colour, 0.55);
    this.points.set(at, 3 * i);
  }

  #mark(radius, shape, colour, alpha) {
    const i = this.marks++;
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
    out.push({ id: item.id, kind: item.role === 'body' ? 'body' : 'fixed', side: item.side, closed: !!item.closed, index });
  });
  for (const item of scene.items) {
    if (item.form !== 'track') continue;
    const closed = item.closed !== false && scene.closed;
    if (item.role === 'hand-path') {
      out.push({ id: item.id, kind: 'path', side: item.side, closed, track: item.track });
    } else if (item.role === 'head-trail') {
      out.push({ id: item.id + ':figure', kind: 'figure', side: item.side, closed, track: item.track });
    }
  }
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
  if (ribbon.track) return scene.tracks[ribbon.track];
  const item = scene.items[ribbon.index];
  const xyz = new Float32Array(3 * item.points.length);
  item.points.forEach((p, i) => xyz.set(p, 3 * i));
  return xyz;
}

/** How each kind of ribbon looks: half width of core and halo in pixels, opacity, dashes a cycle and the share of each that is drawn. */
export const RIBBON = {
  body: { core: 1.6, halo: 0, alpha: 1 },
  fixed: { core: 0.6, halo: 0, alpha: 0.4 },
  path: { core: 0.9, halo: 0, alpha: 0.8, left: [96, 0.36], right: [48, 0.62] },
  figure: { core: 0.75, halo: 0, alpha: 0.45, right: [120, 0.74] },
  trail: { core: 1.9, halo: 7.5, alpha: 1 },
};
