// The stage: the moving picture. What can be taken hold of in it is answered by grab.js, the buttons for that by handles.js, the words
// on it by label.js, and from where it is looked at by look.js.
//
// An answer is drawn as soon as it comes, within the message that brings it. In play, each frame draws the moment. Neither builds
// anything new: the same arrays are filled again.

import { Camera } from './camera.js';
import { FlatDrawer } from './flat.js';
import { Picture } from './picture.js';
import { Best, linkOf } from './best.js';
import { Grab } from './grab.js';
import { Handles } from './handles.js';
import { inks } from './ink.js';
import { Labels } from './label.js';
import { Look } from './look.js';
import { Moments } from './moments.js';
import { WebglDrawer } from './webgl.js';

const FADES = 2600; // milliseconds in which what stood before a fit goes out of sight
const SHOWN = [2000, 4000]; // milliseconds at least and at most that hands are shown with a new pattern
const REST = 2600; // milliseconds a still pointer keeps hands and handles in sight

export class StageElement extends HTMLElement {
  constructor() {
    super();
    this.camera = new Camera();
    this.picture = new Picture();
    this.show = { link: true, body: true, path: true, figure: true, trail: true, cords: true };
    this.persistence = Infinity; // seconds of motion that stay lit; a cycle and longer is the whole figure
    this.always = localStorage.getItem('deferent.look') === 'hands'; // hands, cords and handles are asked for
    /** What lies over the stage at its edges, pixels. */
    this.covered = () => ({ above: 0, right: 0, below: 0, left: 0 });
    this.drawn = []; // called after an answer has been drawn, with the answer and its times
    this.edges = this.covered();
    this.seen = {}; // what the drawer is told of how to draw
    this.look = new Look(this);
    this.grip = null; // what is held
    this.frames = 0;
  }

  /**
   * @param {import('../state/session.js').Session} session
   * @param {import('../state/clock.js').Clock} clock
   */
  connect(session, clock) {
    this.session = session;
    this.clock = clock;
    session.addEventListener('scene', (event) => this.#answered(event.detail));
    clock.addEventListener('tick', () => this.draw());
    session.addEventListener('fitted', () => this.keepInSight());
    session.addEventListener('state', () => {
      if (!session.answer) return;
      this.best.look();
      this.labels.follow();
      if (session.dragging) this.grab.say();
    });
    this.draw();
  }

  connectedCallback() {
    if (this.canvas) return;
    this.innerHTML = `
      <canvas class="stage-canvas" tabindex="0" role="application" aria-roledescription="stage" aria-label="Stage. Arrow keys turn the view, plus and minus zoom."></canvas>
      <span class="stage-letter" data-side="left" aria-hidden="true">L</span>
      <span class="stage-letter" data-side="right" aria-hidden="true">R</span>
      <output class="link-label" aria-hidden="true"><b></b><small></small></output>
      <div class="stage-moments" aria-hidden="true"></div>
      <div class="handles" role="group" aria-label="Handles: drag, or focus one and use the arrow keys"></div>
      <button type="button" class="best-label over" aria-label="At best" hidden></button>
      <button type="button" class="alone-leave over" aria-label="Back to the page" title="Back to the page (X)"><svg viewBox="0 0 20 20" aria-hidden="true"><path d="m5 5 10 10M15 5 5 15" stroke="currentColor" stroke-width="1.8"/></svg></button>
      <output class="grab-word" aria-hidden="true" hidden></output>
      <div class="grab-offers over" role="group" aria-label="What lies here" hidden></div>`;
    this.canvas = this.querySelector('canvas');
    this.rack = this.querySelector('.handles');
    this.handles = new Handles(this, this.rack);
    this.labels = new Labels(this);
    this.best = new Best(this);
    this.moments = new Moments(this, this.querySelector('.stage-moments'));
    this.grab = new Grab(this);
    this.drawer = this.#drawer();
    new ResizeObserver(() => this.#resize()).observe(this);
    this.#resize();
    this.recolour();
    this.#reveal(false);
    this.#listen();
  }

  #drawer() {
    const flat = new URLSearchParams(location.search).get('stage') === '2d';
    if (!flat) {
      try {
        const drawer = new WebglDrawer(this.canvas);
        this.canvas.addEventListener('webglcontextlost', (event) => {
          event.preventDefault();
          this.#fallBack();
        });
        return drawer;
      } catch {
        // No WebGL here: the same picture on a plain canvas.
        this.#freshCanvas();
      }
    }
    return new FlatDrawer(this.canvas);
  }

  #freshCanvas() {
    // A canvas that once was asked for WebGL gives no two-dimensional paper any more.
    const fresh = this.canvas.cloneNode();
    this.canvas.replaceWith(fresh);
    this.canvas = fresh;
  }

  #fallBack() {
    this.#freshCanvas();
    this.drawer = new FlatDrawer(this.canvas);
    this.look.listenCanvas(this.canvas);
    this.#resize();
    if (this.session.answer) this.drawer.load(this.session.scene);
    this.draw();
  }

  /** Takes the colours anew, after a change of theme. */
  recolour() {
    const { ink, glow } = inks(this);
    this.ink = ink;
    this.glow = glow;
    this.draw();
  }

  /** @param {string} view */
  see(view) {
    this.look.see(view);
  }

  /** @param {number} by 1 or −1 */
  nextView(by = 1) {
    this.look.next(by);
  }

  /** Stands where the figure fills what is free of the stage. */
  frame(glide = false) {
    this.look.frame(glide);
  }

  /** Where a hand or head of the pattern as it is said is at this moment, metres: what is shown of it may be corded. */
  idealAt(track, out) {
    const { scene } = this.session;
    return scene.at(scene.tracks['ghost.' + track] ? 'ghost.' + track : track, this.clock.phase, out);
  }

  /** Hands, cords, links and handles: always, or only while a pointer or the keyboard is at them. */
  ask(always) {
    this.always = always;
    localStorage.setItem('deferent.look', always ? 'hands' : 'light');
    this.#near();
    this.dispatchEvent(new CustomEvent('viewed'));
  }

  /**
   * Shows hands and cords while a sentence that tells of them is pointed at.
   *
   * @param {boolean} on
   */
  point(on) {
    this.told = on;
    this.#near();
  }

  // Something is at the stage now.
  #near(lasting = REST) {
    clearTimeout(this.resting);
    this.resting = setTimeout(() => this.rest(), lasting);
    this.#reveal(true);
  }

  /** Nothing is at the stage any more. */
  rest() {
    if (this.grip || this.told || this.#within(document.activeElement)) this.#near();
    else this.#reveal(false);
  }

  #reveal(near) {
    const asked = near || this.always;
    if (asked === this.asked) return;
    this.asked = asked;
    this.grab.say();
    this.parentElement.classList.toggle('asked', asked);
    this.draw();
  }

  #resize() {
    const width = this.clientWidth;
    const height = this.clientHeight;
    if (!width || !height) return;
    const software = /swiftshader|llvmpipe|softpipe/i.test(this.drawer.name);
    const ratio = Math.min(window.devicePixelRatio || 1, software ? 1 : 2);
    this.drawer.resize(width, height, ratio);
    this.camera.resize(width, height);
    this.scale = Math.max(0.72, Math.min(1.3, Math.min(width, height) / 460));
    if (this.session && this.session.answer) this.frame();
    this.draw();
  }

  #answered({ answer, times }) {
    const drag = this.session.dragging;
    this.clock.period = this.session.scene.period;
    this.drawer.load(this.session.scene);
    this.classList.toggle('letting', !!this.session.aside);
    if (this.was && answer.handles && !this.session.fitting) this.#fadeWas();
    this.#introduce(answer);
    if (answer.handles) {
      this.handles.load(answer.handles);
      if (!drag && !this.session.aside) this.look.suit(answer.handles);
    }
    if (!drag && !this.session.letting) this.look.frameIfNeeded();
    this.draw();
    if (drag) this.grab.say();
    if (times) {
      times.drawn = performance.now();
      for (const tell of this.drawn) tell(answer, times);
    }
  }

  draw() {
    if (!this.session || !this.session.answer || !this.ink || document.hidden) return;
    const phase = this.clock.phase;
    const { show } = this;
    const asked = !!this.asked;
    show.cords = show.link = asked;
    show.best = asked && !document.body.classList.contains('lesson');
    // Of a set the light of one pattern stays, and no path of what is still to come or long past is seen.
    const { setting } = this.session;
    show.path = asked && !setting;
    const fade = Math.min(this.persistence, setting ? setting.stays_s(phase) : Infinity) / this.session.scene.period;
    show.figure = fade < 1 && !setting;
    show.body = this.camera.view !== 'eyes';
    this.grab.follow();
    const { seen } = this;
    seen.lit = this.grab.lit;
    show.meets = this.#meets(phase);
    this.picture.compose(this.session.scene, phase, this.ink, show, this.scale, seen.lit);
    seen.ink = this.ink;
    seen.phase = phase;
    seen.fade = fade;
    seen.show = show;
    seen.glow = this.glow;
    this.drawer.draw(this.picture, this.camera, seen);
    this.frames++;
    this.handles.follow();
    this.labels.follow();
    this.moments.follow();
  }

  // The carrier whose head the other's hand is at now, within a hand's breadth, where the link is one of touching.
  /** @param {number} phase */
  #meets(phase) {
    const { session } = this;
    const link = session.aside || session.show !== 'ideal' ? null : linkOf(session.answer);
    if (!link || link.kind === 'carried' || link.kind === 'rod' || document.body.classList.contains('lesson')) return null;
    const { strip } = session.now;
    const apart = strip.gap_m[Math.floor(phase * strip.gap_m.length) % strip.gap_m.length];
    return apart <= (strip.tolerance_m ?? 0.08) ? session.answer.strip.carrier : null;
  }

  /** Keeps what the heads draw now in sight, pale and going, while other sizes take its place. */
  keepInSight() {
    const { tracks } = this.session.scene;
    this.was = { left: tracks['left.head'].slice(), right: tracks['right.head'].slice() };
  }

  // A few steps down to nothing; where no motion is wanted it stays and is gone.
  #fadeWas() {
    const began = performance.now();
    const { scene } = this.session;
    scene.was = this.was;
    this.was = null;
    scene.reshape();
    this.drawer.load(scene);
    clearInterval(this.fading);
    this.fading = setInterval(() => {
      const left = 1 - (performance.now() - began) / FADES;
      if (scene.was && left > 0) {
        this.show.was = this.clock.calm.matches ? 1 : left;
      } else {
        clearInterval(this.fading);
        scene.was = null;
        scene.reshape();
        this.drawer.load(scene);
      }
      this.draw();
    }, 60);
  }

  // With a pattern that is new here hands and cords are shown for a cycle: what links with what.
  /** @param {any} answer */
  #introduce(answer) {
    const { session, clock } = this;
    const said = answer.phrase || answer.name;
    if (session.dragging || session.aside || said === this.introduced) return;
    this.introduced = said;
    if (!clock.calm.matches) this.#near(Math.max(SHOWN[0], Math.min(SHOWN[1], 1000 * session.scene.period)));
  }

  #listen() {
    this.look.listen();
    this.look.listenCanvas(this.canvas);
    document.addEventListener('visibilitychange', () => this.draw());
    this.addEventListener('pointermove', () => this.#near());
    this.addEventListener('pointerdown', () => {
      this.askedBefore = this.asked;
      this.#near();
    }, { capture: true });
    this.addEventListener('focusin', (event) => this.#within(event.target) && this.#near());
  }

  // Whether the keyboard is at a handle or at what else can be pressed on the stage.
  #within(element) {
    return element !== this.canvas && this.contains(element);
  }
}

customElements.define('deferent-stage', StageElement);
