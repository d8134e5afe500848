// From where the stage is looked at: the views, how the figure is framed in what is free, and turning by pointer, fingers and keys.
//
// One finger never turns the view, so that a thumb that only swipes leaves the figure as it was: two fingers turn it and, spread or
// pinched, bring it nearer or further. A mouse turns it by dragging where nothing else is to be had.

import { STANDS } from './camera.js';
import { ARROWS } from './handles.js';

/** A hand that goes further across its plane passes from one side to the other, metres (our choice). */
const ACROSS = 0.2;
const GLIDE = 260; // milliseconds the view takes from one framing to the next
const TURN = 520; // and from one view to another
const AIR = 16; // pixels round the figure, so that a head's mark and its glow are whole

export class Look {
  /** @param {import('./stage.js').StageElement} stage */
  constructor(stage) {
    this.stage = stage;
    this.fingers = new Map();
    this.planes = ''; // in which the pattern on the stage lies, where both hands' are alike
  }

  /** @param {string} view one of STANDS */
  see(view, glide = true) {
    const { camera, session } = this.stage;
    if (!STANDS.includes(view)) return;
    const was = camera.stand;
    camera.see(view);
    if (session && session.answer) {
      this.#framed();
      this.#lead(was, glide ? TURN : 0);
    }
    this.stage.draw();
    this.stage.dispatchEvent(new CustomEvent('viewed'));
  }

  /** @param {number} by 1 or −1 */
  next(by = 1) {
    const n = STANDS.length;
    this.see(STANDS[(STANDS.indexOf(this.stage.camera.view) + by + n) % n]);
  }

  /** Stands where the figure fills what is free of the stage. */
  frame(glide = false) {
    const { camera, session } = this.stage;
    if (!session || !session.answer) return;
    const was = camera.stand;
    this.#framed();
    this.#lead(was, glide ? GLIDE : 0);
    this.stage.draw();
  }

  get #session() {
    return /** @type {import('../state/session.js').Session} */ (this.stage.session);
  }

  #framed() {
    const { camera } = this.stage;
    const { scene } = this.#session;
    const { least, most } = scene.box();
    const edges = (this.stage.edges = this.stage.covered());
    camera.eyes = scene.person?.eyes() || camera.eyes;
    camera.frame(least, most, { above: edges.above + AIR, right: edges.right + AIR, below: edges.below + AIR, left: edges.left + AIR });
    this.framed = [...least, ...most];
  }

  /**
   * Leads the onlooker over from where he stood to where he now is to stand; at once where calm is asked for.
   *
   * @param {number[]} from
   * @param {number} lasting milliseconds
   */
  #lead(from, lasting) {
    const { camera, clock } = this.stage;
    const to = camera.stand;
    this.gliding = null;
    if (!lasting || clock?.calm.matches || from.every((v, i) => Math.abs(v - to[i]) < 1e-9)) return;
    // The shorter way round.
    from[6] = to[6] + Math.atan2(Math.sin(from[6] - to[6]), Math.cos(from[6] - to[6]));
    const start = performance.now();
    const run = {};
    this.gliding = run;
    const step = () => {
      if (this.gliding !== run) return;
      const t = Math.min(1, (performance.now() - start) / lasting);
      const share = t * t * (3 - 2 * t);
      camera.stand = from.map((v, i) => v + share * (to[i] - v));
      if (t < 1) requestAnimationFrame(step);
      else this.gliding = null;
      this.stage.draw();
    };
    step();
  }

  /** A figure that has become another size is framed anew; one that only moved a little stays where the eye has it. */
  frameIfNeeded() {
    const { least, most } = this.#session.scene.box();
    const was = this.framed;
    const size = was ? Math.max(was[3] - was[0], was[4] - was[1], was[5] - was[2]) : 0;
    if (!was || [...least, ...most].some((v, i) => Math.abs(v - was[i]) > 0.08 * size)) this.frame(!!was);
  }

  /**
   * A pattern in level planes is seen from above, one in wheel planes from the side, any other as the audience sees it, and so what
   * passes across its planes, which would cover itself; whoever has chosen a view keeps it until the planes change.
   *
   * @param {import('./handles.js').Handle[]} handles
   */
  suit(handles) {
    const normals = handles.filter((h) => h.key.endsWith('.centre')).map((h) => h.plane.normal);
    const along = (/** @type {number} */ k) => normals.length > 0 && normals.every((n) => Math.abs(n[k]) > 0.9) && this.#wide(k) < ACROSS;
    const planes = along(1) ? 'floor' : along(0) ? 'wheel' : 'other';
    if (planes === this.planes) return;
    const first = this.planes === '';
    this.planes = planes;
    const view = { floor: 'above', wheel: 'side', other: 'audience' }[planes];
    if (view !== this.stage.camera.view) this.see(view, !first);
  }

  // How far a hand goes to and fro along an axis, metres.
  /** @param {number} k */
  #wide(k) {
    const tracks = /** @type {Record<string, Float32Array>} */ (this.#session.scene.tracks);
    return Math.max(...['left.hand', 'right.hand'].map((track) => {
      const at = (tracks[track] ?? new Float32Array()).filter((_, i) => i % 3 === k);
      return at.length ? Math.max(...at) - Math.min(...at) : 0;
    }));
  }

  #moved() {
    this.gliding = null;
    this.stage.draw();
    this.stage.dispatchEvent(new CustomEvent('viewed'));
  }

  /** Fingers and the mouse, wherever on the stage they come down: a handle under one finger does not keep two from turning the view. */
  listen() {
    const { camera, canvas } = this.stage;
    const { fingers, stage } = this;
    stage.addEventListener('pointerdown', (event) => {
      const touch = event.pointerType === 'touch';
      if (/** @type {Element} */ (event.target).closest('.over') || (stage.grip && !touch)) return;
      if (!touch) canvas.setPointerCapture(event.pointerId);
      fingers.set(event.pointerId, [event.clientX, event.clientY]);
      if (fingers.size > 1) stage.grab?.letGo(false);
    });
    stage.addEventListener('pointermove', (event) => {
      const was = fingers.get(event.pointerId);
      if (!was) return;
      const now = [event.clientX, event.clientY];
      fingers.set(event.pointerId, now);
      if (stage.grip) return;
      const [dx, dy] = [now[0] - was[0], now[1] - was[1]];
      if (fingers.size === 1) {
        if (event.pointerType === 'touch') return;
        camera.orbit(-dx * 0.006, dy * 0.005);
      } else {
        // Each of two fingers turns by half of what it moves.
        camera.orbit(-dx * 0.004, dy * 0.0035);
        const other = /** @type {[number, number[]]} */ ([...fingers].find(([id]) => id !== event.pointerId))[1];
        const before = Math.hypot(was[0] - other[0], was[1] - other[1]);
        const after = Math.hypot(now[0] - other[0], now[1] - other[1]);
        if (before > 0 && after > 0) camera.zoom(before / after);
      }
      this.#moved();
    });
    const lift = (/** @type {PointerEvent} */ event) => fingers.delete(event.pointerId);
    stage.addEventListener('pointerup', lift);
    stage.addEventListener('pointercancel', lift);
  }

  /** @param {HTMLCanvasElement} canvas */
  listenCanvas(canvas) {
    const { camera } = this.stage;
    canvas.addEventListener(
      'wheel',
      (event) => {
        event.preventDefault();
        camera.zoom(Math.exp(event.deltaY * 0.0012));
        this.#moved();
      },
      { passive: false },
    );
    canvas.addEventListener('keydown', (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const way = /** @type {Record<string, number[]>} */ (ARROWS)[event.key];
      if (way) camera.orbit(way[0] * 0.1, way[1] * 0.08);
      else if (event.key === '+' || event.key === '=') camera.zoom(0.9);
      else if (event.key === '-') camera.zoom(1.1);
      else if (event.key === 'Home' || event.key === '0') this.see(camera.view, false);
      else return;
      event.preventDefault();
      event.stopPropagation();
      this.#moved();
    });
  }
}
