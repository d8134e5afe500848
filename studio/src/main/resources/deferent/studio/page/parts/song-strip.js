import { html, nothing } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { after, placeOf } from '../state/song.js';

const USUAL = 64; // pixels a second
const MOST = 512;
const GRAB = 24; // pixels between two beats from which on each can be grabbed
const HEIGHT = 150; // as in css/song.css
const TOP = 22; // where bars begin, below their numbers
const FOOT = 24; // what counts stand in
const STEP = 0.01; // seconds that an arrow key moves a beat

/** The song along its time: how loud it is, its beats and its bars, of which single beats can be grabbed. */
class SongStrip extends Part {
  /** @type {import('../state/song.js').Song} */
  song = /** @type {any} */ (undefined);
  /** @type {import('../state/song-player.js').SongPlayer} */
  player = /** @type {any} */ (undefined);
  scale = USUAL; // pixels a second
  /** A beat that is dragged. @type {{ beat: number, to: number } | null} */
  drag = null;

  /**
   * @param {import('../main.js').Desk} desk
   * @param {import('../state/song.js').Song} song
   * @param {import('../state/song-player.js').SongPlayer} player
   */
  with(desk, song, player) {
    if (this.desk) return;
    Object.assign(this, { song, player });
    super.connect(desk);
    song.addEventListener('state', () => this.requestUpdate());
    player.addEventListener('state', () => this.requestUpdate());
    player.addEventListener('tick', () => this.#tick());
    new ResizeObserver(() => this.requestUpdate()).observe(this);
  }

  get seconds() {
    return this.song.heard?.seconds ?? this.player.seconds;
  }

  /** @returns {HTMLElement} */
  get #scroll() {
    return /** @type {HTMLElement} */ (this.querySelector('.song-scroll'));
  }

  get #least() {
    return this.seconds ? Math.min(USUAL, this.clientWidth / this.seconds) : USUAL;
  }

  /** Whether there is room to grab a beat. */
  get #roomy() {
    const { heard } = this.song;
    return !!heard && (60 / heard.beats_per_min) * this.scale >= GRAB;
  }

  render() {
    const { seconds } = this;
    const scale = (this.scale = Math.max(this.#least, Math.min(MOST, this.scale)));
    const { heard, chosen } = this.song;
    return html`<div class="song-scroll" role="group" tabindex="0" aria-label="The song along its time" @scroll=${() => this.requestUpdate()}>
        <div class="song-all" style="width: ${Math.max(1, Math.floor(seconds * scale))}px" @click=${this.#pressed}>
          <canvas height=${HEIGHT} aria-hidden="true"></canvas>
          ${this.#beats()}
          <div class="song-line" aria-hidden="true"></div>
        </div>
      </div>
      <div class="song-zoom">
        <button type="button" class="icon" aria-label="Closer together" ?disabled=${scale <= this.#least} @click=${() => this.#zoom(scale / 2)}>−</button>
        <button type="button" class="icon" aria-label="Farther apart" ?disabled=${scale >= MOST} @click=${() => this.#zoom(scale * 2)}>+</button>
        <button type="button" ?disabled=${scale <= this.#least} @click=${() => this.#zoom(0)}>All of it</button>
      </div>
      ${heard ? html`<p class="song-where">${chosen !== null ? beatSaid(heard, chosen) : this.#roomy ? 'Press a beat to choose it, and drag it to where you hear it.' : 'With + beats go farther apart, until each can be dragged.'}</p>` : nothing}
      <p class="quiet" id="song-keys">Arrow keys go from beat to beat; with Shift they move the beat by a hundredth of a second.</p>`;
  }

  /** Those that are seen, where there is room to grab one. */
  #beats() {
    const { song, scale } = this;
    const { heard } = song;
    const scroll = this.#scroll;
    if (!heard || !scroll || !this.#roomy) return nothing;
    const times = heard.beats_s;
    const from = after(times, (scroll.scrollLeft - GRAB) / scale);
    const to = after(times, (scroll.scrollLeft + scroll.clientWidth + GRAB) / scale);
    const seen = times.slice(from, to).map((_, i) => from + i);
    const stop = song.chosen !== null && seen.includes(song.chosen) ? song.chosen : from;
    return repeat(seen, (/** @type {number} */ beat) => beat, (/** @type {number} */ beat) => html`<button type="button" class="song-beat" data-beat=${beat} tabindex=${beat === stop ? 0 : -1}
      aria-pressed=${beat === song.chosen} aria-label=${beatSaid(heard, beat)} aria-describedby="song-keys" style="left: ${this.#time(beat) * scale}px"
      @pointerdown=${(/** @type {PointerEvent} */ e) => this.#grabbed(e, beat)} @click=${(/** @type {MouseEvent} */ e) => e.detail === 0 && this.#chosen(beat)}
      @keydown=${(/** @type {KeyboardEvent} */ e) => this.#key(e, beat)}></button>`);
  }

  /** When a beat falls, as it stands under the pointer. @param {number} beat */
  #time(beat) {
    const { heard } = this.song;
    return this.drag?.beat === beat ? this.drag.to : (heard?.beats_s[beat] ?? 0);
  }

  /** @param {number} beat */
  #chosen(beat) {
    this.song.choose(beat);
    this.player.seek(this.#time(beat));
  }

  /** @param {number} scale */
  #zoom(scale) {
    const scroll = this.#scroll;
    const line = this.player.time * this.scale - scroll.scrollLeft;
    // About the line where that is seen, else about the middle.
    const about = line >= 0 && line <= scroll.clientWidth ? line : scroll.clientWidth / 2;
    const time = (scroll.scrollLeft + about) / this.scale;
    this.scale = Math.max(this.#least, Math.min(MOST, scale));
    this.requestUpdate();
    this.updateComplete.then(() => {
      scroll.scrollLeft = time * this.scale - about;
      this.requestUpdate();
    });
  }

  // Pointers and keys -------------------------------------------------------------------------------------------------------------

  /** Beside the beats: the song goes on from there. @param {MouseEvent} event */
  #pressed = (event) => {
    if (/** @type {Element} */ (event.target).closest('.song-beat')) return;
    const all = /** @type {HTMLElement} */ (event.currentTarget).getBoundingClientRect();
    this.player.seek((event.clientX - all.left) / this.scale);
  };

  /** @param {PointerEvent} event @param {number} beat */
  #grabbed(event, beat) {
    if (event.button > 0) return;
    event.stopPropagation();
    const { song, scale } = this;
    const handle = /** @type {HTMLElement} */ (event.currentTarget);
    const from = event.clientX;
    const was = this.#time(beat);
    let carried = false;
    handle.setPointerCapture(event.pointerId);
    const moved = (/** @type {PointerEvent} */ e) => {
      carried ||= Math.abs(e.clientX - from) > 3;
      if (!carried) return;
      this.drag = { beat, to: song.between(beat, was + (e.clientX - from) / scale) };
      this.requestUpdate();
    };
    const over = (/** @type {PointerEvent} */ e) => {
      for (const [what, does] of /** @type {const} */ ([['pointermove', moved], ['pointerup', over], ['pointercancel', over]])) handle.removeEventListener(what, does);
      const { drag } = this;
      this.drag = null;
      song.choose(beat);
      if (drag && e.type === 'pointerup') song.move(beat, drag.to);
      else if (!carried) this.#chosen(beat);
      this.requestUpdate();
    };
    handle.addEventListener('pointermove', moved);
    handle.addEventListener('pointerup', over);
    handle.addEventListener('pointercancel', over);
  }

  /** @param {KeyboardEvent} event @param {number} beat */
  #key(event, beat) {
    const by = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    const { song } = this;
    if (!by || event.ctrlKey || event.altKey || event.metaKey || !song.heard) return;
    event.preventDefault();
    event.stopPropagation();
    if (event.shiftKey) {
      song.choose(beat);
      song.move(beat, song.heard.beats_s[beat] + by * STEP);
      return;
    }
    const next = Math.max(0, Math.min(song.heard.beats_s.length - 1, beat + by));
    this.#chosen(next);
    this.show(song.heard.beats_s[next]);
    this.updateComplete.then(() => /** @type {HTMLElement | null} */ (this.querySelector(`[data-beat="${next}"]`))?.focus({ preventScroll: true }));
  }

  /** Brings a time into view. @param {number} time */
  show(time) {
    const scroll = this.#scroll;
    const x = time * this.scale - scroll.scrollLeft;
    if (x < 0.05 * scroll.clientWidth || x > 0.85 * scroll.clientWidth) scroll.scrollLeft = time * this.scale - 0.15 * scroll.clientWidth;
  }

  // Drawing -----------------------------------------------------------------------------------------------------------------------

  #tick() {
    const line = /** @type {HTMLElement | null} */ (this.querySelector('.song-line'));
    if (!line) return;
    const { time, playing } = this.player;
    line.style.transform = `translateX(${time * this.scale}px)`;
    if (playing && !this.drag) this.show(time);
  }

  updated() {
    this.#tick();
    this.#draw();
    // What is seen is known once there is something to scroll.
    if (this.song.heard && !this.drawn) {
      this.drawn = true;
      this.requestUpdate();
    }
  }

  drawn = false;

  #draw() {
    const canvas = /** @type {HTMLCanvasElement} */ (this.querySelector('canvas'));
    const scroll = this.#scroll;
    const width = scroll.clientWidth;
    const sharp = devicePixelRatio || 1;
    if (!width) return;
    canvas.width = Math.round(width * sharp);
    canvas.height = Math.round(HEIGHT * sharp);
    canvas.style.width = width + 'px';
    canvas.style.height = HEIGHT + 'px';
    const paper = /** @type {CanvasRenderingContext2D} */ (canvas.getContext('2d'));
    paper.scale(sharp, sharp);
    const { heard } = this.song;
    if (!heard) return;
    const style = getComputedStyle(this);
    const ink = (/** @type {string} */ name) => style.getPropertyValue(name);
    const left = scroll.scrollLeft;
    const { scale } = this;
    this.#loud(paper, heard, left, width, ink('--song-loud'));
    const from = Math.max(0, after(heard.beats_s, (left - 40) / scale));
    const to = after(heard.beats_s, (left + width + 40) / scale);
    const apart = (60 / heard.beats_per_min) * scale;
    const every = thinned(apart * heard.beats_a_bar);
    const bottom = HEIGHT - FOOT;
    paper.font = '12px ' + ink('--sans');
    paper.textAlign = 'center';
    for (let beat = from; beat < to; beat++) {
      const { bar, count } = placeOf(heard, beat);
      const x = this.#time(beat) * scale - left;
      const first = count === 1;
      if (first && (bar - 1) % every === 0 && bar > 0) {
        paper.fillStyle = ink('--text');
        paper.fillText(String(bar), x, 14);
      }
      if (first ? apart * heard.beats_a_bar >= 4 || (bar - 1) % every === 0 : apart >= 5) {
        paper.fillStyle = ink(first ? '--text' : '--muted');
        paper.fillRect(x - (first ? 1 : 0.5), first ? TOP : bottom - 34, first ? 2 : 1, first ? bottom - TOP : 34);
      }
      if (apart >= GRAB && bar > 0) {
        paper.fillStyle = ink(first ? '--text' : '--muted');
        paper.fillText(String(count), x, HEIGHT - 8);
      }
    }
    paper.fillStyle = ink('--song-tap');
    for (const tap of this.song.taps) paper.fillRect(tap * scale - left - 1.5, bottom - 8, 3, 16);
  }

  /** @param {CanvasRenderingContext2D} paper @param {import('../state/song.js').Heard} heard @param {number} left @param {number} width @param {string} ink */
  #loud(paper, { loud, loud_per_s }, left, width, ink) {
    const most = loud.reduce((a, b) => Math.max(a, b), 1e-3);
    const height = HEIGHT - FOOT - TOP;
    const perPixel = loud_per_s / this.scale;
    paper.fillStyle = ink;
    paper.beginPath();
    paper.moveTo(0, HEIGHT - FOOT);
    for (let x = 0; x <= width; x++) {
      const at = (left + x) * perPixel;
      let now = 0;
      if (perPixel < 1) {
        // Between two that are known, evenly.
        const on = Math.max(0, Math.floor(at - 0.5));
        const share = Math.max(0, Math.min(1, at - 0.5 - on));
        now = (loud[on] ?? 0) * (1 - share) + (loud[on + 1] ?? loud[on] ?? 0) * share;
      } else {
        for (let k = Math.floor(at); k < at + perPixel; k++) now = Math.max(now, loud[k] ?? 0);
      }
      paper.lineTo(x, HEIGHT - FOOT - (height * now) / most);
    }
    paper.lineTo(width, HEIGHT - FOOT);
    paper.fill();
  }
}

/** Every so many bars have their number, that they do not touch. @param {number} apart pixels between two bars */
function thinned(apart) {
  let every = 1;
  while (apart * every < 34) every *= 2;
  return every;
}

/** A beat in words. @param {import('../state/song.js').Heard} heard @param {number} beat */
export function beatSaid(heard, beat) {
  const { bar, count } = placeOf(heard, beat);
  const place = bar > 0 ? `bar ${bar}, beat ${count}` : 'before the first bar';
  return `Beat ${beat + 1}: ${place}, at ${heard.beats_s[beat].toFixed(2)} s`;
}

customElements.define('song-strip', SongStrip);
