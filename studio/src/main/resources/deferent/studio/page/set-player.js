// Plays the set on the stage, a stretch at a time: what comes next is fetched while the one before still plays.

import { post } from './state/live.js';
import { asked } from './state/set.js';

const SOON = 8; // seconds fetched first, so that it begins soon
const STRETCH = 16; // seconds fetched at a time from then on, while the one before plays
const FETCHED = 24; // stretches kept, to be played again
const LONGEST = 100; // seconds of a loop that is fetched in one; a longer one is played stretch by stretch
const TAIL = 2; // seconds before where it goes on, so that the light that stays is there
const LEAD = 2; // seconds of either pattern that are seen round a transition
const TICKS = [1, 2, 5, 10, 15, 30, 60, 120]; // seconds between two marks on the line at the foot
const MARKS = 8; // of them there at most, about
const LAST = 0.9998; // of a stretch: it has come to its end

/**
 * Seconds of the set.
 *
 * @typedef {{ from: number, to: number }} Part
 * A stretch, and where in it one goes on.
 * @typedef {{ part: Part, at: number }} Stretch
 */

export class SetPlayer {
  /** @param {import('./main.js').Desk} desk */
  constructor(desk) {
    this.desk = desk;
    /** The stretch that is on the stage. @type {Part | null} */
    this.part = null;
    /** Where it ends for good, seconds. */
    this.ends = 0;
    this.alone = false; // whether a transition is shown, after which nothing comes
    /** What was fetched of the set that stands. @type {Map<string, Promise<any>>} */
    this.fetched = new Map();
    this.loading = false;
    desk.clock.addEventListener('state', () => this.#stopped());
    desk.clock.addEventListener('tick', () => this.#ahead());
    desk.session.addEventListener('back', () => this.#left());
    desk.set.addEventListener('answered', () => this.#changed());
    desk.set.addEventListener('loop', () => this.on && this.play(this.now, this.desk.clock.playing));
  }

  /** Whether the set is on the stage. */
  get on() {
    return !!this.desk.session.setting;
  }

  /** The moment of the set that is shown, or would be, seconds. */
  get now() {
    const { part } = this;
    return part && this.on ? part.from + this.desk.clock.phase * (part.to - part.from) : this.desk.set.moment;
  }

  /** Whether it moves. */
  get playing() {
    return this.on && this.desk.clock.playing;
  }

  /** Plays on, or pauses. */
  turn() {
    const { clock, lights } = this.desk;
    if (!this.on) this.play(this.now);
    else if (clock.playing) clock.play(false);
    else if (this.now >= this.ends - 0.05) this.play(0);
    else lights.play();
  }

  /**
   * Plays from a moment on, or the part that is looped.
   *
   * @param {number} from seconds
   * @param {boolean} [moving]
   */
  async play(from, moving = true) {
    const { set } = this.desk;
    const { seconds } = set.laid;
    if (!set.known || !seconds) return;
    const whole = set.loop ?? { from: 0, to: seconds };
    this.ends = Math.min(seconds, whole.to);
    this.alone = false;
    const begin = within(from, whole) ? from : whole.from;
    if (set.loop && this.ends - whole.from <= LONGEST) await this.#load({ part: { from: whole.from, to: this.ends }, at: begin }, moving, true);
    else await this.#load(this.#stretch(begin, SOON), moving);
  }

  /**
   * Plays how one passes into the next, with a little of both.
   *
   * @param {import('./state/set.js').Joint} joint
   */
  async passage(joint) {
    const { seconds } = this.desk.set.laid;
    if (!this.desk.set.known) return;
    const part = { from: Math.max(0, joint.starts - LEAD), to: Math.min(seconds, joint.starts + joint.seconds + LEAD) };
    this.ends = part.to;
    this.alone = true;
    await this.#load({ part, at: part.from }, !this.desk.clock.calm.matches);
  }

  /**
   * Goes to a moment; what is on the stage goes along.
   *
   * @param {number} seconds
   */
  seek(seconds) {
    const { set, clock } = this.desk;
    const to = Math.max(0, Math.min(set.laid.seconds, seconds));
    set.moment = to;
    const { part } = this;
    if (!this.on || !part) clock.dispatchEvent(new Event('tick'));
    else if (to >= part.from && to <= part.to) clock.seek(Math.min(LAST, (to - part.from) / (part.to - part.from)));
    else this.play(to, clock.playing);
  }

  /** The loop begins at this moment. */
  loopFrom() {
    const { set } = this.desk;
    const { now } = this;
    set.setLoop({ from: now, to: set.loop && set.loop.to > now + 1 ? set.loop.to : set.laid.seconds });
  }

  /** The loop ends at this moment. */
  loopTo() {
    const { set } = this.desk;
    const { now } = this;
    set.setLoop({ from: set.loop && set.loop.from < now - 1 ? set.loop.from : 0, to: Math.max(1, now) });
  }

  /** All of it again. */
  whole() {
    this.desk.set.setLoop(null);
  }

  /** Goes from the stage. */
  leave() {
    if (this.on) this.desk.session.back();
  }

  /**
   * @param {Stretch} stretch
   * @param {boolean} moving
   * @param {boolean} [looped] whether it plays over and over
   */
  async #load({ part, at }, moving, looped = false) {
    const { set, session } = this.desk;
    const run = (this.run = {});
    this.loading = true;
    set.tell();
    const answer = await this.#fetch(part);
    if (this.run !== run) return;
    this.loading = false;
    if (answer.error) {
      this.fetched = new Map(); // asked for anew the next time
      this.desk.complain(answer.error);
    } else {
      if (session.aside && !this.on) session.back();
      this.part = part;
      set.moment = at;
      this.desk.putSet({ ...answer, set: { ...part, looped }, along: this.#along(), stays_s: this.#stays }, { phase: (at - part.from) / (part.to - part.from), moving, once: !looped });
    }
    set.tell();
  }

  // The line at the foot is the whole set's clock, whichever stretch of it is on the stage.
  #along() {
    const { seconds } = this.desk.set.laid;
    return { seconds, ticks: ticks(seconds), share: () => this.now / seconds, seek: (/** @type {number} */ share) => this.seek(share * seconds), says: () => `${minutes(this.now)} of ${lasting(seconds)}` };
  }

  // How long the light stays: one cycle of the pattern that is on.
  #stays = (/** @type {number} */ phase) => {
    const { set } = this.desk;
    const { part } = this;
    const block = part && set.laid.blocks[set.stepAt(part.from + phase * (part.to - part.from))];
    return block?.said?.moves?.period_s ?? 1;
  };

  // At the end of a stretch the next goes on.
  #stopped() {
    const { clock, set } = this.desk;
    set.tell();
    const { part } = this;
    if (!this.on || !part || this.loading || clock.playing || clock.phase < LAST) return;
    const next = this.#next(part);
    if (next) this.#load(next, true);
  }

  /** @param {number} at @param {number} [lasts] @returns {Stretch} */
  #stretch(at, lasts = STRETCH) {
    return { part: { from: Math.max(0, at - TAIL), to: Math.min(this.ends, at + lasts) }, at };
  }

  /** @param {Part} part @returns {Promise<any>} */
  #fetch(part) {
    const key = part.from + ' ' + part.to;
    const known = this.fetched.get(key);
    if (known) return known;
    const { fetched } = this;
    const answer = ask(this.desk.set, part);
    fetched.set(key, answer);
    if (fetched.size > FETCHED) fetched.delete([...fetched.keys()][0]);
    return answer;
  }

  // What follows a stretch: what is left, or, of a loop, its beginning.
  /** @param {Part} part */
  #next(part) {
    if (part.to < this.ends - 0.01) return this.#stretch(part.to);
    const { loop } = this.desk.set;
    return loop && !this.alone ? this.#stretch(loop.from) : null;
  }

  #ahead() {
    const { part } = this;
    const { clock, set } = this.desk;
    if (!this.on || !part) return;
    set.moment = this.now;
    if (!clock.playing || !clock.once) return;
    const next = this.#next(part);
    if (next) this.#fetch(next.part);
  }

  #left() {
    this.part = null;
    this.run = {};
    this.loading = false;
    this.desk.set.tell();
  }

  // Another set is another to play: from the same moment on.
  #changed() {
    const { set, clock } = this.desk;
    this.fetched = new Map();
    const { seconds } = set.laid;
    if (set.loop && set.loop.to > seconds) set.loop = seconds - set.loop.from > 1 ? { from: set.loop.from, to: seconds } : null;
    set.moment = Math.min(set.moment, seconds);
    if (this.on) this.play(Math.min(this.now, seconds), clock.playing);
  }
}

/**
 * @param {import('./state/set.js').ShelfSet} set
 * @param {Part} part
 * @returns {Promise<any>}
 */
function ask(set, part) {
  return post({ ask: 'set-play', ...asked(set.stands), from_s: part.from, to_s: part.to }).catch(() => ({ error: UNREACHED }));
}

/** @param {number} at @param {Part} part */
const within = (at, part) => at >= part.from && at < part.to - 0.05;

/**
 * What the line at the foot shows of the time: whole seconds, at even places.
 *
 * @param {number} seconds
 */
function ticks(seconds) {
  const step = TICKS.find((each) => seconds / each <= MARKS) ?? 300;
  const found = [];
  for (let at = 0; at <= seconds; at += step) found.push({ text: minutes(at), time_s: at });
  return found;
}

/** A time as clocks show it. @param {number} seconds */
export function minutes(seconds) {
  const whole = Math.max(0, Math.floor(seconds + 1e-6));
  return Math.floor(whole / 60) + ':' + String(whole % 60).padStart(2, '0');
}

/** How long something lasts, in the same form, to the nearest second as sentences have it. @param {number} seconds */
export function lasting(seconds) {
  return minutes(Math.round(seconds));
}

const UNREACHED = { what: 'did not come', where: 'the answer', right: 'see that the studio still runs, then ask again' };
