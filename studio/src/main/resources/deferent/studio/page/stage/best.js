// How the rider's hand path would lie at best, where that is better than how it lies: shifted, turned and timed so that the hand stays
// nearest to the carrier's head. What is proposed here by least squares is read by the server before it is shown, so that its number is
// the reading's own, and it is only shown where it is less than what is apart now.

import { Scene } from './scene.js';
import { post } from '../state/live.js';

const TIMES = 90; // moments of the cycle that are compared
const BETTER = 0.005; // metres by which it must be better to be worth a ghost
const PLAINER = 0.002; // metres that a change of timing or tilt must bring to be made

export class Best {
  /** @param {import('./stage.js').StageElement} stage */
  constructor(stage) {
    this.stage = stage;
    /** @type {{ pattern: object, gap: number, rider: string, path: Float32Array, top: number[] } | null} */
    this.found = null;
    this.asked = null;
    this.label = stage.querySelector('.best-label');
    this.label.addEventListener('click', () => this.take());
  }

  /** Looks anew once the readings have come; what is dragged or plays once has no ghost. */
  async look() {
    const { session } = this.stage;
    const { answer, show } = session;
    if (this.of === answer.pattern && this.show === show) return;
    this.forget();
    if (answer.detail !== 'settled' || session.dragging || session.aside || show !== 'ideal') return;
    this.of = answer.pattern;
    this.show = show;
    const link = linkOf(answer);
    if (!link || link.inplane_gap_m < BETTER) return;
    const change = proposal(session, answer.strip.carrier);
    if (!change.length) return;
    const asked = (this.asked = answer.pattern);
    const placed = await post({ ask: 'pairing', pattern: answer.pattern, change, samples: 180, body: false }).catch(() => null);
    const better = placed && !placed.error && placed.readings.links ? placed.readings.links.find((l) => l.head === link.head) : null;
    if (this.asked !== asked || session.pattern !== asked || !better || better.inplane_gap_m > link.inplane_gap_m - BETTER) return;
    const scene = new Scene();
    scene.read(placed);
    const rider = link.hand;
    const path = scene.tracks[rider + '.hand'];
    this.found = { pattern: placed.pattern, gap: better.inplane_gap_m, rider, path, top: topOf(path) };
    this.#show();
  }

  forget() {
    this.asked = this.of = null;
    if (!this.found) return;
    this.found = null;
    this.#show();
  }

  #show() {
    const { session } = this.stage;
    session.scene.best = this.found ? { side: this.found.rider, xyz: this.found.path } : null;
    session.scene.reshape();
    this.stage.drawer.load(session.scene);
    this.stage.draw();
  }

  /** Puts the rider's hand path where it lies best: one step, that undo takes back. */
  take() {
    if (this.found) this.stage.session.open(this.found.pattern);
  }
}

export function linkOf(answer) {
  return (answer.readings.links || []).find((l) => l.head === answer.strip.carrier && l.inplane_gap_m !== undefined) || null;
}

function topOf(path) {
  let best = 0;
  for (let i = 3; i < path.length; i += 3) if (path[i + 1] > path[best + 1]) best = i;
  return [...path.subarray(best, best + 3)];
}

/**
 * Changes of timing, tilt and centre after which the hand is nearest to the head, by least squares over the cycle.
 *
 * @returns {Protocol.Change[]}
 */
function proposal(session, carrier) {
  const { scene } = session;
  const rider = carrier === 'left' ? 'right' : 'left';
  const handle = (side) => session.answer.handles.find((h) => h.key === side + '.centre');
  if (!handle(carrier) || !handle(rider) || !scene.closed) return [];
  const { normal } = handle(carrier).plane;
  const parallel = Math.round(1e6 * dot(normal, handle(rider).plane.normal)) / 1e6;
  const [u, v] = axes(normal);
  const head = flat(scene, carrier + '.head', u, v);
  const hand = flat(scene, rider + '.hand', u, v);
  const centre = [dot(handle(rider).at, u), dot(handle(rider).at, v)];
  const tilt = session.size(rider + '.tilt_deg');
  const timing = session.size('timing_cycles');
  let best = laid(head, hand, 0, false);
  for (const turns of tilt && Math.abs(parallel) === 1 ? [false, true] : [false]) {
    for (let lag = 0; lag < (timing ? TIMES : 1); lag++) {
      const one = laid(head, hand, lag, turns);
      if (cost(one) < cost(best)) best = one;
    }
  }
  /** @type {Protocol.Change[]} */
  const change = [];
  if (best.lag) {
    const ahead = timing.value + ((rider === 'left' ? 1 : -1) * best.lag) / TIMES;
    change.push({ set: 'timing_cycles', to: Math.round(1e6 * (ahead - Math.floor(ahead))) / 1e6 });
  }
  if (best.turn) {
    const to = tilt.value + (parallel * best.turn * 180) / Math.PI;
    change.push({ set: tilt.key, to: to - 360 * Math.round(to / 360) });
  }
  const [c, s] = [Math.cos(best.turn), Math.sin(best.turn)];
  const [mx, my] = [hand.mean[0] - centre[0], hand.mean[1] - centre[1]];
  const by = [head.mean[0] - centre[0] - c * mx + s * my, head.mean[1] - centre[1] - s * mx - c * my];
  if (Math.hypot(...by) > 1e-4) {
    ['x', 'y', 'z'].forEach((axis, k) => {
      const size = session.size(`${rider}.centre_${axis}_m`);
      const off = by[0] * u[k] + by[1] * v[k];
      if (size && Math.abs(off) > 1e-6) change.push({ set: size.key, to: Math.round(1e6 * (size.value + off)) / 1e6 });
    });
  }
  return change;
}

const cost = ({ off, lag, turn }) => off + (lag ? PLAINER : 0) + (turn ? PLAINER : 0);

const dot = (a, b) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

// Two directions in a plane that with its normal make a right-handed frame.
function axes(n) {
  const a = Math.abs(n[1]) < 0.9 ? [0, 1, 0] : [0, 0, 1];
  const out = dot(a, n);
  const v = a.map((c, i) => c - out * n[i]);
  const long = Math.hypot(...v);
  v.forEach((c, i) => (v[i] = c / long));
  return [[v[1] * n[2] - v[2] * n[1], v[2] * n[0] - v[0] * n[2], v[0] * n[1] - v[1] * n[0]], v];
}

// A track in the plane at even times, about its mean.
function flat(scene, track, u, v) {
  const xy = new Float64Array(2 * TIMES);
  const mean = [0, 0];
  const p = [0, 0, 0];
  for (let i = 0; i < TIMES; i++) {
    scene.at(track, i / TIMES, p);
    mean[0] += (xy[2 * i] = dot(p, u)) / TIMES;
    mean[1] += (xy[2 * i + 1] = dot(p, v)) / TIMES;
  }
  for (let i = 0; i < 2 * TIMES; i++) xy[i] -= mean[i % 2];
  return { xy, mean };
}

// How far hand and head are apart at most with their means on one another, the hand that much later and turned best, or not turned.
function laid(head, hand, lag, turns) {
  const p = head.xy;
  const h = hand.xy;
  const of = (i) => 2 * ((i - lag + TIMES) % TIMES);
  let [along, across] = [0, 0];
  for (let i = 0; turns && i < TIMES; i++) {
    const k = of(i);
    along += p[2 * i] * h[k] + p[2 * i + 1] * h[k + 1];
    across += p[2 * i + 1] * h[k] - p[2 * i] * h[k + 1];
  }
  const turn = turns ? Math.atan2(across, along) : 0;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  let off = 0;
  for (let i = 0; i < TIMES; i++) {
    const k = of(i);
    off = Math.max(off, Math.hypot(p[2 * i] - c * h[k] + s * h[k + 1], p[2 * i + 1] - s * h[k] - c * h[k + 1]));
  }
  return { lag, turn: Math.abs(turn) < 1e-4 ? 0 : turn, off };
}
