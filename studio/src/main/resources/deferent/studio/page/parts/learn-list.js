import { html, nothing } from 'lit';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';
import '../stage/thumb.js';

const DAYS = 14; // of the plan that are told at once

/** @typedef {import('../state/path.js').Drill} Drill */
/** @typedef {import('../state/path.js').Plan} Plan */

/** What the pattern on the stage is learnt by: its drills in order, each played at a press, and the days they take. */
class LearnList extends Part {
  /** @param {import('../main.js').Desk} desk */
  connect(desk) {
    super.connect(desk);
    desk.path.addEventListener('state', () => this.soon());
    desk.log.addEventListener('state', () => this.soon());
  }

  render() {
    const { path, session } = this.desk;
    const { plan, error, wishes, drill } = path;
    if (!session.pattern) return nothing;
    return html`<form class="learn-wishes" @submit=${(/** @type {Event} */ e) => e.preventDefault()}>
        <label>Minutes a day <input type="number" min="5" max="240" step="1" .value=${String(wishes.minutes)} @change=${this.#minutes}></label>
        <label>To have it by <input type="date" .value=${wishes.by} @change=${(/** @type {any} */ e) => path.wish({ by: e.target.value })}></label>
      </form>
      ${error ? html`<p class="told" data-tone="warn" role="status">${sentence(error)} <button type="button" @click=${() => path.again()}>Ask again</button></p>` : nothing}
      ${path.running
        ? html`<p class="quiet learn-state" role="status">Taking it apart${path.progress ? ', ' + path.progress : ''} … <button type="button" class="link" @click=${() => path.stop()}>Stop</button></p>`
        : plan || error
          ? nothing
          : html`<p class="learn-state"><button type="button" class="primary" @click=${() => path.begin()}>Take it apart</button></p>`}
      ${plan ? this.#plan(plan) : nothing}
      ${drill === null ? nothing : html`<p class="learn-back"><button type="button" class="primary" @click=${() => path.back()}>Back to the pattern</button></p>`}`;
  }

  /** @param {Plan} plan */
  #plan(plan) {
    const { drills, days, left_out: out } = plan;
    const shown = days.slice(0, DAYS);
    return html`<p class="learn-told" role="status">${plan.told}</p>
      ${dangers(drills).map(([danger, at]) => html`<p class="told learn-danger" data-tone="danger"><b aria-hidden="true">!!</b> ${danger} (Drill${at.length > 1 ? 's' : ''} ${at.join(', ')}.)</p>`)}
      <ol class="drills" aria-label="Drills, in order">${drills.map((drill, i) => this.#drill(drill, i))}</ol>
      <h2 class="shelf-head">Day by day</h2>
      <ol class="learn-days">${shown.map((day) => this.#day(day, drills))}</ol>
      ${days.length > DAYS ? html`<details><summary>All ${days.length} days</summary><ol class="learn-days">${days.slice(DAYS).map((day) => this.#day(day, drills))}</ol></details>` : nothing}
      ${out.length ? html`<details class="learn-out"><summary>What was left out, and why</summary><ul>${out.map((each) => html`<li>${each}</li>`)}</ul></details>` : nothing}
      <p class="quiet">${plan.model}</p>`;
  }

  /** @param {Drill} drill @param {number} i */
  #drill(drill, i) {
    const { path } = this.desk;
    const last = i === (path.plan?.drills.length ?? 0) - 1;
    const on = path.drill === null ? last : path.drill === i;
    return html`<li class="drill ${on ? 'on' : ''}">
      <button type="button" class="next-one" aria-pressed=${on} @click=${() => this.#play(i)}>
        <moving-thumb .moves=${drill.moves} .theme=${document.documentElement.dataset.theme}></moving-thumb>
        <span class="next-said"><b>${drill.number} ${drill.name}</b><span>${drill.known ? html`<b class="drill-known">known</b>` : done(drill)}</span></span>
      </button>
      ${drill.danger ? html`<p class="told" data-tone="danger"><b aria-hidden="true">!</b> ${drill.danger}</p>` : nothing}
      ${on ? this.#told(drill) : nothing}
    </li>`;
  }

  /** @param {Drill} drill */
  #told(drill) {
    return html`<div class="drill-told"><p>${drill.todo} ${drill.meets}</p><p>Often: ${drill.often}</p>
      <details><summary>Why it stands here</summary><p>${drill.why}</p></details>
      <form class="drill-done" @submit=${(/** @type {SubmitEvent} */ e) => this.#write(e, drill)}>
        <label>Minutes <input name="minutes" type="number" min="0.5" max="600" step="any" required></label>
        <label>It went <select name="went"><option value="well">well</option><option value="so-so">so-so</option><option value="badly">badly</option></select></label>
        <button type="submit">Practised</button>
      </form></div>`;
  }

  /** @param {Plan['days'][number]} day @param {Drill[]} drills */
  #day({ date, sittings }, drills) {
    const said = sittings.map(({ drill, minutes, again }) => `${again ? 'again ' : ''}${drill} ${drills[drill - 1].name}, ${minutes} min`);
    return html`<li><time datetime=${date}>${when(date)}</time><span>${said.length ? said.map((each) => html`<span>${each}</span>`) : html`<span class="quiet">rest</span>`}</span></li>`;
  }

  /** @param {number} i */
  async #play(i) {
    const { path, clock, lights } = this.desk;
    if (!(await path.play(i))) return;
    this.desk.stage.frame();
    if (!clock.calm.matches) lights.play();
  }

  /** @param {any} event */
  #minutes = (event) => {
    const field = /** @type {HTMLInputElement} */ (event.target);
    if (field.reportValidity() && field.value) this.desk.path.wish({ minutes: Number(field.value) });
  };

  // One hand alone is the pattern's part; the others are patterns of their own.
  /** @param {SubmitEvent} event @param {Drill} drill */
  async #write(event, drill) {
    event.preventDefault();
    const { log, path } = this.desk;
    const form = /** @type {HTMLFormElement} */ (event.target);
    const given = new FormData(form);
    const alone = drill.kind === 'alone';
    const entry = {
      minutes: Number(given.get('minutes')),
      went: String(given.get('went')),
      tempo_cycles_per_min: drill.tempo_cycles_per_min,
      ...(alone ? { part: drill.hand + ' hand' } : {}),
    };
    if (await log.write(alone ? path.of?.pattern : drill.pattern, entry)) form.reset();
    else this.desk.complain(log.told?.error);
  }
}

/** What can hurt, each said once, with the drills in which it can. @param {Drill[]} drills */
function dangers(drills) {
  /** @type {Map<string, number[]>} */
  const all = new Map();
  for (const { danger, number } of drills) if (danger) all.set(danger, [...(all.get(danger) ?? []), number]);
  return [...all];
}

/** How far one is that is not known yet. @param {Drill} drill */
const done = ({ minutes, practised_minutes: practised }) => (practised ? `${Number(practised.toFixed(1))} of ${minutes} minutes` : `${minutes} minutes`);

/** @param {string} day */
const when = (day) => new Date(day).toLocaleDateString('en-GB', { timeZone: 'UTC', weekday: 'short', day: 'numeric', month: 'short' });

customElements.define('learn-list', LearnList);
