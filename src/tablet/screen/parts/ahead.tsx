import type { View } from '../../../session/view.ts';
import { words } from '../../words/index.ts';

/** What comes to the second person next, so that they can be where they are needed. */
export function Coming({ coming }: { readonly coming: NonNullable<View['coming']> }) {
  const { second: text } = words;
  if (coming.length === 0) return null;
  return (
    <section className="coming" aria-labelledby="coming">
      <h2 id="coming">{text.coming}</h2>
      <ul>
        {coming.map(({ title, away }) => (
          <li key={title}>
            <strong>{title}</strong> {text.inSteps(away)}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What the second person does after a stop; nobody has time to ask then. */
export function AfterStop() {
  const { second: text } = words;
  return (
    <section className="after-stop" aria-labelledby="after-stop">
      <h2 id="after-stop">{text.afterStop}</h2>
      <ul>
        {text.afterStopDo.map(each => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </section>
  );
}
