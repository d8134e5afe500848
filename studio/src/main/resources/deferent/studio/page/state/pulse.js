// Counts out loud and taps. A click is set a little ahead on the audio clock, so that it falls on the count however the frames fall.

const AHEAD = 0.09; // seconds

export class Pulse {
  constructor(clock) {
    this.clock = clock;
    this.on = false;
    this.counts = 1; // counts a cycle
    this.last = -1;
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
  }

  /** The count, 1 to 4, at the moment. */
  count() {
    const counts = Math.max(1, Math.round(this.counts));
    return ((this.clock.turns * counts + Math.floor(this.clock.phase * counts)) % 4) + 1;
  }

  #tick() {
    if (!this.on || !this.clock.playing || !this.audio) return;
    const c = this.clock;
    const counts = Math.max(1, Math.round(this.counts));
    const rate = (c.speed * counts) / c.period; // counts a second as seen
    const now = (c.turns + c.phase) * counts;
    const coming = Math.floor(now + AHEAD * rate);
    if (coming <= this.last && this.last - coming < 2) return;
    this.last = coming;
    this.#click(this.audio.currentTime + Math.max(0, (coming - now) / rate), coming % 4 === 0);
  }

  #click(at, first) {
    const tone = this.audio.createOscillator();
    const loud = this.audio.createGain();
    tone.frequency.value = first ? 1320 : 880;
    loud.gain.setValueAtTime(0, at);
    loud.gain.linearRampToValueAtTime(0.22, at + 0.002);
    loud.gain.exponentialRampToValueAtTime(0.001, at + 0.06);
    tone.connect(loud).connect(this.audio.destination);
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
