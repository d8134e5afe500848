import { html, nothing } from 'lit';
import { Part } from './part.js';

/** Under the phrase, quietly: which pattern of the shelf this is, and whether it has changes that are not saved. */
class ShelfMark extends Part {
  render() {
    const { session } = this.desk;
    const { shelved } = session;
    // Saved under its own phrase, it says so already.
    if (!shelved || (!session.unsaved && shelved.name === session.answer?.phrase)) return nothing;
    return html`<span class="shelf-name">${shelved.name}</span>${session.unsaved
      ? html`<span class="shelf-changed">changed, not saved</span>`
      : nothing}`;
  }
}

customElements.define('shelf-mark', ShelfMark);
