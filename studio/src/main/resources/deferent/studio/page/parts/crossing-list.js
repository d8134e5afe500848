import { html, nothing } from 'lit';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { repeat } from 'lit/directives/repeat.js';
import { FREE, NEAR } from '../state/crossings.js';
import '../stage/thumb.js';

/** What could come next: another pattern, the moments at which it could begin, and the passage there. */
class CrossingList extends Part {
  /** @param {import('../main.js').Desk} desk */
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
        <label class="spoken" for="crossing-phrase">Another pattern that could come next</label>
        <div class="save-row">
          <input id="crossing-phrase" type="text" maxlength="2000" autocomplete="off" spellcheck="false" placeholder="into which? say a phrase, or pick below" .value=${to && to.phrase ? to.phrase : ''}>
          <button type="submit" class=${to ? 'primary' : ''} ?disabled=${!session.pattern}>Look</button>
        </div>
        ${shelf.patterns.length
          ? html`<label class="spoken" for="crossing-shelf">Or a pattern of the shelf</label>
              <select id="crossing-shelf" @change=${this.#take} ?disabled=${!session.pattern}>
                <option value="" ?selected=${!to || !to.id}>or a pattern of the shelf</option>
                ${shelf.patterns.map((p) => html`<option value=${p.id} ?selected=${to && to.id === p.id}>${p.name}</option>`)}
              </select>`
          : nothing}
      </form>
      ${to && !to.key ? html`<button type="button" class="link next-all" @click=${() => crossings.into(null)}>All that could come next</button>${this.#moments()}` : this.#cards()}
      <div class="crossing-how">
        <label for="crossing-near">They may be apart by</label>
        <select id="crossing-near" @change=${(/** @type {any} */ e) => crossings.within(Number(e.target.value))}>
          ${NEAR.map((near, i) => html`<option value=${i} ?selected=${crossings.near === i}>${near.says} (${near.more})</option>`)}
        </select>
        <details><summary>The next one may be${Object.keys(crossings.freedom).length ? '' : ' moved'} …</summary>
          ${FREE.map(
            ([key, value, says]) => html`<label class="tick"><input type="checkbox" data-free=${key} .checked=${key in crossings.freedom}
              @change=${(/** @type {any} */ e) => crossings.let(key, e.target.checked ? value : undefined)}> ${says}</label>`,
          )}
        </details>
      </div>`;
  }

  // What could come next, each with its moving picture; the chosen one is told under its row.
  #cards() {
    const { crossings, session } = this.desk;
    const { next, finding, nextError, to } = crossings;
    if (nextError) return html`<p class="told" data-tone="warn" role="status">${sentence(nextError)} <button type="button" @click=${() => crossings.again()}>Ask again</button></p>`;
    if (!next.size && !finding && session.pattern) {
      const wider = NEAR[crossings.near + 1];
      return html`<p class="told next-none" role="status">Nothing comes within ${NEAR[crossings.near].says} of it.
        ${wider ? html`<button type="button" class="primary" @click=${() => crossings.within(crossings.near + 1)}>Let them be ${wider.says} apart</button>` : nothing}</p>`;
    }
    return html`<p class="quiet" role="status">${finding ? 'Looking for what could come next …' : 'Change one hand, or go into a pattern from your shelf: smoothest first. Press one to see it.'}</p>
      <ul class="finds nexts" aria-label="What could come next" @keydown=${this.#key}>
        ${repeat(next.values(), (/** @type {any} */ one) => one.key, (/** @type {any} */ one) => html`<li>
          <button type="button" class="find next-one ${to && to.key === one.key ? 'chosen' : ''}" aria-pressed=${!!to && to.key === one.key} title=${one.name} @click=${() => this.#enter(one.key)}>
            <moving-thumb .moves=${one.moves} .theme=${document.documentElement.dataset.theme}></moving-thumb>
            <span class="find-said">${called(one)}</span>
            <small>${extra(one.roughness_weights)}</small>
          </button></li>${to && to.key === one.key ? html`<li class="find-told">${this.#moments()}</li>` : nothing}`)}
      </ul>`;
  }

  /** @param {string} key */
  async #enter(key) {
    const { crossings } = this.desk;
    await crossings.enter(key);
    if (crossings.to?.key === key && crossings.shown.length) await this.desk.cross(0);
  }

  // Arrow keys go through the cards as they stand on the screen.
  /** @param {any} event */
  #key(event) {
    const button = event.target.closest('.next-one');
    if (!button) return;
    const all = /** @type {HTMLElement[]} */ ([...this.querySelectorAll('.next-one')]);
    const i = all.indexOf(button);
    const columns = all.filter((b) => Math.abs(b.offsetTop - all[0].offsetTop) < 4).length;
    const at = /** @type {Record<string, number>} */ ({ ArrowRight: i + 1, ArrowLeft: i - 1, ArrowDown: i + columns, ArrowUp: i - columns, Home: 0, End: all.length - 1 })[event.key];
    if (at === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    all[at]?.focus();
  }

  #moments() {
    const { crossings, session } = this.desk;
    if (crossings.error) return html`<p class="told" data-tone="warn">${sentence(crossings.error)} <button type="button" @click=${() => crossings.again()}>Ask again</button></p>`;
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
        ${stale ? nothing : crossings.mends.map((mend) => html`<button type="button" class="mend" @click=${mend.does}>${mend.says}</button> `)}
      </div>
      <ol class="moments" aria-label="Moments, smoothest first">
        ${shown.map((/** @type {any} */ c, /** @type {number} */ i) => this.#moment(c, i))}
      </ol>
      ${!stale && more > 0 ? html`<p class="quiet">And ${more} rougher.</p>` : nothing}`;
  }

  /** @param {any} crossing @param {number} i */
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

  /** @param {Event} event */
  #say(event) {
    event.preventDefault();
    const phrase = /** @type {HTMLInputElement} */ (this.querySelector('#crossing-phrase')).value.trim();
    this.desk.crossings.into(phrase ? { phrase } : null);
  }

  /** @param {any} event */
  async #take(event) {
    const id = event.target.value;
    if (!id) {
      this.desk.crossings.into(null);
      return;
    }
    try {
      const { pattern } = await this.desk.shelf.load(id);
      this.desk.crossings.into({ id, pattern, name: pattern.name });
    } catch (/** @type {any} */ problem) {
      this.desk.complain(problem);
    }
  }
}

// The hand that changes and what it goes into; a pattern of the shelf by its name.
/** @param {{ name: string, who: string }} one */
function called({ name, who }) {
  const [left, right] = name.split(',')[0].split(' vs ');
  if (who === 'both' || !right) return name;
  return html`<small>${who} hand</small> ${who === 'left' ? left : right}`;
}

/** @param {number} weights */
function extra(weights) {
  return weights < 0.05 ? 'no extra pull' : 'extra pull: ' + weights.toFixed(1) + ' times the head’s weight';
}

customElements.define('crossing-list', CrossingList);
