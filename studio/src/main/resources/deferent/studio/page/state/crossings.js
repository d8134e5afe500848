// What could come next: the moments at which the pattern on the stage can become another one, asked anew when either changes.

import { post } from './live.js';

const REST = 400; // milliseconds of quiet before the moments are asked for again
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
    this.to = null; // { phrase } or { pattern, name, id }
    this.near = 2;
    /** @type {Protocol.Freedom} */
    this.freedom = {};
    this.answer = null;
    this.error = null;
    this.chosen = -1;
    this.count = 0;
    session.addEventListener('state', () => this.#changed());
  }

  /** The moments that are shown, smoothest first. */
  get shown() {
    return this.answer && this.answer.asked === this.session.pattern ? this.answer.crossings.slice(0, SHOWN) : [];
  }

  /**
   * Looks for crossings into another pattern; null ends it.
   *
   * @param {{ phrase?: string, pattern?: any, name?: string, id?: string } | null} to
   */
  into(to) {
    this.to = to;
    this.answer = null;
    this.error = null;
    this.chosen = -1;
    this.#ask();
  }

  /** @param {number} near */
  within(near) {
    this.near = near;
    this.#ask();
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
    const { phrase, pattern: into } = this.to;
    return { pattern, to: into ? { pattern: into } : { phrase }, tolerance_m, speed_tolerance_m_s, freedom: this.freedom };
  }

  #changed() {
    const { session } = this;
    if (!this.to || !session.pattern || session.dragging || session.aside) return;
    if (this.asked === session.pattern) return;
    clearTimeout(this.resting);
    this.resting = setTimeout(() => this.#ask(), REST);
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
    this.#tell();
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
