// What a first visitor picks from is asked for before the page itself has come, so that it moves as soon as that stands.

import { post } from './live.js';

const SAMPLES = 240; // of a cycle: enough that a large picture is round

/** @returns {Promise<{ shown: { phrase: string, moves: object }[] }>} */
export const asked = () => post({ ask: 'moves', samples: SAMPLES });

/** Whether nothing was opened here before, and the address holds nothing either. */
export const isFirst = () => !localStorage.getItem('deferent.opened') && !/^#(phrase|pattern)=/.test(location.hash);

const first = isFirst() ? asked() : null;
first?.catch(() => {}); // asked for again where it is wanted

/** The answer that was asked for early, once; anew after that. */
export const figures = () => first?.catch(asked) ?? asked();
