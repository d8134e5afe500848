// What could come next: the moments at which the pattern on the stage can become another one, asked anew when either changes.

import { post } from './live.js';

const REST = 400; // milliseconds of quiet before the moments are asked for again
const CARDS = 12; // of what could come next, the smoothest
const SHOWN = 24; // moments that are listed and marked, the smoothest

/** How near two states must be to count as a crossing: metres and metres a second. */
export const NEAR = [
  { tolerance_m: 0.08, speed_tolerance_m_s: 1, says: 'a hand’s breadth', more: '8 cm, 1 m/s' },
  { tolerance_m: 0.25, speed_tolerance_m_s: 3, says: 'a forearm', more: '25 cm, 3 m/s' },
  { tolerance_m: 0.6, speed_tolerance_m_s: 8, says: 'an arm', more: '60 cm, 8 m/s' },
];

/**
 * What may be done to the other pattern so that it can be entered.
 *
 * @type {[keyof Protocol.Freedom, number | boolean, string][]}
 */
export const FREE = [
  ['turn_deg', 180, 'turned in its plane'],
  ['mirror', true, 'spun the other way round'],
  ['timing', true, 'timed anew between its hands'],
  ['shift_m', 0.5, 'carried by up to 50 cm'],
  ['tempo_factor', 1.5, 'sped up or slowed, by up to 1.5'],
];

export class Crossings extends EventTarget {
  /** @param {import('./session.js').Session} session */
  constructor(session) {
    super();
    this.session = session;
    /** @type {any} */
    this.to = null; // { phrase } or { pattern, name, id, who }
    this.near = 2;
    /** @type {Protocol.Freedom} */
    this.freedom = {};
    this.answer = null;
    this.error = null;
    this.chosen = -1;
    this.count = 0;
    this.looked = false; // whether somebody looks at what could come next
    /** @type {Map<string, any>} */
    this.next = new Map(); // what could come next, by key, smoothest first at the end
    this.finding = false;
    this.nextError = null;
    /** @type {{ says: string, does: () => void }[]} */
    this.mends = []; // what would make a crossing where there is none
    session.addEventListener('state', () => this.#changed());
  }

  /** The moments that are shown, smoothest first. */
  get shown() {
    return this.answer && this.answer.asked === this.session.pattern ? this.answer.crossings.slice(0, SHOWN) : [];
  }

  /**
   * Looks for crossings into another pattern; null ends it.
   *
   * @param {{ phrase?: string, pattern?: any, name?: string, id?: string, key?: string, who?: Protocol.Who } | null} to
   */
  into(to) {
    this.to = to;
    this.mends = [];
    this.answer = null;
    this.error = null;
    this.chosen = -1;
    this.comparing = this.#ask();
  }

  /** @param {number} near */
  within(near) {
    this.near = near;
    this.#ask();
    if (this.looked) this.#find();
  }

  /** What could come next is found at once when somebody looks, and anew whenever the pattern is another. */
  look() {
    this.looked = true;
    if (this.found !== this.session.pattern || this.nextError) this.#find();
  }

  away() {
    this.looked = false;
  }

  #find() {
    const { pattern } = this.session;
    this.found = pattern;
    if (this.to?.key) this.to = this.answer = null; // its card goes with the others
    if (!pattern) return;
    const run = (this.run = {});
    this.next = new Map();
    this.nextError = null;
    this.finding = true;
    const { tolerance_m, speed_tolerance_m_s } = NEAR[this.near];
    this.session.live.stream({ ask: 'next', pattern, tolerance_m, speed_tolerance_m_s }, (part) => this.run === run && this.#heard(part));
    this.#tell();
  }

  /** @param {any} part */
  #heard(part) {
    if (part.answer) {
      const found = [...this.next.values(), part.answer].sort((a, b) => a.roughness_weights - b.roughness_weights);
      this.next = new Map(found.slice(0, CARDS).map((one) => [one.key, one]));
    }
    if (part.error) this.nextError = part.error;
    if (part.done || part.dropped || part.error) this.finding = false;
    this.#tell();
  }

  /**
   * Into one of what could come next, through its smoothest moment; resolves once its moments are known.
   *
   * @param {string} key
   */
  async enter(key) {
    const { pattern, name, who } = this.next.get(key);
    if (this.finding) this.session.live.stop('next'); // what was picked matters more
    this.into({ pattern, name, key, who });
    await this.comparing;
  }

  /**
   * @param {keyof Protocol.Freedom} key
   * @param {number | boolean | undefined} value
   */
  let(key, value) {
    if (value === undefined) delete this.freedom[key];
    else Object.assign(this.freedom, { [key]: value });
    this.#ask();
  }

  /**
   * @param {any} pattern
   * @returns {Protocol.Said<Protocol.Crossings>}
   */
  #question(pattern) {
    const { tolerance_m, speed_tolerance_m_s } = NEAR[this.near];
    const { phrase, pattern: into, who } = this.to;
    return { pattern, to: into ? { pattern: into } : { phrase }, who, tolerance_m, speed_tolerance_m_s, freedom: this.freedom };
  }

  #changed() {
    const { session } = this;
    if (!session.pattern || session.dragging || session.aside) return;
    const asks = this.to && this.asked !== session.pattern;
    const finds = this.looked && this.found !== session.pattern;
    if (!asks && !finds) return;
    clearTimeout(this.resting);
    this.resting = setTimeout(() => {
      if (asks) this.#ask();
      if (finds && this.looked) this.#find();
    }, REST);
  }

  async #ask() {
    const count = ++this.count;
    const { pattern } = this.session;
    this.asked = pattern;
    if (!this.to || !pattern) {
      this.asking = false;
      this.#tell();
      return;
    }
    this.asking = true;
    this.#tell();
    let answer;
    try {
      answer = await post({ ask: 'crossings', ...this.#question(pattern) });
    } catch {
      answer = { error: UNREACHED };
    }
    if (count !== this.count) return;
    this.asking = false;
    this.chosen = -1;
    this.error = answer.error || null;
    this.answer = answer.error ? null : { ...answer, asked: pattern };
    this.mends = [];
    this.#tell();
    if (this.answer && !this.answer.crossings.length) this.#mend(pattern, count);
  }

  /**
   * Where there is no crossing, what would make one is tried, one thing at a time, and offered where it does.
   *
   * @param {any} pattern
   * @param {number} count
   */
  async #mend(pattern, count) {
    const wider = NEAR[this.near + 1];
    /** @type {[string, object, () => void][]} */
    const ways = FREE.filter(([key]) => !(key in this.freedom)).map(([key, value, says]) => [
      'Let it be ' + says,
      { freedom: { ...this.freedom, [key]: value } },
      () => this.let(key, value),
    ]);
    if (wider) {
      const { tolerance_m, speed_tolerance_m_s } = wider;
      ways.unshift([`Let them be ${wider.says} apart`, { tolerance_m, speed_tolerance_m_s }, () => this.within(this.near + 1)]);
    }
    for (const [says, change, does] of ways) {
      const answer = await post({ ask: 'crossings', ...this.#question(pattern), ...change }).catch(() => ({}));
      if (count !== this.count) return;
      if (!answer.crossings?.length) continue;
      this.mends.push({ says, does });
      this.#tell();
    }
  }

  /** Asks anew what was not answered. */
  again() {
    if (this.to) this.#ask();
    else this.#find();
  }

  /**
   * The passage through one of the moments, as it can be played; null where something else is wanted by then.
   *
   * @param {number} i
   */
  async passage(i) {
    const { answer } = this;
    if (!answer || answer.asked !== this.session.pattern) return null;
    this.chosen = i;
    this.#tell();
    let passage;
    try {
      passage = await post({ ask: 'passage', ...this.#question(answer.asked), crossing: i });
    } catch {
      passage = { error: UNREACHED };
    }
    if (this.answer !== answer || this.chosen !== i || answer.asked !== this.session.pattern) return null;
    return passage.error ? passage : { ...passage, legs: ['this', this.name] };
  }

  get name() {
    return this.to.name || (this.answer && this.answer.to.name) || this.to.phrase;
  }

  #tell() {
    this.dispatchEvent(new Event('state'));
  }
}

const UNREACHED = { what: 'did not come', where: 'the answer', right: 'see that the studio still runs, then ask again' };
