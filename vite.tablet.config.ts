import { defineConfig } from 'vite';
import { compressed } from './src/tablet/build/compressed.ts';
import { offlineList } from './src/tablet/build/offline-list.ts';
import { refuseNode } from './src/tablet/build/refuse-node.ts';
import { voskEngine } from './src/tablet/build/vosk-engine.ts';

/** Builds the page into dist-tablet: `npm run build:tablet`. */
export default defineConfig({
  root: 'src/tablet',
  publicDir: 'public',
  plugins: [refuseNode(), voskEngine(), offlineList(), compressed()],
  worker: { format: 'es', plugins: () => [refuseNode()] },
  build: {
    outDir: '../../dist-tablet',
    emptyOutDir: true,
    target: 'es2022',
    // The large voice and model files stay files: they are loaded only where they are needed.
    assetsInlineLimit: 0,
    reportCompressedSize: false,
    rollupOptions: {
      input: {
        index: 'src/tablet/index.html',
        'service-worker': 'src/tablet/offline/service-worker.ts',
      },
      output: {
        entryFileNames: chunk =>
          chunk.name === 'service-worker' ? 'service-worker.js' : 'assets/[name]-[hash].js',
      },
    },
  },
});
