// A cord as seen at a moment, in pieces: none where the body hides it, none where the other cord passes before it, and with a gap of
// the ground's colour beside it where it passes before the body or before the other's hand or head. The painter of pictures does the
// same (Strand.java).

import { LEVEL, crossings } from './crossings.js';

const STEP = 1.5; // pixels
const MOST = 600;

const HIDDEN = 0;
const PLAIN = 1;
const CASED = 2;
const ABOVE = 3;

/** @typedef {[x: number, y: number, near: number]} Spot pixels, and metres toward the onlooker */
/** @typedef {{ from: number, to: number, cased: boolean, above: boolean }} Strand shares of the cord from hand to head */

/**
 * The pieces of a cord.
 *
 * @param {Spot} hand where it begins
 * @param {Spot} head where it ends
 * @param {{ side: (x: number, y: number, near: number) => number } | null} body who might hide it
 * @param {{ at: Spot, reach: number }[]} marks the other side's
 * @param {Spot[]} other the other cord, from hand to head; none for no other
 * @param {number} own how far its own hand's and head's marks reach, which stay over it, pixels
 * @param {number} gap how far what is nearer keeps what is farther off, pixels
 * @returns {Strand[]}
 */
export function strands(hand, head, body, marks, other, own, gap) {
  const length = Math.hypot(head[0] - hand[0], head[1] - hand[1]);
  const count = Math.max(2, Math.min(MOST, Math.ceil(length / STEP)));
  const state = new Uint8Array(count);
  const [from, to] = hole(hand, head, other, gap, length);
  for (let i = 0; i < count; i++) {
    const share = (i + 0.5) / count;
    const x = hand[0] + share * (head[0] - hand[0]);
    const y = hand[1] + share * (head[1] - hand[1]);
    const near = hand[2] + share * (head[2] - hand[2]);
    const side = body ? body.side(x, y, near) : 0;
    let above = false;
    const free = share * length > own && (1 - share) * length > own;
    for (const mark of marks) above ||= free && near > mark.at[2] + LEVEL && Math.hypot(x - mark.at[0], y - mark.at[1]) < mark.reach + gap;
    if (side < 0 || (share > from && share < to)) state[i] = HIDDEN;
    else state[i] = above ? ABOVE : side > 0 ? CASED : PLAIN;
  }
  const reach = Math.round((gap * count) / Math.max(length, 1e-9));
  return runs(widened(widened(state, CASED, reach), HIDDEN, reach));
}

// Where two cords cross, the farther has a hole.
/** @param {Spot} hand @param {Spot} head @param {Spot[]} other @param {number} gap @param {number} length */
function hole(hand, head, other, gap, length) {
  if (other.length === 0) return [2, 2];
  const all = [hand, head, ...other];
  const left = Math.min(...all.map((spot) => spot[0]));
  const top = Math.min(...all.map((spot) => spot[1]));
  const width = Math.max(...all.map((spot) => spot[0])) - left;
  const height = Math.max(...all.map((spot) => spot[1])) - top;
  for (const cut of crossings([lane([hand, head], left, top), lane(other, left, top)], width, height, Infinity)) {
    // What is hidden keeps a gap off on either side anyway.
    const half = Math.max(STEP / 2, gap / cut.sine - gap) / length;
    if (cut.lane === 0) return [cut.at - half, cut.at + half];
  }
  return [2, 2];
}

/** @param {Spot[]} spots @param {number} left @param {number} top @returns {import('./crossings.js').Lane} */
function lane(spots, left, top) {
  return { line: Float32Array.from(spots.flatMap(([x, y]) => [x - left, y - top])), near: Float32Array.from(spots.map((spot) => spot[2])), rows: spots.length };
}

/** @param {Uint8Array} state @param {number} which @param {number} reach */
function widened(state, which, reach) {
  const wide = state.slice();
  for (let i = 0; i < state.length; i++) {
    if (which === HIDDEN ? state[i] === HIDDEN : state[i] !== PLAIN) continue;
    for (let k = Math.max(0, i - reach); k <= Math.min(state.length - 1, i + reach); k++) if (state[k] === which) wide[i] = which;
  }
  return wide;
}

/** @param {Uint8Array} state @returns {Strand[]} */
function runs(state) {
  const count = state.length;
  const out = [];
  let begun = 0;
  for (let i = 1; i <= count; i++) {
    if (i < count && state[i] === state[begun]) continue;
    if (state[begun] !== HIDDEN) out.push({ from: begun / count, to: i / count, cased: state[begun] >= CASED, above: state[begun] === ABOVE });
    begun = i;
  }
  return out;
}
