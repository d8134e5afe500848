// What the set says by signs: how hard a transition is, and what to mind in a pattern. Each sign has its word and its own shape.

import { html, nothing } from 'lit';

/** @typedef {import('../state/set.js').Passed} Passed */
/** @typedef {import('../state/set.js').Block} Block */

/** @type {Record<string, [word: string, drawn: unknown]>} */
const GRADES = {
  easy: ['easy', html`<svg viewBox="0 0 20 20" aria-hidden="true"><circle cx="10" cy="10" r="5.5"/></svg>`],
  practised: ['with practice', html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="m10 2.5 7 7.5-7 7.5L3 10z"/></svg>`],
  hard: ['hard', html`<svg viewBox="0 0 20 20" aria-hidden="true"><path class="full" d="m10 2.5 8 14.5H2z"/></svg>`],
  none: ['no way over', html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M6.5 2.5v15M13.5 2.5v15M3.5 17.5l13-15"/></svg>`],
  same: ['goes on', html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M3 10h14"/></svg>`],
  unknown: ['not worked out yet', html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M3 10h2.5M8.75 10h2.5M14.5 10H17"/></svg>`],
};

/**
 * How hard it is.
 *
 * @param {Passed | undefined} passed
 * @returns {string}
 */
export function gradeOf(passed) {
  if (!passed || passed.way === 'gone') return 'unknown';
  if (passed.way === 'same') return 'same';
  return passed.none ? 'none' : (passed.grade ?? 'unknown');
}

/** @param {string} grade */
export const gradeWord = (grade) => GRADES[grade][0];
/** @param {string} grade */
export const gradeSign = (grade) => GRADES[grade][1];

/** What each shape means. */
export const GRADE_KEY = html`<p class="quiet set-key">${['easy', 'practised', 'hard', 'none'].map((grade) => html`<span data-grade=${grade}>${gradeSign(grade)} ${gradeWord(grade)}</span> `)}</p>`;

const FAR = html`<svg viewBox="0 0 20 20" aria-hidden="true"><path d="M2 10h8M10 6v8"/><circle cx="16" cy="10" r="2.5"/></svg>`;

/**
 * What to mind in a pattern of the set: its sign, its word and its sentence, the worst first.
 *
 * @param {Block} block
 * @returns {{ kind: string, sign: unknown, word: string, told: string }[]}
 */
export function cautions({ said }) {
  if (!said) return [];
  if (said.missing) return [{ kind: 'gone', sign: html`<b aria-hidden="true">×</b>`, word: 'gone', told: gone(said) }];
  const found = [];
  if (said.danger === 'danger') found.push({ kind: 'danger', sign: html`<b aria-hidden="true">!!</b>`, word: 'danger', told: said.danger_told?.text ?? '' });
  if (said.reached === false) found.push({ kind: 'reach', sign: FAR, word: 'out of reach', told: said.reach_told?.text ?? '' });
  if (said.danger === 'care') found.push({ kind: 'care', sign: html`<b aria-hidden="true">!</b>`, word: 'take care', told: said.danger_told?.text ?? '' });
  return found;
}

/** @param {import('../state/set.js').Answered} said */
export const gone = (said) => said.missing_told?.text ?? `${said.name} is no longer on the shelf: put it back there, or take it out here.`;

/** @param {{ sign: unknown, word: string, kind: string, told: string }[]} list */
export const cautionSigns = (list) => (list.length ? html`${list.map(({ kind, sign, word, told }) => html`<span class="set-caution" data-kind=${kind} title=${told}>${sign}<span>${word}</span></span>`)}` : nothing);

/** @param {number} n */
export const counted = (n) => (n === 1 ? '1 count' : n + ' counts');

/** A turn of the body: an arrow that goes a quarter or half round, seen from above with the audience below. @param {number} degrees */
export function turnSign(degrees) {
  const half = Math.abs(degrees) === 180;
  return html`<svg class="set-turn-sign ${half ? 'half' : 'quarter'}" viewBox="0 0 16 16" aria-hidden="true" style=${degrees < 0 ? 'scale: -1 1' : ''}><path d=${half ? 'M8 13.5a5 5 0 0 0 0-10H6' : 'M8 13.5a5 5 0 0 0 5-5V7'} fill="none" stroke="currentColor" stroke-width="1.6" stroke-linecap="round"/><path d=${half ? 'm8.3 1-2.7 2.5L8.3 6' : 'm10.4 9 2.6-2.7L15.6 9'} fill="none" stroke="currentColor" stroke-width="1.6" stroke-linecap="round" stroke-linejoin="round"/></svg>`;
}
