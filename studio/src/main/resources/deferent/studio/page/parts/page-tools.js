import { html } from 'lit';
import { Part } from './part.js';
import { CARE } from '../state/care.js';

/** The one button at the top: the menu. */
class PageTools extends Part {
  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.side.addEventListener('turned', () => this.soon());
  }

  render() {
    const { side } = this.desk;
    return html`<button type="button" class="tools-open" aria-label="Menu" title="Menu (M)" aria-keyshortcuts="M" aria-controls="panel-tools"
      aria-expanded=${!!side.open && side.tab === 'tools'} @click=${() => this.desk.act('tools')}>${LINES}</button>`;
  }
}

const LINES = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M4 6h12M4 10h12M4 14h12" fill="none" stroke="currentColor" stroke-width="1.6" stroke-linecap="round"/></svg>`;

/** Short notices at the foot of the page, one at a time, with a way back where there is one. */
class PageNotices extends Part {
  /** @type {{ text: string, undo?: () => void, verb?: string } | null} */
  notice = null;
  /** @type {string | null} */
  standing = null;
  last = '';
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  gone;
  /** @param {'slow' | 'full' | 'stay'} answer */
  answerCare = (answer) => {};

  /**
   * @param {string} text
   * @param {() => void} [undo] what can be done about it
   * @param {string} [verb] what that is called
   */
  say(text, undo, verb = 'Undo') {
    this.notice = { text, undo, verb };
    this.last = text; // may be asked for once it is gone
    clearTimeout(this.gone);
    this.gone = setTimeout(() => this.clear(), undo ? 12000 : 4500);
    this.requestUpdate();
  }

  /** Says what holds until something else does; null, that nothing does any more. */
  /** @param {string | null} text */
  stay(text) {
    if (text === this.standing) return;
    this.standing = text;
    this.clear();
  }

  clear() {
    clearTimeout(this.gone);
    this.notice = this.standing ? { text: this.standing } : null;
    this.requestUpdate();
  }

  render() {
    const { notice } = this;
    return html`<div class="notices" role="status">${notice
      ? html`<p class="notice"><span>${notice.text}</span>${notice.undo
            ? html`<button type="button" @click=${() => { const { undo } = notice; this.clear(); undo?.(); }}>${notice.verb}</button>`
            : ''}</p>`
      : ''}</div>
      <dialog class="care" aria-labelledby="care-head">
        <h2 id="care-head">${CARE.title}</h2>
        <p>${CARE.text}</p>
        <p class="care-verbs"><button type="button" class="primary" @click=${() => this.answerCare('slow')}>${CARE.slow}</button>
          <button type="button" @click=${() => this.answerCare('full')}>${CARE.full}</button>
          <button type="button" @click=${() => this.answerCare('stay')}>${CARE.stay}</button></p>
      </dialog>`;
  }

  /** Asks before fast lights; resolves to slow, full or stay. */
  care() {
    const dialog = this.querySelector('.care');
    dialog.showModal();
    return new Promise((resolve) => {
      this.answerCare = (/** @type {'slow' | 'full' | 'stay'} */ answer) => {
        dialog.close();
        resolve(answer);
      };
      dialog.oncancel = () => resolve('stay');
    });
  }
}

customElements.define('page-tools', PageTools);
customElements.define('page-notices', PageNotices);
