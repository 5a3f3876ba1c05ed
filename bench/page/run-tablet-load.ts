import buildPage from '../../tests/tablet/build-page.ts';
import { benchTablet } from './tablet-load.ts';

await buildPage();
await benchTablet();
