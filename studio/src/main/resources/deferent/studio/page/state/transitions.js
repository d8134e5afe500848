// @ts-check
// What could come next, and the ways into it: asked anew when the pattern on the stage or what counts as possible changes.

import { post } from './live.js';
import { Saving } from './saving.js';

const REST = 400; // milliseconds of quiet before what leads on is asked for again
const ROWS = 24; // of what could come next, the easiest

/** How hard a transition may be at most, as the server has it, and in words. @type {[Protocol.Hardest, string][]} */
export const GRADES = [
  ['easy', 'easy'],
  ['practised', 'with practice'],
  ['hard', 'hard'],
];

/**
 * What could come next: its pattern and the easiest way there.
 *
 * @typedef {{ key: string, name: string, hands: 'left' | 'right' | 'both', hardness: number, which: number, pattern: any, transition: any, moves: any }} Next
 * @typedef {{ phrase?: string, pattern?: any, name?: string, id?: string, key?: string }} Into
 */

export class Transitions extends EventTarget {
  #count = 0;
  /** @type {object} */
  #run = {};
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #resting;
  /** What the ways were asked for from. @type {any} */
  #asked = null;
  /** What what could come next was asked for from. @type {any} */
  #found = null;

  /** @param {import('./session.js').Session} session */
  constructor(session) {
    super();
    this.session = session;
    /** @type {Into | null} */
    this.to = null;
    /** @type {Protocol.Hardest} */
    this.hardest = 'practised';
    /** @type {any} */
    this.answer = null;
    /** @type {any} */
    this.error = null;
    this.chosen = -1;
    this.asking = false;
    this.looked = false; // whether somebody looks at what could come next
    /** By key, in the order in which they came, in the end the easiest first. @type {Map<string, Next>} */
    this.next = new Map();
    this.finding = false;
    this.progress = '';
    /** What it came to. @type {any} */
    this.whole = null;
    /** @type {any} */
    this.nextError = null;
    /** One of the ways that is written as a file. @type {any} */
    this.saving = null;
    /** What would help where nothing leads on. @type {{ says: string, does: () => void }[]} */
    this.mends = [];
    session.addEventListener('state', () => this.#changed());
  }

  /** The ways that are shown, best first. @type {any[]} */
  get shown() {
    return this.answer && this.answer.asked === this.session.pattern ? this.answer.transitions : [];
  }

  /** The next grade that is harder than what counts as possible now. */
  get harder() {
    return GRADES[GRADES.findIndex(([grade]) => grade === this.hardest) + 1] ?? null;
  }

  /**
   * Looks for ways into another pattern; null ends it. Resolves once they are known.
   *
   * @param {Into | null} to
   */
  async into(to) {
    this.to = to;
    this.saving = null;
    this.mends = [];
    this.answer = null;
    this.error = null;
    this.chosen = -1;
    await this.#ask();
  }

  /** @param {Protocol.Hardest} grade */
  within(grade) {
    this.hardest = grade;
    const picked = this.to?.key;
    if (picked) this.to = this.answer = null; // its row goes with the others
    else this.#ask();
    if (this.looked) this.#find();
    else this.#tell();
  }

  /** What could come next is found at once when somebody looks, and anew whenever the pattern is another. */
  look() {
    this.looked = true;
    if (this.#found !== this.session.pattern || this.nextError) this.#find();
  }

  away() {
    this.looked = false;
    this.stop();
  }

  /** Looks no further. */
  stop() {
    if (this.finding) this.session.live.stop('next');
  }

  #find() {
    const { pattern } = this.session;
    this.stop();
    this.#found = pattern;
    if (this.to?.key) this.to = this.answer = null; // its row goes with the others
    if (!pattern) return;
    const run = (this.#run = {});
    this.next = new Map();
    this.nextError = null;
    this.whole = null;
    this.finding = true;
    this.progress = '';
    this.session.live.stream({ ask: 'next', pattern, hardest: this.hardest, limit: ROWS }, (part) => this.#run === run && this.#heard(part));
    this.#tell();
  }

  /** @param {any} part */
  #heard(part) {
    if (part.progress) this.progress = part.progress.text;
    if (part.answer) this.next.set(part.answer.key, part.answer);
    if (part.error) this.nextError = part.error;
    if (part.done || part.dropped || part.error) this.finding = false;
    if (part.order_of_keys) {
      this.whole = part;
      const known = this.next;
      this.next = new Map();
      for (const key of part.order_of_keys) {
        const one = known.get(key);
        if (one) this.next.set(key, one);
      }
      if (!part.complete) this.#found = null; // whoever looks again goes on looking
    }
    this.#tell();
  }

  /**
   * Into one of what could come next; resolves once the ways there are known.
   *
   * @param {string} key
   */
  async enter(key) {
    const one = this.next.get(key);
    if (one) await this.into({ pattern: one.pattern, name: one.name, key });
  }

  /**
   * @param {any} pattern
   * @param {Into} to
   * @returns {Protocol.Said<Protocol.Transitions>}
   */
  #question(pattern, { phrase, pattern: into }) {
    return { pattern, to: /** @type {any} */ (into ? { pattern: into } : { phrase }), hardest: this.hardest };
  }

  #changed() {
    const { session } = this;
    if (!session.pattern || session.dragging || session.aside) return;
    const asks = this.to && this.#asked !== session.pattern;
    const finds = this.looked && !this.finding && this.#found !== session.pattern;
    const stale = this.looked && this.finding && this.#found !== session.pattern;
    if (!asks && !finds && !stale) return;
    clearTimeout(this.#resting);
    this.#resting = setTimeout(() => {
      if (asks && !this.to?.key) this.#ask();
      if (this.looked && this.#found !== session.pattern) this.#find();
    }, REST);
  }

  async #ask() {
    const count = ++this.#count;
    const { to } = this;
    const { pattern } = this.session;
    this.#asked = pattern;
    this.asking = !!to && !!pattern;
    this.#tell();
    if (!to || !pattern) return;
    let answer;
    try {
      answer = await post({ ask: 'transitions', ...this.#question(pattern, to) });
    } catch {
      answer = { error: UNREACHED };
    }
    if (count !== this.#count) return;
    this.asking = false;
    this.chosen = -1;
    this.error = answer.error || null;
    this.answer = answer.error ? null : { ...answer, asked: pattern };
    this.mends = [];
    this.#tell();
    if (this.answer?.none) this.#mend(pattern, to, this.answer.none, count);
  }

  /**
   * Where nothing leads on, what would help is tried, one thing at a time, and offered where it does.
   *
   * @param {any} pattern
   * @param {Into} to
   * @param {string} none why nothing leads on
   * @param {number} count
   */
  async #mend(pattern, to, none, count) {
    const asked = this.#question(pattern, to);
    const hard = /** @type {const} */ ('hard');
    /** @type {[string, object, () => void][]} */
    const ways = [];
    if (none === 'tethers' || none === 'reach') {
      const change = ['left', 'right'].map((side) => ({ set: `${side}.tether_m`, to: this.session.size(`${side}.tether_m`)?.value }));
      const same = { ...asked.to, change };
      const give = (/** @type {Protocol.Hardest} */ grade) => () => this.#same(same, grade);
      ways.push(['Give it the same tethers', { to: same }, give(this.hardest)]);
      if (this.hardest !== hard) ways.push(['Give it the same tethers, and let it be hard', { to: same, hardest: hard }, give(hard)]);
    } else if ((none === 'too-hard' || none === 'in-the-way') && this.hardest !== hard) {
      ways.push(['Let it be hard', { hardest: hard }, () => this.within(hard)]);
    }
    for (const [says, change, does] of ways) {
      const answer = await post(/** @type {any} */ ({ ask: 'transitions', ...asked, ...change })).catch(() => ({}));
      if (count !== this.#count) return;
      if (!answer.transitions?.length) continue;
      this.mends = [{ says, does }];
      this.#tell();
      return;
    }
  }

  /**
   * Into the same pattern at the tethers that stand.
   *
   * @param {any} to
   * @param {Protocol.Hardest} grade
   */
  async #same(to, grade) {
    const answer = await post({ ask: 'pairing', ...to, samples: 24, body: false, told: false }).catch(() => ({ error: UNREACHED }));
    if (answer.error) {
      this.error = answer.error;
      this.#tell();
      return;
    }
    this.hardest = grade;
    await this.into({ pattern: answer.pattern, name: answer.phrase ?? answer.name });
  }

  /** Asks anew what was not answered. */
  again() {
    if (this.to) this.#ask();
    else this.#find();
  }

  /**
   * One of the ways as it can be played; null where something else is wanted by then.
   *
   * @param {number} i
   */
  async played(i) {
    const { answer, to } = this;
    if (!answer || !to || answer.asked !== this.session.pattern) return null;
    this.chosen = i;
    this.#tell();
    let played;
    try {
      played = await post({ ask: 'transition-play', ...this.#question(answer.asked, to), transition: i });
    } catch {
      played = { error: UNREACHED };
    }
    if (this.answer !== answer || this.chosen !== i || answer.asked !== this.session.pattern) return null;
    return played.error ? played : { ...played, legs: ['this', this.name] };
  }

  /**
   * Writes one of the ways as a file, which then goes to the downloads.
   *
   * @param {number} i
   * @param {'mp4' | 'png'} as
   */
  save(i, as) {
    const { answer, to } = this;
    if (!answer || !to || this.saving?.progress) return;
    const dark = document.documentElement.dataset.theme === 'dark';
    const question = { ask: 'transition-take', ...this.#question(answer.asked, to), transition: i, as, wishes: { dark } };
    this.saving = new Saving(this.session.live, question, () => this.#tell());
    this.#tell();
  }

  get name() {
    return this.to?.name || this.answer?.to || this.to?.phrase || '';
  }

  #tell() {
    this.dispatchEvent(new Event('state'));
  }
}

const UNREACHED = { what: 'did not come', where: 'the answer', right: 'see that the studio still runs, then ask again' };
