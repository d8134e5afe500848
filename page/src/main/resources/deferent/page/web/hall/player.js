// Plays one pattern: by the audio clock where it clicks, else by the page's own. Nothing runs while it is paused.

import { Clicks } from './clicks.js';
import { Pulse } from './pulse.js';

const LONGEST = 0.25; // seconds between two frames that still count as practice

/** How fast it can be played, as shares of the pattern's own tempo. */
const STEPS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25, 1.5, 2];

export class Player extends EventTarget {
  constructor() {
    super();
    this.pulse = new Pulse();
    this.clicks = new Clicks();
    this.aloud = true; // whether it clicks
    this.playing = false;
    this.share = 0; // of the cycle
    this.speed = 1; // of the pattern's own tempo
    this.period = 1; // seconds of a cycle at its own tempo
    this.practised = 0; // seconds played since the practice began
    this.gone = 0; // cycles played of this pattern
  }

  #byEar = false; // whether the audio clock is the one that is gone by
  #last = 0;
  #before = 0; // cycles that were gone when the pulse last began
  #frames = 0;
  #waits = 0; // seconds that were left, when it was paused, until its cycle was to begin
  #asked = 0; // another number with every play and pause

  /**
   * Another pattern, at its beginning.
   *
   * @param {number} period seconds of a cycle
   * @param {import('./pulse.js').Beat[]} beats
   */
  load(period, beats) {
    this.pause();
    this.period = period;
    this.pulse.beats = beats;
    this.pulse.from = 0;
    this.pulse.to = 1;
    this.share = this.gone = this.#waits = 0;
  }

  /** Seconds until its cycle begins, where something else comes before. */
  get ahead() {
    return this.playing ? Math.max(0, this.pulse.at - this.now()) : this.#waits;
  }

  get slowest() {
    return this.speed <= STEPS[0] + 1e-6;
  }

  get fastest() {
    return this.speed >= STEPS[STEPS.length - 1] - 1e-6;
  }

  /** Seconds of the clock that is gone by. */
  now() {
    return this.#byEar ? this.clicks.heard() : performance.now() / 1000;
  }

  async play() {
    if (this.playing) return;
    this.playing = true;
    const asked = ++this.#asked;
    this.dispatchEvent(new Event('state'));
    const ear = this.aloud ? await this.clicks.ready() : null;
    if (asked !== this.#asked) return;
    this.#byEar = ear !== null;
    this.pulse.rate = this.speed / this.period;
    this.pulse.begin((this.#byEar ? this.clicks.soon() : this.now()) + this.#waits, this.share);
    this.#waits = 0;
    if (this.#byEar) this.clicks.follow(this.pulse);
    this.#before = this.gone;
    this.#last = 0;
    this.#frames = requestAnimationFrame(this.#frame);
  }

  pause() {
    if (!this.playing) return;
    this.#waits = this.gone ? 0 : this.ahead;
    this.playing = false;
    this.#asked++;
    cancelAnimationFrame(this.#frames);
    this.clicks.rest();
    this.dispatchEvent(new Event('state'));
  }

  /** Stands at a share of the cycle. @param {number} share */
  seek(share) {
    this.share = share;
    this.gone = this.#waits = 0;
    if (this.playing) this.#anew();
    this.dispatchEvent(new Event('tick'));
  }

  /** @param {number} speed of the pattern's own tempo */
  pace(speed) {
    const ahead = this.gone ? 0 : (this.ahead * this.speed) / speed;
    this.speed = speed;
    if (this.playing) this.#anew(ahead);
    else this.#waits = ahead;
    this.dispatchEvent(new Event('state'));
  }

  /** Slower by a step, faster by a negative one; false where there is no further one. @param {number} by */
  slower(by) {
    const i = STEPS.findIndex((step) => step >= this.speed - 1e-6) - by;
    if (i < 0 || i >= STEPS.length) return false;
    this.pace(STEPS[i]);
    return true;
  }

  /** That part of the cycle again and again. @param {number} from @param {number} to */
  loop(from, to) {
    this.pulse.from = from;
    this.pulse.to = to;
    if (this.share < from || this.share >= to) this.share = from;
    if (this.playing) this.#anew();
    else this.dispatchEvent(new Event('tick'));
    this.dispatchEvent(new Event('state'));
  }

  /** Clicks or none from now on. @param {boolean} on */
  async sound(on) {
    this.aloud = on;
    if (this.playing) {
      this.pause();
      await this.play();
    } else {
      this.dispatchEvent(new Event('state'));
    }
  }

  /**
   * Another pattern comes after this one without a pause.
   *
   * @param {number} period seconds of a cycle
   * @param {import('./pulse.js').Beat[]} beats
   * @param {number} share where in its cycle it is entered
   * @param {number} wait seconds until it is
   */
  onward(period, beats, share, wait) {
    this.period = period;
    this.pulse.beats = beats;
    this.pulse.from = 0;
    this.pulse.to = 1;
    this.pulse.rate = this.speed / period;
    this.share = share;
    this.gone = this.#before = 0;
    this.pulse.begin(Math.max(this.now() + wait, this.#byEar ? this.clicks.soon() : 0), share);
    if (this.#byEar) this.clicks.follow(this.pulse);
    this.dispatchEvent(new Event('state'));
  }

  // The same moment goes on at another tempo or in another loop.
  #anew(ahead = 0) {
    this.#before = this.gone;
    this.pulse.rate = this.speed / this.period;
    this.pulse.begin(this.now() + ahead, this.share);
    if (this.#byEar) this.clicks.follow(this.pulse);
  }

  #frame = () => {
    if (!this.playing) return;
    const now = this.now();
    // A clock that was read too early never takes the picture back.
    const at = Math.max(now, this.#last);
    if (this.#last) this.practised += Math.min(LONGEST, at - this.#last);
    this.#last = at;
    this.share = this.pulse.share(at);
    this.gone = this.#before + this.pulse.gone(at);
    this.dispatchEvent(new Event('tick'));
    if (this.playing) this.#frames = requestAnimationFrame(this.#frame);
  };
}
