import { html, nothing } from 'lit';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import './practice-form.js';

/** @typedef {import('../state/log.js').Held} Held */

const DAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const LONGEST = 60; // minutes from which on a day's square grows no further
const DAY_MS = 86_400_000;

/** The log of practice: weeks by days, each day's entries, a line a pattern, and what to write or take in. */
class PracticeCalendar extends Part {
  /** The day whose entries are shown. */
  day = '';

  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.log.addEventListener('state', () => this.requestUpdate());
    this.updateComplete.then(() => /** @type {Part} */ (this.querySelector('practice-form')).connect(desk));
  }

  render() {
    const { log } = this.desk;
    return html`<section class="practice-log" aria-label="Log">
      ${log.error ? html`<p class="told" data-tone="warn" role="alert">${sentence(log.error)}</p>` : nothing}
      ${log.held ? this.#held(log.held) : nothing}
      <practice-form></practice-form>
      <p class="practice-told told" role="status" data-tone=${log.told?.error ? 'warn' : 'good'} ?hidden=${!log.told}>${log.told?.error ? sentence(log.told.error) : log.told?.text}</p>
      <div class="log-in"><label class="log-file"><input type="file" accept=".json,application/json" @change=${this.#chosen}><span>Take in a log from a hall file</span></label>
        <span class="quiet">or drop it anywhere on the studio</span></div>
    </section>
    ${log.held?.patterns.length ? this.#patterns(log.held) : nothing}`;
  }

  /** @param {Held} held */
  #held(held) {
    const rest = held.recent_work?.told;
    const of = held.entries.filter(({ date }) => date === this.day);
    return html`${rest
      ? html`<div class="told practice-rest" data-tone=${rest.tone ?? ''} role="status"><p>${rest.text}</p>
          <details><summary>Why this is said</summary><p>${rest.why}</p></details></div>`
      : nothing}
      <table class="practice-calendar">
        <caption class="spoken">Minutes a day</caption>
        <thead><tr><th scope="col"><span class="spoken">Week</span></th>${DAYS.map((day) => html`<th scope="col">${day}</th>`)}</tr></thead>
        <tbody>${held.weeks.map((week) => this.#week(week, held.today))}</tbody>
      </table>
      ${held.ahead_told ? html`<p class="quiet">${held.ahead_told}</p>` : nothing}
      ${of.length ? html`<div class="practice-day" role="status"><h3>${long(this.day)}</h3><ul>${of.map((one) => html`<li>${one.said}</li>`)}</ul></div>` : nothing}
      ${held.not_listed.length
        ? html`<div class="quiet"><h3>Cannot be read in the log, and left as it is</h3><ul>${held.not_listed.map(({ file, why }) => html`<li><b>${file}</b>: ${why}</li>`)}</ul></div>`
        : nothing}`;
  }

  /** @param {import('../state/log.js').Week} week @param {string} today */
  #week({ monday, minutes, total_minutes: total, total_told: told }, today) {
    return html`<tr><th scope="row">${short(monday)}<br><span class="quiet">${total ? told : ''}</span></th>
      ${minutes.map((each, i) => {
        const date = on(monday, i);
        if (date > today) return html`<td></td>`;
        if (!each) return html`<td class="none"><span aria-label="none">·</span></td>`;
        return html`<td><button type="button" aria-pressed=${this.day === date} aria-label="${long(date)}, ${said(each)} minutes" @click=${() => this.#open(date)}>
          <i style="--side: ${Math.sqrt(Math.min(1, each / LONGEST)).toFixed(2)}"></i>${said(each)}</button></td>`;
      })}</tr>`;
  }

  /** @param {Held} held */
  #patterns({ patterns }) {
    return html`<section class="practice-patterns"><h3>Each pattern</h3><dl>${patterns.map(
      ({ pattern, told, on_film: film }) => html`<dt>${pattern}</dt><dd>${told.text}${film ? ' ' + film : ''}</dd>`,
    )}</dl></section>`;
  }

  /** @param {string} date */
  #open(date) {
    this.day = this.day === date ? '' : date;
    this.requestUpdate();
  }

  /** @param {Event} event */
  #chosen = (event) => {
    const input = /** @type {HTMLInputElement} */ (event.target);
    const [file] = input.files ?? [];
    if (file) this.desk.log.takeIn(file);
    input.value = '';
  };
}

/** So many days after a day. @param {string} day @param {number} days */
const on = (day, days) => new Date(Date.parse(day) + days * DAY_MS).toISOString().slice(0, 10);

/** @param {number} minutes */
const said = (minutes) => String(Number(minutes.toFixed(1)));

/** @param {Intl.DateTimeFormatOptions} how */
const as = (how) => (/** @type {string} */ day) => new Date(day).toLocaleDateString('en-GB', { timeZone: 'UTC', ...how });
const short = as({ day: 'numeric', month: 'short' });
const long = as({ weekday: 'long', day: 'numeric', month: 'long' });

customElements.define('practice-calendar', PracticeCalendar);
