// The shelf as a map: its patterns as places, what leads from one to another as lines, told as it is found; and a route over it.

import { post } from './live.js';

const LEAD = 1.5; // seconds before and after, where one change of a route is played alone

export class ShelfMap extends EventTarget {
  /**
   * @param {import('./session.js').Session} session
   * @param {import('./shelf.js').Shelf} shelf
   */
  constructor(session, shelf) {
    super();
    this.session = session;
    /** @type {Protocol.Hardest} */
    this.hardest = 'practised';
    /** What is known by now: its places, and what leads from one to another. */
    this.answer = null;
    this.error = null;
    this.running = false;
    this.progress = '';
    this.places = new Map(); // where each pattern stands, [x, y] from 0 to 1, by id
    this.from = null;
    this.to = null;
    this.route = null;
    this.routing = null; // the route that is looked for
    this.sought = ''; // how far that is
    this.opened = false;
    shelf.addEventListener('state', () => this.opened && this.#changed(shelf));
  }

  /** Asked for when somebody looks for the first time; from then on it follows the shelf. */
  open() {
    if (this.opened) return;
    this.opened = true;
    this.#ask();
  }

  /** @param {Protocol.Hardest} hardest */
  within(hardest) {
    this.hardest = hardest;
    this.#ask();
  }

  stop() {
    if (this.running) this.session.live.stop('map');
  }

  /** Ends the search for a route, with the gentlest it has found. */
  stopRoute() {
    if (this.routing) this.session.live.stop('route');
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

  go(from, to) {
    const was = this.routing;
    this.from = from || null;
    this.to = to || null;
    this.route = null;
    this.routing = null;
    this.sought = '';
    this.error = null;
    if (was && !(this.from && this.to)) this.session.live.stop('route');
    if (this.from && this.to) {
      const run = (this.routing = {});
      this.session.live.stream({ ask: 'route', from: this.from, to: this.to, hardest: this.hardest }, (part) => this.routing === run && this.#routed(part));
    }
    this.#tell();
  }

  #routed(part) {
    if (part.waiting) this.sought = part.told;
    if (part.progress) this.sought = part.progress.text;
    if (part.error) this.error = part.error;
    if (part.done && part.told) this.route = part;
    if (part.done || part.dropped || part.error) this.routing = null;
    this.#tell();
  }

  /** The route as it can be played: each pattern for a cycle or two, and what leads from each into the next. */
  play(route) {
    return this.#play(route, {}, 0, route.set.steps.length - 1);
  }

  /** One change of it, with a little of either pattern. */
  playLeg(route, leg) {
    const { starts_s, seconds } = route.set.transitions[leg];
    const from = Math.max(0, starts_s - LEAD);
    return this.#play(route, { from_s: from, to_s: Math.min(route.set.seconds, starts_s + seconds + LEAD) }, leg, leg + 1);
  }

  async #play(route, part, first, last) {
    const { set, places } = route;
    let answer;
    try {
      const steps = set.steps.map((step, i) => ({ id: places[i], name: step.name, counts: step.counts_asked }));
      answer = await post({ ask: 'set-play', name: set.name, steps, hardest: route.hardest, ...part });
    } catch {
      answer = { error: UNREACHED };
    }
    if (answer.error) return answer;
    const begins = answer.from_s;
    const passages = set.transitions.slice(first, last).map(({ starts_s, seconds, told }) => ({
      from_s: starts_s - begins,
      to_s: starts_s + seconds - begins,
      transition: { told },
      moments: [],
    }));
    const legs = set.steps.slice(first, last + 1).map((step) => step.name);
    return { ...answer, passages, legs, after: set.steps[last].pattern };
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
    this.session.live.stream({ ask: 'map', hardest: this.hardest }, (part) => this.run === run && this.#heard(part));
    this.#tell();
  }

  #heard(part) {
    if (part.waiting) this.progress = part.told;
    if (part.progress) this.progress = part.progress.text;
    if (part.error) this.error = part.error;
    if (part.answer?.patterns) this.#stand(part.answer.patterns);
    if (part.answer?.transitions) this.answer.transitions.push(...part.answer.transitions);
    if (part.done || part.dropped || part.error) this.running = false;
    if (part.done && this.answer) {
      this.answer.complete = !!part.complete;
      this.answer.told = part.told ?? [];
      this.#settle();
    }
    this.#tell();
  }

  // Its places are there at once. Those that stood before stay until all is known.
  #stand(patterns) {
    this.answer = { patterns, transitions: [], complete: true, told: [] };
    this.stood = patterns.map((p) => p.id + p.revision).sort().join();
    this.fresh = patterns.some((p) => !this.places.has(p.id));
    if (this.fresh) this.#settle();
    this.fresh ||= this.places.size !== patterns.length;
    const there = (id) => patterns.some((p) => p.id === id);
    this.go(there(this.from) ? this.from : null, there(this.from) && there(this.to) ? this.to : null);
  }

  #settle() {
    if (this.fresh) this.places = settled(this.answer.patterns.map((p) => p.id), this.answer.transitions, this.places);
  }

  #tell() {
    this.dispatchEvent(new Event('state'));
  }
}

/**
 * Where each stands: those that lead into each other near each other (after Fruchterman and Reingold, 1991), in even columns. Worked
 * out to the end before anything is shown; those that stood somewhere before start from there.
 */
export function settled(ids, transitions, before) {
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
    for (const { from, to, grade } of transitions) {
      const i = at.get(from);
      const j = at.get(to);
      const [dx, dy, d] = between(xy, i, j);
      const pull = (d / apart) * PULL[grade];
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

/** How near each other patterns are drawn by what leads from one into the other; there and back count both. */
const PULL = { easy: 0.5, practised: 0.3, hard: 0.15 };

const UNREACHED = { what: 'did not come', where: 'the answer', right: 'see that the studio still runs, then ask again' };
