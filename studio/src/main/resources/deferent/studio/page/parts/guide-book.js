import { html } from 'lit';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import { Part } from './part.js';
import { KEYS } from '../keys.js';
import { read } from '../state/address.js';

const CONTENTS = 'docs/README.md';
const KEYS_PAGE = 'keys';

/** The guide, whose pages the server makes of the Markdown they are kept in, and the list of keys beside it. */
class GuideBook extends Part {
  #at = '';
  #page = '';

  /** @returns {HTMLDialogElement} */
  get dialog() {
    return /** @type {HTMLDialogElement} */ (this.querySelector('dialog'));
  }

  /** Opens where it was left. */
  open() {
    this.dialog.showModal();
    if (!this.#at) this.#turn(CONTENTS);
  }

  /** @param {string} to a page below docs/, or the keys; what follows # is a place in it */
  async #turn(to) {
    this.#at = to;
    if (to !== KEYS_PAGE) {
      const page = await fetch(to).then((reply) => (reply.ok ? reply.text() : null)).catch(() => null);
      if (this.#at !== to) return;
      this.#page = page ?? '<p>The page did not come; see that the studio still runs.</p>';
      if (page === null) this.#at = ''; // asked for anew next time
    }
    this.requestUpdate();
    await this.updateComplete;
    this.querySelector('.guide-page')?.scrollTo(0, 0);
  }

  // A link to another page turns to it; one to a phrase puts that on the stage.
  /** @param {MouseEvent} event */
  async #follow(event) {
    const link = /** @type {Element} */ (event.target).closest('a');
    const to = link?.getAttribute('href') ?? '';
    if (to.startsWith('docs/')) {
      event.preventDefault();
      this.#turn(to);
    } else if (to.startsWith('#')) {
      event.preventDefault();
      const { phrase } = await read(to);
      if (!phrase) return;
      this.dialog.close();
      if (this.desk.gallery.isOpen) this.desk.gallery.turn();
      this.desk.session.say(phrase);
    }
  }

  render() {
    const keys = this.#at === KEYS_PAGE;
    return html`
      <dialog class="guide" aria-labelledby="guide-head">
        <header>
          <h2 id="guide-head" class="spoken">Guide</h2>
          <nav class="choice" aria-label="Guide">
            <button type="button" aria-current=${this.#at === CONTENTS ? 'page' : 'false'} @click=${() => this.#turn(CONTENTS)}>Guide</button>
            <button type="button" aria-current=${keys ? 'page' : 'false'} @click=${() => this.#turn(KEYS_PAGE)}>Keys</button>
          </nav>
          <button type="button" @click=${() => this.dialog.close()}>Close</button>
        </header>
        ${keys ? this.#keys() : html`<div class="guide-page" tabindex="0" role="region" aria-label="Page" @click=${(/** @type {MouseEvent} */ e) => this.#follow(e)}>${unsafeHTML(this.#page)}</div>`}
      </dialog>`;
  }

  #keys() {
    return html`<div class="guide-page keys" tabindex="0" role="region" aria-label="Keys">
      <label class="keys-on"><input type="checkbox" .checked=${this.desk.singleKeys} @change=${(/** @type {any} */ e) => this.desk.setSingleKeys(e.target.checked)}> Single keys act on the pattern</label>
      <div class="keys-lists">
        ${KEYS.map(([title, keys]) => html`<section><h3>${title}</h3><dl>${keys.map((key) => html`<div><dt><kbd>${key.shows}</kbd></dt><dd>${key.says}</dd></div>`)}</dl></section>`)}
      </div>
      <p class="quiet">All that is seen can be dragged: circles, hands, poi, cords, whole figures. Click for what lies beneath; hold a finger still for the same. Shift while dragging a poi also sets its tether. Two fingers turn the view.</p>
    </div>`;
  }
}

customElements.define('guide-book', GuideBook);
