// The handles on the stage: one button for each thing that can be set by hand, so that the keyboard and a screen reader have it too.
// They stand at what they set, laid apart so that none covers another.

import { cm, degrees } from '../parts/units.js';

const AIR = 16; // pixels a handle keeps from the edge of what is free of the stage
const NUDGE = { plain: 0.01, shift: 0.05, alt: 0.001 }; // metres a key press
const SIZES = { fine: 30, coarse: 44 }; // pixels across, for a pointer and for a finger
const ORDER = ['circle', 'tilt', 'centre', 'poi']; // who keeps its place and who gives way: the head moves, so it comes last

/**
 * @typedef {{ key: string, name: string, at: number[], follows: string | null, plane: { at: number[], normal: number[] } }} Handle
 * @typedef {HTMLButtonElement & { handle: Handle, now: number[], says: string }} HandleElement
 */

/**
 * The name of a thing that can be taken hold of, with the size that it sets.
 *
 * @param {import('../state/session.js').Session} session
 * @param {string} key of a grab: left.circle
 */
export function sizeSaid(session, key) {
  const [side, kind] = key.split('.');
  const size = (name) => session.size(side + '.' + name);
  switch (kind) {
    case 'circle':
      return size('hand_radius_m') ? cm(size('hand_radius_m').value) : '';
    case 'tilt':
      return size('tilt_deg') ? degrees(size('tilt_deg').value) : '';
    case 'poi':
      return size('start_deg') ? 'start ' + degrees(size('start_deg').value) : '';
    case 'tether':
      return size('tether_m') ? cm(size('tether_m').value) : '';
    default: {
      const x = session.size((side === 'both' ? 'left' : side) + '.centre_x_m');
      const y = session.size((side === 'both' ? 'left' : side) + '.centre_y_m');
      return x && y && side !== 'both' ? cm(x.value) + ', ' + cm(y.value) : '';
    }
  }
}

export class Handles {
  /**
   * @param {import('./stage.js').StageElement} stage
   * @param {HTMLElement} rack
   */
  constructor(stage, rack) {
    this.stage = stage;
    this.rack = rack;
    /** @type {Map<string, HandleElement>} */
    this.all = new Map();
    this.coarse = matchMedia('(pointer: coarse)');
    this.places = []; // x, y of each handle as laid, for the label to keep clear of
    this.spot = [0, 0, 0];
    rack.addEventListener('keydown', (event) => this.#nudge(event));
  }

  /** How wide a handle is, pixels. */
  get size() {
    return this.coarse.matches ? SIZES.coarse : SIZES.fine;
  }

  /** @param {Handle[]} list */
  load(list) {
    for (const [key, element] of this.all) {
      if (!list.some((h) => h.key === key)) {
        element.remove();
        this.all.delete(key);
      }
    }
    for (const handle of list) {
      const element = this.all.get(handle.key) || this.#made(handle);
      element.handle = handle;
      const said = sizeSaid(this.stage.session, handle.key);
      const says = said ? handle.name + ' ' + said : handle.name;
      if (element.says !== says) {
        element.says = says;
        element.lastChild.textContent = says;
        element.setAttribute('aria-label', says);
      }
    }
    this.follow();
  }

  /** @param {Handle} handle */
  #made(handle) {
    const element = /** @type {HandleElement} */ (document.createElement('button'));
    const [side, kind] = handle.key.split('.');
    element.type = 'button';
    element.className = 'handle';
    element.dataset.key = handle.key;
    element.dataset.side = side;
    element.dataset.kind = kind;
    element.innerHTML = `<i>${kind === 'centre' ? FOUR_WAYS : ''}</i><b></b>`;
    this.all.set(handle.key, element);
    this.rack.append(element);
    return element;
  }

  /** Where what a handle sets is now, metres: a handle sets the pattern as it is said, so it stays with the ideal. */
  at(handle, out) {
    if (!handle.follows) {
      out[0] = handle.at[0];
      out[1] = handle.at[1];
      out[2] = handle.at[2];
      return out;
    }
    return this.stage.idealAt(handle.follows, out);
  }

  /** Puts each handle where it belongs at this moment, as near as the others leave it. */
  follow() {
    const { camera } = this.stage;
    const laid = (this.places = []);
    const least = this.size + 1;
    for (const kind of ORDER) {
      for (const element of this.all.values()) {
        if (element.dataset.kind !== kind) continue;
        element.now = this.at(element.handle, element.now || [0, 0, 0]);
        const [x, y, z] = element.now;
        if (!camera.project(x, y, z, this.spot)) continue;
        // A tilt's handle stands outside the figure, and so may lie outside what is free of the stage: it waits at the edge.
        this.#keepIn(this.spot, kind === 'tilt' ? AIR : -Infinity);
        const place = [this.spot[0], this.spot[1]];
        if (kind === 'centre') place[0] += this.#aside(element.dataset.side, least);
        apart(place, laid, least);
        laid.push(place);
        move(element, place[0], place[1]);
      }
    }
  }

  #keepIn(spot, air) {
    if (air === -Infinity) return;
    const { above, right, below, left } = this.stage.edges;
    const { width, height } = this.stage.camera;
    spot[0] = Math.max(left + air, Math.min(width - right - air, spot[0]));
    spot[1] = Math.max(above, Math.min(height - below - air, spot[1]));
  }

  // The two centres often lie one behind the other: their handles stand either side of them, so that each can be had.
  #aside(side, across) {
    const { camera } = this.stage;
    const towardLeft = camera.flip * (camera.right[0] >= 0 ? 1 : -1);
    return (((side === 'left' ? 1 : -1) * across) / 2) * towardLeft;
  }

  #nudge(event) {
    const element = /** @type {HandleElement} */ (event.target.closest('.handle'));
    const way = ARROWS[event.key];
    if (!element || !way || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    const step = event.shiftKey ? NUDGE.shift : event.altKey ? NUDGE.alt : NUDGE.plain;
    const { camera: c, clock, session } = this.stage;
    const key = element.handle.key;
    clock.play(false);
    session.change(() => {
      const from = [...element.now];
      const to = from.map((v, i) => v + step * (c.flip * way[0] * c.right[i] + way[1] * c.up[i]));
      return [{ grab: key, to: /** @type {[number, number, number]} */ (to), from: /** @type {[number, number, number]} */ (from), time_s: clock.phase * session.scene.period }];
    }, 'nudge ' + key);
  }
}

/**
 * Moves a place until it lies `least` away, across or down, from each place that is laid already: the shorter way out of each, and
 * where those push to and fro, outward along a spiral.
 */
export function apart(place, laid, least) {
  const near = () => laid.find((p) => Math.abs(p[0] - place[0]) < least && Math.abs(p[1] - place[1]) < least);
  const [x, y] = place;
  for (let i = 0; i < 6; i++) {
    const other = near();
    if (!other) return place;
    const dx = place[0] - other[0];
    const dy = place[1] - other[1];
    if (Math.abs(dx) >= Math.abs(dy)) place[0] = other[0] + (dx < 0 ? -least : least);
    else place[1] = other[1] + (dy < 0 ? -least : least);
  }
  for (let i = 1; near() && i < 90; i++) {
    place[0] = x + 0.16 * least * i * Math.cos(i * 0.9);
    place[1] = y + 0.16 * least * i * Math.sin(i * 0.9);
  }
  return place;
}

const FOUR_WAYS =
  '<svg viewBox="0 0 16 16"><path d="M8 1.5v13M1.5 8h13M6.2 3.2 8 1.4l1.8 1.8M6.2 12.8 8 14.6l1.8-1.8M3.2 6.2 1.4 8l1.8 1.8M12.8 6.2 14.6 8l-1.8 1.8" fill="none" stroke="currentColor" stroke-width="1.3"/></svg>';

export const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

/** Puts an element at a place on the stage, pixels. */
export function move(element, x, y) {
  element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
}
