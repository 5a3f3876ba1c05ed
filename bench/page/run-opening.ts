import buildPage from '../../tests/tablet/build-page.ts';
import { benchOpening } from './opening.ts';

await buildPage();
await benchOpening();
