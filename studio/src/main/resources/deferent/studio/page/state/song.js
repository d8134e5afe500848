// A song: brought to the studio, its beats as the studio finds them, and what a person sets right in them. It never leaves this machine.

import { AWAY, bring, sent } from './bring.js';

const DEPTH = 200; // steps kept to go back over
const AT_ONCE = 1000; // milliseconds within which a beat that is moved on and on is moved once
/** The closest that two beats may come to each other by hand, seconds, as in Mend.java. */
export const CLOSEST = 0.05;

/**
 * @typedef {{ key: string, tone: string, text: string, why: string }} Told
 * @typedef {{ name: string, told: Told[], seconds: number, beats_per_min: number, beats_a_bar: number, first_bar: number, beats_s: number[],
 *   loud: number[], loud_per_s: number }} Heard
 * @typedef {{ level: 'double' | 'half' } | { first_bar: number } | { beat: number, to_s: number }} Mend
 *
 * What a person said of it: taps, seconds; how many beats make a bar; what they set right after that.
 * @typedef {{ taps: number[], bar: number | null, mends: Mend[] }} Said
 */

/** @type {Said} */
const NOTHING = { taps: [], bar: null, mends: [] };

/** Whether a dropped file is meant as a song, and not as a film. @param {File} file */
export const mayBeSong = (file) => /^audio\//.test(file.type) || /\.(mp3|m4a|m4b|aac|ogg|oga|opus|flac|wav|wave|aif|aiff|wma|mka)$/i.test(file.name);

export class Song extends EventTarget {
  /** @param {import('./live.js').Live} live */
  constructor(live) {
    super();
    this.live = live;
    /** @type {File | null} */
    this.file = null;
    this.url = '';
    /** @type {string | null} */
    this.key = null;
    /** What the studio is doing with it, in words; empty where nothing. */
    this.doing = '';
    this.share = 0;
    /** What the studio found last. @type {Heard | null} */
    this.heard = null;
    /** @type {any} */
    this.error = null;
    /** @type {Said} */
    this.said = NOTHING;
    /** @type {Said[]} */
    this.past = [];
    /** @type {Said[]} */
    this.future = [];
    /** What the answer that stands is about, and how many steps led there. */
    this.sure = { said: NOTHING, steps: 0 };
    /** Taps that nothing was made of yet, seconds. @type {number[]} */
    this.taps = [];
    /** The beat that is chosen. @type {number | null} */
    this.chosen = null;
    /** What came of keeping it. @type {{ told?: string, id?: string, name?: string, taken?: boolean, error?: any } | null} */
    this.kept = null;
    this.moved = 0; // when a beat was moved last
    this.run = 0;
  }

  get running() {
    return this.doing !== '';
  }

  /** Another song; what was made of the one before is gone. @param {File} file */
  async take(file) {
    this.stop();
    const run = ++this.run;
    if (this.url) URL.revokeObjectURL(this.url);
    Object.assign(this, { file, url: URL.createObjectURL(file), key: null, heard: null, error: null, kept: null, chosen: null, doing: 'Bringing it in', share: 0 });
    Object.assign(this, { said: NOTHING, past: [], future: [], taps: [], sure: { said: NOTHING, steps: 0 } });
    this.#tell();
    try {
      const key = await bring('song', file, { called: file.name }, (share) => {
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

  /** Finds its beats by what is said of it. */
  ask() {
    if (!this.key) return;
    const run = ++this.run;
    Object.assign(this, { doing: this.heard ? 'Looking again' : 'Listening', share: 0, error: null, kept: null });
    this.live.stream({ ask: 'beats', ...this.#question(this.key) }, (/** @type {any} */ part) => this.run === run && this.#answered(part));
    this.#tell();
  }

  /** @param {string} key */
  #question(key) {
    const { taps, bar, mends } = this.said;
    return { song: key, ...(taps.length ? { taps_s: taps } : {}), ...(bar ? { beats_a_bar: bar } : {}), ...(mends.length ? { mends } : {}) };
  }

  /** @param {any} part */
  #answered(part) {
    if (part.progress) this.share = part.progress.share;
    if (part.error) {
      this.#failed(part.error);
      return;
    }
    if (part.done || part.dropped) {
      this.doing = '';
      if (part.beats_s) this.#heard(part);
    }
    this.#tell();
  }

  /** @param {Heard} heard */
  #heard(heard) {
    const was = this.heard && this.chosen !== null ? this.heard.beats_s[this.chosen] : null;
    this.heard = heard;
    this.sure = { said: this.said, steps: this.past.length };
    this.chosen = was === null ? null : nearest(heard.beats_s, was);
  }

  // What a person sets right ------------------------------------------------------------------------------------------------------

  /** @param {Said} said @param {boolean} [merged] whether it goes on with the step before */
  #say(said, merged = false) {
    if (!merged) this.past = [...this.past, this.said].slice(-DEPTH);
    this.future = [];
    this.said = said;
    this.ask();
  }

  /** Somebody hears a beat now. @param {number} time seconds of the song */
  tap(time) {
    const last = this.taps.at(-1);
    // Whoever went back, or has stopped for a while, taps anew.
    this.taps = last !== undefined && time > last && time - last < 3 ? [...this.taps, round(time)] : [round(time)];
    this.#tell();
  }

  /** Reads it by the taps. What was set right before was so in beats that are no more. */
  useTaps() {
    if (this.taps.length < 2) return;
    const { taps } = this;
    this.taps = [];
    this.#say({ ...NOTHING, bar: this.said.bar, taps });
  }

  dropTaps() {
    this.taps = [];
    this.#tell();
  }

  /** @param {'double' | 'half'} level */
  level(level) {
    this.#mend({ level });
  }

  /** How many beats make a bar. @param {number} bar */
  bars(bar) {
    this.#say({ ...this.said, bar });
  }

  /** @param {number} beat */
  firstBar(beat) {
    this.#mend({ first_bar: beat });
  }

  /**
   * A beat falls at another time.
   *
   * @param {number} beat
   * @param {number} to seconds; kept between its neighbours
   */
  move(beat, to) {
    if (!this.heard) return;
    const times = this.heard.beats_s;
    const time = this.between(beat, to);
    if (time === times[beat]) return;
    const last = this.said.mends.at(-1);
    const on = last && 'beat' in last && last.beat === beat && Date.now() - this.moved < AT_ONCE;
    this.moved = Date.now();
    // It stands there at once; what the studio makes of it follows.
    this.heard = { ...this.heard, beats_s: times.with(beat, time) };
    this.#mend({ beat, to_s: time }, !!on);
  }

  /** @param {number} beat @param {number} time */
  between(beat, time) {
    if (!this.heard) return time;
    const { beats_s: times, seconds } = this.heard;
    const least = beat === 0 ? 0 : times[beat - 1] + CLOSEST;
    const most = beat === times.length - 1 ? seconds : times[beat + 1] - CLOSEST;
    // Rounded inwards, since what is sent must not touch a neighbour.
    return least > most ? times[beat] : Math.max(Math.ceil(least * 1000) / 1000, Math.min(Math.floor(most * 1000) / 1000, round(time)));
  }

  /** @param {Mend} mend @param {boolean} [merged] */
  #mend(mend, merged = false) {
    const { mends } = this.said;
    this.#say({ ...this.said, mends: [...(merged ? mends.slice(0, -1) : mends), mend] }, merged);
  }

  undo() {
    this.#over(this.past, this.future);
  }

  redo() {
    this.#over(this.future, this.past);
  }

  /** @param {Said[]} from @param {Said[]} to */
  #over(from, to) {
    const said = from.pop();
    if (!said) return;
    to.push(this.said);
    this.said = said;
    this.moved = 0;
    this.ask();
  }

  /** @param {number | null} beat */
  choose(beat) {
    this.chosen = beat;
    this.#tell();
  }

  // The shelf ---------------------------------------------------------------------------------------------------------------------

  /** @param {string} name @param {boolean} replace whether in the place of the song of that name */
  async keep(name, replace) {
    if (!this.key) return;
    const { run } = this;
    try {
      const kept = await sent('api/songs', { ...this.#question(this.key), name, replace });
      if (this.run === run) this.kept = kept;
    } catch (/** @type {any} */ problem) {
      const error = problem.error ?? AWAY;
      if (this.run === run) this.kept = error.what === 'is on the shelf already' ? { taken: true, name } : { error };
    }
    this.#tell();
  }

  stop() {
    if (!this.running) return;
    this.run++;
    this.doing = '';
    this.live.stop('beats');
    this.#tell();
  }

  /** What was said and cannot be is unsaid. @param {any} error */
  #failed(error) {
    const { said, steps } = this.sure;
    Object.assign(this, { error, doing: '', said, past: this.past.slice(0, steps), future: [] });
    this.#tell();
  }

  #tell() {
    this.dispatchEvent(new Event('state'));
  }
}

/** @param {number} seconds */
const round = (seconds) => Math.round(seconds * 1000) / 1000;

/** The number of the time that is nearest to one. @param {number[]} times going up @param {number} time */
export function nearest(times, time) {
  const next = after(times, time);
  return next > 0 && (next === times.length || time - times[next - 1] < times[next] - time) ? next - 1 : next;
}

/** The number of the first that comes after one, or how many there are. @param {number[]} times going up @param {number} time */
export function after(times, time) {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle] <= time) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** A beat's place in the bars: the bar's number, which is 0 or less before the first, and its own in it, from 1. @param {Heard} heard @param {number} beat */
export function placeOf({ beats_a_bar, first_bar }, beat) {
  const bar = Math.floor((beat - first_bar) / beats_a_bar);
  return { bar: bar + 1, count: beat - first_bar - bar * beats_a_bar + 1 };
}
