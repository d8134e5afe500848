// What of the picture lies under the pointer: the projected paths and points are looked through, so that all that is seen can be
// taken hold of, not only where a handle stands.

const POINT = { mouse: 15, touch: 24 }; // pixels from the middle of a hand, head, centre or tilt mark
const LINE = { mouse: 7, touch: 18 }; // pixels from a line
const PARTS = 160; // straight parts that a path is looked through in

/**
 * Something that can be taken hold of.
 *
 * @typedef {object} Held
 * @property {string} key of the grab: left.circle, left.tether, both.centre
 * @property {'hand' | 'head' | 'centre' | 'tilt' | 'path' | 'cord' | 'figure'} what of the picture lights up
 * @property {'left' | 'right'} side
 * @property {number[]} at where on it the pointer is, metres
 * @property {number[]} normal across the plane it is moved in
 * @property {number} away pixels
 * @property {number[]} way on the screen in which it is moved, pixels; [0, 0] for any
 */

export class Reach {
  /** @param {import('./stage.js').StageElement} stage */
  constructor(stage) {
    this.stage = stage;
    this.spot = [0, 0, 0];
    this.place = [0, 0, 0];
    this.a = [0, 0, 0];
    this.b = [0, 0, 0];
  }

  /**
   * All that lies within reach of a place on the stage, what is on top first: points before lines, the nearest of each first.
   *
   * @param {number} x
   * @param {number} y
   * @param {boolean} finger a finger is broader
   * @param {boolean} whole whether the whole figure is to be had by its line, which lies nearly everywhere
   * @returns {Held[]}
   */
  at(x, y, finger = false, whole = !finger) {
    const { session, handles } = this.stage;
    // What plays once, and what students look at, is not to be changed by hand.
    if (!session.pattern || session.aside || document.body.classList.contains('lesson')) return [];
    const point = finger ? POINT.touch : POINT.mouse;
    const line = finger ? LINE.touch : LINE.mouse;
    /** @type {Held[]} */
    const points = [];
    /** @type {Held[]} */
    const lines = [];
    for (const side of /** @type {const} */ (['left', 'right'])) {
      const has = (kind) => handles.all.get(side + '.' + kind)?.handle;
      const centre = has('centre');
      if (!centre) continue;
      const { normal } = centre.plane;
      const circle = has('circle');
      const add = (list, most, key, what, at, away, way = [0, 0]) => {
        if (away <= most) list.push({ key, what, side, at: [...at], normal, away, way });
      };
      this.stage.idealAt(side + '.hand', this.a);
      this.stage.idealAt(side + '.head', this.b);
      // A hand that goes round a circle sets its size; one that stands still is its centre.
      add(points, point, side + (circle ? '.circle' : '.centre'), 'hand', this.a, this.#away(this.a, x, y), circle ? this.#outward(centre.at, this.a) : [0, 0]);
      add(points, point, side + '.poi', 'head', this.b, this.#away(this.b, x, y));
      if (circle) add(points, point, side + '.centre', 'centre', centre.at, this.#away(centre.at, x, y));
      const tilt = has('tilt');
      if (tilt) add(points, point, side + '.tilt', 'tilt', tilt.at, this.#away(tilt.at, x, y));
      if (circle) {
        const away = this.#along(side + '.hand', x, y, line);
        add(lines, line, side + '.circle', 'path', this.place, away, this.#outward(centre.at, this.place));
      }
      const cord = this.#between(this.a, this.b, x, y);
      add(lines, line, side + '.tether', 'cord', this.place, cord, this.#outward(this.a, this.b));
      if (whole) {
        const away = this.#along(side + '.head', x, y, line);
        add(lines, line, 'both.centre', 'figure', this.place, away);
      }
    }
    points.sort((p, q) => p.away - q.away);
    const rank = { path: 0, cord: 1, figure: 2 };
    lines.sort((p, q) => rank[p.what] - rank[q.what] || p.away - q.away);
    const seen = new Set();
    return [...points, ...lines].filter(({ key }) => !seen.has(key) && seen.add(key));
  }

  #away(p, x, y) {
    return this.stage.camera.project(p[0], p[1], p[2], this.spot) ? Math.hypot(this.spot[0] - x, this.spot[1] - y) : Infinity;
  }

  // Which way on the screen leads from one place to another.
  #outward(from, to) {
    const { camera } = this.stage;
    if (!camera.project(from[0], from[1], from[2], this.spot)) return [0, 0];
    const [x, y] = this.spot;
    if (!camera.project(to[0], to[1], to[2], this.spot)) return [0, 0];
    return [this.spot[0] - x, this.spot[1] - y];
  }

  // How far the nearest place of a path is; that place stays in this.place.
  #along(track, x, y, most) {
    const { scene } = this.stage.session;
    const xyz = scene.tracks[scene.tracks['ghost.' + track] ? 'ghost.' + track : track];
    const n = xyz.length / 3;
    const step = Math.max(1, Math.floor(n / PARTS));
    const { camera } = this.stage;
    let best = Infinity;
    let seen = false;
    let [px, py] = [0, 0];
    let was = 0;
    const last = scene.closed ? n : n - 1;
    for (let i = 0; i <= last; i += i + step > last && i < last ? last - i : step) {
      const k = 3 * (i % n);
      const now = camera.project(xyz[k], xyz[k + 1], xyz[k + 2], this.spot);
      const [qx, qy] = this.spot;
      if (now && seen) {
        const share = foot(px, py, qx, qy, x, y);
        const away = Math.hypot(px + share * (qx - px) - x, py + share * (qy - py) - y);
        if (away < best) {
          best = away;
          if (away <= most) for (let c = 0; c < 3; c++) this.place[c] = xyz[was + c] + share * (xyz[k + c] - xyz[was + c]);
        }
      }
      [px, py, was, seen] = [qx, qy, k, now];
    }
    return best;
  }

  // How far a straight line is, its ends left to the points there; the nearest place stays in this.place.
  #between(from, to, x, y) {
    const { camera } = this.stage;
    if (!camera.project(from[0], from[1], from[2], this.spot)) return Infinity;
    const [px, py] = this.spot;
    if (!camera.project(to[0], to[1], to[2], this.spot)) return Infinity;
    const [qx, qy] = this.spot;
    const share = foot(px, py, qx, qy, x, y);
    for (let c = 0; c < 3; c++) this.place[c] = from[c] + share * (to[c] - from[c]);
    return Math.hypot(px + share * (qx - px) - x, py + share * (qy - py) - y);
  }
}

// The share of the way from p to q that is nearest to a place.
function foot(px, py, qx, qy, x, y) {
  const dx = qx - px;
  const dy = qy - py;
  const square = dx * dx + dy * dy;
  return square > 0 ? Math.max(0, Math.min(1, ((x - px) * dx + (y - py) * dy) / square)) : 0;
}

