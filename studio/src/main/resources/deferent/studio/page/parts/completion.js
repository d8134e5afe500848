import { html } from 'lit';
import { post } from '../state/live.js';
import '../stage/thumb.js';

/** @typedef {{ says: string, means: string, text: string, caret: number, alone: boolean, moves: any }} Offer */

/**
 * Words that could be written where the caret stands in the phrase, each with a small moving picture of what it would be. The field
 * keeps the focus throughout; which one is chosen is told by its aria-activedescendant, as in the combobox pattern of ARIA 1.2. A field
 * of several lines may not take that role itself (ARIA in HTML), so that words have come is said in a line of its own.
 */
export class Completion {
  /** @type {Offer[]} */
  #offers = [];
  #asked = 0;

  chosen = -1;

  /** @param {any} line the phrase line whose field it helps */
  constructor(line) {
    this.line = line;
  }

  get isOpen() {
    return this.#offers.length > 0;
  }

  /** Asks what could stand at the caret; the newest question wins. */
  async ask() {
    const asked = ++this.#asked;
    const { value, selectionStart } = this.line.field;
    let answer;
    try {
      answer = await post({ ask: 'complete', text: value, at: selectionStart });
    } catch {
      answer = {}; // that nobody answers is told elsewhere
    }
    if (asked !== this.#asked) return;
    this.#offers = answer.completions || [];
    this.chosen = -1;
    this.line.requestUpdate();
  }

  shut() {
    this.#asked++;
    if (!this.isOpen) return;
    this.#offers = [];
    this.chosen = -1;
    this.line.requestUpdate();
  }

  /**
   * Whether a key was meant for the list.
   *
   * @param {KeyboardEvent} event
   */
  key(event) {
    if (event.ctrlKey || event.metaKey || event.altKey) return false;
    const { key } = event;
    if (!this.isOpen) {
      if (key === 'ArrowDown') this.ask();
      return key === 'ArrowDown';
    }
    if (key === 'ArrowDown' || key === 'ArrowUp') {
      const all = this.#offers.length + 1; // one place is none of them
      this.chosen = ((this.chosen + 1 + (key === 'ArrowDown' ? 1 : all - 1)) % all) - 1;
      this.line.requestUpdate();
      this.line.updateComplete.then(() => this.line.querySelector('[aria-selected=true]')?.scrollIntoView({ block: 'nearest' }));
      return true;
    }
    if (key === 'Escape') {
      this.shut();
      return true;
    }
    if ((key === 'Enter' || key === 'Tab') && this.chosen >= 0) {
      this.#take(this.#offers[this.chosen]);
      return true;
    }
    return false;
  }

  /** @param {Offer} offer */
  #take(offer) {
    this.shut();
    this.line.write(offer.text, offer.caret);
  }

  render() {
    const theme = document.documentElement.dataset.theme;
    return html`<p class="spoken" role="status">${this.isOpen ? told(this.#offers.length) : ''}</p><ul class="offers" role="listbox" id="phrase-offers" aria-label="Words that go here" ?hidden=${!this.isOpen}>
      ${this.#offers.map(
        (offer, i) => html`<li role="option" id="phrase-offer-${i}" class="offer-word" aria-selected=${i === this.chosen ? 'true' : 'false'}
          @pointerdown=${(/** @type {Event} */ e) => e.preventDefault()} @click=${() => this.#take(offer)}>
          <moving-thumb .moves=${offer.moves} .alone=${offer.alone} .theme=${theme}></moving-thumb>
          <span><b>${offer.says}</b><small>${offer.means}</small></span>
        </li>`,
      )}
    </ul>`;
  }
}

/** @param {number} n */
const told = (n) => (n === 1 ? 'One word goes' : n + ' words go') + ' here; arrow down chooses.';
