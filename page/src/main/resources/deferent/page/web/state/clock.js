// Where the moment stands in the cycle and how fast it goes on. The moment is kept as a share of the cycle, so that a change of
// tempo, which changes the cycle, leaves it where it is.

export const SPEEDS = [0.1, 0.25, 0.5, 1];

const LAST = 0.9999;
const SHORTEST = 0.02; // of a cycle, that a loop holds at least

export class Clock extends EventTarget {
  constructor() {
    super();
    this.phase = 0;
    this.period = 1;
    this.speed = 0.5;
    this.playing = false;
    this.once = false; // stops at the end rather than beginning anew
    this.from = 0; // the part of the cycle that plays over and over: all of it, unless somebody sets a loop
    this.to = 1;
    this.turns = 0; // whole cycles since play began, for the count
    this.frame = (/** @type {number} */ now) => this.#frame(now);
    this.calm = matchMedia('(prefers-reduced-motion: reduce)');
  }

  play(on = !this.playing) {
    if (on === this.playing) return;
    if (on && this.once && this.phase >= LAST) this.phase = 0;
    this.playing = on;
    this.last = 0;
    if (on) requestAnimationFrame(this.frame);
    this.dispatchEvent(new Event('state'));
  }

  /** @param {number} phase */
  seek(phase) {
    this.phase = ((phase % 1) + 1) % 1;
    this.dispatchEvent(new Event('tick'));
  }

  /**
   * Slower by a step, faster by a negative one; false where there is no further one.
   *
   * @param {number} by
   */
  slower(by) {
    const i = SPEEDS.indexOf(this.speed) - by;
    if (i < 0 || i >= SPEEDS.length) return false;
    this.speed = SPEEDS[i];
    this.dispatchEvent(new Event('state'));
    return true;
  }

  /** Whether a part plays over and over rather than the whole cycle. */
  get looped() {
    return this.from > 0 || this.to < 1;
  }

  /**
   * Plays a part over and over.
   *
   * @param {number} from where it begins, as a share of the cycle
   * @param {number} to where it ends, after that
   */
  loop(from, to) {
    this.from = Math.max(0, Math.min(1 - SHORTEST, from));
    this.to = Math.max(this.from + SHORTEST, Math.min(1, to));
    this.dispatchEvent(new Event('state'));
    this.dispatchEvent(new Event('tick'));
  }

  /** The loop begins at this moment; where it ended before that, it goes to the end of the cycle. */
  loopFrom(phase = this.phase) {
    this.loop(phase, this.to > phase + SHORTEST ? this.to : 1);
  }

  /** The loop ends at this moment; where it began after that, it begins with the cycle. */
  loopTo(phase = this.phase) {
    this.loop(this.from < phase - SHORTEST ? this.from : 0, Math.max(SHORTEST, phase));
  }

  /** The whole cycle again. */
  whole() {
    this.loop(0, 1);
  }

  /** @param {number} now */
  #frame(now) {
    if (!this.playing) return;
    if (this.last) {
      const on = (Math.min(0.1, (now - this.last) / 1000) * this.speed) / this.period;
      const phase = this.phase + on;
      if (this.once && phase >= LAST) {
        this.seek(LAST);
        this.play(false);
        return;
      }
      if (this.looped && !this.once) {
        const past = phase - this.to;
        this.phase = past >= 0 ? this.from + (past % (this.to - this.from)) : Math.max(this.from, phase);
      } else {
        this.turns += Math.floor(phase);
        this.phase = phase % 1;
      }
    }
    this.last = now;
    this.dispatchEvent(new Event('tick'));
    requestAnimationFrame(this.frame);
  }
}
