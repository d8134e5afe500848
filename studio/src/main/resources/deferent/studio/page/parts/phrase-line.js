import { html, nothing } from 'lit';
import { Part } from './part.js';
import { Completion } from './completion.js';

const PENCIL = html`<svg class="phrase-sign" viewBox="0 0 20 20"><path d="m4 16 1-4 8.5-8.5 3 3L8 15zM12 5l3 3" fill="none" stroke="currentColor" stroke-width="1.4" stroke-linejoin="round"/></svg>`;

const EMPTY = 'left hand vs right hand'; // stands there until something is typed, before the sign as words would

const CLOSED = 0.005; // metres apart at most: nothing is left to fit
const PATIENCE = 450; // milliseconds of quiet before an unfinished phrase is called wrong

/** The phrase: one line in trade words. What is wrong is underlined, gently, once the typing rests. */
class PhraseLine extends Part {
  connect(desk) {
    this.completion = new Completion(this);
    super.connect(desk);
    desk.session.addEventListener('state', () => {
      const field = this.field;
      if (field && !this.typing && field.value !== desk.session.said) field.value = desk.session.said;
    });
  }

  get field() {
    return this.querySelector('textarea');
  }

  focusField() {
    this.field.focus();
    this.field.select();
  }

  render() {
    const { session } = this.desk;
    const error = session.error && session.error.text !== undefined ? session.error : null;
    const other = session.error && session.error.text === undefined ? session.error : null;
    const told = error && !this.fresh;
    return html`
      <label class="spoken" for="phrase">Phrase: type what each hand does</label>
      <div class="phrase ${told ? 'wrong' : ''}">
        <div class="phrase-echo" aria-hidden="true">${told ? this.#marked(error) : (this.field?.value ?? session.said) || EMPTY}${PENCIL}</div>
        <textarea
          id="phrase" rows="1" spellcheck="false" autocapitalize="off" autocomplete="off" enterkeyhint="go"
          placeholder=${EMPTY} title="The phrase: type what each hand does (/)"
          aria-autocomplete="list" aria-haspopup="listbox" aria-controls="phrase-offers"
          aria-activedescendant=${this.completion.chosen >= 0 ? 'phrase-offer-' + this.completion.chosen : nothing}
          aria-invalid=${told ? 'true' : 'false'} aria-describedby="phrase-note"
          @input=${this.#input} @keydown=${this.#key} @focus=${() => (this.typing = true)} @blur=${this.#blur}
          @scroll=${(e) => (this.querySelector('.phrase-echo').scrollLeft = e.target.scrollLeft)}></textarea>
      </div>
      ${this.completion.render()}
      <div class="phrase-note" id="phrase-note" aria-live="polite">
        ${told ? this.#error(error) : other ? this.#refusal(other) : this.#note()}
      </div>`;
  }

  #marked(error) {
    const text = error.text;
    const start = error.start ?? 0;
    const end = Math.max(error.end ?? text.length, start + 1);
    const wrong = text.slice(start, end) || '\u00a0\u00a0';
    return html`${text.slice(0, start)}<mark>${wrong}</mark>${text.slice(end)}`;
  }

  #error(error) {
    const expected = error.expected || error.right || '';
    const offered = (error.offers || []).some((phrase) => expected.includes(phrase));
    const { answer } = this.desk.session;
    return html`${answer ? html`<span class="phrase-still">Still shown: ${answer.phrase || answer.name}.</span>` : nothing}
      <span class="phrase-what">${start(error.what)}${offered
        ? '.'
        : html`<span class=${(error.nearest || []).length ? 'phrase-wanted' : ''}>; what fits here: ${expected}.</span>`}</span>
      ${(error.nearest || []).slice(0, 4).map(
        (word) => html`<button type="button" class="near" @click=${() => this.#put(error, word)}>${word}</button>`,
      )}
      ${(error.offers || []).map(
        (phrase) => html`<button type="button" class="near offer" @click=${() => this.#offer(phrase)}>${phrase}</button>`,
      )}`;
  }

  #refusal(error) {
    return html`<span class="phrase-what">${sentence(error)}</span>
      <button type="button" class="near" @click=${() => this.desk.session.clearError()}>All right</button>`;
  }

  #note() {
    const { session } = this.desk;
    if (!session.answer) return html`<span>Say two motions, one a hand: A vs B</span>`;
    // Nothing stands before a danger.
    if ((session.answer.readings.told || []).some((t) => t.tone === 'danger')) return this.#first(session.answer);
    // A phrase is read without the shelf; what the shelf could not give is said here.
    if (session.answer.shelf_told) return html`<span>${session.answer.shelf_told}</span>`;
    if (session.unsaid) return html`<span>No phrase says these sizes; this is <em>${session.answer.name}</em></span>`;
    return this.#first(session.answer);
  }

  // What a spinner wants to know first, with the one verb that helps.
  #first(answer) {
    const told = answer.readings.told || [];
    // A danger stands before everything else, with where it ends.
    const first = told.find((t) => t.tone === 'danger' && t.key !== 'first') || told.find((t) => t.key === 'first') || this.kept;
    if (!first) return html`<span>Left hand first, right hand second</span>`;
    this.kept = first;
    // The last word and the verb stay together, wherever the line ends.
    const at = first.text.lastIndexOf(' ') + 1;
    return html`<span class="first" data-tone=${first.tone} @pointerenter=${() => this.#point(true)} @pointerleave=${() => this.#point(false)}
      @click=${() => this.#point(true)}>${first.tone === 'danger' ? html`<b aria-hidden="true">!! </b>` : nothing}${first.text.slice(0, at)}<span
        class="first-end">${first.text.slice(at)} ${this.#helps(answer, first.tone === 'danger')}</span></span>`;
  }

  // The one thing that helps with what is told.
  #helps(answer, danger) {
    const { session } = this.desk;
    const apart = Math.max(...answer.strip.gap_m) >= CLOSED;
    const short = (answer.readings.told || []).some((t) => t.key === 'reach.trunk' && t.tone === 'warn');
    const tempo = danger && session.size('tempo_cycles_per_min') ? calm(answer.readings.dangers) : 0;
    if (tempo) {
      return html`<button type="button" class="near verb slow" title="Slow to where the danger ends" ?disabled=${!session.pattern}
        @click=${() => session.change([{ set: 'tempo_cycles_per_min', to: tempo }])}>Slow to ${tempo}</button>`;
    }
    if (short && session.linked) return this.#verb('arms', 'A', 'Fit to my arms');
    // The hands of a weave are bound to each other; no size puts a head on a hand.
    const bound = (answer.readings.told || []).some((t) => t.key === 'hands');
    return apart && !bound ? this.#verb('fit', 'F', session.fitting ? 'Fitting' : 'Fit') : nothing;
  }

  // What the sentence tells of is shown on the stage while somebody is at it.
  #point(on) {
    this.desk.stage.point(on);
  }

  #verb(act, key, text) {
    const { session } = this.desk;
    return html`<button type="button" class="near verb ${act}" aria-keyshortcuts=${key} title="${text} (${key})" ?disabled=${!session.pattern || session.fitting}
      @click=${() => this.desk.act(act)}>${text}</button>`;
  }

  #put(error, word) {
    const text = error.text;
    const start = error.start ?? 0;
    const end = error.end ?? text.length;
    const before = text.slice(0, start);
    const after = text.slice(end);
    const gapBefore = before && !/\s$/.test(before) ? ' ' : '';
    const gapAfter = after && !/^[\s,]/.test(after) ? ' ' : '';
    this.#offer(before + gapBefore + word + gapAfter + after);
  }

  #offer(phrase) {
    this.field.value = phrase;
    this.field.focus();
    this.#say();
  }

  #input() {
    this.typing = true;
    if (this.field.value.includes('\n')) this.field.value = this.field.value.replace(/\s*\n\s*/g, ' ');
    this.completion.ask();
    this.#say();
  }

  /** Writes a phrase, and goes on writing at a place in it. */
  write(text, caret = text.length) {
    this.field.value = text;
    this.field.focus();
    this.field.setSelectionRange(caret, caret);
    this.typing = true;
    this.#say();
  }

  #say() {
    this.fresh = true;
    clearTimeout(this.patience);
    this.patience = setTimeout(() => {
      this.fresh = false;
      this.requestUpdate();
    }, PATIENCE);
    this.desk.session.say(this.field.value);
  }

  #key(event) {
    if (this.completion.key(event)) {
      event.preventDefault();
      event.stopPropagation();
    } else if ((event.ctrlKey || event.metaKey) && /^[zy]$/i.test(event.key)) {
      this.typing = false; // undo brings back the phrase that stood, here too
    } else if (event.key === 'Enter') {
      event.preventDefault();
      this.completion.shut();
      clearTimeout(this.patience);
      this.fresh = false;
      this.typing = false; // what is said stands, and goes with the browser’s way back
      this.desk.session.pause();
      this.requestUpdate();
    } else if (event.key === 'Escape') {
      this.typing = false;
      this.desk.session.clearError();
      this.field.blur();
    }
  }

  #blur() {
    this.completion.shut();
    this.typing = false;
    this.fresh = false;
    this.desk.session.pause();
    this.requestUpdate();
  }
}

/**
 * The tempo at which every danger has ended, a tenth below, or none.
 *
 * @param {any[] | undefined} dangers
 */
function calm(dangers) {
  const all = (Array.isArray(dangers) ? dangers : []).filter((d) => d.level === 'danger');
  if (!all.length || !all.every((d) => d.ends_with === 'tempo')) return 0;
  return Math.floor(10 * Math.min(...all.map((d) => d.ends_at_tempo_cycles_per_min))) / 10;
}

export function sentence(error) {
  const where = error.where ? error.where + ' ' : '';
  const right = error.right ? '; ' + error.right : '';
  const text = start(where + error.what + right);
  return text + (/[.!?]$/.test(text) ? '' : '.');
}

function start(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

customElements.define('phrase-line', PhraseLine);
