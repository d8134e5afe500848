// Words of the trade and our own in a sentence, underlined; a tap says what one means, and shows it moving where it is a motion.

import { html } from 'lit';
import { Part } from './part.js';
import { post } from '../state/live.js';
import '../stage/thumb.js';

/** @typedef {{ word: string, means: string, also_said?: string[], shows?: string, alone?: boolean }} Term */

/** @type {Map<string, Term>} by each of their spellings, in small letters */
const terms = new Map();
let asked;
/** @type {RegExp | null} */
let spelt = null;

/** Asks once for the words; resolves when they are there, or cannot be had, which leaves sentences plain. */
export function loadTerms() {
  asked ??= post({ ask: 'words' }).then(
    (answer) => {
      for (const term of /** @type {Term[]} */ (answer.terms || [])) {
        for (const said of [term.word, ...(term.also_said || [])]) terms.set(said.toLowerCase(), term);
      }
      const longest = [...terms.keys()].sort((a, b) => b.length - a.length).map((said) => said.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
      spelt = longest.length ? new RegExp(`(?<![\\w-])(${longest.join('|')})(?![\\w-])`, 'gi') : null;
    },
    () => (asked = undefined),
  );
  return asked;
}

/**
 * A sentence with its words to be tapped; each is offered once.
 *
 * @param {string} text
 * @param {(term: Term, at: Element) => void} tell
 */
export function explained(text, tell) {
  if (!spelt) return text;
  const told = new Set();
  const parts = [];
  let from = 0;
  for (const found of text.matchAll(spelt)) {
    const term = terms.get(found[0].toLowerCase());
    if (!term || told.has(term)) continue;
    told.add(term);
    parts.push(
      text.slice(from, found.index),
      html`<button type="button" class="term" aria-haspopup="dialog" @click=${(/** @type {any} */ e) => tell(term, e.currentTarget)}>${found[0]}</button>`,
    );
    from = found.index + found[0].length;
  }
  return [...parts, text.slice(from)];
}

/** What shows the words, by phrase; asked for when a word is first tapped. @type {Map<string, Promise<object | undefined>>} */
const pictures = new Map();

/** @param {string} phrase */
function picture(phrase) {
  const asked = pictures.get(phrase) ?? post({ ask: 'moves', phrases: [phrase] }).then((answer) => answer.shown[0]?.moves, () => undefined);
  pictures.set(phrase, asked);
  return asked;
}

/** What a word means, beside the word, and where it is a motion, that motion. */
class WordTold extends Part {
  /** @type {Term | undefined} */
  term;
  /** @type {object | undefined} */
  moves;

  /**
   * @param {Term} term
   * @param {Element} at
   */
  show(term, at) {
    this.term = term;
    this.moves = undefined;
    this.requestUpdate();
    if (term.shows) {
      picture(term.shows).then((moves) => {
        if (this.term === term) this.moves = moves;
        this.requestUpdate();
      });
    }
    this.updateComplete.then(() => {
      const box = this.querySelector('.term-told');
      box.showPopover();
      const word = at.getBoundingClientRect();
      const { width, height } = box.getBoundingClientRect();
      box.style.left = Math.max(8, Math.min(innerWidth - width - 8, word.left)) + 'px';
      box.style.top = (word.bottom + height + 8 < innerHeight ? word.bottom + 6 : Math.max(8, word.top - height - 6)) + 'px';
    });
  }

  render() {
    const { term } = this;
    return html`<div class="term-told" popover role="dialog" aria-label=${term ? 'What ' + term.word + ' means' : 'A word'}>
      ${term
        ? html`${term.shows ? html`<span class="term-picture" aria-hidden="true"><moving-thumb .moves=${this.moves} .alone=${!!term.alone} .theme=${document.documentElement.dataset.theme}></moving-thumb></span>` : ''}
            <p><b>${term.word}</b> ${term.means}</p>`
        : ''}
    </div>`;
  }
}

customElements.define('word-told', WordTold);
