import { html, nothing } from 'lit';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { FREE, NEAR } from '../state/crossings.js';

/** What could come next: another pattern, the moments at which it could begin, and the passage there. */
class CrossingList extends Part {
  connect(desk) {
    super.connect(desk);
    desk.shelf.addEventListener('state', () => this.soon());
    desk.crossings.addEventListener('state', () => this.soon());
  }

  render() {
    const { crossings, shelf, session } = this.desk;
    const { to } = crossings;
    return html`
      <form class="crossing-into" @submit=${this.#say}>
        <label for="crossing-phrase">What could come next</label>
        <div class="save-row">
          <input id="crossing-phrase" type="text" maxlength="2000" autocomplete="off" spellcheck="false" placeholder="a phrase" .value=${to && to.phrase ? to.phrase : ''}>
          <button type="submit" class="primary" ?disabled=${!session.pattern}>Look</button>
        </div>
        ${shelf.patterns.length
          ? html`<label class="spoken" for="crossing-shelf">Or a pattern of the shelf</label>
              <select id="crossing-shelf" @change=${this.#take} ?disabled=${!session.pattern}>
                <option value="" ?selected=${!to || !to.id}>or a pattern of the shelf</option>
                ${shelf.patterns.map((p) => html`<option value=${p.id} ?selected=${to && to.id === p.id}>${p.name}</option>`)}
              </select>`
          : nothing}
      </form>
      <div class="crossing-how">
        <label for="crossing-near">They may be apart by</label>
        <select id="crossing-near" @change=${(e) => crossings.within(Number(e.target.value))}>
          ${NEAR.map((near, i) => html`<option value=${i} ?selected=${crossings.near === i}>${near.says} (${near.more})</option>`)}
        </select>
        <details><summary>The next one may be${Object.keys(crossings.freedom).length ? '' : ' moved'} …</summary>
          ${FREE.map(
            ([key, value, says]) => html`<label class="tick"><input type="checkbox" data-free=${key} .checked=${key in crossings.freedom}
              @change=${(e) => crossings.let(key, e.target.checked ? value : undefined)}> ${says}</label>`,
          )}
        </details>
      </div>
      ${to ? this.#moments() : html`<p class="quiet crossing-none">Say or choose another pattern: the moments at which this one can become it are marked on the strip and listed here.</p>`}`;
  }

  #moments() {
    const { crossings, session } = this.desk;
    if (crossings.error) return html`<p class="told" data-tone="warn">${sentence(crossings.error)}</p>`;
    const { answer } = crossings;
    if (!answer) return html`<p class="quiet crossing-none" role="status">Comparing …</p>`;
    const { shown } = crossings;
    const stale = answer.asked !== session.pattern;
    const [told] = answer.told;
    const more = answer.crossings.length - shown.length;
    return html`
      <div class="told crossing-told ${stale ? 'stale' : ''}" data-tone=${told.tone} role="status">
        <p>${told.text}</p>
        <details><summary>Why</summary><p>${told.why}</p></details>
      </div>
      <ol class="moments" aria-label="Moments, smoothest first">
        ${shown.map((c, i) => this.#moment(c, i))}
      </ol>
      ${!stale && more > 0 ? html`<p class="quiet">And ${more} rougher.</p>` : nothing}`;
  }

  #moment(crossing, i) {
    const { crossings, session } = this.desk;
    const { text } = crossing.told;
    const at = text.indexOf(': ');
    const chosen = crossings.chosen === i;
    return html`<li class="moment ${chosen ? 'chosen' : ''}">
      <button type="button" @click=${() => this.desk.cross(i)} aria-pressed=${chosen && !!session.passing}>
        <b>${text.slice(0, at)}</b><span>${text.slice(at + 2)}</span>
      </button>
      ${chosen && session.passing ? html`<p class="passage-told">${session.passing.passage.told.text}</p><button type="button" class="link go-on" @click=${() => this.desk.goOn()}>Go on with it: open ${crossings.name}</button>` : nothing}
    </li>`;
  }

  #say(event) {
    event.preventDefault();
    const phrase = this.querySelector('#crossing-phrase').value.trim();
    this.desk.crossings.into(phrase ? { phrase } : null);
  }

  async #take(event) {
    const id = event.target.value;
    if (!id) {
      this.desk.crossings.into(null);
      return;
    }
    try {
      const { pattern } = await this.desk.shelf.load(id);
      this.desk.crossings.into({ id, pattern, name: pattern.name });
    } catch (problem) {
      this.desk.complain(problem);
    }
  }
}

customElements.define('crossing-list', CrossingList);
