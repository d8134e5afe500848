// Plays a song from its file, and clicks on its beats: the sound is the clock, and clicks are set a little ahead on the audio clock, by how far
// the two have been apart of late, so that they fall on the beat however the frames fall.

import { after } from './song.js';

const AHEAD = 0.15; // seconds
const OF_LATE = 15; // frames over which the two clocks are compared

export class SongPlayer extends EventTarget {
  audio = document.createElement('audio');
  /** Whether it clicks on each beat. */
  clicks = false;
  /** @type {number[]} */
  times = [];
  /** Whether a beat begins a bar. @type {(beat: number) => boolean} */
  first = () => false;

  /** @type {AudioContext | null} */
  #context = null;
  /** @type {GainNode | null} */
  #song = null;
  /** How far the audio clock was ahead of the song's second. @type {number[]} */
  #apart = [];
  #until = 0; // second of the song up to which clicks are set
  #frames = 0;

  constructor() {
    super();
    this.audio.preload = 'auto';
    for (const what of ['play', 'pause', 'ended', 'loadedmetadata', 'error']) this.audio.addEventListener(what, () => this.#changed());
    this.audio.addEventListener('seeked', () => this.#sought());
  }

  get playing() {
    return !this.audio.paused;
  }

  get time() {
    return this.audio.currentTime;
  }

  /** The second that is heard just now: what the browser has handed on takes a little until it sounds. */
  get heard() {
    return Math.max(0, this.time - (this.#context?.outputLatency || 0));
  }

  /** How long it is, seconds; 0 where that is not known. */
  get seconds() {
    return Number.isFinite(this.audio.duration) ? this.audio.duration : 0;
  }

  /** Whether this browser cannot play it. */
  get mute() {
    return this.audio.error !== null;
  }

  /** @param {string} url */
  open(url) {
    this.audio.pause();
    this.audio.src = url;
  }

  /** @param {number} time */
  seek(time) {
    this.audio.currentTime = Math.max(0, Math.min(this.seconds, time));
    this.dispatchEvent(new Event('tick'));
  }

  /** @param {boolean} [on] */
  async turn(on = !this.playing) {
    if (!on) {
      this.audio.pause();
      return;
    }
    if (!this.#context) {
      // Both go out by the same way, so that neither is heard later than the other.
      const context = (this.#context = new AudioContext());
      this.#song = context.createGain();
      context.createMediaElementSource(this.audio).connect(this.#song).connect(context.destination);
    }
    this.setClicks(this.clicks);
    await this.#context.resume();
    await this.audio.play().catch(() => {});
  }

  /** @param {boolean} on */
  setClicks(on) {
    this.clicks = on;
    this.#until = this.time;
    // Under a click the song is a little quieter, so that it is heard.
    if (this.#song) this.#song.gain.value = on ? 0.6 : 1;
    this.dispatchEvent(new Event('state'));
  }

  #sought() {
    this.#until = this.time;
    this.#apart = [];
    this.dispatchEvent(new Event('tick'));
  }

  #changed() {
    cancelAnimationFrame(this.#frames);
    this.#apart = [];
    this.#until = this.time;
    if (this.playing) this.#frame();
    this.dispatchEvent(new Event('state'));
  }

  #frame = () => {
    this.#set();
    this.dispatchEvent(new Event('tick'));
    if (this.playing) this.#frames = requestAnimationFrame(this.#frame);
  };

  // Sets the clicks that are due.
  #set() {
    const context = this.#context;
    if (!context || !this.playing) return;
    const now = this.time;
    this.#apart = [...this.#apart, context.currentTime - now].slice(-OF_LATE);
    if (!this.clicks || this.#apart.length < OF_LATE) {
      this.#until = Math.max(this.#until, now);
      return;
    }
    const apart = [...this.#apart].sort((a, b) => a - b)[OF_LATE >> 1];
    for (let beat = after(this.times, this.#until); beat < this.times.length && this.times[beat] <= now + AHEAD; beat++) {
      click(context, Math.max(context.currentTime, this.times[beat] + apart), this.first(beat));
    }
    this.#until = Math.max(this.#until, now + AHEAD);
  }
}

/** @param {AudioContext} context @param {number} at @param {boolean} first */
function click(context, at, first) {
  const tone = context.createOscillator();
  const loud = context.createGain();
  tone.type = 'triangle';
  tone.frequency.value = first ? 2200 : 1500;
  loud.gain.setValueAtTime(0, at);
  loud.gain.linearRampToValueAtTime(first ? 0.6 : 0.45, at + 0.002);
  loud.gain.exponentialRampToValueAtTime(0.001, at + 0.06);
  tone.connect(loud).connect(context.destination);
  tone.start(at);
  tone.stop(at + 0.07);
}
