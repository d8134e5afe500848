import { post } from './live.js';
// A seek: what is asked for, how far it has come, and what it has found so far. Answers come one by one over the socket.

export const SPACES = [[10000, 'ten thousand motions'], [20000, 'twenty thousand motions'], [60000, 'sixty thousand motions'], [200000, 'two hundred thousand motions']];
/** @type {Record<Protocol.Order, string>} */
export const ORDERS = {
  try: 'what you may not have tried',
  closest: 'closest, then simplest',
  reach: 'best in reach',
  slowest: 'slowest tempo',
  steadiness: 'steadiest',
  symmetry: 'most symmetrical',
  contrast: 'greatest contrast of sizes',
  'near-shelf': 'nearest to the shelf',
  new: 'furthest from the shelf',
};

const LIMIT = 36;

export class Seek extends EventTarget {
  /** @param {import('./session.js').Session} session */
  constructor(session) {
    super();
    this.session = session;
    this.motions = 60000;
    /** @type {Protocol.Order} */
    this.order = 'try';
    /** @type {Protocol.Filter} */
    this.filter = {};
    this.like = false; // like what was on the stage when it was asked
    this.asked = false;
    this.running = false;
    this.found = new Map(); // answers by key, in the order in which they came, at the end in the order asked for
    this.told = null;
    this.error = null;
    this.progress = '';
    this.chosen = null; // key
    this.saved = new Set();
    this.pages = 0; // of answers that were found elsewhere, where the studio was opened with some
    this.page = 1;
    this.leafed = false;
    /** @type {Promise<void> | undefined} */
    this.looked = undefined;
  }

  /** Whether there are answers to leaf through. */
  look() {
    this.looked ??= post({ ask: 'seek', page: 1, limit: 1 }).then((answer) => {
      this.pages = answer.pages;
      this.#tell();
    });
  }

  /** @param {number} page */
  leaf(page) {
    this.page = page;
    this.like = false;
    this.#run(page);
  }

  ask(like = false) {
    this.like = like && !!this.session.pattern;
    if (this.like) this.model = this.session.pattern;
    this.#run();
  }

  /**
   * Another space, order or filter: what was asked for is asked for anew.
   *
   * @param {'motions' | 'order' | 'filter'} key
   * @param {any} value
   */
  set(key, value) {
    Object.assign(this, { [key]: value });
    if (this.asked && this.leafed && key === 'filter') this.leaf(this.page);
    else if (this.asked) this.#run();
    else this.#tell();
  }

  /**
   * @param {keyof Protocol.Filter} key
   * @param {number | boolean | undefined} [value]
   */
  only(key, value = undefined) {
    const filter = { ...this.filter };
    if (value === undefined) delete filter[key];
    else Object.assign(filter, { [key]: value });
    this.set('filter', filter);
  }

  stop() {
    if (this.running) this.session.live.stop('seek');
  }

  /** @param {string} key */
  choose(key) {
    this.chosen = key;
    const { pattern } = this.found.get(key);
    this.session.open(pattern, { shelved: null });
    this.#tell();
  }

  /** @param {number} page of answers that were found elsewhere; 0 to seek */
  #run(page = 0) {
    const { session, motions, filter, like, model } = this;
    this.leafed = page > 0;
    this.asked = true;
    this.running = true;
    this.error = null;
    this.told = null;
    this.chosen = null;
    this.saved = new Set();
    this.progress = 'building the motions';
    this.found = new Map();
    const run = {};
    this.run = run;
    const first = like ? { pattern: model } : { order: this.order };
    /** @param {any} part */
    const heard = (part) => this.run === run && this.#heard(part);
    if (page) session.live.stream({ ask: 'seek', page, filter }, heard);
    else session.live.stream({ ask: 'seek', motions, filter, limit: LIMIT, ...first }, heard);
    this.#tell();
  }

  /** @param {any} part */
  #heard(part) {
    if (part.waiting) this.progress = part.told;
    if (part.progress) this.progress = part.progress.text;
    if (part.answer) {
      this.found.set(part.answer.key, part.answer);
      this.progress = this.found.size + ' worked out';
    }
    if (part.error) this.error = part.error;
    if (part.done || part.dropped || part.error) {
      this.running = false;
      if (part.order_of_keys) {
        this.found = new Map(part.order_of_keys.map((/** @type {string} */ key) => [key, this.found.get(key)]));
        this.told = part.told;
      } else if (part.told) {
        this.told = part.told;
      }
    }
    this.#tell();
  }

  #tell() {
    this.dispatchEvent(new Event('state'));
  }
}
