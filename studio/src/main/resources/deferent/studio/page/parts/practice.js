import { html, nothing } from 'lit';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import './practice-calendar.js';

/**
 * @typedef {{ date: string, said: string, value: number, error: number }} Value
 * @typedef {{ key: string, hand?: Protocol.Side, noun: string, worth_saying: boolean, told: boolean, values: Value[] }} Kind
 * @typedef {{ id: string, name: string, date: string, dated_by: string, author?: string, clip: string, findings: string[] }} Time
 * @typedef {{ key: string, tone: string, text: string, why: string }} Told
 * @typedef {{ pattern: string, told?: Told[], times?: Time[], kinds?: Kind[],
 *   patterns: { pattern: string, times: number, last: string }[], not_listed: { file: string, why: string }[] }} Weeks
 */

/** What was practised: the log, and from films how much closer a pattern came over the weeks. */
class PracticeLog extends Part {
  /** @type {Weeks | null} */
  weeks = null;
  /** @type {any} */
  error = null;
  run = 0;

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    this.updateComplete.then(() => /** @type {Part} */ (this.querySelector('practice-calendar')).connect(desk));
  }

  /** @returns {HTMLDialogElement} */
  get dialog() {
    return /** @type {HTMLDialogElement} */ (this.querySelector('dialog'));
  }

  /** Of a pattern; unsaid, of what stands. @param {string} [pattern] */
  open(pattern) {
    const { session } = this.desk;
    this.desk.clock.play(false);
    if (!this.dialog.open) {
      this.desk.log.told = null;
      this.dialog.showModal();
    }
    this.desk.log.look();
    return this.look(pattern ?? session.answer?.phrase ?? session.answer?.name ?? '');
  }

  /** @param {string} pattern */
  async look(pattern) {
    const run = ++this.run;
    try {
      const reply = await fetch('api/practice/weeks?pattern=' + encodeURIComponent(pattern));
      const answer = await reply.json();
      if (this.run !== run) return;
      Object.assign(this, reply.ok ? { weeks: answer, error: null } : { weeks: null, error: answer.error });
    } catch {
      if (this.run === run) Object.assign(this, { weeks: null, error: { what: 'does not answer', where: 'the studio', right: 'see that it still runs' } });
    }
    this.requestUpdate();
  }

  render() {
    const { weeks, error } = this;
    return html`<dialog class="practice" aria-labelledby="practice-head">
      <header><h2 id="practice-head">Practice over the weeks</h2><button type="button" @click=${() => this.dialog.close()}>Close</button></header>
      <practice-calendar></practice-calendar>
      <h3 class="practice-films">From films</h3>
      ${error ? html`<p class="told" data-tone="warn" role="alert">${sentence(error)}</p>` : nothing}
      ${weeks ? this.#weeks(weeks) : nothing}
    </dialog>`;
  }

  /** @param {Weeks} weeks */
  #weeks(weeks) {
    const others = weeks.patterns.filter(({ pattern }) => pattern !== weeks.pattern);
    return html`<p class="practice-pattern">${weeks.pattern}</p>
      ${weeks.times ? this.#kept(weeks) : html`<p>Nothing is kept of this pattern. <button type="button" @click=${this.#film}>Watch a film of it</button></p>`}
      ${others.length
        ? html`<section class="practice-others"><h3>Also practised</h3><ul>${others.map(
            ({ pattern, times }) => html`<li><button type="button" class="link" @click=${() => this.look(pattern)}>${pattern}</button> <span class="quiet">${times === 1 ? 'once' : times + ' times'}</span></li>`,
          )}</ul></section>`
        : nothing}
      ${weeks.not_listed.length
        ? html`<section class="quiet"><h3>Cannot be read, and left as it is</h3><ul>${weeks.not_listed.map(({ file, why }) => html`<li><b>${file}</b>: ${why}</li>`)}</ul></section>`
        : nothing}`;
  }

  /** @param {Weeks} weeks */
  #kept(weeks) {
    const { told = [], times = [], kinds = [] } = weeks;
    const theme = document.documentElement.dataset.theme ?? 'dark';
    const width = Math.round(Math.max(320, Math.min(900, this.dialog.clientWidth - 40)));
    const worth = kinds.filter((kind) => kind.worth_saying);
    return html`<ul class="practice-says" aria-live="polite">${told.map((one) => html`<li class="told" data-tone=${one.tone} title=${one.why}>${one.text}</li>`)}</ul>
      <img class="practice-picture" width=${width} alt="What was off each time, with how sure it is; below, what both poi drew the first time and the last"
        src="api/practice/picture?pattern=${encodeURIComponent(weeks.pattern)}&theme=${theme}&width=${width}&of=${times.map(({ id }) => id.length).join('-')}-${times.length}-${this.run}">
      <details><summary>Every time, in numbers</summary>
        <div class="practice-table" tabindex="0" role="region" aria-label="Every time, in numbers"><table>
          <thead><tr><th scope="col">When</th>${worth.map((kind) => html`<th scope="col">${kind.noun}</th>`)}</tr></thead>
          <tbody>${times.map(
            (time) => html`<tr><th scope="row">${time.date.slice(0, 10)}<br><span class="quiet">${time.name === weeks.pattern ? time.clip : time.name}</span></th>
              ${worth.map((kind) => html`<td>${kind.values.find(({ date }) => date === time.date)?.said ?? ''}</td>`)}</tr>`,
          )}</tbody></table></div></details>
      <p class="quiet">Left is round, right is square and dashed; the bar through a mark is where it lies nine times in ten.</p>
      ${times.some(({ author }) => author?.includes('invented')) ? html`<p class="quiet">Some of this is invented demo data.</p>` : nothing}`;
  }

  #film = () => {
    this.dialog.close();
    this.desk.act('film');
  };
}

customElements.define('practice-log', PracticeLog);
