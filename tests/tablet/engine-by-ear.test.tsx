import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { EngineByEar, pathOf } from '../../src/tablet/screen/parts/engine-by-ear.tsx';

describe('the trace of the speed by ear', () => {
  it('goes through what was sure, and has a gap where nothing was', () => {
    expect(pathOf([600, 700, null, 700, 800], 600, 800)).toBe('M0.0 56.0L60.0 28.0M180.0 28.0L240.0 0.0');
  });

  it('is empty where nothing was sure, and finite for one speed alone', () => {
    expect(pathOf([null, null], 600, 800)).toBe('');
    expect(
      renderToStaticMarkup(
        <EngineByEar view={{ engine: 'running', engineEar: { speed: '750 rpm', trace: [750, 750] } }} />,
      ),
    ).not.toMatch(/NaN|Infinity/);
  });
});

describe('what the microphone hears of the engine', () => {
  it('is shown with its speed, and as not sure where it is silent: that says nothing of the engine', () => {
    expect(
      renderToStaticMarkup(
        <EngineByEar view={{ engine: 'running', engineEar: { speed: '750 rpm', trace: [740, 750] } }} />,
      ),
    ).toContain('750 rpm');
    const silent = renderToStaticMarkup(
      <EngineByEar view={{ engine: 'running', engineEar: { speed: null, trace: [] } }} />,
    );
    expect(silent).toContain('not sure');
    expect(silent).not.toContain('<svg');
  });

  it('is not shown while the engine stands and nothing is heard', () => {
    const at = (speed: string | null) =>
      renderToStaticMarkup(<EngineByEar view={{ engine: 'off', engineEar: { speed, trace: [null] } }} />);
    expect(at(null)).toBe('');
    expect(at('90 rpm')).toContain('Engine by ear');
  });
});
