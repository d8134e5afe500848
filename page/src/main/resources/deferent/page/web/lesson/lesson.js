// A lesson: one pairing that plays, slows and can be looked at moment by moment, from three sides. It asks nothing of any network.

import { Camera, VIEWS } from '../stage/camera.js';
import { FlatDrawer } from '../stage/flat.js';
import { inks } from '../stage/ink.js';
import { Picture } from '../stage/picture.js';
import { Scene } from '../stage/scene.js';
import { CARE, FLASHES } from '../state/care.js';
import { Clock, SPEEDS } from '../state/clock.js';

/** @type {Record<number, string>} */
const SAID = { 0.1: 'a tenth', 0.25: 'quarter', 0.5: 'half', 1: 'full' };
const STAYS = 0.5; // how much of the cycle a trail takes to fade
const STEP = 1 / 48; // of the cycle, a key press
/** @type {(name: string) => any} */
const $ = (name) => document.querySelector(name);

class Lesson {
  constructor() {
    const given = JSON.parse($('#scene').textContent);
    this.counts = given.counts;
    /** @type {Scene} */
    this.scene = new Scene();
    this.scene.read({ scene: given.scene });
    /** @type {Clock} */
    this.clock = new Clock();
    this.clock.period = this.scene.period;
    this.camera = new Camera();
    this.picture = new Picture();
    /** @type {Record<string, boolean>} */
    this.show = { link: true, body: true, path: true, figure: true, trail: true };
    this.canvas = $('canvas');
    this.drawer = new FlatDrawer(this.canvas);
    this.spot = [0, 0, 0];
    /** @type {any} */
    this.ink = null;
    this.glow = 1;
    this.cared = false;
    this.#see(given.view);
    this.#words();
    this.#listen();
    new ResizeObserver(() => this.#resize()).observe(this.canvas.parentElement);
    this.drawer.load(this.scene);
    this.#colours();
    this.#resize();
    this.#buttons();
    if (!this.clock.calm.matches && !this.#fast()) this.clock.play(true);
    document.body.classList.add('ready');
  }

  /**
   * Where a moving point is drawn now, CSS pixels from the canvas's upper left.
   *
   * @param {string} track
   */
  place(track) {
    const at = this.scene.at(track, this.clock.phase, [0, 0, 0]);
    this.camera.project(at[0], at[1], at[2], this.spot);
    return [this.spot[0], this.spot[1]];
  }

  #fast(speed = this.clock.speed) {
    return this.scene.turnsPerSecond() * speed > FLASHES;
  }

  async #play() {
    const { clock } = this;
    if (!clock.playing && !this.cared && this.#fast()) {
      const answer = await this.#care();
      if (answer === 'stay') return;
      this.cared = answer === 'full';
      if (answer === 'slow') while (this.#fast() && clock.slower(1));
    }
    clock.play();
  }

  #care() {
    const dialog = $('.care');
    return new Promise((resolve) => {
      dialog.onclose = () => resolve(dialog.returnValue || 'stay');
      dialog.returnValue = '';
      dialog.showModal();
    });
  }

  #words() {
    /** @type {Record<string, string>} */
    const words = CARE;
    $('.care h2').textContent = CARE.title;
    $('.care p').textContent = CARE.text;
    for (const button of document.querySelectorAll('.care button')) button.textContent = words[button.value];
  }

  #listen() {
    const { clock } = this;
    clock.addEventListener('tick', () => this.draw());
    clock.addEventListener('state', () => {
      // Lights that have become fast while they play stop first and ask.
      if (clock.playing && !this.cared && this.#fast()) {
        clock.play(false);
        this.#play();
      }
      this.#buttons();
    });
    $('#play').addEventListener('click', () => this.#play());
    $('#slower').addEventListener('click', () => clock.slower(1));
    $('#faster').addEventListener('click', () => clock.slower(-1));
    this.moment = $('#moment');
    this.moment.addEventListener('input', () => {
      clock.play(false);
      clock.seek(Number(this.moment.value) / 1000);
    });
    for (const radio of document.querySelectorAll('[name=view]')) radio.addEventListener('change', () => this.#see(radio.value));
    for (const box of document.querySelectorAll('[name=show]')) {
      box.addEventListener('change', () => {
        this.show[box.value] = box.checked;
        if (box.value === 'path') this.show.figure = box.checked;
        this.draw();
      });
    }
    $('#colours').addEventListener('click', () => {
      const dark = getComputedStyle(document.documentElement).colorScheme === 'dark';
      document.documentElement.dataset.theme = dark ? 'light' : 'dark';
      this.#colours();
    });
    matchMedia('(prefers-color-scheme: dark)').addEventListener('change', () => this.#colours());
    this.clock.calm.addEventListener('change', () => this.clock.calm.matches && clock.play(false));
    addEventListener('keydown', (event) => this.#key(event));
  }

  /** @param {any} event of the keyboard */
  #key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey || $('.care').open) return;
    const within = event.target.closest('button, input, summary, a');
    switch (event.key) {
      case ' ':
        if (within && within.type !== 'range') return;
        this.#play();
        break;
      case '[':
        this.clock.slower(1);
        break;
      case ']':
        this.clock.slower(-1);
        break;
      case ',':
      case '.':
        this.clock.play(false);
        this.clock.seek(this.clock.phase + (event.key === ',' ? -STEP : STEP));
        break;
      case 'v':
        this.#see(VIEWS[(VIEWS.indexOf(this.camera.view) + 1) % VIEWS.length]);
        break;
      default:
        return;
    }
    event.preventDefault();
  }

  /** @param {string} view */
  #see(view) {
    this.camera.see(view);
    for (const radio of document.querySelectorAll('[name=view]')) radio.checked = radio.value === view;
    this.draw();
  }

  #colours() {
    Object.assign(this, inks(document.documentElement));
    this.draw();
  }

  #resize() {
    const { clientWidth: width, clientHeight: height } = this.canvas.parentElement;
    if (!width || !height) return;
    this.drawer.resize(width, height, Math.min(3, devicePixelRatio || 1));
    this.camera.resize(width, height);
    this.scale = Math.max(0.72, Math.min(1.3, Math.min(width, height) / 460));
    const { least, most } = this.scene.box();
    this.camera.frame(least, most, { above: 24, right: 24, below: 24, left: 24 });
    this.draw();
  }

  #buttons() {
    const { clock } = this;
    $('#play').setAttribute('aria-pressed', clock.playing);
    $('#play span').textContent = clock.playing ? 'Pause' : 'Play';
    $('#speed').textContent = SAID[clock.speed] + ' speed';
    $('#slower').disabled = clock.speed === SPEEDS[0];
    $('#faster').disabled = clock.speed === SPEEDS[SPEEDS.length - 1];
  }

  draw() {
    if (!this.ink) return;
    const { phase } = this.clock;
    this.picture.compose(this.scene, phase, this.ink, this.show, this.scale);
    this.drawer.draw(this.picture, this.camera, { ink: this.ink, phase, fade: STAYS, show: this.show, glow: this.glow });
    for (const side of ['left', 'right']) {
      const [x, y] = this.place(side + '.hand');
      $('.letter[data-side=' + side + ']').style.transform = `translate(${(x - 17).toFixed(1)}px, ${(y + 13).toFixed(1)}px)`;
    }
    const time = phase * this.scene.period;
    if (document.activeElement !== this.moment || this.clock.playing) this.moment.value = String(Math.round(phase * 1000));
    let count = '';
    for (const c of this.counts) if (c.time_s <= time + 1e-9) count = c.text;
    $('#count').textContent = count;
    $('#time').textContent = time.toFixed(2) + '\u202fs';
    this.moment.setAttribute('aria-valuetext', time.toFixed(2) + ' seconds' + (count ? ', count ' + count : ''));
  }
}

globalThis.deferentLesson = new Lesson();
