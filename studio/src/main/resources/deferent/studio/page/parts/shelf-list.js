import { html, nothing } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { labels, ORDERS, shown, UNLABELLED } from '../state/shelf.js';
import '../stage/thumb.js';

const FEW = 2; // from so many patterns on they can be searched and ordered
const AHEAD = '300px'; // how far out of sight a thumbnail is made ready
const KEPT = 'deferent.shelf';

/**
 * The saved patterns: hundreds of them, found as one types, in an order, in groups by their labels. Each has its thumbnail while it is
 * near to being seen; it moves under the pointer and in focus. Removing can be undone, and what could be lost is asked about first.
 */
class ShelfList extends Part {
  constructor() {
    super();
    this.find = '';
    /** @type {{ order: import('../state/shelf.js').Order, grouped: boolean }} */
    this.how = { order: 'name', grouped: false, ...JSON.parse(localStorage.getItem(KEPT) || '{}') };
    /** @type {string | null} */
    this.renaming = null;
    /** Of which pattern the name was that stands in the field. @type {string | undefined} */
    this.named = undefined;
    /** @type {import('../state/keeping.js').Asked | null} */
    this.answering = null;
    /** @type {string | undefined} */
    this.typed = undefined;
    /** @type {string | undefined} */
    this.typedLabels = undefined;
    /** @type {Set<Element>} */
    this.watched = new Set();
    this.opened = false; // whether anybody has looked yet: hundreds of cards are not made before
    this.watch = new IntersectionObserver((entries) => entries.forEach((entry) => this.#seen(entry)), { rootMargin: AHEAD });
  }

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.shelf.addEventListener('state', () => this.soon());
    desk.saving.addEventListener('state', () => this.soon());
    const looked = new IntersectionObserver((entries) => {
      // On a busy machine several come at once, and the first says what was.
      if (!entries.some((entry) => entry.isIntersecting)) return;
      looked.disconnect();
      this.opened = true;
      this.requestUpdate();
    });
    looked.observe(this);
  }

  // Another pattern of the shelf has another name, whatever was typed for the one before.
  willUpdate() {
    const { session, saving } = this.desk;
    const id = session.shelved?.id;
    if (id !== this.named) this.typed = this.typedLabels = undefined;
    this.named = id;
    if (saving.asked && saving.asked !== this.answering) this.updateComplete.then(() => this.querySelector('.conflict button')?.focus());
    this.answering = saving.asked;
  }

  render() {
    const { shelf, session } = this.desk;
    const made = [shelf.patterns, this.find, this.how, this.renaming, session.shelved?.id, session.unsaved, this.opened];
    return html`
      ${this.#form()}
      ${this.#question()}
      ${shelf.problem ? html`<p class="told" data-tone="warn">${sentence(shelf.problem)}</p>` : nothing}
      ${guard(made, () => (this.opened ? this.#cards() : nothing))}
      ${this.#motions()}
      ${this.#notListed()}`;
  }

  #cards() {
    const { shelf } = this.desk;
    const groups = shown(shelf.patterns, { find: this.find, ...this.how });
    const found = new Set(groups.flatMap((g) => g.patterns)).size;
    return html`${shelf.patterns.length >= FEW ? this.#finder(found) : nothing}
      ${groups.map(
        ({ label, patterns }) => html`${this.how.grouped
            ? html`<h2 class="shelf-head ${label === UNLABELLED ? 'quiet' : ''}">${label} <span class="quiet">${patterns.length}</span></h2>`
            : nothing}
          <ul class="shelf" aria-label=${label ? 'Shelf, ' + label : 'Shelf'}>
            ${repeat(patterns, (/** @type {import('../state/shelf.js').Listed} */ p) => p.id, (/** @type {import('../state/shelf.js').Listed} */ p) => this.#card(p))}
          </ul>`,
      )}
      ${shelf.patterns.length ? nothing : html`<p class="quiet">Nothing saved yet.</p>`}
      ${shelf.patterns.length && !found ? html`<p class="quiet">Nothing on the shelf says all of that.</p>` : nothing}`;
  }

  #form() {
    const { session } = this.desk;
    const { shelved, answer } = session;
    return html`<form class="save" @submit=${this.#save}>
      <label for="save-name">Name</label>
      <div class="save-row">
        <input id="save-name" type="text" maxlength="120" autocomplete="off" placeholder=${answer ? answer.phrase || answer.name : 'name of the pattern'}
          .value=${this.typed ?? shelved?.name ?? ''} @input=${(/** @type {any} */ e) => (this.typed = e.target.value)}>
        <button type="submit" class="primary" ?disabled=${!session.pattern}>${shelved ? 'Save' : 'Save as new'}</button>
      </div>
      <label for="save-labels">Labels</label>
      <div class="save-row">
        <input id="save-labels" type="text" maxlength="400" autocomplete="off" placeholder="none; commas between them"
          .value=${this.typedLabels ?? (shelved?.labels ?? []).join(', ')} @input=${(/** @type {any} */ e) => (this.typedLabels = e.target.value)}>
      </div>
      ${shelved
        ? html`<p class="quiet">Saves over <em>${shelved.name}</em>${session.unsaved ? ', which has changes that are not saved' : ''}.
            <button type="button" class="link" @click=${() => this.#put({ copy: true })}>Save as a new pattern instead</button></p>`
        : html`<p class="quiet">Patterns are files in your shelf folder.</p>`}
    </form>`;
  }

  /** @param {number} found */
  #finder(found) {
    const { shelf } = this.desk;
    const all = shelf.patterns.length;
    return html`<search class="finder">
      <label class="spoken" for="shelf-find">Find on the shelf</label>
      <input id="shelf-find" type="text" autocomplete="off" placeholder="Find by name, phrase or label" .value=${this.find}
        @input=${(/** @type {any} */ e) => this.#look(e.target.value)} @keydown=${this.#findKey}>
      <label class="spoken" for="shelf-order">Order</label>
      <select id="shelf-order" @change=${(/** @type {any} */ e) => this.#arrange({ order: e.target.value })}>
        ${Object.entries(ORDERS).map(([order, says]) => html`<option value=${order} ?selected=${this.how.order === order}>${says}</option>`)}
      </select>
      <label class="tick"><input type="checkbox" id="shelf-grouped" .checked=${this.how.grouped}
        @change=${(/** @type {any} */ e) => this.#arrange({ grouped: e.target.checked })}> in groups by label</label>
      <p class="quiet" role="status">${this.find ? found + ' of ' + all : all + ' patterns'}</p>
    </search>`;
  }

  /** @param {string} text */
  #look(text) {
    this.find = text;
    this.requestUpdate();
  }

  /** @param {Partial<ShelfList['how']>} how */
  #arrange(how) {
    this.how = { ...this.how, ...how };
    localStorage.setItem(KEPT, JSON.stringify(this.how));
    this.requestUpdate();
  }

  /** @param {KeyboardEvent} event */
  #findKey(event) {
    if (event.key === 'Escape' && this.find) {
      event.stopPropagation();
      this.#look('');
    } else if (event.key === 'Enter' || event.key === 'ArrowDown') {
      event.preventDefault();
      this.querySelector('.card-open')?.focus();
    }
  }

  // One quiet line; unfolded, each file of the folder that is not on the shelf with what keeps it off.
  #notListed() {
    const others = this.desk.shelf.notListed;
    if (!others.length) return nothing;
    return html`<details class="not-listed quiet">
      <summary>${others.length === 1 ? 'One file' : others.length + ' files'} in the folder ${others.length === 1 ? 'is' : 'are'} not on the shelf</summary>
      <ul>${others.map((n) => html`<li><b>${n.file}</b>: ${n.why}</li>`)}</ul>
    </details>`;
  }

  /** @param {import('../state/shelf.js').Listed} pattern */
  #card(pattern) {
    const { session, saving } = this.desk;
    const open = session.shelved?.id === pattern.id;
    if (this.renaming === pattern.id) return this.#changing(pattern);
    const phrase = pattern.phrase && pattern.phrase !== pattern.name ? pattern.phrase : pattern.note;
    return html`
      <li class="card ${open ? 'open' : ''}" data-id=${pattern.id}>
        <button type="button" class="card-open" @click=${() => saving.open(pattern)} aria-current=${open ? 'true' : 'false'}>
          <span class="card-thumb" data-revision=${pattern.revision} aria-hidden="true"></span>
          <span class="card-words"><b>${pattern.name}${open && session.unsaved ? html` <i class="card-changed">changed, not saved</i>` : nothing}</b>
            ${phrase ? html`<span class="card-phrase">${phrase}</span>` : nothing}
            ${pattern.disagrees ? html`<span>${pattern.disagrees}</span>` : nothing}</span>
        </button>
        <span class="card-verbs">
          ${pattern.tags.map((tag) => html`<button type="button" class="link card-label" title="Show what is labelled ${tag}" @click=${() => this.#look(tag)}>${tag}</button>`)}
          <button type="button" class="link" aria-label="Name and labels of ${pattern.name}" @click=${() => this.#startRenaming(pattern)}>Name, labels</button>
          ${pattern.phrase ? html`<button type="button" class="link" aria-label="Practice of ${pattern.name}" @click=${() => this.desk.practice.open(pattern.phrase)}>Practice</button>` : nothing}
          <button type="button" class="link" aria-label="Remove ${pattern.name}" @click=${() => saving.remove(pattern)}>Remove</button>
        </span>
      </li>`;
  }

  /** @param {import('../state/shelf.js').Listed} pattern */
  #changing(pattern) {
    const left = (/** @type {KeyboardEvent} */ e) => e.key === 'Escape' && this.#stopRenaming();
    return html`<li class="card" data-id=${pattern.id}><form class="rename" @submit=${(/** @type {Event} */ e) => this.#rename(e, pattern)} @keydown=${left}>
      <label for="rename">New name of ${pattern.name}</label>
      <input id="rename" type="text" maxlength="120" .value=${pattern.name}>
      <label for="relabel">Labels</label>
      <input id="relabel" type="text" maxlength="400" .value=${pattern.tags.join(', ')} placeholder="none; commas between them">
      <p><button type="submit" class="primary">Keep it so</button> <button type="button" @click=${() => this.#stopRenaming()}>Leave it</button></p></form></li>`;
  }

  // Motions under names of the user's own, which phrases can say.
  #motions() {
    const { session, shelf } = this.desk;
    const pairing = session.pattern && session.pattern.pairing;
    return html`
      <h2 class="shelf-head">Motions of your own</h2>
      <p class="quiet">Give a hand’s motion a name, and phrases can say it.</p>
      ${pairing
        ? html`<form class="name-motion" @submit=${this.#nameMotion}>
            <label class="spoken" for="motion-side">Whose motion</label>
            <select id="motion-side">${['left', 'right'].map((side) => html`<option value=${side} ?disabled=${pairing[side].hand.path === 'riding'}>${side} hand</option>`)}</select>
            <label class="spoken" for="motion-name">Its name</label>
            <input id="motion-name" type="text" maxlength="60" required placeholder="a name to say" autocomplete="off">
            <button type="submit">Name it</button>
          </form>`
        : nothing}
      ${shelf.motions.length
        ? html`<ul class="shelf" aria-label="Named motions">${repeat(shelf.motions, (/** @type {import('../state/shelf.js').ListedMotion} */ m) => m.id, (/** @type {import('../state/shelf.js').ListedMotion} */ m) => html`<li class="card motion"><span class="card-words"><b>${m.name}</b><span>${m.note || ''}</span></span>
            <span class="card-verbs"><button type="button" class="link" aria-label="Remove ${m.name}" @click=${() => this.desk.saving.removeMotion(m)}>Remove</button></span></li>`)}</ul>`
        : nothing}`;
  }

  /** @param {Event} event */
  async #nameMotion(event) {
    event.preventDefault();
    const name = this.querySelector('#motion-name').value.trim();
    if (!name) return;
    await this.desk.saving.nameMotion(this.querySelector('#motion-side').value, name);
    this.querySelector('#motion-name').value = '';
  }

  // What has to be answered before anything could be lost.
  #question() {
    const { saving } = this.desk;
    const { asked } = saving;
    switch (asked?.kind) {
      case 'changed':
        return question(html`<b>${asked.name}</b> was changed elsewhere since you opened it. Nothing of either is lost; say which to keep.`, [
          ['Keep both: save mine as a new pattern', () => saving.settleChanged('copy')],
          ['Open the other one', () => saving.settleChanged('theirs')],
          ['Save mine over it', () => saving.settleChanged('mine')],
        ]);
      case 'twin':
        return question(html`There is one called <b>${asked.twin.name}</b> already.`, [
          [`Keep both: this one as “${this.desk.shelf.freeName(asked.saving.name)}”`, () => saving.settleTwin('both')],
          ['Put this in its place', () => saving.settleTwin('place')],
          ['Another name', () => this.#anotherName()],
        ]);
      case 'leaving':
        return question(html`<b>${asked.name}</b> has changes that are not saved.`, [
          [`Save them, then open ${asked.to.name}`, () => saving.settleLeaving('save')],
          [`Open ${asked.to.name} without saving`, () => saving.settleLeaving('leave')],
          ['Stay here', () => saving.settleLeaving('stay')],
        ]);
      default:
        return nothing;
    }
  }

  async #anotherName() {
    const { saving } = this.desk;
    this.typed = saving.asked?.kind === 'twin' ? saving.asked.saving.name : this.typed;
    await saving.settleTwin('another');
    await this.updateComplete;
    this.querySelector('#save-name').select();
  }

  /** @param {Event} event */
  #save(event) {
    event.preventDefault();
    this.#put({});
  }

  /** @param {{ copy?: boolean }} how */
  async #put(how) {
    const name = (this.typed ?? '').trim();
    const typed = this.typedLabels === undefined ? {} : { labels: labels(this.typedLabels) };
    if (!(await this.desk.saving.save({ name, ...typed, ...how }))) return;
    this.typed = this.typedLabels = undefined;
    this.requestUpdate();
  }

  /** @param {import('../state/shelf.js').Listed} pattern */
  #startRenaming(pattern) {
    this.renaming = pattern.id;
    this.requestUpdate();
    this.updateComplete.then(() => this.querySelector('#rename').select());
  }

  #stopRenaming() {
    this.renaming = null;
    this.requestUpdate();
  }

  /**
   * @param {Event} event
   * @param {import('../state/shelf.js').Listed} pattern
   */
  async #rename(event, pattern) {
    event.preventDefault();
    const name = this.querySelector('#rename').value.trim() || pattern.name;
    const now = labels(this.querySelector('#relabel').value);
    const same = name === pattern.name && now.join() === pattern.tags.join();
    if (same || (await this.desk.saving.rename(pattern, name, now))) this.#stopRenaming();
  }

  // Thumbnails -------------------------------------------------------------------------------------------------------------------

  updated() {
    const spots = new Set(this.querySelectorAll('.card-thumb'));
    for (const spot of this.watched) if (!spots.has(spot)) this.watch.unobserve(spot);
    for (const spot of spots) if (!this.watched.has(spot)) this.watch.observe(spot);
    this.watched = spots;
    const theme = document.documentElement.dataset.theme;
    for (const thumb of this.querySelectorAll('.card-thumb > moving-thumb')) {
      thumb.theme = theme;
      if (thumb.revision !== thumb.parentElement.dataset.revision) this.#fill(thumb);
    }
  }

  /** @param {IntersectionObserverEntry} entry */
  #seen({ target, isIntersecting }) {
    if (!isIntersecting) {
      target.replaceChildren();
    } else if (!target.firstChild) {
      const thumb = /** @type {any} */ (document.createElement('moving-thumb'));
      thumb.under = target.closest('.card');
      thumb.theme = document.documentElement.dataset.theme;
      target.append(thumb);
      this.#fill(thumb);
    }
  }

  /** @param {any} thumb */
  async #fill(thumb) {
    const { revision } = thumb.parentElement.dataset;
    thumb.revision = revision;
    try {
      thumb.moves = await this.desk.shelf.moves(thumb.closest('.card').dataset.id, revision);
    } catch {
      thumb.revision = null; // asked for again when the list is next drawn
    }
  }
}

/**
 * @param {unknown} text
 * @param {[string, () => void][]} answers
 */
function question(text, answers) {
  return html`<div class="conflict" role="alert"><p>${text}</p>
    ${answers.map(([says, does]) => html`<button type="button" @click=${does}>${says}</button>`)}</div>`;
}

customElements.define('shelf-list', ShelfList);
