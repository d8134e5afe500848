// One figure that plays: a pattern over and over, or a set's patterns one after the other with the passages between. It has the
// buttons that play it, by their ids; whatever else stands on the page listens to it.

import { Scene } from '../stage/scene.js';
import { CARE, FLASHES, asked } from '../state/care.js';
import { HallFigure } from './figure.js';
import { Player, STEPS } from './player.js';

const ROUND = 1e-6;

/**
 * @typedef {{ name: string, tempo: number, period_s: number, stand: string, counts: import('./pulse.js').Beat[] }} Played
 * @typedef {{ counts: number, enters: number, wait_s: number, passage: any }} Step
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

  /** @param {HTMLCanvasElement} canvas */
  constructor(canvas) {
    super();
    this.player = new Player();
    this.figure = new HallFigure(canvas);
    /** @type {Played | null} */
    this.pattern = null;
    this.#listen(canvas);
  }

  /**
   * A pattern, as slow at first as its lights can be borne.
   *
   * @param {Played} pattern
   * @param {any} scene
   */
  alone(pattern, scene) {
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
    this.player.practised = 0;
    this.#cared = false;
    this.player.load(pattern.period_s, pattern.counts);
    this.#enter(pattern, scene);
    this.player.speed = 1;
    while (this.#fast() && this.player.slower(1));
    this.player.seek(share);
    this.buttons();
  }

  /** @param {Played} pattern @param {any} scene */
  #enter(pattern, scene) {
    this.#passing = 0;
    this.pattern = pattern;
    this.figure.load(scene, pattern.stand);
    this.dispatchEvent(new Event('step'));
  }

  // So many counts, then the passage, then the next.
  #onward() {
    const within = this.#within;
    if (!within) return;
    const { player } = this;
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
    if (this.#passing) this.#joined();
    player.seek(this.#within ? this.#within.steps[this.#within.at].enters : player.pulse.from);
    this.buttons();
  }

  draw() {
    const { player, figure } = this;
    if (!this.pattern) return;
    const share = this.#passing ? Math.min(1 - ROUND, Math.max(0, 1 - (player.ahead * player.speed) / this.#passing)) : player.share;
    figure.draw(share);
    for (const side of ['left', 'right']) {
      const letter = $('.letter[data-side=' + side + ']');
      const shown = figure.hand === 'both' || figure.hand === side;
      letter.hidden = !shown;
      const [x, y] = figure.place(side + '.hand', share);
      if (shown) letter.style.transform = `translate(${(x - 17).toFixed(1)}px, ${(y + 13).toFixed(1)}px)`;
    }
    const said = this.#passing ? '' : player.pulse.said(share);
    if ($('#count').textContent !== said) $('#count').textContent = said;
  }

  buttons() {
    const { player, pattern } = this;
    if (!pattern) return;
    $('#play').setAttribute('aria-pressed', String(player.playing));
    $('#play span').textContent = player.playing ? 'Pause' : 'Play';
    $('#tempo').textContent = Math.round(pattern.tempo * player.speed) + ' a minute';
    $('#slower').disabled = player.speed <= STEPS[0] + ROUND;
    $('#faster').disabled = player.speed >= STEPS[STEPS.length - 1] - ROUND;
    $('#click').setAttribute('aria-pressed', String(player.aloud));
  }

  /** @param {HTMLCanvasElement} canvas */
  #listen(canvas) {
    const { player, figure } = this;
    $('.care h2').textContent = CARE.title;
    $('.care p').textContent = CARE.text;
    for (const button of document.querySelectorAll('.care button')) button.textContent = /** @type {Record<string, string>} */ (CARE)[button.value];
    const press = (/** @type {string} */ selector, /** @type {() => void} */ act) => $(selector).addEventListener('click', act);
    press('#play', () => this.play());
    canvas.addEventListener('click', () => this.play());
    press('#slower', () => player.slower(1));
    press('#faster', () => player.slower(-1));
    press('#anew', () => this.anew());
    press('#click', () => player.sound(!player.aloud));
    for (const radio of document.querySelectorAll('[name=view]')) {
      radio.addEventListener('change', () => {
        figure.see(radio.value);
        this.draw();
      });
    }
    for (const radio of document.querySelectorAll('[name=hand]')) {
      radio.addEventListener('change', () => {
        figure.alone(radio.value);
        this.draw();
      });
    }
    player.addEventListener('tick', () => {
      if (player.playing) this.#onward();
      this.draw();
    });
    player.addEventListener('state', () => {
      if (player.playing && !this.#cared && this.#fast()) {
        player.pause();
        this.play();
        return;
      }
      this.buttons();
      this.dispatchEvent(new Event('state'));
    });
    document.addEventListener('visibilitychange', () => document.hidden && player.pause());
    addEventListener('pagehide', () => player.pause());
  }
}

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
