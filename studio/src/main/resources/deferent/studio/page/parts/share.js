import { html, nothing } from 'lit';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';

const WATCHED = 8; // seconds of a clip that somebody looks at before it repeats; our choice

/** @typedef {{ name: string, says: string, as: string, slow?: number, wishes: Record<string, string> }} Place */

/**
 * Where a pattern may go, and the file that fits there. Our choice: the loop is short enough for a message, the printed sheet is for
 * hands that hold poi, the edit has no ground of its own.
 *
 * @type {Place[]}
 */
const PLACES = [
  { name: 'A message to a friend', says: 'a short loop of the light, as a clip', as: 'mp4', slow: 0.5, wishes: { size: '1080', slow: '1/2', dark: 'yes' } },
  { name: 'A post or a story', says: 'a tall clip of the light', as: 'mp4', slow: 0.5, wishes: { size: 'tall', slow: '1/2', dark: 'yes' } },
  { name: 'A picture to keep', says: 'the light of a whole cycle', as: 'png', wishes: { form: 'figure', dark: 'yes' } },
  { name: 'Printed for class', says: 'a sheet with figure, poses and words', as: 'pdf', wishes: { form: 'sheet' } },
  { name: 'A screen in the hall', says: 'one page that moves, and needs no network', as: 'html', wishes: {} },
  { name: 'A big screen', says: 'a wide clip, looped', as: 'mp4', slow: 1, wishes: { size: 'wide', dark: 'yes' } },
  { name: 'A video edit', says: 'a clip without a ground, to lie over another', as: 'mov', wishes: { size: 'wide', transparent: 'yes' } },
];

const PICK = html`<span class="quiet">Pick where it goes, and its file is made and saved.</span>`;

/** Where it goes is one press: the file that fits there is made and saved at once. Every other way is behind one more. */
class SharePanel extends Part {
  #asked = false; // whether what the writing tells was asked for here
  #copied = '';
  /** @type {File | null} */
  #file = null;

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.take.addEventListener('state', () => {
      this.#fetch();
      this.requestUpdate();
    });
  }

  /** @returns {HTMLDialogElement} */
  get dialog() {
    return /** @type {HTMLDialogElement} */ (this.querySelector('dialog'));
  }

  open() {
    if (!this.desk.session.pattern || this.dialog.open) return;
    this.#asked = !!this.desk.take.writing;
    this.#copied = '';
    this.requestUpdate();
    this.dialog.showModal();
  }

  render() {
    const { take, session } = this.desk;
    const phrase = session.answer?.phrase;
    return html`<dialog class="sharing" aria-labelledby="share-head">
      <header><h2 id="share-head">Share</h2><button type="button" @click=${() => this.dialog.close()}>Close</button></header>
      <div class="share-state" role="status">${this.#state()}</div>
      <ul>${PLACES.map(
        (place) => html`<li><button type="button" class="share-place" ?disabled=${!!take.writing} @click=${() => this.#send(place)}><b>${place.name}</b><span>${place.says}</span></button></li>`,
      )}
        <li><button type="button" class="share-place share-phrase" ?disabled=${!phrase} @click=${() => this.#copy(phrase)}><b>Copy the phrase</b>
          <span>${phrase ? 'a friend types it in a studio of their own' : 'no phrase says these sizes: send a file'}</span></button></li>
        <li><button type="button" class="share-place share-other" @click=${() => this.#others()}><b>Other ways</b><span>every file there is, and a photograph</span></button></li>
      </ul>
    </dialog>`;
  }

  #state() {
    const { writing, done, failed } = this.desk.take;
    if (this.#copied) return html`<span class="share-copied">${this.#copied}</span>`;
    if (!this.#asked) return PICK;
    if (writing) {
      return html`<progress max="1" .value=${writing.share} aria-label="Making it"></progress><span>${writing.told || 'Beginning'}</span>
        <button type="button" class="share-stop" @click=${() => this.desk.take.stop()}>Stop</button>`;
    }
    if (failed) return html`<span class="told" data-tone="warn" role="alert">${sentence(failed)}</span>`;
    if (!done) return PICK;
    if (done.stopped) return html`<span>Stopped; nothing was saved.</span>`;
    const file = this.#file;
    return html`<span class="share-done">Saved as <a href=${done.file} download=${done.name}>${done.name}</a>, with your downloads.</span>
      ${file ? html`<button type="button" class="primary share-send" @click=${() => this.#give(file)}>Send it</button>` : nothing}`;
  }

  /** @param {Place} place */
  #send({ as, slow, wishes }) {
    this.#asked = true;
    this.#copied = '';
    this.#file = null;
    const { period } = this.desk.session.scene;
    // Whole cycles, so that the end goes over into the beginning.
    const said = { ...wishes };
    if (slow) said.cycles = String(Math.max(1, Math.round((WATCHED * slow) / period)));
    this.desk.take.send(as, said);
    this.requestUpdate();
  }

  // What can be handed straight on to a messenger is fetched first: a browser wants the file and the press together.
  async #fetch() {
    const { done } = this.desk.take;
    if (!this.#asked || !done?.file || this.#file?.name === done.name || !navigator.canShare) return;
    const blob = await (await fetch(done.file)).blob();
    const file = new File([blob], done.name, { type: blob.type });
    if (this.desk.take.done !== done || !navigator.canShare({ files: [file] })) return;
    this.#file = file;
    this.requestUpdate();
  }

  /** @param {File} file */
  async #give(file) {
    try {
      await navigator.share({ files: [file], title: this.desk.session.answer.phrase || this.desk.session.answer.name });
    } catch (/** @type {any} */ problem) {
      // Whoever thinks better of it is told nothing.
      if (problem.name !== 'AbortError') this.desk.notices.say('It could not be sent from here; the file is with your downloads.');
    }
  }

  /** @param {string} phrase */
  async #copy(phrase) {
    try {
      await navigator.clipboard.writeText(phrase);
      this.#copied = 'Copied: ' + phrase;
    } catch {
      this.#copied = 'Copy it from here: ' + phrase;
    }
    this.requestUpdate();
  }

  #others() {
    this.dialog.close();
    this.desk.away.open('file');
  }
}

customElements.define('share-panel', SharePanel);
