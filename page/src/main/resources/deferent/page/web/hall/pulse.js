// What falls when, on a clock that only goes forward: the picture and the clicks both ask here, so that they cannot drift apart.

const SAME = 1e-9; // cycles

/** @typedef {{ share: number, said: string }} Beat a count's place in the cycle, 0 to 1 */
/** @typedef {{ time: number, said: string, first: boolean }} Stroke a count at its second of the clock; whether it is the cycle's first */

export class Pulse {
  constructor() {
    /** @type {Beat[]} */
    this.beats = [];
    this.from = 0; // the part of the cycle that comes round again and again
    this.to = 1;
    this.rate = 1; // cycles a second
    this.at = 0; // the second at which it began
    this.start = 0; // where in the cycle that was
  }

  /**
   * From that second on the cycle goes on from that share of it.
   *
   * @param {number} at seconds of the clock
   * @param {number} share
   */
  begin(at, share) {
    this.at = at;
    this.start = Math.min(Math.max(share, this.from), this.to - SAME);
  }

  /** Cycles since the loop's own beginning. @param {number} time */
  #inside(time) {
    return this.start - this.from + this.gone(time);
  }

  /** Where in the cycle it is at a second of the clock. @param {number} time */
  share(time) {
    const length = this.to - this.from;
    const inside = this.#inside(time);
    return this.from + Math.max(0, inside - length * Math.floor(inside / length + SAME));
  }

  /** Cycles since it began. @param {number} time */
  gone(time) {
    return Math.max(0, time - this.at) * this.rate;
  }

  /**
   * The counts that fall from one second on and before another.
   *
   * @param {number} since
   * @param {number} until
   * @returns {Stroke[]}
   */
  strokes(since, until) {
    /** @type {Stroke[]} */
    const out = [];
    if (until <= this.at) return out;
    const length = this.to - this.from;
    const [low, high] = [this.#inside(since), this.#inside(until)];
    for (let lap = Math.floor(low / length); lap * length < high; lap++) {
      this.beats.forEach(({ share, said }, i) => {
        if (share < this.from - SAME || share >= this.to - SAME) return;
        const inside = lap * length + share - this.from;
        if (inside < low - SAME || inside >= high - SAME) return;
        out.push({ time: this.at + (inside - (this.start - this.from)) / this.rate, said, first: i === 0 });
      });
    }
    return out;
  }

  /** The count that is on at a share of the cycle. @param {number} share */
  said(share) {
    let said = '';
    for (const beat of this.beats) if (beat.share <= share + SAME) ({ said } = beat);
    return said || (this.beats.length ? this.beats[this.beats.length - 1].said : '');
  }
}
