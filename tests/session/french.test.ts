import { describe, expect, it } from 'vitest';
import { readLog } from '../../src/record/index.ts';
import { readHeader } from '../../src/session/header.ts';
import { restore } from '../../src/session/resume.ts';
import { Viewer } from '../../src/session/viewer.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';

describe('a session in French', () => {
  it('goes from job card to sign-off by French replies, comma figures and the French stop word', async () => {
    const run = await rig('demo-four', 'metric', undefined, 'fr');
    await run.session.begin();
    await goUntil(run);
    await run.record.close();
    expect(await run.session.outcome).toBe('signedOff');
    const { entries } = await readLog(run.path);
    const heard = entries.filter(({ kind }) => kind === 'heard').map(({ data }) => data);
    expect(heard.filter(({ kind }) => kind === 'unclear')).toEqual([]);
    expect(heard.map(({ text }) => text)).toContain('fiche correcte');
    expect(heard.some(({ text }) => /^\d+,\d$/.test(String(text)))).toBe(true);
    const spoken = entries.filter(({ kind }) => kind === 'said').map(({ data }) => String(data.text));
    expect(spoken.filter(text => /\b(the|say|correct\?|is|and)\b/i.test(text))).toEqual([]);
  });

  it('stops at once at a French stop word, and calls it out in French', async () => {
    const run = await rig('demo-four', 'metric', undefined, 'fr');
    await run.session.begin();
    await run.type('arretez le moteur');
    expect(run.key()).toMatch(/^stopped/);
    expect(run.said.join(' ')).toContain('Coupez le contact');
    await run.record.close();
  });

  it('does not take English for an answer', async () => {
    const run = await rig('demo-four', 'metric', undefined, 'fr');
    await run.session.begin();
    await run.type('card is right');
    expect(run.key()).toBe('job.card.asking');
    await run.record.close();
  });

  it('is shown in French: comma, units, choices', async () => {
    const run = await rig('demo-four', 'metric', undefined, 'fr');
    const viewer = new Viewer(run.session, 'clavier');
    await run.session.begin();
    await goUntil(run, 'fill.oilQuantity.asking');
    const view = viewer.view();
    expect(view).toMatchObject({ phase: 'Remplissage', title: 'Huile versée' });
    expect(view.prompt).toMatch(/Versez \d+,\d L d'huile\. .*, L\u00A0\?/);
    await run.record.close();
  });

  it('says its language in the header, and is gone on with from there', async () => {
    const run = await rig('demo-four', 'metric', undefined, 'fr');
    await run.session.begin();
    await goUntil(run, 'job.hazards.asking');
    await run.record.close();
    const { entries } = await readLog(run.path);
    const restored = restore(entries, run.path);
    expect(restored.header.language).toBe('fr');
    expect(restored.moment.context.step).toBe('job.hazards');
  });

  it('cannot be in a language that there is not', async () => {
    const run = await rig('demo-four');
    await run.record.close();
    const [first] = (await readLog(run.path)).entries;
    expect(readHeader({ ...first?.data, language: 'xx' })).toBeNull();
    expect(readHeader({ ...first?.data, language: 'fr' })).toMatchObject({ language: 'fr' });
  });
});
