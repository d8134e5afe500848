import { html, nothing } from 'lit';
import { Part } from './part.js';
import { post } from '../state/live.js';
import '../stage/thumb.js';

/** @typedef {{ word: string, means: string, sizes_unsaid: string, also_said: string[], goes: string, shows?: string, alone?: boolean }} Word */

/** @type {[string, string][]} where a word goes, and what those that go there are called */
const GOES = [
  ['hand', 'What one hand does'],
  ['both', 'What both hands do, beside and around the body'],
  ['beside', 'Which kind, and which way round'],
  ['size', 'How large, how fast, where; a number goes with it'],
  ['pair', 'How the two hands go together'],
  ['nowhere', 'What joins a phrase, and words that are only explained'],
];
const SIDES = ['left', 'right'];
const VS = /\s+(?:vs?\.?|versus|against|x)\s+/i;

/** Every word a phrase may hold, with its moving picture, what it means and which sizes it takes; a press puts it into the phrase. */
class WordList extends Part {
  /** @type {Word[]} */
  #words = [];
  /** @type {Map<string, object>} */
  #moves = new Map();
  /** @type {string | null} */
  #failed = null;
  #wanted = '';
  #side = 'left';

  /** @returns {HTMLDialogElement} */
  get dialog() {
    return /** @type {HTMLDialogElement} */ (this.querySelector('dialog'));
  }

  async open() {
    const { field } = this.desk.phrase;
    this.#side = VS.test(field.value.slice(0, field.selectionStart) + ' ') ? 'right' : 'left';
    this.dialog.showModal();
    this.requestUpdate();
    try {
      const answer = await post({ ask: 'words' });
      this.#words = answer.words || [];
      this.#failed = null;
      this.requestUpdate();
      const phrases = [...new Set(this.#words.flatMap((w) => w.shows ?? []))].filter((p) => !this.#moves.has(p));
      // As many as may be asked for at once.
      while (phrases.length) {
        const { shown } = await post({ ask: 'moves', phrases: phrases.splice(0, 60) });
        for (const one of shown) this.#moves.set(one.phrase, one.moves);
        this.requestUpdate();
      }
    } catch {
      this.#failed = 'The words did not come; see that the studio still runs.';
    }
    this.requestUpdate();
  }

  render() {
    const wanted = this.#wanted.trim().toLowerCase();
    const shown = this.#words.filter((w) => [w.word, w.means, ...(w.also_said || [])].some((t) => t.toLowerCase().includes(wanted)));
    return html`
      <dialog class="words" aria-labelledby="words-head">
        <header><h2 id="words-head">Words</h2><button type="button" @click=${() => this.dialog.close()}>Close</button></header>
        <p class="quiet">A phrase is two motions, one a hand, and what is said of them: <em>isolation vs four-petal antispin, split time, opposite</em>.</p>
        <div class="words-how">
          <label class="spoken" for="words-find">Find a word</label>
          <input id="words-find" type="text" placeholder="Find a word" autocomplete="off" @input=${(/** @type {any} */ e) => { this.#wanted = e.target.value; this.requestUpdate(); }}>
          <fieldset class="words-side"><legend>A press puts it in the</legend>
            ${SIDES.map((side) => html`<label><input type="radio" name="words-side" value=${side} .checked=${side === this.#side} @change=${() => { this.#side = side; this.requestUpdate(); }}> ${side} hand</label>`)}
          </fieldset>
        </div>
        ${this.#failed ? html`<p role="alert">${this.#failed}</p>` : nothing}
        <div class="words-all" tabindex="0" role="region" aria-label="Words and what they mean">
          ${GOES.map(([goes, head]) => this.#section(head, shown.filter((w) => w.goes === goes)))}
        </div>
      </dialog>`;
  }

  /** @param {string} head @param {Word[]} words */
  #section(head, words) {
    if (!words.length) return nothing;
    return html`<h3>${head}</h3><dl>${words.map((word) => this.#word(word))}</dl>`;
  }

  /** @param {Word} w */
  #word(w) {
    const moves = w.shows && this.#moves.get(w.shows);
    return html`<div class=${w.shows ? 'shown' : ''}>
      <dt>${w.goes === 'nowhere' ? w.word : html`<button type="button" class="word-put" @click=${() => this.#put(w)}>${w.word}</button>`}</dt>
      <dd>${w.means}${w.sizes_unsaid ? html`<small>Unless you say otherwise: ${w.sizes_unsaid}.</small>` : nothing}${(w.also_said || []).length ? html`<small>Also said: ${w.also_said.join(', ')}.</small>` : nothing}</dd>
      ${w.shows ? html`<dd class="word-picture" aria-hidden="true"><moving-thumb .moves=${moves} .alone=${!!w.alone} .theme=${document.documentElement.dataset.theme}></moving-thumb></dd>` : nothing}</div>`;
  }

  /** @param {Word} w */
  #put(w) {
    const [text, caret] = put(this.desk.phrase.field.value.trim(), w, this.#side);
    this.dialog.close();
    this.desk.phrase.write(text, caret);
  }
}

/**
 * A phrase with a word put in: what both hands do takes the place of all, a motion that of that hand's, what goes beside one is said before it, a size after it, and
 * what is said of both comes last.
 *
 * @param {string} phrase
 * @param {Pick<Word, 'word' | 'goes'>} word
 * @param {string} side
 * @returns {[string, number]} the phrase, and where one goes on writing
 */
export function put(phrase, { word, goes }, side) {
  if (goes === 'both') return [word, word.length];
  const comma = phrase.indexOf(',');
  const shared = comma < 0 ? '' : phrase.slice(comma);
  const hands = (comma < 0 ? phrase : phrase.slice(0, comma)).split(VS);
  if (goes === 'pair') {
    const text = phrase + (phrase ? ', ' : 'isolation vs isolation, ') + word;
    return [text, text.length];
  }
  const at = side === 'right' ? 1 : 0;
  const other = hands[1 - at]?.trim() || 'static spin';
  const was = hands[at]?.trim() || 'static spin';
  const now = goes === 'hand' ? word : goes === 'beside' ? word + ' ' + was : was + ' ' + word + ' ';
  const before = at ? other + ' vs ' : '';
  return [before + now + (at ? '' : (now.endsWith(' ') ? 'vs ' : ' vs ') + other) + shared, before.length + now.length];
}

customElements.define('word-list', WordList);
