import { expect, it } from 'vitest';
import { languages } from '../../prompts/index.ts';
import { Viewer } from '../../src/session/viewer.ts';
import { rig } from '../helpers/session-rig.ts';

const { lines } = languages.en;

it('that something was not understood is shown beside the question, said before it, and gone with the next answer', async () => {
  const run = await rig('demo-six', 'metric');
  const viewer = new Viewer(run.session, 'keys');
  await run.session.begin();
  const { prompt } = viewer.view();
  await run.type('gibberish');
  expect(run.said.at(-1)).toBe(`${lines.unclear} ${prompt}`);
  expect(viewer.view()).toMatchObject({ prompt, remark: lines.unclear });
  await run.type('status');
  expect(viewer.view().prompt).toBe(prompt);
  expect(viewer.view().remark).not.toContain(lines.unclear);
  await run.type('say again');
  expect(run.said.at(-1)).toBe(prompt);
});

it('a tool that says nothing aloud is never shown as speaking', async () => {
  for (const silent of [false, true]) {
    const run = await rig('demo-six', 'metric');
    const viewer = new Viewer(run.session, 'keys', silent);
    void run.session.begin();
    await expect.poll(() => run.session.speaking).toBe(true);
    expect(viewer.view().hearing.speaking).toBe(!silent);
  }
});
