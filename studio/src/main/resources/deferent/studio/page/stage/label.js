// Words on the stage beside what they measure: which side is which, how far the rider's hand is from the carrier's head, and what
// would move if it were taken hold of.

import { length } from '../parts/units.js';
import { linkOf } from './best.js';
import { move } from './handles.js';

const PLACES = [[12, -26], [12, 10], [-1, -26], [-1, 10], [12, -58], [12, 42], [-1, -58], [-1, 42], [64, -8], [-64, -8]];

/** @type {Map<string, [number, number]>} */
const SIZES = new Map();

// Width and height of a label, pixels. While a hand drags, those of a text of the same shape will do: to ask the page for them lays
// all of it out anew, which a drag has no time for.
function size(label, text, dragging) {
  const shape = label.className + text.replace(/\d/g, '0');
  const known = dragging && SIZES.get(shape);
  if (known) return known;
  /** @type {[number, number]} */
  const measured = [label.offsetWidth || 56, label.offsetHeight || 20];
  if (label.offsetWidth) SIZES.set(shape, measured);
  return measured;
}

export class Labels {
  /** @param {import('./stage.js').StageElement} stage */
  constructor(stage) {
    this.stage = stage;
    this.letters = { left: stage.querySelector('[data-side=left]'), right: stage.querySelector('[data-side=right]') };
    this.link = stage.querySelector('.link-label');
    this.now = this.link.children[0];
    this.most = this.link.children[1];
    this.best = stage.querySelector('.best-label');
    this.word = stage.querySelector('.grab-word');
    this.spot = [0, 0, 0];
    this.place = new Float32Array(3);
    this.wide = 56; // pixels
    this.high = 20;
    this.bestWide = this.bestHigh = 0;
    this.stood = 0; // which of the places about the link the label has
  }

  follow() {
    const { camera, picture, session, asked } = this.stage;
    for (const side of ['left', 'right']) {
      const p = asked ? picture.hands[side] : session.scene.at(side + '.head', this.stage.clock.phase, this.place);
      if (camera.project(p[0], p[1], p[2], this.spot)) move(this.letters[side], Math.max(6, this.spot[0] - 17), this.spot[1] + 15);
    }
    this.#apart();
    this.#atBest();
  }

  // The label says what the strip says, the distance in the plane at this moment, and how far that goes over the cycle, as the
  // sentence over the stage has it.
  #apart() {
    const { camera, picture, session, clock } = this.stage;
    this.link.hidden = !picture.linkShown;
    if (!picture.linkShown) return;
    const { gap_m: open, tolerance_m: breadth = 0.08 } = session.now.strip;
    const now = open[Math.floor(clock.phase * open.length) % open.length];
    const text = length(now);
    const most = session.aside || session.show !== 'ideal' ? text : this.#mostApart(text);
    if (this.said !== text + most) {
      this.said = text + most;
      this.now.textContent = text;
      this.most.textContent = most === text ? '' : ' up to ' + most;
      this.link.classList.toggle('closed', now <= breadth);
      [this.wide, this.high] = size(this.link, text + most, !!session.dragging);
    }
    const t = picture.link;
    if (!camera.project((t[0] + t[3]) / 2, (t[1] + t[4]) / 2, (t[2] + t[5]) / 2, this.spot)) return;
    const [x, y] = this.#clear(this.spot[0], this.spot[1]);
    move(this.link, x, y);
  }

  // While a hand drags, the readings may be those of an earlier move: then the strip tells it.
  #mostApart(text) {
    const { answer } = this.stage.session;
    if (answer.untold) return length(Math.max(...answer.strip.gap_m));
    const link = linkOf(answer);
    return link ? length(link.inplane_gap_m) : text;
  }

  // The ghost of how the hand path would lie at best, with how far apart they then are at most.
  #atBest() {
    const { camera, session } = this.stage;
    const found = this.stage.asked && !session.dragging && !session.aside ? this.stage.best.found : null;
    this.best.hidden = !found;
    if (!found) return;
    if (this.bestOf !== found) {
      this.bestOf = found;
      const link = linkOf(session.answer);
      const said = length(found.gap);
      // What the reading calls at best forgets the time; where that is less, this is the best that placing alone brings.
      const text = (link && length(link.shape_gap_m) === said ? 'at best ' : 'placed best ') + said;
      this.best.textContent = text;
      this.best.setAttribute('aria-label', `${text}: put the ${found.rider} hand there`);
      [this.bestWide, this.bestHigh] = size(this.best, text, false);
    }
    const seen = camera.project(found.top[0], found.top[1], found.top[2], this.spot);
    const edges = this.stage.edges;
    if (!seen) return;
    const x = Math.max(6, Math.min(camera.width - edges.right - this.bestWide - 6, this.spot[0] - this.bestWide / 2));
    const y = Math.max(edges.above + 4, this.spot[1] - this.bestHigh - 6);
    move(this.best, x, y);
  }

  // The first place about a point that no handle lies in; where it stands it stays, while it can.
  #clear(x, y) {
    const half = this.stage.handles.size / 2 + 2;
    const { wide, high } = this;
    const at = (i) => [x + (PLACES[i][0] === -1 ? -12 - wide : PLACES[i][0]), y + PLACES[i][1]];
    const free = (i) => {
      const [left, top] = at(i);
      return this.stage.handles.places.every(([px, py]) => px + half < left || px - half > left + wide || py + half < top || py - half > top + high);
    };
    if (!free(this.stood)) {
      const other = PLACES.findIndex((_, i) => free(i));
      this.stood = other < 0 ? 0 : other;
    } else if (this.stood > 0 && free(0)) {
      this.stood = 0;
    }
    return at(this.stood);
  }

  /** Says beside a place what would move, or moves; nothing where there is nothing to say. */
  tell(text, x = 0, y = 0) {
    const { word } = this;
    word.hidden = !text;
    if (!text) return;
    if (word.textContent !== text) {
      word.textContent = text;
      this.wordWide = size(word, text, !!this.stage.session.dragging)[0];
    }
    const { width, height } = this.stage.camera;
    const left = x + 18 + this.wordWide > width - 6 ? x - 18 - this.wordWide : x + 18;
    move(word, Math.max(6, left), Math.min(height - 34, y + 16));
  }
}
