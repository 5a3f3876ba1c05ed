import { expect, it } from 'vitest';
import { gradesForNight } from '../../../machines/limits/oil.ts';
import { english } from '../../../prompts/en/index.ts';
import { wordSaid } from '../../../src/session/wording.ts';
import { Driver } from '../helpers/driver.ts';
import { changed, demoSix } from '../helpers/profiles.ts';

const NIGHT_C = -5;

/** At the oil, before a night of -5 °C, where the maker allows the grades up to such a night only. */
function atTheOil(nightsToC: number): Driver {
  const profile = changed(demoSix, {
    oil: { ...demoSix.oil, grades: demoSix.oil.grades.map(grade => ({ ...grade, nightsToC })) },
  });
  const driver = new Driver(profile).goodUntil('job.coldestNight.asking').value('coldestNight', NIGHT_C);
  while (driver.context.step !== 'fill.oilGrade') driver.good();
  return driver;
}

it('oil that its maker allows for this night just so may be filled', () => {
  expect(gradesForNight(atTheOil(NIGHT_C).context).ok).toBe(true);
});

it('oil that its maker allows for colder nights only is refused, in words', () => {
  const driver = atTheOil(NIGHT_C - 0.1);
  expect(gradesForNight(driver.context)).toMatchObject({ ok: false, issue: { code: 'noSolution' } });
  const told = driver.last.said.map(said => wordSaid(said, english, 'us').shown).join(' ');
  expect(told).toContain('No grade that is allowed suits that night');
  const before = driver.name;
  driver.reply('gradeAndFilterRight');
  expect(driver.context.done).not.toContain('fill.oilGrade');
  expect(driver.last.said.map(({ line }) => line)).toContain('notPossible');
  expect(driver.name).toBe(before);
});
