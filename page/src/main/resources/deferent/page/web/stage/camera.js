// Where the onlooker stands. One camera serves both ways of drawing, the handles and the labels, so that all agree to the pixel.
// Frame: x to the performer's left, y up, z toward the audience, origin at the breastbone, metres.

/** Views from the level, from before or behind the performer. */
export const VIEWS = ['audience', 'performer', 'mirror'];

/** All there is to choose from where a body stands in the picture: its own eyes take the place of the look from behind. */
export const STANDS = ['audience', 'eyes', 'mirror', 'above', 'side'];

const FIELD = (32 * Math.PI) / 180; // upright field of view, radians
const OWN = (110 * Math.PI) / 180; // of the performer's own eyes, which see far to the sides; our choice
const DOWN = (20 * Math.PI) / 180; // by which they look down from straight ahead, toward the hands; our choice
const UP = Math.PI / 2;
const NEAREST = 1.2;
/** Where each view stands: turned about the upright and lifted above the level, radians. */
const FROM = { audience: [0, 0], performer: [Math.PI, 0], mirror: [0, 0], eyes: [Math.PI, DOWN], above: [0, UP], side: [UP, 0] };
const FURTHEST = 14;

export class Camera {
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
