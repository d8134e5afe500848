import { html, nothing } from 'lit';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { figures } from '../state/first.js';
import '../stage/thumb.js';

/** A dozen figures to pick from: the first thing that is seen, and what the mark leads back to. */
class FigureGallery extends Part {
  /** @type {{ phrase: string, moves: object }[]} */
  #figures = [];
  /** @type {object | null} */
  #failed = null;
  /** @type {Element | null} */
  #from = null;

  isOpen = false;

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.session.addEventListener('scene', () => this.close());
  }

  async open() {
    if (this.isOpen) return;
    this.isOpen = true;
    this.#from = document.activeElement;
    this.desk.choosing(true);
    this.requestUpdate();
    if (this.#figures.length) return;
    this.#failed = null;
    try {
      const answer = await figures();
      this.#figures = answer.shown;
    } catch {
      this.#failed = { where: 'the studio', what: 'does not answer', right: 'see that it still runs in its terminal, then ask again' };
    }
    this.requestUpdate();
  }

  /** Back to what stood before. */
  close() {
    if (!this.isOpen) return;
    this.isOpen = false;
    this.desk.choosing(false);
    if (this.contains(document.activeElement) || document.activeElement === document.body) this.desk.stage.canvas.focus({ preventScroll: true });
    else if (this.#from?.isConnected) /** @type {HTMLElement} */ (document.activeElement).focus();
    this.requestUpdate();
  }

  turn() {
    if (!this.isOpen) this.open();
    else if (this.desk.session.answer) this.close();
  }

  render() {
    if (!this.isOpen) return nothing;
    return html`<section class="gallery" aria-labelledby="gallery-head" @keydown=${this.#key}>
      <h2 id="gallery-head">Say what each hand does, and see the light that two poi draw.</h2>
      ${this.#failed
        ? html`<p class="told" data-tone="warn" role="alert">${sentence(this.#failed)} <button type="button" @click=${this.#again}>Ask again</button></p>`
        : nothing}
      <ul aria-label="Pick one">
        ${this.#figures.map((figure) => {
          const [hands, ...more] = figure.phrase.split(', ');
          return html`<li><button type="button" class="figure" @click=${() => this.#pick(figure.phrase)}>
            <moving-thumb .moves=${figure.moves} .theme=${document.documentElement.dataset.theme}></moving-thumb>
            <span class="figure-said">${said(hands)}</span>${more.length ? html` <small>${more.join(', ')}</small>` : nothing}
          </button></li>`;
        })}
      </ul>
      <p class="gallery-foot">Pick one, or type above.</p>
    </section>`;
  }

  /** @param {string} phrase */
  #pick(phrase) {
    this.desk.session.say(phrase);
    this.desk.session.pause();
  }

  #again = () => {
    this.isOpen = false;
    this.open();
  };

  // Arrow keys go through the figures as they stand on the screen.
  /** @param {KeyboardEvent} event */
  #key(event) {
    const button = /** @type {Element} */ (event.target).closest('.figure');
    if (!button) return;
    const all = /** @type {HTMLElement[]} */ ([...this.querySelectorAll('.figure')]);
    const i = all.indexOf(/** @type {HTMLElement} */ (button));
    const columns = all.filter((b) => Math.abs(b.offsetTop - all[0].offsetTop) < 4).length;
    const to = { ArrowRight: i + 1, ArrowLeft: i - 1, ArrowDown: i + columns, ArrowUp: i - columns, Home: 0, End: all.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    if (all[to]) all[to].focus();
  }
}

// A hand a line where it does not fit on one.
/** @param {string} hands */
function said(hands) {
  const [left, right] = hands.split(' vs ');
  return html`<span>${left}</span> <span>vs ${right}</span>`;
}

customElements.define('figure-gallery', FigureGallery);
