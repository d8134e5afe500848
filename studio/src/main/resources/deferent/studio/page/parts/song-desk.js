import { html, nothing } from 'lit';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { lasting, minutes } from '../set-player.js';
import { nearest, Song } from '../state/song.js';
import { SongPlayer } from '../state/song-player.js';
import './song-strip.js';

const LONGEST_BAR = 16; // beats
const TAKES = 'audio/*,video/*,.opus,.flac,.m4a,.ogg,.oga';

/**
 * The beats of a song: found by the studio, heard over the song, tapped, moved by hand, and kept on the shelf. The browser plays the very
 * file; the studio beside it reads a copy, which stays only where the song is kept.
 */
class SongDesk extends Part {
  /** @type {Song} */
  song = /** @type {any} */ (undefined);
  player = new SongPlayer();
  name = '';

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    this.song = new Song(desk.session.live);
    super.connect(desk);
    this.song.addEventListener('state', () => this.#changed());
    this.player.addEventListener('state', () => this.requestUpdate());
    this.player.addEventListener('tick', () => this.#tick());
  }

  /** @returns {HTMLDialogElement} */
  get dialog() {
    return /** @type {HTMLDialogElement} */ (this.querySelector('dialog'));
  }

  open() {
    if (this.dialog.open) return;
    this.desk.clock.play(false);
    this.dialog.showModal();
    this.requestUpdate();
  }

  /** @param {File} file */
  listen(file) {
    this.open();
    this.name = file.name.replace(/\.[^.]*$/, '').slice(0, 120);
    this.song.take(file);
    this.player.open(this.song.url);
  }

  #changed() {
    const { song, player } = this;
    const { heard } = song;
    if (heard) {
      player.times = heard.beats_s;
      player.first = (beat) => (((beat - heard.first_bar) % heard.beats_a_bar) + heard.beats_a_bar) % heard.beats_a_bar === 0;
    }
    this.requestUpdate();
  }

  render() {
    const { song } = this;
    return html`<dialog class="song" aria-labelledby="song-head" @close=${() => this.player.turn(false)} @keydown=${this.#key}
      @dragover=${(/** @type {DragEvent} */ e) => e.preventDefault()} @drop=${this.#drop}>
      <header><h2 id="song-head">The beats of a song</h2><button type="button" @click=${() => this.dialog.close()}>Close</button></header>
      ${song.file ? this.#room(song.file) : this.#ask()}
    </dialog>`;
  }

  #ask() {
    return html`<div class="file-ask">
      <label class="file-drop song-drop"><input type="file" accept=${TAKES} @change=${this.#chosen}>
        <span>Drop a song here, or choose one</span></label>
      <ul>
        <li>MP3, AAC, Ogg, Opus, FLAC or WAV; or a film, of which the sound is read.</li>
        <li>Two hours at most.</li>
      </ul>
      <p class="quiet">The song stays on this machine.</p>
    </div>`;
  }

  /** @param {File} file */
  #room(file) {
    const { song, player } = this;
    const { heard } = song;
    const length = heard?.seconds ?? player.seconds;
    return html`<p class="song-name"><b>${file.name}</b>${length ? html` <span class="quiet">${lasting(length)}</span>` : nothing}
        <label class="file-other song-other"><span>Another song</span> <input type="file" accept=${TAKES} @change=${this.#chosen}></label></p>
      <div class="song-told" aria-live="polite">
        ${song.running && !heard ? html`<p>${song.doing} … ${Math.round(100 * song.share)} % <button type="button" @click=${() => song.stop()}>Stop</button></p>` : nothing}
        ${song.error ? html`<p class="told" data-tone="warn" role="alert">${sentence(song.error)}</p>` : nothing}
        ${!heard && !song.running && !song.error ? html`<p>Stopped. <button type="button" @click=${() => song.ask()} ?disabled=${!song.key}>Listen again</button></p>` : nothing}
        ${heard ? html`<ul class="song-says">${heard.told.map((told) => html`<li class="told" data-tone=${told.tone} title=${told.why}>${told.text}</li>`)}</ul>` : nothing}
      </div>
      ${length ? html`<song-strip></song-strip>${this.#play()}` : nothing}
      ${heard || song.key ? this.#mend() : nothing}
      ${heard ? this.#keep() : nothing}`;
  }

  #play() {
    const { player } = this;
    return html`<div class="song-bar">
        ${player.mute
          ? html`<p class="told" data-tone="warn">This browser cannot play the file; its beats can be found all the same.</p>`
          : html`<button type="button" class="primary song-play" aria-keyshortcuts="Space" @click=${() => player.turn()}>${player.playing ? 'Pause' : 'Play'}</button>
              <output class="song-time" aria-label="Where it is"></output>
              <label><input type="checkbox" class="song-click" .checked=${player.clicks} @change=${(/** @type {any} */ e) => player.setClicks(e.target.checked)}> Click on each beat</label>`}
      </div>`;
  }

  #mend() {
    const { song, player } = this;
    const { heard, taps } = song;
    return html`<div class="song-mend">
      <div class="song-taps">
        <button type="button" class="song-tap" aria-keyshortcuts="T" title="Tap the beats while it plays (T)" ?disabled=${!player.playing} @pointerdown=${this.#tapped}
          @click=${(/** @type {MouseEvent} */ e) => e.detail === 0 && this.#tap()}>Tap (T)</button>
        ${taps.length
          ? html`<span role="status">${taps.length === 1 ? 'One tap; one more, and they can be used.' : `${taps.length} taps`}</span>
              ${taps.length > 1 ? html`<button type="button" class="primary song-use" @click=${() => song.useTaps()}>Use them</button>` : nothing}
              <button type="button" @click=${() => song.dropTaps()}>Forget them</button>`
          : html`<span class="quiet">${player.playing ? 'Tap along: two beats in a row are enough.' : 'Play it, then tap along: two beats in a row are enough.'}</span>`}
      </div>
      ${heard
        ? html`<div class="song-set">
            <button type="button" class="song-double" title="Twice as many beats" ?disabled=${heard.beats_per_min > 400} @click=${() => song.level('double')}>Double</button>
            <button type="button" class="song-half" title="Half as many beats" ?disabled=${heard.beats_s.length < 4} @click=${() => song.level('half')}>Half</button>
            <label>Beats a bar <select class="song-bars" @change=${(/** @type {any} */ e) => song.bars(Number(e.target.value))}>
              ${Array.from({ length: LONGEST_BAR }, (_, i) => html`<option value=${i + 1} .selected=${heard.beats_a_bar === i + 1}>${i + 1}</option>`)}</select></label>
            <button type="button" class="song-first" ?disabled=${song.chosen === null} @click=${() => song.chosen !== null && song.firstBar(song.chosen)}>${song.chosen === null ? 'A bar begins at the beat chosen' : `A bar begins at beat ${song.chosen + 1}`}</button>
            <button type="button" ?disabled=${!song.past.length} title="Ctrl+Z" @click=${() => song.undo()}>Undo</button>
            <button type="button" ?disabled=${!song.future.length} title="Ctrl+Shift+Z" @click=${() => song.redo()}>Redo</button>
          </div>`
        : nothing}
    </div>`;
  }

  #keep() {
    const { song } = this;
    const { kept } = song;
    return html`<form class="song-keep" @submit=${this.#kept}>
      <label for="song-name">Keep it as</label>
      <input id="song-name" type="text" maxlength="120" autocomplete="off" required .value=${this.name} @input=${(/** @type {any} */ e) => (this.name = e.target.value)}>
      <button type="submit" class="primary" ?disabled=${song.running}>Keep on the shelf</button>
      <div class="song-kept" aria-live="polite">
        ${kept?.taken ? html`<p class="told" data-tone="warn">“${kept.name}” is on the shelf already: give it another name, or <button type="button" class="song-replace" @click=${() => this.#put(true)}>put this in its place</button></p>` : nothing}
        ${kept?.error ? html`<p class="told" data-tone="warn" role="alert">${sentence(kept.error)}</p>` : nothing}
        ${kept?.told
          ? html`<p>${kept.told}. <button type="button" class="song-to-set" @click=${this.#toSet}>Spin a set to it</button></p>`
          : nothing}
      </div>
      <p class="quiet">Its beats go on the shelf, and a copy of the sound beside them, in the shelf’s folder “sound”.</p>
    </form>`;
  }

  /** @param {Event} event */
  #kept = (event) => {
    event.preventDefault();
    this.#put(false);
  };

  /** @param {boolean} replace */
  async #put(replace) {
    await this.song.keep(this.name.trim(), replace);
    if (this.song.kept?.told) this.desk.shelf.refresh();
  }

  #toSet = () => {
    const { kept } = this.song;
    if (!kept?.id) return;
    this.desk.set.sing({ id: kept.id, name: kept.name ?? '' });
    this.dialog.close();
    this.desk.side.show('set');
  };

  // Playing and tapping -----------------------------------------------------------------------------------------------------------

  #tap() {
    if (this.player.playing) this.song.tap(this.player.heard);
  }

  /** @param {PointerEvent} event */
  #tapped = (event) => {
    if (event.button <= 0) this.#tap();
  };

  /** @param {KeyboardEvent} event */
  #key = (event) => {
    const at = /** @type {Element} */ (event.target);
    const key = event.key.toLowerCase();
    if ((event.ctrlKey || event.metaKey) && (key === 'z' || key === 'y') && !at.closest('input[type=text]')) {
      event.preventDefault();
      event.stopPropagation();
      if (key === 'y' || event.shiftKey) this.song.redo();
      else this.song.undo();
      return;
    }
    if (event.ctrlKey || event.metaKey || event.altKey || !this.song.file || at.closest('input[type=text], select')) return;
    if (key === 't' && this.desk.singleKeys && !event.repeat) this.#tap();
    else if (key === ' ' && !at.closest('button:not(.song-beat), input')) {
      event.preventDefault();
      this.player.turn();
    }
  };

  #tick() {
    const time = this.querySelector('.song-time');
    if (!time) return;
    const { player } = this;
    const { heard } = this.song;
    const on = heard ? nearest(heard.beats_s, player.time) : -1;
    const says = minutes(player.time) + (on >= 0 ? `, beat ${on + 1}` : '');
    if (time.textContent !== says) time.textContent = says;
  }

  updated() {
    const strip = /** @type {any} */ (this.querySelector('song-strip'));
    strip?.with(this.desk, this.song, this.player);
    this.#tick();
  }

  // Files -------------------------------------------------------------------------------------------------------------------------

  /** @param {Event} event */
  #chosen = (event) => {
    const [file] = /** @type {HTMLInputElement} */ (event.target).files ?? [];
    if (file) this.listen(file);
  };

  /** @param {DragEvent} event */
  #drop = (event) => {
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) this.listen(file);
  };
}

customElements.define('song-desk', SongDesk);
