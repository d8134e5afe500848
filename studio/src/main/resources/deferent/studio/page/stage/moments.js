// @ts-check
// Where each hand leaves one pattern and joins the other, while a passage is on the stage: a ring where the poi's head leaves, a disc
// where it joins, the same smaller at the hand, and beside the head which hand it is and on which count.

const ON = 0.18; // seconds about its moment that a mark stands out
const OFF = 16; // pixels from a head to its label
const LINE = 20; // pixels that a label is high

/**
 * @typedef {{ time_s: number, side: 'left' | 'right', kind: 'leaves' | 'joins', count: string, hand: number[], head: number[] }} Moment
 * @typedef {{ moment: Moment, head: HTMLElement, hand: HTMLElement, label: HTMLElement, wide: number }} Mark
 */

export class Moments {
  /** @type {Mark[]} */
  #marks = [];
  /** @type {any} */
  #of = null;
  #spot = [0, 0, 0];

  /**
   * @param {import('./stage.js').StageElement} stage
   * @param {HTMLElement} rack
   */
  constructor(stage, rack) {
    this.stage = stage;
    this.rack = rack;
  }

  follow() {
    const { session, clock, camera } = this.stage;
    if (!session || !clock) return;
    const { passing } = session;
    const now = passing ? clock.phase * passing.seconds : 0;
    const on = passing && !passing.led ? (passing.passages.find((/** @type {any} */ p) => p.to_s + ON >= now) ?? null) : null;
    if (on !== this.#of) this.#load(on);
    if (!on) return;
    /** @type {[x: number, y: number, wide: number][]} */
    const taken = [];
    const middle = this.#middle();
    for (const mark of this.#marks) {
      const { moment, head, hand, label } = mark;
      const lit = Math.abs(moment.time_s - now) <= ON;
      for (const each of [head, hand, label]) each.classList.toggle('lit', lit);
      this.#put(hand, moment.hand);
      if (!this.#put(head, moment.head)) continue;
      const [x, y] = this.#spot;
      const out = x >= middle[0] ? 1 : -1;
      let left = Math.max(6, Math.min(camera.width - this.stage.edges.right - mark.wide - 6, out > 0 ? x + OFF : x - OFF - mark.wide));
      let top = y - LINE / 2 + (y >= middle[1] ? 10 : -10);
      while (taken.some(([tx, ty, wide]) => Math.abs(ty - top) < LINE && left < tx + wide && tx < left + mark.wide)) top += y >= middle[1] ? LINE : -LINE;
      left = Math.round(left);
      top = Math.round(Math.max(this.stage.edges.above, Math.min(camera.height - this.stage.edges.below - LINE, top)));
      taken.push([left, top, mark.wide]);
      label.style.transform = `translate(${left}px, ${top}px)`;
    }
  }

  /** @param {HTMLElement} element @param {number[]} at @returns {boolean} */
  #put(element, at) {
    const seen = this.stage.camera.project(at[0], at[1], at[2], this.#spot);
    element.hidden = !seen;
    if (seen) element.style.transform = `translate(${this.#spot[0].toFixed(1)}px, ${this.#spot[1].toFixed(1)}px)`;
    return !!seen;
  }

  // Of all heads, on the screen: labels go outward from there.
  #middle() {
    let [x, y] = [0, 0];
    for (const { moment } of this.#marks) {
      this.stage.camera.project(moment.head[0], moment.head[1], moment.head[2], this.#spot);
      x += this.#spot[0] / this.#marks.length;
      y += this.#spot[1] / this.#marks.length;
    }
    return [x, y];
  }

  /** @param {any} passage */
  #load(passage) {
    this.#of = passage;
    this.rack.replaceChildren();
    this.#marks = (passage?.moments ?? []).map((/** @type {Moment} */ moment) => {
      const made = ['head', 'hand', 'label'].map((part) => {
        const element = document.createElement('span');
        element.className = 'moment-' + part;
        element.dataset.side = moment.side;
        element.dataset.kind = moment.kind;
        this.rack.append(element);
        return element;
      });
      const [head, hand, label] = made;
      label.textContent = `${moment.side} ${moment.kind} ${moment.count}`;
      return { moment, head, hand, label, wide: label.offsetWidth || 110 };
    });
  }
}
