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
export function rest(on) {
  resting = on;
  run();
}

/** How often any thumbnail was drawn, and when the first moved, for measuring from outside. */
export const drawings = { count: 0, moving: 0 };

/** @typedef {{ period_s: number, count: number, samples: Record<string, { hand: string, head: string }> }} Moves */

export class MovingThumb extends HTMLElement {
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
