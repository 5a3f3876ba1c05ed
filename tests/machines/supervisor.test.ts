import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import { languages } from '../../prompts/index.ts';
import { grammarOf, secondOnly } from '../../src/session/grammar.ts';
import { meaningOf } from '../../src/session/hearing.ts';
import { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';

const signing = new Driver(demoSix).goodUntil('signOff.sign.asking');
const byKeys = { via: 'keys', by: 'technician' } as const;
const accepting = new Driver(demoSix)
  .goodUntil('keyOn.faults.asking')
  .reply('readACode', byKeys)
  .value('suspectParameter', 5000, byKeys)
  .value('failureMode', 7, byKeys)
  .reply('yes', byKeys)
  .reply('noMoreCodes', byKeys)
  .reply('acceptFault', byKeys);

const misunderstoodThrice = (driver: Driver) => {
  const thrice = driver.fork();
  for (let time = 0; time < 3; time += 1)
    thrice.send({ type: 'unclear' }, { via: 'voice', by: 'supervisor' });
  return thrice;
};

describe('what only the supervisor answers for', () => {
  it.each(['technician', 'second'] as const)(
    'is not signed by the %s, however often it was misunderstood',
    by => {
      for (const at of [signing, misunderstoodThrice(signing)])
        for (const via of ['touch', 'keys', 'voice'] as const) {
          const tried = at.fork().reply('iSign', { via, by });
          expect(tried.name).toBe('signOff.sign.asking');
          expect(tried.lines).toEqual(['onlySupervisor']);
          expect(tried.last.notes).toEqual([]);
        }
    },
  );

  it('is read back to the supervisor, and nobody else says that it is correct', () => {
    const said = signing.fork().reply('iSign', { via: 'voice', by: 'supervisor' });
    expect(said.name).toBe('signOff.sign.readingBack');
    expect(said.fork().reply('yes', { via: 'touch', by: 'second' }).name).toBe('signOff.sign.readingBack');
    expect(said.reply('yes', { via: 'touch', by: 'supervisor' }).name).toBe('signedOff');
  });

  it('takes no fault code as accepted by anybody else: neither by a reason that is named nor by one that is typed', () => {
    expect(accepting.name).toBe('keyOn.faults.accepting');
    for (const by of ['technician', 'second'] as const) {
      const named = accepting.fork().reply('reasonSupervisor', { via: 'touch', by });
      const typed = accepting.fork().send({ type: 'reason', text: 'it is an old one' }, { via: 'keys', by });
      for (const tried of [named, typed]) {
        expect(tried.name).toBe('keyOn.faults.accepting');
        expect(tried.lines).toEqual(['onlySupervisor']);
        expect(tried.context.faults[0]?.accepted).toBeUndefined();
      }
    }
    const own = accepting.fork().reply('reasonSupervisor', { via: 'touch', by: 'supervisor' });
    expect(own.reply('yes', { via: 'touch', by: 'supervisor' }).context.faults[0]?.accepted).toBeDefined();
  });

  it('misunderstood three times by voice is asked for by keys or touch, and put down to nobody else', () => {
    const thrice = misunderstoodThrice(signing);
    expect(thrice.last.said.at(-1)?.prefix).toBe('onlySupervisor');
    expect(secondOnly(thrice.moment)).toBe(false);
    const parts = { language: languages.en, units: 'us' } as const;
    const heard = { kind: 'reply', id: 'iSign', text: 'I sign', confidence: 1 } as const;
    expect(meaningOf(heard, thrice.moment, 'voice', parts).by).toBe('supervisor');
    const voiced = grammarOf(thrice.moment, languages.en, 'us', 'voice').replies;
    expect(voiced.find(({ id }) => id === 'iSign')?.wordings).toEqual(languages.en.replies.iSign);
    expect(thrice.fork().reply('iSign', { via: 'voice', by: 'supervisor' }).lines).toEqual([
      'onlySupervisor',
    ]);
    expect(thrice.reply('iSign', { via: 'keys', by: 'supervisor' }).name).toBe('signedOff');
  });

  it('is signed in their name at the leading device, where they come to it: the question is theirs', () => {
    expect(offerOf(signing.moment).by).toBe('supervisor');
    expect(signing.fork().reply('iSign', { via: 'keys' }).last.notes).toMatchObject([
      { kind: 'passed', data: { step: 'signOff.sign', by: 'supervisor' } },
    ]);
  });
});

describe('who has said it', () => {
  it('stands on the record: the second person, where only they were believed', () => {
    const filled = new Driver(demoSix).goodUntil('fill.coolantFilled.asking');
    for (let time = 0; time < 3; time += 1) filled.send({ type: 'unclear' });
    filled.reply('coolantFull', { via: 'touch', by: 'second' });
    expect(filled.last.notes).toMatchObject([
      { kind: 'passed', data: { step: 'fill.coolantFilled', by: 'second' } },
    ]);
  });
});
