import { html, nothing } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { gap } from './units.js';
import { ORDERS, SPACES } from '../state/seek.js';
import '../stage/thumb.js';

/** @type {[keyof Protocol.Filter, string][]} */
const TICKS = [['exact', 'linked exactly'], ['new', 'new to the shelf']];
/** @type {[keyof Protocol.Filter, string, string, number, number][]} */
const AMOUNTS = [
  ['slowest_cycles_per_min', 'cords taut at', 'a minute', 1, 600],
  ['growth', 'a slip grows at most', 'times before an answer', 0.01, 1000000],
  ['symmetry', 'symmetry of at least', 'a round', 0, 48],
  ['contrast', 'one figure at least', 'times the other', 1, 100],
];

// Something to try is called by its idea; its sizes stand below.
const title = (answer) => (answer.against ? answer.idea : answer.said);

/** Finds pairings that link: moving thumbnails that come as they are found; each opens on the stage. */
class SeekList extends Part {
  connect(desk) {
    super.connect(desk);
    desk.seek.addEventListener('state', () => this.soon());
    desk.seek.look();
  }

  render() {
    const { seek, session } = this.desk;
    return html`
      <div class="seek-verbs">
        ${seek.running
          ? html`<button type="button" class="primary" @click=${() => seek.stop()}>Stop</button>`
          : html`<button type="button" class="primary seek-all" @click=${() => seek.ask()}>Seek what links</button>`}
        <button type="button" class="seek-like" ?disabled=${!session.pattern} @click=${() => seek.ask(true)}
          title="Pairings most like the one on the stage">More like this</button>
      </div>
      <div class="seek-how">
        <label for="seek-space">among</label>
        <select id="seek-space" @change=${(e) => seek.set('motions', Number(e.target.value))}>
          ${SPACES.map(([n, says]) => html`<option value=${n} ?selected=${seek.motions === n}>${says}</option>`)}
        </select>
        <label for="seek-order">first</label>
        <select id="seek-order" ?disabled=${seek.asked && seek.like} title=${seek.like ? 'The most alike come first' : ''} @change=${(e) => seek.set('order', e.target.value)}>
          ${Object.entries(ORDERS).map(([word, says]) => html`<option value=${word} ?selected=${seek.order === word}>${says}</option>`)}
        </select>
      </div>
      ${seek.pages
        ? html`<div class="seek-verbs seek-pages">
            ${seek.leafed
              ? html`<button type="button" ?disabled=${seek.running || seek.page <= 1} @click=${() => seek.leaf(seek.page - 1)}>Before</button>
                <span class="quiet">page ${seek.page} of ${seek.pages}</span>
                <button type="button" ?disabled=${seek.running || seek.page >= seek.pages} @click=${() => seek.leaf(seek.page + 1)}>Next</button>`
              : html`<button type="button" @click=${() => seek.leaf(1)}>Leaf through what was found elsewhere</button>`}
          </div>`
        : nothing}
      <details class="seek-only"><summary>Only${Object.keys(seek.filter).length ? html` <b>(${Object.keys(seek.filter).length})</b>` : ''} …</summary>
        ${TICKS.map(
          ([key, says]) => html`<label class="tick"><input type="checkbox" data-only=${key} .checked=${!!seek.filter[key]}
            @change=${(e) => seek.only(key, e.target.checked || undefined)}> ${says}</label>`,
        )}
        <label class="tick"><input type="checkbox" data-only="reachable" .checked=${seek.filter.reachable !== false}
          @change=${(e) => seek.only('reachable', e.target.checked ? undefined : false)}> as large as my arms reach</label>
        ${AMOUNTS.map(
          ([key, says, unit, least, most]) => html`<label class="amount"><span>${says}</span>
            <input type="number" inputmode="decimal" data-only=${key} min=${least} max=${most} step="any" .value=${String(seek.filter[key] ?? '')}
              @change=${(e) => this.#amount(key, e.target, least, most)}><span>${unit}</span></label>`,
        )}
      </details>
      ${this.#state(seek)}
      <ul class="finds" aria-label="Found" @keydown=${this.#key}>
        ${repeat(seek.found.values(), (a) => a.key, (a, i) => html`${this.#find(a, i)}${seek.chosen === a.key ? this.#chosen(a) : nothing}`)}
      </ul>`;
  }

  #state(seek) {
    if (seek.error) return html`<p class="told" data-tone="warn" role="status">${sentence(seek.error)}</p>`;
    if (seek.running) return html`<p class="quiet seek-state" role="status">${seek.progress} …</p>`;
    if (seek.told) {
      return html`<div class="seek-state" role="status">
        ${seek.told.map((t) => html`<p class="told">${t.text}</p>`)}
        <details><summary>Why</summary><p>${seek.told[0].why}</p></details></div>`;
    }
    return html`<p class="quiet seek-state">Looks through all pairs of motions for those in which one head goes where the other hand goes. A saves the one in focus on the shelf.</p>`;
  }

  // Under its row, so that nothing above it moves.
  #chosen(answer) {
    const { seek } = this.desk;
    return html`<li class="find-told">
      <p><b>${title(answer)}</b></p>
      ${title(answer) === answer.said ? nothing : html`<p>${answer.said}</p>`}
      <p>${answer.told.text}</p>
      ${this.#family(answer)}
      <details><summary>Why</summary><p>${answer.told.why}</p></details>
      <p class="seek-verbs"><button type="button" ?disabled=${seek.saved.has(answer.key)} @click=${() => this.desk.saving.saveFound(answer)}>${seek.saved.has(answer.key) ? 'On the shelf' : 'Save on the shelf'}</button></p>
    </li>`;
  }

  // What else it stands for: a press puts it on the stage.
  #family(answer) {
    const said = answer.family.members.filter((m) => m.phrase);
    if (!answer.against || !said.length) return nothing;
    return html`<p class="seek-verbs">${said.map(
      (m) => html`<button type="button" class="find-kin" title=${m.phrase} @click=${() => this.desk.session.say(m.phrase)}>${m.idea}</button>`,
    )}</p>`;
  }

  #find(answer, i) {
    const { seek } = this.desk;
    const chosen = seek.chosen === answer.key;
    const saved = seek.saved.has(answer.key);
    const how = answer.against?.length ? 'not for a first try' : answer.exact ? 'exact' : gap(answer.gap_m) + ' apart at best';
    return html`<li>
      <button type="button" class="find ${chosen ? 'chosen' : ''}" data-key=${answer.key} tabindex=${(seek.chosen ? chosen : i === 0) ? 0 : -1}
        aria-pressed=${chosen} aria-keyshortcuts="A" title=${answer.said} @click=${() => seek.choose(answer.key)}>
        <moving-thumb .moves=${answer.moves} .theme=${document.documentElement.dataset.theme}></moving-thumb>
        <span class="find-said">${title(answer)}</span>
        <small>${how}${saved ? ' · saved' : ''}</small>
      </button></li>`;
  }

  #amount(key, field, least, most) {
    const value = Number(field.value);
    if (field.value === '') this.desk.seek.only(key);
    else if (value >= least && value <= most) this.desk.seek.only(key, key === 'symmetry' ? Math.round(value) : value);
    else field.value = String(this.desk.seek.filter[key] ?? '');
  }

  // Arrow keys go through the grid as it stands on the screen; A saves.
  #key(event) {
    const button = event.target.closest('.find');
    if (!button || event.ctrlKey || event.metaKey || event.altKey) return;
    const all = [...this.querySelectorAll('.find')];
    const i = all.indexOf(button);
    const columns = all.filter((b) => Math.abs(b.offsetTop - all[0].offsetTop) < 4).length;
    const to = { ArrowRight: i + 1, ArrowLeft: i - 1, ArrowDown: i + columns, ArrowUp: i - columns, Home: 0, End: all.length - 1 }[event.key];
    if (to !== undefined) {
      event.preventDefault();
      event.stopPropagation();
      if (all[to]) all[to].focus();
    } else if (event.key.toLowerCase() === 'a') {
      event.preventDefault();
      event.stopPropagation();
      this.desk.saving.saveFound(this.desk.seek.found.get(button.dataset.key));
    }
  }
}

customElements.define('seek-list', SeekList);
