// The shelf as a map: its patterns as places, the gentlest crossing between each two as a line; and a route over it.

import { post } from './live.js';

/** How near two states must be to count as a crossing: metres and metres a second. */
export const NEAR = [
  { tolerance_m: 0.08, speed_tolerance_m_s: 1, says: 'a hand’s breadth', more: '8 cm, 1 m/s' },
  { tolerance_m: 0.25, speed_tolerance_m_s: 3, says: 'a forearm', more: '25 cm, 3 m/s' },
  { tolerance_m: 0.6, speed_tolerance_m_s: 8, says: 'an arm', more: '60 cm, 8 m/s' },
];

export class ShelfMap extends EventTarget {
  /**
   * @param {import('./session.js').Session} session
   * @param {import('./shelf.js').Shelf} shelf
   */
  constructor(session, shelf) {
    super();
    this.session = session;
    this.near = 2;
    this.answer = null;
    this.error = null;
    this.running = false;
    this.progress = '';
    this.places = new Map(); // where each pattern stands, [x, y] from 0 to 1, by id
    this.from = null;
    this.to = null;
    this.route = null;
    this.opened = false;
    shelf.addEventListener('state', () => this.opened && this.#changed(shelf));
  }

  /** Asked for when somebody looks for the first time; from then on it follows the shelf. */
  open() {
    if (this.opened) return;
    this.opened = true;
    this.#ask();
  }

  within(near) {
    this.near = near;
    this.#ask();
  }

  stop() {
    if (this.running) this.session.live.stop('map');
  }

  name(id) {
    const pattern = this.answer && this.answer.patterns.find((p) => p.id === id);
    return pattern ? pattern.name : '';
  }

  /** The first of two that are taken is where the route starts, the second where it ends; a third starts anew. */
  take(id) {
    if (!this.from || this.to) this.go(id, null);
    else if (id === this.from) this.go(null, null);
    else this.go(this.from, id);
  }

  async go(from, to) {
    this.from = from || null;
    this.to = to || null;
    this.route = null;
    this.error = null;
    const run = (this.routing = {});
    this.#tell();
    if (!this.from || !this.to) return;
    let route;
    try {
      route = await post({ ask: 'route', from: this.from, to: this.to, ...this.#within() });
    } catch {
      route = { error: UNREACHED };
    }
    if (this.routing !== run) return;
    if (route.error) this.error = route.error;
    else this.route = route;
    this.#tell();
  }

  /** @returns {Protocol.Said<Protocol.Map>} */
  #within() {
    const { tolerance_m, speed_tolerance_m_s } = NEAR[this.near];
    return { tolerance_m, speed_tolerance_m_s };
  }

  /** The smoothest passage from one pattern of the shelf into another, as it can be played. */
  async passage(from, to, shelf) {
    try {
      const [one, other] = await Promise.all([shelf.load(from), shelf.load(to)]);
      const answer = await post({ ask: 'transition-play', pattern: one.pattern, to: { pattern: other.pattern } });
      return answer.error ? answer : { ...answer, legs: [this.name(from), this.name(to)] };
    } catch (problem) {
      return { error: problem.error || UNREACHED };
    }
  }

  #changed(shelf) {
    const now = shelf.patterns.map((p) => p.id + p.revision).sort().join();
    if (now === this.stood) return;
    this.#ask();
  }

  #ask() {
    const run = {};
    this.run = run;
    this.running = true;
    this.progress = 'comparing the patterns';
    this.error = null;
    this.session.live.stream({ ask: 'map', ...this.#within() }, (part) => this.run === run && this.#heard(part));
    this.#tell();
  }

  #heard(part) {
    if (part.waiting) this.progress = part.told;
    if (part.progress) this.progress = part.progress.text;
    if (part.error) this.error = part.error;
    if (part.done || part.dropped || part.error) this.running = false;
    if (part.patterns) {
      this.answer = part;
      this.stood = part.patterns.map((p) => p.id + p.revision).sort().join();
      this.places = settled(part.patterns.map((p) => p.id), part.crossings, this.places);
      const there = (id) => part.patterns.some((p) => p.id === id);
      this.go(there(this.from) ? this.from : null, there(this.from) && there(this.to) ? this.to : null);
    }
    this.#tell();
  }

  #tell() {
    this.dispatchEvent(new Event('state'));
  }
}

/**
 * Where each stands: those with a crossing between them near each other (after Fruchterman and Reingold, 1991), in even columns. Worked
 * out to the end before anything is shown; those that stood somewhere before start from there.
 */
export function settled(ids, crossings, before) {
  const n = ids.length;
  const at = new Map(ids.map((id, i) => [id, i]));
  const xy = ids.map((id, i) => before.get(id) || [0.5 + 0.45 * Math.sin((2 * Math.PI * i) / n), 0.5 - 0.45 * Math.cos((2 * Math.PI * i) / n)]).map((p) => [...p]);
  if (n < 2) return new Map(ids.map((id) => [id, [0.5, 0.5]]));
  const apart = 0.8 / Math.sqrt(n);
  const rounds = n > 100 ? 120 : 400;
  for (let round = 0; round < rounds; round++) {
    const move = xy.map(([x, y]) => [(0.5 - x) * 0.4, (0.5 - y) * 0.4]);
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < i; j++) {
        const [dx, dy, d] = between(xy, i, j);
        const push = (apart * apart) / d / d;
        move[i][0] += dx * push;
        move[i][1] += dy * push;
        move[j][0] -= dx * push;
        move[j][1] -= dy * push;
      }
    }
    for (const crossing of crossings) {
      const i = at.get(crossing.from);
      const j = at.get(crossing.to);
      const [dx, dy, d] = between(xy, i, j);
      const pull = d / apart / (1 + crossing.roughness_weights);
      move[i][0] -= dx * pull;
      move[i][1] -= dy * pull;
      move[j][0] += dx * pull;
      move[j][1] += dy * pull;
    }
    const most = 0.08 * (1 - round / rounds);
    move.forEach(([dx, dy], i) => {
      const far = Math.hypot(dx, dy);
      const share = far > most ? most / far : 1;
      xy[i][0] += dx * share;
      xy[i][1] += dy * share;
    });
  }
  even(xy);
  return new Map(ids.map((id, i) => [id, xy[i]]));
}

/**
 * In columns, every second half a row lower, so that each has room for its name: who stood left of others stands left of them or among
 * them, and above in their column who stood above.
 *
 * @param {number[][]} xy
 */
function even(xy) {
  const n = xy.length;
  const columns = Math.ceil(Math.sqrt(n));
  const rows = Math.ceil(n / columns);
  const order = [...xy.keys()].sort((i, j) => xy[i][0] - xy[j][0]);
  for (let column = 0; column < columns; column++) {
    const ones = order.slice(Math.round((column * n) / columns), Math.round(((column + 1) * n) / columns));
    ones.sort((i, j) => xy[i][1] - xy[j][1]);
    const lower = (column % 2) / 2 + (rows - ones.length) / 2;
    ones.forEach((i, row) => (xy[i] = [column / (columns - 1), (row + lower) / (rows - 0.5)]));
  }
}

function between(xy, i, j) {
  let dx = xy[i][0] - xy[j][0];
  let dy = xy[i][1] - xy[j][1];
  // Two upon each other part the same way each time.
  if (Math.hypot(dx, dy) < 1e-6) [dx, dy] = [1e-3 * Math.cos(i + 1), 1e-3 * Math.sin(i + 1)];
  return [dx, dy, Math.hypot(dx, dy)];
}

const UNREACHED = { what: 'did not come', where: 'the answer', right: 'see that the studio still runs, then ask again' };
