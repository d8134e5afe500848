import { html, nothing } from 'lit';
import { Part } from './part.js';
import { post } from '../state/live.js';

/** Every word a phrase may hold, with what it means and which sizes it takes where they are left unsaid. */
class WordList extends Part {
  constructor() {
    super();
    /** @type {any[]} */
    this.words = [];
    this.wanted = '';
  }

  get dialog() {
    return this.querySelector('dialog');
  }

  async open() {
    this.dialog.showModal();
    try {
      const answer = await post({ ask: 'words' });
      this.words = answer.words || [];
      this.failed = null;
    } catch {
      this.failed = 'The words did not come; see that the studio still runs.';
    }
    this.requestUpdate();
  }

  render() {
    const wanted = this.wanted.trim().toLowerCase();
    const shown = this.words.filter((w) => [w.word, w.means, ...(w.also_said || [])].some((t) => t.toLowerCase().includes(wanted)));
    return html`
      <dialog class="words" aria-labelledby="words-head">
        <header><h2 id="words-head">Words</h2><button type="button" @click=${() => this.dialog.close()}>Close</button></header>
        <p class="quiet">A phrase is two motions, one a hand, and what is said of them: <em>isolation vs four-petal antispin, split time, opposite</em>.</p>
        <label class="spoken" for="words-find">Find a word</label>
        <input id="words-find" type="text" placeholder="Find a word" autocomplete="off" @input=${(/** @type {any} */ e) => { this.wanted = e.target.value; this.requestUpdate(); }}>
        ${this.failed ? html`<p>${this.failed}</p>` : nothing}
        <dl class="words-all" tabindex="0" aria-label="Words and what they mean">
          ${shown.map(
            (w) => html`<div><dt>${w.word}</dt><dd>${w.means}${w.sizes_unsaid ? html`<small>Unsaid: ${w.sizes_unsaid}.</small>` : nothing}${(w.also_said || []).length ? html`<small>Also said: ${w.also_said.join(', ')}.</small>` : nothing}</dd></div>`,
          )}
        </dl>
      </dialog>`;
  }
}

customElements.define('word-list', WordList);
