import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { fetchScreensPlugin } from './tools/fetchScreensPlugin.ts';
import { offlinePlugin } from './tools/offlinePlugin.ts';
import { SECURITY_HEADERS, securityPolicyPlugin } from './tools/securityPolicy.ts';

export default defineConfig({
  base: './',
  publicDir: false,
  plugins: [react(), fetchScreensPlugin(), securityPolicyPlugin(), offlinePlugin()],
  build: { outDir: 'dist', emptyOutDir: true, target: 'es2022' },
  worker: { format: 'es' },
  preview: { port: 4173, host: 'localhost', headers: SECURITY_HEADERS },
});
