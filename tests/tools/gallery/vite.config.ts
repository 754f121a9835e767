/** The gallery is looked at by hand and by `shots.ts`; it is not part of the app and is never built into it. */
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react()],
  cacheDir: '../../../node_modules/.cache/gallery',
  server: { fs: { allow: ['../../..'] }, hmr: false, watch: null },
});
