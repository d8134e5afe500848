// Taking hold of the picture: near the pointer what would move lights up and says its size; a press and a pull moves it. What lies
// on top of one another is had in turn: with the mouse by a click that does not drag, with a finger by holding it still.

import { cm } from '../parts/units.js';
import { sizeSaid } from './handles.js';
import { Reach } from './reach.js';
import { Snap } from './snap.js';

const STILL = { mouse: 3, touch: 7 }; // pixels within which a press is no drag
const SAME = 6; // pixels within which a click is at the same place
const BESIDE = 28; // pixels from a finger to what it is offered
const HOLD = 360; // milliseconds after which a finger that holds still is offered what lies beneath
const LOST = 40; // pixels by which what moves may leave a pointer that stands still before it goes dark

/** @typedef {import('./reach.js').Held} Held */

export class Grab {
  /** @param {import('./stage.js').StageElement} stage */
  constructor(stage) {
    this.stage = stage;
    this.reach = new Reach(stage);
    this.snap = new Snap(stage);
    /** @type {Held | null} */
    this.near = null; // what would move
    this.turn = { x: -99, y: -99, index: 0 }; // where what lies beneath was asked for
    this.chosen = ''; // the key a finger has chosen from what lies beneath
    this.spot = [0, 0, 0];
    this.early = 0; // when a place was seen that was asked about before its frame
    this.offers = stage.querySelector('.grab-offers');
    stage.addEventListener('pointermove', (event) => this.#move(event));
    stage.addEventListener('pointerrawupdate', (event) => this.#ahead(event));
    stage.addEventListener('pointerdown', (event) => this.#press(event));
    stage.addEventListener('pointerup', (event) => this.#lift(event));
    stage.addEventListener('pointercancel', (event) => this.#lift(event, true));
    stage.addEventListener('contextmenu', (event) => {
      if (/** @type {PointerEvent} */ (event).pointerType === 'touch') event.preventDefault();
    });
    stage.addEventListener('pointerleave', () => this.stage.grip || this.#light(null));
  }

  #place(event, box = this.stage.getBoundingClientRect()) {
    return [event.clientX - box.left, event.clientY - box.top];
  }

  /** All that can be had at a place, the handle there first. */
  #stack(event, x, y) {
    const finger = event.pointerType === 'touch';
    const stack = this.reach.at(x, y, finger, !finger || this.chosen === 'both.centre');
    const chosen = stack.find((held) => held.key === this.chosen);
    if (chosen) return [chosen, ...stack.filter((held) => held !== chosen)];
    const element = event.target.closest?.('.handle');
    if (element) {
      const { key, plane } = element.handle;
      const [side, kind] = key.split('.');
      const what = { circle: 'path', centre: 'centre', poi: 'head', tilt: 'tilt' }[kind];
      const one = { key, what, side, at: [...element.now], normal: plane.normal, away: 0, way: [0, 0] };
      return [/** @type {Held} */ (one), ...stack.filter((held) => held.key !== key)];
    }
    return stack;
  }

  #index(stack, x, y) {
    const { turn } = this;
    if (Math.hypot(x - turn.x, y - turn.y) > SAME) turn.index = 0;
    return stack.length ? turn.index % stack.length : 0;
  }

  #move(event) {
    const { grip } = this.stage;
    if (grip) {
      if (grip.pointer !== event.pointerId) return;
      const asked = this.early === event.timeStamp;
      this.early = 0;
      if (!asked) this.#pull(event, grip);
      return;
    }
    if (event.pointerType === 'touch' || event.buttons) return;
    const [x, y] = this.#place(event);
    const stack = this.#stack(event, x, y);
    this.#light(stack[this.#index(stack, x, y)] || null, x, y, stack.length);
  }

  // A browser tells where a pointer is as soon as it knows, and once more before each frame; the first of those that come between two
  // frames need not wait for the next, where nobody waits for an answer.
  #ahead(event) {
    const { grip, session } = this.stage;
    if (!grip || !grip.moved || grip.pointer !== event.pointerId || this.early || session.live.busy) return;
    this.early = event.timeStamp;
    this.#pull(event, grip);
  }

  #light(held, x = 0, y = 0, count = 1) {
    const was = this.near;
    this.near = held;
    this.at = [x, y];
    this.count = count;
    this.stage.style.setProperty('--cursor', held ? cursor(held) : 'grab');
    this.say();
    if ((was && was.key + was.what) !== (held && held.key + held.what)) this.stage.draw();
  }

  /** What the picture lights up: whose paths, figures and cord, and where a halo stands. */
  get lit() {
    const { near } = this;
    if (!near || !this.stage.asked) return null;
    const { key, side, what } = near;
    const whole = key.startsWith('both') ? 'both' : side;
    const centre = key.endsWith('.centre');
    const lit = { path: '', figure: '', cord: '', at: null };
    if (centre) lit.path = lit.figure = whole;
    if (key.endsWith('.circle')) lit.path = side;
    if (key.endsWith('.tilt')) lit.figure = side;
    if (key.endsWith('.tether') || key.endsWith('.poi')) lit.cord = side;
    if (what === 'hand' || what === 'head') lit.at = this.stage.idealAt(side + '.' + what, this.spot);
    else if (what === 'centre' || what === 'tilt') lit.at = this.stage.handles.all.get(side + '.' + what)?.now || null;
    return Object.assign(lit, this.snap.light);
  }

  /** The word beside what would move, or moves. */
  say() {
    const { near, stage } = this;
    if (!near || !stage.asked) {
      stage.labels.tell('');
      return;
    }
    const [x, y] = this.at;
    const more = !stage.grip && this.count > 1 ? ' · click for the next' : '';
    stage.labels.tell(named(stage.session, near) + (this.snap.now && stage.session.linked ? ', linked' : this.snap.now ? ', same figure' : '') + (stage.always ? '' : more), x, y);
  }

  /** What moves by itself goes dark once it has left the pointer. */
  follow() {
    const { near, stage } = this;
    if (!near || stage.grip || !stage.clock.playing || (near.what !== 'hand' && near.what !== 'head' && near.what !== 'cord')) return;
    stage.idealAt(near.side + (near.what === 'hand' ? '.hand' : '.head'), this.spot);
    const seen = stage.camera.project(this.spot[0], this.spot[1], this.spot[2], this.spot);
    if (near.what === 'cord' || !seen || Math.hypot(this.spot[0] - this.at[0], this.spot[1] - this.at[1]) > LOST) {
      this.near = null;
      stage.labels.tell('');
    }
  }

  #press(event) {
    const { stage } = this;
    if (event.button > 0 || stage.grip || !stage.session.pattern || event.target.closest('.over')) return;
    const finger = event.pointerType === 'touch';
    this.#offer([]);
    // The first touch of a quiet stage only shows what there is to take hold of.
    if (finger && !stage.askedBefore) return;
    if (finger && stage.look.fingers.size > 0) return;
    const [x, y] = this.#place(event);
    const stack = this.#stack(event, x, y);
    const held = stack[this.#index(stack, x, y)];
    if (!held) {
      this.#light(null);
      return;
    }
    const element = event.target.closest('.handle');
    if (element) {
      event.preventDefault();
      element.focus({ preventScroll: true });
    }
    (element || stage.canvas).setPointerCapture(event.pointerId);
    const shown = stage.handles.all.get(held.key);
    const key = event.shiftKey && held.what === 'head' ? held.side + '.tether' : held.key;
    stage.camera.project(held.at[0], held.at[1], held.at[2], this.spot);
    const playing = stage.clock.playing;
    stage.clock.play(false);
    stage.grip = {
      held,
      key,
      stack,
      shown,
      playing,
      pointer: event.pointerId,
      still: finger ? STILL.touch : STILL.mouse,
      from: [event.clientX, event.clientY],
      box: stage.getBoundingClientRect(), // to ask for it at each move would lay out the page
      dx: this.spot[0] - x,
      dy: this.spot[1] - y,
      moved: false,
    };
    if (shown) shown.classList.add('held');
    this.#light(held, x, y, stack.length);
    // What was just chosen is had at once; offers come again after it was dragged, or with a tap.
    if (finger && stack.length > 1 && held.key !== this.chosen) this.holding = setTimeout(() => this.#beneath(x, y), HOLD);
  }

  #pull(event, grip) {
    const { stage } = this;
    if (!grip.moved) {
      if (Math.hypot(event.clientX - grip.from[0], event.clientY - grip.from[1]) < grip.still) return;
      clearTimeout(this.holding);
      grip.moved = true;
      stage.best.forget();
      this.snap.begin(grip.held, grip.key);
      stage.session.grab(grip.key, grip.held.at, stage.clock.phase);
    }
    const [x, y] = this.#place(event, grip.box);
    this.at = [x, y];
    const to = this.#meet(x + grip.dx, y + grip.dy, grip.held);
    stage.session.drag(to, event.timeStamp, this.#set(grip, to));
  }

  // Where the pointer is in the plane in which what it holds is moved; seen nearly edge on, at its depth.
  #meet(x, y, { at, normal }) {
    const { camera } = this.stage;
    const facing = normal.reduce((s, v, i) => s + v * camera.ahead[i], 0);
    return camera.meet(x, y, at, Math.abs(facing) > 0.2 ? normal : camera.ahead);
  }

  /** Changes in the place of the grab itself: where the link closes a size is held, and a cord that is pulled does not turn. */
  #set({ key, held }, to) {
    if (held.what !== 'cord') return this.snap.hold(held, to);
    const { base } = this.stage.session.dragging;
    const hand = this.stage.idealAt(held.side + '.hand', [0, 0, 0]);
    if (!this.stage.grip.cord) {
      const arm = held.at.map((v, i) => v - hand[i]);
      const long = Math.hypot(...arm);
      this.stage.grip.cord = { hand, arm: arm.map((v) => v / long), long, tether: base.pairing[held.side].tether_m };
    }
    const { cord } = this.stage.grip;
    const reached = cord.arm.reduce((sum, v, i) => sum + v * (to[i] - cord.hand[i]), 0);
    const metres = Math.round(1000 * cord.tether * Math.max(0.02, reached / cord.long)) / 1000;
    const snapped = this.snap.hold(held, to, metres);
    return snapped || [{ set: key + '_m', to: Math.min(5, Math.max(0.01, metres)) }];
  }

  #lift(event, lost = false) {
    const { grip } = this.stage;
    if (!grip || grip.pointer !== event.pointerId) return;
    const { moved, stack } = grip;
    if (lost && !moved && event.pointerType === 'touch' && stack.length > 1 && !this.chosen) {
      // The browser took a finger that was held still for a long press of its own.
      this.#beneath(this.at[0], this.at[1]);
      return;
    }
    this.letGo(true);
    if (lost || moved) return;
    if (event.pointerType === 'touch') {
      this.chosen = '';
      return;
    }
    // A click that did not drag asks for what lies beneath.
    const [x, y] = this.#place(event);
    const same = Math.hypot(x - this.turn.x, y - this.turn.y) <= SAME;
    this.turn = { x, y, index: stack.length ? ((same ? this.turn.index : 0) + 1) % stack.length : 0 };
    this.#light(stack[this.turn.index] || null, x, y, stack.length);
  }

  /** Ends what is held; what was moved stays. */
  letGo(whole) {
    const { stage } = this;
    const { grip } = stage;
    if (!grip) return;
    clearTimeout(this.holding);
    stage.grip = null;
    this.chosen = whole && grip.moved ? '' : this.chosen;
    if (grip.shown) grip.shown.classList.remove('held');
    this.snap.end();
    if (grip.moved) stage.session.release();
    if (grip.playing) stage.clock.play(true);
    if (stage.handles.coarse.matches) this.near = null;
    this.say();
    stage.draw();
  }

  // What lies under a finger, to choose from.
  #beneath(x, y) {
    const { grip } = this.stage;
    if (!grip || grip.moved) return;
    const { stack } = grip;
    this.letGo(false);
    const whole = { ...stack[0], key: 'both.centre', what: 'figure' };
    this.#offer(stack.some((held) => held.key === whole.key) ? stack : [...stack, /** @type {Held} */ (whole)], x, y);
  }

  #offer(list, x = 0, y = 0) {
    const { offers, stage } = this;
    if (!list.length && offers.hidden) return;
    offers.hidden = !list.length;
    offers.replaceChildren(
      ...list.map((held) => {
        const button = document.createElement('button');
        button.type = 'button';
        button.textContent = named(stage.session, held);
        button.addEventListener('click', () => {
          this.chosen = held.key;
          this.#offer([]);
          this.#light(held, x, y);
        });
        return button;
      }),
    );
    if (list.length) {
      const { width, height } = stage.camera;
      // Beside the finger, never under it: where it lifts would be a choice.
      const { offsetWidth: w, offsetHeight: h } = offers;
      const right = x + BESIDE + w <= width - 6;
      const left = x - BESIDE - w >= 6;
      const above = y - BESIDE - h >= 6;
      const middle = right || left;
      offers.style.left = (right ? x + BESIDE : left ? x - BESIDE - w : Math.max(6, Math.min(width - w - 6, x - w / 2))) + 'px';
      offers.style.top = Math.max(6, Math.min(height - h - 6, middle ? y - h / 2 : above ? y - BESIDE - h : y + BESIDE)) + 'px';
    }
  }
}

/**
 * What would move, in words, with its size.
 *
 * @param {import('../state/session.js').Session} session
 * @param {Held} held
 */
export function named(session, held) {
  const { key, side } = held;
  if (key.startsWith('both')) return 'whole figure';
  const kind = key.split('.')[1];
  const name = { circle: 'hand radius', centre: 'centre', poi: 'poi', tether: 'tether', tilt: 'tilt' }[kind];
  const tether = kind === 'tether' && session.size(side + '.tether_m');
  const size = tether ? cm(tether.value) : sizeSaid(session, key);
  return `${side} ${name}${size ? ' ' + size : ''}`;
}

// Which way it goes, where it goes only one.
function cursor({ key, way: [x, y] }) {
  if (key.endsWith('.centre')) return 'move';
  if (!x && !y) return 'grab';
  const eighth = Math.round((Math.atan2(y, x) / Math.PI) * 4) & 3;
  return ['ew-resize', 'nwse-resize', 'ns-resize', 'nesw-resize'][eighth];
}
