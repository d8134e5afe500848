// Where a line passes before another, or before itself, as somebody sees it. At such a place the farther line gives way and is
// interrupted, as in drawings of knots. The painter of pictures does the same (Crossings.java), step by step; a test holds the two
// together.

/** What is nearer by no more than this counts as equally near, metres. */
export const LEVEL = 0.01;

/** Sine of the least angle under which two lines cross: below it they run along each other. */
const ALONG = 0.2;

const CELL = 6; // pixels
const LONG = 200; // pixels

/** @typedef {{ line: Float32Array, near: Float32Array, rows: number }} Lane points as seen: x and y in pixels, nearness in metres */
/** @typedef {{ lane: number, at: number, over: number, sine: number }} Cut where a lane gives way, in points from its start; to which */

let latest = new Int32Array(0);
let entered = new Int32Array(4096);
let before = new Int32Array(4096);

/**
 * The places on the paper at which lanes give way to what passes before them.
 *
 * @param {Lane[]} lanes
 * @param {number} width of the paper, pixels
 * @param {number} height
 * @param {number} long segments longer than this pass close by the eye and are left out, pixels
 * @returns {Cut[]}
 */
export function crossings(lanes, width, height, long = LONG) {
  /** @type {Cut[]} */
  const cuts = [];
  let length = 0;
  let all = 0;
  for (const { line, rows } of lanes) {
    for (let i = 0; i + 1 < rows; i++, all++) {
      const step = Math.hypot(line[2 * i + 2] - line[2 * i], line[2 * i + 3] - line[2 * i + 1]);
      if (step < long) length += step;
    }
  }
  const cell = Math.max(CELL, (2 * length) / Math.max(1, all));
  const across = Math.ceil(width / cell) + 1;
  const up = Math.ceil(height / cell) + 1;
  if (latest.length !== across * up) latest = new Int32Array(across * up);
  latest.fill(-1);
  /** @type {number[]} */
  const starts = [];
  let count = 0;
  for (const { rows } of lanes) {
    starts.push(count);
    count += rows;
  }
  let entries = 0;
  lanes.forEach((one, lane) => {
    const { line, rows } = one;
    for (let i = 0; i + 1 < rows; i++) {
      const [x0, y0, x1, y1] = [line[2 * i], line[2 * i + 1], line[2 * i + 2], line[2 * i + 3]];
      if (!(Math.abs(x1 - x0) + Math.abs(y1 - y0) < long)) continue;
      const c0 = Math.max(0, Math.floor(Math.min(x0, x1) / cell));
      const c1 = Math.min(across - 1, Math.floor(Math.max(x0, x1) / cell));
      const r0 = Math.max(0, Math.floor(Math.min(y0, y1) / cell));
      const r1 = Math.min(up - 1, Math.floor(Math.max(y0, y1) / cell));
      // Whoever enters a cell meets those who entered it before.
      for (let r = r0; r <= r1; r++) {
        for (let c = c0; c <= c1; c++) {
          const at = r * across + c;
          for (let e = latest[at]; e >= 0; e = before[e]) {
            let other = lanes.length - 1;
            while (starts[other] > entered[e]) other--;
            meet(lanes, other, entered[e] - starts[other], lane, i, c, r, cell, cuts);
          }
          if (entries === entered.length) {
            entered = grown(entered);
            before = grown(before);
          }
          entered[entries] = starts[lane] + i;
          before[entries] = latest[at];
          latest[at] = entries++;
        }
      }
    }
  });
  return cuts;
}

// Two that share several cells meet in the one in which they cross.
/** @param {Lane[]} lanes @param {number} s @param {number} i @param {number} t @param {number} j @param {number} c @param {number} r @param {number} cell @param {Cut[]} cuts */
function meet(lanes, s, i, t, j, c, r, cell, cuts) {
  if (s === t && j - i < 2) return;
  const a = lanes[s].line;
  const b = lanes[t].line;
  const ax = a[2 * i + 2] - a[2 * i];
  const ay = a[2 * i + 3] - a[2 * i + 1];
  const bx = b[2 * j + 2] - b[2 * j];
  const by = b[2 * j + 3] - b[2 * j + 1];
  const cross = ax * by - ay * bx;
  const sine = Math.abs(cross) / Math.max(1e-12, Math.sqrt((ax * ax + ay * ay) * (bx * bx + by * by)));
  if (sine < ALONG) return;
  const ox = b[2 * j] - a[2 * i];
  const oy = b[2 * j + 1] - a[2 * i + 1];
  const p = (ox * by - oy * bx) / cross;
  const q = (ox * ay - oy * ax) / cross;
  if (p < 0 || p >= 1 || q < 0 || q >= 1) return;
  if (Math.floor((a[2 * i] + p * ax) / cell) !== c || Math.floor((a[2 * i + 1] + p * ay) / cell) !== r) return;
  const m = lanes[s].near;
  const n = lanes[t].near;
  const nearer = m[i] + p * (m[i + 1] - m[i]) - n[j] - q * (n[j + 1] - n[j]);
  if (nearer < -LEVEL) cuts.push({ lane: s, at: i + p, over: t, sine });
  else if (nearer > LEVEL) cuts.push({ lane: t, at: j + q, over: s, sine });
}

/** @param {Int32Array} array */
function grown(array) {
  const more = new Int32Array(2 * array.length);
  more.set(array);
  return more;
}
