// A small moving picture of a pairing, cheaply drawn: the lines once, then only the two tethers over them. One clock moves all that
// are in view, twenty times a second, where motion is wanted; else each shows one moment.

const EVERY = 50; // milliseconds
const SPEED = 0.5;
const calm = matchMedia('(prefers-reduced-motion: reduce)');
const seen = new Set();
let running = false;
let last = 0;

const watch = new IntersectionObserver((entries) => {
  for (const { target, isIntersecting } of entries) {
    if (isIntersecting) seen.add(target);
    else seen.delete(target);
  }
  run();
});

function run() {
  if (running || !seen.size || calm.matches || document.hidden) return;
  running = true;
  requestAnimationFrame(frame);
}

function frame(now) {
  if (!seen.size || calm.matches || document.hidden) {
    running = false;
    return;
  }
  if (now - last >= EVERY) {
    last = now;
    for (const thumb of seen) thumb.draw(((now / 1000) * SPEED) / thumb.period);
  }
  requestAnimationFrame(frame);
}

calm.addEventListener('change', () => {
  for (const thumb of seen) thumb.draw(0.08);
  run();
});
document.addEventListener('visibilitychange', run);

/** How often any thumbnail was drawn, for measuring from outside. */
export const drawings = { count: 0 };

class MovingThumb extends HTMLElement {
  /** Moves only while that element is under the pointer or holds the focus. */
  set under(element) {
    this.waits = true;
    for (const on of ['pointerenter', 'focusin']) element.addEventListener(on, () => this.#wake());
    for (const off of ['pointerleave', 'focusout']) element.addEventListener(off, () => element.matches(':hover, :focus-within') || this.#rest());
  }

  #wake() {
    if (!this.isConnected || !this.tracks) return;
    seen.add(this);
    run();
  }

  #rest() {
    if (seen.delete(this)) this.draw(0.08);
  }

  connectedCallback() {
    if (!this.canvas) {
      this.canvas = document.createElement('canvas');
      this.canvas.setAttribute('aria-hidden', 'true');
      this.append(this.canvas);
    }
    if (!this.waits) watch.observe(this);
    this.#prepare();
  }

  disconnectedCallback() {
    watch.unobserve(this);
    seen.delete(this);
  }

  /** What moves: { period_s, count, samples } as the server sends it. */
  set moves(moves) {
    if (this.sent === moves) return;
    this.sent = moves;
    this.period = moves.period_s;
    this.count = moves.count;
    this.tracks = {};
    for (const side of ['left', 'right']) for (const end of ['hand', 'head']) this.tracks[side + '.' + end] = unpack(moves.samples[side][end]);
    this.#prepare();
  }

  set theme(theme) {
    if (this.themed === theme) return;
    this.themed = theme;
    this.#prepare();
  }

  // Seen along whichever axis the figures move least: a wall pattern from the front, a floor pattern from above.
  #prepare() {
    if (!this.tracks || !this.isConnected) return;
    const least = [Infinity, Infinity, Infinity];
    const most = [-Infinity, -Infinity, -Infinity];
    for (const xyz of Object.values(this.tracks)) {
      for (let i = 0; i < xyz.length; i++) {
        least[i % 3] = Math.min(least[i % 3], xyz[i]);
        most[i % 3] = Math.max(most[i % 3], xyz[i]);
      }
    }
    const wide = most.map((v, k) => v - least[k]);
    const across = wide[0] >= Math.min(wide[1], wide[2]) ? 0 : 2;
    const up = across === 2 ? 1 : wide[1] >= wide[2] ? 1 : 2;
    const size = 96;
    const ratio = Math.min(2, devicePixelRatio || 1);
    const half = Math.max(wide[across], wide[up]) / 2 + 0.05;
    const scale = (size * ratio) / 2 / half;
    this.canvas.width = this.canvas.height = size * ratio;
    const middle = [(least[across] + most[across]) / 2, (least[up] + most[up]) / 2];
    const way = up === 1 ? -1 : 1;
    this.flat = {};
    for (const [track, xyz] of Object.entries(this.tracks)) {
      const xy = new Float32Array((2 * xyz.length) / 3);
      for (let i = 0; i < xy.length / 2; i++) {
        xy[2 * i] = (size * ratio) / 2 + (xyz[3 * i + across] - middle[0]) * scale;
        xy[2 * i + 1] = (size * ratio) / 2 + way * (xyz[3 * i + up] - middle[1]) * scale;
      }
      this.flat[track] = xy;
    }
    const style = getComputedStyle(this);
    this.ink = { left: style.getPropertyValue('--left'), right: style.getPropertyValue('--right'), ground: style.getPropertyValue('--stage-ground') };
    this.ratio = ratio;
    this.lines = document.createElement('canvas');
    this.lines.width = this.lines.height = size * ratio;
    const p = this.lines.getContext('2d');
    p.fillStyle = this.ink.ground;
    p.fillRect(0, 0, size * ratio, size * ratio);
    p.lineWidth = 1.1 * ratio;
    for (const [track, xy] of Object.entries(this.flat)) {
      const [side, end] = track.split('.');
      p.strokeStyle = this.ink[side];
      p.globalAlpha = end === 'head' ? 0.75 : 0.6;
      p.setLineDash(end === 'hand' ? [2 * ratio, 2.4 * ratio] : side === 'right' ? [5 * ratio, 2 * ratio] : []);
      p.beginPath();
      for (let i = 0; i <= xy.length / 2; i++) p.lineTo(xy[2 * (i % (xy.length / 2))], xy[2 * (i % (xy.length / 2)) + 1]);
      p.stroke();
    }
    this.draw(0.08);
    run();
  }

  draw(cycles) {
    if (!this.lines) return;
    drawings.count++;
    const p = this.canvas.getContext('2d');
    const r = this.ratio;
    p.globalAlpha = 1;
    p.drawImage(this.lines, 0, 0);
    const at = (cycles - Math.floor(cycles)) * this.count;
    for (const side of ['left', 'right']) {
      const [hx, hy] = place(this.flat[side + '.hand'], at);
      const [x, y] = place(this.flat[side + '.head'], at);
      p.strokeStyle = p.fillStyle = this.ink[side];
      p.lineWidth = 1.6 * r;
      p.beginPath();
      p.moveTo(hx, hy);
      p.lineTo(x, y);
      p.stroke();
      p.beginPath();
      // The left's head is round, the right's has corners.
      if (side === 'left') p.arc(x, y, 3 * r, 0, 2 * Math.PI);
      else {
        p.moveTo(x - 3.8 * r, y);
        p.lineTo(x, y - 3.8 * r);
        p.lineTo(x + 3.8 * r, y);
        p.lineTo(x, y + 3.8 * r);
      }
      p.fill();
    }
  }
}

function place(xy, at) {
  const n = xy.length / 2;
  const i = Math.floor(at) % n;
  const j = (i + 1) % n;
  const f = at - Math.floor(at);
  return [xy[2 * i] * (1 - f) + xy[2 * j] * f, xy[2 * i + 1] * (1 - f) + xy[2 * j + 1] * f];
}

function unpack(base64) {
  const text = atob(base64);
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return new Float32Array(bytes.buffer);
}

customElements.define('moving-thumb', MovingThumb);
