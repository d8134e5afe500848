// The stage: the moving picture, what can be grabbed in it, and where the onlooker stands.
//
// An answer is drawn as soon as it comes, within the message that brings it. In play, each frame draws the moment. Neither builds
// anything new: the same arrays are filled again.

import { Camera, VIEWS } from './camera.js';
import { FlatDrawer } from './flat.js';
import { Picture } from './picture.js';
import { WebglDrawer } from './webgl.js';
import { cm, degrees, gap } from '../parts/units.js';

const GLIDE = 260; // milliseconds the view takes from one framing to the next
const AIR = 16; // pixels round the figure, so that a head's mark and its glow are whole
const REST = 2600; // milliseconds a still pointer keeps hands and handles in sight
const NUDGE = { plain: 0.01, shift: 0.05, alt: 0.001 }; // metres a key press

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
    this.handles = new Map();
    this.spot = [0, 0, 0];
    this.place = new Float32Array(3);
    this.look = {};
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
    this.draw();
  }

  connectedCallback() {
    if (this.canvas) return;
    this.innerHTML = `
      <canvas class="stage-canvas" tabindex="0" role="application" aria-roledescription="stage" aria-label="Stage. Arrow keys turn the view, plus and minus zoom."></canvas>
      <span class="stage-letter" data-side="left" aria-hidden="true">L</span>
      <span class="stage-letter" data-side="right" aria-hidden="true">R</span>
      <output class="link-label" aria-hidden="true"></output>
      <div class="handles" role="group" aria-label="Handles: drag, or focus one and use the arrow keys"></div>`;
    this.canvas = this.querySelector('canvas');
    this.letters = { left: this.querySelector('[data-side=left]'), right: this.querySelector('[data-side=right]') };
    this.linkLabel = this.querySelector('.link-label');
    this.rack = this.querySelector('.handles');
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
    this.#listenCanvas();
    this.#resize();
    if (this.session.answer) this.drawer.load(this.session.scene);
    this.draw();
  }

  /** Takes the colours anew, after a change of theme. */
  recolour() {
    const style = getComputedStyle(this);
    const probe = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
    const colour = (name) => {
      probe.fillStyle = '#000';
      probe.fillStyle = style.getPropertyValue(name).trim();
      probe.fillRect(0, 0, 1, 1);
      const [r, g, b] = probe.getImageData(0, 0, 1, 1).data;
      return [r / 255, g / 255, b / 255];
    };
    this.ink = {
      ground: colour('--stage-ground'),
      plain: colour('--stage-plain'),
      body: colour('--stage-body'),
      outline: colour('--stage-outline'),
      left: colour('--left'),
      right: colour('--right'),
      link: colour('--link'),
    };
    this.glow = style.getPropertyValue('--stage-glow').trim() === '1' ? 1 : 0;
    this.draw();
  }

  see(view) {
    this.camera.see(view);
    this.draw();
    this.dispatchEvent(new CustomEvent('viewed'));
  }

  nextView() {
    this.see(VIEWS[(VIEWS.indexOf(this.camera.view) + 1) % VIEWS.length]);
  }

  /** Stands where the figure fills what is free of the stage. */
  frame(glide = false) {
    if (!this.session || !this.session.answer) return;
    const { least, most } = this.session.scene.box();
    const c = this.camera;
    const was = [c.target[1], c.distance, ...c.aside];
    const edges = (this.edges = this.covered());
    c.frame(least, most, { above: edges.above + AIR, right: edges.right + AIR, below: edges.below + AIR, left: edges.left + AIR });
    this.framed = [...least, ...most];
    if (glide && !this.clock.calm.matches) this.#glide(was, [c.target[1], c.distance, ...c.aside]);
    else this.gliding = null;
    this.draw();
  }

  #glide(from, to) {
    const start = performance.now();
    const run = { from, to };
    this.gliding = run;
    const step = () => {
      if (this.gliding !== run) return;
      const t = Math.min(1, (performance.now() - start) / GLIDE);
      const share = t * t * (3 - 2 * t);
      const now = from.map((v, i) => v + share * (to[i] - v));
      const c = this.camera;
      [c.target[1], c.distance, c.aside[0], c.aside[1]] = now;
      c.settle();
      if (t < 1) requestAnimationFrame(step);
      else this.gliding = null;
      this.draw();
    };
    step();
  }

  // A figure that has become another size is framed anew; one that only moved a little stays where the eye has it.
  #frameIfNeeded() {
    const { least, most } = this.session.scene.box();
    const was = this.framed;
    const size = was ? Math.max(was[3] - was[0], was[4] - was[1]) : 0;
    if (!was || [...least, ...most].some((v, i) => i % 3 < 2 && Math.abs(v - was[i]) > 0.08 * size)) this.frame(!!was);
  }

  /** Hands, cords, links and handles: always, or only while a pointer or the keyboard is at them. */
  ask(always) {
    this.always = always;
    localStorage.setItem('deferent.look', always ? 'hands' : 'light');
    this.#near();
    this.dispatchEvent(new CustomEvent('viewed'));
  }

  // Something is at the stage now.
  #near(lasting = REST) {
    clearTimeout(this.resting);
    this.resting = setTimeout(() => this.#rest(), lasting);
    this.#reveal(true);
  }

  #rest() {
    if (this.grip || this.rack.contains(document.activeElement)) this.#near();
    else this.#reveal(false);
  }

  #reveal(near) {
    const asked = near || this.always;
    if (asked === this.asked) return;
    this.asked = asked;
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
    if (answer.handles) this.#rack(answer.handles);
    if (!drag && !this.session.letting) this.#frameIfNeeded();
    this.draw();
    if (times) {
      times.drawn = performance.now();
      for (const tell of this.drawn) tell(answer, times);
    }
  }

  draw() {
    if (!this.session || !this.session.answer || !this.ink) return;
    const phase = this.clock.phase;
    const { show } = this;
    const asked = !!this.asked;
    show.cords = show.link = show.path = asked;
    const fade = this.persistence / this.session.scene.period;
    show.figure = fade < 1;
    this.picture.compose(this.session.scene, phase, this.ink, show, this.scale);
    this.look.ink = this.ink;
    this.look.phase = phase;
    this.look.fade = fade;
    this.look.show = show;
    this.look.glow = this.glow;
    this.drawer.draw(this.picture, this.camera, this.look);
    this.frames++;
    this.#label();
    this.#follow();
  }

  #label() {
    for (const side of ['left', 'right']) {
      const p = this.asked ? this.picture.hands[side] : this.#head(side);
      if (this.camera.project(p[0], p[1], p[2], this.spot)) move(this.letters[side], Math.max(6, this.spot[0] - 17), this.spot[1] + 15);
    }
    const t = this.picture.link;
    this.linkLabel.hidden = !this.picture.linkShown;
    if (!this.picture.linkShown) return;
    // The label says what the strip says: the distance in the plane, without the hand's breadth between the two planes.
    const { gap_m: open, tolerance_m: breadth = 0.08 } = this.session.now.strip;
    const now = open[Math.floor(this.clock.phase * open.length) % open.length];
    const text = gap(now);
    if (this.linkText !== text) {
      this.linkLabel.textContent = this.linkText = text;
      this.linkLabel.classList.toggle('closed', now <= breadth);
    }
    const seen = this.camera.project((t[0] + t[3]) / 2, (t[1] + t[4]) / 2, (t[2] + t[5]) / 2, this.spot);
    if (seen) move(this.linkLabel, this.spot[0] + 12, this.spot[1] - 22);
  }

  #head(side) {
    this.session.scene.at(side + '.head', this.clock.phase, this.place);
    return this.place;
  }

  // Handles -------------------------------------------------------------------------------------------------------------------

  #rack(list) {
    for (const [key, element] of this.handles) {
      if (!list.some((h) => h.key === key)) {
        element.remove();
        this.handles.delete(key);
      }
    }
    for (const handle of list) {
      let element = this.handles.get(handle.key);
      if (!element) {
        element = document.createElement('button');
        element.type = 'button';
        element.className = 'handle';
        const [side, kind] = handle.key.split('.');
        element.dataset.key = handle.key;
        element.dataset.side = side;
        element.dataset.kind = kind;
        element.innerHTML = `<i>${kind === 'centre' ? FOUR_WAYS : ''}</i><b></b>`;
        this.handles.set(handle.key, element);
        this.rack.append(element);
      }
      element.handle = handle;
      const says = this.#says(handle);
      if (element.says !== says) {
        element.says = says;
        element.lastChild.textContent = says;
        element.setAttribute('aria-label', says);
      }
    }
    this.#follow(true);
  }

  /** A handle's name with the size it sets. */
  #says(handle) {
    const [side, kind] = handle.key.split('.');
    const size = (name) => this.session.size(side + '.' + name);
    let value = '';
    if (kind === 'circle' && size('hand_radius_m')) value = cm(size('hand_radius_m').value);
    if (kind === 'tilt' && size('tilt_deg')) value = degrees(size('tilt_deg').value);
    if (kind === 'poi' && size('start_deg')) value = 'start ' + degrees(size('start_deg').value);
    if (kind === 'tether' && size('tether_m')) value = cm(size('tether_m').value);
    if (kind === 'centre' && size('centre_x_m')) value = cm(size('centre_x_m').value) + ', ' + cm(size('centre_y_m').value);
    return value ? handle.name + ' ' + value : handle.name;
  }

  #follow(all = false) {
    for (const element of this.handles.values()) {
      const { handle } = element;
      let [x, y, z] = handle.at;
      if (handle.follows) {
        // A handle sets the pattern as it is said, so it stays with the ideal.
        const { scene } = this.session;
        scene.at(scene.tracks['ghost.' + handle.follows] ? 'ghost.' + handle.follows : handle.follows, this.clock.phase, this.place);
        [x, y, z] = this.place;
      }
      const seen = this.camera.project(x, y, z, this.spot);
      // A tilt's handle stands outside the figure, and so may lie outside what is free of the stage: it waits at the edge.
      if (seen && handle.key.endsWith('.tilt')) this.#keepIn(this.spot);
      if (seen) move(element, this.spot[0] + this.#aside(handle.key), this.spot[1]);
      element.now = [x, y, z];
    }
  }

  #keepIn(spot) {
    const { above, right, below, left } = this.edges || this.covered();
    spot[0] = Math.max(left + AIR, Math.min(this.camera.width - right - AIR, spot[0]));
    spot[1] = Math.max(above, Math.min(this.camera.height - below - AIR, spot[1]));
  }

  // The two centres often lie one behind the other: their handles stand either side of them, so that each can be had.
  #aside(key) {
    if (!key.endsWith('.centre') || key.startsWith('both')) return 0;
    const towardLeft = this.camera.flip * (this.camera.right[0] >= 0 ? 1 : -1);
    return (key.startsWith('left') ? 15 : -15) * towardLeft;
  }

  #listen() {
    this.#listenCanvas();
    this.addEventListener('pointermove', () => this.#near());
    this.addEventListener('pointerdown', () => this.#near());
    this.addEventListener('focusin', (event) => this.rack.contains(event.target) && this.#near());
    this.rack.addEventListener('pointerdown', (event) => {
      const element = event.target.closest('.handle');
      if (!element || event.button > 0 || !this.session.pattern) return;
      event.preventDefault();
      element.focus({ preventScroll: true });
      element.setPointerCapture(event.pointerId);
      const handle = element.handle;
      this.held = this.clock.playing;
      this.clock.play(false);
      const key = event.shiftKey && handle.key.endsWith('.poi') ? handle.key.replace('.poi', '.tether') : handle.key;
      this.camera.project(...element.now, this.spot);
      const box = this.getBoundingClientRect();
      this.grip = {
        element,
        plane: handle.plane,
        depth: element.now,
        dx: this.spot[0] - (event.clientX - box.left),
        dy: this.spot[1] - (event.clientY - box.top),
        box,
      };
      element.classList.add('held');
      this.session.grab(key, element.now, this.clock.phase);
    });
    this.rack.addEventListener('pointermove', (event) => {
      const grip = this.grip;
      if (!grip) return;
      const x = event.clientX - grip.box.left + grip.dx;
      const y = event.clientY - grip.box.top + grip.dy;
      this.session.drag(this.#meet(x, y, grip), event.timeStamp);
    });
    const letGo = () => {
      if (!this.grip) return;
      this.grip.element.classList.remove('held');
      this.grip = null;
      this.session.release();
      if (this.held) this.clock.play(true);
    };
    this.rack.addEventListener('pointerup', letGo);
    this.rack.addEventListener('pointercancel', letGo);
    this.rack.addEventListener('keydown', (event) => this.#nudge(event));
  }

  #meet(x, y, { plane, depth }) {
    const facing = plane ? plane.normal.reduce((s, v, i) => s + v * this.camera.ahead[i], 0) : 0;
    return Math.abs(facing) > 0.2
      ? this.camera.meet(x, y, plane.at, plane.normal)
      : this.camera.meet(x, y, depth, this.camera.ahead);
  }

  #nudge(event) {
    const element = event.target.closest('.handle');
    const way = ARROWS[event.key];
    if (!element || !way || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    const step = event.shiftKey ? NUDGE.shift : event.altKey ? NUDGE.alt : NUDGE.plain;
    const c = this.camera;
    const key = element.handle.key;
    this.clock.play(false);
    this.session.change(() => {
      const from = element.now;
      const to = from.map((v, i) => v + step * (c.flip * way[0] * c.right[i] + way[1] * c.up[i]));
      return [{ grab: key, to, from, time_s: this.clock.phase * this.session.scene.period }];
    }, 'nudge ' + key);
  }

  #listenCanvas() {
    const canvas = this.canvas;
    const fingers = new Map();
    canvas.addEventListener('pointerdown', (event) => {
      canvas.setPointerCapture(event.pointerId);
      fingers.set(event.pointerId, [event.clientX, event.clientY]);
    });
    canvas.addEventListener('pointermove', (event) => {
      const was = fingers.get(event.pointerId);
      if (!was) return;
      const now = [event.clientX, event.clientY];
      if (fingers.size === 1) {
        this.camera.orbit(-(now[0] - was[0]) * 0.006, (now[1] - was[1]) * 0.005);
      } else {
        const other = [...fingers].find(([id]) => id !== event.pointerId)[1];
        const before = Math.hypot(was[0] - other[0], was[1] - other[1]);
        const after = Math.hypot(now[0] - other[0], now[1] - other[1]);
        if (before > 0 && after > 0) this.camera.zoom(before / after);
      }
      fingers.set(event.pointerId, now);
      this.draw();
      this.dispatchEvent(new CustomEvent('viewed'));
    });
    const lift = (event) => fingers.delete(event.pointerId);
    canvas.addEventListener('pointerup', lift);
    canvas.addEventListener('pointercancel', lift);
    canvas.addEventListener(
      'wheel',
      (event) => {
        event.preventDefault();
        this.camera.zoom(Math.exp(event.deltaY * 0.0012));
        this.draw();
      },
      { passive: false },
    );
    canvas.addEventListener('keydown', (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const way = ARROWS[event.key];
      if (way) this.camera.orbit(way[0] * 0.1, way[1] * 0.08);
      else if (event.key === '+' || event.key === '=') this.camera.zoom(0.9);
      else if (event.key === '-') this.camera.zoom(1.1);
      else if (event.key === 'Home' || event.key === '0') {
        this.camera.see(this.camera.view);
        this.frame();
      } else return;
      event.preventDefault();
      event.stopPropagation();
      this.draw();
      this.dispatchEvent(new CustomEvent('viewed'));
    });
  }
}

const FOUR_WAYS =
  '<svg viewBox="0 0 16 16"><path d="M8 1.5v13M1.5 8h13M6.2 3.2 8 1.4l1.8 1.8M6.2 12.8 8 14.6l1.8-1.8M3.2 6.2 1.4 8l1.8 1.8M12.8 6.2 14.6 8l-1.8 1.8" fill="none" stroke="currentColor" stroke-width="1.3"/></svg>';

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

function move(element, x, y) {
  element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
}

customElements.define('deferent-stage', StageElement);
