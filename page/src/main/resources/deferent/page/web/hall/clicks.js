// Clicks on the counts. They are handed to the audio clock ahead of their time, so that each sounds exactly when it falls
// however busy the page is for that long; the picture asks the same clock what is heard now.

const AHEAD = 1.2; // seconds that clicks are handed over before they sound; what changes meanwhile takes them back
const EVERY = 100; // milliseconds between two looks ahead
const LEAD = 0.12; // seconds from the press to the first click
const LENGTH = 0.045; // seconds of a click
const KEPT = 200; // clicks remembered, to be looked at from outside

/** @typedef {import('./pulse.js').Pulse} Pulse */

export class Clicks {
  /** @type {AudioContext | null} */
  #context = null;
  /** @type {AudioBuffer[]} */
  #sounds = [];
  /** @type {{ node: AudioBufferSourceNode, time: number }[]} */
  #waiting = [];
  #timer = 0;
  #until = 0;

  constructor() {
    /** @type {{ time: number, asked: number, said: string }[]} */
    this.struck = []; // when each click sounds and when it was asked for, seconds of the audio clock
  }

  /** The audio clock, once it runs; null where this browser has none. */
  async ready() {
    if (!globalThis.AudioContext) return null;
    this.#context ??= new AudioContext({ latencyHint: 'interactive' });
    const context = this.#context;
    if (!this.#sounds.length) this.#sounds = [click(context, 1000), click(context, 1600)];
    if (context.state !== 'running') await context.resume();
    return context;
  }

  /** The second of the audio clock that is heard at this moment. */
  heard() {
    const context = this.#context;
    if (!context) return 0;
    const { contextTime, performanceTime } = context.getOutputTimestamp();
    if (contextTime && performanceTime) {
      const since = (performance.now() - performanceTime) / 1000;
      if (since >= 0 && since < 0.5) return contextTime + since;
    }
    return context.currentTime - (context.outputLatency || 0);
  }

  /** A second a little ahead, at which something may still begin. */
  soon() {
    return this.#context ? this.#context.currentTime + LEAD : 0;
  }

  /** Clicks on what falls from now on. @param {Pulse} pulse */
  follow(pulse) {
    const context = this.#context;
    if (!context) return;
    this.still();
    this.#until = Math.max(pulse.at, context.currentTime);
    this.#look(pulse);
    this.#timer = setInterval(() => this.#look(pulse), EVERY);
  }

  /** No more clicks, nor those that were handed over and have not sounded. */
  still() {
    clearInterval(this.#timer);
    const now = this.#context ? this.#context.currentTime : 0;
    for (const { node, time } of this.#waiting) if (time > now) node.stop();
    this.struck = this.struck.filter(({ time }) => time <= now);
    this.#waiting = [];
  }

  /** Lets the loudspeaker rest. */
  rest() {
    this.still();
    if (this.#context) this.#context.suspend();
  }

  /** @param {Pulse} pulse */
  #look(pulse) {
    const context = this.#context;
    if (!context) return;
    const now = context.currentTime;
    const until = now + AHEAD;
    for (const { time, said, first } of pulse.strokes(this.#until, until)) {
      const node = context.createBufferSource();
      node.buffer = this.#sounds[first ? 1 : 0];
      node.connect(context.destination);
      node.start(time);
      this.#waiting.push({ node, time });
      this.struck.push({ time, asked: now, said });
    }
    this.#until = Math.max(this.#until, until);
    this.#waiting = this.#waiting.filter(({ time }) => time > now);
    if (this.struck.length > KEPT) this.struck.splice(0, this.struck.length - KEPT);
  }
}

/** A short tone that is loudest at once and dies away. @param {AudioContext} context @param {number} hertz */
function click(context, hertz) {
  const rate = context.sampleRate;
  const sound = context.createBuffer(1, Math.ceil(LENGTH * rate), rate);
  const wave = sound.getChannelData(0);
  for (let i = 0; i < wave.length; i++) wave[i] = 0.9 * Math.cos((2 * Math.PI * hertz * i) / rate) * Math.exp((-7 * i) / wave.length);
  return sound;
}
