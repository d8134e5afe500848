// A film of practice: brought to the studio in pieces, watched there, and what was read from it. It never leaves this machine.

import { AWAY, bring, sent } from './bring.js';
import { fetched } from './take.js';

/**
 * @typedef {{ time_s: number, x: number, y: number }} HeadAt
 * @typedef {{ share: number, x: number, y: number, error: number }} HandAt
 * @typedef {{ head: [number, number][], meant: [number, number][], meant_hand: [number, number][], hands: HandAt[] }} OverSide
 * @typedef {{ period_s: number, drift: { time_s: number, ahead_s: number }[], sides: Record<Protocol.Side, OverSide> }} Over
 * @typedef {{ key: string, hand?: Protocol.Side, moment_s: number, said: string, mend: string }} Finding
 * @typedef {{ key: string, tone: string, text: string, why: string }} Told
 * @typedef {{ film: { phrase?: string, film_s: number, scale: { pixel_m: number, error_share: number }, findings: Finding[] }, told: Told[], over: Over }} Watched
 */

export class Film extends EventTarget {
  /** @param {import('./session.js').Session} session */
  constructor(session) {
    super();
    this.session = session;
    /** @type {File | null} */
    this.file = null;
    this.url = '';
    /** @type {string | null} */
    this.key = null;
    /** What the studio is doing with it, in words; empty where nothing. */
    this.doing = '';
    this.share = 0;
    /** @type {Watched | null} */
    this.watched = null;
    /** @type {any} */
    this.error = null;
    /** Whether it is held against what is on the stage. */
    this.against = true;
    /** Of both poi, metres; none is what was meant. @type {number | null} */
    this.tether = null;
    /** How large a pixel is at the performer, metres; none is found out. @type {number | null} */
    this.pixel = null;
    /** Whose light is further left at first. @type {Protocol.Side | null} */
    this.first = null;
    this.mirrored = false;
    /** The part that is watched, seconds; none is the film's own end. @type {number | null} */
    this.from = null;
    /** @type {number | null} */
    this.to = null;
    /** What came of keeping it. @type {{ told?: string, pattern?: string, twin?: boolean, error?: any } | null} */
    this.kept = null;
    /** Where somebody pointed at the heads, the left hand's first; both or, while they point, fewer. @type {HeadAt[]} */
    this.heads = [];
    /** A file that is being written, how far it is. @type {{ share: number, told: string } | null} */
    this.saving = null;
    /** What was written last. @type {{ file: string, name: string, told: string } | null} */
    this.saved = null;
    this.run = 0;
  }

  get running() {
    return this.doing !== '';
  }

  /**
   * Another film; what was read from the one before is gone.
   *
   * @param {File} file
   */
  async take(file) {
    this.stop();
    const run = ++this.run;
    if (this.url) URL.revokeObjectURL(this.url);
    Object.assign(this, { file, url: URL.createObjectURL(file), key: null, watched: null, error: null, heads: [], from: null, to: null, saved: null, doing: 'Bringing it in', share: 0 });
    this.#tell();
    try {
      const key = await bring('film', file, {}, (share) => {
        if (this.run !== run) return false;
        this.share = share;
        this.#tell();
        return true;
      });
      if (key === null) return;
      this.key = key;
      this.ask();
    } catch (/** @type {any} */ problem) {
      if (this.run === run) this.#failed(problem.error ?? AWAY);
    }
  }

  /** Reads it, or reads it again by other wishes. */
  ask() {
    if (!this.key || !this.file) return;
    const run = ++this.run;
    Object.assign(this, { doing: 'Watching it', share: 0, error: null, kept: null });
    this.session.live.stream({ ask: 'film', ...this.#question() }, (part) => this.run === run && this.#heard(part));
    this.#tell();
  }

  #question() {
    const { session, tether, pixel, first, mirrored, from, to, heads } = this;
    return {
      film: /** @type {string} */ (this.key),
      called: this.file?.name ?? '',
      ...(this.against && session.pattern ? { pattern: session.pattern } : {}),
      ...(tether ? { tether_m: tether } : {}),
      ...(pixel ? { pixel_m: pixel } : {}),
      ...(heads.length === 2 ? { pointed: heads, first: /** @type {const} */ ('left') } : first ? { first } : {}),
      ...(mirrored ? { mirrored } : {}),
      ...(from !== null ? { from_s: from } : {}),
      ...(to !== null ? { to_s: to } : {}),
    };
  }

  /**
   * Takes it away as a file.
   *
   * @param {string} as the file's ending
   * @param {Record<string, string>} wishes
   */
  save(as, wishes) {
    if (!this.key || this.saving) return;
    const saving = (this.saving = { share: 0, told: '' });
    Object.assign(this, { saved: null, error: null });
    this.session.live.stream({ ask: 'filmed', ...this.#question(), as, wishes }, (/** @type {any} */ part) => {
      if (this.saving !== saving) return;
      if (part.progress) Object.assign(saving, part.progress);
      if (part.error) this.error = part.error;
      if (part.done || part.dropped || part.error) this.saving = null;
      if (part.file) {
        this.saved = part;
        fetched(part);
      }
      this.#tell();
    });
    this.#tell();
  }

  stopSaving() {
    this.saving = null;
    this.session.live.stop('filmed');
    this.#tell();
  }

  /** Points at a head in the film as it stands, the left hand's first. @param {HeadAt} head */
  point(head) {
    this.heads = [...this.heads, head];
    if (this.heads.length === 2) this.ask();
    this.#tell();
  }

  /** Forgets where the heads were pointed at; what was read with them is read anew. */
  unpoint() {
    const told = this.heads.length === 2;
    this.heads = [];
    if (told) this.ask();
    this.#tell();
  }

  /**
   * Keeps what was read beside the shelf.
   *
   * @param {boolean} replace whether over what was kept of this film before
   */
  async keep(replace) {
    if (!this.file) return;
    const { run } = this;
    try {
      const { told, pattern } = await sent('api/practice', { ...this.#question(), written_ms: this.file.lastModified, replace });
      if (this.run === run) this.kept = { told, pattern };
    } catch (/** @type {any} */ problem) {
      const error = problem.error ?? AWAY;
      if (this.run === run) this.kept = error.what?.startsWith('is kept already') ? { twin: true } : { error };
    }
    this.#tell();
  }

  /** @param {Partial<Pick<Film, 'against' | 'tether' | 'pixel' | 'first' | 'mirrored' | 'from' | 'to'>>} wish */
  wish(wish) {
    Object.assign(this, wish);
    this.ask();
    this.#tell();
  }

  stop() {
    if (!this.running) return;
    this.run++;
    this.doing = '';
    this.session.live.stop('film');
    this.#tell();
  }

  /** @param {any} part */
  #heard(part) {
    if (part.progress) this.share = part.progress.share;
    if (part.error) {
      this.#failed(part.error);
      return;
    }
    if (part.done || part.dropped) {
      this.doing = '';
      if (part.over) this.watched = part;
    }
    this.#tell();
  }

  /** @param {any} error */
  #failed(error) {
    Object.assign(this, { error, doing: '', watched: null });
    this.#tell();
  }

  #tell() {
    this.dispatchEvent(new Event('state'));
  }
}

/**
 * Where in the mean cycle a moment of the film is, 0 to 1.
 *
 * @param {Over} over
 * @param {number} time seconds into the film
 */
export function shareAt(over, time) {
  const share = (time + ahead(over.drift, time)) / over.period_s;
  return share - Math.floor(share);
}

/** @param {Over['drift']} drift @param {number} time */
function ahead(drift, time) {
  const next = drift.findIndex((knot) => knot.time_s >= time);
  if (!drift.length) return 0;
  if (next === 0) return drift[0].ahead_s;
  if (next < 0) return drift[drift.length - 1].ahead_s;
  const from = drift[next - 1];
  const to = drift[next];
  return from.ahead_s + ((to.ahead_s - from.ahead_s) * (time - from.time_s)) / (to.time_s - from.time_s);
}
