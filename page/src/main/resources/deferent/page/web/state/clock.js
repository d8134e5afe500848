// Where the moment stands in the cycle and how fast it goes on. The moment is kept as a share of the cycle, so that a change of
// tempo, which changes the cycle, leaves it where it is.

export const SPEEDS = [0.1, 0.25, 0.5, 1];

const LAST = 0.9999;

export class Clock extends EventTarget {
  constructor() {
    super();
    this.phase = 0;
    this.period = 1;
    this.speed = 0.5;
    this.playing = false;
    this.once = false; // stops at the end rather than beginning anew
    this.turns = 0; // whole cycles since play began, for the count
    this.frame = (now) => this.#frame(now);
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

  seek(phase) {
    this.phase = ((phase % 1) + 1) % 1;
    this.dispatchEvent(new Event('tick'));
  }

  /** Slower by a step, faster by a negative one; false where there is no further one. */
  slower(by) {
    const i = SPEEDS.indexOf(this.speed) - by;
    if (i < 0 || i >= SPEEDS.length) return false;
    this.speed = SPEEDS[i];
    this.dispatchEvent(new Event('state'));
    return true;
  }

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
      this.turns += Math.floor(phase);
      this.phase = phase % 1;
    }
    this.last = now;
    this.dispatchEvent(new Event('tick'));
    requestAnimationFrame(this.frame);
  }
}
