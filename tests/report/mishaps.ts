import type { LanguageCode, ReplyId } from '../../prompts/types.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';

/**
 * A whole start in which much goes wrong and is put right, led in this language: what is said wrong, denied,
 * paused, skipped, out of its limits, stopped, and three codes of three kinds.
 * @returns the path of its record
 */
export async function startWithMishaps(path: string, code: LanguageCode): Promise<string> {
  const run = await rig('demo-six', 'metric', path, code);
  const { language } = run.session.parts;
  const say = async (...replies: readonly ReplyId[]) => {
    for (const reply of replies) {
      await run.type(language.replies[reply][0] ?? '');
      await run.pass(1500);
    }
  };
  const readCode = async (spn: string, fmi: string) => {
    await say('readACode');
    await run.type(spn);
    await run.type(fmi);
    await say('yes');
  };
  await run.session.begin();
  await run.type('xyz');
  await goUntil(run, 'fill.coolantBleed.counting');
  await run.pass(20_000);
  await run.type(language.controls.hold[0] ?? '');
  await run.pass(45_000);
  await run.type(language.controls.continue[0] ?? '');
  await goUntil(run, 'fill.coolantFreezePoint.asking');
  await run.type(language.controls.skip[0] ?? '');
  await say('reasonNotFitted');
  await goUntil(run, 'noFuelCrank.batteryLoad.readingBack');
  await say('no');
  await goUntil(run, 'keyOn.faults.asking');
  await readCode('157', '18');
  await readCode('97', '15');
  await readCode('500', '3');
  await say('noMoreCodes');
  await say('acceptFault', 'reasonSupervisor');
  await goUntil(run, 'checks.oilPressure.asking');
  await run.type(language.words.decimalMark === ',' ? '0,2' : '0.2');
  await say('yes');
  await run.pass(4000);
  await say('allOff', 'yes', 'ready');
  await goUntil(run);
  await run.record.close();
  return path;
}
