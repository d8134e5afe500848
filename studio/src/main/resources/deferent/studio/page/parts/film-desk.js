import { html, nothing } from 'lit';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { Film, shareAt } from '../state/film.js';

const SPEEDS = [[1, 'as filmed'], [0.5, 'half as fast'], [0.25, 'a quarter']];
const LOOKS = /** @type {const} */ ({ light: 'Light', meant: 'What was meant', hands: 'Hands' });
// Of what is told, what a tap on both heads may settle.
const UNSURE = ['film.unsure', 'film.seen', 'film.sides', 'film.rather'];
/** @type {[string, string, string, string][]} */
const AWAY_AS = [
  ['What was meant over it', 'mp4', 'over', 'The film with what was meant, the light and the hands over it'],
  ['Side by side', 'mp4', 'beside', 'The film, and beside it what was meant'],
  ['Light that grows', 'mp4', 'exposure', 'A long exposure that grows over the film'],
  ['Light as a picture', 'png', 'exposure', 'The light of the whole film as one long exposure'],
  ['This moment', 'png', 'over', 'A picture of the moment shown, with all laid over it'],
  ['Drawing', 'svg', '', 'What was meant over the light, for drawing programs'],
  ['Table', 'csv', '', 'One cycle of hands and heads as numbers'],
];
const ARM = [0.3, 1]; // metres, as under Sizes
const DASH = { left: [], right: [10, 6] };

/**
 * A film of practice, with what was meant laid over it: in sentences what is off, the worst first, each with the moment at which it is
 * seen, which the film then loops. The picture stays in the browser; the studio beside it reads a copy that it throws away.
 */
class FilmDesk extends Part {
  /** @type {Film} */
  film = /** @type {any} */ (undefined);
  /** @type {Record<keyof typeof LOOKS, boolean>} */
  looks = { light: true, meant: true, hands: true };
  speed = 1;
  /** The stretch that is looped, seconds of the film. @type {[number, number] | null} */
  loop = null;
  /** What is pointed at. @type {'' | 'heads' | 'length'} */
  pointing = '';
  /** Two places whose distance is asked about, pixels of the picture. @type {[number, number][]} */
  ends = [];
  /** Where the cross stands that points by keyboard, shares of the picture. */
  cross = [0.5, 0.5];
  over = false; // whether a file is held over the page

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    this.film = new Film(desk.session);
    super.connect(desk);
    this.film.addEventListener('state', () => this.requestUpdate());
  }

  /** @returns {HTMLDialogElement} */
  get dialog() {
    return /** @type {HTMLDialogElement} */ (this.querySelector('dialog'));
  }

  /** @returns {HTMLVideoElement | null} */
  get video() {
    return this.querySelector('video');
  }

  open() {
    if (this.dialog.open) return;
    this.desk.clock.play(false);
    this.dialog.showModal();
    this.#draw();
  }

  render() {
    const { film } = this;
    return html`<dialog class="film" aria-labelledby="film-head" @close=${() => this.video?.pause()}
      @dragover=${(/** @type {DragEvent} */ e) => e.preventDefault()} @drop=${this.#drop}>
      <header><h2 id="film-head">Watch a film of practice</h2><button type="button" @click=${() => this.dialog.close()}>Close</button></header>
      ${film.file ? this.#watch() : this.#ask()}
    </dialog>`;
  }

  #ask() {
    return html`<div class="file-ask film-ask">
      <label class="file-drop film-drop"><input type="file" accept="video/*" @change=${this.#chosen}>
        <span>Drop a film here, or choose one</span></label>
      <ul>
        <li>Two lit poi in the dark, facing the camera.</li>
        <li>The camera stands still: prop it against a bag, some four metres away.</li>
        <li>Six turns or more, both poi in the picture.</li>
      </ul>
      <p class="quiet">The film stays on this machine. What is read from it is a help to look closer, not a judgement.</p>
    </div>`;
  }

  #watch() {
    const { film } = this;
    return html`<div class="film-room">
      <div class="film-picture">
        <div class="film-frame">
          <video src=${film.url} muted playsinline loop aria-label="The film" @loadedmetadata=${this.#loaded} @timeupdate=${this.#round} @play=${this.#draw} @seeked=${this.#draw}></video>
          <canvas aria-hidden="true"></canvas>
          ${this.pointing ? this.#points() : nothing}
        </div>
        ${this.pointing
          ? html`<p class="film-pointing" role="status"><b>${this.#invites()}</b> Tap it, or move the cross with the arrows and press Enter.
              <button type="button" @click=${() => this.#point('')}>Leave it</button></p>`
          : this.ends.length === 2
            ? this.#length()
            : nothing}
        <div class="film-bar">
          <button type="button" @click=${this.#play}>Play or pause</button>
          <label>Speed <select @change=${(/** @type {any} */ e) => this.#fast(Number(e.target.value))}>
            ${SPEEDS.map(([speed, says]) => html`<option value=${speed} ?selected=${this.speed === speed}>${says}</option>`)}</select></label>
          ${Object.entries(LOOKS).map(
            ([look, says]) => html`<label><input type="checkbox" .checked=${this.looks[/** @type {keyof typeof LOOKS} */ (look)]}
              @change=${(/** @type {any} */ e) => this.#look(look, e.target.checked)}> ${says}</label>`,
          )}
          ${this.loop ? html`<button type="button" @click=${() => this.#whole()}>The whole film</button>` : nothing}
        </div>
        ${film.watched ? this.#away() : nothing}
        <p class="quiet film-key">Left is a full line with a round head, right is dashed with a diamond; thin is what was meant. A pale disc is a hand, the larger the less sure.</p>
      </div>
      <div class="film-told" aria-live="polite">
        ${film.running ? html`<p>${film.doing} … ${Math.round(100 * film.share)} % <button type="button" @click=${() => film.stop()}>Stop</button></p>` : nothing}
        ${film.error ? html`<p class="told" data-tone="warn" role="alert">${sentence(film.error)}</p>` : nothing}
        ${film.watched ? this.#told(film.watched) : nothing}
        ${film.watched && !film.running ? this.#keeping() : nothing}
        ${this.#asksToPoint()}
        ${this.#wishes()}
      </div>
    </div>`;
  }

  /** @param {import('../state/film.js').Watched} watched */
  #told(watched) {
    const { findings } = watched.film;
    const isOff = (/** @type {import('../state/film.js').Told} */ told) => told.key.startsWith('film.off');
    const isName = (/** @type {import('../state/film.js').Told} */ told) => told.key === 'film.name' || told.key === 'film.rather';
    const off = watched.told.filter(isOff);
    return html`<ul class="film-says">
      ${watched.told.filter(isName).map((told) => html`<li class="told" data-tone=${told.tone}>${told.text}</li>`)}
      ${off.map(
        (told, i) => html`<li class="told" data-tone=${told.tone}>${told.text}
          ${findings[i] ? html`<button type="button" @click=${() => this.#see(findings[i].moment_s)}>See it</button>` : nothing}</li>`,
      )}
      ${watched.told.filter((told) => !isOff(told) && !isName(told)).map((told) => html`<li class="quiet">${told.text}</li>`)}
    </ul>`;
  }

  // What was read is kept beside the shelf at one press; over what was kept of it before only when that is said.
  #keeping() {
    const { kept } = this.film;
    return html`<p class="film-keep" role="status">
      ${kept?.told ? html`${kept.told} <button type="button" @click=${() => this.#weeks(kept.pattern)}>See the weeks</button>` : nothing}
      ${kept?.twin ? html`This film is kept already. <button type="button" @click=${() => this.film.keep(true)}>Replace it</button>` : nothing}
      ${kept?.error ? sentence(kept.error) : nothing}
      ${kept?.told || kept?.twin ? nothing : html`<button type="button" @click=${() => this.film.keep(false)}>Keep this practice</button>`}</p>`;
  }

  /** @param {string} [pattern] */
  #weeks(pattern) {
    this.dialog.close();
    this.desk.practice.open(pattern);
  }

  /** Offered where lights were not found or are unsure; else it stays out of the way. */
  #asksToPoint() {
    const { film } = this;
    if (film.running || this.pointing || !film.key) return nothing;
    if (film.heads.length === 2) {
      return html`<p class="quiet">You pointed at both lights. <button type="button" @click=${() => film.unpoint()}>Find them without me</button></p>`;
    }
    const unsure = film.error || film.watched?.told.some((told) => UNSURE.some((key) => told.key.startsWith(key)));
    if (!unsure) return nothing;
    return html`<p><button type="button" class="film-ask-point" @click=${() => this.#point('heads')}>Show me the two lights</button>
      <span class="quiet">Pause where both are clear, and tap each once.</span></p>`;
  }

  #away() {
    const { film } = this;
    return html`<section class="film-away" aria-label="Take it away">
      <h3>Take it away</h3>
      ${film.saving
        ? html`<p role="status"><progress max="1" .value=${film.saving.share} aria-label="Making it"></progress> ${film.saving.told || 'beginning'}
            <button type="button" @click=${() => film.stopSaving()}>Stop</button></p>`
        : html`<div class="film-away-as">${AWAY_AS.map(([says, as, form, means]) => html`<button type="button" title=${means} @click=${() => this.#save(as, form)}>${says}</button>`)}</div>`}
      ${film.saved ? html`<p role="status"><a href=${film.saved.file} download=${film.saved.name}>${film.saved.name}</a> <span class="quiet">${film.saved.told}</span></p>` : nothing}
    </section>`;
  }

  /** Films at the speed that is chosen, pictures of the moment that is shown. @param {string} as @param {string} form */
  #save(as, form) {
    /** @type {Record<string, string>} */
    const wishes = form ? { form } : {};
    if (as === 'mp4' && this.speed !== 1) wishes.slow = String(this.speed);
    if (as === 'png' && form === 'over' && this.video) wishes.at = String(Math.round(this.video.currentTime * 1000) / 1000);
    this.film.save(as, wishes);
  }

  #invites() {
    if (this.pointing === 'length') return this.ends.length ? 'Now its other end.' : 'Point at one end of what you want to measure.';
    return this.film.heads.length ? 'Now the right hand’s light.' : 'Point at the left hand’s light.';
  }

  /** How far two places are apart, by the film's scale; or the film's scale, where that is known. */
  #length() {
    const { film } = this;
    const [[ax, ay], [bx, by]] = this.ends;
    const apart = Math.hypot(bx - ax, by - ay);
    const scale = film.watched?.film.scale;
    const says = scale ? `By the film’s scale that is ${Math.round(100 * apart * scale.pixel_m)} cm, give or take ${Math.max(1, Math.round(200 * apart * scale.pixel_m * scale.error_share))} cm.` : '';
    return html`<p class="film-length" role="status">${says}
      <label>I know it: <input type="number" min="5" max="1000" step="1" aria-label="How long it is, cm" @change=${(/** @type {any} */ e) => {
        if (Number(e.target.value) > 0) film.wish({ pixel: Number(e.target.value) / 100 / apart });
      }}> cm</label>
      ${scale && ARM[0] <= apart * scale.pixel_m && apart * scale.pixel_m <= ARM[1]
        ? html`<button type="button" @click=${() => this.#arm(apart * scale.pixel_m)}>It is my arm, shoulder to grip: keep it</button>`
        : nothing}
      <button type="button" @click=${() => { this.ends = []; this.requestUpdate(); }}>Done</button></p>`;
  }

  /** Kept with the performer, as under Sizes. @param {number} metres */
  #arm(metres) {
    const { session } = this.desk;
    session.spin({ performer: { ...session.pattern.performer, arm_m: Math.round(100 * metres) / 100 } });
    this.ends = [];
    this.requestUpdate();
  }

  // Pointing at the heads -----------------------------------------------------------------------------------------------------------

  #points() {
    const [x, y] = this.cross;
    const box = this.#box();
    return html`<div class="film-points" @click=${this.#tapped}>
      <button type="button" class="film-cross" aria-label="Cross: arrows move it, Enter points" style="left: ${box.left + x * box.width}px; top: ${box.top + y * box.height}px"
        @keydown=${this.#moved} @click=${this.#pressed}></button>
    </div>`;
  }

  /** Where the film's picture lies in its frame, pixels of the page. */
  #box() {
    const { video } = this;
    if (!video || !video.videoWidth) return { left: 0, top: 0, width: 1, height: 1 };
    const { clientWidth, clientHeight } = video;
    const by = Math.min(clientWidth / video.videoWidth, clientHeight / video.videoHeight);
    const width = by * video.videoWidth;
    const height = by * video.videoHeight;
    return { left: (clientWidth - width) / 2, top: (clientHeight - height) / 2, width, height };
  }

  /** @param {'' | 'heads' | 'length'} on */
  #point(on) {
    // What was half pointed at is forgotten.
    if (on === 'heads' || (this.pointing === 'heads' && this.film.heads.length < 2)) this.film.unpoint();
    this.pointing = on;
    this.ends = [];
    this.video?.pause();
    this.requestUpdate();
    if (on) this.updateComplete.then(() => /** @type {HTMLElement | null} */ (this.querySelector('.film-cross'))?.focus());
  }

  /** @param {MouseEvent} event */
  #tapped = (event) => {
    const frame = /** @type {HTMLElement} */ (event.currentTarget).getBoundingClientRect();
    const box = this.#box();
    this.#pointed((event.clientX - frame.left - box.left) / box.width, (event.clientY - frame.top - box.top) / box.height);
  };

  /** By keyboard the cross points; by pointer what lies under it. @param {MouseEvent} event */
  #pressed = (event) => {
    if (event.detail !== 0) return;
    event.stopPropagation();
    this.#pointed(this.cross[0], this.cross[1]);
  };

  /** @param {KeyboardEvent} event */
  #moved = (event) => {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (!way) return;
    event.preventDefault();
    event.stopPropagation();
    const step = event.shiftKey ? 0.05 : 0.005;
    this.cross = this.cross.map((was, i) => Math.max(0, Math.min(1, was + step * way[i])));
    this.requestUpdate();
  };

  /** @param {number} x @param {number} y shares of the picture */
  #pointed(x, y) {
    const { video, film } = this;
    if (!video || x < 0 || x > 1 || y < 0 || y > 1) return;
    this.cross = [x, y];
    if (this.pointing === 'length') {
      this.ends = [...this.ends, [x * video.videoWidth, y * video.videoHeight]];
      if (this.ends.length === 2) this.pointing = '';
      this.requestUpdate();
      return;
    }
    film.point({ time_s: video.currentTime, x: x * video.videoWidth, y: y * video.videoHeight });
    if (film.heads.length === 2) this.pointing = '';
    this.requestUpdate();
  }

  #wishes() {
    const { film } = this;
    const { session } = this.desk;
    const stands = session.answer?.phrase || session.answer?.name;
    return html`<section class="film-wishes" aria-label="What is known of it">
      <fieldset><legend>Held against</legend>
        <label><input type="radio" name="film-against" .checked=${film.against} @change=${() => film.wish({ against: true })}> ${stands}</label>
        <label><input type="radio" name="film-against" .checked=${!film.against} @change=${() => film.wish({ against: false })}> nothing: name what is nearest</label>
      </fieldset>
      <label>Both tethers, cm <input type="number" min="10" max="500" step="1" .value=${film.tether ? String(Math.round(100 * film.tether)) : ''}
        placeholder="as meant" @change=${(/** @type {any} */ e) => film.wish({ tether: e.target.value ? Number(e.target.value) / 100 : null })}></label>
      <label>One pixel where you stand, mm <input type="number" min="0.1" max="100" step="0.1" .value=${film.pixel ? String(Math.round(1e4 * film.pixel) / 10) : ''}
        placeholder="find out" @change=${(/** @type {any} */ e) => film.wish({ pixel: e.target.value ? Number(e.target.value) / 1000 : null })}></label>
      <label>Whose light is further left at first <select @change=${(/** @type {any} */ e) => film.wish({ first: e.target.value || null })}>
        <option value="">find out</option><option value="left">the left hand’s</option><option value="right">the right hand’s</option></select></label>
      <label><input type="checkbox" .checked=${film.mirrored} @change=${(/** @type {any} */ e) => film.wish({ mirrored: e.target.checked })}> the film is mirrored</label>
      <fieldset class="film-part"><legend>Part of the film, seconds</legend>
        ${this.#end('from', 'from', 'its beginning')} ${this.#end('to', 'to', 'its end')}</fieldset>
      <button type="button" class="film-point-anyway" ?disabled=${!film.key || film.running} @click=${() => this.#point('heads')}>Point at the two lights</button>
      <button type="button" class="film-measure" ?disabled=${!film.key} @click=${() => this.#point('length')}>Measure something in the picture</button>
      <label class="file-other film-other"><span>Another film</span> <input type="file" accept="video/*" @change=${this.#chosen}></label>
    </section>`;
  }

  /** One end of the part that is watched. @param {'from' | 'to'} end @param {string} says @param {string} unsaid */
  #end(end, says, unsaid) {
    const { film } = this;
    return html`<label>${says} <input type="number" min="0" step="0.1" .value=${film[end] === null ? '' : String(film[end])} placeholder=${unsaid}
      @change=${(/** @type {any} */ e) => film.wish({ [end]: e.target.value ? Number(e.target.value) : null })}></label>`;
  }

  /** @param {Event} event */
  #chosen = (event) => {
    const [file] = /** @type {HTMLInputElement} */ (event.target).files ?? [];
    if (file) this.#take(file);
  };

  /** @param {DragEvent} event */
  #drop = (event) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) this.desk.drop(file);
  };

  /** @param {File} file */
  watch(file) {
    this.open();
    this.#take(file);
  }

  /** @param {File} file */
  #take(file) {
    this.loop = null;
    this.ends = [];
    this.pointing = '';
    this.film.take(file);
  }

  #loaded = () => {
    const { video } = this;
    if (!video) return;
    video.playbackRate = this.speed;
    this.#draw();
  };

  #play = () => {
    const { video } = this;
    if (!video) return;
    if (video.paused) video.play();
    else video.pause();
  };

  /** @param {number} speed */
  #fast(speed) {
    this.speed = speed;
    if (this.video) this.video.playbackRate = speed;
    this.requestUpdate();
  }

  /** @param {string} look @param {boolean} shown */
  #look(look, shown) {
    this.looks = { ...this.looks, [look]: shown };
    this.requestUpdate();
  }

  /** Loops one cycle about a moment, slowly. @param {number} moment */
  #see(moment) {
    const { video, film } = this;
    if (!video || !film.watched) return;
    const half = film.watched.over.period_s / 2;
    this.loop = [Math.max(0, moment - half), moment + half];
    video.currentTime = this.loop[0];
    this.#fast(0.5);
    if (!this.desk.clock.calm.matches) video.play();
  }

  #whole() {
    this.loop = null;
    this.requestUpdate();
  }

  #round = () => {
    const { video, loop } = this;
    if (video && loop && (video.currentTime >= loop[1] || video.currentTime < loop[0] - 0.1)) video.currentTime = loop[0];
  };

  updated() {
    this.#draw();
  }

  // What lies over the film at its moment; goes on by itself while it plays.
  #draw = () => {
    const { video, film } = this;
    const canvas = this.querySelector('canvas');
    if (!video || !canvas || !video.videoWidth) return;
    canvas.width = video.videoWidth;
    canvas.height = video.videoHeight;
    const paper = /** @type {CanvasRenderingContext2D} */ (canvas.getContext('2d'));
    if (film.watched && !this.pointing) this.#over(paper, film.watched.over, video.currentTime);
    for (const [x, y] of this.ends) dot(paper, [x, y], Math.max(6, canvas.height / 90), 1, false, '#fff');
    if (this.ends.length === 2) {
      paper.strokeStyle = '#fff';
      paper.setLineDash([]);
      cord(paper, this.ends[0], this.ends[1], Math.max(1, canvas.height / 360));
    }
    if (this.pointing) for (const head of film.heads) dot(paper, [head.x, head.y], Math.max(10, canvas.height / 60), 1, false, '#fff');
    cancelAnimationFrame(this.#next);
    if (!video.paused) {
      this.#round();
      this.#next = requestAnimationFrame(this.#draw);
    }
  };

  #next = 0;

  /**
   * @param {CanvasRenderingContext2D} paper
   * @param {import('../state/film.js').Over} over
   * @param {number} time
   */
  #over(paper, over, time) {
    const style = getComputedStyle(this);
    const thick = Math.max(1, paper.canvas.height / 360);
    const share = shareAt(over, time);
    for (const side of /** @type {const} */ (['left', 'right'])) {
      const { head, meant, meant_hand: meantHand, hands } = over.sides[side];
      paper.strokeStyle = paper.fillStyle = style.getPropertyValue('--film-' + side);
      paper.setLineDash(DASH[side].map((d) => d * thick));
      if (this.looks.light) path(paper, head, 2.2 * thick, 0.55);
      if (this.looks.meant) {
        path(paper, meant, 1.1 * thick, 1);
        mark(paper, side, at(meant, share), 5 * thick, 1, false);
        if (this.looks.hands) cord(paper, at(meantHand, share), at(meant, share), thick);
      }
      if (this.looks.light) mark(paper, side, at(head, share), 5 * thick, 0.9, true);
      if (this.looks.hands) {
        for (const hand of hands) dot(paper, [hand.x, hand.y], Math.max(2 * thick, hand.error), 0.05, true);
        const near = hands.find((hand) => Math.abs(hand.share - share) < 0.75 / head.length);
        if (near) {
          dot(paper, [near.x, near.y], Math.max(4 * thick, near.error), 0.7, true);
          cord(paper, [near.x, near.y], at(head, share), 1.5 * thick);
        }
      }
      const [x, y] = at(head, share);
      paper.globalAlpha = 1;
      paper.font = `${14 * thick}px sans-serif`;
      paper.fillText(side === 'left' ? 'L' : 'R', x + 9 * thick, y - 9 * thick);
    }
  }
}

/** @typedef {[number, number]} At */

/** @param {CanvasRenderingContext2D} paper @param {At[]} line @param {number} width @param {number} alpha */
function path(paper, line, width, alpha) {
  paper.beginPath();
  for (const [x, y] of line) paper.lineTo(x, y);
  paper.closePath();
  paper.lineWidth = width;
  paper.globalAlpha = alpha;
  paper.stroke();
}

/** @param {CanvasRenderingContext2D} paper @param {At} from @param {At} to @param {number} width */
function cord(paper, from, to, width) {
  path(paper, [from, to], width, 0.8);
}

/** @param {CanvasRenderingContext2D} paper @param {At} place @param {number} radius @param {number} alpha @param {boolean} full @param {string} [ink] */
function dot(paper, place, radius, alpha, full, ink) {
  paper.save();
  if (ink) paper.strokeStyle = paper.fillStyle = ink;
  paper.setLineDash([]);
  paper.globalAlpha = alpha;
  paper.lineWidth = radius / 3;
  paper.beginPath();
  paper.arc(place[0], place[1], radius, 0, 2 * Math.PI);
  if (full) paper.fill();
  else paper.stroke();
  paper.restore();
}

/**
 * A head: the left hand's is round, the right's a diamond, as on the stage.
 *
 * @param {CanvasRenderingContext2D} paper
 * @param {Protocol.Side} side
 * @param {At} place
 * @param {number} radius
 * @param {number} alpha
 * @param {boolean} full
 */
function mark(paper, side, place, radius, alpha, full) {
  if (side === 'left') {
    dot(paper, place, radius, alpha, full);
    return;
  }
  const r = 1.25 * radius;
  paper.save();
  paper.setLineDash([]);
  paper.globalAlpha = alpha;
  paper.lineWidth = radius / 3;
  paper.translate(...place);
  paper.rotate(Math.PI / 4);
  if (full) paper.fillRect(-0.75 * r, -0.75 * r, 1.5 * r, 1.5 * r);
  else paper.strokeRect(-0.75 * r, -0.75 * r, 1.5 * r, 1.5 * r);
  paper.restore();
}

/** @param {At[]} line @param {number} share @returns {At} */
function at(line, share) {
  const i = share * line.length;
  const [ax, ay] = line[Math.floor(i) % line.length];
  const [bx, by] = line[(Math.floor(i) + 1) % line.length];
  const f = i - Math.floor(i);
  return [ax + f * (bx - ax), ay + f * (by - ay)];
}

customElements.define('film-desk', FilmDesk);
