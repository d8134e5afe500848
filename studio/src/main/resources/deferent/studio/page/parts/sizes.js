import { html } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { live } from 'lit/directives/live.js';
import { Part } from './part.js';
import { shown, trimmed } from './units.js';

const USUAL_KIT = { head_mass_kg: 0.12, head_diameter_m: 0.07, cord_kg_per_m: 0, air: false, heads: 'soft' }; // where the pattern names none
const USUAL_STATURE = 1.7; // metres, where the pattern names none

/** Every size of the pattern, to be typed in; a held size is one the fit leaves alone. */
class SizeList extends Part {
  render() {
    const { session } = this.desk;
    if (!session.answer) return html`<p class="quiet">The sizes of the pattern come here.</p>`;
    const groups = [
      ['left', 'Left hand'],
      ['right', 'Right hand'],
      [null, 'Both'],
    ];
    return html`
      <p class="quiet">Type a size, or drag its handle on the stage. Held sizes stay as they are when you fit.</p>
      ${groups.map(([side, title]) => {
        const sizes = session.answer.sizes.filter((/** @type {any} */ s) => (s.side ?? null) === side);
        return sizes.length
          ? html`<fieldset class="sizes" data-side=${side || 'both'}><legend>${title}</legend>${repeat(sizes, (/** @type {any} */ s) => s.key, (/** @type {any} */ s) => this.#row(s))}</fieldset>`
          : '';
      })}
      ${this.#performer()} ${this.#kit()}`;
  }

  /** @param {any} size */
  #row(size) {
    const { unit, scale, digits, step } = shown(size);
    const { session } = this.desk;
    const id = 'size-' + size.key.replace('.', '-');
    const held = session.locked.has(size.key);
    const bare = size.name.replace(/^(left|right) /, '');
    return html`
      <div class="size">
        <label for=${id}>${bare}</label>
        <span class="entry">
          <input id=${id} data-key=${size.key} type="number" inputmode="decimal" step=${step}
            min=${trimmed(size.least * scale, digits)} max=${trimmed(size.most * scale, digits)}
            .value=${live(trimmed(size.value * scale, digits))}
            @change=${(/** @type {any} */ e) => this.#set(size, Number(e.target.value) / scale, e.target)}>
          <span class="unit">${unit}</span>
        </span>
        ${size.key === 'tempo_cycles_per_min'
          ? html`<span></span>`
          : html`<button type="button" class="hold" aria-pressed=${held} aria-label="Hold ${size.name} when fitting" @click=${() => this.#hold(size.key)}>${held ? 'held' : 'hold'}</button>`}
      </div>`;
  }

  #performer() {
    const { session } = this.desk;
    const performer = session.pattern.performer || {};
    /** @type {(id: string, text: string, value: number | undefined, least: number, most: number, key: string) => unknown} */
    const length = (id, text, value, least, most, key) => html`<div class="size"><label for=${id}>${text}</label>
      <span class="entry"><input id=${id} type="number" inputmode="decimal" min=${least} max=${most} step="1" .value=${live(value ? trimmed(value * 100, 1) : '')}
        placeholder="usual" @change=${(/** @type {any} */ e) => this.#body(key, e.target.value === '' ? null : Number(e.target.value) / 100)}><span class="unit">cm</span></span><span></span></div>`;
    return html`<fieldset class="sizes"><legend>You</legend>
      ${length('stature', 'height', performer.stature_m ?? USUAL_STATURE, 80, 250, 'stature_m')}
      ${length('arm', 'arm, shoulder to grip', performer.arm_m, 30, 100, 'arm_m')}
      <div class="size"><label for="owned">tethers you have</label>
        <span class="entry"><input id="owned" type="text" inputmode="decimal" placeholder="any" .value=${live((session.you.owned_m || []).map((m) => trimmed(m * 100, 1)).join(', '))}
          @change=${(/** @type {any} */ e) => this.#own(e.target.value)}><span class="unit">cm</span></span><span></span></div></fieldset>`;
  }

  #kit() {
    /** @type {Record<string, any>} */
    const kit = { ...USUAL_KIT, ...this.desk.session.pattern.kit };
    /** @type {(key: string, text: string, scale: number, unit: string, most: number, step: number) => unknown} */
    const row = (key, text, scale, unit, most, step) => html`<div class="size"><label for="kit-${key}">${text}</label>
      <span class="entry"><input id="kit-${key}" data-kit=${key} type="number" inputmode="decimal" min="0" max=${most} step=${step} .value=${live(trimmed(kit[key] * scale, 2))}
        @change=${(/** @type {any} */ e) => this.#spin(key, e.target.value === '' ? NaN : Number(e.target.value) / scale)}><span class="unit">${unit}</span></span><span></span></div>`;
    return html`<fieldset class="sizes"><legend>Kit</legend>
      ${row('head_mass_kg', 'head mass', 1000, 'g', 5000, 5)} ${row('head_diameter_m', 'head across', 100, 'cm', 50, 0.5)}
      ${row('cord_kg_per_m', 'cord mass', 1000, 'g a metre', 1000, 1)}
      <div class="size"><label for="kit-heads">heads</label>
        <span class="entry"><select id="kit-heads" @change=${(/** @type {any} */ e) => this.#spin('heads', e.target.value)}>
          ${[['soft', 'soft'], ['hard', 'hard'], ['fire', 'on fire']].map(
            ([word, said]) => html`<option value=${word} ?selected=${kit.heads === word}>${said}</option>`,
          )}</select></span><span></span></div>
      <div class="size"><label for="kit-air">air brakes the head</label>
        <span class="entry"><input id="kit-air" type="checkbox" .checked=${live(kit.air)} @change=${(/** @type {any} */ e) => this.#spin('air', e.target.checked)}></span><span></span></div></fieldset>`;
  }

  /** @param {string} key @param {any} value */
  #spin(key, value) {
    const { session } = this.desk;
    if (Number.isNaN(value)) this.requestUpdate();
    else session.open({ ...session.pattern, kit: { ...USUAL_KIT, ...session.pattern.kit, [key]: value } }, { then: () => this.requestUpdate() });
  }

  // An arm that is not measured follows from the height.
  /** @param {string} key @param {number | null} metres */
  #body(key, metres) {
    if (metres !== null && !(metres > 0)) return;
    const { session } = this.desk;
    const { [key]: _, ...rest } = session.pattern.performer || {};
    session.spin({ performer: metres === null ? rest : { ...rest, [key]: metres } });
  }

  // Fit to my arms takes the longest of these that will do.
  /** @param {string} text */
  #own(text) {
    const lengths = text.split(/[\s,;]+/).filter(Boolean).map((/** @type {string} */ word) => Number(word) / 100);
    if (lengths.every((m) => m >= 0.05 && m <= 3)) this.desk.session.spin({ owned_m: lengths });
    else this.desk.complain({ where: 'the tethers you have', what: 'are not lengths in cm', right: 'write for example 40, 50, 60' });
    this.requestUpdate();
  }

  /** @param {any} size @param {number} value @param {HTMLInputElement} field */
  #set(size, value, field) {
    if (field.value === '' || !Number.isFinite(value)) {
      this.requestUpdate();
      return;
    }
    this.desk.session.change([size.unit === 'm' ? { set: size.key, to: value, typed_in: 'cm' } : { set: size.key, to: value }]);
  }

  /** @param {string} key */
  #hold(key) {
    const { locked } = this.desk.session;
    if (!locked.delete(key)) locked.add(key);
    this.requestUpdate();
  }
}

customElements.define('size-list', SizeList);
