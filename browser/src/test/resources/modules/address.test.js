import { read, written } from '/state/address.js';
import { same, sure, test } from './statements.js';

const pattern = { format: 1, name: 'Mothlight über alles', pairing: { left: { tether_m: 0.6 } } };

test('a phrase stands in plain sight and reads as the same', async () => {
  const hash = await written({ phrase: 'isolation vs cap, tether 60 cm', pattern });
  same(hash, 'phrase=isolation+vs+cap,+tether+60+cm');
  same(await read('#' + hash), { phrase: 'isolation vs cap, tether 60 cm' });
});

test('what no phrase says, and what is spun with, is packed whole', async () => {
  for (const answer of [{ phrase: null, pattern }, { phrase: 'isolation', pattern: { ...pattern, kit: { air: false } } }]) {
    const hash = await written(answer);
    sure(/^pattern=[\w-]+$/.test(hash), 'letters that an address keeps');
    same(await read('#' + hash), { pattern: answer.pattern });
  }
});

test('an empty address holds nothing, and a torn one says so', async () => {
  same(await read(''), {});
  let torn = false;
  await read('#pattern=abc').catch(() => (torn = true));
  sure(torn, 'torn');
});
