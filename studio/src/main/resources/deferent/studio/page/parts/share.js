import { html } from 'lit';
import { Part } from './part.js';

/**
 * Where a pattern may go, what it goes there as, and the wishes that fit. An empty ending is the address alone, none is every ending.
 * Our choice: the loop is short enough for a message, the printed sheet is for hands that hold poi, the edit has no ground of its own.
 *
 * @type {[string, string, string | null, Record<string, string>][]}
 */
const PLACES = [
  ['A message to a friend', 'a short loop of the light, as a clip', 'mp4', { size: '1080', cycles: '4', slow: '1/2', dark: 'yes' }],
  ['A post or a story', 'a tall clip of the light', 'mp4', { size: 'tall', cycles: '6', slow: '1/2', dark: 'yes' }],
  ['A picture to keep', 'the light of a whole cycle', 'png', { form: 'figure', dark: 'yes' }],
  ['Printed for class', 'a sheet with figure, poses and words', 'pdf', { form: 'sheet' }],
  ['A screen in the hall', 'one page that moves, and needs no network', 'html', {}],
  ['A big screen', 'a wide clip, looped', 'mp4', { size: 'wide', cycles: '8', dark: 'yes' }],
  ['A video edit', 'a clip without a ground, to lie over another', 'mov', { size: 'wide', transparent: 'yes' }],
  ['Its address', 'copied: whoever runs the studio opens it', '', {}],
  ['Something else', 'every file there is, and a photograph', null, {}],
];

/** Where it goes is asked first; the file that fits is then shown and written with one press. */
class SharePanel extends Part {
  /** @returns {HTMLDialogElement} */
  get dialog() {
    return /** @type {HTMLDialogElement} */ (this.querySelector('dialog'));
  }

  open() {
    if (this.desk.session.pattern && !this.dialog.open) this.dialog.showModal();
  }

  render() {
    return html`<dialog class="sharing" aria-labelledby="share-head">
      <header><h2 id="share-head">Where does it go?</h2><button type="button" @click=${() => this.dialog.close()}>Close</button></header>
      <ul>${PLACES.map(
        ([place, says, as, wishes]) => html`<li><button type="button" class="share-place" @click=${() => this.#go(as, wishes)}><b>${place}</b><span>${says}</span></button></li>`,
      )}</ul>
    </dialog>`;
  }

  /** @param {string | null} as @param {Record<string, string>} wishes */
  #go(as, wishes) {
    this.dialog.close();
    if (as === '') {
      this.desk.act('address');
      return;
    }
    if (as) this.desk.take.fit(as, wishes);
    this.desk.away.open('file');
  }
}

customElements.define('share-panel', SharePanel);
