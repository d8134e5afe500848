import { html } from 'lit';
import { Part } from './part.js';

const HOW = [['well', 'well'], ['so-so', 'so-so'], ['badly', 'badly']];
const PARTS = ['left hand', 'right hand'];

/** Writes into the log that what stands on the stage was practised: all of it, or one hand. */
class PracticeForm extends Part {
  render() {
    const { session } = this.desk;
    const { answer } = session;
    return html`<form class="practice-form" @submit=${this.#write}>
      <p class="practice-what">Practised: <b>${answer?.phrase ?? answer?.name ?? ''}</b></p>
      <label>What <select name="part"><option value="">all of it</option>${PARTS.map((part) => html`<option value=${part}>${part} alone</option>`)}</select></label>
      <label>Minutes <input name="minutes" type="number" min="0.5" max="600" step="any" required></label>
      <label>Tempo <input name="tempo" type="number" min="1" max="600" step="any" placeholder="a minute"></label>
      <label>It went <select name="went"><option value="">unsaid</option>${HOW.map(([key, says]) => html`<option value=${key}>${says}</option>`)}</select></label>
      <label>Day <input name="date" type="date"></label>
      <label class="practice-note">Note <input name="note" type="text" maxlength="2000" autocomplete="off"></label>
      <button type="submit" class="primary" ?disabled=${!session.pattern}>Write it down</button>
    </form>`;
  }

  /** @param {SubmitEvent} event */
  #write = async (event) => {
    event.preventDefault();
    const form = /** @type {HTMLFormElement} */ (event.target);
    const given = (/** @type {string} */ name) => String(new FormData(form).get(name) ?? '').trim();
    /** @type {import('../state/log.js').Entry} */
    const entry = { minutes: Number(given('minutes')) };
    if (given('part')) entry.part = given('part');
    if (given('tempo')) entry.tempo_cycles_per_min = Number(given('tempo'));
    if (given('went')) entry.went = given('went');
    if (given('date')) entry.date = given('date');
    if (given('note')) entry.note = given('note');
    if (await this.desk.log.write(this.desk.session.pattern, entry)) form.reset();
  };
}

customElements.define('practice-form', PracticeForm);
