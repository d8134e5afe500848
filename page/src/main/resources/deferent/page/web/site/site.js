// The pages of a site: small figures that move, one large figure that plays, and the search on the index. All of it is read without
// this script as well; moving points come from files of the site, and nothing from anywhere else.

import { Show, stepped } from '../hall/show.js';
import { MovingThumb, rest } from '../stage/thumb.js';
import { Finder } from './finder.js';

const EDGE = 18; // pixels left free beside the figure
const NEAR = '200px'; // so far outside the window small figures are fetched

/** @type {(selector: string) => any} */
const $ = (selector) => document.querySelector(selector);

class Site {
  /** @type {Record<string, any>} */
  #moves = {};
  /** @type {Record<string, Promise<any>>} */
  #asked = {};
  #calm = matchMedia('(prefers-reduced-motion: reduce)');
  #dark = matchMedia('(prefers-color-scheme: dark)');

  /** What a file of moving points says of itself. @param {string} name @param {any} moves */
  put(name, moves) {
    this.#moves[name] = moves;
  }

  begin() {
    if ($('#find')) this.finder = new Finder($('#find'));
    this.#smalls();
    if ($('#show')) this.#large();
    document.body.classList.add('ready');
  }

  // A page that was opened from a file may load scripts and nothing else.
  /** @param {string} name @returns {Promise<any>} */
  #fetch(name) {
    this.#asked[name] ??= new Promise((resolve, reject) => {
      const script = document.createElement('script');
      script.src = 'moves/' + name + '.js';
      script.addEventListener('load', () => resolve(this.#moves[name]));
      script.addEventListener('error', () => reject(new Error(name + ' has not come')));
      document.head.append(script);
    });
    return this.#asked[name];
  }

  // Small figures: pictures at first; where motion is wanted, each moves once it comes into view.
  #smalls() {
    const smalls = document.querySelectorAll('.small[data-moves]');
    const button = $('#still');
    if (!smalls.length || !button || this.#calm.matches) return;
    const near = new IntersectionObserver((entries) => {
      for (const { target, isIntersecting } of entries) {
        if (!isIntersecting) continue;
        near.unobserve(target);
        this.#moving(/** @type {HTMLElement} */ (target));
      }
    }, { rootMargin: NEAR });
    for (const small of smalls) near.observe(small);
    button.hidden = false;
    button.addEventListener('click', () => {
      const on = button.getAttribute('aria-pressed') !== 'true';
      button.setAttribute('aria-pressed', String(on));
      rest(on);
    });
  }

  /** @param {HTMLElement} small */
  async #moving(small) {
    const thumb = new MovingThumb();
    try {
      const { scene } = await this.#fetch(small.dataset.moves ?? '');
      small.append(thumb);
      thumb.moves = scene;
      small.classList.add('moving');
    } catch {
      // The picture stays.
      return;
    }
    this.#dark.addEventListener('change', () => (thumb.theme = String(this.#dark.matches)));
  }

  // The large figure of a pattern, or of a set from its first step on.
  async #large() {
    const box = $('#show');
    const { moves } = box.dataset;
    const whole = await this.#fetch(moves);
    const steps = whole.steps ?? [];
    const spun = new Map();
    for (const step of steps) if (step.moves && !spun.has(step.moves)) spun.set(step.moves, this.#fetch(step.moves));
    for (const [name, coming] of spun) spun.set(name, await coming);
    box.hidden = false;
    document.body.classList.add('shown');
    const show = new Show($('#show canvas'));
    this.show = show;
    show.player.aloud = false;
    const resize = () => {
      show.figure.resize({ above: EDGE, right: EDGE, below: EDGE, left: EDGE });
      show.draw();
    };
    show.addEventListener('step', () => {
      this.#mark(show);
      resize();
    });
    if (whole.steps) {
      const of = (/** @type {any} */ step) => (step.moves ? { pattern: stepped(spun.get(step.moves), step), scene: spun.get(step.moves).scene } : null);
      show.follow(steps, 0, of);
      for (const button of document.querySelectorAll('.from-here')) {
        button.hidden = false;
        button.addEventListener('click', () => {
          show.follow(steps, Number(button.dataset.step), of);
          show.player.play();
          box.scrollIntoView({ block: 'nearest' });
        });
      }
    } else show.alone(whole, whole.scene);
    new ResizeObserver(resize).observe($('#show .seen'));
    this.#dark.addEventListener('change', resize);
    addEventListener('keydown', (event) => {
      const { target } = event;
      if (event.key !== ' ' || !(target instanceof Element) || target.closest('button, input, a, summary, dialog')) return;
      event.preventDefault();
      show.play();
    });
  }

  // In a set, which step is on.
  /** @param {Show} show */
  #mark(show) {
    const on = $('#now');
    if (!on || !show.pattern) return;
    on.textContent = (show.passing ? 'Into ' : '') + show.pattern.name;
    document.querySelectorAll('#steps > li').forEach((/** @type {Element} */ item, /** @type {number} */ i) => {
      if (i === show.step) item.setAttribute('aria-current', 'step');
      else item.removeAttribute('aria-current');
    });
  }
}

window.deferentSite = new Site();
window.deferentSite.begin();
