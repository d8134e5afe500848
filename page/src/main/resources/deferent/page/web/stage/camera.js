// Where the onlooker stands. One camera serves both ways of drawing, the handles and the labels, so that all agree to the pixel.
// Frame: x to the performer's left, y up, z toward the audience, origin at the breastbone, metres.

export const VIEWS = ['audience', 'performer', 'mirror'];

const FIELD = (32 * Math.PI) / 180; // upright field of view, radians
const NEAREST = 1.2;
const FURTHEST = 14;

export class Camera {
  constructor() {
    this.view = 'audience';
    this.turn = 0; // radians about the upright, positive to the onlooker's right
    this.lift = 0; // radians above the level
    this.distance = 5.2;
    this.target = [0, -0.12, 0.15];
    this.width = 1;
    this.height = 1;
    this.aside = [0, 0]; // pixels by which what is looked at stands off the middle, to the right and down
    this.eye = [0, 0, 0];
    this.right = [1, 0, 0];
    this.up = [0, 1, 0];
    this.ahead = [0, 0, -1];
    this.settle();
  }

  /** As in a mirror, left and right change places on the screen. */
  get flip() {
    return this.view === 'mirror' ? -1 : 1;
  }

  see(view) {
    this.view = view;
    this.turn = 0;
    this.lift = 0;
    this.settle();
  }

  orbit(turn, lift) {
    this.turn = wrapped(this.turn + turn * this.flip);
    this.lift = Math.max(-1.45, Math.min(1.45, this.lift + lift));
    this.settle();
  }

  zoom(factor) {
    this.distance = Math.max(NEAREST, Math.min(FURTHEST, this.distance * factor));
    this.settle();
  }

  resize(width, height) {
    this.width = Math.max(1, width);
    this.height = Math.max(1, height);
    this.settle();
  }

  /**
   * Steps back until the box fits into what is left of the paper inside these margins, pixels, and looks at it there. The box is
   * seen level from the front or behind, its nearest face as large as any of it.
   */
  frame(least, most, { above = 10, right = 10, below = 10, left = 10 } = {}) {
    const high = Math.max(40, this.height - above - below);
    const wide = Math.max(40, this.width - left - right);
    const halfWidth = Math.max(Math.abs(least[0]), Math.abs(most[0]), 0.05);
    const halfHeight = Math.max((most[1] - least[1]) / 2, 0.05);
    const half = Math.max((halfHeight * this.height) / high, (halfWidth * this.height) / wide);
    const nearest = Math.max(most[2] - this.target[2], this.target[2] - least[2], 0);
    this.target[1] = (least[1] + most[1]) / 2;
    this.aside[0] = (left - right) / 2;
    this.aside[1] = (above - below) / 2;
    this.distance = Math.max(NEAREST, Math.min(FURTHEST, half / Math.tan(FIELD / 2) + nearest));
    this.settle();
  }

  settle() {
    const behind = this.view === 'performer' ? Math.PI : 0;
    const angle = this.turn + behind;
    const level = Math.cos(this.lift);
    const back = [Math.sin(angle) * level, Math.sin(this.lift), Math.cos(angle) * level];
    for (let i = 0; i < 3; i++) {
      this.eye[i] = this.target[i] + back[i] * this.distance;
      this.ahead[i] = -back[i];
    }
    this.right[0] = Math.cos(angle);
    this.right[1] = 0;
    this.right[2] = -Math.sin(angle);
    this.up[0] = -Math.sin(angle) * Math.sin(this.lift);
    this.up[1] = level;
    this.up[2] = -Math.cos(angle) * Math.sin(this.lift);
    this.scale = this.height / (2 * Math.tan(FIELD / 2));
  }

  /** The share of clip space a length across takes, as the projection matrix has it. */
  get across() {
    return (this.flip * 2 * this.scale) / this.width;
  }

  get upright() {
    return (2 * this.scale) / this.height;
  }

  /** Writes x, y in CSS pixels and the depth in metres into out; false if behind the onlooker. */
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

  /** Unit direction from the eye through a pixel. */
  ray(px, py) {
    const a = (this.flip * (px - this.width / 2 - this.aside[0])) / this.scale;
    const b = (this.height / 2 + this.aside[1] - py) / this.scale;
    const d = [0, 1, 2].map((i) => this.ahead[i] + a * this.right[i] + b * this.up[i]);
    const length = Math.hypot(...d);
    return d.map((v) => v / length);
  }

  /** Where the ray through a pixel meets a plane; seen edge on, the point at the depth of `at`. */
  meet(px, py, at, normal) {
    const d = this.ray(px, py);
    const facing = dot(d, normal);
    const n = Math.abs(facing) > 0.12 ? normal : this.ahead;
    const t = (dot(at, n) - dot(this.eye, n)) / dot(d, n);
    return [0, 1, 2].map((i) => this.eye[i] + t * d[i]);
  }
}

function dot(a, b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function wrapped(angle) {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}
