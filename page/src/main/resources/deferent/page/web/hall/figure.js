// The big figure: one pattern on the whole screen, as the audience sees it, as in a mirror or with the performer's own eyes.

import { Camera } from '../stage/camera.js';
import { FlatDrawer } from '../stage/flat.js';
import { inks } from '../stage/ink.js';
import { Picture } from '../stage/picture.js';
import { Scene, TRACKS } from '../stage/scene.js';

const STAYS = 0.5; // how much of the cycle a trail takes to fade
const THICK = 2; // times as thick, to be seen from afar
const ASIDE = Math.tan((65 * Math.PI) / 180); // so far to a side own eyes have it in the picture; our choice
const LEVEL = 0.5; // seen more from the side than this no side of the picture is the left: the cosine of sixty degrees
const SLANT = [0.56, 0.42]; // radians, where no one side shows both hands

/** @type {Record<string, string>} */
const OTHER = { left: 'right', right: 'left' };
/** @type {Record<string, string>} */
const STANDS = { above: 'above', side: 'side' };

/** @typedef {{ above: number, right: number, below: number, left: number }} Margins */
/** @typedef {{ least: number[], most: number[] }} Box metres */

export class HallFigure {
  /** @param {HTMLCanvasElement} canvas */
  constructor(canvas) {
    this.canvas = canvas;
    /** @type {any} */
    this.scene = new Scene();
    this.camera = new Camera();
    this.picture = new Picture();
    this.drawer = new FlatDrawer(canvas);
    this.drawn = 0; // pictures drawn so far
    this.view = 'audience';
    this.hand = 'both';
    this.far = false;
    this.stand = 'front';
    /** @type {any} */
    this.sent = null;
    /** @type {Box | null} */
    this.held = null;
    /** @type {any} */
    this.ink = null;
    /** @type {Margins} */
    this.margins = { above: 24, right: 24, below: 24, left: 24 };
    this.glow = 1;
    this.turns = 0; // of the faster poi, a second at the pattern's own tempo
    this.spot = [0, 0, 0];
    this.show = { link: false, body: true, path: true, figure: true, trail: true };
  }

  /**
   * Another pattern.
   *
   * @param {any} sent its scene
   * @param {string} stand from which side its planes show: front, above, side or slant
   */
  load(sent, stand) {
    this.sent = sent;
    this.stand = stand;
    this.#read();
  }

  /** From now on framed to that box, whatever is drawn; each to its own without one. @param {Box | null} box */
  hold(box) {
    this.held = box;
  }

  /** @param {string} hand both, left or right */
  alone(hand) {
    this.hand = hand;
    this.#read();
  }

  // What the other hand has is left out of the scene, and its arm rests where it began.
  #read() {
    const { sent, scene, hand } = this;
    if (!sent) return;
    const other = OTHER[hand];
    const items = other ? sent.items.filter((/** @type {any} */ item) => item.side !== other && item.role !== 'link') : sent.items;
    scene.read({ scene: { ...sent, items } });
    this.turns = scene.turnsPerSecond();
    if (other) {
      const at = scene.tracks[hand + '.hand'].slice(0, 3);
      for (const end of ['.hand', '.head']) for (let i = 0; i < scene.count; i++) scene.tracks[other + end].set(at, 3 * i);
      if (scene.person) {
        for (const limb of scene.person.limbs) if (limb.group.startsWith(other)) for (const ball of limb.balls) scene.person.moves[ball]?.set(stillness(scene.person.moves[ball]));
      }
    }
    this.drawer.load(scene);
    this.#frame();
  }

  /** @param {string} view audience, mirror or eyes */
  see(view) {
    this.view = view;
    this.#frame();
  }

  /** Where it may be drawn, and in which inks. @param {Margins} margins */
  resize(margins) {
    this.margins = margins;
    const box = /** @type {HTMLElement} */ (this.canvas.parentElement);
    const { clientWidth: width, clientHeight: height } = box;
    if (!width || !height) return;
    const thick = this.far ? THICK : 1;
    this.drawer.resize(width / thick, height / thick, thick * Math.min(2, devicePixelRatio || 1));
    this.camera.resize(width / thick, height / thick);
    Object.assign(this, inks(this.canvas));
    this.#frame();
  }

  #frame() {
    const { camera, margins } = this;
    const thick = this.far ? THICK : 1;
    const own = this.view === 'eyes';
    camera.see(own ? 'eyes' : (STANDS[this.stand] ?? 'audience'));
    if (own) camera.eyes = this.scene.person ? this.scene.person.eyes() : [0, 0.28, 0];
    if (!own && this.stand === 'slant') [camera.turn, camera.lift] = SLANT;
    if (this.view === 'mirror') camera.flip = -1;
    camera.settle();
    const { least, most } = this.held ?? this.scene.box();
    if (least[0] > most[0]) return;
    camera.frame(least, most, { above: margins.above / thick, right: margins.right / thick, below: margins.below / thick, left: margins.left / thick });
    if (own) this.#widen();
  }

  // On a narrow screen own eyes see as far to the sides as the figure goes, up to where it passes beside the head.
  #widen() {
    const { camera, scene, spot } = this;
    let wide = 0;
    for (const track of TRACKS) {
      const xyz = scene.tracks[track];
      for (let i = 0; i < xyz.length; i += 3) {
        if (!camera.project(xyz[i], xyz[i + 1], xyz[i + 2], spot)) continue;
        const aside = Math.abs(spot[0] - camera.width / 2 - camera.aside[0]) / camera.scale;
        if (aside < ASIDE) wide = Math.max(wide, aside);
      }
    }
    const half = camera.width / 2 - this.margins.left;
    if (wide * camera.scale <= half) return;
    camera.field = 2 * Math.atan((camera.height * wide) / (2 * half));
    camera.settle();
  }

  /** On which side of the picture the performer's left is; empty where neither shows it. */
  get left() {
    const { flip, right } = this.camera;
    const across = flip * right[0];
    return Math.abs(across) < LEVEL ? '' : across > 0 ? 'right' : 'left';
  }

  /** Where a moving point is drawn at a share of the cycle, CSS pixels from the upper left. @param {string} track @param {number} share */
  place(track, share) {
    const at = this.scene.at(track, share, [0, 0, 0]);
    this.camera.project(at[0], at[1], at[2], this.spot);
    const thick = this.far ? THICK : 1;
    return [thick * this.spot[0], thick * this.spot[1]];
  }

  /** @param {number} share of the cycle */
  draw(share) {
    if (!this.ink || !this.sent) return;
    this.drawn++;
    this.picture.compose(this.scene, share, this.ink, this.show, 1);
    this.drawer.draw(this.picture, this.camera, { ink: this.ink, phase: share, fade: STAYS, show: this.show, glow: this.glow });
  }
}

/** The first of its points over and over. @param {Float32Array | null} xyz */
function stillness(xyz) {
  const all = new Float32Array(xyz ? xyz.length : 0);
  if (xyz) for (let i = 0; i < all.length; i++) all[i] = xyz[i % 3];
  return all;
}
