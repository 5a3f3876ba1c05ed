import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { openDataBase } from './record/data-base.ts';
import { comeBack } from './remote/enter-bay.ts';
import { App } from './screen/app.tsx';
import { applySettings, deviceIsDark, loadSettings } from './settings.ts';
import { askForVoices } from './speaking/system-voice.ts';
import './style/page.css';

applySettings(loadSettings());
void askForVoices();
deviceIsDark().addEventListener('change', () => applySettings(loadSettings()));
const place = document.getElementById('page');
if (!place) throw new Error('The page has no place for its content.');
const root = createRoot(place);
openDataBase().then(
  dataBase => {
    // Outside of what is drawn, which may be drawn twice: a device joins its bay once.
    const before = comeBack(dataBase);
    root.render(
      <StrictMode>
        <App dataBase={dataBase} before={before} />
      </StrictMode>,
    );
  },
  (cause: unknown) =>
    root.render(
      <main className="start">
        <p role="alert">
          This browser keeps nothing ({String(cause)}), so no record could be written; leave private mode, or
          use another browser.
        </p>
      </main>,
    ),
);
