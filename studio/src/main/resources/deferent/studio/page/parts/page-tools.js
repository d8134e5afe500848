import { html } from 'lit';
import { Part } from './part.js';
import { CARE } from '../state/care.js';

const THEMES = ['auto', 'dark', 'light'];
const SAID = { auto: 'as the system', dark: 'dark', light: 'light' };

/** For the page as a whole: an address to share, dark or light, the list of keys. */
class PageTools extends Part {
  render() {
    const { theme } = this.desk;
    return html`
      <button type="button" class="tool" @click=${() => this.desk.act('save')} title="Save on the shelf (Ctrl+S)" aria-keyshortcuts="Control+S">Save</button>
      <button type="button" class="tool" @click=${() => this.desk.act('share')} title="Copy this pattern’s address">Share</button>
      <button type="button" class="tool" @click=${() => this.desk.act('take')} title="Pictures, sheets, clips and pages of it (E)" aria-keyshortcuts="E">Take away</button>
      <button type="button" class="tool" @click=${() => this.desk.act('words')} title="What a phrase can say (W)" aria-keyshortcuts="W">Words</button>
      <button type="button" class="tool icon" aria-label="Colours: ${SAID[theme]}" title="Colours: ${SAID[theme]}"
        @click=${() => this.desk.setTheme(THEMES[(THEMES.indexOf(theme) + 1) % THEMES.length])}>${HALF}</button>
      <button type="button" class="tool icon" aria-label="Keys" title="Keys (?)" aria-keyshortcuts="?" @click=${() => this.desk.act('keys')}>?</button>`;
  }
}

const HALF = html`<svg viewBox="0 0 20 20" aria-hidden="true"><circle cx="10" cy="10" r="6.6" fill="none" stroke="currentColor" stroke-width="1.6"/><path d="M10 3.4a6.6 6.6 0 0 1 0 13.2z" fill="currentColor"/></svg>`;

/** Short notices at the foot of the page, one at a time, with a way back where there is one. */
class PageNotices extends Part {
  say(text, undo) {
    this.notice = { text, undo };
    this.last = text; // may be asked for once it is gone
    clearTimeout(this.gone);
    this.gone = setTimeout(() => this.clear(), undo ? 12000 : 4500);
    this.requestUpdate();
  }

  /** Says what holds until something else does; null, that nothing does any more. */
  stay(text) {
    if (text === (this.standing ?? null)) return;
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
            ? html`<button type="button" @click=${() => { const { undo } = notice; this.clear(); undo(); }}>Undo</button>`
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
      this.answerCare = (answer) => {
        dialog.close();
        resolve(answer);
      };
      dialog.oncancel = () => resolve('stay');
    });
  }
}

/** @type {[string, string[][]][]} */
const KEYS = [
  ['Play', [['Space', 'play or pause'], ['[  ]', 'slower, faster'], [',  .', 'a moment back, a moment on'], ['C', 'count out loud'], ['B', 'tap the tempo']]],
  ['Pattern', [['/', 'to the phrase'], ['S', 'swap hands'], ['R', 'reverse'], ['T', 'step timing'], ['D', 'step direction'], ['F', 'fit'], ['A', 'fit to my arms'], ['Ctrl Z', 'undo'], ['Ctrl Shift Z', 'redo'], ['Ctrl S', 'save on the shelf']]],
  ['Stage', [['K', 'ideal, keep the figure, keep the hand path'], ['G', 'let go, or back; Escape goes back too'], ['V  Shift V', 'next view, the one before'], ['L', 'the light alone, or hands and cords'], ['X', 'nothing but the figure, and back'], ['arrows', 'turn, with the stage in focus'], ['+  −', 'nearer, further'], ['0', 'straight on'], ['H', 'next handle'], ['arrows', 'move the handle in focus by 1 cm; with Shift 5 cm, with Alt 1 mm']]],
  ['Page', [['M', 'open or shut the tools'], ['O', 'open or shut the strip'], ['1 2 3', 'reading, sizes, shelf; once more shuts the drawer'], ['4 5 6', 'what could come next, seek, map'], ['A', 'save the find in focus on the shelf'], ['E', 'take away: pictures, sheets, clips, pages'], ['W', 'words a phrase can say'], ['?', 'this list']]],
];

class KeyList extends Part {
  render() {
    return html`
      <dialog class="keys" aria-labelledby="keys-head">
        <header><h2 id="keys-head">Keys</h2><button type="button" @click=${() => this.dialog.close()}>Close</button></header>
        <label class="keys-on"><input type="checkbox" .checked=${this.desk.singleKeys} @change=${(e) => this.desk.setSingleKeys(e.target.checked)}> Single keys act on the pattern</label>
        <div class="keys-lists">
          ${KEYS.map(([title, keys]) => html`<section><h3>${title}</h3><dl>${keys.map(([key, does]) => html`<div><dt><kbd>${key}</kbd></dt><dd>${does}</dd></div>`)}</dl></section>`)}
        </div>
        <p class="quiet">All that is seen can be dragged: circles, hands, poi, cords, whole figures. Click for what lies beneath; hold a finger still for the same. Shift while dragging a poi also sets its tether. Two fingers turn the view.</p>
      </dialog>`;
  }

  get dialog() {
    return this.querySelector('dialog');
  }

  open() {
    this.dialog.showModal();
  }
}

customElements.define('page-tools', PageTools);
customElements.define('page-notices', PageNotices);
customElements.define('key-list', KeyList);
