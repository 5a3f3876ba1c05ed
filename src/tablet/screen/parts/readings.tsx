import type { ReadingView } from '../../../session/view.ts';
import { words } from '../../words/index.ts';

const mark = (met: boolean) => (met ? '✓' : '✗');

export function Readings({ readings }: { readonly readings: readonly ReadingView[] }) {
  return (
    <section aria-labelledby="readings">
      <h2 id="readings">{words.readings}</h2>
      {readings.length === 0 ? (
        <p className="quiet">{words.noReadings}</p>
      ) : (
        <dl className="readings">
          {[...readings].reverse().map(({ name, value, limits, met }) => (
            <div key={name} className={met ? 'met' : 'unmet'}>
              <dt>{name}</dt>
              <dd>
                <strong>{value}</strong>{' '}
                <span className="mark">
                  <span aria-hidden="true">{mark(met)}</span> {met ? words.met : words.notMet}
                </span>
                {limits !== '' && (
                  <span className="quiet">
                    {' '}
                    {words.limits} {limits}
                  </span>
                )}
              </dd>
            </div>
          ))}
        </dl>
      )}
    </section>
  );
}

export function Gates({
  gates,
}: {
  readonly gates: readonly { readonly gate: string; readonly name: string; readonly met: boolean }[];
}) {
  return (
    <section aria-labelledby="gates">
      <h2 id="gates">{words.gates}</h2>
      <ul className="gates">
        {gates.map(({ gate, name, met }) => (
          <li key={gate} className={met ? 'met' : 'unmet'}>
            <span aria-hidden="true">{met ? '✓' : '○'}</span> {name}
            <span className="unseen">, {met ? words.met : words.notMet}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function Sentences({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <section>
      <h2>{title}</h2>
      <ul>
        {lines.map(line => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
