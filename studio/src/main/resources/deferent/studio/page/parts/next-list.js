// @ts-check
import { html, nothing } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import { savedLine } from './saved-line.js';
import { gradeSign, gradeWord } from './set-signs.js';
import { GRADES } from '../state/transitions.js';
import '../stage/thumb.js';

/** What could come next: other patterns, the ways into one of them, and each way played. */
class NextList extends Part {
  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.shelf.addEventListener('state', () => this.soon());
    desk.transitions.addEventListener('state', () => this.soon());
  }

  render() {
    const { transitions, shelf, session } = this.desk;
    const { to } = transitions;
    return html`
      <form class="next-into" @submit=${this.#say}>
        <label class="spoken" for="next-phrase">Another pattern that could come next</label>
        <div class="save-row">
          <input id="next-phrase" type="text" maxlength="2000" autocomplete="off" spellcheck="false" placeholder="into which? say a phrase, or pick below" .value=${to && to.phrase ? to.phrase : ''}>
          <button type="submit" class=${to && !to.key ? 'primary' : ''} ?disabled=${!session.pattern}>Look</button>
        </div>
        ${shelf.patterns.length
          ? html`<label class="spoken" for="next-shelf">Or a pattern of the shelf</label>
              <select id="next-shelf" @change=${this.#take} ?disabled=${!session.pattern}>
                <option value="" ?selected=${!to || !to.id}>or a pattern of the shelf</option>
                ${shelf.patterns.map((p) => html`<option value=${p.id} ?selected=${!!to && to.id === p.id}>${p.name}</option>`)}
              </select>`
          : nothing}
        <label for="next-hardest">At most</label>
        <select id="next-hardest" @change=${(/** @type {any} */ e) => transitions.within(e.target.value)}>
          ${GRADES.map(([grade, says]) => html`<option value=${grade} ?selected=${transitions.hardest === grade}>${says}</option>`)}
        </select>
      </form>
      ${to && !to.key ? html`<button type="button" class="link next-all" @click=${() => transitions.into(null)}>All that could come next</button>${this.#ways()}` : this.#rows()}`;
  }

  // What could come next, each with its moving picture; the ways into the chosen one are told under its row.
  #rows() {
    const { transitions, session } = this.desk;
    const { next, to, nextError } = transitions;
    if (nextError) return html`<p class="told" data-tone="warn" role="status">${sentence(nextError)} <button type="button" @click=${() => transitions.again()}>Ask again</button></p>`;
    if (!session.pattern) return nothing;
    return html`${this.#state()}
      <ul class="nexts" aria-label="What could come next" @keydown=${this.#key}>
        ${repeat(
          next.values(),
          (/** @type {import('../state/transitions.js').Next} */ one) => one.key,
          (/** @type {import('../state/transitions.js').Next} */ one) => {
            const chosen = to?.key === one.key;
            return html`<li>
          <button type="button" class="next-one ${chosen ? 'chosen' : ''}" aria-pressed=${chosen} title=${one.name} @click=${() => this.#enter(one.key)}>
            <moving-thumb .moves=${one.moves} .theme=${document.documentElement.dataset.theme}></moving-thumb>
            <span class="next-said"><b>${called(one)}</b><span>${one.transition.told.text.replace(/: [^:]*\.$/, '.')}</span>${hard(one.transition)}</span>
          </button></li>${chosen ? html`<li class="next-told">${this.#ways()}</li>` : nothing}`;
          },
        )}
      </ul>`;
  }

  // How far the search has come, and what it left out.
  #state() {
    const { transitions } = this.desk;
    const { finding, progress, next, whole } = transitions;
    if (finding)
      return html`<p class="quiet next-state" role="status">Looking for what could come next${progress ? ', ' + progress : ''} …
        <button type="button" class="link" @click=${() => transitions.stop()}>Stop</button></p>`;
    if (!whole) return nothing;
    const left = out(whole);
    if (!next.size) return this.#none(whole, left);
    return html`<p class="quiet next-state" role="status">${whole.complete ? 'Easiest first.' : `Stopped after ${whole.tried} of ${whole.all}, easiest first.`} Press one to see how it goes over. ${left}
      ${whole.complete ? nothing : html`<button type="button" class="link" @click=${() => transitions.again()}>Look on</button>`}</p>`;
  }

  // Why nothing leads on, and what would help.
  /** @param {any} whole @param {string} left */
  #none({ complete, none, why, why_here: here }, left) {
    const { transitions } = this.desk;
    const { harder } = transitions;
    return html`<div class="told next-none" role="status">
      <p>${complete || why ? `Nothing leads on from here${why ? (here ? ': ' + why.replace(/one of them/g, 'this one') : ', mostly because ' + why) : ''}.` : 'Nothing was found so far.'}</p>
      ${left ? html`<p class="quiet">${left}</p>` : nothing}
      ${here && none === 'reach' ? html`<button type="button" class="primary" @click=${() => this.desk.act('arms')}>Fit it to my arms</button>` : nothing}
      ${!here && harder ? html`<button type="button" class="primary" @click=${() => transitions.within(harder[0])}>Look among those ${harder[0] === 'hard' ? 'that are hard' : harder[1]}</button>` : nothing}
    </div>`;
  }

  /** @param {string} key */
  async #enter(key) {
    const { transitions } = this.desk;
    await transitions.enter(key);
    const which = transitions.next.get(key)?.which ?? 0;
    if (transitions.to?.key === key && transitions.shown[which]) await this.desk.goOver(which);
  }

  // Arrow keys go from row to row.
  /** @param {any} event */
  #key(event) {
    const button = event.target.closest('.next-one');
    if (!button) return;
    const all = /** @type {HTMLElement[]} */ ([...this.querySelectorAll('.next-one')]);
    const i = all.indexOf(button);
    const at = /** @type {Record<string, number>} */ ({ ArrowDown: i + 1, ArrowUp: i - 1, Home: 0, End: all.length - 1 })[event.key];
    if (at === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    all[at]?.focus();
  }

  #ways() {
    const { transitions, session } = this.desk;
    if (transitions.error) return html`<p class="told" data-tone="warn">${sentence(transitions.error)} <button type="button" @click=${() => transitions.again()}>Ask again</button></p>`;
    const { answer, shown } = transitions;
    if (!answer) return html`<p class="quiet ways-none" role="status">Looking for a way …</p>`;
    const stale = answer.asked !== session.pattern;
    const [told] = answer.told;
    return html`
      <div class="told ways-told ${stale ? 'stale' : ''}" data-tone=${told.tone} role="status">
        <p>${told.text}</p>
        <details><summary>Why</summary><p>${told.why}</p></details>
        ${stale ? nothing : transitions.mends.map((mend) => html`<button type="button" class="mend" @click=${mend.does}>${mend.says}</button> `)}
      </div>
      <ol class="ways" aria-label="Ways over, best first">
        ${shown.map((way, i) => this.#way(way, i))}
      </ol>`;
  }

  /** @param {any} way @param {number} i */
  #way(way, i) {
    const { transitions, session } = this.desk;
    const chosen = transitions.chosen === i;
    const on = chosen && !!session.passing;
    return html`<li class="way ${chosen ? 'chosen' : ''}">
      <button type="button" @click=${() => this.desk.goOver(i)} aria-pressed=${on}><span>${way.told.text.replace(/: [^:]*\.$/, '.')}</span>${hard(way)}</button>
      ${on
        ? html`<p class="way-why">${way.told.why}</p>
            <p class="way-verbs"><button type="button" class="primary go-on" @click=${() => this.desk.goOn()}>Go on with it</button>
              <button type="button" data-as="mp4" @click=${() => transitions.save(i, 'mp4')}>Save as a clip</button>
              <button type="button" data-as="png" @click=${() => transitions.save(i, 'png')}>Save as a picture</button></p>
            ${this.#saved(i)}`
        : nothing}
    </li>`;
  }

  // How far the file has come, and where it is.
  /** @param {number} i */
  #saved(i) {
    const { saving } = this.desk.transitions;
    return saving?.question.transition === i ? savedLine(saving) : nothing;
  }

  /** @param {Event} event */
  #say(event) {
    event.preventDefault();
    const phrase = /** @type {HTMLInputElement} */ (this.querySelector('#next-phrase')).value.trim();
    this.desk.transitions.into(phrase ? { phrase } : null);
  }

  /** @param {any} event */
  async #take(event) {
    const id = event.target.value;
    if (!id) {
      this.desk.transitions.into(null);
      return;
    }
    try {
      const { pattern } = await this.desk.shelf.load(id);
      this.desk.transitions.into({ id, pattern, name: pattern.name });
    } catch (/** @type {any} */ problem) {
      this.desk.complain(problem);
    }
  }
}

/** How hard it is: its shape and its word. @param {any} transition */
const hard = (transition) => html`<span class="way-grade" data-grade=${transition.grade}>${gradeSign(transition.grade)} ${gradeWord(transition.grade)}</span>`;

// The hand that changes and what it goes into; a pattern of the shelf by its name.
/** @param {import('../state/transitions.js').Next} one */
function called({ name, hands }) {
  const [left, right] = name.split(',')[0].split(' vs ');
  if (hands === 'both' || !right) return name;
  return html`<small>${hands} hand</small> ${hands === 'left' ? left : right}`;
}

/** How many were left out, and why. @param {any} whole */
function out({ dangers, not_possible: none }) {
  const said = [];
  if (none) said.push(none === 1 ? 'one is not possible' : none + ' are not possible');
  if (dangers) said.push(dangers === 1 ? 'one would be a danger' : dangers + ' would be a danger');
  return said.length ? 'Left out: ' + said.join(', ') + '.' : '';
}

customElements.define('next-list', NextList);
