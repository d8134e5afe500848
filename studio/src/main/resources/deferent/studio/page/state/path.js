// An order to learn in: of the pattern on the stage, replanned when the log grows; its drills go onto the stage and back.

const REST = 400; // milliseconds of quiet before another pattern is taken apart
const KEY = 'deferent.learn';

/**
 * @typedef {{ number: number, kind: string, hand?: string, name: string, phrase?: string, tempo_cycles_per_min: number, minutes: number,
 *   practised_minutes: number, known: boolean, danger?: string, todo: string, meets: string, often: string, why: string, pattern: any, moves: any }} Drill
 * @typedef {{ pattern: string, told: string, model: string, minutes_a_day: number, ready: string, kept?: boolean, drills: Drill[], left_out: string[],
 *   days: { date: string, sittings: { drill: number, minutes: number, again: boolean }[] }[] }} Plan
 */

export class LearningPath extends EventTarget {
  /** What is learnt, as it stood. @type {{ pattern: any, shelved: any } | null} */
  of = null;
  /** What of it is on the stage, as the session has it. @type {any} */
  stands = null;
  /** Which drill is on the stage instead of the pattern. @type {number | null} */
  drill = null;
  /** @type {Plan | null} */
  plan = null;
  /** @type {any} */
  error = null;
  looked = false;
  running = false;
  progress = '';
  /** @type {object} */
  #run = {};
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  #resting;

  /**
   * @param {import('./session.js').Session} session
   * @param {import('./log.js').Log} log
   */
  constructor(session, log) {
    super();
    this.session = session;
    /** @type {{ minutes: number, by: string }} */
    this.wishes = { minutes: 20, by: '', ...JSON.parse(localStorage.getItem(KEY) || '{}') };
    session.addEventListener('state', () => this.#changed());
    log.addEventListener('grown', () => this.looked && this.of && this.#ask());
  }

  look() {
    this.looked = true;
    if (!this.plan || (this.drill === null && this.session.pattern !== this.stands)) this.begin();
  }

  away() {
    this.looked = false;
    this.stop();
  }

  /** Works out no further. */
  stop() {
    if (this.running) this.session.live.stop('learn');
  }

  /** Takes apart what stands on the stage. */
  begin() {
    const { pattern, shelved } = this.session;
    if (!pattern) return;
    Object.assign(this, { of: { pattern, shelved }, stands: pattern, drill: null, plan: null });
    this.#ask();
  }

  /** Asks for what was not answered. */
  again() {
    if (this.of) this.#ask();
  }

  /** @param {Partial<LearningPath['wishes']>} wishes */
  wish(wishes) {
    this.wishes = { ...this.wishes, ...wishes };
    localStorage.setItem(KEY, JSON.stringify(this.wishes));
    if (this.of) this.#ask();
  }

  /**
   * Puts a drill onto the stage; resolves once it is there.
   *
   * @param {number} n from 0; the last is the pattern itself
   */
  play(n) {
    const { plan, of } = this;
    if (!plan || !of) return Promise.resolve(false);
    return n === plan.drills.length - 1 ? this.back() : this.#put(n, plan.drills[n].pattern, null);
  }

  /** Puts the pattern itself back onto the stage. */
  back() {
    const { of } = this;
    return of ? this.#put(null, of.pattern, of.shelved) : Promise.resolve(false);
  }

  /** @param {number | null} drill @param {any} pattern @param {any} shelved @returns {Promise<boolean>} */
  #put(drill, pattern, shelved) {
    return new Promise((resolve) => {
      this.session.open(pattern, {
        shelved,
        then: (good) => {
          if (good) Object.assign(this, { drill, stands: this.session.pattern });
          this.#tell();
          resolve(good);
        },
      });
    });
  }

  // While a drill is on the stage, the path stays that of its pattern, whatever is tried with the drill.
  #changed() {
    if (!this.looked || this.session.dragging || this.session.aside || this.drill !== null) return;
    clearTimeout(this.#resting);
    this.#resting = setTimeout(() => {
      if (this.looked && this.drill === null && this.session.pattern !== this.stands) this.begin();
    }, REST);
  }

  #ask() {
    this.stop();
    const run = (this.#run = {});
    const { minutes, by } = this.wishes;
    this.error = null;
    this.running = true;
    this.progress = '';
    this.session.live.stream({ ask: 'learn', pattern: this.of?.pattern, minutes, ...(by ? { by } : {}) }, (part) => this.#run === run && this.#heard(part));
    this.#tell();
  }

  /** @param {any} part */
  #heard(part) {
    if (part.progress) this.progress = part.progress.text;
    if (part.error) this.error = part.error;
    if (part.drills) this.plan = part;
    if (part.done || part.dropped || part.error) this.running = false;
    this.#tell();
  }

  #tell() {
    this.dispatchEvent(new Event('state'));
  }
}
