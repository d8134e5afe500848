import { html } from 'lit';
import { Part } from './part.js';

const TIMINGS = new Map([[0, 'together'], [0.25, 'quarter'], [0.5, 'split'], [0.75, 'three quarters']]);

/** What can be done to the whole pattern with one key each. */
class PatternVerbs extends Part {
  render() {
    const { session } = this.desk;
    const timing = session.size('timing_cycles');
    const named = timing && (TIMINGS.get(Math.round(timing.value * 1000) / 1000) || Number(timing.value.toFixed(3)) + ' cycle');
    const direction = session.answer && session.answer.pattern.pairing?.direction;
    /** @type {(act: Protocol.Do, key: string, text: string, state?: unknown, wide?: string) => unknown} */
    const verb = (act, key, text, state, wide) => html`
      <button type="button" class="verb" ?disabled=${!session.pattern} @click=${() => this.desk.act(act)} aria-keyshortcuts=${key} title="${text} (${key})">
        <span>${text}${state ? html`: <b class=${wide || ''}>${state}</b>` : ''}</span>
      </button>`;
    return html`
      <div class="verbs" role="toolbar" aria-label="Pattern">
        <button type="button" class="verb icon" title="Undo (Ctrl+Z)" aria-label="Undo" aria-keyshortcuts="Control+Z"
          ?disabled=${!session.past.length} @click=${() => this.desk.undo()}>${ARROW_BACK}</button>
        <button type="button" class="verb icon" title="Redo (Ctrl+Shift+Z)" aria-label="Redo" aria-keyshortcuts="Control+Shift+Z"
          ?disabled=${!session.future.length} @click=${() => this.desk.redo()}>${ARROW_ON}</button>
        ${verb('swap', 'S', 'Swap hands')} ${verb('reverse', 'R', 'Reverse')}
        ${verb('step-timing', 'T', 'Timing', named, 'timing')} ${verb('step-direction', 'D', 'Direction', direction, 'direction')}
      </div>`;
  }
}

const ARROW_BACK = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M8 4 4 8l4 4M4 8h7a5 5 0 0 1 0 10H8" fill="none" stroke="currentColor" stroke-width="1.8" stroke-linecap="round" stroke-linejoin="round"/></svg>`;
const ARROW_ON = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="m12 4 4 4-4 4M16 8H9a5 5 0 0 0 0 10h3" fill="none" stroke="currentColor" stroke-width="1.8" stroke-linecap="round" stroke-linejoin="round"/></svg>`;

customElements.define('pattern-verbs', PatternVerbs);
