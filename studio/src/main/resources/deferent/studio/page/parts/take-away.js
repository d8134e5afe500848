import { html, nothing } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { Part } from './part.js';
import { sentence } from './phrase-line.js';

const MODES = [['file', 'As a file'], ['photo', 'Photograph it']];
const OTHER = 'other …';

/** Everything that can leave the studio: what, as which file, how, with a preview of it. */
class TakePanel extends Part {
  connect(desk) {
    super.connect(desk);
    this.others = new Set(); // wishes for which something else than the choices is said
    desk.take.addEventListener('state', () => this.requestUpdate());
  }

  get dialog() {
    return this.querySelector('dialog');
  }

  open(mode) {
    if (!this.desk.session.pattern || this.dialog.open) return;
    if (mode) this.desk.take.mode = mode;
    this.dialog.showModal();
    this.desk.take.open();
  }

  render() {
    const { take, session } = this.desk;
    const { answer } = session;
    return html`
      <dialog class="take" aria-labelledby="take-head" @close=${() => take.close()}>
        <header>
          <h2 id="take-head">Save as a file</h2>
          <div class="take-modes" role="tablist" aria-label="How" @keydown=${this.#tabs}>
            ${MODES.map(([mode, says]) => html`<button type="button" role="tab" id="take-tab-${mode}" aria-controls="take-body" aria-selected=${take.mode === mode}
              tabindex=${take.mode === mode ? 0 : -1} @click=${() => take.show(mode)}>${says}</button>`)}
          </div>
          <button type="button" class="take-close" @click=${() => this.dialog.close()}>Close</button>
        </header>
        <div class="take-body" id="take-body" role="tabpanel" aria-labelledby="take-tab-${take.mode}">
          <div class="take-how">${take.isOpen && take.endings.length ? (take.mode === 'file' ? this.#file(take, answer) : this.#photo(take)) : nothing}</div>
          ${this.#preview(take)}
        </div>
        <footer>${take.mode === 'file' ? this.#foot(take) : this.#photoFoot(take)}</footer>
      </dialog>`;
  }

  // What, as what, how --------------------------------------------------------------------------------------------------------------

  #file(take, answer) {
    const { shelf, map } = this.desk;
    const offers = take.offers;
    const often = offers.filter((o) => o.often);
    const rare = offers.filter((o) => !o.often);
    return html`
      ${shelf.patterns.length
        ? html`<fieldset class="take-what">
            <legend>What</legend>
            ${this.#what('this', answer.phrase || answer.name)}
            ${this.#what('shelf', `the whole shelf, ${count(shelf.patterns.length, 'pattern')}`)}
            ${take.route ? this.#what('route', `the route from ${map.name(take.route[0])} to ${map.name(take.route[take.route.length - 1])}`) : nothing}
          </fieldset>`
        : nothing}
      <fieldset class="take-as">
        <legend>As</legend>
        ${take.families.map((family) => this.#family(take, family))}
        <p class="take-words" role="status">${take.ending ? start(take.ending.words) : ''}.</p>
      </fieldset>
      <fieldset class="take-wishes">
        <legend>How</legend>
        ${repeat(often, (o) => o.key, (o) => this.#wish(take, o))}
        ${rare.length
          ? html`<details ?open=${this.more || !often.length} @toggle=${(e) => often.length && (this.more = e.target.open)}><summary>View, ground and what is seen</summary>
              ${repeat(rare, (o) => o.key, (o) => this.#wish(take, o))}</details>`
          : nothing}
      </fieldset>`;
  }

  #what(what, says) {
    const { take } = this.desk;
    return html`<label><input type="radio" name="take-what" value=${what} .checked=${take.what === what} @change=${() => take.choose(what)}> <span>${says}</span></label>`;
  }

  #family(take, family) {
    const endings = take.endings.filter((e) => e.family === family.key);
    const barred = take.many && family.key !== 'print';
    return html`<div class="take-family ${barred ? 'barred' : ''}">
      <p id="take-family-${family.key}"><b>${family.title}</b> <span>${family.words}</span></p>
      <div role="group" aria-labelledby="take-family-${family.key}">
        ${endings.map((e) => html`<label title=${start(e.words)}><input type="radio" name="take-as" value=${e.key} ?disabled=${barred} .checked=${take.as === e.key}
          @change=${() => take.take(e.key)}><span>${e.key.toUpperCase()}</span></label>`)}
      </div>
    </div>`;
  }

  #wish(take, offer) {
    const id = 'wish-' + offer.key;
    const value = take.value(offer);
    const wrong = take.error && take.error.where === offer.key;
    const says = (text) => take.wish(offer.key, text);
    if (offer.kind === 'yes') {
      return html`<div class="wish"><label class="tick wish-yes" title=${start(offer.means)}><input id=${id} type="checkbox" .checked=${value === 'yes'} @change=${(e) => says(e.target.checked ? 'yes' : 'no')}> ${offer.title}</label></div>`;
    }
    if (offer.kind === 'layers') {
      const on = new Set(value.split(',').filter(Boolean));
      return html`<div class="wish" role="group" aria-labelledby=${id}><span class="wish-title" id=${id}>${offer.title}</span>
        <div class="wish-layers">${offer.choices.map((c) => html`<label class="tick"><input type="checkbox" value=${c.value} .checked=${on.has(c.value)} @change=${(e) => {
          if (e.target.checked) on.add(c.value);
          else on.delete(c.value);
          says([...on].join());
        }}> ${c.words}</label>`)}</div></div>`;
    }
    if (offer.kind === 'word') {
      const choices = take.choices(offer);
      const other = offer.open && (this.others.has(offer.key) || !choices.some((c) => c.value === value));
      return html`<div class="wish"><label for=${id}>${offer.title}</label>
        <div><select id=${id} aria-invalid=${wrong} @change=${(e) => {
          this.others.delete(offer.key);
          if (e.target.value === OTHER) this.others.add(offer.key);
          else says(e.target.value);
          this.requestUpdate();
        }}>
          ${choices.map((c) => html`<option value=${c.value} .selected=${!other && c.value === value}>${c.words}</option>`)}
          ${offer.open ? html`<option .selected=${other}>${OTHER}</option>` : nothing}
        </select>
        ${other ? html`<input type="text" id="${id}-other" aria-label="${offer.title}, in other words" aria-invalid=${wrong} autocomplete="off" spellcheck="false" .value=${value} @input=${(e) => says(e.target.value.trim())}>
            <small>${start(offer.means)}</small>` : nothing}</div></div>`;
    }
    return html`<div class="wish"><label for=${id}>${offer.title}</label>
      <div><input type="text" id=${id} class=${offer.kind === 'number' ? 'short' : ''} inputmode=${offer.kind === 'number' ? 'decimal' : 'text'} aria-invalid=${wrong} aria-describedby="${id}-means"
        autocomplete="off" spellcheck="false" placeholder=${this.#instead(take, offer) ? '' : offer.unsaid} .value=${value === offer.unsaid || this.#instead(take, offer) ? take.said[offer.key] ?? '' : value}
        @input=${(e) => says(e.target.value.trim())}><small id="${id}-means">${start(offer.means)}</small></div></div>`;
  }

  // Whether another wish stands in the place of this one.
  #instead(take, offer) {
    return take.ending.wishes.some((w) => w.instead_of === offer.key && take.said[w.key]);
  }

  // The preview ---------------------------------------------------------------------------------------------------------------------

  #preview(take) {
    const { preview, error, looking } = take;
    const other = !!error || (preview && (preview.mode !== take.mode || preview.as !== take.as));
    return html`<section class="take-preview" aria-label="Preview">
      <div class="take-sight ${other ? 'other' : looking ? 'looking' : ''}" aria-busy=${looking}>${preview ? sight(preview) : nothing}</div>
      <div class="take-told" aria-live="polite">
        ${error
          ? html`<p class="told take-error" data-tone="warn" role="alert">${sentence(error)}</p>`
          : preview && preview.mode === take.mode
            ? html`<p>${take.mode === 'file' ? start(preview.told) : 'As a camera in the dark would see it, at the pattern’s tempo'}.</p>
                ${preview.note ? html`<p class=${preview.writable ? 'quiet' : 'told'} data-tone=${preview.writable ? '' : 'warn'}>${preview.note}</p>` : nothing}
                ${take.mode === 'file' && preview.caution ? this.#care(take, preview) : nothing}`
            : html`<p class="quiet">Drawing it …</p>`}
      </div>
    </section>`;
  }

  #care(take, preview) {
    return html`<p class="told take-care" data-tone="warn"><b>Fast lights.</b> ${preview.caution}
      ${this.desk.lights.known || take.motion.matches || preview.media_type === 'image/webp' ? nothing : html`<button type="button" class="link" @click=${() => { this.desk.lights.know(); take.look(0); }}>Play the preview</button>`}</p>`;
  }

  // Writing -------------------------------------------------------------------------------------------------------------------------

  #foot(take) {
    const { writing, done, failed, error, preview } = take;
    const barred = !take.ending || !!error || (preview && preview.as === take.as && !preview.writable);
    return html`
      ${writing
        ? html`<button type="button" class="primary take-stop" @click=${() => take.stop()}>Stop</button>`
        : html`<button type="button" class="primary take-write" ?disabled=${barred} @click=${() => take.write()}>Save ${take.as.toUpperCase()}</button>`}
      <div class="take-state" role="status">
        ${writing
          ? html`<progress max="1" .value=${writing.share} aria-label="Making it"></progress><span>${writing.told || 'beginning'}</span>`
          : failed
            ? html`<span class="told" data-tone="warn" role="alert">${sentence(failed)}</span>`
            : done && done.stopped
              ? html`<span>Stopped; nothing was saved.</span>`
              : done
                ? html`<span class="take-done">${[done, ...done.beside].map((f) => html`<a href=${f.file} download=${f.name}>${f.name}</a> `)}<span class="quiet">${start(done.told)}.</span></span>`
                : nothing}
      </div>`;
  }

  // Photograph it -------------------------------------------------------------------------------------------------------------------

  #photo(take) {
    const { photo, photoError, led } = take;
    const field = (key, title, unit, hint) => html`<div class="wish"><label for="photo-${key}">${title}</label>
      <div><span class="photo-entry"><input id="photo-${key}" class="short" type="text" inputmode="decimal" autocomplete="off" placeholder=${hint} .value=${led[key]} @input=${(e) => take.blink(key, e.target.value.trim())}> ${unit}</span></div></div>`;
    return html`
      <fieldset class="take-wishes">
        <legend>Light and shutter</legend>
        ${field('hertz', 'Light blinks', 'times a second', 'steady')}
        ${field('duty', 'lit for', '% of each blink', '50')}
        ${field('shutter', 'Shutter open', 'seconds', 'one figure')}
      </fieldset>
      ${photoError && !take.error ? html`<p class="told" data-tone="warn" role="alert">${sentence(photoError)}</p>` : nothing}
      ${photo
        ? html`<div class="photo-told">
            ${photo.told.map((t) => html`<div class="told" data-tone=${t.tone}><p>${t.text}</p><details><summary>Why</summary><p>${t.why}</p></details></div>`)}
            ${photo.cautions.length ? html`<div class="care-list"><h3>Take care</h3><ul>${photo.cautions.map((c) => html`<li>${c}</li>`)}</ul></div>` : nothing}
          </div>`
        : nothing}`;
  }

  #photoFoot(take) {
    return html`<button type="button" class="primary" ?disabled=${!!take.error} @click=${() => take.keepExposure()}>Save this exposure</button>
      <div class="take-state"></div>`;
  }

  #tabs(event) {
    const i = MODES.findIndex(([each]) => each === this.desk.take.mode);
    const to = { ArrowRight: i + 1, ArrowLeft: i - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const [mode] = MODES[(to + MODES.length) % MODES.length];
    this.desk.take.show(mode);
    this.updateComplete.then(() => this.querySelector('#take-tab-' + mode).focus());
  }
}

function sight(preview) {
  if (preview.page) return html`<iframe title="Preview of the page" sandbox="allow-scripts" src=${preview.page}></iframe>`;
  if (preview.text !== undefined) return html`<pre tabindex="0" aria-label="The first lines">${preview.text}</pre>`;
  return html`<img alt="Preview: ${preview.told}" src="data:${preview.media_type};base64,${preview.base64}">`;
}

const start = (text) => text.charAt(0).toUpperCase() + text.slice(1);
const count = (n, word) => (n === 1 ? 'one ' + word : n + ' ' + word + 's');

customElements.define('take-panel', TakePanel);
