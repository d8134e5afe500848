// One figure that plays: a pattern over and over, or a set's patterns one after the other with the passages between. It has the
// buttons that play it, by their ids; whatever else stands on the page listens to it.

import { Scene } from '../stage/scene.js';
import { CARE, FLASHES, asked } from '../state/care.js';
import { HallFigure } from './figure.js';
import { Player } from './player.js';
import { SongPlayer } from './song.js';

const ROUND = 1e-6;
const MET = 14; // pixels, nearer than which two letters would lie on each other
/** @type {Record<string, string>} */
const SEEN = { audience: 'Seen by the audience', mirror: 'Seen in a mirror', eyes: 'Seen with your own eyes' };

/**
 * @typedef {{ name: string, tempo: number, period_s: number, stand: string, counts: import('./pulse.js').Beat[] }} Played
 * @typedef {{ tempo: number, period_s: number, counts: number, starts_s: number, one_s: number, count_s: number, enters: number, wait_s: number, passage: any }} Step
 * What a step spins, null where that is gone.
 * @typedef {(step: any) => { pattern: Played, scene: any } | null} Spun
 */

/** @type {(selector: string) => any} */
const $ = (selector) => document.querySelector(selector);

export class Show extends EventTarget {
  /** @type {{ steps: Step[], at: number, spun: Spun } | null} */
  #within = null;
  #passing = 0; // seconds of the passage that is on; 0 for none
  #cared = false;
  #own = new Player();
  #heard = new WeakSet(); // players that are listened to
  #song = { share: 0, said: '' }; // what is seen of a set to its song

  /** @param {HTMLCanvasElement} canvas */
  constructor(canvas) {
    super();
    /** @type {Player | SongPlayer} */
    this.player = this.#own;
    this.figure = new HallFigure(canvas);
    /** @type {Played | null} */
    this.pattern = null;
    this.#listen(canvas);
  }

  /** From now on that one plays. @param {Player | SongPlayer} player */
  #use(player) {
    if (player !== this.player) this.player.pause();
    this.player = player;
    if (this.#heard.has(player)) return;
    this.#heard.add(player);
    player.addEventListener('tick', () => {
      if (player !== this.player) return;
      if (player instanceof SongPlayer) this.#sung(player.time);
      else if (player.playing) this.#onward(player);
      this.draw();
    });
    player.addEventListener('state', () => {
      if (player !== this.player) return;
      if (player.playing && !this.#cared && this.#fast()) {
        player.pause();
        this.play();
        return;
      }
      this.buttons();
      this.dispatchEvent(new Event('state'));
    });
  }

  /**
   * A set from one of its steps on, to its song.
   *
   * @param {Step[]} steps
   * @param {number} at
   * @param {Spun} spun
   * @param {SongPlayer} player
   */
  sing(steps, at, spun, player) {
    const first = spun(steps[at]);
    if (!first) return;
    this.#use(player);
    this.#within = { steps, at, spun };
    this.figure.hold(around(steps, spun));
    player.practised = 0;
    this.#cared = false;
    player.pause();
    this.#enter(first.pattern, first.scene);
    while (player.slower(-1) && player.speed < 1);
    while (player.speed > 1 && player.slower(1));
    while (this.#fast() && player.slower(1));
    // The first is counted in by a bar of the song.
    player.seek(at ? steps[at].starts_s : -Infinity);
    this.buttons();
  }

  // What is seen at a second of the set: a step, or before that the passage to it.
  /** @param {number} time */
  #sung(time) {
    const within = this.#within;
    if (!within) return;
    const { steps, spun } = within;
    let at = 0;
    steps.forEach((each, i) => {
      if (each.counts > 0 && time >= each.starts_s - (i ? steps[i - 1].wait_s : 0) - ROUND) at = i;
    });
    const step = steps[at];
    const before = at && time < step.starts_s - ROUND ? steps[at - 1] : null;
    const passing = before && before.passage ? before.wait_s : 0;
    if (at !== within.at || passing !== this.#passing) {
      const it = spun(step);
      if (!it) return;
      within.at = at;
      if (passing) {
        this.#passing = passing;
        this.pattern = it.pattern;
        this.figure.load(/** @type {Step} */ (before).passage, it.pattern.stand);
        this.#seen();
        this.dispatchEvent(new Event('step'));
      } else {
        this.#enter(it.pattern, it.scene);
      }
    }
    const since = time - step.starts_s;
    const cycles = step.enters + Math.max(0, since) / (this.pattern?.period_s ?? 1);
    // Counted on the beats, from where the pattern is counted from 1.
    const late = step.one_s - step.starts_s;
    const count = Math.floor((since - late) / step.count_s + ROUND) + 1;
    const last = Math.max(1, Math.ceil(step.counts - late / step.count_s - 0.05));
    this.#song = {
      share: passing ? Math.min(1 - ROUND, Math.max(0, 1 + since / passing)) : cycles - Math.floor(cycles + ROUND),
      said: passing || since < late - ROUND ? '' : String(Math.min(count, last)),
    };
  }

  /**
   * A pattern, as slow at first as its lights can be borne.
   *
   * @param {Played} pattern
   * @param {any} scene
   */
  alone(pattern, scene) {
    this.#use(this.#own);
    this.#within = null;
    this.figure.hold(null);
    this.#begin(pattern, scene, 0);
  }

  /**
   * A set from one of its steps on.
   *
   * @param {Step[]} steps
   * @param {number} at
   * @param {Spun} spun
   */
  follow(steps, at, spun) {
    const first = spun(steps[at]);
    if (!first) return;
    this.#use(this.#own);
    this.#within = { steps, at, spun };
    this.figure.hold(around(steps, spun));
    this.#begin(first.pattern, first.scene, steps[at].enters);
  }

  /** The step that is on, or that a passage leads to; -1 where no set is played. */
  get step() {
    return this.#within ? this.#within.at : -1;
  }

  /** Whether a passage is on. */
  get passing() {
    return this.#passing > 0;
  }

  /** @param {Played} pattern @param {any} scene @param {number} share */
  #begin(pattern, scene, share) {
    const player = this.#own;
    player.practised = 0;
    this.#cared = false;
    player.load(pattern.period_s, pattern.counts);
    this.#enter(pattern, scene);
    player.speed = 1;
    while (this.#fast() && player.slower(1));
    player.seek(share);
    this.buttons();
  }

  /** @param {Played} pattern @param {any} scene */
  #enter(pattern, scene) {
    this.#passing = 0;
    this.pattern = pattern;
    this.figure.load(scene, pattern.stand);
    this.#seen();
    this.dispatchEvent(new Event('step'));
  }

  // So many counts, then the passage, then the next.
  /** @param {Player} player */
  #onward(player) {
    const within = this.#within;
    if (!within) return;
    if (this.#passing) {
      if (player.ahead <= 0) this.#joined();
      return;
    }
    const step = within.steps[within.at];
    if (player.gone * player.pulse.beats.length < step.counts - ROUND) return;
    const next = within.steps[within.at + 1];
    const spun = next ? within.spun(next) : null;
    if (!spun) {
      player.pause();
      return;
    }
    within.at++;
    player.onward(spun.pattern.period_s, spun.pattern.counts, next.enters, step.wait_s / player.speed);
    if (!step.passage) {
      this.#enter(spun.pattern, spun.scene);
      return;
    }
    this.#passing = step.wait_s;
    this.pattern = spun.pattern;
    this.figure.load(step.passage, spun.pattern.stand);
    this.#seen();
    this.dispatchEvent(new Event('step'));
  }

  #joined() {
    const within = this.#within;
    const spun = within ? within.spun(within.steps[within.at]) : null;
    if (spun) this.#enter(spun.pattern, spun.scene);
  }

  #fast() {
    return this.figure.turns * this.player.speed > FLASHES;
  }

  async play() {
    const { player } = this;
    if (player.playing) {
      player.pause();
      return;
    }
    if (!this.#cared && this.#fast()) {
      const answer = await asked($('.care'));
      if (answer !== 'slow' && answer !== 'full') return;
      this.#cared = answer === 'full';
      if (answer === 'slow') while (this.#fast() && player.slower(1));
    }
    await player.play();
  }

  /** Stands in the pose it begins with. */
  anew() {
    const { player } = this;
    player.pause();
    if (player instanceof SongPlayer) {
      player.seek(this.step > 0 ? (this.#within?.steps[this.step].starts_s ?? 0) : -Infinity);
      this.buttons();
      return;
    }
    if (this.#passing) this.#joined();
    player.seek(this.#within ? this.#within.steps[this.#within.at].enters : player.pulse.from);
    this.buttons();
  }

  draw() {
    const { player, figure } = this;
    if (!this.pattern) return;
    const sung = player instanceof SongPlayer;
    const share = sung ? this.#song.share : this.#passing ? Math.min(1 - ROUND, Math.max(0, 1 - (player.ahead * player.speed) / this.#passing)) : player.share;
    figure.draw(share);
    /** @type {number[][]} */
    const named = [];
    for (const side of ['left', 'right']) {
      const letter = $('.letter[data-side=' + side + ']');
      const shown = figure.hand === 'both' || figure.hand === side;
      letter.hidden = !shown;
      const [x, y] = figure.place(side + '.hand', share);
      if (!shown) continue;
      // Where the hands meet their letters stand on either side.
      const met = named.some((other) => Math.hypot(x - other[0], y - other[1]) < MET);
      letter.style.transform = `translate(${(x + (met ? 7 : -17)).toFixed(1)}px, ${(y + 13).toFixed(1)}px)`;
      named.push([x, y]);
    }
    const said = sung ? this.#song.said : this.#passing ? '' : player.pulse.said(share);
    if ($('#count').textContent !== said) $('#count').textContent = said;
  }

  /** Whose left and right the words mean, and where those are in the picture as it is seen now. */
  get whose() {
    const { left, view } = this.figure;
    return 'Left and right are the performer’s' + (left ? '. ' + SEEN[view] + ', the performer’s left is on the ' + left + '.' : '.');
  }

  #seen() {
    for (const said of document.querySelectorAll('.whose')) said.textContent = this.whose;
  }

  buttons() {
    const { player, pattern } = this;
    if (!pattern) return;
    $('#play').setAttribute('aria-pressed', String(player.playing));
    $('#play span').textContent = player.playing ? 'Pause' : 'Play';
    const cycles = Math.round(pattern.tempo * player.speed);
    $('#tempo').textContent = player instanceof SongPlayer ? cycles + ' cycles, ' + Math.round(player.song.tempo * player.speed) + ' beats a minute' : cycles + ' a minute';
    $('#slower').disabled = player.slowest;
    $('#faster').disabled = player.fastest;
    $('#click').textContent = player instanceof SongPlayer ? 'Song' : 'Click';
    $('#click').setAttribute('aria-pressed', String(player.aloud));
  }

  /** @param {HTMLCanvasElement} canvas */
  #listen(canvas) {
    const { figure } = this;
    this.#use(this.#own);
    $('.care h2').textContent = CARE.title;
    $('.care p').textContent = CARE.text;
    for (const button of document.querySelectorAll('.care button')) button.textContent = /** @type {Record<string, string>} */ (CARE)[button.value];
    const press = (/** @type {string} */ selector, /** @type {() => void} */ act) => $(selector).addEventListener('click', act);
    press('#play', () => this.play());
    canvas.addEventListener('click', () => this.play());
    press('#slower', () => this.player.slower(1));
    press('#faster', () => this.player.slower(-1));
    press('#anew', () => this.anew());
    press('#click', () => this.player.sound(!this.player.aloud));
    for (const radio of document.querySelectorAll('[name=view]')) {
      radio.addEventListener('change', () => {
        figure.see(radio.value);
        this.#seen();
        this.draw();
      });
    }
    for (const radio of document.querySelectorAll('[name=hand]')) {
      radio.addEventListener('change', () => {
        figure.alone(radio.value);
        this.draw();
      });
    }
    document.addEventListener('visibilitychange', () => document.hidden && this.player.pause());
    addEventListener('pagehide', () => this.player.pause());
  }
}

/** A pattern at the tempo that it has in a step. @template {Played} P @param {P} pattern @param {Step} step @returns {P} */
export const stepped = (pattern, { tempo, period_s }) => ({ ...pattern, tempo, period_s });

/** Corners of the box in which a whole set is played. @param {Step[]} steps @param {Spun} spun */
function around(steps, spun) {
  const scene = new Scene();
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  for (const step of steps) {
    for (const sent of [spun(step)?.scene, step.passage]) {
      if (!sent) continue;
      scene.read({ scene: sent });
      const box = scene.box();
      for (let k = 0; k < 3; k++) {
        least[k] = Math.min(least[k], box.least[k]);
        most[k] = Math.max(most[k], box.most[k]);
      }
    }
  }
  return { least, most };
}
