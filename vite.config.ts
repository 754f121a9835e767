import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';

/**
 * Nothing but this origin, no inline script, no eval. In the page as a meta tag, so that the policy holds wherever the files
 * are served from. 'wasm-unsafe-eval' lets the ears compile their kernel (densityKernel.ts); it allows no script.
 */
const POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "media-src 'self' blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "font-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

const contentSecurityPolicy = (): Plugin => ({
  name: 'content-security-policy',
  apply: 'build',
  transformIndexHtml: () => [
    { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY }, injectTo: 'head-prepend' },
  ],
});

const HEADERS = {
  'Content-Security-Policy': `${POLICY}; frame-ancestors 'none'`,
  'Permissions-Policy':
    'microphone=(self), camera=(self), screen-wake-lock=(self), on-device-speech-recognition=(self), geolocation=()',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
};

export default defineConfig({
  plugins: [
    react(),
    contentSecurityPolicy(),
    VitePWA({
      strategies: 'injectManifest',
      srcDir: 'src/sw',
      filename: 'serviceWorker.ts',
      injectRegister: false,
      registerType: 'prompt',
      injectManifest: {
        globPatterns: ['**/*.{html,js,css,svg,png,bin,voice,json,txt,webmanifest}'],
        maximumFileSizeToCacheInBytes: 16 * 1024 * 1024,
      },
      manifest: {
        name: 'Gloveside',
        short_name: 'Gloveside',
        description: 'A spoken, hands-free walkaround for lift-frame ice houses',
        lang: 'en-US',
        display: 'standalone',
        start_url: '/',
        background_color: '#ffffff',
        theme_color: '#0b1014',
        icons: [
          { src: '/icons/icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
          { src: '/icons/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
          { src: '/icons/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
      },
    }),
  ],
  worker: { format: 'es' },
  build: { target: 'es2022', assetsInlineLimit: 0 },
  preview: { headers: HEADERS },
  test: {
    include: ['tests/{unit,published,machines}/**/*.test.{ts,tsx}'],
    environment: 'node',
    testTimeout: 60_000,
  },
});
