import { html, nothing } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { bare, gap, typeset, withUnit } from './units.js';
import { explained, loadTerms } from './explained.js';

const CORD = /^(cord|pull|figure_kept|closest_figure|hand_path_kept|slowest|steadiness)\b/;
const FIRST = ['closest_figure', 'steadiness', 'pull']; // on a hand's card, before the rest
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
/**
 * What is asked of a pattern first, and which sentences answer it: of the keys the first that has one, of its sentences the most pressing.
 *
 * @type {[question: string, keys: RegExp[]][]}
 */
const QUESTIONS = [
  ['Can I spin it', [/^reach\./, /^slowest\./, /^pull\./]],
  ['Does it link', [/^link\./]],
  ['What to watch', [/^care\./, /^room\./, /^steadiness\./, /^hands\./]],
];
/** @type {[depth: 'plain' | 'numbers', says: string][]} */
const DEPTHS = [['plain', 'Plain'], ['numbers', 'Numbers']];
const PRESSING = { danger: 0, warn: 1, good: 2, note: 3 };
/** Which sentences are of what is shown, where that is not the ideal. */
const SHOWN = { figure: /^figure_kept\./, 'hand-path': /^hand_path_kept\./, closest: /^closest_figure\./ };
const TONE = { good: 'Good', warn: 'Caution', danger: '!!' };

/** The readings: three questions and a sentence each; or all of them, each with its why, where to begin, and all the numbers. */
class ReadingList extends Part {
  connect(desk) {
    super.connect(desk);
    loadTerms().then(() => this.soon());
  }

  updated() {
    const told = this.querySelector('word-told');
    if (told && !told.desk) told.connect(this.desk);
    const { fit } = this.desk.session;
    if (fit && fit !== this.answered) this.querySelector('.fit-told')?.scrollIntoView({ block: 'nearest' });
    this.answered = fit;
  }

  render() {
    const { session } = this.desk;
    const answer = session.answer;
    if (!answer) return html`<p class="quiet">Type a phrase above: the readings come here.</p>`;
    const { desk } = this;
    const told = this.#whole(answer);
    const dangers = told.filter((t) => t.key.startsWith('danger.'));
    const plain = desk.depth === 'plain';
    return html`
      <fieldset class="choice depth">
        <legend class="spoken">How much is told</legend>
        ${DEPTHS.map(
          ([depth, says]) => html`<label title="${says} (N)"><input type="radio" name="depth" value=${depth} aria-keyshortcuts="N" .checked=${desk.depth === depth}
            @change=${() => desk.tell(depth)}><span>${says}</span></label>`,
        )}
      </fieldset>
      ${dangers.length ? html`<div class="dangers" role="status" aria-label="Danger">${repeat(dangers, (t) => t.key, (t) => this.#told(t))}</div>` : nothing}
      ${this.#shown(session, told)}
      ${plain ? this.#plain(answer, told) : this.#numbers(answer, told, dangers)}
      ${this.#cautions(answer.readings.cautions || [])}
      <word-told></word-told>`;
  }

  // What is on the stage where that is not the ideal: what the cord makes of it is told first, and that the rest is the ideal's.
  #shown(session, told) {
    const { show, answer, letting, passing } = session;
    this.ideal = !letting && !passing && Object.values({ left: answer.shown?.left, right: answer.shown?.right }).every((shows) => !shows || shows === 'ideal');
    if (this.ideal) return nothing;
    const of = letting || passing || !SHOWN[show] ? [] : told.filter((t) => SHOWN[show].test(t.key));
    return html`<section class="as-shown" aria-label="As shown">
      ${of.map((t) => this.#told(t))}
      <p class="of-ideal">Below: the ideal, not what is shown.</p>
    </section>`;
  }

  // Three questions, a sentence each.
  #plain(answer, told) {
    const first = (t) => sentences(t.text)[0].replace(/, because .*/, '.');
    const of = (keys) => {
      for (const pressing of ['warn', 'all']) {
        for (const key of keys) {
          const all = told.filter((t) => key.test(t.key) && (pressing === 'all' || t.tone === pressing));
          if (key.test('link.')) all.sort((a, b) => Number(b.key === 'link.' + answer.strip.carrier) - Number(a.key === 'link.' + answer.strip.carrier));
          else all.sort((a, b) => PRESSING[a.tone] - PRESSING[b.tone]);
          if (all.length) return all[0];
        }
      }
      return null;
    };
    return html`<section class="plain ${this.ideal ? '' : 'dimmed'}">
      ${QUESTIONS.map(([question, keys]) => {
        const t = of(keys);
        return t
          ? html`<h2>${question}</h2>
              <p class="plain-told ${t.stale ? 'stale' : ''}" data-tone=${t.tone} @pointerenter=${() => this.desk.stage.point(true)} @pointerleave=${() => this.desk.stage.point(false)}>${this.#sign(t)}${this.#say(first(t))}</p>`
          : nothing;
      })}
      ${this.#fit(this.desk.session)}
    </section>`;
  }

  #explain(term, at) {
    this.querySelector('word-told').show(term, at);
  }

  // A sentence whose words can be tapped.
  #say(text) {
    return explained(text, (term, at) => this.#explain(term, at));
  }

  #sign(told) {
    return TONE[told.tone] ? html`<span class="tone">${TONE[told.tone]}</span>` : nothing;
  }

  // What to mind whatever is spun: once a session, until somebody says that they know it.
  #cautions(cautions) {
    if (!cautions.length || !this.desk.minding) return nothing;
    return html`<section class="block care-list" aria-labelledby="care-list-head">
      <h2 id="care-list-head" tabindex="-1">Take care</h2>
      <ul>${cautions.map((text) => html`<li>${text}</li>`)}</ul>
      <button type="button" class="known" @click=${() => this.desk.mindCautions(false)}>I know these</button>
    </section>`;
  }

  // Everything there is.
  #numbers(answer, told, dangers) {
    const head = told.find((t) => t.key === 'link.' + answer.strip.carrier) || told.find((t) => t.key.startsWith('link')) || told[0];
    const first = told.find((t) => t.key === 'first');
    const rest = told.filter((t) => t !== head && t !== first && !dangers.includes(t));
    return html`
      <section class="block headline ${this.ideal ? '' : 'dimmed'}" aria-label="Link">
        ${head ? this.#headline(head, answer) : nothing}
        ${this.#fit(this.desk.session)}
      </section>
      ${GROUPS.map(([title, of]) => this.#group(title, rest.filter((t) => of(t.key))))}
      <section class="block begin" aria-labelledby="begin-head">
        <h2 id="begin-head">Where to begin</h2>
        <ol>${answer.begin.map((line) => html`<li>${this.#say(line)}</li>`)}</ol>
      </section>
      <details class="block numbers"><summary>Numbers</summary>${this.#tables(answer.numbers)}</details>`;
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
    return at < 0 ? this.#say(text) : html`${this.#say(text.slice(0, at + 1))} <span class="because">${this.#say(text.slice(at + 2))}</span>`;
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
        <p>${this.#sign(told)}${this.#say(told.text)}</p>
        ${told.why ? html`<details><summary>Why</summary><p>${this.#say(told.why)}</p></details>` : nothing}
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
      <div class="fit-told" role="status">${fit.answers[fit.chosen]?.became
        ? html`<p class="fit-became">${this.#say(fit.answers[fit.chosen].became)}</p>`
        : nothing}${this.#say(fit.told)}</div>
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
      <div class="fit-told arms-told" role="status" data-reached=${fit.reached}>${this.#say(fit.told)}
        ${fit.answers.map((answer) => html`<p class="fit-became">${this.#say(answer.became)}</p>`)}</div>
      <details><summary>Why</summary><p>${this.#say(fit.why)}</p></details>
      ${fit.answers.map(
        (answer) => html`<p class="arms-changes">${answer.changes.map(
          (c) => html`<span class="fit-change">${c.name} ${bare(c, c.from)} → <b>${withUnit(c, c.to)}</b></span>`,
        )}</p>`,
      )}`;
  }

  #tables(tables) {
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

/** @param {string} text */
function sentences(text) {
  return text.split(/(?<=[.!?])\s+(?=[A-Z])/);
}

customElements.define('reading-list', ReadingList);
