// While a size is dragged it snaps where the link closes, and a little more pull frees it again.
//
// Where that is, the fit knows: once a drag begins it is asked, beside the drag and not in it, for the values of that one size at which
// either link closes, all other sizes left as they are. The moves of the drag are answered as ever, none of them later for it.

import { post } from '../state/live.js';

const SNAPS = 8; // pixels from where the link closes within which the size snaps there
const FREES = 17; // pixels at which it lets go again
const FLASH = 420; // milliseconds in which both paths light up as one
const KINDS = {
  circle: ['hand_radius_m'],
  tether: ['tether_m'],
  tilt: ['tilt_deg'],
  centre: ['centre_x_m', 'centre_y_m', 'centre_z_m'],
};

/** @typedef {{ carrier: 'left' | 'right', at: Map<string, number> }} Closing sizes by their keys, as they are set */

export class Snap {
  /** @param {import('./stage.js').StageElement} stage */
  constructor(stage) {
    this.stage = stage;
    /** @type {Closing[]} */
    this.closings = [];
    this.now = null; // where the drag is held
  }

  /**
   * A drag begins.
   *
   * @param {import('./reach.js').Held} held
   */
  begin(held, key) {
    const { session } = this.stage;
    const [side, kind] = key.split('.');
    this.now = null;
    this.closings = [];
    const keys = (side !== 'both' && KINDS[kind] ? KINDS[kind] : []).map((name) => side + '.' + name).filter((name) => session.size(name));
    this.keys = keys;
    this.from = new Map(keys.map((name) => [name, session.size(name).value]));
    const centre = this.stage.handles.all.get(side + '.centre');
    this.centre = centre ? [...centre.now] : null;
    if (!keys.length || !this.centre || (kind === 'tether' && held.what !== 'cord')) return;
    const asked = (this.asked = {});
    const pattern = session.pattern;
    const lead = session.answer.strip.carrier;
    const ask = async (/** @type {'left' | 'right'} */ carrier) => {
      const fit = await post({ ask: 'fit', pattern, carrier, free: keys }).catch(() => null);
      if (this.asked !== asked || !fit || !fit.closes) return;
      for (const answer of fit.answers) {
        if (answer.rides || answer.changes.some((change) => !this.from.has(change.key))) continue;
        const at = new Map(this.from);
        for (const change of answer.changes) at.set(change.key, change.to);
        this.closings.push({ carrier, at });
      }
    };
    ask(lead).then(() => this.asked === asked && ask(lead === 'left' ? 'right' : 'left'));
  }

  end() {
    this.asked = null;
    this.closings = [];
    this.now = null;
  }

  /**
   * The changes that hold a size where the link closes, or nothing where the pull has its way.
   *
   * @param {import('./reach.js').Held} held
   * @param {number[]} to where the pointer is, metres
   * @param {number} [cord] how long a pulled cord would be, metres
   * @returns {Protocol.Change[] | undefined}
   */
  hold(held, to, cord) {
    const { camera, clock } = this.stage;
    if (!this.closings.length) return undefined;
    const metre = camera.scale / Math.max(0.2, Math.hypot(...held.at.map((v, i) => v - camera.eye[i])));
    const away = (closing) => metre * this.#away(held, to, closing, cord);
    const was = this.now;
    if (was && away(was.closing) > FREES) this.now = null;
    if (!this.now) {
      const near = this.closings.map((closing) => ({ closing, away: away(closing) })).sort((a, b) => a.away - b.away)[0];
      if (near.away <= SNAPS) this.now = { closing: near.closing, since: performance.now() };
    }
    if (this.now && this.now !== was && !clock.calm.matches) this.#flash();
    return this.now ? [...this.now.closing.at].map(([set, value]) => ({ set, to: value })) : undefined;
  }

  // How far what is held would be from where the link closes, metres at the place of the hold.
  #away({ key, what, at, normal }, to, { at: sizes }, cord) {
    const [name] = this.keys;
    const flat = (p) => {
      const d = p.map((v, i) => v - this.centre[i]);
      const out = d.reduce((sum, v, i) => sum + v * normal[i], 0);
      return d.map((v, i) => v - out * normal[i]);
    };
    if (what === 'cord') return Math.abs(cord - sizes.get(name));
    if (key.endsWith('.centre')) {
      const astray = this.keys.map((k, i) => sizes.get(k) - this.from.get(k) - (to[i] - at[i]));
      const out = astray.reduce((sum, v, i) => sum + v * normal[i], 0);
      return Math.hypot(...astray.map((v, i) => v - out * normal[i]));
    }
    const a = flat(at);
    const b = flat(to);
    const [was, now] = [Math.hypot(...a), Math.hypot(...b)];
    if (key.endsWith('.circle')) {
      const size = this.from.get(name);
      // On a circle about its centre the pull is the size; of another path it is a share of it.
      return was < 0.005 ? Infinity : Math.abs(now - (was * sizes.get(name)) / size);
    }
    const cross = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
    const turned = Math.atan2(cross.reduce((sum, v, i) => sum + v * normal[i], 0), a.reduce((sum, v, i) => sum + v * b[i], 0));
    const off = this.from.get(name) - sizes.get(name) + (turned * 180) / Math.PI;
    return now * Math.abs(Math.sin(((off - 360 * Math.round(off / 360)) * Math.PI) / 360)) * 2;
  }

  // A frame after the other while it lasts, one when it is over, and then none.
  #flash() {
    const { now } = this;
    const step = () => {
      if (this.now !== now) return;
      const over = performance.now() - now.since >= FLASH;
      this.stage.draw();
      if (!over) requestAnimationFrame(step);
    };
    requestAnimationFrame(step);
  }

  /** How both paths are lit as one: the carrier, and how strongly; brightest as it snaps, and without motion a still mark. */
  get light() {
    if (!this.now) return null;
    const age = (performance.now() - this.now.since) / FLASH;
    const strength = this.stage.clock.calm.matches ? 0.5 : Math.max(0.3, 1 - 0.7 * Math.min(1, age));
    return { one: this.now.closing.carrier, strength };
  }
}
