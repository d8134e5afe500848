// Plays a set by its song: the sound is the clock, and the picture asks it what is heard now. Where the sound is gone, the page's
// own clock runs along the song's.

import { Pulse } from './pulse.js';

const LONGEST = 0.25; // seconds between two frames that still count as practice

/** How fast a song can be played and is still a song, as shares of its own tempo; our choice. */
const PACES = [0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.25];

/**
 * @typedef {{ name: string, tempo: number, seconds: number, clock: number[][] }} Song
 * Its usual tempo in beats a minute, how long the set is, and pairs of a second of the sound and one of the set.
 */

export class SongPlayer extends EventTarget {
  /** @param {Song} song @param {HTMLAudioElement | null} audio */
  constructor(song, audio) {
    super();
    this.song = song;
    this.audio = audio;
    this.pulse = new Pulse();
    this.aloud = true;
    this.playing = false;
    this.speed = 1;
    this.practised = 0;
    this.gone = 0; // seconds played
    this.share = 0;
    this.ahead = 0;
    this.#at = 0;
    if (audio) audio.addEventListener('ended', () => this.pause());
  }

  #at; // second of the sound
  #frames = 0;
  #last = 0; // second of the page's clock at the last frame
  #asked = 0;

  /** Seconds of the set that have gone; below 0 before it begins. */
  get time() {
    return along(this.song.clock, this.#at, 0);
  }

  /** Stands at a second of the set. @param {number} time */
  seek(time) {
    const { clock, seconds } = this.song;
    this.#at = Math.max(0, along(clock, Math.min(time, seconds), 1));
    if (this.audio) this.audio.currentTime = this.#at;
    this.gone = 0;
    this.dispatchEvent(new Event('tick'));
  }

  async play() {
    if (this.playing) return;
    this.playing = true;
    const asked = ++this.#asked;
    this.dispatchEvent(new Event('state'));
    if (this.audio) {
      this.audio.playbackRate = this.speed;
      try {
        await this.audio.play();
      } catch {
        if (asked === this.#asked) this.pause();
        return;
      }
      if (asked !== this.#asked) return;
    }
    this.#last = performance.now() / 1000;
    this.#frames = requestAnimationFrame(this.#frame);
  }

  pause() {
    if (!this.playing) return;
    this.playing = false;
    this.#asked++;
    cancelAnimationFrame(this.#frames);
    if (this.audio) this.audio.pause();
    this.dispatchEvent(new Event('state'));
  }

  /** Slower by a step, faster by a negative one; false where there is no further one. @param {number} by */
  slower(by) {
    const i = PACES.findIndex((pace) => pace >= this.speed - 1e-6) - by;
    if (i < 0 || i >= PACES.length) return false;
    this.speed = PACES[i];
    if (this.audio) this.audio.playbackRate = this.speed;
    this.dispatchEvent(new Event('state'));
    return true;
  }

  get slowest() {
    return this.speed <= PACES[0] + 1e-6;
  }

  get fastest() {
    return this.speed >= PACES[PACES.length - 1] - 1e-6;
  }

  /** Whether the song is heard. @param {boolean} on */
  async sound(on) {
    this.aloud = on;
    if (this.audio) this.audio.muted = !on;
    this.dispatchEvent(new Event('state'));
  }

  #frame = () => {
    if (!this.playing) return;
    const now = performance.now() / 1000;
    const passed = Math.min(LONGEST, now - this.#last);
    this.#last = now;
    this.practised += passed;
    this.gone += passed;
    // A clock that was read too early never takes the picture back.
    this.#at = this.audio ? Math.max(this.#at, this.audio.currentTime) : this.#at + passed * this.speed;
    this.dispatchEvent(new Event('tick'));
    if (this.time >= this.song.seconds) this.pause();
    else if (this.playing) this.#frames = requestAnimationFrame(this.#frame);
  };
}

/**
 * What stands beside a number in pairs that go up, evenly between two of them.
 *
 * @param {number[][]} pairs
 * @param {number} number
 * @param {number} from in which of the two it is looked for
 */
function along(pairs, number, from) {
  let low = 0;
  let high = pairs.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (pairs[middle][from] <= number) low = middle;
    else high = middle;
  }
  const [a, b] = [pairs[low], pairs[high]];
  const to = 1 - from;
  return a[to] + ((number - a[from]) / (b[from] - a[from])) * (b[to] - a[to]);
}
