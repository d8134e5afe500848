// Counts out loud and taps: the counts that the line shows and films carry. A click is set a little ahead on the audio clock, so that it
// falls on the count however the frames fall; a voice says the count where the browser has one.

const AHEAD = 0.09; // seconds
const BREATH = 0.32; // seconds that a voice needs for a count, about

/** @typedef {{ share: number, text: string }} Count when it falls, as a share of the cycle, and what is said */

export class Pulse {
  /** @param {import('./clock.js').Clock} clock */
  constructor(clock) {
    this.clock = clock;
    this.on = false;
    this.aloud = false; // said rather than clicked
    /** @type {Count[]} those of one cycle, by when they fall */
    this.counts = [{ share: 0, text: '1' }];
    this.last = -1; // the count that was heard last, counted on from cycle to cycle
    this.was = 0; // where the moment stood, in cycles
    /** @type {number[]} */
    this.taps = [];
    clock.addEventListener('tick', () => this.#tick());
  }

  turn(on = !this.on) {
    this.on = on;
    this.last = -1;
    if (on && !this.audio) {
      const Audio = window.AudioContext;
      if (Audio) this.audio = new Audio();
    }
    if (on && this.audio) this.audio.resume();
    if (!on) window.speechSynthesis?.cancel();
  }

  /**
   * Other counts from now on: those that have fallen by now are not heard again.
   *
   * @param {Count[]} counts
   */
  follow(counts) {
    this.counts = counts.length ? counts : [{ share: 0, text: '1' }];
    this.was = this.clock.turns + this.clock.phase;
    this.last = this.#by(this.was - 1e-9);
  }

  /** Whether the browser has a voice to count with. */
  get voice() {
    return (window.speechSynthesis?.getVoices().length ?? 0) > 0;
  }

  /** The count that is on. */
  count() {
    const { phase } = this.clock;
    return (this.counts.findLast((count) => count.share <= phase + 1e-9) ?? this.counts[this.counts.length - 1]).text;
  }

  // The last count to fall by then, counted on from cycle to cycle.
  /** @param {number} cycles */
  #by(cycles) {
    const within = cycles - Math.floor(cycles);
    return Math.floor(cycles) * this.counts.length + this.counts.filter((count) => count.share <= within).length - 1;
  }

  #tick() {
    const { clock } = this;
    if (!this.on || !clock.playing) return;
    const now = clock.turns + clock.phase;
    // Back where a loop begins, what has been heard is heard again.
    if (now < this.was) this.last = this.#by(now - 1e-9);
    this.was = now;
    const rate = clock.speed / clock.period; // cycles a second as seen
    const coming = this.#by(now + AHEAD * rate);
    if (coming <= this.last) return;
    this.last = coming;
    const n = this.counts.length;
    const { share, text } = this.counts[((coming % n) + n) % n];
    const wait = Math.max(0, (Math.floor(coming / n) + share - now) / rate);
    if (this.aloud && this.voice) this.#say(text, share === 0, rate);
    else if (this.audio) this.#click(this.audio.currentTime + wait, share === 0);
  }

  // Counts that come faster than a voice can say them are left out but for the first.
  /**
   * @param {string} text
   * @param {boolean} first
   * @param {number} rate
   */
  #say(text, first, rate) {
    if (!first && 1 / (rate * this.counts.length) < BREATH) return;
    window.speechSynthesis.cancel();
    const said = new SpeechSynthesisUtterance(text);
    said.rate = 1.6;
    window.speechSynthesis.speak(said);
  }

  /**
   * @param {number} at
   * @param {boolean} first
   */
  #click(at, first) {
    const audio = /** @type {AudioContext} */ (this.audio);
    const tone = audio.createOscillator();
    const loud = audio.createGain();
    tone.frequency.value = first ? 1320 : 880;
    loud.gain.setValueAtTime(0, at);
    loud.gain.linearRampToValueAtTime(0.22, at + 0.002);
    loud.gain.exponentialRampToValueAtTime(0.001, at + 0.06);
    tone.connect(loud).connect(audio.destination);
    tone.start(at);
    tone.stop(at + 0.07);
  }

  /** A tap; from the second on, how many taps that are a minute, else null. */
  tap(now = performance.now()) {
    if (this.taps.length && now - this.taps[this.taps.length - 1] > 2500) this.taps = [];
    this.taps.push(now);
    if (this.taps.length > 8) this.taps.shift();
    if (this.taps.length < 2) return null;
    const mean = (now - this.taps[0]) / (this.taps.length - 1);
    return Math.max(1, Math.min(600, Math.round(60000 / mean)));
  }
}
