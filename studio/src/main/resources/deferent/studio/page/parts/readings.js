import { html, nothing } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { bare, gap, typeset, withUnit } from './units.js';

const CORD = /^(cord|pull|figure_kept|closest_figure|hand_path_kept|slowest|steadiness)\b/;
const FIRST = ['steadiness', 'pull']; // on a hand's card, before the rest
/** @type {[string, (key: string) => boolean][]} */
const GROUPS = [
  ['Take care of', (key) => key.startsWith('care')],
  ['The other link', (key) => key.startsWith('link')],
  ['Reach and room', (key) => /^(reach|room|hands|body)\b/.test(key)],
  ['Left cord', (key) => CORD.test(key) && key.includes('.left')],
  ['Right cord', (key) => CORD.test(key) && key.includes('.right')],
  ['Figures', (key) => key.startsWith('figure.')],
  ['Besides', (key) => !/^(care|link|reach|room|hands|body|figure)\b/.test(key) && !(CORD.test(key) && /\.(left|right)/.test(key))],
];
const TONE = { good: 'Good', warn: 'Caution', danger: '!!' };

/** The readings in plain words, each with its why; then where to begin, and all the numbers. */
class ReadingList extends Part {
  render() {
    const { session } = this.desk;
    const answer = session.answer;
    if (!answer) return html`<p class="quiet">Type a phrase above: the readings come here.</p>`;
    const { readings } = answer;
    const told = this.#whole(answer);
    const head = told.find((t) => t.key === 'link.' + answer.strip.carrier) || told.find((t) => t.key.startsWith('link')) || told[0];
    const first = told.find((t) => t.key === 'first');
    const dangers = told.filter((t) => t.key.startsWith('danger.'));
    const rest = told.filter((t) => t !== head && t !== first && !dangers.includes(t));
    const cautions = (readings.cautions || []).filter((text) => !told.some((t) => t.text === text));
    return html`
      <section class="block headline" aria-label="Link">
        ${dangers.length ? html`<div class="dangers" role="status" aria-label="Danger">${repeat(dangers, (t) => t.key, (t) => this.#told(t))}</div>` : nothing}
        ${head ? this.#headline(head, answer) : nothing}
        ${this.#fit(session)}
      </section>
      ${GROUPS.map(([title, of]) => this.#group(title, rest.filter((t) => of(t.key))))}
      <section class="block begin" aria-labelledby="begin-head">
        <h2 id="begin-head">Where to begin</h2>
        <ol>${answer.begin.map((line) => html`<li>${line}</li>`)}</ol>
      </section>
      ${cautions.length
        ? html`<section class="block care-list" aria-labelledby="care-list-head">
            <h2 id="care-list-head">Take care</h2>
            <ul>${cautions.map((text) => html`<li>${text}</li>`)}</ul>
          </section>`
        : nothing}
      <details class="block numbers"><summary>Numbers</summary>${this.#numbers(answer.numbers)}</details>`;
  }

  #headline(told, answer) {
    return html`
      <div class="verdict" data-tone=${told.tone}>
        <p class="verdict-text">${this.#because(told.text)}</p>
        <details><summary>Why</summary><p>${told.why}</p></details>
        <p class="verdict-how">${answer.detail === 'settled' ? 'Measured with a bound on the error' : 'Quick estimate while you move'}</p>
      </div>`;
  }

  // What it is stands large, the reason after it in the size of the rest.
  #because(text) {
    const at = text.indexOf(', because ');
    return at < 0 ? text : html`${text.slice(0, at + 1)} <span class="because">${text.slice(at + 2)}</span>`;
  }

  // What only comes once things rest is kept from before, pale, so that nothing jumps while a hand drags.
  #whole(answer) {
    const told = answer.readings.told || [];
    if (answer.detail === 'settled') {
      this.settled = told;
      return told;
    }
    if (!this.settled) return told;
    const now = new Map(told.map((t) => [t.key, t]));
    // A danger that is gone is gone at once.
    const kept = this.settled.filter((t) => now.has(t.key) || !/^(danger|care)\b/.test(t.key)).map((t) => now.get(t.key) || { ...t, stale: true });
    const known = new Set(this.settled.map((t) => t.key));
    return [...kept, ...told.filter((t) => !known.has(t.key))];
  }

  #group(title, told) {
    if (!told.length) return nothing;
    const rank = (t) => {
      const [what, , how] = t.key.split('.');
      const at = CORD.test(t.key) ? FIRST.indexOf(what) : -1;
      return at < 0 ? FIRST.length : at + (how ? 0.5 : 0);
    };
    const sorted = [...told.filter((t) => t.tone === 'warn'), ...told.filter((t) => t.tone !== 'warn')].sort((a, b) => rank(a) - rank(b));
    return html`<section class="block" aria-label=${title}>
      <h2>${title}</h2>
      ${repeat(sorted, (t) => t.key, (t) => this.#told(t))}
    </section>`;
  }

  #told(told) {
    return html`
      <div class="told ${told.stale ? 'stale' : ''}" data-tone=${told.tone}>
        <p>${TONE[told.tone] ? html`<span class="tone">${TONE[told.tone]}</span>` : nothing}${told.text}</p>
        ${told.why ? html`<details><summary>Why</summary><p>${told.why}</p></details>` : nothing}
      </div>`;
  }

  #fit(session) {
    const fit = session.fit;
    if (!fit) {
      if (session.linked && !session.fitting) return nothing;
      return html`<button type="button" class="fit-button" ?disabled=${session.fitting} @click=${() => this.desk.act('fit')}>
        ${session.fitting ? 'Fitting' : 'Fit: find sizes that close the link'}</button>`;
    }
    if (fit.failed) return html`<div class="fit-told" role="status">${sentence(fit.failed)}</div>`;
    if (fit.arms) return this.#arms(fit);
    return html`
      <div class="fit-told" role="status">${fit.told}</div>
      ${fit.answers.length
        ? html`<div class="fit-answers" role="radiogroup" aria-label="Answers of the fit, smallest change first">
            ${fit.answers.map(
              (answer, i) => html`<label class="fit-answer">
                <input type="radio" name="fit" .checked=${fit.chosen === i} @change=${() => session.chooseFit(i)}>
                <span>
                  ${answer.changes.length
                    ? answer.changes.map((c) => html`<span class="fit-change">${c.name} ${bare(c, c.from)} → <b>${withUnit(c, c.to)}</b></span>`)
                    : html`<span class="fit-change">${answer.rides ? answer.told : 'as it is'}</span>`}
                  <small>${answer.exact ? 'closes exactly' : 'leaves them ' + gap(answer.gap_left_m) + ' apart'}</small>
                </span>
              </label>`,
            )}
          </div>`
        : nothing}
      ${fit.arms_told
        ? html`<p class="fit-beside">${fit.arms_told}</p>
            <button type="button" class="link" @click=${() => this.desk.act('arms')}>Take that size</button>`
        : nothing}
      <button type="button" class="link other-fit" @click=${() => this.desk.act('fit', fit.carrier === 'left' ? 'right' : 'left')}>Fit the other link instead</button>`;
  }

  // One answer, which the pattern is already, or none.
  #arms(fit) {
    return html`
      <div class="fit-told arms-told" role="status" data-reached=${fit.reached}>${fit.told}</div>
      <details><summary>Why</summary><p>${fit.why}</p></details>
      ${fit.answers.map(
        (answer) => html`<p class="arms-changes">${answer.changes.map(
          (c) => html`<span class="fit-change">${c.name} ${bare(c, c.from)} → <b>${withUnit(c, c.to)}</b></span>`,
        )}</p>`,
      )}`;
  }

  #numbers(tables) {
    return tables.map(
      (table) => html`<table>
        <caption>${table.caption}</caption>
        <thead><tr><td></td>${table.columns.map((column) => html`<th scope="col">${column}</th>`)}</tr></thead>
        <tbody>${table.lines.map(
          ([name, left, right]) => html`<tr><th scope="row">${name}</th><td>${typeset(left)}</td><td>${typeset(right)}</td></tr>`,
        )}</tbody>
      </table>`,
    );
  }
}

customElements.define('reading-list', ReadingList);
